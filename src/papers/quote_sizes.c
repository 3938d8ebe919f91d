/* Sizes of pieces in metric, in imperial or in both. */
#include "papers/quote_sizes.h"

/* The other unit, as fine as a customer asks: 1/16 inch or 1 mm. */
static sb_style other(const sb_style *style) {
    bool metric = style->units == SB_UNITS_MM;
    return (sb_style){metric ? SB_UNITS_IN : SB_UNITS_MM,
                      {metric ? SB_NM_PER_INCH / 16 : SB_NM_PER_MM},
                      style->decimal_comma};
}

quote_sizes quote_sizes_of(const sb_shop *shop, const sb_job *job) {
    const sb_style *style = &shop->settings.style;
    sb_quote_units units = job->quote_units ? job->quote_units : shop->settings.quote_units;
    quote_sizes sizes = {*style, other(style), units == SB_QUOTE_BOTH};
    bool metric = style->units == SB_UNITS_MM;
    if ((units == SB_QUOTE_MM && !metric) || (units == SB_QUOTE_IN && metric))
        sizes.first = sizes.second;
    return sizes;
}

const char *quote_size(sb_run *run, const quote_sizes *sizes, const sb_takeoff_piece *piece) {
    const char *first = sb_write_sizes(run, piece->size, piece->size_count, &sizes->first);
    if (!sizes->both || !*first)
        return first;
    return sb_pool_print(run->pool, "%s (%s)", first,
                         sb_write_sizes(run, piece->size, piece->size_count, &sizes->second));
}

static const int64_t UNSEEN = SB_NM_PER_MM / 2; /* steps so fine are nothing that a customer misses */

static bool is_rounded(const sb_takeoff_piece *piece, sb_length step) {
    for (size_t i = 0; i < piece->size_count; i++)
        if (piece->size[i].nm % step.nm != 0)
            return true;
    return false;
}

bool quote_sizes_are_rounded(const quote_sizes *sizes, const sb_ways *ways) {
    for (size_t way = 0; !sizes->both && sizes->first.step.nm > UNSEEN && way < ways->list.count; way++) {
        const sb_takeoff *takeoff = ways->list.items[way].takeoff;
        for (size_t i = 0; i < takeoff->pieces.count; i++)
            if (is_rounded(&takeoff->pieces.items[i], sizes->first.step))
                return true;
    }
    return false;
}
