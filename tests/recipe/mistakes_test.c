/* Mistakes: each is told where it stands, says what was expected, and is told alone. */
#include "bench.h"

typedef struct mistake {
    const char *text, *says;
    size_t line, column;
} mistake;

typedef const void *reader(sb_run *run, const char *text);

static const void *read_recipe(sb_run *run, const char *text) {
    return recipe_of(run, text);
}

static const void *read_job(sb_run *run, const char *text) {
    return job_of(run, text);
}

static void try_all(const char *head, const mistake *mistakes, size_t count, reader *read) {
    for (size_t i = 0; i < count; i++) {
        sb_run run = sb_run_new();
        const char *text = sb_pool_print(run.pool, "%s%s", head, mistakes[i].text);
        assert_non_null(read(&run, text));
        assert_only_notice(&run, text, mistakes[i].line, mistakes[i].column, mistakes[i].says);
        assert_int_equal(sb_notices_level(&run, 0), SB_ERROR);
        sb_run_free(&run);
    }
}
#define TRY(head, mistakes, read) try_all(head, mistakes, sizeof mistakes / sizeof *mistakes, read)

static void in_the_head_of_a_recipe(void **state) {
    static const mistake mistakes[] = {
        {"", "expected a line `recipe NAME`", 1, 1},
        {"title Stool\n", "expected a line `recipe NAME`", 1, 1},
        {"recipe\n", "expected the recipe's name, but the line ends here", 1, 7},
        {"recipe a b\n", "expected the end of the line, found \"b\"", 1, 10},
        {"recipe a\nrecipe b\n", "a second `recipe`: the first stands in line 1", 2, 1},
        {"recipe a\ntitle\n", "expected text behind `title`", 2, 1},
        {"recipe a\nsize 1 m, \n", "expected a width, but the line ends here", 2, 10},
        {"recipe a\nsize 1 m, 1 m, 1 m, 1 m\n", "expected the end of the line, found \",\"", 2, 19},
        {"recipe a\ntitel Stool\n", "unknown keyword \"titel\"; did you mean \"title\"?", 2, 1},
        {"recipe a\nxyzzyx 3\n", "unknown keyword \"xyzzyx\"; known: recipe, title", 2, 1},
        {"recipe a\nlength 3\n", "`length` belongs to a part: expected a line `part NAME` above it", 2, 1},
        {"recipe a\nset x 3\n", "`set` belongs to a component: expected a line `component NAME` above it", 2,
         1},
        {"recipe a\ncustomer b\n", "`customer` belongs in a job, and this is a recipe", 2, 1},
        {"recipe a\ndrop b\n", "`drop` belongs in a job, and this is a recipe", 2, 1},
    };
    TRY("", mistakes, read_recipe);
    (void)state;
}

static void in_names_and_values(void **state) {
    static const mistake mistakes[] = {
        {"input\n", "expected a name, but the line ends here", 3, 6},
        {"input 3 mm\n", "expected a name, found \"3 mm\"", 3, 7},
        {"input wide\n", "expected the default, but the line ends here", 3, 11},
        {"input wide = 3 mm\n", "no = is needed: expected the default", 3, 12},
        {"input wide : text\n", "expected the default before the colon", 3, 12},
        {"input wide 3 mm from\n", "expected the least value", 3, 21},
        {"input wide 3 mm to 4 mm from 2 mm\n", "expected the end of the line, found \"from\"", 3, 25},
        {"input wide 3 mm when long > 2 m\n", "`input` takes no condition of its own", 3, 17},
        {"input wide 3 mmm\n", "\"mmm\" is not a unit; did you mean \"mm\"?", 3, 12},
        {"input min 3 mm\n", "\"min\" has a meaning of its own here", 3, 7},
        {"input of 3 mm\n", "\"of\" has a meaning of its own here", 3, 7},
        {"input long 3 mm\n", "\"long\" is the name of an input in line 2 already", 3, 7},
        {"let long 3 mm\n", "\"long\" is the name of an input in line 2 already", 3, 5},
        {"choice long a | b\n", "\"long\" is the name of an input in line 2 already", 3, 8},
        {"choice make solid | long\n", "\"long\" is the name of an input in line 2 already", 3, 21},
        {"choice make solid | sheet\nlet solid 3\n",
         "\"solid\" is the name of a word of a choice in line 3 already", 4, 5},
        {"choice make solid\n", "expected | and a second word to choose", 3, 18},
        {"choice make solid sheet\n", "expected | and a second word to choose, found \"sheet\"", 3, 19},
        {"choice make solid |\n", "expected a word to choose", 3, 20},
        {"choice make solid | solid\n", "\"solid\" stands twice among the words of make", 3, 21},
        {"choice make true | sheet\n", "\"true\" has a meaning of its own here", 3, 13},
        {"let x\n", "expected its formula", 3, 6},
        {"let x 3 +\n", "expected a measure, a number, a name or (", 3, 10},
        {"let x 3 4\n", "expected the end of the line, found \"4\"", 3, 9},
        {"let x flor(3)\n", "unknown function \"flor\"; did you mean \"floor\"?", 3, 7},
        {"let x 3 ~\n", "means nothing here", 3, 9},
        {"check long > 3 m\n", "expected a colon and what to say", 3, 17},
        {"check : no\n", "expected a condition before the colon", 3, 7},
        {"check long == 3 m : no\n", "one = compares", 3, 13},
        {"advise long > 3 m when : no\n", "expected a condition before the colon", 3, 24},
    };
    TRY("recipe a\ninput long 1 m\n", mistakes, read_recipe);
    (void)state;
}

