/* Drawn ends have their true angle: measured on the shapes of the drawing, not read from its words. */
#include "sample.h"

#include <math.h>

#define RIGHT_ANGLE 90.0

static double degrees_between(sb_point a, sb_point b) {
    return atan2(fabs((double)(b.x.nm - a.x.nm)), fabs((double)(b.y.nm - a.y.nm))) * 180 / acos(-1.0);
}

static const sb_drawing *drawing_named(const sb_document *document, const char *name) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_drawing *drawing = document->sheets.items[s]->blocks.items[b].drawing;
            if (drawing && strcmp(drawing->name, name) == 0)
                return drawing;
        }
    fail_msg("no drawing %s", name);
    return NULL;
}

/* A part is a white shape of four corners: far front, far rear, near rear, near front. */
static size_t parts_of(const sb_drawing *drawing, const sb_shape **parts, size_t most) {
    size_t count = 0;
    for (size_t i = 0; i < drawing->shapes.count && count < most; i++)
        if (drawing->shapes.items[i].fill == SB_FILL_PAPER)
            parts[count++] = &drawing->shapes.items[i];
    return count;
}

static const sb_board_plan *board_numbered(const sb_plan *plan, long number) {
    long first = 1;
    for (size_t i = 0; i < plan->boards.count; i++) {
        if (number < first + plan->boards.items[i].count)
            return &plan->boards.items[i];
        first += plan->boards.items[i].count;
    }
    return NULL;
}

static bool near_to(double a, double b) {
    return fabs(a - b) < 1e-3;
}

static void compare_board(const sb_plan *plan, const sb_drawing *drawing, long number, int *angled) {
    const sb_board_plan *board = board_numbered(plan, number);
    const sb_shape *shapes[64];
    size_t count = parts_of(drawing, shapes, 64);
    assert_int_equal(count, board->parts.count);
    assert_int_equal(drawing->width.nm, plan->problem->supplies.items[board->supply].length.nm);
    for (size_t i = 0; i < count; i++) {
        const sb_placed *part = &board->parts.items[i];
        const sb_need *need = &plan->problem->needs.items[part->need];
        const sb_point *at = shapes[i]->points.items;
        double front = fabs((double)part->front.mitre.udeg / 1e6),
               rear = fabs((double)part->rear.mitre.udeg / 1e6);
        if (need->width.nm && need->width.nm != drawing->height.nm)
            continue; /* strips get their angles later */
        assert_true(near_to(degrees_between(at[0], at[3]), front));
        assert_true(near_to(degrees_between(at[1], at[2]), rear));
        int64_t left = at[0].x.nm < at[3].x.nm ? at[0].x.nm : at[3].x.nm;
        int64_t right = at[1].x.nm > at[2].x.nm ? at[1].x.nm : at[2].x.nm;
        assert_int_equal(left, part->at.nm);
        assert_int_equal(right - left, need->length.nm); /* over the long points */
        if (part->front.mitre.udeg != 0)                 /* plus: the long point lies on the far edge */
            assert_int_equal(at[0].x.nm<at[3].x.nm, part->front.mitre.udeg> 0);
        if (part->rear.mitre.udeg != 0)
            assert_int_equal(at[1].x.nm > at[2].x.nm, part->rear.mitre.udeg > 0);
        *angled += front > 0 || rear > 0;
    }
}

static void boards_have_their_parts_at_true_angles(void **state) {
    int angled = 0;
    (void)state;
    for (size_t n = 0; n < SAMPLES; n++) {
        sample s;
        sample_open(&s, sample_names[n]);
        const sb_way *way = &s.ways->list.items[0];
        const sb_document *document = sb_paper_cuts(&s.run, s.shop, s.job, way);
        long number = 1;
        for (size_t i = 0; i < way->plan->boards.count; number += way->plan->boards.items[i++].count)
            if (way->plan->boards.items[i].parts.count <= 24)
                compare_board(way->plan,
                              drawing_named(document, sb_pool_print(s.run.pool, "board-%ld", number)), number,
                              &angled);
        sample_close(&s);
    }
    assert_true(angled > 20);
}

