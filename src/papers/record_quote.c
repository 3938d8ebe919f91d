/* A job's prices for machines. The keys are described in README.md, and stay; money is a decimal string, lengths are in mm,
 * shares in per cent, times in hours. */
#include "papers/figures.h"
#include "papers/record_risk.h"

typedef struct writer {
    sb_run *run;
    const sb_shop *shop;
    int digits;
} writer;

static void put_money(const writer *w, sb_record *in, const char *key, sb_money amount) {
    sb_put_money(w->run, in, key, amount, w->digits);
}

static void put_percent(const writer *w, sb_record *in, const char *key, sb_share share) {
    sb_put_decimal(w->run, in, key, share.ppm, 4);
}

/* In hours, to the tenth of a thousandth. */
static void put_hours(const writer *w, sb_record *in, const char *key, sb_duration time) {
    sb_put_decimal(w->run, in, key, sb_mul_div(time.ms, 1, 360), 4);
}

static void put_mass(const writer *w, sb_record *in, const char *key, sb_mass mass) {
    if (mass.mg > 0)
        sb_put_decimal(w->run, in, key, sb_mul_div(mass.mg, 1, 1000), 3);
    else
        sb_put_null(w->run, in, key);
}

static void put_optional(const writer *w, sb_record *in, const char *key, const char *text) {
    if (text)
        sb_put_text(w->run, in, key, text);
    else
        sb_put_null(w->run, in, key);
}

/* ---- pieces ---- */

static void put_piece(const writer *w, sb_record *in, const sb_estimate *e, const sb_price_line *line) {
    const sb_takeoff_piece *piece = &e->takeoff->pieces.items[line->piece];
    sb_record *record = sb_put_object(w->run, in, NULL);
    put_optional(w, record, "name", piece->source ? piece->source->name : NULL);
    sb_put_text(w->run, record, "title", piece->title);
    sb_put_text(w->run, record, "size", piece->size_text);
    sb_put_integer(w->run, record, "count", line->count);
    put_money(w, record, "material", line->material);
    put_money(w, record, "labour", line->labour);
    put_money(w, record, "overhead", line->overhead);
    put_money(w, record, "cost", line->cost);
    put_money(w, record, "contingency", line->contingency);
    put_money(w, record, "base", line->base);
    put_money(w, record, "price", line->price);
    put_money(w, record, "discount", line->discount);
    put_money(w, record, "unit", line->unit);
    put_money(w, record, "line", line->line);
    put_money(w, record, "net", line->net);
    put_optional(w, record, "tax", line->tax ? line->tax->id : NULL);
    put_hours(w, record, "hours", line->time);
    put_mass(w, record, "mass_kg", piece->mass);
}

static void put_pieces(const writer *w, sb_record *in, const sb_estimate *e) {
    sb_record *pieces = sb_put_array(w->run, in, "pieces");
    for (size_t i = 0; i < e->pieces.count; i++)
        put_piece(w, pieces, e, &e->pieces.items[i]);
}

/* ---- money ---- */

static void put_steps(const writer *w, sb_record *in, const sb_estimate *e) {
    put_money(w, in, "material", e->material_total);
    put_money(w, in, "labour", e->labour_total);
    put_money(w, in, "overhead", e->overhead);
    put_money(w, in, "cost", e->cost);
    put_money(w, in, "contingency", e->contingency);
    put_money(w, in, "base", e->base);
    put_money(w, in, "price", e->price);
    put_money(w, in, "discount", e->discount);
    put_money(w, in, "rounding", e->rounding);
    put_money(w, in, "pieces_net", e->pieces_net);
    put_money(w, in, "supplement", e->supplement);
    put_money(w, in, "delivery", e->delivery);
    put_money(w, in, "net", e->net);
}

