/* The record of a plan, as programs read it: whoever knows only its numbers can cut the parts and add up the money. */
#include "sample.h"

#include <math.h>
#include <unistd.h>

static const sb_record *find(const sb_record *record, const char *key) {
    for (const sb_record *at = record->first; at; at = at->next)
        if (strcmp(at->key, key) == 0)
            return at;
    return NULL;
}

static const sb_record *in(const sb_record *record, const char *key) {
    const sb_record *found = find(record, key);
    if (!found)
        fail_msg("no key '%s'", key);
    return found;
}

static double number(const sb_record *record, const char *key) {
    const sb_record *found = in(record, key);
    return found->kind == SB_RECORD_INTEGER ? (double)found->integer : found->number;
}

/* Money is a decimal string with the currency's decimals. */
static int64_t cents(const sb_record *record, const char *key) {
    const char *text = in(record, key)->text;
    assert_int_equal(in(record, key)->kind, SB_RECORD_TEXT);
    assert_int_equal(strlen(strchr(text, '.')), 3);
    return (int64_t)llround(strtod(text, NULL) * 100);
}

/* ---- a bare list, worked out by hand ---------------------------------------------------------------------- */

enum {
    KERF = 3,
    TRIM = 10
};

static const char parts_csv[] = "name,stock,length,count,width,end1,end2\n"
                                "rail,slat,700,3,,mitre 45,mitre 45\n"
                                "strip,slat,500,4,30,,\n"
                                "leg,slat,400,2,,,\n"
                                "side,ply,600,3,400,,\n";
static const char stock_csv[] = "stock,length,price,width,available,kind,trim1,trim2\n"
                                "slat,2400,8.95,95,,board,,\n"
                                "slat,1800,2.00,95,1,leftover,0,0\n"
                                "ply,2500,60,1250,,sheet,,\n";

