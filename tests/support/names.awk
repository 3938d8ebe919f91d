# The names that stand beside figures on a page of a paper: rows of cells with tabs between them in, one name a line out.
# Lengths of stops and fences and numbers of cuts are names themselves, with the words of their heading and of their sheet.
function is_figure(cell) { return cell ~ /^(−|-)?[0-9][0-9 .,\/'"’]*([a-z%"]+[0-9]?)?( x [0-9].*)?$/ }
function has_figure(column,    i) {
    for (i = 1; i <= NF; i++)
        if (i != column && is_figure($i)) return 1
    return 0
}
function plain(length_text) { # as a fraction's format pads it
    gsub(/  +/, " ", length_text)
    sub(/^ /, "", length_text)
    sub(/ $/, "", length_text)
    return length_text
}
FNR == 1 { column = 1; kind = "" }
match($1, /^Sheets? [0-9]+( to [0-9]+)?:/) { sheet = tolower(substr($1, 1, RLENGTH - 1)); print $1; next }
/^[^\t]*\t?$/ && !/[0-9]/ { next }
/^Figure\t.*[0-9] pieces?/ { for (i = 2; i <= NF; i++) if ($i ~ /^[0-9]+ piece/) print $i; next }
/^Stop at\t/ { kind = "stop at"; next }
/^Fence at\t/ { kind = "fence at"; next }
/^Cut\tFence at/ { kind = "cut"; next }
/^(Group\tWhat|Piece\tInput|Count\tStock|Option\tFigure)\t/ { column = 2; kind = ""; next }
/^[^\t]+\t[A-Z][^\t0-9]*(\t[A-Z][^\t0-9]*)*\t*$/ { column = 1; kind = ""; next } # another heading
!has_figure(kind != "" ? 1 : column) { next }
kind == "cut" { print "cut " $1 " of " sheet; print "fence at " plain($2); next }
kind != "" { if (is_figure($1)) print kind " " plain($1); next }
$column != "" && !is_figure($column) { print $column }
