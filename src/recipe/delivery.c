/* delivery AMOUNT | zone NAME | NUMBER trips | NUMBER km | NUMBER miles [tax ID] [: text] */
#include "recipe/reader.h"

static bool take_zone(recipe_reader *reader, sb_job *job) {
    const sb_token *zone = recipe_word(reader, "the name of a zone");
    if (!zone)
        return false;
    job->delivery_by = SB_DELIVERY_ZONE;
    job->delivery_zone = zone->text;
    job->delivery_zone_place = zone->place;
    return true;
}

static void take_unit(recipe_reader *reader, sb_job *job) {
    sb_cursor *cursor = &reader->cursor;
    if (sb_take_word(cursor, "trips") || sb_take_word(cursor, "trip"))
        job->delivery_by = SB_DELIVERY_TRIPS;
    else if (sb_take_word(cursor, "km"))
        job->delivery_by = SB_DELIVERY_KM;
    else if (sb_take_word(cursor, "miles") || sb_take_word(cursor, "mile"))
        job->delivery_by = SB_DELIVERY_MILES;
}

static bool take_number(recipe_reader *reader, sb_job *job) {
    const sb_token *token =
        recipe_number(reader, "an amount of money, as 95.00, a number of trips or km, or `zone`");
    if (!token ||
        !sb_read_micro(reader->run, token->text, token->place, reader->decimal_comma, &job->delivery.micro))
        return false;
    take_unit(reader, job);
    bool counted = job->delivery_by != SB_DELIVERY_AMOUNT;
    if (counted && job->delivery.micro < 0) {
        sb_error(reader->run, token->place,
                 "nothing is carried backwards: expected a number that is not below zero");
        return false;
    }
    if (!counted || job->delivery.micro % 1000 == 0)
        return true;
    sb_error(reader->run, token->place, "expected a number with at most three decimals");
    return false;
}

static bool take_tax(recipe_reader *reader, sb_job *job) {
    if (!sb_take_word(&reader->cursor, "tax"))
        return true;
    const sb_token *tax = recipe_word(reader, "the id of a tax");
    if (!tax)
        return false;
    job->delivery_tax = tax->text;
    job->delivery_tax_place = tax->place;
    return true;
}

void recipe_read_delivery(recipe_reader *reader) {
    sb_job *job = reader->job;
    bool read = sb_take_word(&reader->cursor, "zone") ? take_zone(reader, job) : take_number(reader, job);
    if (!read || !take_tax(reader, job) || !recipe_end_line(reader))
        return;
    job->delivery.given = true;
    job->delivery.text = reader->text;
    job->delivery.place = recipe_line_place(reader);
}
