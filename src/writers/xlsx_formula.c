/* Relations as formulas. */
#include "writers/xlsx.h"

#include "writers/bytes.h"

#include <string.h>

typedef struct formula {
    const xlsx *x;
    const xlsx_sheet *from; /* cells of this sheet need no sheet name */
    bytes text;
} formula;

static void add(formula *f, const char *text) {
    bytes_add_text(f->x->run, &f->text, text);
}

const char *xlsx_address(sb_run *run, const xlsx_sheet *sheet, uint32_t row, size_t column) {
    char cell[LXW_MAX_CELL_NAME_LENGTH];
    lxw_rowcol_to_cell_abs(cell, row, (lxw_col_t)column, 1, 1);
    return sb_pool_print(run->pool, "'%s'!%s", sheet->name, cell);
}

/* ---- where a cell stands ---------------------------------------------------------------------------- */

xlsx_found xlsx_find(const xlsx *x, const sb_table *table, size_t row) {
    for (size_t s = 0; s < x->sheets.count; s++)
        for (size_t b = 0; b < x->sheets.items[s].block_count; b++) {
            const xlsx_block *block = &x->sheets.items[s].blocks[b];
            if (block->block->kind == SB_BLOCK_TABLE && block->block->table == table && row >= block->from &&
                row < block->to)
                return (xlsx_found){&x->sheets.items[s],
                                    xlsx_body_row(block) + (uint32_t)(row - block->from)};
        }
    return (xlsx_found){NULL, 0}; /* sb_document_sound has seen to it that this cannot be */
}

static void add_cell(formula *f, const sb_table *table, size_t row, size_t column) {
    xlsx_found at = xlsx_find(f->x, table, row);
    char cell[LXW_MAX_CELL_NAME_LENGTH];
    if (at.sheet != f->from)
        add(f, sb_pool_print(f->x->run->pool, "'%s'!", at.sheet->name));
    lxw_rowcol_to_cell(cell, at.row, (lxw_col_t)column);
    add(f, cell);
}

/* Cells of a table, from one corner to the other. */
typedef struct area {
    size_t row, row_to, column, column_to;
} area;

static void add_area(formula *f, const sb_table *table, area at) {
    xlsx_found first = xlsx_find(f->x, table, at.row);
    char cell[LXW_MAX_CELL_NAME_LENGTH];
    add_cell(f, table, at.row, at.column);
    add(f, ":");
    lxw_rowcol_to_cell(cell, first.row + (uint32_t)(at.row_to - at.row), (lxw_col_t)at.column_to);
    add(f, cell);
}

/* ---- terms ------------------------------------------------------------------------------------------ */

/* How strongly a term binds: sums, products, everything else. */
static int strength(const sb_relation *r) {
    switch (r->kind) {
    case SB_REL_ADD:
    case SB_REL_SUB:
        return 1;
    case SB_REL_MUL:
    case SB_REL_DIV:
        return 2;
    case SB_REL_NUMBER:
        return r->amount < 0 ? 0 : 3;
    case SB_REL_ROUND_UP_TO:
    case SB_REL_MAX:
    case SB_REL_WHERE:
    case SB_REL_CELL:
    case SB_REL_ROUND:
    case SB_REL_SUM:
    case SB_REL_SUM_OF:
    case SB_REL_PICK:
    case SB_REL_REST:
    case SB_REL_SHARE:
        break;
    }
    return 3;
}

static void add_term(formula *f, const sb_relation *r);

static void add_operand(formula *f, const sb_relation *r, int least) {
    bool brackets = strength(r) < least;
    add(f, brackets ? "(" : "");
    add_term(f, r);
    add(f, brackets ? ")" : "");
}

/* On the right an equal strength needs brackets too: a-(b-c). */
static void add_binary(formula *f, const sb_relation *r, const char *sign, int own) {
    add_operand(f, r->a, own);
    add(f, sign);
    add_operand(f, r->b, own + 1);
}

/* Binary arithmetic misses an exact half by a little, 3 * 0.075 = 0.22499999999999998, and not every program
 * forgives it when rounding. Rounding first to seven more decimals does: that is coarser than the error of amounts
 * below a million or so, and finer than what rates, shares and counts can come near a half without meeting it. */
static bool is_computed(const sb_relation *r) {
    return r->kind != SB_REL_CELL && r->kind != SB_REL_NUMBER && r->kind != SB_REL_ROUND;
}

static void add_round(formula *f, const sb_relation *r) {
    bool twice = is_computed(r->a);
    add(f, twice ? "ROUND(ROUND(" : "ROUND(");
    add_term(f, r->a);
    if (twice)
        add(f, sb_pool_print(f->x->run->pool, ",%d)", r->digits + 7));
    add(f, sb_pool_print(f->x->run->pool, ",%d)", r->digits));
}

/* Programs disagree about CEILING, so it is not used. The inner ROUND keeps 247.00000000000003 from becoming
 * 248, the outer one clears the product of its binary dust. */
static void add_round_up(formula *f, const sb_relation *r) {
    add(f, "ROUND(ROUNDUP(ROUND(");
    add_operand(f, r->a, 2);
    add(f, "/");
    add_operand(f, r->b, 3);
    add(f, ",9),0)*");
    add_operand(f, r->b, 3);
    add(f, ",9)");
}

static const char *number_text(sb_run *run, int64_t amount, int digits) {
    while (digits > 0 && amount % 10 == 0) {
        amount /= 10;
        digits--;
    }
    return sb_write_decimal(run, amount, digits, false);
}

