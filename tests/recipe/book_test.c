/* Recipes by name, with the recipes inside them. */
#include "bench.h"

static sb_recipe_book *book_of(sb_run *run, const char *const files[][2], size_t count) {
    const char *folder = new_folder(run);
    for (size_t i = 0; i < count; i++)
        new_text(run, folder, sb_pool_print(run->pool, "%s.recipe", files[i][0]), files[i][1]);
    return sb_recipe_book_open(run, folder, false);
}
#define BOOK(run, files) book_of(run, files, sizeof files / sizeof *files)

static void each_recipe_is_read_once(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"stool", "recipe stool\n"},
                                           {"bench", "recipe bench\ncomponent stool\n"}};
    sb_recipe_book *book = BOOK(run, files);
    const sb_recipe *bench = sb_recipe_book_get(run, book, "bench", (sb_place){0});
    assert_no_notices(run);
    assert_ptr_equal(sb_recipe_book_get(run, book, "bench", (sb_place){0}), bench);
    assert_string_equal(sb_recipe_book_get(run, book, "stool", (sb_place){0})->name, "stool");
}

static void recipes_can_be_put_in_by_hand(void **state) {
    sb_run *run = *state;
    sb_recipe_book *book = sb_recipe_book_open(run, "/nowhere", false);
    const sb_recipe *stool = recipe_of(run, "recipe stool\n");
    sb_recipe_book_add(run, book, stool);
    sb_recipe_book_add(run, book,
                       recipe_of(run, "recipe bench\ncomponent stool\ncomponent second\nrecipe stool\n"));
    assert_non_null(sb_recipe_book_get(run, book, "bench", (sb_place){0}));
    assert_ptr_equal(sb_recipe_book_get(run, book, "stool", (sb_place){0}), stool);
    assert_no_notices(run);
}

/* Two pieces of the same kind stand beside each other, not inside each other. */
static void the_same_recipe_twice_is_no_circle(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"a", "recipe a\ncomponent b\ncomponent c\n"},
                                           {"b", "recipe b\ncomponent d\n"},
                                           {"c", "recipe c\ncomponent d\n"},
                                           {"d", "recipe d\n"}};
    assert_non_null(sb_recipe_book_get(run, BOOK(run, files), "a", (sb_place){0}));
    assert_no_notices(run);
}

static void a_recipe_that_includes_itself(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"a", "recipe a\ncomponent b\n"},
                                           {"b", "recipe b\n\ncomponent lid\n  recipe c\n"},
                                           {"c", "recipe c\ncomponent b\n"}};
    assert_null(sb_recipe_book_get(run, BOOK(run, files), "a", (sb_place){0}));
    assert_only_notice(run, "", 2, 11, "recipe b includes itself: b -> c -> b");
    assert_non_null(strstr(sb_place_position(sb_notices_place(run, 0)).file, "c.recipe"));
}

static void a_recipe_inside_itself_at_once(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"a", "recipe a\ncomponent x\n  recipe a\n"}};
    sb_recipe_book *book = BOOK(run, files);
    assert_null(sb_recipe_book_get(run, book, "a", (sb_place){0}));
    assert_only_notice(run, "", 3, 10, "recipe a includes itself: a -> a");
    assert_null(sb_recipe_book_get(run, book, "a", (sb_place){0}));
}

static void an_unknown_recipe_names_the_nearest(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"garden-bench", "recipe garden-bench\n"},
                                           {"stool", "recipe stool\n"}};
    sb_recipe_book *book = BOOK(run, files);
    const sb_source *job = sb_source_of(run, "a.job", "piece bench\n  recipe garden-bnech\n");
    assert_null(sb_recipe_book_get(run, book, "garden-bnech", (sb_place){job, 21, 12}));
    assert_only_notice(run, "", 2, 10, "unknown recipe \"garden-bnech\"; did you mean \"garden-bench\"?");
}

static void an_unknown_recipe_of_a_component(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"a", "recipe a\ncomponent b\n  recipe q\n"}};
    assert_null(sb_recipe_book_get(run, BOOK(run, files), "a", (sb_place){0}));
    assert_only_notice(run, "", 3, 10, "unknown recipe \"q\"");
}

static void the_file_is_called_like_the_recipe(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {{"stool", "recipe stol\n"}};
    assert_null(sb_recipe_book_get(run, BOOK(run, files), "stool", (sb_place){0}));
    assert_only_notice(run, "", 1, 8, "this file is stool.recipe: expected `recipe stool`");
}

/* A faulty component makes the whole faulty, and all mistakes of all files come out together. */
static void mistakes_of_all_files_at_once(void **state) {
    sb_run *run = *state;
    static const char *const files[][2] = {
        {"a", "recipe a\nlet x y\ncomponent b\nset hihg 3 mm\nset side x\nstock lag oak\n"},
        {"b", "recipe b\ninput high 1 m\nchoice side l | r\nstock leg oak\nbad\nlet q z\n"}};
    assert_null(sb_recipe_book_get(run, BOOK(run, files), "a", (sb_place){0}));
    static const char *const messages[] = {
        "unknown name \"y\"", "unknown keyword \"bad\"", "unknown name \"z\"",
        "unknown input \"hihg\"; did you mean \"high\"?", "unknown role \"lag\"; did you mean \"leg\"?"};
    assert_int_equal(sb_notices_count(run, SB_NOTE), 5);
    for (size_t i = 0; i < 5; i++)
        assert_non_null(strstr(sb_notices_text(run, SB_ERROR, false), messages[i]));
}

static void a_folder_in_place_of_a_recipe(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    assert_int_equal(system(sb_pool_print(run->pool, "mkdir %s/a.recipe", folder)), 0);
    assert_null(sb_recipe_book_get(run, sb_recipe_book_open(run, folder, false), "a", (sb_place){0}));
    assert_int_equal(sb_notices_count(run, SB_ERROR), 1);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(each_recipe_is_read_once),           AT_THE_BENCH(recipes_can_be_put_in_by_hand),
        AT_THE_BENCH(the_same_recipe_twice_is_no_circle), AT_THE_BENCH(a_recipe_that_includes_itself),
        AT_THE_BENCH(a_recipe_inside_itself_at_once),     AT_THE_BENCH(an_unknown_recipe_names_the_nearest),
        AT_THE_BENCH(an_unknown_recipe_of_a_component),   AT_THE_BENCH(the_file_is_called_like_the_recipe),
        AT_THE_BENCH(mistakes_of_all_files_at_once),      AT_THE_BENCH(a_folder_in_place_of_a_recipe),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
