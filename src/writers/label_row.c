/* A row of labels: the order of their points is kept, so that no line crosses another. */
#include "writers/label.h"

static const double apart = 5;    /* between labels */
static const double far_off = 60; /* from its point, before a label takes a shorter form */

typedef struct row {
    sb_run *run;
    double width;
    label_sets *labels;
    label_form *forms; /* [count] */
    double *middles;   /* [count] */
    size_t lines;      /* the labels take turns on so many lines */
} row;

static void sort_by_x(label_sets *labels) {
    for (size_t i = 1; i < labels->count; i++)
        for (size_t j = i; j > 0 && labels->items[j].at.x < labels->items[j - 1].at.x; j--) {
            label_set swapped = labels->items[j];
            labels->items[j] = labels->items[j - 1];
            labels->items[j - 1] = swapped;
        }
}

/* ---- near to their points, never on one another -------------------------------------------------------- */

/* Labels that would touch move as one block, as far to either side as is fair to all of them. */
typedef struct cluster {
    double sum; /* of where each would have its block begin */
    size_t count;
} cluster;

static double begins(const cluster *c) {
    return c->sum / (double)c->count;
}

/* Of the labels on one line; false where they do not fit side by side. */
static bool spread_line(row *r, size_t line) {
    cluster *clusters = SB_NEW_ARRAY(r->run->pool, cluster, r->labels->count + 1);
    double *offsets = SB_NEW_ARRAY(r->run->pool, double, r->labels->count + 1);
    size_t count = 0;
    double used = 0;
    for (size_t i = line; i < r->labels->count; i += r->lines) {
        double wide = form_width(&r->forms[i]) + apart;
        offsets[i] = used + wide / 2;
        used += wide;
        clusters[count++] = (cluster){r->labels->items[i].at.x - offsets[i], 1};
        while (count > 1 && begins(&clusters[count - 2]) > begins(&clusters[count - 1])) {
            clusters[count - 2].sum += clusters[count - 1].sum;
            clusters[count - 2].count += clusters[count - 1].count;
            count--;
        }
    }
    double room = r->width + apart - used;
    size_t i = line;
    for (size_t c = 0; c < count; c++) {
        double start = begins(&clusters[c]);
        start = start > room ? room : start;
        start = start < 0 ? 0 : start;
        for (size_t n = 0; n < clusters[c].count; n++, i += r->lines)
            r->middles[i] = start + offsets[i] - apart / 2;
    }
    return room >= 0;
}

static bool spread(row *r) {
    bool fit = true;
    for (size_t line = 0; line < r->lines; line++)
        fit = spread_line(r, line) && fit;
    return fit;
}

static double farthest(const row *r) {
    double most = 0;
    for (size_t i = 0; i < r->labels->count; i++) {
        double off = r->middles[i] - r->labels->items[i].at.x;
        off = off < 0 ? -off : off;
        most = off > most ? off : most;
    }
    return most;
}

/* ---- which form ---------------------------------------------------------------------------------------- */

enum {
    WIDE_TEXT = 110
};

/* Step 0: texts, but long ones by their mark; 1: marks; 2: turned. */
static label_form form_at(const label_set *set, int step, bool *by_mark) {
    bool can = set->mark != NULL;
    *by_mark = can && (step > 0 || (set->text && type_width(set->text) > WIDE_TEXT));
    PangoLayout *words = *by_mark ? set->mark : set->text;
    return step < 2 ? (label_form){words, set->number, true, false}
                    : (label_form){words, set->number, false, true};
}

static void choose_forms(row *r) {
    for (int step = 0; step < 3; step++) {
        for (size_t i = 0; i < r->labels->count; i++)
            r->forms[i] = form_at(&r->labels->items[i], step, &r->labels->items[i].by_mark);
        if (spread(r) && (step == 2 || farthest(r) <= far_off))
            return;
    }
    while (r->lines < r->labels->count && !spread(r))
        r->lines++;
}

/* ---- drawing -------------------------------------------------------------------------------------------- */

static double tallest(const row *r) {
    double most = 0;
    for (size_t i = 0; i < r->labels->count; i++)
        most = form_height(&r->forms[i]) > most ? form_height(&r->forms[i]) : most;
    return most;
}

/* From the point straight to the edge of the shapes, from there to the label. */
static void put_leader(row *r, ink *to, size_t i, double edge, double end) {
    ink_point at = r->labels->items[i].at, bend = {at.x, edge};
    ink_rule(r->run, to, at, bend, 0.5);
    ink_rule(r->run, to, bend, (ink_point){r->middles[i], end}, 0.5);
}

double label_row(sb_run *run, ink *to, label_sets *labels, double width, double y, bool up) {
    if (labels->count == 0)
        return 0;
    sort_by_x(labels);
    row r = {run,
             width,
             labels,
             SB_NEW_ARRAY(run->pool, label_form, labels->count),
             SB_NEW_ARRAY(run->pool, double, labels->count),
             1};
    choose_forms(&r);
    double off = farthest(&r), gap = off < 16 ? 7 : off < 40 ? 12 : 20, line = tallest(&r);
    for (size_t i = 0; i < labels->count; i++) {
        double away = gap + (double)(i % r.lines) * (line + 3);
        put_leader(&r, to, i, y, up ? y - away : y + away);
    }
    for (size_t i = 0; i < labels->count; i++) {
        double away = gap + (double)(i % r.lines) * (line + 3), height = form_height(&r.forms[i]);
        double wide = form_width(&r.forms[i]);
        ink_box box = {r.middles[i] - wide / 2, up ? y - away - height : y + away, wide, height};
        form_put(run, to, &r.forms[i], box, true);
    }
    return gap + (double)r.lines * (line + 3) - 3;
}
