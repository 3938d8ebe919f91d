/* Random numbers, three-point values and learning, against published figures and formulas. */
#include "costing/inside.h"
#include "made.h"

#include <math.h>

/* The first numbers of splitmix64 from 1234567: published with the algorithm's description at Rosetta Code. */
static void splitmix64_gives_the_published_numbers(void **state) {
    (void)state;
    static const uint64_t wanted[] = {UINT64_C(6457827717110365317), UINT64_C(3203168211198807973),
                                      UINT64_C(9817491932198370423), UINT64_C(4593380528125082431),
                                      UINT64_C(16408922859458223821)};
    uint64_t seed = 1234567;
    for (size_t i = 0; i < 5; i++)
        assert_true(sb_splitmix64(&seed) == wanted[i]);
}

/* The first numbers of xoshiro256** from the state 1, 2, 3, 4, made with the authors' program: tests of the library rand_xoshiro. */
static void xoshiro_gives_the_published_numbers(void **state) {
    (void)state;
    static const uint64_t wanted[] = {11520,
                                      0,
                                      1509978240,
                                      UINT64_C(1215971899390074240),
                                      UINT64_C(1216172134540287360),
                                      UINT64_C(607988272756665600),
                                      UINT64_C(16172922978634559625),
                                      UINT64_C(8476171486693032832),
                                      UINT64_C(10595114339597558777),
                                      UINT64_C(2904607092377533576)};
    sb_generator g = {{1, 2, 3, 4}};
    for (size_t i = 0; i < 10; i++)
        assert_true(sb_generator_next(&g) == wanted[i]);
}

/* ---- three points ------------------------------------------------------------------------------------------------ */

/* ((p - o) / 6)^2, as the textbooks have it: an approximation that no draw rests on. */
static double textbook_variance(int64_t least, int64_t most) {
    double sixth = (double)(most - least) / 6;
    return sixth * sixth;
}

/* flylib.com, a textbook of management science: (5, 8, 17) (3, 5, 7) (4, 6, 8) (3, 4, 5) weeks one after the other take 24, with the
 * textbooks' variance 5, and are done by 28 with a chance of 0.9633; sarthaks.com 2757731: from 4 to 10 days it is 1. Where the likely
 * value lies in the middle, the beta distribution itself has nine sevenths of it: (p - o)^2 / 28. */
static void the_textbook_figures(void **state) {
    (void)state;
    static const int64_t weeks[4][3] = {{5, 8, 17}, {3, 5, 7}, {4, 6, 8}, {3, 4, 5}};
    static const double means[] = {9, 5, 6, 4};
    double variance = 0, mean = 0;
    for (size_t i = 0; i < 4; i++) {
        const int64_t *w = weeks[i];
        assert_true(fabs(sb_three_point_mean(w[0], w[1], w[2]) - means[i]) < 1e-12);
        mean += sb_three_point_mean(w[0], w[1], w[2]);
        variance += textbook_variance(w[0], w[2]);
        if (2 * w[1] == w[0] + w[2])
            assert_true(fabs(sb_three_point_variance(w[0], w[1], w[2]) -
                             textbook_variance(w[0], w[2]) * 9 / 7) < 1e-12);
    }
    assert_true(fabs(variance - 5) < 1e-12);
    assert_true(fabs(erfc((mean - 28) / sqrt(2 * variance)) / 2 - 0.9633) < 2e-4);
    assert_true(textbook_variance(4, 10) == 1);
    assert_true(fabs(sb_three_point_variance(5, 8, 17) - 32.0 / 7) < 1e-12); /* (9 - 5) (17 - 9) / 7 */
}

static void mean_and_variance(const sb_beta *beta, double *mean, double *variance) {
    enum {
        STEPS = 200000
    };
    double sum = 0, squares = 0;
    for (int i = 0; i < STEPS; i++) {
        double x = sb_beta_at(beta, (i + 0.5) / STEPS);
        sum += x;
        squares += x * x;
    }
    *mean = sum / STEPS;
    *variance = squares / STEPS - *mean * *mean;
}

/* Without chance: over evenly spread numbers the inverse has the distribution's own mean and variance. */
static void the_inverse_has_the_right_moments(void **state) {
    (void)state;
    static const int64_t values[][3] = {{0, 0, 100},  {0, 1, 100},   {0, 20, 100},         {0, 50, 100},
                                        {0, 99, 100}, {0, 100, 100}, {15000, 20000, 50000}};
    sb_run run = sb_run_new();
    for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
        const int64_t *v = values[i];
        double mean, variance, wide = (double)(v[2] - v[0]);
        mean_and_variance(sb_beta_of(&run, v[0], v[1], v[2]), &mean, &variance);
        assert_true(fabs(mean - (sb_three_point_mean(v[0], v[1], v[2]) - (double)v[0]) / wide) < 1e-5);
        assert_true(fabs(variance - sb_three_point_variance(v[0], v[1], v[2]) / (wide * wide)) < 1e-5);
    }
    sb_run_free(&run);
}

