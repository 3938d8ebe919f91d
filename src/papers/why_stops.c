/* Stops, and fences at which boards are ripped: the parts that are so long or so wide, and off how many boards they come. */
#include "papers/figures.h"
#include "papers/why_cuts.h"

/* Which of its lengths a saw is set to. */
typedef sb_length setting_of(const cuts_paper *p, size_t need);

static const sb_length none = {0};

static sb_length stop_of(const cuts_paper *p, size_t need) {
    return cuts_stock(p, need)->sheet ? none : p->problem->needs.items[need].length;
}

static sb_length rip_of(const cuts_paper *p, size_t need) {
    bool strip = !cuts_stock(p, need)->sheet && cuts_is_strip(p, need);
    return strip ? p->problem->needs.items[need].width : none;
}

static int64_t cut_on(const sb_board_plan *board, size_t need) {
    int64_t count = 0;
    for (size_t i = 0; i < board->parts.count; i++)
        count += board->parts.items[i].need == need;
    return count;
}

static bool say_need(why *w, const cuts_paper *p, size_t need, const char *what, sb_length at) {
    int64_t off = 0, boards = 0;
    for (size_t i = 0; i < p->plan->boards.count; i++) {
        int64_t each = cut_on(&p->plan->boards.items[i], need);
        off += each * p->plan->boards.items[i].count;
        boards += each ? p->plan->boards.items[i].count : 0;
    }
    if (off == 0)
        return false;
    why_say_length(w,
                   sb_pool_print(w->run->pool, "%s %s, %s", what, sb_write_length(w->run, at, p->style),
                                 cuts_stock_title(p, p->problem->needs.items[need].stock)),
                   at,
                   sb_pool_print(w->run->pool, "%lld x %s, off %lld board%s", (long long)off,
                                 cuts_name(p, need), (long long)boards, boards == 1 ? "" : "s"),
                   why_need_place(p, need));
    why_say_need(w, p, need);
    return true;
}

static bool say_all(why *w, const cuts_paper *p, const char *text, const char *what, setting_of *of) {
    bool found = false;
    for (size_t i = 0; i < p->problem->needs.count; i++) {
        sb_length at = of(p, i);
        if (at.nm > 0 && why_is_length(p, text, at))
            found = say_need(w, p, i, what, at) || found;
    }
    return found;
}

bool why_stop(why *w, const char *figure) {
    const cuts_paper p = why_cuts_paper(w);
    if (why_skip(&figure, "stop at ") || why_skip(&figure, "stop "))
        return say_all(w, &p, figure, "stop at", stop_of);
    if (why_skip(&figure, "fence at ") || why_skip(&figure, "fence "))
        return say_all(w, &p, figure, "rip fence at", rip_of);
    return false;
}

static void put_lengths(const why *w, const cuts_paper *p, why_words *words, const char *what,
                        setting_of *of) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (of(p, i).nm > 0)
            why_word_once(
                w, words,
                sb_pool_print(w->run->pool, "%s %s", what, sb_write_length(w->run, of(p, i), p->style)));
}

/* One of each kind is listed, as an example; all are known. */
void why_cut_sheet(const why *w, why_group *group) {
    const cuts_paper p = why_cuts_paper(w);
    if (p.plan->boards.count > 0) {
        why_word_once(w, &group->names, "board 1");
        why_word_once(w, &group->names, "mark 1 of board 1");
        put_lengths(w, &p, &group->names, "stop at", stop_of);
        put_lengths(w, &p, &group->names, "fence at", rip_of);
    }
    if (p.plan->sheets.count > 0) {
        why_word_once(w, &group->names, "sheet 1");
        why_word_once(w, &group->names, "cut 1 of sheet 1");
        why_fences(w, &p, &group->titles);
    }
    for (size_t i = 0; i < p.problem->needs.count; i++)
        if (!why_need_part(&p, i))
            why_word_once(w, &group->titles, cuts_spare_name(&p, i));
}
