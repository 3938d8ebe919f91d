/* A few sheets taken apart and laid out anew. */
#include "cutting/sheet_search.h"

#define GROUP 3

static size_t draw_sheet(const sb_sheet_search *s) {
    size_t best = SIZE_MAX;
    double most = 0;
    for (size_t draws = 1 + sb_work_dice(s->bench->work, 3); draws > 0; draws--) {
        size_t drawn = sb_work_dice(s->bench->work, s->best->sheets.count);
        const sb_laid *laid = &s->best->sheets.items[drawn];
        double worth = 0;
        for (size_t i = 0; i < s->bench->panes.count; i++)
            worth += s->worth[i] * (double)laid->made[i];
        double loss = (double)laid->cost - worth;
        if (best == SIZE_MAX || loss > most)
            best = drawn, most = loss;
    }
    return best;
}

static void free_unused(sb_sheet_search *s) {
    sb_sheets_reset(s);
    for (size_t l = 0; l < s->best->sheets.count; l++) {
        const sb_laid *laid = &s->best->sheets.items[l];
        for (size_t i = 0; i < s->bench->panes.count; i++)
            s->f.demand[i] -= laid->count * laid->made[i];
        if (s->f.available[laid->offer] != INT64_MAX)
            s->f.available[laid->offer] -= laid->count;
    }
}

/* Takes up to `members` sheets apart; their cost. */
static int64_t take_apart(sb_sheet_search *s, const size_t *group, size_t members) {
    int64_t cost = 0;
    free_unused(s);
    for (size_t m = 0; m < members; m++) {
        const sb_laid *laid = &s->best->sheets.items[group[m]];
        for (size_t i = 0; i < s->bench->panes.count; i++)
            s->f.demand[i] += laid->made[i];
        if (s->f.available[laid->offer] != INT64_MAX)
            s->f.available[laid->offer]++;
        cost += laid->cost;
    }
    return cost;
}

static size_t draw_group(const sb_sheet_search *s, size_t *group) {
    size_t members = 0, wanted = 1 + sb_work_dice(s->bench->work, GROUP);
    while (wanted-- > 0) {
        size_t drawn = draw_sheet(s), same = 0;
        for (size_t i = 0; i < members; i++)
            same += group[i] == drawn;
        if ((int64_t)same < s->best->sheets.items[drawn].count)
            group[members++] = drawn;
    }
    return members;
}

static void shake(sb_sheet_search *s) {
    double strength = 0.02 + 0.1 * (double)sb_work_dice(s->bench->work, 5);
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        double by = (double)sb_work_dice(s->bench->work, 2001) / 1000 - 1;
        s->f.worth[i] = s->worth[i] * (1 + strength * by);
    }
}

static void replace_group(sb_sheet_search *s, const size_t *group, size_t members) {
    sb_laying *best = s->best;
    for (size_t m = 0; m < members; m++)
        best->sheets.items[group[m]].count--;
    size_t kept = 0;
    for (size_t l = 0; l < best->sheets.count; l++)
        if (best->sheets.items[l].count > 0)
            best->sheets.items[kept++] = best->sheets.items[l];
    best->sheets.count = kept;
    for (size_t l = 0; l < s->tried.sheets.count; l++)
        SB_PUSH(s->bench->run->pool, best->sheets, s->tried.sheets.items[l]);
    best->missing = s->tried.missing;
    best->cost = 0;
    for (size_t l = 0; l < best->sheets.count; l++)
        best->cost += best->sheets.items[l].count * best->sheets.items[l].cost;
}

static bool improve_group(sb_sheet_search *s) {
    size_t group[GROUP];
    size_t members = draw_group(s, group);
    sb_laying before = {.cost = take_apart(s, group, members), .missing = s->best->missing};
    shake(s);
    if (sb_work_dice(s->bench->work, 2) == 0)
        sb_sheets_offer_only(s, sb_work_dice(s->bench->work, s->bench->offers.count));
    sb_sheets_fill(s, false, &s->tried);
    if (sb_laying_better(&before, &s->tried))
        return false;
    bool better = sb_laying_better(&s->tried, &before);
    replace_group(s, group, members);
    return better;
}

void sb_sheets_improve(sb_sheet_search *s, bool thoroughly) {
    size_t idle = 0, patience = 400 + 40 * s->best->sheets.count;
    s->few = !thoroughly;
    while (idle < patience && !sb_sheets_are_least(s) && s->best->sheets.count > 0 &&
           sb_work_goes_on(s->bench->work))
        idle = improve_group(s) ? 0 : idle + 1;
}
