/* The treater that is controlled, simulated second by second: seed that does not flow evenly, a pump, a tank on a
 * scale that trembles and shows tenths. */
#include <stdbool.h>
#include <stdint.h>

typedef struct {
    double setting;     /* where the pump is set */
    double strength;    /* what the pump delivers of what its curve says; 1 when it is well */
    double seed_kg;     /* seed so far */
    double seed_kg_s;   /* flow of seed */
    double tank_kg;     /* what is in the tank, really */
    uint32_t noise;     /* state of the noise */
} world;

void world_start(world *it);
/* One second. */
void world_second(world *it);
/* What the sensors show. */
double world_seed_counter_kg(const world *it);
double world_seed_flow_kg_s(const world *it);
double world_tank_scale_kg(world *it);
