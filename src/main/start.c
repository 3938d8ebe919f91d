/* main/start.c -- a new shop folder: rates, templates and a first job, copied from the set that came with the
 * program. */
#include "main/command.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The installed share folder beside the program, or the project's own folder when run from its build. */
static const char *share_folder(sb_run *run) {
    char program[4096];
    ssize_t length = readlink("/proc/self/exe", program, sizeof program - 1);
    program[length > 0 ? length : 0] = '\0';
    const char *folder = path_folder(run, program);
    const char *candidates[] = {path_join(run, folder, "../share/sawbill"), path_join(run, folder, ".."),
                                path_join(run, folder, "../.."), SAWBILL_PREFIX "/share/sawbill"};
    for (size_t i = 0; i < sizeof candidates / sizeof *candidates; i++)
        if (path_exists(path_join(run, candidates[i], "rates/shop.txt")) &&
            path_exists(path_join(run, candidates[i], "templates")))
            return candidates[i];
    sb_fail(run, (sb_place){0},
            "the rates and templates that came with sawbill are not where it was installed");
    return NULL;
}

static bool copy_file(sb_run *run, sb_file_set *files, const char *from, const char *name) {
    FILE *file = fopen(from, "rb");
    if (!file) {
        sb_fail(run, (sb_place){0}, "%s: %s", from, strerror(errno));
        return false;
    }
    SB_LIST(char) bytes = {0};
    char buffer[4096];
    for (size_t got; (got = fread(buffer, 1, sizeof buffer, file)) > 0;)
        for (size_t i = 0; i < got; i++)
            SB_PUSH(run->pool, bytes, buffer[i]);
    bool read = !ferror(file);
    fclose(file);
    if (!read)
        sb_fail(run, (sb_place){0}, "%s: could not be read", from);
    return read && sb_file_set_write(run, files, name, bytes.items ? bytes.items : "", bytes.count);
}

/* Plain files only; folders below (another set of rates) stay behind. */
static bool copy_folder(sb_run *run, const char *from, const char *to) {
    DIR *folder = opendir(from);
    sb_file_set *files = folder ? sb_file_set_new(run, to) : NULL;
    if (!files) {
        if (folder)
            closedir(folder);
        else
            sb_fail(run, (sb_place){0}, "%s: %s", from, strerror(errno));
        return false;
    }
    bool copied = true;
    for (struct dirent *entry; copied && (entry = readdir(folder)) != NULL;) {
        const char *path = path_join(run, from, entry->d_name);
        struct stat status;
        if (entry->d_name[0] != '.' && stat(path, &status) == 0 && S_ISREG(status.st_mode))
            copied = copy_file(run, files, path, entry->d_name);
    }
    closedir(folder);
    return copied && sb_file_set_keep(run, files);
}

/* Both sets of rates share one manual. */
static bool copy_manual(sb_run *run, const char *share, const char *making) {
    sb_file_set *files = sb_file_set_new(run, path_join(run, making, "rates"));
    return files && copy_file(run, files, path_join(run, share, "rates/README.md"), "README.md") &&
           sb_file_set_keep(run, files);
}

static const char metric_job[] = "# A first job: change it, then run  sawbill quote jobs/first.job\n"
                                 "job       first\n"
                                 "title     Two trough planters\n"
                                 "date      2026-03-02\n"
                                 "customer  A first customer\n"
                                 "\n"
                                 "piece     trough : Long trough\n"
                                 "  recipe  trough-planter\n"
                                 "  count   2\n"
                                 "  set     long   1200 mm\n";
static const char imperial_job[] = "# A first job: change it, then run  sawbill quote jobs/first.job\n"
                                   "job       first\n"
                                   "title     One workbench\n"
                                   "date      2026-03-02\n"
                                   "customer  A first customer\n"
                                   "\n"
                                   "piece     bench : Workbench for the garage\n"
                                   "  recipe  workbench\n"
                                   "  count   1\n"
                                   "  set     long   6 ft\n";

static bool write_job(sb_run *run, const char *folder, const char *text) {
    sb_file_set *files = sb_file_set_new(run, folder);
    return files && sb_file_set_write(run, files, "first.job", text, strlen(text)) &&
           sb_file_set_keep(run, files);
}

static void tell_folder(sb_run *run, const sb_options *options, const char *home) {
    if (options->json) {
        sb_record *record = sb_record_object(run);
        sb_put_text(run, record, "folder", home);
        sb_put_text(run, record, "rates", path_join(run, home, "rates"));
        sb_put_text(run, record, "templates", path_join(run, home, "templates"));
        sb_put_text(run, record, "first_job", path_join(run, home, "jobs/first.job"));
        show_record(run, record);
    } else if (!options->quiet) {
        show(run, sb_pool_print(
                      run->pool,
                      "%s/ is a shop now:\n"
                      "  rates/      what things cost and how long they take: put your own figures there\n"
                      "  templates/  recipes to start from, and how to write your own (README.md)\n"
                      "  jobs/       a first job\n"
                      "Try:\n"
                      "  sawbill quote %s/jobs/first.job\n",
                      home, home));
    }
}

int command_start(sb_run *run, const sb_options *options) {
    const char *home = options->words.items[0];
    if (path_exists(home)) {
        sb_error(run, (sb_place){0}, "%s: is there already; a new folder is wanted", home);
        return STATUS_WRONG_INPUT;
    }
    const char *share = share_folder(run);
    if (!share)
        return STATUS_SYSTEM;
    bool inches = options->units && strcmp(options->units, "in") == 0;
    /* Everything goes into a folder beside, which then takes the name: a failure leaves no half of a shop. */
    const char *making = sb_pool_print(run->pool, "%s.new", home);
    if (!copy_folder(run, path_join(run, share, inches ? "rates/imperial" : "rates"),
                     path_join(run, making, "rates")) ||
        (inches && !copy_manual(run, share, making)) ||
        !copy_folder(run, path_join(run, share, "templates"), path_join(run, making, "templates")) ||
        !write_job(run, path_join(run, making, "jobs"), inches ? imperial_job : metric_job))
        return STATUS_SYSTEM;
    if (rename(making, home) != 0) {
        sb_fail(run, (sb_place){0}, "%s: %s", home, strerror(errno));
        return STATUS_SYSTEM;
    }
    tell_folder(run, options, home);
    return STATUS_DONE;
}
