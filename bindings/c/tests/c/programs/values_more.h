/* Actives, limits, treaters, living cells and the bus. */

static hilum_density density_or(const hilum_density **known) {
    hilum_density none = {0};
    *known = NULL;
    return has("density") ? density("density") : none;
}

static int32_t active_in_liquid(hilum_rate_per_mass rate, hilum_active_per_mass *out) {
    const hilum_density *known = NULL;
    hilum_density dense = density_or(&known);
    hilum_content content;
    hilum_active_content per_volume;
    memset(&content, 0, sizeof content);
    if (has("density")) known = &dense;
    if (measured("content").powers.mass == 0) {
        content.stated = HILUM_BY_MASS;
        content.by_mass = share("content");
    } else {
        content.stated = HILUM_PER_VOLUME;
        content.per_volume = active_content("content");
    }
    TRY(hilum_content_per_volume(&content, known, &per_volume));
    return hilum_rate_per_mass_active(rate, per_volume, out);
}

static int32_t active_in_dry(hilum_dry_per_mass rate, hilum_active_per_mass *out) {
    const hilum_density *known = NULL;
    hilum_density dense = density_or(&known);
    hilum_content content;
    hilum_share by_mass;
    memset(&content, 0, sizeof content);
    if (has("density")) known = &dense;
    if (measured("content").powers.mass == 0) {
        content.stated = HILUM_BY_MASS;
        content.by_mass = share("content");
    } else {
        content.stated = HILUM_PER_VOLUME;
        content.per_volume = active_content("content");
    }
    TRY(hilum_content_by_mass(&content, known, &by_mass));
    return hilum_dry_per_mass_active(rate, by_mass, out);
}

static int32_t active_of_rate(hilum_active_per_mass *out) {
    if (is_liquid("rate")) {
        hilum_rate_per_mass rate = rate_per_mass("rate");
        if (bad) return bad;
        return active_in_liquid(rate, out);
    } else {
        hilum_dry_per_mass rate = dry_per_mass("rate");
        if (bad) return bad;
        return active_in_dry(rate, out);
    }
}

static int32_t active_of_mass(void) {
    hilum_active_per_mass out;
    TRY(active_of_rate(&out));
    return give("active", out.kg_per_kg);
}

static int32_t active_of_seed(void) {
    hilum_active_per_mass active;
    hilum_active_per_seed out;
    hilum_seed_size size = {1};
    if (has("rate")) {
        TRY(active_of_rate(&active));
        size = seed_size("size");
    } else if (is_liquid("per_seed")) {
        /* The library knows the active in a dose per mass; at one seed per kilogram that is the dose per seed. */
        hilum_rate_per_mass rate;
        hilum_rate_per_seed dose = rate_per_seed("per_seed");
        TRY(hilum_rate_per_seed_to_per_mass(dose, size, &rate));
        TRY(active_in_liquid(rate, &active));
    } else {
        hilum_dry_per_mass rate;
        hilum_dry_per_seed dose = dry_per_seed("per_seed");
        TRY(hilum_dry_per_seed_to_per_mass(dose, size, &rate));
        TRY(active_in_dry(rate, &active));
    }
    TRY(hilum_active_per_mass_to_per_seed(active, size, &out));
    return give("active", out.kg_per_seed);
}

static int32_t active_of_area(void) {
    hilum_active_per_seed dose;
    hilum_active_per_area out;
    hilum_sown sowing;
    if (has("size")) {
        hilum_active_per_mass rate = active_per_mass("active");
        hilum_seed_size size = seed_size("size");
        TRY(hilum_active_per_mass_to_per_seed(rate, size, &dose));
    } else {
        dose = active_per_seed("active");
    }
    sowing = sown("sown");
    TRY(hilum_active_per_seed_to_per_area(dose, sowing, &out));
    return give("per_area", out.kg_per_m2);
}

static hilum_mass_per_area used(void) {
    hilum_mass_per_area none = {0};
    return has("used") ? mass_per_area("used") : none;
}

static int32_t limit_per_area(void) {
    /* What a season comes to does not depend on what it may come to. */
    hilum_season_limit season = {{1}, {0}};
    hilum_active_per_seed dose = active_per_seed("active");
    hilum_sown sowing = sown("sown");
    hilum_active_per_area out;
    season.used = used();
    TRY(hilum_season_limit_total(&season, dose, sowing, &out));
    return give("per_area", out.kg_per_m2);
}

static int32_t max_sowing(void) {
    hilum_season_limit season;
    hilum_active_per_seed dose = active_per_seed("active");
    hilum_sown out;
    season.limit = mass_per_area("limit");
    season.used = used();
    TRY(hilum_season_limit_max_sowing(&season, dose, &out));
    return give("sown", out.seeds_per_m2);
}

TWO(treater_flow, hilum_seed_flow_liquid, seed_flow, "seed_flow", rate_per_mass, "slurry", hilum_flow, .m3_per_s, "flow")
TWO(caught_by_volume, hilum_catch_volume, volume, "volume", time, "time", hilum_flow, .m3_per_s, "flow")
THREE(caught_by_mass, hilum_catch_mass, mass, "mass", density, "density", time, "time", hilum_flow, .m3_per_s, "flow")
TWO(deviation, hilum_flow_deviation, flow, "measured", flow, "target", double, , "difference")

