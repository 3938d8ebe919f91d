/* Every example of rates/README.md is read, all of them together being one shop. Runs in the project's
 * folder. A fence names what it holds: `shop`, a CSV file's name, `shop lines` for lines each of which
 * takes the place of one in the example, `shop instead of WORD` for lines that take the place of another
 * keyword's. */
#include "bench.h"

static const char manual[] = "rates/README.md";

/* ---- fences ---- */

typedef struct fence {
    const char *info, *text;
} fence;
typedef SB_LIST(fence) fences;

static const char *line_end(const char *at) {
    const char *end = strchr(at, '\n');
    return end ? end : at + strlen(at);
}

static fences read_fences(sb_run *run) {
    const sb_source *source = sb_source_read(run, manual);
    fences all = {0};
    assert_non_null(source);
    for (const char *open = strstr(sb_source_text(source), "\n```"); open;) {
        const char *end = line_end(open + 1), *close = strstr(end, "\n```");
        assert_non_null(close);
        fence one = {sb_pool_copy(run->pool, open + 4, (size_t)(end - open - 4)),
                     sb_pool_copy(run->pool, end + 1, (size_t)(close - end))};
        SB_PUSH(run->pool, all, one);
        open = strstr(line_end(close + 1), "\n```");
    }
    return all;
}

static const char *only_fence(sb_run *run, const char *info) {
    fences all = read_fences(run);
    const char *found = NULL;
    for (size_t i = 0; i < all.count; i++)
        if (strcmp(all.items[i].info, info) == 0) {
            assert_null(found);
            found = all.items[i].text;
        }
    if (!found)
        fail_msg("%s has no example `%s`", manual, info);
    return found;
}

static void put_examples(bench *b) {
    bench_put(b, "shop.txt", only_fence(&b->run, "shop"));
    for (int i = 1; i < BENCH_FILES; i++)
        bench_put(b, bench_files[i],
                  only_fence(&b->run, sb_pool_print(b->run.pool, "csv %s", bench_files[i])));
}

/* ---- lines in the place of others ---- */

static const char *skip_blanks(const char *at) {
    return at + strspn(at, " ");
}

/* Where a line of the text begins with these words, blanks between them being of any length; NULL: nowhere. */
static const char *find_line(const char *text, const char *first, const char *second) {
    for (const char *line = text; *line; line = *line_end(line) ? line_end(line) + 1 : line_end(line)) {
        const char *at = skip_blanks(line);
        size_t length = strlen(first);
        if (strncmp(at, first, length) != 0 || at[length] != ' ')
            continue;
        at = skip_blanks(at + length);
        length = second ? strlen(second) : 0;
        if (length == 0 || (strncmp(at, second, length) == 0 && strchr(" \n", at[length])))
            return line;
    }
    return NULL;
}

static const char *replace_line(bench *b, const char *text, const char *at, const char *fresh) {
    return sb_pool_print(b->run.pool, "%.*s%s%s", (int)(at - text), text, fresh, line_end(at));
}

/* In the place of the line with the same two words, or with the same keyword. */
static const char *with_line(bench *b, const char *text, const char *line) {
    char first[40] = "", second[40] = "";
    assert_true(sscanf(line, "%39s %39s", first, second) == 2);
    const char *at = find_line(text, first, second);
    at = at ? at : find_line(text, first, NULL);
    if (!at)
        fail_msg("%s: no line to put \"%s\" in the place of", manual, line);
    return replace_line(b, text, at, line);
}

static void read_with(bench *b, const char *text, const char *line) {
    bench_put(b, "shop.txt", text);
    const sb_shop *shop = bench_read(b);
    if (!shop || sb_notices_count(&b->run, SB_NOTE) > 0)
        fail_msg("%s: %s\n%s", manual, line, sb_notices_text(&b->run, SB_NOTE, false));
}

/* ---- tests ---- */

static void the_examples_make_a_shop(void **state) {
    bench *b = *state;
    put_examples(b);
    const sb_shop *shop = bench_read_sound(b);
    assert_string_equal(shop->settings.name, "Plain Bench");
    assert_int_equal(shop->settings.address.count, 2);
    assert_int_equal(shop->stock.count, 10);
    assert_int_equal(shop->rack.count, 5);
    assert_string_equal(sb_shop_stock(shop, "larch-45x95")->id, "2x4-fir");
    assert_null(sb_shop_stock(shop, "larch-45x145"));
}

static void every_other_way_to_put_a_line(void **state) {
    bench *b = *state;
    put_examples(b);
    const char *text = only_fence(&b->run, "shop"), *lines = only_fence(&b->run, "shop lines");
    size_t tried = 0;
    for (const char *line = lines; *line; line = line_end(line) + 1, tried++) {
        const char *copy = sb_pool_copy(b->run.pool, line, (size_t)(line_end(line) - line));
        read_with(b, with_line(b, text, copy), copy);
    }
    assert_true(tried >= 10);
}

static void a_markup_instead_of_a_margin(void **state) {
    bench *b = *state;
    put_examples(b);
    const char *text = only_fence(&b->run, "shop"), *line = only_fence(&b->run, "shop instead of margin");
    const char *copy = sb_pool_copy(b->run.pool, line, (size_t)(line_end(line) - line));
    read_with(b, replace_line(b, text, find_line(text, "margin", NULL), copy), copy);
}

/* The bare lists are tried by tests/shell/bare_example_test.sh. */
static void no_fence_is_left_out(void **state) {
    static const char *const known[] = {
        "shop",           "shop lines",         "shop instead of margin", "csv grades.csv", "csv stock.csv",
        "csv prices.csv", "csv operations.csv", "csv rack.csv",           "csv PARTS.csv",  "csv STOCK.csv",
        "csv measured.csv", "csv MEASURED.csv"};
    bench *b = *state;
    fences all = read_fences(&b->run);
    assert_int_equal(all.count, sizeof known / sizeof *known);
    for (size_t i = 0; i < all.count; i++) {
        bool found = false;
        for (size_t j = 0; j < sizeof known / sizeof *known; j++)
            found = found || strcmp(all.items[i].info, known[j]) == 0;
        if (!found)
            fail_msg("%s: nobody tries the example `%s`", manual, all.items[i].info);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(the_examples_make_a_shop),
        AT_BENCH(every_other_way_to_put_a_line),
        AT_BENCH(a_markup_instead_of_a_margin),
        AT_BENCH(no_fence_is_left_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
