/* Cells: how they are made, and what number stands in them. */
#include "sawbill/document.h"

#include <math.h>

/* Day 0 of a spreadsheet, 1899-12-30, lies so many days before 1970-01-01. */
enum {
    SPREADSHEET_DAYS = 25569
};

static double scaled(int64_t amount, int digits) {
    double power = 1;
    for (int i = 0; i < digits; i++)
        power *= 10;
    return (double)amount / power;
}

double sb_cell_number(const sb_cell *cell, const sb_style *style, sb_currency currency) {
    if (cell->amount == SB_BAD)
        return NAN;
    switch (cell->kind) {
    case SB_CELL_COUNT:
        return (double)cell->amount;
    case SB_CELL_NUMBER:
    case SB_CELL_PRICE:
        return scaled(cell->amount, cell->digits);
    case SB_CELL_MONEY:
        return scaled(cell->amount, currency.digits);
    case SB_CELL_LENGTH:
        return (double)cell->amount / (style->units == SB_UNITS_IN ? SB_NM_PER_INCH : SB_NM_PER_MM);
    case SB_CELL_SHARE:
        return (double)cell->amount / 1e6;
    case SB_CELL_DURATION:
        return (double)cell->amount / 3.6e6;
    case SB_CELL_DATE:
        return (double)(sb_date_days(cell->date) + SPREADSHEET_DAYS);
    case SB_CELL_EMPTY:
    case SB_CELL_TEXT:
    case SB_CELL_TICK:
        break;
    }
    return 0;
}

static sb_cell cell_of(sb_cell_kind kind, int64_t amount, int digits) {
    return (sb_cell){.kind = kind, .text = "", .amount = amount, .digits = digits};
}

sb_cell sb_cell_text(const char *text) {
    sb_cell cell = cell_of(SB_CELL_TEXT, 0, 0);
    cell.text = text;
    return cell;
}

sb_cell sb_cell_count(int64_t count) {
    return cell_of(SB_CELL_COUNT, count, 0);
}

sb_cell sb_cell_decimal(int64_t amount, int digits) {
    return cell_of(SB_CELL_NUMBER, amount, digits);
}

sb_cell sb_cell_length(sb_length length) {
    return cell_of(SB_CELL_LENGTH, length.nm, 0);
}

sb_cell sb_cell_size(sb_length length) {
    sb_cell cell = sb_cell_length(length);
    cell.exact = true;
    return cell;
}

sb_cell sb_cell_money(sb_money money) {
    return cell_of(SB_CELL_MONEY, money.minor, 0);
}

sb_cell sb_cell_price(int64_t amount, int digits) {
    return cell_of(SB_CELL_PRICE, amount, digits);
}

sb_cell sb_cell_share(sb_share share) {
    return cell_of(SB_CELL_SHARE, share.ppm, 0);
}

sb_cell sb_cell_rate(sb_share share) {
    sb_cell cell = sb_cell_share(share);
    cell.exact = true;
    return cell;
}

sb_cell sb_cell_duration(sb_duration duration) {
    return cell_of(SB_CELL_DURATION, duration.ms, 0);
}

sb_cell sb_cell_date(sb_date date) {
    sb_cell cell = cell_of(date.year ? SB_CELL_DATE : SB_CELL_EMPTY, 0, 0);
    cell.date = date;
    return cell;
}

sb_cell sb_cell_tick(void) {
    return cell_of(SB_CELL_TICK, 0, 0);
}

sb_cell sb_cell_related(sb_cell cell, const sb_relation *relation) {
    cell.relation = relation;
    return cell;
}

sb_cell sb_cell_strong(sb_cell cell) {
    cell.strong = true;
    return cell;
}

sb_cell sb_cell_input(sb_cell cell) {
    cell.input = true;
    return cell;
}

sb_cell sb_cell_named(sb_cell cell, const char *name) {
    cell.name = name;
    return cell;
}
