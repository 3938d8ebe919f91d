# Sizes of pieces on the quote in metric, imperial or both. By hand, with 25.4 mm an inch (international yard and pound agreement, 1959):
# 1400 mm are 55.118 in, so 55 1/8 to the sixteenth; 400 mm 15 3/4, 500 mm 19 11/16; 34 in are 863.6 mm, 90 in 2286 mm.
. tests/shell/lib.sh
home=$(shop)
planters=$home/samples/harbour-planters
bench=$home/samples/boathouse-imperial

# told JOB [OPTION...]: what the customer reads on the pages and in the workbook, each on one line
told() {
    name=${1##*/}
    paper=$1/$name-quote
    job=$1.job
    shift
    status 0 "$SAWBILL" quote -q "$job" "$@"
    pdftotext -raw "$paper.pdf" - | tr '\n\302\240' '   ' | tr -s ' ' > "$work/page"
    unzip -p "$paper.xlsx" xl/sharedStrings.xml | sed 's/&quot;/"/g' > "$work/workbook"
}
both_say() {
    for paper in page workbook; do
        grep -qF -- "$1" "$work/$paper" || fail "$2: the $paper does not say: $1"
    done
}
neither_says() {
    for paper in page workbook; do
        grep -qF -- "$1" "$work/$paper" && fail "$2: the $paper says: $1"
    done
}
metric='1400 x 400 x 500 mm' imperial='55 1/8" x 15 3/4" x 19 11/16"'
rounded='We work to the sizes that stand first; those in brackets are rounded.'
alone='Sizes are rounded to 1/16"; we work to the exact ones.'

told "$planters"
both_say "$metric" "without a word"
neither_says '55 1/8"' "without a word"
neither_says "$rounded" "without a word"
neither_says 'Sizes are rounded' "without a word"

# The shop says both; pictures have them too.
sed -i 's/^units .*/&\nquote-units both/' "$home/rates/shop.txt"
told "$planters"
both_say "$metric ($imperial)" "shop: both"
both_say "$rounded" "shop: both"
for size in '1400 mm (55 1/8")' '400 mm (15 3/4")' '500 mm (19 11/16")'; do
    grep -qF -- "$size" "$work/page" || fail "no $size in the pictures"
done

# The job's own word goes before the shop's, the command line before both.
sed -i 's/^date .*/&\nquote-units in/' "$planters.job"
told "$planters"
both_say "$imperial" "job: in"
neither_says "$metric" "job: in"
neither_says "$rounded" "job: in"
both_say "$alone" "job: in"
told "$planters" --units mm
both_say "$metric" "asked: mm"
neither_says '55 1/8"' "asked: mm"
neither_says 'Sizes are rounded' "asked: mm"
told "$planters" --units in
both_say "$imperial" "asked: in"
both_say 'Sizes are rounded to 1/32"; we work to the exact ones.' "asked: in"

# Sizes that are inches to the sixteenth are exact, and nothing is said: 1397 mm are 55 in, 406.4 mm 16 in, 508 mm 20 in.
sed 's/^  set      long  1400 mm/  set      long 55 in\n  set      wide 16 in/; s/^  set      high  500 mm/  set      high 20 in/; /^piece      short/,/^  set      high/d' \
    "$planters.job" > "$home/samples/inches.job"
sed -i 's/^job .*/job inches/' "$home/samples/inches.job"
told "$home/samples/inches"
both_say '55" x 16" x 20"' "exact inches"
neither_says 'Sizes are rounded' "exact inches"

# In German too.
sed -i 's/^language .*/language de/' "$home/rates/shop.txt"
told "$planters"
both_say 'Die Maße sind auf 1/16" gerundet; wir arbeiten nach den genauen.' "German"
sed -i 's/^language .*/language en/' "$home/rates/shop.txt"

# A shop in inches tells these first, and millimetres behind them.
sed -i 's/^date .*/&\nquote-units both/' "$bench.job"
told "$bench"
both_say '90" x 26 1/2" x 34" (2286 x 673 x 864 mm)' "inches first"
sed -i 's/^quote-units .*/quote-units mm/' "$bench.job"
told "$bench"
both_say '2286 x 673 x 864 mm' "job: mm"
neither_says '26 1/2"' "job: mm"
both_say 'Sizes are rounded to 1 mm; we work to the exact ones.' "job: mm"

# Mistakes, at their place.
sed -i 's/^quote-units .*/quote-units boht/' "$bench.job"
status 1 "$SAWBILL" quote "$bench.job"
complains "boathouse-imperial.job:$(grep -n '^quote-units' "$bench.job" | cut -d: -f1):13: error: unknown word \"boht\"; did you mean \"both\"?"
sed -i 's/^quote-units .*/quote-units cm/' "$home/rates/shop.txt"
status 1 "$SAWBILL" check "$home/rates"
complains "shop.txt:$(grep -n '^quote-units' "$home/rates/shop.txt" | cut -d: -f1):13: error: "
finish
