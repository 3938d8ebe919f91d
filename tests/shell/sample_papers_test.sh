# The papers that stand in samples/papers/ are those one gets; `make papers` makes them anew.
. tests/shell/lib.sh
sh tests/support/papers.sh "$SAWBILL" "$work/papers" || fail "the papers cannot be made"
[ "$(ls "$work/papers" | wc -l)" -eq 8 ] || fail "not eight papers: $(ls "$work/papers")"
for paper in "$work/papers"/*; do
    diff -u "samples/papers/$(basename "$paper")" "$paper" || fail "another $(basename "$paper"): run make papers"
done
finish
