# Boards where there is too little, too much or nothing: what is said, and with which status.
. tests/shell/lib.sh

# cut STATUS PARTS STOCK: plans these rows
cut() {
    printf 'name,stock,length,count\n%s' "$2" > "$work/parts.csv"
    printf 'stock,length,price,available\n%s' "$3" > "$work/stock.csv"
    status "$1" "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3mm --material-only --json
}

# A part longer than any board: the nearest one is named, and no plan comes out.
cut 1 'rail,post,3001,1
leg,post,700,2
' 'post,3000,14.50,
post,2400,12.00,
'
complains 'parts.csv:2:'
complains '"rail" is 3001 mm long; the nearest is "post" of 3000 mm'
[ -s "$work/out" ] && fail "output after an error"

# Two boards carry three legs each and no rail beside them: what cannot be had is named with how many are missing.
cut 1 'leg,post,750,8
rail,post,1500,1
' 'post,2400,12.00,2
'
complains '"leg" (750 mm) cannot be cut'
[ "$(grep -c 'of 8 "leg"\|of 1 "rail"' "$work/err")" -ge 1 ] || fail "what is missing is not counted"
[ -s "$work/out" ] && fail "output after an error"

# Nothing that is bought costs nothing; a leftover may.
cut 1 'leg,post,700,3
' 'post,2400,0,
post,3000,14.50,
'
complains 'stock.csv:2:11: error: only a leftover may cost nothing'
printf 'stock,length,price,kind\npost,2400,0,leftover\npost,3000,14.50,board\n' > "$work/stock.csv"
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3mm --material-only --json
says '"cost": "0.00"'
says '"proved": true'

# A thousand pickets: 3000 + 3 is nine times 300 + 3 and some, so 112 boards.
cut 0 'picket,post,300,1000
' 'post,3000,5.00,
'
says '"cost": "560.00"'
says '"proved": true'

# One part; then none.
cut 0 'leg,post,700,1
' 'post,2400,12.00,
'
says '"cost": "12.00"'
cut 1 '' 'post,2400,12.00,
'
complains 'there are no parts in this list'

# The order of rows is nothing to the cost.
cut 0 'leg,post,720,5
rail,post,1180,3
brace,post,533,4
' 'post,2400,12.00,
post,3000,14.50,
post,1300,4.00,1
'
grep '"cost": ' "$work/out" | head -n 1 > "$work/cost"
cut 0 'brace,post,533,4
leg,post,720,5
rail,post,1180,3
' 'post,1300,4.00,1
post,3000,14.50,
post,2400,12.00,
'
grep '"cost": ' "$work/out" | head -n 1 > "$work/again"
same "$work/cost" "$work/again"
finish
