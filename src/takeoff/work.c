/* Work from recipes, in thousandths of the unit its operation is counted by. What the cutting plan causes is
 * counted from the plan. */
#include "takeoff/inside.h"

#include <string.h>

typedef struct working {
    takeoff_making *making;
    const sb_recipe_work *line;
    const sb_operation *operation;
    const takeoff_turns *turns;
    const sb_formula *quantity; /* the line's likely, least or most */
} working;

static const int64_t UM2_PER_MILLI_M2 = 1000000000;

static bool tell(sb_run *run, const sb_recipe_work *line, const sb_operation *operation, const char *why) {
    sb_error(run, line->guard.place, "%s is counted per %s: %s", operation->id,
             sb_driver_word(operation->driver), why);
    return false;
}

/* ---- does the line say what its operation is counted by? ------------------------------------------------- */

static bool fits(sb_run *run, const sb_recipe_work *line, const sb_operation *operation) {
    sb_driver driver = operation->driver;
    if (driver <= SB_BY_SHEET_CUT)
        return tell(run, line, operation, "the cutting plan counts it, and a recipe does not name it");
    if (line->on_surface && driver != SB_BY_SQUARE_METRE)
        return tell(run, line, operation, "a surface is for work per m2");
    if (driver == SB_BY_SQUARE_METRE && !line->on_surface && !line->quantity)
        return tell(run, line, operation, "say how much, as an area or as `on all`, `on outside`, `on ends`");
    if (driver == SB_BY_EACH && !line->quantity)
        return tell(run, line, operation, "say how many, as a number");
    if (driver == SB_BY_METRE && !line->quantity && line->basis != SB_PER_THE_PART)
        return tell(run, line, operation, "say how far, as a length, or `per part` of which");
    return true;
}

void takeoff_look_at_work(sb_run *run, const sb_recipe *recipe, const sb_recipe_work *line,
                          const sb_operation *operation) {
    sb_scope *scope = sb_recipe_open_scope(run, recipe, line->guard.loop);
    sb_area area;
    sb_length length;
    int64_t micro;
    if (!fits(run, line, operation) || !line->quantity)
        return;
    const sb_formula *const amounts[] = {line->quantity, line->least, line->most};
    for (size_t i = 0; i < 3 && amounts[i]; i++) {
        if (operation->driver == SB_BY_SQUARE_METRE)
            sb_formula_area(run, amounts[i], scope, &area);
        else if (operation->driver == SB_BY_METRE)
            sb_formula_length(run, amounts[i], scope, &length);
        else
            sb_formula_micro(run, amounts[i], scope, &micro);
    }
}

/* ---- how much, in one turn: by area [um2], by length [nm], by number [millionths] --------------------------- */

static int64_t basis_in(const working *w, const takeoff_turn *turn) {
    return takeoff_basis(w->making, w->line->basis, w->line->of, turn);
}

static int64_t surface_in(const working *w, const takeoff_turn *turn) {
    const sb_recipe_work *line = w->line;
    const char *const *names = line->parts.items;
    size_t count = line->parts.count;
    if (count == 0 && line->basis == SB_PER_THE_PART)
        names = &line->of, count = 1;
    return takeoff_surface(w->making, line->surface, names, count, turn).um2;
}

static bool area_in(const working *w, const takeoff_turn *turn, int64_t *um2) {
    sb_area area;
    if (w->line->on_surface) {
        *um2 = surface_in(w, turn);
        return true;
    }
    if (!sb_formula_area(w->making->walk->run, w->quantity, turn->scope, &area))
        return false;
    *um2 = sb_mul(area.um2, basis_in(w, turn));
    return true;
}

/* Of parts, their own length unless it is told. */
static bool length_in(const working *w, const takeoff_turn *turn, int64_t *nm) {
    sb_length length;
    if (!w->quantity) {
        *nm = takeoff_run_of_parts(w->making, w->line->of, turn).nm;
        return true;
    }
    if (!sb_formula_length(w->making->walk->run, w->quantity, turn->scope, &length))
        return false;
    *nm = sb_mul(length.nm, basis_in(w, turn));
    return true;
}

/* Without a number and a basis, work per joint or part is for all joints or parts of the recipe. */
static int64_t counted_in(const working *w, const takeoff_turn *turn) {
    bool all = !w->line->quantity && w->line->basis == SB_PER_THE_PIECE;
    switch (w->operation->driver) {
    case SB_BY_BATCH:
        return 1;
    case SB_BY_JOINT:
        return all ? takeoff_count_joints(w->making, NULL, turn) : basis_in(w, turn);
    case SB_BY_PART:
        return all ? takeoff_count_parts(w->making, NULL, turn) : basis_in(w, turn);
    default:
        return basis_in(w, turn);
    }
}

static bool number_in(const working *w, const takeoff_turn *turn, int64_t *micro) {
    int64_t each = 1000000;
    if (w->quantity && !sb_formula_micro(w->making->walk->run, w->quantity, turn->scope, &each))
        return false;
    *micro = sb_mul(each, counted_in(w, turn));
    return true;
}

