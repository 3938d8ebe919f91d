/* What the notices hold; for this room only. */
#ifndef TEXT_NOTICES_H
#define TEXT_NOTICES_H

#include "sawbill/text.h"

/* Where we were when a notice was raised, innermost first. */
typedef struct notice_context {
    sb_place at;
    const char *what;
    const struct notice_context *outer;
} notice_context;

typedef struct notice {
    sb_level level;
    sb_place place;
    const char *message;
    const notice_context *context;
} notice;

struct notice_seen; /* hash of those already raised */

struct sb_notices {
    SB_LIST(notice) list;
    const notice_context *context;
    struct notice_seen *seen;
    size_t count[SB_BUG + 1];
    size_t raised[SB_BUG + 1]; /* with those that had been told before */
};

#endif
