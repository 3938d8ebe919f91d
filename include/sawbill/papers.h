/* sawbill/papers.h -- fills documents from what was computed; knows no format.
 *
 * The customer's paper is made from the price lines alone; nothing of cost, margin, hours or recipe can get into it.
 */
#ifndef SAWBILL_PAPERS_H
#define SAWBILL_PAPERS_H

#include "sawbill/costing.h"
#include "sawbill/document.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* The wording of the customer's paper: templates/wording-LANGUAGE.txt, line grammar, `key : text`. */
typedef struct sb_wording sb_wording;
const sb_wording *sb_wording_read(sb_run *run, const char *templates, const char *language);
/* The text for a key; the key itself when the file lacks it, which was an error when it was read. */
const char *sb_wording_text(sb_run *run, const sb_wording *wording, const char *key);

/* `breaks`: the job in other numbers, NULL where nobody asks; the customer sees them where the job says so. */
sb_document *sb_paper_quote(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways, const sb_breaks *breaks,
                            const sb_wording *wording);
sb_document *sb_paper_estimate(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                               const sb_breaks *breaks);
sb_document *sb_paper_cuts(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way); /* shop and job may be NULL-like for bare lists: see cuts.c */
/* Labels for parts and for what goes back into the rack, in the grid that the shop sets. */
sb_document *sb_paper_labels(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way);
/* The same of a bare list, called `name`. */
sb_document *sb_paper_bare_labels(sb_run *run, const sb_plan *plan, const char *name, const struct sb_label_grid *grid, sb_style style);
sb_document *sb_paper_order(sb_run *run, const sb_shop *shop, const char *title, sb_date date, const sb_order *order);
/* The same lines in one table, for CSV. */
sb_document *sb_paper_order_list(sb_run *run, const sb_shop *shop, const char *title, sb_date date, const sb_order *order);
sb_document *sb_paper_takeoff(sb_run *run, const sb_shop *shop, const char *title, const sb_takeoff *const *takeoffs, size_t count,
                              const sb_plan *plan, const sb_order *order);
sb_document *sb_paper_comparison(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways);
/* What the terminal shows after `quote`: fits 80 columns. `breaks` may be NULL. */
sb_document *sb_paper_summary(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                              const sb_breaks *breaks);
/* The cutting plan of a bare list: no shop, no job. */
sb_document *sb_paper_bare_cuts(sb_run *run, const sb_plan *plan, sb_style style, sb_currency currency);

/* Saw settings for one corner, without a job. */
typedef enum sb_angle_kind { SB_ANGLE_FRAME, SB_ANGLE_SPLAY, SB_ANGLE_CORNER, SB_ANGLE_POINT, SB_ANGLE_CROWN } sb_angle_kind;
typedef struct sb_angle_ask {
    sb_angle_kind kind;
    int sides;                   /* frame, splay */
    double angle, slope, spring; /* degrees: of the corner or point; of sides above level; of crown to the wall */
    bool butted, outside;        /* splay; crown */
    sb_length width, length;     /* of the part, over its long points; 0: not told */
    sb_style style;
} sb_angle_ask;
/* There is such a corner, and a part of that length and width has both its ends. */
bool sb_angle_possible(sb_run *run, const sb_angle_ask *ask);
/* `bare`: the figures without words around them. NULL where there is no such corner. */
sb_document *sb_paper_angle(sb_run *run, const sb_angle_ask *ask, bool bare);
sb_record *sb_record_angle(sb_run *run, const sb_angle_ask *ask);

/* Results for --json; keys are documented in README.md and stay. */
sb_record *sb_record_plan(sb_run *run, const sb_plan *plan, int money_digits);
sb_record *sb_record_quote(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways);
sb_record *sb_record_takeoff(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count, const sb_plan *plan,
                             const sb_order *order);
/* Adds to a comparison or its record what batches of other sizes cost. */
void sb_paper_batches(sb_run *run, sb_document *comparison, const sb_ways *ways, const sb_batches *batches);
void sb_record_batches(sb_run *run, sb_record *comparison, const sb_shop *shop, const sb_ways *ways,
                       const sb_batches *batches);
/* Adds to the record of a quote what the job costs in other numbers. */
void sb_record_breaks(sb_run *run, sb_record *quote, const sb_shop *shop, const sb_breaks *breaks);
/* ---- revisions: what is kept of an estimate beside its papers, and what has changed since ---- */

/* Keys: job, revision (null: none), date, currency, figures: an array of option ("": none), figure, kind (money | count | share | time), amount (minor
 * units, number, ppm, ms). */
sb_record *sb_record_estimate(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways);
typedef struct sb_stored sb_stored;
/* NULL after advice: the file is not there, is damaged or tells another currency. */
const sb_stored *sb_stored_read(sb_run *run, const char *path, const sb_shop *shop, const sb_job *job);
/* The revision before: A before B, 1 before 2; NULL before the first, and before one that is neither letter nor number. */
const char *sb_revision_before(sb_run *run, const char *revision);
/* Adds to an estimate what has changed since the stored one, and by how much. */
void sb_paper_changes(sb_run *run, sb_document *estimate, const sb_job *job, const sb_ways *ways, const sb_stored *stored);

sb_record *sb_record_comparison(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways);

/* `why`: where figures come from. Figures are named as the papers print them: "total", "price", "labour", a part's title, a stock id, an
 * operation id, an input or derived value of a recipe, "mark 2 of board 3" ...; PIECE.NAME is one piece's. */
typedef struct sb_question {
    const char *figure;
    const sb_ways *ways; /* that it is asked of: the job's, or those of the job in another number of pieces */
    int64_t pieces;      /* that number; 0: the job as it is */
} sb_question;
typedef SB_LIST(sb_question) sb_questions;
/* "each, net at 21" is asked of 21 pieces, "21 pieces" of their total: how many these are, and the figure; 0 pieces: of the job as it is. */
sb_question sb_question_of(sb_run *run, const char *text);
/* `words`: of the quote, whose names of figures count too; NULL: none. NULL after an error with near misses, for each figure that
 * nobody knows. Without questions: which figures there are. */
sb_document *sb_paper_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_wording *words, const sb_ways *ways,
                          const sb_questions *questions);
sb_record *sb_record_why(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_wording *words, const sb_ways *ways,
                         const sb_questions *questions);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
