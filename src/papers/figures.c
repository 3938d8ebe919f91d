/* Figures and words that several money papers show alike. */
#include "papers/figures.h"

#include <string.h>

static const int64_t MG_PER_POUND_100 = 45359237; /* 0.45359237 kg exactly, times 100 */

static bool feet(const sb_style *style) {
    return style->units == SB_UNITS_IN;
}

const char *long_unit(const sb_style *style) {
    return feet(style) ? "ft" : "m";
}

const char *face_unit(const sb_style *style) {
    return feet(style) ? "ft2" : "m2";
}

const char *weight_unit(const sb_style *style) {
    return feet(style) ? "lb" : "kg";
}

sb_cell long_cell(const sb_style *style, sb_length length) {
    return sb_cell_decimal(sb_mul_div(length.nm, 100, feet(style) ? SB_NM_PER_FOOT : 1000000000), 2);
}

sb_cell face_cell(const sb_style *style, sb_area area) {
    return sb_cell_decimal(sb_mul_div(area.um2, 100, feet(style) ? SB_UM2_PER_FOOT2 : 1000000000000), 2);
}

sb_cell weight_cell(const sb_style *style, sb_mass mass) {
    return sb_cell_decimal(
        feet(style) ? sb_mul_div(mass.mg, 1000, MG_PER_POUND_100) : sb_mul_div(mass.mg, 1, 100000), 1);
}

const char *money_words(sb_run *run, const sb_shop *shop, sb_money amount) {
    const sb_settings *s = &shop->settings;
    return sb_pool_print(run->pool, "%s %s", sb_write_money(run, amount, s->currency, &s->style),
                         s->currency.code);
}

const char *number_words(sb_run *run, const sb_shop *shop, int64_t amount, int digits, int least) {
    for (; digits > least && amount % 10 == 0; digits--)
        amount /= 10;
    return sb_write_decimal(run, amount, digits, shop->settings.style.decimal_comma);
}

const char *exact_cost_words(sb_run *run, const sb_shop *shop, sb_cost cost) {
    const sb_settings *s = &shop->settings;
    if (cost.milli % 1000 == 0)
        return money_words(run, shop, sb_cost_money(cost));
    return sb_pool_print(run->pool, "%s %s",
                         number_words(run, shop, cost.milli, s->currency.digits + 3, s->currency.digits),
                         s->currency.code);
}

const char *share_words(sb_run *run, const sb_shop *shop, sb_share share) {
    return sb_write_share(run, share, 0, shop->settings.style.decimal_comma);
}

const char *computed_share_words(sb_run *run, const sb_shop *shop, sb_share share) {
    return share_words(run, shop, (sb_share){sb_mul(sb_mul_div(share.ppm, 1, 100), 100)});
}

const char *hours_words(sb_run *run, const sb_shop *shop, sb_duration time) {
    int64_t hundredths = sb_mul_div(time.ms, 100, 3600000);
    return sb_pool_print(run->pool, "%s h",
                         sb_write_decimal(run, hundredths, 2, shop->settings.style.decimal_comma));
}

const char *exact_hours_words(sb_run *run, const sb_shop *shop, sb_duration time) {
    return sb_pool_print(run->pool, "%s h",
                         number_words(run, shop, sb_mul_div(time.ms, 10000, 3600000), 4, 2));
}

const char *plan_words(sb_run *run, const sb_style *style, const sb_plan *plan) {
    if (plan->boards.count == 0 && plan->sheets.count == 0)
        return "nothing to cut";
    if (plan->proved)
        return "proved least";
    const char *broken = plan->cut_short ? "; the search was cut short" : "";
    if (plan->bound.milli <= 0)
        return sb_pool_print(run->pool, "not proved least%s", broken);
    int64_t tenths = sb_mul_div_up(sb_sub(plan->cost.milli, plan->bound.milli), 1000, plan->bound.milli);
    return sb_pool_print(run->pool, "at most %s %% above least%s",
                         sb_write_decimal(run, tenths, 1, style->decimal_comma), broken);
}

const char *way_words(const sb_way *way) {
    if (!way->option)
        return "the job";
    return way->option->title ? way->option->title : way->option->name;
}

const char *work_for_words(sb_run *run, const sb_takeoff *takeoff, const sb_labour_line *line) {
    const char *words = "";
    size_t having = 0, pieces = takeoff->pieces.count;
    if (*line->text && strcmp(line->text, line->operation->title) != 0)
        return line->text;
    for (size_t i = 0; line->weights && i < pieces; i++)
        if (line->weights[i] > 0)
            words = sb_pool_print(run->pool, "%s%s%s", words, having++ ? " and " : "",
                                  takeoff->pieces.items[i].title);
    return having < pieces ? words : "";
}