/* alpha = 1, beta = 5: half of all draws lie under 1 - 0.5^(1/5). alpha = beta = 3: under a half; the sum up to a quarter is
 * 10 x^3 - 15 x^4 + 6 x^5 = 0.103515625. */
static void quantiles_that_have_a_formula(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_beta *first = sb_beta_of(&run, 0, 0, 1), *middle = sb_beta_of(&run, 0, 1, 2);
    assert_true(fabs(sb_beta_at(first, 0.5) - (1 - pow(0.5, 0.2))) < 1e-5);
    assert_true(fabs(sb_beta_at(middle, 0.5) - 0.5) < 1e-9);
    assert_true(fabs(sb_beta_at(middle, 0.103515625) - 0.25) < 1e-5);
    assert_true(sb_beta_at(first, 0) == 0 && sb_beta_at(first, 0.9999999999999999) <= 1);
    sb_run_free(&run);
}

/* Means of 20 000 draws stay within five of their own standard deviations; so do variances. */
static void draws_keep_to_the_formulas(void **state) {
    (void)state;
    enum {
        DRAWS = 20000
    };
    static const int64_t weeks[4][3] = {{5, 8, 17}, {3, 5, 7}, {4, 6, 8}, {3, 4, 5}};
    sb_run run = sb_run_new();
    const sb_beta *betas[4];
    double variance = 0, sum = 0, squares = 0;
    for (size_t i = 0; i < 4; i++) {
        betas[i] = sb_beta_of(&run, weeks[i][0], weeks[i][1], weeks[i][2]);
        variance += sb_three_point_variance(weeks[i][0], weeks[i][1], weeks[i][2]);
    }
    sb_generator g = sb_generator_of(7);
    for (int draw = 0; draw < DRAWS; draw++) {
        double total = 0;
        for (size_t i = 0; i < 4; i++)
            total += (double)weeks[i][0] +
                     (double)(weeks[i][2] - weeks[i][0]) * sb_beta_at(betas[i], sb_generator_unit(&g));
        sum += total;
        squares += total * total;
    }
    double mean = sum / DRAWS, spread = squares / DRAWS - mean * mean;
    assert_true(fabs(mean - 24) < 5 * sqrt(variance / DRAWS));
    assert_true(fabs(spread / variance - 1) < 5 * sqrt(2.0 / DRAWS));
    sb_run_free(&run);
}

/* ---- powers and learning -------------------------------------------------------------------------------------------- */

static void powers_are_those_of_the_c_library(void **state) {
    (void)state;
    for (int i = 1; i <= 1000; i++)
        for (int j = -8; j <= 8; j++) {
            double base = i / 250.0, exponent = j / 2.0, wanted = pow(base, exponent);
            assert_true(fabs(costing_power(base, exponent) / wanted - 1) < 1e-13);
        }
    assert_true(costing_power(0, 0) == 1 && costing_power(0, 2) == 0);
}

/* business-analysis-made-easy.com: with 80 % the exponent is -0.322, 50 minutes become 40 at the second and 32 at the fourth. The share is of
 * the average (Wright 1936), so four with a first of 100 h take 4 x 64 = 256 h in all. */
static void average_time_falls_with_each_doubling(void **state) {
    (void)state;
    const sb_share eighty = {800000};
    assert_int_equal(sb_learned(eighty, 1).ppm, 1000000);
    assert_int_equal(sb_learned(eighty, 2).ppm, 800000);
    assert_int_equal(sb_learned(eighty, 4).ppm, 640000);
    assert_int_equal(sb_learned(eighty, 1024).ppm, 107374); /* 0.8^10 */
    assert_int_equal(sb_learned(eighty, 10).ppm, 476510);   /* 10^-0.32193 */
    assert_int_equal(sb_learned((sb_share){850000}, 10).ppm,
                     582820);                                     /* 85 %: the 0.583 of a known misprint */
    assert_int_equal(sb_learned((sb_share){0}, 10).ppm, 1000000); /* not told */
    for (int64_t n = 1; n < 5000; n++) /* the average never rises, nor does the total fall */
        for (int64_t ppm = 500000; ppm <= 1000000; ppm += 125000) {
            sb_share now = sb_learned((sb_share){ppm}, n), next = sb_learned((sb_share){ppm}, n + 1);
            assert_true(next.ppm <= now.ppm);
            assert_true(next.ppm * (n + 1) + n + 1 >= now.ppm * n);
        }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(splitmix64_gives_the_published_numbers),
        cmocka_unit_test(xoshiro_gives_the_published_numbers),
        cmocka_unit_test(the_textbook_figures),
        cmocka_unit_test(the_inverse_has_the_right_moments),
        cmocka_unit_test(quantiles_that_have_a_formula),
        cmocka_unit_test(draws_keep_to_the_formulas),
        cmocka_unit_test(powers_are_those_of_the_c_library),
        cmocka_unit_test(average_time_falls_with_each_doubling),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
