/* Where figures come from, as a paper and as a record; without a figure, which ones can be asked. */
#include "papers/figures.h"
#include "papers/why.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

static const char *place_words(sb_run *run, sb_place place) {
    sb_position at = sb_place_position(place);
    return *at.file ? sb_pool_print(run->pool, "%s:%zu", at.file, at.line) : "";
}

static void put_steps(const why *w, sb_sheet *sheet) {
    sb_table *table = sb_table_add(w->run, sheet, "", "Figure|Value|Comes from");
    for (size_t i = 0; i < w->steps.count; i++) {
        const why_step *step = &w->steps.items[i];
        const char *at = place_words(w->run, step->place);
        sb_cell *row = sb_row_add(w->run, table);
        row[0] = sb_cell_text(step->what);
        row[1] = sb_cell_text(step->value);
        row[2] =
            sb_cell_text(sb_pool_print(w->run->pool, "%s%s%s", step->how, *step->how && *at ? "; " : "", at));
    }
}

static const char *listed(sb_run *run, const why_words *names) {
    const char *list = "";
    for (size_t i = 0; i < names->count; i++)
        list = sb_pool_print(run->pool, "%s%s%s", list, i ? ", " : "", names->items[i]);
    return list;
}

static void put_figures(const why *w, sb_sheet *sheet) {
    why_groups groups = why_figures(w);
    sb_table *table = sb_table_add(w->run, sheet, "", "About|Figures");
    for (size_t i = 0; i < groups.count; i++) {
        sb_cell *row = sb_row_add(w->run, table);
        row[0] = sb_cell_text(groups.items[i].title);
        row[1] = sb_cell_text(listed(w->run, &groups.items[i].names));
    }
    sb_paragraph_add(w->run, sheet,
                     "Titles as the papers print them will do as well. PIECE.NAME asks for a part, input or "
                     "derived value of one piece, FIGURE at N for the job in N pieces, with a plan of its "
                     "own.",
                     false);
}

/* ---- the questions ------------------------------------------------------------------------------------------ */

static why asked(sb_run *run, const sb_shop *shop, const sb_wording *words, const sb_ways *ways) {
    return (why){.run = run, .shop = shop, .words = words, .ways = ways, .way = &ways->list.items[0]};
}

/* Another number of pieces has a plan of its own. */
static void say_pieces(why *w, const sb_question *question) {
    const char *each = "";
    for (size_t i = 0; i < w->way->estimate->pieces.count; i++) {
        const sb_price_line *line = &w->way->estimate->pieces.items[i];
        each = sb_pool_print(w->run->pool, "%s%s%lld x %s", each, i ? ", " : "", (long long)line->count,
                             w->way->takeoff->pieces.items[line->piece].title);
    }
    why_say(w, sb_pool_print(w->run->pool, "plan of %lld pieces", (long long)question->pieces),
            plan_words(w->run, &w->shop->settings.style, w->way->plan),
            sb_pool_print(w->run->pool, "planned and priced for themselves: %s", each), (sb_place){0});
}

/* False after an error with near misses. */
static bool explain(why *w, const sb_question *question) {
    if (question->pieces)
        say_pieces(w, question);
    if (why_answer(w, question->figure))
        return true;
    why_unknown(w, question->figure);
    return false;
}

static const char *title_of(sb_run *run, const sb_question *question) {
    return question->pieces == 0 ? sb_pool_print(run->pool, "Where '%s' comes from", question->figure)
                                 : sb_pool_print(run->pool, "Where '%s' comes from, at %lld pieces",
                                                 question->figure, (long long)question->pieces);
}

static bool put_answers(sb_run *run, sb_sheet *sheet, const why *start, const sb_questions *questions) {
    bool known = true;
    for (size_t i = 0; i < questions->count; i++) {
        const sb_question *question = &questions->items[i];
        why w = asked(run, start->shop, start->words, question->ways);
        known = explain(&w, question) && known;
        sb_heading_add(run, sheet, title_of(run, question));
        put_steps(&w, sheet);
    }
    return known;
}

