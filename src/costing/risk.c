/* The cost when what is told as a range is drawn from it.
 *
 * The cost is what is sure and a sum of products: quantity x time x rate for work, quantity x price for material. A factor is a number or
 * an input; inputs of one source share the number of the generator that each turns into its own value. */
#include "costing/inside.h"

#include <stdlib.h>

static const size_t SURE = (size_t)-1;
static const int64_t DRAWS = 20000;
static const uint64_t SEED = 1;
static const double MS_PER_HOUR = 3600000;

/* amount x each x rate, in thousandths of the minor unit; where an input is named it stands for the number. */
typedef struct product {
    size_t amount_input, each_input;
    double amount, each, rate;
} product;

typedef struct source {
    const void *of;
    size_t offset;
} source;

typedef struct shape { /* a beta distribution, by where the likely value lies */
    double at;
    const sb_beta *beta;
} shape;

typedef struct weighing {
    sb_run *run;
    const sb_estimate *e;
    sb_risk *risk;
    double sure; /* thousandths of the minor unit */
    SB_LIST(product) products;
    SB_LIST(source) sources;
    SB_LIST(shape) shapes;
    const sb_beta **betas; /* by input */
    double *values;        /* by input, in one draw */
    double *units;         /* by source, in one draw */
} weighing;

/* ---- inputs --------------------------------------------------------------------------------------------------------- */

static size_t source_of(weighing *w, const void *of, size_t offset) {
    for (size_t i = 0; i < w->sources.count; i++)
        if (w->sources.items[i].of == of && w->sources.items[i].offset == offset)
            return i;
    SB_PUSH(w->run->pool, w->sources, ((source){of, offset}));
    return w->sources.count - 1;
}

static size_t add_input(weighing *w, sb_risk_input input, const void *of, size_t offset) {
    input.source = source_of(w, of, offset);
    SB_PUSH(w->run->pool, w->risk->inputs, input);
    return w->risk->inputs.count - 1;
}

static size_t time_input(weighing *w, const sb_operation *operation) {
    if (!operation->ranged)
        return SURE;
    for (size_t i = 0; i < w->risk->inputs.count; i++)
        if (w->risk->inputs.items[i].kind == SB_RISK_TIME && w->risk->inputs.items[i].operation == operation)
            return i;
    sb_risk_input input = {
        .kind = SB_RISK_TIME, .what = operation->title, .operation = operation, .place = operation->place};
    input.least = operation->least.ms, input.likely = operation->time.ms, input.most = operation->most.ms;
    return add_input(w, input, operation, 0);
}

/* A recipe line is one guess, whichever pieces it is in. */
static size_t quantity_input(weighing *w, const sb_work *work) {
    if (!work->ranged)
        return SURE;
    sb_risk_input input = {
        .kind = SB_RISK_QUANTITY, .what = work->text, .operation = work->operation, .place = work->place};
    input.least = work->least_milli, input.likely = work->quantity_milli, input.most = work->most_milli;
    return add_input(w, input, work->place.source, work->place.offset + 1);
}

/* All lengths and sizes of a stock get dearer together. */
static size_t price_input(weighing *w, const sb_material_line *line) {
    const sb_offer *offer = line->order ? line->order->offer : NULL;
    if (!offer || !offer->ranged)
        return SURE;
    sb_risk_input input = {.kind = SB_RISK_PRICE, .what = line->what, .place = offer->place};
    input.least = offer->least.milli, input.likely = offer->each.milli, input.most = offer->most.milli;
    return add_input(w, input, line->stock, 0);
}

/* ---- products ------------------------------------------------------------------------------------------------------- */

static double worth(const product *p, double amount, double each) {
    return amount * each * p->rate;
}

static double likely_worth(const product *p) {
    return worth(p, p->amount, p->each);
}

static void add_product(weighing *w, product p) {
    if (p.amount_input == SURE && p.each_input == SURE)
        return;
    SB_PUSH(w->run->pool, w->products, p);
    w->sure -= likely_worth(&p);
}

