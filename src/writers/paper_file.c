#include "writers/paper_file.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

struct paper_file {
    const char *path;
    FILE *file;
    int error; /* the first, as errno has it */
};

static void release(void *thing) {
    paper_file *file = thing;
    if (file->file)
        fclose(file->file);
}

static bool failed(sb_run *run, const paper_file *file, const char *why) {
    sb_fail(run, (sb_place){0}, "cannot write %s: %s", file->path, why);
    return false;
}

paper_file *paper_file_open(sb_run *run, const char *path) {
    paper_file *file = SB_NEW(run->pool, paper_file);
    *file = (paper_file){path, fopen(path, "wb"), 0};
    sb_pool_defer(run->pool, release, file);
    return file->file || failed(run, file, strerror(errno)) ? file : NULL;
}

cairo_status_t paper_file_take(void *thing, const unsigned char *bytes, unsigned int size) {
    paper_file *file = thing;
    if (!file->error && fwrite(bytes, 1, size, file->file) != size)
        file->error = errno ? errno : EIO;
    return file->error ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

bool paper_file_close(sb_run *run, paper_file *file, cairo_surface_t *surface) {
    cairo_status_t status = CAIRO_STATUS_SUCCESS;
    if (surface) {
        cairo_surface_finish(surface);
        status = cairo_surface_status(surface);
        cairo_surface_destroy(surface);
    }
    FILE *open = file->file;
    file->file = NULL;
    if (fclose(open) != 0 && !file->error)
        file->error = errno;
    if (file->error)
        return failed(run, file, strerror(file->error));
    return status == CAIRO_STATUS_SUCCESS || failed(run, file, cairo_status_to_string(status));
}
