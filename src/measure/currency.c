/* Currencies by ISO 4217: code and how many decimals the minor unit has. Money only; no precious metals,
 * funds or units of account. */
#include "sawbill/measure.h"

#include <string.h>

static const char none[][4] = {"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW",
                               "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"};
static const char three[][4] = {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
static const char two[][4] = {
    "AED", "AFN", "ALL", "AMD", "ANG", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT", "BGN", "BMD",
    "BND", "BOB", "BRL", "BSD", "BTN", "BWP", "BYN", "BZD", "CAD", "CDF", "CHF", "CNY", "COP", "CRC", "CUP",
    "CVE", "CZK", "DKK", "DOP", "DZD", "EGP", "ERN", "ETB", "EUR", "FJD", "FKP", "GBP", "GEL", "GHS", "GIP",
    "GMD", "GTQ", "GYD", "HKD", "HNL", "HTG", "HUF", "IDR", "ILS", "INR", "IRR", "JMD", "KES", "KGS", "KHR",
    "KPW", "KYD", "KZT", "LAK", "LBP", "LKR", "LRD", "LSL", "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP",
    "MRU", "MUR", "MVR", "MWK", "MXN", "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD", "PAB", "PEN",
    "PGK", "PHP", "PKR", "PLN", "QAR", "RON", "RSD", "RUB", "SAR", "SBD", "SCR", "SDG", "SEK", "SGD", "SHP",
    "SLE", "SOS", "SRD", "SSP", "STN", "SVC", "SYP", "SZL", "THB", "TJS", "TMT", "TOP", "TRY", "TTD", "TWD",
    "TZS", "UAH", "USD", "UYU", "UZS", "VED", "VES", "WST", "XCD", "XCG", "YER", "ZAR", "ZMW", "ZWG",
};

static bool find_in(const char (*codes)[4], size_t count, const char *code, int digits, sb_currency *out) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(codes[i], code) == 0) {
            *out = (sb_currency){codes[i], digits};
            return true;
        }
    return false;
}

bool sb_currency_find(const char *code, sb_currency *out) {
    return find_in(two, sizeof two / sizeof *two, code, 2, out) ||
           find_in(none, sizeof none / sizeof *none, code, 0, out) ||
           find_in(three, sizeof three / sizeof *three, code, 3, out);
}
