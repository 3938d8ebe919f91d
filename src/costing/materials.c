/* Material lines: what the order buys and the rack gives, the job's extras, credit for usable leftovers. */
#include "costing/inside.h"

const char *sb_material_group_word(sb_material_group group) {
    static const char *const words[] = {"timber", "sheets", "fixings", "finish",
                                        "glue",   "other",  "extra",   "credit"};
    return words[group];
}

static sb_material_group group_of(const sb_stock *stock) {
    switch (stock->kind) {
    case SB_STOCK_BOARD:
    case SB_STOCK_VOLUME:
        return SB_MATERIAL_TIMBER;
    case SB_STOCK_SHEET:
        return SB_MATERIAL_SHEETS;
    case SB_STOCK_FIXING:
        return SB_MATERIAL_FIXINGS;
    case SB_STOCK_FINISH:
        return SB_MATERIAL_FINISH;
    case SB_STOCK_GLUE:
        return SB_MATERIAL_GLUE;
    default:
        return SB_MATERIAL_OTHER;
    }
}

/* ---- what a line says --------------------------------------------------------------------------------- */

static const char *size_words(sb_run *run, const sb_shop *shop, sb_length length, sb_length width) {
    if (length.nm <= 0)
        return "";
    return sb_pool_print(run->pool, ", %s", sb_write_size(run, length, width, &shop->settings.style));
}

/* What a lot or a pack counted in pieces holds: ", 0.4 m3", ", 100 in a pack"; nothing for a single piece. */
static const char *amount_words(sb_run *run, const sb_shop *shop, const sb_stock *stock, int64_t amount) {
    bool measured = stock->kind == SB_STOCK_VOLUME || *sb_stock_kind_unit(stock->kind);
    if (!measured && amount <= 1)
        return "";
    const char *text = sb_stock_amount_text(run, stock, amount, &shop->settings.style);
    return sb_pool_print(run->pool, measured ? ", %s" : ", %s in a pack", text);
}

static bool is_cut(const sb_stock *stock) {
    return stock->kind == SB_STOCK_BOARD || stock->kind == SB_STOCK_SHEET;
}

/* Boards are told by their length, sheets by length and width. */
static const char *piece_words(sb_run *run, const sb_shop *shop, const sb_stock *stock, sb_length length,
                               sb_length width) {
    sb_length across = width.nm > 0 ? width : stock->width;
    return size_words(run, shop, length, stock->kind == SB_STOCK_SHEET ? across : (sb_length){0});
}

const char *sb_offer_words(sb_run *run, const sb_shop *shop, const sb_stock *stock, const sb_offer *offer,
                           int64_t lot) {
    int64_t amount = stock->kind == SB_STOCK_VOLUME ? lot : offer->pack;
    const char *what = is_cut(stock)  ? piece_words(run, shop, stock, offer->length, offer->width)
                       : *offer->sold ? sb_pool_print(run->pool, ", %s", offer->sold)
                                      : amount_words(run, shop, stock, amount);
    return sb_pool_print(run->pool, "%s%s, of %s", stock->title, what, offer->merchant);
}

/* What is counted in pieces has its number in the line; what is measured out says how much. */
static const char *rack_words(const costing *c, const sb_order_line *line) {
    const sb_rack_item *rack = line->rack;
    bool pieces = sb_stock_kind_unit(line->stock->kind)[0] == '\0';
    const char *what = is_cut(line->stock)
                           ? piece_words(c->run, c->shop, line->stock, rack->length, rack->width)
                       : pieces ? ""
                                : amount_words(c->run, c->shop, line->stock, line->needed);
    return sb_pool_print(c->run->pool, "%s%s, from the rack (%s)", line->stock->title, what, rack->label);
}

/* ---- lines -------------------------------------------------------------------------------------------- */

static void add_line(costing *c, sb_material_line line, const int64_t *weights) {
    sb_estimate *e = c->estimate;
    if (line.stock)
        line.each.milli = costing_changed(c, FIGURE_STOCK, line.stock, line.each.milli);
    line.amount.minor = sb_mul_div(line.quantity_milli, line.each.milli, 1000000);
    line.weights = costing_in_lowest_terms(c, weights ? weights : c->busy);
    SB_PUSH(c->run->pool, e->materials, line);
    e->material_total = sb_money_add(e->material_total, line.amount);
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    costing_share(c->run, line.amount.minor, line.weights, c->count, shares);
    for (size_t i = 0; i < c->count; i++)
        e->pieces.items[i].material = sb_money_add(e->pieces.items[i].material, (sb_money){shares[i]});
}

