/* How a stop reads: what is cut at it and how its ends are, beside the boards it is cut from, counted as they come. */
#include "papers/cuts_stops.h"

enum {
    BOARDS_A_ROW = 10, /* each row has one box to tick: no more than can be kept in mind */
    COLUMNS = 6
};

static const char *joined(sb_run *run, const char *list, const char *word) {
    return *list ? sb_pool_print(run->pool, "%s, %s", list, word) : word;
}

static const char *also(sb_run *run, const char *words, const char *more) {
    if (!*words || !*more)
        return *words ? words : more;
    return sb_pool_print(run->pool, "%s; %s", words, more);
}

/* ---- what is cut ---- */

/* "3 x seat slat (Bench); 2 x back slat (Bench)"; of one kind its name, since the row's number is its own. */
static const char *parts_words(const cuts_paper *p, const stop *s) {
    const char *words = s->parts.items[0].name;
    for (size_t i = 0; s->parts.count > 1 && i < s->parts.count; i++)
        words = also(p->run, i > 0 ? words : "", /* a name may hold commas */
                     sb_pool_print(p->run->pool, "%lld x %s", (long long)s->parts.items[i].count,
                                   s->parts.items[i].name));
    return words;
}

/* "cut square, rip to strips of 45 mm, 4 strips in all, then mitre each strip: both ends ..."; the ends alone of a part
 * that is not ripped. */
static const char *saw_words(const cuts_paper *p, const stop *s) {
    const sb_need *need = &p->problem->needs.items[s->need];
    const char *ends = cuts_ends(p->run, need->end1, need->end2, p->style), *then = cuts_after_rip(need);
    ends = also(p->run, ends, cuts_edge_words(p, need));
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
    return cuts_is_short(p, need->length) ? "SHORT: clamp it, hands away" : "";
}

static const char *ends_words(const cuts_paper *p, const stop *s, bool again) {
    const char *words = also(p->run, saw_words(p, s), lying_words(p, s));
    words = also(p->run, words, spare_words(p, s));
    words = also(p->run, words, short_words(p, &p->problem->needs.items[s->need]));
    return again ? sb_pool_print(p->run->pool, "at the same stop: %s", words) : words;
}

/* ---- off which boards ---- */

/* "2 off board 3", "4 off each of boards 5 to 8", "1 off board 9, still at the saw" */
static const char *visit_words(const cuts_paper *p, span boards) {
    const char *number = cuts_number(p, boards.first, boards.last - boards.first + 1);
    return boards.first < boards.last
               ? sb_pool_print(p->run->pool, "%lld off each of boards %s", (long long)boards.each, number)
               : sb_pool_print(p->run->pool, "%lld off board %s%s", (long long)boards.each, number,
                               boards.stays ? ", still at the saw" : "");
}

/* Strips that are ripped off beside those of another part. */
static const char *beside_words(const cuts_paper *p, const stop *s) {
    const char *words = "";
    for (size_t i = 0; i < s->boards.count; i++) {
        span boards = s->boards.items[i];
        int64_t count = boards.last - boards.first + 1;
        if (boards.each == 0)
            words = joined(p->run, words,
                           sb_pool_print(p->run->pool, "%s %s", count == 1 ? "board" : "boards",
                                         cuts_number(p, boards.first, count)));
    }
    return *words ? sb_pool_print(p->run->pool, "strips beside others on %s", words) : "";
}

/* The rows of one stop, the first of them empty. */
typedef struct stop_rows {
    const cuts_paper *p;
    sb_table *table;
    size_t first, used; /* used: rows with boards */
} stop_rows;

static sb_cell *row_at(stop_rows *r, size_t index) {
    while (r->table->rows.count <= r->first + index)
        sb_row_add(r->p->run, r->table);
    return r->table->rows.items[r->first + index];
}

static void boards_row(stop_rows *r, span boards, int64_t so_far) {
    sb_cell *row = row_at(r, r->used++);
    row[3] = sb_cell_text(visit_words(r->p, boards));
    row[4] = sb_cell_count(so_far);
    row[5] = sb_cell_tick();
}

static void boards_rows(stop_rows *r, const stop *s) {
    int64_t so_far = 0;
    for (size_t i = 0; i < s->visits.count; i++) {
        span rest = s->visits.items[i], some = rest;
        for (; some.first <= rest.last; some.first = some.last + 1) {
            some.last = some.first + BOARDS_A_ROW - 1 < rest.last ? some.first + BOARDS_A_ROW - 1 : rest.last;
            so_far += some.each * (some.last - some.first + 1);
            boards_row(r, some, so_far);
        }
    }
    const char *beside = beside_words(r->p, s);
    if (!*beside)
        return;
    sb_cell *row = row_at(r, r->used++);
    row[3] = sb_cell_text(beside);
    row[5] = sb_cell_tick();
}

static void stop_block(const cuts_paper *p, sb_table *table, const stop *s, bool again) {
    stop_rows r = {p, table, table->rows.count, 0};
    sb_cell *row = sb_group_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_length(p->problem->needs.items[s->need].length));
    row[1] = sb_cell_count(s->count);
    row[2] = sb_cell_text(sb_pool_print(p->run->pool, "%s: %s", parts_words(p, s), ends_words(p, s, again)));
    boards_rows(&r, s);
}

size_t cuts_stock_stops(const cuts_paper *p, sb_sheet *sheet, const stops *all, size_t start) {
    const sb_need *needs = p->problem->needs.items;
    size_t stock = needs[all->items[start].need].stock, end = start;
    sb_table *table = sb_table_add(p->run, sheet, cuts_stock_title(p, stock),
                                   "Stop at>|Off>|Part and its ends|Off which boards|So far>|Done");
    for (; end < all->count && needs[all->items[end].need].stock == stock; end++)
        stop_block(p, table, &all->items[end],
                   end > start && all->items[end].setting == all->items[end - 1].setting);
    cuts_stock_limits(p, sheet, stock);
    return end;
}