/* ---- a line ----------------------------------------------------------------------------------------------------- */

static bool quantity_of(const working *w, int64_t *milli) {
    sb_driver driver = w->operation->driver;
    bool area = driver == SB_BY_SQUARE_METRE, length = driver == SB_BY_METRE;
    bool (*in)(const working *, const takeoff_turn *, int64_t *) = area     ? area_in
                                                                   : length ? length_in
                                                                            : number_in;
    int64_t total = 0;
    for (size_t i = 0; i < w->turns->count; i++) {
        int64_t here;
        if (!in(w, w->turns->items[i], &here))
            return false;
        total = sb_add(total, here);
    }
    *milli = sb_mul_div(total, 1, area ? UM2_PER_MILLI_M2 : length ? SB_NM_PER_MM : 1000);
    return true;
}

static bool same_line(const sb_work *a, const sb_work *b) {
    return a->piece == b->piece && a->operation == b->operation && a->place.source == b->place.source &&
           a->place.offset == b->place.offset;
}

static sb_work *find(sb_takeoff *takeoff, const sb_work *work) {
    for (size_t i = takeoff->works.count; i > 0; i--)
        if (same_line(&takeoff->works.items[i - 1], work))
            return &takeoff->works.items[i - 1];
    return NULL;
}

/* For the batch a line counts once, however many pieces have it: the largest of its quantities. */
static void add(takeoff_walk *walk, sb_work work) {
    sb_work *same = find(walk->takeoff, &work);
    if (!same) {
        SB_PUSH(walk->run->pool, walk->takeoff->works, work);
        same = &walk->takeoff->works.items[walk->takeoff->works.count - 1];
    } else if (work.piece != SB_BATCH) {
        same->quantity_milli = sb_add(same->quantity_milli, work.quantity_milli);
        same->least_milli = sb_add(same->least_milli, work.least_milli);
        same->most_milli = sb_add(same->most_milli, work.most_milli);
    } else if (same->quantity_milli < work.quantity_milli) {
        same->quantity_milli = work.quantity_milli;
        same->least_milli = work.least_milli, same->most_milli = work.most_milli;
    }
    same->ranged = same->least_milli < same->most_milli;
    same->time.ms = sb_mul_div(same->quantity_milli, same->operation->time.ms, 1000);
}

/* The ends of the range; without one both are the quantity itself. */
static bool range_of(const working *w, int64_t milli, int64_t *least, int64_t *most) {
    working low = *w, high = *w;
    *least = *most = milli;
    if (!w->line->least)
        return true;
    low.quantity = w->line->least, high.quantity = w->line->most;
    if (!quantity_of(&low, least) || !quantity_of(&high, most))
        return false;
    if (*least >= 0 && *least <= milli && milli <= *most)
        return true;
    return tell(w->making->walk->run, w->line, w->operation,
                "the likely quantity lies between the least, which is not below 0, and the greatest");
}

static void add_line(const working *w) {
    const sb_recipe_work *line = w->line;
    int64_t milli, least, most;
    if (!fits(w->making->walk->run, line, w->operation) || !quantity_of(w, &milli))
        return;
    if (milli < 0) {
        tell(w->making->walk->run, line, w->operation, "its quantity is out of all range");
        return;
    }
    if (!range_of(w, milli, &least, &most) || most == 0)
        return;
    bool batch = line->basis == SB_PER_THE_BATCH || w->operation->driver == SB_BY_BATCH;
    add(w->making->walk, (sb_work){.piece = batch ? SB_BATCH : w->making->piece,
                                   .operation = w->operation,
                                   .quantity_milli = milli,
                                   .least_milli = least,
                                   .most_milli = most,
                                   .text = line->text && *line->text ? line->text : w->operation->title,
                                   .place = line->guard.place});
}

void takeoff_works(takeoff_making *making) {
    takeoff_walk *walk = making->walk;
    for (size_t i = 0; i < making->recipe->works.count; i++) {
        const sb_recipe_work *line = &making->recipe->works.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        const working w = {making, line, sb_shop_operation(walk->shop, line->operation), &turns,
                           line->quantity};
        if (turns.count == 0)
            continue;
        if (w.operation)
            add_line(&w);
        else
            sb_shop_unknown_operation(walk->run, walk->shop, line->guard.place, line->operation);
    }
}

void takeoff_always(takeoff_walk *walk) {
    for (size_t i = 0; i < walk->shop->operations.count; i++) {
        const sb_operation *operation = &walk->shop->operations.items[i];
        if (operation->always)
            add(walk, (sb_work){.piece = SB_BATCH,
                                .operation = operation,
                                .quantity_milli = 1000,
                                .least_milli = 1000,
                                .most_milli = 1000,
                                .text = operation->title,
                                .place = operation->place});
    }
}
