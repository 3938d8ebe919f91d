# Sheets from the recipe to the saw: cut sizes, parts too large, what goes back over the saw.
. tests/shell/lib.sh

shop=$(shop)
# piece LENGTH WIDTH LINE...: a job of three boxes of two sides each
piece() {
    {
        printf 'recipe   box\ntitle    Box\nabout    Two sides.\nsize     %s mm, %s mm, 18 mm\n' "$1" "$2"
        printf 'stock    skin  birch-ply-18\nstock    tape  edging-birch-22\n'
        printf 'part     side\n  count  2\n  of     skin\n  length %s mm\n  width  %s mm\n' "$1" "$2"
        shift 2
        printf '  %s\n' "$@"
    } > "$shop/templates/box.recipe"
    printf 'job       box\ndate      2026-03-02\ncustomer  Reed Lane Nursery\npiece     box\n  count   3\n' > "$shop/samples/box.job"
}
# lines KEY: the values of a key, each once
lines() { grep "\"$1\":" "$work/out" | tr -d ' ,' | sort -u | tr '\n' ' '; }

# Finished 1000 x 300. Edging of 0.5 mm at both ends and in front comes off, 5 mm by 4 mm for trimming goes on:
# 1000 - 1 + 5 = 1004 by 300 - 0.5 + 4 = 303.5.
piece 1000 300 'edging tape front left right' 'allow  5 mm by 4 mm'
status 0 "$SAWBILL" cut "$shop/samples/box.job" --json
sed -n '/"parts"/,/"cuts"/p' "$work/out" > "$work/parts" && cp "$work/parts" "$work/out"
[ "$(lines l_mm)" = '"l_mm":1004 ' ] || fail "cut length: $(lines l_mm)"
[ "$(lines w_mm)" = '"w_mm":303.5 ' ] || fail "cut width: $(lines w_mm)"
[ "$(grep -c l_mm "$work/out")" -eq 6 ] || fail "not six sides"

# 2500 x 1250 less 8 mm at each edge are 2484 x 1234: 2484 long is cut, 2485 is not, nor 1235 wide; the nearest sheet is named.
piece 2484 1234 'allow 0 mm'
status 0 "$SAWBILL" cut "$shop/samples/box.job" --json
for size in '2485 300' '2484 1235'; do
    piece $size 'allow 0 mm'
    rm -rf "$shop/samples/box"
    status 1 "$SAWBILL" cut "$shop/samples/box.job"
    complains 'fits no sheet; the nearest is "birch-ply-18" of length 2500 mm, width 1250 mm, of which 2484 mm by 1234 mm can be used'
    [ -e "$shop/samples/box" ] && fail "papers of a job that cannot be cut"
done

# Six of 800 x 600 along a sheet of 2500 x 1250: two strips go back over the saw. Minutes for that change the cost by just
# that: 2 of 3 min at 42.00 an hour are 4.20, on the estimate's labour too; without minutes they cost nothing.
piece 800 600 'allow 0 mm'
status 0 "$SAWBILL" quote "$shop/samples/box.job" --json
handling=$(grep -m1 '"handling"' "$work/out" | tr -dc 0-9)
grep -q '"unit": "return"' "$work/out" && fail "a shop without minutes pays for pieces going back"
status 0 "$SAWBILL" cut "$shop/samples/box.job" --json
[ "$(lines returns)" = '"returns":2 ' ] || fail "returns: $(lines returns)"
echo 'take-back,Take a piece back to the saw,3,return,bench,' >> "$shop/rates/operations.csv"
status 0 "$SAWBILL" quote "$shop/samples/box.job" --json
[ "$(grep -m1 '"handling"' "$work/out" | tr -dc 0-9)" -eq $((handling + 420)) ] || fail "handling is not 4.20 dearer than $handling"
grep -A8 '"operation": "take-back"' "$work/out" > "$work/line"
grep -q '"from_plan": true' "$work/line" && grep -q '"quantity": 2,' "$work/line" && grep -q '"unit": "return"' "$work/line" &&
    grep -q '"hours": 0.1' "$work/line" || fail "no labour for pieces going back: $(cat "$work/line")"
finish
