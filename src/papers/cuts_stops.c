/* Stop settings over the whole batch: each set once, longest first, so that a mistake can be recut shorter. */
#include "papers/cuts.h"

#include <stdlib.h>
#include <string.h>

typedef struct span { /* boards by number, both ends included */
    int64_t first, last;
    int64_t each; /* off each of them; 0: strips alone, beside those of another part */
} span;

typedef struct stop {
    size_t need;    /* the first need cut at it; stands for stock, length, ends and width */
    size_t setting; /* the first row of those that the saw is set once for */
    int64_t count, strips;
    int64_t turned, rolled, both; /* of its parts, how many lie so on their boards */
    SB_LIST(const char *) names;  /* of its parts, each once */
    SB_LIST(size_t) spares;       /* needs, each once */
    SB_LIST(span) boards;
} stop;

typedef struct stops {
    stop *items;
    size_t count, capacity;
} stops;

static bool same_end(sb_cut_end a, sb_cut_end b) {
    return a.mitre.udeg == b.mitre.udeg && a.bevel.udeg == b.bevel.udeg;
}

static sb_cut_end signed_end(sb_cut_end end, int mitre, int bevel) {
    return (sb_cut_end){{mitre * end.mitre.udeg}, {bevel * end.bevel.udeg}};
}

/* As it is, or rolled over its length. */
static bool same_ends(const sb_need *a, const sb_need *b) {
    for (int sign = 1; sign >= -1; sign -= 2)
        if (same_end(a->end1, signed_end(b->end1, sign, sign)) &&
            same_end(a->end2, signed_end(b->end2, sign, sign)))
            return true;
    return false;
}

/* A part rolled over is the same at the saw; one turned end for end has its front where the other has its rear, and a
 * row of its own. */
static bool same_row(const sb_need *a, const sb_need *b) {
    return a->stock == b->stock && a->length.nm == b->length.nm && a->width.nm == b->width.nm &&
           same_ends(a, b);
}

/* As it is crosscut: a section to be ripped is cut square. */
static sb_need as_crosscut(const cuts_paper *p, size_t index) {
    sb_need need = p->problem->needs.items[index];
    if (cuts_is_strip(p, index))
        need.end1 = need.end2 = (sb_cut_end){{0}, {0}};
    return need;
}

/* The saw is set once for parts of one length and one pair of ends, whatever their width and whichever end is first. */
static bool same_setting(const cuts_paper *p, size_t one, size_t other) {
    const sb_need a = as_crosscut(p, one), b = as_crosscut(p, other);
    sb_need turned = b;
    turned.end1 = signed_end(b.end2, -1, 1);
    turned.end2 = signed_end(b.end1, -1, 1);
    return a.stock == b.stock && a.length.nm == b.length.nm && (same_ends(&a, &b) || same_ends(&a, &turned));
}

static stop *find_stop(const cuts_paper *p, stops *all, size_t need) {
    const sb_need *needs = p->problem->needs.items;
    for (size_t i = 0; i < all->count; i++)
        if (same_row(&needs[all->items[i].need], &needs[need]))
            return &all->items[i];
    size_t setting = 0;
    while (setting < all->count && !same_setting(p, all->items[setting].need, need))
        setting++;
    SB_PUSH(p->run->pool, *all, ((stop){.need = need, .setting = setting}));
    return &all->items[all->count - 1];
}

static const char *joined(sb_run *run, const char *list, const char *word) {
    return *list ? sb_pool_print(run->pool, "%s, %s", list, word) : word;
}

/* Boards come in the order of their numbers, and all parts of one before those of the next. */
static void add_boards(sb_run *run, stop *s, int64_t first, int64_t count, int64_t each) {
    span *last = s->boards.count ? &s->boards.items[s->boards.count - 1] : NULL;
    if (last && last->first == first)
        last->each += each;
    else
        SB_PUSH(run->pool, s->boards, ((span){first, first + count - 1, each}));
}

/* "3: 2", "5 to 8: 2 each" */
static const char *span_words(const cuts_paper *p, span boards) {
    const char *number = cuts_number(p, boards.first, boards.last - boards.first + 1);
    if (boards.each == 0)
        return number;
    return sb_pool_print(p->run->pool, "%s: %lld%s", number, (long long)boards.each,
                         boards.last > boards.first ? " each" : "");
}

