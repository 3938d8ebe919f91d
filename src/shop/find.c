/* Finding things: the shop's folder from a file in it, stock and operations by name. */
#include "shop/read.h"

#include <string.h>
#include <sys/stat.h>

/* ---- the folder ---- */

static bool is_folder(const char *path) {
    struct stat info;
    return stat(path, &info) == 0 && S_ISDIR(info.st_mode);
}

static bool holds_shop(sb_run *run, const char *folder) {
    return is_folder(sb_pool_print(run->pool, "%s/rates", folder)) &&
           is_folder(sb_pool_print(run->pool, "%s/templates", folder));
}

static bool at_root(sb_run *run, const char *folder) {
    struct stat here, above;
    return stat(folder, &here) == 0 && stat(sb_pool_print(run->pool, "%s/..", folder), &above) == 0 &&
           here.st_ino == above.st_ino && here.st_dev == above.st_dev;
}

static bool ends_in_dots(const char *path, size_t length) {
    size_t start = length;
    while (start > 0 && path[start - 1] != '/')
        start--;
    return strcmp(path + start, ".") == 0 || strcmp(path + start, "..") == 0;
}

/* The folder above, in the words of the path as it was given: "jobs/a.job" gives "jobs", then ".", then
 * "./..". */
static const char *folder_above(sb_run *run, const char *path) {
    size_t length = strlen(path);
    if (ends_in_dots(path, length))
        return sb_pool_print(run->pool, "%s/..", path);
    while (length > 0 && path[length - 1] != '/')
        length--;
    if (length == 0)
        return ".";
    while (length > 1 && path[length - 1] == '/')
        length--;
    return sb_pool_copy(run->pool, path, length);
}

static const char *without_slashes(sb_run *run, const char *path) {
    size_t length = strlen(path);
    while (length > 1 && path[length - 1] == '/')
        length--;
    return length ? sb_pool_copy(run->pool, path, length) : ".";
}

const char *sb_shop_find(sb_run *run, const char *path) {
    const char *folder = without_slashes(run, path);
    while (!holds_shop(run, folder)) {
        if (at_root(run, folder) || strlen(folder) > 65536)
            return NULL;
        folder = folder_above(run, folder);
    }
    return folder;
}

/* ---- by name ---- */

static const char *replaced(const sb_shop *shop, const char *id) {
    for (size_t i = 0; i < shop->settings.replacements.count; i++)
        if (strcmp(shop->settings.replacements.items[i].asked, id) == 0)
            return shop->settings.replacements.items[i].taken;
    return id;
}

const sb_stock *sb_shop_stock(const sb_shop *shop, const char *id) {
    return shop_stock_itself(shop, replaced(shop, id));
}

const sb_stock *shop_stock_itself(const sb_shop *shop, const char *id) {
    for (size_t i = 0; i < shop->stock.count; i++)
        if (strcmp(shop->stock.items[i]->id, id) == 0)
            return shop->stock.items[i];
    return NULL;
}

const sb_operation *sb_shop_operation(const sb_shop *shop, const char *id) {
    for (size_t i = 0; i < shop->operations.count; i++)
        if (strcmp(shop->operations.items[i].id, id) == 0)
            return &shop->operations.items[i];
    return NULL;
}

const sb_operation *sb_shop_driven(const sb_shop *shop, sb_driver driver) {
    for (size_t i = 0; i < shop->operations.count; i++)
        if (shop->operations.items[i].driver == driver)
            return &shop->operations.items[i];
    return NULL;
}

const sb_tax *sb_shop_tax(const sb_shop *shop, const char *id) {
    for (size_t i = 0; i < shop->settings.taxes.count; i++)
        if (!id || strcmp(shop->settings.taxes.items[i].id, id) == 0)
            return &shop->settings.taxes.items[i];
    return NULL;
}

void sb_shop_unknown_stock(sb_run *run, const sb_shop *shop, sb_place at, const char *id) {
    const char **known = SB_NEW_ARRAY(run->pool, const char *, shop->stock.count);
    for (size_t i = 0; i < shop->stock.count; i++)
        known[i] = shop->stock.items[i]->id;
    sb_error_unknown(run, at, "stock", id, known, shop->stock.count);
}

void sb_shop_unknown_operation(sb_run *run, const sb_shop *shop, sb_place at, const char *id) {
    const char **known = SB_NEW_ARRAY(run->pool, const char *, shop->operations.count);
    for (size_t i = 0; i < shop->operations.count; i++)
        known[i] = shop->operations.items[i].id;
    sb_error_unknown(run, at, "operation", id, known, shop->operations.count);
}
