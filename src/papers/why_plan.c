/* The cutting plan: what it costs, how far that may be above the least, and how many boards and sheets it takes. */
#include "papers/figures.h"
#include "papers/order.h"
#include "papers/why_measures.h"

static const char *cost(const why *w, sb_cost amount) {
    return exact_cost_words(w->run, w->shop, amount);
}

static const sb_stock *stock_of(const why *w, size_t supply) {
    return w->way->cutlist->supplies.items[w->way->plan->problem->supplies.items[supply].tag].stock;
}

/* The stocks of the problem are numbers; the first supply of one tells which it is. */
static const sb_stock *bounded(const why *w, const sb_bound *bound) {
    const sb_problem *problem = w->way->plan->problem;
    for (size_t i = 0; i < problem->supplies.count; i++)
        if (problem->supplies.items[i].stock == bound->stock)
            return stock_of(w, i);
    return NULL;
}

static void say_bounds(why *w, const sb_plan *plan) {
    for (size_t i = 0; plan->certificate && i < plan->certificate->bounds.count; i++) {
        const sb_bound *bound = &plan->certificate->bounds.items[i];
        const sb_stock *stock = bounded(w, bound);
        if (stock)
            why_say(w, stock->title, cost(w, bound->cost),
                    sb_pool_print(w->run->pool, "no plan of it can cost less than %s, by %s",
                                  cost(w, bound->bound), bound->how),
                    stock->place);
    }
}

void why_plan(why *w) {
    const sb_plan *plan = w->way->plan;
    why_say(w, "cutting plan", plan_words(w->run, &w->shop->settings.style, plan),
            plan->proved ? "plan cost = no plan under" : "(plan cost - no plan under) / no plan under",
            (sb_place){0});
    why_say_money(w, "plan cost", sb_cost_money(plan->cost),
                  sb_pool_print(w->run->pool, "%s material + %s handling - %s leftovers",
                                cost(w, plan->material), cost(w, plan->handling), cost(w, plan->leftovers)),
                  (sb_place){0});
    why_say_money(w, "no plan under", (sb_money){sb_mul_div_down(plan->bound.milli, 1, 1000)},
                  "the sum over the stocks, with what every plan shares; 'cut --json' holds the proof",
                  (sb_place){0});
    say_bounds(w, plan);
}

/* Those that the plan takes, as the order lists them. */
static void say_taken(why *w, sb_stock_kind kind) {
    const sb_order *order = w->way->order;
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (line->stock->kind == kind)
            why_say(w, line->stock->title, sb_pool_print(w->run->pool, "%lld", (long long)line->count),
                    order_size(w->run, line, &w->shop->settings.style),
                    line->offer ? line->offer->place : line->rack->place);
    }
}

void why_boards(why *w) {
    sb_cell all = long_cell(&w->shop->settings.style, w->way->estimate->boards_length);
    why_say(w, "boards", sb_pool_print(w->run->pool, "%lld", (long long)w->way->plan->counts.boards),
            sb_pool_print(w->run->pool, "%s %s in all, bought and from the rack:",
                          sb_write_decimal(w->run, all.amount, 2, w->shop->settings.style.decimal_comma),
                          long_unit(&w->shop->settings.style)),
            (sb_place){0});
    say_taken(w, SB_STOCK_BOARD);
}

void why_sheets(why *w) {
    why_say(w, "sheets", sb_pool_print(w->run->pool, "%lld", (long long)w->way->plan->counts.sheets),
            "bought and from the rack:", (sb_place){0});
    say_taken(w, SB_STOCK_SHEET);
}
