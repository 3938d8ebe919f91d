/* The cut sheet of measured boards: whoever follows its rows with a blade gets the parts, and none over what it must
 * not have. */
#include "paper.h"

#include "sawbill/writers.h"

enum {
    PART,
    LENGTH,
    FROM,
    CUT_AT,
    ENDS
};

static int64_t pick(uint64_t *seed, int64_t from, int64_t to) {
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return from + (int64_t)((*seed >> 33) % (uint64_t)(to - from + 1));
}

static void add_bad(sb_run *run, sb_supply *board, int64_t from, int64_t to, bool split) {
    SB_PUSH(run->pool, board->bad, ((sb_stretch){{from}, {to}, split, {0}}));
}

static void add_board(sb_run *run, sb_problem *problem, uint64_t *seed) {
    sb_supply board = {.length = {pick(seed, 1200, 3000) * 1000000}, .price = {pick(seed, 100, 500) * 1000}};
    board.label = sb_pool_print(run->pool, "M%zu", problem->supplies.count);
    board.leftover = board.measured = true;
    board.available = 1;
    board.trim1.nm = board.trim2.nm = pick(seed, 0, 1) * 10000000;
    int64_t at = 0;
    for (int64_t i = pick(seed, 1, 3); i > 0; i--) {
        int64_t from = at + pick(seed, 0, 8000) * 100000, to = from + pick(seed, 20, 900) * 100000;
        if (to <= board.length.nm)
            add_bad(run, &board, from, to, pick(seed, 0, 1));
        at = from;
    }
    SB_PUSH(run->pool, problem->supplies, board);
}

static sb_problem *boards_by_chance(sb_run *run, uint64_t *seed) {
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules = (sb_cut_rules){.kerf = {pick(seed, 24, 36) * 100000}, .effort = 1000};
    sb_cut_stock stock = {.name = "slat", .useful_length = {400000000}, .value = 50000};
    SB_PUSH(run->pool, problem->stock, stock);
    for (int64_t i = pick(seed, 1, 4); i > 0; i--) {
        sb_need need = {.name = sb_pool_print(run->pool, "part %d", (int)i), .count = pick(seed, 1, 4)};
        need.length.nm = pick(seed, 2000, 9000) * 100000;
        need.clear = pick(seed, 0, 1);
        need.sound = pick(seed, 0, 1);
        SB_PUSH(run->pool, problem->needs, need);
    }
    sb_supply bought = {.length = {2400000000}, .price = {900000}, .available = -1, .label = "", .row = 1};
    SB_PUSH(run->pool, problem->supplies, bought);
    for (int64_t i = pick(seed, 1, 3); i > 0; i--)
        add_board(run, problem, seed);
    return problem;
}

/* ---- following the rows ---- */

typedef struct sawyer {
    const sb_plan *plan;
    size_t board, part; /* the row's */
    double at, step;    /* behind the last cut, from the trued end */
    int64_t wasted, kept;
} sawyer;

static double mm_of(sb_length length) {
    return (double)length.nm / 1e6;
}

static double said(const sb_cell *cell) {
    return cell->kind == SB_CELL_TEXT ? strtod(cell->text, NULL) : mm_of((sb_length){cell->amount});
}

static const sb_supply *supply_of(const sawyer *s) {
    return &s->plan->problem->supplies.items[s->plan->boards.items[s->board].supply];
}

static double kerf_of(const sawyer *s) {
    return mm_of(s->plan->problem->rules.kerf);
}

static bool holds(const sawyer *s, double from, double to, bool knots) {
    const sb_supply *supply = supply_of(s);
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        if ((knots || bad->split) && from + 1e-6 < mm_of(bad->to) - mm_of(supply->trim1) &&
            to - 1e-6 > mm_of(bad->from) - mm_of(supply->trim1))
            return true;
    }
    return false;
}

/* The blade of a waste row runs beyond its mark; the row says what is bad there. */
static void cut_waste(sawyer *s, const sb_cell *row) {
    double mark = said(&row[CUT_AT]);
    assert_true(mark >= s->at - 1e-6);
    assert_true(holds(s, s->at, mark + kerf_of(s), true));
    assert_true(strstr(row[ENDS].text, "knot from") || strstr(row[ENDS].text, "split from"));
    s->at = mark + kerf_of(s);
    s->wasted++;
}

static void cut_part(sawyer *s, const sb_cell *row) {
    const sb_placed *placed = &s->plan->boards.items[s->board].parts.items[s->part++];
    const sb_need *need = &s->plan->problem->needs.items[placed->need];
    double length = mm_of(need->length),
           to = row[CUT_AT].kind == SB_CELL_EMPTY ? s->at + length : said(&row[CUT_AT]);
    assert_true(to - s->at > length - 1e-6 && to - s->at < length + s->step + 1e-6);
    if (need->clear || need->sound)
        assert_false(holds(s, s->at, to, need->clear));
    s->at = to + kerf_of(s);
    assert_true(to <=
                mm_of(supply_of(s)->length) - mm_of(supply_of(s)->trim1) - mm_of(supply_of(s)->trim2) + 1e-6);
}

