/* Files with anything in them: the reader comes back, and what it takes as sound holds together. */
#include "bench.h"

static uint32_t seed = 20260302;

static uint32_t draw(uint32_t below) {
    seed = seed * 1664525u + 1013904223u;
    return (uint32_t)(((uint64_t)seed * below) >> 32);
}

/* A few bytes changed, dropped or doubled; what comes in their place means something to one reader or the
 * other. */
static size_t damage(char *text, size_t size) {
    static const char bytes[] = "0123456789,;.\"'-+/%#:= \n\r\t\\xeE\xC3\xA4\xFF";
    for (uint32_t times = 1 + draw(4); times > 0 && size > 8; times--) {
        size_t at = draw((uint32_t)size);
        switch (draw(3)) {
        case 0:
            text[at] = bytes[draw(sizeof bytes - 1)];
            break;
        case 1:
            memmove(text + at, text + at + 1, size - at - 1);
            size--;
            break;
        default: {
            size_t length = draw(8) % (size - at);
            memmove(text + at + length, text + at, size - at);
            size += length;
        }
        }
    }
    return size;
}

static void assert_holds_together(const sb_shop *shop) {
    assert_true(shop->settings.margin.ppm >= 0);
    assert_true(shop->settings.method == SB_MARKUP_ON_COST || shop->settings.margin.ppm < 1000000);
    assert_true(shop->settings.workers.count > 0);
    assert_true(shop->settings.crosscut.kerf.nm > 0);
    for (size_t i = 0; i < shop->stock.count; i++) {
        const sb_stock *stock = shop->stock.items[i];
        assert_true(stock->offers.count > 0);
        for (size_t j = 0; j < stock->offers.count; j++) {
            const sb_offer *offer = &stock->offers.items[j];
            assert_true(offer->each.milli > 0);
            assert_true(stock->kind > SB_STOCK_SHEET || offer->length.nm > 0);
            assert_true(sb_shop_leftover_value(shop, stock, offer->length, offer->width).milli <=
                        offer->each.milli);
        }
    }
}

static void damaged_files(void **state) {
    bench *b = *state;
    size_t sound = 0, faulty = 0;
    for (int i = 0; i < 1500; i++) {
        bench_again(b);
        const char *file = bench_files[draw(BENCH_FILES)], *text = bench_text(file);
        size_t size = strlen(text);
        char *copy = sb_pool_alloc(b->run.pool, size + 64);
        memcpy(copy, text, size);
        bench_write(b, file, copy, damage(copy, size));
        const sb_shop *shop = bench_read(b);
        if (shop && sb_ok(&b->run)) {
            assert_holds_together(shop);
            sound++;
        } else {
            assert_true(sb_notices_count(&b->run, SB_ERROR) > 0);
            assert_non_null(sb_notices_text(&b->run, SB_NOTE, false));
            faulty++;
        }
    }
    assert_true(sound > 50 && faulty > 500);
}

/* What no pool can hold is out of memory, at whatever point; nothing else happens. */
typedef struct attempt {
    bench *b;
    bool done;
} attempt;

static void read_all(void *context) {
    attempt *one = context;
    bench_read(one->b);
    one->done = true;
}

static void out_of_memory(void **state) {
    bench *b = *state;
    size_t failed = 0;
    for (size_t limit = 4096; limit < 4096 * 400; limit += 4096 * 7) {
        sb_run_free(&b->run);
        b->run = sb_run_new();
        attempt one = {b, false};
        sb_pool_limit(b->run.pool, limit);
        bool ran = sb_pool_run(b->run.pool, read_all, &one);
        assert_int_equal(ran, one.done);
        failed += !one.done;
    }
    assert_true(failed > 2);
}

static void a_folder_instead_of_a_file(void **state) {
    bench *b = *state;
    char path[600];
    for (int i = 0; i < BENCH_FILES; i++) {
        bench_again(b);
        snprintf(path, sizeof path, "%s/%s", b->folder, bench_files[i]);
        bench_remove(b, bench_files[i]);
        assert_int_equal(mkdir(path, 0700), 0);
        bench_read(b);
        assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 1);
        assert_non_null(strstr(sb_notices_text(&b->run, SB_ERROR, false), bench_files[i]));
        rmdir(path);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(damaged_files),
        AT_BENCH(out_of_memory),
        AT_BENCH(a_folder_instead_of_a_file),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
