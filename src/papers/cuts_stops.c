/* Stop settings over the whole batch: each set once, longest first, so that a mistake can be recut shorter. */
#include "papers/cuts.h"

#include <stdlib.h>
#include <string.h>

typedef struct span { /* boards by number, both ends included */
    int64_t first, last;
} span;

typedef struct stop {
    size_t need; /* the first need cut at it; stands for stock, length, ends and width */
    int64_t count, strips;
    SB_LIST(const char *) names; /* of its parts, each once */
    SB_LIST(span) boards;
} stop;

typedef struct stops {
    stop *items;
    size_t count, capacity;
} stops;

static int64_t plain(sb_angle angle) {
    return angle.udeg < 0 ? -angle.udeg : angle.udeg;
}

static bool same_end(sb_cut_end a, sb_cut_end b) {
    return plain(a.mitre) == plain(b.mitre) && plain(a.bevel) == plain(b.bevel);
}

static bool same_setting(const sb_need *a, const sb_need *b) {
    bool straight = same_end(a->end1, b->end1) && same_end(a->end2, b->end2);
    bool turned = same_end(a->end1, b->end2) && same_end(a->end2, b->end1);
    return a->stock == b->stock && a->length.nm == b->length.nm && a->width.nm == b->width.nm &&
           (straight || turned);
}

static stop *find_stop(const cuts_paper *p, stops *all, size_t need) {
    const sb_need *needs = p->problem->needs.items;
    for (size_t i = 0; i < all->count; i++)
        if (same_setting(&needs[all->items[i].need], &needs[need]))
            return &all->items[i];
    SB_PUSH(p->run->pool, *all, ((stop){.need = need}));
    return &all->items[all->count - 1];
}

static const char *joined(sb_run *run, const char *list, const char *word) {
    return *list ? sb_pool_print(run->pool, "%s, %s", list, word) : word;
}

/* Boards come in the order of their numbers, so a span only grows at its end. */
static void add_boards(sb_run *run, stop *s, int64_t first, int64_t count) {
    span *last = s->boards.count ? &s->boards.items[s->boards.count - 1] : NULL;
    if (last && first <= last->last + 1)
        last->last = first + count - 1;
    else
        SB_PUSH(run->pool, s->boards, ((span){first, first + count - 1}));
}

static const char *boards_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->boards.count; i++)
        words = joined(
            p->run, words,
            cuts_number(p, s->boards.items[i].first, s->boards.items[i].last - s->boards.items[i].first + 1));
    return words;
}

static void add_name(sb_run *run, stop *s, const char *name) {
    for (size_t i = 0; i < s->names.count; i++)
        if (strcmp(s->names.items[i], name) == 0)
            return;
    SB_PUSH(run->pool, s->names, name);
}

static const char *names_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->names.count; i++)
        words = joined(p->run, words, s->names.items[i]);
    return words;
}

static void count_board(const cuts_paper *p, stops *all, size_t index, int64_t first) {
    const sb_board_plan *board = &p->plan->boards.items[index];
    for (size_t i = 0; i < board->parts.count; i++) {
        const sb_placed *part = &board->parts.items[i];
        stop *s = find_stop(p, all, part->need);
        s->strips += board->count;
        if (part->across.nm == 0)
            s->count += board->count;
        add_name(p->run, s, cuts_name(p, part->need));
        add_boards(p->run, s, first, board->count);
    }
}

/* By stock, then longest first; as found where equal. */
static bool before(const cuts_paper *p, const stop *a, const stop *b) {
    const sb_need *first = &p->problem->needs.items[a->need], *second = &p->problem->needs.items[b->need];
    return first->stock != second->stock ? first->stock < second->stock
                                         : first->length.nm > second->length.nm;
}

static void sort(const cuts_paper *p, stops *all) {
    for (size_t i = 1; i < all->count; i++)
        for (size_t j = i; j > 0 && before(p, &all->items[j], &all->items[j - 1]); j--) {
            stop swapped = all->items[j];
            all->items[j] = all->items[j - 1];
            all->items[j - 1] = swapped;
        }
}

static const char *also(sb_run *run, const char *words, const char *more) {
    return *more ? sb_pool_print(run->pool, "%s; %s", words, more) : words;
}

static const char *rip_words(const cuts_paper *p, const stop *s) {
    const sb_need *need = &p->problem->needs.items[s->need];
    if (need->width.nm == 0)
        return "";
    const char *width = cuts_length(p, need->width);
    return s->strips > s->count
               ? sb_pool_print(p->run->pool, "then rip each to strips of %s, %lld strips in all", width,
                               (long long)s->strips)
               : sb_pool_print(p->run->pool, "then rip each to %s", width);
}

