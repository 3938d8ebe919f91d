/* Random jobs: a second, plain checker written for these tests goes over every plan, and sums must be
 * conserved. Also: the same job gives the same plan. */
#include "problems.h"

#include <math.h>
#include <stdlib.h>

/* ---- boards: what takes up which length ---------------------------------------------------------- */

/* Square parts of full width: sum of parts, kerfs, trims, leftover and offcut is the board, to the nanometre. */
static void length_is_conserved(const sb_problem *p, const sb_board_plan *b) {
    const sb_supply *s = &p->supplies.items[b->supply];
    int64_t sum = s->trim1.nm + s->trim2.nm + b->leftover.nm + b->offcut.nm, end = s->trim1.nm;
    for (size_t i = 0; i < b->parts.count; i++) {
        const sb_need *need = &p->needs.items[b->parts.items[i].need];
        assert_int_equal(b->parts.items[i].at.nm, end);
        sum += need->length.nm;
        end = b->parts.items[i].at.nm + need->length.nm + p->rules.kerf.nm;
    }
    int64_t last_kerf = s->length.nm - s->trim2.nm - (end - p->rules.kerf.nm);
    last_kerf = last_kerf > p->rules.kerf.nm ? p->rules.kerf.nm : last_kerf;
    assert_true(last_kerf >= 0);
    sum += p->rules.kerf.nm * (int64_t)(b->parts.count - 1) + last_kerf;
    assert_int_equal(sum, s->length.nm);
}

static void demand_is_met(const sb_problem *p, const sb_plan *plan) {
    for (size_t n = 0; n < p->needs.count; n++) {
        int64_t made = 0;
        for (size_t i = 0; i < plan->boards.count; i++)
            for (size_t j = 0; j < plan->boards.items[i].parts.count; j++)
                made += plan->boards.items[i].parts.items[j].need == n ? plan->boards.items[i].count : 0;
        for (size_t i = 0; i < plan->sheets.count; i++)
            for (size_t j = 0; j < plan->sheets.items[i].parts.count; j++)
                made += plan->sheets.items[i].parts.items[j].need == n ? plan->sheets.items[i].count : 0;
        assert_int_equal(made, p->needs.items[n].count);
    }
}

static void make_board_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    static const double lengths[] = {2400, 3000, 3600, 4200, 4800, 6000};
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    stock->useful_length = mm(roll(seed, 2) ? 600 : 0);
    stock->value = 100000;
    p->rules.material_only = roll(seed, 2);
    p->rules.board.milli = 8000;
    p->rules.change.milli = 40000;
    p->rules.cut.milli = 2000;
    for (size_t i = 0; i < 3; i++) {
        double length = lengths[2 * i + roll(seed, 2)];
        sb_supply *s =
            add_supply(run, p, length, 0, (int64_t)(length * 0.4 * (0.94 + 0.001 * roll(seed, 120))));
        s->trim1 = mm(roll(seed, 2) ? 10 : 0);
        s->trim2 = mm(roll(seed, 2) ? 12.5 : 0);
    }
    for (uint32_t left = roll(seed, 5); left > 0; left--) {
        sb_supply *rack = add_supply(run, p, 500 + roll(seed, 1500), 0, roll(seed, 300));
        rack->available = 1;
        rack->leftover = true;
    }
    for (uint32_t left = 3 + roll(seed, 15); left > 0; left--)
        add_need(run, p, "part", 150 + 0.5 * roll(seed, 4300), 0, 1 + roll(seed, 20));
}

static void boards_at_random(void **state) {
    uint32_t seed = 5;
    (void)state;
    for (int job = 0; job < 60; job++) {
        sb_run run;
        sb_problem p;
        make_board_job(&run, &p, &seed);
        search_briefly(&p, job);
        const sb_plan *plan = planned(&run, &p);
        for (size_t i = 0; i < plan->boards.count; i++)
            length_is_conserved(&p, &plan->boards.items[i]);
        demand_is_met(&p, plan);
        sb_run_free(&run);
    }
}

