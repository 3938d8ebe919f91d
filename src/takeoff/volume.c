/* Parts out of timber that is sold by volume, in random widths and lengths: no board is planned. The maker lays
 * them out on the boards at hand; what is bought is their rough volume and the grade's waste. */
#include "takeoff/inside.h"

static void tell_the_saw(takeoff_parting *parting) {
    takeoff_walk *walk = parting->making->walk;
    takeoff_saw_note(
        walk, sb_pool_print(walk->run->pool,
                            "%s: in random widths and lengths, bought by volume with its grade's waste; "
                            "its parts are laid out on the boards by hand and are not in the cutting plan",
                            parting->part.stock->title));
}

bool takeoff_volume_part(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    part->from_volume = true;
    if (!takeoff_board_part(parting))
        return false;
    tell_the_saw(parting);
    return true;
}
