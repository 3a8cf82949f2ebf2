/* Seed, mixes, packs, pumps, storage and accounts. */

static int32_t size_from_seed(void) {
    hilum_mass_per_seed one = mass_per_seed("seed");
    hilum_seed_size out;
    TRY(hilum_seed_size_of_seed(one, &out));
    return give("size", out.seeds_per_kg);
}
static int32_t one_seed_mass(void) {
    hilum_seed_size size = seed_size("size");
    hilum_mass_per_seed out;
    TRY(hilum_seed_size_seed_mass(size, &out));
    return give("seed", out.kg_per_seed);
}
static int32_t unit_mass(void) {
    hilum_measured meant = measured("unit");
    hilum_seed_size size = seed_size("size");
    hilum_seed_unit unit;
    hilum_mass out;
    memset(&unit, 0, sizeof unit);
    unit.is = meant.powers.mass == 1 ? HILUM_UNIT_OF_MASS : HILUM_UNIT_OF_SEEDS;
    if (unit.is == HILUM_UNIT_OF_MASS) unit.mass = mass("unit");
    else unit.seeds = seeds("unit");
    TRY(hilum_seed_unit_mass(&unit, size, &out));
    return give("mass", out.kg);
}
static int32_t within(void) {
    hilum_seed_size size = seed_size("size"), least, most;
    hilum_share tolerance = share("tolerance");
    TRY(hilum_seed_size_within(size, tolerance, &least, &most));
    give("least", least.seeds_per_kg);
    return give("most", most.seeds_per_kg);
}
TWO(seeds_for, hilum_sown_seeds_for, sown, "sown", area, "area", hilum_seeds, .seeds, "seeds")

TWO(treats_liquid, hilum_rate_per_mass_treats, rate_per_mass, "rate", volume, "amount", hilum_mass, .kg, "mass")
TWO(treats_dry, hilum_dry_per_mass_treats, dry_per_mass, "rate", mass, "amount", hilum_mass, .kg, "mass")
BY(treats, "rate")
TWO(from_area_liquid, hilum_rate_per_area_to_per_seed, rate_per_area, "per_area", sown, "sown", hilum_rate_per_seed,
    .m3_per_seed, "per_seed")
TWO(from_area_dry, hilum_dry_per_area_to_per_seed, dry_per_area, "per_area", sown, "sown", hilum_dry_per_seed,
    .kg_per_seed, "per_seed")
static int32_t from_area(void) {
    /* A volume per area is a depth. */
    return measured("per_area").powers.length == 1 ? from_area_liquid() : from_area_dry();
}
TWO(weighed, hilum_rate_per_mass_weighed, rate_per_mass, "rate", density, "density", hilum_dry_per_mass, .kg_per_kg,
    "rate")
TWO(measured_rate, hilum_dry_per_mass_measured, dry_per_mass, "rate", density, "density", hilum_rate_per_mass,
    .m3_per_kg, "rate")

/* Liquid where the content is per volume or the density is given, else dry. */
static int32_t active_product(void) {
    hilum_active_per_mass active = active_per_mass("active");
    hilum_content content;
    memset(&content, 0, sizeof content);
    if (measured("content").powers.mass == 0) {
        content.stated = HILUM_BY_MASS;
        content.by_mass = share("content");
    } else {
        content.stated = HILUM_PER_VOLUME;
        content.per_volume = active_content("content");
    }
    if (content.stated == HILUM_BY_MASS && !has("density")) {
        hilum_dry_per_mass out;
        TRY(hilum_active_per_mass_in_dry(active, content.by_mass, &out));
        return give("rate", out.kg_per_kg);
    } else {
        hilum_density dense = {0};
        hilum_active_content per_volume;
        hilum_rate_per_mass out;
        if (has("density")) dense = density("density");
        TRY(hilum_content_per_volume(&content, has("density") ? &dense : NULL, &per_volume));
        TRY(hilum_active_per_mass_in_liquid(active, per_volume, &out));
        return give("rate", out.m3_per_kg);
    }
}