/* Material alone, several board lengths: how near to the bound the plans come. */
static void boards_come_near_the_bound(void **state) {
    uint32_t seed = 6;
    double sum = 0, worst = 0;
    int proved = 0;
    (void)state;
    for (int job = 0; job < 60; job++) {
        sb_run run;
        sb_problem p;
        make_board_job(&run, &p, &seed);
        p.rules.material_only = true;
        const sb_plan *plan = planned(&run, &p);
        double gap = (double)(plan->cost.milli - plan->bound.milli) / (double)plan->cost.milli;
        sum += gap;
        worst = fmax(worst, gap);
        proved += plan->proved;
        sb_run_free(&run);
    }
    print_message("mean gap %.3f %%, worst %.2f %%, proved %d of 60\n", 100 * sum / 60, 100 * worst, proved);
    assert_true(sum / 60 < 0.005);
}

/* ---- angled and ripped parts: gaps in thousandths of a millimetre, looked at from the plan alone ---- */

static double behind_long_point(const sb_problem *p, sb_cut_end end,
                                double y) { /* y across the board, 0 at the near edge */
    double slope = tan(fabs((double)end.mitre.udeg) * acos(-1.0) / 180e6);
    double width = (double)p->stock.items[0].width.nm;
    return slope * (end.mitre.udeg > 0 ? width - y : y);
}

/* As they are crosscut: the section of a strip is cut square. */
static sb_cut_end crosscut(const sb_problem *p, const sb_placed *part, sb_cut_end end) {
    return p->needs.items[part->need].width.nm ? (sb_cut_end){{0}, {0}} : end;
}

/* On the near edge, the far edge and between, wood of two neighbours is never nearer than the blade is wide. */
static void wood_keeps_apart(const sb_problem *p, const sb_board_plan *b) {
    for (size_t i = 1; i < b->parts.count; i++) {
        const sb_placed *one = &b->parts.items[i - 1], *next = &b->parts.items[i];
        if (next->at.nm == one->at.nm)
            continue; /* strips of one section */
        sb_cut_end rear = crosscut(p, one, one->rear), front = crosscut(p, next, next->front);
        for (int step = 0; step <= 4; step++) {
            double y = (double)p->stock.items[0].width.nm * step / 4;
            double end = (double)(one->at.nm + p->needs.items[one->need].length.nm) -
                         behind_long_point(p, rear, y);
            double begin = (double)next->at.nm + behind_long_point(p, front, y);
            double slope = fmax(fabs((double)rear.mitre.udeg), fabs((double)front.mitre.udeg));
            double blade = (double)p->rules.kerf.nm / cos(slope * acos(-1.0) / 180e6);
            assert_true(begin - end >= blade - 1);
        }
    }
}

static void make_angled_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    static const double angles[] = {0, 0, 45, -45, 30, -22.5};
    start(run, p, 3);
    add_stock(run, p, "pine", false)->width = mm(95);
    add_supply(run, p, 3000, 0, 1000)->trim1 = mm(10);
    add_supply(run, p, 4200, 0, 1500)->trim2 = mm(10);
    for (uint32_t left = 2 + roll(seed, 6); left > 0; left--) {
        sb_need *need =
            add_need(run, p, "part", 250 + 0.5 * roll(seed, 2500), roll(seed, 4) ? 0 : 30, 1 + roll(seed, 9));
        need->end1 = end_of(angles[roll(seed, 6)], 0);
        need->end2 = end_of(angles[roll(seed, 6)], 0);
    }
}

static void angled_boards_at_random(void **state) {
    uint32_t seed = 7;
    (void)state;
    for (int job = 0; job < 40; job++) {
        sb_run run;
        sb_problem p;
        make_angled_job(&run, &p, &seed);
        const sb_plan *plan = planned(&run, &p);
        for (size_t i = 0; i < plan->boards.count; i++)
            wood_keeps_apart(&p, &plan->boards.items[i]);
        demand_is_met(&p, plan);
        sb_run_free(&run);
    }
}

/* ---- sheets: inside, apart, with the grain ------------------------------------------------------- */

static bool apart(sb_rect a, sb_rect b, int64_t kerf) {
    return a.x.nm + a.w.nm + kerf <= b.x.nm || b.x.nm + b.w.nm + kerf <= a.x.nm ||
           a.y.nm + a.l.nm + kerf <= b.y.nm || b.y.nm + b.l.nm + kerf <= a.y.nm;
}

