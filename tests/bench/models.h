/* bench/models.h -- a cutting job of square parts, boards alone priced, as an integer program in two common ways.
 *
 *   minimise   sum of c_j x_j                    0 <= x_j <= u_j, whole
 *   such that  lower_i <= sum of a_ij x_j <= upper_i
 */
#ifndef BENCH_MODELS_H
#define BENCH_MODELS_H

#include "sawbill/cutting.h"

typedef struct bench_program {
    sb_pool *pool;
    SB_LIST(double) lower, upper; /* by row; infinite: DBL_MAX with its sign */
    SB_LIST(double) costs, most;  /* by column: c, u */
    SB_LIST(int) starts, row_of;  /* entries column by column, rows from 0 */
    SB_LIST(double) amounts;
} bench_program;

size_t bench_row(bench_program *p, double lower, double upper);
/* Its entries follow. */
void bench_column(bench_program *p, double cost, double most);
void bench_entry(bench_program *p, size_t row, double amount);

/* By arcs: a board is a path through the sums that parts and kerfs can reach, the longest part first, and on along what
 * is lost up to the end of one of the boards on offer (Valerio de Carvalho 1999). */
void bench_arc_flow(const sb_problem *problem, bench_program *out);
/* By assignment: so many of a part on this board, if it is opened at all (Kantorovich 1960). No plan of interest costs
 * more than `enough`, which limits the number of boards. */
void bench_assignment(const sb_problem *problem, int64_t enough, bench_program *out);

typedef struct bench_solution {
    bool found, proved;
    double cost, seconds; /* in the currency's major unit; of the processor */
} bench_solution;

typedef void bench_solver(const bench_program *program, unsigned seconds, bench_solution *out);
void bench_cbc(const bench_program *program, unsigned seconds, bench_solution *out);
void bench_glpk(const bench_program *program, unsigned seconds, bench_solution *out);

#endif
