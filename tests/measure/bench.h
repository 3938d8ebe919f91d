#include "../text/bench.h"
#include "sawbill/measure.h"

static inline sb_place nowhere(void) {
    return (sb_place){0};
}

static inline sb_length length_of(sb_run *run, const char *text) {
    sb_length length = {SB_BAD};
    if (!sb_read_length(run, text, nowhere(), false, &length))
        fail_msg("%s: %s", text, sb_notices_message(run, sb_notices_count(run, SB_NOTE) - 1));
    return length;
}

static inline sb_quantity quantity_of(sb_run *run, const char *text) {
    sb_quantity q;
    const char *why;
    if (!sb_quantity_read(run, text, false, &q, &why))
        fail_msg("%s: %s", text, why);
    return q;
}