static void put_taxes(const writer *w, sb_record *in, const sb_estimate *e) {
    sb_record *taxes = sb_put_array(w->run, in, "tax");
    for (size_t i = 0; i < e->taxes.count; i++) {
        const sb_tax_line *line = &e->taxes.items[i];
        sb_record *record = sb_put_object(w->run, taxes, NULL);
        sb_put_text(w->run, record, "id", line->tax->id);
        sb_put_text(w->run, record, "title", line->tax->title);
        put_percent(w, record, "rate_percent", line->tax->rate);
        put_money(w, record, "base", line->base);
        put_money(w, record, "amount", line->amount);
    }
}

static void put_stages(const writer *w, sb_record *in, const sb_estimate *e) {
    sb_record *stages = sb_put_array(w->run, in, "stages");
    for (size_t i = 0; i < e->stages.count; i++) {
        const sb_stage *stage = &e->stages.items[i];
        sb_record *record = sb_put_object(w->run, stages, NULL);
        sb_put_text(w->run, record, "when", stage->text);
        put_percent(w, record, "share_percent", stage->share);
        put_money(w, record, "amount", stage->amount);
    }
}

static void put_outcome(const writer *w, sb_record *in, const sb_estimate *e) {
    put_money(w, in, "gross", e->gross);
    put_money(w, in, "deposit", e->deposit);
    put_stages(w, in, e);
    put_money(w, in, "rest", e->rest);
    put_money(w, in, "floor", e->floor);
    put_money(w, in, "left", e->left);
    put_money(w, in, "earned_per_hour", e->earned_hour);
    sb_put_text(w->run, in, "method", e->method == SB_MARGIN_ON_PRICE ? "margin" : "markup");
    put_percent(w, in, "rate_percent", e->rate);
    put_percent(w, in, "contingency_percent", e->contingency_rate);
    put_percent(w, in, "discount_percent", e->discount_rate);
    put_percent(w, in, "deposit_percent", e->deposit_rate);
    put_percent(w, in, "margin_left_percent", e->margin_left);
    put_percent(w, in, "markup_left_percent", e->markup_left);
}

static void put_measures(const writer *w, sb_record *in, const sb_way *way) {
    const sb_estimate *e = way->estimate;
    put_hours(w, in, "hours", e->time);
    if (e->lead_days >= 0)
        sb_put_integer(w->run, in, "lead_days", e->lead_days);
    else
        sb_put_null(w->run, in, "lead_days");
    put_hours(w, in, "drying_hours", e->drying);
    put_mass(w, in, "mass_kg", e->mass);
    put_percent(w, in, "waste_percent", e->waste);
    put_percent(w, in, "spare_percent", e->spare);
    sb_put_integer(w->run, in, "boards", way->plan->counts.boards);
    sb_put_length(w->run, in, "boards_length_mm", e->boards_length);
    sb_put_integer(w->run, in, "sheets", way->plan->counts.sheets);
    sb_put_decimal(w->run, in, "sheets_area_m2", e->sheets_area.um2, 12);
}

/* ---- lines ---- */

static void put_materials(const writer *w, sb_record *in, const sb_estimate *e) {
    sb_record *lines = sb_put_array(w->run, in, "materials");
    for (size_t i = 0; i < e->materials.count; i++) {
        const sb_material_line *line = &e->materials.items[i];
        sb_record *record = sb_put_object(w->run, lines, NULL);
        sb_put_text(w->run, record, "group", sb_material_group_word(line->group));
        sb_put_text(w->run, record, "what", line->what);
        put_optional(w, record, "stock", line->stock ? line->stock->id : NULL);
        sb_put_text(w->run, record, "merchant", line->order ? line->order->merchant : "");
        sb_put_decimal(w->run, record, "quantity", line->quantity_milli, 3);
        sb_put_money(w->run, record, "each", (sb_money){line->each.milli}, w->digits + 3);
        put_money(w, record, "amount", line->amount);
    }
}

