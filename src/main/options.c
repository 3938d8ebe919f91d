/* main/options.c -- options are a table that prints its own help. */
#include "main/command.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef enum option_kind {
    FLAG,
    VALUE,
    NUMBER,
    LIST
} option_kind;

typedef struct option_row {
    const char *name;
    char letter; /* 0: none */
    option_kind kind;
    size_t offset; /* of the field in struct options */
    const char *value;
    const char *help;
} option_row;

static const option_row rows[] = {
    {"json", 0, FLAG, offsetof(sb_options, json), NULL,
     "print the result for machines; keys are in the README"},
    {"out", 0, VALUE, offsetof(sb_options, out), "DIR", "write papers there, not beside the job"},
    {"set", 0, LIST, offsetof(sb_options, sets), "NAME=VALUE",
     "what if: another input; PIECE.NAME for one piece"},
    {"option", 0, VALUE, offsetof(sb_options, option), "NAME", "this option of the job alone"},
    {"units", 0, VALUE, offsetof(sb_options, units), "mm|in",
     "show lengths in these, whatever the shop says"},
    {"parts", 0, VALUE, offsetof(sb_options, parts), "FILE", "a bare list of parts instead of a job"},
    {"stock", 0, VALUE, offsetof(sb_options, stock), "FILE", "the stock for a bare list"},
    {"measured", 0, VALUE, offsetof(sb_options, measured), "FILE",
     "knots and splits of boards in a bare list's stock"},
    {"kerf", 0, VALUE, offsetof(sb_options, kerf), "LENGTH", "width of the saw cut, for a bare list"},
    {"trim", 0, VALUE, offsetof(sb_options, trim), "LENGTH",
     "taken off each factory end or edge, for a bare list"},
    {"material-only", 0, FLAG, offsetof(sb_options, material_only), NULL,
     "plan for the price of boards and sheets alone"},
    {"drawings", 0, VALUE, offsetof(sb_options, drawings), "svg|png",
     "each board and sheet also as a picture of its own"},
    {"labels", 0, FLAG, offsetof(sb_options, labels), NULL,
     "labels for the parts too, in the grid of rates/shop.txt"},
    {"batches", 0, FLAG, offsetof(sb_options, batches), NULL,
     "batches of other sizes too: which option is the cheapest, from how many pieces on"},
    {"seconds", 0, NUMBER, offsetof(sb_options, seconds), "N",
     "stop the search after N seconds, with the plan so far"},
    {"butt", 0, FLAG, offsetof(sb_options, butt), NULL, "corners butted, not mitred"},
    {"outside", 0, FLAG, offsetof(sb_options, outside), NULL,
     "an outside corner of the walls, not an inside one"},
    {"width", 0, VALUE, offsetof(sb_options, width), "LENGTH",
     "width of the piece: gives long point less short point"},
    {"length", 0, VALUE, offsetof(sb_options, length), "LENGTH",
     "length of the piece over its long points: gives the short points"},
    {"quiet", 'q', FLAG, offsetof(sb_options, quiet), NULL,
     "no summary, no notes: advice, errors and what was asked"},
    {"help", 'h', FLAG, offsetof(sb_options, help), NULL, "this text"},
};
enum {
    ROW_COUNT = sizeof rows / sizeof *rows
};

int wrong_use(const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    fputs("sawbill: ", stderr);
    vfprintf(stderr, format, arguments);
    fputc('\n', stderr);
    va_end(arguments);
    return STATUS_WRONG_USE;
}

static bool takes(const sb_command *command, const char *name) {
    if (strcmp(name, "help") == 0)
        return true;
    size_t length = strlen(name);
    for (const char *at = command->takes; (at = strstr(at, name)) != NULL; at += length)
        if ((at == command->takes || at[-1] == ' ') && (at[length] == ' ' || at[length] == '\0'))
            return true;
    return false;
}

static const option_row *find_row(const sb_command *command, const char *word, size_t length) {
    for (size_t i = 0; i < ROW_COUNT; i++) {
        bool by_name = length > 2 && strlen(rows[i].name) == length - 2 &&
                       strncmp(rows[i].name, word + 2, length - 2) == 0 && word[1] == '-';
        bool by_letter = length == 2 && rows[i].letter && word[1] == rows[i].letter;
        if ((by_name || by_letter) && takes(command, rows[i].name))
            return &rows[i];
    }
    return NULL;
}

static bool unknown_option(const sb_command *command, const char *word) {
    const char *names[ROW_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < ROW_COUNT; i++)
        if (takes(command, rows[i].name))
            names[count++] = rows[i].name;
    const char *near = strlen(word) > 2 ? sb_nearest(word + 2, names, count) : NULL;
    if (near)
        wrong_use("'%s' does not take %s; did you mean --%s?", command->name, word, near);
    else
        wrong_use("'%s' does not take %s; 'sawbill %s --help' lists what it takes", command->name, word,
                  command->name);
    return false;
}

static bool is_setting(const char *text) {
    const char *equals = strchr(text, '=');
    return equals && equals != text && equals[1] != '\0';
}

static bool same_name(const char *one_setting, const char *other) {
    return strncmp(one_setting, other, strcspn(one_setting, "=") + 1) == 0;
}

/* Of two values one would be dropped. */
static bool is_told(const option_row *row, const char *value, const sb_options *options) {
    const void *field = (const char *)options + row->offset;
    if (row->kind == VALUE)
        return *(const char *const *)field != NULL;
    if (row->kind == NUMBER)
        return *(const double *)field > 0;
    for (size_t i = 0; row->kind == LIST && i < options->sets.count; i++)
        if (same_name(options->sets.items[i], value))
            return true;
    return false;
}

