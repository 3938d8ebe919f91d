/* Spreadsheets through libxlsxwriter: the order of work, and what can go wrong with the file. */
#include "writers/xlsx.h"

#include <errno.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

/* ---- room on the disk ------------------------------------------------------------------------------- */

/* More than the workbook can take, its temporary files included. */
static size_t generous_size(const xlsx *x) {
    const sb_document *document = x->document;
    size_t size = 100000 + 2 * xlsx_pictures_size(x);
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_block *block = &document->sheets.items[s]->blocks.items[b];
            size += 2 * strlen(block->text) + 1000;
            const sb_table *table = block->kind == SB_BLOCK_TABLE ? block->table : NULL;
            for (size_t i = 0; table && i < table->rows.count * table->column_count; i++)
                size += 300 +
                        2 * strlen(table->rows.items[i / table->column_count][i % table->column_count].text);
        }
    return size;
}

static bool fill_file(FILE *file, size_t size) {
    static const char zeros[4096];
    for (size_t done = 0; done < size; done += sizeof zeros)
        if (fwrite(zeros, 1, sizeof zeros, file) != sizeof zeros)
            return false;
    return fflush(file) == 0;
}

/* The library prints its own messages when a file fails it, and never learns of a full disk under its
 * temporary files. So the room is asked for first, where both will stand, and a failure is told by us. */
static bool has_room(sb_run *run, const xlsx *x, const char *path) {
    FILE *file = fopen(path, "wb");
    bool filled = file && fill_file(file, generous_size(x));
    int reason = errno;
    bool closed = !file || fclose(file) == 0;
    if (filled && closed)
        return true;
    sb_fail(run, (sb_place){0}, "cannot write %s: %s", path, strerror(filled ? errno : reason));
    return false;
}

/* ---- the workbook ----------------------------------------------------------------------------------- */

static void release(void *thing) {
    xlsx *x = thing;
    if (x->workbook)
        lxw_workbook_free(x->workbook);
}

/* Temporary files stand beside the file itself, so that the room asked for is theirs too. */
static char *folder_of(sb_run *run, const char *path) {
    const char *slash = strrchr(path, '/');
    if (!slash)
        return sb_pool_print(run->pool, ".");
    return sb_pool_copy(run->pool, path, slash == path ? 1 : (size_t)(slash - path));
}

/* Columns are as wide as so many digits of the workbook's standard font. The library's own is missing on many machines,
 * and whatever stands in for it is wider: the page would be shrunk to fit. */
static void set_standard_font(xlsx *x) {
    lxw_format *standard = STAILQ_FIRST(x->workbook->formats);
    format_set_font_name(standard, XLSX_FONT);
    format_set_font_size(standard, XLSX_TEXT);
}

static bool open_workbook(xlsx *x, const char *path) {
    lxw_workbook_options options = {.tmpdir = folder_of(x->run, path)};
    x->workbook = workbook_new_opt(path, &options);
    sb_pool_defer(x->run->pool, release, x);
    if (!x->workbook)
        sb_fail(x->run, (sb_place){0}, "no memory left to write %s", path);
    else
        set_standard_font(x);
    return x->workbook != NULL;
}

/* The date is the document's, never today's; a document without one was made when zip files begin. */
static void set_properties(xlsx *x) {
    const sb_document *document = x->document;
    sb_date date = document->date.year ? document->date : (sb_date){1980, 1, 1};
    lxw_doc_properties properties = {.created = (time_t)(sb_date_days(date) * 86400)};
    if (properties.created == 0)
        properties.created = 1; /* 0 would mean now */
    properties.title = sb_pool_print(x->run->pool, "%s", clean_text(x->run, document->title));
    properties.author = sb_pool_print(x->run->pool, "%s", clean_text(x->run, document->author));
    workbook_set_properties(x->workbook, &properties);
}

/* Where a page begins in the middle of a sheet its worksheet is named after the heading it begins with. */
static const char *title_of(const xlsx_sheet *laid) {
    bool inside = laid->first > laid->sheet->blocks.items;
    return inside && laid->first->kind == SB_BLOCK_HEADING ? laid->first->text : laid->sheet->title;
}

static bool breaks(const sb_sheet *sheet, size_t block, sb_block_kind kind) {
    return block < sheet->blocks.count && sheet->blocks.items[block].kind == kind;
}

