/* From reset to main. */
#include "board.h"
#include <stdint.h>

extern uint32_t data_start, data_end, data_load, bss_start, bss_end, stack_top;
int main(void);
void reset(void);
static void fault(void);

__attribute__((section(".vectors"), used)) static void *const vectors[16] = {
    &stack_top, (void *)reset, (void *)fault, (void *)fault, (void *)fault, (void *)fault,
};

void reset(void) {
    uint32_t *from = &data_load, *to;
#ifdef __ARM_FP
    /* The floating-point unit is off after reset: allow coprocessors 10 and 11. */
    *(volatile uint32_t *)0xE000ED88 |= 0xFu << 20;
    __asm volatile("dsb\n\tisb");
#endif
    for (to = &data_start; to < &data_end;) *to++ = *from++;
    for (to = &bss_start; to < &bss_end;) *to++ = 0;
    board_exit(main());
}

static void fault(void) {
    board_print("fault\n");
    board_exit(99);
}
