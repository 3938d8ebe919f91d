/* From lines to totals: the shop's minimum, tax by rate, net and gross.
 *
 * Every line has one tax. By line, each line's tax is rounded; on the total, the tax of each rate is rounded once over all lines that have
 * it (EN 16931 BR-CO-17). Delivery is told net: quoted gross, its line is what it comes to with tax, and its net stays. */
#include "costing/inside.h"

/* All lines of one tax. */
typedef struct rate {
    const sb_tax *tax;   /* NULL: none */
    sb_money net, gross; /* of its lines */
    sb_money tax_by_line;
} rate;

typedef struct closing {
    costing *c;
    sb_estimate *e;
    bool gross, by_line;
    SB_LIST(rate) rates;
} closing;

static sb_share share_of(const sb_tax *tax) {
    return tax ? tax->rate : (sb_share){0};
}

static rate *rate_of(closing *k, const sb_tax *tax) {
    for (size_t i = 0; i < k->rates.count; i++)
        if (k->rates.items[i].tax == tax)
            return &k->rates.items[i];
    SB_PUSH(k->c->run->pool, k->rates, (rate){.tax = tax});
    return &k->rates.items[k->rates.count - 1];
}

/* What a line that the quote shows comes to without tax; on the total a line quoted gross has none of its own yet. */
static sb_money enter(closing *k, const sb_tax *tax, sb_money line) {
    rate *r = rate_of(k, tax);
    sb_money inside = k->gross ? sb_tax_inside(line, share_of(tax)) : sb_tax_of(line, share_of(tax));
    sb_money net = k->gross ? sb_money_sub(line, inside) : line;
    r->net = sb_money_add(r->net, net);
    r->gross = sb_money_add(r->gross, k->gross ? line : sb_money_add(line, inside));
    r->tax_by_line = sb_money_add(r->tax_by_line, inside);
    return net;
}

static void enter_delivery(closing *k) {
    sb_estimate *e = k->e;
    if (e->delivery.minor == 0)
        return;
    rate *r = rate_of(k, e->delivery_tax);
    sb_money tax = sb_tax_of(e->delivery, share_of(e->delivery_tax));
    e->delivery_line = k->gross ? sb_money_add(e->delivery, tax) : e->delivery;
    r->net = sb_money_add(r->net, e->delivery);
    r->gross = sb_money_add(r->gross, sb_money_add(e->delivery, tax));
    r->tax_by_line = sb_money_add(r->tax_by_line, tax);
}

static void enter_supplement(closing *k) {
    sb_estimate *e = k->e;
    sb_money lines = {0};
    for (size_t i = 0; i < e->pieces.count; i++)
        lines = sb_money_add(lines, e->pieces.items[i].line);
    if (lines.minor == SB_BAD || e->minimum.minor <= lines.minor)
        return;
    e->supplement_line = sb_money_sub(e->minimum, lines);
    e->supplement = enter(k, e->job_tax, e->supplement_line);
}

static void enter_lines(closing *k) {
    for (size_t i = 0; i < k->e->pieces.count; i++) {
        sb_price_line *p = &k->e->pieces.items[i];
        p->net = enter(k, p->tax, p->line);
    }
    enter_supplement(k);
    enter_delivery(k);
    if (k->rates.count == 0)
        rate_of(k, k->e->job_tax);
}

/* Quoted gross, tax on the total: the net of a rate, less delivery, over its lines. What is rounded is the net of all lines up to one, so
 * that their nets add up. */
static void share_net(closing *k, const rate *r, sb_money net) {
    sb_estimate *e = k->e;
    size_t count = e->pieces.count;
    sb_money lines = r->gross, before = {0}, before_net = {0};
    if (e->delivery.minor != 0 && e->delivery_tax == r->tax) {
        net = sb_money_sub(net, e->delivery);
        lines = sb_money_sub(lines, e->delivery_line);
    }
    for (size_t i = 0; i <= count; i++) {
        sb_money line = i < count ? e->pieces.items[i].line : e->supplement_line;
        if ((i < count ? e->pieces.items[i].tax : e->job_tax) != r->tax)
            continue;
        before = sb_money_add(before, line);
        sb_money up_to_here = {lines.minor == 0 ? 0 : sb_mul_div(before.minor, net.minor, lines.minor)};
        *(i < count ? &e->pieces.items[i].net : &e->supplement) = sb_money_sub(up_to_here, before_net);
        before_net = up_to_here;
    }
}

static void close_rate(closing *k, const rate *r) {
    sb_estimate *e = k->e;
    sb_money net = r->net, tax = r->tax_by_line;
    if (!k->by_line && k->gross) {
        tax = sb_tax_inside(r->gross, share_of(r->tax));
        net = sb_money_sub(r->gross, tax);
        share_net(k, r, net);
    } else if (!k->by_line) {
        tax = sb_tax_of(net, share_of(r->tax));
    }
    e->net = sb_money_add(e->net, net);
    e->tax = sb_money_add(e->tax, tax);
    if (r->tax)
        SB_PUSH(k->c->run->pool, e->taxes, ((sb_tax_line){r->tax, net, tax}));
}

void costing_close(costing *c) {
    const sb_settings *s = &c->shop->settings;
    closing k = {.c = c, .e = c->estimate, .gross = s->prices_gross, .by_line = s->tax_per_line};
    enter_lines(&k);
    for (size_t i = 0; i < k.rates.count; i++)
        close_rate(&k, &k.rates.items[i]);
    for (size_t i = 0; i < c->count; i++)
        k.e->pieces_net = sb_money_add(k.e->pieces_net, k.e->pieces.items[i].net);
    k.e->gross = sb_money_add(k.e->net, k.e->tax);
}
