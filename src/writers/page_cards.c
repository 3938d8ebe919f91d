/* Cards on pages: a grid over the whole paper, nothing else on it. */
#include "writers/pages.h"

#define POINTS_PER_NM (72 / 25.4 / SB_NM_PER_MM)

static const double padding = 8;

typedef struct grid {
    const sb_cards *cards;
    double left, top, wide, high, across, down; /* of one card; gaps */
} grid;

static double points(sb_length length) {
    return (double)length.nm * POINTS_PER_NM;
}

static grid grid_of(const flow *f, const sb_cards *cards) {
    double width = f->width + 2 * PAGE_SIDE, height = f->bottom + PAGE_FOOT;
    grid g = {.cards = cards,
              .left = points(cards->side),
              .top = points(cards->top),
              .across = points(cards->across),
              .down = points(cards->down)};
    g.wide = (width - 2 * g.left + g.across) / (double)cards->columns - g.across;
    g.high = (height - 2 * g.top + g.down) / (double)cards->rows - g.down;
    return g;
}

/* As many lines of the text as there is room for; the rest is cut, and a sign says so. */
static void put_lines(flow *f, const char *text, int size, bool strong, int most, ink_box *room) {
    PangoLayout *layout = type_set(f->run, f->type, text, size, strong, room->width);
    int lines = pango_layout_get_line_count(layout), fit = 0;
    while (fit < lines && fit < most && ink_lines_height(layout, 0, fit + 1) <= room->height)
        fit++;
    if (fit == 0)
        return;
    if (fit < lines) {
        pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
        pango_layout_set_height(layout, -fit);
        lines = pango_layout_get_line_count(layout);
        fit = fit < lines ? fit : lines;
    }
    double used = ink_lines(f->run, flow_page(f), layout, 0, fit, *room, 0, false);
    room->top += used;
    room->height -= used;
}

static void put_card(flow *f, const sb_card *card, ink_box box) {
    ink_box room = {box.left + padding, box.top + padding, box.width - 2 * padding, box.height - 2 * padding};
    put_lines(f, card->title, TYPE_TITLE, true, 2, &room);
    put_lines(f, card->number, TYPE_NUMBER, true, 2, &room);
    for (size_t i = 0; i < card->lines.count; i++)
        put_lines(f, card->lines.items[i], TYPE_SMALL, false, 2, &room);
    ink_frame(f->run, flow_page(f), box, SB_FILL_NONE, 0.3);
}

void cards_place(flow *f, const sb_cards *cards) {
    size_t columns = (size_t)cards->columns, a_page = columns * (size_t)cards->rows;
    grid g = grid_of(f, cards);
    for (size_t i = 0; i < cards->items.count; i++) {
        if (i > 0 && i % a_page == 0)
            flow_turn(f);
        size_t column = i % columns, row = i % a_page / columns;
        flow_page(f)->bare = true;
        put_card(f, &cards->items.items[i],
                 (ink_box){g.left + (double)column * (g.wide + g.across),
                           g.top + (double)row * (g.high + g.down), g.wide, g.high});
    }
    f->y = f->bottom;
}
