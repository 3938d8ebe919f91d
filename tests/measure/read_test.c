/* Typed reading of cells: what a bare number means, which units fit, and what is said otherwise. */
#include "bench.h"

static sb_place here(sb_run *run) {
    return (sb_place){sb_source_of(run, "parts.csv", "cell"), 0, 4};
}

/* The next message must hold `part`, and stand at the place given. */
static void refused(sb_run *run, bool read, const char *part) {
    assert_false(read);
    size_t last = sb_notices_count(run, SB_NOTE);
    assert_true(last > 0);
    assert_notice(run, last - 1, "1:1", part);
}

static void lengths(void **state) {
    sb_run *run = *state;
    sb_length length;
    assert_true(sb_read_length(run, "1200", here(run), false, &length));
    assert_int_equal(length.nm, SB_MM(1200).nm);
    assert_true(sb_read_length(run, "1,2 m", here(run), true, &length));
    assert_int_equal(length.nm, SB_MM(1200).nm);
    refused(run, sb_read_length(run, "3 m2", here(run), false, &length), "expected a length such as");
    refused(run, sb_read_length(run, "3 m2", here(run), false, &length), "\"3 m2\" is an area");
    refused(run, sb_read_length(run, "12 %", here(run), false, &length), "\"12 %\" is a percentage");
    refused(run, sb_read_length(run, "2000000", here(run), false, &length), "above 1 km");
    refused(run, sb_read_length(run, "", here(run), false, &length), "nothing stands here");
    refused(run, sb_read_length(run, "nan", here(run), false, &length), "not a number");
    assert_int_equal(sb_status(run), 1);
}

static void angles_and_times(void **state) {
    sb_run *run = *state;
    sb_angle angle;
    sb_duration time;
    assert_true(sb_read_angle(run, "22.5", here(run), false, &angle));
    assert_int_equal(angle.udeg, 22500000);
    assert_true(sb_read_angle(run, "22deg30min", here(run), false, &angle));
    assert_int_equal(angle.udeg, 22500000);
    assert_true(sb_read_angle(run, "-5°", here(run), false, &angle));
    assert_int_equal(angle.udeg, -5000000);
    refused(run, sb_read_angle(run, "45 mm", here(run), false, &angle), "is a length");
    assert_true(sb_read_duration(run, "1.5", here(run), false, &time));
    assert_int_equal(time.ms, 90000);
    assert_true(sb_read_duration(run, "1 h 30 min", here(run), false, &time));
    assert_int_equal(time.ms, 5400000);
    refused(run, sb_read_duration(run, "45 deg", here(run), false, &time), "is an angle");
}

static void amounts_of_money(void **state) {
    sb_run *run = *state;
    sb_money money;
    assert_true(sb_read_money(run, "1234.5", here(run), false, 2, &money));
    assert_int_equal(money.minor, 123450);
    assert_true(sb_read_money(run, "-0,05", here(run), true, 2, &money));
    assert_int_equal(money.minor, -5);
    assert_true(sb_read_money(run, "1.234", here(run), false, 3, &money));
    assert_int_equal(money.minor, 1234);
    assert_true(sb_read_money(run, "5.00", here(run), false, 0, &money)); /* the decimals say nothing */
    assert_int_equal(money.minor, 5);
    refused(run, sb_read_money(run, "1.234", here(run), false, 2, &money), "no finer than two decimals");
    refused(run, sb_read_money(run, "1.5", here(run), false, 0, &money), "no finer than whole units");
    refused(run, sb_read_money(run, "5 m", here(run), false, 2, &money), "is a length");
    refused(run, sb_read_money(run, "12.50 EUR", here(run), false, 2, &money), "without its currency");
    refused(run, sb_read_money(run, "5 %", here(run), false, 2, &money), "is a percentage");
    refused(run, sb_read_money(run, "999999999999999999", here(run), false, 2, &money),
            "more than can be counted");
    refused(run, sb_read_money(run, "1,234.50", here(run), false, 2, &money), "not grouped");
}

static void plain_numbers(void **state) {
    sb_run *run = *state;
    int64_t micro;
    assert_true(sb_read_micro(run, "0.1212", here(run), false, &micro));
    assert_int_equal(micro, 121200);
    refused(run, sb_read_micro(run, "0.1234567", here(run), false, &micro), "no finer than six decimals");
    refused(run, sb_read_micro(run, "3 mm", here(run), false, &micro), "is a length");
}

static void shares(void **state) {
    sb_run *run = *state;
    sb_share share;
    assert_true(sb_read_share(run, "25", here(run), false, &share));
    assert_int_equal(share.ppm, 250000);
    assert_true(sb_read_share(run, "25 %", here(run), false, &share));
    assert_int_equal(share.ppm, 250000);
    assert_true(sb_read_share(run, "8,1 %", here(run), true, &share));
    assert_int_equal(share.ppm, 81000);
    refused(run, sb_read_share(run, "0.00001", here(run), false, &share), "no finer than four decimals");
    refused(run, sb_read_share(run, "3 kg", here(run), false, &share), "is a mass");
}

static void counts(void **state) {
    sb_run *run = *state;
    int64_t count;
    assert_true(sb_read_count(run, "14", here(run), &count));
    assert_int_equal(count, 14);
    assert_true(sb_read_count(run, "0", here(run), &count));
    assert_int_equal(count, 0);
    refused(run, sb_read_count(run, "-3", here(run), &count), "may not be negative");
    refused(run, sb_read_count(run, "2.5", here(run), &count), "\"2.5\" is not a whole number");
    refused(run, sb_read_count(run, "3 mm", here(run), &count), "not a whole number");
    refused(run, sb_read_count(run, "", here(run), &count), "not a whole number");
    refused(run, sb_read_count(run, "1000000001", here(run), &count), "above");
    refused(run, sb_read_count(run, "99999999999999999999999999", here(run), &count), "above");
}

static void dates(void **state) {
    sb_run *run = *state;
    sb_date date;
    assert_true(sb_read_date(run, "2028-02-29", here(run), &date));
    assert_true(date.year == 2028 && date.month == 2 && date.day == 29);
    static const char *const shapes[] = {"",           "31.3.2026", "2026-3-31", "2026-03-31x",
                                         "2026/03/31", "20260331"};
    for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++)
        refused(run, sb_read_date(run, shapes[i], here(run), &date), "is not year-month-day");
    static const char *const days[] = {"2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31",
                                       "2026-01-00", "0000-01-01", "2026-01-99", "1900-02-29"};
    for (size_t i = 0; i < sizeof days / sizeof *days; i++)
        refused(run, sb_read_date(run, days[i], here(run), &date), "is not in the calendar");
}

static void yes_and_no(void **state) {
    sb_run *run = *state;
    bool answer = false;
    assert_true(sb_read_yes(run, "yes", here(run), &answer));
    assert_true(answer);
    assert_true(sb_read_yes(run, "no", here(run), &answer));
    assert_false(answer);
    refused(run, sb_read_yes(run, "maybe", here(run), &answer), "expected yes or no: \"maybe\" is neither");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(lengths),       AT_THE_BENCH(angles_and_times), AT_THE_BENCH(amounts_of_money),
        AT_THE_BENCH(plain_numbers), AT_THE_BENCH(shares),           AT_THE_BENCH(counts),
        AT_THE_BENCH(dates),         AT_THE_BENCH(yes_and_no),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
