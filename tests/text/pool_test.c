/* Memory of a run: what it gives, what it refuses, and what happens when it runs out. */
#include "bench.h"

static void memory_is_zero_and_aligned(void **state) {
    sb_run *run = *state;
    dice d = {42};
    for (int i = 0; i < 2000; i++) {
        size_t size = (size_t)roll(&d, i % 50 == 0 ? 200000 : 300);
        unsigned char *bytes = sb_pool_alloc(run->pool, size);
        assert_int_equal((uintptr_t)bytes % _Alignof(max_align_t), 0);
        for (size_t at = 0; at < size; at++)
            assert_int_equal(bytes[at], 0);
        memset(bytes, 0xAB, size); /* what we wrote must not show up in what comes next */
    }
}

static void blocks_do_not_overlap(void **state) {
    sb_run *run = *state;
    enum {
        COUNT = 3000
    };
    unsigned char **blocks = SB_NEW_ARRAY(run->pool, unsigned char *, COUNT);
    size_t *sizes = SB_NEW_ARRAY(run->pool, size_t, COUNT);
    dice d = {7};
    for (int i = 0; i < COUNT; i++) {
        sizes[i] = (size_t)roll(&d, 100) + 1;
        blocks[i] = sb_pool_alloc(run->pool, sizes[i]);
        memset(blocks[i], i % 251, sizes[i]);
    }
    for (int i = 0; i < COUNT; i++)
        for (size_t at = 0; at < sizes[i]; at++)
            assert_int_equal(blocks[i][at], i % 251);
}

static void lists_grow_and_keep_order(void **state) {
    sb_run *run = *state;
    SB_LIST(int) list = {0};
    for (int i = 0; i < 10000; i++)
        SB_PUSH(run->pool, list, i);
    assert_int_equal(list.count, 10000);
    for (int i = 0; i < 10000; i++)
        assert_int_equal(list.items[i], i);
}

static void copying_and_printing(void **state) {
    sb_run *run = *state;
    assert_string_equal(sb_pool_copy(run->pool, "larch board", 5), "larch");
    assert_string_equal(sb_pool_copy(run->pool, NULL, 0), "");
    assert_string_equal(sb_pool_print(run->pool, "%d of %s", 4, "post"), "4 of post");
    const char *wide = sb_pool_print(run->pool, "%70000d", 1);
    assert_int_equal(strlen(wide), 70000);
}

/* ---- running out -------------------------------------------------------------------------------- */

static void impossible_sizes_are_refused(void **state) {
    sb_run *run = *state;
    assert_null(sb_pool_alloc(run->pool, SIZE_MAX));
    assert_null(sb_pool_alloc(run->pool, SIZE_MAX - 8));
    assert_null(
        sb_pool_alloc_array(run->pool, SIZE_MAX / 4, 8)); /* the product would wrap to something small */
    assert_null(sb_pool_copy(run->pool, "x", SIZE_MAX));
    size_t capacity = SIZE_MAX / 2 + 1;
    assert_null(sb_pool_grow(run->pool, NULL, capacity, &capacity, 1));
    assert_non_null(sb_pool_alloc(run->pool, 10)); /* and it still works */
}

typedef struct trip {
    sb_pool *pool;
    int reached;
    bool inner_done;
} trip;

static void use_up(void *context) {
    trip *t = context;
    t->reached = 1;
    for (;;)
        sb_pool_alloc(t->pool, 1000);
}

static void nothing_to_do(void *context) {
    trip *t = context;
    t->reached = 2;
}

static void running_out_comes_back(void **state) {
    (void)state;
    trip t = {.pool = sb_pool_new()};
    sb_pool_limit(t.pool, 1 << 20);
    assert_false(sb_pool_run(t.pool, use_up, &t));
    assert_int_equal(t.reached, 1);
    assert_null(sb_pool_alloc(t.pool, 1 << 20)); /* outside again: NULL, no jump */
    sb_pool_free(t.pool);
}

