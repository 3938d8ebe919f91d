# What the end-to-end tests share. Run from the project's folder with SAWBILL naming the program.
set -u
: "${SAWBILL:?names the program under test}"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT INT TERM
failures=0

# fail TEXT...: notes a failure and goes on
fail() {
    echo "FAIL: $*"
    failures=$((failures + 1))
}

# status WANTED COMMAND...: runs it, keeps its output in $work/out and $work/err
status() {
    wanted=$1
    shift
    "$@" >"$work/out" 2>"$work/err" </dev/null
    got=$?
    [ "$got" -eq "$wanted" ] || {
        fail "status $got, not $wanted: $*"
        head -n 20 "$work/out" "$work/err"
    }
}

says() { grep -qF -- "$1" "$work/out" || fail "the output does not say: $1"; }
complains() { grep -qF -- "$1" "$work/err" || { fail "the messages do not say: $1"; head -n 20 "$work/err"; }; }
same() { cmp -s "$1" "$2" || fail "differ: $1 $2"; }

# answer FIGURE: of $work/answers, which `why` gave to several figures, the one under its heading becomes the output looked at
answer() {
    awk -v heading="Where '$1' comes from" '/^Where .* comes from(, at [0-9]+ pieces)?$/ { inside = index($0, heading) == 1 } inside' "$work/answers" > "$work/out"
    [ -s "$work/out" ] || fail "no answer to: $1"
}

# A private shop folder, a copy of the project's own.
shop() {
    mkdir -p "$work/shop/samples"
    cp -R rates templates "$work/shop/"
    cp samples/*.job "$work/shop/samples/" # without papers somebody may have made beside them
    echo "$work/shop"
}

finish() {
    [ "$failures" -eq 0 ] || exit 1
}
