/* A treating shed's questions, answered by hand as told beside each. */
#include "check.h"

/* Equal but for the last digits. */
static bool near(double got, double wanted) {
    double off = got > wanted ? got - wanted : wanted - got;
    return off <= 1e-12 * (wanted < 0 ? -wanted : wanted);
}

static void units_and_texts(void) {
    hilum_rate_per_mass rate, same;
    hilum_temperature cold;
    hilum_unit unit;
    hilum_word word;
    double number;
    hilum_bushel bushel = {27.2155422};
    hilum_measured measured;
    /* 325 mL per 100 kg is 3.25e-6 m3/kg. */
    OK(hilum_rate_per_mass_from(325, HILUM_ML, 100, HILUM_KG, &rate));
    CHECK(near(rate.m3_per_kg, 3.25e-6));
    OK(hilum_rate_per_mass_read("325 mL/100 kg", 13, &same));
    CHECK(same.m3_per_kg == rate.m3_per_kg);
    /* NIST SP 811: 29.5735295625 mL to the fluid ounce, 45.359237 kg to the hundredweight. */
    OK(hilum_rate_per_mass_in(rate, HILUM_FL_OZ, 1, HILUM_CWT, &number));
    CHECK(near(number, 325 / 29.5735295625 / 100 * 45.359237));
    OK(hilum_temperature_from_fahrenheit(50, &cold));
    CHECK(cold.celsius == 10);
    OK(hilum_unit_by_number(HILUM_FL_OZ, &unit));
    CHECK(strcmp(unit.symbol.text, "fl oz") == 0 && strcmp(unit.ucum.text, "[foz_us]") == 0);
    OK(hilum_powers_name(&unit.powers, &word));
    CHECK(strcmp(word.text, "volume") == 0);
    OK(hilum_text_suggestion("5 pounds", 8, &word));
    CHECK(strcmp(word.text, "lb") == 0);
    OK(hilum_text_read("2 fl oz/bu", 10, NULL, &bushel, &measured));
    CHECK(measured.is == HILUM_AMOUNT && near(measured.value, 2 * 29.5735295625e-6 / 27.2155422));
    GIVES(HILUM_BUSHEL_NOT_GIVEN, hilum_text_read("2 fl oz/bu", 10, NULL, NULL, &measured));
    GIVES(HILUM_WRONG_DIMENSION, hilum_rate_per_mass_from(1, HILUM_ML, 1, HILUM_SEEDS, &rate));
}

static void seed_and_doses(void) {
    hilum_seed_size size, low, high;
    hilum_seeds unit = {140000}, seeds;
    hilum_mass lot;
    hilum_rate_per_mass rate;
    hilum_rate_per_seed dose;
    hilum_volume amount;
    hilum_share tolerance = {0.05};
    double number;
    /* 2.5 fl oz/cwt on seed of 2800 seeds/lb is 2.5 x 140000 / 280000 = 1.25 fl oz per unit of 140000. */
    OK(hilum_seed_size_from(2800, HILUM_SEEDS, 1, HILUM_LB, &size));
    OK(hilum_rate_per_mass_from(2.5, HILUM_FL_OZ, 1, HILUM_CWT, &rate));
    OK(hilum_rate_per_mass_to_per_seed(rate, size, &dose));
    OK(hilum_rate_per_seed_to_unit(dose, unit, &amount));
    OK(hilum_volume_in(amount, HILUM_FL_OZ, &number));
    CHECK(near(number, 1.25));
    /* Iowa State University Agron 212: 60 lb at 2200 seeds/lb are 132000 seeds. */
    OK(hilum_seed_size_from(2200, HILUM_SEEDS, 1, HILUM_LB, &size));
    OK(hilum_mass_from(60, HILUM_LB, &lot));
    OK(hilum_seed_size_count_in(size, lot, &seeds));
    CHECK(near(seeds.seeds, 132000));
    OK(hilum_seed_size_within(size, tolerance, &low, &high));
    CHECK(near(low.seeds_per_kg, 0.95 * size.seeds_per_kg) && near(high.seeds_per_kg, 1.05 * size.seeds_per_kg));
    size.seeds_per_kg = 0;
    GIVES(1000 * HILUM_OF_SEED_SIZE + HILUM_NOT_POSITIVE, hilum_seed_size_count_in(size, lot, &seeds));
    CHECK(HILUM_KIND(3101) == HILUM_NOT_POSITIVE && HILUM_OF(3101) == HILUM_OF_SEED_SIZE);
}

