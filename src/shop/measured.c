/* Reads measured.csv: knots and splits of boards in the rack. A shop without the file has measured none. */
#include "shop/read.h"

#include <string.h>
#include <unistd.h>

static sb_rack_item *find_piece(sb_shop *shop, const char *label) {
    for (size_t i = 0; i < shop->rack.count; i++)
        if (strcmp(shop->rack.items[i].label, label) == 0)
            return &shop->rack.items[i];
    return NULL;
}

static void tell_unknown(shop_reader *reader, const sb_finding *finding) {
    const sb_shop *shop = reader->shop;
    const char **known = SB_NEW_ARRAY(reader->run->pool, const char *, shop->rack.count + 1);
    for (size_t i = 0; i < shop->rack.count; i++)
        known[i] = shop->rack.items[i].label;
    sb_error_unknown(reader->run, finding->at, "rack piece", finding->board, known, shop->rack.count);
}

static bool can_be_measured(shop_reader *reader, const sb_rack_item *item, const sb_finding *finding) {
    bool board = item->stock->kind == SB_STOCK_BOARD;
    if (!board)
        sb_error(reader->run, finding->at, "\"%s\" is no board: only boards are measured", finding->board);
    else if (item->count > 1)
        sb_error(reader->run, finding->at,
                 "there are %lld of \"%s\": a measured board has a row of its own in rack.csv",
                 (long long)item->count, finding->board);
    return board && item->count <= 1;
}

static void take_finding(shop_reader *reader, const sb_finding *finding) {
    sb_rack_item *item = find_piece(reader->shop, finding->board);
    if (!item && !reader->rack_lost)
        tell_unknown(reader, finding);
    if (!item || shop_among(&reader->doubtful, item->stock) || !can_be_measured(reader, item, finding))
        return;
    item->measured = true;
    sb_finding_add(reader->run, finding, item->length, &item->bad);
}

void shop_read_measured(shop_reader *reader, const char *path) {
    if (access(path, F_OK) != 0)
        return;
    sb_findings findings = sb_findings_read(reader->run, path);
    for (size_t i = 0; i < findings.count; i++)
        take_finding(reader, &findings.items[i]);
}
