/* A run of 45 minutes with three mishaps, second by second. */
#include "board.h"
#include "controller.h"
#include "world.h"

enum { FAULT = 600, REPAIR = 1000, REFILL = 1500, TOO_OLD = 2400, END = 2700, WATCH = 5 };

static world treater;
static controller control;

static void tell(int second, const char *what) {
    board_print_number(second);
    board_print(" ");
    board_print(what);
    board_print("\n");
}

static void mishaps(int second) {
    if (second == FAULT) treater.strength = 0.85, tell(second, "world: the pump loses 15 %");
    if (second == REPAIR) treater.strength = 1, tell(second, "world: the pump is well again");
    if (second == REFILL) treater.tank_kg += 20, tell(second, "world: 20 kg are filled into the tank");
}

static void watch(int second) {
    int32_t alarm = control.alarm;
    bool too_old = control.too_old;
    hilum_time now = {(double)second};
    controller_watch(&control, now, world_seed_counter_kg(&treater), world_tank_scale_kg(&treater));
    if (control.alarm != alarm)
        tell(second, control.alarm == HILUM_LOW ? "ALARM: rate low" : control.alarm == HILUM_HIGH ? "ALARM: rate high" : "rate: no alarm");
    if (control.too_old && !too_old) tell(second, "ALARM: the mix is too old");
    if (control.report.step == HILUM_LIQUID_JUMPED) tell(second, "left out: the tank's scale jumped");
    if (control.report.step == HILUM_SEED_JUMPED) tell(second, "left out: the seed counter jumped");
    if (second % 300 == 0 && control.report.window.known) {
        board_print_number(second);
        board_print(" mL/100 kg ");
        board_print_milli(control.report.window.rate.m3_per_kg * 1e8);
        board_print(" +- ");
        board_print_milli(control.report.window.explained.m3_per_kg * 1e8);
        board_print(" setting ");
        board_print_milli(treater.setting);
        board_print("\n");
    }
}

/* What was really applied, by the scale before and after. */
static int account(double start_kg, double end_kg) {
    const hilum_volume_reading start = {{start_kg / 1040}, {0.1 / 1040}}, end = {{end_kg / 1040}, {0.1 / 1040}};
    const hilum_volume_reading added[1] = {{{20.0 / 1040}, {0}}};
    const hilum_mass_reading counter = {{world_seed_counter_kg(&treater)}, {1}};
    hilum_work work[1];
    hilum_used_volume used;
    hilum_used_mass seed;
    hilum_achieved achieved;
    hilum_share tolerance = {0.05};
    double deviation;
    int32_t verdict;
    if (hilum_used_volume_from(&start, &end, added, 1, NULL, 0, work, &used) != HILUM_OK) return 3;
    if (hilum_used_mass_of_reading(&counter, &seed) != HILUM_OK) return 3;
    if (hilum_achieved_on(&used, &seed, &achieved) != HILUM_OK) return 3;
    if (hilum_achieved_deviation(&achieved, control.target, &deviation) != HILUM_OK) return 3;
    if (hilum_achieved_verdict(&achieved, control.target, tolerance, &verdict) != HILUM_OK) return 3;
    board_print("seed kg ");
    board_print_milli(counter.shown.kg);
    board_print(" deviation % ");
    board_print_milli(deviation * 100);
    board_print(verdict == HILUM_ON_TARGET ? " on target\n" : " not on target\n");
    return 0;
}

int main(void) {
    /* The mix was made so long ago that it is too old 40 minutes from now: a pot life of 24 h. */
    const hilum_time pot_life = {86400}, mixed_at = {TOO_OLD - 86400};
    double start_kg;
    int second;
    world_start(&treater);
    controller_start(&control, mixed_at, pot_life);
    start_kg = world_tank_scale_kg(&treater);
    for (second = 0; second <= END; second++) {
        mishaps(second);
        if (second % WATCH == 0) watch(second);
        treater.setting = controller_setting(&control, world_seed_flow_kg_s(&treater));
        world_second(&treater);
    }
    if (control.status != HILUM_OK) {
        board_print(hilum_status_subject(control.status));
        board_print(" ");
        board_print(hilum_status_message(control.status));
        board_print("\n");
        return 2;
    }
    if (account(start_kg, world_tank_scale_kg(&treater))) return 3;
    board_print("done\n");
    return 0;
}
