/* Labels of a drawing: the forms that one can take, and the rows above and below the shapes. */
#ifndef WRITERS_LABEL_H
#define WRITERS_LABEL_H

#include "writers/ink.h"

/* One or two texts as one block: below one another or side by side, upright or turned. */
typedef struct label_form {
    PangoLayout *first, *second; /* either may be NULL */
    bool stacked, turned;
} label_form;

double form_width(const label_form *form);
double form_height(const label_form *form);
bool form_is_empty(const label_form *form);
void form_put(sb_run *run, ink *to, const label_form *form, ink_box box,
              bool backed); /* in the middle of the box */

/* A label with its texts set. */
typedef struct label_set {
    const sb_label *label;
    PangoLayout *text, *number, *mark; /* NULL: none */
    ink_point at;
    bool by_mark; /* the text is told below the drawing */
} label_set;
typedef SB_LIST(label_set) label_sets;

/* The forms from the one that says most to the one that takes least room; `room`: width to break a text at, 0: none. How many. */
enum {
    LABEL_FORMS = 8
};
size_t label_forms(sb_run *run, const type_case *type, const label_set *set, double room, label_form *forms,
                   bool *by_mark);

/* A row of labels over the whole width, each as near to its point as the others let it; `up`: above the shapes, whose edge is
 * at y. Draws the lines to the points as well. The height it takes. */
double label_row(sb_run *run, ink *to, label_sets *labels, double width, double y, bool up);

#endif
