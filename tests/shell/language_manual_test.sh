# The examples of templates/README.md, made: each recipe is checked with the shop's stock and operations, each
# few lines of a recipe behind the manual's frame, each job is quoted.
. tests/shell/lib.sh

mkdir "$work/examples"
awk -v folder="$work/examples" '
    /^```/ && inside { inside = 0; close(file); next }
    /^```(recipe|recipe frame|recipe-part|job)$/ {
        kind = substr($0, 4); gsub(" ", "-", kind)
        file = sprintf("%s/%03d.%s", folder, NR, kind); inside = 1; next
    }
    inside { print > file }
' templates/README.md

home=$(shop)
frame=$(ls "$work/examples/"*.recipe-frame)

# well COMMAND...: status 0 or, with advice, 3
well() {
    "$@" >"$work/out" 2>"$work/err" </dev/null
    got=$?
    [ "$got" -eq 0 ] || [ "$got" -eq 3 ] || {
        fail "status $got: $*"
        head -n 20 "$work/err"
    }
}

tried=0
for example in "$work/examples/"*; do
    case $example in
        *.recipe | *.recipe-frame)
            name=$(awk '$1 == "recipe" { print $2; exit }' "$example")
            cp "$example" "$home/templates/$name.recipe"
            well "$SAWBILL" check "$home/templates/$name.recipe" ;;
        *.recipe-part)
            cat "$frame" "$example" > "$home/templates/example.recipe"
            well "$SAWBILL" check "$home/templates/example.recipe"
            [ "$got" -eq 0 ] || [ "$got" -eq 3 ] || cat "$example" ;;
    esac
    tried=$((tried + 1))
done
for example in "$work/examples/"*.job; do
    name=$(awk '$1 == "job" { print $2; exit }' "$example")
    cp "$example" "$home/samples/$name.job"
    well "$SAWBILL" quote "$home/samples/$name.job"
    letter=$(awk '$1 == "revision" { print "-" $2; exit }' "$example")
    [ -f "$home/samples/$name/$name$letter-quote.xlsx" ] || fail "no quote of the job $name"
done
[ "$tried" -ge 18 ] || fail "only $tried examples were found"

# What the page says can be asked.
well "$SAWBILL" quote --set high=1900mm "$home/samples/reading-nook.job"
well "$SAWBILL" quote --set low.shelves=2 "$home/samples/reading-nook.job"
finish
