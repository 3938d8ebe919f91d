/* What every takeoff test sits at: a small shop in a folder of its own, recipes and a job as text. */
#ifndef TESTS_TAKEOFF_DESK_H
#define TESTS_TAKEOFF_DESK_H

#include "sawbill/takeoff.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define MM(mm) ((int64_t)(mm)*SB_NM_PER_MM)

typedef struct desk {
    sb_run run;
    char folder[512];
    sb_shop *shop;
    sb_recipe_book *book;
    const sb_job *job;
} desk;

static const char *const desk_files[] = {"shop.txt",  "grades.csv", "operations.csv",
                                         "stock.csv", "prices.csv", "rack.csv"};
enum {
    DESK_FILES = sizeof desk_files / sizeof *desk_files
};

static const char *const desk_texts[DESK_FILES] = {
    "shop        Test bench\n"
    "currency    EUR\n"
    "units       mm step 1 mm\n"
    "saw crosscut\n"
    "  kerf      3 mm\n"
    "  trim      10 mm\n"
    "saw rip\n"
    "  kerf      2.8 mm\n"
    "saw panel\n"
    "  kerf      2.8 mm\n"
    "  trim      8 mm\n"
    "  stages    2 with trimming\n"
    "  first     crosscut\n"
    "  longest-rip 2.6 m\n"
    "  smallest-strip 40 mm\n"
    "leftover    board 600 mm\n"
    "leftover    sheet 600 mm by 300 mm\n"
    "leftover    value 50 % of new\n"
    "vehicle     4.8 m\n"
    "planing     3 mm\n"
    "worker      bench 36.00 per hour\n"
    "worker      office 30.00 per hour\n"
    "overhead    14.00 per hour\n"
    "margin      25 % of price\n"
    "charge      bought\n",

    "grade,title,defect,basis\n"
    "added,Thirty added,30 %,added-to-net\n"
    "lost,Thirty lost,30 %,lost-of-bought\n",

    "operation,title,minutes,per,worker,always\n"
    "take-board,Take a board,2,board,,\n"
    "crosscut,Crosscut,0.5,cut,,\n"
    "set-stop,Set a stop,3,stop,,\n"
    "change-stop,Change to another stop,1,change,,\n"
    "handle-sheet,Handle a sheet,5,sheet,,\n"
    "set-fence,Set the fence,1.5,fence,,\n"
    "take-back,Take a piece back to the saw,0.5,return,,\n"
    "cut-sheet,Cut a sheet,1,sheet-cut,,\n"
    "dowel,Dowel a joint,4,joint,,\n"
    "plane,Plane a metre,2,m,,\n"
    "sand,Sand a square metre,6,m2,,\n"
    "sort,Sort a part,0.5,part,,\n"
    "wrap,Wrap a piece,6,piece,,\n"
    "jig,Build a jig,25,batch,,\n"
    "minutes,Minutes,1,each,,\n"
    "office,Office,45,batch,office,yes\n",

    "stock,title,kind,material,grade,thickness,width,nominal_thickness,nominal_width,surface,density,"
    "coverage,"
    "spread,minimum\n"
    "slat,Slat 20 x 95,board,larch,,20,95,,,planed,500,,,6\n"
    "post,Post 70 x 70,board,larch,,70,70,,,planed,600,,,\n"
    "knotty,Knotty 20 x 100,board,pine,added,20,100,,,planed,,,,\n"
    "knotty-lost,Knotty 20 x 100,board,pine,lost,20,100,,,planed,,,,\n"
    "sawn,Sawn 50 x 100,board,fir,,50,100,,,sawn,450,,,\n"
    "wide,Sawn 30 x 150,board,oak,,30,150,,,sawn,700,,,\n"
    "random-added,Random oak,volume,oak,added,30,,,,sawn,700,,,\n"
    "random-lost,Random oak,volume,oak,lost,30,,,,sawn,700,,,\n"
    "random-bf,Random 4/4 oak,volume,oak,,25.4,,,,sawn,700,,,\n"
    "thin-bf,Random 3/4 oak,volume,oak,,3/4 in,,1 in,,sawn,700,,,\n"
    "ply,Plywood 18,sheet,plywood,,18,,,,,560,,,\n"
    "tape,Edging 22,edging,birch,,1,22,,,,,,,\n"
    "screw,Screw,fixing,,,,,,,,,,,200\n"
    "rare,Rare hinge,fixing,,,,,,,,,,,\n"
    "oil,Oil,finish,,,,,,,,,12 m2/l,,\n"
    "glue,Glue,glue,,,,,,,,1100,,180 g/m2,\n"
    "disc,Abrasive disc,other,,,,,,,,,,,\n",

    "stock,merchant,length,width,price,per,pack,available,date,trim1,trim2\n"
    "slat,Fen Timber,3 m,,9.00,each,,,,,\n"
    "slat,Fen Timber,4 m,,11.00,each,,,,,\n"
    "slat,Alder Yard,5 m,,12.50,each,,3,,20 mm,0\n"
    "post,Fen Timber,3 m,,24.00,each,,,,,\n"
    "knotty,Fen Timber,4 m,,8.00,each,,,,,\n"
    "knotty-lost,Fen Timber,4 m,,8.00,each,,,,,\n"
    "sawn,Fen Timber,4 m,,14.00,each,,,,,\n"
    "wide,Fen Timber,3 m,,30.00,each,,,,,\n"
    "random-added,Fen Timber,,,2000.00,m3,,,,,\n"
    "random-lost,Fen Timber,,,2000.00,m3,,,,,\n"
    "random-bf,Fen Timber,,,6.00,bf,,,,,\n"
    "thin-bf,Fen Timber,,,6.00,bf,,,,,\n"
    "ply,Fen Timber,2500,1250,75.00,each,,,,,\n"
    "tape,Alder Yard,,,40.00,pack,50 m,,,,\n"
    "screw,Alder Yard,,,12.00,pack,100,,,,\n"
    "screw,Fen Timber,,,20.00,pack,200,,,,\n"
    "rare,Alder Yard,,,5.00,each,1,3,,,\n"
    "oil,Alder Yard,,,20.00,pack,1 l,,,,\n"
    "oil,Alder Yard,,,45.00,pack,2.5 l,,,,\n"
    "glue,Alder Yard,,,12.00,pack,1 kg,,,,\n"
    "disc,Alder Yard,,,0.50,each,50,,,,\n",

    "label,stock,length,width,count,value\n"
    "R1,slat,2 m,,2,\n"
    "R2,slat,1.5 m,,1,2.00\n"
    "R3,ply,1250,600,1,\n"
    "R4,screw,,,150,0.05\n"
    "R5,oil,,,0.4 l,\n"};

