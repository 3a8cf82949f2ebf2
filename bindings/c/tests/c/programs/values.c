/* Every check value through C. Lines come from a file (first argument), or from lines.inc where there are no files. */
#include "values.h"

static int32_t unit_convert(void) {
    hilum_measured from, one, back;
    hilum_temperature at;
    char text[LONGEST + 40];
    const char *to = input("to");
    double result;
    snprintf(text, sizeof text, "1 %s", to);
    note(hilum_text_read(text, strlen(text), NULL, NULL, &one));
    from = measured("value");
    if (bad) return bad;
    if (from.is != one.is || !same(from.powers, one.powers)) return HILUM_WRONG_DIMENSION;
    if (from.is == HILUM_AMOUNT) {
        TRY(hilum_text_count_in(from.value, to, strlen(to), NULL, NULL, &result));
        snprintf(text, sizeof text, "%.17g %s", result, to);
        TRY(hilum_text_read(text, strlen(text), NULL, NULL, &back));
        return give("value", back.value);
    }
    at.celsius = from.value;
    if (strcmp(to, "degC") == 0) return give("value", at.celsius);
    TRY(hilum_temperature_fahrenheit(at, &result));
    TRY(hilum_temperature_from_fahrenheit(result, &at));
    return give("value", at.celsius);
}

/* A function of two inputs and one result; `order` is how C wants them. */
#define TWO(name_, call, A, a, B, b, out_type, field_, out_name)   \
    static int32_t name_(void) {                                    \
        hilum_##A first = A(a);                                     \
        hilum_##B second = B(b);                                    \
        out_type out;                                               \
        TRY(call(first, second, &out));                             \
        return give(out_name, out field_);                          \
    }
#define THREE(name_, call, A, a, B, b, C, c, out_type, field_, out_name) \
    static int32_t name_(void) {                                          \
        hilum_##A first = A(a);                                           \
        hilum_##B second = B(b);                                          \
        hilum_##C third = C(c);                                           \
        out_type out;                                                     \
        TRY(call(first, second, third, &out));                            \
        return give(out_name, out field_);                                \
    }
/* Liquid or dry, by what is given. */
#define BY(name_, of) static int32_t name_(void) { return is_liquid(of) ? name_##_liquid() : name_##_dry(); }

TWO(seed_count, hilum_seed_size_count_in, seed_size, "size", mass, "mass", hilum_seeds, .seeds, "seeds")
TWO(seed_mass, hilum_seed_size_mass_of, seed_size, "size", seeds, "seeds", hilum_mass, .kg, "mass")
TWO(seed_bushels, hilum_bushel_bushels_in, bushel, "bushel", mass, "mass", double, , "bushels")
TWO(pure_live, hilum_pure_live_seed, share, "purity", share, "germination", hilum_share, .one, "share")
THREE(for_stand, hilum_sown_for_stand, sown, "stand", share, "germination", share, "emergence", hilum_sown,
      .seeds_per_m2, "sown")
TWO(seeds_per_area, hilum_sown_by_mass, mass_per_area, "rate", seed_size, "size", hilum_sown, .seeds_per_m2, "sown")
TWO(sown_mass_per_area, hilum_sown_mass_per_area, sown, "sown", seed_size, "size", hilum_mass_per_area, .kg_per_m2,
    "rate")
TWO(sown_area, hilum_sown_area, sown, "sown", seeds, "seeds", hilum_area, .m2, "area")

static int32_t size_from_thousand(void) {
    hilum_mass thousand = mass("thousand");
    hilum_seed_size out;
    TRY(hilum_seed_size_of_thousand(thousand, &out));
    return give("size", out.seeds_per_kg);
}
static int32_t thousand(void) {
    hilum_seed_size size = seed_size("size");
    hilum_mass out;
    TRY(hilum_seed_size_thousand(size, &out));
    return give("thousand", out.kg);
}
static int32_t units(void) {
    hilum_mass lot = mass("mass");
    hilum_seed_size size = seed_size("size");
    hilum_measured meant = measured("unit");
    hilum_seed_unit unit;
    double out;
    memset(&unit, 0, sizeof unit);
    unit.is = meant.powers.mass == 1 ? HILUM_UNIT_OF_MASS : HILUM_UNIT_OF_SEEDS;
    if (unit.is == HILUM_UNIT_OF_MASS) unit.mass = mass("unit");
    else unit.seeds = seeds("unit");
    TRY(hilum_seed_unit_units_in(&unit, lot, size, &out));
    return give("units", out);
}

TWO(per_seed_liquid, hilum_rate_per_mass_to_per_seed, rate_per_mass, "rate", seed_size, "size", hilum_rate_per_seed,
    .m3_per_seed, "per_seed")
