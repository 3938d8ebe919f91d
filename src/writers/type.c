#include "writers/type.h"

#include "writers/bytes.h"
#include "writers/glyphs.h"

#include <fontconfig/fontconfig.h>
#include <pango/pangofc-fontmap.h>
#include <string.h>

struct type_case {
    PangoContext *context;
};

/* ---- the font ----------------------------------------------------------------------------------------- */

static void release_config(void *thing) {
    FcConfigDestroy(thing);
}

static void release_object(void *thing) {
    g_object_unref(thing);
}

/* The map never lets go of its configuration by itself. */
static void release_map(void *thing) {
    pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(thing), NULL);
    g_object_unref(thing);
}

/* Where the machine keeps the plain and the bold face: the one question its own settings are asked. */
static FcFontSet *font_files(void) {
    FcConfig *machine = FcInitLoadConfigAndFonts();
    FcPattern *wanted = FcPatternCreate();
    FcObjectSet *asked = FcObjectSetBuild(FC_FILE, (char *)NULL);
    FcPatternAddString(wanted, FC_FAMILY, (const FcChar8 *)TYPE_FONT);
    FcPatternAddInteger(wanted, FC_WIDTH, FC_WIDTH_NORMAL);
    FcPatternAddInteger(wanted, FC_SLANT, FC_SLANT_ROMAN);
    FcFontSet *found = FcFontList(machine, wanted, asked);
    FcObjectSetDestroy(asked);
    FcPatternDestroy(wanted);
    if (machine)
        FcConfigDestroy(machine);
    return found;
}

/* A configuration of our own, which knows these files and nothing else: no substitutes, no hinting by taste. */
static FcConfig *own_config(sb_run *run) {
    FcFontSet *found = font_files();
    FcConfig *config = FcConfigCreate();
    sb_pool_defer(run->pool, release_config, config);
    int added = 0;
    for (int i = 0; found && i < found->nfont; i++) {
        FcChar8 *file = NULL;
        if (FcPatternGetString(found->fonts[i], FC_FILE, 0, &file) == FcResultMatch)
            added += FcConfigAppFontAddFile(config, file) == FcTrue;
    }
    if (found)
        FcFontSetDestroy(found);
    if (added < 2) {
        sb_fail(run, (sb_place){0},
                "the font %s, plain and bold, is not on this machine: install fonts-dejavu-core", TYPE_FONT);
        return NULL;
    }
    return config;
}

/* One unit is one point; lines are as long on every device. */
static void set_plain(PangoContext *context) {
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(context, 72);
    pango_context_set_round_glyph_positions(context, FALSE);
    pango_context_set_language(context, pango_language_from_string("en"));
    pango_context_set_base_dir(context, PANGO_DIRECTION_LTR);
}

const type_case *type_open(sb_run *run) {
    FcConfig *config = own_config(run);
    if (!config)
        return NULL;
    PangoFontMap *map = pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT);
    sb_pool_defer(run->pool, release_map, map);
    pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map), config);
    type_case *type = SB_NEW(run->pool, type_case);
    type->context = pango_font_map_create_context(map);
    sb_pool_defer(run->pool, release_object, type->context);
    set_plain(type->context);
    return type;
}

/* ---- texts -------------------------------------------------------------------------------------------- */

/* What reads as one number stays on one line. */
static const char *bound_text(sb_run *run, const char *text) {
    bytes all = {0};
    for (const char *at = text; *at; at++)
        if (blank_is_bound(text, at))
            bytes_add_text(run, &all, "\xC2\xA0");
        else
            bytes_add(run, &all, at, 1);
    return bytes_end(run, &all);
}

PangoLayout *type_set(sb_run *run, const type_case *type, const char *text, int size, bool strong,
                      double width) {
    PangoLayout *layout = pango_layout_new(type->context);
    sb_pool_defer(run->pool, release_object, layout);
    PangoFontDescription *font = pango_font_description_new();
    pango_font_description_set_family_static(font, TYPE_FONT);
    pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
    pango_font_description_set_weight(font, strong ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_text(layout, bound_text(run, clean_text(run, text)), -1);
    if (width > 0)
        type_wrap(layout, width);
    return layout;
}

void type_wrap(PangoLayout *layout, double width) {
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(layout, (int)(width * PANGO_SCALE));
}

static double points(int units) {
    return (double)units / PANGO_SCALE;
}

double type_width(PangoLayout *layout) {
    double most = 0;
    for (int i = 0; i < pango_layout_get_line_count(layout); i++) {
        PangoRectangle box;
        pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, i), NULL, &box);
        most = points(box.width) > most ? points(box.width) : most;
    }
    return most;
}

double type_height(PangoLayout *layout) {
    PangoRectangle box;
    pango_layout_get_extents(layout, NULL, &box);
    return points(box.height);
}

double type_longest_word(PangoLayout *layout) {
    int before = pango_layout_get_width(layout);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD);
    pango_layout_set_width(layout, 0);
    double width = type_width(layout);
    pango_layout_set_width(layout, before);
    return width;
}
