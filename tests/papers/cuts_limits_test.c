/* Cuts past the limits of the saw: the sheet says what to do, and the estimate has the time of just as many. */
#include "chance.h"
#include "sample.h"

static const sb_labour_line *hard_line(const sb_way *way) {
    for (size_t i = 0; i < way->estimate->labour.count; i++)
        if (way->estimate->labour.items[i].operation->driver == SB_BY_HARD_CUT)
            return &way->estimate->labour.items[i];
    return NULL;
}

/* All that the sheet counts: "(hard cuts: 3)", "hard cuts: 4; ...". */
static int64_t hard_in(const char *text) {
    int64_t count = 0;
    for (const char *at = text ? strstr(text, "hard cuts: ") : NULL; at; at = strstr(at + 1, "hard cuts: "))
        count += strtoll(at + 11, NULL, 10);
    return count;
}

static int64_t hard_on_paper(const sb_document *cuts) {
    int64_t count = 0;
    for (size_t s = 0; s < cuts->sheets.count; s++)
        for (size_t b = 0; b < cuts->sheets.items[s]->blocks.count; b++) {
            const sb_block *block = &cuts->sheets.items[s]->blocks.items[b];
            count += hard_in(block->text);
            for (size_t i = 0; block->table && i < block->table->rows.count * block->table->column_count; i++)
                count += hard_in(
                    block->table->rows.items[i / block->table->column_count][i % block->table->column_count]
                        .text);
        }
    return count;
}

static void agree(sample *s, int64_t wanted) {
    const sb_way *way = &s->ways->list.items[0];
    const sb_labour_line *line = hard_line(way);
    assert_int_equal(line ? line->quantity_milli : 0, wanted * 1000);
    assert_int_equal(hard_on_paper(sb_paper_cuts(&s->run, s->shop, s->job, way)), wanted);
}

/* One brace, both ends past the swing, nothing parallel before it. Five minutes each in the default rates. */
static void past_the_swing_is_paid(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece gate\n  recipe ledged-gate\n  set wide 1200 mm\n  set high 800 mm\n");
    agree(&s, 2);
    const sb_labour_line *line = hard_line(&s.ways->list.items[0]);
    assert_int_equal(line->time.ms, 2 * 5 * 60000);
    sample_close(&s);
    sample_make(&s, "piece frame\n  recipe mitred-frame\n");
    agree(&s, 0);
    sample_close(&s);
}

static void set_widest(sample *s, int64_t mm) {
    s->shop->settings.crosscut.widest.items[0].width.nm = mm * 1000000;
    sample_work(s, s->job);
}

static int64_t cuts_on_wider(const sb_plan *plan, int64_t mm) {
    int64_t count = 0;
    for (size_t i = 0; i < plan->boards.count; i++) {
        const sb_supply *supply = &plan->problem->supplies.items[plan->boards.items[i].supply];
        if (plan->problem->stock.items[supply->stock].width.nm > mm * 1000000)
            count += plan->boards.items[i].count * plan->boards.items[i].cuts;
    }
    return count;
}

/* A saw that cuts 100 mm wide at square: boards of 120 and 145 mm are cut from both edges; one that cuts 60: by hand. */
static void wider_than_the_saw_cuts(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece bed\n  recipe raised-bed\n");
    agree(&s, 0);
    set_widest(&s, 100);
    const sb_way *way = &s.ways->list.items[0];
    int64_t wide = cuts_on_wider(way->plan, 100);
    assert_true(wide > 0);
    agree(&s, wide);
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
    assert_true(told(cuts, "roll the piece over its length, clamp it, and cut to meet the first cut") > 0);
    assert_true(told(cuts, "let the blade stop") > 0);
    set_widest(&s, 60);
    cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "cut or finish it by hand, the piece clamped") > 0);
    sample_close(&s);
}

/* A saw on which nothing is plain: every cut of the plan is a hard one, no more and no fewer. */
static void every_cut_is_counted_once(void **state) {
    (void)state;
    uint64_t seed = 5;
    int64_t all = 0;
    for (int round = 0; round < 300; round++) {
        sb_run run = sb_run_new();
        const sb_plan *plan = sb_plan_make(&run, boards_by_chance(&run, &seed));
        if (!plan || !sb_ok(&run))
            fail_msg("%s", sb_notices_text(&run, SB_NOTE, false));
        sb_shop shop = {.folder = ""};
        sb_saw *saw = &shop.settings.crosscut;
        saw->mitre_left = saw->mitre_right = saw->bevel_left = saw->bevel_right = (sb_angle){1000000};
        SB_PUSH(run.pool, saw->widest, ((sb_widest){.width = {1000000}}));
        sb_takeoff none = {.job = NULL};
        sb_hard_cuts cuts = sb_hard_cuts_of(&run, &shop, &none, plan);
        int64_t count = 0;
        for (size_t i = 0; i < cuts.count; i++)
            count += cuts.items[i].count;
        assert_int_equal(count, plan->counts.cuts);
        all += count;
        sb_run_free(&run);
    }
    assert_true(all > 3000);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(past_the_swing_is_paid),
        cmocka_unit_test(wider_than_the_saw_cuts),
        cmocka_unit_test(every_cut_is_counted_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
