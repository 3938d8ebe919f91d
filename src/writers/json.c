/* JSON through jansson. */
#include "sawbill/writers.h"

#include "writers/glyphs.h"

#include <jansson.h>
#include <math.h>

/* 15 significant digits: every decimal of so many comes out as it went in, 19.05 and not 19.050000000000001.
 */
static const size_t json_flags = JSON_INDENT(2) | JSON_REAL_PRECISION(15) | JSON_ENCODE_ANY;

/* jansson refuses what is not UTF-8; such text (a file's name, say) goes out with replacement characters. */
static json_t *text_value(sb_run *run, const char *text) {
    json_t *value = json_string(text);
    return value ? value : json_string(clean_text(run, text));
}

/* Objects and arrays come empty. */
static json_t *value_of(sb_run *run, const sb_record *record) {
    switch (record->kind) {
    case SB_RECORD_OBJECT:
        return json_object();
    case SB_RECORD_ARRAY:
        return json_array();
    case SB_RECORD_TEXT:
        return text_value(run, record->text);
    case SB_RECORD_NUMBER:
        return isfinite(record->number) ? json_real(record->number) : json_null();
    case SB_RECORD_INTEGER:
        return json_integer(record->integer);
    case SB_RECORD_TRUTH:
        return json_boolean(record->truth);
    case SB_RECORD_NULL:
        break;
    }
    return json_null();
}

/* Each value belongs to its parent, and so to the root, before anything else is asked of the pool. */
static bool fill(sb_run *run, json_t *into, const sb_record *record) {
    for (const sb_record *item = record->first; item; item = item->next) {
        if (json_object_get(into, item->key)) {
            sb_bug(run, (sb_place){0}, "the key \"%s\" stands twice in one object", item->key);
            return false;
        }
        json_t *value = value_of(run, item);
        int status = json_is_array(into) ? json_array_append_new(into, value)
                                         : json_object_set_new(into, item->key, value);
        if (status != 0 || !fill(run, value, item))
            return false;
    }
    return true;
}

static void release(void *value) {
    json_decref(value);
}

const char *sb_write_json(sb_run *run, const sb_record *record) {
    json_t *root = value_of(run, record);
    if (root)
        sb_pool_defer(run->pool, release, root);
    if (!root || !fill(run, root, record)) {
        if (sb_ok(run))
            sb_fail(run, (sb_place){0}, "no memory left to write the results");
        return "";
    }
    size_t size = json_dumpb(root, NULL, 0, json_flags);
    char *text = sb_pool_alloc(run->pool, size + 2);
    json_dumpb(root, text, size, json_flags);
    text[size] = '\n';
    return text;
}
