/* Reads operations.csv: kinds of work, how long they take, and what they are counted by. */
#include "shop/read.h"

#include <string.h>

enum {
    OPERATION,
    TITLE,
    MINUTES,
    PER,
    WORKER,
    ALWAYS,
    LEAST,
    MOST,
    LEARNING,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {{"operation", true}, {"title", false},  {"minutes", true},
                                                {"per", true},       {"worker", false}, {"always", false},
                                                {"least", false},    {"most", false},   {"learning", false}};

static const sb_worker *find_worker(shop_row row, const sb_settings *settings) {
    const char *id = shop_text(row, WORKER);
    const char **known = SB_NEW_ARRAY(row.run->pool, const char *, settings->workers.count);
    for (size_t i = 0; i < settings->workers.count; i++) {
        known[i] = settings->workers.items[i].id;
        if (!*id || strcmp(known[i], id) == 0)
            return &settings->workers.items[i];
    }
    if (*id && settings->workers.count > 0)
        sb_error_unknown(row.run, shop_at(row, WORKER), "worker", id, known, settings->workers.count);
    return NULL;
}

static void read_minutes(shop_row row, sb_operation *operation) {
    if (!shop_need(row, MINUTES) || !sb_read_duration(row.run, shop_text(row, MINUTES), shop_at(row, MINUTES),
                                                      row.csv->decimal_comma, &operation->time))
        return;
    if (operation->time.ms < 0)
        sb_error(row.run, shop_at(row, MINUTES),
                 "work does not take less than no time: expected zero or more minutes");
}

static void read_bound(shop_row row, size_t column, sb_duration *out) {
    if (shop_given(row, column))
        sb_read_duration(row.run, shop_text(row, column), shop_at(row, column), row.csv->decimal_comma, out);
}

/* One end that is not told is the likely time itself. */
static void read_range(shop_row row, sb_operation *operation) {
    operation->least = operation->most = operation->time;
    if (!shop_sound(row))
        return;
    read_bound(row, LEAST, &operation->least);
    read_bound(row, MOST, &operation->most);
    if (operation->least.ms < 0 || operation->least.ms > operation->time.ms)
        sb_error(row.run, shop_at(row, LEAST),
                 "the least time lies below the likely one: expected from 0 to what stands under `minutes`");
    if (operation->most.ms < operation->time.ms)
        sb_error(row.run, shop_at(row, MOST),
                 "the most time lies above the likely one: expected at least what stands under `minutes`");
    operation->ranged = operation->least.ms < operation->most.ms;
}

/* Below a half two pieces would take less time than one. */
static void read_learning(shop_row row, sb_operation *operation) {
    if (!shop_given(row, LEARNING) ||
        !sb_read_share(row.run, shop_text(row, LEARNING), shop_at(row, LEARNING), row.csv->decimal_comma,
                       &operation->learning))
        return;
    if (operation->learning.ppm < 500000 || operation->learning.ppm > 1000000)
        sb_error(
            row.run, shop_at(row, LEARNING),
            "the average time falls to a share of itself when twice as many are made: expected from 50 %% to "
            "100 %%");
    else if (shop_driver_planned(operation->driver) || operation->driver == SB_BY_BATCH)
        sb_error(row.run, shop_at(row, LEARNING),
                 "what is repeated with every piece is learnt: leave it empty for work per %s",
                 sb_driver_word(operation->driver));
}

static bool read_driver(shop_row row, sb_operation *operation) {
    if (!shop_need(row, PER))
        return false;
    if (shop_driver_find(shop_text(row, PER), &operation->driver))
        return true;
    shop_unknown_driver(row.run, shop_at(row, PER), shop_text(row, PER));
    return false;
}

/* What the cutting plan counts is counted by one operation: of a second one nobody would know which to take.
 */
static void check_driver(shop_reader *reader, shop_row row, const sb_operation *operation) {
    const sb_operation *other = sb_shop_driven(reader->shop, operation->driver);
    if (shop_driver_planned(operation->driver) && other)
        shop_twice(row.run, shop_at(row, PER), "an operation per", shop_text(row, PER), other->place);
    if (operation->always && operation->driver != SB_BY_BATCH)
        sb_error(row.run, shop_at(row, ALWAYS),
                 "only work per batch is in every job: expected `batch` in the column `per`");
}

static void read_operation(shop_reader *reader, shop_row row) {
    sb_operation operation = {.id = "", .title = shop_text(row, TITLE), .place = row.csv->rows[row.index]};
    bool named = shop_id(row, OPERATION, &operation.id);
    const sb_operation *first = sb_shop_operation(reader->shop, operation.id);
    if (!*operation.title)
        operation.title = operation.id;
    read_minutes(row, &operation);
    operation.worker = find_worker(row, &reader->shop->settings);
    shop_yes(row, ALWAYS, &operation.always);
    read_range(row, &operation);
    if (read_driver(row, &operation)) {
        check_driver(reader, row, &operation);
        read_learning(row, &operation);
    }
    if (named && first)
        shop_twice(row.run, shop_at(row, OPERATION), "the operation", operation.id, first->place);
    else if (named)
        SB_PUSH(row.run->pool, reader->shop->operations, operation);
}

void shop_read_operations(shop_reader *reader, const char *path) {
    shop_each_row(reader, path, columns, COLUMN_COUNT, read_operation);
}
