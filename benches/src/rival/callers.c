/* What a program in C does with either: call it for each of n, look at the status, use the result. */
#include <hilum.h>
#include <stddef.h>

int32_t by_hand_per_seed(double rate, double size, double *out);
int32_t by_hand_needed(double rate, double mass, double *out);
double call_hilum_per_seed(double rate, const double *sizes, size_t n);
double call_by_hand_per_seed(double rate, const double *sizes, size_t n);
double call_hilum_needed(double rate, const double *masses, size_t n);
double call_by_hand_needed(double rate, const double *masses, size_t n);

double call_hilum_per_seed(double rate, const double *sizes, size_t n) {
    const hilum_rate_per_mass label = {rate};
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        const hilum_seed_size size = {sizes[i]};
        hilum_rate_per_seed dose;
        if (hilum_rate_per_mass_to_per_seed(label, size, &dose) != HILUM_OK) return -1;
        sum += dose.m3_per_seed;
    }
    return sum;
}

double call_by_hand_per_seed(double rate, const double *sizes, size_t n) {
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        double dose;
        if (by_hand_per_seed(rate, sizes[i], &dose) != 0) return -1;
        sum += dose;
    }
    return sum;
}

double call_hilum_needed(double rate, const double *masses, size_t n) {
    const hilum_rate_per_mass label = {rate};
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        const hilum_mass mass = {masses[i]};
        hilum_volume volume;
        if (hilum_rate_per_mass_needed(label, mass, &volume) != HILUM_OK) return -1;
        sum += volume.m3;
    }
    return sum;
}

double call_by_hand_needed(double rate, const double *masses, size_t n) {
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        double volume;
        if (by_hand_needed(rate, masses[i], &volume) != 0) return -1;
        sum += volume;
    }
    return sum;
}