TWO(per_seed_dry, hilum_dry_per_mass_to_per_seed, dry_per_mass, "rate", seed_size, "size", hilum_dry_per_seed,
    .kg_per_seed, "per_seed")
BY(per_seed, "rate")
TWO(dose_per_mass_liquid, hilum_rate_per_seed_to_per_mass, rate_per_seed, "per_seed", seed_size, "size",
    hilum_rate_per_mass, .m3_per_kg, "rate")
TWO(dose_per_mass_dry, hilum_dry_per_seed_to_per_mass, dry_per_seed, "per_seed", seed_size, "size", hilum_dry_per_mass,
    .kg_per_kg, "rate")
BY(dose_per_mass, "per_seed")
static int32_t unit_per_mass_liquid(void) {
    hilum_volume stated = volume("per_unit");
    hilum_seeds unit = seeds("unit");
    hilum_seed_size size = seed_size("size");
    hilum_rate_per_seed dose;
    hilum_rate_per_mass out;
    TRY(hilum_rate_per_seed_from_unit(stated, unit, &dose));
    TRY(hilum_rate_per_seed_to_per_mass(dose, size, &out));
    return give("rate", out.m3_per_kg);
}
static int32_t unit_per_mass_dry(void) {
    hilum_mass stated = mass("per_unit");
    hilum_seeds unit = seeds("unit");
    hilum_seed_size size = seed_size("size");
    hilum_dry_per_seed dose;
    hilum_dry_per_mass out;
    TRY(hilum_dry_per_seed_from_unit(stated, unit, &dose));
    TRY(hilum_dry_per_seed_to_per_mass(dose, size, &out));
    return give("rate", out.kg_per_kg);
}
BY(unit_per_mass, "per_unit")
static int32_t per_mass(void) { return has("per_unit") ? unit_per_mass() : dose_per_mass(); }
static int32_t per_unit_liquid(void) {
    hilum_rate_per_mass rate = rate_per_mass("rate");
    hilum_seed_size size = seed_size("size");
    hilum_seeds unit = seeds("unit");
    hilum_rate_per_seed dose;
    hilum_volume out;
    TRY(hilum_rate_per_mass_to_per_seed(rate, size, &dose));
    TRY(hilum_rate_per_seed_to_unit(dose, unit, &out));
    return give("per_unit", out.m3);
}
static int32_t per_unit_dry(void) {
    hilum_dry_per_mass rate = dry_per_mass("rate");
    hilum_seed_size size = seed_size("size");
    hilum_seeds unit = seeds("unit");
    hilum_dry_per_seed dose;
    hilum_mass out;
    TRY(hilum_dry_per_mass_to_per_seed(rate, size, &dose));
    TRY(hilum_dry_per_seed_to_unit(dose, unit, &out));
    return give("per_unit", out.kg);
}
BY(per_unit, "rate")
TWO(from_unit_liquid, hilum_rate_per_seed_from_unit, volume, "amount", seeds, "unit", hilum_rate_per_seed, .m3_per_seed,
    "per_seed")
TWO(from_unit_dry, hilum_dry_per_seed_from_unit, mass, "amount", seeds, "unit", hilum_dry_per_seed, .kg_per_seed,
    "per_seed")
BY(from_unit, "amount")
TWO(per_bushel_liquid, hilum_rate_per_mass_to_bushel, rate_per_mass, "rate", bushel, "bushel", hilum_volume, .m3,
    "amount")
TWO(per_bushel_dry, hilum_dry_per_mass_to_bushel, dry_per_mass, "rate", bushel, "bushel", hilum_mass, .kg, "amount")
BY(per_bushel, "rate")
TWO(from_bushel_liquid, hilum_rate_per_mass_from_bushel, volume, "amount", bushel, "bushel", hilum_rate_per_mass,
    .m3_per_kg, "rate")
TWO(from_bushel_dry, hilum_dry_per_mass_from_bushel, mass, "amount", bushel, "bushel", hilum_dry_per_mass, .kg_per_kg,
    "rate")
BY(from_bushel, "amount")
TWO(per_area_liquid, hilum_rate_per_seed_to_per_area, rate_per_seed, "per_seed", sown, "sown", hilum_rate_per_area,
    .m3_per_m2, "per_area")
TWO(per_area_dry, hilum_dry_per_seed_to_per_area, dry_per_seed, "per_seed", sown, "sown", hilum_dry_per_area, .kg_per_m2,
    "per_area")
BY(per_area, "per_seed")
TWO(needed_liquid, hilum_rate_per_mass_needed, rate_per_mass, "rate", mass, "mass", hilum_volume, .m3, "amount")
TWO(needed_dry, hilum_dry_per_mass_needed, dry_per_mass, "rate", mass, "mass", hilum_mass, .kg, "amount")
BY(needed, "rate")
TWO(implied_size_liquid, hilum_rate_per_mass_implied_size, rate_per_mass, "rate", rate_per_seed, "per_seed",
    hilum_seed_size, .seeds_per_kg, "size")
