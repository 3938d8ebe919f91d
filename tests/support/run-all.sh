#!/bin/sh
# Runs each test program or script; prints the output of those that fail; closes with the totals.
passed=0 failed=0
for test in "$@"; do
    case "$test" in
        *.sh) runner=sh ;;
        *) runner= ;;
    esac
    log=$(mktemp)
    if $runner "$test" >"$log" 2>&1; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "---- $test"
        cat "$log"
    fi
    rm -f "$log"
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
