/* Boards as they are cut, seen from above: the far edge is at the top, the trued end at the left. What is hatched falls off,
 * what is black goes into dust, what is dotted is kept. Dashed lines stand around what is bad of a measured board. */
#include "papers/draw.h"

#include <math.h>
#include <stdlib.h>

enum {
    PARTS_A_ROW = 24 /* that many marks stand side by side on a page */
};

/* A stretch of one board in a drawing of its own. */
typedef struct stretch {
    const cuts_paper *p;
    const sb_board_plan *board;
    const sb_supply *supply;
    const cuts_marks *marks;
    sb_drawing *drawing;
    sb_length start, end; /* on the board, from its factory end */
    sb_length width;
    size_t from, to; /* its parts */
    draw_marks *letters;
} stretch;

static sb_length minus(sb_length a, sb_length b) {
    return sb_length_sub(a, b);
}

static sb_length plus(sb_length a, sb_length b) {
    return sb_length_add(a, b);
}

static sb_length halved(sb_length a) {
    return (sb_length){a.nm / 2};
}

static sb_length least(sb_length a, sb_length b) {
    return a.nm < b.nm ? a : b;
}

static sb_length most(sb_length a, sb_length b) {
    return a.nm > b.nm ? a : b;
}

static sb_length on_drawing(const stretch *s, sb_length x) {
    return minus(most(s->start, least(x, s->end)), s->start);
}

static const sb_need *need_of(const stretch *s, const sb_placed *part) {
    return &s->p->problem->needs.items[part->need];
}

/* ---- one part ------------------------------------------------------------------------------------------- */

/* How far an end falls back from its long point at the far and the near edge, of the upper face and of all of it. */
typedef struct end_shape {
    sb_length far, near, upper;
} end_shape;

static end_shape shape_of(const stretch *s, const sb_placed *part, sb_cut_end end) {
    const sb_need *need = need_of(s, part);
    sb_length width = cuts_is_strip(s->p, part->need) ? need->width : s->width;
    sb_length back = sb_mitre_run(width, end.mitre);
    double mitre = (double)end.mitre.udeg * 3.14159265358979323846 / 180e6;
    sb_length thick = s->p->problem->stock.items[need->stock].thickness;
    double upper = (double)sb_mitre_run(thick, end.bevel).nm / cos(mitre);
    return (end_shape){.far = {end.mitre.udeg < 0 ? back.nm : 0},
                       .near = {end.mitre.udeg > 0 ? back.nm : 0},
                       .upper = {end.bevel.udeg > 0 ? llround(upper) : 0}};
}

typedef struct part_shape {
    sb_length front, rear, far_edge, near_edge; /* long points; edges across the board */
    end_shape at_front, at_rear;
} part_shape;

static part_shape outline_of(const stretch *s, const sb_placed *part) {
    const sb_need *need = need_of(s, part);
    bool strip = cuts_is_strip(s->p, part->need);
    part_shape o = {.front = on_drawing(s, part->at),
                    .rear = on_drawing(s, plus(part->at, need->length)),
                    .far_edge = strip ? part->across : (sb_length){0}};
    o.near_edge = plus(o.far_edge, strip ? need->width : s->width);
    o.at_front = shape_of(s, part, part->front);
    o.at_rear = shape_of(s, part, part->rear);
    return o;
}

/* Four corners along two lines that lean like the ends: from the front's to the rear's, moved. */
static void put_corners(const stretch *s, const part_shape *o, sb_length front_far, sb_length front_near,
                        sb_length rear_far, sb_length rear_near, sb_fill fill, sb_pen pen) {
    sb_run *run = s->p->run;
    sb_shape *shape = sb_shape_add(run, s->drawing, fill, pen, true);
    sb_shape_point(run, shape, front_far, o->far_edge);
    sb_shape_point(run, shape, rear_far, o->far_edge);
    sb_shape_point(run, shape, rear_near, o->near_edge);
    sb_shape_point(run, shape, front_near, o->near_edge);
}

