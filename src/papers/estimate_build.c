/* From cost to price, step by step, each percentage saying of what; and what the price leaves. */
#include "papers/estimate.h"
#include "papers/figures.h"

static size_t build_row(const estimate_paper *p, size_t step) {
    return step > BUILD_SUPPLEMENT && !has_minimum(p) ? step - 1 : step;
}

const sb_relation *build_cell(const estimate_paper *p, size_t step) {
    return sb_rel_cell(p->run, p->build, build_row(p, step), BUILD_AMOUNT);
}

const sb_relation *rate_cell(const estimate_paper *p, size_t row) {
    return sb_rel_cell(p->run, p->rates, row, RATE_VALUE);
}

const sb_relation *total_cell(const estimate_paper *p, const sb_table *table, size_t column) {
    if (p->chosen) /* no lines of its own */
        return NULL;
    return sb_rel_cell(p->run, table, table->rows.count - 1, column);
}

/* ---- steps ---- */

static sb_cell *put(estimate_paper *p, const char *step, const char *how, sb_money amount,
                    const sb_relation *relation, const char *name) {
    sb_cell *row = sb_row_add(p->run, p->build);
    row[BUILD_STEP] = sb_cell_text(step);
    row[BUILD_HOW] = sb_cell_text(p->named ? how : ""); /* said once, on the summary */
    if (p->chosen)
        relation = chosen_cell(p, NUMBER_STEPS + p->build->rows.count - 1);
    row[BUILD_AMOUNT] = sb_cell_related(sb_cell_money(amount), relation);
    if (p->named)
        row[BUILD_AMOUNT].name = name;
    return row;
}

static void show_share(const estimate_paper *p, sb_cell *row, size_t rate) {
    const sb_cell *from = &p->rates->rows.items[rate][RATE_VALUE];
    row[BUILD_SHARE] = sb_cell_related(*from, rate_cell(p, rate));
    row[BUILD_SHARE].name = NULL;
    row[BUILD_SHARE].input = false;
}

static void embolden(sb_cell *row) {
    row[BUILD_STEP].strong = row[BUILD_AMOUNT].strong = true;
}

static const sb_relation *sum3(const estimate_paper *p, size_t a, size_t b, size_t c) {
    const sb_relation *two = sb_rel(p->run, SB_REL_ADD, build_cell(p, a), build_cell(p, b));
    return rel_plus(p->run, two, build_cell(p, c), p->digits);
}

static void put_cost(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_relation *of = p->by_hour ? total_cell(p, p->works, WORK_HOURS) : build_cell(p, BUILD_LABOUR);
    put(p, "Material", p->chosen ? "sheet Lines of that number" : "sheet Material", e->material_total,
        total_cell(p, p->materials, MATERIAL_AMOUNT), "material_total");
    put(p, "Labour", p->chosen ? "sheet Lines of that number" : "sheet Labour", e->labour_total,
        total_cell(p, p->works, WORK_AMOUNT), "labour_total");
    show_share(p,
               put(p, "Overhead", p->by_hour ? "hours worked x rate for the hour" : "share of labour",
                   e->overhead, rel_product(p->run, of, rate_cell(p, RATE_OVERHEAD), p->digits), "overhead"),
               RATE_OVERHEAD);
    embolden(put(p, "Cost", "material + labour + overhead", e->cost,
                 sum3(p, BUILD_MATERIAL, BUILD_LABOUR, BUILD_OVERHEAD), "cost"));
    show_share(p,
               put(p, "Contingency", "share of cost", e->contingency,
                   rel_product(p->run, build_cell(p, BUILD_COST), rate_cell(p, RATE_CONTINGENCY), p->digits),
                   "contingency"),
               RATE_CONTINGENCY);
    put(p, "Cost with contingency", "cost + contingency", e->base,
        rel_plus(p->run, build_cell(p, BUILD_COST), build_cell(p, BUILD_CONTINGENCY), p->digits), "base");
}

static void put_price(estimate_paper *p) {
    const sb_estimate *e = p->e;
    bool margin = e->method == SB_MARGIN_ON_PRICE;
    show_share(p,
               put(p, "Price",
                   margin
                       ? "cost with contingency / (1 - margin), by piece; the margin is a share of the price"
                       : "cost with contingency x (1 + markup), by piece; the markup is a share of the cost",
                   e->price, total_cell(p, p->prices, PRICE_PRICE), "price"),
               RATE_PROFIT);
    const sb_relation *less =
        rel_less(p->run, sb_rel_number(p->run, 0, 0), total_cell(p, p->prices, PRICE_DISCOUNT), p->digits);
    show_share(p,
               put(p, "Less discount", "share of the price, by piece", (sb_money){-e->discount.minor}, less,
                   "discount"),
               RATE_DISCOUNT);
}

