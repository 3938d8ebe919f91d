/* Random formulas. A tree is made at random and written out with no more parentheses than it needs; its value
 * is computed here, by other means: plain fractions for exact arithmetic, long double for trigonometry. */
#include "desk.h"

#include <math.h>

/* xorshift64 of G. Marsaglia, "Xorshift RNGs", 2003 */
static uint64_t next_random(uint64_t *seed) {
    *seed ^= *seed << 13;
    *seed ^= *seed >> 7;
    *seed ^= *seed << 17;
    return *seed;
}

static int below(uint64_t *seed, int limit) {
    return (int)(next_random(seed) % (uint64_t)limit);
}

/* ---- exact: fractions ---- */

__extension__ typedef __int128 wide;
static const wide huge = (wide)INT64_MAX; /* beyond it the tree is given up, so that products fit */

enum {
    SUM = 1,
    PRODUCT,
    SIGN,
    ATOM
}; /* how tightly the top of a text binds */

typedef struct tree {
    const char *text;
    int binding;
    int power; /* of a length: 0 number, 1 length, 2 area */
    wide num, den;
    bool lost; /* grew too large to follow */
} tree;

static tree fraction(tree t, wide num, wide den) {
    wide a = num < 0 ? -num : num, b = den < 0 ? -den : den;
    while (b != 0) {
        wide rest = a % b;
        a = b;
        b = rest;
    }
    if (a == 0)
        a = 1;
    t.num = (den < 0 ? -num : num) / a;
    t.den = (den < 0 ? -den : den) / a;
    t.lost = t.lost || t.num > huge || t.num < -huge || t.den > huge;
    if (t.lost)
        t.num = t.den = 1;
    return t;
}

static const char *wrapped(desk *d, tree t, int needed) {
    return t.binding < needed ? sb_pool_print(d->run.pool, "(%s)", t.text) : t.text;
}

static tree grow(desk *d, uint64_t *seed, int depth, int power);

static tree grow_leaf(desk *d, uint64_t *seed, int power) {
    int n = 1 + below(seed, 40);
    tree t = {.binding = ATOM, .power = power};
    if (power == 0) {
        t.text = sb_pool_print(d->run.pool, "%d", n);
        return fraction(t, n, 1);
    }
    if (power == 2) {
        t.text = sb_pool_print(d->run.pool, "%d m2", n);
        return fraction(t, (wide)n * 1000000, 1); /* followed in mm and mm2 */
    }
    static const char *const names[] = {"long", "wide", "slat.width"};
    static const int sizes[] = {1000, 400, 95};
    int which = below(seed, 6);
    t.text = which < 3 ? names[which] : sb_pool_print(d->run.pool, "%d.5 mm", n);
    return which < 3 ? fraction(t, sizes[which], 1) : fraction(t, 2 * n + 1, 2);
}

static tree grow_sum(desk *d, uint64_t *seed, int depth, int power) {
    tree a = grow(d, seed, depth, power), b = grow(d, seed, depth, power);
    bool minus = below(seed, 2);
    tree t = {.binding = SUM, .power = power, .lost = a.lost || b.lost};
    t.text =
        sb_pool_print(d->run.pool, "%s %c %s", wrapped(d, a, SUM), minus ? '-' : '+', wrapped(d, b, PRODUCT));
    return fraction(t, a.num * b.den + (minus ? -1 : 1) * b.num * a.den, a.den * b.den);
}

static tree grow_product(desk *d, uint64_t *seed, int depth, int power) {
    int first = power == 0 ? 0 : below(seed, power + 1);
    tree a = grow(d, seed, depth, first), b = grow(d, seed, depth, power - first);
    tree t = {.binding = PRODUCT, .power = power, .lost = a.lost || b.lost};
    t.text = sb_pool_print(d->run.pool, "%s * %s", wrapped(d, a, PRODUCT), wrapped(d, b, SIGN));
    return fraction(t, a.num * b.num, a.den * b.den);
}

