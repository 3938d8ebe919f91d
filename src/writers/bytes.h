/* Text that grows at its end; a room of its own for each file that is put together in memory. */
#ifndef WRITERS_BYTES_H
#define WRITERS_BYTES_H

#include "sawbill/text.h"

typedef SB_LIST(char) bytes;

void bytes_add(sb_run *run, bytes *to, const char *from, size_t size);
void bytes_add_text(sb_run *run, bytes *to, const char *text);
void bytes_repeat(sb_run *run, bytes *to, char c, size_t count);
const char *bytes_end(sb_run *run, bytes *of); /* closes with NUL, which is not counted */

#endif
