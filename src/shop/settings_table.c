/* The keywords of shop.txt and what each line holds. rates/README.md describes them in the same order. */
#include "shop/settings.h"

#include <stddef.h>
#include <string.h>

enum {
    DEAREST_HOUR = 100000000 /* [minor units]: plans count its thousandths */
};
#define COUNT(words) (sizeof(words) / sizeof *(words))

static bool read_address(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting, (void)cursor;
    SB_PUSH(reader->run->pool, reader->settings->address, sb_statement_text(reader->run, reader->line));
    return true;
}

/* ---- how things are written ---- */

static bool read_currency(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    const sb_token *code = sb_expect_word(reader->run, cursor, "a currency, as EUR");
    if (!code)
        return false;
    if (sb_currency_find(code->text, &reader->settings->currency))
        return true;
    sb_error(reader->run, code->place, "%s is no currency of ISO 4217: expected three capitals, as EUR",
             code->text);
    return false;
}

static bool read_language(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    const sb_token *word = sb_expect_word(reader->run, cursor, "a language, as en");
    if (!word)
        return false;
    reader->settings->language = word->text;
    return true;
}

/* `units mm step 0.5 mm`; the step may be left out */
static bool read_units(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"mm", "in"};
    sb_style *style = &reader->settings->style;
    size_t unit;
    (void)setting;
    if (!setting_take_choice(reader, cursor, "unit", words, COUNT(words), &unit))
        return false;
    style->units = unit == 0 ? SB_UNITS_MM : SB_UNITS_IN;
    style->step.nm = 0;
    return !sb_take_word(cursor, "step") || setting_take_length(reader, cursor, &style->step);
}

/* ---- saws ---- */

/* Under a misspelt heading the lines of the block are read all the same, for the nearest saw or for none. */
static void enter_saw(settings_reader *reader, const char *name) {
    sb_settings *settings = reader->settings;
    if (strcmp(name, "crosscut") == 0)
        reader->saw = &settings->crosscut;
    else if (strcmp(name, "rip") == 0)
        reader->saw = &settings->rip;
    else if (strcmp(name, "panel") == 0)
        reader->saw = &settings->panel;
    else
        reader->saw = SB_NEW(reader->run->pool, sb_saw);
    reader->saw_name = name;
}

static bool read_saw(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"crosscut", "rip", "panel"};
    const char *given = cursor->at->text;
    size_t which;
    (void)setting;
    bool known = setting_take_choice(reader, cursor, "saw", words, COUNT(words), &which);
    const char *name = known ? words[which] : sb_nearest(given, words, COUNT(words));
    enter_saw(reader, name ? name : given);
    return known;
}

/* `50 deg left 60 deg right`, `45 deg left`; `45 deg` alone is both sides */
static bool read_swing(settings_reader *reader, sb_cursor *cursor, sb_angle *left, sb_angle *right) {
    sb_angle angle;
    do {
        if (!setting_take_angle(reader, cursor, &angle))
            return false;
        if (sb_take_word(cursor, "left"))
            *left = angle;
        else if (sb_take_word(cursor, "right"))
            *right = angle;
        else
            *left = *right = angle;
    } while (cursor->at->kind == SB_QUANTITY);
    return true;
}

static bool read_mitre(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    return read_swing(reader, cursor, &reader->saw->mitre_left, &reader->saw->mitre_right);
}

static bool read_bevel(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    return read_swing(reader, cursor, &reader->saw->bevel_left, &reader->saw->bevel_right);
}

/* `2`, `2 with trimming`, `3`, `any` */
static bool read_stages(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    sb_settings *settings = reader->settings;
    const sb_token *token = cursor->at;
    (void)setting;
    settings->panel_stages = 0;
    settings->panel_trims = false;
    if (sb_take_word(cursor, "any"))
        return true;
    bool two = strcmp(token->text, "2") == 0;
    if (token->kind != SB_QUANTITY || (!two && strcmp(token->text, "3") != 0)) {
        sb_error(reader->run, token->place, "expected `2`, `2 with trimming`, `3` or `any`");
        return false;
    }
    cursor->at++;
    settings->panel_stages = two ? 2 : 3;
    settings->panel_trims = two && sb_take_word(cursor, "with");
    return !settings->panel_trims || setting_expect(reader, cursor, "trimming");
}

