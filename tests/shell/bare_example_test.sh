# The example of the two bare lists in rates/README.md is planned as it stands there.
. tests/shell/lib.sh
example() { awk -v fence="\`\`\`csv $1" '$0 == fence { on = 1; next } /^```/ { on = 0 } on' rates/README.md >"$work/$1"; }
example PARTS.csv
example STOCK.csv
example MEASURED.csv
[ -s "$work/PARTS.csv" ] && [ -s "$work/STOCK.csv" ] || fail "no example in rates/README.md"
status 0 "$SAWBILL" cut --parts "$work/PARTS.csv" --stock "$work/STOCK.csv" --kerf 3mm --trim 10mm --material-only --json
for text in '"boards": [' '"sheets": [' '"stock": "post"' '"stock": "ply"' '"name": "shelf"'; do
    says "$text"
done
# The leftover has a knot: a leg lies over it, and the stretcher, which must be clear, behind the leg.
status 0 "$SAWBILL" cut --parts "$work/PARTS.csv" --stock "$work/STOCK.csv" --measured "$work/MEASURED.csv" --kerf 3mm --trim 10mm --material-only --json
says '"measured": ['
tr -d ' \n' < "$work/out" > "$work/flat"
grep -qF '"name":"stretcher","length_mm":690,"at_mm":733' "$work/flat" || fail "the stretcher does not lie behind the leg"
finish
