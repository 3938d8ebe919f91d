/* Lists of measured boards: which stretches of them are bad. */
#include "sawbill/measure.h"

#include <string.h>

enum {
    BOARD,
    FROM,
    TO,
    KIND,
    COLUMNS
};
static const sb_column columns[COLUMNS] = {{"board", true}, {"from", true}, {"to", true}, {"kind", true}};

typedef struct reading {
    sb_run *run;
    const sb_csv *csv;
    size_t row;
} reading;

static const sb_cell_in *cell(const reading *r, size_t column) {
    return sb_csv_cell(r->csv, r->row, column);
}

static bool is_told(const reading *r, size_t column) {
    return cell(r, column)->text[0] != '\0';
}

static bool need(const reading *r, size_t column, const char *what) {
    if (!is_told(r, column))
        sb_error(r->run, cell(r, column)->place, "expected %s here", what);
    return is_told(r, column);
}

static bool read_mark(const reading *r, size_t column, const char *what, sb_length *out) {
    const sb_cell_in *in = cell(r, column);
    if (!need(r, column, what) || !sb_read_length(r->run, in->text, in->place, r->csv->decimal_comma, out))
        return false;
    if (out->nm >= 0)
        return true;
    sb_error(r->run, in->place, "lengths are from the front end of the board: none is below nothing");
    return false;
}

static bool read_kind(const reading *r, bool *split) {
    static const char *const words[] = {"knot", "split"};
    const sb_cell_in *in = cell(r, KIND);
    if (!need(r, KIND, "knot or split"))
        return false;
    *split = strcmp(in->text, words[1]) == 0;
    if (*split || strcmp(in->text, words[0]) == 0)
        return true;
    sb_error_unknown(r->run, in->place, "kind of stretch", in->text, words, 2);
    return false;
}

static bool read_stretch(const reading *r, sb_stretch *out) {
    bool from = read_mark(r, FROM, "where the stretch begins", &out->from),
         to = read_mark(r, TO, "where the stretch ends", &out->to), kind = read_kind(r, &out->split);
    out->place = cell(r, TO)->place;
    if (!from || !to || !kind)
        return false;
    if (out->from.nm < out->to.nm)
        return true;
    sb_error(r->run, out->place, "a stretch ends behind its beginning: `to` must be more than `from`");
    return false;
}

static bool read_row(const reading *r, sb_finding *out) {
    *out = (sb_finding){.board = cell(r, BOARD)->text, .at = cell(r, BOARD)->place};
    out->faultless = !is_told(r, FROM) && !is_told(r, TO) && !is_told(r, KIND);
    bool named = need(r, BOARD, "the label of a board");
    return (out->faultless || read_stretch(r, &out->stretch)) && named;
}

sb_findings sb_findings_read(sb_run *run, const char *path) {
    sb_findings findings = {0};
    sb_finding finding;
    reading r = {run, sb_csv_read(run, path, columns, COLUMNS), 0};
    for (; r.csv && !r.csv->faulty_header && r.row < r.csv->row_count; r.row++)
        if (read_row(&r, &finding))
            SB_PUSH(run->pool, findings, finding);
    return findings;
}

static void put_in_order(sb_stretches *stretches) {
    for (size_t i = stretches->count;
         i-- > 1 && stretches->items[i].from.nm < stretches->items[i - 1].from.nm;) {
        sb_stretch later = stretches->items[i - 1];
        stretches->items[i - 1] = stretches->items[i];
        stretches->items[i] = later;
    }
}

void sb_finding_add(sb_run *run, const sb_finding *finding, sb_length board, sb_stretches *to) {
    if (finding->faultless)
        return;
    if (finding->stretch.to.nm > board.nm) {
        sb_error(run, finding->stretch.place, "the board \"%s\" is only %s long", finding->board,
                 sb_write_length_unit(run, board, NULL));
        return;
    }
    SB_PUSH(run->pool, *to, finding->stretch);
    put_in_order(to);
}
