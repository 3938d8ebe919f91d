/* The cut sheet, followed to the letter: whoever cuts what it says, with the kerf it assumes, has exactly the parts. */
#include "chance.h"
#include "sample.h"

#include <math.h>

/* ---- following the boards' marks ---- */

/* What is made by following one document: nothing but its printed cells, the saw's kerf and the stock's section. */
typedef struct follow {
    const sb_plan *plan;
    const sb_style *style;
    int64_t *made; /* by need */
    int64_t first; /* the board that comes next */
    size_t board;  /* into plan.boards, of the rows being followed */
    size_t part;   /* into its parts */
    double end
        [4]; /* where the wood behind the last part begins, before the kerf, at each corner of the section [mm] */
    sb_cut_end rear;  /* the last cut */
    double reached;   /* its mark [mm]; 0: none yet */
    int64_t unmarked; /* parts on boards without room for marks */
} follow;

enum {
    FAR = 1,
    LOWER = 2
};

static double mm_of(sb_length length) {
    return (double)length.nm / 1e6;
}

static double radians_of(sb_angle angle) {
    return (double)angle.udeg / 1e6 * 3.14159265358979323846 / 180;
}

/* "square", "45° (mark: far edge)", "tilt 30° (mark: lower face)", "45° and tilt 30° (mark: far edge, lower face)" */
static sb_cut_end end_said(const char *text, size_t size) {
    sb_cut_end end = {{0}, {0}};
    char *words = strndup(text, size);
    double mitre = 0, tilt = 0;
    const char *where = strstr(words, " (mark");
    if (!where)
        assert_string_equal(words, "square");
    else if (sscanf(words, "%lf\xC2\xB0 and tilt %lf", &mitre, &tilt) < 1)
        assert_int_equal(sscanf(words, "tilt %lf", &tilt), 1);
    end.mitre.udeg = (int64_t)llround(mitre * 1e6);
    end.bevel.udeg = (int64_t)llround(tilt * 1e6);
    if (mitre > 0)
        assert_true(!!strstr(where, "far edge") != !!strstr(where, "near edge"));
    if (tilt > 0)
        assert_true(!!strstr(where, "lower face") != !!strstr(where, "upper face"));
    if (where && strstr(where, "near edge"))
        end.mitre.udeg *= -1;
    if (where && strstr(where, "upper face"))
        end.bevel.udeg *= -1;
    free(words);
    return end;
}

/* "both 45° (marks: far edge); rolled over", "10° (mark: far edge), then square", "cut square, rip to 60 mm" */
static void ends_said(const char *text, sb_cut_end *front, sb_cut_end *rear) {
    *front = *rear = (sb_cut_end){{0}, {0}};
    if (strncmp(text, "cut square, rip to ", 19) == 0 || strncmp(text, "rip to ", 7) == 0)
        return;
    const char *then = strstr(text, ", then "), *stop = strchr(text, ';');
    const char *end = stop ? stop : text + strlen(text);
    if (then) {
        *front = end_said(text, (size_t)(then - text));
        *rear = end_said(then + 7, (size_t)(end - then) - 7);
        return;
    }
    const char *start = strncmp(text, "both ", 5) == 0 ? text + 5 : text;
    *front = *rear = end_said(start, (size_t)(end - start));
}

/* How far a cut lies from its mark at one corner of the section: nothing where the long point is, less elsewhere. */
static double short_of(const sb_cut_stock *stock, sb_cut_end end, int corner) {
    bool far = end.mitre.udeg >= 0, lower = end.bevel.udeg >= 0;
    double mitre = fabs(tan(radians_of(end.mitre))) * mm_of(stock->width);
    double bevel = fabs(tan(radians_of(end.bevel))) * mm_of(stock->thickness) / cos(radians_of(end.mitre));
    return (far == ((corner & FAR) != 0) ? 0 : mitre) + (lower == ((corner & LOWER) != 0) ? 0 : bevel);
}

static double kerf_along(double kerf, sb_cut_end end) {
    return kerf / cos(radians_of(end.mitre)) / cos(radians_of(end.bevel));
}

static bool parallel(sb_cut_end rear, sb_cut_end front) {
    return rear.mitre.udeg == -front.mitre.udeg && rear.bevel.udeg == -front.bevel.udeg;
}

static bool is_board_row(const sb_cell *row) {
    return row[0].strong;
}

static bool is_part_row(const sb_cell *row) {
    return row[6].kind == SB_CELL_TICK && strncmp(row[0].text, "left over", 9) != 0;
}

/* "Boards 12 to 42", "Board 3, rack piece L4" */
static void follow_board_row(follow *f, const sb_cell *row) {
    long long from = 0, to = 0;
    if (sscanf(row[0].text, "Boards %lld to %lld", &from, &to) != 2) {
        assert_int_equal(sscanf(row[0].text, "Board %lld", &from), 1);
        to = from;
    }
    if (f->part > 0)
        assert_int_equal(f->part, f->plan->boards.items[f->board++].parts.count);
    const sb_board_plan *board = &f->plan->boards.items[f->board];
    assert_int_equal(from, f->first);
    assert_int_equal(to - from + 1, board->count);
    assert_int_equal(row[1].amount, f->plan->problem->supplies.items[board->supply].length.nm);
    f->first = to + 1;
    f->part = 0;
    f->reached = 0;
}

/* A mark as the tape shows it: a length, or written out where it is finer than the shop's step. */
static double mark_said(const sb_cell *cell) {
    if (cell->kind == SB_CELL_TEXT)
        return strtod(cell->text, NULL);
    assert_int_equal(cell->kind, SB_CELL_LENGTH);
    return mm_of((sb_length){cell->amount});
}

/* How the part lies is said where it is not as it stands in the list. */
static void check_turn(const char *words, const sb_placed *part, bool ripped) {
    bool turned = part->turned && !ripped, rolled = part->rolled && !ripped;
    assert_int_equal(strstr(words, "turned end for end") != NULL, turned);
    assert_int_equal(strstr(words, "rolled over") != NULL, rolled);
}

/* The wood from the front cut to the rear one, at every corner of the section: all of the part, and less than a step
 * more. A front that is not cut by its neighbour's rear is cut at its own mark, and leaves that one its kerf. */