sb_document *sb_paper_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_wording *words,
                          const sb_ways *ways, const sb_questions *questions) {
    static const char all[] = "Figures whose origin can be asked";
    why w = asked(run, shop, words, ways);
    const char *title = questions->count ? title_of(run, &questions->items[0]) : all;
    sb_document *document =
        sb_document_new(run, title, job->date, shop->settings.style, shop->settings.currency);
    sb_sheet *sheet = sb_sheet_add(run, document, "Why");
    if (questions->count)
        return put_answers(run, sheet, &w, questions) ? document : NULL;
    sb_heading_add(run, sheet, title);
    put_figures(&w, sheet);
    return document;
}

/* ---- records ------------------------------------------------------------------------------------------------ */

static void put_record(const why *w, sb_record *record, const sb_question *question) {
    sb_put_text(w->run, record, "figure", question->figure);
    if (question->pieces)
        sb_put_integer(w->run, record, "pieces", question->pieces);
    sb_record *steps = sb_put_array(w->run, record, "steps");
    for (size_t i = 0; i < w->steps.count; i++) {
        const why_step *step = &w->steps.items[i];
        sb_position at = sb_place_position(step->place);
        sb_record *one = sb_put_object(w->run, steps, NULL);
        sb_put_text(w->run, one, "what", step->what);
        sb_put_text(w->run, one, "value", step->value);
        if (step->is_money)
            sb_put_money(w->run, one, "money", step->money, w->shop->settings.currency.digits);
        if (step->is_length)
            sb_put_length(w->run, one, "length_mm", step->length);
        sb_put_text(w->run, one, "how", step->how);
        sb_put_text(w->run, one, "file", at.file);
        sb_put_integer(w->run, one, "line", (int64_t)at.line);
    }
}

static sb_record *figures_record(const why *w) {
    sb_record *record = sb_record_object(w->run);
    sb_record *figures = sb_put_array(w->run, record, "figures");
    why_groups groups = why_figures(w);
    for (size_t i = 0; i < groups.count; i++) {
        sb_record *group = sb_put_object(w->run, figures, NULL);
        sb_put_text(w->run, group, "about", groups.items[i].title);
        sb_record *names = sb_put_array(w->run, group, "names");
        for (size_t j = 0; j < groups.items[i].names.count; j++)
            sb_put_text(w->run, names, NULL, groups.items[i].names.items[j]);
    }
    return record;
}

/* One answer is the record itself, several are an array in it. */
sb_record *sb_record_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_wording *words,
                         const sb_ways *ways, const sb_questions *questions) {
    (void)job;
    why start = asked(run, shop, words, ways);
    if (questions->count == 0)
        return figures_record(&start);
    sb_record *record = sb_record_object(run);
    sb_record *answers = questions->count > 1 ? sb_put_array(run, record, "answers") : NULL;
    bool known = true;
    for (size_t i = 0; i < questions->count; i++) {
        why w = asked(run, shop, words, questions->items[i].ways);
        known = explain(&w, &questions->items[i]) && known;
        put_record(&w, answers ? sb_put_object(run, answers, NULL) : record, &questions->items[i]);
    }
    return known ? record : NULL;
}

/* ---- of how many pieces -------------------------------------------------------------------------------------- */

/* A stop and a fence stand at a length; all else that is "at 21" is asked of so many pieces. */
static const char *at_number(const char *text) {
    const char *at = NULL;
    for (const char *next = text; (next = strstr(next, " at ")) != NULL; next++)
        at = next;
    bool digits = at && at[4] && strspn(at + 4, "0123456789") == strlen(at + 4);
    bool length = at && (size_t)(at - text) == strcspn(text, " ") &&
                  (strncasecmp(text, "stop ", 5) == 0 || strncasecmp(text, "fence ", 6) == 0);
    return digits && !length && strtoll(at + 4, NULL, 10) > 0 ? at : NULL;
}

/* "21 pieces", "14 pieces, the job" */
static bool is_count(const char *text) {
    const char *behind = text + strspn(text, "0123456789");
    return strtoll(text, NULL, 10) > 0 &&
           (strcasecmp(behind, " pieces") == 0 || strcasecmp(behind, " piece") == 0 ||
            strcasecmp(behind, " pieces, the job") == 0);
}

sb_question sb_question_of(sb_run *run, const char *text) {
    const char *at = at_number(text);
    if (at)
        return (sb_question){.figure = sb_pool_copy(run->pool, text, (size_t)(at - text)),
                             .pieces = strtoll(at + 4, NULL, 10)};
    if (is_count(text))
        return (sb_question){.figure = "total", .pieces = strtoll(text, NULL, 10)};
    return (sb_question){.figure = text};
}
