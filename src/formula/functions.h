/* formula/functions.h -- the functions that formulas know. */
#ifndef FORMULA_FUNCTIONS_H
#define FORMULA_FUNCTIONS_H

#include "formula/term.h"

enum {
    SB_MOST_ARGUMENTS = 3,
    SB_ANY_COUNT = 0
};

typedef struct sb_call {
    sb_run *run;
    const sb_formula *formula;   /* the call */
    sb_formula *const *operands; /* its arguments, as written ... */
    const sb_term *terms;        /* ... and what they came to, all known */
    size_t count;
} sb_call;

typedef struct sb_function {
    const char *name;
    const char *usage;                     /* "round(x) or round(x, step)" */
    size_t least, most;                    /* arguments; `most` SB_ANY_COUNT: any number, taken two by two */
    sb_term (*apply)(const sb_call *call); /* NULL: `if`, which evaluates only the branch it takes */
} sb_function;

const sb_function *sb_function_find(const char *name);
const char *const *sb_function_names(sb_run *run, size_t *count);

/* Trigonometry, in trigonometry.c; sines and their kin come out exact where they are ratios. */
sb_term sb_call_sin(const sb_call *call);
sb_term sb_call_cos(const sb_call *call);
sb_term sb_call_tan(const sb_call *call);
sb_term sb_call_asin(const sb_call *call);
sb_term sb_call_acos(const sb_call *call);
sb_term sb_call_atan(const sb_call *call);
sb_term sb_call_atan2(const sb_call *call);

/* False after an error unless argument `index` has the dimension. */
bool sb_call_wants(const sb_call *call, size_t index, sb_dimension dimension);
/* False after an error unless arguments 0 and 1 have the same dimension. */
bool sb_call_wants_same(const sb_call *call);

#endif
