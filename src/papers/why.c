/* Where a figure comes from, as a paper and as a record; without a figure, which ones can be asked. */
#include "papers/why.h"

#include "papers/figures.h"

#include <string.h>
#include <strings.h>

void why_say(why *w, const char *what, const char *value, const char *how, sb_place place) {
    why_step step = {.what = what, .value = value, .how = how, .place = place};
    SB_PUSH(w->run->pool, w->steps, step);
}

void why_say_money(why *w, const char *what, sb_money money, const char *how, sb_place place) {
    why_step step = {.what = what, .how = how, .place = place, .is_money = true, .money = money};
    step.value = money_words(w->run, w->shop, money);
    SB_PUSH(w->run->pool, w->steps, step);
}

void why_say_length(why *w, const char *what, sb_length length, const char *how, sb_place place) {
    why_step step = {.what = what, .how = how, .place = place, .is_length = true, .length = length};
    step.value = sb_write_length_unit(w->run, length, &w->shop->settings.style);
    SB_PUSH(w->run->pool, w->steps, step);
}

/* ---- what a figure means -------------------------------------------------------------------------------- */

static bool same(const char *word, size_t length, const char *name) {
    return name && strlen(name) == length && strncasecmp(word, name, length) == 0;
}

static bool either(const char *word, size_t length, const char *name, const char *title) {
    return same(word, length, name) || same(word, length, title);
}

static bool owns(const why *w, const char *word, size_t length, size_t piece, const char *path) {
    const sb_takeoff_piece *owner = &w->way->takeoff->pieces.items[piece];
    return either(word, length, owner->source->name, owner->title) || same(word, length, path);
}

bool why_means(const why *w, const char *figure, size_t piece, const char *path, const char *name,
               const char *title) {
    size_t length = strlen(figure);
    if (either(figure, length, name, title))
        return true;
    for (const char *dot = strchr(figure, '.'); dot; dot = strchr(dot + 1, '.'))
        if (owns(w, figure, (size_t)(dot - figure), piece, path) &&
            either(dot + 1, strlen(dot + 1), name, title))
            return true;
    const char *open = length && figure[length - 1] == ')' ? strstr(figure, " (") : NULL;
    return open && either(figure, (size_t)(open - figure), name, title) &&
           owns(w, open + 2, strlen(open + 2) - 1, piece, path);
}

/* It may be two things at once (a piece and a part called "bench"): both are told. */
static bool answered(why *w, const char *figure) {
    bool (*const ways[])(why *, const char *) = {why_total, why_piece, why_part, why_value,  why_stock,
                                                 why_work,  why_rate,  why_fact, why_measure};
    bool found = false;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        if (ways[i](w, figure))
            found = true;
    return found;
}

/* What some sheets of the estimate write before the name of what they price. */
static const char *behind_prefix(const char *figure) {
    static const char *const prefixes[] = {
        "each: ", "each, net: ", "each, with tax: ", "price of ", "time of ", "amount of "};
    for (size_t i = 0; i < sizeof prefixes / sizeof *prefixes; i++)
        if (strncasecmp(figure, prefixes[i], strlen(prefixes[i])) == 0)
            return figure + strlen(prefixes[i]);
    return NULL;
}

static bool explain(why *w, const char *figure) {
    const char *bare = behind_prefix(figure);
    if (answered(w, figure) || (bare && answered(w, bare)))
        return true;
    why_unknown(w, figure);
    return false;
}

/* ---- papers ----------------------------------------------------------------------------------------------- */

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
                     "derived value of one piece.",
                     false);
}

sb_document *sb_paper_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way,
                          const char *figure) {
    why w = {.run = run, .shop = shop, .way = way};
    if (figure && !explain(&w, figure))
        return NULL;
    const char *title = figure ? sb_pool_print(run->pool, "Where '%s' comes from", figure)
                               : "Figures whose origin can be asked";
    sb_document *document =
        sb_document_new(run, title, job->date, shop->settings.style, shop->settings.currency);
    sb_sheet *sheet = sb_sheet_add(run, document, "Why");
    sb_heading_add(run, sheet, title);
    if (figure)
        put_steps(&w, sheet);
    else
        put_figures(&w, sheet);
    return document;
}

/* ---- records ------------------------------------------------------------------------------------------------ */

static sb_record *steps_record(const why *w, const char *figure) {
    sb_record *record = sb_record_object(w->run);
    sb_put_text(w->run, record, "figure", figure);
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
    return record;
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

sb_record *sb_record_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way,
                         const char *figure) {
    (void)job;
    why w = {.run = run, .shop = shop, .way = way};
    if (!figure)
        return figures_record(&w);
    return explain(&w, figure) ? steps_record(&w, figure) : NULL;
}
