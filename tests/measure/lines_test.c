/* The lexer for lines: where a quantity begins and ends among words, signs and texts. */
#include "bench.h"
#include "measure/units.h"

static sb_cursor tokens_of(sb_run *run, const char *line, bool decimal_comma) {
    const sb_source *s = sb_source_of(run, "line", line);
    return sb_tokens_of(run, sb_line_lexer(run, decimal_comma), (sb_place){s, 0, sb_source_size(s)});
}

/* "Q[20 mm] -[-]": kind and text of each token */
static const char *shape(sb_run *run, sb_cursor c) {
    static const char letters[] = {
        [SB_WORD] = 'W', [SB_QUANTITY] = 'Q', [SB_STRING] = 'S', [SB_SYMBOL] = 'Y', [SB_TEXT] = 'T'};
    const char *all = "";
    for (; c.at->kind != SB_END; c.at++)
        all = sb_pool_print(run->pool, "%s%s%c[%s]", all, *all ? " " : "", letters[c.at->kind], c.at->text);
    return all;
}

static void assert_line(sb_run *run, const char *line, const char *expected) {
    assert_string_equal(shape(run, tokens_of(run, line, false)), expected);
}

static void quantities_among_words(void **state) {
    sb_run *run = *state;
    assert_line(run, "high - 20mm", "W[high] Y[-] Q[20mm]");
    assert_line(run, "long - 2 * slat.thickness", "W[long] Y[-] Q[2] Y[*] W[slat] Y[.] W[thickness]");
    assert_line(run, "4 of post", "Q[4] W[of] W[post]");
    assert_line(run, "1000 mm 400 mm to 2400 mm : outside",
                "Q[1000 mm] Q[400 mm] W[to] Q[2400 mm] T[outside]");
    assert_line(run, "floor((high - 60 mm + 8 mm) / 4)",
                "W[floor] Y[(] Y[(] W[high] Y[-] Q[60 mm] Y[+] Q[8 mm] Y[)] Y[/] Q[4] Y[)]");
    assert_line(run, "rows>=2", "W[rows] Y[>=] Q[2]");
    assert_line(run, "sides != slatted | panelled", "W[sides] Y[!=] W[slatted] Y[|] W[panelled]");
    assert_line(run, "min(1, 2)", "W[min] Y[(] Q[1] Y[,] Q[2] Y[)]");
    assert_line(run, "25% 25 % 0.5", "Q[25%] Q[25 %] Q[0.5]");
    assert_line(run, "deliver 2026-03-31", "W[deliver] W[2026-03-31]");
}

static void feet_and_inches_are_one(void **state) {
    sb_run *run = *state;
    assert_line(run, "3' 11-1/4\"", "Q[3' 11-1/4\"]");
    assert_line(run, "3ft 11 1/4in", "Q[3ft 11 1/4in]");
    assert_line(run, "3'-11\" x", "Q[3'-11\"] W[x]");
    assert_line(run, "47 1/4\"*2", "Q[47 1/4\"] Y[*] Q[2]");
    assert_line(run, "1/2\" + 3/4 in", "Q[1/2\"] Y[+] Q[3/4 in]");
    assert_line(run, "3′ 11″", "Q[3′ 11″]");
    assert_line(run, "22°30′ 45 deg 22deg30min", "Q[22°30′] Q[45 deg] Q[22deg30min]");
    assert_line(run, "1 h 30 min", "Q[1 h 30 min]");
    assert_line(run, "12 \"long slat\"", "Q[12] S[long slat]");
}

/* A dash joins only where no blank stands around it. */
static void a_dash_between_blanks_is_a_minus(void **state) {
    sb_run *run = *state;
    assert_line(run, "12 - 1/4\"", "Q[12] Y[-] Q[1/4\"]");
    assert_line(run, "12-1/4\"", "Q[12-1/4\"]");
    assert_line(run, "12 -1/4\"", "Q[12] Y[-] Q[1/4\"]");
    assert_line(run, "3' - 11\"", "Q[3'] Y[-] Q[11\"]");
    assert_line(run, "20mm-5mm", "Q[20mm] Y[-] Q[5mm]");
    assert_line(run, "450-20", "Q[450] Y[-] Q[20]");
    assert_line(run, "high-low", "W[high-low]");
    assert_line(run, "high -low", "W[high] Y[-] W[low]");
    assert_line(run, "- high", "Y[-] W[high]");
}

static void ids_are_words(void **state) {
    sb_run *run = *state;
    assert_line(run, "2x4-spf larch-70x70 70x70-larch 18mm-ply 2-ply 4x4",
                "W[2x4-spf] W[larch-70x70] W[70x70-larch] W[18mm-ply] W[2-ply] W[4x4]");
    assert_line(run, "screw-5x60 1e9 20mmx 3rd no_7", "W[screw-5x60] W[1e9] W[20mmx] W[3rd] W[no_7]");
    assert_line(run, "gr\xC3\xBCn-\xC3\xB6l \xD0\xB4\xD1\x83\xD0\xB1 5\xC3\xA4",
                "W[gr\xC3\xBCn-\xC3\xB6l] "
                "W[\xD0\xB4\xD1\x83\xD0\xB1] W[5\xC3\xA4]");
    assert_line(run, "2 2x4-spf", "Q[2] W[2x4-spf]");
}

