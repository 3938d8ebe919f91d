/* Stop settings over the whole batch: each set once, longest first, so that a mistake can be recut shorter. */
#include "papers/cuts_stops.h"

#include <string.h>

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

/* Boards come in the order of their numbers, and all parts of one before those of the next. */
static void add_boards(sb_run *run, stop *s, int64_t first, int64_t count, int64_t each) {
    span *last = s->boards.count ? &s->boards.items[s->boards.count - 1] : NULL;
    if (last && last->first == first)
        last->each += each;
    else
        SB_PUSH(run->pool, s->boards, ((span){first, first + count - 1, each, false}));
}

static void add_part(sb_run *run, stop *s, const char *name, int64_t count) {
    size_t i = 0;
    while (i < s->parts.count && strcmp(s->parts.items[i].name, name) != 0)
        i++;
    if (i == s->parts.count)
        SB_PUSH(run->pool, s->parts, ((stop_part){name, 0}));
    s->parts.items[i].count += count;
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
        s->needed = s->needed || !cuts_is_spare(p, part->need);
        add_spare(p, s, part->need);
        add_part(p->run, s, cuts_name(p, part->need), board->count);
        add_boards(p->run, s, first, board->count, part->across.nm == 0);
    }
}

static bool setting_needed(const stops *all, size_t setting) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].setting == setting && all->items[i].needed)
            return true;
    return false;
}

/* By stock, then longest first, then by setting, spares behind what they stand in for; as found where equal. */
static bool before(const cuts_paper *p, const stops *all, const stop *a, const stop *b) {
    const sb_need *first = &p->problem->needs.items[a->need], *second = &p->problem->needs.items[b->need];
    bool one = setting_needed(all, a->setting), other = setting_needed(all, b->setting);
    if (first->stock != second->stock)
        return first->stock < second->stock;
    if (first->length.nm != second->length.nm)
        return first->length.nm > second->length.nm;
    if (one != other)
        return one;
    return a->setting != b->setting ? a->setting < b->setting : a->needed && !b->needed;
}

static void sort(const cuts_paper *p, stops *all) {
    for (size_t i = 1; i < all->count; i++)
        for (size_t j = i; j > 0 && before(p, all, &all->items[j], &all->items[j - 1]); j--) {
            stop swapped = all->items[j];
            all->items[j] = all->items[j - 1];
            all->items[j - 1] = swapped;
        }
}

static const char how[] =
    "Each stop is set once, longest first, for all boards together. %s Set the "
    "stop, cut one piece, check it against the number, then run the batch. Boards come in "
    "the order of the lines; So far tells how many pieces lie there when a line is ticked.";
static const char how_angles[] = "Parts with angled ends touch the stop with their long point.";
static const char how_rolled[] =
    "Where long points lie on the same edge, roll the board over its length after each "
    "cut, or swing the saw to the other side.";
static const char how_slid[] =
    "Where ends lean the same way, slide the board on as it lies; the saw stays as it "
    "is set.";
static const char how_ripped[] =
    "Ripped parts with angled ends: cut the section square at the stop, rip it into strips, "
    "and only then mitre each strip at its ends.";
static const char how_turned[] = "Which of them lie turned or rolled over, the page Boards says.";
static const char how_spares[] =
    "Spares stand in for parts that turn out to have knots or splits. Cut them "
    "last, square; where one is needed, cut it to the length and the ends of the "
    "part that is lacking. A spare that is not needed goes into the rack.";

/* What comes off the boards before their first stop: one figure where it is the same for all. */
static const char *truing_words(const cuts_paper *p) {
    sb_length off = {0};
    bool kept = false, differ = false;
    for (size_t i = 0; i < p->plan->boards.count; i++) {
        const sb_supply *supply = &p->problem->supplies.items[p->plan->boards.items[i].supply];
        kept = kept || supply->trim1.nm == 0;
        differ =
            differ || (supply->trim1.nm == 0 ? !supply->leftover : off.nm > 0 && supply->trim1.nm != off.nm);
        off = supply->trim1.nm > 0 ? supply->trim1 : off;
    }
    if (off.nm == 0)
        return "Boards keep the ends they have.";
    if (differ)
        return "True one end of each board first: the page Boards says how much comes off.";
    return sb_pool_print(p->run->pool, "True one end of each board first, %s off%s.", cuts_length(p, off),
                         kept ? "; rack pieces keep the ends they have" : "");
}

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

static bool any_of(const cuts_paper *p, bool same_edge) {
    for (size_t i = 0; i < p->problem->needs.count; i++) {
        const sb_need *need = &p->problem->needs.items[i];
        int64_t front = need->end1.mitre.udeg, rear = need->end2.mitre.udeg;
        if (front != 0 && rear != 0 && (front > 0) == (rear > 0) && same_edge)
            return true;
        if (front != 0 && front == -rear && !same_edge)
            return true;
    }
    return false;
}

static void explain(const cuts_paper *p, sb_sheet *sheet, const stops *all) {
    const char *words = sb_pool_print(p->run->pool, how, truing_words(p));
    if (cuts_any_angle(p))
        words = sb_pool_print(p->run->pool, "%s %s", words, how_angles);
    if (any_turned(all))
        words = sb_pool_print(p->run->pool, "%s %s", words, how_turned);
    if (any_of(p, true))
        words = sb_pool_print(p->run->pool, "%s %s", words, how_rolled);
    if (any_of(p, false))
        words = sb_pool_print(p->run->pool, "%s %s", words, how_slid);
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
    cuts_order_boards(p->run, &all);
    sb_heading_add(p->run, sheet, "Stops");
    explain(p, sheet, &all);
    for (size_t i = 0; i < all.count;) {
        if (i > 0)
            sb_room_break_add(p->run, sheet);
        i = cuts_stock_stops(p, sheet, &all, i);
    }
}