static const char *rounding_words(const estimate_paper *p) {
    const sb_money point = {p->rates->rows.items[RATE_POINT][RATE_VALUE].amount};
    const sb_money less = {p->rates->rows.items[RATE_POINT_LESS][RATE_VALUE].amount};
    return sb_pool_print(p->run->pool, "the price of one%s goes up to %s%sa multiple of %s",
                         p->gross ? ", with tax," : "", less.minor ? money_words(p->run, p->shop, less) : "",
                         less.minor ? " below " : "", money_words(p->run, p->shop, point));
}

/* ---- totals ---- */

static const char *tax_words(const estimate_paper *p) {
    if (p->by_line)
        return p->gross ? "inside the lines, each rounded" : "of the net, line by line, each rounded";
    return p->gross ? "inside the total with tax" : "of the net, once on the total";
}

static const sb_relation *pieces_relation(const estimate_paper *p) {
    size_t count = p->e->pieces.count;
    return sb_rel_round(
        p->run, sb_rel_sum(p->run, p->prices, PRICE_NET, count ? 0 : 1, count ? count - 1 : 0), p->digits);
}

static const sb_relation *net_relation(const estimate_paper *p) {
    if (has_minimum(p))
        return sum3(p, BUILD_PIECES, BUILD_SUPPLEMENT, BUILD_DELIVERY);
    return rel_plus(p->run, build_cell(p, BUILD_PIECES), build_cell(p, BUILD_DELIVERY), p->digits);
}

static void put_tax(estimate_paper *p) {
    const sb_estimate *e = p->e;
    bool several = p->taxed.count > 1;
    const char *title = p->taxed.count == 1 ? p->taxed.items[0]->title : "Tax";
    const char *how = several ? sb_pool_print(p->run->pool, "%s; by rate on the sheet %s", tax_words(p),
                                              p->chosen ? "Batch" : "Pieces")
                              : tax_words(p);
    sb_cell *row = put(p, title, how, e->tax, total_cell(p, p->taxes, TAX_AMOUNT), "tax");
    if (!several)
        show_share(p, row, RATE_TAX);
}

static void put_total(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_relation *asked =
        sb_rel(p->run, SB_REL_ADD, build_cell(p, BUILD_PRICE), build_cell(p, BUILD_DISCOUNT));
    put(p, "Price points", rounding_words(p), e->rounding,
        rel_less(p->run, build_cell(p, BUILD_PIECES), asked, p->digits), "rounding");
    put(p, "Pieces, net", p->chosen ? "sheet Batch of that number" : "sheet Pieces", e->pieces_net,
        pieces_relation(p), "pieces_net");
    if (has_minimum(p))
        put(p, "Supplement to the minimum, net", "what the pieces lack to it", e->supplement,
            sb_rel_cell(p->run, p->prices, e->pieces.count, PRICE_NET), "supplement");
    put(p, "Delivery, net", e->job->delivery.text ? e->job->delivery.text : "", e->delivery,
        rel_product(p->run, rate_cell(p, RATE_DELIVERY_EACH), rate_cell(p, RATE_DELIVERY_COUNT), p->digits),
        "delivery");
    embolden(put(p, "Net", has_minimum(p) ? "pieces + supplement + delivery" : "pieces + delivery", e->net,
                 net_relation(p), "net"));
    put_tax(p);
    embolden(put(p, "Total with tax", "net + tax", e->gross,
                 rel_plus(p->run, build_cell(p, BUILD_NET), build_cell(p, BUILD_TAX), p->digits), "total"));
}

/* ---- payments ---- */

/* What is due up to a stage: one rounding over all shares so far, so that payments add up to the total. */
static const sb_relation *due_up_to(const estimate_paper *p, size_t stages) {
    const sb_relation *share = rate_cell(p, RATE_DEPOSIT);
    for (size_t i = 0; i < stages; i++)
        share = sb_rel(p->run, SB_REL_ADD, share, rate_cell(p, p->stage_row + i));
    return rel_product(p->run, build_cell(p, BUILD_GROSS), share, p->digits);
}

static void put_payments(estimate_paper *p) {
    const sb_estimate *e = p->e;
    show_share(p, put(p, "Deposit", "share of the total with tax", e->deposit, due_up_to(p, 0), "deposit"),
               RATE_DEPOSIT);
    for (size_t i = 0; i < e->stages.count; i++)
        show_share(p,
                   put(p, sb_pool_print(p->run->pool, "Stage: %s", e->stages.items[i].text),
                       "share of the total with tax", e->stages.items[i].amount,
                       rel_less(p->run, due_up_to(p, i + 1), due_up_to(p, i), p->digits),
                       sb_pool_print(p->run->pool, "stage_%zu", i + 1)),
                   p->stage_row + i);
    put(p, "Rest", "total - deposit - stages", e->rest,
        rel_less(p->run, build_cell(p, BUILD_GROSS), due_up_to(p, e->stages.count), p->digits), "rest");
}

