/* main/check.c -- every error in recipes, jobs and rates, all at once. */
#include "main/command.h"

#include <dirent.h>
#include <stdlib.h>
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

/* Every option's; the job as it stands only where it has none, for an option may make it right. */
static void make_parts(sb_run *run, const sb_desk *desk) {
    if (desk->job->options.count == 0)
        sb_takeoff_of(run, desk->shop, desk->book, desk->job, NULL);
    for (size_t i = 0; i < desk->job->options.count; i++)
        sb_takeoff_of(run, desk->shop, desk->book, desk->job, &desk->job->options.items[i]);
}

/* A job that is read whole is worked through to its price, another one as far as its parts; without sound rates it is
 * only read. */
static void check_job(sb_run *run, const sb_options *options, const char *path) {
    sb_desk desk = {0};
    bool whole = desk_open(run, options, path, &desk);
    if (!desk.job || !desk.book)
        return;
    for (size_t i = 0; i < desk.job->pieces.count; i++)
        look_over(run, &desk, desk.job->pieces.items[i].recipe, desk.job->pieces.items[i].recipe_place);
    if (!desk.shop || !desk.shop->sound)
        return;
    sb_job_look_over(run, desk.shop, desk.job);
    if (whole)
        sb_ways_of(run, desk.shop, desk.book, desk.job, NULL);
    else
        make_parts(run, &desk);
}

/* With a shop near, one piece is made as the recipe stands, and planned. */
static void make_one(sb_run *run, const sb_desk *desk, const sb_recipe *recipe) {
    size_t before = sb_notices_raised(run, SB_ERROR);
    const sb_takeoff *takeoff = sb_takeoff_of(run, desk->shop, desk->book, sb_job_for_one(run, recipe), NULL);
    if (sb_notices_raised(run, SB_ERROR) > before)
        return;
    const sb_cutlist *cutlist = sb_cutlist_of(run, desk->shop, &takeoff, 1);
    if (cutlist && sb_notices_raised(run, SB_ERROR) == before)
        sb_plan_make(run, &cutlist->problem);
}

static void check_recipe(sb_run *run, const sb_options *options, const char *path) {
    const char *home = sb_shop_find(run, path);
    sb_desk desk = {.shop = home ? desk_shop(run, options, home, NULL) : NULL};
    desk.book = sb_recipe_book_open(run, path_folder(run, path), desk_comma(&desk));
    if (!sb_source_read(run, path))
        return;
    const sb_recipe *recipe = look_over(run, &desk, path_base(run, path, ".recipe"), (sb_place){0});
    if (recipe && desk.shop && desk.shop->sound)
        make_one(run, &desk, recipe);
}

/* ---- folders ---------------------------------------------------------------------------------------------- */

/* The language they ask for must have its wording, where templates are near. */
static void check_rates(sb_run *run, const char *folder) {
    const char *home = sb_shop_find(run, folder);
    sb_desk desk = {.shop = sb_shop_read(run, folder)};
    if (!desk.shop || !home)
        return;
    desk.templates = path_join(run, home, "templates");
    desk_wording(run, &desk);
}

/* Files of the folder that are checked one by one, and sets of rates; in the order of the alphabet. */
static void check_folder(sb_run *run, const sb_options *options, const char *folder) {
    struct dirent **entries;
    int count = scandir(folder, &entries, NULL, alphasort);
    if (path_exists(path_join(run, folder, "shop.txt")))
        check_rates(run, folder);
    for (int i = 0; i < count; i++) {
        const char *name = sb_pool_print(run->pool, "%s", entries[i]->d_name);
        const char *path = path_join(run, folder, name);
        bool hidden = name[0] == '.';
        free(entries[i]);
        if (!hidden && path_is_folder(path))
            check_folder(run, options, path);
        else if (!hidden && ends_with(path, ".job"))
            check_job(run, options, path);
        else if (!hidden && ends_with(path, ".recipe"))
            check_recipe(run, options, path);
    }
    if (count >= 0)
        free(entries);
}

static void check_file(sb_run *run, const sb_options *options, const char *path) {
    if (ends_with(path, ".job"))
        check_job(run, options, path);
    else if (ends_with(path, ".recipe"))
        check_recipe(run, options, path);
    else if (path_is_folder(path))
        check_folder(run, options, path);
    else if (ends_with(path, ".csv") || ends_with(path, "shop.txt"))
        check_rates(run, path_folder(run, path));
    else
        sb_error(run, (sb_place){0},
                 "%s: expected a .recipe, a .job, a file of a rates folder, or a folder of these", path);
}

/* Without a file: the shop one stands in. */
static void check_here(sb_run *run, const sb_options *options) {
    const char *home = sb_shop_find(run, ".");
    if (home)
        check_folder(run, options, home);
    else
        sb_error(run, (sb_place){0},
                 "no shop here: a folder with rates/ and templates/ is wanted; 'sawbill start DIR' "
                 "makes one");
}

int command_check(sb_run *run, const sb_options *options) {
    if (options->words.count == 0)
        check_here(run, options);
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
