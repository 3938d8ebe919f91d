/* Bare lists: parts and stock from two CSV files, without shop or job. */
#include <string.h>

#include "sawbill/cutting.h"

enum part_column {
    P_NAME,
    P_STOCK,
    P_LENGTH,
    P_COUNT,
    P_WIDTH,
    P_END1,
    P_END2,
    P_CLEAR,
    P_SOUND,
    P_GRAIN,
    P_ROTATE,
    P_COLUMNS
};
enum stock_column {
    S_STOCK,
    S_LENGTH,
    S_PRICE,
    S_WIDTH,
    S_AVAILABLE,
    S_KIND,
    S_TRIM1,
    S_TRIM2,
    S_LABEL,
    S_COLUMNS
};

static const sb_column part_columns[P_COLUMNS] = {
    {"name", true},  {"stock", true}, {"length", true}, {"count", true},  {"width", false},
    {"end1", false}, {"end2", false}, {"clear", false}, {"sound", false}, {"grain", false},
    {"rotate", false},
};
static const sb_column stock_columns[S_COLUMNS] = {
    {"stock", true},      {"length", true}, {"price", true},  {"width", false},
    {"available", false}, {"kind", false},  {"trim1", false}, {"trim2", false}, {"label", false},
};

typedef enum row_kind {
    A_BOARD,
    A_SHEET,
    A_LEFTOVER,
    KINDS
} row_kind;

typedef struct listing {
    sb_run *run;
    sb_problem *problem;
    const sb_csv *csv; /* the file being read */
    size_t row;
    sb_length trim;
    int money_digits;
    row_kind *kinds; /* by row of the stock file */
    bool sound;
} listing;

static const sb_cell_in *cell(const listing *l, size_t column) {
    return sb_csv_cell(l->csv, l->row, column);
}

static bool is_told(const listing *l, size_t column) {
    return cell(l, column)->text[0] != '\0';
}

static void note(listing *l, bool sound) {
    l->sound = l->sound && sound;
}

/* ---- cells --------------------------------------------------------------------------------------- */

static bool need(listing *l, size_t column, const char *what) {
    if (!is_told(l, column))
        sb_error(l->run, cell(l, column)->place, "expected the %s here", what);
    return is_told(l, column);
}

static bool read_size(listing *l, size_t column, const char *what, sb_length *out) {
    const sb_cell_in *in = cell(l, column);
    if (!need(l, column, what))
        return false;
    if (!sb_read_length(l->run, in->text, in->place, l->csv->decimal_comma, out))
        return false;
    if (out->nm > 0)
        return true;
    sb_error(l->run, in->place, "the %s must be more than nothing", what);
    return false;
}

static bool read_optional_size(listing *l, size_t column, const char *what, sb_length *out) {
    *out = (sb_length){0};
    return !is_told(l, column) || read_size(l, column, what, out);
}

static bool read_word(listing *l, size_t column, const char *what, const char *const *words, size_t count,
                      size_t *out) {
    const sb_cell_in *in = cell(l, column);
    for (size_t i = 0; i < count; i++)
        if (strcmp(in->text, words[i]) == 0) {
            *out = i;
            return true;
        }
    sb_error_unknown(l->run, in->place, what, in->text, words, count);
    return false;
}

static bool read_optional_yes(listing *l, size_t column, bool *out) {
    return !is_told(l, column) || sb_read_yes(l->run, cell(l, column)->text, cell(l, column)->place, out);
}

/* ---- stock --------------------------------------------------------------------------------------- */

static size_t stock_named(const sb_problem *problem, const char *name) {
    for (size_t i = 0; i < problem->stock.count; i++)
        if (strcmp(problem->stock.items[i].name, name) == 0)
            return i;
    return SIZE_MAX;
}

static bool read_kind(listing *l, row_kind *out) {
    static const char *const words[KINDS] = {"board", "sheet", "leftover"};
    size_t index = A_BOARD;
    bool read = !is_told(l, S_KIND) || read_word(l, S_KIND, "kind of stock", words, KINDS, &index);
    *out = (row_kind)index;
    return read;
}

/* What the rows of one name say of it: boards, sheets, and for leftovers whether they have a width. */
static bool has_rows(const listing *l, const char *name, row_kind kind) {
    for (size_t row = 0; row < l->csv->row_count; row++)
        if (l->kinds[row] == kind && strcmp(sb_csv_cell(l->csv, row, S_STOCK)->text, name) == 0)
            return true;
    return false;
}

static bool has_width(const listing *l, const char *name) {
    for (size_t row = 0; row < l->csv->row_count; row++)
        if (strcmp(sb_csv_cell(l->csv, row, S_STOCK)->text, name) == 0 &&
            sb_csv_cell(l->csv, row, S_WIDTH)->text[0])
            return true;
    return false;
}

static bool is_sheet(listing *l, const char *name) {
    bool boards = has_rows(l, name, A_BOARD), sheets = has_rows(l, name, A_SHEET);
    return sheets || (!boards && has_width(l, name));
}

