/* The cut sheet on pages: every box of text is measured, on all samples and on lists made to hurt. */
#include "sample.h"

#include "writers/pages.h"

#include <unistd.h>

/* ---- what must hold of every page ----------------------------------------------------------------------- */

/* With plain blanks within numbers. */
static const char *words_of(sb_run *run, const ink_text *text) {
    const char *all = pango_layout_get_text(text->line->layout) + text->line->start_index;
    char *words = sb_pool_copy(run->pool, all, (size_t)text->line->length);
    for (char *bound = strstr(words, "\xC2\xA0"); bound; bound = strstr(bound, "\xC2\xA0")) {
        *bound = ' ';
        memmove(bound + 1, bound + 2, strlen(bound + 2) + 1);
    }
    return words;
}

static void stands_alone(sb_run *run, const ink *page, size_t number) {
    const ink_text *one, *other;
    if (ink_find_overlap(page, &one, &other))
        fail_msg("page %zu: \"%s\" stands on \"%s\"", number, words_of(run, one), words_of(run, other));
}

static void stays_on_the_page(sb_run *run, const ink *page, size_t number) {
    for (size_t i = 0; i < page->items.count; i++) {
        const ink_text *text = &page->items.items[i].text;
        if (!page->items.items[i].is_text)
            continue;
        if (text->box.left < 20 || text->box.top < 20 ||
            text->box.left + text->box.width > page->width - 20 ||
            text->box.top + text->box.height > page->height - 15)
            fail_msg("page %zu: \"%s\" runs off", number, words_of(run, text));
        if (text->size < 9)
            fail_msg("page %zu: \"%s\" is set in %d points", number, words_of(run, text), text->size);
    }
}

/* No line ends or begins at the sign for times in "20 x 95". */
static void sizes_are_whole(sb_run *run, const ink *page, size_t number) {
    for (size_t i = 0; i < page->items.count; i++) {
        if (!page->items.items[i].is_text)
            continue;
        const char *words = words_of(run, &page->items.items[i].text);
        size_t length = strlen(words);
        if (strncmp(words, "x ", 2) == 0 || (length > 1 && strcmp(words + length - 2, " x") == 0))
            fail_msg("page %zu: a size is broken: \"%s\"", number, words);
    }
}

/* Lengths of the tables, which are set and marked, stand in 12 points somewhere. */
static bool stands_large(sb_run *run, ink_pages pages, const char *words) {
    for (size_t p = 0; p < pages.count; p++)
        for (size_t i = 0; i < pages.items[p].items.count; i++) {
            const ink_item *item = &pages.items[p].items.items[i];
            if (item->is_text && item->text.size >= 12 && strcmp(words_of(run, &item->text), words) == 0)
                return true;
        }
    return false;
}

static void numbers_are_large(sb_run *run, const sb_document *document, ink_pages pages) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            for (size_t i = 0; table && i < table->rows.count * table->column_count; i++) {
                const sb_cell *cell = &table->rows.items[i / table->column_count][i % table->column_count];
                if (cell->kind != SB_CELL_LENGTH || cell->exact)
                    continue;
                const char *words = sb_write_length(run, (sb_length){cell->amount}, &document->style);
                if (!stands_large(run, pages, words))
                    fail_msg("%s is nowhere set in 12 points", words);
            }
        }
}

static ink_pages look_over(sb_run *run, const sb_document *document) {
    const type_case *type = type_open(run);
    assert_non_null(type);
    ink_pages pages = pages_of(run, type, document);
    for (size_t i = 0; i < pages.count; i++) {
        stands_alone(run, &pages.items[i], i + 1);
        stays_on_the_page(run, &pages.items[i], i + 1);
        sizes_are_whole(run, &pages.items[i], i + 1);
    }
    numbers_are_large(run, document, pages);
    return pages;
}

