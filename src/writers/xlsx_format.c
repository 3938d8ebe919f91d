/* Number formats by kind of cell, and one format for all cells that look alike. */
#include "writers/xlsx.h"

#include <string.h>

/* ---- number formats --------------------------------------------------------------------------------- */

static const char *zeros(int count) {
    static const char many[] = "000000000000000000";
    return many + (sizeof many - 1) - (size_t)(count < 0 ? 0 : count > 18 ? 18 : count);
}

static const char *decimals(sb_run *run, const char *whole, int digits) {
    return digits > 0 ? sb_pool_print(run->pool, "%s.%s", whole, zeros(digits)) : whole;
}

/* At least the currency's decimals, more only where they say something. */
static const char *price_format(sb_run *run, int digits, int least) {
    int more = digits > least ? digits - least : 0;
    if (digits <= 0 && least <= 0)
        return "#,##0";
    return sb_pool_print(run->pool, "#,##0.%s%.*s", zeros(least), more, "##################");
}

/* So many decimals that every multiple of the step can be told from the next. */
static int step_digits(int64_t nm) {
    int digits = 0;
    for (int64_t unit = SB_NM_PER_MM; digits < 6 && nm % unit != 0; unit /= 10)
        digits++;
    return digits;
}

/* Inches are written as a reduced fraction; one that is not on the step counts in the step and is marked. */
static const char *inch_format(sb_run *run, int64_t step, bool on_step) {
    int64_t parts = step > 0 && SB_NM_PER_INCH % step == 0 ? SB_NM_PER_INCH / step : 0;
    if (parts < 1 || parts > 64)
        return on_step ? "0.000" : "\"~\"0.000";
    if (parts == 1)
        return on_step ? "0" : "\"~\"0";
    if (!on_step)
        return sb_pool_print(run->pool, "\"~\"# ?%s/%d", parts > 9 ? "?" : "", (int)parts);
    return parts > 9 ? "# ?\?/?\?" : "# ?/?";
}

static const char *length_format(sb_run *run, sb_style style, int64_t nm) {
    int64_t step = style.step.nm;
    bool on_step = step <= 0 || nm % step == 0;
    if (style.units == SB_UNITS_IN)
        return inch_format(run, step, on_step);
    int digits = step > 0 ? step_digits(step) : 0;
    if (digits > 0 && on_step)
        return ""; /* 864 beside 864.5, as everywhere else */
    return decimals(run, on_step ? "0" : "\"~\"0", digits);
}

const char *xlsx_number_format(const xlsx *x, const sb_cell *cell) {
    sb_run *run = x->run;
    switch (cell->kind) {
    case SB_CELL_COUNT:
        return "#,##0";
    case SB_CELL_NUMBER:
        return decimals(run, "#,##0", cell->digits);
    case SB_CELL_LENGTH:
        return length_format(run, cell->exact ? sb_style_exact(&x->document->style) : x->document->style,
                             cell->amount);
    case SB_CELL_MONEY:
        return decimals(run, "#,##0", x->document->currency.digits);
    case SB_CELL_PRICE:
        return price_format(run, cell->digits, x->document->currency.digits);
    case SB_CELL_SHARE:
        return cell->exact ? "0.0###\\ %" : "0.0\\ %";
    case SB_CELL_DURATION:
        return "#,##0.00";
    case SB_CELL_DATE:
        return "yyyy-mm-dd";
    case SB_CELL_EMPTY:
    case SB_CELL_TEXT:
    case SB_CELL_TICK:
        break;
    }
    return "";
}

/* ---- looks ------------------------------------------------------------------------------------------ */

static bool alike(const xlsx_look *a, const xlsx_look *b) {
    return a->size == b->size && a->bold == b->bold && a->wrap == b->wrap && a->right == b->right &&
           a->indent == b->indent && a->rule_below == b->rule_below && a->rule_above == b->rule_above &&
           a->box == b->box && a->input == b->input && a->line_below == b->line_below &&
           a->middle == b->middle && strcmp(a->number, b->number) == 0;
}

static void dress(lxw_format *format, const xlsx_look *look) {
    if (look->number[0])
        format_set_num_format(format, look->number);
    format_set_font_name(format, XLSX_FONT);
    format_set_font_size(format, look->size);
    if (look->bold)
        format_set_bold(format);
    if (look->wrap)
        format_set_text_wrap(format);
    if (look->indent)
        format_set_indent(format, 1);
    if (look->rule_below)
        format_set_bottom(format, LXW_BORDER_THIN);
    if (look->rule_above)
        format_set_top(format, LXW_BORDER_THIN);
    if (look->line_below) {
        format_set_bottom(format, LXW_BORDER_THIN);
        format_set_bottom_color(format, 0xD9D9D9);
    }
    if (look->input)
        format_set_bg_color(format, 0xFFF6D6);
    if (look->box)
        format_set_border(format, LXW_BORDER_THIN);
    format_set_align(format, look->right ? LXW_ALIGN_RIGHT : LXW_ALIGN_LEFT);
    format_set_align(format, look->rule_below ? LXW_ALIGN_VERTICAL_BOTTOM
                             : look->middle   ? LXW_ALIGN_VERTICAL_CENTER
                                              : LXW_ALIGN_VERTICAL_TOP);
}

lxw_format *xlsx_format_of(xlsx *x, xlsx_look look) {
    for (size_t i = 0; i < x->formats.count; i++)
        if (alike(&x->formats.items[i].look, &look))
            return x->formats.items[i].format;
    lxw_format *format = workbook_add_format(x->workbook);
    if (format)
        dress(format, &look);
    SB_PUSH(x->run->pool, x->formats, ((struct xlsx_format){look, format}));
    return format;
}
