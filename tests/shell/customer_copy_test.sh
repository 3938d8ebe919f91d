# Nothing of cost, margin, hours, stock, merchants or recipes anywhere in the customer's files, workbook and pages.
. tests/shell/lib.sh
for job in harbour-planters shelf-options rack-bench boathouse-imperial allotment-beds; do
    status 0 "$SAWBILL" quote -q "samples/$job.job" --out "$work/$job"
    mkdir "$work/$job/parts"
    unzip -q "$work/$job/$job-quote.xlsx" -d "$work/$job/parts" || fail "$job: not a zip"
    rm -r "$work/$job/parts/xl/theme" # the spreadsheet library's own colours, the same in every file
    find "$work/$job/parts" -type f -exec cat {} + | tr '<>' '\n\n' > "$work/$job/all"
    pdf=$work/$job/$job-quote.pdf
    { pdftotext -layout "$pdf" - && pdfinfo "$pdf"; } > "$work/$job/pages" || fail "$job: no pages"
    grep -q Signature "$work/$job/pages" || fail "$job: nothing to read in the pages"
    grep -v '^Producer:\|^Creator:' "$work/$job/pages" >> "$work/$job/all" # the drawing library's own name
    grep -qE 'JavaScript: *yes|Custom Metadata: *yes|Metadata Stream: *yes' "$work/$job/pages" && fail "$job: more in the pages than one sees"
    for word in cost margin markup hour labour overhead contingency floor waste kerf recipe merchant operation minutes; do
        grep -iwE "$word|${word}s" "$work/$job/all" && fail "$job: the quote says '$word'"
    done
    rates=rates
    [ "$job" = boathouse-imperial ] && rates=rates/imperial
    { cut -d, -f1 $rates/stock.csv; cut -d, -f2 $rates/prices.csv; cut -d, -f1 $rates/operations.csv; sed -n 's/^ *recipe *//p' "samples/$job.job"; } |
        sort -u | grep -E '[-0-9 ]' | grep -vE '^(stock|merchant|operation|#.*)$' > "$work/$job/secrets"
    [ -s "$work/$job/secrets" ] || fail "$job: no secrets to look for"
    grep -iFwf "$work/$job/secrets" "$work/$job/all" && fail "$job: the quote names stock, a merchant or a recipe"
    pdfimages -list "$pdf" | tail -n +3 | grep -q . && fail "$job: a picture in the pages whose words nobody has read"
    pdfdetach -list "$pdf" | grep -q '^0 ' || fail "$job: files in the pages"
    ls "$work/$job/parts/xl" | grep -qi comments && fail "$job: comments in the quote"
    # Pictures show the piece; what is written in their files for programs would be seen by nobody here.
    cat "$work/$job"/parts/xl/media/*.png 2>/dev/null | grep -aqE 'tEXt|zTXt|iTXt|eXIf' && fail "$job: words inside a picture"
done
finish
