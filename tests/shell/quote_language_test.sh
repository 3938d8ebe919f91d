# The quote writes numbers and dates as its language does, whatever the shop's own papers do: Unicode CLDR 44, common/main/de.xml and
# en.xml (decimal , and group . in German; decimal . and group , in English; 31.12.2026 and 31 December 2026), currency by its ISO 4217 code.
. tests/shell/lib.sh
home=$(shop)

# quoted LANGUAGE: the customer's page as text
quoted() {
    sed -i "s/^language .*/language $1/" "$home/rates/shop.txt"
    status 0 "$SAWBILL" quote -q "$home/samples/harbour-planters.job"
    pdftotext -layout "$home/samples/harbour-planters/harbour-planters-quote.pdf" "$work/$1"
}
# shows LANGUAGE WORDS: somewhere on the page
shows() { grep -qF -- "$2" "$work/$1" || fail "$1: no '$2'"; }
quoted en
quoted de
for words in 'Total with tax' ' 6,552.15' ' 416.00' '2 March 2026' 'EUR' '21.0 %'; do shows en "$words"; done
for words in 'Summe mit Steuer' ' 6.552,15' ' 416,00' '02.03.2026' 'EUR' '21,0 %'; do shows de "$words"; done
grep -qE '[0-9] [0-9]{3}[.,][0-9]{2}|[0-9],[0-9]{3}\.' "$work/de" && fail "de: an amount in another language"
grep -qE '[0-9] [0-9]{3}[.,][0-9]{2}|[0-9]\.[0-9]{3},' "$work/en" && fail "en: an amount in another language"

# A wording from before says nothing of it: numbers stay as the shop writes them.
sed -i '/^decimal-mark/d; /^group-mark/d; /^revision /d' "$home/templates/wording-de.txt"
quoted de
shows de ' 6 552.15'
finish