static size_t stock_of_row(listing *l) {
    const sb_cell_in *in = cell(l, S_STOCK);
    size_t known = stock_named(l->problem, in->text);
    if (!need(l, S_STOCK, "name of the stock"))
        return SIZE_MAX;
    if (known != SIZE_MAX)
        return known;
    sb_cut_stock stock = {.name = in->text, .sheet = is_sheet(l, in->text)};
    SB_PUSH(l->run->pool, l->problem->stock, stock);
    return l->problem->stock.count - 1;
}

static bool read_price(listing *l, bool leftover, sb_cost *out) {
    const sb_cell_in *in = cell(l, S_PRICE);
    sb_money price = {0};
    if (in->text[0] == '\0' && leftover)
        return true;
    if (!need(l, S_PRICE, "price of one"))
        return false;
    if (!sb_read_money(l->run, in->text, in->place, l->csv->decimal_comma, l->money_digits, &price))
        return false;
    if (price.minor < 0 || (price.minor == 0 && !leftover)) {
        sb_error(l->run, in->place, "only a leftover may cost nothing, and nothing may cost less");
        return false;
    }
    out->milli = sb_mul(price.minor, 1000);
    return true;
}

static bool read_available(listing *l, bool leftover, int64_t *out) {
    *out = leftover ? 1 : -1;
    return !is_told(l, S_AVAILABLE) ||
           sb_read_count(l->run, cell(l, S_AVAILABLE)->text, cell(l, S_AVAILABLE)->place, out);
}

static bool read_trim(listing *l, size_t column, sb_length *out) {
    const sb_cell_in *in = cell(l, column);
    *out = l->trim;
    if (in->text[0] == '\0')
        return true;
    if (!sb_read_length(l->run, in->text, in->place, l->csv->decimal_comma, out))
        return false;
    if (out->nm >= 0)
        return true;
    sb_error(l->run, in->place, "a trim cannot be less than nothing");
    return false;
}

/* Sheets have a width a row; the boards of one stock have one width between them. */
static bool take_width(listing *l, sb_supply *supply, sb_length width) {
    sb_cut_stock *stock = &l->problem->stock.items[supply->stock];
    if (stock->sheet) {
        supply->width = width;
        if (width.nm == 0)
            sb_error(l->run, cell(l, S_WIDTH)->place, "a sheet needs a width");
        return width.nm > 0;
    }
    if (width.nm > 0 && stock->width.nm > 0 && width.nm != stock->width.nm) {
        sb_error(l->run, cell(l, S_WIDTH)->place, "the boards of \"%s\" have another width in a row above",
                 stock->name);
        return false;
    }
    if (width.nm > 0)
        stock->width = width;
    return true;
}

static bool kind_agrees(listing *l, const sb_supply *supply) {
    bool sheet = l->problem->stock.items[supply->stock].sheet;
    if (l->kinds[l->row] != A_BOARD || !sheet)
        return true;
    sb_error(l->run, l->csv->rows[l->row],
             "\"%s\" is a sheet in another row and cannot be a board in this one",
             l->problem->stock.items[supply->stock].name);
    return false;
}

/* A label names one row: a list of measured boards goes by it. */
static bool label_is_new(listing *l) {
    const sb_cell_in *in = cell(l, S_LABEL);
    for (size_t row = 0; is_told(l, S_LABEL) && row < l->row; row++)
        if (strcmp(sb_csv_cell(l->csv, row, S_LABEL)->text, in->text) == 0) {
            sb_error(l->run, in->place, "the label \"%s\" stands in a row above", in->text);
            return false;
        }
    return true;
}

static void read_stock_row(listing *l) {
    sb_supply supply = {
        .label = cell(l, S_LABEL)->text, .row = l->row + 1, .place = l->csv->rows[l->row], .stock = stock_of_row(l)};
    sb_length width;
    supply.leftover = l->kinds[l->row] == A_LEFTOVER;
    bool sound = read_size(l, S_LENGTH, "length", &supply.length);
    sound = read_price(l, supply.leftover, &supply.price) && sound;
    sound = read_available(l, supply.leftover, &supply.available) && sound;
    sound = read_trim(l, S_TRIM1, &supply.trim1) && sound;
    sound = read_trim(l, S_TRIM2, &supply.trim2) && sound;
    sound = label_is_new(l) && sound;
    sound = read_optional_size(l, S_WIDTH, "width", &width) && supply.stock != SIZE_MAX && sound;
    note(l, sound && kind_agrees(l, &supply) && take_width(l, &supply, width));
    if (l->sound)
        SB_PUSH(l->run->pool, l->problem->supplies, supply);
}

/* False after an error that leaves nothing to say about rows. */
static bool open_list(listing *l, const char *path, const sb_column *columns, size_t count, const char *of) {
    l->csv = sb_csv_read(l->run, path, columns, count);
    bool readable = l->csv && !l->csv->faulty_header;
    if (readable && l->csv->row_count == 0)
        sb_error(l->run, (sb_place){l->csv->source, 0, 0}, "there are no %s in this list: only its header",
                 of);
    note(l, readable && l->csv->row_count > 0);
    return readable && l->csv->row_count > 0;
}

