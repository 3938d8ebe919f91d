/* cutting/words.h -- how this room writes amounts in its messages. */
#ifndef CUTTING_WORDS_H
#define CUTTING_WORDS_H

#include "sawbill/measure.h"

const char *sb_words_length(sb_run *run, int64_t nm); /* "864 mm", "864.35 mm" */

#endif