static void saw_part(follow *f, const sb_cell *row, const sb_need *need, const sb_cut_stock *stock) {
    double kerf = mm_of(f->plan->problem->rules.kerf), step = mm_of(f->style->step), hair = 2e-5;
    double from = mark_said(&row[2]), to = mark_said(&row[3]);
    sb_cut_end front, rear;
    ends_said(row[4].text, &front, &rear);
    bool own = f->part > 1 && !parallel(f->rear, front);
    assert_int_equal(strstr(row[4].text, "cut its front too") != NULL, own);
    for (int corner = 0; corner < 4; corner++) {
        double marked = from + short_of(stock, front, corner), ends = to - short_of(stock, rear, corner);
        double cut = f->part == 1 ? 0 : f->end[corner] + kerf_along(kerf, f->rear);
        double starts = f->part == 1 || own ? marked : cut;
        double part = mm_of(need->length) - short_of(stock, front, corner) - short_of(stock, rear, corner);
        assert_true(starts >= cut - hair);
        assert_true(marked >= starts - hair && marked < starts + step + hair);
        assert_true(ends - starts >= part - hair);
        assert_true(ends - starts < part + step + hair);
        f->end[corner] = ends;
    }
    f->rear = rear;
    f->reached = to;
}

static void follow_part(follow *f, const sb_cell *row) {
    const sb_problem *problem = f->plan->problem;
    const sb_board_plan *board = &f->plan->boards.items[f->board];
    const sb_placed *placed = &board->parts.items[f->part++];
    const sb_supply *supply = &problem->supplies.items[board->supply];
    const sb_cut_stock *stock = &problem->stock.items[supply->stock];
    const sb_need *need = &problem->needs.items[placed->need];
    bool ripped = need->width.nm > 0 && need->width.nm != stock->width.nm;
    f->made[placed->need] += board->count;
    assert_int_equal(row[1].amount, need->length.nm);
    check_turn(row[4].text, placed, ripped);
    if (strstr(row[4].text, ", as above"))
        assert_true(ripped && f->part > 1);
    else if (ripped)
        assert_int_equal(strstr(row[4].text, "then mitre each strip") != NULL,
                         need->end1.mitre.udeg != 0 || need->end2.mitre.udeg != 0);
    if (placed->across.nm > 0) {
        assert_non_null(strstr(row[4].text, "beside it"));
        return;
    }
    f->unmarked += row[3].kind == SB_CELL_EMPTY;
    if (row[3].kind == SB_CELL_EMPTY)
        return;
    saw_part(f, row, need, stock);
    assert_true(f->reached <= mm_of(supply->length) - mm_of(supply->trim1) - mm_of(supply->trim2) + 1e-5);
}

/* What goes back or falls off is there: no more than the board has behind the last cut. */
static void follow_rest(follow *f, const sb_cell *row) {
    const sb_problem *problem = f->plan->problem;
    const sb_supply *supply = &problem->supplies.items[f->plan->boards.items[f->board].supply];
    double room = mm_of(supply->length) - mm_of(supply->trim1) - mm_of(supply->trim2);
    if (f->reached > 0)
        assert_true(mm_of((sb_length){row[1].amount}) <= room - f->reached -
                                                             kerf_along(mm_of(problem->rules.kerf), f->rear) +
                                                             mm_of(f->style->step) / 2);
}

/* Whoever follows every row ends with exactly the parts that are needed. How many had no marks. */
static int64_t follow_paper(sb_run *run, const sb_document *cuts, const sb_plan *plan) {
    follow f = {.plan = plan, .style = &cuts->style, .first = 1};
    f.made = SB_NEW_ARRAY(run->pool, int64_t, plan->problem->needs.count);
    const sb_sheet *sheet = sheet_named(cuts, "Boards");
    for (size_t b = 0; sheet && b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        for (size_t r = 0; table && r < table->rows.count; r++) {
            const sb_cell *row = table->rows.items[r];
            if (is_board_row(row))
                follow_board_row(&f, row);
            else if (is_part_row(row))
                follow_part(&f, row);
            else if (row[1].kind == SB_CELL_LENGTH)
                follow_rest(&f, row);
        }
    }
    assert_int_equal(f.board + (f.part > 0), plan->boards.count);
    for (size_t i = 0; i < plan->problem->needs.count; i++) {
        const sb_need *need = &plan->problem->needs.items[i];
        if (!plan->problem->stock.items[need->stock].sheet)
            assert_int_equal(f.made[i], need->count);
    }
    return f.unmarked;
}

static void marks_make_the_parts(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (size_t w = 0; w < s.ways->list.count; w++)
            follow_paper(&s.run, sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[w]),
                         s.ways->list.items[w].plan);
        sample_close(&s);
    }
}

/* ---- stops ---- */

/* What comes off each board by the pages of stops: how many pieces of each length, that of the first need as long. */
typedef struct piles {
    const sb_problem *problem;
    int64_t *cut; /* [boards][needs] */
    int64_t boards;
    int64_t fetched, at_saw; /* boards brought to a stop; the one that is there */
} piles;

static size_t length_index(const sb_problem *problem, int64_t nm) {
    for (size_t i = 0; i < problem->needs.count; i++)
        if (problem->needs.items[i].length.nm == nm)
            return i;
    fail_msg("nothing is %g mm long", (double)nm / 1e6);
    return 0;
}

static piles piles_of(sb_run *run, const sb_plan *plan) {
    piles all = {.problem = plan->problem};
    for (size_t b = 0; b < plan->boards.count; b++)
        all.boards += plan->boards.items[b].count;
    all.cut = SB_NEW_ARRAY(run->pool, int64_t, (size_t)(all.boards + 1) * plan->problem->needs.count);
    return all;
}

static void cut_off(piles *all, int64_t board, int64_t nm, int64_t count) {
    assert_true(board >= 1 && board <= all->boards);
    all->cut[(size_t)board * all->problem->needs.count + length_index(all->problem, nm)] += count;
}

/* "2 off board 3", "4 off each of boards 5 to 8", "1 off board 9, still at the saw": how many. */
static int64_t off_boards(piles *all, const char *text, int64_t nm) {
    long long each = 0, first = 0, last = 0;
    if (strncmp(text, "strips beside", 13) == 0)
        return 0;
    if (sscanf(text, "%lld off each of boards %lld to %lld", &each, &first, &last) != 3) {
        assert_int_equal(sscanf(text, "%lld off board %lld", &each, &first), 2);
        last = first;
    }
    assert_int_equal(strstr(text, "still at the saw") != NULL, first == all->at_saw);
    all->fetched += last - first + (first != all->at_saw);
    all->at_saw = last;
    for (int64_t board = first; board <= last; board++)
        cut_off(all, board, nm, each);
    return each * (last - first + 1);
}