static void in_roles(void **state) {
    static const mistake mistakes[] = {
        {"stock\n", "expected a name", 2, 6},
        {"stock leg\n", "expected the id of a stock, but the line ends here", 2, 10},
        {"stock leg oak larch\n", "expected the end of the line, found \"larch\"", 2, 15},
        {"stock per oak\n", "\"per\" has a meaning of its own here", 2, 7},
        {"stock leg oak\nstock leg larch\n", "leg has its stock from line 2 already, which always holds", 3,
         7},
        {"stock leg oak\nstock leg larch when 1 > 2\n", "leg has its stock from line 2 already", 3, 7},
        {"stock leg oak\npart p\nof lge\nlength 1 m\n", "unknown role \"lge\"; did you mean \"leg\"?", 4, 4},
        {"part p\nof leg\nlength 1 m\n", "unknown role \"leg\"; none is known here", 3, 4},
    };
    TRY("recipe a\n", mistakes, read_recipe);
    (void)state;
}

static void in_parts(void **state) {
    static const mistake mistakes[] = {
        {"part\nof leg\nlength 1 m\n", "expected a name", 3, 5},
        {"part p\nlength 1 m\n", "p has no `of`: expected the role it is cut from", 3, 1},
        {"part p\nof leg\n", "p has no `length`: expected a length, over the long points", 3, 1},
        {"part p\nof leg\nlenght 1 m\n", "unknown keyword \"lenght\"; did you mean \"length\"?", 5, 1},
        {"part p\nof leg\nlength\n", "expected a length, but the line ends here", 5, 7},
        {"part p\nof leg\nlength 1 m\nlength 2 m\n", "a second `length`: the first stands in line 5", 6, 1},
        {"part p\nof leg\nlength 1 m when 1 < 2\n", "`length` takes no condition of its own", 5, 12},
        {"part p\nof leg rail\nlength 1 m\n", "expected the end of the line, found \"rail\"", 4, 8},
        {"part p\nof leg\nlength 1 m\npart p\nof leg\nlength 1 m\n",
         "\"p\" is the name of a part in line 3 already", 6, 6},
        {"part p\nof leg\nlength 1 m\ncomponent p\n", "\"p\" is the name of a part in line 3 already", 6, 11},
        {"part p when 1 < 2\nof leg\nlength 1 m\nwhen 2 < 3\n",
         "a second `when`: the first stands behind `part` in line 3", 6, 1},
        {"part p\nof leg\nlength 1 m\nwhen 2 < 3\nwhen 1 < 2\n",
         "a second `when`: the first stands in line 6", 7, 1},
        {"part p\nof leg\nlength 1 m\nclear wood\n", "expected the end of the line, found \"wood\"", 6, 7},
        {"part p\nof leg\nlength 1 m\ngrain sideways\n",
         "unknown word \"sideways\"; known: along, across, free", 6, 7},
        {"part p\nof leg\nlength 1 m\nnote\n", "expected text behind `note`", 6, 1},
        {"part p\nof leg\nlength 1 m\nplaned 3 mm by\n", "expected the planed width", 6, 15},
        {"part p\nof leg\nlength 1 m\nset x 3\n", "`set` belongs to a component", 6, 1},
        {"part p\nof leg\nlength 1 m\nprice 3\n", "unknown keyword \"price\"", 6, 1},
        {"part p\nof leg\nlength 1 m\nwork x\nwidth 3 mm\n",
         "`width` belongs to a part: expected a line `part NAME` above it", 7, 1},
    };
    TRY("recipe a\nstock leg oak\n", mistakes, read_recipe);
    (void)state;
}