static size_t page_with(sb_run *run, ink_pages pages, const char *words) {
    for (size_t p = 0; p < pages.count; p++)
        for (size_t i = 0; i < pages.items[p].items.count; i++)
            if (pages.items[p].items.items[i].is_text &&
                strcmp(words_of(run, &pages.items[p].items.items[i].text), words) == 0)
                return p;
    fail_msg("nowhere: %s", words);
    return 0;
}

/* ---- samples -------------------------------------------------------------------------------------------- */

static void samples_are_legible(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (size_t way = 0; way < s.ways->list.count; way++)
            for (int letter = 0; letter < 2; letter++) {
                sb_document *document = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[way]);
                document->letter = letter;
                ink_pages pages = look_over(&s.run, document);
                assert_true(pages.count > document->sheets.count / 2);
            }
        sample_close(&s);
    }
}

/* The paper takes any document: those with money, too. */
static void other_papers_are_legible(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        look_over(&s.run, sb_paper_estimate(&s.run, s.shop, s.job, s.ways, NULL));
        look_over(&s.run,
                  sb_paper_order(&s.run, s.shop, s.job->name, s.job->date, s.ways->list.items[0].order));
        sample_close(&s);
    }
}

/* ---- lists made to hurt --------------------------------------------------------------------------------- */

static const char *put_file(sb_run *run, const char *folder, const char *name, const char *text) {
    const char *path = sb_pool_print(run->pool, "%s/%s", folder, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
    return path;
}

static const sb_plan *plan_of(sb_run *run, const char *parts, const char *stock) {
    const char *base = getenv("TMPDIR");
    char *folder = sb_pool_print(run->pool, "%s/sawbill-pages-XXXXXX", base && *base ? base : "/tmp");
    assert_non_null(mkdtemp(folder));
    const char *parts_csv = put_file(run, folder, "parts.csv", parts);
    const char *stock_csv = put_file(run, folder, "stock.csv", stock);
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules =
        (sb_cut_rules){.kerf = SB_MM(3), .rip_kerf = SB_MM(3), .panel_kerf = SB_MM(3), .material_only = true};
    assert_true(sb_problem_read(run, problem, parts_csv, stock_csv, SB_MM(10), 2));
    unlink(parts_csv);
    unlink(stock_csv);
    rmdir(folder);
    const sb_plan *plan = sb_plan_make(run, problem);
    if (!plan || !sb_ok(run))
        fail_msg("%s", sb_notices_text(run, SB_NOTE, false));
    return plan;
}

static sb_document *cuts_of(sb_run *run, const char *parts, const char *stock) {
    return sb_paper_bare_cuts(run, plan_of(run, parts, stock),
                              (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 10}, false}, (sb_currency){"", 2});
}

static void legible_list(const char *parts, const char *stock) {
    sb_run run = sb_run_new();
    look_over(&run, cuts_of(&run, parts, stock));
    sb_run_free(&run);
}

static void sixty_parts_on_one_board(void **state) {
    (void)state;
    legible_list("name,stock,length,count\npeg,batten,37,60\n",
                 "stock,length,price,width\nbatten,2500,5,45\n");
    legible_list("name,stock,length,count\npeg,batten,37,20\nplug,batten,38,20\nwedge,batten,35.5,20\n",
                 "stock,length,price\nbatten,2500,5\n");
}

static void one_millimetre_beside_a_long_part(void **state) {
    (void)state;
    legible_list("name,stock,length,count\nshim,batten,1,4\npole,batten,2400,1\n",
                 "stock,length,price,width\nbatten,2500,5,45\n");
}

static void long_names(void **state) {
    (void)state;
    legible_list("name,stock,length,count\n"
                 "upper left-hand stretcher of the low bench,batten,420,4\n"
                 "Donaudampfschifffahrtsgesellschaftskapitän,batten,390,4\n"
                 "lower right-hand stretcher of the big desk,batten,1200,2\n",
                 "stock,length,price,width\nbatten,3000,5,45\n");
}

