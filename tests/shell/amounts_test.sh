# Amounts that a line leaves out, pieces of nothing, and the figures of an order for other programs.
. tests/shell/lib.sh
home=$(shop)
printf 'job small\ndate 2026-03-02\ncustomer Reed Lane Nursery\npiece rack\n  recipe small\n' > "$home/samples/small.job"
recipe() { printf 'recipe small\nstock leg larch-45x95\npart rail\n  count %s\n  of leg\n  length 1 m\n%s\n' "$1" "$2" > "$home/templates/small.recipe"; }

# Work counted by its own number needs that number.
for line in 'work assemble' 'work assemble per piece' 'work drill-bolt per part rail'; do
    recipe 2 "$line"
    status 1 "$SAWBILL" quote "$home/samples/small.job"
    complains 'small.recipe:7:1'
    complains 'is counted per each: say how many'
    status 1 "$SAWBILL" check "$home/templates/small.recipe"
done
recipe 2 'work drill-bolt 1 per part rail'
status 0 "$SAWBILL" quote "$home/samples/small.job"

# A piece without parts is priced, with advice.
recipe 0 ''
status 3 "$SAWBILL" quote "$home/samples/small.job"
complains 'small.job:4:1'
complains 'rack has no parts'
recipe 2 ''
status 0 "$SAWBILL" quote "$home/samples/small.job"

# What is taken out of a tin is told, and a price is not rounded to the cent.
status 0 "$SAWBILL" takeoff "$home/samples/harbour-planters.job" --json
grep -A1 '"needed": [1-9]' "$work/out" | grep -q '"unit": "ml"' || fail "no amount of a tin"
grep -q '"each": "[0-9]*\.[0-9][0-9][0-9][0-9][0-9]"' "$work/out" || fail "a price without all its decimals"
finish
