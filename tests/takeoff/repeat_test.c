/* A repeat is shorthand: unrolled by hand, every line written out for each of its turns, the same amounts come out. Recipes
 * are made by chance, repeats beside and inside each other; which parts and joints a line means is told here by the
 * numbers of the counters alone. */
#include "desk.h"

enum {
    RECIPES = 400,
    MOST_LINES = 24,
    DEEPEST = 3,
    PIECES = 12000 /* makes every amount a whole number of its unit: a line's rounding up adds nothing */
};

static uint64_t seed;

static int pick(int from, int to) {
    seed = seed * 6364136223846793005u + 1442695040888963407u;
    return from + (int)((seed >> 33) % (uint64_t)(to - from + 1));
}

/* ---- recipes by chance ------------------------------------------------------------------------------------ */

typedef enum kind {
    PART,
    JOINT,
    USE,
    REPEAT
} kind;

typedef struct line {
    kind kind;
    int around;       /* the repeat it stands in, -1: none */
    int turns;        /* REPEAT: from 1 to so many */
    int skipped;      /* without the turn of this number; 0: with all */
    int use, meaning; /* USE: which of the uses, and the part or joint it is per */
} line;

typedef struct lines {
    line items[MOST_LINES];
    int count;
} lines;

/* %s: the name of what it is per. Behind it the count, which depends on the counter. */
typedef struct a_use {
    const char *format;
    kind per;
} a_use;
static const a_use uses[] = {
    {"fixing screw %s%s per part %s", PART},       {"fixing disc %s%s per joint %s", JOINT},
    {"work minutes %s%s per part %s", PART},       {"work dowel %s%s per joint %s", JOINT},
    {"finish oil %s%s coats on all of %s", PART},  {"glue glue (%s%s) * 10 cm * 10 cm per joint %s", JOINT},
    {"work plane (%s%s) * 1 m per part %s", PART},
};
enum {
    USES = sizeof uses / sizeof *uses
};

static void add_lines(lines *all, int around, int depth) {
    for (int i = pick(1, 4); i > 0 && all->count < MOST_LINES; i--) {
        int at = all->count++;
        kind chosen = depth < DEEPEST ? (kind)pick(PART, REPEAT) : (kind)pick(PART, USE);
        all->items[at] = (line){.kind = chosen,
                                .around = around,
                                .turns = pick(0, 3),
                                .skipped = around >= 0 ? pick(0, 3) : 0,
                                .use = pick(0, USES - 1)};
        if (chosen == REPEAT)
            add_lines(all, at, depth + 1);
    }
}

/* Any part or joint may be meant, wherever it stands; a line that finds none becomes a part. */
static void choose_meanings(lines *all) {
    for (int i = 0; i < all->count; i++) {
        line *use = &all->items[i];
        if (use->kind != USE)
            continue;
        int first = pick(0, all->count - 1), tried = 0;
        while (tried < all->count && all->items[(first + tried) % all->count].kind != uses[use->use].per)
            tried++;
        use->meaning = (first + tried) % all->count;
        if (tried == all->count)
            use->kind = PART;
    }
}

static lines some_lines(void) {
    lines all = {.count = 0};
    while (all.count < 6)
        add_lines(&all, -1, 0);
    choose_meanings(&all);
    return all;
}

/* ---- written with repeats ---------------------------------------------------------------------------------- */

static const char *counter_of(desk *d, const line *one) {
    return one->around < 0 ? "0" : sb_pool_print(d->run.pool, "k%d", one->around);
}

/* `name` and `counter` as they are in this line, and `per` what it means. */
static const char *written(desk *d, const line *one, const char *name, const char *counter, const char *per) {
    sb_pool *pool = d->run.pool;
    if (one->kind == PART)
        return sb_pool_print(pool, "part p%s\n  count 1 + %s\n  of rail\n  length 300 mm + %s * 10 mm\n ",
                             name, counter, counter);
    if (one->kind == JOINT)
        return sb_pool_print(pool, "joint j%s 2 + %s", name, counter);
    const a_use *use = &uses[one->use];
    return sb_pool_print(pool, use->format, "1 + ", counter,
                         sb_pool_print(pool, "%s%s", use->per == PART ? "p" : "j", per));
}

static const char *number(desk *d, int number) {
    return sb_pool_print(d->run.pool, "%d", number);
}