static void names_of_other_scripts(void **state) {
    (void)state;
    legible_list(
        "name,stock,length,count\nלוח עליון,batten,420,4\nلوح جانبي,batten,390,4\n"
        "Élément supérieur d'étagère,batten,700,2\nŽebřina šikmá,batten,260,3\nÅngström Ấ,batten,240,3\n",
        "stock,length,price,width\nbatten,3000,5,45\n");
}

static void sheets_with_slivers(void **state) {
    (void)state;
    legible_list(
        "name,stock,length,width,count\nside panel of the wardrobe,ply,600,400,4\nedging,ply,600,12,9\n"
        "wedge,ply,30,20,14\nback,ply,1200,580,1\nrunner under the long drawer of it,ply,300,35,6\n",
        "stock,length,price,width,kind\nply,2440,50,1220,sheet\n");
}

static void sixty_parts_on_one_sheet(void **state) {
    (void)state;
    legible_list("name,stock,length,width,count\ntile,ply,240,120,60\n",
                 "stock,length,price,width,kind\nply,2500,50,1250,sheet\n");
    legible_list("name,stock,length,width,count\ntile,ply,80,60,60\nslip,ply,40,30,60\n",
                 "stock,length,price,width,kind\nply,2500,50,1250,sheet\n");
}

static void long_and_foreign_names_on_sheets(void **state) {
    (void)state;
    legible_list("name,stock,length,width,count\nupper left-hand stretcher of the low bench,ply,420,300,4\n"
                 "Donaudampfschifffahrtsgesellschaftskapitän,ply,390,140,6\nלוח עליון,ply,420,90,4\nلوح "
                 "جانبي,ply,390,400,2\n"
                 "Élément supérieur d'étagère,ply,700,260,2\nŽebřina šikmá,ply,260,40,9\n",
                 "stock,length,price,width,kind\nply,2500,50,1250,sheet\n");
}

/* Where texts leave lines no room for their numbers, the numbers come first: each cut has its own, on its line. */
static void all_cuts_are_numbered(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_document *cuts =
        cuts_of(&run,
                "name,stock,length,width,count,grain\nside (Cabinet),ply,700,400,3,along\n"
                "drawer front (Cabinet),ply,559,149,6,across\ndoor,long,2400,600,1,along\n",
                "stock,length,price,width,kind\nply,1250,50,1250,sheet\nlong,2440,50,1220,sheet\n");
    ink_pages pages = look_over(&run, cuts);
    for (int cut = 1; cut <= 17; cut++)
        page_with(&run, pages, sb_pool_print(run.pool, "%d", cut));
    sb_run_free(&run);
}

static void one_millimetre_on_a_sheet(void **state) {
    (void)state;
    legible_list("name,stock,length,width,count\nshim,ply,1,1,3\nveneer,ply,2400,1,2\ntop,ply,2400,600,1\n",
                 "stock,length,price,width,kind\nply,2500,50,1250,sheet\n");
}

static void ends_at_all_angles(void **state) {
    (void)state;
    legible_list(
        "name,stock,length,count,end1,end2\nbrace,batten,600,2,mitre 60,mitre -60\n"
        "rafter,batten,900,2,mitre 35,square\nhip,batten,500,3,mitre 30 bevel 20,mitre -30 bevel 20\n"
        "lid,batten,300,4,bevel 45,bevel -45\n",
        "stock,length,price,width\nbatten,4000,5,140\n");
    legible_list(
        "name,stock,length,count,end1,end2\nsliver,batten,900,2,mitre 0.1,mitre -0.1\n"
        "wedge,batten,3000,2,mitre 85,square\nspike,batten,1400,2,mitre 75 bevel 60,mitre 75 bevel -60\n"
        "chamfer,batten,300,4,bevel 1,bevel 88\n"
        "upper left-hand stretcher of the low bench,batten,500,3,mitre 12.34 bevel 5.67,mitre 33 bevel 44\n",
        "stock,length,price,width\nbatten,4000,5,45\n");
}

/* ---- labels --------------------------------------------------------------------------------------------- */

