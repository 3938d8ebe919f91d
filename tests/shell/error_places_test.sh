# Each mistake once, at the word that is wrong, with what was expected there.
. tests/shell/lib.sh

small() {
    rm -rf "$work/shop" "$work/papers"
    home=$(shop)
    job=$home/samples/small.job recipe=$home/templates/small.recipe
    printf 'job small\ndate 2026-03-02\ncustomer Reed Lane Nursery\npiece rack\n  recipe small\n' > "$job"
    cat > "$recipe" <<'RECIPE'
recipe small
title Small rack
input long 1000 mm from 400 mm to 2400 mm : along the rail
choice tray yes | no : a tray below
stock leg larch-45x95
part rail
  count 2
  of leg
  length long
RECIPE
}

# wrong FILE SED-SCRIPT PLACE MESSAGE: one mistake, one error, at its place
wrong() {
    small
    sed -i "$2" "$home/$1"
    status 1 "$SAWBILL" quote "$job" --out "$work/papers"
    complains "$3"
    complains "$4"
    [ "$(grep -c ': error: ' "$work/err")" -eq 1 ] || { fail "not one error: $2"; cat "$work/err"; }
}
small
status 0 "$SAWBILL" quote -q "$job" --out "$work/papers"

wrong samples/small.job '3a tax foo' 'small.job:4:5' 'unknown tax "foo"'
wrong templates/small.recipe 's/length long/length 1e300 m/' 'small.recipe:9:10' '"e300" is an exponent'
wrong templates/small.recipe 's/long 1000 mm/long 1e-3 m/' 'small.recipe:3:12' '"e-3" is an exponent'
wrong samples/small.job 's/recipe small/recipe smoll/' 'small.job:5:10' 'unknown recipe "smoll"'
small
sed -i 's/^language .*/language fr/' "$home/rates/shop.txt"
status 1 "$SAWBILL" quote "$job"
complains 'in the wording of the language "fr", at '
complains "shop.txt:$(grep -n '^language' "$home/rates/shop.txt" | cut -d: -f1):1"
wrong templates/wording-en.txt '/^quote /d' 'wording-en.txt:1:1' 'a line "quote : ..." is expected and missing'

# A part that fits no board is told once, without the spare that goes with it; and what would have done.
wrong templates/small.recipe 's/length long/length long + 9 m/' 'small.recipe:6:1' '"larch-45x95" of 4800 mm, of which 4780 mm can be used'
wrong templates/small.recipe 's/from 400 mm to 2400 mm/from 4 m to 2 m/' 'small.recipe:3:25' 'upside down'
wrong templates/small.recipe 's/^part rail/part rail when tray = maybe/' 'small.recipe:6:23' 'unknown word for tray "maybe"; known: yes, no'
wrong templates/small.recipe 's/^part rail/part rail when maybe != tray/' 'small.recipe:6:16' 'unknown word for tray "maybe"; known: yes, no'
wrong templates/small.recipe 's/^part rail/part rail if tray = yes/' 'small.recipe:6:11' 'expected `when`'
wrong templates/small.recipe 's/count 2/count 2 if tray = yes/' 'small.recipe:7:11' 'if(CONDITION, A, B)'

# Numbers as other places write them.
wrong templates/small.recipe 's/1000 mm/1000,5 mm/' 'small.recipe:3:12' 'comma where a decimal point is expected'
wrong templates/small.recipe 's/length long/length (long - 2,5 mm) * 1/' 'small.recipe:9:18' 'comma where a decimal point is expected'
wrong templates/small.recipe 's/1000 mm/39 3\/8/' 'small.recipe:3:12' 'a fraction needs its unit'
wrong templates/small.recipe 's/length long/length long - 1 3\/8/' 'small.recipe:9:17' 'a fraction needs its unit'
wrong templates/small.recipe 's/1000 mm/1000 mn/' 'small.recipe:3:12' 'did you mean "mm"?'
wrong templates/small.recipe 's/length long/length (long - 1 furlong)/' 'small.recipe:9:18' '"furlong" is not a unit'
wrong samples/small.job '$a\  set long 1.2 mtr' 'small.job:6:12' '"mtr" is not a unit'

wrong samples/small.job '3a discount 5' 'small.job:4:10' 'expected a percentage'
wrong samples/small.job '3a delivery 95,00' 'small.job:4:10' 'comma where a decimal point is expected'

# Rates.
wrong rates/shop.txt 's/^  kerf .* 3 mm$/  kerf 3 mmm/' 'shop.txt:' '"mmm" is not a unit; did you mean "mm"?'
wrong rates/shop.txt 's/^margin .*/margin 25,5 % of price/' 'shop.txt:' 'comma where a decimal point is expected'
wrong rates/shop.txt 's/^margin .*/margin 25 of price/' 'shop.txt:' 'expected a percentage'
wrong rates/stock.csv '/^larch-45x95,/s/,590,/,-590,/' "stock.csv:" 'expected a density in whole kg/m3'
wrong rates/stock.csv '/^larch-45x95,/s/,590,/,590.5,/' "stock.csv:" 'expected a density in whole kg/m3'

# What the vehicle cannot carry, and what is sold out.
bare() {
    printf '%s\n' "$1" > "$work/parts.csv"
    printf '%s\n' "$2" > "$work/stock.csv"
    status "$3" "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3
}
parts='name,stock,length,count'
stock='stock,length,price,available'
bare "$parts
a,post,2500,1" "$stock
post,2400,12.00,
post,3000,15.00,0
post,3600,17.00,0" 1
complains 'the nearest is "post" of 2400 mm, of which 2400 mm can be used; one of 3000 mm would do, but there is none left'
bare "$parts
a,post,2500,1" "$stock
post,3000,15.00,0" 1
complains 'there is no "post" on offer; one of 3000 mm would do, but there is none left'

# Bare lists: a column that is missing, a name or a list that is empty.
bare "name,stock,length
a,post,500
b,post,600" "$stock
post,2400,12.00," 1
[ "$(grep -c ': error: ' "$work/err")" -eq 1 ] || fail "a missing column brings more errors"
complains 'the column "count" is missing'
bare "$parts
,post,500,1" "$stock
post,2400,12.00," 1
complains 'parts.csv:2:1'
complains 'expected the name of the part here'
bare "$parts" "$stock
post,2400,12.00," 1
complains 'parts.csv:1:1: error: there are no parts in this list'
bare "$parts
a,post,500," "$stock
post,2400,12.00," 1
complains 'expected the count here'

# A row of stock without a kind is a board, with a width or without: strips are ripped out of it.
bare "name,stock,length,count,width
slat,board,1000,3,30" "stock,length,price,width
board,1000,4.00,100" 0
status 0 "$SAWBILL" cut --parts "$work/parts.csv" --stock "$work/stock.csv" --kerf 3 --json
says '"boards": ['
says '"cost": "4.00"'
finish
