# Mistakes in jobs, recipes and rates: each a clear error with its place, status 1, nothing written.
. tests/shell/lib.sh

# bad FILE SED-SCRIPT MESSAGE...: one mistake put into a copy of the shop; the job is quoted
bad() {
    file=$1 script=$2
    shift 2
    rm -rf "$work/shop"
    home=$(shop)
    sed -i "$script" "$home/$file"
    cmp -s "$file" "$home/$file" && fail "nothing changed in $file: $script"
    status 1 "$SAWBILL" quote "$home/samples/rack-bench.job"
    for message in "$@"; do complains "$message"; done
    [ -e "$home/samples/rack-bench" ] && fail "papers in spite of an error: $script"
}
bad samples/rack-bench.job 's/^date .*/date 2026-13-01/' 'rack-bench.job:4:'
bad samples/rack-bench.job '/^customer/d' 'customer'
bad samples/rack-bench.job 's/recipe   garden-bench/recipe   garden-bnech/' "garden-bench"
bad samples/rack-bench.job 's/set      long  1600 mm/set      lnog  1600 mm/' '"long"' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/1600 m2/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/1600/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/0 mm/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/nan mm/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/99999999999999999999 mm/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/1600 mm/-5 mm/' 'rack-bench.job:10:'
bad samples/rack-bench.job 's/^piece  *gate/piece bench/' 'bench'
bad samples/rack-bench.job 's/^rack       yes/rakc yes/' '"rack"'
bad templates/garden-bench.recipe 's/^stock    leg .*/stock leg larhc-45x95/' 'larch-45x95' 'garden-bench.recipe:'
bad templates/garden-bench.recipe 's/^let      gap .*/let gap back-rows * 1 mm/' '->'
bad templates/garden-bench.recipe 's/^let      gap .*/&\nlet aa bb + 1 mm\nlet bb aa/' 'bb -> aa -> bb'
bad templates/garden-bench.recipe 's/length rail-top/length rail-top * rail-top/' 'garden-bench.recipe:' 'this is an area'
bad templates/garden-bench.recipe 's/length rail-top/length rail-top - 200 m/' 'garden-bench.recipe:' 'in piece'
bad templates/garden-bench.recipe 's/mitre rake scale parallel/mitre rake parallel/' 'scale' 'piece'
bad templates/garden-bench.recipe 's/^part     front-leg/prat front-leg/' '"part"'
bad templates/garden-bench.recipe 's/^work     drill-bolt/work drill-blot/' 'drill-bolt'
bad rates/shop.txt 's/^margin .*/margin 100 % of price/' 'shop.txt:'
bad rates/shop.txt 's/^currency .*/currency EUX/' 'EUX'
bad rates/prices.csv '2s/,[0-9][0-9.]*,/,-1,/' 'prices.csv:2:'
bad rates/stock.csv '3s/board/baord/' "board" 'stock.csv:3:'
bad rates/operations.csv '1s/minutes/minuets/' 'minutes'

# A part longer than any stock is told at the recipe's line.
rm -rf "$work/shop"
home=$(shop)
sed -i 's/from 900 mm to 2200 mm/from 900 mm to 9200 mm/' "$home/templates/garden-bench.recipe"
sed -i 's/1600 mm/9000 mm/' "$home/samples/rack-bench.job"
status 1 "$SAWBILL" quote "$home/samples/rack-bench.job"
complains "garden-bench.recipe:"

# A recipe that includes itself.
printf 'recipe a\ncomponent b\n  recipe b\n' > "$home/templates/a.recipe"
printf 'recipe b\ncomponent a\n  recipe a\n' > "$home/templates/b.recipe"
printf 'job x\ndate 2026-01-01\ncustomer c\npiece a\n' > "$home/samples/x.job"
status 1 "$SAWBILL" quote "$home/samples/x.job"
complains "a -> b -> a"

# The same tables with BOM, CRLF, semicolons and decimal commas give the same papers; tables with holes do not.
rm -rf "$work/shop"
home=$(shop)
status 0 "$SAWBILL" quote -q "$home/samples/rack-bench.job" --out "$work/plain"
sed -i 's/\([0-9]\)\.\([0-9]\)/\1,\2/g; ' "$home/rates/grades.csv" 2>/dev/null
cp rates/grades.csv "$home/rates/grades.csv"
for table in stock operations grades; do
    { printf '\357\273\277'; sed 's/$/\r/' "rates/$table.csv"; } > "$home/rates/$table.csv"
done
status 0 "$SAWBILL" quote -q "$home/samples/rack-bench.job" --out "$work/crlf"
same "$work/plain/rack-bench-order.csv" "$work/crlf/rack-bench-order.csv"
printf 'stock,title,kind\n"never closed,x,board\n' > "$home/rates/stock.csv"
status 1 "$SAWBILL" quote "$home/samples/rack-bench.job"
complains "stock.csv:2:1"
rm "$home/rates/stock.csv" && mkdir "$home/rates/stock.csv"
status 1 "$SAWBILL" quote "$home/samples/rack-bench.job"
complains "stock.csv"

# Text that a spreadsheet might take for a formula stays text.
rm -rf "$work/shop"
home=$(shop)
sed -i 's/^customer .*/customer =1+2";=1+2/; s/: Garden gate/: @SUM(A1)/' "$home/samples/rack-bench.job"
status 0 "$SAWBILL" quote "$home/samples/rack-bench.job"
mkdir "$work/x" && unzip -q "$home/samples/rack-bench/rack-bench-quote.xlsx" -d "$work/x"
cat "$work/x"/xl/worksheets/*.xml | grep -q '<f>[^<]*SUM(A1)\|<f>1+2' && fail "text became a formula"
grep -q '=1+2' "$work/x/xl/sharedStrings.xml" || fail "the customer's name was lost"

# All mistakes of a file come out in one go.
printf 'job x\ndte 2026-01-01\ncustomr c\npiece trough-planter\n  cuont 2\n' > "$home/samples/x.job"
status 1 "$SAWBILL" check "$home/samples/x.job"
complains "x.job:2:1"
complains "x.job:3:1"
complains "x.job:5:3"
finish
