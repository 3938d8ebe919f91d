/* JSON out, read back by jansson. */
#include "bench.h"

#include <jansson.h>
#include <math.h>

static json_t *parsed(const sb_record *record) {
    const char *text = sb_write_json(&run, record);
    assert_int_equal(text[strlen(text) - 1], '\n');
    json_error_t error;
    json_t *root = json_loads(text, JSON_DECODE_ANY | JSON_REJECT_DUPLICATES, &error);
    if (!root)
        fail_msg("%s in:\n%s", error.text, text);
    return root;
}

static void it_looks_as_promised(void **state) {
    (void)state;
    sb_record *plan = sb_record_object(&run);
    sb_put_money(&run, plan, "cost", (sb_money){123450}, 2);
    sb_put_truth(&run, plan, "proved", false);
    sb_record *part = sb_put_object(&run, sb_put_array(&run, plan, "boards"), NULL);
    sb_put_text(&run, part, "name", "slat \"long\"\n2");
    sb_put_length(&run, part, "length_mm", (sb_length){864500000});
    sb_put_null(&run, part, "a_last");
    sb_put_array(&run, plan, "none");
    assert_string_equal(sb_write_json(&run, plan), "{\n"
                                                   "  \"cost\": \"1234.50\",\n"
                                                   "  \"proved\": false,\n"
                                                   "  \"boards\": [\n"
                                                   "    {\n"
                                                   "      \"name\": \"slat \\\"long\\\"\\n2\",\n"
                                                   "      \"length_mm\": 864.5,\n"
                                                   "      \"a_last\": null\n"
                                                   "    }\n"
                                                   "  ],\n"
                                                   "  \"none\": []\n"
                                                   "}\n");
}

static const char *number_text(int64_t nm) {
    sb_record *record = sb_record_object(&run);
    sb_put_length(&run, record, "l", (sb_length){nm});
    char *text = sb_pool_print(run.pool, "%s", strchr(sb_write_json(&run, record), ':') + 2);
    text[strcspn(text, "\n")] = '\0';
    return text;
}

static void lengths_print_shortest(void **state) {
    (void)state;
    assert_string_equal(number_text(864000000), "864");
    assert_string_equal(number_text(0), "0");
    assert_string_equal(number_text(-3200000), "-3.2");
    assert_string_equal(number_text(19050000), "19.05");  /* 3/4 in */
    assert_string_equal(number_text(396875), "0.396875"); /* 1/64 in */
    assert_string_equal(number_text(100000), "0.1");
    assert_string_equal(number_text(999999999999), "999999.999999");
    assert_string_equal(number_text(1), "1e-6"); /* a nanometre; still a JSON number */
}

/* Every length up to a kilometre comes back to the nanometre. */
static void lengths_come_back_exactly(void **state) {
    (void)state;
    for (int i = 0; i < 2000; i++) {
        int64_t nm = (int64_t)dice(1u << 20) * 953674 + dice(1000000);
        double read = strtod(number_text(nm), NULL);
        assert_int_equal(llround(read * 1e6), nm);
    }
}

static void texts_come_back(void **state) {
    (void)state;
    const char *texts[] = {"",   "Bänke für draußen", "tab\there", "\x01 and \x1f",
                           "木", "</script>",         "\\\"",      "a\xF0\x9F\xAA\x9A"};
    sb_record *all = sb_record_object(&run);
    sb_record *list = sb_put_array(&run, all, "texts");
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        sb_put_text(&run, list, NULL, texts[i]);
    json_t *root = parsed(all);
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        assert_string_equal(json_string_value(json_array_get(json_object_get(root, "texts"), i)), texts[i]);
    json_decref(root);
}

static void what_is_not_utf8_is_replaced(void **state) {
    (void)state;
    sb_record *all = sb_record_object(&run);
    sb_put_text(&run, all, "file", "caf\xE9.job");
    json_t *root = parsed(all);
    assert_string_equal(json_string_value(json_object_get(root, "file")), "caf\xEF\xBF\xBD.job");
    json_decref(root);
}

static void integers_and_nan(void **state) {
    (void)state;
    sb_record *all = sb_record_object(&run);
    sb_put_integer(&run, all, "most", INT64_MAX);
    sb_put_decimal(&run, all, "x", 5, 1);
    all->last->number = NAN;
    json_t *root = parsed(all);
    assert_true(json_integer_value(json_object_get(root, "most")) == INT64_MAX);
    assert_true(json_is_null(json_object_get(root, "x")));
    json_decref(root);
}

static void a_key_twice_is_a_bug(void **state) {
    (void)state;
    sb_record *all = sb_record_object(&run);
    sb_put_integer(&run, all, "row", 1);
    sb_put_integer(&run, all, "row", 2);
    sb_write_json(&run, all);
    assert_int_equal(sb_notices_level(&run, 0), SB_BUG);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(it_looks_as_promised), TEST(lengths_print_shortest),       TEST(lengths_come_back_exactly),
        TEST(texts_come_back),      TEST(what_is_not_utf8_is_replaced), TEST(integers_and_nan),
        TEST(a_key_twice_is_a_bug),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