/* Strips that the rows promise beyond one for each section. */
static int64_t more_strips(const sb_cell *row) {
    const char *at = strstr(row[2].text, "to strips of ");
    long long strips = 0;
    if (!at)
        return 0;
    assert_int_equal(sscanf(strchr(at, ',') + 1, " %lld strips in all", &strips), 1);
    return strips - row[1].amount;
}

/* "3 x seat slat (Bench); 2 x spare for seat slat: square": the numbers of the several kinds of part that a row has; 0: of one. */
static int64_t kinds_said(const char *text) {
    const char *end = strstr(text, ": ");
    int64_t sum = 0;
    for (const char *at = text; at && at < end; at = strstr(at, "; ") ? strstr(at, "; ") + 2 : NULL) {
        long long count = 0;
        int times = 0;
        if (sscanf(at, "%lld x %n", &count, &times) == 1 && times > 0)
            sum += count;
    }
    return sum;
}

static bool spares_alone(const char *text) {
    return strncmp(text, "spare for ", 10) == 0;
}

/* One stop: its rows count up to what it promises, each with a box. The row behind it. */
static size_t follow_stop(piles *all, const sb_table *table, size_t row) {
    const sb_cell *head = table->rows.items[row];
    int64_t off = 0, fetched = all->fetched, at_saw = all->at_saw;
    do {
        const sb_cell *cells = table->rows.items[row];
        off += off_boards(all, cells[3].text, head[0].amount);
        assert_int_equal(cells[5].kind, SB_CELL_TICK);
        if (cells[4].kind == SB_CELL_COUNT)
            assert_int_equal(cells[4].amount, off);
    } while (++row < table->rows.count && table->rows.items[row][0].kind == SB_CELL_EMPTY);
    assert_int_equal(off, head[1].amount);
    if (all->fetched == fetched && all->at_saw == at_saw && off == 0)
        all->at_saw = 0; /* strips alone */
    return row;
}

/* Board by board what the stops cut is what the plan has there, so it has room for it with all kerfs. */
static void compare_piles(sb_run *run, const piles *all, const sb_plan *plan) {
    piles planned = piles_of(run, plan);
    int64_t first = 1;
    for (size_t b = 0; b < plan->boards.count; first += plan->boards.items[b++].count)
        for (int64_t n = 0; n < plan->boards.items[b].count; n++)
            for (size_t i = 0; i < plan->boards.items[b].parts.count; i++) {
                const sb_placed *part = &plan->boards.items[b].parts.items[i];
                if (part->across.nm == 0)
                    cut_off(&planned, first + n, plan->problem->needs.items[part->need].length.nm, 1);
            }
    assert_memory_equal(all->cut, planned.cut,
                        (size_t)(all->boards + 1) * plan->problem->needs.count * sizeof *all->cut);
}

/* Every section is cut at a stop, longest first within a stock, so that a mistake can be cut again; and a row says
 * whether the saw is set for it. The number of settings. */
static int64_t check_stops(sb_run *run, const sb_document *cuts, const sb_plan *plan) {
    const sb_sheet *sheet = sheet_named(cuts, "Stops");
    int64_t strips = 0, settings = 0, placed = 0;
    piles all = piles_of(run, plan);
    for (size_t b = 0; sheet && b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        int64_t longest = INT64_MAX;
        bool spare = false;
        for (size_t r = 0; table && r < table->rows.count;) {
            const sb_cell *row = table->rows.items[r];
            int64_t parts = row[1].amount + more_strips(row), kinds = kinds_said(row[2].text);
            assert_true(row[0].amount <= longest);
            assert_true(kinds == 0 || kinds == parts);
            if (spare && row[0].amount == longest)
                assert_true(spares_alone(row[2].text)); /* spares are cut last */
            spare = spares_alone(row[2].text);
            longest = row[0].amount;
            strips += parts;
            settings += strstr(row[2].text, ": at the same stop: ") == NULL;
            r = follow_stop(&all, table, r);
        }
    }
    for (size_t b = 0; b < plan->boards.count; b++)
        placed += plan->boards.items[b].count * (int64_t)plan->boards.items[b].parts.count;
    compare_piles(run, &all, plan);
    assert_int_equal(strips, placed);
    return settings;
}

static void stops_add_up(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (size_t w = 0; w < s.ways->list.count; w++) {
            const sb_way *way = &s.ways->list.items[w];
            /* one length out of two stocks is set once, and listed with each */
            assert_true(check_stops(&s.run, sb_paper_cuts(&s.run, s.shop, s.job, way), way->plan) >=
                        way->plan->counts.stops);
        }
        sample_close(&s);
    }
}

/* Three hundred jobs of boards, with two hundred of sheets below, each cut as the paper says: by marks and by stops. */
static void any_boards_are_cut(void **state) {
    (void)state;
    uint64_t seed = 2024;
    sb_style style = {SB_UNITS_MM, {SB_NM_PER_MM / 2}, false};
    int64_t unmarked = 0, parts = 0;
    for (int round = 0; round < 300; round++) {
        sb_run run = sb_run_new();
        const sb_plan *plan = sb_plan_make(&run, boards_by_chance(&run, &seed));
        if (!plan || !sb_ok(&run))
            fail_msg("%s", sb_notices_text(&run, SB_NOTE, false));
        const sb_document *cuts = sb_paper_bare_cuts(&run, plan, style, (sb_currency){"", 2});
        unmarked += follow_paper(&run, cuts, plan);
        assert_int_equal(check_stops(&run, cuts, plan), plan->counts.stops);
        for (size_t i = 0; i < plan->problem->needs.count; i++)
            parts += plan->problem->needs.items[i].count;
        sb_run_free(&run);
    }
    assert_true(unmarked * 100 < parts); /* a board without room for a tenth of a millimetre is rare */
}

