/* The rates of an estimate, each a cell of its own that the formulas mean. */
#include "papers/estimate.h"

static void put(estimate_paper *p, const char *name, const char *of, sb_cell value, const char *cell_name) {
    sb_cell *row = sb_row_add(p->run, p->rates);
    row[RATE_NAME] = sb_cell_text(name);
    row[RATE_OF] = sb_cell_text(of);
    row[RATE_VALUE] = sb_cell_named(value, cell_name);
}

static void put_profit(estimate_paper *p) {
    if (p->e->method == SB_MARGIN_ON_PRICE)
        put(p, "Margin", "of the price", sb_cell_share(p->e->rate), "margin_rate");
    else
        put(p, "Markup", "of cost with contingency", sb_cell_share(p->e->rate), "markup_rate");
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

void estimate_rates(estimate_paper *p) {
    const sb_settings *s = &p->shop->settings;
    const sb_estimate *e = p->e;
    sb_paragraph_add(p->run, p->rating, "Change one, and every amount follows.", false);
    p->rates = sb_table_add(p->run, p->rating, "", "Rate|Of what|Value>");
    if (p->by_hour)
        put(p, "Overhead", "for an hour worked", sb_cell_money(s->overhead_hour), "overhead_rate");
    else
        put(p, "Overhead", "of labour", sb_cell_share(s->overhead_labour), "overhead_rate");
    put(p, "Contingency", "of cost", sb_cell_share(e->contingency_rate), "contingency_rate");
    put_profit(p);
    put(p, "Discount", "of the price", sb_cell_share(e->discount_rate), "discount_rate");
    put(p, "Price point",
        p->gross ? "the price of one, with tax, goes up to a multiple"
                 : "the price of one goes up to a multiple",
        sb_cell_money(point_of(s)), "price_point");
    put(p, "Tax", p->gross ? "of the net inside the total" : "of the net",
        sb_cell_share(e->taxes.count ? e->taxes.items[0].tax->rate : (sb_share){0}), "tax_rate");
    put(p, "Deposit", "of the total with tax", sb_cell_share(e->deposit_rate), "deposit_rate");
    put_workers(p);
}
