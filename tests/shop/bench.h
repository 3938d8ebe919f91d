/* What every shop test works at: a small shop in a folder of its own, in which a test spoils one thing. */
#ifndef TESTS_SHOP_BENCH_H
#define TESTS_SHOP_BENCH_H

#include "sawbill/shop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

typedef struct bench {
    sb_run run;
    char folder[512];
} bench;

static const char *const bench_files[] = {"shop.txt",  "grades.csv", "operations.csv",
                                          "stock.csv", "prices.csv", "rack.csv",
                                          "measured.csv"};
enum {
    BENCH_FILES = sizeof bench_files / sizeof *bench_files
};

static const char *const bench_texts[BENCH_FILES] = {
    "shop        Test bench\n"
    "address     1 Plain Street\n"
    "address     Nowhere\n"
    "contact     bench@test.example\n"
    "currency    EUR\n"
    "units       mm step 0.5 mm\n"
    "saw crosscut\n"
    "  kerf      3 mm\n"
    "  trim      10 mm\n"
    "  mitre     50 deg left 60 deg right\n"
    "  bevel     45 deg left\n"
    "saw rip\n"
    "  kerf      2.8 mm\n"
    "saw panel\n"
    "  kerf      2.8 mm\n"
    "  trim      8 mm\n"
    "  stages    2 with trimming\n"
    "  first     crosscut\n"
    "  smallest-strip 40 mm\n"
    "leftover    board 600 mm\n"
    "leftover    sheet 600 mm by 300 mm\n"
    "leftover    value 60 % of new\n"
    "vehicle     4.8 m\n"
    "planing     3 mm\n"
    "short       300 mm\n"
    "worker      bench 42.00 per hour\n"
    "worker      office 38.50 per hour\n"
    "overhead    14.00 per hour\n"
    "contingency 5 % of cost\n"
    "margin      25 % of price\n"
    "charge      bought less leftovers\n"
    "tax         standard 21 % of net : VAT\n"
    "tax         none 0 % of net : No VAT\n"
    "prices      gross\n"
    "tax-rounding line\n"
    "price-point 0.05\n"
    "validity    30 days\n"
    "deposit     40 % of total\n"
    "price-age   180 days\n"
    "week        30 h\n"
    "lead        5 days\n"
    "discounts   hidden\n",

    "grade,title,defect,basis\n"
    "outdoor,Outdoor larch,5 %,added-to-net\n"
    "rough,Rough oak,30 %,lost-of-bought\n"
    "clear,Clear wood,,\n",

    "operation,title,minutes,per,worker,always\n"
    "crosscut,Crosscut,0.35,cut,,\n"
    "assemble,Assembly,1,each,bench,\n"
    "office,Office work,45,batch,office,yes\n",

    "stock,title,kind,material,grade,thickness,width,nominal_thickness,nominal_width,surface,density,"
    "coverage,spread,minimum\n"
    "slat,Larch slat,board,larch,outdoor,20,95,,,planed,590,,,6\n"
    "2x4-fir,2x4,board,fir,,1 1/2 in,3 1/2 in,2 in,4 in,planed,530,,,\n"
    "oak-sawn,Sawn oak,board,oak,rough,32,180,,,sawn,710,,,\n"
    "oak-random,Random oak,volume,oak,rough,27,,,,sawn,710,,,\n"
    "ply-18,Plywood,sheet,plywood,,18,,,,,560,,,\n"
    "screw,Screw 5 x 60,fixing,,,,,,,,,,,200\n"
    "oil,Deck oil,finish,,,,,,,,,12 m2/l,,1.5 l\n"
    "glue,Wood glue,glue,,,,,,,,1100,,180 g/m2,\n"
    "edging,Oak edging,edging,oak,,0.5,22,,,,,,,\n"
    "disc,Abrasive disc,other,,,,,,,,,,,\n",

    "stock,merchant,length,width,price,per,pack,available,date,trim1,trim2\n"
    "slat,North,3 m,,7.65,each,,,2026-01-12,,\n"
    "slat,North,3.6 m,,9.20,each,,,2026-01-12,,\n"
    "slat,South,3 m,,7.45,each,,24,2026-01-19,,\n"
    "2x4-fir,North,8 ft,,1.00,bf,,,,,\n"
    "oak-sawn,North,2.4 m,,100.00,m2,,,,40 mm,0\n"
    "oak-random,North,,,2650.00,m3,,,,,\n"
    "ply-18,South,2500,1250,78.00,each,,,,,\n"
    "ply-18,South,1250,600,21.90,each,,,,,\n"
    "screw,Iron,,,23.50,pack,200,,,,\n"
    "oil,Iron,,,62.00,pack,2.5 l,,,,\n"
    "oil,Iron,,,24.00,l,750 ml,,,,\n"
    "glue,Iron,,,12.90,pack,1 kg,,,,\n"
    "glue,Iron,,,10.80,pack,750 ml,,,,\n"
    "edging,South,,,0.96,m,50 m,,,,\n"
    "disc,Iron,,,0.48,each,50,,,,\n",

    "label,stock,length,width,count,value\n"
    "L1,slat,2280 mm,,2,\n"
    "L2,slat,1 m,,1,2.00\n"
    "S1,ply-18,1250,600,1,18.00\n"
    "B1,screw,,,140,0.10\n"
    "F1,oil,,,0.6 l,\n",

    "board,from,to,kind\n"
    "L2,940,1000 mm,split\n"
    "L2,300 mm,340 mm,knot\n",
};