static int32_t dump_flow(void) {
    hilum_mass dump = mass("dump");
    hilum_time lasts = time("time");
    hilum_seed_flow out;
    TRY(hilum_dumps_seed_flow(dump, (uint32_t)number("dumps"), lasts, &out));
    return give("seed_flow", out.kg_per_s);
}

static int32_t per_charge(void) {
    /* The cycle does not change what goes on a charge. */
    hilum_batch_treater treater = {{0}, {60}};
    hilum_rate_per_mass slurry = rate_per_mass("slurry");
    hilum_volume out;
    treater.charge = mass("charge");
    TRY(hilum_batch_treater_per_charge(&treater, slurry, &out));
    return give("volume", out.m3);
}

static int32_t correct_setting(void) {
    hilum_setting setting, out;
    hilum_flow target = flow("target"), caught = flow("caught");
    setting.number = number("setting");
    TRY(hilum_setting_corrected(setting, target, caught, &out));
    return give("setting", out.number);
}

static int32_t cells_per_seed_of(void) {
    hilum_share recovery = share("recovery");
    hilum_cells_per_seed out;
    if (measured("titre").powers.length == -3) {
        hilum_titre_per_volume titre = titre_per_volume("titre");
        hilum_rate_per_seed dose;
        if (has("rate")) {
            hilum_rate_per_mass rate = rate_per_mass("rate");
            hilum_seed_size size = seed_size("size");
            TRY(hilum_rate_per_mass_to_per_seed(rate, size, &dose));
        } else {
            dose = rate_per_seed("per_seed");
        }
        TRY(hilum_titre_per_volume_cells(titre, dose, recovery, &out));
    } else {
        hilum_titre_per_mass titre = titre_per_mass("titre");
        hilum_dry_per_seed dose;
        if (has("rate")) {
            hilum_dry_per_mass rate = dry_per_mass("rate");
            hilum_seed_size size = seed_size("size");
            TRY(hilum_dry_per_mass_to_per_seed(rate, size, &dose));
        } else {
            dose = dry_per_seed("per_seed");
        }
        TRY(hilum_titre_per_mass_cells(titre, dose, recovery, &out));
    }
    return give("cells", out.cfu_per_seed);
}

static int32_t dose_for(void) {
    hilum_share recovery = share("recovery");
    hilum_cells_per_seed cells = cells_per_seed("cells");
    if (measured("titre").powers.length == -3) {
        hilum_titre_per_volume titre = titre_per_volume("titre");
        hilum_rate_per_seed out;
        TRY(hilum_titre_per_volume_dose_for(titre, cells, recovery, &out));
        return give("per_seed", out.m3_per_seed);
    } else {
        hilum_titre_per_mass titre = titre_per_mass("titre");
        hilum_dry_per_seed out;
        TRY(hilum_titre_per_mass_dose_for(titre, cells, recovery, &out));
        return give("per_seed", out.kg_per_seed);
    }
}

static int32_t survive(hilum_survival *survival) {
    hilum_period period;
    hilum_work work[1];
    hilum_time after = time("time");
    double out;
    memset(&period, 0, sizeof period);
    if (has("at")) {
        survival->has_reference = 1;
        survival->reference = temperature("at");
        survival->z = temperature_difference("z");
        period.lasts = after;
        period.at = temperature("temperature");
        period.known = 1;
    }
    TRY(hilum_survival_log10(survival, &period, work, has("at") ? 1 : 0, after, &out));
    return give("log10", out);
}

static int32_t log_linear(void) {
    hilum_survival survival;
    memset(&survival, 0, sizeof survival);
    survival.curve = HILUM_LOG_LINEAR;
    survival.reduction = decimal_reduction("d");
    return survive(&survival);
}
static int32_t weibull(void) {
    hilum_survival survival;
    memset(&survival, 0, sizeof survival);
    survival.curve = HILUM_WEIBULL;
    survival.scale = time("scale");
    survival.shape = number("shape");
    return survive(&survival);
}
static int32_t two_phase(void) {
    hilum_survival survival;
    memset(&survival, 0, sizeof survival);
    survival.curve = HILUM_TWO_PHASE;
    survival.fraction = share("fraction");
    survival.fast = decimal_reduction("fast");
    survival.reduction = decimal_reduction("slow");
    return survive(&survival);
}

static int32_t ddi_encode(void) {
    int32_t ddi = (int32_t)number("ddi"), out;
    hilum_measured value = measured("value");
    hilum_powers powers;
    TRY(hilum_ddi_powers(ddi, &powers));
    /* The dictionary has points of temperature, but no differences. */
    if ((value.is == HILUM_TEMPERATURE) != (powers.temperature == 1) || !same(value.powers, powers))
        return HILUM_WRONG_DIMENSION;
    TRY(hilum_ddi_encode(ddi, value.value, &out));
    return give("number", out);
}

static int32_t ddi_decode(void) {
    double out;
    TRY(hilum_ddi_decode((int32_t)number("ddi"), (int32_t)number("number"), &out));
    return give("value", out);
}
