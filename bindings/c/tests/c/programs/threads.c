/* Two threads at once must get what one gets alone. */
#include <hilum.h>
#include <pthread.h>
#include <stdio.h>
#include <string.h>

enum { ROUNDS = 2000 };

/* A run of the monitor and a curve of survival, folded into one number's bits. */
static uint64_t work_of(int seed) {
    uint64_t bits = 0;
    hilum_monitor_setup setup = {{3.25e-6}, {0.05}, {HILUM_TOTAL, {1}, {0}, {7}}, {HILUM_TANK, {1e-4}, {4e-5}}};
    hilum_monitor_64 monitor;
    int i;
    if (hilum_monitor_64_start(&setup, &monitor) != HILUM_OK) return 0;
    for (i = 0; i < ROUNDS; i++) {
        hilum_seed_reading kg = {HILUM_TOTAL, {4.0 * i}, {0}};
        hilum_liquid_reading tank = {HILUM_TANK, {0.1 - 1.3e-5 * i * (1 + 1e-4 * seed)}};
        hilum_time at = {(double)i};
        hilum_report report;
        hilum_survival survival = {HILUM_WEIBULL, 0, {0}, {0}, {0}, {86400.0 * 30}, 0.7, {0}, {0}};
        double log10;
        uint64_t part;
        if (tank.volume.m3 < 0) tank.volume.m3 = 0;
        if (hilum_monitor_64_feed(&monitor, at, &kg, &tank, &report) != HILUM_OK) return 0;
        if (hilum_survival_log10(&survival, NULL, NULL, 0, at, &log10) != HILUM_OK) return 0;
        memcpy(&part, &report.window.rate.m3_per_kg, sizeof part);
        bits = bits * 31 + part;
        memcpy(&part, &log10, sizeof part);
        bits = bits * 31 + part;
    }
    return bits;
}

static void *thread(void *of) {
    uint64_t *result = (uint64_t *)of;
    *result = work_of((int)*result);
    return NULL;
}

int main(void) {
    uint64_t alone[2], together[2] = {1, 2};
    pthread_t threads[2];
    alone[0] = work_of(1);
    alone[1] = work_of(2);
    if (pthread_create(&threads[0], NULL, thread, &together[0])) return 2;
    if (pthread_create(&threads[1], NULL, thread, &together[1])) return 2;
    pthread_join(threads[0], NULL);
    pthread_join(threads[1], NULL);
    if (alone[0] == 0 || alone[0] == alone[1]) return 3;
    if (alone[0] != together[0] || alone[1] != together[1]) return 4;
    puts("0 failed");
    return 0;
}
