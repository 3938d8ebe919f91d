/* Lengths in messages: millimetres with as many decimals as they need, at most three. */
#include <string.h>

#include "cutting/words.h"

const char *sb_words_length(sb_run *run, int64_t nm) {
    const char *number = sb_write_fixed(run, nm, 6, 3, false);
    size_t size = strlen(number);
    if (strchr(number, '.')) {
        while (number[size - 1] == '0')
            size--;
        size -= number[size - 1] == '.';
    }
    return sb_pool_print(run->pool, "%.*s mm", (int)size, number);
}
