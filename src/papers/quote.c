/* The customer's paper. It is made from the price lines of the estimate, the words of templates/, what the job file says to
 * the customer and the outlines of pieces; nothing else of recipes, and nothing of cost, margin, hours or stock is read here. */
#include "papers/figures.h"
#include "papers/quote_breaks.h"
#include "papers/quote_notes.h"
#include "papers/quote_table.h"
#include "papers/quote_views.h"
#include "papers/wording.h"

typedef struct quote {
    sb_run *run;
    const sb_shop *shop;
    const sb_job *job;
    const sb_ways *ways;
    const sb_breaks *breaks; /* NULL: the customer sees none */
    const sb_wording *words;
    quote_sizes sizes;
    quote_notes notes; /* of the pieces */
    sb_sheet *sheet;
} quote;

static const char *word(const quote *q, const char *key) {
    return sb_wording_text(q->run, q->words, key);
}

static const char *date_words(const quote *q, sb_date date) {
    return wording_date(q->run, q->words, date);
}

static void say(const quote *q, const char *text, bool small) {
    if (text && *text)
        sb_paragraph_add(q->run, q->sheet, text, small);
}

static const char *reference_of(const sb_job *job) {
    return job->reference ? job->reference : job->title ? job->title : job->name;
}

static sb_date valid_until(const quote *q) {
    int days = q->job->validity_days ? q->job->validity_days : q->shop->settings.validity_days;
    return days > 0 ? sb_date_plus(q->job->date, days) : (sb_date){0};
}

/* ---- head ---- */

static void pair(const quote *q, sb_table *table, const char *label, sb_cell value) {
    sb_cell *row = sb_row_add(q->run, table);
    row[0] = sb_cell_text(label);
    row[1] = value;
}

static void put_lines(const quote *q, sb_table *table, const char *label, const char *first,
                      const char *const *lines, size_t count) {
    pair(q, table, label, sb_cell_strong(sb_cell_text(first)));
    for (size_t i = 0; i < count; i++)
        pair(q, table, "", sb_cell_text(lines[i]));
}

static sb_table *pairs(const quote *q) {
    sb_table *table = sb_table_add(q->run, q->sheet, "", "|");
    table->no_heading = true;
    return table;
}

static void put_head(const quote *q) {
    const sb_settings *s = &q->shop->settings;
    sb_heading_add(q->run, q->sheet, s->name);
    const char *from = "";
    for (size_t i = 0; i < s->address.count; i++)
        from = sb_pool_print(q->run->pool, "%s%s%s", from, *from ? "\n" : "", s->address.items[i]);
    if (s->contact && *s->contact)
        from = sb_pool_print(q->run->pool, "%s%s%s", from, *from ? "\n" : "", s->contact);
    say(q, from, false);
    sb_heading_add(q->run, q->sheet, word(q, "quote"));
    sb_table *table = pairs(q);
    put_lines(q, table, word(q, "customer"), q->job->customer, q->job->address.items, q->job->address.count);
    if (q->job->title)
        pair(q, table, word(q, "subject"), sb_cell_text(q->job->title));
    if (q->job->reference)
        pair(q, table, word(q, "reference"), sb_cell_text(q->job->reference));
    if (q->job->revision)
        pair(q, table, word(q, "revision"), sb_cell_text(q->job->revision));
    pair(q, table, word(q, "date"), sb_cell_text(date_words(q, q->job->date)));
    if (valid_until(q).year)
        pair(q, table, word(q, "valid-until"), sb_cell_text(date_words(q, valid_until(q))));
}

/* ---- options ---- */

static const char *option_title(const quote *q, size_t index) {
    const sb_job_option *option = q->ways->list.items[index].option;
    const char *title = option->title ? option->title : option->name;
    return sb_pool_print(q->run->pool, "%s %zu: %s", word(q, "option"), index + 1, title);
}

static void put_way(const quote *q, size_t index) {
    const sb_way *way = &q->ways->list.items[index];
    bool choice = q->ways->list.count > 1;
    if (index > 0)
        sb_room_break_add(q->run, q->sheet);
    if (choice)
        sb_heading_add(q->run, q->sheet, option_title(q, index));
    if (way->option)
        say(q, way->option->note, false);
    quote_table(q->run, q->sheet, way->estimate, q->words, &q->sizes, index == 0);
    if (q->breaks)
        quote_breaks(q->run, q->sheet, q->breaks, index, q->words);
    for (size_t i = 0; i < q->notes.count; i++)
        if (quote_note_is_of(&q->notes.items[i], index))
            say(q, q->notes.items[i].text, true);
}

/* Pieces as the first option has them, on pages of their own. */
static bool any_views(const quote *q) {
    const sb_takeoff *takeoff = q->ways->list.items[0].takeoff;
    for (size_t i = 0; i < takeoff->pieces.count; i++)
        if (takeoff->pieces.items[i].outlines.count > 0)
            return true;
    return false;
}

static void put_views(const quote *q) {
    const sb_takeoff *takeoff = q->ways->list.items[0].takeoff;
    if (!any_views(q))
        return;
    sb_page_break_add(q->run, q->sheet);
    if (*word(q, "views"))
        sb_heading_add(q->run, q->sheet, word(q, "views"));
    for (size_t i = 0; i < takeoff->pieces.count; i++)
        quote_views(q->run, q->sheet, &takeoff->pieces.items[i], &q->sizes, q->words, i + 1);
}

/* ---- notes, terms, acceptance ---- */

static bool any_notes(const quote *q) {
    for (size_t i = 0; i < q->notes.count; i++)
        if (q->notes.items[i].everywhere)
            return true;
    return q->job->notes.count > 0;
}

