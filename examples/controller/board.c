#include "board.h"

enum { SYS_WRITE0 = 0x04, SYS_EXIT_EXTENDED = 0x20, APPLICATION_EXIT = 0x20026 };

static void semihost(int operation, const void *argument) {
    register int r0 __asm("r0") = operation;
    register const void *r1 __asm("r1") = argument;
    __asm volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
}

void board_print(const char *text) { semihost(SYS_WRITE0, text); }

void board_print_number(int32_t number) {
    char text[12];
    char *at = text + sizeof text - 1;
    uint32_t rest = number < 0 ? 0u - (uint32_t)number : (uint32_t)number;
    *at = 0;
    do *--at = (char)('0' + rest % 10);
    while (rest /= 10);
    if (number < 0) *--at = '-';
    board_print(at);
}

void board_print_milli(double value) {
    int32_t milli = (int32_t)(value * 1000 + (value < 0 ? -0.5 : 0.5));
    int32_t part = milli % 1000;
    if (part < 0) part = -part;
    if (milli < 0 && milli > -1000) board_print("-");
    board_print_number(milli / 1000);
    board_print(part < 10 ? ".00" : part < 100 ? ".0" : ".");
    board_print_number(part);
}

void board_exit(int code) {
    const uint32_t block[2] = {APPLICATION_EXIT, (uint32_t)code};
    semihost(SYS_EXIT_EXTENDED, block);
    for (;;) {
    }
}
