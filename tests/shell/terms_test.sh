# Several taxes, a minimum, price points below a multiple, delivery by distance, stages: in each of the four ways a shop may quote, another
# program (gnumeric's ssconvert) recalculates quote and estimate to the cents that were stored. Then what is wrong with them.
. tests/shell/lib.sh
command -v ssconvert >/dev/null || { echo "ssconvert is missing"; exit 1; }
home=$(shop)
cat >> "$home/rates/shop.txt" <<'END'
tax         reduced 9 % of net : VAT
tax         none 0 % of net : No VAT
zone        coast 95.00
minimum     2000.00
stage       33.3333 % of total : when the frames are glued
stage       20 % of total : when the last coat is dry
END
sed -i 's/^price-point .*/price-point 10.00 less 0.05/' "$home/rates/shop.txt"
cat > "$home/samples/terms.job" <<'END'
job       terms
date      2026-03-02
customer  Reed Lane Nursery
delivery  34.5 km tax reduced : by our van
deposit   33.3333 % of total
piece     long : Long trough
  recipe  trough-planter
  tax     reduced
piece     frame
  recipe  mitred-frame
piece     short : Short trough
  recipe  trough-planter
  set     long 900 mm
  tax     reduced
piece     gate
  recipe  ledged-gate
  tax     none
END
cents() { # FILE: numbers to four decimals, as recalculate_test.sh has it
    awk -v CONVFMT=%.17g '{ line = ""
        while (match($0, /-?[0-9]+\.[0-9]+/)) {
            line = line substr($0, 1, RSTART - 1) sprintf("%.4f", substr($0, RSTART, RLENGTH))
            $0 = substr($0, RSTART + RLENGTH)
        }
        print line $0 }' "$1" > "$1.new" && mv "$1.new" "$1"
}
money() { sed -n "s/^ *\"$1\": \"\([0-9.-]*\)\".*/\1/p" "$work/json" | head -n 1; }
for prices in net gross; do
    for rounding in total line; do
        sed -i "s/^prices .*/prices $prices/; s/^tax-rounding .*/tax-rounding $rounding/" "$home/rates/shop.txt"
        out=$work/$prices-$rounding
        status 0 "$SAWBILL" quote --json "$home/samples/terms.job" --out "$out"
        cp "$work/out" "$work/json"
        [ "$(grep -c '"rate_percent": [0-9]' "$work/json")" -ge 4 ] || fail "$prices $rounding: not three taxes and a margin"
        echo "$(money deposit) $(sed -n '/"stages"/,/\]/s/.*"amount": "\(.*\)".*/\1/p' "$work/json" | tr '\n' ' ') $(money rest) $(money gross)" |
            awk '{ sum = $1 + $2 + $3 + $4; exit !(sum - $5 < 0.005 && $5 - sum < 0.005) }' ||
            fail "$prices $rounding: payments do not add up"
        for paper in quote estimate; do
            ssconvert -S "$out/terms-$paper.xlsx" "$out/stored-$paper-%n.csv" >/dev/null 2>&1
            ssconvert -S --recalc "$out/terms-$paper.xlsx" "$out/recalc-$paper-%n.csv" >/dev/null 2>&1
            for csv in "$out"/*-"$paper"-*.csv; do cents "$csv"; done
            for stored in "$out/stored-$paper"-*.csv; do
                same "$stored" "$(echo "$stored" | sed 's/stored-/recalc-/')"
            done
        done
        grep -q 'Supplement for a small order' "$out"/stored-quote-0.csv || fail "$prices $rounding: no supplement"
    done
done
status 0 "$SAWBILL" why "$home/samples/terms.job" rest
says 'when the last coat is dry'
says 'delivery km'
status 0 "$SAWBILL" why "$home/samples/terms.job" minimum
says '2 000.00 EUR'

# ---- what is wrong

# bad SED-SCRIPT MESSAGE...: the job with one mistake
bad() {
    sed "$1" "$home/samples/terms.job" > "$home/samples/bad.job"
    cmp -s "$home/samples/terms.job" "$home/samples/bad.job" && fail "nothing changed: $1"
    shift
    status 1 "$SAWBILL" quote "$home/samples/bad.job"
    for message in "$@"; do complains "$message"; done
    [ -e "$home/samples/bad" ] && fail "papers in spite of an error"
    status 1 "$SAWBILL" check "$home/samples/bad.job"
}
bad 's/  tax     none/  tax     non/' 'bad.job:17:11' '"none"'
bad 's/tax reduced :/tax reduecd :/' 'bad.job:4:' '"reduced"'
bad 's/34.5 km/zone coats/' 'bad.job:4:' '"coast"'
bad 's/34.5 km/34.5 miles/' 'bad.job:4:' 'no price for a mile'
bad 's/34.5 km/-34.5 km/' 'bad.job:4:11'
bad 's/^deposit.*/margin 100 % of price/' 'bad.job:5:'
bad 's/^deposit.*/minimum -3/' 'bad.job:5:9'
sed 's/^deposit.*/deposit 60 % of total/' "$home/samples/terms.job" > "$home/samples/bad.job"
status 1 "$SAWBILL" quote "$home/samples/bad.job"
complains 'more than 100 %'
sed 's/^deposit.*/extra 99999999999999.00 : gold/' "$home/samples/terms.job" > "$home/samples/bad.job"
status 1 "$SAWBILL" quote "$home/samples/bad.job"
complains 'bad.job:5:'
sed 's/^deposit.*/extra 9000000000000.00 : gold/' "$home/samples/terms.job" > "$home/samples/bad.job"
status 1 "$SAWBILL" quote "$home/samples/bad.job"
complains 'too large to be written'

