/* The sheet Risk: what the cost may come to, what that rests on, and which figures move the price most. */
#include "papers/estimate.h"
#include "papers/figures.h"

/* ---- what is told as a range ---- */

enum {
    INPUT_WHAT,
    INPUT_LEAST,
    INPUT_LIKELY,
    INPUT_MOST,
    INPUT_UNIT,
    INPUT_LOW,
    INPUT_HIGH
};

static sb_cell number_cell(int64_t thousandths) {
    return thousandths % 1000 == 0 ? sb_cell_count(thousandths / 1000) : sb_cell_decimal(thousandths, 3);
}

static sb_cell value_cell(const estimate_paper *p, const sb_risk_input *input, int64_t value) {
    if (input->kind == SB_RISK_PRICE)
        return sb_cell_price(value, p->digits + 3);
    /* a millisecond is a 60 000th of a minute */
    return number_cell(input->kind == SB_RISK_TIME ? sb_mul_div(value, 1, 60) : value);
}

static const char *unit_words(const estimate_paper *p, const sb_risk_input *input) {
    if (input->kind == SB_RISK_PRICE)
        return "each";
    const char *unit = sb_driver_word(input->operation->driver);
    if (input->kind == SB_RISK_QUANTITY)
        return unit;
    return sb_pool_print(p->run->pool, input->operation->driver == SB_BY_EACH ? "minutes %s" : "minutes a %s",
                         unit);
}

static void put_input(estimate_paper *p, sb_table *table, const sb_risk_input *input) {
    sb_cell *row = sb_row_add(p->run, table);
    row[INPUT_WHAT] = sb_cell_text(input->what);
    row[INPUT_UNIT] = sb_cell_text(unit_words(p, input));
    row[INPUT_LEAST] = value_cell(p, input, input->least);
    row[INPUT_LIKELY] = value_cell(p, input, input->likely);
    row[INPUT_MOST] = value_cell(p, input, input->most);
    row[INPUT_LOW] = sb_cell_money(input->low);
    row[INPUT_HIGH] = sb_cell_money(input->high);
    row[INPUT_LEAST].place = input->place;
}

static void put_inputs(estimate_paper *p, sb_sheet *sheet) {
    const sb_risk *risk = p->way->risk;
    sb_table *table =
        sb_table_add(p->run, sheet, "What it rests on",
                     "What|Least>|Likely>|Most>|Counted in|Cost at the least>|Cost at the most>");
    for (size_t i = 0; i < risk->inputs.count; i++)
        put_input(p, table, &risk->inputs.items[i]);
}

/* ---- what the cost may come to ---- */

static void tell(estimate_paper *p, sb_table *table, const char *figure, sb_cell value, const char *name) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(figure);
    row[1] = sb_cell_named(value, name);
}

static void put_draws(estimate_paper *p, sb_sheet *sheet) {
    const sb_risk *risk = p->way->risk;
    const char *confidence = share_words(p->run, p->shop, risk->confidence);
    sb_table *table = sb_table_add(p->run, sheet, "What the cost may come to", "Figure|Value>");
    tell(p, table, "Cost, all at its likely value", sb_cell_money(p->e->cost), NULL);
    tell(p, table, "10 % of cases cost at most", sb_cell_money(risk->cost10), "cost_10");
    tell(p, table, "50 % of cases cost at most", sb_cell_money(risk->cost50), "cost_50");
    tell(p, table, "80 % of cases cost at most", sb_cell_money(risk->cost80), "cost_80");
    tell(p, table, "90 % of cases cost at most", sb_cell_money(risk->cost90), "cost_90");
    tell(p, table, "Mean cost of all cases", sb_cell_money(risk->mean), "cost_mean");
    tell(p, table, "Cases that this price does not pay", sb_cell_share(risk->loses), "loses");
    tell(p, table, sb_pool_print(p->run->pool, "Net price that pays in %s of cases", confidence),
         sb_cell_money(risk->price), "confident_price");
}

void estimate_risk(estimate_paper *p, sb_sheet *sheet) {
    const sb_risk *risk = p->way->risk;
    if (!risk) {
        sb_paragraph_add(p->run, sheet,
                         "No time and no price of this job is told as a range, so nothing can be said of its "
                         "risk. Ranges stand in the "
                         "columns least and most of operations.csv and prices.csv, and behind the amounts of "
                         "a recipe's work.",
                         false);
        return;
    }
    sb_paragraph_add(
        p->run, sheet,
        sb_pool_print(
            p->run->pool,
            "%s cases, each with times, amounts and prices drawn from their ranges (beta distribution "
            "about the "
            "likely value); what is told without a range stays as it is. As reckoned: these figures do not "
            "follow changed cells.",
            number_words(p->run, p->shop, risk->draws, 0, 0)),
        false);
    put_draws(p, sheet);
    put_inputs(p, sheet);
}

/* ---- what moves the price ---- */

static sb_cell move_cell(sb_money move) {
    return move.minor == SB_BAD ? sb_cell_text("no price") : sb_cell_money(move);
}

void estimate_sensitivity(estimate_paper *p, sb_sheet *sheet) {
    const sb_sensitivity *s = p->way->sensitivity;
    sb_table *table = sb_table_add(p->run, sheet, "What moves the price",
                                   "A tenth more or less of|Price moves, a tenth more>|Price moves, a tenth less>");
    for (size_t i = 0; i < s->movers.count; i++) {
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text(s->movers.items[i].what);
        row[1] = move_cell(s->movers.items[i].more);
        row[2] = move_cell(s->movers.items[i].less);
        row[1].place = s->movers.items[i].place;
    }
    sb_paragraph_add(p->run, sheet,
                     sb_pool_print(p->run->pool,
                                   "By how much the net price of %s moves, before price points and minimum, "
                                   "when one figure alone moves by 10 %% of "
                                   "itself. The cutting plan is held.",
                                   money_words(p->run, p->shop, s->price)),
                     true);
}
