/* The file that cairo writes to, and what can go wrong with it. */
#ifndef WRITERS_PAPER_FILE_H
#define WRITERS_PAPER_FILE_H

#include "sawbill/text.h"

#include <cairo.h>

typedef struct paper_file paper_file;

paper_file *paper_file_open(sb_run *run, const char *path); /* NULL after a failure */
cairo_status_t paper_file_take(void *file, const unsigned char *bytes, unsigned int size);
/* Ends the surface (NULL: none) and the file; false after a failure of either. */
bool paper_file_close(sb_run *run, paper_file *file, cairo_surface_t *surface);

#endif
