/* Where a figure comes from, as a paper and as a record. */
#include "papers/why.h"

#include <string.h>

void why_say(why *w, const char *what, const char *value, const char *how, sb_place place) {
    why_step step = {what, value, how, place};
    SB_PUSH(w->run->pool, w->steps, step);
}

static void name(why *w, why_names *names, const char *word) {
    SB_PUSH(w->run->pool, *names, word);
}

static void all_names(why *w, why_names *names) {
    const sb_takeoff *t = w->way->takeoff;
    why_total_names(w, names);
    for (size_t i = 0; i < t->pieces.count; i++) {
        name(w, names, t->pieces.items[i].source->name);
        name(w, names, t->pieces.items[i].title);
    }
    for (size_t i = 0; i < t->parts.count; i++) {
        name(w, names, t->parts.items[i].name);
        name(w, names, t->parts.items[i].title);
    }
    const sb_estimate *e = w->way->estimate;
    for (size_t i = 0; i < e->materials.count; i++)
        if (e->materials.items[i].stock) {
            name(w, names, e->materials.items[i].stock->id);
            name(w, names, e->materials.items[i].stock->title);
        }
    for (size_t i = 0; i < e->labour.count; i++) {
        name(w, names, e->labour.items[i].operation->id);
        name(w, names, e->labour.items[i].operation->title);
    }
}

/* The figure may be two things at once (a piece and a part called "bench"): both are told. */
static bool explain(why *w, const char *figure) {
    bool (*const ways[])(why *, const char *) = {why_total, why_piece, why_part, why_stock, why_work};
    bool found = false;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        if (ways[i](w, figure))
            found = true;
    if (found)
        return true;
    why_names names = {0};
    all_names(w, &names);
    sb_error_unknown(w->run, (sb_place){0}, "figure", figure, names.items, names.count);
    return false;
}

static const char *place_words(sb_run *run, sb_place place) {
    sb_position at = sb_place_position(place);
    return *at.file ? sb_pool_print(run->pool, "%s:%zu", at.file, at.line) : "";
}

sb_document *sb_paper_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way,
                          const char *figure) {
    why w = {.run = run, .shop = shop, .way = way};
    if (!explain(&w, figure))
        return NULL;
    const char *title = sb_pool_print(run->pool, "Where '%s' comes from", figure);
    sb_document *document =
        sb_document_new(run, title, job->date, shop->settings.style, shop->settings.currency);
    sb_sheet *sheet = sb_sheet_add(run, document, "Why");
    sb_heading_add(run, sheet, title);
    sb_table *table = sb_table_add(run, sheet, "", "Figure|Value|Comes from");
    for (size_t i = 0; i < w.steps.count; i++) {
        const why_step *step = &w.steps.items[i];
        const char *at = place_words(run, step->place);
        sb_cell *row = sb_row_add(run, table);
        row[0] = sb_cell_text(step->what);
        row[1] = sb_cell_text(step->value);
        row[2] = sb_cell_text(sb_pool_print(run->pool, "%s%s%s", step->how, *step->how && *at ? "; " : "", at));
    }
    return document;
}

sb_record *sb_record_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way,
                         const char *figure) {
    (void)job;
    why w = {.run = run, .shop = shop, .way = way};
    if (!explain(&w, figure))
        return NULL;
    sb_record *record = sb_record_object(run);
    sb_put_text(run, record, "figure", figure);
    sb_record *steps = sb_put_array(run, record, "steps");
    for (size_t i = 0; i < w.steps.count; i++) {
        const why_step *step = &w.steps.items[i];
        sb_position at = sb_place_position(step->place);
        sb_record *one = sb_put_object(run, steps, NULL);
        sb_put_text(run, one, "what", step->what);
        sb_put_text(run, one, "value", step->value);
        sb_put_text(run, one, "how", step->how);
        sb_put_text(run, one, "file", at.file);
        sb_put_integer(run, one, "line", (int64_t)at.line);
    }
    return record;
}
