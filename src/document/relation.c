/* Relations: how one cell follows from others. */
#include "sawbill/document.h"

const sb_relation *sb_rel_kept(sb_run *run, sb_relation relation) {
    sb_relation *copy = SB_NEW(run->pool, sb_relation);
    *copy = relation;
    return copy;
}

const sb_relation *sb_rel_cell(sb_run *run, const sb_table *table, size_t row, size_t column) {
    return sb_rel_kept(
        run, (sb_relation){.kind = SB_REL_CELL, .table = table, .row = row, .row_to = row, .column = column});
}

const sb_relation *sb_rel_number(sb_run *run, int64_t amount, int digits) {
    return sb_rel_kept(run, (sb_relation){.kind = SB_REL_NUMBER, .amount = amount, .amount_digits = digits});
}

const sb_relation *sb_rel(sb_run *run, sb_relation_kind kind, const sb_relation *a, const sb_relation *b) {
    return sb_rel_kept(run, (sb_relation){.kind = kind, .a = a, .b = b});
}

const sb_relation *sb_rel_round(sb_run *run, const sb_relation *a, int digits) {
    return sb_rel_kept(run, (sb_relation){.kind = SB_REL_ROUND, .a = a, .digits = digits});
}

const sb_relation *sb_rel_sum(sb_run *run, const sb_table *table, size_t column, size_t row, size_t row_to) {
    return sb_rel_kept(run, (sb_relation){
                         .kind = SB_REL_SUM, .table = table, .row = row, .row_to = row_to, .column = column});
}
