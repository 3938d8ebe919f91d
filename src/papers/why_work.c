/* Operations: how often, how long, at whose hour. */
#include "papers/figures.h"
#include "papers/why.h"

const char *why_work_words(const why *w, const sb_labour_line *line) {
    const char *what = work_for_words(w->run, w->way->takeoff, line);
    return sb_pool_print(w->run->pool, "%s%s%s", line->operation->title, *what ? ", " : "", what);
}

/* " x 81 %: falls to 90 % with each doubling, and 4 are made" */
static const char *learnt_words(why *w, const sb_labour_line *line) {
    if (line->learned.ppm == 1000000)
        return "";
    return sb_pool_print(w->run->pool,
                         " x %s, for the average falls to %s with each doubling and %lld are made",
                         share_words(w->run, w->shop, line->learned),
                         share_words(w->run, w->shop, line->operation->learning), (long long)line->repeated);
}

bool why_work(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->estimate->labour.count; i++) {
        const sb_labour_line *line = &w->way->estimate->labour.items[i];
        if (!why_is(figure, line->operation->id, line->operation->title))
            continue;
        found = true;
        const char *quantity = number_words(w->run, w->shop, line->quantity_milli, 3, 0);
        int64_t minutes = sb_mul_div(line->operation->time.ms, 100, 6);
        why_say(w, why_work_words(w, line), exact_hours_words(w->run, w->shop, line->time),
                sb_pool_print(w->run->pool, "%s x %s min per %s%s%s", quantity,
                              number_words(w->run, w->shop, minutes, 6, 0),
                              sb_driver_word(line->operation->driver), learnt_words(w, line),
                              line->from_plan ? ", counted from the cutting plan" : ""),
                line->operation->place);
        why_say_money(w, "amount", line->amount,
                      sb_pool_print(w->run->pool, "at %s an hour (%s)",
                                    money_words(w->run, w->shop, line->hour), line->operation->worker->id),
                      line->place);
    }
    return found;
}