static int32_t limit_share(void) {
    hilum_season_limit season;
    hilum_active_per_seed dose = active_per_seed("active");
    hilum_sown sowing = sown("sown");
    double out;
    season.limit = mass_per_area("limit");
    season.used = used();
    TRY(hilum_season_limit_share(&season, dose, sowing, &out));
    return give("share", out);
}
static int32_t on_seed(void) {
    hilum_active_per_seed doses[2], out;
    doses[0] = active_per_seed("first");
    doses[1] = active_per_seed("second");
    TRY(hilum_active_total_on_seed(doses, 2, &out));
    return give("active", out.kg_per_seed);
}

static int32_t mix_fill(void) {
    hilum_water none = {{0}, HILUM_NO_WATER};
    hilum_rate_per_mass products[1];
    hilum_mass seed = mass("mass");
    hilum_slurry slurry;
    hilum_volume out;
    products[0] = rate_per_mass("slurry");
    TRY(hilum_slurry_of(products, 1, &none, &slurry));
    if (has("hold_up")) {
        hilum_hold_up lines = hold_up("hold_up");
        TRY(hilum_hold_up_mixed(lines, &slurry, seed, &out));
    } else {
        TRY(hilum_slurry_fill(&slurry, seed, &out));
    }
    return give("volume", out.m3);
}
static int32_t mix_water(void) {
    hilum_water water = {{0}, HILUM_WATER_UP_TO};
    hilum_rate_per_mass products[1], out;
    hilum_slurry slurry;
    hilum_share part;
    products[0] = rate_per_mass("rate");
    if (has("plus")) water.how = HILUM_WATER_PLUS;
    water.volume = rate_per_mass(has("plus") ? "plus" : "make_up_to");
    TRY(hilum_slurry_of(products, 1, &water, &slurry));
    TRY(hilum_slurry_water(&slurry, &out));
    TRY(hilum_slurry_water_share(&slurry, &part));
    give("water", out.m3_per_kg);
    return give("share", part.one);
}
static int32_t total_liquid(void) {
    hilum_rate_per_mass rates[2], out;
    rates[0] = rate_per_mass("first");
    rates[1] = rate_per_mass("second");
    TRY(hilum_mix_total_liquid(rates, 2, &out));
    return give("rate", out.m3_per_kg);
}
TWO(pour, hilum_mix_pour, share, "share", volume, "volume", hilum_volume, .m3, "volume")
TWO(weigh, hilum_mix_weigh, volume, "volume", density, "density", hilum_mass, .kg, "mass")

TWO(pack_coverage_liquid, hilum_coverage_at, volume, "usable", rate_per_mass, "rate", hilum_coverage, .kg, "covers")
TWO(pack_coverage_dry, hilum_coverage_at_dry, mass, "usable", dry_per_mass, "rate", hilum_coverage, .kg, "covers")
BY(pack_coverage, "rate")
static int32_t choose(void) {
    hilum_pack_size sizes[2] = {{{0}, 0, HILUM_NO_LIMIT}, {{0}, 0, HILUM_NO_LIMIT}};
    hilum_mass need = mass("need");
    hilum_choice out;
    sizes[0].covers = coverage("large");
    sizes[1].covers = coverage("small");
    TRY(hilum_pack_choose(need, sizes, 2, HILUM_LEAST_LEFTOVER, &out));
    give("large", (double)out.sets[0]);
    give("small", (double)out.sets[1]);
    return give("leftover", out.leftover.kg);
}

