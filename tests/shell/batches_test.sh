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

# A job without options has batches too.
sed -i '/^option/,$d' "$work/shop/jobs/trays.job"
status 0 "$SAWBILL" compare "$work/shop/jobs/trays.job" --batches --json --out "$work/papers"
says '"cheapest": null'

# What a size has to tell is its own concern: nothing of it comes out.
[ ! -s "$work/err" ] || { fail "something was told"; cat "$work/err"; }
finish
