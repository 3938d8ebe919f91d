#include "measure/units.h"

#define LENGTH                                                                                               \
    { .length = 1 }
#define AREA                                                                                                 \
    { .length = 2 }
#define VOLUME                                                                                               \
    { .length = 3 }
#define ANGLE                                                                                                \
    { .angle = 1 }
#define MASS                                                                                                 \
    { .mass = 1 }
#define TIME                                                                                                 \
    { .time = 1 }

/* Customary units by the international yard and pound agreement of 1959 (1 yd = 0.9144 m, 1 lb =
 * 0.45359237 kg). The gallon is the US one of 231 cubic inches, the board foot has 144 of them. */
const unit unit_table[] = {
    [UNIT_MM] = {LENGTH, 1, 1, 0, 0},
    [UNIT_CM] = {LENGTH, 10, 1, 0, 0},
    [UNIT_M] = {LENGTH, 1000, 1, 0, 0},
    [UNIT_INCH] = {LENGTH, 254, 10, 0, 0},
    [UNIT_FOOT] = {LENGTH, 3048, 10, UNIT_INCH, 12},
    [UNIT_YARD] = {LENGTH, 9144, 10, 0, 0},
    [UNIT_MM2] = {AREA, 1, 1, 0, 0},
    [UNIT_CM2] = {AREA, 100, 1, 0, 0},
    [UNIT_M2] = {AREA, 1000000, 1, 0, 0},
    [UNIT_INCH2] = {AREA, 64516, 100, 0, 0},
    [UNIT_FOOT2] = {AREA, 9290304, 100, 0, 0},
    [UNIT_MM3] = {VOLUME, 1, 1, 0, 0},
    [UNIT_CM3] = {VOLUME, 1000, 1, 0, 0},
    [UNIT_M3] = {VOLUME, 1000000000, 1, 0, 0},
    [UNIT_INCH3] = {VOLUME, 16387064, 1000, 0, 0},
    [UNIT_FOOT3] = {VOLUME, 28316846592, 1000, 0, 0},
    [UNIT_ML] = {VOLUME, 1000, 1, 0, 0},
    [UNIT_LITRE] = {VOLUME, 1000000, 1, 0, 0},
    [UNIT_GALLON] = {VOLUME, 3785411784, 1000, 0, 0},
    [UNIT_BOARD_FOOT] = {VOLUME, 2359737216, 1000, 0, 0},
    [UNIT_MG] = {MASS, 1, 1, 0, 0},
    [UNIT_GRAM] = {MASS, 1000, 1, 0, 0},
    [UNIT_KG] = {MASS, 1000000, 1, 0, 0},
    [UNIT_OUNCE] = {MASS, 45359237, 1600, 0, 0},
    [UNIT_POUND] = {MASS, 45359237, 100, UNIT_OUNCE, 16},
    [UNIT_DEGREE] = {ANGLE, 1000000, 1, UNIT_ARC_MINUTE, 60},
    [UNIT_ARC_MINUTE] = {ANGLE, 1000000, 60, UNIT_ARC_SECOND, 60},
    [UNIT_ARC_SECOND] = {ANGLE, 1000000, 3600, 0, 0},
    [UNIT_SECOND] = {TIME, 1000, 1, 0, 0},
    [UNIT_MINUTE] = {TIME, 60000, 1, UNIT_SECOND, 60},
    [UNIT_HOUR] = {TIME, 3600000, 1, UNIT_MINUTE, 60},
    [UNIT_PERCENT] = {{0}, 1, 100, 0, 0},
};

#define WORD(text, kind)                                                                                     \
    { text, kind, SPELLING_WORD }
#define LOOSE(text, kind)                                                                                    \
    { text, kind, SPELLING_LOOSE }
#define TIGHT(text, kind)                                                                                    \
    { text, kind, SPELLING_TIGHT }

/* A spelling stands before one that it begins with. Several marks are used for feet and inches: the
 * straight ones, the primes, and what word processors make of the straight ones. */
const spelling spelling_table[] = {
    WORD("mm", UNIT_MM),
    WORD("cm", UNIT_CM),
    WORD("m", UNIT_M),
    WORD("inches", UNIT_INCH),
    WORD("inch", UNIT_INCH),
    WORD("in", UNIT_INCH),
    TIGHT("\"", UNIT_INCH),
    TIGHT("''", UNIT_INCH),
    TIGHT("″", UNIT_INCH),
    TIGHT("”", UNIT_INCH),
    WORD("feet", UNIT_FOOT),
    WORD("foot", UNIT_FOOT),
    WORD("ft", UNIT_FOOT),
    TIGHT("'", UNIT_FOOT),
    TIGHT("′", UNIT_FOOT),
    TIGHT("’", UNIT_FOOT),
    WORD("yd", UNIT_YARD),
    WORD("mm2", UNIT_MM2),
    WORD("mm²", UNIT_MM2),
    WORD("cm2", UNIT_CM2),
    WORD("cm²", UNIT_CM2),
    WORD("m2", UNIT_M2),
    WORD("m²", UNIT_M2),
    WORD("in2", UNIT_INCH2),
    WORD("in²", UNIT_INCH2),
    WORD("ft2", UNIT_FOOT2),
    WORD("ft²", UNIT_FOOT2),
    WORD("mm3", UNIT_MM3),
    WORD("mm³", UNIT_MM3),
    WORD("cm3", UNIT_CM3),
    WORD("cm³", UNIT_CM3),
    WORD("m3", UNIT_M3),
    WORD("m³", UNIT_M3),
    WORD("in3", UNIT_INCH3),
    WORD("in³", UNIT_INCH3),
    WORD("ft3", UNIT_FOOT3),
    WORD("ft³", UNIT_FOOT3),
    WORD("ml", UNIT_ML),
    WORD("l", UNIT_LITRE),
    WORD("gal", UNIT_GALLON),
    WORD("bf", UNIT_BOARD_FOOT),
    WORD("mg", UNIT_MG),
    WORD("g", UNIT_GRAM),
    WORD("kg", UNIT_KG),
    WORD("oz", UNIT_OUNCE),
    WORD("lb", UNIT_POUND),
    WORD("deg", UNIT_DEGREE),
    LOOSE("°", UNIT_DEGREE),
    WORD("s", UNIT_SECOND),
    WORD("min", UNIT_MINUTE),
    WORD("h", UNIT_HOUR),
    LOOSE("%", UNIT_PERCENT),
    /* only behind degrees, since their marks are those of time, feet and inches */
    WORD("min", UNIT_ARC_MINUTE),
    TIGHT("'", UNIT_ARC_MINUTE),
    TIGHT("′", UNIT_ARC_MINUTE),
    TIGHT("’", UNIT_ARC_MINUTE),
    WORD("s", UNIT_ARC_SECOND),
    TIGHT("\"", UNIT_ARC_SECOND),
    TIGHT("″", UNIT_ARC_SECOND),
    TIGHT("”", UNIT_ARC_SECOND),
};
const size_t spelling_count = sizeof spelling_table / sizeof *spelling_table;