static void in_how_parts_are_made_up(void **state) {
    static const mistake mistakes[] = {
        {"glued 3\n", "p has no `width`: expected the width that its staves are glued up to", 6, 1},
        {"width 3 mm\nglued\n", "expected a number of staves", 7, 6},
        {"width 3 mm\nglued 0 loss\n", "expected what jointing takes off each edge", 7, 13},
        {"width 3 mm\nglued 0 with\n", "expected a glue: a role or the id of a stock", 7, 13},
        {"width 3 mm\nglued 0 glue\n", "\"glue\" is not a unit; known: ", 7, 7},
        {"width 3 mm\nglued 0 with pva\nlaminated 2 with epoxy\n",
         "a part takes one glue, and this one has pva already", 8, 18},
        {"width 3 mm\nplaned 3 mm by 4 mm\n", "the width stands behind `planed ... by` in line 7 already", 6,
         1},
        {"allow 3 mm by 2 mm\n", "p has no `width`, so it keeps the board's", 6, 15},
        {"width 3 mm\nglued 0\nedging tape all\n", "`edging` does not go with `glued` in line 7", 8, 1},
        {"grain free\nplaned 3 mm\n", "`grain` does not go with `planed` in line 7", 6, 1},
        {"edging tape\n", "expected front, back, left, right or all", 6, 12},
        {"edging tape front frnot\n", "unknown word \"frnot\"; did you mean \"front\"?", 6, 19},
        {"edging tape all front\n", "this edge has its edging already", 6, 17},
        {"outside\n", "expected face, edge or end (or all, or none)", 6, 8},
        {"outside face face face\n", "a part has two faces", 6, 19},
        {"outside face edges\n", "unknown word \"edges\"; did you mean \"edge\"?", 6, 14},
        {"outside none face\n", "expected the end of the line, found \"face\"", 6, 14},
    };
    TRY("recipe a\nstock leg oak\npart p\nof leg\nlength 1 m\n", mistakes, read_recipe);
    (void)state;
}

/* The saw's scale counts from square, a protractor on the piece from its edge: neither may be guessed. */
static void in_angles(void **state) {
    static const mistake mistakes[] = {
        {"end1 mitre 30 deg\n",
         "30 deg piece is between the cut end and the piece's edge, and the saw shows 60", 6, 12},
        {"end1 mitre rake\n", "expected `scale` or `piece` behind the angle", 6, 12},
        {"end1 mitre 30 deg saw\n", "expected `scale` or `piece` behind the angle", 6, 19},
        {"ends mitre 30 deg parallel\n", "expected `scale` or `piece` behind the angle", 6, 19},
        {"end1 mitre 30 deg scale bevel 5 deg\n", "expected `scale` or `piece` behind the angle", 6, 31},
        {"end1 mitre scale\n", "expected `scale` or `piece` behind the angle", 6, 12},
        {"end1\n", "expected square, mitre or bevel, but the line ends here", 6, 5},
        {"end1 30 deg scale\n", "expected square, mitre or bevel, found \"30 deg\"", 6, 6},
        {"end1 mitre\n", "expected an angle", 6, 11},
        {"end1 square mitre 3 deg scale\n", "expected the end of the line, found \"mitre\"", 6, 13},
        {"end1 mitre 3 deg scale parallel\n", "expected the end of the line, found \"parallel\"", 6, 24},
        {"end1 mitre 3 deg scale mitre 4 deg scale\n", "an end has one mitre and one bevel at most", 6, 24},
        {"end1 square\nends square\n", "an end stands above already: expected `ends` alone", 7, 1},
        {"ends square\nend2 square\n", "`ends` in line 6 says both ends already", 7, 1},
        {"end3 square\n", "unknown keyword \"end3\"; did you mean \"end1\"?", 6, 1},
    };
    TRY("recipe a\nstock leg oak\npart p\nof leg\nlength 1 m\n", mistakes, read_recipe);
    (void)state;
}

