/* Which step of the price a name means, and what comes before it. */
#include "papers/why_steps.h"

#include <string.h>
#include <strings.h>

static bool is_tax(const why *w, const char *figure, const sb_tax *tax) {
    const char *full = sb_pool_print(w->run->pool, "tax: %s, %s", tax->title, tax->id);
    return strcasecmp(figure, tax->title) == 0 || strcasecmp(figure, full) == 0 ||
           strcasecmp(figure, full + strlen("tax: ")) == 0;
}

/* A tax goes by its title, with or without its name. */
static const char *step_word(const why *w, const char *figure) {
    const sb_estimate *e = w->way->estimate;
    for (size_t i = 0; i < e->taxes.count; i++)
        if (is_tax(w, figure, e->taxes.items[i].tax))
            return "tax";
    return figure;
}

/* What comes before a step explains it; the net price and what follows from it need the whole chain. */
static void say_chain(why *w, const why_total_row *to) {
    for (const why_total_row *row = why_price_steps; row < to; row++)
        if (row->kind == WHY_SUM)
            why_say_sum(w, row);
        else if (row->kind == WHY_STEP &&
                 (strcmp(row->name, "supplement") != 0 || w->way->estimate->minimum.minor != 0))
            row->say(w);
}

bool why_total(why *w, const char *figure) {
    figure = step_word(w, figure);
    for (const why_total_row *row = why_price_steps; row->name; row++) {
        if (strcasecmp(row->name, figure) != 0 && (!row->also || strcasecmp(row->also, figure) != 0))
            continue;
        if (row->kind == WHY_STEP || row->kind == WHY_END)
            say_chain(w, row);
        row->say(w);
        if (strcmp(row->name, "discount") == 0)
            why_quoted_discount(w);
        return true;
    }
    return false;
}

/* Listed by the shorter word, which needs no quotes. */
void why_totals(const why *w, why_group *group) {
    for (const why_total_row *row = why_price_steps; row->name; row++) {
        bool phrase = strchr(row->name, ' ') != NULL;
        why_word_once(w, &group->names, phrase ? row->also : row->name);
        why_word_once(w, &group->titles, phrase || !row->also ? row->name : row->also);
    }
    why_printed(w, group);
}
