/* What papers call a figure where that is not the shop's own word for it: longer words, those of the quote in its language,
 * names of cells; and what they put in front of a name or behind it. */
#include "papers/figures.h"
#include "papers/why.h"
#include "papers/wording.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

typedef struct word_pair {
    const char *printed, *own;
} word_pair;

/* On the shop's own papers. */
static const word_pair printed[] = {
    {"all", "total"},
    {"total with tax", "total"},
    {"with tax", "total"},
    {"total without tax", "net"},
    {"cost with contingency", "base"},
    {"less discount", "discount"},
    {"price points", "pieces, net"},
    {"price point", "pieces, net"},
    {"price point, less", "pieces, net"},
    {"delivery, net", "delivery"},
    {"delivery, how many", "delivery"},
    {"supplement to the minimum, net", "supplement"},
    {"supplement to the minimum", "supplement"},
    {"floor, net", "floor"},
    {"net above the floor", "floor"},
    {"left for the shop", "margin left"},
    {"markup left", "margin left"},
    {"margin left, of net", "margin left"},
    {"work", "hours"},
    {"loses money", "risk"},
};

/* Names of cells of the estimate. */
static const word_pair cells[] = {
    {"material_total", "material"},
    {"labour_total", "labour"},
    {"overhead_rate", "overhead"},
    {"contingency_rate", "contingency"},
    {"margin_rate", "margin left"},
    {"markup_rate", "price"},
    {"discount_rate", "discount"},
    {"rounding", "pieces, net"},
    {"price_point", "pieces, net"},
    {"price_point_less", "pieces, net"},
    {"delivery_each", "delivery"},
    {"delivery_count", "delivery"},
    {"tax_rate", "tax"},
    {"deposit_rate", "deposit"},
    {"stage_rate", "rest"},
    {"stage", "rest"},
    {"cost_10", "risk"},
    {"cost_50", "risk"},
    {"cost_80", "risk"},
    {"cost_90", "risk"},
    {"cost_mean", "risk"},
    {"loses", "risk"},
    {"confident_price", "risk"},
    {"quantity", "total"},
};

/* Keys of the wording that stand beside figures of the quote. */
static const word_pair quoted[] = {
    {"unit-price", "each, net"},
    {"unit-price-net", "each, net"},
    {"unit-price-gross", "each, with tax"},
    {"amount", "line, net"},
    {"tax", "tax"},
    {"tax-rate", "tax"},
    {"tax-base", "net"},
    {"delivery", "delivery"},
    {"net", "net"},
    {"total", "total"},
    {"total-gross", "total"},
    {"deposit", "deposit"},
    {"list-price", "discount"},
    {"discount", "discount"},
    {"discounted", "pieces, net"},
    {"supplement", "supplement"},
    {"rest", "rest"},
    {"valid-until", "valid until"},
    {"date", "date"},
    {"size", "size"},
};
enum {
    PRINTED = sizeof printed / sizeof *printed,
    CELLS = sizeof cells / sizeof *cells,
    QUOTED = sizeof quoted / sizeof *quoted
};

static const char *find(const word_pair *pairs, size_t count, const char *figure) {
    for (size_t i = 0; i < count; i++)
        if (strcasecmp(figure, pairs[i].printed) == 0)
            return pairs[i].own;
    return NULL;
}

/* ---- names of cells ---- */

/* "hourly_rate_2": the second worker's. */
static const char *worker_cell(const why *w, const char *figure) {
    static const char hourly[] = "hourly_rate_";
    size_t size = strlen(hourly), number = 0;
    if (strncasecmp(figure, hourly, size) != 0)
        return NULL;
    for (const char *digit = figure + size; isdigit((unsigned char)*digit) && number < 1000; digit++)
        number = 10 * number + (size_t)(*digit - '0');
    return number > 0 && number <= w->shop->settings.workers.count
               ? w->shop->settings.workers.items[number - 1].id
               : NULL;
}

/* Of several the name carries a number; a name that would be a formula's own has a bar behind it. */
static const char *cell_word(const why *w, const char *figure) {
    size_t length = strlen(figure);
    const char *own = find(cells, CELLS, figure);
    if (own || worker_cell(w, figure))
        return own ? own : worker_cell(w, figure);
    while (length > 0 && (isdigit((unsigned char)figure[length - 1]) || figure[length - 1] == '_'))
        length--;
    char *bare = sb_pool_copy(w->run->pool, figure, length);
    own = find(cells, CELLS, bare);
    for (char *bar = strchr(bare, '_'); bar; bar = strchr(bar, '_'))
        *bar = ' ';
    bool is_cell = strchr(figure, '_') != NULL;
    return own && is_cell ? own : !is_cell ? NULL : strcmp(bare, "pieces net") == 0 ? "pieces, net" : bare;
}

/* ---- words of the quote ---- */

static bool is_inside(const why *w, const char *figure, const char *tax) {
    return strcasecmp(figure, wording_fill(w->run, w->words, "tax-included", "tax", tax)) == 0;
}

