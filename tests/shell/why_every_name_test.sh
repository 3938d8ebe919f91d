# Whatever stands beside a figure on a paper can be asked: the names are read off the papers themselves, none is listed here.
. tests/shell/lib.sh
home=$(shop)

# names BOOK...: what stands beside the figures of these workbooks, each once
names() {
    for book in "$@"; do
        rm -rf "$work/pages" && mkdir "$work/pages"
        ssconvert -S --export-type=Gnumeric_stf:stf_assistant -O 'separator="	" quoting-mode=never format=preserve' \
            "$book" "$work/pages/%n.txt" >/dev/null 2>&1
        awk -F'\t' -f tests/support/names.awk "$work/pages"/*.txt
    done | sort -u
}

# cells BOOK: the names of its cells
cells() { unzip -p "$1" xl/workbook.xml | grep -o 'definedName name="[^"_][^"]*"' | cut -d'"' -f2; }

# asked LEAST JOB [WHY'S OPTIONS]: at least so many names in $work/names, each with an answer
asked() {
    least=$1 job=$2
    shift 2
    count=$(wc -l < "$work/names")
    [ "$count" -ge "$least" ] || fail "$job: only $count names read off the papers"
    status 0 sh -c 'tr "\n" "\0" < "$0" | xargs -0 -s 100000 "$SAWBILL" why -q "$@"' "$work/names" "$job" "$@"
    answers=$(grep -c '^--*$' "$work/out") # each heading is underlined
    [ "$answers" -ge "$count" ] || fail "$job: $count names, $answers answers"
}

# Quote, estimate, order, cut sheet and takeoff of all samples.
for sample in harbour-planters shelf-options rack-bench boathouse-imperial; do
    job="$home/samples/$sample.job"
    status 0 "$SAWBILL" quote -q "$job"
    status 0 "$SAWBILL" takeoff -q "$job" --out "$work/takeoff"
    names "$home/samples/$sample"/*.xlsx "$work/takeoff"/*.xlsx > "$work/names"
    cells "$home/samples/$sample/$sample-estimate.xlsx" >> "$work/names"
    asked 180 "$job"
done

# The options side by side, as the terminal shows them: two blanks between columns.
status 0 "$SAWBILL" compare "$home/samples/harbour-planters.job"
sed -n 's/^\([A-Z][^ ]*\( [^ ][^ ]*\)*\)   *[0-9].*/\1/p' "$work/out" > "$work/names"
asked 15 "$home/samples/harbour-planters.job"

# Ripped, glued up, solid; and the other option of the planters.
for option in 'shelf-options solid' 'harbour-planters panels'; do
    set -- $option
    status 0 "$SAWBILL" quote -q --option "$2" "$home/samples/$1.job" --out "$work/$2"
    names "$work/$2"/*.xlsx > "$work/names"
    asked 100 "$home/samples/$1.job" --option "$2"
done

# A piece of every recipe there is: timber by volume, glued panels, angles of all kinds; of boards whose knots are told, too.
{
    printf 'job every\ndate 2026-03-02\ncustomer Somebody\nrack yes\n'
    for recipe in templates/*.recipe; do printf 'piece %s\n' "$(basename "$recipe" .recipe)"; done
} > "$home/samples/every.job"
printf 'board,from,to,kind\nL4,500,540,knot\nL4,1900,2000,split\n' > "$home/rates/measured.csv"
status 0 "$SAWBILL" quote -q "$home/samples/every.job"
names "$home/samples/every"/*.xlsx > "$work/names"
asked 300 "$home/samples/every.job"
rm "$home/rates/measured.csv" # measured boards take longest to plan

# Other numbers of pieces, payments, a minimum, two rates of tax inside the prices, a revision; in German, where the quote's own
# words are names.
sed -i 's/^language .*/language de/; s/^prices .*/prices gross/; s/^tax  *standard.*/&\ntax low 7 % of net : VAT, low/' "$home/rates/shop.txt"
job="$home/samples/much.job"
{
    sed 's/^  set  *long  1600 mm/&\n  tax low/' samples/rack-bench.job
    printf '%s\n' 'breaks 1, 5 quoted' 'stage 30 % of total : when the frames are glued' 'deposit 20 %' 'discount 4 %' 'minimum 3000.00' \
        'delivery 40.00'
} > "$job"
status 0 "$SAWBILL" quote -q "$job"
sed -i 's/^discount 4 %/discount 5 %\nrevision B/' "$job"
status 0 "$SAWBILL" quote -q "$job"
names "$home/samples/much"/much-B-*.xlsx > "$work/names"
cells "$home/samples/much/much-B-estimate.xlsx" >> "$work/names"
for word in 'Summe mit Steuer' 'Anzahlung, fällig bei Bestellung' 'when the frames are glued' 'Mindermengenzuschlag'; do
    grep -qx "$word" "$work/names" || fail "the quote does not print $word"
done
asked 200 "$job"
finish
