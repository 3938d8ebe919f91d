/* General solvers, as they come: CBC and GLPK. */
#include "bench.h"
#include "models.h"

#include <float.h>
#include <stdio.h>

#include <Cbc_C_Interface.h>
#include <glpk.h>

/* ---- CBC ----------------------------------------------------------------------------------------- */

void bench_cbc(const bench_program *p, unsigned seconds, bench_solution *out) {
    double start = bench_seconds();
    char limit[16];
    Cbc_Model *model = Cbc_newModel();
    Cbc_loadProblem(model, (int)p->costs.count, (int)p->lower.count, p->starts.items, p->row_of.items,
                    p->amounts.items, NULL, p->most.items, p->costs.items, p->lower.items, p->upper.items);
    for (size_t j = 0; j < p->costs.count; j++)
        Cbc_setInteger(model, (int)j);
    snprintf(limit, sizeof limit, "%u", seconds);
    Cbc_setParameter(model, "timeMode", "cpu");
    Cbc_setParameter(model, "seconds", limit);
    Cbc_solve(model);
    out->found = Cbc_numberSavedSolutions(model) > 0;
    out->proved = out->found && Cbc_isProvenOptimal(model);
    out->cost = Cbc_getObjValue(model);
    out->seconds = bench_seconds() - start;
    Cbc_deleteModel(model);
}

/* ---- GLPK ---------------------------------------------------------------------------------------- */

static void add_rows(glp_prob *program, const bench_program *p) {
    glp_add_rows(program, (int)p->lower.count);
    for (int i = 0; i < (int)p->lower.count; i++) {
        double lower = p->lower.items[i], upper = p->upper.items[i];
        int kind = lower <= -DBL_MAX ? GLP_UP : upper >= DBL_MAX ? GLP_LO : lower < upper ? GLP_DB : GLP_FX;
        glp_set_row_bnds(program, i + 1, kind, lower, upper);
    }
}

static void add_columns(glp_prob *program, const bench_program *p) {
    int rows[64];
    double amounts[64];
    glp_add_cols(program, (int)p->costs.count);
    for (int j = 0; j < (int)p->costs.count; j++) {
        int from = p->starts.items[j], count = p->starts.items[j + 1] - from;
        for (int e = 0; e < count && e < 63; e++) {
            rows[e + 1] = p->row_of.items[from + e] + 1;
            amounts[e + 1] = p->amounts.items[from + e];
        }
        glp_set_mat_col(program, j + 1, count, rows, amounts);
        glp_set_obj_coef(program, j + 1, p->costs.items[j]);
        glp_set_col_kind(program, j + 1, GLP_IV);
        glp_set_col_bnds(program, j + 1, p->most.items[j] > 0 ? GLP_DB : GLP_FX, 0, p->most.items[j]);
    }
}

void bench_glpk(const bench_program *p, unsigned seconds, bench_solution *out) {
    double start = bench_seconds();
    glp_prob *program = glp_create_prob();
    glp_iocp options;
    add_rows(program, p);
    add_columns(program, p);
    glp_init_iocp(&options);
    options.presolve = options.gmi_cuts = options.mir_cuts = GLP_ON;
    options.tm_lim = (int)seconds * 1000;
    glp_intopt(program, &options);
    int status = glp_mip_status(program);
    out->proved = status == GLP_OPT;
    out->found = out->proved || status == GLP_FEAS;
    out->cost = glp_mip_obj_val(program);
    out->seconds = bench_seconds() - start;
    glp_delete_prob(program);
}
