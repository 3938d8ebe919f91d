/* The cut sheet, followed to the letter: whoever cuts what it says, with the kerf it assumes, has exactly the parts. */
#include "sample.h"

/* ---- following the boards' marks ---- */

typedef struct follow {
    sample *s;
    const sb_cutlist *cutlist;
    int64_t made[512]; /* by need */
    int64_t first;     /* the board that comes next */
} follow;

static int64_t boards_in_title(const char *title, int64_t *first) {
    long long from = 0, to = 0;
    if (sscanf(title, "Boards %lld to %lld", &from, &to) != 2) {
        assert_int_equal(sscanf(title, "Board %lld", &from), 1);
        to = from;
    }
    *first = from;
    return to - from + 1;
}

static bool is_part_row(const sb_cell *row) {
    return strcmp(row[0].text, "offcut") != 0 && strncmp(row[0].text, "left over", 9) != 0;
}

/* Every mark is measured from the trued end; the blade runs beyond it, so the next part begins a kerf further. */
static void follow_board(follow *f, const sb_table *table, const sb_board_plan *board) {
    const sb_problem *problem = &f->cutlist->problem;
    const sb_supply *supply = &problem->supplies.items[board->supply];
    int64_t first, count = boards_in_title(table->title, &first), step = f->s->shop->settings.style.step.nm;
    assert_int_equal(first, f->first);
    assert_int_equal(count, board->count);
    f->first += count;
    int64_t end = 0;
    size_t part = 0;
    for (size_t r = 0; r < table->rows.count; r++) {
        const sb_cell *row = table->rows.items[r];
        if (!is_part_row(row))
            continue;
        const sb_placed *placed = &board->parts.items[part++];
        const sb_need *need = &problem->needs.items[placed->need];
        f->made[placed->need] += count;
        assert_int_equal(row[1].amount, need->length.nm);
        if (row[3].kind != SB_CELL_LENGTH)
            continue; /* a strip beside the one before */
        assert_in_range((uint64_t)(row[3].amount - row[2].amount - need->length.nm + step), 0,
                        (uint64_t)(2 * step));
        bool square = need->end1.mitre.udeg == 0 && need->end2.mitre.udeg == 0;
        if (part > 1 && square && board->parts.items[part - 2].rear.mitre.udeg == 0)
            assert_true(row[2].amount >= end + problem->rules.kerf.nm - step / 2);
        end = row[3].amount;
    }
    assert_int_equal(part, board->parts.count);
    assert_true(end <= supply->length.nm - supply->trim1.nm - supply->trim2.nm + step / 2);
}

static void follow_all(sample *s, const sb_way *way) {
    follow f = {.s = s, .cutlist = way->cutlist, .first = 1};
    const sb_document *cuts = sb_paper_cuts(&s->run, s->shop, s->job, way);
    const sb_sheet *sheet = sheet_named(cuts, "Boards");
    size_t board = 0;
    for (size_t b = 0; sheet && b < sheet->blocks.count; b++)
        if (sheet->blocks.items[b].table)
            follow_board(&f, sheet->blocks.items[b].table, &way->plan->boards.items[board++]);
    assert_int_equal(board, way->plan->boards.count);
    for (size_t i = 0; i < way->cutlist->problem.needs.count; i++) {
        const sb_need *need = &way->cutlist->problem.needs.items[i];
        if (!way->cutlist->problem.stock.items[need->stock].sheet)
            assert_int_equal(f.made[i], need->count);
    }
}

static void marks_make_the_parts(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (size_t w = 0; w < s.ways->list.count; w++)
            follow_all(&s, &s.ways->list.items[w]);
        sample_close(&s);
    }
}

/* ---- stops ---- */

static void stops_add_up(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_way *way = &s.ways->list.items[0];
        const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
        const sb_sheet *sheet = sheet_named(cuts, "Stops");
        int64_t off = 0, sections = 0, settings = 0;
        for (size_t b = 0; b < sheet->blocks.count; b++) {
            const sb_table *table = sheet->blocks.items[b].table;
            for (size_t r = 0; table && r < table->rows.count; r++) {
                off += table->rows.items[r][1].amount;
                settings++;
                if (r > 0) /* longest first, so that a mistake can be cut again */
                    assert_true(table->rows.items[r][0].amount <= table->rows.items[r - 1][0].amount);
            }
        }
        for (size_t b = 0; b < way->plan->boards.count; b++)
            for (size_t p = 0; p < way->plan->boards.items[b].parts.count; p++)
                sections += way->plan->boards.items[b].parts.items[p].across.nm == 0
                                ? way->plan->boards.items[b].count
                                : 0;
        assert_int_equal(off, sections);
        assert_true(
            settings >=
            way->plan->counts.stops); /* a length sawn from two stocks is set once, and listed with each */
        sample_close(&s);
    }
}

/* ---- sheets ---- */

/* Fence settings are from the near edge of the piece that is divided, so they are never more than its size. */
static void fences_are_from_the_piece(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "shelf-options");
    const sb_way *way = &s.ways->list.items[0];
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
    const sb_sheet *sheet = sheet_named(cuts, "Sheets");
    assert_non_null(sheet);
    size_t plan = 0;
    for (size_t b = 0; b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        if (!table || strcmp(table->headings[0].text, "Cut") != 0)
            continue;
        const sb_sheet_plan *p = &way->plan->sheets.items[plan++];
        assert_int_equal(table->rows.count, p->cuts.count);
        for (size_t r = 0; r < table->rows.count; r++) {
            const sb_sheet_cut *cut = &p->cuts.items[r];
            if (cut->stage == 0)
                continue;
            int64_t size = cut->across_width ? cut->divides.l.nm : cut->divides.w.nm;
            assert_true(table->rows.items[r][3].amount > 0 && table->rows.items[r][3].amount < size);
        }
    }
    assert_int_equal(plan, way->plan->sheets.count);
    sample_close(&s);
}

/* ---- angles, cautions ---- */

/* A saw's scale counts from a square cut: set 30 and the piece shows 60 against its edge. Common practice, no source. */
static void both_readings_are_named(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece frame\n  recipe mitred-frame\n  set shape regular\n  set sides 6\n");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "mitre 30\xC2\xB0 on the scale (60\xC2\xB0 on the piece)") > 0);
    assert_true(told(cuts, "long points on the same edge") > 0);
    sample_close(&s);
}

/* Past the saw's swing the complement is set against an auxiliary fence. Common practice, no source. */
static void past_the_swing(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece gate\n  recipe ledged-gate\n  set wide 1200 mm\n  set high 800 mm\n");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "auxiliary fence") > 0);
    sample_close(&s);
    sample_make(&s, "piece frame\n  recipe mitred-frame\n");
    assert_int_equal(told(sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]), "auxiliary fence"),
                     0);
    sample_close(&s);
}

static void cautions_come_once(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
        assert_int_equal(told(cuts, "eye and ear protection"), 1);
        assert_int_equal(told(cuts, "local rules"), 1);
        assert_true(sb_document_sound(&s.run, cuts));
        sample_close(&s);
    }
}

/* A part under the shop's limit is flagged: 80 mm blocks under 300 mm. */
static void short_parts_are_flagged(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "SHORT") > 0);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(marks_make_the_parts),
        cmocka_unit_test(stops_add_up),
        cmocka_unit_test(fences_are_from_the_piece),
        cmocka_unit_test(both_readings_are_named),
        cmocka_unit_test(past_the_swing),
        cmocka_unit_test(cautions_come_once),
        cmocka_unit_test(short_parts_are_flagged),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