/* Of an hour, with the overhead that goes with it, in thousandths of the minor unit. */
static double hour_of(const weighing *w, const sb_worker *worker) {
    const sb_settings *s = &w->e->shop->settings;
    double hour = worker ? (double)worker->hour.minor : 0;
    return 1000 * (s->overhead_hour.minor != 0 ? hour + (double)s->overhead_hour.minor
                                               : hour * (1 + (double)s->overhead_labour.ppm / 1e6));
}

/* Thousandths of a unit times ms of one. */
static void add_work(weighing *w, const sb_operation *operation, size_t quantity, int64_t milli,
                     sb_share learned) {
    product p = {.amount_input = quantity, .each_input = time_input(w, operation)};
    p.amount = (double)milli;
    p.each = (double)operation->time.ms;
    p.rate = hour_of(w, operation->worker) / MS_PER_HOUR / 1000 * ((double)learned.ppm / 1e6);
    add_product(w, p);
}

static void add_works(weighing *w) {
    const sb_takeoff *t = w->e->takeoff;
    for (size_t i = 0; i < t->works.count; i++) {
        const sb_work *work = &t->works.items[i];
        sb_share learned = {1000000};
        if (work->piece != SB_BATCH)
            learned = sb_learned(work->operation->learning, t->pieces.items[work->piece].count);
        add_work(w, work->operation, quantity_input(w, work), work->quantity_milli, learned);
    }
    for (size_t i = 0; i < w->e->labour.count; i++)
        if (w->e->labour.items[i].from_plan)
            add_work(w, w->e->labour.items[i].operation, SURE, w->e->labour.items[i].quantity_milli,
                     (sb_share){1000000});
}

static void add_materials(weighing *w) {
    for (size_t i = 0; i < w->e->materials.count; i++) {
        const sb_material_line *line = &w->e->materials.items[i];
        product p = {.amount_input = SURE, .each_input = price_input(w, line), .rate = 1};
        p.amount = (double)line->quantity_milli / 1000;
        p.each = (double)line->each.milli;
        add_product(w, p);
    }
}

/* ---- draws ---------------------------------------------------------------------------------------------------------- */

static const sb_beta *beta_of(weighing *w, const sb_risk_input *input) {
    double at = (double)(input->likely - input->least) / (double)(input->most - input->least);
    for (size_t i = 0; i < w->shapes.count; i++)
        if (w->shapes.items[i].at == at)
            return w->shapes.items[i].beta;
    shape new = {at, sb_beta_of(w->run, input->least, input->likely, input->most)};
    SB_PUSH(w->run->pool, w->shapes, new);
    return new.beta;
}

static double cost_now(const weighing *w) {
    double cost = w->sure;
    for (size_t i = 0; i < w->products.count; i++) {
        const product *p = &w->products.items[i];
        cost += worth(p, p->amount_input == SURE ? p->amount : w->values[p->amount_input],
                      p->each_input == SURE ? p->each : w->values[p->each_input]);
    }
    return cost;
}

static sb_money in_money(double milli) {
    double minor = milli / 1000;
    if (!(minor < 9e18 && minor > -9e18))
        return (sb_money){SB_BAD};
    return (sb_money){(int64_t)(minor + (minor < 0 ? -0.5 : 0.5))};
}

static void prepare(weighing *w) {
    size_t count = w->risk->inputs.count;
    w->betas = SB_NEW_ARRAY(w->run->pool, const sb_beta *, count + 1);
    w->values = SB_NEW_ARRAY(w->run->pool, double, count + 1);
    w->units = SB_NEW_ARRAY(w->run->pool, double, w->sources.count + 1);
    for (size_t i = 0; i < count; i++)
        w->betas[i] = beta_of(w, &w->risk->inputs.items[i]);
}

static void draw(weighing *w, sb_generator *g) {
    for (size_t i = 0; i < w->sources.count; i++)
        w->units[i] = sb_generator_unit(g);
    for (size_t i = 0; i < w->risk->inputs.count; i++) {
        const sb_risk_input *input = &w->risk->inputs.items[i];
        w->values[i] = (double)input->least + (double)(input->most - input->least) *
                                                  sb_beta_at(w->betas[i], w->units[input->source]);
    }
}

