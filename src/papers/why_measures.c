/* What the job takes in wood and time: waste, spare for defects, weight, lead time, the date a quote holds to. */
#include "papers/why_measures.h"
#include "papers/figures.h"
#include "papers/why.h"

#include <strings.h>

enum {
    ALSO = 4
};
typedef struct measure {
    const char *name, *also[ALSO]; /* in the words of the papers */
    void (*say)(why *w);
} measure;

static const sb_estimate *estimate(const why *w) {
    return w->way->estimate;
}

static const sb_style *style(const why *w) {
    return &w->shop->settings.style;
}

/* ---- where the wood goes ----------------------------------------------------------------------------------- */

static const int64_t CUBIC_FOOT = 28316847; /* mm3: 304.8 mm to the third, rounded */

/* "0.18767 m3" */
static const char *volume(const why *w, int64_t mm3) {
    bool feet = style(w)->units == SB_UNITS_IN;
    int64_t amount = feet ? sb_mul_div(mm3, 1000, CUBIC_FOOT) : sb_mul_div(mm3, 1, 10000);
    return sb_pool_print(w->run->pool, "%s %s", number_words(w->run, w->shop, amount, feet ? 3 : 5, 0),
                         feet ? "ft3" : "m3");
}

static sb_wood all_wood(const why *w) {
    sb_wood all = {0};
    for (size_t i = 0; i < estimate(w)->wood.count; i++) {
        const sb_wood *wood = &estimate(w)->wood.items[i];
        all.taken = sb_add(all.taken, wood->taken), all.kept = sb_add(all.kept, wood->kept);
        all.parts = sb_add(all.parts, wood->parts), all.spare = sb_add(all.spare, wood->spare);
    }
    return all;
}

static int64_t used_of(const sb_wood *wood) {
    return sb_sub(wood->taken, wood->kept);
}

static int64_t waste_of(const sb_wood *wood) {
    return sb_sub(used_of(wood), sb_add(wood->parts, wood->spare));
}

/* To a tenth of a per cent, as the papers have it. */
static const char *tenths(const why *w, int64_t part, int64_t whole) {
    int64_t tenth = whole > 0 ? sb_mul_div(part, 1000, whole) : 0;
    return share_words(w->run, w->shop, (sb_share){sb_mul(tenth, 1000)});
}

static void say_used(why *w, const sb_wood *wood, const char *of, sb_place place) {
    why_say(w, sb_pool_print(w->run->pool, "used up%s", of), volume(w, used_of(wood)),
            sb_pool_print(w->run->pool, "%s taken - %s kept: usable leftovers, and strips for other parts",
                          volume(w, wood->taken), volume(w, wood->kept)),
            place);
}

static void say_waste(why *w) {
    sb_wood all = all_wood(w);
    why_say(w, "waste", tenths(w, waste_of(&all), used_of(&all)),
            sb_pool_print(w->run->pool, "(%s used up - %s in parts - %s spare) / used up, by volume",
                          volume(w, used_of(&all)), volume(w, all.parts), volume(w, all.spare)),
            (sb_place){0});
    say_used(w, &all, "", (sb_place){0});
    for (size_t i = 0; i < estimate(w)->wood.count; i++) {
        const sb_wood *wood = &estimate(w)->wood.items[i];
        why_say(w, wood->stock->title, tenths(w, waste_of(wood), used_of(wood)),
                sb_pool_print(w->run->pool, "(%s used up - %s in parts - %s spare) / used up",
                              volume(w, used_of(wood)), volume(w, wood->parts), volume(w, wood->spare)),
                wood->stock->place);
    }
}

/* ---- spare for defects ------------------------------------------------------------------------------------- */

static const sb_stock_total *total_of(const why *w, const sb_stock *stock) {
    const sb_takeoff *t = w->way->takeoff;
    for (size_t i = 0; i < t->totals.count; i++)
        if (t->totals.items[i].stock == stock)
            return &t->totals.items[i];
    return NULL;
}

/* The grade's own word, and what it makes of the parts. */
static void say_grade(why *w, const sb_wood *wood) {
    const sb_grade *grade = wood->stock->grade;
    const sb_stock_total *total = total_of(w, wood->stock);
    if (!grade || grade->defect.ppm == 0 || !total || wood->stock->kind != SB_STOCK_BOARD)
        return;
    const char *basis = grade->basis == SB_ADDED_TO_NET ? "added to" : "lost of what is bought for";
    why_say(w, wood->stock->title, volume(w, wood->spare),
            sb_pool_print(w->run->pool, "%s %s %s in parts asks for %s; planned in whole lengths of parts",
                          share_words(w->run, w->shop, grade->defect), basis,
                          sb_write_length_unit(w->run, total->net_length, style(w)),
                          sb_write_length_unit(w->run, total->spare_length, style(w))),
            grade->place);
}

static void say_spare(why *w) {
    sb_wood all = all_wood(w);
    why_say(w, "spare for defects", tenths(w, all.spare, used_of(&all)),
            sb_pool_print(w->run->pool, "%s planned for knots and splits / %s used up, by volume",
                          volume(w, all.spare), volume(w, used_of(&all))),
            (sb_place){0});
    for (size_t i = 0; i < estimate(w)->wood.count; i++)
        say_grade(w, &estimate(w)->wood.items[i]);
    say_used(w, &all, "", (sb_place){0});
    for (size_t i = 0; i < estimate(w)->wood.count; i++) {
        const sb_wood *wood = &estimate(w)->wood.items[i];
        say_used(w, wood, sb_pool_print(w->run->pool, ", %s", wood->stock->title), wood->stock->place);
    }
}

