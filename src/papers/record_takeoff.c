/* A takeoff for machines. Keys stay; money is a decimal string, lengths are numbers in mm.
 *
 * | key | holds |
 * | --- | --- |
 * | `jobs` | array: `job`, `option` (null: none), `customer`, `date`, `pieces` (`name`, `title`, `size`, `count`) |
 * | `parts` | array: `job`, `piece`, `path`, `name`, `title`, `stock`, `count`, `per_piece`, `length_mm`, `width_mm`, `thickness_mm` (finished),
 *   `blanks`, `cut_length_mm`, `cut_width_mm` (null: full width), `clear`, `sound`, `end1`, `end2` (`mitre`, `bevel`, from square; absent: square),
 *   `worked` (where the length comes from), `file`, `line` |
 * | `stock` | array: `job`, `stock`, `parts`, `net_length_mm`, `net_area_m2`, `net_volume_m3`, `spare_length_mm`, `spare_added_percent` (of net),
 *   `spare_lost_percent` (of what is bought) |
 * | `usage` | array: `job`, `piece` (null: the batch), `stock`, `amount`, `unit` ("", "ml", "mg", "mm", "nl") |
 * | `work` | array: `job`, `piece` (null: the batch), `operation`, `quantity`, `unit`, `minutes` |
 * | `order` | array: `merchant` ("": from the rack), `stock`, `length_mm`, `width_mm`, `count`,
 *   `needed` (of it by the jobs), `unit` (of `needed`, as in `usage`), `each` (three decimals more than the currency), `amount`, `reorder`,
 *   `label` |
 * | `order_total` | money; of it `order_for_jobs` and `order_for_rack` (to its minimum) |
 * | `plan` | as `sawbill cut --json` prints it |
 */
#include "papers/order.h"

typedef struct writer {
    sb_run *run;
    int digits;
    const sb_takeoff *takeoff; /* the one being written */
} writer;

static void put_piece(const writer *w, sb_record *in, size_t piece) {
    if (piece == SB_BATCH)
        sb_put_null(w->run, in, "piece");
    else
        sb_put_text(w->run, in, "piece", w->takeoff->pieces.items[piece].source->name);
}

static void put_job(const writer *w, sb_record *jobs) {
    const sb_job *job = w->takeoff->job;
    sb_record *record = sb_put_object(w->run, jobs, NULL);
    sb_put_text(w->run, record, "job", job->name);
    if (w->takeoff->option)
        sb_put_text(w->run, record, "option", w->takeoff->option->name);
    else
        sb_put_null(w->run, record, "option");
    sb_put_text(w->run, record, "customer", job->customer);
    sb_put_text(w->run, record, "date", sb_write_date(w->run, job->date));
    sb_record *pieces = sb_put_array(w->run, record, "pieces");
    for (size_t i = 0; i < w->takeoff->pieces.count; i++) {
        const sb_takeoff_piece *piece = &w->takeoff->pieces.items[i];
        sb_record *one = sb_put_object(w->run, pieces, NULL);
        sb_put_text(w->run, one, "name", piece->source->name);
        sb_put_text(w->run, one, "title", piece->title);
        sb_put_text(w->run, one, "size", piece->size_text);
        sb_put_integer(w->run, one, "count", piece->count);
    }
}

static void put_end(const writer *w, sb_record *in, const char *key, sb_cut_end end) {
    if (end.mitre.udeg == 0 && end.bevel.udeg == 0)
        return;
    sb_record *record = sb_put_object(w->run, in, key);
    sb_put_decimal(w->run, record, "mitre", end.mitre.udeg, 6);
    sb_put_decimal(w->run, record, "bevel", end.bevel.udeg, 6);
}

static void put_sizes(const writer *w, sb_record *record, const sb_part *part) {
    sb_put_length(w->run, record, "length_mm", part->length);
    sb_put_length(w->run, record, "width_mm", part->width);
    sb_put_length(w->run, record, "thickness_mm", part->thickness);
    sb_put_integer(w->run, record, "blanks", part->blanks);
    sb_put_length(w->run, record, "cut_length_mm", part->cut_length);
    if (part->cut_width.nm > 0)
        sb_put_length(w->run, record, "cut_width_mm", part->cut_width);
    else
        sb_put_null(w->run, record, "cut_width_mm");
}

static void put_part(const writer *w, sb_record *parts, const sb_part *part) {
    sb_record *record = sb_put_object(w->run, parts, NULL);
    sb_position at = sb_place_position(part->place);
    sb_put_text(w->run, record, "job", w->takeoff->job->name);
    put_piece(w, record, part->piece);
    sb_put_text(w->run, record, "path", part->path);
    sb_put_text(w->run, record, "name", part->name);
    sb_put_text(w->run, record, "title", part->title);
    sb_put_text(w->run, record, "stock", part->stock->id);
    sb_put_integer(w->run, record, "count", part->count);
    sb_put_integer(w->run, record, "per_piece", part->per_piece);
    put_sizes(w, record, part);
    sb_put_truth(w->run, record, "clear", part->clear);
    sb_put_truth(w->run, record, "sound", part->sound);
    put_end(w, record, "end1", part->end1);
    put_end(w, record, "end2", part->end2);
    sb_put_text(w->run, record, "worked", part->length_worked ? part->length_worked : "");
    sb_put_text(w->run, record, "file", at.file);
    sb_put_integer(w->run, record, "line", (int64_t)at.line);
}

