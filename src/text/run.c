#include "text/notices.h"

sb_run sb_run_new(void) {
    sb_run run = {.pool = sb_pool_new()};
    if (!run.pool)
        return run;
    run.notices = SB_NEW(run.pool, sb_notices);
    if (!run.notices)
        sb_run_free(&run);
    return run;
}

sb_run sb_run_aside(const sb_run *run) {
    sb_run aside = *run;
    aside.notices = SB_NEW(run->pool, sb_notices);
    return aside;
}

void sb_run_free(sb_run *run) {
    sb_pool_free(run->pool);
    *run = (sb_run){0};
}