TWO(implied_size_dry, hilum_dry_per_mass_implied_size, dry_per_mass, "rate", dry_per_seed, "per_seed", hilum_seed_size,
    .seeds_per_kg, "size")
BY(implied_size, "rate")
static int32_t difference_liquid(void) {
    hilum_rate_per_seed dose = rate_per_seed("per_seed");
    hilum_seed_size size = seed_size("size");
    hilum_rate_per_mass governing = rate_per_mass("rate"), stated;
    double out;
    TRY(hilum_rate_per_seed_to_per_mass(dose, size, &stated));
    TRY(hilum_rate_per_mass_difference(stated, governing, &out));
    return give("difference", out);
}
static int32_t difference_dry(void) {
    hilum_dry_per_seed dose = dry_per_seed("per_seed");
    hilum_seed_size size = seed_size("size");
    hilum_dry_per_mass governing = dry_per_mass("rate"), stated;
    double out;
    TRY(hilum_dry_per_seed_to_per_mass(dose, size, &stated));
    TRY(hilum_dry_per_mass_difference(stated, governing, &out));
    return give("difference", out);
}
BY(difference, "rate")

static int32_t mix_treats(void) {
    hilum_water none = {{0}, HILUM_NO_WATER};
    hilum_rate_per_mass products[1];
    hilum_volume mix = volume("volume");
    hilum_slurry slurry;
    hilum_mass out;
    products[0] = rate_per_mass("slurry");
    TRY(hilum_slurry_of(products, 1, &none, &slurry));
    if (has("hold_up")) {
        hilum_hold_up lines = hold_up("hold_up");
        TRY(hilum_hold_up_treats(lines, &slurry, mix, &out));
    } else {
        TRY(hilum_slurry_treats(&slurry, mix, &out));
    }
    return give("mass", out.kg);
}
static int32_t mix_share(void) {
    hilum_water water = {{0}, HILUM_WATER_UP_TO};
    hilum_rate_per_mass products[1];
    hilum_slurry slurry;
    hilum_share out;
    products[0] = rate_per_mass("rate");
    water.volume = rate_per_mass("make_up_to");
    TRY(hilum_slurry_of(products, 1, &water, &slurry));
    TRY(hilum_slurry_share(&slurry, products[0], &out));
    return give("share", out.one);
}
static int32_t pack_sets(void) {
    hilum_order_need order;
    hilum_sets_needed sets;
    uint64_t out;
    order.set = coverage("covers");
    order.seed = mass("need");
    TRY(hilum_sets_needed_sum(&order, 1, &sets));
    TRY(hilum_sets_needed_whole(sets, &out));
    return give("sets", (double)out);
}

#include "values_more.h"
#include "values_still_more.h"

static const struct {
    const char *name;
    int32_t (*run)(void);
} FUNCTIONS[] = {
    {"unit.convert", unit_convert},
    {"seed.count", seed_count},
    {"seed.mass", seed_mass},
    {"seed.size_from_thousand", size_from_thousand},
    {"seed.thousand", thousand},
    {"seed.units", units},
    {"seed.bushels", seed_bushels},
    {"seed.pure_live", pure_live},
    {"sowing.for_stand", for_stand},
    {"sowing.seeds_per_area", seeds_per_area},
    {"sowing.mass_per_area", sown_mass_per_area},
    {"sowing.area", sown_area},
    {"rate.per_seed", per_seed},
    {"rate.per_mass", per_mass},
    {"rate.per_unit", per_unit},
    {"rate.from_unit", from_unit},
    {"rate.per_bushel", per_bushel},
    {"rate.from_bushel", from_bushel},
    {"rate.per_area", per_area},
    {"rate.needed", needed},
    {"rate.implied_size", implied_size},
    {"rate.difference", difference},
    {"active.per_mass", active_of_mass},
    {"active.per_seed", active_of_seed},
    {"active.per_area", active_of_area},
    {"limit.per_area", limit_per_area},
    {"limit.max_sowing", max_sowing},
    {"mix.share", mix_share},
    {"mix.treats", mix_treats},
    {"pack.sets", pack_sets},
    {"treater.flow", treater_flow},
    {"treater.dump_flow", dump_flow},
    {"treater.per_charge", per_charge},
    {"treater.caught_by_volume", caught_by_volume},
    {"treater.caught_by_mass", caught_by_mass},
    {"treater.deviation", deviation},
    {"treater.correct_setting", correct_setting},
    {"living.cells_per_seed", cells_per_seed_of},
    {"living.dose_for", dose_for},
    {"survival.log_linear", log_linear},
    {"survival.weibull", weibull},
    {"survival.two_phase", two_phase},
    {"seed.size_from_seed", size_from_seed},
    {"seed.seed_mass", one_seed_mass},
    {"seed.unit_mass", unit_mass},
    {"seed.within", within},
    {"sowing.seeds_for", seeds_for},
    {"rate.treats", treats},
    {"rate.from_area", from_area},
    {"rate.weighed", weighed},
    {"rate.measured", measured_rate},
    {"active.product", active_product},
    {"limit.share", limit_share},
    {"limit.on_seed", on_seed},
    {"mix.fill", mix_fill},
    {"mix.water", mix_water},
    {"mix.total_liquid", total_liquid},
    {"mix.pour", pour},
    {"mix.weigh", weigh},
    {"pack.coverage", pack_coverage},
    {"pack.choose", choose},
    {"treater.curve_setting", curve_setting},
    {"treater.time_for", time_for},
    {"treater.rate", treater_rate},
    {"treater.batch_flow", batch_flow},
    {"living.titre_for", titre_for},
    {"living.titre_in_set", titre_in_set},
    {"survival.effective_time", effective_time},
    {"survival.count", survival_count},
    {"survival.last_moment", last_moment},
    {"survival.fit", fit},
    {"account.used", account_used},
    {"account.achieved", account_achieved},
    {"ddi.encode", ddi_encode},
    {"ddi.decode", ddi_decode},
};

