/* What follows the crosscuts comes in the order in which it can be done, and leaves no part out. */
#include "sample.h"

static const char *const recipes[] = {"dining-table",   "garden-bench", "ledged-gate", "mitred-frame",
                                      "planter-seat",   "raised-bed",   "shelf-unit",  "splayed-planter",
                                      "trough-planter", "workbench"};
static const char *const steps[] = {"Rip: ",       "Glue up",       "Edge", "Then cut the ends",
                                    "Trim to fit", "Finished parts"};
enum {
    RIP,
    GLUE,
    EDGE,
    ENDS,
    TRIM,
    FINISHED,
    STEPS
};

static size_t step_of(const sb_table *table) {
    for (size_t i = 0; i < STEPS; i++)
        if (strncmp(table->title, steps[i], strlen(steps[i])) == 0)
            return i;
    fail_msg("no step: %s", table->title);
    return 0;
}

/* Rows of each step, and strips; a step never comes behind a later one. */
static void count_rows(const sb_document *cuts, int64_t *rows, int64_t *strips) {
    const sb_sheet *sheet = sheet_named(cuts, "Rip, glue, edge, fit");
    size_t reached = 0;
    for (size_t b = 0; b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        if (!table)
            continue;
        size_t step = step_of(table);
        assert_true(step >= reached);
        reached = step;
        rows[step] += (int64_t)table->rows.count;
        for (size_t r = 0; step == RIP && r < table->rows.count; r++)
            *strips += table->rows.items[r][1].amount;
    }
}

static int64_t strips_of(const sb_plan *plan) {
    int64_t count = 0;
    for (size_t b = 0; b < plan->boards.count; b++)
        for (size_t i = 0; i < plan->boards.items[b].parts.count; i++) {
            const sb_need *need = &plan->problem->needs.items[plan->boards.items[b].parts.items[i].need];
            sb_length board = plan->problem->stock.items[need->stock].width;
            count += need->width.nm > 0 && need->width.nm != board.nm ? plan->boards.items[b].count : 0;
        }
    return count;
}

static bool off_square(const sb_part *part) {
    return part->end1.mitre.udeg || part->end1.bevel.udeg || part->end2.mitre.udeg || part->end2.bevel.udeg;
}

static void compare(sample *s, int64_t *seen) {
    const sb_way *way = &s->ways->list.items[0];
    int64_t rows[STEPS] = {0}, wanted[STEPS] = {0}, strips = 0;
    count_rows(sb_paper_cuts(&s->run, s->shop, s->job, way), rows, &strips);
    for (size_t i = 0; i < way->takeoff->parts.count; i++) {
        const sb_part *part = &way->takeoff->parts.items[i];
        bool ripped = part->cut_width.nm > 0 && part->stock->kind == SB_STOCK_BOARD &&
                      part->cut_width.nm != part->stock->width.nm;
        bool whole_later = part->staves > 1 || part->layers > 1 || part->stock->kind == SB_STOCK_SHEET;
        wanted[GLUE] += part->staves > 1 || part->layers > 1 || part->planed;
        wanted[EDGE] += part->edging && part->edging_edges;
        wanted[ENDS] += off_square(part) && (ripped || whole_later);
        wanted[TRIM] += part->allow.nm > 0 || part->allow_width.nm > 0;
        wanted[FINISHED]++;
    }
    assert_int_equal(strips, strips_of(way->plan));
    for (size_t i = GLUE; i < STEPS; i++) {
        assert_int_equal(rows[i], wanted[i]);
        seen[i] += rows[i];
    }
    seen[RIP] += strips;
}

static void each_step_has_its_parts(void **state) {
    (void)state;
    int64_t seen[STEPS] = {0};
    for (size_t i = 0; i < sizeof recipes / sizeof *recipes; i++) {
        sample s;
        char lines[80];
        snprintf(lines, sizeof lines, "piece made\n  recipe %s\n", recipes[i]);
        sample_make(&s, lines);
        compare(&s, seen);
        sample_close(&s);
    }
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        compare(&s, seen);
        sample_close(&s);
    }
    for (size_t i = 0; i < STEPS; i++)
        assert_true(seen[i] > 0);
}

static const sb_cell *row_of_step(const sb_document *cuts, size_t step, const char *part) {
    const sb_sheet *sheet = sheet_named(cuts, "Rip, glue, edge, fit");
    for (size_t b = 0; b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        for (size_t r = 0; table && step_of(table) == step && r < table->rows.count; r++)
            if (strcmp(table->rows.items[r][0].text, part) == 0)
                return table->rows.items[r];
    }
    fail_msg("%s%s is nowhere", steps[step], part);
    return NULL;
}

/* Mitres are cut where the long part ends; only then is it trimmed to its size. */
static void what_is_trimmed_later_is_mitred_long(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece planter\n  recipe splayed-planter\n");
    sb_part *side = (sb_part *)&s.ways->list.items[0].takeoff->parts.items[0];
    side->allow = (sb_length){3000000};
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    const sb_cell *ends = row_of_step(cuts, ENDS, side->title), *trim = row_of_step(cuts, TRIM, side->title);
    assert_int_equal(ends[2].amount, side->length.nm + 3000000);
    assert_non_null(strstr(ends[4].text, "3 mm long, trimmed below"));
    assert_int_equal(trim[2].amount, side->length.nm);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_step_has_its_parts),
        cmocka_unit_test(what_is_trimmed_later_is_mitred_long),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