/* Cost and base come first, for the pieces mean them; then the pieces; then price and total, which mean the
 * pieces. */
void estimate_build(estimate_paper *p) {
    put_cost(p);
    if (!p->chosen)
        estimate_pieces(p);
    put_price(p);
    put_total(p);
    put_payments(p);
}

/* ---- what it leaves ---- */

static sb_cell *leave(estimate_paper *p, const char *figure, const char *how, sb_cell value) {
    sb_cell *row = sb_row_add(p->run, p->outcome);
    row[0] = sb_cell_text(figure);
    row[1] = sb_cell_text(how);
    row[2] = value;
    return row;
}

static const sb_relation *outcome_cell(const estimate_paper *p, size_t row) {
    return sb_rel_cell(p->run, p->outcome, row, 2);
}

static void leave_floor(estimate_paper *p) {
    const sb_estimate *e = p->e;
    sb_cell floor =
        sb_cell_related(sb_cell_money(e->floor), rel_plus(p->run, build_cell(p, BUILD_COST),
                                                          build_cell(p, BUILD_DELIVERY), p->digits));
    sb_cell *row = leave(p, "Floor, net", "cost + delivery: under it the job loses money",
                         p->named ? sb_cell_named(floor, "floor") : floor);
    row[0].strong = row[2].strong = true;
    leave(p, "Net above the floor", "net - floor",
          sb_cell_related(sb_cell_money(sb_money_sub(e->net, e->floor)),
                          rel_less(p->run, build_cell(p, BUILD_NET), outcome_cell(p, 0), p->digits)));
}

static void leave_margin(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_relation *pieces =
        rel_less(p->run, build_cell(p, BUILD_NET), build_cell(p, BUILD_DELIVERY), p->digits);
    leave(p, "Left for the shop", "net - delivery - cost with contingency: after discount and price points",
          sb_cell_related(sb_cell_money(e->left),
                          rel_less(p->run, pieces, build_cell(p, BUILD_BASE), p->digits)));
    const sb_relation *left = outcome_cell(p, 2);
    bool priced = sb_money_sub(e->net, e->delivery).minor > 0;
    leave(p, "Margin left", "share of the net price without delivery",
          sb_cell_related(sb_cell_share(e->margin_left), priced ? rel_ratio(p->run, left, pieces, 6) : NULL));
    leave(p, "Markup left", "the same money as a share of cost with contingency",
          sb_cell_related(sb_cell_share(e->markup_left),
                          e->base.minor > 0 ? rel_ratio(p->run, left, build_cell(p, BUILD_BASE), 6) : NULL));
}

static const char *lead_words(const estimate_paper *p) {
    if (p->e->drying.ms == 0)
        return "before work starts, and the hours at the shop's week";
    return sb_pool_print(
        p->run->pool,
        "before work starts, the hours at the shop's week, and %s for coats to dry, which cost no labour",
        exact_hours_words(p->run, p->shop, p->e->drying));
}

static void leave_work(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_relation *hours = p->chosen ? chosen_cell(p, p->hours_row) : total_cell(p, p->works, WORK_HOURS);
    sb_cell *row = leave(p, "Hours", p->chosen ? "sheet Lines of that number" : "sheet Labour",
                         sb_cell_related(sb_cell_duration(e->time), hours));
    hours = outcome_cell(p, p->outcome->rows.count - 1);
    if (p->named)
        row[2].name = "hours";
    if (e->time.ms > 0) {
        const sb_relation *for_work =
            sb_rel(p->run, SB_REL_ADD, outcome_cell(p, 1), build_cell(p, BUILD_LABOUR));
        leave(p, "Earned per hour", "(net - material - overhead - delivery) / hours",
              sb_cell_related(sb_cell_money(e->earned_hour), rel_ratio(p->run, for_work, hours, p->digits)));
    }
    if (e->lead_days >= 0)
        leave(p, "Lead time, days", lead_words(p), sb_cell_count(e->lead_days));
}

void estimate_outcome(estimate_paper *p) {
    const sb_estimate *e = p->e;
    const sb_style *style = &p->shop->settings.style;
    leave_floor(p);
    leave_margin(p);
    leave_work(p);
    if (e->mass.mg > 0)
        leave(p, sb_pool_print(p->run->pool, "Weight, %s", weight_unit(style)), "wood of all pieces",
              weight_cell(style, e->mass));
    leave(p, "Waste",
          "share of timber and sheets used up (taken less what is kept), in no piece and no spare",
          sb_cell_share(e->waste));
    if (e->spare.ppm > 0)
        leave(p, "Spare for defects", "share of the same, put into the plan for knots and splits",
              sb_cell_share(e->spare));
    leave(p, "Cutting plan", "against the bound that no plan can go under",
          sb_cell_text(plan_words(p->run, style, p->way->plan)));
}
