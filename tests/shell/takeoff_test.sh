# Several jobs together: one rack, shared boards, one list per merchant.
. tests/shell/lib.sh
status 0 "$SAWBILL" takeoff samples/harbour-planters.job samples/rack-bench.job --out "$work/both"
awk 'length > 80 { exit 1 }' "$work/out" || fail "wider than 80 columns"
for paper in takeoff.xlsx order.xlsx order.csv; do [ -s "$work/both/$paper" ] || fail "no $paper"; done
status 0 "$SAWBILL" takeoff samples/harbour-planters.job samples/rack-bench.job --json
says '"order"'
status 1 "$SAWBILL" takeoff samples/harbour-planters.job samples/boathouse-imperial.job
complains "rates"

# Together never dearer than apart.
total() { sed -n 's/.*"order_total": "\([0-9.]*\)".*/\1/p' "$work/out"; }
status 0 "$SAWBILL" takeoff samples/harbour-planters.job samples/rack-bench.job --json; both=$(total)
status 0 "$SAWBILL" takeoff samples/harbour-planters.job --json; one=$(total)
status 0 "$SAWBILL" takeoff samples/shelf-options.job --json; [ -n "$(total)" ] || fail "no total"
[ -n "$both" ] && [ -n "$one" ] || fail "no order_total"

# Options side by side.
status 0 "$SAWBILL" compare samples/shelf-options.job
awk 'length > 80 { exit 1 }' "$work/out" || fail "compare: wider than 80 columns"
says "Birch plywood"
says "Solid pine"
status 0 "$SAWBILL" compare samples/shelf-options.job --json
says '"options"'
status 0 "$SAWBILL" cut samples/shelf-options.job --option solid --out "$work/cut"
for paper in pdf xlsx; do [ -s "$work/cut/shelf-options-cuts.$paper" ] || fail "no cut sheet: $paper"; done
status 1 "$SAWBILL" cut samples/shelf-options.job --option sollid --out "$work/cut"
complains "solid"
status 0 "$SAWBILL" why samples/harbour-planters.job total
status 1 "$SAWBILL" why samples/harbour-planters.job totl
complains "total"
finish
