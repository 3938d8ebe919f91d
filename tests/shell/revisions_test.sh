# Revisions: the papers carry the letter, and the estimate lists what has changed since the one before, by how much.
. tests/shell/lib.sh
home=$(shop)
job=$home/samples/planters.job
papers=$home/samples/planters
sed 's/^reference.*/&\nrevision A/' samples/harbour-planters.job > "$job"
status 0 "$SAWBILL" quote "$job"
says 'planters-A-quote.pdf'
says 'planters-A-estimate.json'
[ "$(ls "$papers" | wc -l)" -eq 8 ] || fail "not eight papers: $(ls "$papers")"
[ "$(ls "$papers" | grep -vc '^planters-A-')" -eq 0 ] || fail "papers without the letter: $(ls "$papers")"

# cells FILE SHEET: what stands on a sheet of a workbook, cell by cell
cells() {
    rm -rf "$work/cells"
    mkdir "$work/cells"
    ssconvert -S -T Gnumeric_stf:stf_assistant -O 'separator=| quoting-mode=never format=raw' "$1" "$work/cells/%s.txt" >/dev/null 2>&1
    cat "$work/cells/$2.txt" 2>/dev/null
}
[ -z "$(cells "$papers/planters-A-estimate.xlsx" Changes)" ] || fail "changes before there was anything to change"

# Two more long troughs, less discount: what changed, what it was, what it is, by how much; what did not change is not in the list.
cp -R "$papers" "$work/A"
sed -i 's/^revision.*/revision B/; s/^  count    8/  count    10/; s/^discount.*/discount 3 %/' "$job"
status 0 "$SAWBILL" quote --json "$job"
total=$(sed -n 's/^      "gross": "\(.*\)",/\1/p' "$work/out" | head -1)
cells "$papers/planters-B-estimate.xlsx" Changes > "$work/changes"
grep -q '^Revision B against A of 2026-03-02' "$work/changes" || fail "the list does not say of what"
grep -qx 'slats|Long trough: number|8|10|2' "$work/changes" || fail "no change of the number"
grep -qx 'slats|Discount|0.05|0.03|-0.02' "$work/changes" || fail "no change of the discount"
awk -F'|' -v total="$total" '$1 == "slats" && $2 == "Total with tax" { found = $3 == 6552.15 && $4 == total && $5 - (total - 6552.15) < 0.005 && total - 6552.15 - $5 < 0.005 } END { exit !found }' \
    "$work/changes" || fail "no change of the total: $(grep 'Total' "$work/changes")"
grep -q '^panels|' "$work/changes" || fail "nothing of the other option"
grep -q 'Delivery' "$work/changes" && fail "delivery has not changed"
for paper in "$work/A"/*; do
    same "$paper" "$papers/$(basename "$paper")"
done

# The same letter again: the set is replaced, by the same bytes.
cp -R "$papers" "$work/B"
status 0 "$SAWBILL" quote -q "$job"
diff -r "$work/B" "$papers" >/dev/null || fail "another set from the same job"

# The customer sees the letter, and nothing of what has changed.
pdftotext -layout "$papers/planters-B-quote.pdf" "$work/page"
grep -q 'Revision *B$' "$work/page" || fail "no revision in the quote"
grep -qi 'changes since\|against\|6 552' "$work/page" && fail "the quote tells of the one before"

# damaged WORDS: the quote goes out, told to lack its list
damaged() {
    status 3 "$SAWBILL" quote -q "$job"
    complains "no list of what has changed: $1"
    [ -s "$papers/planters-B-quote.pdf" ] || fail "no quote"
    [ -z "$(cells "$papers/planters-B-estimate.xlsx" Changes)" ] || fail "a list all the same"
}
printf '{"job": "x", "figures": [\n  {"option": }\n]}\n' > "$papers/planters-A-estimate.json"
damaged "$papers/planters-A-estimate.json is damaged in line 2, column "
printf '{"job": "x", "figures": []}\n' > "$papers/planters-A-estimate.json"
damaged "$papers/planters-A-estimate.json is not what was stored of an estimate"
sed 's/"EUR"/"CHF"/' "$work/A/planters-A-estimate.json" > "$papers/planters-A-estimate.json"
damaged "$papers/planters-A-estimate.json is in CHF, this job in EUR"
rm "$papers/planters-A-estimate.json"
damaged "the estimate before is not there, $papers/planters-A-estimate.json"

# The first set had no letter: B is against it.
sed '/^revision/d' "$job" > "$home/samples/plain.job"
status 0 "$SAWBILL" quote -q "$home/samples/plain.job"
sed -i 's/^discount.*/discount 4 %\nrevision B/' "$home/samples/plain.job"
status 0 "$SAWBILL" quote -q "$home/samples/plain.job"
cells "$home/samples/plain/plain-B-estimate.xlsx" Changes > "$work/changes"
grep -q '^Revision B against the first of 2026-03-02' "$work/changes" || fail "not against the set without a letter"
grep -q '^slats|Discount|0.03|0.04|0' "$work/changes" || fail "no change of the discount since the first"

# A revision that is no part of a file's name.
sed -i 's|^revision.*|revision B/2|' "$job"
status 1 "$SAWBILL" quote "$job"
complains 'planters.job:5:10: error: expected a revision of letters and digits'
finish
