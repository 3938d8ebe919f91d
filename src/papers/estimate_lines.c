/* The sheets Material and Labour: every line an amount of its own, rounded once. */
#include "papers/estimate.h"
#include "papers/figures.h"

#include <string.h>

static const sb_relation *cell(const estimate_paper *p, const sb_table *table, size_t column) {
    return sb_rel_cell(p->run, table, table->rows.count - 1, column);
}

static sb_cell total(const estimate_paper *p, const sb_table *table, size_t column, sb_cell value) {
    return sb_cell_strong(sb_cell_related(value, rel_sum_of(p->run, table, column, p->digits)));
}

/* ---- material ---- */

enum {
    MATERIAL_WHAT,
    MATERIAL_GROUP,
    MATERIAL_QUANTITY,
    MATERIAL_EACH
};

static const char *charge_words(sb_material_policy charge) {
    switch (charge) {
    case SB_CHARGE_BOUGHT:
        return "Charged as bought: whole boards, sheets and packs.";
    case SB_CHARGE_BOUGHT_LESS_LEFTOVERS:
        return "Charged as bought, less credit for usable leftovers.";
    case SB_CHARGE_USED:
        return "Charged as used: boards and sheets without their usable leftovers, packs by what is taken "
               "out of them.";
    }
    return "";
}

/* The price stands once for all lines that have it, in whatever number of pieces. */
static sb_cell each_cell(estimate_paper *p, const sb_material_line *line) {
    sb_cell price = sb_cell_price(line->each.milli, p->digits + 3);
    size_t row = 0;
    for (; row < p->tags->rows.count; row++)
        if (p->tags->rows.items[row][RATE_VALUE].amount == price.amount &&
            strcmp(p->tags->rows.items[row][RATE_NAME].text, line->what) == 0)
            return sb_cell_related(price, sb_rel_cell(p->run, p->tags, row, RATE_VALUE));
    sb_cell *tag = sb_row_add(p->run, p->tags);
    tag[RATE_NAME] = sb_cell_text(line->what);
    tag[RATE_OF] = sb_cell_text(sb_material_group_word(line->group));
    tag[RATE_VALUE] = sb_cell_input(price);
    return sb_cell_related(price, sb_rel_cell(p->run, p->tags, row, RATE_VALUE));
}

static void put_material(estimate_paper *p, const sb_material_line *line) {
    sb_cell *row = sb_row_add(p->run, p->materials);
    row[MATERIAL_GROUP] = sb_cell_text(sb_material_group_word(line->group));
    row[MATERIAL_WHAT] = sb_cell_text(line->what);
    row[MATERIAL_QUANTITY] = line->quantity_milli % 1000 == 0 ? sb_cell_count(line->quantity_milli / 1000)
                                                              : sb_cell_decimal(line->quantity_milli, 3);
    row[MATERIAL_EACH] = each_cell(p, line);
    row[MATERIAL_AMOUNT] = sb_cell_related(sb_cell_money(line->amount),
                                           rel_product(p->run, cell(p, p->materials, MATERIAL_QUANTITY),
                                                       cell(p, p->materials, MATERIAL_EACH), p->digits));
    row[MATERIAL_AMOUNT].place = line->place;
}

/* The lines stand by group, so that each group is a run of rows. */
static void put_group(estimate_paper *p, sb_table *groups, size_t first, size_t last) {
    sb_money sum = {0};
    for (size_t i = first; i <= last; i++)
        sum = sb_money_add(sum, p->e->materials.items[i].amount);
    const sb_relation *relation =
        sb_rel_round(p->run, sb_rel_sum(p->run, p->materials, MATERIAL_AMOUNT, first, last), p->digits);
    sb_cell *row = sb_row_add(p->run, groups);
    row[0] = sb_cell_text(sb_material_group_word(p->e->materials.items[first].group));
    row[1] = sb_cell_related(sb_cell_money(sum), relation);
}

static void put_groups(estimate_paper *p, sb_table *groups) {
    size_t count = p->e->materials.count;
    for (size_t first = 0, next; first < count; first = next) {
        for (next = first + 1; next < count; next++)
            if (p->e->materials.items[next].group != p->e->materials.items[first].group)
                break;
        put_group(p, groups, first, next - 1);
    }
}

void estimate_says_charge(const estimate_paper *p, sb_sheet *sheet) {
    sb_paragraph_add(p->run, sheet, charge_words(p->shop->settings.charge), false);
}

