/* The order: one list per merchant, in the lengths and packs they sell; and all lines in one table, for other programs. */
#include "papers/order.h"

#include <string.h>

/* Timber by volume, and what is measured out of a tin or roll in the rack, is one lot: its amount says more than a count. */
static bool is_lot(const sb_order_line *line) {
    return line->stock->kind == SB_STOCK_VOLUME || (line->rack && *sb_stock_kind_unit(line->stock->kind));
}

const char *order_amount(sb_run *run, const sb_order_line *line, const sb_style *style) {
    return sb_stock_amount_text(run, line->stock, is_lot(line) ? line->needed : line->count, style);
}

/* "pack of 200", "2.5 l"; single things need no words. */
static const char *pack_words(sb_run *run, const sb_order_line *line, const sb_style *style) {
    const char *holds = sb_stock_amount_text(run, line->stock, line->offer->pack, style);
    if (*line->offer->sold)
        return line->offer->sold;
    return line->offer->pack == 1 ? "" : sb_pool_print(run->pool, "pack of %s", holds);
}

const char *order_size(sb_run *run, const sb_order_line *line, const sb_style *style) {
    sb_length length = line->offer ? line->offer->length : line->rack->length;
    sb_length width = line->offer ? line->offer->width : line->rack->width;
    if (line->stock->kind == SB_STOCK_SHEET)
        return sb_write_size(run, length, width.nm ? width : line->stock->width, style);
    if (length.nm > 0)
        return sb_write_size(run, length, (sb_length){0}, style);
    if (line->rack)
        return "";
    return is_lot(line) ? order_amount(run, line, style) : pack_words(run, line, style);
}

/* Columns of what is bought. The list for other programs has the merchant before them and the stock's id behind. */
enum {
    BUY_WHAT,
    BUY_SIZE,
    BUY_COUNT,
    BUY_EACH,
    BUY_AMOUNT,
    BUY_WHY, /* on the paper only where something is bought for the rack */
    BUY_CODE
};

static sb_cell amount_cell(sb_run *run, const sb_table *table, size_t first, const sb_order_line *line,
                           int digits) {
    size_t at = table->rows.count - 1;
    const sb_relation *count = sb_rel_cell(run, table, at, first + BUY_COUNT),
                      *each = sb_rel_cell(run, table, at, first + BUY_EACH);
    return sb_cell_related(sb_cell_money(line->amount),
                           sb_rel_round(run, sb_rel(run, SB_REL_MUL, count, each), digits));
}

static sb_cell *buy_row(sb_run *run, sb_table *table, size_t first, const sb_order_line *line,
                        const sb_settings *settings) {
    int digits = settings->currency.digits;
    sb_cell *row = sb_row_add(run, table);
    row[first + BUY_WHAT] = sb_cell_text(line->stock->title);
    row[first + BUY_SIZE] = sb_cell_text(order_size(run, line, &settings->own_style));
    row[first + BUY_COUNT] = sb_cell_count(line->count);
    row[first + BUY_EACH] = sb_cell_price(line->each.milli, digits + 3);
    row[first + BUY_AMOUNT] = amount_cell(run, table, first, line, digits);
    if (first + BUY_WHY < table->column_count)
        row[first + BUY_WHY] = sb_cell_text(line->reorder ? "rack is low" : "");
    return row;
}

static bool any_reorder(const sb_order *order) {
    for (size_t i = 0; i < order->lines.count; i++)
        if (order->lines.items[i].reorder)
            return true;
    return false;
}

static void rack_table(sb_run *run, sb_sheet *sheet, const sb_order *order, const sb_settings *settings) {
    sb_table *table = NULL;
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (!line->rack)
            continue;
        if (!table)
            table = sb_table_add(run, sheet, "From the rack", "What|Size>|Takes>|Label");
        sb_cell *row = sb_row_add(run, table);
        row[0] = sb_cell_text(line->stock->title);
        row[1] = sb_cell_text(order_size(run, line, &settings->own_style));
        row[2] = sb_cell_text(order_amount(run, line, &settings->own_style));
        row[3] = sb_cell_text(line->rack->label);
    }
}

static bool is_bought(const sb_order_line *line) {
    return line->rack == NULL;
}

