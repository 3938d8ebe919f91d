/* shop/settings.h -- reading shop.txt: a table of keywords, each with its reader; for this room only. */
#ifndef SHOP_SETTINGS_H
#define SHOP_SETTINGS_H

#include "shop/read.h"

typedef struct settings_reader {
    sb_run *run;
    sb_settings *settings;
    sb_saw *saw;          /* of the block we are in; NULL before the first `saw` line */
    const char *saw_name; /* "crosscut", "rip", "panel" */
    const sb_lexer *lexer;
    const sb_statement *line;
} settings_reader;

typedef enum setting_scope {
    IN_SHOP,
    IN_SAW,  /* in any `saw` block */
    IN_PANEL /* in the block `saw panel` */
} setting_scope;

typedef enum setting_times {
    ONCE,       /* one such line */
    ONCE_NAMED, /* one such line for each word behind it: `worker bench`, `leftover board` */
    OFTEN
} setting_times;

typedef struct shop_setting shop_setting;
struct shop_setting {
    const char *keyword;
    bool (*read)(settings_reader *reader, const shop_setting *setting,
                 sb_cursor *cursor); /* false after an error */
    setting_scope scope;
    setting_times times;
    bool early;           /* the meaning of other lines depends on it */
    bool text;            /* the rest is one text, not tokens */
    size_t offset;        /* where the value goes in sb_settings or sb_saw */
    bool zero_fits;       /* a length, amount or time of zero means something */
    const char *of;       /* what a percentage is of */
    const char *words[2]; /* of a yes-or-no setting: the second word means true */
};

extern const shop_setting shop_settings[];
extern const size_t shop_settings_count;

/* ---- values behind a keyword; false after an error ---- */

typedef bool setting_read(settings_reader *reader, const shop_setting *setting, sb_cursor *cursor);
setting_read setting_text, setting_length, setting_share, setting_days, setting_money, setting_time,
    setting_either, setting_widest, setting_quote_units;

bool setting_above_zero(settings_reader *reader, const shop_setting *setting, sb_place at, int64_t value);
bool setting_take_length(settings_reader *reader, sb_cursor *cursor, sb_length *out); /* zero allowed */
bool setting_take_angle(settings_reader *reader, sb_cursor *cursor, sb_angle *out);
bool setting_take_money(settings_reader *reader, sb_cursor *cursor, sb_money *out);
/* `25 % of price`, `33 % on cost`: what it is of has to be said, and to be right. */
bool setting_take_share(settings_reader *reader, sb_cursor *cursor, const char *of, sb_share *out);
/* One of the words, or an error that names the nearest. */
bool setting_take_choice(settings_reader *reader, sb_cursor *cursor, const char *what,
                         const char *const *words, size_t count, size_t *out);
bool setting_expect(settings_reader *reader, sb_cursor *cursor, const char *word);
void *setting_target(settings_reader *reader, const shop_setting *setting);

/* What is missing, and what contradicts something else. */
void settings_check(shop_reader *reader);

#endif
