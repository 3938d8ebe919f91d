# A new shop works at once, metric and imperial, wherever it stands.
. tests/shell/lib.sh
for units in mm in; do
    status 0 "$SAWBILL" start "$work/shop-$units" --units $units
    status 0 "$SAWBILL" check "$work/shop-$units/jobs/first.job" "$work/shop-$units"/templates/*.recipe "$work/shop-$units"
    status 0 "$SAWBILL" quote "$work/shop-$units/jobs/first.job"
    [ -s "$work/shop-$units/jobs/first/first-quote.xlsx" ] || fail "no quote in a new shop ($units)"
done
status 1 "$SAWBILL" start "$work/shop-mm"
status 4 "$SAWBILL" start "$work/shop-mm/rates/shop.txt/below"
(cd "$work" && status 0 "$SAWBILL" start relative && [ -d relative/rates ]) || fail "a relative folder"
finish