static const char *written(sb_run *run, const char *folder, const char *name, const char *text) {
    const char *path = sb_pool_print(run->pool, "%s/%s", folder, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
    return path;
}

static const sb_record *bare_record(sb_run *run) {
    const char *base = getenv("TMPDIR");
    char *folder = sb_pool_print(run->pool, "%s/record-XXXXXX", base ? base : "/tmp");
    assert_non_null(mkdtemp(folder));
    const char *parts = written(run, folder, "parts.csv", parts_csv);
    const char *stock = written(run, folder, "stock.csv", stock_csv);
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    sb_length kerf = {KERF * SB_NM_PER_MM};
    problem->rules =
        (sb_cut_rules){.kerf = kerf, .rip_kerf = kerf, .panel_kerf = kerf, .material_only = true};
    bool read = sb_problem_read(run, problem, parts, stock, (sb_length){TRIM * SB_NM_PER_MM}, 2);
    remove(parts);
    remove(stock);
    rmdir(folder);
    const sb_plan *plan = read ? sb_plan_make(run, problem) : NULL;
    if (!plan || !sb_ok(run))
        fail_msg("%s", sb_notices_text(run, SB_NOTE, false));
    return sb_record_plan(run, plan, 2);
}

/* One board of each row does: the leftover at 2.00, one new board at 8.95, one sheet at 60. The boards' parts come to
 * 3 x 700 + 2 sections of 500 + 2 x 400 = 3900 mm, less 95 mm for each of two mitres shared: more than one board has. */
static void money_by_hand(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_record *record = bare_record(&run);
    assert_int_equal(cents(record, "cost"), 7095);
    assert_int_equal(cents(record, "bound"), 7095);
    assert_int_equal(cents(record, "material"), 7095);
    assert_int_equal(cents(record, "handling"), 0);
    assert_int_equal(cents(record, "leftovers"), 0);
    assert_true(in(record, "proved")->truth);
    assert_false(in(record, "cut_short")->truth);
    assert_int_equal(number(in(record, "counts"), "boards"), 2);
    assert_int_equal(number(in(record, "counts"), "sheets"), 1);
    assert_int_equal(number(in(record, "counts"), "ripped_mm"), 4 * 500);
    sb_run_free(&run);
}

/* Positions are from the factory end: the first part begins behind the trim, the rack piece has none. */
static void positions_from_the_factory_end(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_record *boards = in(bare_record(&run), "boards");
    int seen[3] = {0};
    for (const sb_record *board = boards->first; board; board = board->next) {
        int row = (int)number(board, "row");
        seen[row]++;
        assert_true(number(board, "length_mm") == (row == 1 ? 2400 : 1800));
        assert_true(number(board, "trim1_mm") == (row == 1 ? TRIM : 0));
        assert_true(number(in(board, "parts")->first, "at_mm") == (row == 1 ? TRIM : 0));
        assert_int_equal(cents(board, "price"), row == 1 ? 895 : 200);
        assert_true(find(board, "label") == NULL);
    }
    assert_int_equal(seen[1], 1); /* row 1 is the first line after the header */
    assert_int_equal(seen[2], 1);
    sb_run_free(&run);
}

/* Two mitred rails side by side share a cut: at 45 degrees in 95 mm the second begins 95 mm - 3 mm / cos 45 before the first
 * one's long point ends. Plane geometry. */
static void mitres_share_a_cut(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_record *boards = in(bare_record(&run), "boards");
    int shared = 0;
    for (const sb_record *board = boards->first; board; board = board->next)
        for (const sb_record *part = in(board, "parts")->first; part && part->next; part = part->next) {
            const sb_record *next = part->next;
            if (!find(part, "rear") || !find(next, "front"))
                continue;
            double rear = number(in(part, "rear"), "mitre"), front = number(in(next, "front"), "mitre");
            assert_true(fabs(rear) == 45);
            if (rear != -front)
                continue;
            double step = number(next, "at_mm") - number(part, "at_mm");
            assert_true(fabs(step - (700 - 95 + KERF * sqrt(2))) < 0.001);
            shared++;
        }
    assert_true(shared > 0);
    sb_run_free(&run);
}

/* Strips of one section lie a rip kerf apart across the board. */
static void strips_lie_side_by_side(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_record *boards = in(bare_record(&run), "boards");
    int strips = 0, beside = 0;
    for (const sb_record *board = boards->first; board; board = board->next)
        for (const sb_record *part = in(board, "parts")->first; part; part = part->next) {
            if (strcmp(in(part, "name")->text, "strip") != 0)
                continue;
            strips++;
            assert_true(number(part, "width_mm") == 30);
            double across = number(part, "across_mm");
            assert_true(across == 0 || across == 30 + KERF);
            beside += across > 0;
        }
    assert_int_equal(strips, 4);
    assert_int_equal(beside, 2);
    sb_run_free(&run);
}

/* ---- sheets: the cuts alone make the parts ------------------------------------------------------------------- */

typedef struct rect {
    double x, y, w, l;
} rect;

static rect rect_of(const sb_record *record) {
    return (rect){number(record, "x_mm"), number(record, "y_mm"), number(record, "w_mm"),
                  number(record, "l_mm")};
}

static bool same_rect(rect a, rect b) {
    return fabs(a.x - b.x) < 1e-4 && fabs(a.y - b.y) < 1e-4 && fabs(a.w - b.w) < 1e-4 &&
           fabs(a.l - b.l) < 1e-4;
}

typedef struct rects {
    rect items[200];
    size_t count;
} rects;

static void take_rect(rects *all, rect wanted) {
    for (size_t i = 0; i < all->count; i++)
        if (same_rect(all->items[i], wanted)) {
            all->items[i] = all->items[--all->count];
            return;
        }
    fail_msg("nothing lies at %g, %g of %g x %g", wanted.x, wanted.y, wanted.w, wanted.l);
}

static void put_rect(rects *all, rect piece) {
    if (piece.w > 0 && piece.l > 0)
        all->items[all->count++] = piece;
}

/* The kerf lies from `at` on; truing keeps the larger side. */
static void make_cut(rects *all, const sb_record *cut, double kerf) {
    rect whole = rect_of(cut);
    double at = number(cut, "at_mm");
    bool across = strcmp(in(cut, "across")->text, "width") == 0;
    double from = across ? whole.y : whole.x, size = across ? whole.l : whole.w;
    rect near = whole, far = whole;
    *(across ? &near.l : &near.w) = at - from;
    *(across ? &far.y : &far.x) = at + kerf;
    *(across ? &far.l : &far.w) = from + size - at - kerf;
    take_rect(all, whole);
    bool truing = number(cut, "stage") == 0;
    if (!truing || at - from > size / 2)
        put_rect(all, near);
    if (!truing || at - from <= size / 2)
        put_rect(all, far);
}

static int64_t follow_sheet(const sb_record *sheet, double kerf) {
    rects all = {.items = {{0, 0, number(sheet, "width_mm"), number(sheet, "length_mm")}}, .count = 1};
    int64_t parts = 0;
    for (const sb_record *cut = in(sheet, "cuts")->first; cut; cut = cut->next)
        make_cut(&all, cut, kerf);
    for (const sb_record *part = in(sheet, "parts")->first; part; part = part->next, parts++)
        take_rect(&all, rect_of(part));
    for (const sb_record *left = in(sheet, "leftovers")->first; left; left = left->next)
        take_rect(&all, rect_of(left));
    return parts * in(sheet, "count")->integer;
}

static void cuts_make_the_parts(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_record *sheets = in(bare_record(&run), "sheets");
    assert_int_equal(number(sheets->first, "row"), 3);
    assert_int_equal(follow_sheet(sheets->first, KERF), 3);
    sb_run_free(&run);
    sample s;
    sample_open(&s, "shelf-options");
    const sb_way *way = &s.ways->list.items[0];
    int64_t made = 0, needed = 0;
    for (const sb_record *sheet = in(sb_record_plan(&s.run, way->plan, 2), "sheets")->first; sheet;
         sheet = sheet->next)
        made += follow_sheet(sheet, (double)way->plan->problem->rules.panel_kerf.nm / 1e6);
    for (size_t i = 0; i < way->plan->problem->needs.count; i++)
        if (way->plan->problem->stock.items[way->plan->problem->needs.items[i].stock].sheet)
            needed += way->plan->problem->needs.items[i].count;
    assert_int_equal(made, needed);
    sample_close(&s);
}

/* ---- what shows a bound of sheets, from the record alone ------------------------------------------------------ */

static int64_t item(const sb_record *record, const char *key, size_t index) {
    const sb_record *at = in(record, key)->first;
    for (size_t i = 0; at && i < index; i++)
        at = at->next;
    assert_non_null(at);
    return at->integer;
}

static size_t items(const sb_record *record, const char *key) {
    size_t count = 0;
    for (const sb_record *at = in(record, key)->first; at; at = at->next)
        count++;
    return count;
}

/* The least that sheets from supply `s` on cost whose worths come to what is left. */
static int64_t least_cover(const sb_record *proof, size_t s, int64_t left) {
    int64_t least = INT64_MAX / 4;
    if (left <= 0 || s == items(proof, "worth"))
        return left <= 0 ? 0 : least;
    for (int64_t n = 0;; n++) {
        int64_t rest = left - n * item(proof, "worth", s);
        int64_t cost = n * item(proof, "least", s) + least_cover(proof, s + 1, rest);
        least = cost < least ? cost : least;
        if (item(proof, "worth", s) <= 0 || rest <= 0)
            return least;
    }
}

static void verify_proof(const sb_record *proof, size_t needs, size_t supplies) {
    const char *how = in(proof, "how")->text;
    bool scales = strcmp(how, "cover") == 0;
    int64_t scale = in(proof, "scale")->integer, sum = 0;
    assert_true(scales || strcmp(how, "guillotine") == 0 || strcmp(how, "strips") == 0);
    assert_int_equal(items(proof, "duals"), needs);
    assert_int_equal(items(proof, "counted"), needs);
    assert_int_equal(items(proof, "worth"), supplies);
    assert_int_equal(items(proof, "least"), supplies);
    assert_int_equal(find(proof, "scales") ? items(proof, "scales") : 0, scales ? needs : 0);
    assert_int_equal(find(proof, "once") ? items(proof, "once") : 0, scales ? 0 : needs);
    assert_int_equal(!find(proof, "unit_x_mm"), scales);
    assert_int_equal(!find(proof, "unit_y_mm"), scales);
    for (size_t i = 0; i < needs; i++)
        sum += item(proof, "duals", i) * item(proof, "counted", i);
    int64_t figure = in(proof, "common")->integer + least_cover(proof, 0, sum);
    assert_true((in(proof, "bound")->integer - 1) * scale < figure);
    assert_true(in(proof, "bound")->integer <= in(proof, "cost")->integer);
}

static void add_panel(sb_run *run, sb_problem *p, double length, double width, int64_t count) {
    sb_need need = {.name = "panel", .length = {(int64_t)(length * 1e6)}, .width = {(int64_t)(width * 1e6)}};
    need.count = count;
    SB_PUSH(run->pool, p->needs, need);
}

static void add_sheet(sb_run *run, sb_problem *p, double length, double width, int64_t price) {
    sb_supply supply = {.length = {(int64_t)(length * 1e6)}, .width = {(int64_t)(width * 1e6)}};
    supply.price.milli = price * 1000;
    supply.available = -1;
    supply.label = "";
    SB_PUSH(run->pool, p->supplies, supply);
}

static const char *prove_panels(int stages, double width) {
    sb_run run = sb_run_new();
    sb_problem p = {.rules = {.panel_kerf = {3200000}, .material_only = true, .stages = stages}};
    SB_PUSH(run.pool, p.stock, ((sb_cut_stock){.name = "ply", .sheet = true}));
    add_sheet(&run, &p, 1220, 1220, 2600);
    add_sheet(&run, &p, 1220, 610, 1390);
    add_panel(&run, &p, 520, width, 19);
    add_panel(&run, &p, 450, 330, 22);
    const sb_plan *plan = sb_plan_make(&run, &p);
    assert_non_null(plan);
    const sb_record *proof = in(sb_record_plan(&run, plan, 2), "certificate")->first;
    verify_proof(proof, p.needs.count, p.supplies.count);
    const char *how = in(proof, "how")->text;
    const char *known = strcmp(how, "cover") == 0    ? "cover"
                        : strcmp(how, "strips") == 0 ? "strips"
                                                     : "guillotine";
    sb_run_free(&run);
    return known;
}

/* Panels of many widths: each of the three kinds comes about. */
static void sheets_tell_how_they_are_proved(void **state) {
    int strips = 0, guillotine = 0, jobs = 12;
    (void)state;
    for (int i = 0; i < jobs; i++) {
        strips += strcmp(prove_panels(3, 200 + 37 * i), "strips") == 0;
        guillotine += strcmp(prove_panels(0, 200 + 37 * i), "guillotine") == 0;
    }
    print_message("of %d: %d by strips, %d by guillotine\n", jobs, strips, guillotine);
    assert_true(strips > 0 && strips < jobs && guillotine > 0 && guillotine < jobs);
}

/* ---- jobs -------------------------------------------------------------------------------------------------------- */

static int64_t parts_on(const sb_record *board) {
    int64_t parts = 0;
    for (const sb_record *part = in(board, "parts")->first; part; part = part->next)
        parts++;
    return parts * in(board, "count")->integer;
}

/* Boards, sheets and their prices add up to the plan's; the certificate has one entry for each stock. */
static void jobs_add_up(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_plan *plan = s.ways->list.items[0].plan;
        const sb_record *record = sb_record_plan(&s.run, plan, 2);
        int64_t boards = 0, sheets = 0, money = 0, parts = 0, needed = 0, stocks = 0;
        for (const sb_record *b = in(record, "boards")->first; b; b = b->next) {
            boards += in(b, "count")->integer;
            money += in(b, "count")->integer * cents(b, "price");
            parts += parts_on(b);
        }
        for (const sb_record *b = in(record, "sheets")->first; b; b = b->next) {
            sheets += in(b, "count")->integer;
            money += in(b, "count")->integer * cents(b, "price");
            parts += parts_on(b);
        }
        for (size_t n = 0; n < plan->problem->needs.count; n++)
            needed += plan->problem->needs.items[n].count;
        for (const sb_record *c = in(record, "certificate")->first; c; c = c->next)
            stocks++;
        assert_int_equal(boards, in(in(record, "counts"), "boards")->integer);
        assert_int_equal(sheets, in(in(record, "counts"), "sheets")->integer);
        assert_int_equal(parts, needed);
        assert_int_equal(stocks, plan->problem->stock.count);
        /* a rack piece's credit is kept finer than a cent, so each may be half a cent off */
        assert_true(llabs(money - cents(record, "material")) <= (boards + sheets + 1) / 2);
        assert_true(cents(record, "bound") <= cents(record, "cost"));
        sample_close(&s);
    }
}

/* Half a cent goes up in what is paid, and never up in what cannot be beaten. */
static void a_bound_is_rounded_down(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem problem = {.rules = {.kerf = {0}}};
    sb_plan plan = {.problem = &problem, .cost = {123500}, .bound = {123999}};
    const sb_record *record = sb_record_plan(&run, &plan, 2);
    assert_string_equal(in(record, "cost")->text, "1.24");
    assert_string_equal(in(record, "bound")->text, "1.23");
    assert_string_equal(in(sb_record_plan(&run, &plan, 0), "cost")->text,
                        "124"); /* yen have no decimals (ISO 4217) */
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(money_by_hand),           cmocka_unit_test(positions_from_the_factory_end),
        cmocka_unit_test(mitres_share_a_cut),      cmocka_unit_test(strips_lie_side_by_side),
        cmocka_unit_test(cuts_make_the_parts),     cmocka_unit_test(jobs_add_up),
        cmocka_unit_test(a_bound_is_rounded_down), cmocka_unit_test(sheets_tell_how_they_are_proved),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