/* A section to be mitred once it is ripped, a square part and strips of two widths: 350 mm, one stop. */
static void parts_of_one_length_share_their_stop(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem problem = {.rules = {.kerf = {3000000}, .rip_kerf = {3000000}, .material_only = true}};
    SB_PUSH(run.pool, problem.stock, ((sb_cut_stock){.name = "slat", .width = {95000000}}));
    sb_cut_end mitred = {{45000000}, {0}};
    static const int64_t widths[] = {60, 0, 40};
    for (size_t i = 0; i < 3; i++) {
        sb_need need = {.name = "foot", .length = {350000000}, .width = {widths[i] * 1000000}, .count = 2};
        if (i == 0)
            need.end1 = need.end2 = mitred;
        SB_PUSH(run.pool, problem.needs, need);
    }
    sb_supply supply = {.length = {3000000000}, .price = {900000}, .available = -1, .label = "", .row = 1};
    SB_PUSH(run.pool, problem.supplies, supply);
    const sb_plan *plan = sb_plan_make(&run, &problem);
    sb_style style = {SB_UNITS_MM, {SB_NM_PER_MM / 2}, false};
    const sb_document *cuts = sb_paper_bare_cuts(&run, plan, style, (sb_currency){"", 2});
    assert_int_equal(plan->counts.stops, 1);
    assert_int_equal(check_stops(&run, cuts, plan), 1);
    sb_run_free(&run);
}

/* ---- sheets: cut after cut, as the rows say ---- */

typedef struct panel {
    double w, l;
    bool gone;      /* divided, or taken as a part */
    long long name; /* a strip's number; 0: none */
} panel;

typedef struct bench {
    panel panels[400];
    size_t count;
    double kerf, step;
    long long next;   /* number of the cut that comes next */
    long long strips; /* so many have their names */
} bench;

static panel *find_panel(bench *b, double w, double l, long long name) {
    for (size_t i = 0; i < b->count; i++)
        if (!b->panels[i].gone && b->panels[i].name == name && fabs(b->panels[i].w - w) <= b->step &&
            fabs(b->panels[i].l - l) <= b->step)
            return &b->panels[i];
    fail_msg("no piece S%lld of %g x %g", name, w, l);
    return NULL;
}

static panel *add_panel(bench *b, double w, double l) {
    if (w <= 0 || l <= 0)
        return NULL;
    assert_true(b->count < sizeof b->panels / sizeof *b->panels);
    b->panels[b->count] = (panel){w, l, false, 0};
    return &b->panels[b->count++];
}

/* "S1, S3 to S5": the number at that place in the list; 0: the list is shorter, or there is none. */
static long long strip_listed(const char *list, long long place) {
    for (const char *at = list; *at == 'S'; at += strspn(at, ", ")) {
        char *end;
        long long from = strtoll(at + 1, &end, 10), to = from;
        if (strncmp(end, " to S", 5) == 0)
            to = strtoll(end + 5, &end, 10);
        if (place <= to - from)
            return from + place;
        place -= to - from + 1;
        at = end;
    }
    return 0;
}

/* The names that a row gives to pieces at the fence, and to what is left of each. */
static const char *list_behind(const char *text, const char *words) {
    const char *at = strstr(text, words);
    return at ? at + strlen(words) : "";
}

static void name_panel(bench *b, panel *made, const char *list, long long *place) {
    long long name = made ? strip_listed(list, *place) : 0;
    if (name == 0)
        return;
    assert_int_equal(name, ++b->strips);
    made->name = name;
    ++*place;
}

/* `times` off one piece with one setting of the fence. */
static void divide(bench *b, panel *from, const sb_cell *row, long long *near, long long *rests) {
    bool crosscut = strncmp(row[5].text, "crosscut", 8) == 0, all_strips = !strstr(row[5].text, "part");
    const char *strips = list_behind(row[5].text, "strip S");
    strips = *strips ? strips - 1 : list_behind(row[5].text, "strips ");
    panel rest = *from;
    double fence = mm_of((sb_length){row[1].amount});
    from->gone = true;
    for (int64_t i = 0; i < row[2].amount; i++) {
        double *size = crosscut ? &rest.l : &rest.w;
        assert_true(fence > 0 && fence <= *size + b->step);
        panel *made = add_panel(b, crosscut ? rest.w : fence, crosscut ? fence : rest.l);
        if (all_strips)
            name_panel(b, made, strips, near);
        *size -= fence + b->kerf;
    }
    name_panel(b, add_panel(b, rest.w, rest.l), list_behind(row[5].text, "the rest: "), rests);
}

/* "826", "1234 mm", "95 1/2\"" in millimetres. */
static double size_said(const char **at) {
    char *end;
    double size = strtod(*at, &end), over = 0, under = 1;
    int used = 0;
    if (*end == '/') {
        size /= strtod(end + 1, &end);
    } else if (sscanf(end, " %lf/%lf%n", &over, &under, &used) == 2) {
        size += over / under;
        end += used;
    }
    *at = end;
    return *end == '"' ? size * 25.4 : size;
}

/* "S1 to S3: 826 x 1234 mm": each piece by its name; one without a name is the sheet, or what the row before went on with. */
static void follow_cut(bench *b, const sb_cell *row) {
    double w, l, fence = mm_of((sb_length){row[1].amount});
    const char *size = strchr(row[4].text, ':') ? strchr(row[4].text, ':') + 1 : row[4].text;
    long long from = 0, to = 0, near = 0, rests = 0;
    if (sscanf(row[0].text, "%lld to %lld", &from, &to) != 2)
        to = from;
    assert_int_equal(from, b->next);
    assert_int_equal(to - from + 1, row[2].amount * row[3].amount);
    b->next = to + 1;
    l = size_said(&size);
    size = strstr(size, " x ");
    assert_non_null(size);
    size += 3;
    w = size_said(&size);
    if (strncmp(row[5].text, "true ", 5) == 0) {
        panel *sheet = find_panel(b, w, l, 0);
        assert_int_equal(row[2].amount, 2); /* one edge, then the one across from it */
        *(strncmp(row[5].text, "true ends", 9) == 0 ? &sheet->l : &sheet->w) = fence;
        return;
    }
    for (int64_t i = 0; i < row[3].amount; i++)
        divide(b, find_panel(b, w, l, strip_listed(row[4].text, i)), row, &near, &rests);
}

static void take_parts(bench *b, const sb_table *parts, int64_t *made, const sb_sheet_plan *plan) {
    size_t part = 0, left = 0;
    for (size_t r = 0; r < parts->rows.count; r++) {
        const sb_cell *row = parts->rows.items[r];
        for (int64_t i = 0; i < row[1].amount; i++) {
            find_panel(b, mm_of((sb_length){row[2].amount}), mm_of((sb_length){row[3].amount}), 0)->gone =
                true;
            if (strncmp(row[0].text, "left over", 9) != 0)
                made[plan->parts.items[part++].need] += plan->count;
            else
                left++;
        }
    }
    assert_int_equal(left, plan->leftovers.count);
    assert_int_equal(part, plan->parts.count);
}