static tree grow_quotient(desk *d, uint64_t *seed, int depth, int power) {
    int below_power = power == 2 ? 0 : below(seed, 2);
    tree a = grow(d, seed, depth, power + below_power), b = grow(d, seed, depth, below_power);
    if (b.num == 0)
        return a.power == power ? a : grow_leaf(d, seed, power);
    tree t = {.binding = PRODUCT, .power = power, .lost = a.lost || b.lost};
    t.text = sb_pool_print(d->run.pool, "%s / %s", wrapped(d, a, PRODUCT), wrapped(d, b, SIGN));
    return fraction(t, a.num * b.den, a.den * b.num);
}

static tree grow_negative(desk *d, uint64_t *seed, int depth, int power) {
    tree a = grow(d, seed, depth, power);
    tree t = {.binding = SIGN, .power = power, .lost = a.lost};
    t.text = sb_pool_print(d->run.pool, "-%s", wrapped(d, a, SIGN));
    return fraction(t, -a.num, a.den);
}

static bool is_less(tree a, tree b) {
    return a.num * b.den < b.num * a.den;
}

static tree grow_choice(desk *d, uint64_t *seed, int depth, int power) {
    tree a = grow(d, seed, depth, power), b = grow(d, seed, depth, power);
    int form = below(seed, 3);
    tree t = {.binding = ATOM, .power = power, .lost = a.lost || b.lost};
    const char *x = a.text, *y = b.text;
    if (form == 2)
        t.text = sb_pool_print(d->run.pool, "if(%s < %s, %s, %s)", x, y, y, x); /* the larger */
    else
        t.text = sb_pool_print(d->run.pool, "%s(%s, %s)", form ? "max" : "min", x, y);
    tree chosen = is_less(a, b) == (form > 0) ? b : a;
    return fraction(t, chosen.num, chosen.den);
}

static wide floor_of(tree t) {
    return t.num / t.den - (t.num % t.den < 0);
}

static tree grow_rounded(desk *d, uint64_t *seed, int depth, int power) {
    static const char *const steps[] = {"1", "1 mm", "1 m2"};
    tree a = grow(d, seed, depth, power);
    tree t = {.binding = ATOM, .power = power, .lost = a.lost};
    wide step = power == 2 ? 1000000 : 1;
    a = fraction(a, a.num, a.den * step);
    bool up = below(seed, 2);
    t.text = sb_pool_print(d->run.pool, "%s(%s, %s)", up ? "ceil" : "round_down", a.text, steps[power]);
    wide whole = floor_of(a);
    if (up && whole * a.den != a.num)
        whole++;
    t.lost = t.lost || a.lost;
    return fraction(t, whole * step, 1);
}

static tree grow(desk *d, uint64_t *seed, int depth, int power) {
    static tree (*const kinds[])(desk *, uint64_t *, int, int) = {
        grow_sum, grow_sum, grow_product, grow_quotient, grow_negative, grow_choice, grow_rounded};
    if (depth == 0)
        return grow_leaf(d, seed, power);
    return kinds[below(seed, 7)](d, seed, depth - 1 - below(seed, depth), power);
}

/* The engine counts in mm and mm2 as well. */
static void assert_tree(desk *d, tree t) {
    const sb_formula *formula = read_formula(d, t.text);
    sb_value value = formula ? sb_formula_value(&d->run, formula, d->scope) : (sb_value){0};
    if (!sb_ok(&d->run) || value.dimension.length != t.power)
        fail_with_notices(d, t.text);
    double real = (double)t.num / (double)t.den;
    if (fabs(value.real - real) > 1e-14 * fabs(real))
        fail_msg("%s: expected %.17g, got %.17g", t.text, real, value.real);
    if (value.exact && (wide)value.ratio.num * t.den != t.num * value.ratio.den)
        fail_msg("%s: expected %.17g exactly, got %.17g", t.text, real, value.real);
    if (!value.exact)
        fail_msg("%s: fits, and should be exact", t.text);
}

static void furnish(desk *d) {
    sb_scope_set(&d->run, d->scope, "long", sb_value_length(SB_MM(1000)));
    sb_scope_set(&d->run, d->scope, "wide", sb_value_length(SB_MM(400)));
    sb_scope_set_attribute(&d->run, d->scope, "slat", "width", sb_value_length(SB_MM(95)));
}

