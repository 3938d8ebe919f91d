/* Days of the Gregorian calendar, counted within eras of 400 years that begin on 1 March. */
#include "sawbill/measure.h"

enum {
    DAYS_PER_ERA = 146097,
    DAYS_TO_1970 = 719468
};

int64_t sb_date_days(sb_date date) {
    int64_t year = date.month <= 2 ? date.year - 1 : date.year;
    int64_t month = (date.month + 9) % 12; /* March = 0, so that the leap day comes last */
    int64_t era = (year >= 0 ? year : year - 399) / 400, year_of_era = year - era * 400;
    int64_t day_of_year = (153 * month + 2) / 5 + date.day - 1;
    int64_t day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    return era * DAYS_PER_ERA + day_of_era - DAYS_TO_1970;
}

static sb_date date_of(int64_t days) {
    days += DAYS_TO_1970;
    int64_t era = (days >= 0 ? days : days - (DAYS_PER_ERA - 1)) / DAYS_PER_ERA;
    int64_t day_of_era = days - era * DAYS_PER_ERA;
    int64_t year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
    int64_t day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    int64_t month = (5 * day_of_year + 2) / 153;
    int64_t year = year_of_era + era * 400 + (month >= 10);
    return (sb_date){(int)year, (int)(month + 2) % 12 + 1, (int)(day_of_year - (153 * month + 2) / 5 + 1)};
}

sb_date sb_date_plus(sb_date date, int days) {
    return date_of(sb_date_days(date) + days);
}
