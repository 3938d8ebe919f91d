/* Reads grades.csv: how much of a grade is lost to knots, splits and wane. */
#include "shop/read.h"

#include <string.h>

enum {
    GRADE,
    TITLE,
    DEFECT,
    BASIS,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {
    {"grade", true}, {"title", false}, {"defect", true}, {"basis", true}};

static const char *const basis_words[] = {"added-to-net", "lost-of-bought"};

static const sb_grade *find_grade(const sb_shop *shop, const char *id) {
    for (size_t i = 0; i < shop->grades.count; i++)
        if (strcmp(shop->grades.items[i].id, id) == 0)
            return &shop->grades.items[i];
    return NULL;
}

static void read_basis(shop_row row, sb_grade *grade) {
    const char *word = shop_text(row, BASIS);
    if (grade->defect.ppm != 0 && !shop_need(row, BASIS))
        return;
    if (strcmp(word, basis_words[SB_LOST_OF_BOUGHT]) == 0)
        grade->basis = SB_LOST_OF_BOUGHT;
    else if (*word && strcmp(word, basis_words[SB_ADDED_TO_NET]) != 0)
        sb_error_unknown(row.run, shop_at(row, BASIS), "basis", word, basis_words, 2);
}

static void read_defect(shop_row row, sb_grade *grade) {
    if (shop_given(row, DEFECT) && !sb_read_share(row.run, shop_text(row, DEFECT), shop_at(row, DEFECT),
                                                  row.csv->decimal_comma, &grade->defect))
        return;
    read_basis(row, grade);
    if (grade->defect.ppm < 0)
        sb_error(row.run, shop_at(row, DEFECT), "a defect allowance is not below zero");
    else if (grade->basis == SB_LOST_OF_BOUGHT && grade->defect.ppm >= 1000000)
        sb_error(row.run, shop_at(row, DEFECT),
                 "losing 100 %% or more of what is bought leaves no wood: expected less");
    else if (grade->defect.ppm > 10000000)
        sb_error(row.run, shop_at(row, DEFECT), "expected at most 1000 %% added to net");
}

static void read_grade(shop_reader *reader, shop_row row) {
    sb_grade grade = {.id = "", .title = shop_text(row, TITLE), .place = row.csv->rows[row.index]};
    bool named = shop_id(row, GRADE, &grade.id);
    const sb_grade *first = find_grade(reader->shop, grade.id);
    if (!*grade.title)
        grade.title = grade.id;
    read_defect(row, &grade);
    if (named && first)
        shop_twice(row.run, shop_at(row, GRADE), "the grade", grade.id, first->place);
    else if (named)
        SB_PUSH(row.run->pool, reader->shop->grades, grade);
}

void shop_read_grades(shop_reader *reader, const char *path) {
    reader->grades_known = shop_each_row(reader, path, columns, COLUMN_COUNT, read_grade);
}
