# Every spreadsheet, recalculated by another program (gnumeric's ssconvert), shows what sawbill stored.
. tests/shell/lib.sh
command -v ssconvert >/dev/null || { echo "ssconvert is missing"; exit 1; }
for job in harbour-planters shelf-options rack-bench boathouse-imperial allotment-beds; do
    status 0 "$SAWBILL" quote -q "samples/$job.job" --out "$work/$job"
    for paper in quote estimate cuts order; do
        file=$work/$job/$job-$paper.xlsx
        ssconvert -S "$file" "$work/$job/stored-$paper-%n.csv" >/dev/null 2>&1 || fail "$file cannot be read"
        ssconvert -S --recalc "$file" "$work/$job/recalc-$paper-%n.csv" >/dev/null 2>&1 || fail "$file cannot be recalculated"
        # Programs print the last digits of a fraction each in their own way: four decimals are compared.
        for csv in "$work/$job"/*-"$paper"-*.csv; do
            awk -v CONVFMT=%.17g '{ line = ""
                while (match($0, /-?[0-9]+\.[0-9]+/)) {
                    line = line substr($0, 1, RSTART - 1) sprintf("%.4f", substr($0, RSTART, RLENGTH))
                    $0 = substr($0, RSTART + RLENGTH)
                }
                print line $0 }' "$csv" > "$csv.new" && mv "$csv.new" "$csv"
        done
        for stored in "$work/$job/stored-$paper"-*.csv; do
            same "$stored" "$(echo "$stored" | sed 's/stored-/recalc-/')"
        done
    done
    unzip -p "$work/$job/$job-estimate.xlsx" 'xl/worksheets/*.xml' | grep -c '<f>' >/dev/null || fail "$job: no live formulas in the estimate"
done

# The order list read back by another program has the same rows.
ssconvert "$work/rack-bench/rack-bench-order.csv" "$work/back.csv" >/dev/null 2>&1 || fail "order.csv cannot be read back"
[ "$(wc -l < "$work/back.csv")" -eq "$(wc -l < "$work/rack-bench/rack-bench-order.csv")" ] || fail "order.csv: rows lost"
finish
