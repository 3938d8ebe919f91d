/* Sections that are ripped into strips: the fence is set once for each width, over all boards of a stock. */
#include "papers/cuts.h"

#include <string.h>

const char cuts_short_rip[] = "SHORT: push sticks, hands away"; /* common practice, no source */

typedef struct rip {
    size_t stock;
    sb_length width;
    int64_t strips;
    const char *names, *boards;
    int64_t last;  /* the last board that is in them */
    bool is_short; /* one of the parts, at least */
} rip;
typedef SB_LIST(rip) rips;

static rip *find_rip(const cuts_paper *p, rips *all, const sb_need *need) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].stock == need->stock && all->items[i].width.nm == need->width.nm)
            return &all->items[i];
    SB_PUSH(p->run->pool, *all,
            ((rip){.stock = need->stock, .width = need->width, .names = "", .boards = ""}));
    return &all->items[all->count - 1];
}

/* A name may be a part of another one. */
static bool is_listed(const char *list, const char *word) {
    size_t size = strlen(word);
    for (const char *at = strstr(list, word); at; at = strstr(at + 1, word))
        if ((at == list || at[-1] == ' ') && (at[size] == '\0' || at[size] == ';'))
            return true;
    return false;
}

static void add_part(const cuts_paper *p, rips *all, const sb_board_plan *board, size_t part, int64_t first) {
    size_t need = board->parts.items[part].need;
    rip *r = find_rip(p, all, &p->problem->needs.items[need]);
    const char *name = cuts_name(p, need);
    r->strips += board->count;
    r->is_short = r->is_short || cuts_is_short(p, p->problem->needs.items[need].length);
    if (!is_listed(r->names, name))
        r->names = *r->names ? sb_pool_print(p->run->pool, "%s; %s", r->names, name) : name;
    if (r->last == first)
        return;
    const char *number = cuts_number(p, first, board->count);
    r->boards = *r->boards ? sb_pool_print(p->run->pool, "%s, %s", r->boards, number) : number;
    r->last = first;
}

static rips rips_of(const cuts_paper *p) {
    rips all = {0};
    int64_t first = 1;
    for (size_t b = 0; b < p->plan->boards.count; first += p->plan->boards.items[b++].count)
        for (size_t i = 0; i < p->plan->boards.items[b].parts.count; i++)
            if (cuts_is_strip(p, p->plan->boards.items[b].parts.items[i].need))
                add_part(p, &all, &p->plan->boards.items[b], i, first);
    return all;
}

/* By stock, the widest first. */
static void sort(rips *all) {
    for (size_t i = 1; i < all->count; i++)
        for (size_t j = i; j > 0 && all->items[j].stock == all->items[j - 1].stock &&
                           all->items[j].width.nm > all->items[j - 1].width.nm;
             j--) {
            rip swapped = all->items[j];
            all->items[j] = all->items[j - 1];
            all->items[j - 1] = swapped;
        }
}

bool cuts_any_rip(const cuts_paper *p) {
    return rips_of(p).count > 0;
}

void cuts_rip(const cuts_paper *p, sb_sheet *sheet) {
    rips all = rips_of(p);
    if (all.count == 0)
        return;
    sort(&all);
    sb_table *table = sb_table_add(p->run, sheet, "Rip: the fence is set once for each width of a stock",
                                   "Fence at>|Strips>|Part|Stock|Of boards|Done");
    for (size_t i = 0; i < all.count; i++) {
        const rip *r = &all.items[i];
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_strong(sb_cell_length(r->width));
        row[1] = sb_cell_count(r->strips);
        row[2] = sb_cell_text(r->is_short ? sb_pool_print(p->run->pool, "%s; %s", r->names, cuts_short_rip)
                                          : r->names);
        row[3] = sb_cell_text(cuts_stock_title(p, r->stock));
        row[4] = sb_cell_text(r->boards);
        row[5] = sb_cell_tick();
    }
}
