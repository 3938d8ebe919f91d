/* A set of files that appears as a whole: written beside under other names, renamed at the end. */
#include "sawbill/text.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct entry {
    const char *final, *temporary, *aside; /* the old file waits under `aside` while we rename */
    bool had_old, moved;
} entry;

struct sb_file_set {
    const char *folder;
    struct {
        const char **items;
        size_t count, capacity;
    } made; /* folders that were not there before, outermost first */
    struct {
        entry *items;
        size_t count, capacity;
    } files;
    bool kept;
};

static bool failed(sb_run *run, const char *what, const char *path, int error) {
    sb_fail(run, (sb_place){0}, "cannot %s \"%s\": %s", what, path, strerror(error));
    return false;
}

/* ---- the folder ------------------------------------------------------------------------------------- */

/* What was not kept leaves no trace. */
static void clean_up(void *thing) {
    sb_file_set *set = thing;
    if (set->kept)
        return;
    for (size_t i = 0; i < set->files.count; i++)
        unlink(set->files.items[i].temporary);
    for (size_t i = set->made.count; i > 0; i--)
        rmdir(set->made.items[i - 1]);
}

static bool is_folder(const char *path) {
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

static bool make_folder(sb_run *run, sb_file_set *set, const char *path) {
    if (mkdir(path, 0777) == 0) {
        SB_PUSH(run->pool, set->made, path);
        return true;
    }
    int error = errno;
    return is_folder(path) ? true : failed(run, "make the folder", path, error == EEXIST ? ENOTDIR : error);
}

static bool make_folders(sb_run *run, sb_file_set *set) {
    for (const char *at = set->folder + 1; *at; at++)
        if (*at == '/' && at[-1] != '/')
            if (!make_folder(run, set, sb_pool_copy(run->pool, set->folder, (size_t)(at - set->folder))))
                return false;
    return make_folder(run, set, set->folder);
}

sb_file_set *sb_file_set_new(sb_run *run, const char *folder) {
    sb_file_set *set = SB_NEW(run->pool, sb_file_set);
    set->folder = *folder ? sb_pool_copy(run->pool, folder, strlen(folder)) : ".";
    sb_pool_defer(run->pool, clean_up, set);
    return make_folders(run, set) ? set : NULL;
}

/* ---- writing ---------------------------------------------------------------------------------------- */

/* Creates an empty file that no other run uses; the number makes its name ours. */
static int create_temporary(sb_run *run, const sb_file_set *set, const char *name, entry *e) {
    int handle = -1;
    for (int number = 0; handle < 0 && number < 1000; number++) {
        e->temporary =
            sb_pool_print(run->pool, "%s/.%s.%ld-%d.new", set->folder, name, (long)getpid(), number);
        e->aside = sb_pool_print(run->pool, "%s/.%s.%ld-%d.old", set->folder, name, (long)getpid(), number);
        handle = open(e->temporary, O_WRONLY | O_CREAT | O_EXCL, 0666);
        if (handle < 0 && errno != EEXIST)
            break;
    }
    return handle;
}

static int add_file(sb_run *run, sb_file_set *set, const char *name) {
    if (!*name || strchr(name, '/')) {
        sb_bug(run, (sb_place){0}, "\"%s\" is no name for a file of a set", name);
        return -1;
    }
    entry e = {.final = sb_pool_print(run->pool, "%s/%s", set->folder, name)};
    SB_PUSH(run->pool, set->files, (entry){.temporary = ""}); /* there is room before there is a file */
    int handle = create_temporary(run, set, name, &e);
    if (handle >= 0) {
        set->files.items[set->files.count - 1] = e;
    } else {
        set->files.count--;
        failed(run, "write", e.final, errno);
    }
    return handle;
}

const char *sb_file_set_path(sb_run *run, sb_file_set *set, const char *name) {
    int handle = add_file(run, set, name);
    if (handle < 0)
        return NULL;
    close(handle);
    return set->files.items[set->files.count - 1].temporary;
}

/* Some file systems cannot sync; that is no reason to refuse. */
static bool synced(int handle) {
    return fsync(handle) == 0 || errno == EINVAL || errno == ENOTSUP || errno == EROFS;
}

bool sb_file_set_write(sb_run *run, sb_file_set *set, const char *name, const char *bytes, size_t size) {
    int handle = add_file(run, set, name);
    if (handle < 0)
        return false;
    const char *final = set->files.items[set->files.count - 1].final;
    FILE *file = fdopen(handle, "wb");
    if (!file) {
        close(handle);
        return failed(run, "write", final, ENOMEM);
    }
    bool written = fwrite(bytes, 1, size, file) == size && fflush(file) == 0 && synced(fileno(file));
    int error = errno;
    if (fclose(file) != 0 && written) {
        written = false;
        error = errno;
    }
    return written ? true : failed(run, "write", final, error);
}

/* ---- keeping ---------------------------------------------------------------------------------------- */

/* The last chance to hear of a full disk from a file that somebody else wrote. */
static bool settle(sb_run *run, const entry *e) {
    int handle = open(e->temporary, O_RDONLY);
    if (handle < 0)
        return failed(run, "write", e->final, errno);
    bool done = synced(handle);
    int error = errno;
    close(handle);
    return done ? true : failed(run, "write", e->final, error);
}

/* A second name for the old file leaves the final name in place all the time; where a file system has
 * no second names, the old file moves aside. */
static bool put_aside(entry *e) {
    struct stat status;
    if (lstat(e->final, &status) != 0)
        return errno == ENOENT;
    if (S_ISDIR(status.st_mode)) {
        errno = EISDIR;
        return false;
    }
    e->had_old = link(e->final, e->aside) == 0 || rename(e->final, e->aside) == 0;
    return e->had_old;
}

static bool move_in(sb_run *run, entry *e) {
    if (put_aside(e) && rename(e->temporary, e->final) == 0) {
        e->moved = true;
        return true;
    }
    return failed(run, "replace", e->final, errno);
}

static void put_back(sb_run *run, entry *e) {
    if (e->had_old && rename(e->aside, e->final) != 0)
        failed(run, "put back", e->final, errno);
    if (!e->had_old && e->moved)
        unlink(e->final);
    unlink(e->aside); /* renaming onto a second name of the same file leaves both */
}

static void sync_folder(const char *folder) {
    int handle = open(folder, O_RDONLY);
    if (handle >= 0) {
        fsync(handle);
        close(handle);
    }
}

bool sb_file_set_keep(sb_run *run, sb_file_set *set) {
    size_t count = set->files.count, done = 0;
    if (!sb_ok(run))
        return false;
    for (size_t i = 0; i < count; i++)
        if (!settle(run, &set->files.items[i]))
            return false;
    while (done < count && move_in(run, &set->files.items[done]))
        done++;
    if (done < count) {
        for (size_t i = done + 1; i > 0; i--)
            put_back(run, &set->files.items[i - 1]);
        return false;
    }
    for (size_t i = 0; i < count; i++)
        if (set->files.items[i].had_old)
            unlink(set->files.items[i].aside);
    sync_folder(set->folder);
    set->kept = true;
    return true;
}