static void packs_and_mixes(void) {
    const hilum_pack_size sizes[2] = {{{4000}, 0, HILUM_NO_LIMIT}, {{3000}, 0, HILUM_NO_LIMIT}};
    hilum_choice choice;
    hilum_mass need = {11000};
    hilum_rate_per_mass products[1], product;
    hilum_water water = {{0}, HILUM_WATER_UP_TO};
    const hilum_mix_part parts[2] = {{{0.64}, {1250}}, {{0.36}, {HILUM_WATER_KG_PER_M3}}};
    hilum_density density;
    hilum_slurry slurry;
    hilum_share share;
    uint64_t cases;
    /* 11 t out of sets for 4 t and 3 t: 4 + 4 + 3 leaves nothing over. */
    OK(hilum_pack_choose(need, sizes, 2, HILUM_LEAST_LEFTOVER, &choice));
    CHECK(choice.sets[0] == 2 && choice.sets[1] == 1 && choice.sets[2] == 0 && choice.leftover.kg == 0);
    CHECK(choice.proof == HILUM_PROVEN && choice.supply == HILUM_ENOUGH);
    GIVES(HILUM_SIZES_OF_PACK, hilum_pack_choose(need, NULL, 0, HILUM_LEAST_LEFTOVER, &choice));
    OK(hilum_pack_cases(5, 2, &cases));
    CHECK(cases == 3);
    /* 3.2 of 5.0 fl oz/cwt is 64 %; water is the rest. */
    OK(hilum_rate_per_mass_from(3.2, HILUM_FL_OZ, 1, HILUM_CWT, &product));
    OK(hilum_rate_per_mass_from(5, HILUM_FL_OZ, 1, HILUM_CWT, &water.volume));
    products[0] = product;
    OK(hilum_slurry_of(products, 1, &water, &slurry));
    OK(hilum_slurry_share(&slurry, product, &share));
    CHECK(near(share.one, 0.64));
    OK(hilum_slurry_water_share(&slurry, &share));
    CHECK(near(share.one, 0.36));
    /* 0.64 x 1250 + 0.36 x 998.2 = 1159.352 kg/m3. */
    OK(hilum_mix_density(parts, 2, &density));
    CHECK(near(density.kg_per_m3, 1159.352));
    water.volume.m3_per_kg /= 2;
    GIVES(1000 * HILUM_OF_MAKE_UP_TO + HILUM_TOO_LITTLE, hilum_slurry_of(products, 1, &water, &slurry));
}

static void pump_and_monitor(void) {
    /* 40 mL/min at 10 and 100 at 30 is 3 per step, from 10: 85 mL/min is at 25. */
    hilum_curve_point catches[2] = {{{10}, {0}}, {{30}, {0}}};
    hilum_work work[2];
    hilum_pump_curve curve;
    hilum_flow wanted;
    hilum_setting setting;
    int32_t reach;
    hilum_monitor_setup setup = {{3.25e-6}, {0.05}, {HILUM_TOTAL, {1}, {0}, {400 / 60.0}},
                                 {HILUM_TANK, {1e-4}, {2e-3 / 60}}};
    hilum_monitor_16 monitor;
    hilum_report report;
    int minute;
    OK(hilum_flow_from(40, HILUM_ML, 1, HILUM_MIN, &catches[0].flow));
    OK(hilum_flow_from(100, HILUM_ML, 1, HILUM_MIN, &catches[1].flow));
    OK(hilum_pump_curve_through(catches, work, 2, &curve));
    OK(hilum_flow_from(85, HILUM_ML, 1, HILUM_MIN, &wanted));
    OK(hilum_pump_curve_setting(&curve, wanted, &reach, &setting));
    CHECK(reach == HILUM_WITHIN && near(setting.number, 25));
    OK(hilum_flow_from(120, HILUM_ML, 1, HILUM_MIN, &wanted));
    OK(hilum_pump_curve_setting(&curve, wanted, &reach, &setting));
    CHECK(reach == HILUM_TOO_FAST && setting.number == 0);
    /* 250 kg/min at 358 mL/100 kg, 10 % high: after ten minutes 8950 mL have run, and 325 mL/100 kg and 5 % allow
     * 8531 mL. */
    memset(&monitor, 0, sizeof monitor);
    memset(&report, 0, sizeof report);
    OK(hilum_monitor_16_start(&setup, &monitor));
    for (minute = 0; minute <= 10; minute += 5) {
        hilum_seed_reading seed = {HILUM_TOTAL, {250.0 * minute}, {0}};
        hilum_liquid_reading tank = {HILUM_TANK, {(60000 - 895.0 * minute) * 1e-6}};
        hilum_time at = {60.0 * minute};
        OK(hilum_monitor_16_feed(&monitor, at, &seed, &tank, &report));
    }
    CHECK(report.step == HILUM_COUNTED && report.window.verdict == HILUM_HIGH && report.window.known == 1);
    CHECK(near(report.since_start.rate.m3_per_kg, 3.58e-6));
}