/* The blade's way along both ends of a part; where neighbours share a cut it is drawn twice in one place. */
static void put_kerfs(const stretch *s, const sb_placed *part) {
    part_shape o = outline_of(s, part);
    sb_length front = sb_kerf_along(s->p->problem->rules.kerf, part->front);
    sb_length rear = sb_kerf_along(s->p->problem->rules.kerf, part->rear);
    sb_length far = plus(o.front, o.at_front.far), near = plus(o.front, o.at_front.near);
    if (part->at.nm > 0)
        put_corners(s, &o, most(minus(far, front), (sb_length){0}), most(minus(near, front), (sb_length){0}),
                    far, near, SB_FILL_BLACK, SB_PEN_THIN);
    far = minus(o.rear, o.at_rear.far);
    near = minus(o.rear, o.at_rear.near);
    sb_length room = minus(s->end, s->start);
    if (o.rear.nm < room.nm)
        put_corners(s, &o, far, near, least(plus(far, rear), room), least(plus(near, rear), room),
                    SB_FILL_BLACK, SB_PEN_THIN);
}

/* Where the upper face ends behind the lower one. */
static void put_bevel(const stretch *s, const part_shape *o) {
    sb_run *run = s->p->run;
    sb_length front = plus(o->front, o->at_front.upper), rear = minus(o->rear, o->at_rear.upper);
    if (o->at_front.upper.nm > 0)
        sb_shape_line(run, s->drawing, SB_PEN_THIN, (sb_point){plus(front, o->at_front.far), o->far_edge},
                      (sb_point){plus(front, o->at_front.near), o->near_edge});
    if (o->at_rear.upper.nm > 0)
        sb_shape_line(run, s->drawing, SB_PEN_THIN, (sb_point){minus(rear, o->at_rear.far), o->far_edge},
                      (sb_point){minus(rear, o->at_rear.near), o->near_edge});
}

static void name_part(const stretch *s, const sb_placed *part, const part_shape *o) {
    sb_length front = plus(o->front, most(o->at_front.far, o->at_front.near));
    sb_length rear = minus(o->rear, most(o->at_rear.far, o->at_rear.near));
    const char *name = cuts_name(s->p, part->need);
    sb_label label = {.place = SB_LABEL_INSIDE,
                      .at = {halved(plus(o->front, o->rear)), halved(plus(o->far_edge, o->near_edge))},
                      .wide = most(minus(rear, front), (sb_length){0}),
                      .high = minus(o->near_edge, o->far_edge),
                      .text = name,
                      .number = sb_write_length(s->p->run, need_of(s, part)->length, s->p->style),
                      .mark = draw_mark(s->p->run, s->letters, name)};
    sb_label_add(s->p->run, s->drawing, label);
}

/* The rip saw's way beside a strip, and what stays there where it is kept. */
static void put_beside(const stretch *s, size_t index, const part_shape *o) {
    sb_length long_way = minus(o->rear, o->front), rest = minus(s->width, o->near_edge);
    sb_length kept = cuts_strip_left(s->p, s->board, index);
    if (rest.nm <= 0)
        return;
    sb_shape_rect(s->p->run, s->drawing, SB_FILL_BLACK, SB_PEN_THIN, (sb_point){o->front, o->near_edge},
                  long_way, least(s->p->problem->rules.rip_kerf, rest));
    if (!cuts_strip_kept(s->p, s->board, index))
        return;
    sb_shape_rect(s->p->run, s->drawing, SB_FILL_DOTS, SB_PEN_LINE,
                  (sb_point){o->front, minus(s->width, kept)}, long_way, kept);
    sb_label_add(s->p->run, s->drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = {halved(plus(o->front, o->rear)), minus(s->width, halved(kept))},
                            .wide = long_way,
                            .high = kept,
                            .text = "keep",
                            .number = cuts_face(s->p, long_way, kept),
                            .mark = ""});
}

static void put_part(const stretch *s, size_t index) {
    const sb_placed *part = &s->board->parts.items[index];
    part_shape o = outline_of(s, part);
    if (cuts_is_strip(s->p, part->need))
        put_beside(s, index, &o);
    put_corners(s, &o, plus(o.front, o.at_front.far), plus(o.front, o.at_front.near),
                minus(o.rear, o.at_rear.far), minus(o.rear, o.at_rear.near), SB_FILL_PAPER, SB_PEN_LINE);
    put_bevel(s, &o);
    name_part(s, part, &o);
}

