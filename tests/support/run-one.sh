#!/bin/sh
# run-one.sh TEST FOLDER: the test's output goes to FOLDER/<its path, dashes for slashes>; a failure is noted in FOLDER/failed.
log=$2/$(printf '%s' "$1" | tr / -)
case "$1" in
    *.sh) sh "$1" ;;
    *) "$1" ;;
esac >"$log" 2>&1 </dev/null || echo "$1" >>"$2/failed"
