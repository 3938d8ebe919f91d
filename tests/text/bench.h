/* A fresh run for every test, a folder of its own where it needs one, and numbers that look random but
 * are the same each time. */
#ifndef TEXT_BENCH_H
#define TEXT_BENCH_H

#include "sawbill/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static inline int lay_out(void **state) {
    sb_run *run = calloc(1, sizeof *run);
    *run = sb_run_new();
    *state = run;
    return run->notices ? 0 : -1;
}

static inline int tidy_up(void **state) {
    sb_run_free(*state);
    free(*state);
    return 0;
}

#define AT_THE_BENCH(test) cmocka_unit_test_setup_teardown(test, lay_out, tidy_up)

static inline void remove_folder(void *path) {
    char command[512];
    snprintf(command, sizeof command, "rm -rf '%s'", (const char *)path);
    if (system(command) != 0)
        fprintf(stderr, "left behind: %s\n", (const char *)path);
}

/* A new folder that goes away with the run. */
static inline const char *new_folder(sb_run *run) {
    const char *base = getenv("TMPDIR");
    char *path = sb_pool_print(run->pool, "%s/sawbill-test-XXXXXX", base && *base ? base : "/tmp");
    assert_non_null(mkdtemp(path));
    sb_pool_defer(run->pool, remove_folder, path);
    return path;
}

static inline const char *new_file(sb_run *run, const char *folder, const char *name, const char *bytes,
                                   size_t size) {
    const char *path = sb_pool_print(run->pool, "%s/%s", folder, name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes, 1, size, file), size);
    assert_int_equal(fclose(file), 0);
    return path;
}

/* The first notice says so, and stands there ("" for nowhere). */
static inline void assert_notice(sb_run *run, size_t index, const char *where, const char *part) {
    const char *message = sb_notices_message(run, index);
    sb_place place = sb_notices_place(run, index);
    sb_position p = sb_place_position(place);
    const char *found = place.source ? sb_pool_print(run->pool, "%zu:%zu", p.line, p.column) : "";
    if (!message || !strstr(message, part) || strcmp(found, where) != 0)
        fail_msg("notice %zu should be at \"%s\" with \"%s\"; it is at \"%s\": %s", index, where, part, found,
                 message ? message : "(none)");
}

/* xorshift64; any seed but 0 */
typedef struct dice {
    uint64_t state;
} dice;

static inline uint64_t roll(dice *d, uint64_t sides) {
    d->state ^= d->state << 13;
    d->state ^= d->state >> 7;
    d->state ^= d->state << 17;
    return d->state % sides;
}

#endif
