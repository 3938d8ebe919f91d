/* The least cost of boards or sheets whose worths add up to a total. */
#include <stdlib.h>

#include "cutting/duals.h"

__extension__ typedef __int128 wide;

typedef struct covering {
    const sb_cover *covers; /* cheapest worth first */
    size_t count;
    bool lack;
    int64_t best;
    int64_t open;  /* least bound of the nodes not looked into */
    int64_t steps; /* nodes it may still look into */
} covering;

static int by_ratio(const void *a, const void *b) {
    const sb_cover *one = a, *other = b;
    wide left = (wide)one->cost * other->worth, right = (wide)other->cost * one->worth;
    if (left != right)
        return left < right ? -1 : 1;
    return one->worth > other->worth ? -1 : one->worth < other->worth;
}

static int64_t divide_up(wide a, int64_t b) {
    return (int64_t)((a + b - 1) / b);
}

/* No way to cover `left` with the supplies from i on costs less; INT64_MAX where it cannot be covered. */
static int64_t at_least(const covering *c, size_t i, int64_t left) {
    int64_t cost = 0;
    for (; left > 0 && i < c->count; i++) {
        const sb_cover *with = &c->covers[i];
        if (c->lack && with->cost >= with->worth)
            break;
        if (with->available > left / with->worth)
            return cost + divide_up((wide)left * with->cost, with->worth);
        cost += with->available * with->cost;
        left -= with->available * with->worth;
    }
    return left <= 0 ? cost : c->lack ? cost + left : INT64_MAX;
}

static void search(covering *c, size_t i, int64_t left, int64_t cost) {
    c->steps--;
    int64_t made_up = left <= 0 ? cost : c->lack ? cost + left : INT64_MAX;
    if (made_up < c->best)
        c->best = made_up;
    if (left <= 0 || i == c->count)
        return;
    int64_t more = at_least(c, i, left);
    if (more == INT64_MAX || cost + more >= c->best)
        return;
    if (c->steps <= 0) {
        if (cost + more < c->open)
            c->open = cost + more;
        return;
    }
    const sb_cover *with = &c->covers[i];
    int64_t most = divide_up(left, with->worth);
    if (most > with->available)
        most = with->available;
    for (int64_t n = most; n >= 0; n--)
        search(c, i + 1, left - n * with->worth, cost + n * with->cost);
}

int64_t sb_cover_least(sb_run *run, const sb_cover *covers, size_t count, int64_t total, bool lack) {
    sb_cover *sorted = SB_NEW_ARRAY(run->pool, sb_cover, count + 1);
    for (size_t i = 0; i < count; i++)
        sorted[i] = covers[i];
    qsort(sorted, count, sizeof *sorted, by_ratio);
    covering c = {sorted, count, lack, INT64_MAX, INT64_MAX, 20000};
    search(&c, 0, total, 0);
    return c.best < c.open ? c.best : c.open;
}
