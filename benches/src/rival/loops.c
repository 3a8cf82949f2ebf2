/* Vectorised loops with folded constants and without checks: -O3, and nothing overlaps. */
#include <stddef.h>

void loop_times(double by, const double *restrict from, double *restrict to, size_t n);
void loop_under(double over, const double *restrict from, double *restrict to, size_t n);

void loop_quotient(double by, double over, const double *restrict from, double *restrict to, size_t n);

void loop_quotient(double by, double over, const double *restrict from, double *restrict to, size_t n) {
    for (size_t i = 0; i < n; i++) to[i] = from[i] * by / over;
}

void loop_times(double by, const double *restrict from, double *restrict to, size_t n) {
    for (size_t i = 0; i < n; i++) to[i] = by * from[i];
}

void loop_under(double over, const double *restrict from, double *restrict to, size_t n) {
    for (size_t i = 0; i < n; i++) to[i] = over / from[i];
}
