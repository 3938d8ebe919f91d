/* What the options cost in batches of other sizes. */
#include "papers/estimate.h"
#include "papers/figures.h"

static void put_batch(sb_run *run, sb_table *table, const sb_batch *batch) {
    sb_cell *row = sb_row_add(run, table);
    row[0] = sb_cell_count(batch->pieces);
    for (size_t i = 0; i < batch->nets.count; i++) {
        row[i + 1] = sb_cell_money(batch->nets.items[i]);
        if (i == batch->cheapest)
            row[i + 1] = sb_cell_strong(row[i + 1]);
    }
}

static const char *words(sb_run *run, const sb_ways *ways, const sb_batch *from, const sb_batch *to,
                         bool first) {
    const char *title = way_words(&ways->list.items[from->cheapest]);
    return first ? sb_pool_print(run->pool, "From %lld to %lld pieces the cheapest is: %s.",
                                 (long long)from->pieces, (long long)to->pieces, title)
                 : sb_pool_print(run->pool, "From %lld to %lld it is: %s.", (long long)from->pieces,
                                 (long long)to->pieces, title);
}

static const char *all_words(sb_run *run, const sb_ways *ways, const sb_batches *batches) {
    const char *text = "";
    for (size_t i = 0, end; i < batches->list.count; i = end) {
        const sb_batch *from = &batches->list.items[i];
        for (end = i + 1; end < batches->list.count && batches->list.items[end].cheapest == from->cheapest;)
            end++;
        text = sb_pool_print(run->pool, "%s%s%s", text, i > 0 ? " " : "",
                             words(run, ways, from, &batches->list.items[end - 1], i == 0));
    }
    return text;
}

void sb_paper_batches(sb_run *run, sb_document *comparison, const sb_ways *ways, const sb_batches *batches) {
    sb_sheet *sheet = sb_sheet_add(run, comparison, "Batches");
    sb_heading_add(run, sheet, "Net price of batches, each planned for itself");
    sb_table *table = sb_table_add(run, sheet, "", comparison_headings(run, "Pieces>", ways));
    for (size_t i = 0; i < batches->list.count; i++)
        put_batch(run, table, &batches->list.items[i]);
    if (ways->list.count > 1)
        sb_paragraph_add(run, sheet, all_words(run, ways, batches), false);
}

void sb_record_batches(sb_run *run, sb_record *comparison, const sb_shop *shop, const sb_ways *ways,
                       const sb_batches *batches) {
    sb_record *array = sb_put_array(run, comparison, "batches");
    for (size_t i = 0; i < batches->list.count; i++) {
        const sb_batch *batch = &batches->list.items[i];
        const sb_job_option *cheapest = ways->list.items[batch->cheapest].option;
        sb_record *record = sb_put_object(run, array, NULL);
        sb_put_integer(run, record, "pieces", batch->pieces);
        sb_record *nets = sb_put_array(run, record, "net");
        for (size_t w = 0; w < batch->nets.count; w++)
            sb_put_money(run, nets, NULL, batch->nets.items[w], shop->settings.currency.digits);
        sb_put_text(run, record, "cheapest", cheapest ? cheapest->name : NULL);
    }
}

static void record_break(sb_run *run, sb_record *array, const sb_shop *shop, const sb_break *of) {
    int digits = shop->settings.currency.digits;
    sb_record *record = sb_put_object(run, array, NULL);
    sb_put_integer(run, record, "pieces", of->pieces);
    sb_record *options = sb_put_array(run, record, "options");
    for (size_t w = 0; w < of->ways->list.count; w++) {
        const sb_way *way = &of->ways->list.items[w];
        sb_record *option = sb_put_object(run, options, NULL);
        sb_put_text(run, option, "name", way->option ? way->option->name : NULL);
        sb_record *units = sb_put_array(run, option, "unit");
        for (size_t i = 0; i < way->estimate->pieces.count; i++)
            sb_put_money(run, units, NULL, way->estimate->pieces.items[i].unit, digits);
        sb_put_money(run, option, "cost", way->estimate->cost, digits);
        sb_put_money(run, option, "net", way->estimate->net, digits);
        sb_put_money(run, option, "gross", way->estimate->gross, digits);
    }
}

void sb_record_breaks(sb_run *run, sb_record *quote, const sb_shop *shop, const sb_breaks *breaks) {
    sb_record *array = sb_put_array(run, quote, "breaks");
    for (size_t i = 0; i < breaks->list.count; i++)
        record_break(run, array, shop, &breaks->list.items[i]);
}
