/* sawbill/shop.h -- what a workshop knows: settings, stock, prices, grades, operations, rack.
 *
 * Read from one folder of plain text and CSV (`rates/`, its columns are described in rates/README.md):
 *   shop.txt        settings, line grammar
 *   stock.csv       what there is to buy: one row a kind of stock
 *   prices.csv      who sells it, in which length or size or pack, at what price; many rows a stock
 *   grades.csv      defect allowance by grade
 *   operations.csv  kinds of work and how long they take
 *   rack.csv        leftovers and stock at hand (optional)
 *   measured.csv    knots and splits of boards in the rack (optional)
 * Everything is read-only once read. Pointers inside point into the shop.
 */
#ifndef SAWBILL_SHOP_H
#define SAWBILL_SHOP_H

#include "sawbill/formula.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

typedef enum sb_stock_kind {
    SB_STOCK_BOARD,  /* timber in lengths: planned board by board */
    SB_STOCK_SHEET,  /* plywood and the like: planned sheet by sheet */
    SB_STOCK_VOLUME, /* timber in random widths and lengths, sold by volume: no plan, waste factor */
    SB_STOCK_FIXING, /* screws, bolts, hinges: counted */
    SB_STOCK_FINISH, /* oil, paint: millilitres, from area x coats / coverage */
    SB_STOCK_GLUE,   /* milligrams, from area x spread */
    SB_STOCK_EDGING, /* metres on panel edges */
    SB_STOCK_OTHER   /* abrasives, blades, film: counted */
} sb_stock_kind;
const char *sb_stock_kind_word(sb_stock_kind kind); /* board sheet volume fixing finish glue edging other */
/* The unit in which packs, minimums and what the rack holds are counted: "ml" finish, "mg" glue, "mm" edging, "" pieces
 * (boards and sheets too). */
const char *sb_stock_kind_unit(sb_stock_kind kind);

/* A share of timber lost to knots, splits and wane where nobody has measured the boards. */
typedef enum sb_waste_basis {
    SB_ADDED_TO_NET,  /* 30 % added to net: 100 m becomes 130 m */
    SB_LOST_OF_BOUGHT /* 30 % lost of what is bought: 100 m becomes 142.9 m */
} sb_waste_basis;

typedef struct sb_grade {
    const char *id, *title;
    sb_share defect; /* zero: none */
    sb_waste_basis basis;
    sb_place place;
} sb_grade;

/* What somebody sells: one row of prices.csv. */
typedef struct sb_offer {
    const char *merchant;
    sb_length length; /* boards, sheets; 0 for the rest */
    sb_length width;  /* sheets; 0: the stock's own width */
    sb_price price;
    int64_t pack; /* what one pack holds, in the unit of sb_stock_kind_unit; 1 for boards and sheets, 0 for volume timber */
    const char *sold; /* the pack as the merchant names it: "310 ml"; "" where it is a number, or there is none */
    sb_cost each; /* what one board, sheet or pack costs; volume timber: one unit of price.per (m3 or bf) */
    bool ranged;          /* the price is told as a range, `each` the likely one in it */
    sb_cost least, most;
    int64_t available;    /* -1: no limit */
    sb_date date;         /* of the price; zeroed: not told */
    sb_length trim1, trim2; /* boards: front end and far end; sheets: the edges along the length and the end edges;
                               nm SB_BAD: the saw's own trim */
    sb_place place;
} sb_offer;

typedef struct sb_stock {
    const char *id, *title, *material;
    sb_stock_kind kind;
    const sb_grade *grade; /* NULL: no allowance */
    sb_length thickness, width;                 /* actual */
    sb_length nominal_thickness, nominal_width; /* what it is called; 0: as actual */
    bool sawn;               /* rough from the saw: a planed part loses the planing allowance */
    int64_t density;         /* kg/m3; 0: unknown */
    sb_area coverage;        /* finish: what one millilitre covers in one coat (12 m2/l = 12 000 mm2); else 0 */
    sb_duration drying;      /* finish: how long a coat dries before the next, or before the piece can go; 0: not told */
    sb_mass spread;          /* glue: what one square metre of joint takes; else 0 */
    int64_t minimum;         /* reorder when the rack holds less than this, in the unit of sb_stock_kind_unit; 0: never */
    SB_LIST(sb_offer) offers; /* in the order of prices.csv */
    sb_place place;
} sb_stock;