static void parts_lie_well(const sb_problem *p, const sb_sheet_plan *sheet) {
    const sb_supply *s = &p->supplies.items[sheet->supply];
    for (size_t i = 0; i < sheet->parts.count; i++) {
        const sb_sheet_part *part = &sheet->parts.items[i];
        const sb_need *need = &p->needs.items[part->need];
        assert_true(part->at.x.nm >= s->trim1.nm &&
                    part->at.x.nm + part->at.w.nm <= s->width.nm - s->trim1.nm);
        assert_true(part->at.y.nm >= s->trim2.nm &&
                    part->at.y.nm + part->at.l.nm <= s->length.nm - s->trim2.nm);
        assert_int_equal(part->turned ? part->at.w.nm : part->at.l.nm, need->length.nm);
        assert_int_equal(part->turned ? part->at.l.nm : part->at.w.nm, need->width.nm);
        assert_true(need->grain == SB_CUT_FREE || part->turned == (need->grain == SB_CUT_ACROSS));
        for (size_t j = 0; j < i; j++)
            assert_true(apart(part->at, sheet->parts.items[j].at, p->rules.panel_kerf.nm));
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            assert_true(apart(part->at, sheet->leftovers.items[j], p->rules.panel_kerf.nm));
    }
}

/* No cut runs through a part: every cut from edge to edge of its rectangle misses all parts. */
static void cuts_miss_the_parts(const sb_problem *p, const sb_sheet_plan *sheet) {
    for (size_t c = 0; c < sheet->cuts.count; c++) {
        const sb_sheet_cut *cut = &sheet->cuts.items[c];
        sb_rect kerf = cut->divides;
        if (cut->across_width)
            kerf.y = cut->at, kerf.l = p->rules.panel_kerf;
        else
            kerf.x = cut->at, kerf.w = p->rules.panel_kerf;
        for (size_t i = 0; i < sheet->parts.count; i++)
            assert_true(apart(kerf, sheet->parts.items[i].at, 0));
    }
}

static void make_sheet_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    static const double sheets[][2] = {{2440, 1220}, {2500, 1250}, {3050, 1220}, {1220, 1220}};
    start(run, p, 3.2);
    sb_cut_stock *stock = add_stock(run, p, "ply", true);
    stock->useful_length = mm(500);
    stock->useful_width = mm(300);
    stock->value = 300000;
    p->rules.effort = 3000000;
    p->rules.stages = roll(seed, 2) ? 0 : 2 + (int)roll(seed, 2);
    p->rules.trims = roll(seed, 2);
    p->rules.crosscut_first = roll(seed, 2);
    p->rules.material_only = roll(seed, 2);
    p->rules.longest_rip = mm(roll(seed, 5) == 0 ? 3100 : 0);
    p->rules.smallest_strip = mm(roll(seed, 5) == 0 ? 60 : 0);
    p->rules.fence.milli = 3000;
    p->rules.back.milli = 1000 * (int64_t)roll(seed, 3);
    p->rules.sheet_cut.milli = 700;
    for (size_t i = 0; i < 2; i++) {
        const double *size = sheets[2 * i + roll(seed, 2)];
        sb_supply *s = add_supply(run, p, size[0], size[1], (int64_t)(size[0] * size[1] / 700));
        s->trim1 = s->trim2 = mm(roll(seed, 2) ? 10 : 0);
    }
    for (uint32_t left = 3 + roll(seed, 10); left > 0; left--) {
        double width = 100 + roll(seed, 500), length = width + roll(seed, 700);
        add_need(run, p, "panel", length, width, 1 + roll(seed, 12))->grain =
            (sb_cut_grain)(roll(seed, 3) ? 2 : roll(seed, 2));
    }
}

static void sheets_at_random(void **state) {
    uint32_t seed = 8;
    double gap = 0;
    (void)state;
    for (int job = 0; job < 50; job++) {
        sb_run run;
        sb_problem p;
        make_sheet_job(&run, &p, &seed);
        const sb_plan *plan = planned(&run, &p);
        for (size_t i = 0; i < plan->sheets.count; i++) {
            parts_lie_well(&p, &plan->sheets.items[i]);
            cuts_miss_the_parts(&p, &plan->sheets.items[i]);
        }
        demand_is_met(&p, plan);
        gap += (double)(plan->cost.milli - plan->bound.milli) / (double)plan->cost.milli / 50;
        sb_run_free(&run);
    }
    print_message("mean gap of sheets %.1f %%\n", 100 * gap);
    assert_true(gap < 0.25);
}