static void account(void) {
    /* 180.0 - 42.5 - 2.5 = 135 L on 41000 kg is 329.27 mL/100 kg, 1.3 % above 325. */
    const hilum_volume_reading start = {{0.18}, {5e-4}}, end = {{0.0425}, {5e-4}}, lost[1] = {{{0.0025}, {5e-4}}};
    const hilum_mass_reading scale = {{41000}, {20}};
    hilum_work work[1];
    hilum_used_volume used;
    hilum_used_mass seed;
    hilum_achieved achieved;
    hilum_rate_per_mass rate, target = {3.25e-6};
    hilum_share tolerance = {0.05};
    double deviation;
    int32_t verdict;
    OK(hilum_used_volume_from(&start, &end, NULL, 0, lost, 1, work, &used));
    OK(hilum_used_mass_of_reading(&scale, &seed));
    OK(hilum_achieved_on(&used, &seed, &achieved));
    OK(hilum_achieved_rate(&achieved, &rate));
    CHECK(near(rate.m3_per_kg, 0.135 / 41000));
    OK(hilum_achieved_deviation(&achieved, target, &deviation));
    CHECK(deviation > 0.0131 && deviation < 0.0132);
    OK(hilum_achieved_verdict(&achieved, target, tolerance, &verdict));
    CHECK(verdict == HILUM_ON_TARGET);
}

static void cells_and_limits(void) {
    /* D = 60 d at 10 degC, z = 20 K: 3 d at 30 degC age the cells like 30 d, so 1e6 fall to 1e5 after 3 + 30 d. */
    const hilum_survival survival = {HILUM_LOG_LINEAR, 1, {60 * 86400.0}, {0}, {0}, {0}, 0, {10}, {20}};
    const hilum_period storage[2] = {{{3 * 86400.0}, {30}, 1}, {{30 * 86400.0}, {10}, 1}};
    hilum_work work[2];
    const hilum_cells_per_seed treated = {1e6}, minimum = {1e5};
    hilum_crossing crossing;
    const hilum_life on_seed = {120 * 86400.0}, partner[1] = {{20 * 86400.0}};
    hilum_plant_by by;
    const hilum_season_limit season = {{200e-7}, {50e-7}};
    const hilum_active_per_seed active = {0.25e-6};
    const hilum_sown sown = {40};
    hilum_sown most;
    double share;
    bool metal;
    int32_t steps;
    hilum_rate_per_mass rate;
    OK(hilum_survival_crossing(&survival, treated, minimum, storage, work, 2, &crossing));
    CHECK(crossing.is == HILUM_AT && crossing.at.s > 33 * 86400.0 - 2 && crossing.at.s < 33 * 86400.0 + 2);
    OK(hilum_plant_by_of(&on_seed, partner, 1, &crossing, &by));
    CHECK(by.is == HILUM_PLANT_WITHIN && by.because == HILUM_PARTNER && by.within.s == 20 * 86400.0);
    OK(hilum_plant_by_of(NULL, NULL, 0, NULL, &by));
    CHECK(by.is == HILUM_UNLIMITED);
    /* 0.25 mg x 400000 seeds/ha is 100 g/ha; with 50 g/ha used, 150 of 200; 150 left are 600000 seeds/ha. */
    OK(hilum_season_limit_share(&season, active, sown, &share));
    CHECK(near(share, 0.75));
    OK(hilum_season_limit_max_sowing(&season, active, &most));
    CHECK(near(most.seeds_per_m2, 60));
    OK(hilum_is_metal("zinc sulphate", 13, &metal));
    CHECK(metal);
    OK(hilum_is_metal("talc", 4, &metal));
    CHECK(!metal);
    /* 1 fl oz/cwt is 652 mm3/kg to the nearest. */
    OK(hilum_rate_per_mass_from(1, HILUM_FL_OZ, 1, HILUM_CWT, &rate));
    OK(hilum_rate_per_mass_to_bus(rate, HILUM_DDI_VOLUME_PER_MASS_SETPOINT, &steps));
    CHECK(steps == 652);
    GIVES(HILUM_WRONG_DIMENSION, hilum_rate_per_mass_to_bus(rate, HILUM_DDI_TOTAL_MASS, &steps));
}

