/* What is missing from shop.txt, and what contradicts itself. */
#include "shop/settings.h"

#include <string.h>

typedef struct checker {
    sb_run *run;
    const sb_shop *shop;
    sb_settings *settings;
} checker;

static bool told(const checker *check, const char *name) {
    return sb_shop_setting(check->shop, name).source != NULL;
}

static void missing(const checker *check, const char *example) {
    sb_error(check->run, check->settings->place, "a line is missing: expected one like `%s`", example);
}

static void check_present(const checker *check) {
    static const struct {
        const char *name, *example;
    } needed[] = {
        {"shop", "shop Bench and Bough"},
        {"currency", "currency EUR"},
        {"overhead", "overhead 14.00 per hour"},
        {"charge", "charge bought less leftovers"},
    };
    for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
        if (!told(check, needed[i].name))
            missing(check, needed[i].example);
    if (check->settings->workers.count == 0)
        missing(check, "worker bench 42.00 per hour");
}

/* ---- price ---- */

static void check_method(const checker *check) {
    sb_place markup = sb_shop_setting(check->shop, "markup"), margin = sb_shop_setting(check->shop, "margin");
    if (markup.source && margin.source)
        sb_error(check->run, markup,
                 "both `margin` and `markup` are told: a margin is a share of the price, a markup "
                 "one of the cost; expected one of the two");
    if (!markup.source && !margin.source)
        missing(check, "margin 25 % of price");
    check->settings->method = markup.source ? SB_MARKUP_ON_COST : SB_MARGIN_ON_PRICE;
    if (margin.source && !markup.source && check->settings->margin.ppm >= 1000000)
        sb_error(check->run, margin,
                 "no price leaves a margin of 100 %% or more: expected less, or a `markup` on cost");
}

static void check_shares(const checker *check) {
    sb_settings *settings = check->settings;
    if (settings->deposit.ppm > 1000000)
        sb_error(check->run, sb_shop_setting(check->shop, "deposit"),
                 "a deposit is at most 100 %% of the total");
    if (settings->confidence.ppm > 999000 || (settings->confidence.ppm <= 0 && told(check, "confidence")))
        sb_error(check->run, sb_shop_setting(check->shop, "confidence"),
                 "a price is sure in a share of cases: expected above 0 and at most 99.9 %%");
    if (settings->leftover_value.ppm <= 1000000)
        return;
    sb_error(check->run, sb_shop_setting(check->shop, "leftover value"),
             "a leftover worth more than the same costs new would make buying earn money: expected at most "
             "100 %%");
    settings->leftover_value.ppm = 0; /* or every piece in the rack would be found too cheap */
}

/* ---- saws and steps ---- */

static sb_place saw_line(const checker *check, const char *saw, const char *keyword) {
    return sb_shop_setting(check->shop, sb_pool_print(check->run->pool, "%s %s", saw, keyword));
}

static void check_saw(const checker *check, const char *name, const sb_saw *saw) {
    sb_place kerf = saw_line(check, name, "kerf");
    if (!kerf.source) {
        sb_place heading = saw_line(check, "saw", name);
        sb_error(check->run, heading.source ? heading : check->settings->place,
                 "the blade's width is missing: expected `kerf`, as `kerf 3 mm`, below `saw %s`", name);
    }
    if (saw->trim.nm > 0 && saw->trim.nm < saw->kerf.nm)
        sb_error(check->run, saw_line(check, name, "trim"),
                 "truing an end costs at least the blade's width: expected a trim of 0 or at least %s",
                 shop_exactly(check->run, saw->kerf, &check->settings->style));
}

static void check_step(const checker *check) {
    sb_style *style = &check->settings->style;
    if (style->step.nm == 0)
        style->step.nm = style->units == SB_UNITS_MM ? SB_NM_PER_MM / 2 : SB_NM_PER_INCH / 16;
    if (style->step.nm > 10 * SB_NM_PER_MM || style->step.nm < SB_NM_PER_MM / 1000)
        sb_error(check->run, sb_shop_setting(check->shop, "units"),
                 "expected a step between 0.001 mm and 10 mm");
}

/* On the narrower and the shorter of the papers in use, A4 and Letter, a label has room for a name and a size. */
static void check_labels(const checker *check) {
    const struct sb_label_grid *grid = &check->settings->labels;
    int64_t wide = SB_MM(210).nm - 2 * grid->side.nm - (grid->columns - 1) * grid->across.nm;
    int64_t high = SB_MM(279).nm - 2 * grid->top.nm - (grid->rows - 1) * grid->down.nm;
    if (wide / grid->columns >= SB_MM(25).nm && high / grid->rows >= SB_MM(12).nm)
        return;
    sb_place at = sb_shop_setting(check->shop, "labels grid");
    if (!at.source)
        at = sb_shop_setting(check->shop, "labels margin");
    sb_error(check->run, at.source ? at : sb_shop_setting(check->shop, "labels gap"),
             "margins and gaps leave a label less than 25 mm by 12 mm: expected fewer of them on a page");
}

void settings_check(shop_reader *reader) {
    const checker check = {reader->run, reader->shop, &reader->shop->settings};
    check_step(&check);
    check_present(&check);
    check_method(&check);
    check_shares(&check);
    check_labels(&check);
    check_saw(&check, "crosscut", &check.settings->crosscut);
    check_saw(&check, "rip", &check.settings->rip);
    check_saw(&check, "panel", &check.settings->panel);
}