static inline void desk_write(const char *folder, const char *name, const char *text) {
    char path[640];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
}

static inline void desk_remove(const desk *d, const char *name) {
    char path[640];
    snprintf(path, sizeof path, "%s/%s", d->folder, name);
    unlink(path);
}

static inline void desk_fail(desk *d, const char *what) {
    fail_msg("%s:\n%s", what, sb_notices_text(&d->run, SB_NOTE, false));
}

static inline int sit_down(void **state) {
    desk *d = calloc(1, sizeof *d);
    const char *temp = getenv("TMPDIR");
    snprintf(d->folder, sizeof d->folder, "%s/takeoff-XXXXXX", temp && *temp ? temp : "/tmp");
    d->run = sb_run_new();
    *state = d;
    return d->run.pool && mkdtemp(d->folder) ? 0 : -1;
}

static inline int get_up(void **state) {
    desk *d = *state;
    for (int i = 0; i < DESK_FILES; i++)
        desk_remove(d, desk_files[i]);
    rmdir(d->folder);
    sb_run_free(&d->run);
    free(d);
    return 0;
}

#define AT_DESK(test) cmocka_unit_test_setup_teardown(test, sit_down, get_up)

/* The shop as above, with one file's text replaced (NULL: none). */
static inline void open_shop_with(desk *d, const char *name, const char *text) {
    for (int i = 0; i < DESK_FILES; i++)
        desk_write(d->folder, desk_files[i], name && strcmp(name, desk_files[i]) == 0 ? text : desk_texts[i]);
    d->shop = sb_shop_read(&d->run, d->folder);
    if (!d->shop || !sb_ok(&d->run))
        desk_fail(d, "the shop");
    d->book = sb_recipe_book_open(&d->run, d->folder, false);
    assert_non_null(d->book);
}

static inline void open_shop(desk *d) {
    open_shop_with(d, NULL, NULL);
}