static void put_total(const writer *w, sb_record *stock, const sb_stock_total *total) {
    sb_record *record = sb_put_object(w->run, stock, NULL);
    sb_put_text(w->run, record, "job", w->takeoff->job->name);
    sb_put_text(w->run, record, "stock", total->stock->id);
    sb_put_integer(w->run, record, "parts", total->parts);
    sb_put_length(w->run, record, "net_length_mm", total->net_length);
    sb_put_decimal(w->run, record, "net_area_m2", sb_mul_div(total->net_area.um2, 1, 1000000), 6);
    sb_put_decimal(w->run, record, "net_volume_m3", sb_mul_div(total->net_volume.nl, 1, 1000000), 6);
    sb_put_length(w->run, record, "spare_length_mm", total->spare_length);
    sb_put_decimal(w->run, record, "spare_added_percent", total->spare_added.ppm, 4);
    sb_put_decimal(w->run, record, "spare_lost_percent", total->spare_lost.ppm, 4);
}

static const char *unit_of(const sb_stock *stock) {
    return stock->kind == SB_STOCK_VOLUME ? "nl" : sb_stock_kind_unit(stock->kind);
}

static void put_usage(const writer *w, sb_record *usages, const sb_usage *usage) {
    sb_record *record = sb_put_object(w->run, usages, NULL);
    sb_put_text(w->run, record, "job", w->takeoff->job->name);
    put_piece(w, record, usage->piece);
    sb_put_text(w->run, record, "stock", usage->stock->id);
    sb_put_integer(w->run, record, "amount", usage->amount);
    sb_put_text(w->run, record, "unit", unit_of(usage->stock));
}

static void put_work(const writer *w, sb_record *works, const sb_work *work) {
    sb_record *record = sb_put_object(w->run, works, NULL);
    sb_put_text(w->run, record, "job", w->takeoff->job->name);
    put_piece(w, record, work->piece);
    sb_put_text(w->run, record, "operation", work->operation->id);
    sb_put_decimal(w->run, record, "quantity", work->quantity_milli, 3);
    sb_put_text(w->run, record, "unit", sb_driver_word(work->operation->driver));
    sb_put_decimal(w->run, record, "minutes", sb_mul_div(work->time.ms, 1, 60), 3);
}

static void put_order_line(const writer *w, sb_record *lines, const sb_order_line *line) {
    sb_record *record = sb_put_object(w->run, lines, NULL);
    sb_length length = line->offer ? line->offer->length : line->rack->length;
    sb_length width = line->offer ? line->offer->width : line->rack->width;
    sb_put_text(w->run, record, "merchant", line->merchant);
    sb_put_text(w->run, record, "stock", line->stock->id);
    if (length.nm > 0)
        sb_put_length(w->run, record, "length_mm", length);
    if (line->stock->kind == SB_STOCK_SHEET)
        sb_put_length(w->run, record, "width_mm", width.nm > 0 ? width : line->stock->width);
    sb_put_integer(w->run, record, "count", line->count);
    sb_put_integer(w->run, record, "needed", line->needed);
    sb_put_text(w->run, record, "unit", unit_of(line->stock));
    sb_put_money(w->run, record, "each", (sb_money){line->each.milli}, w->digits + 3);
    sb_put_money(w->run, record, "amount", line->amount, w->digits);
    sb_put_truth(w->run, record, "reorder", line->reorder);
    if (line->rack)
        sb_put_text(w->run, record, "label", line->rack->label);
}

sb_record *sb_record_takeoff(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs,
                             size_t count, const sb_plan *plan, const sb_order *order) {
    sb_record *record = sb_record_object(run);
    sb_record *jobs = sb_put_array(run, record, "jobs"), *parts = sb_put_array(run, record, "parts");
    sb_record *stock = sb_put_array(run, record, "stock"), *usages = sb_put_array(run, record, "usage");
    sb_record *works = sb_put_array(run, record, "work"), *lines = sb_put_array(run, record, "order");
    writer w = {run, shop->settings.currency.digits, NULL};
    for (size_t i = 0; i < count; i++) {
        const sb_takeoff *t = w.takeoff = takeoffs[i];
        put_job(&w, jobs);
        for (size_t j = 0; j < t->parts.count; j++)
            put_part(&w, parts, &t->parts.items[j]);
        for (size_t j = 0; j < t->totals.count; j++)
            put_total(&w, stock, &t->totals.items[j]);
        for (size_t j = 0; j < t->usages.count; j++)
            put_usage(&w, usages, &t->usages.items[j]);
        for (size_t j = 0; j < t->works.count; j++)
            put_work(&w, works, &t->works.items[j]);
    }
    for (size_t i = 0; i < order->lines.count; i++)
        put_order_line(&w, lines, &order->lines.items[i]);
    sb_money restock = order_restock(order);
    sb_put_money(run, record, "order_total", order->total, w.digits);
    sb_put_money(run, record, "order_for_jobs", sb_money_sub(order->total, restock), w.digits);
    sb_put_money(run, record, "order_for_rack", restock, w.digits);
    sb_record *planned = sb_record_plan(run, plan, w.digits);
    sb_put_record(run, record, "plan", planned);
    return record;
}