static sb_money *costs_of(weighing *w, int64_t draws) {
    sb_money *costs = SB_NEW_ARRAY(w->run->pool, sb_money, (size_t)draws + 1);
    sb_generator g = sb_generator_of(SEED);
    for (int64_t i = 0; i < draws; i++) {
        draw(w, &g);
        costs[i] = in_money(cost_now(w));
    }
    return costs;
}

/* ---- what they tell ----------------------------------------------------------------------------------------------- */

static int by_amount(const void *a, const void *b) {
    const sb_money *one = a, *other = b;
    return (one->minor > other->minor) - (one->minor < other->minor);
}

/* The least cost that so many of the sorted draws do not pass. */
static sb_money at_share(const sb_money *costs, int64_t draws, int64_t ppm) {
    int64_t rank = sb_mul_div_up(draws, ppm, 1000000);
    return costs[rank > 0 ? rank - 1 : 0];
}

static sb_money mean_of(const sb_money *costs, int64_t draws) {
    int64_t sum = 0;
    for (int64_t i = 0; i < draws; i++)
        sum = sb_add(sum, costs[i].minor);
    return (sb_money){sb_mul_div(sum, 1, draws)};
}

static sb_share losing(const weighing *w, const sb_money *costs, int64_t draws) {
    int64_t count = 0;
    for (int64_t i = 0; i < draws; i++)
        count += sb_money_add(costs[i], w->e->delivery).minor > w->e->net.minor;
    return (sb_share){sb_mul_div(count, 1000000, draws)};
}

static sb_share confidence_of(const sb_estimate *e) {
    if (e->job->confidence.given)
        return e->job->confidence.share;
    sb_share shop = e->shop->settings.confidence;
    return shop.ppm > 0 ? shop : (sb_share){900000};
}

/* The cost with one input at an end of its range and all others as they are likely. */
static void find_ends(weighing *w) {
    size_t count = w->risk->inputs.count;
    for (size_t i = 0; i < count; i++)
        w->values[i] = (double)w->risk->inputs.items[i].likely;
    double likely = cost_now(w);
    for (size_t i = 0; i < count; i++) {
        sb_risk_input *input = &w->risk->inputs.items[i];
        w->values[i] = (double)input->least;
        input->low = in_money(cost_now(w) - likely);
        w->values[i] = (double)input->most;
        input->high = in_money(cost_now(w) - likely);
        w->values[i] = (double)input->likely;
    }
}

static weighing weighing_of(sb_run *run, const sb_estimate *e) {
    weighing w = {
        .run = run, .e = e, .risk = SB_NEW(run->pool, sb_risk), .sure = 1000 * (double)e->cost.minor};
    *w.risk = (sb_risk){.draws = DRAWS, .confidence = confidence_of(e)};
    add_materials(&w);
    add_works(&w);
    w.risk->sources = w.sources.count;
    prepare(&w);
    return w;
}

const sb_money *sb_risk_costs(sb_run *run, const sb_estimate *estimate, int64_t draws) {
    weighing w = weighing_of(run, estimate);
    return costs_of(&w, draws);
}

const sb_risk *sb_risk_of(sb_run *run, const sb_estimate *estimate) {
    weighing w = weighing_of(run, estimate);
    sb_risk *risk = w.risk;
    if (risk->inputs.count == 0)
        return NULL;
    find_ends(&w);
    sb_money *costs = costs_of(&w, DRAWS);
    risk->mean = mean_of(costs, DRAWS);
    risk->loses = losing(&w, costs, DRAWS);
    qsort(costs, (size_t)DRAWS, sizeof *costs, by_amount);
    risk->cost10 = at_share(costs, DRAWS, 100000);
    risk->cost50 = at_share(costs, DRAWS, 500000);
    risk->cost80 = at_share(costs, DRAWS, 800000);
    risk->cost90 = at_share(costs, DRAWS, 900000);
    risk->price = sb_money_add(at_share(costs, DRAWS, risk->confidence.ppm), estimate->delivery);
    return risk;
}
