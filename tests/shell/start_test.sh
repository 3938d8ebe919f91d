# A new shop works at once, metric and imperial, wherever it stands.
. tests/shell/lib.sh
for units in mm in; do
    status 0 "$SAWBILL" start "$work/shop-$units" --units $units
    status 0 "$SAWBILL" check "$work/shop-$units/jobs/first.job" "$work/shop-$units"/templates/*.recipe "$work/shop-$units"
    status 0 "$SAWBILL" quote "$work/shop-$units/jobs/first.job"
    [ -s "$work/shop-$units/jobs/first/first-quote.xlsx" ] || fail "no quote in a new shop ($units)"
    [ -s "$work/shop-$units/rates/README.md" ] || fail "no manual of the rates ($units)"
done
status 1 "$SAWBILL" start "$work/shop-mm"

# Rates that are not there are told where the job names them; a job has to be called one.
sed 's/^customer .*/&\nrates imperial/' "$work/shop-mm/jobs/first.job" >"$work/shop-mm/jobs/other.job"
status 1 "$SAWBILL" quote "$work/shop-mm/jobs/other.job"
complains 'other.job:6:7: error: these rates are not there'
cp "$work/shop-mm/jobs/first.job" "$work/shop-mm/jobs/order7"
status 1 "$SAWBILL" quote "$work/shop-mm/jobs/order7"
complains 'NAME.job'
status 4 "$SAWBILL" start "$work/shop-mm/rates/shop.txt/below"
(cd "$work" && status 0 "$SAWBILL" start relative && [ -d relative/rates ]) || fail "a relative folder"
finish
