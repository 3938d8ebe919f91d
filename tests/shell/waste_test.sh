# Where the timber goes: what is taken is in parts, spare, usable leftovers and waste, to the millimetre.
. tests/shell/lib.sh
home=$(shop)

# board_row: the figures of the estimate's row on larch slats: taken, in parts, spare, kept, waste, share
board_row() {
    rm -rf "$work/sheets" && mkdir "$work/sheets"
    ssconvert -S "$1" "$work/sheets/%s.csv" >/dev/null 2>&1 || fail "no sheets of $1"
    sed -n 's/^"\{0,1\}Larch slat 20 x 95"\{0,1\},[0-9]*,//p' "$work/sheets/Boards and sheets.csv" | head -n 1 | tr -d '%"'
}

# Mitred at both ends, 300 mm over the long points and 95 wide: 205 mm stay in each of the 100 parts. Nested they
# lie nearer than they are long, which must not make the waste less than nothing.
cat >"$home/templates/rim.recipe" <<'RECIPE'
recipe rim
stock s larch-20x95
part r
  count 100
  of s
  length 300 mm
  ends mitre 45 deg scale
RECIPE
cat >"$home/samples/rim.job" <<'JOB'
job rim
date 2026-03-02
customer A
rack no
piece rim
JOB
status 0 "$SAWBILL" quote "$home/samples/rim.job"
board_row "$home/samples/rim/rim-estimate.xlsx" >"$work/row"
awk -F, '{
    rest = $1 - $2 - $3 - $4
    if ($2 < 20.499 || $2 > 20.501 || $5 <= 0 || (rest - $5) ^ 2 > 1e-9) exit 1
    if (($5 / ($1 - $4) - $6) ^ 2 > 1e-6) exit 1
    seen = 1
} END { exit !seen }' "$work/row" || fail "the rims do not add up: $(cat "$work/row")"

# Spares are told as they are planned: their lengths on the boards.
status 0 "$SAWBILL" quote samples/harbour-planters.job --out "$work/harbour" --option slats
status 0 "$SAWBILL" cut samples/harbour-planters.job --option slats --json
awk '/"count":/ { count = $2 + 0 } /"stock":/ { slat = /larch-20x95/ }
     /"name": "spare/ { spare = slat } spare && /"length_mm":/ { metres += count * $2 / 1000; spare = 0 }
     END { printf "%.2f\n", metres }' "$work/out" >"$work/planned"
board_row "$work/harbour/harbour-planters-estimate.xlsx" | awk -F, '{ printf "%.2f\n", $3 }' >"$work/told"
same "$work/planned" "$work/told"

# Beside ten strips of 60 mm 95 - 60 - 2.8 mm stay, wide enough to keep: ten times 1 m x 32.2 mm, as lengths of full width.
cat >"$home/templates/lath.recipe" <<'RECIPE'
recipe lath
stock s larch-20x95
part r
  count 10
  of s
  length 1 m
  width 60 mm
RECIPE
sed 's/^piece rim/piece lath/; s/^job rim/job lath/' "$home/samples/rim.job" >"$home/samples/lath.job"
status 0 "$SAWBILL" quote "$home/samples/lath.job"
board_row "$home/samples/lath/lath-estimate.xlsx" >"$work/row"
awk -F, '{
    if ($2 != 6.32 || $4 != 3.39 || ($1 - $2 - $3 - $4 - $5) ^ 2 > 1e-9 || $5 <= 0) exit 1
    if (($5 / ($1 - $4) - $6) ^ 2 > 1e-5) exit 1
    share = sprintf("%.1f", 100 * $6)
    sub(/\.0$/, "", share)
    print "waste " share " % and spare for defects"
} END { exit NR != 1 }' "$work/row" >"$work/share" || fail "the laths do not add up: $(cat "$work/row")"
says "$(cat "$work/share")"

# Timber by volume loses what its grade says.
cat >"$home/templates/beam.recipe" <<'RECIPE'
recipe beam
stock s oak-random-52
part b
  of s
  length 2 m
  width 100 mm
RECIPE
sed 's/^piece rim/piece beam/; s/^job rim/job beam/' "$home/samples/rim.job" >"$home/samples/beam.job"
status 0 "$SAWBILL" quote "$home/samples/beam.job"
says 'waste 30 % of what is used up'
finish