/* ---- leftovers ---- */

static bool read_leftover(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"board", "sheet", "value"};
    sb_settings *settings = reader->settings;
    size_t which;
    (void)setting;
    if (!setting_take_choice(reader, cursor, "leftover", words, COUNT(words), &which))
        return false;
    if (which == 0)
        return setting_take_length(reader, cursor, &settings->leftover_length);
    if (which == 2)
        return setting_take_share(reader, cursor, "new", &settings->leftover_value);
    return setting_take_length(reader, cursor, &settings->leftover_sheet_length) &&
           setting_expect(reader, cursor, "by") &&
           setting_take_length(reader, cursor, &settings->leftover_sheet_width);
}

/* ---- labels ---- */

static bool read_pair(settings_reader *reader, sb_cursor *cursor, sb_length *across, sb_length *down) {
    return setting_take_length(reader, cursor, across) && setting_expect(reader, cursor, "by") &&
           setting_take_length(reader, cursor, down);
}

static bool read_number(settings_reader *reader, sb_cursor *cursor, int64_t *out) {
    const sb_token *token = cursor->at;
    if (token->kind != SB_QUANTITY) {
        sb_error(reader->run, token->place, "expected a number of labels, as 3");
        return false;
    }
    int64_t number;
    cursor->at++;
    if (!sb_read_count(reader->run, token->text, token->place, &number))
        return false;
    if (number < 1 || number > 50) {
        sb_error(reader->run, token->place, "expected 1 to 50 labels beside or below one another");
        return false;
    }
    *out = number;
    return true;
}

/* `grid 3 by 8`, `margin 8 mm by 13 mm`, `gap 3 mm by 0` */
static bool read_labels(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"grid", "margin", "gap"};
    struct sb_label_grid *grid = &reader->settings->labels;
    size_t which;
    (void)setting;
    if (!setting_take_choice(reader, cursor, "measure of the labels", words, COUNT(words), &which))
        return false;
    if (which == 0)
        return read_number(reader, cursor, &grid->columns) && setting_expect(reader, cursor, "by") &&
               read_number(reader, cursor, &grid->rows);
    return which == 1 ? read_pair(reader, cursor, &grid->side, &grid->top)
                      : read_pair(reader, cursor, &grid->across, &grid->down);
}

/* ---- labour, overhead, price ---- */

static bool per_hour(settings_reader *reader, sb_cursor *cursor) {
    return setting_expect(reader, cursor, "per") &&
           (sb_take_word(cursor, "h") || setting_expect(reader, cursor, "hour"));
}

static bool read_worker(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    sb_worker worker = {.place = reader->line->keyword.place};
    (void)setting;
    const sb_token *id = sb_expect_word(reader->run, cursor, "a name for the worker");
    if (!id)
        return false;
    worker.id = id->text, worker.place = id->place;
    bool good = setting_take_money(reader, cursor, &worker.hour) && per_hour(reader, cursor);
    if (good && worker.hour.minor > DEAREST_HOUR)
        sb_error(reader->run, worker.place, "an hour of %s costs more than can be planned with", id->text);
    SB_PUSH(reader->run->pool, reader->settings->workers, worker);
    return good;
}

/* `14.00 per hour` or `30 % of labour` */
static bool read_overhead(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    if (cursor->at->kind == SB_QUANTITY && strchr(cursor->at->text, '%'))
        return setting_take_share(reader, cursor, "labour", &reader->settings->overhead_labour);
    return setting_take_money(reader, cursor, &reader->settings->overhead_hour) && per_hour(reader, cursor);
}

