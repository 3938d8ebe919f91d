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

static const char *size_words(const costing *c, sb_length length, sb_length width) {
    const sb_style *style = &c->shop->settings.style;
    if (length.nm <= 0)
        return "";
    if (width.nm <= 0)
        return sb_pool_print(c->run->pool, ", %s", sb_write_length_unit(c->run, length, style));
    return sb_pool_print(c->run->pool, ", %s x %s", sb_write_length(c->run, length, style),
                         sb_write_length_unit(c->run, width, style));
}

/* A big amount in the unit people speak of: 2500 ml is 2.5 l, 750000 mg is 0.75 kg, 50000 mm is 50 m. */
static const char *pack_words(const costing *c, const sb_offer *offer, const sb_stock *stock) {
    bool comma = c->shop->settings.style.decimal_comma;
    static const struct {
        sb_stock_kind kind;
        int digits;
        const char *unit;
    } units[] = {{SB_STOCK_FINISH, 3, "l"}, {SB_STOCK_GLUE, 6, "kg"}, {SB_STOCK_EDGING, 3, "m"}};
    if (offer->pack <= 1)
        return "";
    for (size_t i = 0; i < sizeof units / sizeof *units; i++)
        if (stock->kind == units[i].kind)
            return sb_pool_print(c->run->pool, ", %s %s",
                                 sb_write_fixed(c->run, offer->pack, units[i].digits, 2, comma),
                                 units[i].unit);
    return sb_pool_print(c->run->pool, ", %lld in a pack", (long long)offer->pack);
}

static const char *bought_words(const costing *c, const sb_order_line *line) {
    const sb_stock *stock = line->stock;
    const sb_offer *offer = line->offer;
    bool cut = stock->kind == SB_STOCK_BOARD || stock->kind == SB_STOCK_SHEET;
    sb_length width = stock->kind != SB_STOCK_SHEET ? (sb_length){0}
                      : offer->width.nm             ? offer->width
                                                    : stock->width;
    return sb_pool_print(c->run->pool, "%s%s, of %s", stock->title,
                         cut ? size_words(c, offer->length, width) : pack_words(c, offer, stock),
                         offer->merchant);
}

static const char *rack_words(const costing *c, const sb_order_line *line) {
    const sb_rack_item *rack = line->rack;
    sb_length width = line->stock->kind == SB_STOCK_SHEET ? rack->width : (sb_length){0};
    return sb_pool_print(c->run->pool, "%s%s, from the rack (%s)", line->stock->title,
                         size_words(c, rack->length, width), rack->label);
}

/* ---- lines -------------------------------------------------------------------------------------------- */

static void add_line(costing *c, sb_material_line line, const int64_t *weights) {
    sb_estimate *e = c->estimate;
    line.amount.minor = sb_mul_div(line.quantity_milli, line.each.milli, 1000000);
    SB_PUSH(c->run->pool, e->materials, line);
    e->material_total = sb_money_add(e->material_total, line.amount);
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    costing_share(c->run, line.amount.minor, weights ? weights : c->busy, c->count, shares);
    for (size_t i = 0; i < c->count; i++)
        e->pieces.items[i].material = sb_money_add(e->pieces.items[i].material, (sb_money){shares[i]});
}

static void add_order(costing *c, sb_material_group group) {
    for (size_t i = 0; i < c->order->lines.count; i++) {
        const sb_order_line *from = &c->order->lines.items[i];
        if (from->reorder || group_of(from->stock) != group)
            continue;
        sb_material_line line = {.group = group, .stock = from->stock, .order = from, .each = from->each};
        line.what = from->offer ? bought_words(c, from) : rack_words(c, from);
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
        line.each.milli = sb_mul_div(extra->micro, unit, 1000000);
        add_line(c, line, NULL);
    }
}

static const char *credit_words(const costing *c, const sb_stock *stock, costing_left left) {
    bool comma = c->shop->settings.style.decimal_comma;
    bool sheets = stock->kind == SB_STOCK_SHEET;
    const char *size = sheets ? sb_write_fixed(c->run, left.area.um2, 12, 2, comma)
                              : sb_write_fixed(c->run, left.length.nm, 9, 2, comma);
    return sb_pool_print(c->run->pool, "%s, usable leftovers: %lld, %s %s in all", stock->title,
                         (long long)left.count, size, sheets ? "m2" : "m");
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
