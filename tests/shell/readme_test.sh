# What the README shows is what one gets: the terminal text, the shop, the recipe and the job of its tour.
. tests/shell/lib.sh

# fence MARKER: the first fenced block of that kind, without the indentation of its list
fence() {
    awk -v marker="$1" '
        inside && $1 == "```" { exit }
        inside { print substr($0, indent + 1) }
        !inside && $1 == "```" marker { inside = 1; match($0, /^ */); indent = RLENGTH }' README.md
}

# The summary, but for the folder of the papers.
status 0 "$SAWBILL" quote samples/harbour-planters.job --out "$work/papers"
fence text | sed -e 1d -e '/^Papers: /d' > "$work/shown"
sed '/^Papers: /d' "$work/out" > "$work/printed"
diff "$work/shown" "$work/printed" || fail "the README shows another summary"
for picture in $(sed -n 's/^!\[.*](\(.*\))$/\1/p' README.md); do [ -s "$picture" ] || fail "no $picture"; done

# The tour, step by step.
cd "$work" || exit 1
project=$OLDPWD
status 0 "$SAWBILL" start my-shop
status 0 "$SAWBILL" quote my-shop/jobs/first.job
status 0 "$SAWBILL" check my-shop/rates
(cd "$project" && fence recipe) > my-shop/templates/footstool.recipe
(cd "$project" && fence job) > my-shop/jobs/stools.job
status 0 "$SAWBILL" check my-shop/jobs/stools.job
status 0 "$SAWBILL" quote my-shop/jobs/stools.job
says "Footstool"
[ -s my-shop/jobs/stools/stools-quote.xlsx ] || fail "no quote for the footstools"
status 0 "$SAWBILL" takeoff my-shop/jobs/stools.job --json
grep -A 12 '"name": "side"' out | grep -q '"count": 24' || fail "six stools have 24 sides"
grep -A 12 '"name": "side"' out | grep -q '"length_mm": 230' || fail "a side is 250 - 20 mm"

# Links of the README lead somewhere.
cd "$project" || exit 1
for link in $(grep -o '](\([^)#]*\))' README.md DEVELOPERS.md | sed 's/.*](//; s/)$//'); do [ -e "$link" ] || fail "dead link: $link"; done
finish
