# `sawbill check` tells every mistake of recipes, jobs and rates at once, also in what no default takes.
. tests/shell/lib.sh
home=$(shop)

# tells FILE:LINE TEXT: that line is an error, and it says so
tells() { grep -F -- "$1:" "$work/err" | grep -qF -- "$2" || fail "nothing at $1 says: $2"; }
errors() { says "$1 error"; }

cat >"$home/templates/nasty.recipe" <<'RECIPE'
recipe nasty2
input long 1000 mm
choice tray no | yes
choice seat slim | wide
stock slat larch-28x120
stock skin spruce-ply-188 when tray = yes
stock fancy screw-5x60
let unused long + 3
let rows floor(long / 300 mm)
lett foo 3
part tray
  count tray
  of fancy
  length long
  when tray = yes
part other
  of slat
  length long
  width 30 mmm
  planed 20 mm
  when seat = wide
fixing screww 3 when tray = yes
finish larch-28x120 2 coats on all when seat = wide
work assembel per piece when tray = yes
work assemble 3 mm when long > 5 m
work sawing-cut when long > 5 m
component inner
  recipe no-such
RECIPE
cat >"$home/samples/nasty.job" <<'JOB'
job nasty
dat 2026-01-01
customer A
piece first
  recipe nasty
piece second
  recipe garden-bench
  set long 3 mmm
  set seat 4 m
piece third
  recipe nastier
JOB
cat >"$home/templates/nastier.recipe" <<'RECIPE'
recipe nastier
input long 1000 mm
choice seat slim | wide
choice tray no | yes
stock slat larch-28x120
let rows floor(long / 300 mm)
part other
  count rows / 2
  of slat
  length long
  when seat = wide
part tray
  of slat
  length long - 1 m
  when tray = yes
check tray = no or long > 2 m : a tray wants a long one
RECIPE

wrong_recipe() {
    tells nasty.recipe:1 'expected `recipe nasty`'
    tells nasty.recipe:6 'unknown stock "spruce-ply-188"'
    tells nasty.recipe:8 'cannot add a bare number (3) to a length (long)'
    tells nasty.recipe:10 'unknown keyword "lett"'
    tells nasty.recipe:11 'screw-5x60 is stock of the kind fixing'
    tells nasty.recipe:12 'expected a number, and this is a word (tray)'
    tells nasty.recipe:19 '"mmm" is not a unit'
    tells nasty.recipe:20 'larch-28x120 is not sawn stock'
    tells nasty.recipe:22 'unknown stock or role "screww"'
    tells nasty.recipe:23 'expected finish'
    tells nasty.recipe:24 'unknown operation "assembel"; did you mean "assemble"?'
    tells nasty.recipe:25 'expected a number, and this is a length (3 mm)'
    tells nasty.recipe:26 'unknown operation "sawing-cut"'
    tells nasty.recipe:28 'unknown recipe "no-such"'
}

status 1 "$SAWBILL" check "$home/templates/nasty.recipe"
wrong_recipe

# What checks stop is no mistake; what gets past them must be possible to make.
status 1 "$SAWBILL" check "$home/templates/nastier.recipe"
tells nastier.recipe:8 'rows / 2 is 1.5'
complains 'in the choice seat wide'
errors 1

# A wrong job hides neither its recipes' mistakes nor its own.
status 1 "$SAWBILL" check "$home/samples/nasty.job"
wrong_recipe
tells nastier.recipe:8 'rows / 2 is 1.5'
tells nasty.job:2 'unknown keyword "dat"'
tells nasty.job:8 '"mmm" is not a unit'
tells nasty.job:9 'seat is 4000 mm: expected 380 mm to 500 mm'

# Nor do wrong rates.
sed -i 's/^larch-28x120,\([^,]*\),board,/larch-28x120,\1,boards,/' "$home/rates/stock.csv"
sed -i 's/^  kerf .*3 mm$/  kerf 3 mmm/' "$home/rates/shop.txt"
status 1 "$SAWBILL" check "$home/samples/nasty.job"
complains 'stock.csv:'
tells nasty.recipe:6 'unknown stock "spruce-ply-188"'
tells nasty.recipe:24 'unknown operation "assembel"'
tells nasty.recipe:8 'cannot add'
tells nasty.job:2 'unknown keyword "dat"'

# Mistakes in several files come out together; sound files are told to be so.
status 1 "$SAWBILL" check "$home/templates/nasty.recipe" "$home/templates/nastier.recipe" "$home/rates"
tells nasty.recipe:10 'unknown keyword "lett"'
complains 'stock.csv:'

