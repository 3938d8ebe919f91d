# Outlines of a recipe: what is wrong with one is told where it stands.
. tests/shell/lib.sh
home=$(shop)
cat > "$home/templates/box.recipe" <<'END'
recipe box
input  long 600 mm
stock  side larch-20x95
part   side
  count 4
  of side
  length long
END
printf 'job box\ndate 2026-03-02\ncustomer Somebody\npiece box\n' > "$home/samples/box.job"
# wrong LINE POSITION WORDS: the line as the recipe's eighth is an error there that says so
wrong() {
    cp "$home/templates/box.recipe" "$work/kept"
    printf '%s\n' "$1" >> "$home/templates/box.recipe"
    status 1 "$SAWBILL" quote -q "$home/samples/box.job"
    complains "box.recipe:$2:"
    complains "$3"
    cp "$work/kept" "$home/templates/box.recipe"
}
wrong 'outline top long by 95 mm at 0 mm, 0 mm' 8:9 'front, side'
wrong 'outline front long at 0 mm, 0 mm' 8:20 '`by`'
wrong 'outline front long by 95 mm' 8:28 '`at`'
wrong 'outline front long by 95 mm at 0 mm' 8:36 'comma'
wrong 'outline front long by lang at 0 mm, 0 mm' 8:23 'did you mean "long"'
wrong 'outline front long by 95 mm * long at 0 mm, 0 mm' 8:23 'length'
wrong 'outline front long by long - 600 mm at 0 mm, 0 mm' 8:23 'more than nothing'
wrong 'outline side long by long at 0 mm, 0 mm lean 86 deg' 8:46 '85 deg'

# Those of a turn and those under a condition.
printf 'repeat i from 1 to 3\n  outline front long by 95 mm at 0 mm, (i - 1) * 100 mm\nend\noutline side 95 mm by 295 mm at 0 mm, 0 mm when long > 1 m\n' >> "$home/templates/box.recipe"
status 0 "$SAWBILL" quote -q "$home/samples/box.job"
unzip -l "$home/samples/box/box-quote.xlsx" | grep -q 'media/image1.png' || fail "no picture in the quote"
finish