/* A table of one merchant's lines, from `start` on; where the next merchant starts. Lines stand merchant by merchant. */
static size_t merchant_table(sb_run *run, sb_sheet *sheet, const sb_order *order, size_t start,
                             const sb_settings *settings) {
    const char *merchant = order->lines.items[start].merchant;
    sb_table *table = sb_table_add(run, sheet, merchant,
                                   any_reorder(order) ? "What|Size>|Count>|Each>|Amount>|Why"
                                                      : "What|Size>|Count>|Each>|Amount>");
    sb_money sum = {0};
    size_t i = start;
    for (; i < order->lines.count && is_bought(&order->lines.items[i]); i++) {
        if (strcmp(order->lines.items[i].merchant, merchant) != 0)
            break;
        buy_row(run, table, 0, &order->lines.items[i], settings);
        sum = sb_money_add(sum, order->lines.items[i].amount);
    }
    const sb_relation *lines = sb_rel_sum(run, table, BUY_AMOUNT, 0, table->rows.count - 1);
    sb_cell *total = sb_total_row_add(run, table);
    total[BUY_WHAT] = sb_cell_text("All, without tax");
    total[BUY_AMOUNT] = sb_cell_strong(sb_cell_related(sb_cell_money(sum), lines));
    return i;
}

sb_money order_restock(const sb_order *order) {
    sb_money sum = {0};
    for (size_t i = 0; i < order->lines.count; i++)
        if (order->lines.items[i].reorder)
            sum = sb_money_add(sum, order->lines.items[i].amount);
    return sum;
}

static void total_line(sb_run *run, sb_sheet *sheet, const sb_order *order, const sb_settings *settings) {
    const char *total = sb_write_money(run, order->total, settings->currency, &settings->style);
    sb_paragraph_add(run, sheet,
                     sb_pool_print(run->pool, "Of all merchants together: %s %s, without tax.", total,
                                   settings->currency.code),
                     false);
}

static void put_sum(sb_run *run, sb_table *table, const char *what, sb_money amount) {
    sb_cell *row = sb_row_add(run, table);
    row[BUY_WHAT] = sb_cell_text(what);
    row[BUY_AMOUNT] = sb_cell_money(amount);
}

/* What the jobs need and what only fills the rack up are two sums, and the whole. */
static void total_table(sb_run *run, sb_sheet *sheet, const sb_order *order) {
    sb_table *table = sb_table_add(run, sheet, "All merchants together", "||||>");
    table->no_heading = true;
    sb_money restock = order_restock(order);
    put_sum(run, table, "For the jobs", sb_money_sub(order->total, restock));
    put_sum(run, table, "For the rack, to its minimum", restock);
    const sb_relation *both = sb_rel_sum(run, table, BUY_AMOUNT, 0, 1);
    sb_cell *total = sb_total_row_add(run, table);
    total[BUY_WHAT] = sb_cell_text("All, without tax");
    total[BUY_AMOUNT] = sb_cell_strong(sb_cell_related(sb_cell_money(order->total), both));
}

void order_fill(sb_run *run, sb_sheet *sheet, const sb_shop *shop, const sb_order *order) {
    for (size_t i = 0; i < order->lines.count && is_bought(&order->lines.items[i]);)
        i = merchant_table(run, sheet, order, i, &shop->settings);
    if (any_reorder(order))
        total_table(run, sheet, order);
    else
        total_line(run, sheet, order, &shop->settings);
    rack_table(run, sheet, order, &shop->settings);
}

sb_document *sb_paper_order_list(sb_run *run, const sb_shop *shop, const char *title, sb_date date,
                                 const sb_order *order) {
    const sb_settings *settings = &shop->settings;
    sb_document *document =
        sb_document_new(run, title ? title : "Order", date, settings->style, settings->currency);
    sb_sheet *sheet = sb_sheet_add(run, document, "Order");
    sb_table *table = sb_table_add(run, sheet, "", "Merchant|What|Size|Count>|Each>|Amount>|Why|Code");
    for (size_t i = 0; i < order->lines.count && is_bought(&order->lines.items[i]); i++) {
        sb_cell *row = buy_row(run, table, 1, &order->lines.items[i], settings);
        row[0] = sb_cell_text(order->lines.items[i].merchant);
        row[1 + BUY_CODE] = sb_cell_text(order->lines.items[i].stock->id);
    }
    return document;
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
    sb_heading_add(run, sheet, document->title);
    order_fill(run, sheet, shop, order);
    return document;
}
