# The names of figures are those printed beside them: twenty and more of the papers of the samples, and near misses.
. tests/shell/lib.sh

# asked JOB FIGURE WORDS: the answer holds these words
asked() {
    status 0 "$SAWBILL" why "samples/$1.job" "$2"
    says "$3"
}
asked harbour-planters 'Total with tax' '6 552.15 EUR'
asked harbour-planters 'Total without tax' '5 415.00 EUR'
asked harbour-planters 'Cost with contingency' '4 192.47 EUR'
asked harbour-planters 'Less discount' '279.50 EUR'
asked harbour-planters 'Pieces, net' '5 320.00 EUR'
asked harbour-planters 'Price points' '9.54 EUR that price points add'
asked harbour-planters 'Floor, net' '4 087.83 EUR'
asked harbour-planters 'Earned per hour' '74.28 EUR'
asked harbour-planters 'VAT' '21 % of 5 415.00 EUR'
asked harbour-planters 'Larch slat 20 x 95, 4200 mm, of Saltmarsh Board & Panel' 'prices.csv:17'
asked harbour-planters 'Long trough' '416.00'
asked shelf-options 'Total with tax' '3 567.08 EUR'
asked shelf-options 'Delivery, net' '60.00 EUR'
asked shelf-options 'Deposit' '1 426.83 EUR'
asked shelf-options 'Left for the shop' 'left of the pieces'
asked rack-bench 'Labour' 'rates/operations.csv'
asked rack-bench 'Overhead' 'rates/shop.txt'
asked rack-bench 'brace' 'mm'
asked rack-bench 'Crosscut' 'counted from the cutting plan'
asked boathouse-imperial 'Sales tax' '6 %'
asked boathouse-imperial 'Material' 'imperial/prices.csv'
asked boathouse-imperial 'Picture frame' '110.00'

# Wood by hand: 38.30 m of 70 x 70 mm taken are 0.18767 m3, 34.56 m in parts 0.16934, 1.92 m spare 0.00941; of what is used up
# (0.18767 - 0.16934 - 0.00941) / 0.18767 = 4.8 % are waste. Time: 5 + 41.0236 / 30 x 7 = 14.6, two coats dry a day: 16 days. 8 troughs of 37.5 kg and 6 of 26.5 kg.
asked harbour-planters 'Waste' '4.8 %'
says '(0.18767 m3 used up - 0.16934 m3 in parts -'
says '(0.84881 m3 used up - 0.77823 m3 in parts -'
asked harbour-planters 'Spare for defects' '0.04206 m3 planned for knots'
says '5 % added to 34560 mm in parts asks'
says 'rates/grades.csv:2'
asked harbour-planters 'Lead time, days' '16 days'
says '= 5 days + 41.0236'
says "rates/shop.txt:$(grep -n '^week ' rates/shop.txt | cut -d: -f1)"
asked harbour-planters 'Weight, kg' '459.2 kg'
says '37.5 kg'
says 'x 590 kg/m3'
asked harbour-planters 'Cutting plan' 'at most 0.8 % above least'
says '1 479.54 EUR'
says '1 468.15 EUR'
asked harbour-planters 'Hourly rate: bench' '42.00 EUR'
says '1 691.50 EUR'
asked harbour-planters 'timber' '1 152.77 EUR'
asked harbour-planters 'Valid until' '2026-04-01'
asked harbour-planters 'Long trough.size' '1400 x 400 x 500 mm'
asked harbour-planters 'Each, net' '332.00'
asked harbour-planters 'Price of Larch slat 20 x 95' 'prices.csv:17'
asked harbour-planters '80 % of cases cost at most' '4 145.66 EUR'
asked boathouse-imperial 'Weight, lb' 'lb'
asked shelf-options 'Sheets' 'prices.csv'
status 0 "$SAWBILL" why samples/harbour-planters.job 'Lead time' --json
says '"value": "16 days"'
says '"file": "rates/shop.txt"'

