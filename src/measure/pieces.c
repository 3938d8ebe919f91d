/* Numbers that the words of a line have torn apart: what was meant as one quantity and is none. */
#include "sawbill/measure.h"

#include <string.h>

static bool is_bare(sb_run *run, const sb_token *token, bool decimal_comma) {
    sb_quantity quantity;
    const char *why;
    return token->kind == SB_QUANTITY && sb_quantity_read(run, token->text, decimal_comma, &quantity, &why) &&
           !quantity.has_unit;
}

/* Why all of it together is no quantity; false when it is one after all. */
static bool tell(sb_run *run, sb_cursor *cursor, const sb_token *last, bool decimal_comma) {
    sb_quantity quantity;
    const char *why;
    sb_place place = sb_place_span(cursor->at[-1].place, last->place);
    if (sb_quantity_read(run, sb_place_text(run, place), decimal_comma, &quantity, &why))
        return false;
    sb_error(run, place, "%s", why);
    cursor->at = last + 1;
    return true;
}

bool sb_tell_no_unit(sb_run *run, sb_cursor *cursor, bool decimal_comma) {
    return cursor->at->kind == SB_WORD && is_bare(run, cursor->at - 1, decimal_comma) &&
           tell(run, cursor, cursor->at, decimal_comma);
}

static bool is_symbol(const sb_token *token, const char *symbol) {
    return token->kind == SB_SYMBOL && strcmp(token->text, symbol) == 0;
}

static bool touch(const sb_token *left, const sb_token *right) {
    return left->place.offset + left->place.length == right->place.offset;
}

static const sb_token *end_of_pieces(const sb_token *next, bool in_list) {
    if (next->kind == SB_QUANTITY && is_symbol(next + 1, "/") && next[2].kind == SB_QUANTITY)
        return next + 2;
    bool comma = !in_list && is_symbol(next, ",") && touch(next - 1, next) && next[1].kind == SB_QUANTITY &&
                 touch(next, next + 1);
    return comma ? next + 1 : NULL;
}

bool sb_tell_number_in_pieces(sb_run *run, sb_cursor *cursor, bool decimal_comma, bool in_list) {
    const sb_token *last = end_of_pieces(cursor->at, in_list);
    return last && is_bare(run, cursor->at - 1, decimal_comma) && tell(run, cursor, last, decimal_comma);
}