static void in_what_goes_into_a_piece(void **state) {
    static const mistake mistakes[] = {
        {"joint corner\n", "expected how many of them a piece has", 6, 13},
        {"joint corner 4\njoint corner 3\n", "\"corner\" is the name of a joint in line 6 already", 7, 7},
        {"fixing screw\n", "expected a number", 6, 13},
        {"fixing 4 screw\n", "expected a role or the id of a stock, found \"4\"", 6, 8},
        {"fixing screw 4 per\n", "expected piece, part, joint or batch", 6, 19},
        {"fixing screw 4 per leg\n", "unknown word \"leg\"; known: piece, part, joint, batch", 6, 20},
        {"fixing screw 4 per part\n", "expected the part's name", 6, 24},
        {"fixing screw 4 per part lge\n", "unknown part \"lge\"; did you mean \"leg\"?", 6, 25},
        {"fixing screw 4 per joint corner\n", "unknown joint \"corner\"; none is known here", 6, 26},
        {"component box\nwork x per part box\n", "unknown part \"box\"; known: leg", 7, 17},
        {"finish oil 2 on all\n", "expected `coats on` and then all, outside or ends, found \"on\"", 6, 14},
        {"finish oil 2 coats all\n", "expected `coats on`", 6, 20},
        {"finish oil 2 coats on\n", "expected all, outside or ends", 6, 22},
        {"finish oil 2 coats on al\n", "unknown word \"al\"; did you mean \"all\"?", 6, 23},
        {"finish oil 2 coats on all of leg, lid\n", "unknown part \"lid\"; known: leg", 6, 35},
        {"finish oil 2 coats on all of leg,\n", "expected a part's name", 6, 34},
        {"glue pva\n", "expected the area that is glued", 6, 9},
        {"work\n", "expected an operation", 6, 5},
        {"work saw 3 from 2\n", "expected `to` and the greatest amount, but the line ends here", 6, 18},
        {"work saw 3 from\n", "expected the least amount", 6, 16},
        {"work saw 3 from 2 to\n", "expected the greatest amount", 6, 21},
        {"work sand on the top\n", "unknown word \"the\"", 6, 14},
        {"work sand 3 m2 on all\n", "expected the end of the line, found \"on\"", 6, 16},
        {"work x\nnote : text\n", "expected saw or quote before the colon", 7, 6},
        {"work x\nnote saws : text\n", "unknown word \"saws\"; did you mean \"saw\"?", 7, 6},
        {"work x\nnote saw cut it\n", "expected the end of the line, found \"cut\"", 7, 10},
        {"work x\nnote saw\n", "expected a colon and the note", 7, 9},
        {"note quote # to come\n", "expected a colon and the note", 6, 11},
        {"note saw when 1 > 0\n", "expected a colon and the note", 6, 20},
    };
    TRY("recipe a\nstock leg oak\npart leg\nof leg\nlength 1 m\n", mistakes, read_recipe);
    (void)state;
}

static void in_repeats_and_components(void **state) {
    static const mistake mistakes[] = {
        {"repeat i from 1 to 3\n", "this repeat never ends: expected a line `end`", 2, 1},
        {"repeat i from 1 to 3\nrepeat j from 1 to 3\nend\n", "this repeat never ends", 2, 1},
        {"end\n", "`end` without a `repeat` above it", 2, 1},
        {"repeat i\nend\n", "expected `from`, but the line ends here", 2, 9},
        {"repeat i from 1\nend\n", "expected `to`, but the line ends here", 2, 16},
        {"repeat from from 1 to 3\nend\n", "\"from\" has a meaning of its own here", 2, 8},
        {"repeat i from 1 to 3\nlet x 3\nend\n",
         "`let` cannot be repeated: expected `end` first, for the repeat in line 2", 3, 1},
        {"repeat i from 1 to 3\nstock x oak\nend\n", "`stock` cannot be repeated", 3, 1},
        {"repeat i from 1 to 3\nrepeat i from 1 to 3\nend\nend\n",
         "\"i\" is the name of a counter in line 2 already", 3, 8},
        {"repeat i from 1 to 3\nend\nlet i 3\n", "\"i\" is the name of a counter in line 2 already", 4, 5},
        {"component\n", "expected a name", 2, 10},
        {"component c\nrecipe\n", "expected a recipe's name", 3, 7},
        {"component c\nset long = 3 mm\n", "no = is needed: expected a value", 3, 10},
        {"component c\nset long 3 mm\nset long 4 mm\n", "long is told twice: line 3 has it already", 4, 5},
        {"component c\nstock a oak\nstock a oak\n", "a is told twice: line 3 has it already", 4, 7},
        {"component c\nset b.long 3 mm\n", "only an option says which piece it is about", 3, 5},
        {"component c\nset long 3 mm when 1 < 2\n", "`set` takes no condition of its own", 3, 15},
        {"component c\nlength 3 mm\n", "`length` belongs to a part", 3, 1},
    };
    TRY("recipe a\n", mistakes, read_recipe);
    (void)state;
}