/* ---- marks ---------------------------------------------------------------------------------------------- */

static const char *mark_words(const stretch *s, sb_length mark) {
    sb_style style = *s->p->style;
    style.step = s->marks->step;
    return sb_write_length(s->p->run, mark, &style);
}

static const sb_cut_end square;

/* The line leads to the long point, on whichever edge that is. */
static void put_mark(const stretch *s, sb_length x, sb_cut_end end, sb_length mark) {
    bool is_square = cuts_end_square(end);
    sb_length edge = {end.mitre.udeg > 0 ? 0 : s->width.nm};
    sb_label_add(s->p->run, s->drawing,
                 (sb_label){.place = SB_LABEL_BELOW,
                            .at = {on_drawing(s, x), edge},
                            .text = is_square ? "" : cuts_setting(s->p->run, end, s->p->style),
                            .number = mark_words(s, mark),
                            .mark = ""});
}

/* Sections that are ripped are cut square. */
static sb_cut_end sawn(const stretch *s, const sb_placed *part, sb_cut_end end) {
    if (cuts_is_strip(s->p, part->need))
        return (sb_cut_end){{0}, {0}};
    return end;
}

static void put_marks(const stretch *s) {
    if (!s->marks->fit)
        return;
    if (s->from == 0)
        put_mark(s, s->supply->trim1, sawn(s, s->board->parts.items, s->board->parts.items[0].front),
                 (sb_length){0});
    for (size_t i = s->from; i < s->to; i++) {
        const sb_placed *part = &s->board->parts.items[i];
        if (cuts_beside(s->p, s->board, i))
            continue;
        if (s->marks->cut[i].nm >= 0)
            put_mark(s, minus(part->at, s->p->problem->rules.kerf), square, s->marks->cut[i]);
        if (!cuts_shares(s->p, s->board, i))
            put_mark(s, part->at, sawn(s, part, part->front), s->marks->from[i]);
        put_mark(s, plus(part->at, need_of(s, part)->length), sawn(s, part, part->rear), s->marks->to[i]);
    }
}

/* ---- measured boards ------------------------------------------------------------------------------------ */

/* The blade's way along one end of a leftover that splits bound, and its mark. */
static void put_leftover_cut(const stretch *s, sb_length x, sb_length mark) {
    if (mark.nm < 0)
        return;
    sb_shape_rect(s->p->run, s->drawing, SB_FILL_BLACK, SB_PEN_THIN, (sb_point){on_drawing(s, x), {0}},
                  s->p->problem->rules.kerf, s->width);
    if (s->marks->fit)
        put_mark(s, x, square, mark);
}

static void put_leftover_cuts(const stretch *s) {
    if (s->board->leftover_at.nm == 0 || s->to < s->board->parts.count)
        return;
    cuts_rest rest = cuts_rest_of(s->p, s->board, s->marks);
    put_leftover_cut(s, minus(s->board->leftover_at, s->p->problem->rules.kerf), rest.before);
    put_leftover_cut(s, plus(s->board->leftover_at, s->board->leftover), rest.behind);
}

static void put_bad(const stretch *s) {
    for (size_t i = 0; i < s->supply->bad.count; i++) {
        const sb_stretch *bad = &s->supply->bad.items[i];
        sb_length from = on_drawing(s, bad->from), to = on_drawing(s, bad->to);
        if (to.nm <= from.nm)
            continue;
        sb_shape_rect(s->p->run, s->drawing, SB_FILL_NONE, SB_PEN_DASHED, (sb_point){from, {0}},
                      minus(to, from), s->width);
        sb_label_add(s->p->run, s->drawing,
                     (sb_label){.place = SB_LABEL_ABOVE,
                                .at = {halved(plus(from, to)), {0}},
                                .text = bad->split ? "split" : "knot",
                                .number = "",
                                .mark = ""});
    }
}

/* ---- the rest ------------------------------------------------------------------------------------------- */

