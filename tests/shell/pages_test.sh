# The cut sheet as pages and pictures: every part and number of the terminal's sheet can be read there, the same bytes each time.
. tests/shell/lib.sh

# all_there JOB: what the terminal says against the text of the pages
all_there() {
    pdftotext -raw "$work/$1/$1-cuts.pdf" - | tr '\n\302\240' '   ' | tr -s ' ' > "$work/page"
    tr -s ' ' '\n' < "$work/page" | sort -u > "$work/tokens"
    sed 's/[^0-9./"~ ]/ /g' "$work/out" | tr -s ' ' '\n' | grep '[0-9]' | sort -u > "$work/numbers"
    sed 's/[^0-9./"~ ]/ /g' "$work/page" | tr -s ' ' '\n' | sort -u > "$work/there"
    comm -23 "$work/numbers" "$work/there" > "$work/missing"
    [ -s "$work/missing" ] && fail "$1: numbers are missing: $(tr '\n' ' ' < "$work/missing")"
    sed -n 's/^ *"name": "\(.*\)",*$/\1/p' "$work/$1.json" | sort -u > "$work/names"
    while read -r name; do
        grep -qF "$name" "$work/page" || fail "$1: no \"$name\" on the pages"
    done < "$work/names"
    [ -s "$work/names" ] || fail "$1: no names"
}

# A user's settings of fonts change nothing, and labels beside the sheet do not either.
mkdir -p "$work/home/.config/fontconfig"
cat > "$work/home/.config/fontconfig/fonts.conf" <<'END'
<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><match target="pattern"><edit name="family" mode="assign" binding="strong"><string>DejaVu Serif</string></edit></match></fontconfig>
END
for job in harbour-planters shelf-options rack-bench boathouse-imperial allotment-beds; do
    status 0 env HOME="$work/home" XDG_CONFIG_HOME="$work/home/.config" LC_ALL=C.UTF-8 TZ=Asia/Tokyo \
        "$SAWBILL" cut --json "samples/$job.job" --labels --out "$work/labels"
    mv "$work/out" "$work/$job.json"
    status 0 "$SAWBILL" cut "samples/$job.job" --out "$work/$job"
    same "$work/$job/$job-cuts.pdf" "$work/labels/$job-cuts.pdf"
    all_there "$job"
    case $job in boathouse-imperial) size=letter ;; *) size=A4 ;; esac
    pdfinfo "$work/$job/$job-cuts.pdf" > "$work/info"
    grep -q "Page size:.*($size)" "$work/info" || fail "$job: not on $size"
    pages=$(sed -n 's/^Pages: *//p' "$work/info")
    grep -qF "page $pages of $pages" "$work/page" || fail "$job: pages are not counted"
    grep -q '^CreationDate:.*2026' "$work/info" || fail "$job: its date is not the job's"
    [ "$(pdffonts "$work/$job/$job-cuts.pdf" | tail -n +3 | grep -vc 'DejaVuSans.* yes yes ')" -eq 0 ] || fail "$job: another font"
done

# Pictures, one a board and a sheet.
for format in svg png; do
    status 0 "$SAWBILL" cut -q samples/shelf-options.job --drawings $format --out "$work/$format"
    for picture in board-1 board-5 sheet-1 sheet-6; do
        [ -s "$work/$format/shelf-options-$picture.$format" ] || fail "no picture $picture.$format"
    done
done
head -c 8 "$work/png/shelf-options-sheet-1.png" | od -An -c | grep -q 'P   N   G' || fail "a PNG is none"
grep -q '</svg>' "$work/svg/shelf-options-sheet-1.svg" || fail "an SVG is none"
status 2 "$SAWBILL" cut samples/shelf-options.job --drawings gif
complains "svg or png"

# The quote brings the same cut sheet.
status 0 "$SAWBILL" quote -q samples/shelf-options.job --out "$work/quote"
same "$work/shelf-options/shelf-options-cuts.pdf" "$work/quote/shelf-options-cuts.pdf"

# A file that may not grow is the system's failure, and nothing is left of it.
status 4 sh -c "ulimit -f 4; '$SAWBILL' cut -q samples/shelf-options.job --out '$work/small'"
[ -z "$(ls -A "$work/small" 2>/dev/null)" ] || fail "left behind: $(ls -A "$work/small")"

# Labels: the title and size of every part, in the grid of the shop.
pdftotext -raw "$work/labels/rack-bench-labels.pdf" "$work/labels.txt"
[ "$(grep -cx "1600 x 120 x 28 mm" "$work/labels.txt")" -ge 4 ] || fail "labels of the seat slats are missing"
grep -q "Next: " "$work/labels.txt" || fail "labels do not say what is next"
[ ! -e "$work/rack-bench/rack-bench-labels.pdf" ] || fail "labels nobody asked for"
home=$(shop)
printf 'labels grid 2 by 5\n' >> "$home/rates/shop.txt"
status 0 "$SAWBILL" cut -q "$home/samples/shelf-options.job" --labels --out "$work/few"
few=$(pdfinfo "$work/few/shelf-options-labels.pdf" | sed -n 's/^Pages: *//p')
many=$(pdfinfo "$work/labels/shelf-options-labels.pdf" | sed -n 's/^Pages: *//p')
[ "$few" -gt "$many" ] || fail "the grid of the shop makes no difference: $few, $many pages"

# A bare list has its sheet where --out says.
printf 'name,stock,length,count\npeg,batten,37,60\n' > "$work/pegs.csv"
printf 'stock,length,price\nbatten,2500,5\n' > "$work/stock.csv"
status 0 "$SAWBILL" cut -q --parts "$work/pegs.csv" --stock "$work/stock.csv" --kerf 3 --out "$work/list" --drawings svg
[ -s "$work/list/pegs-cuts.pdf" ] && [ -s "$work/list/pegs-board-1.svg" ] || fail "no sheet of a bare list"
status 0 "$SAWBILL" cut -q --parts "$work/pegs.csv" --stock "$work/stock.csv" --kerf 3 --out "$work/list" --labels
pdftotext -raw "$work/list/pegs-labels.pdf" - | tr "\\f" "\\n" > "$work/pegs.txt"
[ "$(grep -cx peg "$work/pegs.txt")" -eq 60 ] && [ "$(grep -cx "37 mm" "$work/pegs.txt")" -eq 60 ] || fail "a bare list has not a label for each part"
grep -qx "60 of 60" "$work/pegs.txt" || fail "labels of a bare list are not counted"
status 2 "$SAWBILL" cut --parts "$work/pegs.csv" --stock "$work/stock.csv" --labels
complains "wants --out"

# A workbook shows each of many boards, or says where its picture is.
awk 'BEGIN { print "name,stock,length,count"; for (i = 0; i < 405; i++) printf "part %d,batten,%d,1\n", i, 1300 + i }' > "$work/many.csv"
status 0 "$SAWBILL" cut -q --parts "$work/many.csv" --stock "$work/stock.csv" --kerf 3 --out "$work/list"
unzip -l "$work/list/many-cuts.xlsx" > "$work/inside"
[ "$(grep -c "media/image.*png" "$work/inside")" -eq 400 ] || fail "the workbook lacks pictures"
unzip -p "$work/list/many-cuts.xlsx" xl/sharedStrings.xml | grep -q "Board 405: .*see the picture on the pages" || fail "the workbook does not say where a picture is"
finish