static void add_order(costing *c, sb_material_group group) {
    for (size_t i = 0; i < c->order->lines.count; i++) {
        const sb_order_line *from = &c->order->lines.items[i];
        if (from->reorder || group_of(from->stock) != group)
            continue;
        sb_material_line line = {.group = group, .stock = from->stock, .order = from, .each = from->each};
        line.what = from->offer ? sb_offer_words(c->run, c->shop, from->stock, from->offer, from->needed)
                                : rack_words(c, from);
        line.place = from->offer ? from->offer->place : from->rack->place;
        line.quantity_milli = costing_charged(c, from);
        add_line(c, line, costing_stock_weights(c, from->stock));
    }
}

static void add_extras(costing *c) {
    int64_t unit = 1000; /* thousandths of the minor unit in one major unit */
    for (int i = 0; i < c->shop->settings.currency.digits; i++)
        unit *= 10;
    for (size_t i = 0; i < c->job->extras.count; i++) {
        const sb_job_amount *extra = &c->job->extras.items[i];
        sb_material_line line = {.group = SB_MATERIAL_EXTRA, .place = extra->place, .quantity_milli = 1000};
        line.what = extra->text && *extra->text ? extra->text : "extra";
        line.each.milli = costing_changed(c, FIGURE_EXTRA, extra, sb_mul_div(extra->micro, unit, 1000000));
        add_line(c, line, NULL);
    }
}

static const char *credit_words(const costing *c, const sb_stock *stock, costing_left left) {
    static const char *const units[2][2] = {{"m", "m2"}, {"ft", "ft2"}};
    const sb_style *style = &c->shop->settings.style;
    bool sheets = stock->kind == SB_STOCK_SHEET, feet = style->units == SB_UNITS_IN;
    int64_t size = sheets ? sb_mul_div(left.area.um2, 100, feet ? SB_UM2_PER_FOOT2 : 1000000000000)
                          : sb_mul_div(left.length.nm, 100, feet ? SB_NM_PER_FOOT : 1000000000);
    return sb_pool_print(c->run->pool, "%s, usable leftovers: %lld, %s %s in all", stock->title,
                         (long long)left.count, sb_write_decimal(c->run, size, 2, style->decimal_comma),
                         units[feet][sheets]);
}

/* The plan's value of leftovers, shared out over the stocks they are of. */
static void add_credits(costing *c) {
    size_t count = c->shop->stock.count;
    costing_left *left = SB_NEW_ARRAY(c->run->pool, costing_left, count + 1);
    int64_t *values = SB_NEW_ARRAY(c->run->pool, int64_t, count + 1);
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, count + 1);
    for (size_t i = 0; i < count; i++) {
        left[i] = costing_left_of(c, c->shop->stock.items[i]);
        values[i] = left[i].value.milli;
    }
    costing_share(c->run, sb_cost_money(c->plan->leftovers).minor, values, count, shares);
    for (size_t i = 0; i < count; i++) {
        if (left[i].count == 0 || shares[i] == 0)
            continue;
        const sb_stock *stock = c->shop->stock.items[i];
        sb_material_line line = {.group = SB_MATERIAL_CREDIT, .stock = stock, .quantity_milli = 1000};
        line.what = credit_words(c, stock, left[i]);
        line.each.milli = sb_mul(-shares[i], 1000);
        line.place = stock->place;
        add_line(c, line, costing_stock_weights(c, stock));
    }
}

void costing_materials(costing *c) {
    for (sb_material_group group = SB_MATERIAL_TIMBER; group <= SB_MATERIAL_OTHER; group++)
        add_order(c, group);
    add_extras(c);
    if (c->shop->settings.charge == SB_CHARGE_BOUGHT_LESS_LEFTOVERS && c->plan->leftovers.milli > 0)
        add_credits(c);
}