static void divisions_stay_divisions(void **state) {
    sb_run *run = *state;
    assert_line(run, "1/2", "Q[1] Y[/] Q[2]");
    assert_line(run, "wide/2", "W[wide] Y[/] Q[2]");
    assert_line(run, "600 mm / 4\"", "Q[600 mm] Y[/] Q[4\"]");
    assert_line(run, "47 1/4", "Q[47] Q[1] Y[/] Q[4]");
}

static void texts(void **state) {
    sb_run *run = *state;
    assert_line(run, "rows >= 2 : too low for 3/4\" ply", "W[rows] Y[>=] Q[2] T[too low for 3/4\" ply]");
    assert_line(run, "x : \"quoted\"", "W[x] T[quoted]");
    assert_line(run, "\"long slat\" 2", "S[long slat] Q[2]");
    tokens_of(run, "\"open", false);
    assert_notice(run, 0, "1:1", "never closed");
}

static void decimal_commas(void **state) {
    sb_run *run = *state;
    assert_string_equal(shape(run, tokens_of(run, "max(1,5 mm, 2)", true)),
                        "W[max] Y[(] Q[1,5 mm] Y[,] Q[2] Y[)]");
    assert_ptr_equal(sb_line_lexer(run, true), sb_line_lexer(run, true));
    assert_ptr_not_equal(sb_line_lexer(run, true), sb_line_lexer(run, false));
    assert_string_equal(shape(run, tokens_of(run, "max(1,5)", false)), "W[max] Y[(] Q[1] Y[,] Q[5] Y[)]");
}

/* What the lexer takes for a quantity, the reader reads, whole; for every unit and every form of number. */
static void lexer_and_reader_agree(void **state) {
    sb_run *run = *state;
    static const char *const numbers[] = {"3", "3.5", "3/4", "2 3/4", "2-3/4"};
    for (size_t i = 0; i < spelling_count; i++)
        for (size_t n = 0; n < sizeof numbers / sizeof *numbers; n++)
            for (int blank = 0; blank < 2; blank++) {
                const spelling *s = &spelling_table[i];
                bool arc = s->kind == UNIT_ARC_MINUTE || s->kind == UNIT_ARC_SECOND;
                if (arc || (blank && s->form == SPELLING_TIGHT))
                    continue;
                const char *text = sb_pool_print(run->pool, "%s%s%s", numbers[n], blank ? " " : "", s->text);
                sb_cursor c = tokens_of(run, text, false);
                assert_int_equal(c.at->kind, SB_QUANTITY);
                assert_string_equal(c.at->text, text);
                quantity_of(run, text);
            }
}

static void chains_agree_too(void **state) {
    sb_run *run = *state;
    for (size_t i = 0; i < spelling_count; i++)
        for (size_t j = 0; j < spelling_count; j++) {
            const spelling *large = &spelling_table[i], *small = &spelling_table[j];
            if (unit_table[large->kind].below != small->kind || small->kind == UNIT_NONE ||
                large->kind == UNIT_ARC_MINUTE)
                continue;
            const char *text = sb_pool_print(run->pool, "2%s 3%s", large->text, small->text);
            sb_cursor c = tokens_of(run, text, false);
            assert_string_equal(c.at->text, text);
            quantity_of(run, text);
        }
}

/* From random pieces of lines: a quantity token reads, or is refused for its value, never for its shape. */
static void whatever_is_found_is_read(void **state) {
    sb_run *run = *state;
    static const char *const pieces[] = {"3",  "11", "/",   "4", "-",   " ",   "'", "\"", "ft",
                                         "in", "mm", "m",   "2", "deg", "min", "°", "%",  ".",
                                         "5",  "x",  "spf", "1", "64",  "(",   "h", "lb"};
    static const char *const allowed[] = {
        "tape",     "zero below", "less than one", "as much as a whole", "1 km", "more than can be counted",
        "18 digits"};
    dice d = {77};
    for (int round = 0; round < 20000; round++) {
        const char *line = "";
        for (uint64_t i = roll(&d, 9); i > 0; i--)
            line = sb_pool_print(run->pool, "%s%s", line, pieces[roll(&d, sizeof pieces / sizeof *pieces)]);
        for (sb_cursor c = tokens_of(run, line, false); c.at->kind != SB_END; c.at++) {
            sb_quantity q;
            const char *why;
            bool fine = c.at->kind != SB_QUANTITY || sb_quantity_read(run, c.at->text, false, &q, &why);
            for (size_t i = 0; !fine && i < sizeof allowed / sizeof *allowed; i++)
                fine = strstr(why, allowed[i]) != NULL;
            if (!fine)
                fail_msg("in %s: \"%s\": %s", line, c.at->text, why);
        }
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(quantities_among_words),
        AT_THE_BENCH(feet_and_inches_are_one),
        AT_THE_BENCH(a_dash_between_blanks_is_a_minus),
        AT_THE_BENCH(ids_are_words),
        AT_THE_BENCH(divisions_stay_divisions),
        AT_THE_BENCH(texts),
        AT_THE_BENCH(decimal_commas),
        AT_THE_BENCH(lexer_and_reader_agree),
        AT_THE_BENCH(chains_agree_too),
        AT_THE_BENCH(whatever_is_found_is_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
