# Measured boards: from the list to the plan, and every mistake of the list at its place.
. tests/shell/lib.sh
cat > "$work/parts.csv" <<'CSV'
name,stock,length,count,clear,sound
rail,post,1000,1,yes,
slat,post,1000,1,,
cleat,post,300,1,no,yes
CSV
cat > "$work/stock.csv" <<'CSV'
stock,length,price,kind,label
post,2400,5.00,leftover,P1
post,2400,12.00,board,
CSV
cat > "$work/measured.csv" <<'CSV'
board,from,to,kind
P1,900,940,knot
P1,2330,2400,split
CSV
cut() { "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3mm --material-only "$@"; }

# 1000 + 3 + 1000 + 3 + 300 = 2306 before the split; the slat over the knot, the rail behind it.
status 0 cut --measured "$work/measured.csv" --json
for text in '"cost": "5.00"' '"proved": true' '"measured": [' '"kind": "knot"' '"from_mm": 2330' '"waste": [' '"label": "P1"'; do
    says "$text"
done
tr -d ' \n' < "$work/out" > "$work/flat"
grep -qF '{"name":"rail","length_mm":1000,"at_mm":0' "$work/flat" && fail "the rail lies over the knot"
status 0 cut --measured "$work/measured.csv"
says "rail (clear wood)"
says "cleat (sound wood)"

# Nothing but clear parts: the piece with the knot is cut away, and listed with its mark.
printf 'name,stock,length,count,clear\nrail,post,1250,2,yes\n' > "$work/parts.csv"
status 0 cut --measured "$work/measured.csv" --json
says '"cost": "17.00"'
printf 'name,stock,length,count,clear\nrail,post,1050,1,yes\nleg,post,800,1,yes\n' > "$work/parts.csv"
status 0 cut --measured "$work/measured.csv" --json
says '"cost": "5.00"'
says '"from_mm": 803'
says '"to_mm": 937'

# Mistakes: all of all lists in one go.
printf 'board,from,to,kind\nP2,0,10,knot\nP1,20,10,knot\nP1,0,2401,split\nP1,0,10,crack\n,0,10,knot\n' > "$work/measured.csv"
status 1 cut --measured "$work/measured.csv"
complains "measured.csv:2:1: error: unknown board \"P2\""
complains "measured.csv:3:7: error: a stretch ends behind its beginning"
complains "measured.csv:4:6: error: the board \"P1\" is only 2400 mm long"
complains "measured.csv:5:9: error: unknown kind of stretch \"crack\""
complains "measured.csv:6:1: error: expected the label of a board here"
[ -s "$work/out" ] && fail "output after an error"
status 1 cut --measured "$work/nowhere.csv"
complains "nowhere.csv"
status 2 "$SAWBILL" cut samples/rack-bench.job --measured "$work/measured.csv"

# In a shop: a board of the rack.
home=$(shop)
printf 'board,from,to,kind\nL99,0,10,knot\n' > "$home/rates/measured.csv"
status 1 "$SAWBILL" check "$home/rates/measured.csv"
complains "measured.csv:2:1: error: unknown rack piece \"L99\""
printf 'board,from,to,kind\nL4,500,540,knot\nL4,1900,2000,split\n' > "$home/rates/measured.csv"
status 0 "$SAWBILL" check "$home/rates/measured.csv"
"$SAWBILL" cut "$home/samples/rack-bench.job" > "$work/out" 2>"$work/err"
tr -s " \n" "  " < "$work/out" > "$work/flat" # broken into lines by its column
grep -qF "knot from 500 to 540 mm" "$work/flat" || fail "the cut sheet tells no knot"
finish
