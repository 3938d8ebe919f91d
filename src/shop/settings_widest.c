/* How wide a piece the saw cuts in one pass: `widest 300 mm at square`, `widest 210 mm at mitre 45 deg`. */
#include "shop/settings.h"

enum {
    SQUARE,
    MITRE,
    BEVEL
};

static bool told_before(const sb_saw *saw, const sb_widest *line) {
    for (size_t i = 0; i < saw->widest.count; i++)
        if (saw->widest.items[i].mitre.udeg == line->mitre.udeg &&
            saw->widest.items[i].bevel.udeg == line->bevel.udeg)
            return true;
    return false;
}

static bool take_angle_above_zero(settings_reader *reader, sb_cursor *cursor, sb_angle *out) {
    sb_place at = cursor->at->place;
    if (!setting_take_angle(reader, cursor, out))
        return false;
    if (out->udeg == 0)
        sb_error(reader->run, at, "expected more than zero: without an angle the cut is `square`");
    return out->udeg > 0;
}

bool setting_widest(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor) {
    static const char *const words[] = {"square", "mitre", "bevel"};
    sb_widest line = {.width = {0}};
    size_t which;
    sb_place at = cursor->at->place;
    if (!setting_take_length(reader, cursor, &line.width) ||
        !setting_above_zero(reader, setting, at, line.width.nm) || !setting_expect(reader, cursor, "at"))
        return false;
    at = cursor->at->place;
    if (!setting_take_choice(reader, cursor, "cut", words, sizeof words / sizeof *words, &which) ||
        (which != SQUARE &&
         !take_angle_above_zero(reader, cursor, which == MITRE ? &line.mitre : &line.bevel)))
        return false;
    if (told_before(reader->saw, &line)) {
        sb_error(reader->run, at, "how wide the saw cuts like this is told above already");
        return false;
    }
    SB_PUSH(reader->run->pool, reader->saw->widest, line);
    return true;
}