static const char *boards_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->boards.count; i++) {
        span boards = s->boards.items[i];
        for (; i + 1 < s->boards.count && s->boards.items[i + 1].first == boards.last + 1 &&
               s->boards.items[i + 1].each == boards.each;
             i++)
            boards.last = s->boards.items[i + 1].last;
        words = joined(p->run, words, span_words(p, boards));
    }
    return words;
}

static void add_name(sb_run *run, stop *s, const char *name) {
    for (size_t i = 0; i < s->names.count; i++)
        if (strcmp(s->names.items[i], name) == 0)
            return;
    SB_PUSH(run->pool, s->names, name);
}

static const char *also(sb_run *run, const char *words, const char *more) {
    if (!*words || !*more)
        return *words ? words : more;
    return sb_pool_print(run->pool, "%s; %s", words, more);
}

static const char *names_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->names.count; i++)
        words = also(p->run, words, s->names.items[i]); /* a name may hold commas */
    return words;
}

static void add_spare(const cuts_paper *p, stop *s, size_t need) {
    bool listed = false;
    for (size_t i = 0; i < s->spares.count; i++)
        listed = listed || s->spares.items[i] == need;
    if (!listed && cuts_is_spare(p, need))
        SB_PUSH(p->run->pool, s->spares, need);
}

static void count_lying(stop *s, const sb_placed *part, int64_t count) {
    if (part->turned || part->rolled)
        *(part->turned && part->rolled ? &s->both : part->turned ? &s->turned : &s->rolled) += count;
}

static void count_board(const cuts_paper *p, stops *all, size_t index, int64_t first) {
    const sb_board_plan *board = &p->plan->boards.items[index];
    for (size_t i = 0; i < board->parts.count; i++) {
        const sb_placed *part = &board->parts.items[i];
        stop *s = find_stop(p, all, part->need);
        s->strips += board->count;
        if (part->across.nm == 0)
            s->count += board->count;
        if (!cuts_is_strip(p, part->need))
            count_lying(s, part, board->count);
        add_spare(p, s, part->need);
        add_name(p->run, s, cuts_name(p, part->need));
        add_boards(p->run, s, first, board->count, part->across.nm == 0);
    }
}

/* By stock, then longest first, then by setting; as found where equal. */
static bool before(const cuts_paper *p, const stop *a, const stop *b) {
    const sb_need *first = &p->problem->needs.items[a->need], *second = &p->problem->needs.items[b->need];
    if (first->stock != second->stock)
        return first->stock < second->stock;
    return first->length.nm != second->length.nm ? first->length.nm > second->length.nm
                                                 : a->setting < b->setting;
}

static void sort(const cuts_paper *p, stops *all) {
    for (size_t i = 1; i < all->count; i++)
        for (size_t j = i; j > 0 && before(p, &all->items[j], &all->items[j - 1]); j--) {
            stop swapped = all->items[j];
            all->items[j] = all->items[j - 1];
            all->items[j - 1] = swapped;
        }
}

/* "cut square, rip to strips of 45 mm, 4 strips in all, then mitre each strip: both ends ..."; the ends alone of a part
 * that is not ripped. */
static const char *saw_words(const cuts_paper *p, const stop *s) {
    const sb_need *need = &p->problem->needs.items[s->need];
    const char *ends = cuts_ends(p->run, need->end1, need->end2, p->style), *then = cuts_after_rip(need);
    if (!cuts_is_strip(p, s->need))
        return ends;
    const char *width = cuts_length(p, need->width);
    const char *rip = s->strips > s->count
                          ? sb_pool_print(p->run->pool, "cut square, rip to strips of %s, %lld strips in all",
                                          width, (long long)s->strips)
                          : sb_pool_print(p->run->pool, "cut square, rip to %s", width);
    return *then ? sb_pool_print(p->run->pool, "%s%s: %s", rip, then, ends) : rip;
}

static const char *lying(sb_run *run, const char *words, const stop *s, int64_t count, const char *how) {
    if (count == 0)
        return words;
    return joined(run, words,
                  sb_pool_print(run->pool, "%lld of %lld %s", (long long)count, (long long)s->count, how));
}

