/* The values that stand behind the keywords of shop.txt. */
#include "shop/settings.h"

#include <string.h>

void *setting_target(settings_reader *reader, const shop_setting *setting) {
    char *base = setting->scope == IN_SAW ? (char *)reader->saw : (char *)reader->settings;
    return base + setting->offset;
}

static bool comma(const settings_reader *reader) {
    return reader->settings->style.decimal_comma;
}

static const sb_token *take_quantity(settings_reader *reader, sb_cursor *cursor, const char *what) {
    const sb_token *token = cursor->at;
    if (token->kind != SB_QUANTITY) {
        sb_error(reader->run, token->place, "expected %s", what);
        return NULL;
    }
    cursor->at++;
    return sb_tell_number_in_pieces(reader->run, cursor, comma(reader), false) ? NULL : token;
}

bool setting_take_length(settings_reader *reader, sb_cursor *cursor, sb_length *out) {
    const sb_token *token = take_quantity(reader, cursor, "a length, as 600 mm");
    return token && sb_read_length(reader->run, token->text, token->place, comma(reader), out);
}

bool setting_take_angle(settings_reader *reader, sb_cursor *cursor, sb_angle *out) {
    const sb_token *token = take_quantity(reader, cursor, "an angle, as 50 deg");
    if (!token || !sb_read_angle(reader->run, token->text, token->place, comma(reader), out))
        return false;
    if (out->udeg >= 0 && out->udeg < 90000000)
        return true;
    sb_error(reader->run, token->place, "a saw swings and tilts from square: expected less than 90 deg");
    return false;
}

bool setting_take_money(settings_reader *reader, sb_cursor *cursor, sb_money *out) {
    const sb_token *token = take_quantity(reader, cursor, "an amount of money, as 42.00");
    return token && sb_read_money(reader->run, token->text, token->place, comma(reader),
                                  reader->settings->currency.digits, out);
}

/* The same percentage of the other thing is another price: whoever mixes them up is told both ways out. */
static const char *other_share(const settings_reader *reader) {
    const char *keyword = reader->line->keyword.text;
    return strcmp(keyword, "margin") == 0   ? "; a share of cost is a `markup`"
           : strcmp(keyword, "markup") == 0 ? "; a share of price is a `margin`"
                                            : "";
}

bool setting_take_share(settings_reader *reader, sb_cursor *cursor, const char *of, sb_share *out) {
    const sb_token *token = take_quantity(reader, cursor, "a percentage, as 25 %");
    if (!token)
        return false;
    if (!strchr(token->text, '%')) {
        sb_error(reader->run, token->place, "expected a percentage, as %s %% of %s", token->text, of);
        return false;
    }
    if (!sb_read_share(reader->run, token->text, token->place, comma(reader), out))
        return false;
    sb_place at = cursor->at->place;
    if ((sb_take_word(cursor, "of") || sb_take_word(cursor, "on")) && sb_take_word(cursor, of))
        return true;
    sb_error(reader->run, cursor->at->kind == SB_END ? at : cursor->at->place,
             "this percentage is one of %s: expected `%s of %s`%s", of, token->text, of, other_share(reader));
    return false;
}

bool setting_take_choice(settings_reader *reader, sb_cursor *cursor, const char *what,
                         const char *const *words, size_t count, size_t *out) {
    const sb_token *token = sb_expect_word(reader->run, cursor, what);
    for (size_t i = 0; token && i < count; i++)
        if (strcmp(words[i], token->text) == 0) {
            *out = i;
            return true;
        }
    if (token)
        sb_error_unknown(reader->run, token->place, what, token->text, words, count);
    return false;
}

bool setting_expect(settings_reader *reader, sb_cursor *cursor, const char *word) {
    if (sb_take_word(cursor, word))
        return true;
    sb_error(reader->run, cursor->at->place, "expected the word `%s`", word);
    return false;
}

/* ---- whole settings of one value ---- */

bool setting_text(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    (void)cursor;
    const char **target = setting_target(reader, setting);
    *target = sb_statement_text(reader->run, reader->line);
    return true;
}

bool setting_above_zero(settings_reader *reader, const shop_setting *setting, sb_place at, int64_t value) {
    if (value > 0 || (value == 0 && setting->zero_fits))
        return true;
    sb_error(reader->run, at, "expected more than zero behind `%s`", setting->keyword);
    return false;
}

bool setting_length(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    sb_place at = cursor->at->place;
    sb_length *target = setting_target(reader, setting);
    return setting_take_length(reader, cursor, target) && setting_above_zero(reader, setting, at, target->nm);
}

bool setting_share(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    return setting_take_share(reader, cursor, setting->of, setting_target(reader, setting));
}

bool setting_money(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    sb_place at = cursor->at->place;
    sb_money *target = setting_target(reader, setting);
    return setting_take_money(reader, cursor, target) &&
           setting_above_zero(reader, setting, at, target->minor);
}

bool setting_time(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    const sb_token *token = take_quantity(reader, cursor, "a time, as 30 h");
    sb_duration *target = setting_target(reader, setting);
    return token && sb_read_duration(reader->run, token->text, token->place, comma(reader), target) &&
           setting_above_zero(reader, setting, token->place, target->ms);
}

bool setting_either(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    size_t which;
    bool *target = setting_target(reader, setting);
    if (!setting_take_choice(reader, cursor, setting->keyword, setting->words, 2, &which))
        return false;
    *target = which == 1;
    return true;
}

bool setting_quote_units(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"mm", "in", "both"};
    size_t which;
    if (!setting_take_choice(reader, cursor, setting->keyword, words, 3, &which))
        return false;
    reader->settings->quote_units = (sb_quote_units)(SB_QUOTE_MM + which);
    return true;
}

/* `30 days`, `1 day` */
bool setting_days(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    const sb_token *token = take_quantity(reader, cursor, "a number of days, as 30 days");
    int64_t days;
    if (!token || !sb_read_count(reader->run, token->text, token->place, &days))
        return false;
    if (days > 36500) {
        sb_error(reader->run, token->place, "expected a number of days below a hundred years");
        return false;
    }
    int *target = setting_target(reader, setting);
    *target = (int)days;
    return sb_take_word(cursor, "day") || setting_expect(reader, cursor, "days");
}