static int64_t parts_made(const sb_way *way) {
    int64_t count = 0;
    for (size_t i = 0; i < way->takeoff->parts.count; i++)
        count += way->takeoff->parts.items[i].count;
    for (size_t i = 0; i < way->plan->boards.count; i++)
        count += way->plan->boards.items[i].leftover.nm > 0 ? way->plan->boards.items[i].count : 0;
    for (size_t i = 0; i < way->plan->sheets.count; i++)
        count += (int64_t)way->plan->sheets.items[i].leftovers.count * way->plan->sheets.items[i].count;
    return count;
}

/* One for each part and each leftover; a size is never cut, however small the grid. */
static void each_part_has_a_label(void **state) {
    static const int64_t grids[][2] = {{3, 8}, {2, 4}, {5, 13}, {7, 20}};
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        sb_shop shop = *s.shop;
        s.shop = &shop;
        for (size_t g = 0; g < sizeof grids / sizeof *grids; g++) {
            s.shop->settings.labels.columns = grids[g][0];
            s.shop->settings.labels.rows = grids[g][1];
            const sb_way *way = &s.ways->list.items[0];
            const sb_document *document = sb_paper_labels(&s.run, s.shop, s.job, way);
            const sb_cards *cards = document->sheets.items[0]->blocks.items[0].cards;
            assert_int_equal(cards->items.count, parts_made(way));
            const type_case *type = type_open(&s.run);
            ink_pages pages = pages_of(&s.run, type, document);
            assert_int_equal(pages.count,
                             (parts_made(way) + grids[g][0] * grids[g][1] - 1) / (grids[g][0] * grids[g][1]));
            for (size_t p = 0; p < pages.count; p++) {
                stands_alone(&s.run, &pages.items[p], p + 1);
                stays_on_the_page(&s.run, &pages.items[p], p + 1);
            }
        }
        sample_close(&s);
    }
}

/* What comes next is told in few words, so that the job still stands below: of a part glued up and then mitred, too. */
static void labels_tell_all(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece planter : Planter\n  recipe splayed-planter\n  count 2\n");
    const sb_document *document = sb_paper_labels(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    const sb_cards *cards = document->sheets.items[0]->blocks.items[0].cards;
    ink_pages pages = pages_of(&s.run, type_open(&s.run), document);
    size_t jobs = 0, ends = 0;
    for (size_t p = 0; p < pages.count; p++)
        for (size_t i = 0; i < pages.items[p].items.count; i++) {
            const ink_item *item = &pages.items[p].items.items[i];
            jobs += item->is_text && strcmp(words_of(&s.run, &item->text), "made") == 0;
        }
    for (size_t i = 0; i < cards->items.count; i++)
        for (size_t l = 0; l < cards->items.items[i].lines.count; l++)
            ends += strstr(cards->items.items[i].lines.items[l], "; cut the ends") != NULL;
    assert_int_equal(jobs, cards->items.count);
    assert_int_equal(ends, 8);
    sample_close(&s);
}

/* ---- rows stay in company --------------------------------------------------------------------------------- */

/* Below so many lines of text: no row, and no heading, stands on a page without a row beside it. */
static void no_row_stands_alone(void **state) {
    (void)state;
    for (int filler = 20; filler < 60; filler++)
        for (int rows = 2; rows < 6; rows++) {
            sb_run run = sb_run_new();
            sb_document *document =
                sb_document_new(&run, "made", (sb_date){0}, (sb_style){SB_UNITS_MM, {SB_NM_PER_MM}, false},
                                (sb_currency){"", 2});
            sb_sheet *sheet = sb_sheet_add(&run, document, "made");
            for (int i = 0; i < filler; i++)
                sb_paragraph_add(&run, sheet, "filler", true);
            sb_heading_add(&run, sheet, "heading");
            sb_table *table = sb_table_add(&run, sheet, "title", "Row|Done");
            for (int i = 0; i < rows; i++)
                sb_row_add(&run, table)[0] = sb_cell_text(sb_pool_print(run.pool, "row %d", i));
            ink_pages pages = pages_of(&run, type_open(&run), document);
            const char *last = sb_pool_print(run.pool, "row %d", rows - 1);
            const char *before = sb_pool_print(run.pool, "row %d", rows - 2);
            assert_int_equal(page_with(&run, pages, "heading"), page_with(&run, pages, "row 0"));
            assert_int_equal(page_with(&run, pages, "title"), page_with(&run, pages, "row 1"));
            assert_int_equal(page_with(&run, pages, before), page_with(&run, pages, last));
            sb_run_free(&run);
        }
}

static void labels_of_hard_names(void **state) {
    (void)state;
    static const int64_t grids[][2] = {{3, 8}, {5, 13}, {7, 20}};
    sb_run run = sb_run_new();
    const sb_plan *plan =
        plan_of(&run,
                "name,stock,length,count,end1,end2\n"
                "upper left-hand stretcher of the low bench,batten,420.5,4,mitre 45,mitre -45\n"
                "Donaudampfschifffahrtsgesellschaftskapitän,batten,390,4,square,bevel 12.5\n"
                "לוח עליון,batten,1,4,square,square\nŽebřina šikmá,batten,2400,2,square,square\n",
                "stock,length,price,width\nbatten,3000,5,45\n");
    for (size_t g = 0; g < sizeof grids / sizeof *grids; g++) {
        struct sb_label_grid grid = sb_label_grid_usual();
        grid.columns = grids[g][0], grid.rows = grids[g][1];
        const sb_document *labels = sb_paper_bare_labels(&run, plan, "made", &grid,
                                                         (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 10}, false});
        ink_pages pages = pages_of(&run, type_open(&run), labels);
        assert_int_equal(pages.count, 1);
        stands_alone(&run, &pages.items[0], 1);
        stays_on_the_page(&run, &pages.items[0], 1);
    }
    sb_run_free(&run);
}

