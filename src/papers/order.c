/* The order: one list per merchant, in the lengths and packs they sell; the first table is also the CSV. */
#include "papers/order.h"

#include <string.h>

/* Timber by volume, and what is measured out of a tin or roll in the rack, is one lot: its amount says more than a count. */
static bool is_lot(const sb_order_line *line) {
    return line->stock->kind == SB_STOCK_VOLUME || (line->rack && *sb_stock_kind_unit(line->stock->kind));
}

const char *order_amount(sb_run *run, const sb_order_line *line, const sb_style *style) {
    return sb_stock_amount_text(run, line->stock, is_lot(line) ? line->needed : line->count, style);
}

static const char *size_words(sb_run *run, const sb_order_line *line, const sb_style *style) {
    sb_length length = line->offer ? line->offer->length : line->rack->length;
    sb_length width = line->offer ? line->offer->width : line->rack->width;
    if (line->stock->kind == SB_STOCK_SHEET)
        return sb_pool_print(run->pool, "%s x %s",
                             sb_write_length(run, width.nm ? width : line->stock->width, style),
                             sb_write_length_unit(run, length, style));
    if (length.nm > 0)
        return sb_write_length_unit(run, length, style);
    if (line->rack)
        return "";
    return is_lot(line) ? order_amount(run, line, style)
                        : sb_stock_amount_text(run, line->stock, line->offer->pack, style);
}

static void line_row(sb_run *run, sb_table *table, const sb_order_line *line, const sb_settings *settings) {
    int digits = settings->currency.digits;
    sb_cell *row = sb_row_add(run, table);
    row[0] = sb_cell_text(line->merchant);
    row[1] = sb_cell_text(line->stock->id);
    row[2] = sb_cell_text(line->stock->title);
    row[3] = sb_cell_text(size_words(run, line, &settings->style));
    row[4] = sb_cell_count(line->count);
    row[5] = sb_cell_price(line->each.milli, digits + 3);
    size_t at = table->rows.count - 1;
    row[6] = sb_cell_related(
        sb_cell_money(line->amount),
        sb_rel_round(run,
                     sb_rel(run, SB_REL_MUL, sb_rel_cell(run, table, at, 4), sb_rel_cell(run, table, at, 5)),
                     digits));
    row[7] = sb_cell_text(line->reorder ? "rack is low" : "");
}

static void rack_table(sb_run *run, sb_sheet *sheet, const sb_order *order, const sb_settings *settings) {
    sb_table *table = NULL;
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (!line->rack)
            continue;
        if (!table)
            table = sb_table_add(run, sheet, "From the rack", "Label|Stock|Size>|Takes>");
        sb_cell *row = sb_row_add(run, table);
        row[0] = sb_cell_text(line->rack->label);
        row[1] = sb_cell_text(line->stock->title);
        row[2] = sb_cell_text(size_words(run, line, &settings->style));
        row[3] = sb_cell_text(order_amount(run, line, &settings->style));
    }
}

static sb_money merchant_total(const sb_order *order, const char *merchant) {
    sb_money total = {0};
    for (size_t i = 0; i < order->lines.count; i++)
        if (!order->lines.items[i].rack && strcmp(order->lines.items[i].merchant, merchant) == 0)
            total = sb_money_add(total, order->lines.items[i].amount);
    return total;
}

/* Totals of each merchant, and over all. */
static void totals_table(sb_run *run, sb_sheet *sheet, const sb_order *order) {
    sb_table *table = sb_table_add(run, sheet, "By merchant, without tax", "Merchant|Amount>");
    const char *last = NULL;
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (line->rack || (last && strcmp(last, line->merchant) == 0))
            continue;
        last = line->merchant;
        sb_cell *row = sb_row_add(run, table);
        row[0] = sb_cell_text(last);
        row[1] = sb_cell_money(merchant_total(order, last));
    }
    size_t count = table->rows.count;
    sb_cell *total = sb_total_row_add(run, table);
    total[0] = sb_cell_text("All");
    total[1] = sb_cell_money(order->total);
    if (count > 0)
        total[1] = sb_cell_related(total[1], sb_rel_sum(run, table, 1, 0, count - 1));
}

void order_fill(sb_run *run, sb_sheet *sheet, const sb_shop *shop, const sb_order *order) {
    const sb_settings *settings = &shop->settings;
    sb_table *table = sb_table_add(run, sheet, "Buy", "Merchant|Code|What|Size>|Count>|Each>|Amount>|Why");
    for (size_t i = 0; i < order->lines.count; i++)
        if (!order->lines.items[i].rack)
            line_row(run, table, &order->lines.items[i], settings);
    totals_table(run, sheet, order);
    rack_table(run, sheet, order, settings);
}

sb_document *sb_paper_order(sb_run *run, const sb_shop *shop, const char *title, sb_date date,
                            const sb_order *order) {
    const sb_settings *settings = &shop->settings;
    const char *name = title ? title : "";
    sb_document *document = sb_document_new(run, sb_pool_print(run->pool, "Order: %s", name), date,
                                            settings->style, settings->currency);
    document->foot = sb_pool_print(run->pool, "%s, %s", name, sb_write_date(run, date));
    document->letter = settings->style.units == SB_UNITS_IN;
    sb_sheet *sheet = sb_sheet_add(run, document, "Order");
    sheet->landscape = true;
    sb_heading_add(run, sheet, document->title);
    order_fill(run, sheet, shop, order);
    return document;
}