static inline void bench_write(const bench *b, const char *file, const char *text, size_t size) {
    char path[600];
    snprintf(path, sizeof path, "%s/%s", b->folder, file);
    FILE *out = fopen(path, "wb");
    assert_non_null(out);
    assert_int_equal(fwrite(text, 1, size, out), size);
    assert_int_equal(fclose(out), 0);
}

static inline void bench_put(const bench *b, const char *file, const char *text) {
    bench_write(b, file, text, strlen(text));
}

/* The whole shop, sound as it is. */
static inline void bench_fill(const bench *b) {
    for (int i = 0; i < BENCH_FILES; i++)
        bench_put(b, bench_files[i], bench_texts[i]);
}

static inline void bench_remove(const bench *b, const char *file) {
    char path[600];
    snprintf(path, sizeof path, "%s/%s", b->folder, file);
    remove(path);
}

static inline const char *bench_text(const char *file) {
    for (int i = 0; i < BENCH_FILES; i++)
        if (strcmp(bench_files[i], file) == 0)
            return bench_texts[i];
    fail_msg("%s is no file of a shop", file);
    return NULL;
}

/* The text with its only `old` replaced. */
static inline char *bench_swap(bench *b, const char *text, const char *old, const char *fresh) {
    const char *at = strstr(text, old);
    if (!at || strstr(at + 1, old))
        fail_msg("\"%s\" does not stand in the text just once", old);
    return sb_pool_print(b->run.pool, "%.*s%s%s", (int)(at - text), text, fresh, at + strlen(old));
}

static inline void bench_spoil(bench *b, const char *file, const char *old, const char *fresh) {
    bench_put(b, file, bench_swap(b, bench_text(file), old, fresh));
}

static inline sb_shop *bench_read(bench *b) {
    return sb_shop_read(&b->run, b->folder);
}

static inline const sb_shop *bench_read_sound(bench *b) {
    const sb_shop *shop = bench_read(b);
    if (!shop || sb_notices_count(&b->run, SB_NOTE) > 0)
        fail_msg("%s", sb_notices_text(&b->run, SB_NOTE, false));
    return shop;
}

/* "stock.csv:2:12" of a notice */
static inline const char *bench_where(bench *b, size_t index) {
    sb_position at = sb_place_position(sb_notices_place(&b->run, index));
    const char *slash = strrchr(at.file, '/');
    return sb_pool_print(b->run.pool, "%s:%zu:%zu", slash ? slash + 1 : at.file, at.line, at.column);
}

static inline void bench_told(bench *b, const char *where, const char *words) {
    for (size_t i = 0; sb_notices_message(&b->run, i); i++)
        if (strcmp(bench_where(b, i), where) == 0 && strstr(sb_notices_message(&b->run, i), words)) {
            assert_int_equal(sb_notices_level(&b->run, i), SB_ERROR);
            return;
        }
    fail_msg("expected at %s: %s; got:\n%s", where, words, sb_notices_text(&b->run, SB_NOTE, false));
}

static inline void bench_only(bench *b, const char *where, const char *words) {
    bench_told(b, where, words);
    if (sb_notices_count(&b->run, SB_NOTE) != 1)
        fail_msg("expected one error only, got:\n%s", sb_notices_text(&b->run, SB_NOTE, false));
}

static inline int bench_set_up(void **state) {
    static bench the_bench;
    const char *tmp = getenv("TMPDIR");
    snprintf(the_bench.folder, sizeof the_bench.folder, "%s/shop-test-XXXXXX", tmp && *tmp ? tmp : "/tmp");
    if (!mkdtemp(the_bench.folder))
        return -1;
    the_bench.run = sb_run_new();
    bench_fill(&the_bench);
    *state = &the_bench;
    return 0;
}

static inline int bench_clear(void **state) {
    bench *b = *state;
    for (int i = 0; i < BENCH_FILES; i++)
        bench_remove(b, bench_files[i]);
    rmdir(b->folder);
    sb_run_free(&b->run);
    return 0;
}

/* A fresh run and a sound shop again, between the cases of a table. */
static inline void bench_again(bench *b) {
    sb_run_free(&b->run);
    b->run = sb_run_new();
    bench_fill(b);
}

#define AT_BENCH(test) cmocka_unit_test_setup_teardown(test, bench_set_up, bench_clear)

/* One thing spoiled, one error expected. */
typedef struct bench_case {
    const char *file, *old, *fresh, *where, *words;
} bench_case;

/* Goes through all cases before it fails, so that one look shows all that is wrong. */
static inline bool bench_case_holds(bench *b, const bench_case *c) {
    bench_again(b);
    bench_spoil(b, c->file, c->old, c->fresh);
    bench_read(b);
    if (sb_notices_count(&b->run, SB_NOTE) == 1 && strcmp(bench_where(b, 0), c->where) == 0 &&
        strstr(sb_notices_message(&b->run, 0), c->words))
        return true;
    print_error("%s with \"%s\": expected one error at %s: %s; got:\n%s\n", c->file, c->fresh, c->where,
                c->words, sb_notices_text(&b->run, SB_NOTE, false));
    return false;
}

static inline void bench_cases(bench *b, const bench_case *cases, size_t count) {
    size_t failed = 0;
    for (size_t i = 0; i < count; i++)
        failed += !bench_case_holds(b, &cases[i]);
    assert_int_equal(failed, 0);
}

#define BENCH_CASES(b, cases) bench_cases(b, cases, sizeof(cases) / sizeof *(cases))

#endif
