/* The takeoff: what one or several jobs take of everything, and what to order for them together. */
#include "papers/figures.h"
#include "papers/order.h"

typedef struct taking {
    sb_run *run;
    const sb_shop *shop;
    const sb_takeoff *const *takeoffs;
    size_t count;
} taking;

static void pieces_table(const taking *t, sb_sheet *sheet, const sb_takeoff *takeoff) {
    const char *title =
        t->count == 1 ? "Pieces" : sb_pool_print(t->run->pool, "Pieces of %s", takeoff->job->name);
    sb_table *table = sb_table_add(t->run, sheet, title, "Piece|Off>|Size");
    for (size_t i = 0; i < takeoff->pieces.count; i++) {
        const sb_takeoff_piece *piece = &takeoff->pieces.items[i];
        sb_cell *row = sb_row_add(t->run, table);
        row[0] = sb_cell_text(piece->title);
        row[1] = sb_cell_count(piece->count);
        row[2] = sb_cell_text(piece->size_text);
    }
}

/* Timber and panels of one stock over all jobs. */
static sb_stock_total stock_sum(const taking *t, const sb_stock *stock) {
    sb_stock_total sum = {.stock = stock};
    for (size_t i = 0; i < t->count; i++)
        for (size_t j = 0; j < t->takeoffs[i]->totals.count; j++) {
            const sb_stock_total *one = &t->takeoffs[i]->totals.items[j];
            if (one->stock != stock)
                continue;
            sum.parts = sb_add(sum.parts, one->parts);
            sum.net_length = sb_length_add(sum.net_length, one->net_length);
            sum.net_area.um2 = sb_add(sum.net_area.um2, one->net_area.um2);
            sum.net_volume.nl = sb_add(sum.net_volume.nl, one->net_volume.nl);
            sum.spare_length = sb_length_add(sum.spare_length, one->spare_length);
            sum.spare_added = one->spare_added;
            sum.spare_lost = one->spare_lost;
        }
    return sum;
}

static const char *net_words(const taking *t, const sb_stock_total *sum) {
    const sb_style *style = &t->shop->settings.style;
    sb_cell cell = sum->stock->kind == SB_STOCK_SHEET ? face_cell(style, sum->net_area)
                                                      : long_cell(style, sum->net_length);
    const char *unit = sum->stock->kind == SB_STOCK_SHEET ? face_unit(style) : long_unit(style);
    if (sum->stock->kind == SB_STOCK_VOLUME)
        return sb_stock_amount_text(t->run, sum->stock, sum->net_volume.nl, style);
    return sb_pool_print(t->run->pool, "%s %s",
                         sb_write_decimal(t->run, cell.amount, cell.digits, style->decimal_comma), unit);
}

static const char *spare_words(const taking *t, const sb_stock_total *sum) {
    if (sum->spare_added.ppm == 0)
        return "";
    return sb_pool_print(t->run->pool, "%s added to net, %s lost of bought",
                         computed_share_words(t->run, t->shop, sum->spare_added),
                         computed_share_words(t->run, t->shop, sum->spare_lost));
}

static void timber_table(const taking *t, sb_sheet *sheet) {
    sb_table *table = NULL;
    for (size_t i = 0; i < t->shop->stock.count; i++) {
        sb_stock_total sum = stock_sum(t, t->shop->stock.items[i]);
        if (sum.parts == 0)
            continue;
        if (!table)
            table =
                sb_table_add(t->run, sheet, "Timber and sheets", "Stock|Parts>|Net>|Allowance for defects");
        sb_cell *row = sb_row_add(t->run, table);
        row[0] = sb_cell_text(sum.stock->title);
        row[1] = sb_cell_count(sum.parts);
        row[2] = sb_cell_text(net_words(t, &sum));
        row[3] = sb_cell_text(spare_words(t, &sum));
    }
}

static int64_t usage_sum(const taking *t, const sb_stock *stock) {
    int64_t sum = 0;
    for (size_t i = 0; i < t->count; i++)
        for (size_t j = 0; j < t->takeoffs[i]->usages.count; j++)
            if (t->takeoffs[i]->usages.items[j].stock == stock)
                sum = sb_add(sum, t->takeoffs[i]->usages.items[j].amount);
    return sum;
}

static void usage_table(const taking *t, sb_sheet *sheet) {
    sb_table *table = NULL;
    for (size_t i = 0; i < t->shop->stock.count; i++) {
        const sb_stock *stock = t->shop->stock.items[i];
        int64_t sum = usage_sum(t, stock);
        if (sum == 0)
            continue;
        if (!table)
            table = sb_table_add(t->run, sheet, "Fixings, finish, glue and the rest", "Stock|Takes>");
        sb_cell *row = sb_row_add(t->run, table);
        row[0] = sb_cell_text(stock->title);
        row[1] = sb_cell_text(sb_stock_amount_text(t->run, stock, sum, &t->shop->settings.style));
    }
}

sb_document *sb_paper_takeoff(sb_run *run, const sb_shop *shop, const char *title,
                              const sb_takeoff *const *takeoffs, size_t count, const sb_plan *plan,
                              const sb_order *order) {
    const sb_settings *settings = &shop->settings;
    taking t = {run, shop, takeoffs, count};
    const char *heading = sb_pool_print(run->pool, "Takeoff: %s", title ? title : takeoffs[0]->job->name);
    sb_document *document =
        sb_document_new(run, heading, takeoffs[0]->job->date, settings->style, settings->currency);
    document->foot = sb_pool_print(run->pool, "%s, %s", heading, sb_write_date(run, takeoffs[0]->job->date));
    document->letter = settings->style.units == SB_UNITS_IN;
    sb_sheet *sheet = sb_sheet_add(run, document, "Takeoff");
    sb_heading_add(run, sheet, heading);
    for (size_t i = 0; i < count; i++)
        pieces_table(&t, sheet, takeoffs[i]);
    timber_table(&t, sheet);
    usage_table(&t, sheet);
    sb_paragraph_add(
        run, sheet,
        sb_pool_print(run->pool, "Cutting plan over all jobs: %s.", plan_words(run, &settings->style, plan)),
        false);
    sb_sheet *buying = sb_sheet_add(run, document, "Order");
    sb_heading_add(run, buying, "Order");
    order_fill(run, buying, shop, order);
    return document;
}