/* An amount of stock (in the unit of sb_stock_kind_unit; volume timber in nl) in words: "2.5 l", "0.75 kg", "50 m", "200". */
const char *sb_stock_amount_text(sb_run *run, const sb_stock *stock, int64_t amount, const sb_style *style);

/* What makes an operation's quantity. The first nine are counted from the cutting plan and need no
 * recipe line; the others come from recipes, and SB_BY_BATCH also when `always` is set. */
typedef enum sb_driver {
    SB_BY_BOARD,     /* each board taken from the pile, trued and put away */
    SB_BY_CHANGE,    /* each time a board is put to another stop: distinct stops on a board, summed */
    SB_BY_STOP,      /* each distinct stop setting in the batch */
    SB_BY_CUT,       /* each crosscut, truing included */
    SB_BY_HARD_CUT,  /* each crosscut past the limits of the saw, besides */
    SB_BY_RIP,       /* metres ripped */
    SB_BY_SHEET,     /* each sheet handled */
    SB_BY_FENCE,     /* each fence setting */
    SB_BY_RETURN,    /* each piece of a sheet that goes back over the saw */
    SB_BY_SHEET_CUT, /* each cut in a sheet */
    SB_BY_JOINT,
    SB_BY_METRE,
    SB_BY_SQUARE_METRE,
    SB_BY_PART,
    SB_BY_PIECE,
    SB_BY_BATCH,
    SB_BY_EACH,      /* the recipe's own number */
    SB_DRIVER_COUNT
} sb_driver;
/* board change stop cut hard-cut rip sheet fence return sheet-cut joint m m2 part piece batch each */
const char *sb_driver_word(sb_driver driver);

typedef struct sb_worker {
    const char *id;
    sb_money hour; /* per hour */
    sb_place place;
} sb_worker;

typedef struct sb_operation {
    const char *id, *title;
    sb_driver driver;
    sb_duration time; /* per unit of the driver */
    bool ranged;      /* told as a range, `time` the likely one in it */
    sb_duration least, most;
    sb_share learning; /* the average over a kind's pieces falls to this share with each doubling of them; 0: it does not */
    const sb_worker *worker;
    bool always; /* batch operations that every job has: office work, the trip to the merchant */
    sb_place place;
} sb_operation;

typedef struct sb_rack_item {
    const char *label;
    const sb_stock *stock;
    sb_length length, width; /* boards and sheets: width 0 = the stock's; for the rest both 0 */
    int64_t count;           /* in the unit of sb_stock_kind_unit */
    sb_money value;          /* what a job pays for one board, sheet or piece; minor = SB_BAD: by the leftover rule */
    bool measured;           /* a board whose knots and splits are told: all that is bad of it stands in `bad` */
    sb_stretches bad;
    sb_place place;
} sb_rack_item;

typedef struct sb_widest { /* how wide a piece the saw cuts in one pass at one setting; one of the angles is 0 or both are */
    sb_angle mitre, bevel;
    sb_length width;
} sb_widest;

typedef struct sb_saw {
    sb_length kerf, trim;                        /* trim: per factory end or edge; 0 or at least the kerf */
    sb_angle mitre_left, mitre_right;            /* how far the table swings */
    sb_angle bevel_left, bevel_right;            /* how far the blade tilts */
    SB_LIST(sb_widest) widest;                   /* none: not told */
    sb_length longest_rip;                       /* 0: no limit */
    sb_length smallest_strip;                    /* 0: no limit */
} sb_saw;
/* Whether a saw goes as far as a cut asks, counted from square; a saw whose swing or tilt was not told goes anywhere. */
typedef enum sb_reach { SB_REACHES, SB_REACHES_LEFT_ONLY, SB_REACHES_RIGHT_ONLY, SB_REACHES_NOT } sb_reach;
sb_reach sb_saw_swings(const sb_saw *saw, sb_angle mitre);
sb_reach sb_saw_tilts(const sb_saw *saw, sb_angle bevel);
sb_angle sb_saw_swing(const sb_saw *saw); /* to the side where it goes farther; 0: not told */
sb_angle sb_saw_tilt(const sb_saw *saw);
/* How wide a piece the saw cuts in one pass at this setting; 0: not told. Of what is told at the same angle or a steeper one, that
 * at the nearest; past the last, as far as its blade reaches there: width / cos(angle) stays (geometry). Swing and tilt each
 * have their own, a square cut is in both; the lesser holds. */
