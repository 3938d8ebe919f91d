/* The integer program in CBC's hands. */
#include <float.h>
#include <signal.h>
#include <stdio.h>

#include <Cbc_C_Interface.h>

#include "cutting/integer.h"

sb_integer *sb_integer_new(sb_pool *pool, size_t rows) {
    sb_integer *p = SB_NEW(pool, sb_integer);
    *p = (sb_integer){.pool = pool, .rows = rows, .cutoff = DBL_MAX, .nodes = 1000};
    p->lower = SB_NEW_ARRAY(pool, double, rows);
    p->upper = SB_NEW_ARRAY(pool, double, rows);
    for (size_t i = 0; i < rows; i++) {
        p->lower[i] = -DBL_MAX;
        p->upper[i] = DBL_MAX;
    }
    return p;
}

void sb_integer_column(sb_integer *p, double cost, double most) {
    SB_PUSH(p->pool, p->costs, cost);
    SB_PUSH(p->pool, p->most, most);
    SB_PUSH(p->pool, p->starts, (int)p->amounts.count);
}

void sb_integer_enter(sb_integer *p, size_t row, double amount) {
    SB_PUSH(p->pool, p->row_of, (int)row);
    SB_PUSH(p->pool, p->amounts, amount);
}

static void set(Cbc_Model *model, const char *name, double value) {
    char text[32];
    snprintf(text, sizeof text, "%.12g", value);
    Cbc_setParameter(model, name, text);
}

static Cbc_Model *load(sb_integer *p) {
    Cbc_Model *model = Cbc_newModel();
    if (!model)
        return NULL;
    SB_PUSH(p->pool, p->starts, (int)p->amounts.count);
    Cbc_loadProblem(model, (int)p->costs.count, (int)p->rows, p->starts.items, p->row_of.items,
                    p->amounts.items, NULL, p->most.items, p->costs.items, p->lower, p->upper);
    for (size_t j = 0; j < p->costs.count; j++)
        Cbc_setInteger(model, (int)j);
    Cbc_setLogLevel(model, 0);
    set(model, "log", 0);
    set(model, "cutoff", p->cutoff);
    set(model, "maxNodes", p->nodes);
    Cbc_setParameter(model, "presolve", "off"); /* with it CLP prints what it adds */
    set(model, "depthMiniBab", -999); /* small searches of their own would not count as nodes */
    if (p->seconds > 0)
        set(model, "seconds", p->seconds);
    return model;
}

static sb_integer_end read_end(sb_integer *p, Cbc_Model *model) {
    bool found = Cbc_numberSavedSolutions(model) > 0 && Cbc_getObjValue(model) < p->cutoff;
    p->bound = Cbc_getBestPossibleObjValue(model);
    p->used = Cbc_getNodeCount(model);
    for (size_t j = 0; found && j < p->costs.count; j++)
        p->x[j] = Cbc_getColSolution(model)[j];
    if (Cbc_isProvenInfeasible(model))
        return SB_INTEGER_NONE;
    if (Cbc_isProvenOptimal(model))
        return found ? SB_INTEGER_BEST : SB_INTEGER_NONE;
    return found ? SB_INTEGER_SOME : SB_INTEGER_OPEN;
}

#define BY_THE_USER 5 /* secondary status of a search that the interrupt key ended */

/* CBC listens to the interrupt key while it works; afterwards whoever listened before does again, and hears of it. */
sb_integer_end sb_integer_solve(sb_integer *p) {
    struct sigaction before;
    p->x = SB_NEW_ARRAY(p->pool, double, p->costs.count + 1);
    Cbc_Model *model = load(p);
    if (!model)
        return SB_INTEGER_OPEN;
    sigaction(SIGINT, NULL, &before);
    Cbc_solve(model);
    sigaction(SIGINT, &before, NULL);
    if (Cbc_secondaryStatus(model) == BY_THE_USER)
        raise(SIGINT);
    sb_integer_end end = read_end(p, model);
    Cbc_deleteModel(model);
    return end;
}
