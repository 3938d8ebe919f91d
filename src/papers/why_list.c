/* Which figures can be asked, and which of them the asker may have meant. */
#include "papers/why.h"

#include <string.h>
#include <strings.h>

void why_word_once(const why *w, why_words *words, const char *word) {
    for (size_t i = 0; i < words->count; i++)
        if (strcasecmp(words->items[i], word) == 0)
            return;
    SB_PUSH(w->run->pool, *words, word);
}

/* ---- the groups -------------------------------------------------------------------------------------- */

static void put(const why *w, why_group *group, const char *name, const char *title) {
    why_word_once(w, &group->names, name);
    why_word_once(w, &group->titles, title);
}

static void pieces(const why *w, why_group *group) {
    const sb_takeoff *t = w->way->takeoff;
    for (size_t i = 0; i < t->pieces.count; i++)
        put(w, group, t->pieces.items[i].source->name, t->pieces.items[i].title);
}

static void parts(const why *w, why_group *group) {
    const sb_takeoff *t = w->way->takeoff;
    for (size_t i = 0; i < t->parts.count; i++)
        put(w, group, t->parts.items[i].name, t->parts.items[i].title);
}

static void inputs(const why *w, why_group *group) {
    const sb_takeoff *t = w->way->takeoff;
    for (size_t i = 0; i < t->makings.count; i++) {
        const sb_recipe *recipe = t->makings.items[i].recipe;
        for (size_t j = 0; j < recipe->inputs.count; j++)
            why_word_once(w, &group->names, recipe->inputs.items[j].name);
        for (size_t j = 0; j < recipe->choices.count; j++)
            why_word_once(w, &group->names, recipe->choices.items[j].name);
    }
}

static void derived(const why *w, why_group *group) {
    const sb_takeoff *t = w->way->takeoff;
    for (size_t i = 0; i < t->makings.count; i++)
        for (size_t j = 0; j < t->makings.items[i].recipe->lets.count; j++)
            why_word_once(w, &group->names, t->makings.items[i].recipe->lets.items[j].name);
}

static void stock(const why *w, why_group *group) {
    const sb_order *order = w->way->order;
    for (size_t i = 0; i < order->lines.count; i++)
        put(w, group, order->lines.items[i].stock->id, order->lines.items[i].stock->title);
}

static void work(const why *w, why_group *group) {
    const sb_estimate *e = w->way->estimate;
    for (size_t i = 0; i < e->labour.count; i++)
        put(w, group, e->labour.items[i].operation->id, e->labour.items[i].operation->title);
}

why_groups why_figures(const why *w) {
    static const struct {
        const char *title;
        void (*fill)(const why *, why_group *);
    } kinds[] = {{"Price", why_totals}, {"Risk and payments", why_facts},
                 {"Pieces", pieces},    {"Parts", parts},
                 {"Inputs", inputs},    {"Derived", derived},
                 {"Stock", stock},      {"Work", work},
                 {"Rates", why_rates},  {"Measures", why_measures},
                 {"Order", why_orders}, {"Cut sheet", why_cut_sheet}};
    why_groups groups = {0};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        why_group group = {.title = kinds[i].title};
        kinds[i].fill(w, &group);
        if (group.names.count)
            SB_PUSH(w->run->pool, groups, group);
    }
    return groups;
}

/* ---- near misses --------------------------------------------------------------------------------------- */

static bool holds(const char *text, const char *word) {
    size_t size = strlen(word);
    for (; size >= 3 && *text; text++)
        if (strncasecmp(text, word, size) == 0)
            return true;
    return false;
}

static why_words all_words(const why *w) {
    why_words all = {0};
    why_groups groups = why_figures(w);
    for (size_t i = 0; i < groups.count; i++) {
        for (size_t j = 0; j < groups.items[i].names.count; j++)
            why_word_once(w, &all, groups.items[i].names.items[j]);
        for (size_t j = 0; j < groups.items[i].titles.count; j++)
            why_word_once(w, &all, groups.items[i].titles.items[j]);
    }
    return all;
}

/* The nearest ones, nearest first, then such as hold the word. */
static why_words near_words(const why *w, const char *figure) {
    enum {
        TOLD = 4
    };
    why_words all = all_words(w), near = {0};
    const char *next;
    while (near.count < TOLD && (next = sb_nearest(figure, all.items, all.count)) != NULL) {
        why_word_once(w, &near, next);
        for (size_t i = 0; i < all.count; i++)
            if (all.items[i] == next)
                all.items[i] = all.items[--all.count];
    }
    for (size_t i = 0; i < all.count && near.count < TOLD; i++)
        if (holds(all.items[i], figure))
            why_word_once(w, &near, all.items[i]);
    return near;
}

void why_unknown(const why *w, const char *figure) {
    sb_pool *pool = w->run->pool;
    const char *dot = strrchr(figure, '.');
    why_words near = near_words(w, figure);
    if (near.count == 0 && dot)
        near = near_words(w, dot + 1);
    const char *list = "";
    for (size_t i = 0; i < near.count; i++)
        list = sb_pool_print(pool, "%s%s\"%s\"", list,
                             i == 0               ? ""
                             : i + 1 < near.count ? ", "
                                                  : " or ",
                             near.items[i]);
    if (near.count)
        sb_error(w->run, (sb_place){0}, "unknown figure \"%s\"; did you mean %s?", figure, list);
    else
        sb_error(w->run, (sb_place){0},
                 "unknown figure \"%s\"; 'sawbill why JOB' without a figure lists those that can be asked",
                 figure);
}
