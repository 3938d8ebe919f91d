/* Reading one quantity: a number, a unit, perhaps smaller units behind it. */
#include "measure/units.h"
#include "measure/wide.h"

#include <string.h>
#include <strings.h>

enum {
    MOST_DIGITS = 18,
    MOST_MM = 1000000
};

typedef struct reader {
    sb_run *run;
    const char *at;
    bool decimal_comma;
    const char *why; /* the first thing that went wrong */
} reader;

#define REFUSE(r, ...) ((r)->why = sb_pool_print((r)->run->pool, __VA_ARGS__), false)

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static size_t blank_length(const char *text) {
    static const char *const blanks[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"};
    for (size_t i = 0; i < sizeof blanks / sizeof *blanks; i++)
        if (strncmp(text, blanks[i], strlen(blanks[i])) == 0)
            return strlen(blanks[i]);
    return 0;
}

static const char *skip_blanks(const char *text) {
    for (size_t length; (length = blank_length(text)) > 0;)
        text += length;
    return text;
}

/* What stands here up to the next blank, for messages. */
static const char *word_at(const reader *r, const char *text) {
    size_t length = 0;
    while (text[length] && blank_length(text + length) == 0)
        length++;
    return sb_pool_copy(r->run->pool, text, length);
}

/* ---- numbers -------------------------------------------------------------------------------------- */

static size_t digits_at(const char *text) {
    size_t count = 0;
    while (is_digit(text[count]))
        count++;
    return count;
}

/* Reads `count` digits behind those in `value`. */
static int64_t read_digits(const char *text, size_t count, int64_t value) {
    for (size_t i = 0; i < count; i++)
        value = value * 10 + (text[i] - '0');
    return value;
}

static bool read_decimal(reader *r, sb_ratio *out) {
    size_t whole = digits_at(r->at);
    char mark = r->at[whole];
    bool marked = whole > 0 && (mark == '.' || mark == ',') && is_digit(r->at[whole + 1]);
    size_t decimals = marked ? digits_at(r->at + whole + 1) : 0;
    const char *end = r->at + whole + (marked ? decimals + 1 : 0);
    if (whole == 0)
        return REFUSE(r, "\"%s\" is not a number", word_at(r, r->at));
    if (marked && (*end == '.' || *end == ',') && is_digit(end[1]))
        return REFUSE(r, "\"%s\" has more than one decimal mark; digits are not grouped", word_at(r, r->at));
    if (marked && mark == ',' && !r->decimal_comma)
        return REFUSE(r, "\"%s\" has a comma where a decimal point is expected", word_at(r, r->at));
    if (marked && mark == '.' && r->decimal_comma && decimals == 3)
        return REFUSE(r,
                      "\"%s\" can be read two ways; write the decimals with a comma, and no thousands mark",
                      word_at(r, r->at));
    if (whole + decimals > MOST_DIGITS)
        return REFUSE(r, "\"%s\" has more than %d digits", word_at(r, r->at), MOST_DIGITS);
    int64_t digits =
        read_digits(r->at + (marked ? whole + 1 : 0), marked ? decimals : 0, read_digits(r->at, whole, 0));
    *out = sb_ratio_of(digits, wide_power_of_ten((int)decimals));
    r->at = end;
    return true;
}

/* "1/4" at `text`, 0 when there is none; otherwise its length. */
static size_t fraction_at(const char *text) {
    size_t above = digits_at(text);
    if (above == 0 || text[above] != '/')
        return 0;
    size_t below = digits_at(text + above + 1);
    return below ? above + 1 + below : 0;
}

static bool read_fraction(reader *r, sb_ratio *out, int64_t *denominator) {
    size_t length = fraction_at(r->at), above = digits_at(r->at), below = length - above - 1;
    if (above > MOST_DIGITS || below > MOST_DIGITS)
        return REFUSE(r, "\"%s\" has more than %d digits", word_at(r, r->at), MOST_DIGITS);
    *denominator = read_digits(r->at + above + 1, below, 0);
    if (*denominator == 0)
        return REFUSE(r, "\"%s\" has a zero below the line", word_at(r, r->at));
    *out = sb_ratio_of(read_digits(r->at, above, 0), *denominator);
    r->at += length;
    return true;
}

/* Where a fraction begins that belongs to the whole number at `text`: 11 1/4 or 11-1/4. */
static const char *fraction_behind(const char *text) {
    const char *end = text + digits_at(text);
    const char *next = *end == '-' ? end + 1 : skip_blanks(end);
    return end > text && next > end && fraction_at(next) ? next : NULL;
}

/* 12, 12.5, 1/4, 11 1/4; *denominator is 0 without a fraction. */
static bool read_amount(reader *r, sb_ratio *out, int64_t *denominator) {
    const char *fraction = fraction_behind(r->at);
    sb_ratio part = {0, 1};
    *denominator = 0;
    if (fraction_at(r->at))
        return read_fraction(r, out, denominator);
    if (!read_decimal(r, out) || !fraction)
        return r->why == NULL;
    r->at = fraction;
    if (!read_fraction(r, &part, denominator))
        return false;
    if (part.num >= part.den)
        return REFUSE(r, "the fraction behind a whole number must be less than one");
    *out = sb_ratio_add(*out, part);
    return true;
}

/* ---- units ---------------------------------------------------------------------------------------- */

static bool is_letter_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || (unsigned char)c >= 0x80;
}

