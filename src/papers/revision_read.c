/* Reading what was kept of an estimate. What is missing or damaged is told and no obstacle: a quote goes out without its list of
 * changes. */
#include "papers/revision.h"

#include <jansson.h>
#include <string.h>

static const char *text_of(sb_run *run, const json_t *in, const char *key) {
    const char *text = json_string_value(json_object_get(in, key));
    return text ? sb_pool_print(run->pool, "%s", text) : NULL;
}

static bool kind_of(const char *word, sb_cell_kind *out) {
    static const sb_cell_kind kinds[] = {SB_CELL_MONEY, SB_CELL_COUNT, SB_CELL_SHARE, SB_CELL_DURATION};
    for (size_t i = 0; word && i < sizeof kinds / sizeof *kinds; i++)
        if (strcmp(word, revision_kind_word(kinds[i])) == 0) {
            *out = kinds[i];
            return true;
        }
    return false;
}

static bool read_figure(sb_run *run, const json_t *from, kept_figures *figures) {
    kept_figure figure = {.option = text_of(run, from, "option"), .name = text_of(run, from, "figure")};
    const json_t *amount = json_object_get(from, "amount");
    if (!figure.option || !figure.name || !json_is_integer(amount) ||
        !kind_of(json_string_value(json_object_get(from, "kind")), &figure.kind))
        return false;
    figure.amount = json_integer_value(amount);
    SB_PUSH(run->pool, *figures, figure);
    return true;
}

static bool read_all(sb_run *run, const json_t *root, sb_stored *out) {
    const json_t *figures = json_object_get(root, "figures");
    *out = (sb_stored){.revision = text_of(run, root, "revision"),
                       .date = text_of(run, root, "date"),
                       .currency = text_of(run, root, "currency")};
    bool whole = out->date && out->currency && json_is_array(figures);
    for (size_t i = 0; whole && i < json_array_size(figures); i++)
        whole = read_figure(run, json_array_get(figures, i), &out->figures);
    return whole;
}

const sb_stored *sb_stored_read(sb_run *run, const char *path, const sb_shop *shop, const sb_job *job) {
    json_error_t error;
    json_t *root = json_load_file(path, JSON_REJECT_DUPLICATES, &error);
    sb_stored *stored = SB_NEW(run->pool, sb_stored);
    if (!root && error.line <= 0)
        sb_advise(run, job->place, "no list of what has changed: the estimate before is not there, %s", path);
    else if (!root)
        sb_advise(run, job->place, "no list of what has changed: %s is damaged in line %d, column %d: %s",
                  path, error.line, error.column, error.text);
    else if (!read_all(run, root, stored))
        sb_advise(run, job->place, "no list of what has changed: %s is not what was stored of an estimate",
                  path);
    else if (strcmp(stored->currency, shop->settings.currency.code) != 0)
        sb_advise(run, job->place, "no list of what has changed: %s is in %s, this job in %s", path,
                  stored->currency, shop->settings.currency.code);
    else {
        json_decref(root);
        return stored;
    }
    json_decref(root);
    return NULL;
}

/* B before C, 2 before 3. */
const char *sb_revision_before(sb_run *run, const char *revision) {
    size_t length = strlen(revision);
    int64_t number = 0;
    if (length == 1 &&
        ((revision[0] > 'A' && revision[0] <= 'Z') || (revision[0] > 'a' && revision[0] <= 'z')))
        return sb_pool_print(run->pool, "%c", revision[0] - 1);
    if (length > 6 || strspn(revision, "0123456789") != length)
        return NULL;
    for (const char *digit = revision; *digit; digit++)
        number = 10 * number + (*digit - '0');
    return number > 1 ? sb_pool_print(run->pool, "%lld", (long long)(number - 1)) : NULL;
}
