#include "writers/shown.h"

#include "writers/glyphs.h"

#include <string.h>

/* A price shows at least the currency's decimals, and more only where they say something. */
static const char *price_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    char *text = sb_pool_print(
        run->pool, "%s", sb_write_decimal(run, cell->amount, cell->digits, document->style.decimal_comma));
    size_t length = strlen(text);
    for (int digits = cell->digits; digits > document->currency.digits && text[length - 1] == '0'; digits--)
        text[--length] = '\0';
    if (length && strchr(".,", text[length - 1]))
        text[length - 1] = '\0';
    return text;
}

static const char *hours_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    return sb_write_decimal(run, sb_mul_div(cell->amount, 100, 3600000), 2, document->style.decimal_comma);
}

static const char *share_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    int64_t shown = cell->exact ? cell->amount : sb_mul(sb_mul_div(cell->amount, 1, 1000), 1000);
    return sb_write_share(run, (sb_share){shown}, 1, document->style.decimal_comma);
}

static const char *length_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    sb_style style = cell->exact ? sb_style_exact(&document->style) : document->style;
    return sb_write_length(run, (sb_length){cell->amount}, &style);
}

/* 1.234,50 where the document's language writes it so. */
static const char *money_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    const char *text = sb_write_money(run, (sb_money){cell->amount}, document->currency, &document->style);
    if (!document->group)
        return text;
    const char *out = "";
    for (const char *at = text, *blank; *at; at = *blank ? blank + 1 : blank) {
        blank = at + strcspn(at, " ");
        out = sb_pool_print(run->pool, "%s%.*s%s", out, (int)(blank - at), at, *blank ? document->group : "");
    }
    return out;
}

const char *cell_shown(sb_run *run, const sb_document *document, const sb_cell *cell) {
    const sb_style *style = &document->style;
    switch (cell->kind) {
    case SB_CELL_TEXT:
        return clean_text(run, cell->text);
    case SB_CELL_COUNT:
        return sb_write_decimal(run, cell->amount, 0, false);
    case SB_CELL_NUMBER:
        return sb_write_decimal(run, cell->amount, cell->digits, style->decimal_comma);
    case SB_CELL_LENGTH:
        return length_shown(run, document, cell);
    case SB_CELL_MONEY:
        return money_shown(run, document, cell);
    case SB_CELL_PRICE:
        return price_shown(run, document, cell);
    case SB_CELL_SHARE:
        return share_shown(run, document, cell);
    case SB_CELL_DURATION:
        return hours_shown(run, document, cell);
    case SB_CELL_DATE:
        return sb_write_date(run, cell->date);
    case SB_CELL_TICK:
        return "[ ]";
    case SB_CELL_EMPTY:
        break;
    }
    return "";
}

bool cell_is_number(const sb_cell *cell) {
    return cell->kind != SB_CELL_EMPTY && cell->kind != SB_CELL_TEXT && cell->kind != SB_CELL_DATE &&
           cell->kind != SB_CELL_TICK;
}

bool cell_right(const sb_table *table, size_t column, const sb_cell *cell) {
    return table->headings[column].right || (!table->no_heading && cell_is_number(cell));
}
