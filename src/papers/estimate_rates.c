/* The rates of an estimate, each a cell of its own that the formulas mean. */
#include "papers/estimate.h"

#include <string.h>

static void put(estimate_paper *p, const char *name, const char *of, sb_cell value, const char *cell_name) {
    sb_cell *row = sb_row_add(p->run, p->rates);
    row[RATE_NAME] = sb_cell_text(name);
    row[RATE_OF] = sb_cell_text(of);
    row[RATE_VALUE] = sb_cell_input(sb_cell_named(value, cell_name));
}

static void put_profit(estimate_paper *p) {
    if (p->e->method == SB_MARGIN_ON_PRICE)
        put(p, "Margin", "of the price", sb_cell_rate(p->e->rate), "margin_rate");
    else
        put(p, "Markup", "of cost with contingency", sb_cell_rate(p->e->rate), "markup_rate");
}

static void put_workers(estimate_paper *p) {
    const sb_settings *s = &p->shop->settings;
    for (size_t i = 0; i < s->workers.count; i++)
        put(p, sb_pool_print(p->run->pool, "Hourly rate: %s", s->workers.items[i].id), "for an hour worked",
            sb_cell_money(s->workers.items[i].hour), sb_pool_print(p->run->pool, "hourly_rate_%zu", i + 1));
}

static sb_money point_of(const sb_settings *s) {
    return s->price_point.minor > 0 ? s->price_point : (sb_money){1};
}

/* ---- taxes ---- */

size_t tax_count(const estimate_paper *p) {
    return p->taxed.count ? p->taxed.count : 1;
}

static size_t find(const estimate_paper *p, const sb_tax *tax) {
    size_t i = 0;
    while (i < p->taxed.count && strcmp(p->taxed.items[i]->id, tax->id) != 0)
        i++;
    return i;
}

size_t tax_index(const estimate_paper *p, const sb_tax *tax) {
    return tax && p->taxed.count ? find(p, tax) : 0;
}

const sb_relation *tax_rate_cell(const estimate_paper *p, const sb_tax *tax) {
    return rate_cell(p, RATE_TAX + tax_index(p, tax));
}

static void add_tax(estimate_paper *p, const sb_tax *tax) {
    if (tax && find(p, tax) == p->taxed.count)
        SB_PUSH(p->run->pool, p->taxed, tax);
}

/* Those of the job's lines first; then those of a supplement and a delivery that a changed figure may bring about. */
static void put_taxes(estimate_paper *p) {
    const char *of = p->gross ? "of the net inside the total" : "of the net";
    for (size_t i = 0; i < p->e->taxes.count; i++)
        add_tax(p, p->e->taxes.items[i].tax);
    if (has_minimum(p))
        add_tax(p, p->e->job_tax);
    add_tax(p, p->e->delivery_tax);
    if (p->taxed.count == 0)
        put(p, "Tax", of, sb_cell_rate((sb_share){0}), "tax_rate");
    for (size_t i = 0; i < p->taxed.count; i++) {
        const sb_tax *tax = p->taxed.items[i];
        const char *name =
            p->taxed.count == 1 ? "Tax" : sb_pool_print(p->run->pool, "Tax: %s, %s", tax->title, tax->id);
        put(p, name, of, sb_cell_rate(tax->rate),
            i == 0 ? "tax_rate" : sb_pool_print(p->run->pool, "tax_rate_%zu", i + 1));
    }
}

/* ---- delivery, payments, minimum ---- */

static void put_delivery(estimate_paper *p) {
    static const char *const each[] = {"as the job says", "for the zone", "for a trip", "for a km",
                                       "for a mile"};
    static const char *const counted[] = {"once", "once", "trips", "km", "miles"};
    const sb_estimate *e = p->e;
    sb_job_delivery by = e->job->delivery_by;
    const char *of = by == SB_DELIVERY_ZONE
                         ? sb_pool_print(p->run->pool, "for the zone %s", e->job->delivery_zone)
                         : each[by];
    put(p, "Delivery, net", of, sb_cell_money(e->delivery_each), "delivery_each");
    put(p, "Delivery, how many", counted[by],
        e->delivery_milli % 1000 == 0 ? sb_cell_count(e->delivery_milli / 1000)
                                      : sb_cell_decimal(e->delivery_milli, 3),
        "delivery_count");
}

static void put_stages(estimate_paper *p) {
    for (size_t i = 0; i < p->e->stages.count; i++)
        put(p, sb_pool_print(p->run->pool, "Stage: %s", p->e->stages.items[i].text), "of the total with tax",
            sb_cell_rate(p->e->stages.items[i].share), sb_pool_print(p->run->pool, "stage_rate_%zu", i + 1));
}

bool has_minimum(const estimate_paper *p) {
    return p->e->minimum.minor > 0;
}

void estimate_rates(estimate_paper *p) {
    const sb_settings *s = &p->shop->settings;
    const sb_estimate *e = p->e;
    sb_paragraph_add(
        p->run, p->rating,
        "Tinted cells may be changed, and every amount follows, on all sheets. The cutting "
        "plan is held meanwhile: what is bought, cut and worked stays as it was planned, though another plan "
        "may have become the cheaper one. What leftovers and pieces of the rack are worth stands in cells of "
        "its own. For a new plan change the rates or the job itself and run the program again.",
        false);
    p->rates = sb_table_add(p->run, p->rating, "", "Rate|Of what|Value>");
    if (p->by_hour)
        put(p, "Overhead", "for an hour worked", sb_cell_money(s->overhead_hour), "overhead_rate");
    else
        put(p, "Overhead", "of labour", sb_cell_rate(s->overhead_labour), "overhead_rate");
    put(p, "Contingency", "of cost", sb_cell_rate(e->contingency_rate), "contingency_rate");
    put_profit(p);
    put(p, "Discount", "of the price", sb_cell_rate(e->discount_rate), "discount_rate");
    put(p, "Price point",
        p->gross ? "the price of one, with tax, goes up to a multiple"
                 : "the price of one goes up to a multiple",
        sb_cell_money(point_of(s)), "price_point");
    put(p, "Price point, less", "so much below the multiple", sb_cell_money(s->point_less),
        "price_point_less");
    put_delivery(p);
    put(p, "Deposit", "of the total with tax", sb_cell_rate(e->deposit_rate), "deposit_rate");
    put_taxes(p);
    p->stage_row = p->rates->rows.count;
    put_stages(p);
    p->worker_row = p->rates->rows.count;
    put_workers(p);
    p->minimum_row = p->rates->rows.count;
    if (has_minimum(p))
        put(p, "Minimum", p->gross ? "of all pieces, with tax" : "of all pieces, net",
            sb_cell_money(e->minimum), "minimum");
    p->tags =
        sb_table_add(p->run, p->rating, "", "Price of material|Of what|Value>"); /* filled by its lines */
}