static const char *rolled(desk *d, const lines *all, int around) {
    sb_pool *pool = d->run.pool;
    const char *text = "";
    for (int i = 0; i < all->count; i++) {
        const line *one = &all->items[i];
        const char *counter = counter_of(d, one), *when = "";
        if (one->around != around)
            continue;
        if (one->skipped)
            when = sb_pool_print(pool, " when %s != %d", counter, one->skipped);
        if (one->kind == REPEAT)
            text = sb_pool_print(pool, "%srepeat k%d from 1 to %d%s\n%send\n", text, i, one->turns, when,
                                 rolled(d, all, i));
        else
            text = sb_pool_print(pool, "%s%s %s\n", text,
                                 written(d, one, number(d, i), counter, number(d, one->meaning)), when);
    }
    return text;
}

/* ---- written out by hand ------------------------------------------------------------------------------------ */

typedef struct unrolling {
    desk *d;
    const lines *all;
    const char *text;
    int turn[MOST_LINES]; /* of every repeat around the line, and of those around what it means; else 0 */
    int user;             /* the line that means what is gone through */
} unrolling;

/* The line once for every turn of the repeats around it; those that have their number keep it. */
static void each_turn(unrolling *hand, int at, int around, void (*then)(unrolling *, int at)) {
    if (around < 0) {
        then(hand, at);
        return;
    }
    const line *repeat = &hand->all->items[around];
    if (hand->turn[around]) {
        each_turn(hand, at, repeat->around, then);
        return;
    }
    for (int turn = 1; turn <= repeat->turns; turn++) {
        hand->turn[around] = turn;
        each_turn(hand, at, repeat->around, then);
    }
    hand->turn[around] = 0;
}

/* It takes place, and so do the repeats around it. */
static bool happens(const unrolling *hand, int at) {
    for (; at >= 0; at = hand->all->items[at].around) {
        const line *one = &hand->all->items[at];
        if (one->skipped && hand->turn[one->around] == one->skipped)
            return false;
    }
    return true;
}

/* Every turn of a repeat gives what is made in it a name of its own: p7-2-1. */
static const char *turned_name(const unrolling *hand, int at) {
    const char *name = number(hand->d, at);
    for (int around = hand->all->items[at].around; around >= 0; around = hand->all->items[around].around)
        name = sb_pool_print(hand->d->run.pool, "%s-%d", name, hand->turn[around]);
    return name;
}

static void write_line(unrolling *hand, int at, const char *per) {
    const line *one = &hand->all->items[at];
    const char *counter = number(hand->d, one->around < 0 ? 0 : hand->turn[one->around]);
    hand->text = sb_pool_print(hand->d->run.pool, "%s%s\n", hand->text,
                               written(hand->d, one, turned_name(hand, at), counter, per));
}

static void use_it(unrolling *hand, int meaning) {
    if (happens(hand, meaning))
        write_line(hand, hand->user, turned_name(hand, meaning));
}

static void write_turn(unrolling *hand, int at) {
    const line *one = &hand->all->items[at];
    if (!happens(hand, at))
        return;
    hand->user = at;
    if (one->kind == USE)
        each_turn(hand, one->meaning, hand->all->items[one->meaning].around, use_it);
    else
        write_line(hand, at, "");
}

static const char *unrolled(desk *d, const lines *all) {
    unrolling hand = {.d = d, .all = all, .text = ""};
    for (int i = 0; i < all->count; i++)
        if (all->items[i].kind != REPEAT)
            each_turn(&hand, i, all->items[i].around, write_turn);
    return hand.text;
}

/* ---- the same amounts ----------------------------------------------------------------------------------------- */

static const sb_takeoff *made_of(desk *d, const char *text) {
    d->book = sb_recipe_book_open(&d->run, d->folder, false);
    add_recipe(d, sb_pool_print(d->run.pool, "recipe thing\nstock rail slat\n%s", text));
    return takeoff(d, sb_pool_print(d->run.pool, "piece it\n  recipe thing\n  count %d\n", PIECES));
}

static int64_t parts_in(const sb_takeoff *t) {
    int64_t parts = 0;
    for (size_t i = 0; i < t->parts.count; i++)
        parts += t->parts.items[i].count;
    return parts;
}

static int64_t assert_same(const sb_takeoff *repeated, const sb_takeoff *by_hand, const char *texts) {
    static const char *const stocks[] = {"screw", "disc", "oil", "glue"}, *const operations[] = {
                                                                              "minutes", "dowel", "plane"};
    int64_t something = 0;
    if (parts_in(repeated) != parts_in(by_hand))
        fail_msg("parts:\n%s", texts);
    for (size_t i = 0; i < sizeof stocks / sizeof *stocks; i++) {
        something += used(repeated, stocks[i]) > 0;
        if (used(repeated, stocks[i]) != used(by_hand, stocks[i]))
            fail_msg("%s:\n%s", stocks[i], texts);
    }
    for (size_t i = 0; i < sizeof operations / sizeof *operations; i++) {
        something += worked_milli(repeated, operations[i]) > 0;
        if (worked_milli(repeated, operations[i]) != worked_milli(by_hand, operations[i]))
            fail_msg("%s:\n%s", operations[i], texts);
    }
    return something;
}

