/* The job in several numbers of pieces: a sheet for each, all of them side by side, and one that is looked at. */
#include "papers/estimate.h"
#include "papers/figures.h"

const sb_relation *chosen_cell(const estimate_paper *p, size_t row) {
    return sb_rel_kept(p->run, (sb_relation){.kind = SB_REL_PICK,
                                             .a = p->chosen,
                                             .table = p->numbers,
                                             .row = NUMBER_PIECES,
                                             .row_to = row,
                                             .column = 1,
                                             .column_to = p->numbers->column_count - 1});
}

/* ---- one number of pieces ---- */

static const char *batch_words(const estimate_paper *p, const sb_break *of, bool own) {
    return sb_pool_print(p->run->pool,
                         own               ? "%lld pieces, the job"
                         : of->pieces == 1 ? "%lld piece"
                                           : "%lld pieces",
                         (long long)of->pieces);
}

static sb_sheet *batch_sheet(const estimate_paper *p, sb_document *document, const char *subject,
                             const sb_break *of) {
    return sb_sheet_add(p->run, document,
                        sb_pool_print(p->run->pool, "%s of %lld", subject, (long long)of->pieces));
}

/* A paper of its own, with two sheets. */
static void start_batch(estimate_paper *p, sb_document *document, const sb_break *of) {
    p->job = of->job;
    p->way = &of->ways->list.items[0];
    p->e = p->way->estimate;
    p->named = false;
    p->chosen = NULL;
    p->summary = p->pieces = batch_sheet(p, document, "Batch", of);
    p->material = p->labour = batch_sheet(p, document, "Lines", of);
    p->material->dense = true;
}

static void fill_batch(estimate_paper *p, const sb_break *of, bool own) {
    sb_heading_add(p->run, p->summary, batch_words(p, of, own));
    p->build = sb_table_add(p->run, p->summary, "From cost to price", "Step||Share or rate>|Amount>");
    if (p->sharing)
        sb_heading_add(p->run, p->sharing, batch_words(p, of, own));
    estimate_material(p);
    estimate_labour(p);
    estimate_build(p);
}

/* ---- side by side ---- */

static const char *headings(const estimate_paper *p, const sb_breaks *breaks) {
    const char *text = "Figure";
    for (size_t i = 0; i < breaks->list.count; i++)
        text = sb_pool_print(p->run->pool, "%s|%s>", text,
                             batch_words(p, &breaks->list.items[i], i == breaks->own));
    return text;
}

static void put_steps(estimate_paper *p, const estimate_paper *of, size_t count) {
    for (size_t step = 0; step < of[0].build->rows.count; step++) {
        sb_cell *row = sb_row_add(p->run, p->numbers);
        row[0] = of[0].build->rows.items[step][BUILD_STEP];
        for (size_t i = 0; i < count; i++) {
            const sb_cell *amount = &of[i].build->rows.items[step][BUILD_AMOUNT];
            row[i + 1] = sb_cell_related(sb_cell_money((sb_money){amount->amount}),
                                         sb_rel_cell(p->run, of[i].build, step, BUILD_AMOUNT));
            row[i + 1].strong = row[0].strong;
        }
    }
}

static void put_hours(estimate_paper *p, const estimate_paper *of, size_t count) {
    sb_cell *row = sb_row_add(p->run, p->numbers);
    row[0] = sb_cell_text("Hours");
    p->hours_row = p->numbers->rows.count - 1;
    for (size_t i = 0; i < count; i++)
        row[i + 1] =
            sb_cell_related(sb_cell_duration(of[i].e->time), total_cell(&of[i], of[i].works, WORK_HOURS));
}

/* An amount of the steps for one piece, on the average over its kinds. */
static size_t put_for_one(estimate_paper *p, const char *label, size_t step, const sb_breaks *breaks) {
    sb_cell *row = sb_row_add(p->run, p->numbers);
    row[0] = sb_cell_text(label);
    for (size_t i = 1; i < p->numbers->column_count; i++) {
        const sb_relation *all = sb_rel_cell(p->run, p->numbers, NUMBER_STEPS + step, i),
                          *pieces = sb_rel_cell(p->run, p->numbers, NUMBER_PIECES, i);
        int64_t amount = p->numbers->rows.items[NUMBER_STEPS + step][i].amount;
        row[i] = sb_cell_related(
            sb_cell_money((sb_money){sb_mul_div(amount, 1, breaks->list.items[i - 1].pieces)}),
            rel_ratio(p->run, all, pieces, p->digits));
    }
    return p->numbers->rows.count - 1;
}

