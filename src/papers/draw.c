#include "papers/draw.h"

#include <string.h>

const char *draw_mark(sb_run *run, draw_marks *marks, const char *words) {
    size_t i = 0;
    while (i < marks->words.count && strcmp(marks->words.items[i], words) != 0)
        i++;
    if (i == marks->words.count)
        SB_PUSH(run->pool, marks->words, words);
    char letter = (char)('A' + i % 26);
    return i < 26 ? sb_pool_print(run->pool, "%c", letter)
                  : sb_pool_print(run->pool, "%c%zu", letter, i / 26 + 1);
}

/* Millimetres on paper. */
enum {
    SWATCH = 9,
    LEGEND_HIGH = 6
};

static sb_length on_paper(int64_t mm) {
    return (sb_length){mm * SB_NM_PER_MM};
}

static int64_t legend_words(sb_run *run, sb_drawing *drawing, int64_t left, int64_t wide, const char *words) {
    sb_label_add(run, drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = {{(2 * left + wide) * SB_NM_PER_MM / 2}, {LEGEND_HIGH * SB_NM_PER_MM / 2}},
                            .wide = on_paper(wide),
                            .high = on_paper(LEGEND_HIGH),
                            .text = words,
                            .number = "",
                            .mark = ""});
    return left + wide;
}

void draw_legend(const cuts_paper *p, sb_sheet *sheet, const char *numbers) {
    static const struct {
        sb_fill fill;
        int64_t wide;
        const char *words;
    } swatches[] = {
        {SB_FILL_BLACK, 16, "kerf"}, {SB_FILL_HATCH, 24, "falls off"}, {SB_FILL_DOTS, 18, "is kept"}};
    sb_drawing *drawing = sb_drawing_add(p->run, sheet, "", "", on_paper(176), on_paper(LEGEND_HIGH));
    int64_t left = 0;
    drawing->scale_most = 1;
    for (size_t i = 0; i < sizeof swatches / sizeof *swatches; i++) {
        sb_shape_rect(p->run, drawing, swatches[i].fill, SB_PEN_LINE, (sb_point){on_paper(left), on_paper(1)},
                      on_paper(SWATCH), on_paper(LEGEND_HIGH - 2));
        left = legend_words(p->run, drawing, left + SWATCH, swatches[i].wide, swatches[i].words);
    }
    legend_words(p->run, drawing, left, 176 - left, numbers);
}
