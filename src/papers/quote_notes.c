/* Notes to the customer: gathered by their words, so that none is said twice. */
#include "papers/quote_notes.h"

#include <string.h>

/* A note of one option, with the pieces that have it. */
typedef struct saying {
    const char *words, *whose;
} saying;
typedef SB_LIST(saying) sayings;

static void hear(sb_run *run, sayings *all, const sb_takeoff_piece *piece, const char *words) {
    for (size_t i = 0; i < all->count; i++) {
        saying *heard = &all->items[i];
        if (strcmp(heard->words, words) != 0)
            continue;
        heard->whose = sb_pool_print(run->pool, "%s, %s", heard->whose, piece->title);
        return;
    }
    SB_PUSH(run->pool, *all, ((saying){words, piece->title}));
}

static bool among(const sb_takeoff_piece *piece, const char *words) {
    for (size_t i = 0; i < piece->notes.count; i++)
        if (strcmp(piece->notes.items[i], words) == 0)
            return true;
    return false;
}

static sayings sayings_of(sb_run *run, const sb_takeoff *takeoff) {
    sayings all = {0};
    for (size_t i = 0; i < takeoff->pieces.count; i++) {
        const sb_takeoff_piece *piece = &takeoff->pieces.items[i];
        const char *own = piece->source ? piece->source->note : NULL;
        for (size_t j = 0; j < piece->notes.count; j++)
            hear(run, &all, piece, piece->notes.items[j]);
        if (own && *own && !among(piece, own))
            hear(run, &all, piece, own);
    }
    return all;
}

static const char *text_of(sb_run *run, const saying *said) {
    return sb_pool_print(run->pool, "%s: %s", said->whose, said->words);
}

static size_t times(const quote_notes *notes, const char *text) {
    size_t count = 0;
    for (size_t i = 0; i < notes->count; i++)
        count += strcmp(notes->items[i].text, text) == 0;
    return count;
}

static bool told(const quote_notes *notes, const char *text) {
    for (size_t i = 0; i < notes->count; i++)
        if (notes->items[i].everywhere && strcmp(notes->items[i].text, text) == 0)
            return true;
    return false;
}

quote_notes quote_notes_of(sb_run *run, const sb_ways *ways) {
    quote_notes all = {0}, notes = {0};
    for (size_t way = 0; way < ways->list.count; way++) {
        sayings said = sayings_of(run, ways->list.items[way].takeoff);
        for (size_t i = 0; i < said.count; i++)
            SB_PUSH(run->pool, all, ((quote_note){text_of(run, &said.items[i]), way, false}));
    }
    for (size_t i = 0; i < all.count; i++) {
        quote_note note = all.items[i];
        note.everywhere = times(&all, note.text) == ways->list.count;
        if (!note.everywhere || !told(&notes, note.text))
            SB_PUSH(run->pool, notes, note);
    }
    return notes;
}

bool quote_note_is_of(const quote_note *note, size_t way) {
    return !note->everywhere && note->way == way;
}
