/* The one door for messages. */
#include "text/notices.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#define uthash_malloc(size)       sb_pool_alloc(pool, (size))
#define uthash_free(memory, size) ((void)(memory), (void)(size))
#include <uthash.h>

/* ---- raising ------------------------------------------------------------------------------------ */

/* Key: level, source, stretch and message as one string. */
struct notice_seen {
    const char *key;
    UT_hash_handle hh;
};

static bool seen_before(sb_run *run, sb_level level, sb_place at, const char *message) {
    sb_pool *pool = run->pool;
    struct notice_seen *found = NULL, *entry = SB_NEW(pool, struct notice_seen);
    entry->key = sb_pool_print(pool, "%d %p %zu %zu %s", (int)level, (const void *)at.source, at.offset,
                               at.length, message);
    HASH_FIND_STR(run->notices->seen, entry->key, found);
    if (!found)
        HASH_ADD_KEYPTR(hh, run->notices->seen, entry->key, strlen(entry->key), entry);
    return found != NULL;
}

static void raise_notice(sb_run *run, sb_level level, sb_place at, const char *format, va_list arguments) {
    va_list again;
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    char *message = sb_pool_alloc(run->pool, length < 0 ? 1 : (size_t)length + 1);
    if (length >= 0)
        vsnprintf(message, (size_t)length + 1, format, arguments);
    run->notices->raised[level]++;
    if (seen_before(run, level, at, message))
        return;
    notice n = {.level = level, .place = at, .message = message, .context = run->notices->context};
    SB_PUSH(run->pool, run->notices->list, n);
    run->notices->count[level]++;
}

#define RAISE(level)                                                                                         \
    do {                                                                                                     \
        va_list arguments;                                                                                   \
        va_start(arguments, format);                                                                         \
        raise_notice(run, (level), at, format, arguments);                                                   \
        va_end(arguments);                                                                                   \
    } while (0)

void sb_note(sb_run *run, sb_place at, const char *format, ...) {
    RAISE(SB_NOTE);
}

void sb_advise(sb_run *run, sb_place at, const char *format, ...) {
    RAISE(SB_ADVICE);
}

void sb_error(sb_run *run, sb_place at, const char *format, ...) {
    RAISE(SB_ERROR);
}

void sb_fail(sb_run *run, sb_place at, const char *format, ...) {
    RAISE(SB_FAILURE);
}

void sb_bug(sb_run *run, sb_place at, const char *format, ...) {
    RAISE(SB_BUG);
}

/* ---- where we are ------------------------------------------------------------------------------- */

void sb_notices_enter(sb_run *run, sb_place at, const char *what) {
    notice_context *context = SB_NEW(run->pool, notice_context);
    *context = (notice_context){
        .at = at, .what = sb_pool_copy(run->pool, what, strlen(what)), .outer = run->notices->context};
    run->notices->context = context;
}

void sb_notices_leave(sb_run *run) {
    if (run->notices->context)
        run->notices->context = run->notices->context->outer;
}

/* ---- asking ------------------------------------------------------------------------------------- */

size_t sb_notices_count(const sb_run *run, sb_level at_least) {
    size_t count = 0;
    for (int level = (int)at_least; level <= SB_BUG; level++)
        count += run->notices->count[level];
    return count;
}

size_t sb_notices_raised(const sb_run *run, sb_level at_least) {
    size_t count = 0;
    for (int level = (int)at_least; level <= SB_BUG; level++)
        count += run->notices->raised[level];
    return count;
}

bool sb_ok(const sb_run *run) {
    return sb_notices_count(run, SB_ERROR) == 0;
}

int sb_status(const sb_run *run) {
    if (sb_notices_count(run, SB_FAILURE))
        return 4;
    if (sb_notices_count(run, SB_ERROR))
        return 1;
    return sb_notices_count(run, SB_ADVICE) ? 3 : 0;
}

const char *sb_notices_message(const sb_run *run, size_t index) {
    return index < run->notices->list.count ? run->notices->list.items[index].message : NULL;
}

sb_place sb_notices_place(const sb_run *run, size_t index) {
    return index < run->notices->list.count ? run->notices->list.items[index].place : (sb_place){0};
}

sb_level sb_notices_level(const sb_run *run, size_t index) {
    return index < run->notices->list.count ? run->notices->list.items[index].level : SB_NOTE;
}
