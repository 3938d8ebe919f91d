/* Charts of a table's figures: the program that opens the workbook draws them, and anew when a figure changes. */
#include "writers/xlsx.h"

enum {
    ROWS = 16, /* of a chart */
    ROW_HEIGHT = 15
};

void xlsx_lay_chart(xlsx_block *place) {
    place->rows = ROWS;
    place->height = ROW_HEIGHT;
    place->gap = 10;
}

/* The cells of one line of the table, along which the chart runs: =Sheet!$B$3:$F$3 */
static const char *line_of(const xlsx *x, const sb_chart *chart, size_t index) {
    size_t row = chart->across ? index : chart->first, column = chart->across ? chart->first : index;
    size_t last_column = chart->across ? chart->last : index;
    uint32_t rows = chart->across ? 0 : (uint32_t)(chart->last - chart->first);
    xlsx_found at = xlsx_find(x, chart->table, row);
    const char *from = xlsx_address(x->run, at.sheet, at.row, column);
    char to[LXW_MAX_CELL_NAME_LENGTH];
    lxw_rowcol_to_cell_abs(to, at.row + rows, (lxw_col_t)last_column, 1, 1);
    return sb_pool_print(x->run->pool, "=%s:%s", from, to);
}

/* What a series is called stands in the first column of its row, or over its column. */
static const char *name_of(const sb_chart *chart, size_t index) {
    return chart->across ? chart->table->rows.items[index][0].text : chart->table->headings[index].text;
}

static void dress_axes(lxw_chart *drawn, const sb_chart *chart) {
    bool bars = chart->kind == SB_CHART_BARS;
    chart_axis_set_name(drawn->x_axis, bars ? chart->figures : chart->along);
    chart_axis_set_name(drawn->y_axis, bars ? chart->along : chart->figures);
    if (bars) { /* the first name at the top, as in the table, also beside figures below zero */
        chart_axis_set_reverse(drawn->y_axis);
        chart_axis_set_label_position(drawn->y_axis, LXW_CHART_AXIS_LABEL_POSITION_LOW);
    } else {
        chart_axis_set_min(drawn->x_axis, 0);
        chart_axis_set_min(drawn->y_axis, 0);
    }
}

static void dress(lxw_chart *drawn, const sb_chart *chart) {
    chart_title_set_name(drawn, chart->title);
    lxw_chart_font font = {.size = 11, .bold = LXW_TRUE};
    chart_title_set_name_font(drawn, &font);
    dress_axes(drawn, chart);
    if (chart->series.count < 2)
        chart_legend_set_position(drawn, LXW_CHART_LEGEND_NONE);
    else
        chart_legend_set_position(drawn, LXW_CHART_LEGEND_BOTTOM);
}

lxw_error xlsx_put_chart(xlsx *x, const xlsx_sheet *laid, const xlsx_block *place, lxw_worksheet *worksheet) {
    const sb_chart *chart = place->block->chart;
    lxw_chart *drawn = workbook_add_chart(
        x->workbook, chart->kind == SB_CHART_BARS ? LXW_CHART_BAR : LXW_CHART_SCATTER_STRAIGHT_WITH_MARKERS);
    if (!drawn)
        return LXW_ERROR_MEMORY_MALLOC_FAILED;
    const char *names = line_of(x, chart, chart->names);
    for (size_t i = 0; i < chart->series.count; i++) {
        lxw_chart_series *series = chart_add_series(drawn, names, line_of(x, chart, chart->series.items[i]));
        chart_series_set_name(series, name_of(chart, chart->series.items[i]));
    }
    dress(drawn, chart);
    /* as wide as the page and as high as its rows; made for 480 x 288 pixels of 3/4 points */
    double wide = xlsx_page_room(x->document, laid->sheet) * 7 - 12, high = ROWS * ROW_HEIGHT / 0.75 - 8;
    lxw_chart_options options = {
        .x_scale = wide / 480, .y_scale = high / 288, .object_position = LXW_OBJECT_MOVE_DONT_SIZE};
    return worksheet_insert_chart_opt(worksheet, place->row, 0, drawn, &options);
}
