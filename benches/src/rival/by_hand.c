/* The same formulas with the checks of the C library, written by hand. */
#include <stddef.h>
#include <stdint.h>

int32_t by_hand_per_seed(double rate, double size, double *out);
int32_t by_hand_needed(double rate, double mass, double *out);

enum { IS_NULL = 1, NOT_FINITE = 100, NOT_POSITIVE = 101, OUT_OF_RANGE = 103 };

static int32_t positive(double value) {
    if (value >= 1e-30 && value <= 1e30) return 0;
    if (!(value - value == 0)) return NOT_FINITE;
    return value <= 0 ? NOT_POSITIVE : OUT_OF_RANGE;
}

int32_t by_hand_per_seed(double rate, double size, double *out) {
    int32_t status;
    if (out == NULL) return IS_NULL;
    if ((status = positive(rate)) != 0) return 14000 + status;
    if ((status = positive(size)) != 0) return 3000 + status;
    *out = rate / size;
    return 0;
}

int32_t by_hand_needed(double rate, double mass, double *out) {
    int32_t status;
    if (out == NULL) return IS_NULL;
    if ((status = positive(rate)) != 0) return 14000 + status;
    if ((status = positive(mass)) != 0) return 1000 + status;
    *out = rate * mass;
    return 0;
}