static void unrolled_it_comes_to_the_same(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 11;
    int64_t compared = 0;
    for (int round = 0; round < RECIPES; round++) {
        lines all = some_lines();
        const char *repeated = rolled(d, &all, -1), *by_hand = unrolled(d, &all);
        compared += assert_same(made_of(d, repeated), made_of(d, by_hand),
                                sb_pool_print(d->run.pool, "%s\nby hand\n%s", repeated, by_hand));
    }
    assert_true(compared > RECIPES); /* most of them use something */
}

/* ---- by numbers ---------------------------------------------------------------------------------------------- */

static void a_turn_means_its_own_parts(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\n"
                                         "part side\n  count 2\n  of rail\n  length 2 m\n"
                                         "repeat k from 1 to 4\n"
                                         "part rung\n  of rail\n  length 500 mm\n"
                                         "fixing screw 2 per part rung\n"
                                         "fixing disc 1 per part side\n"
                                         "work minutes 1 per part rung\n"
                                         "work sort\n"
                                         "end\n"
                                         "work minutes 100 per part rung\n",
                                         1);
    assert_int_equal(used(t, "screw"), 4 * 2);
    assert_int_equal(used(t, "disc"), 4 * 2);
    assert_int_equal(worked_milli(t, "minutes"), 1000 * (4 + 400));
    assert_int_equal(worked_milli(t, "sort"),
                     1000 * 4 * (1 + 2)); /* its own rung and both sides, in each turn */
}

/* A part of another repeat stands outside this one, and counts whole; inside a repeat around both, those of its turn. */
static void a_repeat_beside_counts_whole(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\n"
                                         "repeat bay from 1 to 5\n"
                                         "repeat k from 1 to 4\n"
                                         "part rung\n  of rail\n  length 500 mm\n"
                                         "end\n"
                                         "repeat j from 1 to 3\n"
                                         "fixing screw 1 per part rung\n"
                                         "end\nend\n"
                                         "repeat j from 1 to 2\n"
                                         "fixing disc 1 per part rung\n"
                                         "end\n",
                                         1);
    assert_int_equal(used(t, "screw"), 5 * 3 * 4);
    assert_int_equal(used(t, "disc"), 2 * 5 * 4);
}

/* ---- mistakes ------------------------------------------------------------------------------------------------- */

/* Each line tells its mistake in the first turn that has it. */
static void a_mistake_is_told_in_one_turn(void **state) {
    static const char *const mistakes[] = {
        "part a\n  of rail\n  length (k - 300) * 1 mm\n",
        "part a\n  of rail\n  length 1 m\n  end1 mitre (k + 100) * 1 deg scale\n",
        "joint a k - 300\n",
        "fixing screw k - 300\n",
        "glue glue (k - 300) * 1 m2\n",
        "finish oil k - 300 coats on all\n",
        "work minutes sqrt(k - 300)\n",
        "fixing screw 1 when sqrt(k - 300) > 1\n",
        "check k < 0 : no\n",
        "repeat m from k to 20000\nfixing screw 1\nend\n",
        "component c\n  count k - 300\n",
        "component c\n  set long (k - 300) * 1 mm\n",
    };
    desk *d = *state;
    open_shop(d);
    for (size_t i = 0; i < sizeof mistakes / sizeof *mistakes; i++) {
        size_t before = sb_notices_raised(&d->run, SB_ERROR);
        d->book = sb_recipe_book_open(&d->run, d->folder, false);
        sb_recipe_book_add(
            &d->run, d->book,
            sb_recipe_of(&d->run, sb_source_of(&d->run, "c", "recipe c\ninput long 1 m from 1 m\n"), false));
        const char *text = sb_pool_print(
            d->run.pool, "recipe thing\nstock rail slat\nrepeat k from 1 to 40\n%send\n", mistakes[i]);
        sb_recipe_book_add(&d->run, d->book,
                           sb_recipe_of(&d->run, sb_source_of(&d->run, "thing", text), false));
        d->job = sb_job_of(&d->run,
                           sb_source_of(&d->run, "job", "job j\ndate 2026-03-02\ncustomer A\npiece thing\n"),
                           false);
        sb_takeoff_of(&d->run, d->shop, d->book, d->job, NULL);
        if (sb_notices_raised(&d->run, SB_ERROR) != before + 1)
            desk_fail(d, mistakes[i]);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(unrolled_it_comes_to_the_same),
        AT_DESK(a_turn_means_its_own_parts),
        AT_DESK(a_repeat_beside_counts_whole),
        AT_DESK(a_mistake_is_told_in_one_turn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
