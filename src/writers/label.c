/* The forms of a label. */
#include "writers/label.h"

static const double between = 4; /* texts side by side */

static double side_gap(const label_form *form) {
    return form->first && form->second && !form->stacked ? between : 0;
}

/* As it reads, not turned. */
static double length_of(const label_form *form) {
    double first = form->first ? type_width(form->first) : 0,
           second = form->second ? type_width(form->second) : 0;
    double widest = first > second ? first : second;
    return form->stacked ? widest : first + second + side_gap(form);
}

static double depth_of(const label_form *form) {
    double first = form->first ? type_height(form->first) : 0,
           second = form->second ? type_height(form->second) : 0;
    double tallest = first > second ? first : second;
    return form->stacked ? first + second : tallest;
}

double form_width(const label_form *form) {
    return form->turned ? depth_of(form) : length_of(form);
}

double form_height(const label_form *form) {
    return form->turned ? length_of(form) : depth_of(form);
}

bool form_is_empty(const label_form *form) {
    return !form->first && !form->second;
}

static double put_upright(sb_run *run, ink *to, PangoLayout *layout, ink_box box, bool backed) {
    return layout ? ink_lines(run, to, layout, 0, pango_layout_get_line_count(layout), box, 0.5, backed) : 0;
}

/* Side by side they stand on one line. */
static void put_beside(sb_run *run, ink *to, const label_form *form, ink_box box, bool backed) {
    double left = box.left, bottom = box.top + box.height;
    PangoLayout *const texts[] = {form->first, form->second};
    for (int i = 0; i < 2; i++) {
        if (!texts[i])
            continue;
        double width = type_width(texts[i]), height = type_height(texts[i]);
        double drop = height < box.height ? (box.height - height) * 0.25 : 0; /* baselines meet, nearly */
        put_upright(run, to, texts[i], (ink_box){left, bottom - height - drop, width, height}, backed);
        left += width + between;
    }
}

static void put_turned(sb_run *run, ink *to, const label_form *form, ink_box box, bool backed) {
    double left = box.left, bottom = box.top + box.height;
    PangoLayout *const texts[] = {form->first, form->second};
    for (int i = 0; i < 2; i++) {
        if (!texts[i])
            continue;
        double length = type_width(texts[i]), depth = type_height(texts[i]);
        ink_box place = form->stacked ? (ink_box){left, box.top, depth, box.height}
                                      : (ink_box){box.left, bottom - length, box.width, length};
        ink_turned(run, to, texts[i], place, backed);
        left += depth;
        bottom -= length + between;
    }
}

void form_put(sb_run *run, ink *to, const label_form *form, ink_box box, bool backed) {
    double width = form_width(form), height = form_height(form);
    ink_box middle = {box.left + (box.width - width) / 2, box.top + (box.height - height) / 2, width, height};
    if (form->turned) {
        put_turned(run, to, form, middle, backed);
    } else if (form->stacked) {
        double used = put_upright(run, to, form->first, middle, backed);
        put_upright(run, to, form->second, (ink_box){middle.left, middle.top + used, width, height - used},
                    backed);
    } else {
        put_beside(run, to, form, middle, backed);
    }
}

/* ---- from much to little ------------------------------------------------------------------------------- */

static PangoLayout *broken(sb_run *run, const type_case *type, const label_set *set, double room) {
    if (!set->text || room <= 0 || type_width(set->text) <= room)
        return set->text;
    PangoLayout *layout = type_set(run, type, set->label->text, TYPE_SMALL, false, room);
    return type_longest_word(layout) <= room ? layout : set->text;
}

size_t label_forms(sb_run *run, const type_case *type, const label_set *set, double room, label_form *forms,
                   bool *by_mark) {
    const label_form all[LABEL_FORMS] = {
        {broken(run, type, set, room), set->number, true, false},
        {set->text, set->number, false, false},
        {set->text, set->number, false, true},
        {set->text, set->number, true, true},
        {set->mark, set->number, true, false},
        {set->mark, set->number, false, false},
        {set->mark, set->number, false, true},
        {set->mark, NULL, false, false},
    };
    size_t count = set->mark ? LABEL_FORMS : 4;
    for (size_t i = 0; i < count; i++) {
        forms[i] = all[i];
        by_mark[i] = i >= 4;
    }
    return count;
}
