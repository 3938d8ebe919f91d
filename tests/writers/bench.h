/* What the writers' tests share: a run, a document, and other programs' opinions of what was written. */
#ifndef TESTS_WRITERS_BENCH_H
#define TESTS_WRITERS_BENCH_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "sawbill/writers.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static sb_run run;
static const char *folder; /* of this test, gone afterwards */

static inline int start(void **state) {
    (void)state;
    run = sb_run_new();
    const char *base = getenv("TMPDIR");
    char *made = sb_pool_print(run.pool, "%s/sawbill-writers-XXXXXX", base && *base ? base : "/tmp");
    folder = mkdtemp(made);
    return folder ? 0 : -1;
}

static inline int finish(void **state) {
    (void)state;
    char *command = sb_pool_print(run.pool, "rm -rf '%s'", folder);
    int status = system(command);
    sb_run_free(&run);
    return status;
}

static inline const char *in_folder(const char *name) {
    return sb_pool_print(run.pool, "%s/%s", folder, name);
}

/* What a command prints; the test fails if the command does. */
static inline const char *output_of(const char *command) {
    FILE *pipe = popen(command, "r");
    assert_non_null(pipe);
    SB_LIST(char) out = {0};
    for (int c; (c = fgetc(pipe)) != EOF;)
        SB_PUSH(run.pool, out, (char)c);
    SB_PUSH(run.pool, out, '\0');
    assert_int_equal(pclose(pipe), 0);
    return out.items;
}

static inline sb_document *new_document(void) {
    return sb_document_new(&run, "Estimate", (sb_date){2026, 3, 31}, (sb_style){.step = SB_MM(1)},
                           (sb_currency){"EUR", 2});
}

static inline size_t count_of(const char *text, const char *part) {
    size_t count = 0;
    while ((text = strstr(text, part))) {
        count++;
        text += strlen(part);
    }
    return count;
}

/* Fixed seed; the same numbers on every machine (the generator of Numerical Recipes, 32 bits). */
static uint32_t dice_state = 20260331;
static inline uint32_t dice(uint32_t sides) {
    dice_state = dice_state * 1664525u + 1013904223u;
    return (dice_state >> 8) % sides;
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

#endif
