/* Where a figure comes from: what its name means, and who answers for it. */
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

void why_say_exact_length(why *w, const char *what, sb_length length, const char *how, sb_place place) {
    sb_style exact = sb_style_exact(&w->shop->settings.style);
    why_say_length(w, what, length, how, place);
    w->steps.items[w->steps.count - 1].value = sb_write_length_unit(w->run, length, &exact);
}

void why_say_cost(why *w, const char *what, sb_cost cost, const char *how, sb_place place) {
    why_say_money(w, what, sb_cost_money(cost), how, place);
    w->steps.items[w->steps.count - 1].value = exact_cost_words(w->run, w->shop, cost);
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

bool why_is(const char *figure, const char *name, const char *title) {
    return strcasecmp(figure, name) == 0 || strcasecmp(figure, title) == 0;
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
    bool (*const ways[])(why *, const char *) = {why_total, why_piece, why_part,  why_value,   why_stock,
                                                 why_work,  why_rate,  why_fact,  why_measure, why_bought,
                                                 why_board, why_stop,  why_sheet, why_spare};
    bool found = false;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        if (ways[i](w, figure))
            found = true;
    return found;
}

static bool answered_bare(why *w, const char *figure) {
    const char *bare = why_bare(w, figure), *own = why_own_word(w, figure);
    return (bare && why_answer(w, bare)) || (own && answered(w, own)) || why_option(w, figure);
}

bool why_answer(why *w, const char *figure) {
    return answered(w, figure) || answered_bare(w, figure) || why_offer(w, figure);
}
