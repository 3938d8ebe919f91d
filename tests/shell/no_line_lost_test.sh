# No line of a recipe is lost without a word: what it asks for is on the papers, or it is told why not.
. tests/shell/lib.sh
home=$(shop)
recipe() { { printf 'recipe thing\n'; cat; } >"$home/templates/thing.recipe"; }
printf 'job thing\ndate 2026-03-02\ncustomer A\nrack no\npiece thing\n' >"$home/samples/thing.job"

# The mitred edges of a panel are cut once the panel is out of its sheet.
recipe <<'END'
stock s birch-ply-18
part side
  of s
  length 600 mm
  width 300 mm
  ends mitre 30 deg scale
part lid
  of s
  length 500 mm
  width 300 mm
  ends bevel 45 deg scale
END
status 0 "$SAWBILL" cut "$home/samples/thing.job"
says 'mitre 30'
says 'bevel 45'

refused() {
    recipe
    status 1 "$SAWBILL" quote "$home/samples/thing.job"
    complains "$1"
    status 1 "$SAWBILL" check "$home/templates/thing.recipe"
    complains "$1"
}
refused 'larch-20x95 is timber: `edging` goes on parts cut from a sheet' <<'END'
stock s larch-20x95
part a
  of s
  length 600 mm
  edging edging-birch-22 all
END
refused 'larch-20x95 is timber: its grain runs along the part' <<'END'
stock s larch-20x95
part a
  of s
  length 600 mm
  grain across
END
refused 'no coats: expected at least one' <<'END'
stock s larch-20x95
part a
  of s
  length 600 mm
finish deck-oil 0 coats on all
END
finish
