# Saw settings on the terminal, both readings named.
. tests/shell/lib.sh
status 0 "$SAWBILL" angle frame 6
says "30"
says "60"
# Compound-angle chart of a 12-inch compound mitre saw's operator manual: 4 sides, 45 degrees: 35.26 / 30.00
status 0 "$SAWBILL" angle splay 4 45 --json
says '"mitre_from_square": 35.264'
says '"bevel_from_square": 30'
status 0 "$SAWBILL" angle point 30
says "75"
says "15"
status 0 "$SAWBILL" angle frame 4 --width 89
says "89"
status 2 "$SAWBILL" angle frame 2
status 2 "$SAWBILL" angle splay 4 95
status 2 "$SAWBILL" angle bend 4
status 1 "$SAWBILL" angle frame 4 --width 8x
finish
