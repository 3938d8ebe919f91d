# Ctrl-C ends a long search: the best plan so far with its bound, status 3; no word on how far it is where nobody watches.
. tests/shell/lib.sh
"$SAWBILL" start "$work/shop" > "$work/started.txt"
awk 'BEGIN { x = 5; print "name,stock,length,count"
             for (i = 0; i < 150; i++) { x = (x * 48271) % 2147483647
                                         print "part " i ",bar," 300 + x % 2000 "," 1 + x % 40 } }' > "$work/shop/parts.csv"
printf 'stock,length,price\nbar,4000,10\nbar,4800,11.90\nbar,6000,15.20\n' > "$work/shop/stock.csv"
"$SAWBILL" cut --parts "$work/shop/parts.csv" --stock "$work/shop/stock.csv" --kerf 3 --seconds 300 > "$work/out.txt" 2> "$work/err.txt" &
search=$!
sleep 2
kill -INT "$search"
came=0
wait "$search" || came=$?
[ "$came" -eq 3 ] || fail "status $came, not 3"
grep -q '% above least' "$work/out.txt" || fail "no bound beside the plan"
[ ! -s "$work/err.txt" ] || fail "something was told: $(cat "$work/err.txt")"
finish
