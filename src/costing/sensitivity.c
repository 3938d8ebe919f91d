/* What moves the price: the whole price build-up once more with one figure a tenth larger, and a tenth smaller. */
#include "costing/inside.h"

#include <stdlib.h>

enum {
    TOLD = 10
};

typedef struct trying {
    sb_run *run;  /* keeps the result */
    sb_run aside; /* what a change has to tell is none of the job's concern */
    const sb_estimate *e;
    const sb_cutlist *cutlist;
    sb_sensitivity *result;
    SB_LIST(const void *) tried;
} trying;

/* Net, before price points and minimum. */
static sb_money price_of(const sb_estimate *e) {
    return sb_money_add(sb_money_sub(e->price, e->discount), e->delivery);
}

static sb_money moved(trying *t, costing_figure figure, const void *of, int64_t ppm) {
    const sb_estimate *e =
        costing_estimate_with(&t->aside, t->e, t->cutlist, (costing_change){figure, of, ppm});
    return sb_money_sub(price_of(e), t->result->price);
}

static void try(trying *t, costing_figure figure, const void *of, const char *what, sb_place place) {
    sb_mover mover = {.what = what, .place = place};
    mover.more = moved(t, figure, of, 1100000);
    mover.less = moved(t, figure, of, 900000);
    if (mover.more.minor != 0 || mover.less.minor != 0)
        SB_PUSH(t->run->pool, t->result->movers, mover);
}

static bool first_time(trying *t, const void *what) {
    for (size_t i = 0; i < t->tried.count; i++)
        if (t->tried.items[i] == what)
            return false;
    SB_PUSH(t->run->pool, t->tried, what);
    return true;
}

static const char *of(const trying *t, const char *what, const char *name) {
    return sb_pool_print(t->run->pool, "%s %s", what, name);
}

/* ---- figures ---------------------------------------------------------------------------------------------------------- */

static void try_labour(trying *t) {
    for (size_t i = 0; i < t->e->labour.count; i++) {
        const sb_operation *operation = t->e->labour.items[i].operation;
        const sb_worker *worker = operation->worker;
        if (first_time(t, operation))
            try(t, FIGURE_TIME, operation, of(t, "Time of", operation->title), operation->place);
        if (worker && first_time(t, worker))
            try(t, FIGURE_HOUR, worker, of(t, "Hourly rate of", worker->id), worker->place);
    }
}

static void try_materials(trying *t) {
    for (size_t i = 0; i < t->e->materials.count; i++) {
        const sb_material_line *line = &t->e->materials.items[i];
        if (line->stock && first_time(t, line->stock))
            try(t, FIGURE_STOCK, line->stock, of(t, "Price of", line->stock->title), line->place);
    }
    for (size_t i = 0; i < t->e->job->extras.count; i++) {
        const sb_job_amount *extra = &t->e->job->extras.items[i];
        try(t, FIGURE_EXTRA, extra, of(t, "Extra:", extra->text ? extra->text : ""), extra->place);
    }
}

static sb_place either(const trying *t, const sb_job_share *own, const char *keyword) {
    return own->given ? own->place : sb_shop_setting(t->e->shop, keyword);
}

static void try_shares(trying *t) {
    const sb_job *job = t->e->job;
    bool margin = t->e->method == SB_MARGIN_ON_PRICE;
    try(t, FIGURE_OVERHEAD, NULL, "Overhead", sb_shop_setting(t->e->shop, "overhead"));
    try(t, FIGURE_CONTINGENCY, NULL, "Contingency", either(t, &job->contingency, "contingency"));
    try(t, FIGURE_PROFIT, NULL, margin ? "Margin" : "Markup",
        margin ? either(t, &job->margin, "margin") : either(t, &job->markup, "markup"));
    try(t, FIGURE_DISCOUNT, NULL, "Discount", job->discount.place);
    try(t, FIGURE_DELIVERY, NULL, "Delivery", job->delivery.place);
}

/* ---- the largest ---------------------------------------------------------------------------------------------------------- */

static int64_t size_of(sb_money move) {
    return move.minor == SB_BAD ? 0 : move.minor < 0 ? -move.minor : move.minor;
}

static int64_t reach(const sb_mover *mover) {
    int64_t more = size_of(mover->more), less = size_of(mover->less);
    return more > less ? more : less;
}

/* Insertion keeps the order of those alike. */
static void sort(sb_sensitivity *s) {
    for (size_t i = 1; i < s->movers.count; i++) {
        sb_mover mover = s->movers.items[i];
        size_t j = i;
        for (; j > 0 && reach(&s->movers.items[j - 1]) < reach(&mover); j--)
            s->movers.items[j] = s->movers.items[j - 1];
        s->movers.items[j] = mover;
    }
}

const sb_sensitivity *sb_sensitivity_of(sb_run *run, const sb_estimate *estimate, const sb_cutlist *cutlist) {
    trying t = {.run = run, .aside = sb_run_aside(run), .e = estimate, .cutlist = cutlist};
    t.result = SB_NEW(run->pool, sb_sensitivity);
    *t.result = (sb_sensitivity){.price = price_of(estimate)};
    try_labour(&t);
    try_materials(&t);
    try_shares(&t);
    sort(t.result);
    if (t.result->movers.count > TOLD)
        t.result->movers.count = TOLD;
    return t.result;
}
