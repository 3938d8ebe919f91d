/* The customer's pages: legible, and what belongs together stands together. */
#include "sample.h"

#include "writers/pages.h"

static ink_pages pages_for(sample *s, const char *language, bool letter) {
    const sb_wording *wording = sb_wording_read(&s->run, "templates", language);
    sb_document *quote = sb_paper_quote(&s->run, s->shop, s->job, s->ways, NULL, wording);
    const type_case *type = type_open(&s->run);
    if (!quote || !type || !sb_ok(&s->run))
        sample_fail(s, "no quote");
    quote->letter = letter;
    return pages_of(&s->run, type, quote);
}

static bool begins(const ink_item *item, const char *words) {
    const char *all = item->is_text ? pango_layout_get_text(item->text.line->layout) : "";
    return item->is_text && strncmp(all + item->text.line->start_index, words, strlen(words)) == 0;
}

/* The page, from 1, of the n-th line that begins with these words. */
static size_t page_of(ink_pages pages, const char *words, size_t nth) {
    for (size_t p = 0; p < pages.count; p++)
        for (size_t i = 0; i < pages.items[p].items.count; i++)
            if (begins(&pages.items[p].items.items[i], words) && nth-- == 0)
                return p + 1;
    fail_msg("no line begins with \"%s\"", words);
    return 0;
}

typedef struct phrases {
    const char *language, *option, *total, *accept, *sign;
} phrases;
static const phrases SPOKEN[] = {{"en", "Option", "Total with tax", "Acceptance", "Signature"},
                                 {"de", "Ausführung", "Summe mit Steuer", "Bestellung", "Unterschrift"}};

static void stands_together(sample *s, const phrases *spoken, ink_pages pages) {
    for (size_t way = 0; s->ways->list.count > 1 && way < s->ways->list.count; way++) {
        const char *heading = sb_pool_print(s->run.pool, "%s %zu:", spoken->option, way + 1);
        assert_int_equal(page_of(pages, heading, 0), page_of(pages, spoken->total, way));
    }
    assert_int_equal(page_of(pages, spoken->accept, 0), page_of(pages, spoken->sign, 0));
    for (size_t p = 0; p < pages.count; p++) {
        const ink_text *one, *other;
        assert_false(ink_find_overlap(&pages.items[p], &one, &other));
    }
}

static void an_option_and_its_total_share_a_page(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        for (int turn = 0; turn < 4; turn++)
            stands_together(&s, &SPOKEN[turn % 2], pages_for(&s, SPOKEN[turn % 2].language, turn / 2));
        sample_close(&s);
    }
}

/* One note more after the other pushes the signature down, over the end of a page: the whole of it goes over. */
static void nobody_signs_a_page_without_words(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    sb_job *job = SB_NEW(s.run.pool, sb_job);
    *job = *s.job;
    s.job = job;
    size_t turned = 0;
    for (int notes = 0; notes < 12; notes++) {
        SB_PUSH(s.run.pool, job->notes, sb_pool_print(s.run.pool, "Note %d.", notes));
        ink_pages pages = pages_for(&s, "en", false);
        stands_together(&s, &SPOKEN[0], pages);
        turned += page_of(pages, "Signature", 0) > 1;
    }
    assert_in_range(turned, 1, 11);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_option_and_its_total_share_a_page),
        cmocka_unit_test(nobody_signs_a_page_without_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
