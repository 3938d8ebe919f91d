# Exit statuses: 0 done, 1 wrong input, 2 wrong use, 3 a person should look, 4 the system failed.
. tests/shell/lib.sh
status 2 "$SAWBILL"
status 0 "$SAWBILL" --help
says "quote"
status 0 "$SAWBILL" --version
status 2 "$SAWBILL" qoute samples/rack-bench.job
complains "did you mean 'quote'"
status 2 "$SAWBILL" quote
status 2 "$SAWBILL" quote --jsn samples/rack-bench.job
complains "did you mean --json"
status 2 "$SAWBILL" quote --units furlong samples/rack-bench.job
status 2 "$SAWBILL" cut --parts x.csv
status 2 "$SAWBILL" cut samples/rack-bench.job --kerf 3mm
status 1 "$SAWBILL" quote samples/no-such.job
complains "no-such.job"
status 1 "$SAWBILL" quote samples
status 1 "$SAWBILL" quote samples/rack-bench.job --set bench.long=9km
status 1 "$SAWBILL" quote samples/rack-bench.job --set bench.lnog=1m
complains "long"
status 1 "$SAWBILL" quote /tmp/x.job

# Help of every command, and its example works as printed.
for command in quote takeoff cut compare why angle check start; do
    status 0 "$SAWBILL" "$command" --help
    rm -rf "$work/example" && mkdir "$work/example"
    sed -n '/^Example:/,$s/^ *sawbill //p' "$work/out" >"$work/lines"
    [ -s "$work/lines" ] || fail "$command: no example"
    while read -r example; do
        # shellcheck disable=SC2086
        (cd "$work/example" && "$SAWBILL" $example >/dev/null 2>"$work/err" </dev/null) ||
            fail "$command: the example fails: $example: $(cat "$work/err")"
    done <"$work/lines"
done

# Advice: status 3, papers are there all the same.
home=$(shop)
sed -i 's/^discount .*/discount 60 %/' "$home/samples/harbour-planters.job"
status 3 "$SAWBILL" quote "$home/samples/harbour-planters.job"
[ -s "$home/samples/harbour-planters/harbour-planters-quote.xlsx" ] || fail "no papers with advice"

# An angle past the saw's swing: told at the recipe's line, once.
cat >"$home/samples/braced.job" <<'EOF'
job braced
date 2026-03-02
customer Somebody
piece gate
  recipe ledged-gate
  set wide 1200 mm
  set high 800 mm
EOF
status 3 "$SAWBILL" quote "$home/samples/braced.job"
complains "ledged-gate.recipe:59"
complains "the mitre of brace is"
[ "$(grep -c 'the crosscut saw swings' "$work/err")" -eq 1 ] || fail "an angle past the saw is told more than once"

# A full disk: standard output and papers.
"$SAWBILL" quote samples/rack-bench.job --json --out "$work/full" >/dev/full 2>"$work/err"
[ $? -eq 4 ] || fail "a full disk under standard output is not status 4"

# Colour only on a terminal.
status 1 "$SAWBILL" quote samples/no-such.job
grep -q "$(printf '\033')" "$work/err" && fail "colour without a terminal"

# Which figures can be asked, and that one of them can.
status 0 "$SAWBILL" why samples/rack-bench.job
says "brace-length"
says "larch-45x95"
status 0 "$SAWBILL" why samples/rack-bench.job gate.brace
says "rounded"
status 1 "$SAWBILL" why samples/rack-bench.job xylophone
complains "without a figure"

# What if.
status 0 "$SAWBILL" quote samples/rack-bench.job --set bench.long=1.5m --json --out "$work/what-if"
says '"gross"'
finish
