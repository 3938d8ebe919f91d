# Quantity breaks: every size costs what a job of that size costs by itself; the customer sees them where the job says so.
. tests/shell/lib.sh
home=$(shop)

# job NAME TROUGHS SEATS [LINE]: two kinds of piece
job() {
    printf 'job %s\ndate 2026-04-02\ncustomer Oyster Steps\n' "$1"
    printf 'piece trough-planter\n  count %s\npiece planter-seat\n  count %s\n' "$2" "$3"
    printf 'option plain : As it is\noption more : One seat in two more\n  count planter-seat %s\n' $(($3 * 3 / 2))
    printf '%s\n' "${4:-}"
}

# Four troughs and four seats, six in an option: two sets of 2 and 2, of 2 and 3.
job sets 4 4 'breaks 1, 3' > "$home/samples/sets.job"
status 0 "$SAWBILL" quote --json "$home/samples/sets.job"
sed -n '/^  "breaks"/,$p' "$work/out" > "$work/breaks"
[ "$(grep -c '"pieces"' "$work/breaks")" -eq 3 ] || fail "not three sizes"
for sets in 1 2 3; do
    job alone $((2 * sets)) $((2 * sets)) > "$home/samples/alone.job"
    status 0 "$SAWBILL" quote --json "$home/samples/alone.job"
    grep -E '^      "(cost|net|gross)"' "$work/out" | tr -d ' ,' > "$work/wanted"
    grep -A 100 "\"pieces\": $((4 * sets))," "$work/breaks" | grep -E '^ *"(cost|net|gross)"' | head -6 | tr -d ' ,' > "$work/got"
    [ "$(wc -l < "$work/wanted")" -eq 6 ] || fail "sets: no prices of a job alone"
    same "$work/wanted" "$work/got"
done

# On paper a number of pieces has two sheets, which no page parts; of the shares of the kinds one page alone is printed.
unzip -oq "$home/samples/sets/sets-estimate.xlsx" -d "$work/sets"
for sets in 1 2 3; do
    for sheet in Batch Lines; do
        grep -q "<sheet name=\"$sheet of $((4 * sets))\"" "$work/sets/xl/workbook.xml" || fail "no sheet $sheet of $((4 * sets))"
    done
done
[ "$(grep -o '<sheet name="[A-Za-z]* of [0-9]' "$work/sets/xl/workbook.xml" | wc -l)" -eq 6 ] || fail "not two sheets a number"
grep -q "Print_Area[^>]*>Sharing!\$A\$1:" "$work/sets/xl/workbook.xml" || fail "all shares are printed"

# Quoted or not.
quoted() {
    pdftotext -layout "$home/samples/sets/sets-quote.pdf" "$work/page"
    grep -c "Prices for other numbers" "$work/page"
}
[ "$(quoted)" -eq 0 ] || fail "prices for other numbers that nobody asked for"
job sets 4 4 'breaks 1, 3 quoted' > "$home/samples/sets.job"
status 0 "$SAWBILL" quote "$home/samples/sets.job"
[ "$(quoted)" -eq 2 ] || fail "not beside each option"
sed -n 's/^ *\([0-9][0-9]*\)  .*/\1/p' "$work/page" | tr '\n' ' ' | grep -q '4 8 12 .*5 10 15' || fail "other numbers in the quote"
# Of several kinds a number says nothing by itself: its make-up stands below, in each option's own proportion.
for made in '8 = 4 x Trough planter + 4 x ' '10 = 4 x Trough planter + 6 x '; do
    grep -qF "$made" "$work/page" || fail "the customer is not told: $made"
done

# The terminal has them side by side too.
says 'Other numbers, each planned for itself'
sed -n '/^Other numbers/,/^$/p' "$work/out" | awk '{ print $1 }' | tr '\n' ' ' | grep -q ' 4 8 12 ' || fail "other numbers on the terminal"

# The shop's sizes, or none.
echo 'breaks 1, 6' >> "$home/rates/shop.txt"
job sets 4 4 'breaks quoted' > "$home/samples/sets.job"
status 0 "$SAWBILL" quote --json "$home/samples/sets.job"
says '"pieces": 24,'
[ "$(quoted)" -eq 2 ] || fail "the shop's sizes are not quoted"
job sets 4 4 'breaks none' > "$home/samples/sets.job"
status 0 "$SAWBILL" quote --json "$home/samples/sets.job"
grep -q '"breaks"' "$work/out" && fail "sizes though the job wants none"

# A size that cannot be had is left out, and told where it is asked for.
status 0 "$SAWBILL" start "$work/few"
printf 'job few\ndate 2026-04-02\ncustomer X\npiece trough-planter\nbreaks 2, 90000\n' > "$work/few/jobs/few.job"
awk -F, -v OFS=, 'NR == 1 { for (i = 1; i <= NF; i++) if ($i == "available") column = i } NR > 1 && /^larch-20x95/ { $column = 20 } { print }' \
    "$work/few/rates/prices.csv" > "$work/prices" && mv "$work/prices" "$work/few/rates/prices.csv"
status 3 "$SAWBILL" quote "$work/few/jobs/few.job"
complains 'few.job:5:1: advice: a batch of 90000 is left out: '

# mistake LINE COLUMN TEXT: told in the job and in the shop's settings
mistake() {
    job bad 1 1 "$1" > "$home/samples/bad.job"
    status 1 "$SAWBILL" check "$home/samples/bad.job"
    complains "bad.job:11:$2: error: $3"
}
mistake 'breaks 1, 12, 0' 15 'expected a size of batch from 1 to 100000'
mistake 'breaks 1, 12, 12' 15 'a batch of 12 is told twice'
mistake 'breaks 1 12' 10 'expected the end of the line'
mistake 'breaks 2.5' 8 'expected a count: "2.5" is not a whole number'
mistake 'breaks none quoted' 13 'expected the end of the line'
mistake 'breaks 1,2,3,4,5,6,7,8,9,10,11,12,13' 35 'expected at most 12 sizes'
sed -i 's/^breaks 1, 6/breaks 1, x/' "$home/rates/shop.txt"
status 1 "$SAWBILL" check "$home/rates"
complains ':11: error: expected a size of batch'
finish
