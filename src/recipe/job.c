/* A job file: its head, the table of its statements, and what must hold for the whole. */
#include "recipe/reader.h"

#include <string.h>

/* ---- text --------------------------------------------------------------------------------------------------- */

static void take_prose(recipe_reader *reader, const char **out) {
    const char *text = recipe_prose(reader);
    if (text)
        *out = text;
}

static void read_title(recipe_reader *reader) {
    take_prose(reader, &reader->job->title);
}

static void read_reference(recipe_reader *reader) {
    take_prose(reader, &reader->job->reference);
}

/* It stands in the names of files. */
static void read_revision(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    static const char fit[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-";
    if (!text)
        return;
    reader->job->revision = text;
    if (strspn(text, fit) != strlen(text) || strlen(text) > 20)
        sb_error(reader->run, reader->line->rest,
                 "expected a revision of letters and digits, as B: it stands in the names of files");
}

static void read_customer(recipe_reader *reader) {
    take_prose(reader, &reader->job->customer);
}

static void read_address(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    if (text)
        SB_PUSH(reader->run->pool, reader->job->address, text);
}

static void read_note(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    if (text)
        SB_PUSH(reader->run->pool, reader->job->notes, text);
}

/* ---- words ---------------------------------------------------------------------------------------------------- */

static void take_word(recipe_reader *reader, const char *what, const char **out) {
    const sb_token *word = recipe_word(reader, what);
    if (word && recipe_end_line(reader))
        *out = word->text;
}

static void read_name(recipe_reader *reader) {
    sb_place at = reader->cursor.at->place;
    take_word(reader, "the job's name", &reader->job->name);
    reader->job->place = at;
}

static void read_rates(recipe_reader *reader) {
    take_word(reader, "the name of a folder in rates/", &reader->job->rates);
}

static void read_tax(recipe_reader *reader) {
    reader->job->tax_place = reader->cursor.at->place;
    take_word(reader, "the id of a tax", &reader->job->tax);
}

static void read_date(recipe_reader *reader) {
    const sb_statement *line = reader->line;
    if (line->rest.length)
        sb_read_date(reader->run, sb_place_text(reader->run, line->rest), line->rest, &reader->job->date);
    else
        sb_error(reader->run, line->keyword.place, "expected a date behind `date`, as 2026-03-31");
}

static void read_rack(recipe_reader *reader) {
    static const char *const words[] = {"no", "yes"};
    int word = recipe_one_of(reader, "yes or no", words, 2);
    if (word >= 0 && recipe_end_line(reader))
        reader->job->use_rack = word == 1;
}

static void read_quote_units(recipe_reader *reader) {
    static const char *const words[] = {"mm", "in", "both"};
    int word = recipe_one_of(reader, "mm, in or both", words, 3);
    if (word >= 0 && recipe_end_line(reader))
        reader->job->quote_units = (sb_quote_units)(SB_QUOTE_MM + word);
}

/* ---- the language ----------------------------------------------------------------------------------------------- */

static const recipe_keyword keywords[] = {
    {"job", read_name, RECIPE_ONCE, NULL},
    {"title", read_title, RECIPE_ONCE | RECIPE_PROSE, NULL},
    {"reference", read_reference, RECIPE_ONCE | RECIPE_PROSE, NULL},
    {"revision", read_revision, RECIPE_ONCE | RECIPE_PROSE, NULL},
    {"rates", read_rates, RECIPE_ONCE, NULL},
    {"date", read_date, RECIPE_ONCE | RECIPE_PROSE, NULL},
    {"customer", read_customer, RECIPE_ONCE | RECIPE_PROSE, NULL},
    {"address", read_address, RECIPE_PROSE, NULL},
    {"piece", recipe_read_piece, 0, NULL},
    {"option", recipe_read_option, 0, NULL},
    {"delivery", recipe_read_delivery, RECIPE_ONCE, NULL},
    {"extra", recipe_read_extra, 0, NULL},
    {"discount", recipe_read_discount, RECIPE_ONCE, NULL},
    {"minimum", recipe_read_minimum, RECIPE_ONCE, NULL},
    {"deposit", recipe_read_deposit, RECIPE_ONCE, NULL},
    {"stage", recipe_read_stage, 0, NULL},
    {"confidence", recipe_read_confidence, RECIPE_ONCE, NULL},
    {"margin", recipe_read_margin, RECIPE_ONCE, NULL},
    {"markup", recipe_read_markup, RECIPE_ONCE, NULL},
    {"contingency", recipe_read_contingency, RECIPE_ONCE, NULL},
    {"validity", recipe_read_validity, RECIPE_ONCE, NULL},
    {"breaks", recipe_read_breaks, RECIPE_ONCE, NULL},
    {"tax", read_tax, RECIPE_ONCE, NULL},
    {"quote-units", read_quote_units, RECIPE_ONCE, NULL},
    {"rack", read_rack, RECIPE_ONCE, NULL},
    {"note", read_note, RECIPE_PROSE, NULL},
};

static const recipe_block file = {"job", keywords, sizeof keywords / sizeof *keywords, NULL};
static const recipe_block *const blocks[] = {&recipe_piece_block, &recipe_option_block};
const recipe_language recipe_in_jobs = {&file, blocks, sizeof blocks / sizeof *blocks, "a job"};

/* ---- the file -------------------------------------------------------------------------------------------------------- */

static void check_whole(recipe_reader *reader) {
    static const char *const needed[][2] = {
        {"job", "`job NAME`"},
        {"date", "`date YYYY-MM-DD`: prices, validity and the quote go by it"},
        {"customer", "`customer NAME`"},
        {"piece", "`piece NAME`: a job orders at least one"},
    };
    for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
        if (!recipe_file_has(reader, needed[i][0]))
            sb_error(reader->run, reader->job->place, "expected a line %s", needed[i][1]);
    if (recipe_file_has(reader, "margin") && recipe_file_has(reader, "markup"))
        sb_error(reader->run, reader->job->markup.place,
                 "a job has a margin (a share of price) or a markup (a share of cost), not both");
}

const sb_job *sb_job_of(sb_run *run, const sb_source *source, bool decimal_comma) {
    if (!source)
        return NULL;
    recipe_reader reader = recipe_reader_new(run, source, &recipe_in_jobs, decimal_comma);
    reader.job = SB_NEW(run->pool, sb_job);
    *reader.job = (sb_job){.name = "",
                           .path = sb_source_name(source),
                           .customer = "",
                           .use_rack = true,
                           .place = {source, 0, 0}};
    recipe_read_lines(&reader);
    recipe_check_references(&reader);
    check_whole(&reader);
    return reader.job;
}

const sb_job *sb_job_for_one(sb_run *run, const sb_recipe *recipe) {
    sb_job_piece piece = {.name = recipe->name, .recipe = recipe->name, .count = 1, .place = recipe->place};
    sb_job *job = SB_NEW(run->pool, sb_job);
    *job = (sb_job){.name = recipe->name, .customer = "", .use_rack = true, .place = recipe->place};
    SB_PUSH(run->pool, job->pieces, piece);
    return job;
}

const sb_job *sb_job_read(sb_run *run, const char *path, bool decimal_comma) {
    return sb_job_of(run, sb_source_read(run, path), decimal_comma);
}

/* ---- what must be known before ------------------------------------------------------------------------------------- */

const char *sb_job_rates(sb_run *run, const char *path, sb_place *at) {
    const sb_source *source = sb_source_read(run, path);
    sb_statements lines = sb_statements_read(run, source);
    for (size_t i = 0; i < lines.count; i++) {
        if (strcmp(lines.items[i].keyword.text, "rates") != 0)
            continue;
        sb_cursor cursor = sb_statement_tokens(run, sb_line_lexer(run, false), &lines.items[i]);
        *at = cursor.at->place;
        return cursor.at->kind == SB_WORD ? cursor.at->text : "";
    }
    *at = (sb_place){0};
    return "";
}
