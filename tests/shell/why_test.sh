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

# near JOB FIGURE MEANT: an error that names what was meant
near() {
    status 1 "$SAWBILL" why "samples/$1.job" "$2"
    complains "$3"
}
near harbour-planters 'Totl with tax' 'did you mean "total with tax" or '
near shelf-options 'Flor, net' 'did you mean "floor, net"?'
near rack-bench 'labor' 'did you mean "labour"?'
finish
