/* Finding the shop's folder from a file in it, and its stock by name. */
#include "bench.h"

#include <fcntl.h>

static void make_folder(const bench *b, const char *name) {
    char path[600];
    snprintf(path, sizeof path, "%s/%s", b->folder, name);
    assert_int_equal(mkdir(path, 0700), 0);
}

static const char *const folders[] = {"rates", "templates", "jobs", "jobs/spring", "jobs/spring/rates"};
enum {
    FOLDERS = sizeof folders / sizeof *folders
};

static void make_shop(const bench *b) {
    for (size_t i = 0; i < FOLDERS; i++)
        make_folder(b, folders[i]);
}

static void remove_shop(const bench *b) {
    char path[600];
    for (size_t i = FOLDERS; i-- > 0;) {
        snprintf(path, sizeof path, "%s/%s", b->folder, folders[i]);
        rmdir(path);
    }
}

static const char *inside(bench *b, const char *path) {
    return sb_pool_print(b->run.pool, "%s/%s", b->folder, path);
}

static void from_anywhere_below(void **state) {
    static const char *const paths[] = {
        "jobs/spring/a.job", "jobs/spring",         "jobs/", "jobs//a.job", "rates", "",
        "not/there/yet.job", "jobs/spring/../b.job"};
    bench *b = *state;
    make_shop(b);
    for (size_t i = 0; i < sizeof paths / sizeof *paths; i++) {
        const char *found = sb_shop_find(&b->run, inside(b, paths[i]));
        struct stat want, got;
        assert_non_null(found);
        assert_int_equal(stat(b->folder, &want), 0);
        assert_int_equal(stat(found, &got), 0);
        assert_int_equal(want.st_ino, got.st_ino);
    }
    assert_string_equal(sb_shop_find(&b->run, inside(b, "jobs/spring/a.job")), b->folder);
    remove_shop(b);
}

static void nowhere_is_no_notice(void **state) {
    bench *b = *state;
    assert_null(sb_shop_find(&b->run, inside(b, "jobs/a.job")));
    assert_null(sb_shop_find(&b->run, "/"));
    assert_null(sb_shop_find(&b->run, "/not/there/at/all.job"));
    assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 0);
}

/* A relative path stays relative, as messages show it; it goes on above the folder one is in. */
static void from_the_folder_one_is_in(void **state) {
    bench *b = *state;
    int home = open(".", O_RDONLY);
    make_shop(b);
    assert_int_equal(chdir(b->folder), 0);
    assert_string_equal(sb_shop_find(&b->run, "jobs/spring/a.job"), ".");
    assert_string_equal(sb_shop_find(&b->run, "a.job"), ".");
    assert_string_equal(sb_shop_find(&b->run, ""), ".");
    assert_int_equal(chdir("jobs/spring"), 0);
    assert_string_equal(sb_shop_find(&b->run, "a.job"), "./../..");
    assert_string_equal(sb_shop_find(&b->run, "../b.job"), "../..");
    assert_int_equal(fchdir(home), 0);
    close(home);
    remove_shop(b);
}

static void unknown_names_get_the_nearest(void **state) {
    bench *b = *state;
    const sb_shop *shop = bench_read_sound(b);
    sb_shop_unknown_stock(&b->run, shop, shop->settings.place, "slta");
    sb_shop_unknown_operation(&b->run, shop, shop->settings.place, "asemble");
    assert_non_null(strstr(sb_notices_message(&b->run, 0), "did you mean \"slat\""));
    assert_non_null(strstr(sb_notices_message(&b->run, 1), "did you mean \"assemble\""));
    assert_null(sb_shop_stock(shop, "slta"));
}

static void another_stock_is_taken_instead(void **state) {
    bench *b = *state;
    bench_put(b, "shop.txt", sb_pool_print(b->run.pool, "%sreplace plank by slat\nreplace skin by salt\n", bench_texts[0]));
    const sb_shop *shop = bench_read(b);
    assert_string_equal(sb_shop_stock(shop, "plank")->id, "slat");
    bench_told(b, "shop.txt:44:17", "did you mean \"slat\"");
}

static void taxes_by_name(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    assert_string_equal(sb_shop_tax(shop, NULL)->id, "standard");
    assert_string_equal(sb_shop_tax(shop, "none")->title, "No VAT");
    assert_null(sb_shop_tax(shop, "reduced"));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(from_anywhere_below),
        AT_BENCH(nowhere_is_no_notice),
        AT_BENCH(from_the_folder_one_is_in),
        AT_BENCH(unknown_names_get_the_nearest),
        AT_BENCH(another_stock_is_taken_instead),
        AT_BENCH(taxes_by_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
