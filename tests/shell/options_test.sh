# Options: every command takes what makes sense for it, refuses the rest, and drops none in silence.
. tests/shell/lib.sh
home=$(shop)
job=$home/samples/shelf-options.job
printf 'name,stock,length,count\nleg,post,720,4\n' > "$work/parts.csv"
printf 'stock,length,price\npost,2400,12.00\n' > "$work/stock.csv"
list="--parts $work/parts.csv --stock $work/stock.csv"

status 0 "$SAWBILL" start "$work/new" --json
says "\"folder\": \"$work/new\""
says "\"first_job\": \"$work/new/jobs/first.job\""
status 2 "$SAWBILL" start "$work/other" --out "$work/x"
status 2 "$SAWBILL" check --out "$work/x"

status 0 "$SAWBILL" why "$job" total -q
says "total"
status 0 "$SAWBILL" why "$job" total --out "$work/why"
[ -s "$work/why/shelf-options-why.xlsx" ] || fail "why wrote no paper"
status 0 "$SAWBILL" angle frame 6 -q
says "30"
grep -q "trial corner" "$work/out" && fail "angle -q is not quiet"
status 0 "$SAWBILL" angle frame 6 --out "$work/angle" -q
[ -s "$work/angle/angle.xlsx" ] || fail "angle wrote no paper"
status 2 "$SAWBILL" angle frame 6 --butt
complains "--butt"

# shellcheck disable=SC2086
{
    status 2 "$SAWBILL" cut $list --set long=3m
    complains "--set"
    status 2 "$SAWBILL" cut $list --option oak
    complains "--option"
}
for wrong in foo =5 foo=; do
    status 2 "$SAWBILL" quote "$job" --set "$wrong"
    complains "NAME=VALUE"
done

# One option alone: one price, no comparison; an unknown one is told.
first=$(sed -n 's/^option *\([^ ]*\).*/\1/p' "$job" | sed -n 1p)
second=$(sed -n 's/^option *\([^ ]*\).*/\1/p' "$job" | sed -n 2p)
status 0 "$SAWBILL" quote "$job" --option "$second" --json --out "$work/one"
says "\"$second\""
grep -qF "\"$first\"" "$work/out" && fail "--option leaves another option in the quote"
status 1 "$SAWBILL" quote "$job" --option nothing --out "$work/none"
complains "unknown option"
[ -e "$work/none" ] && fail "papers in spite of an error"

# An option with a length that is none says which option it is.
# shellcheck disable=SC2086
for option in kerf trim; do
    status 1 "$SAWBILL" cut $list --$option -3mm
    complains "--$option"
    status 1 "$SAWBILL" cut $list --$option 3x
    complains "--$option"
done

# Without a kerf the list is planned as if the saw took nothing, and that is said.
# shellcheck disable=SC2086
{
    status 0 "$SAWBILL" cut $list
    complains "note: no --kerf"
    for silent in -q --json --kerf=3; do
        status 0 "$SAWBILL" cut $list $silent
        grep -q "no --kerf" "$work/err" && fail "a note on the kerf with $silent"
    done
}

# Of two values one would be dropped; a folder that cannot be one; an option before the command.
status 2 "$SAWBILL" quote "$job" --set long=1m --set long=2m --out "$work/twice"
complains "--set long is given twice"
status 2 "$SAWBILL" quote "$job" --out "$work/twice" --out "$work/other"
complains "--out is given twice"
[ -e "$work/twice" ] && fail "papers in spite of wrong use"
for folder in "$work/parts.csv" "$work/parts.csv/below"; do
    status 2 "$SAWBILL" quote "$job" --out "$folder"
    complains "--out wants a folder"
done
status 2 "$SAWBILL" -q quote "$job"
complains "options go behind"

# Whoever reads may stop when he has read enough.
for command in "takeoff $job" "quote $job --json --out $work/piped" "--help"; do
    # shellcheck disable=SC2086
    { sleep 0.2; "$SAWBILL" $command 2>"$work/err"; echo $? >"$work/status"; } | true
    [ "$(cat "$work/status")" -eq 0 ] && [ ! -s "$work/err" ] || fail "a closed pipe is a failure of $command: $(cat "$work/err")"
done

# A write that fails is told once.
"$SAWBILL" quote samples/rack-bench.job --json --out "$work/full" >/dev/full 2>"$work/err"
[ "$(grep -c "standard output" "$work/err")" -eq 1 ] || fail "a full disk is told more than once"
finish