static bool read_charge(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"bought", "used"};
    size_t which;
    (void)setting;
    if (!setting_take_choice(reader, cursor, "charge", words, COUNT(words), &which))
        return false;
    reader->settings->charge = which == 0 ? SB_CHARGE_BOUGHT : SB_CHARGE_USED;
    if (which == 1 || !sb_take_word(cursor, "less"))
        return true;
    reader->settings->charge = SB_CHARGE_BOUGHT_LESS_LEFTOVERS;
    return setting_expect(reader, cursor, "leftovers");
}

/* `standard 21 % of net : VAT` */
static bool read_tax(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    const sb_token *id = sb_expect_word(reader->run, cursor, "a name for the tax");
    if (!id)
        return false;
    sb_tax tax = {.id = id->text, .title = id->text, .place = id->place};
    bool good = setting_take_share(reader, cursor, "net", &tax.rate);
    if (good && cursor->at->kind == SB_TEXT)
        tax.title = (cursor->at++)->text;
    SB_PUSH(reader->run->pool, reader->settings->taxes, tax);
    return good;
}

/* `5.00`, `10.00 less 0.05` */
static bool read_point(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    sb_settings *settings = reader->settings;
    if (!setting_money(reader, setting, cursor))
        return false;
    if (!sb_take_word(cursor, "less"))
        return true;
    sb_place at = cursor->at->place;
    if (!setting_take_money(reader, cursor, &settings->point_less))
        return false;
    if (settings->point_less.minor >= 0 && settings->point_less.minor < settings->price_point.minor)
        return true;
    sb_error(reader->run, at,
             "prices end below a multiple by less than one: expected from 0 to below the price point");
    settings->point_less.minor = 0;
    return false;
}

/* ---- delivery and payment ---- */

static bool no_less_than_nothing(settings_reader *reader, sb_place at, sb_money amount) {
    if (amount.minor >= 0)
        return true;
    sb_error(reader->run, at, "expected an amount of money that is not below zero");
    return false;
}

/* `coast 95.00` */
static bool read_zone(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    const sb_token *id = sb_expect_word(reader->run, cursor, "a name for the zone");
    if (!id)
        return false;
    sb_zone zone = {.id = id->text, .place = id->place};
    sb_place at = cursor->at->place;
    bool good =
        setting_take_money(reader, cursor, &zone.price) && no_less_than_nothing(reader, at, zone.price);
    SB_PUSH(reader->run->pool, reader->settings->zones, zone);
    return good;
}

/* `trip 60.00`, `km 1.20`, `mile 1.90` */
static bool read_delivery(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"trip", "km", "mile"};
    sb_settings *settings = reader->settings;
    sb_money *const targets[] = {&settings->delivery_trip, &settings->delivery_km, &settings->delivery_mile};
    size_t which;
    (void)setting;
    if (!setting_take_choice(reader, cursor, "what a delivery is counted by", words, COUNT(words), &which))
        return false;
    sb_place at = cursor->at->place;
    return setting_take_money(reader, cursor, targets[which]) &&
           no_less_than_nothing(reader, at, *targets[which]);
}

/* `30 % of total : when the frames are glued` */
static bool read_stage(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    sb_stage_share stage = {.place = cursor->at->place};
    if (!setting_take_share(reader, cursor, "total", &stage.share))
        return false;
    if (stage.share.ppm <= 0 || stage.share.ppm > 1000000) {
        sb_error(reader->run, stage.place,
                 "a stage is a share of the total: expected above 0 and at most 100 %%");
        return false;
    }
    if (cursor->at->kind != SB_TEXT) {
        sb_error(reader->run, cursor->at->place, "expected a colon and when this is due");
        return false;
    }
    stage.text = (cursor->at++)->text;
    SB_PUSH(reader->run->pool, reader->settings->stages, stage);
    return true;
}

/* `larch-70x70 by 4x4-fir` */
static bool read_replace(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    const sb_token *asked = sb_expect_word(reader->run, cursor, "the stock that recipes ask for");
    if (!asked || !setting_expect(reader, cursor, "by"))
        return false;
    const sb_token *taken = sb_expect_word(reader->run, cursor, "the stock that is taken for it");
    if (!taken)
        return false;
    sb_replacement replacement = {asked->text, taken->text, taken->place};
    SB_PUSH(reader->run->pool, reader->settings->replacements, replacement);
    return true;
}