static void fractions_agree(void **state) {
    desk *d = *state;
    uint64_t seed = 20260331;
    int followed = 0;
    furnish(d);
    for (int i = 0; i < 6000; i++) {
        tree t = grow(d, &seed, 1 + i % 7, below(&seed, 3));
        if (t.lost)
            continue;
        assert_tree(d, t);
        followed++;
    }
    assert_in_range(followed, 4000, 6000);
}

/* ---- inexact: long double ---- */

/* Only sums, products and quotients of positive numbers, which do not magnify an error. */
typedef struct curve {
    const char *text; /* always in parentheses or a call */
    long double real;
} curve;

static long double radians(int degrees) {
    return (long double)degrees * acosl(-1) / 180;
}

static curve bend(desk *d, uint64_t *seed, int depth) {
    sb_pool *pool = d->run.pool;
    int angle = 1 + below(seed, 88);
    if (depth == 0) {
        static const char *const names[] = {"sin", "cos", "tan"};
        long double values[] = {sinl(radians(angle)), cosl(radians(angle)), tanl(radians(angle))};
        int which = below(seed, 3);
        return (curve){sb_pool_print(pool, "%s(%d deg)", names[which], angle), values[which]};
    }
    curve a = bend(d, seed, depth - 1), b = bend(d, seed, depth - 1);
    switch (below(seed, 6)) {
    case 0:
        return (curve){sb_pool_print(pool, "(%s + %s)", a.text, b.text), a.real + b.real};
    case 1:
        return (curve){sb_pool_print(pool, "(%s * %s)", a.text, b.text), a.real * b.real};
    case 2:
        return (curve){sb_pool_print(pool, "(%s / %s)", a.text, b.text), a.real / b.real};
    case 3:
        return (curve){sb_pool_print(pool, "sqrt(%s)", a.text), sqrtl(a.real)};
    case 4:
        return (curve){sb_pool_print(pool, "(%s ^ (2/3))", b.text), powl(b.real, 2.0L / 3)};
    default:
        return (curve){sb_pool_print(pool, "(atan2(%s * 1 m, %s * 1 m) / 1 deg)", a.text, b.text),
                       atan2l(a.real, b.real) * 180 / acosl(-1)};
    }
}

static void curves_agree(void **state) {
    desk *d = *state;
    uint64_t seed = 1728;
    for (int i = 0; i < 2000; i++) {
        curve c = bend(d, &seed, i % 5);
        double expected = (double)c.real;
        assert_near(d, c.text, expected, 1e-13 * expected);
    }
}

/* ---- anything at all ---- */

/* A heap of tokens either reads without an error or is refused with one; what was read comes to a value or to
 * NONE with an error; nothing falls over. */
static void any_heap_of_tokens(void **state) {
    static const char *const tokens[] = {
        "(",    ")",     "+",       "-",     "*",   "/",      "^",   ",",     ".",    "=",    "<",
        ">=",   "!=",    "and",     "or",    "not", "if",     "min", "floor", "sqrt", "tan",  "long",
        "slat", "width", "unknown", "20 mm", "3",   "90 deg", "0",   "12 %",  "true", "when", "1/63\"",
    };
    desk *d = *state;
    uint64_t seed = 4711;
    furnish(d);
    for (int i = 0; i < 20000; i++) {
        const char *text = "";
        for (int n = 1 + below(&seed, 9); n > 0; n--)
            text = sb_pool_print(d->run.pool, "%s %s", text,
                                 tokens[below(&seed, (int)(sizeof tokens / sizeof *tokens))]);
        const char *rest;
        size_t before = sb_notices_count(&d->run, SB_NOTE);
        const sb_formula *formula = read_until(d, text, false, &rest);
        size_t read = sb_notices_count(&d->run, SB_NOTE);
        if ((formula == NULL) != (read > before))
            fail_with_notices(d, text);
        sb_value value = formula ? sb_formula_value(&d->run, formula, d->scope) : (sb_value){0};
        if (formula && (value.kind == SB_VALUE_NONE) != (sb_notices_count(&d->run, SB_NOTE) > read))
            fail_with_notices(d, text);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(fractions_agree),
        AT_DESK(curves_agree),
        AT_DESK(any_heap_of_tokens),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