/* The pictures of the quote, of every recipe that has some, as small and as large as its inputs are likely to be. */
static void outlines_are_legible(void **state) {
    (void)state;
    static const char *const pieces[] = {"garden-bench",
                                         "ledged-gate",
                                         "raised-bed",
                                         "shelf-unit",
                                         "trough-planter",
                                         "workbench",
                                         "dining-table",
                                         "planter-seat",
                                         "splayed-planter",
                                         "mitred-frame",
                                         "mitred-frame\n  set shape regular\n  set sides 15",
                                         "mitred-frame\n  set wide 250 mm\n  set high 2000 mm"};
    for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++) {
        sample s;
        char lines[160];
        snprintf(lines, sizeof lines, "piece it\n  recipe %s\n", pieces[i]);
        sample_make(&s, lines);
        const sb_wording *wording = sb_wording_read(&s.run, "templates", "en");
        look_over(&s.run, sb_paper_quote(&s.run, s.shop, s.job, s.ways, NULL, wording));
        sample_close(&s);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(samples_are_legible),
        cmocka_unit_test(other_papers_are_legible),
        cmocka_unit_test(sixty_parts_on_one_board),
        cmocka_unit_test(one_millimetre_beside_a_long_part),
        cmocka_unit_test(long_names),
        cmocka_unit_test(names_of_other_scripts),
        cmocka_unit_test(sheets_with_slivers),
        cmocka_unit_test(ends_at_all_angles),
        cmocka_unit_test(sixty_parts_on_one_sheet),
        cmocka_unit_test(long_and_foreign_names_on_sheets),
        cmocka_unit_test(one_millimetre_on_a_sheet),
        cmocka_unit_test(all_cuts_are_numbered),
        cmocka_unit_test(labels_of_hard_names),
        cmocka_unit_test(outlines_are_legible),
        cmocka_unit_test(each_part_has_a_label),
        cmocka_unit_test(labels_tell_all),
        cmocka_unit_test(no_row_stands_alone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
