/* Source text: bytes that stay for the whole run, and places in them. */
#include "text/source.h"

#include "text/utf8.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

enum {
    LARGEST = 64 * 1024 * 1024
};

/* ---- lines -------------------------------------------------------------------------------------- */

/* Length of the line end at `at`: LF, CRLF or CR; 0 when there is none. */
static size_t line_end(const char *text, size_t size, size_t at) {
    if (text[at] == '\n')
        return 1;
    if (text[at] != '\r')
        return 0;
    return at + 1 < size && text[at + 1] == '\n' ? 2 : 1;
}

static void find_lines(sb_run *run, sb_source *source) {
    SB_LIST(size_t) lines = {0};
    SB_PUSH(run->pool, lines, 0);
    for (size_t at = 0; at < source->size;) {
        size_t end = line_end(source->text, source->size, at);
        at += end ? end : 1;
        if (end)
            SB_PUSH(run->pool, lines, at);
    }
    source->lines = lines.items;
    source->line_count = lines.count;
}

size_t source_line(const sb_source *source, size_t offset) {
    size_t low = 0, high = source->line_count;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (source->lines[middle] <= offset)
            low = middle;
        else
            high = middle;
    }
    return low;
}

void source_line_bounds(const sb_source *source, size_t line, size_t *start, size_t *end) {
    *start = source->lines[line];
    *end = line + 1 < source->line_count ? source->lines[line + 1] : source->size;
    while (*end > *start && (source->text[*end - 1] == '\n' || source->text[*end - 1] == '\r'))
        --*end;
}

/* ---- making ------------------------------------------------------------------------------------- */

static bool check_text(sb_run *run, const sb_source *source) {
    const char *nul = memchr(source->text, 0, source->size);
    size_t wrong = utf8_first_wrong(source->text, source->size);
    if (nul) {
        sb_error(run, (sb_place){source, (size_t)(nul - source->text), 1},
                 "a NUL byte stands here: this is not a text file");
        return false;
    }
    if (wrong < source->size) {
        sb_error(run, (sb_place){source, wrong, 1},
                 "the byte 0x%02X is not UTF-8; save the file with the encoding UTF-8",
                 (unsigned)(unsigned char)source->text[wrong]);
        return false;
    }
    return true;
}

static sb_source *make_source(sb_run *run, const char *name, const char *text, size_t size) {
    if (size >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0) {
        text += 3;
        size -= 3;
    }
    sb_source *source = SB_NEW(run->pool, sb_source);
    *source = (sb_source){.name = sb_pool_copy(run->pool, name, strlen(name)), .text = text, .size = size};
    find_lines(run, source);
    return source;
}

const sb_source *sb_source_of(sb_run *run, const char *name, const char *text) {
    size_t size = strlen(text);
    const sb_source *source = make_source(run, name, sb_pool_copy(run->pool, text, size), size);
    return check_text(run, source) ? source : NULL;
}

/* ---- reading ------------------------------------------------------------------------------------ */

/* Closed when read; or with the run, when memory ran out in between. */
typedef struct reading {
    const char *path;
    FILE *file;
    char *text;
    size_t size, capacity;
} reading;

static void close_reading(void *thing) {
    reading *r = thing;
    if (r->file)
        fclose(r->file);
    r->file = NULL;
}

static bool cannot_read(sb_run *run, const reading *r, const char *reason) {
    sb_error(run, (sb_place){0}, "cannot read \"%s\": %s", r->path, reason);
    return false;
}

static bool open_reading(sb_run *run, reading *r) {
    struct stat status;
    sb_pool_defer(run->pool, close_reading, r);
    r->file = fopen(r->path, "rb");
    if (!r->file || fstat(fileno(r->file), &status) != 0)
        return cannot_read(run, r, strerror(errno));
    if (S_ISDIR(status.st_mode))
        return cannot_read(run, r, "it is a folder, a file was expected");
    return true;
}

static void keep_block(sb_run *run, reading *r, const char *block, size_t size) {
    while (r->capacity - r->size < size + 1)
        r->text = sb_pool_grow(run->pool, r->text, r->capacity, &r->capacity, 1);
    memcpy(r->text + r->size, block, size);
    r->size += size;
    r->text[r->size] = 0;
}

static bool read_all(sb_run *run, reading *r) {
    char block[8192];
    size_t got;
    keep_block(run, r, "", 0);
    while ((got = fread(block, 1, sizeof block, r->file)) > 0) {
        if (r->size + got > LARGEST)
            return cannot_read(run, r, "it is larger than 64 MiB");
        keep_block(run, r, block, got);
    }
    return ferror(r->file) ? cannot_read(run, r, strerror(errno)) : true;
}

static sb_source *read_source(sb_run *run, const char *path) {
    reading *r = SB_NEW(run->pool, reading);
    r->path = path;
    bool done = open_reading(run, r) && read_all(run, r);
    close_reading(r);
    return done ? make_source(run, path, r->text, r->size) : NULL;
}

static sb_source *read_before(const sb_run *run, const char *path) {
    sb_source *source = run->sources;
    while (source && strcmp(source->name, path) != 0)
        source = source->next;
    return source;
}

const sb_source *sb_source_read(sb_run *run, const char *path) {
    sb_source *source = read_before(run, path);
    if (!source && (source = read_source(run, path)) != NULL) {
        source->next = run->sources;
        run->sources = source;
    }
    return source && check_text(run, source) ? source : NULL;
}

/* ---- asking ------------------------------------------------------------------------------------- */

const char *sb_source_name(const sb_source *source) {
    return source->name;
}

const char *sb_source_text(const sb_source *source) {
    return source->text;
}

size_t sb_source_size(const sb_source *source) {
    return source->size;
}

sb_position sb_place_position(sb_place place) {
    if (!place.source)
        return (sb_position){.file = ""};
    size_t line = source_line(place.source, place.offset);
    size_t start = place.source->lines[line];
    return (sb_position){.file = place.source->name,
                         .line = line + 1,
                         .column = utf8_count(place.source->text + start, place.offset - start) + 1};
}

const char *sb_place_text(sb_run *run, sb_place place) {
    if (!place.source)
        return "";
    return sb_pool_copy(run->pool, place.source->text + place.offset, place.length);
}

sb_place sb_place_span(sb_place first, sb_place last) {
    if (!first.source)
        return last;
    if (last.source != first.source || last.offset < first.offset)
        return first;
    size_t first_end = first.offset + first.length, last_end = last.offset + last.length;
    first.length = (last_end > first_end ? last_end : first_end) - first.offset;
    return first;
}
