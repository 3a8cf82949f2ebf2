/* A dose per seed where a dose per mass is wanted; without MISTAKE the same program is right. */
#include <hilum.h>

int main(void) {
    hilum_mass seed = {1000};
    hilum_volume product;
#ifdef MISTAKE
    hilum_rate_per_seed rate = {6e-10};
#else
    hilum_rate_per_mass rate = {3e-6};
#endif
    return hilum_rate_per_mass_needed(rate, seed, &product);
}
