/* What other numbers of pieces cost, for the customer: prices of one and totals, nothing else. */
#include "papers/quote_breaks.h"
#include "papers/wording.h"

#include <inttypes.h>
#include <string.h>

enum {
    KINDS_MOST = 3 /* prices of one beside each other */
};

static const char *no_bars(sb_run *run, const char *text) {
    char *plain = sb_pool_print(run->pool, "%s", text);
    for (char *bar = strchr(plain, '|'); bar; bar = strchr(bar, '|'))
        *bar = '/';
    return plain;
}

static const char *headings(sb_run *run, const sb_wording *words, const sb_estimate *e) {
    size_t kinds = e->pieces.count;
    const char *text = sb_pool_print(run->pool, "%s>", sb_wording_text(run, words, "breaks-count"));
    const char *unit = e->taxes.count == 0              ? "unit-price"
                       : e->shop->settings.prices_gross ? "unit-price-gross"
                                                        : "unit-price-net";
    for (size_t i = 0; i < kinds && kinds <= KINDS_MOST; i++)
        text = kinds == 1
                   ? sb_pool_print(run->pool, "%s|%s>", text, sb_wording_text(run, words, unit))
                   : sb_pool_print(run->pool, "%s|%s: %s>", text,
                                   no_bars(run, e->takeoff->pieces.items[e->pieces.items[i].piece].title),
                                   sb_wording_text(run, words, unit));
    if (e->taxes.count)
        text = sb_pool_print(run->pool, "%s|%s>", text, sb_wording_text(run, words, "net"));
    return sb_pool_print(run->pool, "%s|%s>", text,
                         sb_wording_text(run, words, e->taxes.count ? "total-gross" : "total"));
}

static int64_t pieces_of(const sb_estimate *e) {
    int64_t count = 0;
    for (size_t i = 0; i < e->pieces.count; i++)
        count = sb_add(count, e->pieces.items[i].count);
    return count;
}

static void put(sb_run *run, sb_table *table, const sb_estimate *e, bool own) {
    sb_cell *row = sb_row_add(run, table);
    size_t column = 0, kinds = e->pieces.count;
    row[column++] = sb_cell_count(pieces_of(e));
    for (size_t i = 0; i < kinds && kinds <= KINDS_MOST; i++)
        row[column++] = sb_cell_money(e->pieces.items[i].unit);
    if (e->taxes.count)
        row[column++] = sb_cell_money(e->net);
    row[column] = sb_cell_money(e->gross);
    for (size_t i = 0; own && i < table->column_count; i++)
        row[i].strong = true;
}

/* What the job's number is made up of, where it has several kinds of piece: "8 = 6 x Trough + 2 x Seat". */
static void tell_kinds(sb_run *run, sb_sheet *sheet, const sb_estimate *e, const sb_wording *words) {
    const char *made = sb_pool_print(run->pool, "%" PRId64 " =", pieces_of(e));
    for (size_t i = 0; i < e->pieces.count; i++)
        made = sb_pool_print(run->pool, "%s%s %" PRId64 " x %s", made, i ? " +" : "",
                             e->pieces.items[i].count,
                             e->takeoff->pieces.items[e->pieces.items[i].piece].title);
    sb_paragraph_add(run, sheet, wording_fill(run, words, "breaks-kinds", "pieces", made), true);
}

void quote_breaks(sb_run *run, sb_sheet *sheet, const sb_breaks *breaks, size_t way,
                  const sb_wording *words) {
    const sb_estimate *own = breaks->list.items[breaks->own].ways->list.items[way].estimate;
    sb_table *table =
        sb_table_add(run, sheet, sb_wording_text(run, words, "breaks"), headings(run, words, own));
    for (size_t i = 0; i < breaks->list.count; i++)
        put(run, table, breaks->list.items[i].ways->list.items[way].estimate, i == breaks->own);
    if (own->pieces.count > 1)
        tell_kinds(run, sheet, own, words);
    if (*sb_wording_text(run, words, "breaks-note"))
        sb_paragraph_add(run, sheet, sb_wording_text(run, words, "breaks-note"), true);
}
