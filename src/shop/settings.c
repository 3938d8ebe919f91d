/* Reads shop.txt: finds each line's keyword in the table, then settings_table.c and settings_values.c read
 * the rest. */
#include "shop/settings.h"

#include <string.h>

static const shop_setting *find_setting(const char *keyword) {
    for (size_t i = 0; i < shop_settings_count; i++)
        if (strcmp(shop_settings[i].keyword, keyword) == 0)
            return &shop_settings[i];
    return NULL;
}

static void unknown_keyword(settings_reader *reader) {
    const char **known = SB_NEW_ARRAY(reader->run->pool, const char *, shop_settings_count);
    for (size_t i = 0; i < shop_settings_count; i++)
        known[i] = shop_settings[i].keyword;
    sb_error_unknown(reader->run, reader->line->keyword.place, "keyword", reader->line->keyword.text, known,
                     shop_settings_count);
}

/* ---- where settings stand, and that they stand once ---- */

static const char *line_name(settings_reader *reader, const shop_setting *setting, sb_cursor cursor) {
    sb_pool *pool = reader->run->pool;
    if (setting->scope != IN_SHOP)
        return sb_pool_print(pool, "%s %s", reader->saw_name, setting->keyword);
    if (setting->times == ONCE_NAMED && cursor.at->kind == SB_WORD)
        return sb_pool_print(pool, "%s %s", setting->keyword, cursor.at->text);
    return setting->keyword;
}

sb_place sb_shop_setting(const sb_shop *shop, const char *name) {
    for (size_t i = 0; i < shop->settings.lines.count; i++)
        if (strcmp(shop->settings.lines.items[i].name, name) == 0)
            return shop->settings.lines.items[i].place;
    return (sb_place){0};
}

static sb_place whole_line(const sb_statement *line) {
    return line->rest.length ? sb_place_span(line->keyword.place, line->rest) : line->keyword.place;
}

static bool note_line(settings_reader *reader, const shop_setting *setting, const char *name) {
    sb_settings *settings = reader->settings;
    for (size_t i = 0; setting->times != OFTEN && i < settings->lines.count; i++)
        if (strcmp(settings->lines.items[i].name, name) == 0) {
            shop_twice(reader->run, reader->line->keyword.place, "the setting", name,
                       settings->lines.items[i].place);
            return false;
        }
    struct sb_setting_line line = {name, whole_line(reader->line)};
    SB_PUSH(reader->run->pool, settings->lines, line);
    return true;
}

/* ---- one line ---- */

static bool in_place(settings_reader *reader, const shop_setting *setting) {
    bool panel = reader->saw_name && strcmp(reader->saw_name, "panel") == 0;
    if (setting->scope == IN_SHOP || (setting->scope == IN_SAW && reader->saw) || panel)
        return true;
    sb_error(reader->run, reader->line->keyword.place,
             "`%s` belongs in a block: expected a line `saw %s` above it", setting->keyword,
             setting->scope == IN_PANEL ? "panel" : "crosscut");
    return false;
}

static bool rest_given(settings_reader *reader) {
    if (reader->line->rest.length)
        return true;
    sb_error(reader->run, reader->line->keyword.place, "expected something behind `%s`",
             reader->line->keyword.text);
    return false;
}

static void read_tokens(settings_reader *reader, const shop_setting *setting) {
    sb_cursor cursor = sb_statement_tokens(reader->run, reader->lexer, reader->line);
    if (!note_line(reader, setting, line_name(reader, setting, cursor)))
        return;
    bool read = setting->read(reader, setting, &cursor);
    if (read && !sb_tell_no_unit(reader->run, &cursor, reader->settings->style.decimal_comma))
        sb_expect_end(reader->run, &cursor);
}

static void read_line(settings_reader *reader, const shop_setting *setting) {
    if (!in_place(reader, setting) || !rest_given(reader))
        return;
    if (!setting->text)
        read_tokens(reader, setting);
    else if (note_line(reader, setting, setting->keyword))
        setting->read(reader, setting, NULL);
}

/* ---- the file ---- */

static void read_early(settings_reader *reader, sb_statements lines) {
    reader->lexer = sb_line_lexer(reader->run, false);
    for (size_t i = 0; i < lines.count; i++) {
        const shop_setting *setting = find_setting(lines.items[i].keyword.text);
        reader->line = &lines.items[i];
        if (setting && setting->early)
            read_line(reader, setting);
    }
}

static void read_late(settings_reader *reader, sb_statements lines) {
    reader->lexer = sb_line_lexer(reader->run, reader->settings->style.decimal_comma);
    for (size_t i = 0; i < lines.count; i++) {
        const shop_setting *setting = find_setting(lines.items[i].keyword.text);
        reader->line = &lines.items[i];
        if (!setting)
            unknown_keyword(reader);
        else if (!setting->early)
            read_line(reader, setting);
        if (setting && setting->scope == IN_SHOP && strcmp(setting->keyword, "saw") != 0)
            reader->saw = NULL, reader->saw_name = NULL;
    }
}

struct sb_label_grid sb_label_grid_usual(void) {
    return (struct sb_label_grid){3, 8, SB_MM(8), SB_MM(13), {0}, {0}};
}

bool shop_read_settings(shop_reader *reader, const char *path) {
    const sb_source *source = sb_source_read(reader->run, path);
    if (!source)
        return false;
    sb_statements lines = sb_statements_read(reader->run, source);
    settings_reader settings = {.run = reader->run, .settings = &reader->shop->settings};
    reader->shop->settings = (sb_settings){.name = "",
                                           .contact = "",
                                           .language = "en",
                                           .currency = {"", 2},
                                           .panel_rip_first = true,
                                           .labels = sb_label_grid_usual(),
                                           .place = {source, 0, 0}};
    read_early(&settings, lines);
    read_late(&settings, lines);
    settings_check(reader);
    return true;
}
