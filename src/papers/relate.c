/* Relations that the money papers use again and again. */
#include "papers/relate.h"

spot spot_last(const sb_table *table, size_t column) {
    return (spot){table, table->rows.count - 1, column};
}

const sb_relation *rel_spot(sb_run *run, spot at) {
    return sb_rel_cell(run, at.table, at.row, at.column);
}

static const sb_relation *rounded(sb_run *run, sb_relation_kind kind, const sb_relation *a,
                                  const sb_relation *b, int digits) {
    return sb_rel_round(run, sb_rel(run, kind, a, b), digits);
}

const sb_relation *rel_product(sb_run *run, const sb_relation *a, const sb_relation *b, int digits) {
    return rounded(run, SB_REL_MUL, a, b, digits);
}

const sb_relation *rel_ratio(sb_run *run, const sb_relation *a, const sb_relation *b, int digits) {
    return rounded(run, SB_REL_DIV, a, b, digits);
}

const sb_relation *rel_plus(sb_run *run, const sb_relation *a, const sb_relation *b, int digits) {
    return rounded(run, SB_REL_ADD, a, b, digits);
}

const sb_relation *rel_less(sb_run *run, const sb_relation *a, const sb_relation *b, int digits) {
    return rounded(run, SB_REL_SUB, a, b, digits);
}

static const sb_relation *one_and(sb_run *run, sb_relation_kind kind, const sb_relation *share) {
    return sb_rel(run, kind, sb_rel_number(run, 1, 0), share);
}

const sb_relation *rel_before(sb_run *run, const sb_relation *a, const sb_relation *share, int digits) {
    return rel_ratio(run, a, one_and(run, SB_REL_ADD, share), digits);
}

const sb_relation *rel_raised(sb_run *run, const sb_relation *a, const sb_relation *share, int digits) {
    return rel_product(run, a, one_and(run, SB_REL_ADD, share), digits);
}

const sb_relation *rel_with_margin(sb_run *run, const sb_relation *a, const sb_relation *share, int digits) {
    return rel_ratio(run, a, one_and(run, SB_REL_SUB, share), digits);
}

const sb_relation *rel_sum_of(sb_run *run, const sb_table *table, size_t column, int digits) {
    size_t rows = table->rows.count - table->total_rows;
    if (rows == 0)
        return sb_rel_number(run, 0, 0);
    return sb_rel_round(run, sb_rel_sum(run, table, column, 0, rows - 1), digits);
}
