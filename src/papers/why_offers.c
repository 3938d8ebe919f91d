/* Prices that the estimate lists for other numbers of pieces, whose plans buy what this one does not; and what only the rack
 * asks for. Their names are those of material lines: "Pine 18 x 95, 3600 mm, of Fen Timber", "Deck oil, 0.8 l, from the rack (F1)". */
#include "papers/figures.h"
#include "papers/why.h"

#include <string.h>
#include <strings.h>

static const char elsewhere[] =
    "no line of this number of pieces: of another one, or of the rack's own order";

/* What stands behind the title of the stock; NULL: another stock. */
static const char *behind_title(const char *figure, const sb_stock *stock) {
    size_t size = strlen(stock->title);
    bool same = strncasecmp(figure, stock->title, size) == 0;
    return same && (figure[size] == '\0' || figure[size] == ',') ? figure + size : NULL;
}

/* Timber by volume goes by the merchant alone: how much is bought differs from plan to plan. */
static bool is_offer(const why *w, const char *figure, const sb_stock *stock, const sb_offer *offer) {
    const char *rest = behind_title(figure, stock);
    return *rest == '\0' || strcasecmp(figure, sb_offer_words(w->run, w->shop, stock, offer, 0)) == 0 ||
           (stock->kind == SB_STOCK_VOLUME &&
            why_ends_in(rest, sb_pool_print(w->run->pool, ", of %s", offer->merchant)));
}

static bool say_offers(why *w, const sb_stock *stock, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        if (!is_offer(w, figure, stock, offer))
            continue;
        why_say_cost(w, sb_offer_words(w->run, w->shop, stock, offer, 0), offer->each,
                     sb_pool_print(w->run->pool, "%s; %s", why_listed(w, offer), elsewhere), offer->place);
        found = true;
    }
    return found;
}

static bool say_rack(why *w, const sb_stock *stock, const char *rest) {
    bool found = false;
    for (size_t i = 0; i < w->shop->rack.count; i++) {
        const sb_rack_item *item = &w->shop->rack.items[i];
        if (item->stock != stock ||
            !why_ends_in(rest, sb_pool_print(w->run->pool, ", from the rack (%s)", item->label)))
            continue;
        why_say(w, sb_pool_print(w->run->pool, "%s, %s", stock->title, item->label),
                sb_stock_amount_text(w->run, stock, item->count, &w->shop->settings.style),
                sb_pool_print(w->run->pool, "stands in the rack; %s", elsewhere), item->place);
        found = true;
    }
    return found;
}

static bool say_credit(why *w, const sb_stock *stock, const char *rest) {
    if (strncasecmp(rest, ", usable leftovers: ", strlen(", usable leftovers: ")) != 0)
        return false;
    why_say(w, sb_pool_print(w->run->pool, "%s, usable leftovers", stock->title),
            share_words(w->run, w->shop, w->shop->settings.leftover_value),
            sb_pool_print(w->run->pool, "of new, credited for what is left; %s", elsewhere),
            sb_shop_setting(w->shop, "leftover value"));
    return true;
}

bool why_offer(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->shop->stock.count; i++) {
        const sb_stock *stock = w->shop->stock.items[i];
        const char *rest = behind_title(figure, stock);
        found = (rest &&
                 (say_offers(w, stock, figure) || say_rack(w, stock, rest) || say_credit(w, stock, rest))) ||
                found;
    }
    return found;
}
