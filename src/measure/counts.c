/* Sizes of batches, as jobs and shops tell them: 1, 5, 10, 25. */
#include "sawbill/measure.h"

enum {
    SIZES_MOST = 12,
    SIZE_MOST = 100000
};

static bool size_at(sb_run *run, sb_cursor *cursor, int64_t *out) {
    const sb_token *token = cursor->at;
    if (token->kind != SB_QUANTITY) {
        sb_error(run, token->place, "expected a size of batch, as in 1, 5, 10, 25");
        return false;
    }
    cursor->at++;
    if (!sb_read_count(run, token->text, token->place, out))
        return false;
    if (*out >= 1 && *out <= SIZE_MOST)
        return true;
    sb_error(run, token->place, "expected a size of batch from 1 to %d", SIZE_MOST);
    return false;
}

/* Each where it belongs, the smaller ones first. */
static bool put(sb_run *run, sb_counts *sizes, int64_t size, sb_place at) {
    size_t place = sizes->count;
    while (place > 0 && sizes->items[place - 1] > size)
        place--;
    if (place > 0 && sizes->items[place - 1] == size) {
        sb_error(run, at, "a batch of %lld is told twice", (long long)size);
        return false;
    }
    if (sizes->count == SIZES_MOST) {
        sb_error(run, at, "expected at most %d sizes of batch: each is planned for itself", SIZES_MOST);
        return false;
    }
    SB_PUSH(run->pool, *sizes, size);
    for (size_t i = sizes->count - 1; i > place; i--)
        sizes->items[i] = sizes->items[i - 1];
    sizes->items[place] = size;
    return true;
}

bool sb_read_sizes(sb_run *run, sb_cursor *cursor, sb_counts *out) {
    int64_t size;
    *out = (sb_counts){0};
    do {
        sb_place at = cursor->at->place;
        if (!size_at(run, cursor, &size) || !put(run, out, size, at))
            return false;
    } while (sb_take_symbol(cursor, ","));
    return true;
}