static void run_within(void *context) {
    trip *t = context;
    t->inner_done = sb_pool_run(t->pool, use_up, t);
    t->reached = 3; /* an inner failure does not skip the outer work */
}

static void runs_nest(void **state) {
    (void)state;
    trip t = {.pool = sb_pool_new(), .inner_done = true};
    sb_pool_limit(t.pool, 1 << 18);
    assert_true(sb_pool_run(t.pool, run_within, &t));
    assert_false(t.inner_done);
    assert_int_equal(t.reached, 3);
    assert_true(sb_pool_run(t.pool, nothing_to_do, &t));
    sb_pool_free(t.pool);
}

/* ---- deferred -------------------------------------------------------------------------------------- */

typedef struct bell {
    char *record;
    char letter;
} bell;

static void ring(void *thing) {
    bell *b = thing;
    b->record[strlen(b->record)] = b->letter;
}

static void deferred_last_first(void **state) {
    (void)state;
    char record[8] = "";
    bell bells[] = {{record, 'a'}, {record, 'b'}, {record, 'c'}};
    sb_pool *pool = sb_pool_new();
    for (int i = 0; i < 3; i++)
        sb_pool_defer(pool, ring, &bells[i]);
    assert_string_equal(record, "");
    sb_pool_free(pool);
    assert_string_equal(record, "cba");
}

static void what_cannot_be_deferred_is_released(void **state) {
    (void)state;
    char record[8] = "";
    bell b = {record, 'x'};
    sb_pool *pool = sb_pool_new();
    sb_pool_limit(pool, 1);
    sb_pool_defer(pool, ring, &b);
    assert_string_equal(record, "x");
    sb_pool_free(pool);
    assert_string_equal(record, "x"); /* once only */
}

/* ---- a whole task under less and less memory ---------------------------------------------------------- */

static void read_some(void *context) {
    sb_run *run = context;
    sb_lex_rule rules[] = {{SB_WORD, "[a-z]+"}, {SB_QUANTITY, "[0-9]+"}};
    const sb_lexer *lexer = sb_lexer_new(run, rules, 2);
    const char *text = "";
    for (int i = 0; i < 200; i++)
        text = sb_pool_print(run->pool, "%spiece trough-%d 14 $\n", text, i);
    const sb_source *source = sb_source_of(run, "job", text);
    sb_statements all = sb_statements_read(run, source);
    for (size_t i = 0; i < all.count; i++)
        sb_statement_tokens(run, lexer, &all.items[i]);
    sb_column columns[] = {{"name", true}, {"length", true}};
    sb_csv_of(run, sb_source_of(run, "parts", "name,length\npost,430\nslat,\"1\"\n"), columns, 2);
    sb_notices_text(run, SB_NOTE, false);
}

static void memory_raised_until_it_suffices(void **state) {
    (void)state;
    bool done = false;
    size_t limit = 200;
    int failures = 0;
    for (; !done && limit < 1 << 22; limit += limit / 8) {
        sb_run run = sb_run_new();
        assert_non_null(run.notices);
        sb_pool_limit(run.pool, limit);
        done = sb_pool_run(run.pool, read_some, &run);
        failures += !done;
        sb_run_free(&run);
    }
    assert_true(done);
    assert_true(failures > 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(memory_is_zero_and_aligned),
        AT_THE_BENCH(blocks_do_not_overlap),
        AT_THE_BENCH(lists_grow_and_keep_order),
        AT_THE_BENCH(copying_and_printing),
        AT_THE_BENCH(impossible_sizes_are_refused),
        cmocka_unit_test(running_out_comes_back),
        cmocka_unit_test(runs_nest),
        cmocka_unit_test(deferred_last_first),
        cmocka_unit_test(what_cannot_be_deferred_is_released),
        cmocka_unit_test(memory_raised_until_it_suffices),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
