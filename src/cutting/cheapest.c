/* The cheapest numbers of boards. */
#include "cutting/cheapest.h"

#include <math.h>

#define TABLES 12   /* of rows */
#define CELLS  8192 /* for one board in a table */

/* ---- set up -------------------------------------------------------------------------------------- */

/* Money in so many steps; none where a board costs less than a step. */
static int64_t unit_of(const sb_cheapest *c, int64_t dearest) {
    int64_t unit = dearest / CELLS + 1;
    for (size_t s = 0; s < c->boards; s++)
        if (c->prices[s] > 0 && c->prices[s] < unit)
            return 0;
    return unit;
}

sb_cheapest sb_cheapest_new(sb_pool *pool, size_t boards, const int64_t *prices, const int64_t *most,
                            int64_t dearest) {
    sb_cheapest c = {.pool = pool, .boards = boards, .prices = prices, .most = most};
    c.unit = unit_of(&c, dearest);
    c.order = SB_NEW_ARRAY(pool, size_t, boards);
    c.now = SB_NEW_ARRAY(pool, int64_t, boards);
    c.found = SB_NEW_ARRAY(pool, int64_t, boards);
    c.lacks = SB_NEW_ARRAY(pool, int64_t, (boards + 1) * SB_CHEAPEST_ROWS);
    return c;
}

/* ---- rows ---------------------------------------------------------------------------------------- */

static double price_of_worth(const sb_cheapest *c, const int64_t *worths, size_t board) {
    return worths[board] > 0 ? (double)c->prices[board] / (double)worths[board] : INFINITY;
}

/* Those that cost nothing come first: all of them are taken. */
static double rank(const sb_cheapest *c, const int64_t *worths, size_t board) {
    return c->prices[board] == 0 ? INFINITY : price_of_worth(c, worths, board);
}

static void put_in_order(sb_cheapest *c, const int64_t *worths) {
    for (size_t s = 0; s < c->boards; s++) {
        size_t at = s;
        for (; at > 0 && rank(c, worths, c->order[at - 1]) < rank(c, worths, s); at--)
            c->order[at] = c->order[at - 1];
        c->order[at] = s;
    }
}

static int64_t *reach_from(const sb_cover_row *row, size_t place) {
    return row->reach + place * (CELLS + 1);
}

/* A board more or not, or as many as one likes where there are several. */
static void table_board(const sb_cheapest *c, const sb_cover_row *row, size_t place) {
    size_t board = c->order[place];
    const int64_t *next = reach_from(row, place + 1);
    int64_t *here = reach_from(row, place), worth = row->worths[board], units = c->prices[board] / c->unit;
    for (int64_t money = 0; money <= CELLS; money++) {
        here[money] = next[money];
        if (units == 0)
            here[money] += worth * c->most[board];
        else if (money >= units) {
            int64_t with = worth + (c->most[board] == 1 ? next : here)[money - units];
            here[money] = with > here[money] ? with : here[money];
        }
    }
}

static void table(const sb_cheapest *c, sb_cover_row *row) {
    if (c->rows.count >= TABLES || c->unit == 0)
        return;
    row->reach = SB_NEW_ARRAY(c->pool, int64_t, (c->boards + 1) * (CELLS + 1));
    for (size_t place = c->boards; place-- > 0;)
        table_board(c, row, place);
}

void sb_cheapest_row(sb_cheapest *c, const int64_t *worths, int64_t total) {
    sb_cover_row row = {.total = total};
    row.worths = SB_NEW_ARRAY(c->pool, int64_t, c->boards);
    row.ratio = SB_NEW_ARRAY(c->pool, double, c->boards + 1);
    for (size_t s = 0; s < c->boards; s++)
        row.worths[s] = worths[s];
    if (c->rows.count == 0)
        put_in_order(c, worths);
    row.ratio[c->boards] = INFINITY;
    for (size_t place = c->boards; place-- > 0;)
        row.ratio[place] = fmin(row.ratio[place + 1], price_of_worth(c, worths, c->order[place]));
    table(c, &row);
    SB_PUSH(c->pool, c->rows, row);
}

/* ---- the search ---------------------------------------------------------------------------------- */

/* What the rows lack behind the first boards of the order, row by row. */
static int64_t *lacking(const sb_cheapest *c, size_t place) {
    return c->lacks + place * SB_CHEAPEST_ROWS;
}

/* A hundredth stands against what the division lost. */
static bool cannot_cover(const sb_cheapest *c, const sb_cover_row *row, size_t place, int64_t lack,
                         int64_t money) {
    if ((double)lack * row->ratio[place] > (double)money * (1 + 1e-12) + 0.01)
        return true;
    return row->reach && lack > reach_from(row, place)[money / c->unit];
}

static bool is_too_dear(const sb_cheapest *c, size_t place, int64_t cost) {
    for (size_t k = 0; k < c->rows.count; k++) {
        int64_t lack = lacking(c, place)[k];
        if (lack > 0 && cannot_cover(c, &c->rows.items[k], place, lack, c->limit - cost))
            return true;
    }
    return false;
}

static void take(sb_cheapest *c, size_t place, int64_t count) {
    c->now[c->order[place]] = count;
    for (size_t k = 0; k < c->rows.count; k++)
        lacking(c, place + 1)[k] = lacking(c, place)[k] - count * c->rows.items[k].worths[c->order[place]];
}

static void keep(sb_cheapest *c, int64_t cost) {
    if (c->is_out && c->is_out(c->context, c->now))
        return;
    for (size_t s = 0; s < c->boards; s++)
        c->found[s] = c->now[s];
    c->cost = cost;
    c->limit = cost - 1;
}

/* So many that the last board of all covers what each row lacks. */
static int64_t enough_of_last(const sb_cheapest *c, size_t place) {
    int64_t enough = 0;
    for (size_t k = 0; k < c->rows.count; k++) {
        int64_t lack = lacking(c, place)[k], worth = c->rows.items[k].worths[c->order[place]];
        int64_t count = lack <= 0 ? 0 : worth > 0 ? (lack - 1) / worth + 1 : INT64_MAX;
        enough = count > enough ? count : enough;
    }
    return enough;
}

static void search(sb_cheapest *c, size_t place, int64_t cost) {
    if (--c->nodes < 0 || is_too_dear(c, place, cost))
        return;
    if (place == c->boards) {
        keep(c, cost);
        return;
    }
    int64_t most = c->most[c->order[place]], price = c->prices[c->order[place]], count = 0;
    if (price == 0)
        count = most;
    else if (place + 1 == c->boards)
        count = enough_of_last(c, place);
    for (; count <= most && price * count <= c->limit - cost && c->nodes > 0; count++) {
        take(c, place, count);
        search(c, place + 1, cost + price * count);
    }
}

sb_cheapest_end sb_cheapest_find(sb_cheapest *c, int64_t limit, int64_t *nodes) {
    c->limit = limit;
    c->cost = INT64_MAX;
    c->nodes = *nodes;
    for (size_t k = 0; k < c->rows.count; k++)
        lacking(c, 0)[k] = c->rows.items[k].total;
    if (limit >= 0)
        search(c, 0, 0);
    *nodes = c->nodes > 0 ? c->nodes : 0;
    if (*nodes == 0)
        return SB_CHEAPEST_OPEN;
    return c->cost < INT64_MAX ? SB_CHEAPEST_FOUND : SB_CHEAPEST_NONE;
}