static void read_stock(listing *l, const char *path) {
    if (!open_list(l, path, stock_columns, S_COLUMNS, "stock"))
        return;
    l->kinds = SB_NEW_ARRAY(l->run->pool, row_kind, l->csv->row_count + 1);
    for (l->row = 0; l->row < l->csv->row_count; l->row++)
        note(l, read_kind(l, &l->kinds[l->row]));
    for (l->row = 0; l->row < l->csv->row_count; l->row++)
        read_stock_row(l);
}

/* ---- parts --------------------------------------------------------------------------------------- */

/* Where the list of stock could not be read at all, no part is blamed for it. */
static bool find_stock(listing *l, size_t *out) {
    const sb_cell_in *in = cell(l, P_STOCK);
    const sb_problem *problem = l->problem;
    *out = stock_named(problem, in->text);
    if (*out != SIZE_MAX)
        return true;
    if (!need(l, P_STOCK, "stock it is cut from") || !l->kinds)
        return false;
    const char **known = SB_NEW_ARRAY(l->run->pool, const char *, problem->stock.count + 1);
    for (size_t i = 0; i < problem->stock.count; i++)
        known[i] = problem->stock.items[i].name;
    sb_error_unknown(l->run, in->place, "stock", in->text, known, problem->stock.count);
    return false;
}

static bool read_count(listing *l, int64_t *out) {
    const sb_cell_in *in = cell(l, P_COUNT);
    if (!need(l, P_COUNT, "count") || !sb_read_count(l->run, in->text, in->place, out))
        return false;
    if (*out > 0)
        return true;
    sb_error(l->run, in->place, "the count must be 1 or more");
    return false;
}

/* Length along the sheet, unless the grain says otherwise or nothing is said of it and the part may turn. */
static bool read_grain(listing *l, sb_cut_grain *out) {
    static const char *const words[] = {"along", "across", "free"};
    size_t grain = SB_CUT_ALONG;
    bool rotate = false, told = is_told(l, P_GRAIN), turns = is_told(l, P_ROTATE);
    bool sound = !told || read_word(l, P_GRAIN, "grain", words, 3, &grain);
    sound = read_optional_yes(l, P_ROTATE, &rotate) && sound;
    if (!told && rotate)
        grain = SB_CUT_FREE;
    if (told && grain == SB_CUT_FREE && turns && !rotate)
        grain = SB_CUT_ALONG;
    if (sound && told && grain != SB_CUT_FREE && rotate)
        sb_note(l->run, cell(l, P_ROTATE)->place, "the grain holds this part: it is not turned");
    *out = (sb_cut_grain)grain;
    return sound;
}

static bool read_ends(listing *l, sb_need *part) {
    const sb_cell_in *one = cell(l, P_END1), *two = cell(l, P_END2);
    bool sound = sb_cut_end_read(l->run, one->text, one->place, l->csv->decimal_comma, &part->end1);
    return sb_cut_end_read(l->run, two->text, two->place, l->csv->decimal_comma, &part->end2) && sound;
}

static bool suits_stock(listing *l, const sb_need *part) {
    const sb_cut_stock *stock = &l->problem->stock.items[part->stock];
    if (stock->sheet && part->width.nm == 0) {
        sb_error(l->run, cell(l, P_WIDTH)->place, "a part from a sheet needs a width");
        return false;
    }
    bool angled =
        part->end1.mitre.udeg || part->end1.bevel.udeg || part->end2.mitre.udeg || part->end2.bevel.udeg;
    if (stock->sheet && angled) {
        sb_error(l->run, cell(l, P_END1)->place, "parts from sheets are cut square");
        return false;
    }
    return true;
}

static void read_part_row(listing *l) {
    sb_need part = {.name = cell(l, P_NAME)->text, .place = l->csv->rows[l->row]};
    bool sound = need(l, P_NAME, "name of the part");
    sound = find_stock(l, &part.stock) && sound;
    sound = read_size(l, P_LENGTH, "length", &part.length) && sound;
    sound = read_count(l, &part.count) && sound;
    sound = read_optional_size(l, P_WIDTH, "width", &part.width) && sound;
    sound = read_ends(l, &part) && sound;
    sound = read_optional_yes(l, P_CLEAR, &part.clear) && sound;
    sound = read_optional_yes(l, P_SOUND, &part.sound) && sound;
    sound = read_grain(l, &part.grain) && sound;
    note(l, sound && suits_stock(l, &part));
    if (l->sound)
        SB_PUSH(l->run->pool, l->problem->needs, part);
}

static void read_parts(listing *l, const char *path) {
    if (!open_list(l, path, part_columns, P_COLUMNS, "parts"))
        return;
    for (l->row = 0; l->row < l->csv->row_count; l->row++)
        read_part_row(l);
}

bool sb_problem_read(sb_run *run, sb_problem *problem, const char *parts_csv, const char *stock_csv,
                     sb_length trim, int money_digits) {
    listing l = {.run = run, .problem = problem, .trim = trim, .money_digits = money_digits, .sound = true};
    read_stock(&l, stock_csv);
    read_parts(&l, parts_csv);
    return l.sound && sb_ok(run);
}