# A discount past the floor is allowed, said loudly, and asks for a look.
sed -i '/^minimum/d' "$home/rates/shop.txt"
sed 's/^deposit.*/discount 70 % of price/' "$home/samples/terms.job" > "$home/samples/low.job"
status 3 "$SAWBILL" quote "$home/samples/low.job"
complains 'low.job:5:'
complains 'is under the floor'
says 'UNDER'

# A full discount leaves nothing to pay but delivery: no piece stands on the price point under 10.00, in no program; and a tax of three decimals
# keeps them on the quote.
sed -i 's/^prices .*/prices net/; s/^tax *reduced .*/tax reduced 9.975 % of net : VAT/' "$home/rates/shop.txt"
sed 's/^deposit.*/discount 100 % of price/' "$home/samples/terms.job" > "$home/samples/given.job"
status 3 "$SAWBILL" quote --json "$home/samples/given.job"
says '"pieces_net": "0.00"'
says '"net": "41.40"'
says '"gross": "45.53"'
complains 'is under the floor of'
for sheet in Summary Pieces; do
    ssconvert -S --recalc "$home/samples/given/given-estimate.xlsx" "$work/given-%s.csv" >/dev/null 2>&1
    ssconvert -S "$home/samples/given/given-estimate.xlsx" "$work/stored-%s.csv" >/dev/null 2>&1
    cents "$work/given-$sheet.csv"
    cents "$work/stored-$sheet.csv"
    same "$work/given-$sheet.csv" "$work/stored-$sheet.csv"
done
pdftotext -layout "$home/samples/given/given-quote.pdf" "$work/page"
grep -q '9\.975 %' "$work/page" || fail "the rate of a tax is rounded on the quote"
grep -q '9\.95$' "$work/page" && fail "a price point is left of a full discount"

# A margin just short of all is asked about.
sed 's/^deposit.*/margin 99.9999 % of price/' "$home/samples/terms.job" > "$home/samples/slip.job"
status 3 "$SAWBILL" quote "$home/samples/slip.job"
complains 'slip.job:5:1: advice: a margin of 99.9999 % of price makes the price 1000000 times the cost'

# Yen have no minor unit (ISO 4217): no paper shows a decimal of one, and what has decimals is refused.
sed -i 's/^currency .*/currency JPY/' "$home/rates/shop.txt"
status 1 "$SAWBILL" quote "$home/samples/terms.job"
complains 'shop.txt:'
sed -i 's/^zone .*/zone coast 95/; s/^delivery *trip.*/delivery trip 60/; s/^delivery *km.*/delivery km 2/; s/^price-point.*/price-point 10/' "$home/rates/shop.txt"
rm -f "$home/rates/rack.csv" "$home/rates/measured.csv"
status 0 "$SAWBILL" quote --json "$home/samples/terms.job"
grep -E '"(gross|net|deposit|rest|cost_90)": "[0-9]+"' "$work/out" | grep -q gross || fail "yen with decimals"

# In a job too, where the currency is another file's matter.
for line in 'delivery 10.50' 'minimum 1000.5' 'extra 3.99 : a ferry'; do
    sed "s/^delivery.*/$line/" "$home/samples/terms.job" > "$home/samples/bad.job"
    status 1 "$SAWBILL" quote "$home/samples/bad.job"
    complains 'bad.job:4:'
    complains 'expected an amount of JPY: no finer than whole units'
    status 1 "$SAWBILL" check "$home/samples/bad.job"
done
sed -i 's/^currency .*/currency KWD/' "$home/rates/shop.txt"
sed 's/^delivery.*/delivery 10.125/' "$home/samples/terms.job" > "$home/samples/dinar.job"
status 0 "$SAWBILL" quote --json "$home/samples/dinar.job"
says '"delivery": "10.125"'
sed -i 's/^currency .*/currency EUR/' "$home/rates/shop.txt"
status 1 "$SAWBILL" quote "$home/samples/dinar.job"
complains 'dinar.job:4:1: error: expected an amount of EUR: no finer than 2 decimals'
finish
