/* The figures of an estimate that are kept, and the list of what has changed since. */
#include "papers/revision.h"

#include "papers/estimate.h"
#include "papers/figures.h"

#include <string.h>

const char *revision_kind_word(sb_cell_kind kind) {
    return kind == SB_CELL_MONEY   ? "money"
           : kind == SB_CELL_COUNT ? "count"
           : kind == SB_CELL_SHARE ? "share"
                                   : "time";
}

/* ---- figures ---- */

typedef struct keeper {
    sb_run *run;
    const char *option;
    kept_figures figures;
} keeper;

/* Two of the same name are told apart by a number. */
static const char *own_name(const keeper *k, const char *name) {
    size_t again = 1;
    for (size_t i = 0; i < k->figures.count; i++) {
        const kept_figure *f = &k->figures.items[i];
        size_t length = strlen(name);
        if (strcmp(f->option, k->option) == 0 && strncmp(f->name, name, length) == 0 &&
            (f->name[length] == '\0' || strncmp(f->name + length, " (", 2) == 0))
            again++;
    }
    return again == 1 ? name : sb_pool_print(k->run->pool, "%s (%zu)", name, again);
}

static void keep(keeper *k, const char *name, sb_cell_kind kind, int64_t amount) {
    kept_figure figure = {k->option, own_name(k, name), kind, amount};
    SB_PUSH(k->run->pool, k->figures, figure);
}

static void keep_pieces(keeper *k, const sb_estimate *e) {
    for (size_t i = 0; i < e->pieces.count; i++) {
        const sb_price_line *line = &e->pieces.items[i];
        const char *title = e->takeoff->pieces.items[line->piece].title;
        keep(k, sb_pool_print(k->run->pool, "%s: number", title), SB_CELL_COUNT, line->count);
        keep(k, sb_pool_print(k->run->pool, "%s: each", title), SB_CELL_MONEY, line->unit.minor);
    }
}

static void keep_steps(keeper *k, const sb_estimate *e) {
    const struct {
        const char *name;
        sb_cell_kind kind;
        int64_t amount;
    } steps[] = {{"Total with tax", SB_CELL_MONEY, e->gross.minor},
                 {"Net", SB_CELL_MONEY, e->net.minor},
                 {"Tax", SB_CELL_MONEY, e->tax.minor},
                 {"Deposit", SB_CELL_MONEY, e->deposit.minor},
                 {"Delivery, net", SB_CELL_MONEY, e->delivery.minor},
                 {"Material", SB_CELL_MONEY, e->material_total.minor},
                 {"Labour", SB_CELL_MONEY, e->labour_total.minor},
                 {"Overhead", SB_CELL_MONEY, e->overhead.minor},
                 {"Cost", SB_CELL_MONEY, e->cost.minor},
                 {"Contingency", SB_CELL_SHARE, e->contingency_rate.ppm},
                 {e->method == SB_MARGIN_ON_PRICE ? "Margin" : "Markup", SB_CELL_SHARE, e->rate.ppm},
                 {"Discount", SB_CELL_SHARE, e->discount_rate.ppm},
                 {"Floor, net", SB_CELL_MONEY, e->floor.minor},
                 {"Hours", SB_CELL_DURATION, e->time.ms}};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        keep(k, steps[i].name, steps[i].kind, steps[i].amount);
}

static void keep_lines(keeper *k, const sb_estimate *e) {
    for (size_t i = 0; i < e->materials.count; i++)
        keep(k, sb_pool_print(k->run->pool, "Material: %s", e->materials.items[i].what), SB_CELL_MONEY,
             e->materials.items[i].amount.minor);
    for (size_t i = 0; i < e->labour.count; i++)
        keep(k, sb_pool_print(k->run->pool, "Labour: %s", e->labour.items[i].operation->title), SB_CELL_MONEY,
             e->labour.items[i].amount.minor);
}

kept_figures revision_figures(sb_run *run, const sb_ways *ways) {
    keeper k = {.run = run};
    for (size_t i = 0; i < ways->list.count; i++) {
        const sb_way *way = &ways->list.items[i];
        k.option = way->option ? way->option->name : "";
        keep_steps(&k, way->estimate);
        keep_pieces(&k, way->estimate);
        keep_lines(&k, way->estimate);
    }
    return k.figures;
}

sb_record *sb_record_estimate(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways) {
    kept_figures figures = revision_figures(run, ways);
    sb_record *record = sb_record_object(run), *array;
    sb_put_text(run, record, "job", job->name);
    sb_put_text(run, record, "revision", job->revision);
    sb_put_text(run, record, "date", sb_write_date(run, job->date));
    sb_put_text(run, record, "currency", shop->settings.currency.code);
    array = sb_put_array(run, record, "figures");
    for (size_t i = 0; i < figures.count; i++) {
        sb_record *figure = sb_put_object(run, array, NULL);
        sb_put_text(run, figure, "option", figures.items[i].option);
        sb_put_text(run, figure, "figure", figures.items[i].name);
        sb_put_text(run, figure, "kind", revision_kind_word(figures.items[i].kind));
        sb_put_integer(run, figure, "amount", figures.items[i].amount);
    }
    return record;
}

/* ---- what has changed ---- */

static const kept_figure *find(const kept_figures *in, const kept_figure *wanted) {
    for (size_t i = 0; i < in->count; i++)
        if (in->items[i].kind == wanted->kind && strcmp(in->items[i].option, wanted->option) == 0 &&
            strcmp(in->items[i].name, wanted->name) == 0)
            return &in->items[i];
    return NULL;
}

static sb_cell cell_of(const kept_figure *figure, int64_t amount) {
    return (sb_cell){.kind = figure->kind, .text = "", .amount = amount};
}

/* NULL on one side: it was not there, or is not any more. */
static void put(sb_run *run, sb_table *table, const kept_figure *before, const kept_figure *now) {
    if (before && now && before->amount == now->amount)
        return;
    const kept_figure *any = now ? now : before;
    sb_cell *row = sb_row_add(run, table);
    row[0] = sb_cell_text(any->option);
    row[1] = sb_cell_text(any->name);
    row[2] = before ? cell_of(any, before->amount) : sb_cell_text("none");
    row[3] = now ? cell_of(any, now->amount) : sb_cell_text("none");
    row[4] = cell_of(any, sb_sub(now ? now->amount : 0, before ? before->amount : 0));
}

void sb_paper_changes(sb_run *run, sb_document *estimate, const sb_job *job, const sb_ways *ways,
                      const sb_stored *stored) {
    kept_figures now = revision_figures(run, ways);
    sb_sheet *sheet = sb_sheet_add(run, estimate, "Changes");
    const char *before = stored->revision ? stored->revision : "first";
    sb_heading_add(run, sheet,
                   sb_pool_print(run->pool, "Revision %s against %s%s of %s", job->revision,
                                 stored->revision ? "" : "the ", before, stored->date));
    sb_table *table = sb_table_add(
        run, sheet, "", sb_pool_print(run->pool, "Option|Figure|%s>|%s>|Change>", before, job->revision));
    for (size_t i = 0; i < now.count; i++)
        put(run, table, find(&stored->figures, &now.items[i]), &now.items[i]);
    for (size_t i = 0; i < stored->figures.count; i++)
        if (!find(&now, &stored->figures.items[i]))
            put(run, table, &stored->figures.items[i], NULL);
    if (table->rows.count == 0)
        sb_paragraph_add(run, sheet, "No figure has changed.", false);
}
