/* The controller: sets the pump from the flow of seed, watches the rate, and raises alarms. */
#include <hilum.h>

typedef struct {
    hilum_rate_per_mass target;
    hilum_pump_curve curve;
    hilum_density density;
    hilum_time use_by;
    hilum_monitor_64 monitor;
    hilum_report report;
    int32_t alarm;   /* HILUM_LOW or HILUM_HIGH while the rate is off, else HILUM_ON_TARGET */
    int calm;        /* readings since the rate was last off */
    bool too_old;    /* the pot life is over */
    int32_t status;  /* the first error; the pump stands still then */
} controller;

/* An alarm ends after so many readings without one: it does not flicker at the border of the tolerance. */
enum { CALM = 24 };

/* From what the label and a catch test say. */
void controller_start(controller *it, hilum_time mixed_at, hilum_time pot_life);
/* The pump's setting for a flow of seed; 0 when there is none. */
double controller_setting(controller *it, double seed_kg_s);
/* What the sensors show, now and then. */
void controller_watch(controller *it, hilum_time now, double seed_kg, double tank_kg);