/* ---- jobs ------------------------------------------------------------------------------------------------- */

#define JOB "job a\ndate 2026-03-02\ncustomer Tern Lane Nursery\npiece bed\n"

static void in_what_a_job_needs(void **state) {
    static const mistake mistakes[] = {
        {"date 2026-03-02\ncustomer c\npiece p\n", "expected a line `job NAME`", 1, 1},
        {"job a\ncustomer c\npiece p\n", "expected a line `date YYYY-MM-DD`", 1, 5},
        {"job a\ndate 2026-03-02\npiece p\n", "expected a line `customer NAME`", 1, 5},
        {"job a\ndate 2026-03-02\ncustomer c\n", "expected a line `piece NAME`", 1, 5},
        {"job a\ndte 2026-03-02\ncustomer c\npiece p\n", "unknown keyword \"dte\"; did you mean \"date\"?", 2,
         1},
        {"job a\ndate\ncustomer c\npiece p\n", "expected a date behind `date`", 2, 1},
        {"job a\ndate 2026-02-29\ncustomer c\npiece p\n", "\"2026-02-29\" is not in the calendar", 2, 6},
        {"job a\ndate 2.3.2026\ncustomer c\npiece p\n", "expected a date such as", 2, 6},
        {"job a\ndate 2026-03-02\ncustomer\npiece p\n", "expected text behind `customer`", 3, 1},
    };
    TRY("", mistakes, read_job);
    (void)state;
}

static void in_pieces_and_options(void **state) {
    static const mistake mistakes[] = {
        {"count 0\n", "expected a number from 1 to a million", 5, 7},
        {"count 1000001\n", "expected a number from 1 to a million", 5, 7},
        {"count 2.5\n", "expected a count: \"2.5\" is not a whole number", 5, 7},
        {"count -3\n", "expected a number, found \"-\"", 5, 7},
        {"count two\n", "expected a number, found \"two\"", 5, 7},
        {"count 2\ncount 3\n", "a second `count`: the first stands in line 5", 6, 1},
        {"set long\n", "expected a value", 5, 9},
        {"set bed.long 3 mm\n", "only an option says which piece it is about", 5, 5},
        {"set long 3 mm when high > 2 m\n", "`set` takes no condition of its own", 5, 15},
        {"set long 3 mm\nset long 4 mm\n", "long is told twice: line 5 has it already", 6, 5},
        {"stock leg\n", "expected the id of a stock", 5, 10},
        {"recipe trough planter\n", "expected the end of the line, found \"planter\"", 5, 15},
        {"piece bed\n", "\"bed\" is the name of a piece in line 4 already", 5, 7},
        {"length 3 mm\n", "`length` belongs in a recipe, and this is a job", 5, 1},
        {"drop bed\n", "`drop` belongs to an option: expected a line `option NAME` above it", 5, 1},
        {"option x\ndrop bde\n", "unknown piece \"bde\"; did you mean \"bed\"?", 6, 6},
        {"option x\nset bde.long 3 mm\n", "unknown piece \"bde\"; did you mean \"bed\"?", 6, 5},
        {"option x\nset bed. 3 mm\n", "expected the name of an input or choice", 6, 10},
        {"option x\nset bed.long 3 mm\nset bed.long 4 mm\n", "bed.long is told twice: line 6 has it already",
         7, 5},
        {"option x\ncount bed 0\n", "expected a number from 1 to a million", 6, 11},
        {"option x\ncount bed 3\ndrop bed\n", "the number of bed is told twice: line 6 has it already", 7, 6},
        {"option x\noption x\n", "\"x\" is the name of an option in line 5 already", 6, 8},
        {"option x\nrecipe y\n", "`recipe` belongs to a piece: expected a line `piece NAME` above it", 6, 1},
    };
    TRY(JOB, mistakes, read_job);
    (void)state;
}

