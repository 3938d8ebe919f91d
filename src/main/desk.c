/* main/desk.c -- opening a job with its shop and recipes, and putting results down. */
#include "main/command.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

const char *path_join(sb_run *run, const char *folder, const char *name) {
    if (strcmp(folder, ".") == 0)
        return name;
    size_t length = strlen(folder);
    bool slash = length > 0 && folder[length - 1] == '/';
    return sb_pool_print(run->pool, "%s%s%s", folder, slash ? "" : "/", name);
}

const char *path_base(sb_run *run, const char *path, const char *ending) {
    const char *slash = strrchr(path, '/');
    const char *name = slash ? slash + 1 : path;
    size_t length = strlen(name), tail = strlen(ending);
    if (length > tail && strcmp(name + length - tail, ending) == 0)
        length -= tail;
    return sb_pool_copy(run->pool, name, length);
}

bool path_exists(const char *path) {
    struct stat status;
    return stat(path, &status) == 0;
}

bool path_is_folder(const char *path) {
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

const char *path_folder(sb_run *run, const char *path) {
    const char *slash = strrchr(path, '/');
    if (!slash)
        return ".";
    return slash == path ? "/" : sb_pool_copy(run->pool, path, (size_t)(slash - path));
}

static void use_units(sb_shop *shop, const char *units) {
    sb_style *style = &shop->settings.style;
    shop->settings.quote_units = SB_QUOTE_OWN;
    if (strcmp(units, "in") == 0 && style->units != SB_UNITS_IN)
        *style = (sb_style){SB_UNITS_IN, {SB_NM_PER_INCH / 32}, style->decimal_comma};
    if (strcmp(units, "mm") == 0 && style->units != SB_UNITS_MM)
        *style = (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 2}, style->decimal_comma};
}

sb_shop *desk_shop(sb_run *run, const sb_options *options, const char *home, const char *name) {
    const char *rates = path_join(run, home, "rates");
    if (name && *name)
        rates = path_join(run, rates, name);
    sb_shop *shop = sb_shop_read(run, rates);
    if (shop && options->units)
        use_units(shop, options->units);
    return shop;
}

/* The shop and its recipes, as far as they go. */
static void open_shop(sb_run *run, const sb_options *options, const char *job_path, const char *rates,
                      sb_place at, sb_desk *desk) {
    const char *home = sb_shop_find(run, job_path);
    if (!home) {
        sb_error(run, (sb_place){0},
                 "%s: no shop folder above it: a folder with rates/ and templates/ is wanted; 'sawbill start "
                 "DIR' makes one",
                 job_path);
        return;
    }
    const char *settings = path_join(run, path_join(run, path_join(run, home, "rates"), rates), "shop.txt");
    if (*rates && !path_exists(settings))
        sb_error(run, at, "these rates are not there: %s is wanted", settings);
    else
        desk->shop = desk_shop(run, options, home, rates);
    desk->templates = path_join(run, home, "templates");
    desk->book = sb_recipe_book_open(run, desk->templates, desk_comma(desk));
}

bool desk_comma(const sb_desk *desk) {
    return desk->shop && desk->shop->settings.style.decimal_comma;
}

/* What is asked on the command line goes before what the job says of its quote. */
static const sb_job *job_in_own_units(sb_run *run, const sb_job *job) {
    sb_job *asked = SB_NEW(run->pool, sb_job);
    *asked = *job;
    asked->quote_units = SB_QUOTE_OWN;
    return asked;
}

bool desk_open(sb_run *run, const sb_options *options, const char *job_path, sb_desk *desk) {
    size_t before = sb_notices_raised(run, SB_ERROR);
    sb_place at;
    if (strcmp(path_base(run, job_path, ".job"), path_base(run, job_path, "")) == 0) {
        /* NAME is its papers' folder */
        sb_error(run, (sb_place){0}, "%s: expected a job, called NAME.job", job_path);
        return false;
    }
    const char *rates = sb_job_rates(run, job_path, &at);
    if (sb_notices_raised(run, SB_ERROR) > before)
        return false;
    open_shop(run, options, job_path, rates, at, desk);
    bool comma = desk_comma(desk);
    desk->job = sb_job_read(run, job_path, comma);
    for (size_t i = 0; desk->job && i < options->sets.count; i++)
        desk->job = sb_job_with(run, desk->job, options->sets.items[i], comma);
    if (desk->job && options->units)
        desk->job = job_in_own_units(run, desk->job);
    desk->base = path_base(run, job_path, ".job");
    desk->folder = options->out ? options->out : path_join(run, path_folder(run, job_path), desk->base);
    return desk->job && desk->shop && sb_notices_raised(run, SB_ERROR) == before;
}