static hilum_work memory[60000];

/* Which order, need, tank or shift is at fault. */
static void bad_lines_of_a_job(hilum_batch_job job, hilum_batch_room room) {
    const hilum_batch_order orders[2] = {{{25000}, {4}, {0}}, {{-15000}, {4}, {900}}};
    const hilum_batch_tank no_refill[1] = {{{0.06}, {0}, {600}, {0}, NULL, 0, 7}};
    const hilum_batch_tank small[1] = {{{0.06}, {0.07}, {600}, {0}, NULL, 0, HILUM_WHEN_EMPTY}};
    const hilum_batch_shift shifts[2] = {{{0}, {36000}}, {{90000}, {80000}}};
    hilum_batch_job of = job;
    hilum_batch_summary summary;
    size_t bad = 99;
    of.orders = orders;
    GIVES(1000 * HILUM_OF_BATCH_MASS + HILUM_BATCH_VALUE, hilum_batch_plan(&of, &room, &summary, &bad));
    CHECK(bad == 1);
    GIVES(1000 * HILUM_OF_BATCH_MASS + HILUM_BATCH_VALUE, hilum_batch_plan(&of, &room, &summary, NULL));
    of = job;
    of.shifts = shifts;
    of.n_shifts = 2;
    bad = 99;
    GIVES(1000 * HILUM_OF_BATCH_SHIFT + HILUM_BATCH_VALUE, hilum_batch_plan(&of, &room, &summary, &bad));
    CHECK(bad == 1);
    of = job;
    of.tanks = no_refill;
    bad = 99;
    GIVES(HILUM_NO_SUCH_CHOICE, hilum_batch_plan(&of, &room, &summary, &bad));
    CHECK(bad == 0);
    of.tanks = small;
    bad = 99;
    CHECK(hilum_batch_plan(&of, &room, &summary, &bad) != HILUM_OK && bad == 0);
    of = job;
    of.n_needs = 1;
    bad = 99;
    GIVES(HILUM_BATCH_NEEDS, hilum_batch_plan(&of, &room, &summary, &bad));
    CHECK(bad == 99);
}