static void in_money(void **state) {
    static const mistake mistakes[] = {
        {"delivery\n", "expected an amount of money", 5, 9},
        {"delivery -3\n", "a number of trips or km, or `zone`, found \"-\"", 5, 10},
        {"delivery zone\n", "expected the name of a zone", 5, 14},
        {"delivery 3.1234 km\n", "at most three decimals", 5, 10},
        {"delivery 3 km tax\n", "expected the id of a tax", 5, 18},
        {"minimum -1\n", "expected an amount of money", 5, 9},
        {"stage 30 %\n", "expected a colon and when this is due", 5, 1},
        {"stage 0 % : now\n", "expected above 0 %", 5, 1},
        {"stage 130 % of total : now\n", "a stage is a share of total: expected at most 100 %", 5, 1},
        {"stage 30 % of cost : now\n", "a stage is a share of total", 5, 15},
        {"confidence 100 % of cases\n", "expected above 0 and at most 99.9 %", 5, 1},
        {"confidence 90 % of price\n", "a confidence is a share of cases", 5, 20},
        {"delivery 3 mm\n", "expected a number: \"3 mm\" is a length", 5, 10},
        {"delivery 3 EUR\n", "expected the end of the line, found \"EUR\"", 5, 12},
        {"delivery 3\ndelivery 4\n", "a second `delivery`: the first stands in line 5", 6, 1},
        {"extra 12\n", "expected a colon and what this is for", 5, 9},
        {"discount 120 %\n", "a discount is a share of price: expected at most 100 %", 5, 1},
        {"discount 3 mm\n", "expected a percentage", 5, 10},
        {"deposit 101 %\n", "a deposit is a share of total: expected at most 100 %", 5, 1},
        {"margin 25 % on cost\n", "a margin is a share of price; a markup is one of cost", 5, 16},
        {"markup 25 % of price\n", "a markup is a share of cost; a margin is one of price", 5, 16},
        {"margin 100 %\n", "a margin of 100 % of price leaves nothing for the cost", 5, 1},
        {"margin 20 %\nmarkup 25 %\n",
         "a job has a margin (a share of price) or a markup (a share of cost), not both", 6, 1},
        {"validity 0 days\n", "expected a number of days from 1 to 3650", 5, 10},
        {"validity soon\n", "expected a number of days, found \"soon\"", 5, 10},
        {"rack maybe\n", "unknown word \"maybe\"; known: no, yes", 5, 6},
        {"tax 7 %\n", "expected the id of a tax", 5, 5},
        {"rates ../other\n", "expected the name of a folder in rates/", 5, 7},
        {"xyzzyx 3\n", "unknown keyword \"xyzzyx\"", 5, 1},
    };
    TRY(JOB, mistakes, read_job);
    (void)state;
}

/* ---- many at once --------------------------------------------------------------------------------------------- */

static void every_mistake_at_once(void **state) {
    sb_run *run = *state;
    recipe_of(
        run,
        "recipe a\ninput long\ninput 3\nstock leg\npart p\n cuont 3\n of lge\n length\n end1 mitre 3 deg\n"
        "fixing screw\nrepeat i from 1 to 3\n");
    static const size_t lines[] = {2, 3, 4, 6, 8, 9, 10, 11, 7};
    assert_int_equal(sb_notices_count(run, SB_NOTE), sizeof lines / sizeof *lines);
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
        assert_int_equal(line_of(sb_notices_place(run, i)), lines[i]);
}

/* A slip in a heading does not make orphans of the lines below it. */
static void a_slip_in_a_heading(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe =
        recipe_of(run, "recipe a\nstock leg oak\npart q\n of leg\n length 1 m\nprat p\n of leg\n"
                       " length 1 m\nfixing screw 3 per part p\n");
    assert_only_notice(run, "", 6, 1, "unknown keyword \"prat\"; did you mean \"part\"?");
    assert_int_equal(recipe->parts.count, 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(in_the_head_of_a_recipe),
        cmocka_unit_test(in_names_and_values),
        cmocka_unit_test(in_roles),
        cmocka_unit_test(in_parts),
        cmocka_unit_test(in_how_parts_are_made_up),
        cmocka_unit_test(in_angles),
        cmocka_unit_test(in_what_goes_into_a_piece),
        cmocka_unit_test(in_repeats_and_components),
        cmocka_unit_test(in_what_a_job_needs),
        cmocka_unit_test(in_pieces_and_options),
        cmocka_unit_test(in_money),
        AT_THE_BENCH(every_mistake_at_once),
        AT_THE_BENCH(a_slip_in_a_heading),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
