#!/bin/sh
# Runs each test program or script, as many at once as there are cores; then prints the output of
# those that fail, in the order given, and the totals.
logs=$(mktemp -d)
trap 'rm -rf "$logs"' EXIT INT TERM
touch "$logs/failed"
printf '%s\n' "$@" | xargs -P "$(nproc)" -I '{}' sh tests/support/run-one.sh '{}' "$logs"

failed=0
for test in "$@"; do
    grep -qxF -- "$test" "$logs/failed" || continue
    failed=$((failed + 1))
    echo "---- $test"
    cat "$logs/$(printf '%s' "$test" | tr / -)"
done
echo "$(($# - failed)) passed, $failed failed"
[ "$failed" -eq 0 ]
