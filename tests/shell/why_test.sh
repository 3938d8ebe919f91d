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
# (0.18767 - 0.16934 - 0.00941) / 0.18767 = 4.8 % are waste. Time: 5 + 41.0236 / 30 x 7 = 14.6, so 15 days. 8 troughs of 37.5 kg and 6 of 26.5 kg.
asked harbour-planters 'Waste' '4.8 %'
says '(0.18767 m3 used up - 0.16934 m3 in parts -'
says '(0.84881 m3 used up - 0.77823 m3 in parts -'
asked harbour-planters 'Spare for defects' '0.04206 m3 planned for knots'
says '5 % added to 34560 mm in parts asks'
says 'rates/grades.csv:2'
asked harbour-planters 'Lead time, days' '15 days'
says '5 days + 41.0236 h / 30.00 h'
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
says '"value": "15 days"'
says '"file": "rates/shop.txt"'

# near JOB FIGURE MEANT: an error that names what was meant
near() {
    status 1 "$SAWBILL" why "samples/$1.job" "$2"
    complains "$3"
}
near harbour-planters 'Totl with tax' 'did you mean "total with tax" or '
near shelf-options 'Flor, net' 'did you mean "floor, net"?'
near harbour-planters 'Wast' 'did you mean "waste"'
near harbour-planters 'Leed time' 'did you mean "lead time"?'
near harbour-planters 'Spare for defect' 'did you mean "spare for defects"?'
near harbour-planters 'Hourly rate: bensh' 'did you mean "hourly rate: bench"'
near rack-bench 'labor' 'did you mean "labour"?'
finish