static void follow_sheets(sb_run *run, const sb_document *cuts, const sb_plan *plan) {
    const sb_sheet *sheet = sheet_named(cuts, "Sheets");
    int64_t *made = SB_NEW_ARRAY(run->pool, int64_t, plan->problem->needs.count);
    size_t index = 0;
    bench b;
    for (size_t i = 0; sheet && i < sheet->blocks.count; i++) {
        const sb_table *table = sheet->blocks.items[i].table;
        if (!table)
            continue;
        if (strcmp(table->headings[0].text, "Part") == 0) {
            take_parts(&b, table, made, &plan->sheets.items[index++]);
            continue;
        }
        const sb_supply *supply = &plan->problem->supplies.items[plan->sheets.items[index].supply];
        b = (bench){
            .kerf = mm_of(plan->problem->rules.panel_kerf), .step = mm_of(cuts->style.step), .next = 1};
        add_panel(&b, mm_of(supply->width), mm_of(supply->length));
        for (size_t r = 0; r < table->rows.count; r++)
            follow_cut(&b, table->rows.items[r]);
        assert_int_equal(b.next, plan->sheets.items[index].cuts.count + 1);
    }
    assert_int_equal(index, plan->sheets.count);
    for (size_t i = 0; i < plan->problem->needs.count; i++)
        if (plan->problem->stock.items[plan->problem->needs.items[i].stock].sheet)
            assert_int_equal(made[i], plan->problem->needs.items[i].count);
}

static void cuts_make_the_sheet_parts(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (size_t w = 0; w < s.ways->list.count; w++)
            follow_sheets(&s.run, sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[w]),
                          s.ways->list.items[w].plan);
        sample_close(&s);
    }
}

/* Sheets of 1250 x 2500 mm under all rules of a saw. */
static sb_problem *sheets_by_chance(sb_run *run, uint64_t *seed) {
    static const int stages[] = {0, 2, 3};
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules = (sb_cut_rules){.panel_kerf = {pick(seed, 4, 8) * 500000}, .effort = 1000};
    problem->rules.stages = stages[pick(seed, 0, 2)];
    problem->rules.trims = problem->rules.stages == 2;
    problem->rules.crosscut_first = pick(seed, 0, 1) == 1;
    problem->rules.material_only = pick(seed, 0, 1) == 1;
    sb_cut_stock stock = {
        .name = "ply", .sheet = true, .useful_length = {400000000}, .useful_width = {300000000}};
    SB_PUSH(run->pool, problem->stock, stock);
    for (int64_t i = pick(seed, 1, 4); i > 0; i--) {
        sb_need need = {.name = sb_pool_print(run->pool, "panel %d", (int)i), .count = pick(seed, 1, 8)};
        need.length.nm = pick(seed, 200, 1100) * 1000000;
        need.width.nm = pick(seed, 200, 1100) * 1000000;
        need.grain = pick(seed, 0, 2) == 0 ? SB_CUT_FREE : SB_CUT_ALONG;
        SB_PUSH(run->pool, problem->needs, need);
    }
    sb_supply supply = {.length = {2500000000}, .width = {1250000000}, .price = {5000000}, .available = -1};
    supply.label = "";
    supply.trim1.nm = supply.trim2.nm = pick(seed, 0, 1) * 10000000;
    SB_PUSH(run->pool, problem->supplies, supply);
    return problem;
}

/* A letter stands for one name and one size as it lies, or the pieces that carry it cannot be told apart; how many pairs of
 * parts share one. */
static int64_t letters_are_clear(const sb_drawing *drawing) {
    int64_t shared = 0;
    for (size_t i = 0; i < drawing->labels.count; i++)
        for (size_t j = 0; j < i; j++) {
            const sb_label *a = &drawing->labels.items[i], *b = &drawing->labels.items[j];
            if (*a->mark == '\0' || *b->mark == '\0')
                continue;
            bool same = strcmp(a->text, b->text) == 0 && strcmp(a->number, b->number) == 0;
            assert_int_equal(strcmp(a->mark, b->mark) == 0, same);
            shared += same;
        }
    return shared;
}

static int64_t check_letters(const sb_document *cuts) {
    const sb_sheet *sheet = sheet_named(cuts, "Sheets");
    int64_t shared = 0;
    for (size_t i = 0; sheet && i < sheet->blocks.count; i++)
        if (sheet->blocks.items[i].drawing)
            shared += letters_are_clear(sheet->blocks.items[i].drawing);
    return shared;
}

static void cuts_make_any_sheet(void **state) {
    (void)state;
    uint64_t seed = 77;
    int64_t shared = 0;
    sb_style style = {SB_UNITS_MM, {SB_NM_PER_MM / 2}, false};
    for (int round = 0; round < 200; round++) {
        sb_run run = sb_run_new();
        const sb_plan *plan = sb_plan_make(&run, sheets_by_chance(&run, &seed));
        if (!plan || !sb_ok(&run))
            fail_msg("%s", sb_notices_text(&run, SB_NOTE, false));
        const sb_document *cuts = sb_paper_bare_cuts(&run, plan, style, (sb_currency){"", 2});
        follow_sheets(&run, cuts, plan);
        shared += check_letters(cuts);
        sb_run_free(&run);
    }
    assert_true(shared > 0);
}

/* ---- angles, cautions ---- */

/* A saw's scale counts from a square cut: set 30 and the piece shows 60 against its edge. Common practice, no source. */
static void both_readings_are_named(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece frame\n  recipe mitred-frame\n  set shape regular\n  set sides 6\n");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "mitre 30\xC2\xB0 on the scale (60\xC2\xB0 on the piece)") > 0);
    assert_true(told(cuts, "long points on the same edge") > 0);
    sample_close(&s);
}

/* Past the saw's swing the complement is set against an auxiliary fence. Common practice, no source. */
static void past_the_swing(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece gate\n  recipe ledged-gate\n  set wide 1200 mm\n  set high 800 mm\n");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "auxiliary fence") > 0);
    sample_close(&s);
    sample_make(&s, "piece frame\n  recipe mitred-frame\n");
    assert_int_equal(told(sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]), "auxiliary fence"),
                     0);
    sample_close(&s);
}

/* A piece of three dimensions, laid on the saw anew, says which hand an end then wants: common practice, no source; here by
 * turning the plane of the cut with the piece. The cut at one end has the normal (cos b cos m, cos b sin m, sin b). */