/* The next break of either kind from `block` on, or the sheet's end. */
static size_t next_break(const sb_sheet *sheet, size_t block) {
    while (block < sheet->blocks.count && !breaks(sheet, block, SB_BLOCK_PAGE_BREAK) &&
           !breaks(sheet, block, SB_BLOCK_ROOM_BREAK))
        block++;
    return block;
}

static bool lay_out_blocks(xlsx *x, const sb_sheet *sheet, size_t first, size_t end, xlsx_sheet *laid) {
    *laid = (xlsx_sheet){.sheet = sheet, .first = sheet->blocks.items + first, .block_count = end - first};
    laid->pictures = &x->pictures;
    return xlsx_lay_out(x->run, x->document, laid);
}

/* What goes on from the worksheet before has its name, with a number. */
static bool add_parts(xlsx *x, const xlsx_sheet *whole) {
    xlsx_sheets parts = xlsx_parts_of(x->run, x->document, whole);
    const char *title = whole->sheet->title;
    for (size_t i = 0; i < parts.count; i++) {
        xlsx_sheet *part = &parts.items[i];
        if (parts.count > 1 && !xlsx_lay_out(x->run, x->document, part))
            return false;
        if (part->block_count && part->rows_from == 0)
            title = title_of(part);
        part->name = xlsx_sheet_name(x->run, title, &x->sheets);
        SB_PUSH(x->run->pool, x->sheets, *part);
    }
    return true;
}

/* A worksheet from `first` on: it runs over breaks as long as all stands on one page. */
static bool lay_out_from(xlsx *x, const sb_sheet *sheet, size_t first, size_t *end) {
    xlsx_sheet laid, longer;
    *end = next_break(sheet, first);
    if (!lay_out_blocks(x, sheet, first, *end, &laid))
        return false;
    while (breaks(sheet, *end, SB_BLOCK_ROOM_BREAK) && xlsx_fits_page(x->document, &laid)) {
        size_t next = next_break(sheet, *end + 1);
        if (!lay_out_blocks(x, sheet, first, next, &longer))
            return false;
        if (!xlsx_fits_page(x->document, &longer))
            break;
        laid = longer;
        *end = next;
    }
    return add_parts(x, &laid);
}

/* Nothing between two breaks is no page; a sheet with nothing at all is an empty one. */
static bool lay_out_sheet(xlsx *x, const sb_sheet *sheet) {
    size_t end = 0;
    for (size_t first = 0; first < sheet->blocks.count; first = end + 1) {
        end = first;
        if (next_break(sheet, first) > first && !lay_out_from(x, sheet, first, &end))
            return false;
    }
    return sheet->blocks.count > 0 || lay_out_from(x, sheet, 0, &end);
}

static bool lay_out(xlsx *x) {
    for (size_t i = 0; i < x->document->sheets.count; i++)
        if (!lay_out_sheet(x, x->document->sheets.items[i]))
            return false;
    return true;
}

static void put_sheets(xlsx *x) {
    for (size_t i = 0; i < x->sheets.count; i++) {
        lxw_worksheet *worksheet = workbook_add_worksheet(x->workbook, x->sheets.items[i].name);
        if (!worksheet) {
            x->error = LXW_ERROR_MEMORY_MALLOC_FAILED;
            return;
        }
        xlsx_put_sheet(x, &x->sheets.items[i], worksheet);
        xlsx_set_page(x, &x->sheets.items[i], worksheet);
    }
}

/* The library prints numbers in the thread's locale, which may have a decimal comma. */
static lxw_error close_in_plain_locale(xlsx *x) {
    locale_t plain = newlocale(LC_NUMERIC_MASK, "C", (locale_t)0);
    locale_t before = plain ? uselocale(plain) : (locale_t)0;
    lxw_workbook *workbook = x->workbook;
    x->workbook = NULL; /* closing frees it */
    lxw_error error = workbook_close(workbook);
    if (plain) {
        uselocale(before);
        freelocale(plain);
    }
    return error;
}

bool sb_write_xlsx(sb_run *run, const sb_document *document, const char *path) {
    xlsx *x = SB_NEW(run->pool, xlsx);
    x->run = run;
    x->document = document;
    if (!sb_document_sound(run, document) || !xlsx_take_pictures(x) || !lay_out(x) ||
        !has_room(run, x, path) || !open_workbook(x, path))
        return false;
    set_properties(x);
    put_sheets(x);
    if (!x->error)
        x->error = close_in_plain_locale(x);
    if (x->error)
        sb_fail(run, (sb_place){0}, "cannot write %s: %s", path, lxw_strerror(x->error));
    return !x->error;
}