sb_length sb_saw_widest(const sb_saw *saw, sb_angle mitre, sb_angle bevel);
/* How an end of a piece so wide (0: not told) is cut on a saw, the simplest way there is. */
typedef enum sb_way_to_cut {
    SB_WAY_PLAIN,      /* as it is, or laid for the other hand */
    SB_WAY_BOTH_EDGES, /* from one edge, then rolled over its length, from the other */
    SB_WAY_AUXILIARY,  /* clamped to an auxiliary fence square to the saw's own, the saw set to the complement */
    SB_WAY_BY_HAND
} sb_way_to_cut;
sb_way_to_cut sb_saw_way(const sb_saw *saw, sb_angle mitre, sb_angle bevel, sb_length width);

/* Where recipes ask for one stock this shop takes another: `replace larch-70x70 by 4x4-fir`. */
typedef struct sb_replacement {
    const char *asked, *taken;
    sb_place place;
} sb_replacement;

typedef struct sb_tax {
    const char *id, *title;
    sb_share rate;
    sb_place place;
} sb_tax;

/* What a delivery costs by where it goes: `zone coast 95.00`. */
typedef struct sb_zone {
    const char *id;
    sb_money price;
    sb_place place;
} sb_zone;

/* A part of the total that is due before the end: `stage 30 % of total : when the frames are glued`. */
typedef struct sb_stage_share {
    sb_share share;
    const char *text;
    sb_place place;
} sb_stage_share;

typedef enum sb_price_method { SB_MARGIN_ON_PRICE, SB_MARKUP_ON_COST } sb_price_method;
typedef enum sb_material_policy { SB_CHARGE_BOUGHT, SB_CHARGE_BOUGHT_LESS_LEFTOVERS, SB_CHARGE_USED } sb_material_policy;

typedef struct sb_settings {
    const char *name, *contact;
    SB_LIST(const char *) address;
    sb_currency currency;
    const char *language; /* of the wording in templates/: "en" */
    sb_style style;       /* units, step, decimal sign, of papers */
    sb_style own_style;   /* the same as shop.txt has it: parts are on its step, and orders are written in it */
    sb_quote_units quote_units; /* of pieces on quotes; a job's own go before it */
    sb_saw crosscut, rip, panel; /* mitre saw; table saw; whatever cuts sheets */
    int panel_stages;            /* 2, 3; 0: any */
    bool panel_trims;            /* two stages with trimming: a part may be narrower than its strip */
    bool panel_rip_first;
    sb_length leftover_length;               /* boards at least this long are kept */
    sb_length leftover_sheet_length, leftover_sheet_width;
    sb_share leftover_value;                 /* of the price by length or area */
    struct sb_label_grid {
        int64_t columns, rows;              /* on a page */
        sb_length side, top;                /* margins of the page, each on both sides */
        sb_length across, down;             /* between labels */
    } labels;
    sb_length vehicle;                       /* longest board that can be fetched; 0: no limit */
    sb_length planing;                       /* taken off a sawn thickness or width in all */
    sb_length short_part;                    /* parts shorter than this get a warning at the saw */
    SB_LIST(sb_worker) workers;              /* the first is the default */
    sb_money overhead_hour;                  /* one of these two */
    sb_share overhead_labour;                /* share of labour cost */
    sb_share contingency;                    /* share of cost */
    sb_price_method method;
    sb_share margin;                         /* share of price, or of cost with SB_MARKUP_ON_COST */
    sb_material_policy charge;
    SB_LIST(sb_tax) taxes;                   /* the first is the default; none: no tax */
    bool prices_gross;                       /* quotes show prices with tax */
    bool tax_per_line;                       /* else once on the total per rate */
    bool discount_hidden;                    /* quotes show the prices after discount and say no more */
    sb_money price_point;                    /* unit prices are rounded up to a multiple; 0: minor unit */
    sb_money point_less;                     /* to so much below a multiple: 10.00 less 0.05 is 9.95, 19.95 ... */
    sb_money minimum;                        /* what the pieces of a job come to at least, as the quote shows prices; 0: none */
    SB_LIST(sb_zone) zones;
    sb_money delivery_trip, delivery_km, delivery_mile; /* 0: not told */
    SB_LIST(sb_stage_share) stages;
    sb_share confidence;                     /* that the price for it shall pay the cost, as a share of cases */
    int validity_days;
    sb_counts breaks;                        /* `breaks 1, 5, 10`: sizes of batches that estimates price beside the job's own */
    sb_share deposit;                        /* share of the total with tax */
    int price_age_days;                      /* older prices get advice; 0: never */
    sb_duration week;                        /* working hours in a week, for the lead time; 0: not told */
    int lead_days;                           /* before work can start */
    SB_LIST(sb_replacement) replacements;
    SB_LIST(struct sb_setting_line { const char *name; sb_place place; }) lines; /* where each setting stands */
    sb_place place;
} sb_settings;