/* A word ends where no letter follows; one that ends in a digit, as ft3, where no digit follows either. */
static bool ends_here(const char *text, const spelling *s) {
    size_t length = strlen(s->text);
    if (s->form != SPELLING_WORD)
        return true;
    if (is_digit(s->text[length - 1]) && is_digit(text[length]))
        return false;
    return !is_letter_byte(text[length]) || blank_length(text + length) > 0;
}

/* `kind` UNIT_NONE takes any unit that can stand alone. */
static const spelling *unit_at(const char *text, unit_kind kind) {
    const spelling *best = NULL;
    for (size_t i = 0; i < spelling_count; i++) {
        const spelling *s = &spelling_table[i];
        size_t length = strlen(s->text);
        bool arc = s->kind == UNIT_ARC_MINUTE || s->kind == UNIT_ARC_SECOND;
        if ((kind == UNIT_NONE ? arc : s->kind != kind) || strncasecmp(text, s->text, length) != 0)
            continue;
        if (ends_here(text, s) && (!best || length > strlen(best->text)))
            best = s;
    }
    return best;
}

static bool refuse_unit(reader *r) {
    const char *names[64];
    size_t count = 0;
    const char *word = word_at(r, r->at);
    for (size_t i = 0; i < spelling_count && count < 64; i++)
        if (spelling_table[i].form == SPELLING_WORD)
            names[count++] = spelling_table[i].text;
    const char *near = sb_nearest(word, names, count);
    if (is_digit(*word))
        return REFUSE(r, "a blank stands between digits at \"%s\"", word);
    if ((*word == 'e' || *word == 'E') && (is_digit(word[1]) || word[1] == '+' || word[1] == '-'))
        return REFUSE(r, "\"%s\" is an exponent; write the number out", word);
    if (near)
        return REFUSE(r, "\"%s\" is not a unit; did you mean \"%s\"?", word, near);
    return REFUSE(
        r, "\"%s\" is not a unit; known: mm, cm, m, in, ft, m2, ft2, m3, bf, l, gal, kg, lb, deg, min, h, %%",
        word);
}

/* The tape has halves to 64ths. */
static bool check_fraction(reader *r, unit_kind kind, int64_t denominator) {
    if (denominator == 0 || kind != UNIT_INCH)
        return true;
    if (denominator >= 2 && denominator <= 64 && (denominator & (denominator - 1)) == 0)
        return true;
    return REFUSE(r, "1/%lld inch is not on any tape; take halves, quarters, eighths, 16ths, 32nds or 64ths",
                  (long long)denominator);
}

static bool add_unit(reader *r, const spelling *s, sb_ratio amount, int64_t denominator, sb_quantity *out) {
    const unit *u = &unit_table[s->kind];
    r->at += strlen(s->text);
    if (!check_fraction(r, s->kind, denominator))
        return false;
    out->amount = sb_ratio_add(out->amount, sb_ratio_mul(amount, sb_ratio_of(u->num, u->den)));
    out->dimension = u->dimension;
    out->has_unit = true;
    return true;
}