static void the_other_hand(void **state) {
    (void)state;
    static const struct {
        int x, y, z, mitre, bevel; /* how the axes turn, and then the hands of swing and tilt */
    } laid[] = {
        {1, -1, -1, -1, -1}, /* rolled over its length */
        {-1, -1, 1, 1, -1},  /* end for end, same face down */
        {-1, 1, -1, -1, 1},  /* other face down and other end first */
    };
    const double m = 0.5, b = 0.3, normal[] = {cos(b) * cos(m), cos(b) * sin(m), sin(b)};
    for (size_t i = 0; i < 3; i++) {
        double x = laid[i].x * normal[0], y = laid[i].y * normal[1], z = laid[i].z * normal[2];
        assert_int_equal(laid[i].mitre, y / x > 0 ? 1 : -1);
        assert_int_equal(laid[i].bevel, z / x > 0 ? 1 : -1);
    }
}

/* Settings of the shop: 50 degrees to the left and 60 to the right; tilt 45 to the left and 2 to the right. */
static void limits_left_and_right(void **state) {
    (void)state;
    static const char left[] =
        "the blade tilts this far to the left only: for the other hand, turn the piece end for end, same "
        "face down";
    sample s;
    sample_make(&s, "piece planter\n  recipe splayed-planter\n");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, left) > 0);
    assert_true(told(cuts, "which leaves the swing as it is") > 0);
    assert_int_equal(told(cuts, "swings this far"), 0);
    sample_close(&s);
    sample_make(&s, "piece gate\n  recipe ledged-gate\n  set wide 1000 mm\n  set high 1000 mm\n");
    cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "the saw swings this far to the right only: for the other hand, lay the piece "
                           "other face down") > 0);
    sample_close(&s);
}

static void cautions_come_once(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
        assert_int_equal(told(cuts, "eye and ear protection"), 1);
        assert_int_equal(told(cuts, "local rules"), 1);
        assert_true(sb_document_sound(&s.run, cuts));
        fits_eighty_columns(&s.run, cuts);
        sample_close(&s);
    }
}

/* With its number; "leg" is not told already because "front leg" is. */
static void every_part_of_a_stop_is_named(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = SB_NEW(run.pool, sb_problem);
    SB_PUSH(run.pool, problem->stock, ((sb_cut_stock){.name = "slat"}));
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "front leg, left", .count = 1, .length = {500000000}}));
    SB_PUSH(run.pool, problem->needs, ((sb_need){.name = "leg, left", .count = 2, .length = {500000000}}));
    SB_PUSH(run.pool, problem->needs, ((sb_need){.name = "left", .count = 1, .length = {500000000}}));
    SB_PUSH(run.pool, problem->supplies,
            ((sb_supply){.length = {2100000000}, .price = {1000}, .available = -1, .label = "", .row = 1}));
    const sb_document *cuts =
        sb_paper_bare_cuts(&run, sb_plan_make(&run, problem), (sb_style){SB_UNITS_MM, {SB_NM_PER_MM}, false},
                           (sb_currency){"", 2});
    assert_int_equal(told(cuts, "1 x front leg, left; 2 x leg, left; 1 x left"), 1);
    sb_run_free(&run);
}

/* Spares are explained where there are any, angles where there are any; clear wood is asked for by the part. */
static void only_what_the_job_needs(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "Spares stand in for parts") == 1);
    assert_true(told(cuts, "counted from a square cut") == 1);
    assert_true(told(cuts, "front leg (Garden bench; clear wood)") > 0);
    sample_close(&s);
    sb_run run = sb_run_new();
    sb_problem *problem = SB_NEW(run.pool, sb_problem);
    SB_PUSH(run.pool, problem->stock, ((sb_cut_stock){.name = "slat"}));
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "rail", .count = 2, .length = {500000000}, .clear = true}));
    SB_PUSH(run.pool, problem->supplies,
            ((sb_supply){.length = {2000000000}, .price = {1000}, .available = -1, .label = "", .row = 4}));
    cuts = sb_paper_bare_cuts(&run, sb_plan_make(&run, problem),
                              (sb_style){SB_UNITS_MM, {SB_NM_PER_MM}, false}, (sb_currency){"", 2});
    assert_int_equal(told(cuts, "Spares stand in"), 0);
    assert_int_equal(told(cuts, "counted from a square cut"), 0);
    assert_int_equal(told(cuts, "stock row 4"), 1);
    assert_true(told(cuts, "rail (clear wood)") > 0);
    sb_run_free(&run);
    /* angles that are only cut once the sides are glued up are explained too */
    sample_make(&s, "piece planter\n  recipe splayed-planter\n");
    cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_int_equal(told(cuts, "counted from a square cut"), 1);
    assert_int_equal(told(cuts, "Turn or roll the board"), 0);
    assert_int_equal(told(cuts, "glue up from 3 staves"), 1);
    assert_true(told(cuts, "both ends mitre") > 0);
    sample_close(&s);
}

/* ---- how parts lie, what stays beside them, spares ---- */

static sb_problem *slats(sb_run *run, int64_t width, int64_t length) {
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules = (sb_cut_rules){.kerf = {3000000}, .rip_kerf = {2800000}, .material_only = true};
    SB_PUSH(run->pool, problem->stock,
            ((sb_cut_stock){.name = "slat",
                            .width = {width * 1000000},
                            .thickness = {20000000},
                            .useful_length = {600000000}}));
    SB_PUSH(
        run->pool, problem->supplies,
        ((sb_supply){.length = {length * 1000000}, .price = {1000}, .available = -1, .label = "", .row = 1}));
    return problem;
}

static sb_document *paper_of(sb_run *run, const sb_problem *problem) {
    const sb_plan *plan = sb_plan_make(run, problem);
    if (!plan || !sb_ok(run))
        fail_msg("%s", sb_notices_text(run, SB_NOTE, false));
    return sb_paper_bare_cuts(run, plan, (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 2}, false},
                              (sb_currency){"", 2});
}

/* One row of a table on a sheet that tells `text`; "" where none does. */
static const char *row_telling(const sb_document *document, const char *sheet, const char *text,
                               size_t column) {
    const sb_sheet *on = sheet_named(document, sheet);
    for (size_t b = 0; on && b < on->blocks.count; b++)
        for (size_t r = 0; on->blocks.items[b].table && r < on->blocks.items[b].table->rows.count; r++)
            for (size_t c = 0; c < on->blocks.items[b].table->column_count; c++) {
                const sb_cell *row = on->blocks.items[b].table->rows.items[r];
                if (row[c].text && strstr(row[c].text, text))
                    return row[column].text;
            }
    return "";
}

