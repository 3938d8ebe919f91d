# The main job: papers of every sample, the same bytes each time, whole or not at all.
. tests/shell/lib.sh
for job in harbour-planters shelf-options rack-bench boathouse-imperial allotment-beds; do
    status 0 "$SAWBILL" quote "samples/$job.job" --out "$work/$job"
    grep -v '^Papers: ' "$work/out" | awk 'length > 80 { exit 1 }' || fail "$job: the summary is wider than 80 columns"
    for paper in quote.pdf quote.xlsx estimate.xlsx cuts.pdf cuts.xlsx order.xlsx order.csv estimate.json; do
        [ -s "$work/$job/$job-$paper" ] || fail "$job: no $paper"
    done
    sleep 1
    status 0 "$SAWBILL" quote -q "samples/$job.job" --out "$work/again"
    [ -s "$work/out" ] && fail "$job: -q is not quiet"
    for paper in quote.pdf quote.xlsx estimate.xlsx cuts.pdf cuts.xlsx order.xlsx order.csv estimate.json; do
        same "$work/$job/$job-$paper" "$work/again/$job-$paper"
    done
done

# Beside the job, in a folder of its name; nothing else is left there.
home=$(shop)
status 0 "$SAWBILL" quote "$home/samples/rack-bench.job"
[ "$(ls "$home/samples/rack-bench" | wc -l)" -eq 8 ] || fail "not eight papers: $(ls "$home/samples/rack-bench")"

# A job that fails leaves the old papers alone.
cp -R "$home/samples/rack-bench" "$work/before"
sed -i 's/long  1600 mm/long  16000 mm/' "$home/samples/rack-bench.job"
status 1 "$SAWBILL" quote "$home/samples/rack-bench.job"
complains "rack-bench.job:10:"
diff -r "$work/before" "$home/samples/rack-bench" >/dev/null || fail "papers changed after an error"

# Three hundred pieces of different lengths, more than a thousand boards marked out: the cut sheet holds them.
{
    printf 'job many\ndate 2026-03-09\ncustomer Somebody\n'
    i=0
    while [ $i -lt 300 ]; do
        i=$((i + 1))
        printf 'piece k%d\n  recipe raised-bed\n  set wide 600 mm\n  set long %d mm\n' $i $((1500 + i))
    done
} > "$home/samples/many.job"
status 0 "$SAWBILL" quote -q "$home/samples/many.job"

# A file that may not grow is the system's failure too, and nothing is left of it.
status 4 sh -c "ulimit -f 4; '$SAWBILL' quote -q samples/shelf-options.job --out '$work/small'"
[ -z "$(ls -A "$work/small" 2>/dev/null)" ] || fail "left behind: $(ls -A "$work/small")"

# A folder that cannot be made is the system's failure, and nothing is written.
status 4 "$SAWBILL" quote samples/shelf-options.job --out /proc/papers
finish
