/* Looking into a paper, and the made job as one or two ways to make it. */
#ifndef TESTS_PAPERS_PAPER_H
#define TESTS_PAPERS_PAPER_H

#include "../costing/made.h"
#include "../support/relation_eval.h"
#include "sawbill/papers.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

typedef void (*paper_text)(void *context, const char *text);

static inline void paper_walk_table(const sb_table *table, paper_text text, void *context) {
    text(context, table->title);
    for (size_t i = 0; i < table->column_count; i++)
        text(context, table->headings[i].text);
    for (size_t row = 0; row < table->rows.count; row++)
        for (size_t i = 0; i < table->column_count; i++) {
            text(context, table->rows.items[row][i].text);
            if (table->rows.items[row][i].name)
                text(context, table->rows.items[row][i].name);
        }
}

/* Every text of a document: cells, headings, names, title, author, foot. */
static inline void paper_walk(const sb_document *document, paper_text text, void *context) {
    const char *heads[] = {document->title, document->author, document->foot};
    for (size_t i = 0; i < 3; i++)
        text(context, heads[i]);
    for (size_t s = 0; s < document->sheets.count; s++) {
        const sb_sheet *sheet = document->sheets.items[s];
        text(context, sheet->title);
        for (size_t b = 0; b < sheet->blocks.count; b++) {
            if (sheet->blocks.items[b].text)
                text(context, sheet->blocks.items[b].text);
            if (sheet->blocks.items[b].table)
                paper_walk_table(sheet->blocks.items[b].table, text, context);
        }
    }
}

/* ---- finding ------------------------------------------------------------------------------------------------ */

static inline sb_cell *paper_named(const sb_document *document, const char *name) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            for (size_t row = 0; table && row < table->rows.count; row++)
                for (size_t i = 0; i < table->column_count; i++) {
                    sb_cell *cell = &table->rows.items[row][i];
                    if (cell->name && strcmp(cell->name, name) == 0)
                        return cell;
                }
        }
    fail_msg("no cell is named '%s'", name);
    return NULL;
}

/* What a named cell comes to when everything is worked out anew, in minor units. */
static inline int64_t paper_worked(const sb_document *document, const char *name) {
    const sb_cell *cell = paper_named(document, name);
    assert_non_null(cell->relation);
    long double unit = 1;
    for (int i = 0; i < document->currency.digits; i++)
        unit *= 10;
    long double value = relation_value(document, cell->relation) * unit;
    return (int64_t)(value < 0 ? value - 0.5L : value + 0.5L);
}

typedef struct paper_search {
    const char *wanted;
    int found;
} paper_search;

static inline void paper_look(void *context, const char *text) {
    paper_search *search = context;
    search->found += strstr(text, search->wanted) != NULL;
}

static inline bool paper_says(const sb_document *document, const char *wanted) {
    paper_search search = {wanted, 0};
    paper_walk(document, paper_look, &search);
    return search.found > 0;
}

/* The table one of whose first cells says so. */
static inline const sb_table *paper_table_saying(const sb_document *document, const char *wanted) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            for (size_t row = 0; table && row < table->rows.count; row++)
                if (strcmp(table->rows.items[row][0].text, wanted) == 0)
                    return table;
        }
    fail_msg("no table says '%s'", wanted);
    return NULL;
}

static inline void paper_agrees(const sb_document *document) {
    const sb_cell *wrong = relation_first_wrong(document);
    for (size_t s = 0; wrong && s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            for (size_t r = 0; table && r < table->rows.count; r++)
                if (wrong >= table->rows.items[r] && wrong < table->rows.items[r] + table->column_count)
                    print_message("on the sheet %s, in the table \"%s\", row %zu \"%s\", column %zu\n",
                                  document->sheets.items[s]->title, table->title, r,
                                  table->rows.items[r][0].text, (size_t)(wrong - table->rows.items[r]));
        }
    if (wrong)
        fail_msg("%s: a cell stores %lld (kind %d), its relation gives %.9Lf", document->title,
                 (long long)wrong->amount, (int)wrong->kind, relation_value(document, wrong->relation));
}

/* ---- ways ------------------------------------------------------------------------------------------------------ */

static inline sb_ways *paper_ways(made *m) {
    sb_ways *ways = SB_NEW(m->run.pool, sb_ways);
    sb_way way = {.takeoff = &m->takeoff, .cutlist = &m->cutlist, .plan = &m->plan, .order = &m->order};
    way.estimate = made_estimate(m);
    SB_PUSH(m->run.pool, ways->list, way);
    return ways;
}

static inline void paper_two_options(made *m, sb_ways *ways) {
    static const char *const names[] = {"slats", "panels"}, *const titles[] = {"Larch slats",
                                                                               "Larch | panels"};
    SB_PUSH(m->run.pool, ways->list, ways->list.items[0]);
    for (size_t i = 0; i < 2; i++)
        SB_PUSH(m->run.pool, m->job.options,
                ((sb_job_option){.name = names[i], .title = titles[i], .note = "Oiled."}));
    for (size_t i = 0; i < 2; i++)
        ways->list.items[i].option = &m->job.options.items[i];
}

/* ---- wording, from the templates of the checkout ------------------------------------------------------------------ */

/* The folder with templates/, from the working directory or above this file's own. */
static inline const char *paper_templates(sb_run *run) {
    const char *file = __FILE__, *tests = strstr(file, "tests/papers/");
    const char *here = tests && tests != file ? sb_pool_copy(run->pool, file, (size_t)(tests - file)) : "";
    return sb_pool_print(run->pool, "%stemplates", here);
}

static inline const sb_wording *paper_wording(sb_run *run, const char *language) {
    const sb_wording *wording = sb_wording_read(run, paper_templates(run), language);
    if (!sb_ok(run))
        fail_msg("%s", sb_notices_text(run, SB_NOTE, false));
    return wording;
}

#endif
