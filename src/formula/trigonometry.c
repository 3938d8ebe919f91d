/* Sines and their kin, in degrees. By Niven's theorem the only rational sines at rational degrees are
 * 0, 1/2 and 1 with either sign, and the only rational tangents 0 and 1: those come out exact, so that a
 * brace at 45 degrees or a roof at 30 costs no precision. All else goes through floating point. */
#include "formula/evaluate.h"

#include <math.h>

static const int64_t degree = 1000000; /* [udeg] */
static const double pi = 3.14159265358979323846;

static double radians(sb_number angle) {
    return angle.real / (180.0 * (double)degree) * pi;
}

static sb_term checked_angle(const sb_call *call, double in_radians) {
    return sb_checked(call->run, call->formula, sb_number_real(in_radians / pi * 180.0 * (double)degree),
                      SB_DIM_ANGLE);
}

static sb_term whole_angle(int64_t degrees) {
    return sb_term_quantity(sb_number_whole(degrees * degree), SB_DIM_ANGLE);
}

static sb_term number(const sb_call *call, sb_number n) {
    return sb_checked(call->run, call->formula, n, SB_DIM_NUMBER);
}

/* The angle, from 0 up to a whole turn. */
static sb_number within_turn(sb_number angle) {
    sb_number turn = sb_number_whole(360 * degree);
    if (!sb_number_exact(angle))
        return sb_number_real(fmod(angle.real, turn.real));
    sb_number turns = sb_number_floor(sb_number_div(angle, turn));
    return sb_number_sub(angle, sb_number_mul(turns, turn));
}

/* How many times `step` degrees the angle is, -1 when it is not a multiple. */
static int multiple_of(sb_number angle, int64_t step) {
    sb_number times = sb_number_div(angle, sb_number_whole(step * degree));
    return times.ratio.den == 1 ? (int)times.ratio.num : -1;
}

static sb_number sine(sb_number angle) {
    static const int halves[12] = {0, 1,  9, 2,  9, 1,
                                   0, -1, 9, -2, 9, -1}; /* at 0, 30, 60 ...; 9: not a ratio */
    sb_number turned = within_turn(angle);
    int thirties = multiple_of(turned, 30);
    if (thirties >= 0 && halves[thirties] != 9)
        return sb_number_of(sb_ratio_of(halves[thirties], 2));
    return sb_number_real(sin(radians(turned)));
}

sb_term sb_call_sin(const sb_call *call) {
    if (!sb_call_wants(call, 0, SB_DIM_ANGLE))
        return sb_term_none();
    return number(call, sine(call->terms[0].number));
}

sb_term sb_call_cos(const sb_call *call) {
    if (!sb_call_wants(call, 0, SB_DIM_ANGLE))
        return sb_term_none();
    sb_number quarter = sb_number_whole(90 * degree);
    return number(call, sine(sb_number_add(call->terms[0].number, quarter)));
}

sb_term sb_call_tan(const sb_call *call) {
    if (!sb_call_wants(call, 0, SB_DIM_ANGLE))
        return sb_term_none();
    sb_number turned = within_turn(call->terms[0].number);
    int eighths = multiple_of(turned, 45);
    if (eighths >= 0 && eighths % 4 == 2) {
        sb_error(call->run, call->formula->place, "there is no tangent of a right angle: %s is 90 degrees",
                 sb_formula_quote(call->run, call->operands[0]));
        return sb_term_none();
    }
    static const int tangents[4] = {0, 1, 0, -1};
    if (eighths >= 0)
        return number(call, sb_number_whole(tangents[eighths % 4]));
    return number(call, sb_number_real(tan(radians(turned))));
}

/* ---- back to angles ---- */

/* An argument that floating point took past 1 by a hair is 1. */
static bool wants_sine(const sb_call *call, const char *whose) {
    if (!sb_call_wants(call, 0, SB_DIM_NUMBER))
        return false;
    sb_number one = sb_number_whole(1), x = call->terms[0].number;
    if (sb_number_compare(x, one) <= 0 && sb_number_compare(x, sb_number_negate(one)) >= 0)
        return true;
    sb_style style = {.step = {1}};
    sb_error(call->run, call->operands[0]->place, "no angle has the %s %s: expected a number from -1 to 1",
             whose, sb_term_text(call->run, call->terms[0], &style));
    return false;
}

static double clamped(sb_number x) {
    return fmax(-1, fmin(1, x.real));
}

/* Twice the number when that is whole and exact, 9 otherwise. */
static int whole_halves(sb_number x) {
    sb_number twice = sb_number_mul(x, sb_number_whole(2));
    return twice.ratio.den == 1 ? (int)twice.ratio.num : 9;
}

sb_term sb_call_asin(const sb_call *call) {
    static const int degrees[5] = {-90, -30, 0, 30, 90};
    if (!wants_sine(call, "sine"))
        return sb_term_none();
    int halves = whole_halves(call->terms[0].number);
    return halves == 9 ? checked_angle(call, asin(clamped(call->terms[0].number)))
                       : whole_angle(degrees[halves + 2]);
}

sb_term sb_call_acos(const sb_call *call) {
    static const int degrees[5] = {180, 120, 90, 60, 0};
    if (!wants_sine(call, "cosine"))
        return sb_term_none();
    int halves = whole_halves(call->terms[0].number);
    return halves == 9 ? checked_angle(call, acos(clamped(call->terms[0].number)))
                       : whole_angle(degrees[halves + 2]);
}

/* The direction of (x, y), exact along the eight winds. */
static sb_term direction(const sb_call *call, sb_number y, sb_number x) {
    int up = sb_number_sign(y), right = sb_number_sign(x);
    sb_number steepness = sb_number_sub(sb_number_mul(y, y), sb_number_mul(x, x));
    bool diagonal = sb_number_exact(steepness) && steepness.ratio.num == 0;
    if (up != 0 && right != 0 && !diagonal)
        return checked_angle(call, atan2(y.real, x.real));
    static const int winds[3][3] = {{-135, -90, -45}, {180, 0, 0}, {135, 90, 45}};
    return whole_angle(winds[up + 1][right + 1]);
}

sb_term sb_call_atan(const sb_call *call) {
    if (!sb_call_wants(call, 0, SB_DIM_NUMBER))
        return sb_term_none();
    return direction(call, call->terms[0].number, sb_number_whole(1));
}

sb_term sb_call_atan2(const sb_call *call) {
    if (!sb_call_wants_same(call))
        return sb_term_none();
    sb_number y = call->terms[0].number, x = call->terms[1].number;
    if (sb_number_sign(y) == 0 && sb_number_sign(x) == 0) {
        sb_error(call->run, call->formula->place, "no direction: %s and %s are both 0",
                 sb_formula_quote(call->run, call->operands[0]),
                 sb_formula_quote(call->run, call->operands[1]));
        return sb_term_none();
    }
    return direction(call, y, x);
}
