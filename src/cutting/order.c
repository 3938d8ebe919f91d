/* The order in which kinds and boards stand on a bench. */
#include <stdlib.h>

#include "cutting/order.h"

static int rising(int64_t a, int64_t b) {
    return a < b ? -1 : a > b;
}

/* The first that is not 0. */
static int first_of(const int *differences, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (differences[i] != 0)
            return differences[i];
    return 0;
}

static int by_end(sb_cut_end a, sb_cut_end b) {
    int mitre = rising(a.mitre.udeg, b.mitre.udeg);
    return mitre ? mitre : rising(a.bevel.udeg, b.bevel.udeg);
}

/* 0: of one kind, as far as can be told without turning the parts. */
static int by_looks(const sb_need *one, const sb_need *other) {
    const int differences[] = {rising((int64_t)one->stock, (int64_t)other->stock),
                               rising(other->length.nm, one->length.nm),
                               rising(other->width.nm, one->width.nm),
                               by_end(one->end1, other->end1),
                               by_end(one->end2, other->end2),
                               rising(one->clear, other->clear),
                               rising(one->sound, other->sound),
                               rising(one->grain, other->grain)};
    return first_of(differences, sizeof differences / sizeof *differences);
}

int sb_by_shape(const void *a, const void *b) {
    const sb_need *one = *(const sb_need *const *)a, *other = *(const sb_need *const *)b;
    int looks = by_looks(one, other);
    return looks ? looks : one < other ? -1 : one > other;
}

static int by_faults(const sb_offered *one, const sb_offered *other) {
    int difference = rising((int64_t)one->faults.count, (int64_t)other->faults.count);
    for (size_t i = 0; i < one->faults.count && difference == 0; i++) {
        const sb_fault *a = &one->faults.items[i], *b = &other->faults.items[i];
        const int differences[] = {rising(a->from, b->from), rising(a->to, b->to), rising(a->by, b->by)};
        difference = first_of(differences, sizeof differences / sizeof *differences);
    }
    return difference;
}

int sb_by_room(const void *a, const void *b) {
    const sb_offered *one = a, *other = b;
    const int differences[] = {rising(other->available, one->available), rising(one->room, other->room),
                               rising(one->fixed, other->fixed),         rising(one->trued, other->trued),
                               rising(one->ragged, other->ragged),       by_faults(one, other),
                               rising((int64_t)one->supply, (int64_t)other->supply)};
    return first_of(differences, sizeof differences / sizeof *differences);
}

int64_t *sb_kinds_by_stock(sb_pool *pool, const sb_problem *problem) {
    int64_t *kinds = SB_NEW_ARRAY(pool, int64_t, problem->stock.count + 1);
    const sb_need **sorted = SB_NEW_ARRAY(pool, const sb_need *, problem->needs.count + 1);
    for (size_t i = 0; i < problem->needs.count; i++)
        sorted[i] = &problem->needs.items[i];
    qsort(sorted, problem->needs.count, sizeof *sorted, sb_by_shape);
    for (size_t i = 0; i < problem->needs.count; i++)
        kinds[sorted[i]->stock] += i == 0 || by_looks(sorted[i - 1], sorted[i]) != 0;
    return kinds;
}
