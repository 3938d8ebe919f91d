/* Risk and sensitivity for machines. The keys are described in README.md, and stay. */
#include "papers/record_risk.h"

static const char *kind_word(sb_risk_kind kind) {
    static const char *const words[] = {"minutes", "quantity", "price"};
    return words[kind];
}

/* Minutes, the operation's own unit, money. */
static void put_value(sb_run *run, sb_record *in, const char *key, const sb_risk_input *input, int64_t value,
                      int digits) {
    if (input->kind == SB_RISK_PRICE)
        sb_put_money(run, in, key, (sb_money){value}, digits + 3);
    else
        sb_put_decimal(run, in, key, input->kind == SB_RISK_TIME ? sb_mul_div(value, 1, 60) : value, 3);
}

static void put_input(sb_run *run, sb_record *inputs, const sb_risk_input *input, int digits) {
    sb_record *record = sb_put_object(run, inputs, NULL);
    sb_put_text(run, record, "what", input->what);
    sb_put_text(run, record, "range_of", kind_word(input->kind));
    put_value(run, record, "least", input, input->least, digits);
    put_value(run, record, "likely", input, input->likely, digits);
    put_value(run, record, "most", input, input->most, digits);
    sb_put_money(run, record, "cost_at_least", input->low, digits);
    sb_put_money(run, record, "cost_at_most", input->high, digits);
}

void record_risk(sb_run *run, sb_record *in, const sb_way *way, int digits) {
    const sb_risk *risk = way->risk;
    if (!risk) {
        sb_put_null(run, in, "risk");
        return;
    }
    sb_record *record = sb_put_object(run, in, "risk");
    sb_put_integer(run, record, "draws", risk->draws);
    sb_put_money(run, record, "cost_10", risk->cost10, digits);
    sb_put_money(run, record, "cost_50", risk->cost50, digits);
    sb_put_money(run, record, "cost_80", risk->cost80, digits);
    sb_put_money(run, record, "cost_90", risk->cost90, digits);
    sb_put_money(run, record, "cost_mean", risk->mean, digits);
    sb_put_decimal(run, record, "loses_percent", risk->loses.ppm, 4);
    sb_put_decimal(run, record, "confidence_percent", risk->confidence.ppm, 4);
    sb_put_money(run, record, "price", risk->price, digits);
    sb_record *inputs = sb_put_array(run, record, "inputs");
    for (size_t i = 0; i < risk->inputs.count; i++)
        put_input(run, inputs, &risk->inputs.items[i], digits);
}

void record_sensitivity(sb_run *run, sb_record *in, const sb_way *way, int digits) {
    const sb_sensitivity *s = way->sensitivity;
    if (!s) {
        sb_put_null(run, in, "sensitivity");
        return;
    }
    sb_record *record = sb_put_object(run, in, "sensitivity");
    sb_put_money(run, record, "price", s->price, digits);
    sb_record *movers = sb_put_array(run, record, "movers");
    for (size_t i = 0; i < s->movers.count; i++) {
        sb_record *mover = sb_put_object(run, movers, NULL);
        sb_put_text(run, mover, "what", s->movers.items[i].what);
        sb_put_money(run, mover, "tenth_more", s->movers.items[i].more, digits);
        sb_put_money(run, mover, "tenth_less", s->movers.items[i].less, digits);
    }
}