static void batches(void) {
    /* 60 L at 5 mL/kg is 12 t; 40 t in tanks of 60 L take 4 mixes at the least: 200 L / 60 L. */
    const hilum_batch_order orders[2] = {{{25000}, {4}, {0}}, {{15000}, {4}, {900}}};
    const hilum_batch_need needs[2] = {{{5e-6}, 0, 1}, {{5e-6}, 0, 1}};
    const hilum_batch_tank tanks[1] = {{{0.06}, {0}, {600}, {0}, NULL, 0, HILUM_WHEN_EMPTY}};
    const hilum_batch_shift shifts[1] = {{{0}, {36000}}};
    const hilum_batch_job job = {orders, 2, tanks, 1, needs, 2, shifts, 1};
    hilum_batch_mix mixes[10];
    hilum_batch_portion portions[20];
    hilum_batch_room room = {NULL, 0, NULL, 0, NULL, 0, NULL, 0, 0};
    hilum_batch_first firsts[2];
    hilum_batch_summary summary;
    double mixed = 0, treated = 0;
    size_t i;
    GIVES(HILUM_ROOM_TOO_SMALL, hilum_batch_plan(&job, &room, &summary, NULL));
    CHECK(room.n_work > 0 && room.n_work < 100);
    GIVES(HILUM_NULL, hilum_batch_plan(&job, &room, &summary, NULL));
    room.work = memory;
    GIVES(HILUM_ROOM_TOO_SMALL, hilum_batch_plan(&job, &room, &summary, NULL));
    CHECK(room.n_work > 100 && room.n_work < 60000);
    GIVES(HILUM_ROOM_TOO_SMALL, hilum_batch_plan(&job, &room, &summary, NULL));
    CHECK(room.n_mixes == 4 && room.n_portions >= 5);
    room.n_work = 60000;
    room.mixes = mixes;
    room.n_mixes = 10;
    room.portions = portions;
    room.n_portions = 20;
    room.firsts = firsts;
    OK(hilum_batch_plan(&job, &room, &summary, NULL));
    CHECK(room.n_mixes == 4 && summary.all_treated == 1 && summary.has_finish == 1);
    CHECK(near(summary.treated.kg, 40000));
    /* The first seed runs once the first mix is ready; the second order's not before 25 t at 4 kg/s and two mixes. */
    CHECK(firsts[0].known == 1 && firsts[0].at.s == 600);
    CHECK(firsts[1].known == 1 && firsts[1].at.s >= 25000 / 4.0 + 2 * 600);
    for (i = 0; i < room.n_mixes; i++) {
        mixed += mixes[i].mixed.m3;
        CHECK(mixes[i].tank == 0 && mixes[i].number == i + 1 && mixes[i].mixed.m3 <= 0.06 * (1 + 1e-9));
    }
    for (i = 0; i < room.n_portions; i++) treated += portions[i].mass.kg;
    CHECK(near(mixed, 0.2) && near(treated, 40000));
    bad_lines_of_a_job(job, room);
}

static void many_at_once(void) {
    const double pounds[3] = {50, 100, 0.1};
    const hilum_seed_size sizes[3] = {{6000}, {7000}, {8000}};
    hilum_mass masses[3], one;
    hilum_seeds seeds[3], count;
    hilum_volume volumes[3];
    hilum_rate_per_mass rate = {3.25e-6};
    double back[3];
    size_t bad = 99, i;
    OK(hilum_mass_from_n(pounds, HILUM_LB, masses, 3, &bad));
    OK(hilum_seed_size_count_in_n(sizes, masses, seeds, 3, NULL));
    OK(hilum_rate_per_mass_needed_n(rate, masses, volumes, 3, NULL));
    OK(hilum_mass_in_n(masses, HILUM_LB, back, 3, &bad));
    /* The same bits as one by one. */
    for (i = 0; i < 3; i++) {
        hilum_volume volume;
        OK(hilum_mass_from(pounds[i], HILUM_LB, &one));
        OK(hilum_seed_size_count_in(sizes[i], one, &count));
        OK(hilum_rate_per_mass_needed(rate, one, &volume));
        CHECK(one.kg == masses[i].kg && count.seeds == seeds[i].seeds && volume.m3 == volumes[i].m3);
        CHECK(near(back[i], pounds[i]));
    }
    CHECK(bad == 99);
    /* One bad element: told, and nothing is written. */
    masses[1].kg = 0;
    volumes[0].m3 = volumes[2].m3 = 7;
    GIVES(1000 * HILUM_OF_SEED_MASS + HILUM_NOT_POSITIVE, hilum_rate_per_mass_needed_n(rate, masses, volumes, 3, &bad));
    CHECK(bad == 1 && volumes[0].m3 == 7 && volumes[2].m3 == 7);
    OK(hilum_rate_per_mass_needed_n(rate, NULL, NULL, 0, NULL));
}

int main(void) {
    units_and_texts();
    seed_and_doses();
    packs_and_mixes();
    pump_and_monitor();
    account();
    cells_and_limits();
    batches();
    many_at_once();
    printf("%d failed\n", failed);
    return failed != 0;
}
