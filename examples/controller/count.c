/* What one reading costs: instructions of an update of the monitor, counted by a board whose clock goes on by one
 * nanosecond for each of them (QEMU's -icount shift=0). SysTick then counts 40 of them at 25 MHz. */
#include "board.h"
#include "controller.h"

enum { FEEDS = 64, INSTRUCTIONS_A_TICK = 40, MOST_TICKS = 0xFFFFFF };

#define SYST_CSR (*(volatile uint32_t *)0xE000E010)
#define SYST_RVR (*(volatile uint32_t *)0xE000E014)
#define SYST_CVR (*(volatile uint32_t *)0xE000E018)

static hilum_monitor_64 monitor;
static int second;

static int32_t feed(void) {
    hilum_seed_reading seed = {HILUM_TOTAL, {0}, {0}};
    hilum_liquid_reading tank = {HILUM_TANK, {0}};
    hilum_time now = {second};
    hilum_report report;
    /* 4 kg/s at 325 mL/100 kg, from a tank that never ends. */
    seed.total.kg = 4.0 * second;
    tank.volume.m3 = 1000.0 - 13e-6 * second;
    second += 5;
    return hilum_monitor_64_feed(&monitor, now, &seed, &tank, &report);
}

static int32_t per_feed(void) {
    uint32_t start = SYST_CVR;
    int i;
    for (i = 0; i < FEEDS; i++)
        if (feed() != HILUM_OK) return -1;
    return (int32_t)((start - SYST_CVR) * INSTRUCTIONS_A_TICK / FEEDS);
}

int main(void) {
    hilum_monitor_setup setup = {{325e-8}, {0.05}, {HILUM_TOTAL, {1}, {0}, {8}}, {HILUM_TANK, {0.2e-3}, {1e-3}}};
    int i;
    if (hilum_monitor_64_start(&setup, &monitor) != HILUM_OK) return 2;
    SYST_RVR = MOST_TICKS;
    SYST_CVR = 0;
    SYST_CSR = 5;
    /* The window is full after 64. */
    for (i = 0; i < 2; i++) per_feed();
    board_print_number(per_feed());
    for (i = 0; i < 50; i++) per_feed();
    board_print(" ");
    board_print_number(per_feed());
    board_print("\n");
    return 0;
}
