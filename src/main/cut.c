/* main/cut.c -- cutting plans and the cut sheet, from a job or from a bare list. */
#include "main/command.h"

/* The cut sheet for the saw and as a workbook, and what else was asked for. */
static bool put_papers(sb_run *run, const sb_options *options, const char *folder, const char *name,
                       const sb_document *cuts, const sb_document *labels) {
    sb_file_set *files = sb_ok(run) ? sb_file_set_new(run, folder) : NULL;
    const char *sheet = sb_pool_print(run->pool, "%s-cuts", name);
    return file_pdf(run, files, sheet, cuts) && file_xlsx(run, files, sheet, cuts) &&
           (!labels || file_pdf(run, files, sb_pool_print(run->pool, "%s-labels", name), labels)) &&
           (!options->drawings || file_drawings(run, files, name, cuts, options->drawings)) &&
           sb_file_set_keep(run, files);
}

static int cut_job(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    if (!ways)
        return STATUS_WRONG_INPUT;
    const sb_way *way = &ways->list.items[0];
    sb_document *cuts = sb_paper_cuts(run, desk.shop, desk.job, way);
    sb_document *labels = options->labels ? sb_paper_labels(run, desk.shop, desk.job, way) : NULL;
    if (!put_papers(run, options, desk.folder, desk.base, cuts, labels))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_plan(run, way->plan, desk.shop->settings.currency.digits));
    else
        show_document(run, options, cuts);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}

/* The shop around the list, if there is one, brings labour and leftovers into the plan. */
static bool bare_rules(sb_run *run, const sb_options *options, sb_problem *problem, sb_style *style,
                       struct sb_label_grid *labels) {
    const char *home = options->material_only ? NULL : sb_shop_find(run, options->parts);
    const sb_shop *shop = home ? desk_shop(run, options, home, NULL) : NULL;
    if (shop) {
        sb_problem_under_shop(run, problem, shop);
        *style = shop->settings.style;
        *labels = shop->settings.labels;
    }
    problem->rules.material_only = shop == NULL;
    problem->rules.seconds = options->seconds;
    problem->rules.watch = watch_new(run, options, 2);
    return sb_ok(run);
}

static int cut_list(sb_run *run, const sb_options *options) {
    sb_length kerf = {0}, trim = {0};
    if (!options->kerf && !options->json)
        sb_note(run, (sb_place){0}, "no --kerf was given: the list is planned as if the saw took nothing");
    if ((options->kerf && !option_length(run, "kerf", options->kerf, &kerf)) ||
        (options->trim && !option_length(run, "trim", options->trim, &trim)))
        return STATUS_WRONG_INPUT;
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules = (sb_cut_rules){.kerf = kerf, .rip_kerf = kerf, .panel_kerf = kerf};
    bool inches = options->units && options->units[0] == 'i';
    sb_style style = inches ? (sb_style){SB_UNITS_IN, {SB_NM_PER_INCH / 32}, false}
                            : (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 10}, false};
    sb_currency currency = {"", 2};
    struct sb_label_grid grid = sb_label_grid_usual();
    bool read = sb_problem_read(run, problem, options->parts, options->stock, trim, currency.digits);
    bool measured = !options->measured || sb_problem_measured(run, problem, options->measured);
    if (!read || !measured || !bare_rules(run, options, problem, &style, &grid))
        return STATUS_WRONG_INPUT;
    const sb_plan *plan = sb_plan_make(run, problem);
    if (!plan || !sb_ok(run))
        return STATUS_WRONG_INPUT;
    sb_document *cuts = sb_paper_bare_cuts(run, plan, style, currency);
    const char *name = path_base(run, options->parts, ".csv");
    sb_document *labels = options->labels ? sb_paper_bare_labels(run, plan, name, &grid, style) : NULL;
    if (options->out && !put_papers(run, options, options->out, name, cuts, labels))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_plan(run, plan, currency.digits));
    else
        show_document(run, options, cuts);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}

int command_cut(sb_run *run, const sb_options *options) {
    bool job = options->words.count == 1;
    bool list = options->parts || options->stock || options->measured;
    if (job && list)
        return wrong_use(
            "a job or a bare list, not both: sawbill cut JOB, or sawbill cut --parts FILE --stock FILE");
    if (job && (options->kerf || options->trim))
        return wrong_use("--kerf and --trim go with a bare list; a job takes them from the shop's settings");
    if (job)
        return cut_job(run, options);
    if (!options->parts || !options->stock)
        return wrong_use("use: sawbill cut JOB, or sawbill cut --parts FILE --stock FILE");
    if (options->sets.count > 0 || options->option)
        return wrong_use("%s goes with a job; a bare list has nothing to choose",
                         options->option ? "--option" : "--set");
    if ((options->drawings || options->labels) && !options->out)
        return wrong_use("%s of a bare list wants --out DIR to put them in",
                         options->drawings ? "--drawings" : "--labels");
    return cut_list(run, options);
}
