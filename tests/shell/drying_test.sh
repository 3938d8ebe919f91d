# Coats dry as waiting time: no labour, but days of the lead time; in the papers, and for machines.
. tests/shell/lib.sh
home=$(shop)
job=$home/samples/allotment-beds.job

# told VALUE: what the job says with coats of deck oil that dry so long; a raised bed has one
told() {
    sed "s/^\(deck-oil,.*\),12 h,/\1,$1,/" rates/stock.csv > "$home/rates/stock.csv"
    status 0 "$SAWBILL" quote "$job"
    cp "$work/out" "$work/summary"
    status 0 "$SAWBILL" quote --json "$job"
    figures=$(sed -n 's/^      "\(labour\|lead_days\|drying_hours\)": \(.*\),$/\2/p' "$work/out" | tr -d '"' | tr '\n' ' ')
    pdftotext -layout "$home/samples/allotment-beds/allotment-beds-quote.pdf" - | grep -qi 'dry' && fail "the quote tells how the shop works"
}
told ''
[ "$figures" = "581.53 9 0 " ] || fail "without a word of drying: $figures"
grep -q 'dry' "$work/summary" && fail "drying nobody told of"
told '48 h' # 13.92 h at 30 a week are 3.25 days, and two more
[ "$figures" = "581.53 11 48 " ] || fail "two days: $figures"
grep -q '11 days, with 48.00 h for coats to dry' "$work/summary" || fail "not on the terminal"
unzip -p "$home/samples/allotment-beds/allotment-beds-estimate.xlsx" xl/sharedStrings.xml | grep -q '48.00 h for coats to dry, which cost no labour' ||
    fail "not in the estimate"

# mistake ROW VALUE WORDS
mistake() {
    sed "s/^\($1,.*\),[^,]*\(,[^,]*,[^,]*\)$/\1,$2\2/" rates/stock.csv > "$home/rates/stock.csv"
    status 1 "$SAWBILL" check "$home/rates"
    complains "stock.csv:$(grep -n "^$1," rates/stock.csv | cut -d: -f1):"
    complains "$3"
}
mistake deck-oil '-1 h' 'a coat does not dry in less than no time'
mistake larch-20x95 '1 h' 'it is for finishes'
mistake deck-oil '12 mm' 'expected a time'
mistake deck-oil '12' 'how long a coat dries has a unit'
finish