/* The job as if it had this option alone; NULL after an error. */
static const sb_job *job_with_option(sb_run *run, const sb_job *job, const char *name) {
    const char **names = SB_NEW_ARRAY(run->pool, const char *, job->options.count + 1);
    for (size_t i = 0; i < job->options.count; i++) {
        names[i] = job->options.items[i].name;
        if (strcmp(names[i], name) != 0)
            continue;
        sb_job *alone = SB_NEW(run->pool, sb_job);
        *alone = *job;
        alone->options.items = &job->options.items[i];
        alone->options.count = alone->options.capacity = 1;
        return alone;
    }
    sb_error_unknown(run, job->place, "option", name, names, job->options.count);
    return NULL;
}

/* A language that has no wording is blamed on the line that asks for it. */
const sb_wording *desk_wording(sb_run *run, const sb_desk *desk) {
    const char *language = desk->shop->settings.language;
    sb_notices_enter(run, sb_shop_setting(desk->shop, "language"),
                     sb_pool_print(run->pool, "the wording of the language \"%s\"", language));
    const sb_wording *wording = sb_wording_read(run, desk->templates, language);
    sb_notices_leave(run);
    return wording;
}

sb_tune desk_tune(sb_run *run, const sb_options *options, const sb_desk *desk) {
    const sb_watch *watch = watch_new(run, options, desk->shop->settings.currency.digits);
    return (sb_tune){.seconds = options->seconds, .watch = watch, .material_only = options->material_only};
}

const sb_ways *desk_ways(sb_run *run, const sb_options *options, sb_desk *desk) {
    if (!desk_open(run, options, options->words.items[0], desk))
        return NULL;
    if (options->option && !(desk->job = job_with_option(run, desk->job, options->option)))
        return NULL;
    sb_tune tune = desk_tune(run, options, desk);
    const sb_ways *ways = sb_ways_of(run, desk->shop, desk->book, desk->job, &tune);
    return sb_ok(run) ? ways : NULL;
}

bool output_failed(void) {
    bool failed = fflush(stdout) != 0 || ferror(stdout), closed = failed && errno == EPIPE;
    if (closed)
        clearerr(stdout);
    return failed && !closed;
}

void show(sb_run *run, const char *text) {
    fputs(text, stdout);
    if (output_failed())
        sb_fail(run, (sb_place){0}, "could not write to standard output");
}

void show_document(sb_run *run, const sb_options *options, const sb_document *document) {
    if (document && !options->quiet && sb_ok(run))
        show(run, sb_write_text(run, document, 80));
}

void show_record(sb_run *run, const sb_record *record) {
    if (record && sb_ok(run))
        show(run, sb_write_json(run, record));
}

bool file_xlsx(sb_run *run, sb_file_set *files, const char *name, const sb_document *document) {
    if (!files || !document || !sb_ok(run))
        return false;
    const char *path = sb_file_set_path(run, files, sb_pool_print(run->pool, "%s.xlsx", name));
    return path && sb_write_xlsx(run, document, path);
}

bool file_pdf(sb_run *run, sb_file_set *files, const char *name, const sb_document *document) {
    if (!files || !document || !sb_ok(run))
        return false;
    const char *path = sb_file_set_path(run, files, sb_pool_print(run->pool, "%s.pdf", name));
    return path && sb_write_pdf(run, document, path);
}

bool file_drawings(sb_run *run, sb_file_set *files, const char *name, const sb_document *document,
                   const char *format) {
    bool svg = strcmp(format, "svg") == 0, written = files && document && sb_ok(run);
    for (size_t i = 0; written && i < document->sheets.count; i++)
        for (size_t j = 0; written && j < document->sheets.items[i]->blocks.count; j++) {
            const sb_drawing *drawing = document->sheets.items[i]->blocks.items[j].drawing;
            if (!drawing || !*drawing->name)
                continue;
            const char *path = sb_file_set_path(
                run, files, sb_pool_print(run->pool, "%s-%s.%s", name, drawing->name, svg ? "svg" : "png"));
            written = path && (svg ? sb_write_svg : sb_write_png)(run, drawing, path);
        }
    return written;
}

bool out_xlsx(sb_run *run, const sb_options *options, const char *name, const sb_document *document) {
    if (!options->out || !document)
        return sb_ok(run);
    sb_file_set *files = sb_file_set_new(run, options->out);
    return file_xlsx(run, files, name, document) && sb_file_set_keep(run, files);
}

static const sb_table *first_table(const sb_document *document) {
    for (size_t i = 0; i < document->sheets.count; i++)
        for (size_t j = 0; j < document->sheets.items[i]->blocks.count; j++)
            if (document->sheets.items[i]->blocks.items[j].kind == SB_BLOCK_TABLE)
                return document->sheets.items[i]->blocks.items[j].table;
    return NULL;
}

bool file_csv(sb_run *run, sb_file_set *files, const char *name, const sb_document *document) {
    const sb_table *table = document ? first_table(document) : NULL;
    if (!files || !table || !sb_ok(run))
        return false;
    size_t size = 0;
    const char *bytes = sb_write_csv(run, document, table, &size);
    return bytes && sb_file_set_write(run, files, sb_pool_print(run->pool, "%s.csv", name), bytes, size);
}
