/* Primal simplex method with an explicit inverse. */
#include <math.h>

#include "cutting/simplex.h"

#define TINY    1e-9
#define REFRESH 150 /* pivots between fresh inverses */

/* ---- set up -------------------------------------------------------------------------------------- */

/* Between 1 and 2, another for each row. */
static double hair(size_t row) {
    return 1 + (double)(row * 2654435761u % 9973) / 9973;
}

static void add_own(sb_simplex *s, double cost, size_t row, double amount) {
    sb_lp_entry entry = {row, amount};
    sb_simplex_add(s, cost, &entry, 1, SIZE_MAX);
}

/* Columns 0 .. rows-1 are the first basis: parts missing, boards not used. Then what is made in excess. */
static void start(sb_simplex *s, const double *wanted, const double *missing) {
    for (size_t i = 0; i < s->rows; i++) {
        s->wanted[i] = wanted[i] + 1e-7 * hair(i) * (1 + wanted[i] * 1e-3);
        add_own(s, i < s->covers ? missing[i] : 0, i, 1);
        s->basis[i] = i;
        s->basic[i] = s->wanted[i];
        s->inverse[i * s->rows + i] = 1;
    }
    for (size_t i = 0; i < s->covers; i++)
        add_own(s, 0, i, -1);
}

sb_simplex *sb_simplex_new(sb_pool *pool, size_t covers, size_t rows, const double *wanted,
                           const double *missing) {
    sb_simplex *s = SB_NEW(pool, sb_simplex);
    *s = (sb_simplex){.pool = pool, .rows = rows, .covers = covers};
    s->wanted = SB_NEW_ARRAY(pool, double, rows);
    s->inverse = SB_NEW_ARRAY(pool, double, 2 * rows * rows); /* the second half is for fresh inverses */
    s->basic = SB_NEW_ARRAY(pool, double, rows);
    s->basis = SB_NEW_ARRAY(pool, size_t, rows);
    s->dual = SB_NEW_ARRAY(pool, double, rows);
    s->direction = SB_NEW_ARRAY(pool, double, rows);
    start(s, wanted, missing);
    return s;
}

void sb_simplex_add(sb_simplex *s, double cost, const sb_lp_entry *entries, size_t count, size_t tag) {
    sb_lp_column column = {cost, s->entries.count, count, tag};
    for (size_t i = 0; i < count; i++)
        SB_PUSH(s->pool, s->entries, entries[i]);
    SB_PUSH(s->pool, s->columns, column);
}

/* ---- a fresh inverse, by Gauss and Jordan -------------------------------------------------------- */

static void load_basis(const sb_simplex *s, double *matrix) {
    size_t m = s->rows;
    for (size_t i = 0; i < m * m; i++)
        matrix[i] = 0;
    for (size_t j = 0; j < m; j++) {
        const sb_lp_column *column = &s->columns.items[s->basis[j]];
        for (size_t e = 0; e < column->entries; e++) {
            const sb_lp_entry *entry = &s->entries.items[column->first + e];
            matrix[entry->row * m + j] = entry->amount;
        }
    }
}

static void swap_rows(double *matrix, size_t m, size_t a, size_t b) {
    for (size_t j = 0; a != b && j < m; j++) {
        double keep = matrix[a * m + j];
        matrix[a * m + j] = matrix[b * m + j];
        matrix[b * m + j] = keep;
    }
}

static void subtract_row(double *matrix, size_t m, size_t from, size_t row, double factor) {
    for (size_t j = 0; j < m; j++)
        matrix[from * m + j] -= factor * matrix[row * m + j];
}

static void scale_row(double *matrix, size_t m, size_t row, double factor) {
    for (size_t j = 0; j < m; j++)
        matrix[row * m + j] *= factor;
}

static bool eliminate(double *matrix, double *inverse, size_t m, size_t step) {
    size_t pivot = step;
    for (size_t i = step; i < m; i++)
        if (fabs(matrix[i * m + step]) > fabs(matrix[pivot * m + step]))
            pivot = i;
    if (fabs(matrix[pivot * m + step]) < TINY)
        return false;
    swap_rows(matrix, m, step, pivot);
    swap_rows(inverse, m, step, pivot);
    double by = 1 / matrix[step * m + step];
    scale_row(matrix, m, step, by);
    scale_row(inverse, m, step, by);
    for (size_t i = 0; i < m; i++) {
        double factor = matrix[i * m + step];
        if (i == step || factor == 0)
            continue;
        subtract_row(matrix, m, i, step, factor);
        subtract_row(inverse, m, i, step, factor);
    }
    return true;
}

