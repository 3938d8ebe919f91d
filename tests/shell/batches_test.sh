# A jig that takes half a day and saves ten minutes a piece pays from some batch size on: compare finds that size.
. tests/shell/lib.sh
"$SAWBILL" start "$work/shop" >"$work/started.txt"
cat >"$work/shop/templates/tray.recipe" <<'R'
recipe   tray
title    Tray
size     long
input    long    600 mm from 300 mm to 900 mm
choice   way     plain | jig
stock    slat    larch-20x95
part     slat
  count  4
  of     slat
  length long
work     assemble if(way = plain, 30, 20) per piece
work     assemble if(way = jig, 200, 0) per batch
R
cat >"$work/shop/jobs/trays.job" <<'J'
job      trays
date     2026-04-02
customer Reed Lane Nursery
piece    tray
  count  4
option   plain : Freehand
  set    way plain
option   jig : On a jig
  set    way jig
J
status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --batches --out "$work/papers"
says 'Net price of batches, each planned for itself'
# 200 minutes are won back by ten a piece with the 20th: there both cost the same.
says 'From 1 to 20 pieces the cheapest is: Freehand. From 21 to 100 it is: On a'
status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --batches --json --out "$work/papers"
says '"batches": ['
says '"cheapest": "jig"'
status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --json --out "$work/papers"
grep -q batches "$work/out" && fail "batches nobody asked for"

# The sizes are those that the job's breaks ask for, and what stands at a change; the same prices as on the quote. The shop's breaks
# stand where the job has none, and none may be wanted.
sizes() {
    status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --batches --json --out "$work/papers"
    sed -n '/^  "batches"/,$p' "$work/out" > "$work/batches"
    sed -n 's/^ *"pieces": \([0-9]*\),/\1/p' "$work/batches" | tr '\n' ' '
}
sed -i 's/^date .*/&\nbreaks 1, 30, 400/' "$work/shop/jobs/trays.job"
sizes | grep -q "^1 4 .*20 21 .*30 400 $" || fail "other sizes: $(sizes)"
status 0 "$SAWBILL" quote --json "$work/shop/jobs/trays.job" --out "$work/papers"
for size in 1 4 30 400; do
    net=$(grep -A 3 "\"pieces\": $size," "$work/batches" | sed -n 's/^ *"\([0-9.]*\)",\{0,1\}/\1/p' | tr '\n' ' ')
    quoted=$(sed -n '/^  "breaks"/,$p' "$work/out" | grep -A 20 "\"pieces\": $size," | sed -n 's/^ *"net": "\(.*\)",/\1/p' | head -n 2 | tr '\n' ' ')
    [ -n "$net" ] && [ "$net" = "$quoted" ] || fail "$size pieces: $net here, $quoted on the quote"
done
sed -i 's/^breaks .*/breaks none/' "$work/shop/jobs/trays.job"
sizes | grep -q '^1 2 4 5 .* 100 ' || fail "no sizes without breaks: $(sizes)"
sed -i '/^breaks/d' "$work/shop/jobs/trays.job"
cp "$work/shop/rates/shop.txt" "$work/shop.txt"
echo 'breaks 3, 6' >> "$work/shop/rates/shop.txt"
[ "$(sizes)" = "3 4 6 " ] || fail "not the shop's sizes: $(sizes)"
cp "$work/shop.txt" "$work/shop/rates/shop.txt"

# A job without options has batches too.
sed -i '/^option/,$d' "$work/shop/jobs/trays.job"
status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --batches --json --out "$work/papers"
says '"cheapest": null'

# What a size has to tell is its own concern: nothing of it comes out.
[ ! -s "$work/err" ] || { fail "something was told"; cat "$work/err"; }
finish
