/* Records: named, nested values. */
#include "sawbill/document.h"

sb_record *sb_record_object(sb_run *run) {
    sb_record *record = SB_NEW(run->pool, sb_record);
    record->kind = SB_RECORD_OBJECT;
    record->key = "";
    record->text = "";
    return record;
}

static sb_record *put(sb_run *run, sb_record *in, const char *key, sb_record_kind kind) {
    sb_record *record = sb_record_object(run);
    record->kind = kind;
    record->key = key ? key : "";
    *(in->last ? &in->last->next : &in->first) = record;
    in->last = record;
    return record;
}

sb_record *sb_put_object(sb_run *run, sb_record *in, const char *key) {
    return put(run, in, key, SB_RECORD_OBJECT);
}

sb_record *sb_put_array(sb_run *run, sb_record *in, const char *key) {
    return put(run, in, key, SB_RECORD_ARRAY);
}

void sb_put_text(sb_run *run, sb_record *in, const char *key, const char *text) {
    put(run, in, key, text ? SB_RECORD_TEXT : SB_RECORD_NULL)->text = text ? text : "";
}

void sb_put_integer(sb_run *run, sb_record *in, const char *key, int64_t integer) {
    if (integer == SB_BAD)
        sb_put_null(run, in, key);
    else
        put(run, in, key, SB_RECORD_INTEGER)->integer = integer;
}

void sb_put_truth(sb_run *run, sb_record *in, const char *key, bool truth) {
    put(run, in, key, SB_RECORD_TRUTH)->truth = truth;
}

void sb_put_null(sb_run *run, sb_record *in, const char *key) {
    put(run, in, key, SB_RECORD_NULL);
}

void sb_put_length(sb_run *run, sb_record *in, const char *key, sb_length length) {
    sb_put_decimal(run, in, key, length.nm, 6);
}

void sb_put_money(sb_run *run, sb_record *in, const char *key, sb_money money, int digits) {
    if (money.minor == SB_BAD)
        sb_put_null(run, in, key);
    else
        sb_put_text(run, in, key, sb_write_decimal(run, money.minor, digits, false));
}

/* Whole amounts become integers, so that 864 mm is 864 and not 864.0. */
void sb_put_decimal(sb_run *run, sb_record *in, const char *key, int64_t amount, int digits) {
    int64_t unit = 1;
    for (int i = 0; i < digits; i++)
        unit *= 10;
    if (amount == SB_BAD)
        sb_put_null(run, in, key);
    else if (amount % unit == 0)
        sb_put_integer(run, in, key, amount / unit);
    else
        put(run, in, key, SB_RECORD_NUMBER)->number = (double)amount / (double)unit;
}

void sb_put_record(sb_run *run, sb_record *in, const char *key, const sb_record *record) {
    sb_record *placed = put(run, in, key, record->kind);
    const char *kept = placed->key;
    *placed = *record;
    placed->key = kept;
    placed->next = NULL;
}