/* A batch has its lines alone. */
void estimate_material(estimate_paper *p) {
    sb_table *groups = NULL;
    if (p->named) {
        estimate_says_charge(p, p->material);
        groups = sb_table_add(p->run, p->material, "By group", "Group|Amount>");
    }
    p->materials = sb_table_add(p->run, p->material, p->named ? "Line by line" : "Material",
                                "What|Group|Quantity>|Each>|Amount>");
    for (size_t i = 0; i < p->e->materials.count; i++)
        put_material(p, &p->e->materials.items[i]);
    sb_cell *row = sb_total_row_add(p->run, p->materials);
    row[MATERIAL_WHAT] = sb_cell_strong(sb_cell_text("Material"));
    row[MATERIAL_AMOUNT] = total(p, p->materials, MATERIAL_AMOUNT, sb_cell_money(p->e->material_total));
    if (groups)
        put_groups(p, groups);
}

/* ---- labour ---- */

enum {
    WORK_OPERATION,
    WORK_FOR,
    WORK_QUANTITY,
    WORK_UNIT,
    WORK_MINUTES,
    WORK_RATE = 6,
    WORK_LEARNT = 8 /* where anything is */
};

/* What work is counted by on paper: a unit of it is `metric` / 10^`digits` of the driver's own. */
typedef struct work_unit {
    const char *words;
    int64_t metric;
    int digits;
} work_unit;

static work_unit unit_of(const estimate_paper *p, const sb_operation *operation) {
    bool feet = p->shop->settings.style.units == SB_UNITS_IN;
    switch (operation->driver) {
    case SB_BY_CHANGE:
        return (work_unit){"stop change", 1, 0};
    case SB_BY_STOP:
        return (work_unit){"stop set", 1, 0};
    case SB_BY_RIP:
        return feet ? (work_unit){"ft ripped", 3048, 4} : (work_unit){"m ripped", 1, 0};
    case SB_BY_METRE:
        return feet ? (work_unit){"ft", 3048, 4} : (work_unit){"m", 1, 0};
    case SB_BY_SQUARE_METRE:
        return feet ? (work_unit){"ft2", 9290304, 8} : (work_unit){"m2", 1, 0};
    case SB_BY_HARD_CUT:
        return (work_unit){"hard cut", 1, 0};
    case SB_BY_FENCE:
        return (work_unit){"fence set", 1, 0};
    case SB_BY_RETURN:
        return (work_unit){"piece returned", 1, 0};
    case SB_BY_SHEET_CUT:
        return (work_unit){"cut in sheet", 1, 0};
    default:
        return (work_unit){sb_driver_word(operation->driver), 1, 0};
    }
}

static const char *for_words(const estimate_paper *p, const sb_labour_line *line) {
    return line->from_plan ? "from the plan" : work_for_words(p->run, p->way->takeoff, line);
}

static int64_t whole_of(work_unit unit) {
    int64_t whole = 1;
    for (int i = 0; i < unit.digits; i++)
        whole *= 10;
    return whole;
}

/* Feet out of metres stand as their division, so that hours come out as reckoned. */
static sb_cell quantity_cell(const estimate_paper *p, int64_t milli, work_unit unit) {
    if (unit.metric == 1)
        return milli % 1000 == 0 ? sb_cell_count(milli / 1000) : sb_cell_decimal(milli, 3);
    return sb_cell_related(sb_cell_decimal(sb_mul_div(milli, 10 * whole_of(unit), unit.metric), 4),
                           sb_rel(p->run, SB_REL_DIV, sb_rel_number(p->run, milli, 3),
                                  sb_rel_number(p->run, unit.metric, unit.digits)));
}

/* Minutes of the driver's own unit. A time that is no decimal of a minute stands as seconds / 60. */
static const sb_relation *minutes_of(const estimate_paper *p, sb_duration time) {
    if (time.ms % 60 == 0)
        return sb_rel_number(p->run, time.ms / 60, 3);
    return sb_rel(p->run, SB_REL_DIV, sb_rel_number(p->run, time.ms, 3), sb_rel_number(p->run, 60, 0));
}

static sb_cell minutes_cell(const estimate_paper *p, sb_duration time, work_unit unit) {
    if (unit.metric == 1 && time.ms % 60000 == 0)
        return sb_cell_count(time.ms / 60000);
    if (unit.metric == 1 && time.ms % 60 == 0)
        return sb_cell_decimal(time.ms / 60, 3);
    const sb_relation *minutes = minutes_of(p, time);
    if (unit.metric != 1)
        minutes = sb_rel(p->run, SB_REL_MUL, minutes, sb_rel_number(p->run, unit.metric, unit.digits));
    /* a millisecond is 100 / 6 millionths of a minute */
    int64_t millionths = sb_mul_div(time.ms, 100 * unit.metric, 6 * whole_of(unit));
    return sb_cell_related(sb_cell_decimal(millionths, 6), minutes);
}