static int32_t curve_setting(void) {
    hilum_curve_point catches[2];
    hilum_work work[2];
    hilum_pump_curve curve;
    hilum_flow wanted = flow("wanted");
    hilum_setting out;
    int32_t reach;
    catches[0].setting.number = number("setting_1");
    catches[0].flow = flow("flow_1");
    catches[1].setting.number = number("setting_2");
    catches[1].flow = flow("flow_2");
    TRY(hilum_pump_curve_through(catches, work, 2, &curve));
    TRY(hilum_pump_curve_setting(&curve, wanted, &reach, &out));
    return reach == HILUM_WITHIN ? give("setting", out.number) : -1;
}
static int32_t time_for(void) {
    hilum_mass seed = mass("mass");
    hilum_seed_flow runs = seed_flow("seed_flow");
    hilum_time out;
    if (has("utilisation")) {
        hilum_share utilisation = share("utilisation");
        TRY(hilum_seed_flow_effective(runs, utilisation, &runs));
    }
    TRY(hilum_seed_flow_time_for(runs, seed, &out));
    return give("time", out.s);
}
TWO(treater_rate, hilum_flow_rate, flow, "flow", seed_flow, "seed_flow", hilum_rate_per_mass, .m3_per_kg, "rate")
static int32_t batch_flow(void) {
    hilum_batch_treater treater;
    hilum_seed_flow out;
    treater.charge = mass("charge");
    treater.cycle = time("cycle");
    TRY(hilum_batch_treater_seed_flow(&treater, &out));
    return give("seed_flow", out.kg_per_s);
}

THREE(titre_for_liquid, hilum_titre_per_volume_needed, cells_per_seed, "cells", rate_per_seed, "per_seed", share,
      "recovery", hilum_titre_per_volume, .cfu_per_m3, "titre")
THREE(titre_for_dry, hilum_titre_per_mass_needed, cells_per_seed, "cells", dry_per_seed, "per_seed", share, "recovery",
      hilum_titre_per_mass, .cfu_per_kg, "titre")
BY(titre_for, "per_seed")
THREE(liquid_in_set, hilum_titre_per_volume_in_set, titre_per_volume, "titre", volume, "part", volume, "set",
      hilum_titre_per_volume, .cfu_per_m3, "titre")
THREE(powder_in_set, hilum_titre_per_mass_in_set, titre_per_mass, "titre", mass, "part", mass, "set",
      hilum_titre_per_mass, .cfu_per_kg, "titre")
THREE(stirred, hilum_titre_per_mass_stirred_into, titre_per_mass, "titre", mass, "part", volume, "set",
      hilum_titre_per_volume, .cfu_per_m3, "titre")
static int32_t titre_in_set(void) {
    if (measured("titre").powers.length == -3) return liquid_in_set();
    return is_liquid("set") ? stirred() : powder_in_set();
}

/* A first period at one temperature, then another that goes on. */
static int32_t effective_time(void) {
    /* The curve does not matter to the time. */
    hilum_survival survival = {HILUM_LOG_LINEAR, 1, {1}, {0}, {0}, {0}, 0, {0}, {0}};
    hilum_period storage[2] = {{{0}, {0}, 1}, {{0}, {0}, 1}};
    hilum_work work[2];
    hilum_time after = time("time"), out;
    survival.reference = temperature("at");
    survival.z = temperature_difference("z");
    storage[0].lasts = time("first");
    storage[0].at = temperature("first_temperature");
    storage[1].lasts = after;
    storage[1].at = temperature("temperature");
    TRY(hilum_survival_effective_time(&survival, storage, work, 2, after, &out));
    return give("time", out.s);
}
static int32_t survival_count(void) {
    hilum_survival survival = {HILUM_LOG_LINEAR, 0, {0}, {0}, {0}, {0}, 0, {0}, {0}};
    hilum_cells_per_seed treated = cells_per_seed("cells"), out;
    hilum_time after = time("time");
    survival.reduction = decimal_reduction("d");
    TRY(hilum_survival_count(&survival, treated, NULL, NULL, 0, after, &out));
    return give("cells", out.cfu_per_seed);
}
static int32_t last_moment(void) {
    hilum_survival survival = {HILUM_LOG_LINEAR, 0, {0}, {0}, {0}, {0}, 0, {0}, {0}};
    hilum_cells_per_seed treated = cells_per_seed("cells"), minimum = cells_per_seed("minimum");
    hilum_crossing out;
    survival.reduction = decimal_reduction("d");
    TRY(hilum_survival_crossing(&survival, treated, minimum, NULL, NULL, 0, &out));
    return out.is == HILUM_AT ? give("time", out.at.s) : -1;
}
static int32_t fit(void) {
    hilum_sample samples[2];
    hilum_work work[2];
    hilum_fit out;
    samples[0].at = time("time_1");
    samples[0].count = number("count_1");
    samples[1].at = time("time_2");
    samples[1].count = number("count_2");
    TRY(hilum_fit_log_linear(samples, work, 2, &out));
    give("d", out.reduction.s);
    return give("log10", out.log10_initial);
}

