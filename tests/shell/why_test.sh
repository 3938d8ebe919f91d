# The names of figures are those printed beside them: twenty and more of the papers of the samples, and near misses.
. tests/shell/lib.sh

# ask STATUS JOB: the figures of standard input at once, a line each, "FIGURE | WORDS | WORDS"; their answers in $work/answers
ask() {
    sed '/^#/d; s/ *| */|/g' > "$work/lines"
    cut -d'|' -f1 "$work/lines" > "$work/figures"
    set -- "$1" "$2" "$IFS"
    IFS='
'
    status "$1" "$SAWBILL" why "$2" $(cat "$work/figures")
    IFS=$3
    cp "$work/out" "$work/answers"
}

# all_say: each answer holds all the words of its line
all_say() {
    [ -s "$work/lines" ] || fail "no figures"
    while IFS='|' read -r figure words; do
        answer "$figure"
        [ -n "$words" ] || fail "no words for $figure"
        while [ -n "$words" ]; do
            says "${words%%|*}"
            case $words in *'|'*) words=${words#*|} ;; *) words= ;; esac
        done
    done < "$work/lines"
}

# asked JOB: the answers of that sample to what standard input asks hold what it says
asked() {
    ask 0 "samples/$1.job"
    all_say
}

asked harbour-planters <<END
Total with tax | 6 552.15 EUR
Total without tax | 5 415.00 EUR
Cost with contingency | 4 192.47 EUR
Less discount | 279.50 EUR
# 5 320.00 / 0.95, as on the quote, and 5 % of that; of the price it is 279.50
List price of the pieces | 5 600.00 EUR
Discount | 280.00 EUR
Pieces, net | 5 320.00 EUR
Price points | 9.54 EUR that price points add
Floor, net | 4 087.83 EUR
Earned per hour | 74.28 EUR
VAT | 21 % of 5 415.00 EUR
Larch slat 20 x 95, 4200 mm, of Saltmarsh Board & Panel | prices.csv:17
Long trough | 416.00
# Wood by hand: 38.30 m of 70 x 70 mm taken are 0.18767 m3, 34.56 m in parts 0.16934, 1.92 m spare 0.00941; of what is used up
# (0.18767 - 0.16934 - 0.00941) / 0.18767 = 4.8 % are waste. Time: 5 + 41.0236 / 30 x 7 = 14.6, two coats dry a day: 16 days. 8
# troughs of 37.5 kg and 6 of 26.5 kg.
Waste | 4.8 % | (0.18767 m3 used up - 0.16934 m3 in parts - | (0.84881 m3 used up - 0.77823 m3 in parts -
Spare for defects | 0.04206 m3 planned for knots | 5 % added to 34560 mm in parts asks | rates/grades.csv:2
Lead time, days | 16 days | = 5 days + 41.0236 | rates/shop.txt:$(grep -n '^week ' rates/shop.txt | cut -d: -f1)
Weight, kg | 459.2 kg | 37.5 kg | x 590 kg/m3
Cutting plan | at most 0.8 % above least | 1 479.54 EUR | 1 468.15 EUR
Hourly rate: bench | 42.00 EUR | 1 691.50 EUR
timber | 1 152.77 EUR
Valid until | 2026-04-01
Long trough.size | 1400 x 400 x 500 mm
Each, net | 332.00
Price of Larch slat 20 x 95 | prices.csv:17
80 % of cases cost at most | 4 145.66 EUR
# Marks by hand. Square: 1400 + 3 + 1400. At 45 degrees a cut takes 3 / cos 45 = 4.24 along a board 95 wide, and the long points of
# both parts overlap by 95 x tan 45 = 95: 1400 - 90.76 + 450 = 1759.24, on the tape 1759.5. What falls off board 1 holds six
# posts of 480 and five kerfs: 3000 - 20 - 2895 - 3 = 82.
mark 2 of board 15 | 2803 mm | rates/shop.txt:$(grep -n '^  kerf ' rates/shop.txt | head -1 | cut -d: -f1) | long = 1400 mm
mark 2 of board 62 | 1759.5 mm | one cut at 45°
offcut of board 1 | 82 mm
Boards 13 to 14, rack piece L5 | rates/rack.csv:
board 46 | 10.50 EUR | rates/prices.csv:17
Stop at 480 | 48 x post (Long trough; | wood), off 8 boards;
spare for post | rates/grades.csv:2
# Orders by hand: 164.50 + 13.40 + 55.60 + 124.00 + 45.80 + 9.60 + 104.40; the rack is filled up with 1 921.95 - 1 652.90 of the takeoff.
Ironbell Hardware | 517.30 EUR
All, without tax | 1 652.90 EUR
For the rack, to its minimum | 269.05 EUR
# Another option by its title; cells of the estimate by their names.
Option 2: Exterior plywood panels, larch rim | 6 196.41 EUR
confident_price | 4 282.58 EUR
hourly_rate_2 | 38.00 EUR
END
asked shelf-options <<END
Total with tax | 3 567.08 EUR
Delivery, net | 60.00 EUR
Deposit | 1 426.83 EUR
Left for the shop | left of the pieces
Sheets | prices.csv
# Sheets: 1250 less 8 off each side; a side of the low unit is as long as that is high.
fence at 1234 | sheet 1250 mm less 8 mm | each side; rates/shop.txt:
cut 10 of sheet 4 | 800 mm | high = 800 mm
strip S2 of sheet 4 | 2484 x 299.5 mm
Sheet 4: Birch plywood 18 mm, 2500 x 1250 mm | 112.00 EUR
END
# What is learnt is learnt on one kind of piece: two lines of one operation, each with its piece.
asked rack-bench <<END
Labour | rates/operations.csv
Overhead | rates/shop.txt
brace | mm
Crosscut | counted from the cutting plan
fence at 60 | seat slat, at the back
labour | Drill and fit a bolt, Garden
END
grep -q 'Assemble, Assemble' "$work/answers" && fail "the operation stands for its piece"
asked boathouse-imperial <<END
Sales tax | 6 %
Material | imperial/prices.csv
Picture frame | 110.00
Weight, lb | lb
stop at 31 13/16 | 8 x leg (Workbench)
END
status 0 "$SAWBILL" why samples/harbour-planters.job 'Lead time' --json
says '"value": "16 days"'
says '"file": "rates/shop.txt"'

# A measured board of the rack: 1310 mm with a split up to 60, where a part of 890 begins; 1310 - 950 - 3 = 357 fall off, and the
# blade cuts the split away from 57 on.
home=$(shop)
sed -i 's/^L3,larch-28x145,1310 mm,,2,/L3,larch-28x145,1310 mm,,1,/' "$home/rates/rack.csv"
printf 'board,from,to,kind\nL3,20,60,split\n' > "$home/rates/measured.csv"
printf 'job gates\ndate 2026-03-02\ncustomer Somebody\nrack yes\npiece ledged-gate\n  count 2\n  set wide 950 mm\n' > "$home/samples/gates.job"
status 0 "$SAWBILL" cut "$home/samples/gates.job"
number=$(grep -o '^Board [0-9]*, rack piece  *1310 ' "$work/out" | grep -o '[0-9]*,' | tr -d ,)
status 0 "$SAWBILL" why "$home/samples/gates.job" "mark 1 of board $number" "offcut of board $number" waste
for text in 'rates/measured.csv:2' '950 mm' '357 mm' '57 mm'; do says "$text"; done

# Work that is learnt is told of each piece.
rm "$home/rates/measured.csv"
sed -i '1s/$/,learning/; 2,$s/$/,/; /^assemble,/s/,$/,90 %/' "$home/rates/operations.csv"
status 0 "$SAWBILL" why "$home/samples/rack-bench.job" labour
says 'Assemble, Garden bench'
says 'Assemble, Garden gate'
cp rates/*.csv "$home/rates/"

# Another number of pieces is planned for itself: twelve and nine troughs come to the same as a job of that many.
sed 's/^  count    8/  count    12/; s/^  count    6/  count    9/' samples/harbour-planters.job > "$home/samples/more.job"
status 0 "$SAWBILL" why samples/harbour-planters.job 'Total with tax at 21' '21 pieces' --json
says '"pieces": 21'
# amounts FIGURE: in the lines of its answer, without heading
amounts() {
    answer "$1"
    sed 1,2d "$work/out" | tr -s ' ' | grep -o '[0-9][0-9 .]* EUR' | sort
}
ask 0 "$home/samples/more.job" <<END
total
earned per hour
END
for figure in total 'earned per hour'; do amounts "$figure" > "$work/wanted $figure"; done
ask 0 samples/harbour-planters.job <<END
total at 21
earned per hour at 21
END
for figure in total 'earned per hour'; do
    amounts "$figure" > "$work/got"
    grep -q '^Where .*, at 21 pieces$' "$work/out" || fail "$figure: not that at 21"
    [ "$(wc -l < "$work/wanted $figure")" -gt 10 ] || fail "$figure: few amounts"
    same "$work/wanted $figure" "$work/got"
done
status 1 "$SAWBILL" why samples/harbour-planters.job 'Each, net at 10'
complains 'the job comes in multiples of 7'

# Several at once: each has its answer, and every unknown one is told.
status 0 "$SAWBILL" why samples/shelf-options.job total 'cut 10 of sheet 4' --json
says '"answers"'
[ "$(grep -c '"figure"' "$work/out")" -eq 2 ] || fail "not two answers"
status 1 "$SAWBILL" why samples/shelf-options.job totl total 'fence at 827'
complains '"total"'
complains '"fence at 826"'
[ -s "$work/out" ] && fail "answers beside errors"

# The quote's own words, in its language.
sed -i 's/^language .*/language de/' "$home/rates/shop.txt"
ask 0 "$home/samples/harbour-planters.job" <<END
Summe mit Steuer | 6 552.15 EUR
Einzelpreis ohne Steuer: Long trough | 416.00 EUR
END
all_say
status 1 "$SAWBILL" why "$home/samples/harbour-planters.job" 'Summe mit Stuer'
complains 'did you mean "Summe mit Steuer"'

# near JOB: of each line, "FIGURE | WORDS", the error about this figure holds these words; all are asked at once
near() {
    ask 1 "samples/$1.job"
    while IFS='|' read -r figure words; do
        grep -F "unknown figure \"$figure\"" "$work/err" | grep -qF -- "$words" || fail "the error about $figure does not say: $words"
    done < "$work/lines"
}
near harbour-planters <<END
Totl with tax | did you mean "total with tax" or "
Wast | did you mean "waste"
Leed time | did you mean "lead time"?
Spare for defect | did you mean "spare for defects"
Hourly rate: bensh | did you mean "hourly rate: bench"
hourly rate: bnch | did you mean "hourly rate: bench"
0 pieces | unknown figure "0 pieces"
stop at 481 | did you mean "stop at 480"
END
near shelf-options <<END
Flor, net | did you mean "floor, net"?
END
near shelf-options <<END
fence at 827 | did you mean "fence at 826"
END
near rack-bench <<END
totl | did you mean "total"
brase | "brace"
labor | did you mean "labour"?
END
finish