/* "2 of 4 turned end for end, 1 of 4 rolled over" */
static const char *lying_words(const cuts_paper *p, const stop *s) {
    const char *words = lying(p->run, "", s, s->turned, cuts_turned(true, false));
    words = lying(p->run, words, s, s->rolled, cuts_turned(false, true));
    return lying(p->run, words, s, s->both, cuts_turned(true, true));
}

/* A spare that stands in for one part says so by its name alone. */
static const char *spare_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->spares.count; i++) {
        const char *parts = cuts_spare_for(p, s->spares.items[i]);
        if (*parts)
            words = also(p->run, words, sb_pool_print(p->run->pool, "the spare stands in for %s", parts));
    }
    return words;
}

static const char *short_words(const cuts_paper *p, const sb_need *need) {
    return p->settings && need->length.nm < p->settings->short_part.nm ? "SHORT: clamp it, hands away" : "";
}

static const char *row_words(const cuts_paper *p, const stop *s) {
    const char *words = also(p->run, saw_words(p, s), lying_words(p, s));
    words = also(p->run, words, spare_words(p, s));
    return also(p->run, words, short_words(p, &p->problem->needs.items[s->need]));
}

static void stop_row(const cuts_paper *p, sb_table *table, const stop *s, bool again) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_length(p->problem->needs.items[s->need].length));
    row[1] = sb_cell_count(s->count);
    row[2] = sb_cell_text(names_words(p, s));
    row[3] = sb_cell_text(again ? sb_pool_print(p->run->pool, "at the same stop: %s", row_words(p, s))
                                : row_words(p, s));
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
    sb_table *table = sb_table_add(p->run, sheet, cuts_stock_title(p, stock),
                                   "Stop at>|Off>|Part|Ends|Off which boards|Done");
    for (; end < all->count && needs[all->items[end].need].stock == stock; end++)
        stop_row(p, table, &all->items[end],
                 end > start && all->items[end].setting == all->items[end - 1].setting);
    for (size_t i = start; i < end; i++)
        reach_line(p, sheet, &all->items[i]);
    return end;
}

static const char how[] = "Each stop is set once, longest first, for all boards together. True one end of "
                          "each board first. Set the "
                          "stop, cut one piece, check it against the number, then run the batch. Behind each "
                          "board stands how many come off it.";
static const char how_angles[] = "Parts with angled ends touch the stop with their long point.";
static const char how_ripped[] =
    "Ripped parts with angled ends: cut the section square at the stop, rip it into strips, "
    "and only then mitre each strip at its ends.";
static const char how_turned[] = "Which of them lie turned or rolled over, the page Boards says.";
static const char how_spares[] =
    "Spares stand in for parts that turn out to have knots or splits. Cut them "
    "last, square; where one is needed, cut it to the length and the ends of the "
    "part that is lacking. A spare that is not needed goes into the rack.";

static bool any_spare(const cuts_paper *p) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (cuts_is_spare(p, i))
            return true;
    return false;
}

static bool any_mitred_strip(const cuts_paper *p) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (cuts_is_strip(p, i) && *cuts_after_rip(&p->problem->needs.items[i]))
            return true;
    return false;
}

static bool any_turned(const stops *all) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].turned + all->items[i].rolled + all->items[i].both > 0)
            return true;
    return false;
}

static void explain(const cuts_paper *p, sb_sheet *sheet, const stops *all) {
    const char *words = cuts_any_angle(p) ? sb_pool_print(p->run->pool, "%s %s", how, how_angles) : how;
    if (any_turned(all))
        words = sb_pool_print(p->run->pool, "%s %s", words, how_turned);
    sb_paragraph_add(p->run, sheet, words, false);
    if (any_mitred_strip(p))
        sb_paragraph_add(p->run, sheet, how_ripped, false);
    if (any_spare(p))
        sb_paragraph_add(p->run, sheet, how_spares, false);
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
    explain(p, sheet, &all);
    for (size_t i = 0; i < all.count;) {
        if (i > 0)
            sb_room_break_add(p->run, sheet);
        i = stock_table(p, sheet, &all, i);
    }
}
