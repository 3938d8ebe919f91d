/* The units people write; for this room only. Pattern and reader are both made from this table. */
#ifndef MEASURE_UNITS_H
#define MEASURE_UNITS_H

#include "sawbill/measure.h"

typedef enum unit_kind {
    UNIT_NONE,
    UNIT_MM,
    UNIT_CM,
    UNIT_M,
    UNIT_INCH,
    UNIT_FOOT,
    UNIT_YARD,
    UNIT_MM2,
    UNIT_CM2,
    UNIT_M2,
    UNIT_INCH2,
    UNIT_FOOT2,
    UNIT_MM3,
    UNIT_CM3,
    UNIT_M3,
    UNIT_INCH3,
    UNIT_FOOT3,
    UNIT_ML,
    UNIT_LITRE,
    UNIT_GALLON,
    UNIT_BOARD_FOOT,
    UNIT_MG,
    UNIT_GRAM,
    UNIT_KG,
    UNIT_OUNCE,
    UNIT_POUND,
    UNIT_DEGREE,
    UNIT_ARC_MINUTE,
    UNIT_ARC_SECOND,
    UNIT_SECOND,
    UNIT_MINUTE,
    UNIT_HOUR,
    UNIT_PERCENT
} unit_kind;

typedef struct unit {
    sb_dimension dimension;
    int64_t num, den; /* one unit in base units (sb_quantity) */
    unit_kind below;  /* what may follow it in the same quantity: 3' 11", 22deg30min */
    int64_t holds;    /* how many of those make one */
} unit;
extern const unit unit_table[];

typedef enum spelling_form {
    SPELLING_WORD,  /* 20mm or 20 mm; no letter may follow */
    SPELLING_LOOSE, /* 12% or 12 % */
    SPELLING_TIGHT  /* 47" with no blank between */
} spelling_form;

typedef struct spelling {
    const char *text;
    unit_kind kind;
    spelling_form form;
} spelling;
extern const spelling spelling_table[];
extern const size_t spelling_count;

#endif
