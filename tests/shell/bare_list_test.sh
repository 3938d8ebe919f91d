# The bare-list contract: keys and values of `cut --parts --stock --json`.
. tests/shell/lib.sh
cat > "$work/parts.csv" <<'CSV'
name,stock,length,count
leg,post,720,4
rail,post,1180,2
CSV
cat > "$work/stock.csv" <<'CSV'
stock,length,price
post,2400,12.00
post,3000,14.50
CSV
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3mm --trim 10mm --material-only --json
for key in '"cost": "' '"bound": "' '"proved": ' '"boards": [' '"row": ' '"stock": "post"' '"length_mm": ' '"price": "' '"count": ' '"parts": [' \
    '"name": "leg"' '"at_mm": ' '"leftover_mm": ' '"certificate"'; do
    says "$key"
done
# Four legs and three kerfs take 2889 of 2980 mm in the long board, two rails and a kerf 2363 of 2380 in the short one;
# no two short boards do, since 4 x 720 + 2 x 1180 and kerfs are more than 2 x 2380.
says '"cost": "26.50"'

# A trim is 0 or at least the kerf.
status 1 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3mm --trim 2mm --json

# n parts and n - 1 kerfs fill a board flush: 7 x 300 + 6 x 3 = 2118 (common practice, no source).
printf 'name,stock,length,count\npart,bar,300,7\n' > "$work/parts.csv"
printf 'stock,length,price\nbar,2118,1\n' > "$work/stock.csv"
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3 --json
says '"cost": "1.00"'
says '"proved": true'
printf 'stock,length,price\nbar,2117.9,1\n' > "$work/stock.csv"
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3 --json
says '"cost": "2.00"'

# Sheets: halves of a sheet with a kerf between.
printf 'name,stock,length,width,count,grain\nshelf,ply,800,598.5,4,along\n' > "$work/parts.csv"
printf 'stock,length,width,price,kind\nply,2440,1220,50.00,sheet\n' > "$work/stock.csv"
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3 --trim 10 --json
for key in '"sheets": [' '"width_mm": ' '"x_mm": ' '"y_mm": ' '"w_mm": ' '"l_mm": ' '"cuts": [' '"stage": ' '"across": "' '"leftovers": ['; do
    says "$key"
done

# Bad lists: every mistake at once, with file, line and column; status 1.
printf 'name,stock,length,count\na,post,99999,1\nb,pots,100,1\nc,post,-5,1\nd,post,100,0\n' > "$work/parts.csv"
printf 'stock,length,price\npost,2400,12.00\n' > "$work/stock.csv"
status 1 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv"
complains "parts.csv:3:3"
complains "parts.csv:4:8"
complains "parts.csv:5:12"
[ -s "$work/out" ] && fail "output after an error"
printf 'name,stock,length,count\na,post,100,99999999\n' > "$work/parts.csv"
status 1 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv"
complains "parts.csv:2:1"
complains "ten million parts"
printf 'name,stock,length,count\na,post,2401,1\n' > "$work/parts.csv"
status 1 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv"
complains "parts.csv:2:"
printf 'name,stock,length,count\na,post,2000,3\n' > "$work/parts.csv"
printf 'stock,length,price,available\npost,2400,12.00,2\n' > "$work/stock.csv"
status 1 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv"
complains "not enough"
finish