/* Common practice, no source: scale 30 shows 60 on the piece. The blade is the black shape of four corners. */
static void the_blade_stands_at_what_the_scale_says(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "rack-bench");
    const sb_document *document = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    const sb_drawing *drawing = drawing_named(document, "angle-1");
    const char *scale = NULL, *piece = NULL;
    for (size_t i = 0; i < drawing->labels.count; i++) {
        const sb_label *label = &drawing->labels.items[i];
        scale = strcmp(label->text, "on the scale") == 0 ? label->number : scale;
        piece = strcmp(label->text, "on the piece") == 0 ? label->number : piece;
    }
    assert_non_null(scale);
    assert_non_null(piece);
    assert_true(near_to(atof(scale) + atof(piece), RIGHT_ANGLE));
    int blades = 0;
    for (size_t i = 0; i < drawing->shapes.count; i++) {
        const sb_shape *shape = &drawing->shapes.items[i];
        if (shape->fill != SB_FILL_BLACK || shape->pen != SB_PEN_THIN)
            continue;
        assert_true(near_to(degrees_between(shape->points.items[0], shape->points.items[3]), atof(scale)));
        blades++;
    }
    assert_int_equal(blades, 2);
    sample_close(&s);
}

/* A compound end: two blades lean by its mitre, two by its bevel, and each figure says where the mark is that wants it. */
static void a_compound_end_has_both_in_one_drawing(void **state) {
    sample s;
    (void)state;
    sample_make(&s, "piece planter\n  recipe splayed-planter\n");
    const sb_way *way = &s.ways->list.items[0];
    const sb_part *side = &way->takeoff->parts.items[0];
    const sb_drawing *drawing = drawing_named(sb_paper_cuts(&s.run, s.shop, s.job, way), "angle-1");
    double mitre = fabs((double)side->end1.mitre.udeg / 1e6),
           bevel = fabs((double)side->end1.bevel.udeg / 1e6);
    int swung = 0, tilted = 0, said = 0;
    assert_true(mitre > 1 && bevel > 1);
    for (size_t i = 0; i < drawing->shapes.count; i++) {
        const sb_shape *shape = &drawing->shapes.items[i];
        if (shape->fill != SB_FILL_BLACK || shape->pen != SB_PEN_THIN)
            continue;
        double leans = degrees_between(shape->points.items[0], shape->points.items[3]);
        swung += near_to(leans, mitre);
        tilted += near_to(leans, bevel);
    }
    assert_int_equal(swung, 2);
    assert_int_equal(tilted, 2);
    static const char *const figures[] = {
        "mark on the far edge: swing left", "mark on the near edge: swing right",
        "mark on the lower face: tilt left",
        "mark on the upper face: past this saw, see below"}; /* it tilts to the left only */
    for (size_t i = 0; i < drawing->labels.count; i++)
        for (size_t j = 0; j < 4; j++)
            said += strcmp(drawing->labels.items[i].text, figures[j]) == 0;
    assert_int_equal(said, 4);
    sample_close(&s);
}

/* Parts of a sheet lie where the plan has them, none on another, kerfs in black between them. */
static void sheets_have_their_parts(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "shelf-options");
    const sb_way *way = &s.ways->list.items[0];
    const sb_document *document = sb_paper_cuts(&s.run, s.shop, s.job, way);
    const sb_sheet_plan *plan = &way->plan->sheets.items[0];
    const sb_supply *supply = &way->plan->problem->supplies.items[plan->supply];
    const sb_drawing *drawing = drawing_named(document, "sheet-1");
    const sb_shape *shapes[64];
    assert_int_equal(parts_of(drawing, shapes, 64), plan->parts.count);
    for (size_t i = 0; i < plan->parts.count; i++) {
        const sb_rect at = plan->parts.items[i].at;
        const sb_point *corner = shapes[i]->points.items;
        assert_int_equal(corner[0].x.nm, at.y.nm);
        assert_int_equal(corner[2].x.nm - corner[0].x.nm, at.l.nm);
        assert_int_equal(corner[2].y.nm - corner[0].y.nm, at.w.nm);
        assert_int_equal(drawing->height.nm - corner[2].y.nm, at.x.nm); /* from the lower edge */
    }
    size_t rings = 0;
    for (size_t i = 0; i < drawing->labels.count; i++)
        rings += drawing->labels.items[i].place == SB_LABEL_ON;
    assert_int_equal(rings, plan->cuts.count);
    assert_int_equal(drawing->width.nm, supply->length.nm);
    sample_close(&s);
}

