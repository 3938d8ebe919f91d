# An estimate changed in a spreadsheet and recalculated by another program (gnumeric's ssconvert) says to the cent what
# sawbill says when the same is changed in the shop's rates or in the job.
. tests/shell/lib.sh
command -v ssconvert >/dev/null || { echo "ssconvert is missing"; exit 1; }
home=$(shop)
book=$home/samples/stools/stools-estimate.xlsx

# One board, one pack, nothing in the rack: a changed price leaves the plan as it is, and leftovers are worth nothing.
sed -i '/^larch-20x95,/{/,4.2 m,/!d}; /^larch-20x95,Brackwater/d' "$home/rates/prices.csv"
sed -i 's/^charge .*/charge bought/; s/^leftover *value.*/leftover value 0 % of new/' "$home/rates/shop.txt"
sed -i '2,$d' "$home/rates/rack.csv"
sed -i '/^screw-5x60,.*,pack,200/d' "$home/rates/prices.csv"
cat > "$home/templates/stool.recipe" <<'R'
recipe   stool
title    Stool
input    long  450 mm  from 300 mm to 900 mm
stock    slat  larch-20x95
part     slat
  count  7
  of     slat
  length long
fixing   screw-5x60 12 per piece
work     assemble 11 per piece
work     sand on all
R
job() {
    printf 'job stools\ndate 2026-04-02\ncustomer Oyster Steps\n'
    printf 'piece stool : Stool\n  count 5\npiece tall : Tall stool\n  recipe stool\n  count 3\n  set long 610 mm\n'
    printf 'breaks 4, 24\nrack no\ndelivery %s\ndiscount %s %%\n' "$1" "$2"
}

# place NAME: sheet and cell of a name in the workbook, as Rates!C5
place() { tr '>' '\n' < "$work/names" | grep -A 1 "definedName name=\"$1\"" | sed -n "2s/'\\([^']*\\)'!\\\$\\([A-Z]*\\)\\\$\\([0-9]*\\).*/\\1!\\2\\3/p"; }

open_book() {
    unzip -p "$book" xl/workbook.xml > "$work/names"
    tr '<' '\n' < "$work/names" | sed -n 's/^sheet name="\([^"]*\)".*/\1/p' > "$work/sheets"
}

# value FOLDER NAME: what the recalculated workbook has in a named cell
value() {
    at=$(place "$2")
    index=$(($(grep -nxF "${at%!*}" "$work/sheets" | cut -d: -f1) - 1))
    cell=${at#*!}
    column=$(printf %d "'$cell") # one letter
    sed -n "${cell#?}p" "$1/$index.txt" | cut -d'|' -f$((column - 64))
}

# recalculated CELL=VALUE...: the workbook with these cells changed, sheet by sheet
recalculated() {
    # This program changes cells of the first sheet alone, whatever sheet one names: that is where all inputs stand.
    rm -rf "$work/sheet"
    mkdir "$work/sheet"
    for change in "$@"; do
        set -- "$@" --set "$change"
        shift
    done
    ssconvert -S --recalc "$@" -T Gnumeric_stf:stf_assistant -O 'separator=| quoting-mode=never format=raw' \
        "$book" "$work/sheet/%n.txt" >/dev/null 2>&1 || fail "cannot be recalculated: $*"
}

figures='net gross tax deposit cost floor price base overhead'
# asked FILE: the same figures out of the first option of the answer for machines
asked() {
    for figure in $figures; do
        amount=$(sed -n "s/^      \"$figure\": \"\\(.*\\)\",*\$/\\1/p" "$1" | head -1)
        [ "$figure" != tax ] || amount=$(sed -n '/"tax": \[/,/\]/s/^ *"amount": "\(.*\)",*$/\1/p' "$1" | head -1)
        echo "$figure $amount"
    done
}
# shown: and out of the recalculated workbook
shown() {
    for figure in $figures; do
        case $figure in gross) name=total ;; net | tax) name=${figure}_ ;; *) name=$figure ;; esac
        printf '%s %.2f\n' "$figure" "$(value "$work/sheet" "$name")"
    done
}

# compare WHAT: sawbill's answer for the job as it stands now against the workbook as it is recalculated
compare() {
    [ "$(sed -n '/"materials"/,/\]/p' "$work/out" | grep -c '"what"')" -gt 1 ] || fail "$1: no materials"
    asked "$work/out" > "$work/wanted"
    shown > "$work/got"
    cmp -s "$work/wanted" "$work/got" || { fail "$1: not the same"; diff "$work/wanted" "$work/got"; }
    [ "$2" = same ] || ! cmp -s "$work/wanted" "$work/before" || fail "$1: nothing has changed"
}