/* ---- weight -------------------------------------------------------------------------------------------------- */

static const char *weight(const why *w, sb_mass mass) {
    sb_cell cell = weight_cell(style(w), mass);
    return sb_pool_print(w->run->pool, "%s %s",
                         sb_write_decimal(w->run, cell.amount, 1, style(w)->decimal_comma),
                         weight_unit(style(w)));
}

static void say_weight(why *w) {
    const sb_takeoff *t = w->way->takeoff;
    if (estimate(w)->mass.mg == 0)
        why_say(w, "weight", "not known", "a stock tells no density", (sb_place){0});
    else
        why_say(w, "weight", weight(w, estimate(w)->mass), "wood of all pieces, their sum:", (sb_place){0});
    for (size_t i = 0; i < t->pieces.count; i++)
        why_say(w, t->pieces.items[i].title,
                t->pieces.items[i].mass.mg ? weight(w, t->pieces.items[i].mass) : "not known",
                sb_pool_print(w->run->pool, "each, %lld off", (long long)t->pieces.items[i].count),
                t->pieces.items[i].source->place);
    for (size_t i = 0; i < t->totals.count; i++) {
        const sb_stock_total *total = &t->totals.items[i];
        int64_t mm3 = sb_mul_div(total->net_volume.nl, 1, 1000);
        why_say(w, total->stock->title, weight(w, sb_volume_mass(total->net_volume, total->stock->density)),
                sb_pool_print(w->run->pool, "%s in all parts x %lld kg/m3", volume(w, mm3),
                              (long long)total->stock->density),
                total->stock->place);
    }
}

/* ---- time ---------------------------------------------------------------------------------------------------- */

static const char *days_words(const why *w, int days) {
    return sb_pool_print(w->run->pool, "%d day%s", days, days == 1 ? "" : "s");
}

static void say_lead(why *w) {
    const sb_settings *s = &w->shop->settings;
    if (estimate(w)->lead_days < 0) {
        why_say(w, "lead time", "not told", "the shop does not say how many hours its week has",
                (sb_place){0});
        return;
    }
    const char *hours = exact_hours_words(w->run, w->shop, estimate(w)->time),
               *week = exact_hours_words(w->run, w->shop, s->week), *drying = NULL;
    if (estimate(w)->drying.ms > 0)
        drying = exact_hours_words(w->run, w->shop, estimate(w)->drying);
    why_say(w, "lead time", days_words(w, estimate(w)->lead_days),
            sb_pool_print(w->run->pool, "lead + hours / week x 7%s = %s + %s / %s x 7%s, rounded up",
                          drying ? " + drying / 24 h" : "", days_words(w, s->lead_days), hours, week,
                          drying ? sb_pool_print(w->run->pool, " + %s / 24 h", drying) : ""),
            (sb_place){0});
    why_say(w, "lead", days_words(w, s->lead_days), "before work can start",
            sb_shop_setting(w->shop, "lead"));
    why_say(w, "week", week, "working hours", sb_shop_setting(w->shop, "week"));
    if (drying)
        why_say(w, "drying", drying, "coats x how long one dries (stock.csv): no labour", (sb_place){0});
    why_say(w, "hours", hours, "the sum of the labour lines: 'why labour' shows them", (sb_place){0});
}

static void say_validity(why *w) {
    const sb_job *job = estimate(w)->job;
    int days = job->validity_days ? job->validity_days : w->shop->settings.validity_days;
    if (days == 0)
        why_say(w, "valid until", "not told", "neither job nor shop says for how long", (sb_place){0});
    else
        why_say(
            w, "valid until", sb_write_date(w->run, sb_date_plus(job->date, days)),
            sb_pool_print(w->run->pool, "%s and %s", sb_write_date(w->run, job->date), days_words(w, days)),
            job->validity_days ? job->place : sb_shop_setting(w->shop, "validity"));
}

static void say_date(why *w) {
    why_say(w, "date", sb_write_date(w->run, estimate(w)->job->date),
            "as the job says: prices are those of that day", estimate(w)->job->place);
}

/* ---- which there are ------------------------------------------------------------------------------------------- */

static const measure measures[] = {
    {"waste", {"waste, of used up", "waste of used up", "used up"}, say_waste},
    {"spare", {"spare for defects", "spare, of used up"}, say_spare},
    {"weight", {"weight, kg", "weight, lb"}, say_weight},
    {"lead", {"lead time", "lead time, days", "week"}, say_lead},
    {"validity", {"valid until"}, say_validity},
    {"date", {NULL}, say_date},
    {"plan", {"cutting plan", "plan cost", "no plan under"}, why_plan},
    {"boards", {"boards, m", "boards, ft"}, why_boards},
    {"sheets", {NULL}, why_sheets},
};
enum {
    MEASURES = sizeof measures / sizeof *measures
};

static bool goes_by(const measure *m, const char *figure) {
    bool same = strcasecmp(m->name, figure) == 0;
    for (size_t i = 0; i < ALSO && m->also[i]; i++)
        same = same || strcasecmp(m->also[i], figure) == 0;
    return same;
}

bool why_measure(why *w, const char *figure) {
    for (size_t i = 0; i < MEASURES; i++) {
        if (!goes_by(&measures[i], figure))
            continue;
        measures[i].say(w);
        return true;
    }
    return false;
}

void why_measures(const why *w, why_group *group) {
    for (size_t i = 0; i < MEASURES; i++) {
        why_word_once(w, &group->names, measures[i].name);
        for (size_t j = 0; j < ALSO && measures[i].also[j]; j++)
            why_word_once(w, &group->titles, measures[i].also[j]);
    }
}