static void add_sum(formula *f, const sb_relation *r) {
    if (r->row > r->row_to) {
        add(f, "0"); /* of no rows */
        return;
    }
    add(f, "SUM(");
    add_area(f, r->table, (area){r->row, r->row_to, r->column, r->column});
    add(f, ")");
}

static void add_max(formula *f, const sb_relation *r) {
    add(f, "MAX(");
    add_term(f, r->a);
    add(f, ",");
    add_term(f, r->b);
    add(f, ")");
}

static void add_where(formula *f, const sb_relation *r) {
    add(f, "IF(");
    add_term(f, r->a);
    add(f, ">0,");
    add_term(f, r->b);
    add(f, ",0)");
}

static void add_sum_of(formula *f, const sb_relation *r) {
    add(f, "SUMIF(");
    add_area(f, r->table, (area){r->row, r->row_to, r->key, r->key});
    add(f, ",");
    add_term(f, r->a);
    add(f, ",");
    add_area(f, r->table, (area){r->row, r->row_to, r->column, r->column});
    add(f, ")");
}

static void add_pick(formula *f, const sb_relation *r) {
    add(f, "INDEX(");
    add_area(f, r->table, (area){r->row_to, r->row_to, r->column, r->column_to});
    add(f, ",1,MATCH(");
    add_term(f, r->a);
    add(f, ",");
    add_area(f, r->table, (area){r->row, r->row, r->column, r->column_to});
    add(f, ",0))");
}

/* ---- shares by the largest remainder: all in whole numbers, which divide and multiply exactly ------------------ */

static int64_t units_of(int digits) {
    int64_t units = 1;
    for (int i = 0; i < digits; i++)
        units *= 10;
    return units;
}

/* weight * amount, in units of the last figure */
static void add_due(formula *f, const sb_relation *r) {
    add_cell(f, r->table, r->own, r->column);
    add(f, "*ROUND(ABS(");
    add_term(f, r->a);
    add(f, sb_pool_print(f->x->run->pool, ")*%lld,0)", (long long)units_of(r->digits)));
}

static void add_all_weights(formula *f, const sb_relation *r) {
    add(f, "MAX(1,SUM(");
    add_area(f, r->table, (area){r->row, r->row_to, r->column, r->column});
    add(f, "))");
}

static void add_whole(formula *f, const sb_relation *r) {
    add(f, "INT(");
    add_due(f, r);
    add(f, "/");
    add_all_weights(f, r);
    add(f, ")");
}

static void add_rest(formula *f, const sb_relation *r) {
    add_due(f, r);
    add(f, "-");
    add_all_weights(f, r);
    add(f, "*");
    add_whole(f, r);
}

/* How many rows of those come before this one: their remainders are larger, or alike and earlier. */
static void add_rank(formula *f, const sb_relation *r) {
    add(f, "SUMPRODUCT(--(");
    add_area(f, r->table, (area){r->row, r->row_to, r->column_to, r->column_to});
    add(f, ">");
    add_cell(f, r->table, r->own, r->column_to);
    add(f, "))");
    if (r->own == r->row)
        return;
    add(f, "+SUMPRODUCT(--(");
    add_area(f, r->table, (area){r->row, r->own - 1, r->column_to, r->column_to});
    add(f, "=");
    add_cell(f, r->table, r->own, r->column_to);
    add(f, "))");
}

/* The remainders add up to as many times the weights' sum as there are units left to give. */
static void add_share(formula *f, const sb_relation *r) {
    add(f, "ROUND(SIGN(");
    add_term(f, r->a);
    add(f, ")*(");
    add_whole(f, r);
    add(f, "+IF(");
    add_rank(f, r);
    add(f, "<SUM(");
    add_area(f, r->table, (area){r->row, r->row_to, r->column_to, r->column_to});
    add(f, ")/");
    add_all_weights(f, r);
    add(f, sb_pool_print(f->x->run->pool, ",1,0))/%lld,%d)", (long long)units_of(r->digits), r->digits));
}

static void add_term(formula *f, const sb_relation *r) {
    switch (r->kind) {
    case SB_REL_CELL:
        add_cell(f, r->table, r->row, r->column);
        break;
    case SB_REL_NUMBER:
        add(f, number_text(f->x->run, r->amount, r->amount_digits));
        break;
    case SB_REL_ADD:
        add_binary(f, r, "+", 1);
        break;
    case SB_REL_SUB:
        add_binary(f, r, "-", 1);
        break;
    case SB_REL_MUL:
        add_binary(f, r, "*", 2);
        break;
    case SB_REL_DIV:
        add_binary(f, r, "/", 2);
        break;
    case SB_REL_ROUND:
        add_round(f, r);
        break;
    case SB_REL_ROUND_UP_TO:
        add_round_up(f, r);
        break;
    case SB_REL_MAX:
        add_max(f, r);
        break;
    case SB_REL_WHERE:
        add_where(f, r);
        break;
    case SB_REL_SUM:
        add_sum(f, r);
        break;
    case SB_REL_SUM_OF:
        add_sum_of(f, r);
        break;
    case SB_REL_PICK:
        add_pick(f, r);
        break;
    case SB_REL_REST:
        add_rest(f, r);
        break;
    case SB_REL_SHARE:
        add_share(f, r);
        break;
    }
}

const char *xlsx_formula(const xlsx *x, const xlsx_sheet *from, const sb_relation *relation) {
    formula f = {.x = x, .from = from};
    add(&f, "=");
    add_term(&f, relation);
    return bytes_end(x->run, &f.text);
}