static void ripped_parts_are_mitred_strip_by_strip(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 2400);
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "stile",
                       .count = 2,
                       .length = {900000000},
                       .width = {45000000},
                       .end1 = {.mitre = {30000000}}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_string_equal(
        row_telling(cuts, "Stops", "stile", 2),
        "stile: cut square, rip to strips of 45 mm, 2 strips in all, then mitre each strip: front end "
        "mitre 30\xC2\xB0 on the scale (60\xC2\xB0 on the piece), rear end square; long edge 900, short edge "
        "874 mm");
    assert_string_equal(row_telling(cuts, "Boards", "stile", 4),
                        "cut square, rip to 45 mm, then mitre each strip");
    assert_int_equal(told(cuts, "and only then mitre each strip at its ends"), 1);
    sb_run_free(&run);
}

/* Four strips alike on one board: what follows the rip is said once, not at each. */
static void strips_alike_are_told_once(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 2400);
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "foot",
                       .count = 4,
                       .length = {500000000},
                       .width = {60000000},
                       .end1 = {.mitre = {30000000}}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_int_equal(
        told(cuts, "cut square, rip to 60 mm, then mitre each strip; beside it 32 mm are left, offcut"), 1);
    assert_int_equal(told(cuts, "rip to 60 mm, as above"), 3);
    sb_run_free(&run);
}

/* A page never parts a board's row from its parts: each opens a group, and nothing else does. */
static void boards_are_groups(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
        const sb_sheet *sheet = sheet_named(cuts, "Boards");
        size_t opened = 0;
        for (size_t b = 0; b < sheet->blocks.count; b++) {
            const sb_table *table = sheet->blocks.items[b].table;
            for (size_t r = 0; table && r < table->groups.count; r++)
                assert_true(is_board_row(table->rows.items[table->groups.items[r]]));
            opened += table ? table->groups.count : 0;
        }
        assert_int_equal(opened, s.ways->list.items[0].plan->boards.count);
        sample_close(&s);
    }
}

/* 95 wide less 40 and the rip's kerf leaves 52.2: kept where it is long enough, offcut else; a sliver is not told. */
static void strips_beside_ripped_parts(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 2400);
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "lath", .count = 2, .length = {900000000}, .width = {40000000}}));
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "cleat", .count = 1, .length = {300000000}, .width = {70000000}}));
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "board", .count = 1, .length = {700000000}, .width = {90000000}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_string_equal(row_telling(cuts, "Boards", "lath", 4), "cut square, rip to 40 mm");
    assert_string_equal(row_telling(cuts, "Boards", "beside it, 40 mm wide", 4),
                        "beside it, 40 mm wide; beside it 9 mm are left, offcut");
    assert_string_equal(row_telling(cuts, "Boards", "cleat", 4),
                        "cut square, rip to 70 mm; beside it 22 mm are left, offcut");
    assert_string_equal(row_telling(cuts, "Boards", "board", 4), "cut square, rip to 90 mm");
    problem->needs.items[0].count = 1;
    cuts = paper_of(&run, problem);
    assert_string_equal(row_telling(cuts, "Boards", "lath", 4),
                        "cut square, rip to 40 mm; beside it 52 mm are left, keep it");
    assert_int_equal(told(cuts, "900 x 52 mm"), 1);
    assert_string_equal(row_telling(cuts, "Pull", "900 x 52 mm", 3), "board 1");
    assert_int_equal(told(cuts, "300 x 22 mm"), 0);
    assert_int_equal(told(cuts, "back into the rack, with a label"), 0);
    sb_run_free(&run);
}

/* Half of the alternating rails start with their other end, and the stop says how many. */
static void turned_parts_are_counted_at_their_stop(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 4000);
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "rail", .count = 4, .length = {900000000}, .end2 = {.mitre = {10000000}}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_non_null(strstr(row_telling(cuts, "Stops", "rail", 2), "; 2 of 4 turned end for end"));
    assert_int_equal(told(cuts, "square; turned end for end"), 2);
    sb_run_free(&run);
}

/* Plus has the long point on the lower face (cutting.h); 20 tan 20 = 7.28 is lost at each end. */
static void the_face_that_lies_down_is_told(void **state) {
    (void)state;
    static const struct {
        int64_t front, rear;
        const char *words;
    } ends[] = {
        {20, 20, "; long face down"},
        {-20, -20, "; long face up"},
        {20, 0, "; long face down"},
        {0, -20, "; long face up"},
        {20, -20, "; bevels lean the same way, at the front end the long face down"},
        {-20, 20, "; bevels lean the same way, at the front end the long face up"},
    };
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        sb_run run = sb_run_new();
        sb_problem *problem = slats(&run, 95, 4000);
        SB_PUSH(run.pool, problem->needs,
                ((sb_need){.name = "lid",
                           .count = 1,
                           .length = {900000000},
                           .end1 = {.bevel = {ends[i].front * 1000000}},
                           .end2 = {.bevel = {ends[i].rear * 1000000}}}));
        const char *row = row_telling(paper_of(&run, problem), "Stops", "lid", 2);
        assert_non_null(strstr(row, ends[i].words));
        assert_non_null(
            strstr(row, ends[i].front == -ends[i].rear ? "each face 892.5 mm" : "long face 900, short face"));
        sb_run_free(&run);
    }
}

/* Lengths along the edges, by geometry: 95 tan 45 = 95 is lost at each mitred end. */
static void edges_are_told_in_figures(void **state) {
    (void)state;
    static const struct {
        int64_t front, rear;
        const char *words;
    } ends[] = {
        {45, 45, "long edge 900, short edge 710 mm"},
        {45, 0, "long edge 900, short edge 805 mm"},
        {45, -45, "each edge 805 mm, from long point to short point"},
    };
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        sb_run run = sb_run_new();
        sb_problem *problem = slats(&run, 95, 4000);
        SB_PUSH(run.pool, problem->needs,
                ((sb_need){.name = "rim",
                           .count = 1,
                           .length = {900000000},
                           .end1 = {.mitre = {ends[i].front * 1000000}},
                           .end2 = {.mitre = {ends[i].rear * 1000000}}}));
        assert_non_null(strstr(row_telling(paper_of(&run, problem), "Stops", "rim", 2), ends[i].words));
        sb_run_free(&run);
    }
}

