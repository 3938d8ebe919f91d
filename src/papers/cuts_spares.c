/* What spares for defects are called, and which parts they stand in for: those of their stock that are not longer. */
#include "papers/cuts.h"

#include <string.h>

typedef struct stood_in {
    const char *list; /* each title once */
    size_t count;     /* titles */
    const char *longest;
    bool any;     /* no part of the stock is longer than the spare */
    bool shorter; /* not all are as long as it */
} stood_in;

/* NULL: a spare itself. */
static const sb_part *part_of(const cuts_paper *p, size_t need) {
    return p->cutlist->needs.items[p->problem->needs.items[need].tag].part;
}

static bool can_replace(const cuts_paper *p, size_t spare, size_t need) {
    const sb_need *needs = p->problem->needs.items;
    return part_of(p, need) && needs[need].stock == needs[spare].stock &&
           needs[need].length.nm <= needs[spare].length.nm;
}

/* Parts of one title are one to whoever looks for a spare. */
static bool listed_before(const cuts_paper *p, size_t spare, size_t need) {
    for (size_t i = 0; i < need; i++)
        if (can_replace(p, spare, i) && strcmp(part_of(p, i)->title, part_of(p, need)->title) == 0)
            return true;
    return false;
}

static void add(const cuts_paper *p, stood_in *s, size_t spare, size_t need) {
    const sb_need *needs = p->problem->needs.items;
    const char *title = part_of(p, need)->title;
    if (needs[need].length.nm < needs[spare].length.nm)
        s->shorter = true;
    else if (!s->longest)
        s->longest = title;
    if (!listed_before(p, spare, need))
        s->list = s->count++ ? sb_pool_print(p->run->pool, "%s / %s", s->list, title) : title;
}

static stood_in stood_in_by(const cuts_paper *p, size_t spare) {
    const sb_need *needs = p->problem->needs.items;
    stood_in s = {.list = "", .any = true};
    for (size_t i = 0; i < p->problem->needs.count; i++) {
        if (can_replace(p, spare, i))
            add(p, &s, spare, i);
        else if (needs[i].stock == needs[spare].stock && part_of(p, i))
            s.any = false;
    }
    return s;
}

bool cuts_is_spare(const cuts_paper *p, size_t need) {
    return p->problem->needs.items[need].spare;
}

/* A spare is as long as a part of its stock; it is called after that one. */
const char *cuts_spare_name(const cuts_paper *p, size_t spare) {
    stood_in s = stood_in_by(p, spare);
    const char *others = s.shorter ? " or shorter" : s.count > 1 ? " or the like" : "";
    return sb_pool_print(p->run->pool, "spare for %s%s", s.longest ? s.longest : s.list, others);
}

const char *cuts_spare_for(const cuts_paper *p, size_t spare) {
    stood_in s = stood_in_by(p, spare);
    return s.count < 2 ? "" : s.any ? "any part of this stock" : s.list;
}
