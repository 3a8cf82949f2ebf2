/* The processor's time of this thread: what other programs take of the machine does not count. */
#define _POSIX_C_SOURCE 200809L
#include <time.h>

double thread_seconds(void);

double thread_seconds(void) {
    struct timespec now;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}