static bool learns(const sb_labour_line *line) {
    return line->learned.ppm != 1000000;
}

static sb_cell hours_cell(const estimate_paper *p, const sb_labour_line *line) {
    const sb_relation *minutes =
        sb_rel(p->run, SB_REL_MUL, cell(p, p->works, WORK_QUANTITY), cell(p, p->works, WORK_MINUTES));
    if (learns(line))
        minutes = sb_rel(p->run, SB_REL_MUL, minutes, cell(p, p->works, WORK_LEARNT));
    return sb_cell_related(sb_cell_duration(line->time),
                           sb_rel(p->run, SB_REL_DIV, minutes, sb_rel_number(p->run, 60, 0)));
}

static sb_cell rate_of(const estimate_paper *p, const sb_labour_line *line) {
    for (size_t i = 0; i < p->shop->settings.workers.count; i++)
        if (&p->shop->settings.workers.items[i] == line->operation->worker)
            return sb_cell_related(sb_cell_money(line->hour), rate_cell(p, p->worker_row + i));
    return sb_cell_money(line->hour);
}

static void put_work(estimate_paper *p, const sb_labour_line *line) {
    sb_cell *row = sb_row_add(p->run, p->works);
    work_unit unit = unit_of(p, line->operation);
    row[WORK_OPERATION] = sb_cell_text(line->operation->title);
    row[WORK_FOR] = sb_cell_text(for_words(p, line));
    row[WORK_QUANTITY] = quantity_cell(p, line->quantity_milli, unit);
    row[WORK_UNIT] = sb_cell_text(unit.words);
    row[WORK_MINUTES] = minutes_cell(p, line->operation->time, unit);
    row[WORK_HOURS] = hours_cell(p, line);
    if (learns(line))
        row[WORK_LEARNT] = sb_cell_share(line->learned);
    row[WORK_RATE] = rate_of(p, line);
    row[WORK_AMOUNT] =
        sb_cell_related(sb_cell_money(line->amount), rel_product(p->run, cell(p, p->works, WORK_HOURS),
                                                                 cell(p, p->works, WORK_RATE), p->digits));
    row[WORK_AMOUNT].place = line->place;
}

static bool any_learns(const estimate_paper *p) {
    for (size_t i = 0; i < p->e->labour.count; i++)
        if (learns(&p->e->labour.items[i]))
            return true;
    return false;
}

/* Says that learning is applied, to what, and by how much. */
static void tell_learning(estimate_paper *p) {
    sb_paragraph_add(p->run, p->labour,
                     "Learning is applied: the minutes are those of the first piece of a kind, and with each "
                     "doubling of the "
                     "pieces their average falls to a share of what it was (Wright 1936). \"Learnt\" is the "
                     "average as a share of "
                     "the first.",
                     false);
    for (size_t i = 0; i < p->e->labour.count; i++) {
        const sb_labour_line *line = &p->e->labour.items[i];
        if (learns(line))
            sb_paragraph_add(
                p->run, p->labour,
                sb_pool_print(p->run->pool, "%s: to %s with each doubling; for %lld pieces to %s.",
                              line->operation->title, share_words(p->run, p->shop, line->operation->learning),
                              (long long)line->repeated,
                              computed_share_words(p->run, p->shop, line->learned)),
                true);
    }
}

void estimate_labour(estimate_paper *p) {
    bool learning = any_learns(p);
    if (p->named)
        sb_paragraph_add(p->run, p->labour, "Lines from the plan are counted from the cutting plan.", false);
    if (learning)
        tell_learning(p);
    p->works =
        sb_table_add(p->run, p->labour, p->named ? "" : "Labour",
                     learning ? "Operation|For|Quantity>|Unit|Minutes each>|Hours>|Rate>|Amount>|Learnt>"
                              : "Operation|For|Quantity>|Unit|Minutes each>|Hours>|Rate>|Amount>");
    for (size_t i = 0; i < p->e->labour.count; i++)
        put_work(p, &p->e->labour.items[i]);
    size_t count = p->e->labour.count;
    sb_cell *row = sb_total_row_add(p->run, p->works);
    row[WORK_OPERATION] = sb_cell_strong(sb_cell_text("Labour"));
    row[WORK_HOURS] = sb_cell_strong(sb_cell_duration(p->e->time));
    if (count)
        row[WORK_HOURS].relation = sb_rel_sum(p->run, p->works, WORK_HOURS, 0, count - 1);
    row[WORK_AMOUNT] = total(p, p->works, WORK_AMOUNT, sb_cell_money(p->e->labour_total));
}