static const char *word(int32_t status) {
    switch (HILUM_KIND(status)) {
    case HILUM_NOT_FINITE: return "not_finite";
    case HILUM_NOT_POSITIVE: return "not_positive";
    case HILUM_NEGATIVE: return "negative";
    case HILUM_OUT_OF_RANGE: return "out_of_range";
    case HILUM_NOT_A_SHARE: return "not_a_share";
    case HILUM_BELOW_ABSOLUTE_ZERO: return "below_absolute_zero";
    case HILUM_MORE_THAN: return "more_than";
    case HILUM_TOO_LITTLE: return "too_little";
    case HILUM_TOO_MANY_SETS: return "too_many_sets";
    case HILUM_NOT_FOR_THE_BUS: return "not_for_the_bus";
    case HILUM_NEEDED: return "needed";
    case HILUM_TOO_FEW: return "too_few";
    case HILUM_ALL_EQUAL: return "all_equal";
    case HILUM_NOT_FALLING: return "not_falling";
    case HILUM_ONE_SETTING: return "one_setting";
    case HILUM_NOT_RISING: return "not_rising";
    case HILUM_SIZES_OF_PACK: return "sizes_of_pack";
    case HILUM_WRONG_DIMENSION:
    case HILUM_TEMPERATURE_POINT:
    case HILUM_NOT_A_TEMPERATURE: return "wrong_dimension";
    case HILUM_UNKNOWN_UNIT: return "unknown_unit";
    default: return "?";
    }
}

/* Whether a case comes out bit for bit, or is refused for the same reason. */
static bool agrees(const char *line) {
    size_t i;
    int k;
    int32_t status = -1;
    bool right;
    read_case(line);
    for (i = 0; i < sizeof FUNCTIONS / sizeof FUNCTIONS[0]; i++)
        if (strcmp(FUNCTIONS[i].name, now.function) == 0) status = FUNCTIONS[i].run();
    if (now.n_results == 0) {
        right = status > 0 && strcmp(word(status), now.refusal) == 0;
    } else {
        right = status == HILUM_OK && n_given == now.n_results;
        for (k = 0; k < now.n_results; k++) right = right && strcmp(given_as(now.results[k].name), now.results[k].text) == 0;
    }
    if (!right) printf("%s: %s gives %d %s, expected %s\n", now.id, now.function, (int)status, hilum_status_message(status), now.refusal);
    for (k = 0; k < now.n_results && !right; k++)
        printf("  %s is %s, expected %s\n", now.results[k].name, given_as(now.results[k].name), now.results[k].text);
    return right;
}

#ifdef LINES
static const char *const ALL[] = {
#include LINES
};
int values_main(void);
int values_main(void) {
    unsigned agree = 0, all = sizeof ALL / sizeof ALL[0], i;
    for (i = 0; i < all; i++) agree += agrees(ALL[i]);
    printf("%u of %u check values agree bit for bit\n", agree, all);
    return agree != all;
}
#else
int main(int n, char **arguments) {
    static char line[4096];
    unsigned agree = 0, all = 0;
    FILE *file = n > 1 ? fopen(arguments[1], "r") : NULL;
    if (!file) return 2;
    for (; fgets(line, sizeof line, file); all++) agree += agrees(line);
    fclose(file);
    printf("%u of %u check values agree bit for bit\n", agree, all);
    return agree != all;
}
#endif
