#include "papers/draw.h"

#include <string.h>

const char *draw_mark(sb_run *run, draw_marks *marks, const char *words) {
    size_t i = 0;
    while (i < marks->words.count && strcmp(marks->words.items[i], words) != 0)
        i++;
    if (i == marks->words.count)
        SB_PUSH(run->pool, marks->words, words);
    char letter = (char)('A' + i % 26);
    return i < 26 ? sb_pool_print(run->pool, "%c", letter)
                  : sb_pool_print(run->pool, "%c%zu", letter, i / 26 + 1);
}