typedef struct sb_shop {
    const char *folder;
    sb_settings settings;
    SB_LIST(sb_grade) grades;
    SB_LIST(sb_stock *) stock;
    SB_LIST(sb_operation) operations;
    SB_LIST(sb_rack_item) rack;
    bool sound; /* read without a mistake */
} sb_shop;

/* Reads the folder `rates` (a path that holds shop.txt). All errors of all files are told. NULL only
 * when nothing could be read; check sb_ok. Also refuses settings that would make a plan earn money: a leftover
 * worth more than the same length costs new, a rack value above that. */
sb_shop *sb_shop_read(sb_run *run, const char *rates);

/* The folder that holds `rates/` and `templates/`, walking up from `path` (a file or folder that need not exist);
 * NULL without a notice when there is none. */
const char *sb_shop_find(sb_run *run, const char *path);

/* The stock a recipe or job asks for by this id: the one the shop takes instead, if it says so. NULL: unknown. */
const sb_stock *sb_shop_stock(const sb_shop *shop, const char *id);
const sb_operation *sb_shop_operation(const sb_shop *shop, const char *id);
const sb_operation *sb_shop_driven(const sb_shop *shop, sb_driver driver); /* first of a plan driver, or NULL */
const sb_tax *sb_shop_tax(const sb_shop *shop, const char *id); /* NULL id: the default, which may be NULL */
/* An error with the nearest known stock (operation), where `at` stands. */
void sb_shop_unknown_stock(sb_run *run, const sb_shop *shop, sb_place at, const char *id);
void sb_shop_unknown_operation(sb_run *run, const sb_shop *shop, sb_place at, const char *id);

/* Where a setting stands, to say where a figure comes from: "margin", "panel kerf"; nowhere when it is not told. */
sb_place sb_shop_setting(const sb_shop *shop, const char *name);

/* Three labels across a page and eight down, where a shop says nothing else. */
struct sb_label_grid sb_label_grid_usual(void);

/* What a metre (boards) or square metre (sheets) of usable leftover is worth: the settings' share of the lowest price at
 * which the same could be had new, rounded down; zero for other kinds. */
sb_cost sb_shop_leftover_rate(const sb_shop *shop, const sb_stock *stock);
/* What a leftover of this length (boards) or length x width (sheets, whichever way round) is worth by that rate,
 * rounded down; zero below the useful size. */
sb_cost sb_shop_leftover_value(const sb_shop *shop, const sb_stock *stock, sb_length length, sb_length width);
/* Labour cost of a time at a worker's rate, in thousandths of the minor unit. */
sb_cost sb_labour_cost(sb_duration time, const sb_worker *worker);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