# Marks by hand. Square: 1400 + 3 + 1400. At 45 degrees a cut takes 3 / cos 45 = 4.24 along a board 95 wide, and the long points of
# both parts overlap by 95 x tan 45 = 95: 1400 - 90.76 + 450 = 1759.24, on the tape 1759.5. What falls off board 1 holds six
# posts of 480 and five kerfs: 3000 - 20 - 2895 - 3 = 82.
asked harbour-planters 'mark 2 of board 15' '2803 mm'
says "rates/shop.txt:$(grep -n '^  kerf ' rates/shop.txt | head -1 | cut -d: -f1)"
says 'long = 1400 mm'
asked harbour-planters 'mark 2 of board 62' '1759.5 mm'
says 'one cut at 45°'
asked harbour-planters 'offcut of board 1' '82 mm'
asked harbour-planters 'Boards 13 to 14, rack piece L5' 'rates/rack.csv:'
asked harbour-planters 'board 46' '10.50 EUR'
says 'rates/prices.csv:17'
asked harbour-planters 'Stop at 480' '48 x post (Long trough;'
says 'wood), off 8 boards;'
asked harbour-planters 'spare for post' 'rates/grades.csv:2'
# Sheets: 1250 less 8 off each side; a side of the low unit is as long as that is high.
asked shelf-options 'fence at 1234' 'sheet 1250 mm less 8 mm'
says 'each side; rates/shop.txt:'
asked shelf-options 'cut 10 of sheet 4' '800 mm'
says 'high = 800 mm'
asked shelf-options 'strip S2 of sheet 4' '2484 x 299.5 mm'
asked shelf-options 'Sheet 4: Birch plywood 18 mm, 2500 x 1250 mm' '112.00 EUR'
asked rack-bench 'fence at 60' 'seat slat, at the back'
asked boathouse-imperial 'stop at 31 13/16' '8 x leg (Workbench)'

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

# Orders by hand: 164.50 + 13.40 + 55.60 + 124.00 + 45.80 + 9.60 + 104.40; the rack is filled up with 1 921.95 - 1 652.90 of the takeoff.
asked harbour-planters 'Ironbell Hardware' '517.30 EUR'
asked harbour-planters 'All, without tax' '1 652.90 EUR'
asked harbour-planters 'For the rack, to its minimum' '269.05 EUR'

# Another option by its title; cells of the estimate by their names; work that one kind of piece has.
asked harbour-planters 'Option 2: Exterior plywood panels, larch rim' '6 196.41 EUR'
asked harbour-planters 'confident_price' '4 282.58 EUR'
asked harbour-planters 'hourly_rate_2' '38.00 EUR'
# What is learnt is learnt on one kind of piece: two lines of one operation, each with its piece.
asked rack-bench 'labour' 'Drill and fit a bolt, Garden'
grep -q 'Assemble, Assemble' "$work/out" && fail "the operation stands for its piece"
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
for figure in total 'earned per hour'; do
    status 0 "$SAWBILL" why "$home/samples/more.job" "$figure"
    sed 1,2d "$work/out" | tr -s ' ' | grep -o '[0-9][0-9 .]* EUR' | sort > "$work/wanted"
    status 0 "$SAWBILL" why samples/harbour-planters.job "$figure at 21"
    sed 1,2d "$work/out" | tr -s ' ' | grep -o '[0-9][0-9 .]* EUR' | sort > "$work/got"
    [ "$(wc -l < "$work/wanted")" -gt 10 ] || fail "$figure: few amounts"
    same "$work/wanted" "$work/got"
done
status 1 "$SAWBILL" why samples/harbour-planters.job 'Each, net at 10'
complains 'the job comes in multiples of 7'

# Several at once: each has its answer, and every unknown one is told.
status 0 "$SAWBILL" why samples/rack-bench.job total brace --json
says '"answers"'
[ "$(grep -c '"figure"' "$work/out")" -eq 2 ] || fail "not two answers"
status 1 "$SAWBILL" why samples/rack-bench.job totl total brase
complains '"total"'
complains '"brace"'

# The quote's own words, in its language.
sed -i 's/^language .*/language de/' "$home/rates/shop.txt"
status 0 "$SAWBILL" why "$home/samples/harbour-planters.job" 'Summe mit Steuer'
says '6 552.15 EUR'
status 0 "$SAWBILL" why "$home/samples/harbour-planters.job" 'Einzelpreis ohne Steuer: Long trough'
says '416.00 EUR'
status 1 "$SAWBILL" why "$home/samples/harbour-planters.job" 'Summe mit Stuer'
complains 'did you mean "Summe mit Steuer"'

# near JOB FIGURE MEANT: an error that names what was meant
near() {
    status 1 "$SAWBILL" why "samples/$1.job" "$2"
    complains "$3"
}
near harbour-planters 'Totl with tax' 'did you mean "total with tax" or '
near shelf-options 'Flor, net' 'did you mean "floor, net"?'
near harbour-planters 'Wast' 'did you mean "waste"'
near harbour-planters 'Leed time' 'did you mean "lead time"?'
near harbour-planters 'Spare for defect' 'did you mean "spare for defects"'
near harbour-planters 'Hourly rate: bensh' 'did you mean "hourly rate: bench"'
near harbour-planters 'hourly rate: bnch' 'did you mean "hourly rate: bench"'
near shelf-options 'fence at 827' 'did you mean "fence at 826"'
near harbour-planters '0 pieces' 'unknown figure "0 pieces"'
near harbour-planters 'stop at 481' 'did you mean "stop at 480"'
near rack-bench 'labor' 'did you mean "labour"?'
finish
