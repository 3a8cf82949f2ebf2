#include "controller.h"

/* Keeps the first error. */
static bool ok(controller *it, int32_t status) {
    if (it->status == HILUM_OK) it->status = status;
    return it->status == HILUM_OK;
}

static void start_curve(controller *it) {
    /* Caught by volume for 60 s at three settings: mL. */
    static const double settings[3] = {20, 50, 80}, milliliters[3] = {310, 760, 1210};
    hilum_curve_point catches[3];
    hilum_work work[3];
    int i;
    for (i = 0; i < 3; i++) {
        hilum_volume caught;
        hilum_time lasted = {60};
        catches[i].setting.number = settings[i];
        if (ok(it, hilum_volume_from(milliliters[i], HILUM_ML, &caught)))
            ok(it, hilum_catch_volume(caught, lasted, &catches[i].flow));
    }
    if (it->status == HILUM_OK) ok(it, hilum_pump_curve_through(catches, work, 3, &it->curve));
}

void controller_start(controller *it, hilum_time mixed_at, hilum_time pot_life) {
    hilum_monitor_setup setup = {{0}, {0}, {HILUM_TOTAL, {1}, {0}, {8}}, {HILUM_TANK, {0}, {0}}};
    it->status = HILUM_OK;
    it->alarm = HILUM_ON_TARGET;
    it->calm = 0;
    it->too_old = false;
    it->use_by.s = mixed_at.s + pot_life.s;
    ok(it, hilum_rate_per_mass_from(325, HILUM_ML, 100, HILUM_KG, &it->target));
    ok(it, hilum_density_from(1.04, HILUM_KG, 1, HILUM_L, &it->density));
    start_curve(it);
    setup.target = it->target;
    ok(it, hilum_share_from(5, HILUM_PERCENT, &setup.tolerance));
    /* The scale shows tenths of a kilogram and trembles by another half: together two tenths. */
    ok(it, hilum_volume_from(0.2 / 1.04, HILUM_L, &setup.liquid.resolution));
    ok(it, hilum_flow_from(2, HILUM_L, 1, HILUM_MIN, &setup.liquid.most));
    if (it->status == HILUM_OK) ok(it, hilum_monitor_64_start(&setup, &it->monitor));
}

double controller_setting(controller *it, double seed_kg_s) {
    hilum_seed_flow seed = {seed_kg_s};
    hilum_flow wanted;
    hilum_setting setting;
    int32_t reach;
    if (it->status != HILUM_OK || seed_kg_s <= 0) return 0;
    if (!ok(it, hilum_seed_flow_liquid(seed, it->target, &wanted))) return 0;
    if (!ok(it, hilum_pump_curve_setting(&it->curve, wanted, &reach, &setting))) return 0;
    /* Beyond what was caught nobody knows what the pump delivers: the nearest that was. */
    return reach == HILUM_WITHIN ? setting.number : reach == HILUM_TOO_SLOW ? 20 : 80;
}

void controller_watch(controller *it, hilum_time now, double seed_kg, double tank_kg) {
    hilum_seed_reading seed = {HILUM_TOTAL, {0}, {0}};
    hilum_liquid_reading tank = {HILUM_TANK, {0}};
    hilum_report report;
    it->too_old = now.s >= it->use_by.s;
    if (it->status != HILUM_OK) return;
    seed.total.kg = seed_kg;
    tank.volume.m3 = tank_kg / it->density.kg_per_m3;
    if (!ok(it, hilum_monitor_64_feed(&it->monitor, now, &seed, &tank, &report))) return;
    it->report = report;
    if (report.window.verdict == HILUM_LOW || report.window.verdict == HILUM_HIGH) {
        it->alarm = report.window.verdict;
        it->calm = 0;
    } else if (++it->calm >= CALM) {
        it->alarm = HILUM_ON_TARGET;
    }
}