static const char *short_words(const cuts_paper *p, const sb_need *need) {
    return p->settings && need->length.nm < p->settings->short_part.nm ? "SHORT: clamp it, hands away" : "";
}

static void stop_row(const cuts_paper *p, sb_table *table, const stop *s) {
    const sb_need *need = &p->problem->needs.items[s->need];
    const char *words = cuts_ends(p->run, need->end1, need->end2, p->style);
    words = also(p->run, words, rip_words(p, s));
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_length(need->length));
    row[1] = sb_cell_count(s->count);
    row[2] = sb_cell_text(names_words(p, s));
    row[3] = sb_cell_text(also(p->run, words, short_words(p, need)));
    row[4] = sb_cell_text(boards_words(p, s));
    row[5] = sb_cell_tick();
}

/* What to do where the saw does not reach takes more words than a row has room for. */
static void reach_line(const cuts_paper *p, sb_sheet *sheet, const stop *s) {
    const sb_need *need = &p->problem->needs.items[s->need];
    const char *reach = p->settings ? cuts_reach(p->run, &p->settings->crosscut, need->end1, p->style) : "";
    if (p->settings && !*reach)
        reach = cuts_reach(p->run, &p->settings->crosscut, need->end2, p->style);
    if (*reach)
        sb_paragraph_add(p->run, sheet,
                         sb_pool_print(p->run->pool, "%s, %s: %s.", cuts_length(p, need->length),
                                       names_words(p, s), reach),
                         false);
}

/* The stops of one stock, from `start` on; where the next stock starts. */
static size_t stock_table(const cuts_paper *p, sb_sheet *sheet, const stops *all, size_t start) {
    const sb_need *needs = p->problem->needs.items;
    size_t stock = needs[all->items[start].need].stock, end = start;
    sb_table *table =
        sb_table_add(p->run, sheet, cuts_stock_title(p, stock), "Stop at>|Off>|Part|Ends|Boards|Done");
    for (; end < all->count && needs[all->items[end].need].stock == stock; end++)
        stop_row(p, table, &all->items[end]);
    for (size_t i = start; i < end; i++)
        reach_line(p, sheet, &all->items[i]);
    return end;
}

/* Rows of one line: names and ends wrap at about so many letters. */
static size_t rows_ahead(const cuts_paper *p, const stops *all, size_t start) {
    enum {
        LETTERS_A_LINE = 36
    };
    const sb_need *needs = p->problem->needs.items;
    size_t rows = 3;
    for (size_t i = start; i < all->count; i++) {
        const sb_need *need = &needs[all->items[i].need];
        if (need->stock != needs[all->items[start].need].stock)
            break;
        size_t name = strlen(names_words(p, &all->items[i]));
        size_t ends = strlen(cuts_ends(p->run, need->end1, need->end2, p->style));
        rows += 1 + (name > ends ? name : ends) / LETTERS_A_LINE;
    }
    return rows;
}

static const char how[] = "Each stop is set once, longest first, for all boards together. True one end of "
                          "each board first. Set the "
                          "stop, cut one piece, check it against the number, then run the batch.";
static const char how_angles[] = "Parts with angled ends touch the stop with their long point.";
static const char how_spares[] = "Spares for defects stand in for parts that turn out to have knots or "
                                 "splits. Cut them last, to the length "
                                 "that is lacking; a spare that is not needed goes into the rack.";

static bool any_spare(const cuts_paper *p) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (cuts_is_spare(p, i))
            return true;
    return false;
}

void cuts_stops(cuts_paper *p, sb_sheet *sheet) {
    stops all = {0};
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count; i++) {
        count_board(p, &all, i, first);
        first += p->plan->boards.items[i].count;
    }
    sort(p, &all);
    sb_heading_add(p->run, sheet, "Stops");
    sb_paragraph_add(p->run, sheet,
                     cuts_any_angle(p) ? sb_pool_print(p->run->pool, "%s %s", how, how_angles) : how, false);
    if (any_spare(p))
        sb_paragraph_add(p->run, sheet, how_spares, false);
    size_t used = 0;
    for (size_t i = 0; i < all.count;) {
        cuts_together(p, sheet, &used, rows_ahead(p, &all, i) + (i == 0 ? 6 : 0));
        i = stock_table(p, sheet, &all, i);
    }
}