/* Behind feet may stand inches, behind degrees minutes. */
static bool read_smaller(reader *r, const spelling *larger, sb_quantity *out) {
    const unit *u = &unit_table[larger->kind];
    const char *rest = skip_blanks(r->at);
    sb_ratio amount;
    int64_t denominator;
    if (*rest == 0)
        return true;
    if (*r->at == '-')
        rest = r->at + 1;
    if (u->below == UNIT_NONE || !is_digit(*rest))
        return REFUSE(r, "\"%s\" does not belong to a quantity in \"%s\"", rest, larger->text);
    r->at = rest;
    if (!read_amount(r, &amount, &denominator))
        return false;
    r->at = skip_blanks(r->at);
    const spelling *s = unit_at(r->at, u->below);
    if (!s)
        return REFUSE(r, "\"%s\" needs a unit smaller than \"%s\" behind it", rest, larger->text);
    if (sb_ratio_compare(amount, sb_ratio_of(u->holds, 1)) >= 0)
        return REFUSE(r, "\"%s\" is as much as a whole \"%s\" or more", rest, larger->text);
    return add_unit(r, s, amount, denominator, out) && read_smaller(r, s, out);
}

/* ---- the whole -------------------------------------------------------------------------------------- */

static bool read_parts(reader *r, sb_quantity *out) {
    sb_ratio amount;
    int64_t denominator;
    if (*r->at == 0)
        return REFUSE(r, "nothing stands here");
    if (!read_amount(r, &amount, &denominator))
        return false;
    const char *unit_text = skip_blanks(r->at);
    if (*unit_text == 0 && denominator)
        return REFUSE(r, "a fraction needs its unit, as in 47 1/4\" or 47 1/4 in");
    if (*unit_text == 0) {
        out->amount = amount;
        return true;
    }
    r->at = unit_text;
    const spelling *s = unit_at(r->at, UNIT_NONE);
    if (!s)
        return refuse_unit(r);
    return add_unit(r, s, amount, denominator, out) && read_smaller(r, s, out);
}

static bool check_range(reader *r, const sb_quantity *q) {
    bool length = sb_dimension_same(q->dimension, SB_DIM_LENGTH);
    if (!sb_ratio_ok(q->amount))
        return REFUSE(r, "this is more than can be counted");
    if (length && sb_ratio_compare(q->amount, sb_ratio_of(MOST_MM, 1)) > 0)
        return REFUSE(r, "lengths above 1 km are refused");
    return true;
}

bool sb_quantity_read(sb_run *run, const char *text, bool decimal_comma, sb_quantity *out, const char **why) {
    reader r = {.run = run, .at = skip_blanks(text), .decimal_comma = decimal_comma};
    sb_quantity q = {.amount = {0, 1}};
    static const char minus[] = "\xE2\x88\x92";
    bool negative = *r.at == '-' || strncmp(r.at, minus, 3) == 0;
    if (negative)
        r.at += *r.at == '-' ? 1 : 3;
    bool read = read_parts(&r, &q) && check_range(&r, &q);
    if (read && negative)
        q.amount.num = -q.amount.num;
    *out = read ? q : (sb_quantity){.amount = {0, 1}};
    *why = read ? "" : r.why;
    return read;
}

/* ---- dimensions ------------------------------------------------------------------------------------- */

bool sb_dimension_same(sb_dimension a, sb_dimension b) {
    return a.length == b.length && a.angle == b.angle && a.mass == b.mass && a.time == b.time &&
           a.money == b.money;
}

/* "length^2 / time": for what has no name of its own. */
static const char *spell_dimension(sb_run *run, sb_dimension d) {
    const struct {
        const char *name;
        int exponent;
    } bases[] = {
        {"length", d.length}, {"angle", d.angle}, {"mass", d.mass}, {"time", d.time}, {"money", d.money}};
    const char *all = "";
    for (int sign = 1; sign >= -1; sign -= 2)
        for (size_t i = 0; i < sizeof bases / sizeof *bases; i++) {
            int exponent = bases[i].exponent * sign;
            if (exponent <= 0)
                continue;
            const char *joint = sign < 0 ? (*all ? " / " : "1 / ") : (*all ? " * " : "");
            all = exponent == 1 ? sb_pool_print(run->pool, "%s%s%s", all, joint, bases[i].name)
                                : sb_pool_print(run->pool, "%s%s%s^%d", all, joint, bases[i].name, exponent);
        }
    return all;
}

const char *sb_dimension_name(sb_run *run, sb_dimension d) {
    static const struct {
        sb_dimension dimension;
        const char *name;
    } named[] = {
        {{0}, "a number"},           {{.length = 1}, "a length"}, {{.length = 2}, "an area"},
        {{.length = 3}, "a volume"}, {{.angle = 1}, "an angle"},  {{.mass = 1}, "a mass"},
        {{.time = 1}, "a time"},     {{.money = 1}, "money"},
    };
    for (size_t i = 0; i < sizeof named / sizeof *named; i++)
        if (sb_dimension_same(d, named[i].dimension))
            return named[i].name;
    return spell_dimension(run, d);
}