static void set_basic(sb_simplex *s) {
    size_t m = s->rows;
    for (size_t i = 0; i < m; i++) {
        double sum = 0;
        for (size_t j = 0; j < m; j++)
            sum += s->inverse[i * m + j] * s->wanted[j];
        s->basic[i] = sum;
    }
}

static bool refresh(sb_simplex *s) {
    size_t m = s->rows;
    double *matrix = s->inverse + m * m;
    load_basis(s, matrix);
    for (size_t i = 0; i < m * m; i++)
        s->inverse[i] = i % (m + 1) == 0;
    for (size_t step = 0; step < m; step++)
        if (!eliminate(matrix, s->inverse, m, step))
            return false;
    set_basic(s);
    return true;
}

/* ---- price, direct, choose, pivot ---------------------------------------------------------------- */

static void price(sb_simplex *s) {
    size_t m = s->rows;
    for (size_t j = 0; j < m; j++)
        s->dual[j] = 0;
    for (size_t i = 0; i < m; i++) {
        double cost = s->columns.items[s->basis[i]].cost;
        for (size_t j = 0; cost != 0 && j < m; j++)
            s->dual[j] += cost * s->inverse[i * m + j];
    }
}

static double reduced_cost(const sb_simplex *s, const sb_lp_column *column) {
    double cost = column->cost;
    for (size_t e = 0; e < column->entries; e++) {
        const sb_lp_entry *entry = &s->entries.items[column->first + e];
        cost -= entry->amount * s->dual[entry->row];
    }
    return cost;
}

static size_t entering(const sb_simplex *s, double least_gain) {
    size_t best = SIZE_MAX;
    double least = -least_gain;
    for (size_t j = 0; j < s->columns.count; j++) {
        double cost = reduced_cost(s, &s->columns.items[j]);
        if (cost < least)
            least = cost, best = j;
    }
    return best;
}

static void direct(sb_simplex *s, const sb_lp_column *column) {
    size_t m = s->rows;
    for (size_t i = 0; i < m; i++) {
        double sum = 0;
        for (size_t e = 0; e < column->entries; e++) {
            const sb_lp_entry *entry = &s->entries.items[column->first + e];
            sum += s->inverse[i * m + entry->row] * entry->amount;
        }
        s->direction[i] = sum;
    }
}

/* The basic variable that first falls to nothing; of equals the one with the firmest pivot. */
static size_t leaving(const sb_simplex *s) {
    size_t best = SIZE_MAX;
    double least = INFINITY;
    for (size_t i = 0; i < s->rows; i++) {
        if (s->direction[i] < 1e-8)
            continue;
        double ratio = (s->basic[i] > 0 ? s->basic[i] : 0) / s->direction[i];
        bool firmer = best != SIZE_MAX && ratio < least + TINY && s->direction[i] > s->direction[best];
        if (ratio < least - TINY || firmer)
            best = i, least = ratio < least ? ratio : least;
    }
    return best;
}

static void pivot_on(sb_simplex *s, size_t row, size_t column) {
    size_t m = s->rows;
    double by = s->direction[row], step = s->basic[row] / by;
    scale_row(s->inverse, m, row, 1 / by);
    for (size_t i = 0; i < m; i++) {
        if (i == row || s->direction[i] == 0)
            continue;
        subtract_row(s->inverse, m, i, row, s->direction[i]);
        s->basic[i] -= step * s->direction[i];
    }
    s->basic[row] = step;
    s->basis[row] = column;
}

static double scale_of_costs(const sb_simplex *s) {
    double most = 0;
    for (size_t j = s->rows; j < s->columns.count; j++)
        if (fabs(s->columns.items[j].cost) > most)
            most = fabs(s->columns.items[j].cost);
    return most;
}

void sb_simplex_run(sb_simplex *s, size_t pivots) {
    double least_gain = 1e-9 * scale_of_costs(s) + 1e-9;
    price(s);
    while (pivots-- > 0) {
        size_t column = entering(s, least_gain);
        if (column == SIZE_MAX)
            break;
        direct(s, &s->columns.items[column]);
        size_t row = leaving(s);
        if (row == SIZE_MAX)
            break;
        pivot_on(s, row, column);
        if (++s->pivots % REFRESH == 0 && !refresh(s))
            break;
        price(s);
    }
}