static void put_work(const writer *w, sb_record *in, const sb_estimate *e) {
    sb_record *lines = sb_put_array(w->run, in, "work");
    for (size_t i = 0; i < e->labour.count; i++) {
        const sb_labour_line *line = &e->labour.items[i];
        sb_record *record = sb_put_object(w->run, lines, NULL);
        sb_put_text(w->run, record, "operation", line->operation->id);
        sb_put_text(w->run, record, "title", line->operation->title);
        sb_put_text(w->run, record, "for", line->text);
        sb_put_truth(w->run, record, "from_plan", line->from_plan);
        sb_put_decimal(w->run, record, "quantity", line->quantity_milli, 3);
        sb_put_text(w->run, record, "unit", sb_driver_word(line->operation->driver));
        put_percent(w, record, "learnt_percent", line->learned);
        put_hours(w, record, "hours", line->time);
        put_money(w, record, "rate", line->hour);
        put_money(w, record, "amount", line->amount);
    }
}

static void put_plan(const writer *w, sb_record *in, const sb_plan *plan) {
    sb_record *record = sb_put_object(w->run, in, "plan");
    put_money(w, record, "cost", sb_cost_money(plan->cost));
    put_money(w, record, "bound", (sb_money){sb_mul_div_down(plan->bound.milli, 1, 1000)});
    sb_put_truth(w->run, record, "proved", plan->proved);
    sb_put_truth(w->run, record, "cut_short", plan->cut_short);
    put_money(w, record, "material", sb_cost_money(plan->material));
    put_money(w, record, "handling", sb_cost_money(plan->handling));
    put_money(w, record, "leftovers", sb_cost_money(plan->leftovers));
}

/* ---- the record ---- */

static void put_head(const writer *w, sb_record *in, const sb_job *job) {
    const sb_settings *s = &w->shop->settings;
    int days = job->validity_days ? job->validity_days : s->validity_days;
    sb_put_text(w->run, in, "job", job->name);
    put_optional(w, in, "title", job->title);
    put_optional(w, in, "reference", job->reference);
    sb_put_text(w->run, in, "customer", job->customer);
    sb_put_text(w->run, in, "date", sb_write_date(w->run, job->date));
    put_optional(w, in, "valid_until",
                 days > 0 ? sb_write_date(w->run, sb_date_plus(job->date, days)) : NULL);
    sb_put_text(w->run, in, "currency", s->currency.code);
    sb_put_text(w->run, in, "prices", s->prices_gross ? "gross" : "net");
}

static sb_record *put_way(const writer *w, sb_record *options, const sb_way *way) {
    sb_record *record = sb_put_object(w->run, options, NULL);
    put_optional(w, record, "name", way->option ? way->option->name : NULL);
    put_optional(w, record, "title", way->option ? way_words(way) : NULL);
    put_pieces(w, record, way->estimate);
    put_steps(w, record, way->estimate);
    put_taxes(w, record, way->estimate);
    put_outcome(w, record, way->estimate);
    put_measures(w, record, way);
    record_risk(w->run, record, way, w->digits);
    record_sensitivity(w->run, record, way, w->digits);
    return record;
}

static sb_record *record_of(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                            bool lines) {
    writer w = {.run = run, .shop = shop, .digits = shop->settings.currency.digits};
    sb_record *record = sb_record_object(run);
    put_head(&w, record, job);
    sb_record *options = sb_put_array(run, record, "options");
    for (size_t i = 0; i < ways->list.count; i++) {
        const sb_way *way = &ways->list.items[i];
        sb_record *option = put_way(&w, options, way);
        if (lines) {
            put_materials(&w, option, way->estimate);
            put_work(&w, option, way->estimate);
        }
        put_plan(&w, option, way->plan);
    }
    return record;
}

sb_record *sb_record_quote(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways) {
    return record_of(run, shop, job, ways, true);
}

/* The same keys without the single lines `materials` and `work`. */
sb_record *sb_record_comparison(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways) {
    return record_of(run, shop, job, ways, false);
}
