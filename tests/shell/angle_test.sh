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
# Geometry: w tan M at either end; w 89 at 30 degrees is 51.384.
status 0 "$SAWBILL" angle frame 6 --width 89mm --length 600mm --json
says '"mitre_on_piece": 60'
says '"long_point_less_short_point_mm": 51.38'
says '"short_points_mm": 497.2'
# A pointed end: both cuts take half the width each, 95 / 2 tan 60 = 82.27.
status 0 "$SAWBILL" angle point 60 --width 95 --length 1200 --json
says '"long_point_less_short_point_mm": 82.27'
says '"short_points_mm": 1117.7'
# corwinwmc.com ConcurrentInverse/crown.html: 38 degrees, corner 90: 31.6190 / 33.8629; 135 inside: 14.3064 / 17.5512
status 0 "$SAWBILL" angle crown 38 90 --json
says '"mitre_from_square": 31.61'
says '"bevel_from_square": 33.86'
status 0 "$SAWBILL" angle crown 38 135
says "14.31"
says "17.55"
says "left of the corner   ceiling edge       right         left of the blade"
# An outside corner has the same two figures, cut from the other side: sbebuilders.com crown_table.cgi
status 0 "$SAWBILL" angle crown 38 135 --outside
says "14.31"
says "17.55"
says "left of the corner   wall edge          left          right of the blade"
# Derived geometry: a slope of 45 in a corner of 88: 36.2127 / 30.5740
status 0 "$SAWBILL" angle corner 88 45 --json
says '"mitre_from_square": 36.2127'
says '"bevel_from_square": 30.57'
status 0 "$SAWBILL" angle corner 90 -q
says "45"
status 1 "$SAWBILL" angle frame 4 --width 89 --length 100
complains "too short"
status 2 "$SAWBILL" angle frame 4 --length 100
status 2 "$SAWBILL" angle frame 4 --outside
status 2 "$SAWBILL" angle crown 38
status 2 "$SAWBILL" angle corner 180
status 2 "$SAWBILL" angle crwn 38 90
complains "did you mean 'crown'"
finish
