/* main/check.c -- every error in recipes, jobs and rates, all at once. */
#include "main/command.h"

#include <string.h>

static bool ends_with(const char *path, const char *ending) {
    size_t length = strlen(path), tail = strlen(ending);
    return length > tail && strcmp(path + length - tail, ending) == 0;
}

/* The recipe if it is sound. */
static const sb_recipe *look_over(sb_run *run, const sb_desk *desk, const char *name, sb_place at) {
    const sb_recipe *recipe = sb_recipe_book_get(run, desk->book, name, at);
    if (desk->shop)
        sb_takeoff_look_over(run, desk->shop, desk->book, name, at);
    return recipe;
}

static void make_parts(sb_run *run, const sb_desk *desk) {
    sb_takeoff_of(run, desk->shop, desk->book, desk->job, NULL);
    for (size_t i = 0; i < desk->job->options.count; i++)
        sb_takeoff_of(run, desk->shop, desk->book, desk->job, &desk->job->options.items[i]);
}

/* A sound job is worked through to its price, another one as far as its parts; without sound rates it is only read. */
static void check_job(sb_run *run, const sb_options *options, const char *path) {
    sb_desk desk = {0};
    bool sound = desk_open(run, options, path, &desk);
    if (!desk.job || !desk.book)
        return;
    for (size_t i = 0; i < desk.job->pieces.count; i++)
        look_over(run, &desk, desk.job->pieces.items[i].recipe, desk.job->pieces.items[i].place);
    if (sound)
        sb_ways_of(run, desk.shop, desk.book, desk.job, NULL);
    else if (desk.shop && desk.shop->sound)
        make_parts(run, &desk);
}

/* With a shop near, one piece is made as the recipe stands. */
static void check_recipe(sb_run *run, const sb_options *options, const char *path) {
    const char *home = sb_shop_find(run, path);
    sb_desk desk = {.shop = home ? desk_shop(run, options, home, NULL) : NULL};
    desk.book = sb_recipe_book_open(run, path_folder(run, path), desk_comma(&desk));
    if (!sb_source_read(run, path))
        return;
    const sb_recipe *recipe = look_over(run, &desk, path_base(run, path, ".recipe"), (sb_place){0});
    if (recipe && desk.shop && desk.shop->sound)
        sb_takeoff_of(run, desk.shop, desk.book, sb_job_for_one(run, recipe), NULL);
}

static void check_rates(sb_run *run, const char *folder) {
    sb_shop_read(run, folder);
}

static void check_file(sb_run *run, const sb_options *options, const char *path) {
    if (ends_with(path, ".job"))
        check_job(run, options, path);
    else if (ends_with(path, ".recipe"))
        check_recipe(run, options, path);
    else if (path_exists(path_join(run, path, "shop.txt")))
        check_rates(run, path);
    else if (path_exists(path_join(run, path, "rates/shop.txt")))
        check_rates(run, path_join(run, path, "rates"));
    else if (ends_with(path, ".csv") || ends_with(path, "shop.txt"))
        check_rates(run, path_folder(run, path));
    else
        sb_error(run, (sb_place){0},
                 "%s: expected a .recipe, a .job, a file of a rates folder, or such a folder", path);
}

int command_check(sb_run *run, const sb_options *options) {
    if (options->words.count == 0)
        check_file(run, options, ".");
    for (size_t i = 0; i < options->words.count; i++)
        check_file(run, options, options->words.items[i]);
    size_t errors = sb_notices_count(run, SB_ERROR), advice = sb_notices_count(run, SB_ADVICE) - errors;
    if (options->json) {
        sb_record *record = sb_record_object(run), *list = sb_put_array(run, record, "notices");
        static const char *const levels[] = {"note", "advice", "error", "failure", "bug"};
        for (size_t i = 0; sb_notices_message(run, i); i++) {
            sb_position at = sb_place_position(sb_notices_place(run, i));
            sb_record *notice = sb_put_object(run, list, NULL);
            sb_put_text(run, notice, "level", levels[sb_notices_level(run, i)]);
            sb_put_text(run, notice, "file", at.file);
            sb_put_integer(run, notice, "line", (int64_t)at.line);
            sb_put_integer(run, notice, "column", (int64_t)at.column);
            sb_put_text(run, notice, "message", sb_notices_message(run, i));
        }
        show(run, sb_write_json(run, record));
    } else if (!options->quiet) {
        show(run, sb_pool_print(run->pool, "%zu error%s, %zu piece%s of advice\n", errors,
                                errors == 1 ? "" : "s", advice, advice == 1 ? "" : "s"));
    }
    return STATUS_DONE;
}
