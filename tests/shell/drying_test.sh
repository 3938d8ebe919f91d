# Coats dry as waiting time: it costs no labour, and counts for the lead time.
. tests/shell/lib.sh
home=$(shop)
job=$home/samples/gates.job
printf 'job gates\ndate 2026-03-02\ncustomer Reed Lane Nursery\npiece ledged-gate\n  count 3\n  set wide 900 mm\n' > "$job"

# drying VALUE ROW: in a column of its own, for one stock
drying() {
    awk -F, -v value="$1" -v row="$2" 'NR == FNR && FNR == 1 { for (i = 1; i <= NF; i++) if ($i == "drying") column = i; nextfile }
        FNR == 1 { print column ? $0 : $0 ",drying"; next }
        { line = $0; if (column) { split(line, cells, ","); print line; next }
          print line "," ($1 == row ? value : "") }' rates/stock.csv rates/stock.csv > "$home/rates/stock.csv"
}
plain() { awk -F, 'FNR == 1 { for (i = 1; i <= NF; i++) if ($i == "drying") column = i } { line = ""; for (i = 1; i <= NF; i++) if (i != column) line = line (line == "" && i < 2 ? "" : ",") $i; print line }' rates/stock.csv; }
finish