/* "including VAT": by the tax's own name, of several by the word for all. */
static bool is_tax_inside(const why *w, const char *figure) {
    const sb_estimate *e = w->way->estimate;
    bool inside = is_inside(w, figure, sb_wording_text(w->run, w->words, "tax"));
    for (size_t i = 0; i < e->taxes.count; i++)
        inside = inside || is_inside(w, figure, e->taxes.items[i].tax->title);
    return inside;
}

static const char *quote_word(const why *w, const char *figure) {
    for (size_t i = 0; w->words && i < QUOTED; i++)
        if (strcasecmp(figure, sb_wording_text(w->run, w->words, quoted[i].printed)) == 0)
            return quoted[i].own;
    return w->words && is_tax_inside(w, figure) ? "tax" : NULL;
}

const char *why_own_word(const why *w, const char *figure) {
    const char *own = find(printed, PRINTED, figure);
    own = own ? own : quote_word(w, figure);
    return own ? own : cell_word(w, figure);
}

void why_printed(const why *w, why_group *group) {
    for (size_t i = 0; i < PRINTED; i++)
        why_word_once(w, &group->titles, printed[i].printed);
    for (size_t i = 0; w->words && i < QUOTED; i++)
        why_word_once(w, &group->titles, sb_wording_text(w->run, w->words, quoted[i].printed));
}

/* ---- in front of a name and behind it ---- */

static const char *behind(const char *figure, const char *prefix) {
    size_t size = strlen(prefix);
    return strncasecmp(figure, prefix, size) == 0 && figure[size] ? figure + size : NULL;
}

/* "Each: Long trough", "Price of Deck oil", "Labour: Sand", and on the quote of other numbers "Price each: Long trough". */
static const char *behind_prefix(const why *w, const char *figure) {
    static const char *const prefixes[] = {
        "each: ",     "each, net: ", "each, with tax: ", "price of ", "time of ",
        "amount of ", "material: ",  "labour: ",         "part of "};
    static const char *const units[] = {"unit-price", "unit-price-net", "unit-price-gross"};
    const char *bare = NULL;
    for (size_t i = 0; !bare && i < sizeof prefixes / sizeof *prefixes; i++)
        bare = behind(figure, prefixes[i]);
    for (size_t i = 0; w->words && !bare && i < sizeof units / sizeof *units; i++)
        bare =
            behind(figure, sb_pool_print(w->run->pool, "%s: ", sb_wording_text(w->run, w->words, units[i])));
    return bare;
}

/* "48 x post" */
static const char *behind_count(const char *figure) {
    size_t digits = strspn(figure, "0123456789");
    return digits > 0 ? behind(figure + digits, " x ") : NULL;
}

bool why_ends_in(const char *text, const char *tail) {
    size_t length = strlen(text), size = strlen(tail);
    return length >= size && strcasecmp(text + length - size, tail) == 0;
}

/* NULL: the suffix is not there, or nothing stands before it. */
static const char *before(const why *w, const char *figure, const char *suffix) {
    if (!why_ends_in(figure, suffix) || strlen(figure) == strlen(suffix))
        return NULL;
    return sb_pool_copy(w->run->pool, figure, strlen(figure) - strlen(suffix));
}

/* "Long trough: each" */
static const char *before_suffix(const why *w, const char *figure) {
    static const char *const suffixes[] = {": each", ": number", "; short: push sticks, hands away"};
    const char *bare = NULL;
    for (size_t i = 0; !bare && i < sizeof suffixes / sizeof *suffixes; i++)
        bare = before(w, figure, suffixes[i]);
    return bare;
}

/* What wood a part needs: "post (Long trough; clear wood)", "post (clear wood)". */
static const char *without_wood(const why *w, const char *figure) {
    static const char *const woods[][2] = {
        {"; clear wood)", ")"}, {"; sound wood)", ")"}, {" (clear wood)", ""}, {" (sound wood)", ""}};
    for (size_t i = 0; i < sizeof woods / sizeof *woods; i++) {
        const char *bare = before(w, figure, woods[i][0]);
        if (bare)
            return sb_pool_print(w->run->pool, "%s%s", bare, woods[i][1]);
    }
    return NULL;
}

const char *why_bare(const why *w, const char *figure) {
    const char *bare = behind_prefix(w, figure);
    bare = bare ? bare : behind_count(figure);
    bare = bare ? bare : without_wood(w, figure);
    return bare ? bare : before_suffix(w, figure);
}

/* ---- options ---- */

/* "Larch slats", or as the quote counts them: "Option 1: Larch slats" */
bool why_option(why *w, const char *figure) {
    for (size_t i = 0; i < w->ways->list.count; i++) {
        const sb_job_option *option = w->ways->list.items[i].option;
        const char *title = option ? way_words(&w->ways->list.items[i]) : "";
        const char *word = w->words ? sb_wording_text(w->run, w->words, "option") : "Option";
        if (!option ||
            (!why_is(figure, option->name, title) &&
             strcasecmp(figure, sb_pool_print(w->run->pool, "%s %zu: %s", word, i + 1, title)) != 0))
            continue;
        w->way = &w->ways->list.items[i];
        return why_total(w, "total");
    }
    return false;
}