/* What goes back has no split, and is as long as the row says, less than two steps more. */
static void keep_rest(sawyer *s, const sb_cell *row) {
    const sb_supply *supply = supply_of(s);
    double room = mm_of(supply->length) - mm_of(supply->trim1) - mm_of(supply->trim2),
           length = said(&row[LENGTH]);
    double to = row[CUT_AT].kind == SB_CELL_EMPTY ? room : said(&row[CUT_AT]);
    assert_false(holds(s, s->at, to, false));
    assert_true(length <= to - s->at + 1e-6 && length > to - s->at - 2 * s->step);
    s->kept++;
}

static void follow_row(sawyer *s, const sb_cell *row) {
    if (strncmp(row[PART].text, "Board", 5) == 0) {
        s->board += s->part > 0;
        s->part = 0;
        s->at = 0;
    } else if (strcmp(row[PART].text, "waste") == 0) {
        cut_waste(s, row);
    } else if (strncmp(row[PART].text, "part", 4) == 0) {
        cut_part(s, row);
    } else if (strncmp(row[PART].text, "left over", 9) == 0 && supply_of(s)->measured) {
        keep_rest(s, row);
    }
}

static void follow(sawyer *s, const sb_document *cuts) {
    for (size_t i = 0; i < cuts->sheets.count; i++) {
        const sb_sheet *sheet = cuts->sheets.items[i];
        for (size_t b = 0; strcmp(sheet->title, "Boards") == 0 && b < sheet->blocks.count; b++)
            for (size_t r = 0; sheet->blocks.items[b].table && r < sheet->blocks.items[b].table->rows.count;
                 r++)
                follow_row(s, sheet->blocks.items[b].table->rows.items[r]);
    }
}

static void rows_are_followed(void **state) {
    (void)state;
    uint64_t seed = 815;
    sb_style style = {SB_UNITS_MM, {SB_NM_PER_MM / 2}, false};
    int64_t wasted = 0, kept = 0;
    for (int round = 0; round < 150; round++) {
        sb_run run = sb_run_new();
        const sb_plan *plan = sb_plan_make(&run, boards_by_chance(&run, &seed));
        if (!plan || !sb_ok(&run))
            fail_msg("%s", sb_notices_text(&run, SB_NOTE, false));
        sawyer s = {.plan = plan, .step = 0.5};
        follow(&s, sb_paper_bare_cuts(&run, plan, style, (sb_currency){"", 2}));
        assert_int_equal(s.board + 1, plan->boards.count);
        wasted += s.wasted;
        kept += s.kept;
        sb_run_free(&run);
    }
    print_message("%d pieces of waste, %d leftovers of measured boards\n", (int)wasted, (int)kept);
    assert_true(wasted > 20 && kept > 20);
}

static bool is_drawn(const sb_document *cuts, const char *text, const char *number) {
    for (size_t i = 0; i < cuts->sheets.count; i++)
        for (size_t b = 0; b < cuts->sheets.items[i]->blocks.count; b++) {
            const sb_drawing *drawing = cuts->sheets.items[i]->blocks.items[b].drawing;
            for (size_t l = 0; drawing && l < drawing->labels.count; l++)
                if (strcmp(drawing->labels.items[l].text, text) == 0 &&
                    strcmp(drawing->labels.items[l].number, number) == 0)
                    return true;
        }
    return false;
}

/* A leg ends at 800; the knot from 900 to 940 goes, cut at 937; the rail begins at 940. */
static void waste_has_a_row_with_its_mark(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem problem = {.rules = {.kerf = {3000000}, .material_only = true}};
    SB_PUSH(run.pool, problem.stock, ((sb_cut_stock){.name = "post"}));
    sb_need leg = {.name = "part leg", .length = {800000000}, .count = 1, .clear = true}, rail = leg;
    rail.name = "part rail", rail.length.nm = 1250000000;
    SB_PUSH(run.pool, problem.needs, leg);
    SB_PUSH(run.pool, problem.needs, rail);
    sb_supply board = {
        .length = {2400000000}, .price = {500000}, .available = 1, .label = "P1", .measured = true};
    add_bad(&run, &board, 900000000, 940000000, false);
    SB_PUSH(run.pool, problem.supplies, board);
    const sb_plan *plan = sb_plan_make(&run, &problem);
    sb_document *cuts =
        sb_paper_bare_cuts(&run, plan, (sb_style){SB_UNITS_MM, {SB_NM_PER_MM}, false}, (sb_currency){"", 2});
    sawyer s = {.plan = plan, .step = 1};
    follow(&s, cuts);
    assert_int_equal(s.wasted, 1);
    const char *text = sb_write_text(&run, cuts, 100);
    assert_non_null(strstr(text, "Board 1, P1"));
    assert_non_null(strstr(text, "knot from 900 to 940 mm"));
    assert_non_null(strstr(text, "937"));
    assert_true(is_drawn(cuts, "knot", ""));
    assert_true(is_drawn(cuts, "", "937"));
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(waste_has_a_row_with_its_mark),
        cmocka_unit_test(rows_are_followed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