/* `1, 5, 10, 25` */
static bool read_breaks(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)setting;
    return sb_read_sizes(reader->run, cursor, &reader->settings->breaks);
}

/* ---- the table ---- */

#define OF_SHOP(field)  .scope = IN_SHOP, .offset = offsetof(sb_settings, field)
#define OF_SAW(field)   .scope = IN_SAW, .offset = offsetof(sb_saw, field)
#define OF_PANEL(field) .scope = IN_PANEL, .offset = offsetof(sb_settings, field)

const shop_setting shop_settings[] = {
    {"shop", setting_text, .text = true, OF_SHOP(name)},
    {"address", read_address, .text = true, .times = OFTEN},
    {"contact", setting_text, .text = true, OF_SHOP(contact)},
    {"currency", read_currency, .early = true},
    {"language", read_language, .scope = IN_SHOP},
    {"units", read_units, .scope = IN_SHOP},
    {"quote-units", setting_quote_units, .scope = IN_SHOP},
    {"decimal", setting_either, .early = true, OF_SHOP(style.decimal_comma), .words = {"point", "comma"}},
    {"saw", read_saw, .times = ONCE_NAMED},
    {"kerf", setting_length, OF_SAW(kerf)},
    {"trim", setting_length, OF_SAW(trim), .zero_fits = true},
    {"mitre", read_mitre, .scope = IN_SAW},
    {"bevel", read_bevel, .scope = IN_SAW},
    {"widest", setting_widest, .scope = IN_SAW, .times = OFTEN},
    {"longest-rip", setting_length, OF_SAW(longest_rip)},
    {"smallest-strip", setting_length, OF_SAW(smallest_strip)},
    {"stages", read_stages, .scope = IN_PANEL},
    {"first", setting_either, OF_PANEL(panel_rip_first), .words = {"crosscut", "rip"}},
    {"leftover", read_leftover, .times = ONCE_NAMED},
    {"labels", read_labels, .times = ONCE_NAMED},
    {"vehicle", setting_length, OF_SHOP(vehicle)},
    {"planing", setting_length, OF_SHOP(planing), .zero_fits = true},
    {"short", setting_length, OF_SHOP(short_part), .zero_fits = true},
    {"worker", read_worker, .times = ONCE_NAMED},
    {"overhead", read_overhead, .scope = IN_SHOP},
    {"contingency", setting_share, OF_SHOP(contingency), .of = "cost"},
    {"margin", setting_share, OF_SHOP(margin), .of = "price"},
    {"markup", setting_share, OF_SHOP(margin), .of = "cost"},
    {"charge", read_charge, .scope = IN_SHOP},
    {"tax", read_tax, .times = ONCE_NAMED},
    {"prices", setting_either, OF_SHOP(prices_gross), .words = {"net", "gross"}},
    {"tax-rounding", setting_either, OF_SHOP(tax_per_line), .words = {"total", "line"}},
    {"discounts", setting_either, OF_SHOP(discount_hidden), .words = {"shown", "hidden"}},
    {"price-point", read_point, OF_SHOP(price_point)},
    {"minimum", setting_money, OF_SHOP(minimum)},
    {"breaks", read_breaks, .scope = IN_SHOP},
    {"zone", read_zone, .times = ONCE_NAMED},
    {"delivery", read_delivery, .times = ONCE_NAMED},
    {"validity", setting_days, OF_SHOP(validity_days)},
    {"deposit", setting_share, OF_SHOP(deposit), .of = "total"},
    {"stage", read_stage, .times = OFTEN},
    {"confidence", setting_share, OF_SHOP(confidence), .of = "cases"},
    {"price-age", setting_days, OF_SHOP(price_age_days)},
    {"week", setting_time, OF_SHOP(week)},
    {"lead", setting_days, OF_SHOP(lead_days)},
    {"replace", read_replace, .times = ONCE_NAMED},
};
const size_t shop_settings_count = COUNT(shop_settings);