static inline void add_recipe(desk *d, const char *text) {
    const sb_recipe *recipe = sb_recipe_of(&d->run, sb_source_of(&d->run, "test.recipe", text), false);
    if (!recipe || !sb_ok(&d->run))
        desk_fail(d, text);
    sb_recipe_book_add(&d->run, d->book, recipe);
}

static inline void read_job(desk *d, const char *text) {
    const char *whole =
        sb_pool_print(d->run.pool, "job test\ntitle Test\ndate 2026-03-02\ncustomer Somebody\n%s", text);
    d->job = sb_job_of(&d->run, sb_source_of(&d->run, "test.job", whole), false);
    if (!d->job || !sb_ok(&d->run))
        desk_fail(d, whole);
}

static inline const sb_job_option *option_named(const desk *d, const char *name) {
    for (size_t i = 0; name && i < d->job->options.count; i++)
        if (strcmp(d->job->options.items[i].name, name) == 0)
            return &d->job->options.items[i];
    assert_null(name);
    return NULL;
}

/* Takes the job off, whatever comes of it. */
static inline const sb_takeoff *try_takeoff(desk *d, const char *job, const char *option) {
    read_job(d, job);
    return sb_takeoff_of(&d->run, d->shop, d->book, d->job, option_named(d, option));
}

static inline const sb_takeoff *takeoff_option(desk *d, const char *job, const char *option) {
    const sb_takeoff *takeoff = try_takeoff(d, job, option);
    if (!takeoff || !sb_ok(&d->run))
        desk_fail(d, job);
    return takeoff;
}

static inline const sb_takeoff *takeoff(desk *d, const char *job) {
    return takeoff_option(d, job, NULL);
}

/* One piece "it" of one recipe, `count` times. */
static inline const sb_takeoff *takeoff_recipe(desk *d, const char *recipe, int count) {
    open_shop(d);
    add_recipe(d, sb_pool_print(d->run.pool, "recipe thing\n%s", recipe));
    return takeoff(d, sb_pool_print(d->run.pool, "piece it\n  recipe thing\n  count %d\n", count));
}

static inline const sb_part *part_named(const sb_takeoff *t, const char *name) {
    for (size_t i = 0; i < t->parts.count; i++)
        if (strcmp(t->parts.items[i].name, name) == 0)
            return &t->parts.items[i];
    fail_msg("no part %s", name);
    return NULL;
}

static inline int64_t used(const sb_takeoff *t, const char *stock) {
    int64_t amount = 0;
    for (size_t i = 0; i < t->usages.count; i++)
        if (strcmp(t->usages.items[i].stock->id, stock) == 0)
            amount += t->usages.items[i].amount;
    return amount;
}

static inline int64_t worked_milli(const sb_takeoff *t, const char *operation) {
    int64_t milli = 0;
    for (size_t i = 0; i < t->works.count; i++)
        if (strcmp(t->works.items[i].operation->id, operation) == 0)
            milli += t->works.items[i].quantity_milli;
    return milli;
}

static inline const sb_stock_total *total_of(const sb_takeoff *t, const char *stock) {
    for (size_t i = 0; i < t->totals.count; i++)
        if (strcmp(t->totals.items[i].stock->id, stock) == 0)
            return &t->totals.items[i];
    fail_msg("no total of %s", stock);
    return NULL;
}

static inline void assert_mm(sb_length length, double mm) {
    if (length.nm != (int64_t)(mm * SB_NM_PER_MM + 0.5))
        fail_msg("expected %g mm, got %.6f mm", mm, sb_length_mm(length));
}

/* The recipe, taken off once, gives an error or advice with these words in it. */
static inline void assert_told(desk *d, const char *recipe, sb_level level, const char *words) {
    open_shop(d);
    add_recipe(d, sb_pool_print(d->run.pool, "recipe thing\n%s", recipe));
    try_takeoff(d, "piece it\n  recipe thing\n", NULL);
    for (size_t i = 0; i < sb_notices_count(&d->run, SB_NOTE); i++)
        if (sb_notices_level(&d->run, i) == level && strstr(sb_notices_message(&d->run, i), words))
            return;
    desk_fail(d, words);
}

#define assert_error(d, recipe, words)  assert_told(d, recipe, SB_ERROR, words)
#define assert_advice(d, recipe, words) assert_told(d, recipe, SB_ADVICE, words)

#endif
