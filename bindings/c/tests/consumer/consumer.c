/* What a user of an installed copy writes: how much product does an order need? */
#include <hilum.h>
#include <stdio.h>
#include <string.h>

int main(void) {
    hilum_rate_per_mass rate;
    hilum_mass seed;
    hilum_volume product;
    double liters;
    const char *text = "325 mL/100 kg";
    int32_t status = hilum_rate_per_mass_read(text, strlen(text), &rate);
    if (status == HILUM_OK) status = hilum_mass_from(20, HILUM_T, &seed);
    if (status == HILUM_OK) status = hilum_rate_per_mass_needed(rate, seed, &product);
    if (status == HILUM_OK) status = hilum_volume_in(product, HILUM_L, &liters);
    if (status != HILUM_OK) {
        fprintf(stderr, "%s %s\n", hilum_status_subject(status), hilum_status_message(status));
        return 1;
    }
    /* By hand: 3.25 mL/kg x 20000 kg. */
    printf("%.3f L with hilum %s\n", liters, hilum_version());
    return strcmp(hilum_version(), HILUM_VERSION) != 0;
}