static hilum_volume_reading volume_reading(const char *shown, const char *resolution) {
    hilum_volume_reading reading;
    reading.shown = volume(shown);
    reading.resolution = volume(resolution);
    return reading;
}
static hilum_mass_reading mass_reading(const char *shown, const char *resolution) {
    hilum_mass_reading reading;
    reading.shown = mass(shown);
    reading.resolution = mass(resolution);
    return reading;
}
static int32_t account_used_liquid(void) {
    hilum_volume_reading start = volume_reading("start", "resolution"), end = volume_reading("end", "resolution");
    hilum_volume_reading added = volume_reading("added", "resolution"), lost = volume_reading("lost", "resolution");
    hilum_work work[2];
    hilum_used_volume drawn;
    hilum_volume amount, unsure;
    TRY(hilum_used_volume_from(&start, &end, &added, 1, &lost, 1, work, &drawn));
    TRY(hilum_used_volume_amount(&drawn, &amount));
    TRY(hilum_used_volume_uncertainty(&drawn, &unsure));
    give("used", amount.m3);
    return give("uncertainty", unsure.m3);
}
static int32_t account_used_dry(void) {
    hilum_mass_reading start = mass_reading("start", "resolution"), end = mass_reading("end", "resolution");
    hilum_mass_reading added = mass_reading("added", "resolution"), lost = mass_reading("lost", "resolution");
    hilum_work work[2];
    hilum_used_mass drawn;
    hilum_mass amount, unsure;
    TRY(hilum_used_mass_from(&start, &end, &added, 1, &lost, 1, work, &drawn));
    TRY(hilum_used_mass_amount(&drawn, &amount));
    TRY(hilum_used_mass_uncertainty(&drawn, &unsure));
    give("used", amount.kg);
    return give("uncertainty", unsure.kg);
}
BY(account_used, "start")
static int32_t account_achieved_liquid(void) {
    hilum_volume_reading drawn = volume_reading("used", "resolution");
    hilum_mass_reading scale = mass_reading("seed", "seed_resolution");
    hilum_used_volume liquid;
    hilum_used_mass seed;
    hilum_achieved achieved;
    hilum_rate_per_mass rate, unsure;
    TRY(hilum_used_volume_of_reading(&drawn, &liquid));
    TRY(hilum_used_mass_of_reading(&scale, &seed));
    TRY(hilum_achieved_on(&liquid, &seed, &achieved));
    TRY(hilum_achieved_rate(&achieved, &rate));
    TRY(hilum_achieved_uncertainty(&achieved, &unsure));
    give("rate", rate.m3_per_kg);
    return give("uncertainty", unsure.m3_per_kg);
}
static int32_t account_achieved_dry(void) {
    hilum_mass_reading drawn = mass_reading("used", "resolution");
    hilum_mass_reading scale = mass_reading("seed", "seed_resolution");
    hilum_used_mass product, seed;
    hilum_achieved_dry achieved;
    hilum_dry_per_mass rate, unsure;
    TRY(hilum_used_mass_of_reading(&drawn, &product));
    TRY(hilum_used_mass_of_reading(&scale, &seed));
    TRY(hilum_achieved_dry_on(&product, &seed, &achieved));
    TRY(hilum_achieved_dry_rate(&achieved, &rate));
    TRY(hilum_achieved_dry_uncertainty(&achieved, &unsure));
    give("rate", rate.kg_per_kg);
    return give("uncertainty", unsure.kg_per_kg);
}
BY(account_achieved, "used")