/* A trapezoid and a parallelogram of one length and angle are two shapes: two rows, each with its own words. */
static void shapes_alike_in_angle_stand_apart(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 4000);
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "rim",
                       .count = 2,
                       .length = {900000000},
                       .end1 = {.mitre = {45000000}},
                       .end2 = {.mitre = {45000000}}}));
    SB_PUSH(run.pool, problem->needs,
            ((sb_need){.name = "brace",
                       .count = 2,
                       .length = {900000000},
                       .end1 = {.mitre = {45000000}},
                       .end2 = {.mitre = {-45000000}}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_non_null(strstr(row_telling(cuts, "Stops", "rim", 2), "long points on the same edge"));
    assert_non_null(strstr(row_telling(cuts, "Stops", "brace", 2), "long points on opposite edges"));
    sb_run_free(&run);
}

/* 4 parts fill a board that has no half millimetre to spare: kerfs of 3.2 mm, marks to 0.1 mm. */
static void a_full_board_has_finer_marks(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_problem *problem = slats(&run, 95, 2010);
    problem->rules.kerf.nm = 3200000;
    SB_PUSH(run.pool, problem->needs, ((sb_need){.name = "slat", .count = 4, .length = {500000000}}));
    const sb_document *cuts = paper_of(&run, problem);
    assert_int_equal(told(cuts, "no room to spare, finer marks"), 1);
    assert_int_equal(told(cuts, "503.2") + told(cuts, "1003.2") + told(cuts, "1006.4") + told(cuts, "1506.4"),
                     4);
    sb_run_free(&run);
}

/* A spare is as long as a part, so that it takes no stop of its own, and names what it is for. */
static void spares_say_what_they_are_for(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = &s.ways->list.items[0];
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, way);
    const sb_problem *problem = &way->cutlist->problem;
    for (size_t i = 0; i < problem->needs.count; i++) {
        bool found = way->cutlist->needs.items[problem->needs.items[i].tag].part != NULL;
        for (size_t j = 0; !found && j < problem->needs.count; j++)
            found = j != i && problem->needs.items[j].stock == problem->needs.items[i].stock &&
                    problem->needs.items[j].length.nm == problem->needs.items[i].length.nm;
        assert_true(found);
    }
    assert_true(told(cuts, "spare for ") > 0);
    assert_non_null(strstr(row_telling(cuts, "Stops", "spare for cross rail, under the seat or shorter", 2),
                           "the spare stands in for cross rail, under the seat / corner block"));
    sample_close(&s);
}

/* Whoever works by stops need not look for what comes off the ends: one figure, or where it stands. */
static void what_truing_takes_is_told_with_the_stops(void **state) {
    (void)state;
    static const struct {
        int64_t trims[2];
        bool rack;
        const char *words;
    } cases[] = {{{10, 10}, false, "True one end of each board first, 10 mm off."},
                 {{10, 0}, true, "first, 10 mm off; rack pieces keep the ends they have."},
                 {{10, 40}, true, "the page Boards says how much comes off."},
                 {{10, 0}, false, "the page Boards says how much comes off."},
                 {{0, 0}, false, "Boards keep the ends they have."}};
    for (size_t c = 0; c < sizeof cases / sizeof *cases; c++) {
        sb_run run = sb_run_new();
        sb_problem problem = {.rules = {.kerf = {3000000}, .material_only = true}};
        SB_PUSH(run.pool, problem.stock, ((sb_cut_stock){.name = "slat"}));
        SB_PUSH(run.pool, problem.needs, ((sb_need){.name = "leg", .length = {900000000}, .count = 2}));
        for (size_t i = 0; i < 2; i++)
            SB_PUSH(run.pool, problem.supplies,
                    ((sb_supply){.length = {1000000000},
                                 .price = {1000},
                                 .available = 1,
                                 .label = "",
                                 .leftover = i == 1 && cases[c].rack,
                                 .trim1 = {cases[c].trims[i] * 1000000},
                                 .row = i + 1}));
        const sb_plan *plan = sb_plan_make(&run, &problem);
        const sb_document *cuts = sb_paper_bare_cuts(
            &run, plan, (sb_style){SB_UNITS_MM, {SB_NM_PER_MM}, false}, (sb_currency){"", 2});
        assert_int_equal(told(cuts, cases[c].words), 1);
        sb_run_free(&run);
    }
}

/* A part under the shop's limit of 300 mm is flagged: blocks of 80 mm at the stop, small strips and panels at the fence. */
static void short_parts_are_flagged(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_true(told(cuts, "SHORT") > 0);
    assert_int_equal(told(cuts, "SHORT: push sticks"), 0); /* its strips are long */
    sample_close(&s);
    sample_make(&s, "piece planter\n  recipe splayed-planter\n  set top 400 mm\n");
    cuts = sb_paper_cuts(&s.run, s.shop, s.job, &s.ways->list.items[0]);
    assert_non_null(
        strstr(row_telling(cuts, "Rip, glue, edge, fit", "batten; SHORT", 2), "push sticks, hands away"));
    assert_non_null(strstr(row_telling(cuts, "Sheets", "floor; SHORT", 0), "push sticks, hands away"));
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(marks_make_the_parts),
        cmocka_unit_test(stops_add_up),
        cmocka_unit_test(what_truing_takes_is_told_with_the_stops),
        cmocka_unit_test(any_boards_are_cut),
        cmocka_unit_test(parts_of_one_length_share_their_stop),
        cmocka_unit_test(cuts_make_the_sheet_parts),
        cmocka_unit_test(cuts_make_any_sheet),
        cmocka_unit_test(both_readings_are_named),
        cmocka_unit_test(past_the_swing),
        cmocka_unit_test(the_other_hand),
        cmocka_unit_test(limits_left_and_right),
        cmocka_unit_test(cautions_come_once),
        cmocka_unit_test(every_part_of_a_stop_is_named),
        cmocka_unit_test(only_what_the_job_needs),
        cmocka_unit_test(short_parts_are_flagged),
        cmocka_unit_test(ripped_parts_are_mitred_strip_by_strip),
        cmocka_unit_test(strips_beside_ripped_parts),
        cmocka_unit_test(strips_alike_are_told_once),
        cmocka_unit_test(boards_are_groups),
        cmocka_unit_test(turned_parts_are_counted_at_their_stop),
        cmocka_unit_test(the_face_that_lies_down_is_told),
        cmocka_unit_test(edges_are_told_in_figures),
        cmocka_unit_test(shapes_alike_in_angle_stand_apart),
        cmocka_unit_test(a_full_board_has_finer_marks),
        cmocka_unit_test(spares_say_what_they_are_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
