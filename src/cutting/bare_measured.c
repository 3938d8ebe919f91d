/* Bare lists: what is bad of the boards that somebody measured. */
#include <string.h>

#include "sawbill/cutting.h"

static sb_supply *supply_labelled(sb_problem *problem, const char *label) {
    for (size_t i = 0; i < problem->supplies.count; i++)
        if (*label && strcmp(problem->supplies.items[i].label, label) == 0)
            return &problem->supplies.items[i];
    return NULL;
}

static void tell_unknown(sb_run *run, const sb_problem *problem, const sb_finding *finding) {
    const char **known = SB_NEW_ARRAY(run->pool, const char *, problem->supplies.count + 1);
    size_t count = 0;
    for (size_t i = 0; i < problem->supplies.count; i++)
        if (*problem->supplies.items[i].label)
            known[count++] = problem->supplies.items[i].label;
    if (count > 0)
        sb_error_unknown(run, finding->at, "board", finding->board, known, count);
    else
        sb_error(run, finding->at, "no row of the stock has a `label`: a measured board goes by it");
}

/* A board that was measured is this one board. */
static bool can_be_measured(sb_run *run, const sb_problem *problem, const sb_supply *supply,
                            const sb_finding *finding) {
    bool sheet = problem->stock.items[supply->stock].sheet;
    if (sheet)
        sb_error(run, finding->at, "\"%s\" is a sheet: only boards are measured", finding->board);
    else if (supply->available > 1)
        sb_error(run, finding->at, "there are %lld of \"%s\": a measured board has a row of its own",
                 (long long)supply->available, finding->board);
    return !sheet && supply->available <= 1;
}

static void take_finding(sb_run *run, sb_problem *problem, const sb_finding *finding) {
    sb_supply *supply = supply_labelled(problem, finding->board);
    if (!supply) {
        tell_unknown(run, problem, finding);
        return;
    }
    if (!can_be_measured(run, problem, supply, finding))
        return;
    supply->measured = true;
    if (supply->available < 0)
        supply->available = 1;
    sb_finding_add(run, finding, supply->length, &supply->bad);
}

/* After a mistake in the lists rows may be missing: then this one is read for its own mistakes alone. */
bool sb_problem_measured(sb_run *run, sb_problem *problem, const char *measured_csv) {
    bool whole = sb_ok(run);
    sb_findings findings = sb_findings_read(run, measured_csv);
    for (size_t i = 0; whole && i < findings.count; i++)
        take_finding(run, problem, &findings.items[i]);
    return sb_ok(run);
}
