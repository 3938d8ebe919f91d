/* A job, taken off: every kind of piece by its recipe, then what the job as a whole has. */
#include "takeoff/inside.h"

static const char *title_of(const sb_job_piece *piece, const sb_recipe *recipe) {
    if (piece->title && *piece->title)
        return piece->title;
    return recipe->title && *recipe->title ? recipe->title : piece->name;
}

static size_t add_piece(takeoff_walk *walk, const sb_job_piece *source, const sb_recipe *recipe,
                        int64_t count) {
    sb_takeoff_piece piece = {.source = source, .recipe = recipe, .size_text = "", .count = count};
    piece.title = title_of(source, recipe);
    if (source->note && *source->note)
        SB_PUSH(walk->run->pool, piece.notes, source->note);
    SB_PUSH(walk->run->pool, walk->takeoff->pieces, piece);
    return walk->takeoff->pieces.count - 1;
}

/* A recipe that could not be read whole is not made; what the job sets must be there all the same. */
static void check_piece(takeoff_walk *walk, const sb_job_piece *piece) {
    const sb_recipe *recipe = sb_recipe_book_peek(walk->run, walk->book, piece->recipe, piece->recipe_place);
    if (!recipe)
        return;
    takeoff_making making = {.walk = walk, .recipe = recipe};
    takeoff_givens givens = takeoff_piece_givens(walk, piece, recipe);
    takeoff_check_names(&making, &givens);
    takeoff_check_roles(&making, &givens);
}

static void make_piece(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe) {
    int64_t count = takeoff_piece_count(walk, piece);
    if (!recipe)
        check_piece(walk, piece);
    if (!recipe || count <= 0)
        return;
    takeoff_making making = {.walk = walk,
                             .recipe = recipe,
                             .piece = add_piece(walk, piece, recipe, count),
                             .path = piece->name,
                             .per_piece = 1,
                             .count = count};
    takeoff_givens givens = takeoff_piece_givens(walk, piece, recipe);
    size_t parts = walk->takeoff->parts.count, errors = sb_notices_raised(walk->run, SB_ERROR);
    sb_notices_enter(walk->run, piece->place, sb_pool_print(walk->run->pool, "piece %s", piece->name));
    takeoff_make(&making, &givens);
    sb_notices_leave(walk->run);
    if (!walk->tried && walk->takeoff->parts.count == parts && sb_notices_raised(walk->run, SB_ERROR) == errors)
        sb_advise(walk->run, piece->place, "%s has no parts: its recipe has none, or none that these inputs leave",
                  piece->name);
}

static const sb_recipe **recipes_of(takeoff_walk *walk) {
    const sb_job *job = walk->job;
    const sb_recipe **recipes = SB_NEW_ARRAY(walk->run->pool, const sb_recipe *, job->pieces.count + 1);
    for (size_t i = 0; i < job->pieces.count; i++) {
        const sb_job_piece *piece = &job->pieces.items[i];
        recipes[i] = sb_recipe_book_get(walk->run, walk->book, piece->recipe ? piece->recipe : piece->name,
                                        piece->recipe_place);
    }
    return recipes;
}

static void walk_job(takeoff_walk *walk) {
    const sb_job *job = walk->job;
    const sb_recipe **recipes = recipes_of(walk);
    takeoff_check_settings(walk, recipes);
    for (size_t i = 0; i < job->pieces.count; i++)
        make_piece(walk, &job->pieces.items[i], recipes[i]);
    if (walk->takeoff->pieces.count == 0 && sb_ok(walk->run))
        sb_error(walk->run, walk->option ? walk->option->place : job->place,
                 "nothing is left to make: every piece is dropped");
    takeoff_always(walk);
    takeoff_totals(walk);
}

static takeoff_walk walk_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                            const sb_job_option *option) {
    takeoff_walk walk = {.run = run, .shop = shop, .book = book, .job = job, .option = option};
    walk.takeoff = SB_NEW(run->pool, sb_takeoff);
    *walk.takeoff = (sb_takeoff){.shop = shop, .job = job, .option = option};
    return walk;
}

const sb_takeoff *sb_takeoff_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                                const sb_job_option *option) {
    if (!shop || !book || !job)
        return NULL;
    takeoff_walk walk = walk_of(run, shop, book, job, option);
    walk_job(&walk);
    return walk.takeoff;
}

void takeoff_try(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                 const sb_recipe_choice *choice, const char *word) {
    takeoff_walk walk = walk_of(run, shop, book, job, NULL);
    walk.tried = choice;
    walk.tried_word = word;
    walk_job(&walk);
}
