#include "world.h"

enum { DENSITY = 1040 };

/* -1 to 1, the same on every run. */
static double tremble(world *it) {
    it->noise = it->noise * 1664525u + 1013904223u;
    return ((double)(it->noise >> 8) / 8388608.0) - 1.0;
}

void world_start(world *it) {
    it->setting = 0;
    it->strength = 1;
    it->seed_kg = 0;
    it->seed_kg_s = 4;
    it->tank_kg = 40;
    it->noise = 20250317u;
}

void world_second(world *it) {
    /* 10 mL/min, and 15 for each step of the setting: the pump's own line. */
    double m3_s = (10 + 15 * it->setting) * 1e-6 / 60 * it->strength;
    /* The flow of seed is drawn back to 4 kg/s and pushed about. */
    it->seed_kg_s += 0.05 * (4 - it->seed_kg_s) + 0.12 * tremble(it);
    it->seed_kg += it->seed_kg_s;
    it->tank_kg -= m3_s * DENSITY;
}

static double shown(double value, double step) { return step * (double)(int32_t)(value / step + 0.5); }

double world_seed_counter_kg(const world *it) { return shown(it->seed_kg, 1); }
double world_seed_flow_kg_s(const world *it) { return shown(it->seed_kg_s, 0.02); }
double world_tank_scale_kg(world *it) { return shown(it->tank_kg + 0.05 * tremble(it), 0.1); }