static void put_notes(const quote *q) {
    if (!any_notes(q))
        return;
    sb_heading_add(q->run, q->sheet, word(q, "notes"));
    for (size_t i = 0; i < q->notes.count; i++)
        if (q->notes.items[i].everywhere)
            say(q, q->notes.items[i].text, false);
    for (size_t i = 0; i < q->job->notes.count; i++)
        say(q, q->job->notes.items[i], false);
}

static const char *tax_words(const quote *q) {
    const sb_settings *s = &q->shop->settings;
    if (q->ways->list.items[0].estimate->taxes.count == 0)
        return "";
    if (q->ways->list.items[0].estimate->taxes.count > 1 && !s->tax_per_line && !s->prices_gross)
        return word(q, "tax-on-rates");
    return word(q, s->tax_per_line ? "tax-by-line" : s->prices_gross ? "tax-inside" : "tax-on-total");
}

/* Which sizes are worked to, where some are rounded. */
static void say_of_sizes(const quote *q) {
    const sb_style *style = &q->sizes.first;
    if (q->sizes.both)
        say(q, word(q, "sizes-both"), true);
    else if (quote_sizes_are_rounded(&q->sizes, q->ways))
        say(q,
            wording_fill(q->run, q->words, "sizes-rounded", "step",
                         sb_write_length_unit(q->run, style->step, style)),
            true);
}

static void put_terms(const quote *q) {
    const sb_estimate *e = q->ways->list.items[0].estimate;
    sb_heading_add(q->run, q->sheet, word(q, "terms"));
    if (valid_until(q).year)
        say(q, wording_fill(q->run, q->words, "terms-validity", "date", date_words(q, valid_until(q))),
            false);
    const char *share = share_words(q->run, q->shop, e->deposit_rate);
    say(q,
        e->stages.count > 0       ? word(q, "terms-stages")
        : e->deposit_rate.ppm > 0 ? wording_fill(q->run, q->words, "terms-deposit", "share", share)
                                  : word(q, "terms-payment"),
        false);
    say(q, word(q, "terms-wood"), false);
    say(q, word(q, "terms-changes"), false);
    say_of_sizes(q);
    say(q, wording_fill(q->run, q->words, "currency", "currency", q->shop->settings.currency.code), true);
    say(q, tax_words(q), true);
}

/* In the columns of the tables above: the box under the numbers, the total under the amounts. */
static void put_choice(const quote *q) {
    bool taxed = q->ways->list.items[0].estimate->taxes.count > 0;
    const char *headings = sb_pool_print(q->run->pool, "%s||||%s>", word(q, "option-choice"),
                                         word(q, taxed ? "total-gross" : "total"));
    sb_table *table = sb_table_add(q->run, q->sheet, "", headings);
    for (size_t i = 0; i < q->ways->list.count; i++) {
        sb_cell *row = sb_row_add(q->run, table);
        row[0] = sb_cell_text(option_title(q, i));
        row[2] = sb_cell_tick();
        row[4] = sb_cell_money(q->ways->list.items[i].estimate->gross);
    }
}

static void put_acceptance(const quote *q) {
    sb_heading_add(q->run, q->sheet, word(q, "accept"));
    say(q, wording_fill(q->run, q->words, "accept-text", "reference", reference_of(q->job)), false);
    if (q->ways->list.count > 1)
        put_choice(q);
    static const char *const lines[] = {"name", "place-date", "signature"};
    sb_table *table = pairs(q);
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        sb_row_add(q->run, table); /* room for a hand that writes */
        pair(q, table, word(q, lines[i]), sb_cell_text("________________________________"));
    }
}

static sb_document *document_of(const quote *q) {
    const sb_settings *s = &q->shop->settings;
    const char *title = sb_pool_print(q->run->pool, "%s: %s", word(q, "quote"), reference_of(q->job));
    sb_document *document = sb_document_new(q->run, title, q->job->date, s->style, s->currency);
    document->author = s->name;
    document->letter = s->style.units == SB_UNITS_IN;
    document->even = true;
    document->foot = sb_pool_print(q->run->pool, "%s, %s", reference_of(q->job), date_words(q, q->job->date));
    document->group = *word(q, "group-mark") ? word(q, "group-mark") : NULL;
    document->page_word = word(q, "page");
    document->of_word = word(q, "of");
    return document;
}

/* The shop, writing numbers as the language of the quote does. */
static const sb_shop *shop_writing(sb_run *run, const sb_shop *shop, const sb_wording *wording) {
    const char *mark = sb_wording_text(run, wording, "decimal-mark");
    if (!*mark)
        return shop;
    sb_shop *writing = SB_NEW(run->pool, sb_shop);
    *writing = *shop;
    writing->settings.style.decimal_comma = *mark == ',';
    return writing;
}

sb_document *sb_paper_quote(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                            const sb_breaks *breaks, const sb_wording *wording) {
    quote q = {
        .run = run, .shop = shop_writing(run, shop, wording), .job = job, .ways = ways, .words = wording};
    if (job->breaks.quoted && breaks && breaks->list.count > 1)
        q.breaks = breaks;
    q.sizes = quote_sizes_of(q.shop, job);
    q.notes = quote_notes_of(run, ways);
    sb_document *document = document_of(&q);
    q.sheet = sb_sheet_add(run, document, word(&q, "quote"));
    put_head(&q);
    if (ways->list.count > 1)
        say(&q, word(&q, "options-intro"), false);
    for (size_t i = 0; i < ways->list.count; i++)
        put_way(&q, i);
    if (ways->list.count > 1)
        sb_room_break_add(run, q.sheet);
    put_notes(&q);
    put_terms(&q);
    sb_room_break_add(run, q.sheet);
    put_acceptance(&q);
    put_views(&q);
    return document;
}
