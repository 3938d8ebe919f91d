/* How a quantity looks inside a line, as a PCRE2 pattern made from the table of units; and the lexer for
 * lines that is built around it. */
#include "measure/units.h"

#include <string.h>

#define BLANK "[ \\t\\x{A0}\\x{2009}\\x{202F}]"

/* UNIT_NONE asks for all units that can stand alone and have nothing below them. */
static bool wanted(unit_kind kind, unit_kind asked) {
    if (asked != UNIT_NONE)
        return kind == asked;
    return unit_table[kind].below == UNIT_NONE && kind != UNIT_ARC_SECOND;
}

/* Alternatives of all spellings of one form; "" when there are none. */
static const char *spellings(sb_run *run, unit_kind asked, spelling_form form) {
    const char *all = "";
    for (size_t i = 0; i < spelling_count; i++) {
        const spelling *s = &spelling_table[i];
        if (s->form == form && wanted(s->kind, asked))
            all = sb_pool_print(run->pool, "%s%s%s", all, *all ? "|" : "", s->text);
    }
    return all;
}

/* A unit behind its number. */
static const char *unit_pattern(sb_run *run, unit_kind asked) {
    static const char *const around[][2] = {
        [SPELLING_WORD] = {BLANK "*+(?i:", ")(?![\\p{L}_])"},
        [SPELLING_LOOSE] = {BLANK "*+(?:", ")"},
        [SPELLING_TIGHT] = {"(?:", ")"},
    };
    const char *all = "";
    for (int form = SPELLING_WORD; form <= SPELLING_TIGHT; form++) {
        const char *list = spellings(run, asked, (spelling_form)form);
        if (*list)
            all = sb_pool_print(run->pool, "%s%s%s%s%s", all, *all ? "|" : "", around[form][0], list,
                                around[form][1]);
    }
    return sb_pool_print(run->pool, "(?:%s)", all);
}

/* number, unit, and below it perhaps a smaller unit of the same kind */
static const char *chain_pattern(sb_run *run, const char *amount, unit_kind kind) {
    const char *smaller = "";
    if (kind != UNIT_NONE && unit_table[kind].below != UNIT_NONE)
        smaller = sb_pool_print(run->pool, "(?:(?:" BLANK "*+|-)%s)?",
                                chain_pattern(run, amount, unit_table[kind].below));
    return sb_pool_print(run->pool, "%s%s%s", amount, unit_pattern(run, kind), smaller);
}

const char *sb_quantity_pattern(sb_run *run, bool decimal_comma) {
    const char *number = decimal_comma ? "[0-9]++(?:[.,][0-9]++)?+" : "[0-9]++(?:\\.[0-9]++)?+";
    const char *amount =
        sb_pool_print(run->pool, "(?:[0-9]++(?:" BLANK "++|-)[0-9]++/[0-9]++|[0-9]++/[0-9]++|%s)", number);
    const char *all = chain_pattern(run, amount, UNIT_NONE); /* first, so that '' is inches and not feet */
    for (int kind = UNIT_NONE + 1; kind <= UNIT_PERCENT; kind++)
        if (unit_table[kind].below != UNIT_NONE && kind != UNIT_ARC_MINUTE)
            all = sb_pool_print(run->pool, "%s|%s", all, chain_pattern(run, amount, (unit_kind)kind));
    /* What ends in a letter or digit must not run on into a word: 2x4-spf and 18mm-ply are words. */
    return sb_pool_print(
        run->pool, "(?:%s|%s)(?:(?<![\\p{L}\\p{N}])|(?![\\p{L}\\p{M}\\p{N}_])(?!-[\\p{L}_]))", all, number);
}

static const sb_lexer *new_line_lexer(sb_run *run, bool decimal_comma) {
    const sb_lex_rule rules[] = {
        {SB_TEXT, ":\\s*(?|\"([^\"]*)\"|(.*?))\\s*$"},
        {SB_WORD, "[0-9]{4}-[0-9]{2}-[0-9]{2}(?![\\p{L}\\p{N}_-])"}, /* a date */
        {SB_QUANTITY, sb_quantity_pattern(run, decimal_comma)},
        {SB_WORD, "[\\p{L}\\p{N}_][\\p{L}\\p{M}\\p{N}_]*+(?:-[\\p{L}\\p{M}\\p{N}_]++)*+"},
        {SB_STRING, "\"([^\"]*)\""},
        {SB_SYMBOL, "!=|<=|>=|[()+\\-*/^,.=<>|]"},
    };
    return sb_lexer_new(run, rules, sizeof rules / sizeof *rules);
}

const sb_lexer *sb_line_lexer(sb_run *run, bool decimal_comma) {
    const sb_lexer **kept = &run->line_lexers[decimal_comma];
    if (!*kept)
        *kept = new_line_lexer(run, decimal_comma);
    return *kept;
}
