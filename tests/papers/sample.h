/*
 * A job of samples/, worked through to the end with the default rates. Runs in the project's folder. It is planned once in a
 * test program and shared by its tests, each with notices of its own: a test that changes it takes one of its own, sample_own.
 */
#ifndef TESTS_PAPERS_SAMPLE_H
#define TESTS_PAPERS_SAMPLE_H

#include "../support/relation_eval.h"
#include "sawbill/papers.h"
#include "sawbill/writers.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

typedef struct sample {
    sb_run run;
    sb_shop *shop;
    const sb_job *job;
    const sb_ways *ways;
    bool shared;
} sample;

static const char *const sample_names[] = {"harbour-planters", "shelf-options", "rack-bench",
                                           "boathouse-imperial", "allotment-beds"};
enum {
    SAMPLES = sizeof sample_names / sizeof *sample_names
};

static inline void sample_fail(sample *s, const char *what) {
    fail_msg("%s:\n%s", what, sb_notices_text(&s->run, SB_NOTE, false));
}

static inline void sample_work(sample *s, const sb_job *job) {
    sb_recipe_book *book = sb_recipe_book_open(&s->run, "templates", false);
    s->job = job;
    s->ways = job ? sb_ways_of(&s->run, s->shop, book, job, NULL) : NULL;
    if (!s->ways || !sb_ok(&s->run))
        sample_fail(s, "a sample");
}

static inline void sample_own(sample *s, const char *name) {
    *s = (sample){.run = sb_run_new()};
    const char *path = sb_pool_print(s->run.pool, "samples/%s.job", name);
    sb_place at;
    const char *rates = sb_job_rates(&s->run, path, &at);
    s->shop = sb_shop_read(&s->run, *rates ? sb_pool_print(s->run.pool, "rates/%s", rates) : "rates");
    sample_work(s, sb_job_read(&s->run, path, false));
}

/* A job of one's own: the lines behind job, date and customer. */
static inline void sample_make(sample *s, const char *lines) {
    *s = (sample){.run = sb_run_new()};
    s->shop = sb_shop_read(&s->run, "rates");
    const char *text = sb_pool_print(s->run.pool, "job made\ndate 2026-03-02\ncustomer Somebody\n%s", lines);
    sample_work(s, sb_job_of(&s->run, sb_source_of(&s->run, "made.job", text), false));
}

static inline void sample_close(sample *s) {
    if (!s->shared)
        sb_run_free(&s->run);
}

static sample samples_shared[SAMPLES];

static inline void samples_free(void) {
    for (size_t i = 0; i < SAMPLES; i++)
        if (samples_shared[i].shared)
            sb_run_free(&samples_shared[i].run);
}

static inline void sample_share(sample *shared, const char *name) {
    static bool freed_at_exit;
    if (!freed_at_exit)
        assert_int_equal(atexit(samples_free), 0);
    freed_at_exit = true;
    sample_own(shared, name);
    shared->shared = true;
}

static inline void sample_open(sample *s, const char *name) {
    size_t i = 0;
    while (i < SAMPLES && strcmp(sample_names[i], name) != 0)
        i++;
    assert_true(i < SAMPLES);
    if (!samples_shared[i].shared)
        sample_share(&samples_shared[i], name);
    *s = samples_shared[i];
    s->run = sb_run_aside(&s->run);
}

static inline const sb_sheet *sheet_named(const sb_document *document, const char *title) {
    for (size_t i = 0; i < document->sheets.count; i++)
        if (strcmp(document->sheets.items[i]->title, title) == 0)
            return document->sheets.items[i];
    return NULL;
}

/* How often a text stands anywhere in the document. */
static inline int told(const sb_document *document, const char *text) {
    int count = 0;
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_block *block = &document->sheets.items[s]->blocks.items[b];
            count += block->text && strstr(block->text, text);
            for (size_t r = 0; block->table && r < block->table->rows.count; r++)
                for (size_t c = 0; c < block->table->column_count; c++)
                    count +=
                        strstr(block->table->rows.items[r][c].text ? block->table->rows.items[r][c].text : "",
                               text) != NULL;
        }
    return count;
}

/* As the terminal shows it. */
static inline void fits_eighty_columns(sb_run *run, const sb_document *document) {
    const char *text = sb_write_text(run, document, 80);
    for (const char *line = text; line && *line; line = strchr(line, '\n') ? strchr(line, '\n') + 1 : NULL) {
        size_t columns = 0;
        for (size_t i = 0; i < strcspn(line, "\n"); i++)
            columns += ((unsigned char)line[i] & 0xC0) != 0x80;
        if (columns > 80)
            fail_msg("wider than 80: %.100s", line);
    }
}

/* One figure, asked of the ways of the job; NULL: which there are. */
static inline sb_questions sample_question(sample *s, const char *figure) {
    sb_questions questions = {0};
    if (figure)
        SB_PUSH(s->run.pool, questions, ((sb_question){.figure = figure, .ways = s->ways}));
    return questions;
}

static inline const sb_document *sample_why(sample *s, const char *figure) {
    sb_questions questions = sample_question(s, figure);
    return sb_paper_why(&s->run, s->shop, s->job, NULL, s->ways, &questions);
}

static inline const sb_record *sample_why_record(sample *s, const char *figure) {
    sb_questions questions = sample_question(s, figure);
    return sb_record_why(&s->run, s->shop, s->job, NULL, s->ways, &questions);
}

#endif