static void put_units(estimate_paper *p, const estimate_paper *of, size_t count) {
    for (size_t kind = 0; kind < p->e->pieces.count; kind++) {
        sb_cell *row = sb_row_add(p->run, p->numbers);
        const sb_price_line *line = &p->e->pieces.items[kind];
        row[0] = sb_cell_text(sb_pool_print(p->run->pool, "Each%s: %s", p->gross ? ", with tax" : ", net",
                                            p->e->takeoff->pieces.items[line->piece].title));
        for (size_t i = 0; i < count; i++)
            row[i + 1] = sb_cell_related(sb_cell_money(of[i].e->pieces.items[kind].unit),
                                         sb_rel_cell(p->run, of[i].prices, kind, PRICE_UNIT));
    }
}

static void put_facts(estimate_paper *p, const estimate_paper *of, size_t count) {
    sb_cell *lead = sb_row_add(p->run, p->numbers), *plan = sb_row_add(p->run, p->numbers);
    lead[0] = sb_cell_text("Lead time, days");
    plan[0] = sb_cell_text("Cutting plan");
    for (size_t i = 0; i < count; i++) {
        lead[i + 1] = of[i].e->lead_days >= 0 ? sb_cell_count(of[i].e->lead_days) : sb_cell_text("not told");
        plan[i + 1] = sb_cell_text(plan_words(p->run, &p->shop->settings.style, of[i].way->plan));
    }
}

static void put_chart(estimate_paper *p, size_t price, size_t cost) {
    sb_chart chart = {.kind = SB_CHART_LINES,
                      .title = "For a piece, net",
                      .along = "Pieces",
                      .figures = p->shop->settings.currency.code,
                      .table = p->numbers,
                      .across = true,
                      .first = 1,
                      .last = p->numbers->column_count - 1,
                      .names = NUMBER_PIECES};
    SB_PUSH(p->run->pool, chart.series, price);
    SB_PUSH(p->run->pool, chart.series, cost);
    sb_chart_add(p->run, p->numbers_sheet, chart);
}

static void put_side_by_side(estimate_paper *p, const estimate_paper *of, const sb_breaks *breaks) {
    size_t count = breaks->list.count;
    p->numbers = sb_table_add(p->run, p->numbers_sheet, "", headings(p, breaks));
    sb_cell *row = sb_row_add(p->run, p->numbers);
    row[0] = sb_cell_text("Pieces");
    for (size_t i = 0; i < count; i++)
        row[i + 1] = sb_cell_count(breaks->list.items[i].pieces);
    put_steps(p, of, count);
    put_hours(p, of, count);
    size_t price = put_for_one(p, "Price of a piece, net", BUILD_PIECES, breaks);
    size_t cost = put_for_one(p, "Cost of a piece", BUILD_COST, breaks);
    put_units(p, of, count);
    put_facts(p, of, count);
    put_chart(p, price, cost);
}

/* ---- the choice ---- */

void estimate_choice(estimate_paper *p, const sb_breaks *breaks) {
    sb_counts *among = SB_NEW(p->run->pool, sb_counts);
    for (size_t i = 0; i < breaks->list.count; i++)
        SB_PUSH(p->run->pool, *among, breaks->list.items[i].pieces);
    sb_table *table = sb_table_add(p->run, p->rating, "", "Number of pieces|Of what|Value>");
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text("Pieces"));
    row[1] = sb_cell_text("one of the numbers that were planned");
    row[2] = sb_cell_strong(
        sb_cell_input(sb_cell_named(sb_cell_count(breaks->list.items[breaks->own].pieces), "quantity")));
    row[2].among = among;
    p->chosen = sb_rel_cell(p->run, table, 0, 2);
}

static estimate_paper *start_batches(estimate_paper *p, sb_document *document, const sb_breaks *breaks) {
    size_t count = breaks->list.count;
    estimate_paper *of = SB_NEW_ARRAY(p->run->pool, estimate_paper, count);
    p->numbers_sheet = sb_sheet_add(p->run, document, "Numbers of pieces");
    p->numbers_sheet->landscape = count > 6;
    for (size_t i = 0; i < count; i++) {
        of[i] = *p;
        start_batch(&of[i], document, &breaks->list.items[i]);
    }
    if (p->e->pieces.count > 1)
        p->sharing = sb_sheet_add(p->run, document, "Sharing");
    for (size_t i = 0; i < count; i++)
        of[i].sharing = p->sharing;
    return of;
}

/* The job's own number first: the prices of material that it has stand first in their list. */
void estimate_numbers(estimate_paper *p, sb_document *document, const sb_breaks *breaks) {
    estimate_paper *of = start_batches(p, document, breaks);
    for (size_t i = 0; i < breaks->list.count; i++) {
        size_t at = i == 0 ? breaks->own : i <= breaks->own ? i - 1 : i;
        fill_batch(&of[at], &breaks->list.items[at], at == breaks->own);
    }
    sb_paragraph_add(p->run, p->numbers_sheet,
                     "Each number of pieces is planned and priced for itself, on sheets of its own.", false);
    estimate_says_charge(p, p->numbers_sheet);
    put_side_by_side(p, of, breaks);
}
