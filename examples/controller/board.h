/* What this firmware needs of a board: a text output and an end. Here both are semihosting, as emulators and debug
 * probes understand it. */
#include <stdint.h>

void board_print(const char *text);
void board_print_number(int32_t number);
/* A value with three decimals: 3.25 is "3.250". Without printf, which would double the firmware. */
void board_print_milli(double value);
void board_exit(int code);
