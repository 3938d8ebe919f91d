/* Shares nothing with the library but its types. */
#include "relation_eval.h"

#include <math.h>

enum {
    DEPTH_MOST = 1000,
    SLOTS = 1 << 17 /* more than cells with relations in any paper that is looked at */
};

/* What cells came to, once each while one question is answered: papers may be changed between questions. */
static struct known {
    const sb_cell *cell;
    unsigned question;
    long double value;
} known[SLOTS];
static unsigned question;

static struct known *slot_of(const sb_cell *cell) {
    size_t at = ((size_t)cell >> 4) % SLOTS;
    for (size_t tries = 0; tries < SLOTS; tries++, at = (at + 1) % SLOTS)
        if (known[at].question != question || known[at].cell == cell)
            break;
    return &known[at];
}

static long double ten_to(int digits) {
    return powl(10, digits);
}

/* How many of the stored amount make one of what a spreadsheet counts in. */
static long double unit_of(const sb_document *document, const sb_cell *cell) {
    switch (cell->kind) {
    case SB_CELL_NUMBER:
    case SB_CELL_PRICE:
        return ten_to(cell->digits);
    case SB_CELL_MONEY:
        return ten_to(document->currency.digits);
    case SB_CELL_LENGTH:
        return document->style.units == SB_UNITS_IN ? 25400000 : 1000000;
    case SB_CELL_SHARE:
        return 1000000;
    case SB_CELL_DURATION:
        return 3600000;
    default:
        return 1;
    }
}

/* Half away from zero; a half that binary arithmetic has just missed counts as one. */
static long double round_half(long double value, int digits) {
    long double scaled = value * ten_to(digits);
    return roundl(scaled + copysignl(1e-9L, scaled)) / ten_to(digits);
}

static long double value_at(const sb_document *document, const sb_relation *r, int depth);

static long double cell_value(const sb_document *document, const sb_table *table, size_t row, size_t column,
                              int depth) {
    if (row >= table->rows.count || column >= table->column_count)
        return NAN;
    const sb_cell *cell = &table->rows.items[row][column];
    if (cell->relation) {
        struct known *slot = slot_of(cell);
        if (slot->question == question && slot->cell == cell)
            return slot->value;
        long double value = value_at(document, cell->relation, depth + 1);
        *slot_of(cell) = (struct known){cell, question, value};
        return value;
    }
    return (long double)cell->amount / unit_of(document, cell);
}

static long double sum(const sb_document *document, const sb_relation *r, int depth) {
    long double total = 0;
    for (size_t row = r->row; row <= r->row_to && !isnan(total); row++)
        total += cell_value(document, r->table, row, r->column, depth);
    return total;
}

static long double sum_of(const sb_document *document, const sb_relation *r, long double key, int depth) {
    long double total = 0;
    for (size_t row = r->row; row <= r->row_to && !isnan(total); row++)
        if (cell_value(document, r->table, row, r->key, depth) == key)
            total += cell_value(document, r->table, row, r->column, depth);
    return total;
}

static long double pick(const sb_document *document, const sb_relation *r, long double wanted, int depth) {
    for (size_t column = r->column; column <= r->column_to; column++)
        if (cell_value(document, r->table, r->row, column, depth) == wanted)
            return cell_value(document, r->table, r->row_to, column, depth);
    return NAN;
}

/* By handing out one unit after the other to whoever still has the largest remainder: no division of remainders. */
static long double shared(const sb_document *document, const sb_relation *r, long double amount, int depth) {
    enum {
        ROWS_MOST = 500
    };
    long double weights[ROWS_MOST], rests[ROWS_MOST], given[ROWS_MOST],
        all = 0, units = roundl(fabsl(amount) * ten_to(r->digits));
    size_t count = r->row_to - r->row + 1;
    if (count > ROWS_MOST)
        return NAN;
    for (size_t i = 0; i < count; i++)
        all += weights[i] = cell_value(document, r->table, r->row + i, r->column, depth);
    all = all < 1 ? 1 : all;
    long double left = units;
    for (size_t i = 0; i < count; i++) {
        given[i] = floorl(weights[i] * units / all);
        rests[i] = weights[i] * units - given[i] * all;
        left -= given[i];
    }
    if (r->kind == SB_REL_REST)
        return rests[r->own - r->row];
    for (; left > 0.5L; left -= 1) {
        size_t most = 0;
        for (size_t i = 1; i < count; i++)
            most = rests[i] > rests[most] ? i : most;
        given[most] += 1;
        rests[most] = -1;
    }
    return copysignl(given[r->own - r->row] / ten_to(r->digits), amount);
}

static long double value_at(const sb_document *document, const sb_relation *r, int depth) {
    if (depth > DEPTH_MOST)
        return NAN;
    long double a = r->a ? value_at(document, r->a, depth + 1) : 0;
    long double b = r->b ? value_at(document, r->b, depth + 1) : 0;
    switch (r->kind) {
    case SB_REL_CELL:
        return cell_value(document, r->table, r->row, r->column, depth);
    case SB_REL_NUMBER:
        return (long double)r->amount / ten_to(r->amount_digits);
    case SB_REL_ADD:
        return a + b;
    case SB_REL_SUB:
        return a - b;
    case SB_REL_MUL:
        return a * b;
    case SB_REL_DIV:
        return b != 0 ? a / b : NAN;
    case SB_REL_ROUND:
        return round_half(a, r->digits);
    case SB_REL_ROUND_UP_TO:
        return ceill(round_half(a / b, 9)) * b;
    case SB_REL_MAX:
        return a > b ? a : b;
    case SB_REL_WHERE:
        return a > 0 ? b : 0;
    case SB_REL_SUM:
        return sum(document, r, depth);
    case SB_REL_SUM_OF:
        return sum_of(document, r, a, depth);
    case SB_REL_PICK:
        return pick(document, r, a, depth);
    case SB_REL_REST:
    case SB_REL_SHARE:
        return shared(document, r, a, depth);
    }
    return NAN;
}

long double relation_value(const sb_document *document, const sb_relation *relation) {
    question++;
    return value_at(document, relation, 0);
}

static bool agrees(const sb_document *document, const sb_cell *cell) {
    long double found = value_at(document, cell->relation, 0) * unit_of(document, cell);
    bool exact = cell->kind == SB_CELL_MONEY || cell->kind == SB_CELL_COUNT;
    return fabsl(found - (long double)cell->amount) <= (exact ? 1e-4L : 0.5001L);
}

static const sb_cell *first_wrong_in(const sb_document *document, const sb_table *table) {
    for (size_t row = 0; row < table->rows.count; row++)
        for (size_t column = 0; column < table->column_count; column++) {
            const sb_cell *cell = &table->rows.items[row][column];
            if (cell->relation && !agrees(document, cell))
                return cell;
        }
    return NULL;
}

const sb_cell *relation_first_wrong(const sb_document *document) {
    question++;
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_block *block = &document->sheets.items[s]->blocks.items[b];
            const sb_cell *wrong =
                block->kind == SB_BLOCK_TABLE ? first_wrong_in(document, block->table) : NULL;
            if (wrong)
                return wrong;
        }
    return NULL;
}
