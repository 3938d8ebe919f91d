# The example of the two bare lists in rates/README.md is planned as it stands there.
. tests/shell/lib.sh
example() { awk -v fence="\`\`\`csv $1" '$0 == fence { on = 1; next } /^```/ { on = 0 } on' rates/README.md >"$work/$1"; }
example PARTS.csv
example STOCK.csv
[ -s "$work/PARTS.csv" ] && [ -s "$work/STOCK.csv" ] || fail "no example in rates/README.md"
status 0 "$SAWBILL" cut --parts "$work/PARTS.csv" --stock "$work/STOCK.csv" --kerf 3mm --trim 10mm --material-only --json
for text in '"boards": [' '"sheets": [' '"stock": "post"' '"stock": "ply"' '"name": "shelf"'; do
    says "$text"
done
finish
