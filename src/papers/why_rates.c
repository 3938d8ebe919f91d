/* An hour of a worker, a group of material, a line of it that nobody sells. */
#include "papers/figures.h"
#include "papers/why.h"

#include <string.h>
#include <strings.h>

static const char *without(const char *figure, const char *prefix) {
    size_t size = strlen(prefix);
    return strncasecmp(figure, prefix, size) == 0 ? figure + size : NULL;
}

/* ---- workers -------------------------------------------------------------------------------------------------- */

static void say_worker(why *w, const sb_worker *worker) {
    const sb_estimate *e = w->way->estimate;
    sb_duration time = {0};
    sb_money amount = {0};
    for (size_t i = 0; i < e->labour.count; i++)
        if (e->labour.items[i].operation->worker == worker) {
            time.ms = sb_add(time.ms, e->labour.items[i].time.ms);
            amount = sb_money_add(amount, e->labour.items[i].amount);
        }
    why_say_money(w, sb_pool_print(w->run->pool, "hourly rate: %s", worker->id), worker->hour, "per hour",
                  worker->place);
    why_say_money(
        w, sb_pool_print(w->run->pool, "labour of %s", worker->id), amount,
        sb_pool_print(w->run->pool, "%s, the sum of these lines:", exact_hours_words(w->run, w->shop, time)),
        (sb_place){0});
    for (size_t i = 0; i < e->labour.count; i++)
        if (e->labour.items[i].operation->worker == worker)
            why_say_money(w, e->labour.items[i].operation->title, e->labour.items[i].amount,
                          exact_hours_words(w->run, w->shop, e->labour.items[i].time),
                          e->labour.items[i].operation->place);
}

static bool why_worker(why *w, const char *figure) {
    const char *colon = without(figure, "hourly rate: "), *of = without(figure, "hourly rate of ");
    const char *id = colon ? colon : of ? of : figure;
    for (size_t i = 0; i < w->shop->settings.workers.count; i++) {
        if (strcasecmp(id, w->shop->settings.workers.items[i].id) != 0)
            continue;
        say_worker(w, &w->shop->settings.workers.items[i]);
        return true;
    }
    return false;
}

/* ---- material -------------------------------------------------------------------------------------------------- */

static void say_line(why *w, const sb_material_line *line) {
    why_say_money(
        w, line->what, line->amount,
        sb_pool_print(w->run->pool, "%s x %s", number_words(w->run, w->shop, line->quantity_milli, 3, 0),
                      exact_cost_words(w->run, w->shop, line->each)),
        line->group == SB_MATERIAL_CREDIT ? sb_shop_setting(w->shop, "leftover value") : line->place);
}

static bool in_group(const sb_material_line *line, const char *figure) {
    return strcasecmp(figure, sb_material_group_word(line->group)) == 0;
}

static bool why_group_of(why *w, const char *figure) {
    const sb_estimate *e = w->way->estimate;
    sb_money sum = {0};
    size_t count = 0;
    for (size_t i = 0; i < e->materials.count; i++)
        if (in_group(&e->materials.items[i], figure)) {
            sum = sb_money_add(sum, e->materials.items[i].amount);
            count++;
        }
    if (count)
        why_say_money(w, figure, sum, "material of this group, the sum of its lines:", (sb_place){0});
    for (size_t i = 0; count && i < e->materials.count; i++)
        if (in_group(&e->materials.items[i], figure))
            say_line(w, &e->materials.items[i]);
    return count > 0;
}

/* Extras of the job and credit for leftovers; what is bought is told with its stock. */
static bool why_unsold(why *w, const char *figure) {
    const sb_estimate *e = w->way->estimate;
    bool found = false;
    for (size_t i = 0; i < e->materials.count; i++) {
        if (e->materials.items[i].order || strcasecmp(figure, e->materials.items[i].what) != 0)
            continue;
        say_line(w, &e->materials.items[i]);
        found = true;
    }
    return found;
}

bool why_rate(why *w, const char *figure) {
    bool worker = why_worker(w, figure), group = why_group_of(w, figure), unsold = why_unsold(w, figure);
    return worker || group || unsold;
}

void why_rates(const why *w, why_group *group) {
    const sb_estimate *e = w->way->estimate;
    for (size_t i = 0; i < w->shop->settings.workers.count; i++) {
        const char *id = w->shop->settings.workers.items[i].id;
        why_word_once(w, &group->names, id);
        why_word_once(w, &group->titles, sb_pool_print(w->run->pool, "hourly rate: %s", id));
        why_word_once(w, &group->titles, sb_pool_print(w->run->pool, "hourly rate of %s", id));
    }
    for (size_t i = 0; i < e->materials.count; i++) {
        why_word_once(w, &group->names, sb_material_group_word(e->materials.items[i].group));
        why_word_once(w, &group->titles, e->materials.items[i].what);
    }
}