# A part may have several mistakes, and a job that is not read whole has its names and values looked at.
cp rates/stock.csv rates/shop.txt "$home/rates/"
rm "$home"/templates/nast*.recipe "$home"/samples/nasty.job
cat >"$home/templates/constants.recipe" <<'RECIPE'
recipe constants
stock slat larch-20x95
part a
  of slat
  length -3 mm
part b
  count 0 - 2
  of slat
  length 0 mm
  width 200 mm
part c
  of slat
  length 50 mm
  ends mitre 45 deg scale
part d
  of slat
  length 500 mm
  ends mitre 95 deg scale
RECIPE
cat >"$home/templates/headless.recipe" <<'RECIPE'
recipe headless
input wide 500 mm from 300 mm to 2 m
part a
  length wide
RECIPE
cat >"$home/samples/values.job" <<'JOB'
job values
date 2026-02-30
customer X
tax foo
piece trough-planter
  count -6
  set long 3
  set high 3 m
  set lng 3 m
  stock slat screw-4x40
  stock slot larch-20x95
piece headless
  set x 4
JOB
status 1 "$SAWBILL" check "$home/samples/values.job"
tells values.job:2 '2026-02-30'
tells values.job:4 'unknown tax "foo"'
tells values.job:6 'expected a number'
tells values.job:7 'long wants a length'
tells values.job:8 'high is 3000 mm'
tells values.job:9 'unknown input "lng"'
tells values.job:11 'unknown role "slot"'
tells values.job:13 'unknown input "x"; known: wide'
tells headless.recipe:3 'a has no `of`'
complains 'screw-4x40 is stock of the kind fixing'

# Without a file the whole shop is checked, and so is a folder.
status 1 sh -c "cd '$home/templates' && exec '$(cd "$(dirname "$SAWBILL")" && pwd)/$(basename "$SAWBILL")' check"
tells constants.recipe:5 'expected more than nothing'
tells constants.recipe:7 '0 - 2 is -2'
tells constants.recipe:9 'expected more than nothing'
tells constants.recipe:10 'gives 95 mm'
tells constants.recipe:11 'run into each other'
tells constants.recipe:18 'the mitre of d'
tells values.job:8 'high is 3000 mm'
status 1 "$SAWBILL" check "$home/templates"
tells constants.recipe:5 'expected more than nothing'
tells headless.recipe:3 'a has no `of`'
status 1 sh -c "cd / && exec '$(cd "$(dirname "$SAWBILL")" && pwd)/$(basename "$SAWBILL")' check"
complains 'no shop here'

# A mistake is told once, however many files of the shop are read by the same rates.
sed -i 's/^  kerf .*3 mm$/  kerf 3 mmm/' "$home/rates/shop.txt"
status 1 "$SAWBILL" check "$home"
[ "$(grep -c 'shop.txt:.*"mmm" is not a unit' "$work/err")" -eq 1 ] || fail "a mistake in the rates is not told once"
[ "$(grep -c 'headless.recipe:3:1: error' "$work/err")" -eq 1 ] || fail "a mistake in a recipe is not told once"
cp rates/shop.txt "$home/rates/"

# What every option puts right is no mistake.
cat >"$home/samples/options.job" <<'JOB'
job options
date 2026-03-02
customer A
piece trough-planter
  set high 3 m
option low
  set trough-planter.high 500 mm
option lower
  set trough-planter.high 450 mm
JOB
status 0 "$SAWBILL" check "$home/samples/options.job"
status 0 "$SAWBILL" quote "$home/samples/options.job"

# Too long for any board; a choice that asks for another input is no advice.
rm "$home"/templates/constants.recipe
cat >"$home/templates/lengthy.recipe" <<'RECIPE'
recipe lengthy
stock slat larch-20x95
part a
  of slat
  length 9 m
RECIPE
status 1 "$SAWBILL" check "$home/templates/lengthy.recipe"
tells lengthy.recipe:3 'is 9000 mm long'
cat >"$home/templates/picky.recipe" <<'RECIPE'
recipe picky
input wide 500 mm from 300 mm to 2 m
choice kind small | big
stock slat larch-20x95
check wide >= 800 mm when kind = big : a big one is 800 mm or wider
part a
  of slat
  length wide
RECIPE
status 0 "$SAWBILL" check "$home/templates/picky.recipe"

# A language wants its wording.
sed -i 's/^language .*/language fr/' "$home/rates/shop.txt"
grep -q '^language' "$home/rates/shop.txt" || echo 'language fr' >>"$home/rates/shop.txt"
status 1 "$SAWBILL" check "$home/rates"
complains 'wording-fr.txt'
for file in templates/*.recipe samples/*.job rates rates/imperial; do
    status 0 "$SAWBILL" check "$file"
    says '0 errors, 0 pieces of advice'
done
finish
