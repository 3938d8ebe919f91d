/* Memory of a run: chunks that only grow, freed together. */
#include "sawbill/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Under the address sanitizer every allocation gets a chunk of its own, so that overruns show. */
#ifdef __SANITIZE_ADDRESS__
enum {
    CHUNK_SIZE = 1,
    STEP = 1
};
#else
enum {
    CHUNK_SIZE = 64 * 1024,
    STEP = _Alignof(max_align_t)
};
#endif

typedef struct chunk {
    struct chunk *next;
    size_t size, used;
    max_align_t bytes[];
} chunk;

typedef struct deferred {
    struct deferred *next;
    void (*release)(void *thing);
    void *thing;
} deferred;

typedef struct rescue {
    jmp_buf jump;
    struct rescue *outer;
} rescue;

struct sb_pool {
    chunk *chunks;
    deferred *deferred;
    rescue *rescue; /* where to go when memory runs out; NULL outside of sb_pool_run */
    size_t taken, limit;
};

sb_pool *sb_pool_new(void) {
    return calloc(1, sizeof(sb_pool));
}

void sb_pool_free(sb_pool *pool) {
    if (!pool)
        return;
    for (deferred *d = pool->deferred; d; d = d->next)
        d->release(d->thing);
    for (chunk *c = pool->chunks, *next; c; c = next) {
        next = c->next;
        free(c);
    }
    free(pool);
}

void sb_pool_limit(sb_pool *pool, size_t bytes) {
    pool->limit = bytes;
}

bool sb_pool_run(sb_pool *pool, void (*work)(void *context), void *context) {
    rescue here = {.outer = pool->rescue};
    pool->rescue = &here;
    if (setjmp(here.jump) != 0) {
        pool->rescue = here.outer;
        return false;
    }
    work(context);
    pool->rescue = here.outer;
    return true;
}

static void *out_of_memory(sb_pool *pool) {
    if (pool->rescue)
        longjmp(pool->rescue->jump, 1);
    return NULL;
}

static bool add_chunk(sb_pool *pool, size_t wanted) {
    size_t size = wanted > CHUNK_SIZE ? wanted : CHUNK_SIZE;
    size_t whole = sizeof(chunk) + size;
    if (pool->limit && (whole > pool->limit || pool->taken > pool->limit - whole))
        return false;
    chunk *fresh = calloc(1, whole);
    if (!fresh)
        return false;
    *fresh = (chunk){.next = pool->chunks, .size = size};
    pool->chunks = fresh;
    pool->taken += whole;
    return true;
}

/* NULL when there is none; memory of a chunk is zero until handed out. */
static void *try_alloc(sb_pool *pool, size_t size) {
    if (size > SIZE_MAX / 2)
        return NULL;
    size_t rounded = size ? (size + STEP - 1) / STEP * STEP : STEP;
    if (!pool->chunks || pool->chunks->size - pool->chunks->used < rounded)
        if (!add_chunk(pool, rounded))
            return NULL;
    void *found = (char *)pool->chunks->bytes + pool->chunks->used;
    pool->chunks->used += rounded;
    return found;
}

void *sb_pool_alloc(sb_pool *pool, size_t size) {
    void *found = try_alloc(pool, size);
    return found ? found : out_of_memory(pool);
}

void *sb_pool_alloc_array(sb_pool *pool, size_t count, size_t size) {
    if (size && count > SIZE_MAX / size)
        return out_of_memory(pool);
    return sb_pool_alloc(pool, count * size);
}

char *sb_pool_copy(sb_pool *pool, const char *bytes, size_t size) {
    char *copy = size < SIZE_MAX ? sb_pool_alloc(pool, size + 1) : out_of_memory(pool);
    if (copy && size)
        memcpy(copy, bytes, size);
    return copy;
}

char *sb_pool_print(sb_pool *pool, const char *format, ...) {
    va_list arguments, again;
    va_start(arguments, format);
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    char *text = length < 0 ? out_of_memory(pool) : sb_pool_alloc(pool, (size_t)length + 1);
    if (text)
        vsnprintf(text, (size_t)length + 1, format, again);
    va_end(again);
    return text;
}

void sb_pool_defer(sb_pool *pool, void (*release)(void *thing), void *thing) {
    deferred *d = try_alloc(pool, sizeof *d);
    if (!d) {
        release(thing);
        out_of_memory(pool);
        return;
    }
    *d = (deferred){.next = pool->deferred, .release = release, .thing = thing};
    pool->deferred = d;
}

void *sb_pool_grow(sb_pool *pool, void *items, size_t count, size_t *capacity, size_t item_size) {
    if (count < *capacity)
        return items;
    if (*capacity > SIZE_MAX / 2)
        return out_of_memory(pool);
    size_t wanted = *capacity ? *capacity * 2 : 8;
    void *grown = sb_pool_alloc_array(pool, wanted, item_size);
    if (!grown)
        return NULL;
    if (count)
        memcpy(grown, items, count * item_size);
    *capacity = wanted;
    return grown;
}