job 20.00 3 > "$home/samples/stools.job"
status 0 "$SAWBILL" quote --json "$home/samples/stools.job"
asked "$work/out" > "$work/before"
grep -c . "$work/before" | grep -qx 9 || fail "not nine figures"
open_book
cp "$book" "$work/book.xlsx"
cp "$home/rates/shop.txt" "$home/rates/prices.csv" "$work/"
recalculated
compare "as it is" same

# tried WHAT CELL=VALUE...: the rates or the job are changed already; the workbook is the one from before
tried() {
    what=$1
    shift
    rm -rf "$home/samples/stools"
    status 0 "$SAWBILL" quote --json "$home/samples/stools.job"
    cp "$work/book.xlsx" "$book"
    recalculated "$@"
    compare "$what" changed
    cp "$work/shop.txt" "$work/prices.csv" "$home/rates/"
    job 20.00 3 > "$home/samples/stools.job"
}

# Each input by itself.
setting() {
    sed -i "s|^$1  *.*|$1 $2|" "$home/rates/shop.txt"
    tried "$1" "$(place "$3")=$4"
}
setting margin '31.5 % of price' margin_rate 0.315
setting contingency '8 % of cost' contingency_rate 0.08
setting overhead '17.35 per hour' overhead_rate 17.35
setting price-point 0.05 price_point 0.05
setting deposit '33 % of total' deposit_rate 0.33
setting tax 'standard 9.5 % of net : VAT' tax_rate 0.095
worker() {
    sed -i "s|^worker  *$1 .*|worker $1 $2 per hour|" "$home/rates/shop.txt"
    tried "hour of $1" "$(place "$3")=$2"
}
worker bench 47.77 hourly_rate_1
worker office 31.01 hourly_rate_2
job 33.33 3 > "$home/samples/stools.job"
tried delivery "$(place delivery_each)=33.33"
job 20.00 7.5 > "$home/samples/stools.job"
tried discount "$(place discount_rate)=0.075"

# Prices: their cells stand behind what they are for.
row_of() { grep -n "^$1" "$work/sheet/0.txt" | head -1 | cut -d: -f1; }
recalculated
board=$(row_of 'Larch slat 20 x 95, 4200')
screws=$(row_of 'Screw 5 x 60')
old=$(sed -n "s/^larch-20x95,\\([^,]*,\\)\\{3\\}\\([^,]*\\),.*/\\2/p" "$home/rates/prices.csv")
sed -i "/^larch-20x95,/s/,$old,/,11.37,/" "$home/rates/prices.csv"
tried 'price of a board' "Rates!C$board=11.37"
old=$(sed -n "s/^screw-5x60,\([^,]*,\)\{3\}\([^,]*\),pack,100.*/\2/p" "$home/rates/prices.csv")
sed -i "/^screw-5x60,.*,pack,100/s/,$old,/,14.15,/" "$home/rates/prices.csv"
tried 'price of screws' "Rates!C$screws=14.15"

# Several at once, and another number of pieces: every one of them follows.
sed -i 's|^margin .*|margin 18 % of price|; s|^overhead .*|overhead 9.99 per hour|' "$home/rates/shop.txt"
status 0 "$SAWBILL" quote --json "$home/samples/stools.job"
sed -n '/^  "breaks"/,$p' "$work/out" | grep -E '"(pieces|net|gross)"' | tr -d '," ' | paste -d' ' - - - > "$work/numbers"
[ "$(wc -l < "$work/numbers")" -eq 3 ] || fail "not three numbers of pieces"
cp "$work/book.xlsx" "$book"
while read -r pieces net gross; do
    recalculated "$(place margin_rate)=0.18" "$(place overhead_rate)=9.99" "$(place quantity)=${pieces#*:}"
    [ "net:$(printf %.2f "$(value "$work/sheet" net_)")" = "$net" ] || fail "$pieces: $net, not $(value "$work/sheet" net_)"
    [ "gross:$(printf %.2f "$(value "$work/sheet" total)")" = "$gross" ] || fail "$pieces: $gross, not $(value "$work/sheet" total)"
done < "$work/numbers"

# A number that nobody planned is none to choose: the workbook offers those there are. Five and three stools are one set.
unzip -p "$book" xl/worksheets/sheet1.xml | grep -q '<dataValidation type="list".*<formula1>"8,32,192"</formula1>' ||
    fail "no numbers to choose from"
finish
