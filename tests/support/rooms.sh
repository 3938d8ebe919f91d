#!/bin/sh
# Compares the #includes of src/ROOM and include/sawbill/ROOM.h with the table of who may include whom.
may() {
    case "$1" in
        text) echo "" ;;
        measure) echo "text" ;;
        formula | cutting | document) echo "text measure" ;;
        shop | recipe) echo "text measure formula" ;;
        writers) echo "text measure document" ;;
        takeoff) echo "text measure formula cutting shop recipe" ;;
        costing) echo "text measure formula cutting shop recipe takeoff" ;;
        papers) echo "text measure formula cutting document shop recipe takeoff costing" ;;
        main) echo "text measure formula cutting document shop recipe writers takeoff costing papers" ;;
    esac
}
breaches=0
for room in text measure formula cutting document shop recipe writers takeoff costing papers main; do
    allowed=" $room $(may "$room") "
    for file in include/sawbill/"$room".h src/"$room"/*.[ch]; do
        [ -f "$file" ] || continue
        for other in $(sed -n 's|^#include "sawbill/\([a-z]*\)\.h".*|\1|p; s|^#include "\([a-z]*\)/[a-z_]*\.h".*|\1|p' "$file" | grep -v '^sawbill$'); do
            case "$allowed" in
                *" $other "*) ;;
                *) echo "$file: $room may not include $other"; breaches=1 ;;
            esac
        done
    done
done
exit $breaches
