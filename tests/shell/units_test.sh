# --units only writes lengths otherwise: parts, plan and price stay, and an order keeps the merchant's sizes.
. tests/shell/lib.sh
status 0 "$SAWBILL" quote samples/harbour-planters.job --out "$work/mm"
says 'Cost          '
grep -E '^(Cost|Price|Cutting plan|Net|VAT|Total)' "$work/out" >"$work/figures"
status 0 "$SAWBILL" quote samples/harbour-planters.job --units in --out "$work/in"
grep -E '^(Cost|Price|Cutting plan|Net|VAT|Total)' "$work/out" >"$work/same-figures"
same "$work/figures" "$work/same-figures"
says '55 1/8" x 15 3/4"'
same "$work/mm/harbour-planters-order.csv" "$work/in/harbour-planters-order.csv"
grep -q '3600 mm' "$work/in/harbour-planters-order.csv" || fail "a board is ordered in other units than it is sold in"

# A pack is called what the merchant calls it.
grep -q 'glue,310 ml,' "$work/mm/harbour-planters-order.csv" || fail "glue is not ordered as it is sold"
finish