/* A cell of the page that tells what goes back begins with the size, as a label to stick on does. */
static bool goes_back(const sb_document *cuts, const sb_document *labels, const char *size) {
    const sb_sheet *pull = sheet_named(cuts, "Pull");
    const sb_cards *cards = labels->sheets.items[0]->blocks.items[0].cards;
    bool listed = false, labelled = false;
    for (size_t i = 0; i < cards->items.count; i++)
        labelled = labelled || strncmp(cards->items.items[i].number, size, strlen(size)) == 0;
    for (size_t b = 0; b < pull->blocks.count; b++) {
        const sb_table *table = pull->blocks.items[b].table;
        for (size_t r = 0; table && r < table->rows.count; r++)
            listed = listed || strncmp(table->rows.items[r][2].text, size, strlen(size)) == 0;
    }
    return listed && labelled;
}

/* Of sheets: picture, list and label of a leftover agree, though it is no whole number of steps. */
static void what_is_left_has_one_size(void **state) {
    size_t left = 0;
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_way *way = &s.ways->list.items[0];
        const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
        const sb_document *labels = sb_paper_labels(&s.run, s.shop, s.job, way);
        const sb_sheet *sheets = sheet_named(cuts, "Sheets");
        for (size_t b = 0; sheets && b < sheets->blocks.count; b++) {
            const sb_drawing *drawing = sheets->blocks.items[b].drawing;
            for (size_t l = 0; drawing && l < drawing->labels.count; l++) {
                if (strcmp(drawing->labels.items[l].text, "left over") != 0)
                    continue;
                left++;
                if (!goes_back(cuts, labels, drawing->labels.items[l].number))
                    fail_msg("%s: %s", sample_names[i], drawing->labels.items[l].number);
            }
        }
        sample_close(&s);
    }
    assert_true(left > 4);
}

static size_t frames_in(const sb_drawing *drawing) {
    size_t count = 0;
    for (size_t i = 0; i < drawing->labels.count; i++)
        if (drawing->labels.items[i].place == SB_LABEL_CORNER) {
            const sb_label *label = &drawing->labels.items[i];
            assert_int_equal(label->number[0], 'S');
            assert_int_equal(strtol(label->number + 1, NULL, 10), ++count);
            assert_true(label->wide.nm > 0 && label->high.nm > 0);
        }
    return count;
}

/* Every strip that a cut names stands in the drawing by that name. */
static void strips_are_named_where_they_lie(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "shelf-options");
    const sb_way *way = &s.ways->list.items[0];
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
    int64_t first = 1;
    size_t named = 0;
    for (size_t i = 0; i < way->plan->sheets.count; first += way->plan->sheets.items[i++].count) {
        size_t frames =
            frames_in(drawing_named(cuts, sb_pool_print(s.run.pool, "sheet-%lld", (long long)first)));
        named += frames;
    }
    assert_true(named > way->plan->sheets.count);
    assert_true(told(cuts, "crosscut into strips S1 to S3") > 0);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_compound_end_has_both_in_one_drawing),
        cmocka_unit_test(strips_are_named_where_they_lie),
        cmocka_unit_test(boards_have_their_parts_at_true_angles),
        cmocka_unit_test(the_blade_stands_at_what_the_scale_says),
        cmocka_unit_test(sheets_have_their_parts),
        cmocka_unit_test(what_is_left_has_one_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