static bool tell_twice(const option_row *row, const char *value, const sb_options *options) {
    if (!is_told(row, value, options))
        return false;
    int name = row->kind == LIST ? (int)strcspn(value, "=") : 0;
    wrong_use("--%s%s%.*s is given twice: which one is meant?", row->name, name ? " " : "", name, value);
    return true;
}

static bool store(sb_run *run, const option_row *row, const char *value, sb_options *options) {
    char *field = (char *)options + row->offset;
    switch (row->kind) {
    case FLAG:
        *(bool *)(void *)field = true;
        return true;
    case VALUE:
        *(const char **)(void *)field = value;
        return true;
    case LIST:
        if (!is_setting(value)) {
            wrong_use("--%s wants %s, as long=1200mm, not '%s'", row->name, row->value, value);
            return false;
        }
        SB_PUSH(run->pool, options->sets, value);
        return true;
    case NUMBER:
        break;
    }
    char *end;
    double number = strtod(value, &end);
    if (*end != '\0' || !(number > 0 && number < 1e6)) {
        wrong_use("--%s wants a number above 0, not '%s'", row->name, value);
        return false;
    }
    *(double *)(void *)field = number;
    return true;
}

static bool read_option(sb_run *run, const sb_command *command, int count, char **words, int *at,
                        sb_options *options) {
    const char *word = words[*at];
    const char *equals = strchr(word, '=');
    size_t length = equals ? (size_t)(equals - word) : strlen(word);
    const option_row *row = find_row(command, word, length);
    if (!row)
        return unknown_option(command, sb_pool_copy(run->pool, word, length));
    if (row->kind == FLAG) {
        if (equals) {
            wrong_use("--%s takes no value", row->name);
            return false;
        }
        return store(run, row, NULL, options);
    }
    if (!equals && *at + 1 >= count) {
        wrong_use("--%s wants a value: --%s %s", row->name, row->name, row->value);
        return false;
    }
    const char *value = equals ? equals + 1 : words[++*at];
    return !tell_twice(row, value, options) && store(run, row, value, options);
}

static bool words_fit(const sb_command *command, const sb_options *options) {
    size_t count = options->words.count;
    if (options->help || (count >= command->least_words && count <= command->most_words))
        return true;
    wrong_use("use: sawbill %s %s", command->name, command->form);
    return false;
}

/* The folder itself may be new; what it stands in must be folders, as far as it is there. */
static bool can_be_folder(sb_run *run, const char *path) {
    while (!path_exists(path) && strchr(path, '/') && strcmp(path, "/") != 0)
        path = path_folder(run, path);
    return !path_exists(path) || path_is_folder(path);
}

static bool values_fit(sb_run *run, const sb_options *options) {
    if (options->units && strcmp(options->units, "mm") != 0 && strcmp(options->units, "in") != 0) {
        wrong_use("--units is mm or in, not '%s'", options->units);
        return false;
    }
    if (options->drawings && strcmp(options->drawings, "svg") != 0 && strcmp(options->drawings, "png") != 0) {
        wrong_use("--drawings is svg or png, not '%s'", options->drawings);
        return false;
    }
    if (options->out && !can_be_folder(run, options->out)) {
        wrong_use("--out wants a folder, and '%s' is a file or stands below one", options->out);
        return false;
    }
    return true;
}

bool options_read(sb_run *run, const sb_command *command, int count, char **words, sb_options *options) {
    bool only_words = false;
    for (int at = 0; at < count; at++) {
        if (!only_words && strcmp(words[at], "--") == 0) {
            only_words = true;
        } else if (!only_words && words[at][0] == '-' && words[at][1] != '\0') {
            if (!read_option(run, command, count, words, &at, options))
                return false;
        } else {
            SB_PUSH(run->pool, options->words, words[at]);
        }
    }
    return values_fit(run, options) && words_fit(command, options);
}

bool option_length(sb_run *run, const char *name, const char *text, sb_length *out) {
    const sb_source *source = sb_source_of(run, sb_pool_print(run->pool, "--%s", name), text);
    sb_place at = {source, 0, sb_source_size(source)};
    if (!sb_read_length(run, text, at, false, out))
        return false;
    if (out->nm < 0)
        sb_error(run, at, "--%s cannot be less than nothing", name);
    return out->nm >= 0;
}

void options_help(const sb_command *command) {
    printf("sawbill %s %s\n  %s\n\n", command->name, command->form, command->summary);
    for (size_t i = 0; i < ROW_COUNT; i++) {
        if (!takes(command, rows[i].name))
            continue;
        char left[40];
        snprintf(left, sizeof left, "--%s%s%s", rows[i].name, rows[i].value ? " " : "",
                 rows[i].value ? rows[i].value : "");
        if (rows[i].letter)
            snprintf(left, sizeof left, "-%c, --%s", rows[i].letter, rows[i].name);
        printf("  %-20s %s\n", left, rows[i].help);
    }
    bool shop = strstr(command->example, " my-shop/") != NULL; /* it asks for the shop that `start` makes */
    printf("\nExample:\n%s  %s\n", shop ? "  sawbill start my-shop\n" : "", command->example);
}

void commands_help(void) {
    puts("sawbill turns recipes of pieces into cut parts, plans, prices and papers.\n");
    for (size_t i = 0; i < command_count; i++)
        printf("  %-9s%s\n", commands[i].name, commands[i].summary);
    puts("\n'sawbill COMMAND --help' tells more. Exit status: 0 done; 1 the input is wrong or cannot be\n"
         "met; 2 wrong use; 3 done, but look at the advice; 4 the system failed. Start with:\n"
         "  sawbill start my-shop");
}
