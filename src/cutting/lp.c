/* The linear program in CLP's hands. Columns wait in lists until the next solve hands them over together. */
#include <float.h>

#include <Clp_C_Interface.h>

#include "cutting/lp.h"

struct sb_lp {
    sb_pool *pool;
    Clp_Simplex *model;
    size_t covers, rows;
    size_t known; /* columns handed over, those for what is missing among them */
    SB_LIST(double) costs, amounts, lowers, uppers;
    SB_LIST(int) row_of;
    SB_LIST(CoinBigIndex) starts;
    bool moved; /* right-hand sides or limits changed since the last solve */
    int64_t pivots;
};

static void release(void *model) {
    Clp_deleteModel(model);
}

static void add_rows(sb_lp *lp, const double *wanted) {
    double *lower = SB_NEW_ARRAY(lp->pool, double, lp->rows),
           *upper = SB_NEW_ARRAY(lp->pool, double, lp->rows);
    for (size_t i = 0; i < lp->rows; i++) {
        lower[i] = i < lp->covers ? wanted[i] : -DBL_MAX;
        upper[i] = i < lp->covers ? DBL_MAX : wanted[i];
    }
    Clp_resize(lp->model, (int)lp->rows, 0);
    Clp_chgRowLower(lp->model, lower);
    Clp_chgRowUpper(lp->model, upper);
}

sb_lp *sb_lp_new(sb_pool *pool, size_t covers, size_t rows, const double *wanted, double missing) {
    sb_lp *lp = SB_NEW(pool, sb_lp);
    *lp = (sb_lp){.pool = pool, .covers = covers, .rows = rows, .moved = true};
    lp->model = Clp_newModel();
    if (!lp->model)
        return NULL;
    sb_pool_defer(pool, release, lp->model);
    Clp_setLogLevel(lp->model, 0);
    Clp_scaling(lp->model, 0);
    add_rows(lp, wanted);
    for (size_t i = 0; i < covers; i++)
        sb_lp_add(lp, missing, &(sb_lp_entry){(int)i, 1}, 1);
    return lp;
}

void sb_lp_add(sb_lp *lp, double cost, const sb_lp_entry *entries, size_t count) {
    SB_PUSH(lp->pool, lp->costs, cost);
    SB_PUSH(lp->pool, lp->lowers, 0);
    SB_PUSH(lp->pool, lp->uppers, DBL_MAX);
    SB_PUSH(lp->pool, lp->starts, (CoinBigIndex)lp->amounts.count);
    for (size_t i = 0; i < count; i++) {
        SB_PUSH(lp->pool, lp->row_of, entries[i].row);
        SB_PUSH(lp->pool, lp->amounts, entries[i].amount);
    }
}

static void hand_over(sb_lp *lp) {
    if (lp->costs.count == 0)
        return;
    size_t count = lp->costs.count;
    SB_PUSH(lp->pool, lp->starts, (CoinBigIndex)lp->amounts.count);
    Clp_addColumns(lp->model, (int)count, lp->lowers.items, lp->uppers.items, lp->costs.items,
                   lp->starts.items, lp->row_of.items, lp->amounts.items);
    lp->known += count;
    lp->costs.count = lp->lowers.count = lp->uppers.count = lp->starts.count = 0;
    lp->row_of.count = lp->amounts.count = 0;
}

void sb_lp_want(sb_lp *lp, size_t row, double amount) {
    (row < lp->covers ? Clp_rowLower(lp->model) : Clp_rowUpper(lp->model))[row] = amount;
    lp->moved = true;
}

void sb_lp_limit(sb_lp *lp, size_t column, double most) {
    hand_over(lp);
    double *upper = &Clp_columnUpper(lp->model)[lp->covers + column];
    most = most < 0 ? DBL_MAX : most;
    lp->moved = lp->moved || *upper != most;
    *upper = most;
}

bool sb_lp_solve(sb_lp *lp) {
    hand_over(lp);
    int status = lp->moved ? Clp_dual(lp->model, 0) : Clp_primal(lp->model, 0);
    lp->pivots += Clp_numberIterations(lp->model);
    lp->moved = false;
    return status == 0;
}

double sb_lp_value(const sb_lp *lp) {
    return Clp_objectiveValue(lp->model);
}

double sb_lp_dual(const sb_lp *lp, size_t row) {
    return Clp_dualRowSolution(lp->model)[row];
}

double sb_lp_times(const sb_lp *lp, size_t column) {
    return Clp_primalColumnSolution(lp->model)[lp->covers + column];
}

int64_t sb_lp_pivots(const sb_lp *lp) {
    return lp->pivots;
}
