/* What a job says about money and time: amounts, and percentages that say of what. */
#include "recipe/reader.h"

#include <string.h>

static const int64_t whole = 1000000; /* 100 % [ppm] */

/* ---- minimum AMOUNT, extra AMOUNT : text ----------------------------------------------------------------------- */

static bool take_amount(recipe_reader *reader, sb_job_amount *amount) {
    const sb_token *token = recipe_number(reader, "an amount of money, as 95.00");
    if (!token ||
        !sb_read_micro(reader->run, token->text, token->place, reader->decimal_comma, &amount->micro) ||
        !recipe_end_line(reader))
        return false;
    amount->given = true;
    amount->text = reader->text;
    amount->place = recipe_line_place(reader);
    return true;
}

void recipe_read_minimum(recipe_reader *reader) {
    sb_place at = reader->cursor.at->place;
    sb_job_amount amount = {0};
    if (!take_amount(reader, &amount))
        return;
    if (amount.micro < 0)
        sb_error(reader->run, at, "a minimum is not below zero");
    else
        reader->job->minimum = amount;
}

void recipe_read_extra(recipe_reader *reader) {
    sb_job_amount amount = {0};
    if (!take_amount(reader, &amount))
        return;
    if (amount.text && *amount.text)
        SB_PUSH(reader->run->pool, reader->job->extras, amount);
    else
        sb_error(reader->run, reader->cursor.at->place, "expected a colon and what this is for");
}

/* ---- percentages ------------------------------------------------------------------------------------------------ */

/* [of WHAT | on WHAT]; the hint helps whoever means the other one */
static bool take_of(recipe_reader *reader, const char *of, const char *hint) {
    if (!sb_take_word(&reader->cursor, "of") && !sb_take_word(&reader->cursor, "on"))
        return true;
    if (sb_take_word(&reader->cursor, of))
        return true;
    recipe_expected(reader, sb_pool_print(reader->run->pool, "`%s` (a %s is a share of %s%s)", of,
                                          reader->line->keyword.text, of, hint));
    return false;
}

static bool take_share(recipe_reader *reader, const char *of, const char *hint, sb_job_share *out) {
    const sb_token *token = recipe_number(reader, "a percentage, as 12 %");
    sb_job_share share = {.given = true, .place = recipe_line_place(reader)};
    if (token && !strchr(token->text, '%')) {
        sb_error(reader->run, token->place, "expected a percentage, as 12 %% of %s", of);
        return false;
    }
    if (!token ||
        !sb_read_share(reader->run, token->text, token->place, reader->decimal_comma, &share.share) ||
        !take_of(reader, of, hint) || !recipe_end_line(reader))
        return false;
    *out = share;
    return true;
}

/* A share of something that it is part of. */
static void take_part(recipe_reader *reader, const char *of, const char *hint, sb_job_share *out) {
    if (!take_share(reader, of, hint, out) || out->share.ppm <= whole)
        return;
    sb_error(reader->run, out->place, "a %s is a share of %s: expected at most 100 %%",
             reader->line->keyword.text, of);
}

void recipe_read_discount(recipe_reader *reader) {
    take_part(reader, "price", "", &reader->job->discount);
}

void recipe_read_deposit(recipe_reader *reader) {
    take_part(reader, "total", "", &reader->job->deposit);
}

void recipe_read_margin(recipe_reader *reader) {
    take_part(reader, "price", "; a markup is one of cost", &reader->job->margin);
    if (reader->job->margin.share.ppm == whole)
        sb_error(reader->run, reader->job->margin.place,
                 "a margin of 100 %% of price leaves nothing for the cost");
}

void recipe_read_markup(recipe_reader *reader) {
    take_share(reader, "cost", "; a margin is one of price", &reader->job->markup);
}

void recipe_read_contingency(recipe_reader *reader) {
    take_share(reader, "cost", "", &reader->job->contingency);
}

/* ---- breaks SIZE, ... [quoted] | quoted | none ------------------------------------------------------------------------ */

void recipe_read_breaks(recipe_reader *reader) {
    struct sb_job_breaks breaks = {.place = recipe_line_place(reader)};
    if (sb_take_word(&reader->cursor, "none")) {
        breaks.given = true;
    } else {
        breaks.given = !sb_at_word(&reader->cursor, "quoted");
        if (breaks.given && !sb_read_sizes(reader->run, &reader->cursor, &breaks.sizes))
            return;
        breaks.quoted = sb_take_word(&reader->cursor, "quoted");
    }
    if (recipe_end_line(reader))
        reader->job->breaks = breaks;
}

/* stage SHARE of total : when it is due */
void recipe_read_stage(recipe_reader *reader) {
    sb_job_share share = {0};
    take_part(reader, "total", "", &share);
    if (!share.given)
        return;
    sb_job_stage stage = {share.share, reader->text, share.place};
    if (!stage.text || !*stage.text)
        sb_error(reader->run, share.place, "expected a colon and when this is due");
    else if (stage.share.ppm <= 0)
        sb_error(reader->run, share.place, "a stage is a share of the total: expected above 0 %%");
    else
        SB_PUSH(reader->run->pool, reader->job->stages, stage);
}

void recipe_read_confidence(recipe_reader *reader) {
    sb_job_share *share = &reader->job->confidence;
    take_part(reader, "cases", "", share);
    if (share->given && (share->share.ppm <= 0 || share->share.ppm > 999000))
        sb_error(reader->run, share->place,
                 "a price is sure in a share of cases: expected above 0 and at most 99.9 %%");
}

/* ---- validity N [days] ---------------------------------------------------------------------------------------------- */

void recipe_read_validity(recipe_reader *reader) {
    const sb_token *token = recipe_number(reader, "a number of days");
    int64_t days;
    if (!token || !sb_read_count(reader->run, token->text, token->place, &days))
        return;
    if (!sb_take_word(&reader->cursor, "days"))
        sb_take_word(&reader->cursor, "day");
    if (!recipe_end_line(reader))
        return;
    if (days < 1 || days > 3650)
        sb_error(reader->run, token->place, "expected a number of days from 1 to 3650");
    else
        reader->job->validity_days = (int)days;
}
