/* The names of figures are those printed beside them: whatever stands in front of a figure on the shop's papers can be asked. */
#include "sample.h"

/* Sums of a table, and what is said in words instead of a figure. */
static bool names_a_figure(const char *text) {
    static const char *const others[] = {"",         "All",    "None",   "Job",       "Reference",
                                         "Customer", "Date",   "Option", "Currency",  "Revision",
                                         "Risk",     "Stages", "Pieces", "Supplement"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        if (strcmp(text, others[i]) == 0)
            return false;
    return true;
}

/* The options stand side by side under their titles; the figures are those of the columns. */
static bool is_option(const sample *s, const char *text) {
    for (size_t i = 0; i < s->job->options.count; i++)
        if (s->job->options.items[i].title && strcmp(s->job->options.items[i].title, text) == 0)
            return true;
    return false;
}

static void ask(sample *s, const sb_sheet *sheet, const char *figure) {
    if (!figure || !names_a_figure(figure) || is_option(s, figure))
        return;
    if (!sample_why(s, figure))
        fail_msg("%s, sheet %s: no answer to \"%s\"", s->job->name, sheet->title, figure);
}

static size_t column_of(const char *sheet) {
    return strcmp(sheet, "Inputs") == 0 ? 1 : 0;
}

static int ask_all(sample *s, const sb_document *paper) {
    int count = 0;
    for (size_t i = 0; i < paper->sheets.count; i++) {
        const sb_sheet *sheet = paper->sheets.items[i];
        for (size_t b = 0; b < sheet->blocks.count; b++) {
            const sb_table *table = sheet->blocks.items[b].table;
            for (size_t r = 0; table && r < table->rows.count; r++, count++)
                ask(s, sheet, table->rows.items[r][column_of(sheet->title)].text);
            for (size_t r = 0; table && r < table->rows.count && strcmp(sheet->title, "Material") == 0; r++)
                ask(s, sheet, table->rows.items[r][table->column_count > 2].text);
        }
    }
    return count;
}

static void on_estimate_and_summary(void **state) {
    (void)state;
    for (int i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        assert_true(ask_all(&s, sb_paper_estimate(&s.run, s.shop, s.job, s.ways, NULL)) > 100);
        assert_true(ask_all(&s, sb_paper_summary(&s.run, s.shop, s.job, s.ways, NULL)) > 10);
        sample_close(&s);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(on_estimate_and_summary)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
