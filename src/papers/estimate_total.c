/* What the total is made of, in figures and as a chart. */
#include "papers/estimate.h"

typedef struct portion {
    const char *what;
    sb_money amount;
    const sb_relation *from;
} portion;

static void put(estimate_paper *p, sb_table *table, portion of) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(of.what);
    row[1] = sb_cell_related(sb_cell_money(of.amount), of.from);
}

static void put_chart(estimate_paper *p, const sb_table *table) {
    sb_chart chart = {.kind = SB_CHART_BARS,
                      .title = "What the total is made of",
                      .along = "",
                      .figures = p->shop->settings.currency.code,
                      .table = table,
                      .last = table->rows.count - 2};
    SB_PUSH(p->run->pool, chart.series, 1);
    sb_chart_add(p->run, p->summary, chart);
}

void estimate_total(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_relation *pieces =
        rel_less(p->run, build_cell(p, BUILD_NET), build_cell(p, BUILD_DELIVERY), p->digits);
    const sb_relation *left = rel_less(p->run, pieces, build_cell(p, BUILD_BASE), p->digits);
    const portion portions[] = {
        {"Material", e->material_total, build_cell(p, BUILD_MATERIAL)},
        {"Labour", e->labour_total, build_cell(p, BUILD_LABOUR)},
        {"Overhead", e->overhead, build_cell(p, BUILD_OVERHEAD)},
        {"Contingency", e->contingency, build_cell(p, BUILD_CONTINGENCY)},
        {"Left for the shop", e->left, left},
        {"Delivery", e->delivery, build_cell(p, BUILD_DELIVERY)},
        {"Tax", e->tax, build_cell(p, BUILD_TAX)},
    };
    sb_table *table = sb_table_add(p->run, p->summary, "What the total is made of", "Portion|Amount>");
    for (size_t i = 0; i < sizeof portions / sizeof *portions; i++)
        put(p, table, portions[i]);
    sb_cell *row = sb_total_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text("Total with tax"));
    row[1] =
        sb_cell_strong(sb_cell_related(sb_cell_money(e->gross), rel_sum_of(p->run, table, 1, p->digits)));
    put_chart(p, table);
}
