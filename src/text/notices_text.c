/* Notices as text: the place, the words, the line with a caret under it, and how we came there. */
#include "text/notices.h"
#include "text/source.h"
#include "text/utf8.h"
#include "text/writing.h"

#include <stdlib.h>
#include <string.h>

enum {
    SHOWN_BEFORE = 60,
    SHOWN_AFTER = 40
}; /* characters of a long line around the caret */

typedef struct appearance {
    const char *name, *colour;
} appearance;

static const appearance looks[] = {
    [SB_NOTE] = {"note", "\033[1;36m"},          [SB_ADVICE] = {"advice", "\033[1;33m"},
    [SB_ERROR] = {"error", "\033[1;31m"},        [SB_FAILURE] = {"failure", "\033[1;31m"},
    [SB_BUG] = {"bug in sawbill", "\033[1;35m"},
};

/* ---- order: sources as they first came up, within a source from top to bottom ---------------------- */

typedef struct ranked {
    const notice *notice;
    size_t source, index;
} ranked;

static int compare_ranked(const void *left, const void *right) {
    const ranked *a = left, *b = right;
    if (a->source != b->source)
        return a->source < b->source ? -1 : 1;
    if (a->notice->place.offset != b->notice->place.offset)
        return a->notice->place.offset < b->notice->place.offset ? -1 : 1;
    return a->index < b->index ? -1 : a->index > b->index;
}

static ranked *in_order(sb_run *run) {
    const sb_notices *notices = run->notices;
    ranked *all = SB_NEW_ARRAY(run->pool, ranked, notices->list.count);
    SB_LIST(const sb_source *) sources = {0};
    for (size_t i = 0; i < notices->list.count; i++) {
        const notice *n = &notices->list.items[i];
        size_t rank = 0;
        while (rank < sources.count && sources.items[rank] != n->place.source)
            rank++;
        if (rank == sources.count)
            SB_PUSH(run->pool, sources, n->place.source);
        all[i] = (ranked){.notice = n, .source = rank, .index = i};
    }
    if (notices->list.count)
        qsort(all, notices->list.count, sizeof *all, compare_ranked);
    return all;
}

/* ---- the line and its caret -------------------------------------------------------------------------- */

/* A character as it may go to a terminal: control characters and broken bytes become U+FFFD. */
static size_t write_character(writing *w, const char *text, size_t size) {
    uint32_t code = 0;
    size_t length = utf8_next(text, size, &code);
    bool plain =
        length > 0 && (code == '\t' || (code >= 0x20 && code != 0x7F && !(code >= 0x80 && code < 0xA0)));
    if (plain)
        writing_bytes(w, text, length);
    else
        writing_text(w, "\xEF\xBF\xBD");
    return length ? length : 1;
}

static void write_clean(writing *w, const char *text) {
    for (size_t size = strlen(text), at = 0; at < size;)
        at += write_character(w, text + at, size - at);
}

static size_t step_back(const char *text, size_t start, size_t at, size_t characters) {
    while (at > start && characters-- > 0)
        do
            at--;
        while (at > start && ((unsigned char)text[at] & 0xC0) == 0x80);
    return at;
}

static size_t step_on(const char *text, size_t at, size_t end, size_t characters) {
    while (at < end && characters-- > 0) {
        size_t length = utf8_next(text + at, end - at, NULL);
        at += length ? length : 1;
    }
    return at;
}

static void write_line(writing *w, const char *text, size_t from, size_t to, bool cut_before,
                       bool cut_after) {
    writing_text(w, cut_before ? "    ..." : "    ");
    while (from < to)
        from += write_character(w, text + from, to - from);
    writing_text(w, cut_after ? "...\n" : "\n");
}

/* A blank as wide as the character: a tab for a tab, so that the caret stands right however wide the terminal makes
 * them; U+3000 for the wide letters of East Asia; nothing for a mark over the letter before. */
static const char *blank_for(const char *text, size_t size) {
    uint32_t code = 0;
    utf8_next(text, size, &code);
    bool wide = (code >= 0x1100 && code <= 0x115F) || (code >= 0x2E80 && code <= 0xA4CF) ||
                (code >= 0xAC00 && code <= 0xD7A3) || (code >= 0xF900 && code <= 0xFAFF) ||
                (code >= 0xFF00 && code <= 0xFF60) || (code >= 0x1F300 && code <= 0x3FFFD);
    if (code == '\t')
        return "\t";
    if (code >= 0x300 && code <= 0x36F)
        return "";
    return wide ? "\xE3\x80\x80" : " ";
}

static void write_caret(writing *w, const char *text, size_t from, size_t at, size_t characters,
                        bool cut_before) {
    writing_text(w, cut_before ? "       " : "    ");
    for (; from < at; from = step_on(text, from, at, 1))
        writing_text(w, blank_for(text + from, at - from));
    writing_text(w, "^");
    for (size_t i = 1; i < characters; i++)
        writing_text(w, "~");
}

static void write_excerpt(writing *w, sb_place place, const char *colour) {
    size_t start, end;
    const char *text = place.source->text;
    source_line_bounds(place.source, source_line(place.source, place.offset), &start, &end);
    if (start == end)
        return;
    size_t at = place.offset < end ? place.offset : end;
    size_t last = place.length < end - at ? at + place.length : end;
    size_t from = step_back(text, start, at, SHOWN_BEFORE), to = step_on(text, at, end, SHOWN_AFTER);
    if (utf8_count(text + start, end - start) <= SHOWN_BEFORE + SHOWN_AFTER)
        from = start, to = end;
    write_line(w, text, from, to, from > start, to < end);
    writing_text(w, colour);
    write_caret(w, text, from, at, utf8_count(text + at, (last < to ? last : to) - at), from > start);
    writing_text(w, *colour ? "\033[0m\n" : "\n");
}

/* ---- the whole --------------------------------------------------------------------------------------- */

static void write_place(writing *w, sb_place place) {
    sb_position p = sb_place_position(place);
    write_clean(w, p.file);
    writing_text(w, sb_pool_print(w->pool, ":%zu:%zu", p.line, p.column));
}

static void write_context(writing *w, const notice_context *context) {
    for (; context; context = context->outer) {
        writing_text(w, "  in ");
        write_clean(w, context->what);
        if (context->at.source) {
            writing_text(w, ", at ");
            write_place(w, context->at);
        }
        writing_text(w, "\n");
    }
}

static void write_notice(writing *w, const notice *n, bool colour) {
    const appearance *look = &looks[n->level];
    if (n->place.source) {
        write_place(w, n->place);
        writing_text(w, ": ");
    }
    writing_text(w, colour ? look->colour : "");
    writing_text(w, look->name);
    writing_text(w, colour ? ":\033[0m " : ": ");
    write_clean(w, n->message);
    writing_text(w, "\n");
    if (n->place.source)
        write_excerpt(w, n->place, colour ? look->colour : "");
    write_context(w, n->context);
}

const char *sb_notices_text(sb_run *run, sb_level at_least, bool colour) {
    writing w = {.pool = run->pool};
    const ranked *all = in_order(run);
    for (size_t i = 0; i < run->notices->list.count; i++)
        if (all[i].notice->level >= at_least)
            write_notice(&w, all[i].notice, colour);
    return writing_done(&w);
}