/* ---- the same again ------------------------------------------------------------------------------ */

static bool same_boards(const sb_plan *a, const sb_plan *b) {
    if (a->boards.count != b->boards.count || a->cost.milli != b->cost.milli ||
        a->bound.milli != b->bound.milli)
        return false;
    for (size_t i = 0; i < a->boards.count; i++) {
        const sb_board_plan *x = &a->boards.items[i], *y = &b->boards.items[i];
        if (x->supply != y->supply || x->count != y->count || x->parts.count != y->parts.count)
            return false;
        for (size_t j = 0; j < x->parts.count; j++)
            if (x->parts.items[j].need != y->parts.items[j].need ||
                x->parts.items[j].at.nm != y->parts.items[j].at.nm)
                return false;
    }
    return true;
}

static void the_same_job_gives_the_same_plan(void **state) {
    uint32_t seed = 9;
    (void)state;
    for (int job = 0; job < 20; job++) {
        sb_run run;
        sb_problem p;
        make_board_job(&run, &p, &seed);
        search_briefly(&p, job);
        const sb_plan *first = planned(&run, &p), *again = planned(&run, &p);
        assert_true(same_boards(first, again));
        sb_run_free(&run);
    }
}

/* ---- large, one, many ---------------------------------------------------------------------------- */

static void ten_thousand_parts(void **state) {
    sb_run run;
    sb_problem p;
    uint32_t seed = 11;
    int64_t pieces = 0;
    (void)state;
    start(&run, &p, 3);
    p.rules.effort = 4000000; /* a sixth of what it would get */
    add_stock(&run, &p, "pine", false);
    for (double length = 2400; length <= 5400; length += 600)
        add_supply(&run, &p, length, 0, (int64_t)(length * 0.4))->trim1 = mm(10);
    for (size_t i = 0; i < 300; i++)
        pieces += add_need(&run, &p, "part", 150 + 0.5 * roll(&seed, 4300), 0, 1 + roll(&seed, 66))->count;
    const sb_plan *plan = planned(&run, &p);
    assert_true(pieces > 9000);
    demand_is_met(&p, plan);
    assert_true((double)(plan->cost.milli - plan->bound.milli) < 0.01 * (double)plan->cost.milli);
    sb_run_free(&run);
}

/* Arithmetic: 3000 / 303 gives nine of 300 a board; a thousand take 112. */
static void a_thousand_identical_parts(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 3000, 0, 500);
    add_need(&run, &p, "picket", 300, 0, 1000);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 112);
    assert_true(plan->proved);
    assert_int_equal(plan->boards.count, 2); /* 111 alike and one with a single part */
    sb_run_free(&run);
}

/* Broken off at once there is still a whole plan, with a bound. */
static void a_search_broken_off(void **state) {
    sb_run run;
    sb_problem p;
    uint32_t seed = 12;
    const volatile int asked = 1;
    const sb_watch watch = {.stop_asked = &asked};
    (void)state;
    make_board_job(&run, &p, &seed);
    p.rules.watch = &watch;
    const sb_plan *plan = planned(&run, &p);
    demand_is_met(&p, plan);
    assert_true(plan->cut_short || plan->proved);
    sb_run_free(&run);
    make_sheet_job(&run, &p, &seed);
    p.rules.watch = &watch;
    plan = planned(&run, &p);
    demand_is_met(&p, plan);
    assert_true(plan->cut_short || plan->proved);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boards_at_random),
        cmocka_unit_test(boards_come_near_the_bound),
        cmocka_unit_test(angled_boards_at_random),
        cmocka_unit_test(sheets_at_random),
        cmocka_unit_test(the_same_job_gives_the_same_plan),
        cmocka_unit_test(ten_thousand_parts),
        cmocka_unit_test(a_thousand_identical_parts),
        cmocka_unit_test(a_search_broken_off),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