/* Behind the last part, or where the leftover of a measured board lies; the far trim stays hatched. */
static void put_rest(const stretch *s) {
    const sb_placed *last = &s->board->parts.items[s->board->parts.count - 1];
    sb_length cut = plus(plus(last->at, need_of(s, last)->length), s->p->problem->rules.kerf);
    bool kept = s->board->leftover.nm > 0, bounded = s->board->leftover_at.nm > 0;
    sb_length from = on_drawing(s, bounded ? s->board->leftover_at : cut);
    sb_length to =
        on_drawing(s, bounded ? plus(s->board->leftover_at, s->board->leftover) : s->supply->length);
    sb_length wide = minus(to, from);
    if (s->to < s->board->parts.count || s->marks->rest.nm <= 0 || wide.nm <= 0)
        return;
    if (kept)
        sb_shape_rect(s->p->run, s->drawing, SB_FILL_DOTS, SB_PEN_LINE, (sb_point){from, {0}}, wide,
                      s->width);
    else if (wide.nm < minus(s->end, s->start).nm / 20)
        return; /* hatched is said enough */
    sb_label_add(s->p->run, s->drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = {halved(plus(from, to)), halved(s->width)},
                            .wide = wide,
                            .high = s->width,
                            .text = kept ? "left over" : "offcut",
                            .number = sb_write_length(s->p->run, s->marks->rest, s->p->style),
                            .mark = ""});
}

/* ---- a board -------------------------------------------------------------------------------------------- */

static const char *title_of(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks,
                            int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const char *label =
        *supply->label
            ? sb_pool_print(p->run->pool, supply->leftover ? ", rack piece %s" : ", %s", supply->label)
            : "";
    return sb_pool_print(p->run->pool, "%s %s: %s, %s%s; %s", board->count == 1 ? "Board" : "Boards",
                         cuts_number(p, first, board->count), cuts_stock_title(p, supply->stock),
                         cuts_size(p, supply), label, cuts_truing(p, supply, marks));
}

static void draw_stretch(stretch *s, sb_sheet *sheet, const char *title, const char *name) {
    s->drawing = sb_drawing_add(s->p->run, sheet, title, name, minus(s->end, s->start), s->width);
    s->drawing->scale_most = 3;
    sb_shape_rect(s->p->run, s->drawing, SB_FILL_HATCH, SB_PEN_LINE, (sb_point){{0}, {0}}, s->drawing->width,
                  s->width);
    put_rest(s);
    for (size_t i = s->from; i < s->to; i++)
        put_kerfs(s, &s->board->parts.items[i]);
    for (size_t i = s->from; i < s->to; i++)
        put_part(s, i);
    put_leftover_cuts(s);
    put_marks(s);
    put_bad(s);
}

/* A board whose width nobody told is drawn as wide as a board may be. */
static sb_length width_of(const cuts_paper *p, const sb_supply *supply) {
    sb_length width = p->problem->stock.items[supply->stock].width;
    return width.nm > 0 ? width : (sb_length){supply->length.nm / 30};
}

/* A stretch ends before a section, never within one. */
static size_t stretch_end(const cuts_paper *p, const sb_board_plan *board, size_t from, size_t rows) {
    size_t left = board->parts.count - from, end = from + (left + rows - 1) / rows;
    while (end < board->parts.count && cuts_beside(p, board, end))
        end++;
    return end;
}

void draw_board(const cuts_paper *p, sb_sheet *sheet, const sb_board_plan *board, int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    cuts_marks marks = cuts_marks_of(p, board);
    draw_marks letters = {0};
    stretch s = {.p = p, .board = board, .supply = supply, .marks = &marks, .letters = &letters};
    s.width = width_of(p, supply);
    size_t rows = (board->parts.count + PARTS_A_ROW - 1) / PARTS_A_ROW;
    const char *title = title_of(p, board, &marks, first);
    for (size_t row = 0; s.to < board->parts.count; row++) {
        s.from = s.to;
        s.to = stretch_end(p, board, s.from, rows - row);
        s.start = s.end;
        const sb_placed *last = &board->parts.items[s.to - 1];
        s.end = s.to == board->parts.count
                    ? supply->length
                    : plus(plus(last->at, need_of(&s, last)->length), p->problem->rules.kerf);
        draw_stretch(&s, sheet, row == 0 ? title : sb_pool_print(p->run->pool, "%s, further on", title),
                     sb_pool_print(p->run->pool, row == 0 ? "board-%lld" : "board-%lld-%zu", (long long)first,
                                   row + 1));
    }
}
