/* Is the linked arithmetic of doubles the IEEE one, to the last bit? Sums, products, quotients and comparisons of
 * numbers that go wrong first: zeros of both signs, numbers below the normal ones, halves of the last digit, infinity,
 * what is no number, and many at random. It prints one number; a desktop computer must print the same. */
#include <stdint.h>
#include <string.h>

enum { RANDOM = 4000 };

static const uint64_t SPECIAL[] = {
    0, 1, 2, 0x000FFFFFFFFFFFFF, 0x0010000000000000, 0x0010000000000001, 0x001FFFFFFFFFFFFF, 0x0020000000000000,
    0x3CA0000000000000, 0x3CA0000000000001, 0x3CAFFFFFFFFFFFFF, 0x3CB0000000000000, 0x3FE0000000000000, 0x3FEFFFFFFFFFFFFF,
    0x3FF0000000000000, 0x3FF0000000000001, 0x3FF8000000000000, 0x4008000000000000, 0x4330000000000000, 0x4330000000000001,
    0x4340000000000000, 0x7FE0000000000000, 0x7FEFFFFFFFFFFFFF, 0x7FF0000000000000, 0x7FF8000000000000, 0x7FF0000000000001,
};
enum { SPECIALS = sizeof SPECIAL / sizeof SPECIAL[0] };

static uint64_t hash = 0xCBF29CE484222325;

static void take(uint64_t bits) {
    hash = (hash ^ bits) * 0x100000001B3;
}

static void take_double(double value) {
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    /* Which of the many bit patterns says "no number" is open. */
    take(value != value ? 0x7FF8000000000000 : bits);
}

static double of(uint64_t bits) {
    double value;
    memcpy(&value, &bits, sizeof value);
    return value;
}

static void both(uint64_t one, uint64_t other) {
    volatile double a = of(one), b = of(other);
    take_double(a + b);
    take_double(a - b);
    take_double(a * b);
    take_double(a / b);
    take((uint64_t)((a < b) | (a <= b) << 1 | (a > b) << 2 | (a >= b) << 3 | (a == b) << 4 | (a != b) << 5));
}

static uint64_t next(void) {
    static uint64_t state = 0x9E3779B97F4A7C15;
    state ^= state << 13;
    state ^= state >> 7;
    state ^= state << 17;
    return state;
}

int main(void) {
    const uint64_t sign = 0x8000000000000000;
    int i, k;
    for (i = 0; i < 2 * SPECIALS; i++)
        for (k = 0; k < 2 * SPECIALS; k++)
            both(SPECIAL[i / 2] | (i & 1 ? sign : 0), SPECIAL[k / 2] | (k & 1 ? sign : 0));
    for (i = 0; i < RANDOM; i++) {
        uint64_t a = next(), near = 0x3FF0000000000000 | a >> 12;
        both(a, next());
        both(near, 0x3FF0000000000000 | next() >> 12);
        /* The same but for the last digits: what is left of a difference. */
        both(near, near ^ (next() & 7));
    }
    print_number((int32_t)(hash >> 33));
    return 0;
}
