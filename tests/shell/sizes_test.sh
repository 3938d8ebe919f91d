# Sizes of stock: length x width on every paper, and exact, though they are off the step of the tape.
. tests/shell/lib.sh

# words FILE: the texts of a workbook
words() { unzip -p "$1" xl/sharedStrings.xml | tr '<>' '\n\n'; }

for job in boathouse-imperial shelf-options; do
    size='96&quot; x 48&quot;|96" x 48"' turned='48&quot; x 96&quot;|48" x 96"'
    [ "$job" = shelf-options ] && size='2500 x 1250 mm' turned='1250 x 2500 mm'
    status 0 "$SAWBILL" quote -q "samples/$job.job" --out "$work/$job"
    for paper in estimate cuts order; do
        words "$work/$job/$job-$paper.xlsx" > "$work/words"
        grep -qE "$size" "$work/words" || fail "$job: the $paper does not say $size"
        grep -qE "$turned" "$work/words" && fail "$job: the $paper says $turned"
    done
    for command in takeoff cut; do
        status 0 "$SAWBILL" $command "samples/$job.job" --out "$work/$job"
        grep -qE "$size" "$work/out" || fail "$job: $command does not say $size"
    done
done

# Plywood of nominal 3/4 in is 23/32 in thick (PS 1, performance category 23/32), on a tape of 16ths too.
status 0 "$SAWBILL" cut samples/boathouse-imperial.job --out "$work/cut"
says '23/32"'
grep -q '~3/4"' "$work/out" && fail "a thickness is rounded"
finish
