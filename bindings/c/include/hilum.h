/*
 * hilum.h - seed treatment calculations for C
 *
 * How much seed is it, what does the label's dose come to, which packs to open, what goes into
 * which tank, how fast to pump, how long a mix is good, how many living cells are left on planting
 * day, whether a limit of the label is met, and what was really applied.
 *
 * Results are sums and products of what you enter. The label, local codes and licensed practice
 * come first. Counts of living cells are estimates, not a promise of potency. Treated seed is not
 * food, feed or oil.
 *
 * This file is generated from the sources of the library; do not edit it.
 *
 *
 * CONVENTIONS
 *
 * Quantities. Every quantity is a structure of one double whose field names its unit: hilum_mass
 * is { double kg; }. A dose per seed is not a dose per mass: the compiler refuses one where the
 * other is wanted. Fill a field, or convert from any unit of the list below, or read a text:
 *
 *     hilum_rate_per_mass rate;
 *     hilum_mass seed = { 50000 };
 *     hilum_volume product;
 *     int32_t status = hilum_rate_per_mass_from(325, HILUM_ML, 100, HILUM_KG, &rate);
 *     if (status == HILUM_OK) status = hilum_rate_per_mass_needed(rate, seed, &product);
 *     if (status != HILUM_OK)
 *         fprintf(stderr, "%s %s\n", hilum_status_subject(status), hilum_status_message(status));
 *
 * Structures of one field are passed by value, all others by pointer.
 *
 * Status. A function returns HILUM_OK (0), or a positive number: its last three digits are the
 * kind of error (below), the digits before them say which number was at fault (HILUM_OF_SEED_SIZE
 * and so on; 0 when none in particular). 3101 is HILUM_NOT_POSITIVE of the seed size. Compare
 * HILUM_KIND(status), not status, with a kind. Kinds are grouped: 1 to 99 the call, 100 to 199 a
 * value, 200 to 299 a text, 300 to 399 batch planning, 400 to 499 documents. Numbers are never
 * reused.
 *
 * Results. Pointers to results come last. They are written only on success; on any error what they
 * point to is untouched. Three exceptions are said where they apply: what is needed, after
 * HILUM_ROOM_TOO_SMALL; the first bad element of a list; the problems of a refused document.
 *
 * Values. Every value is checked where it is used: it must be finite, and 0 or within 1e-30 to
 * 1e30 base units. No NaN comes in, no NaN comes out. Choices (HILUM_LEAST_COST) are int32_t and
 * checked as well. Yes and no come out as bool.
 *
 * Pointers. NULL gives HILUM_NULL, unless a pointer is said to be optional. A list is a pointer
 * and a number of items; NULL will do for none. A text is a pointer and a number of bytes in
 * UTF-8; it need not end in NUL. A pointer that is not NULL must point to as many items as said,
 * and results must not overlap one another or what is read.
 *
 * Rows. Functions that end in _rows take the columns of a table: n values each. Every row is on its own: its
 * status goes to codes, its result to out, or 0 where the row is refused. They return an error only when
 * no row could be looked at, and have then written nothing.
 *
 * Memory. Nothing is allocated, nothing is kept: the library has no state. What it needs beyond
 * the stack, you give it: hilum_work is working memory for one item of a list. The fields called
 * opaque hold what only the library understands; fill such a structure with the function that
 * makes it (else: HILUM_NOT_MADE). You may copy it.
 *
 * Threads. Every function may be called from any thread and any interrupt at any time; two calls
 * must only not share what one of them writes.
 *
 * Numbers. The results are the same bits on every machine with IEEE 754 doubles, and the same as
 * in every other language of this library.
 *
 * Versions. HILUM_VERSION is that of this file, hilum_version() that of the library that runs. The
 * project follows semantic versioning: from 0.x to 0.x+1 anything may change; from 1.0 on,
 * functions, structures, numbers and their meaning stay within a major version, and the shared
 * library's soname changes with it.
 */
#ifndef HILUM_H_INCLUDED
#define HILUM_H_INCLUDED

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The version of this header; hilum_version() is that of the library. */
#define HILUM_VERSION "0.1.0"
#define HILUM_VERSION_MAJOR 0
#define HILUM_VERSION_MINOR 1
#define HILUM_VERSION_PATCH 0
#define HILUM_VERSION_NUMBER 100

#ifdef __cplusplus
extern "C" {
#endif

/* ==== What a function returned, and which version it is =================================================== */

/* The kind of a status: what went wrong. */
#define HILUM_KIND(status) ((status) % 1000)
/* Which number it speaks of; 0 when none in particular. */
#define HILUM_OF(status) ((status) / 1000)

#define HILUM_OK 0 /* no error */
#define HILUM_NULL 1 /* a pointer that is needed is NULL */
#define HILUM_NO_SUCH_UNIT 2 /* there is no unit of this number */
#define HILUM_NO_SUCH_CHOICE 3 /* there is no choice of this number */
#define HILUM_NOT_UTF8 4 /* the text is not UTF-8 */
#define HILUM_TOO_LONG 5 /* a list or a text is longer than any memory */
#define HILUM_ROOM_TOO_SMALL 6 /* there is too little room for the result; what is needed was written */
#define HILUM_NOT_MADE 7 /* the structure was not made by the function that makes it */
#define HILUM_NO_SUCH_DDI 8 /* there is no data dictionary entry of this number here */
#define HILUM_NO_SUCH_INDEX 9 /* the index is beyond the end */
#define HILUM_UNKNOWN 99 /* refused for a reason that this version of the C library has no number for */
#define HILUM_NOT_FINITE 100 /* must be a finite number */
#define HILUM_NOT_POSITIVE 101 /* must be more than 0 */
#define HILUM_NEGATIVE 102 /* must not be negative */
#define HILUM_OUT_OF_RANGE 103 /* must lie within 1e-30 and 1e30 base units */
#define HILUM_NOT_A_SHARE 104 /* must lie within 0 % and 100 % (1 = 100 %) */
#define HILUM_BELOW_ABSOLUTE_ZERO 105 /* must be at or above absolute zero (-273.15 degC) */
#define HILUM_MORE_THAN 106 /* must not be more than the number that bounds it */
#define HILUM_TOO_FEW 107 /* more of them are needed */
#define HILUM_ALL_EQUAL 108 /* must differ, but all are the same */
#define HILUM_NOT_FALLING 109 /* must fall with time */
#define HILUM_TOO_LITTLE 110 /* must be at least what the others come to */
#define HILUM_ONE_SETTING 111 /* a pump curve of several catches needs two different settings */
#define HILUM_NOT_RISING 112 /* the flow of a pump must rise with its setting */
#define HILUM_SIZES_OF_PACK 113 /* a choice is made among 1 to 8 sizes of pack */
#define HILUM_TOO_MANY_SETS 114 /* so many sets cannot be counted; look at the coverage of a set and the mass of seed */
#define HILUM_NOT_FOR_THE_BUS 115 /* is more steps than the data dictionary entry carries, or less than half a step */
#define HILUM_NEEDED 116 /* is needed here */
#define HILUM_EMPTY 200 /* the text is empty; write a number, a space and a unit, as in "2.5 fl oz/cwt" */
#define HILUM_NOT_A_NUMBER 201 /* the text does not begin with a number */
#define HILUM_NUMBER_FORM 202 /* the number has a form that is not read; write it as 0.5, 5 or 1e5 */
#define HILUM_COMMA 203 /* there is a comma in the number; write 1000 or 1_000, and a point for decimals */
#define HILUM_SPACE_IN_NUMBER 204 /* there is a space in the number; write 140000 or 140_000 */
#define HILUM_NO_SPACE 205 /* a space is needed between number and unit, and the number in full (140000000, not 140M) */
#define HILUM_NUMBER_TOO_LONG 206 /* the number has more than 100 characters */
#define HILUM_TOO_LARGE 207 /* the number is too large to calculate with */
#define HILUM_TEXT_NOT_FINITE 208 /* the text is not a finite number; write a number, a space and a unit */
#define HILUM_NO_UNIT 209 /* there is no unit; write a number, a space and a unit, as in "2.5 fl oz/cwt" */
#define HILUM_BARE_OUNCE 210 /* a bare "oz" may be weight or volume; write "oz av" (weight) or "fl oz" (volume) */
#define HILUM_TON 211 /* there are several tons; write t (1000 kg), or 2000 lb for a US short ton */
#define HILUM_UNKNOWN_UNIT 212 /* the unit is unknown; hilum_text_suggestion tells what may have been meant */
#define HILUM_TWO_LINES 213 /* there is more than one /; write one unit over one other */
#define HILUM_BELOW_THE_LINE 214 /* the number below the line must be more than 0 */
#define HILUM_UNIT_FORM 215 /* the unit has a form that is not read; write a, a/b, a/100 b, or UCUM a/(100.b) */
#define HILUM_UNIT_NOT_GIVEN 216 /* it is per unit, but it is not said how many seeds a unit is */
#define HILUM_BUSHEL_NOT_GIVEN 217 /* it is per bushel, but it is not said what a bushel weighs */
#define HILUM_TEMPERATURE_POINT 218 /* it is a temperature, but an amount is needed (a difference is written in K) */
#define HILUM_NOT_A_TEMPERATURE 219 /* it is not a temperature; write degC or degF */
#define HILUM_WRONG_DIMENSION 220 /* the unit measures something else than is needed here */
#define HILUM_BATCH_VALUE 300 /* cannot be that */
#define HILUM_BATCH_NEEDS 301 /* there must be one need per order and tank */
#define HILUM_BATCH_TOO_MANY 302 /* there are more than the planner takes, or than there is room for */
#define HILUM_BATCH_TANK_TOO_SMALL 303 /* a tank is too small: its smallest set does not fit, or only fills its lines */
#define HILUM_BATCH_WORK 304 /* the planner was given less working memory than it asked for */
#define HILUM_REFUSED 400 /* the document is refused; the problems were written instead of the result */

#define HILUM_OF_SEED_MASS 1 /* the mass of seed */
#define HILUM_OF_SEEDS 2 /* the number of seeds */
#define HILUM_OF_SEED_SIZE 3 /* the seed size */
#define HILUM_OF_THOUSAND_SEED_MASS 4 /* the mass of a thousand seeds */
#define HILUM_OF_SIZE_TOLERANCE 5 /* the tolerance of the seed size */
#define HILUM_OF_SEED_UNIT 6 /* the seed unit */
#define HILUM_OF_BUSHEL 7 /* the bushel */
#define HILUM_OF_SHARE 8 /* the share */
#define HILUM_OF_GERMINATION 9 /* the germination */
#define HILUM_OF_EMERGENCE 10 /* the emergence */
#define HILUM_OF_SOWN 11 /* the seeds sown per area */
#define HILUM_OF_SOWING_RATE 12 /* the sowing rate */
#define HILUM_OF_AREA 13 /* the area */
#define HILUM_OF_RATE_PER_MASS 14 /* the rate per mass of seed */
#define HILUM_OF_RATE_PER_BUSHEL 15 /* the rate per bushel */
#define HILUM_OF_RATE_PER_SEED 16 /* the rate per seed */
#define HILUM_OF_RATE_PER_UNIT 17 /* the rate per unit */
#define HILUM_OF_RATE_PER_AREA 18 /* the rate per area */
#define HILUM_OF_PRODUCT_AMOUNT 19 /* the amount of product */
#define HILUM_OF_DENSITY 20 /* the density */
#define HILUM_OF_DURATION 21 /* the duration */
#define HILUM_OF_TEMPERATURE 22 /* the temperature */
#define HILUM_OF_ACTIVE_CONTENT 23 /* the content of active ingredient */
#define HILUM_OF_TITRE 24 /* the titre */
#define HILUM_OF_PART_OF_SET 25 /* the part's share of the set */
#define HILUM_OF_PART 26 /* the amount of the part */
#define HILUM_OF_SET 27 /* the amount of the set */
#define HILUM_OF_RECOVERY 28 /* the recovery */
#define HILUM_OF_DECIMAL_REDUCTION 29 /* the decimal reduction time */
#define HILUM_OF_FAST_REDUCTION 30 /* the fast decimal reduction time */
#define HILUM_OF_WEIBULL_SCALE 31 /* the scale of the survival curve */
#define HILUM_OF_WEIBULL_SHAPE 32 /* the shape of the survival curve */
#define HILUM_OF_REFERENCE_TEMPERATURE 33 /* the reference temperature of the survival curve */
#define HILUM_OF_Z_VALUE 34 /* the z value of the survival curve */
#define HILUM_OF_STORAGE_PERIOD 35 /* the length of the storage period */
#define HILUM_OF_STORAGE_TEMPERATURE 36 /* the storage temperature */
#define HILUM_OF_TIME_SINCE_TREATING 37 /* the time since treating */
#define HILUM_OF_READING 38 /* the reading */
#define HILUM_OF_RESOLUTION 39 /* the resolution of the reading */
#define HILUM_OF_USED 40 /* the amount used by the readings */
#define HILUM_OF_READING_TIME 41 /* the time of the reading */
#define HILUM_OF_SEED_TOTAL 42 /* the total of seed */
#define HILUM_OF_LIQUID_TOTAL 43 /* the total of liquid */
#define HILUM_OF_TANK_CONTENT 44 /* the content of the tank */
#define HILUM_OF_COUNT_TIME 45 /* the times of the counts */
#define HILUM_OF_COUNT 46 /* the count */
#define HILUM_OF_LIFE 47 /* the life on the seed */
#define HILUM_OF_COVERAGE 48 /* the seed that a set covers */
#define HILUM_OF_NEED 49 /* the seed that sets must cover */
#define HILUM_OF_COVERED 50 /* the seed that the opened sets cover */
#define HILUM_OF_PRICE 51 /* the price of a set */
#define HILUM_OF_SETS 52 /* the number of sets */
#define HILUM_OF_MIX_RATE 53 /* the rate of a product in the mix */
#define HILUM_OF_MAKE_UP_TO 54 /* the volume per mass of seed that the mix is made up to */
#define HILUM_OF_MIX_VOLUME 55 /* the volume of mix */
#define HILUM_OF_HOLD_UP 56 /* the hold-up of pump and lines */
#define HILUM_OF_MIN_FILL 57 /* the least fill of the tank */
#define HILUM_OF_MIX_SHARE 58 /* the share of a product in the mix */
#define HILUM_OF_SEED_FLOW 59 /* the flow of seed */
#define HILUM_OF_LIQUID_FLOW 60 /* the flow of liquid */
#define HILUM_OF_UTILISATION 61 /* the utilisation */
#define HILUM_OF_CHARGE 62 /* the charge of a batch treater */
#define HILUM_OF_CYCLE 63 /* the cycle of a batch treater */
#define HILUM_OF_CAUGHT_VOLUME 64 /* the volume caught */
#define HILUM_OF_CAUGHT_MASS 65 /* the mass caught */
#define HILUM_OF_CATCH_TIME 66 /* the time of the catch */
#define HILUM_OF_SETTING 67 /* the setting of the pump */
#define HILUM_OF_PUMP_CURVE 68 /* a catch of the pump curve */
#define HILUM_OF_DUMP 69 /* the mass of a dump */
#define HILUM_OF_DUMPS 70 /* the number of dumps */
#define HILUM_OF_DUMP_TIME 71 /* the time that the dumps took */
#define HILUM_OF_SEASON_LIMIT 72 /* the season's limit */
#define HILUM_OF_SEASON_USED 73 /* what the season has used */
#define HILUM_OF_BUS_VALUE 74 /* the value on the bus */
#define HILUM_OF_BATCH_ORDERS 201 /* orders */
#define HILUM_OF_BATCH_TANKS 202 /* tanks */
#define HILUM_OF_BATCH_SHIFTS 203 /* shifts */
#define HILUM_OF_BATCH_SET_SIZES 204 /* set sizes of one tank */
#define HILUM_OF_BATCH_MIXES 205 /* batches */
#define HILUM_OF_BATCH_PORTIONS 206 /* portions */
#define HILUM_OF_BATCH_SETS 207 /* sets in one batch */
#define HILUM_OF_BATCH_MASS 221 /* the seed mass of an order */
#define HILUM_OF_BATCH_SPEED 222 /* the seed speed of an order */
#define HILUM_OF_BATCH_CHANGEOVER 223 /* the changeover before an order */
#define HILUM_OF_BATCH_PER_MASS 224 /* the slurry per mass of seed of a need */
#define HILUM_OF_BATCH_LIVING 225 /* the living share of a need */
#define HILUM_OF_BATCH_CAPACITY 226 /* the capacity of a tank */
#define HILUM_OF_BATCH_HOLD_UP 227 /* the hold-up of a tank */
#define HILUM_OF_BATCH_MIXING 228 /* the mixing time of a tank */
#define HILUM_OF_BATCH_POT_LIFE 229 /* the pot life of a tank */
#define HILUM_OF_BATCH_ADDS 230 /* a set's volume of a tank */
#define HILUM_OF_BATCH_RANK 231 /* a set's rank of a tank */
#define HILUM_OF_BATCH_SHIFT 232 /* the hours of a shift */

/// What a status means, in English: "must be more than 0". Never NULL; static text.
///
/// Print hilum_status_subject before it: "the seed size" + " " + "must be more than 0".
const char *hilum_status_message(int32_t status);

/// Which number a status speaks of, in English: "the seed size". Empty when it speaks of none. Never NULL;
/// static text.
const char *hilum_status_subject(int32_t status);

/// The version of the library that runs, as HILUM_VERSION is that of the header: "0.1.0". Static text.
const char *hilum_version(void);

/// The same as one number, for comparing: 10000 x major + 100 x minor + patch, as HILUM_VERSION_NUMBER is
/// that of the header.
int32_t hilum_version_number(void);

/* ==== Working memory ====================================================================================== */

/// Working memory for one item of a list. Its contents mean nothing before and after a call.
typedef struct {
    uint64_t opaque[3];
} hilum_work;

/* ==== Units =============================================================================================== */

#define HILUM_KG 10 /* mass: 1.0 kg */
#define HILUM_G 11 /* mass: 0.001 kg */
#define HILUM_MG 12 /* mass: 1e-6 kg */
#define HILUM_UG 13 /* mass: 1e-9 kg */
#define HILUM_T 14 /* mass: 1000.0 kg */
#define HILUM_LB 20 /* mass: 0.45359237 kg */
#define HILUM_OZ_AV 21 /* mass: 0.028349523125 kg */
#define HILUM_CWT 22 /* mass: 45.359237 kg */
#define HILUM_S 30 /* time: 1.0 s */
#define HILUM_MIN 31 /* time: 60.0 s */
#define HILUM_H 32 /* time: 3600.0 s */
#define HILUM_D 33 /* time: 86400.0 s */
#define HILUM_K 40 /* temperature difference: 1.0 K */
#define HILUM_DELTA_DEGC 41 /* temperature difference: 1.0 K */
#define HILUM_DELTA_DEGF 42 /* temperature difference: 0.5555555555555556 K */
#define HILUM_SEEDS 50 /* number of seeds: 1.0 seeds */
#define HILUM_CFU 60 /* number of cells: 1.0 CFU */
#define HILUM_M2 70 /* area: 1.0 m2 */
#define HILUM_HA 71 /* area: 10000.0 m2 */
#define HILUM_FT2 72 /* area: 0.09290304 m2 */
#define HILUM_AC 73 /* area: 4046.8564224 m2 */
#define HILUM_M3 80 /* volume: 1.0 m3 */
#define HILUM_L 81 /* volume: 0.001 m3 */
#define HILUM_ML 82 /* volume: 1e-6 m3 */
#define HILUM_UL 83 /* volume: 1e-9 m3 */
#define HILUM_GAL 90 /* volume: 0.003785411784 m3 */
#define HILUM_QT 91 /* volume: 0.000946352946 m3 */
#define HILUM_PT 92 /* volume: 0.000473176473 m3 */
#define HILUM_FL_OZ 93 /* volume: 2.95735295625e-5 m3 */
#define HILUM_IMP_GAL 94 /* volume: 0.00454609 m3 */
#define HILUM_IMP_QT 95 /* volume: 0.0011365225 m3 */
#define HILUM_IMP_PT 96 /* volume: 0.00056826125 m3 */
#define HILUM_IMP_FL_OZ 97 /* volume: 2.84130625e-5 m3 */
#define HILUM_ONE 100 /* share, or mass per mass: 1.0  */
#define HILUM_PERCENT 101 /* share, or mass per mass: 0.01  */

/// What something measures, as powers of the base quantities: a dose per seed is 3 of length, -1 of seeds.
typedef struct {
    /// Of length (metre).
    int8_t length;
    /// Of mass (kilogram).
    int8_t mass;
    /// Of time (second).
    int8_t time;
    /// Of temperature difference (kelvin).
    int8_t temperature;
    /// Of number of seeds.
    int8_t seeds;
    /// Of number of cells (colony-forming unit).
    int8_t cells;
} hilum_powers;

/// A short text: UTF-8, ended by NUL.
typedef struct {
    /// The text, and NULs.
    char text[32];
} hilum_word;

/// A unit.
typedef struct {
    /// Base units (kg, m3, s, K, seeds, CFU, m2) in one of it.
    double factor;
    /// HILUM_LB and so on; never reused.
    int32_t number;
    /// What it measures.
    hilum_powers powers;
    /// As the trade writes it, and as texts are read: "fl oz".
    hilum_word symbol;
    /// Its UCUM code: "[foz_us]".
    hilum_word ucum;
} hilum_unit;

/// The unit of a number. Errors: HILUM_NO_SUCH_UNIT.
int32_t hilum_unit_by_number(int32_t number, hilum_unit *out);

/// One unit of all, counted from 0. Errors: HILUM_NO_SUCH_INDEX beyond the last.
int32_t hilum_unit_at(size_t index, hilum_unit *out);

/// What something measures, in words: "volume per seed". Errors: NULL; HILUM_WRONG_DIMENSION where the trade
/// has no name for it.
int32_t hilum_powers_name(const hilum_powers *powers, hilum_word *out);

/// What a quotient of units measures: powers - below. Errors: NULL.
int32_t hilum_powers_over(const hilum_powers *powers, const hilum_powers *below, hilum_powers *out);

/* ==== Amounts ============================================================================================= */

/// Seed or product by mass.
typedef struct {
    /// Kilograms.
    double kg;
} hilum_mass;

/// Liquid.
typedef struct {
    /// Cubic metres; 1 L is 0.001.
    double m3;
} hilum_volume;

/// A number of seeds.
typedef struct {
    /// Seeds.
    double seeds;
} hilum_seeds;

/// A number of living cells.
typedef struct {
    /// Colony-forming units.
    double cfu;
} hilum_cells;

/// Land.
typedef struct {
    /// Square metres; 1 ha is 10000.
    double m2;
} hilum_area;

/// A time that passes: pot life, storage, a catch; or an instant, since one of your choice.
typedef struct {
    /// Seconds.
    double s;
} hilum_time;

/// A difference of temperatures.
typedef struct {
    /// Kelvins.
    double kelvin;
} hilum_temperature_difference;

/// A share: purity, germination, recovery, a tolerance, a content by mass.
typedef struct {
    /// 1 is all of it; 95 % is 0.95.
    double one;
} hilum_share;

/// A mass: value x unit. 50 lb: (50, HILUM_LB, &mass).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_mass_from(double value, int32_t unit, hilum_mass *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_mass_from.
int32_t hilum_mass_in(hilum_mass mass, int32_t unit, double *out);

/// As text of length bytes: "50000 lb". Errors: the texts' (200 and up).
int32_t hilum_mass_read(const char *text, size_t length, hilum_mass *out);

/// A volume: value x unit. 2.5 gal: (2.5, HILUM_GAL, &volume).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_volume_from(double value, int32_t unit, hilum_volume *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_volume_from.
int32_t hilum_volume_in(hilum_volume volume, int32_t unit, double *out);

/// As text of length bytes: "2.5 gal". Errors: the texts' (200 and up).
int32_t hilum_volume_read(const char *text, size_t length, hilum_volume *out);

/// A number of seeds: value x unit. (140000, HILUM_SEEDS, &seeds).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_seeds_from(double value, int32_t unit, hilum_seeds *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_seeds_from.
int32_t hilum_seeds_in(hilum_seeds seeds, int32_t unit, double *out);

/// As text of length bytes: "140000 seeds". Errors: the texts' (200 and up).
int32_t hilum_seeds_read(const char *text, size_t length, hilum_seeds *out);

/// A number of cells: value x unit. (1e9, HILUM_CFU, &cells).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_cells_from(double value, int32_t unit, hilum_cells *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_cells_from.
int32_t hilum_cells_in(hilum_cells cells, int32_t unit, double *out);

/// As text of length bytes. Errors: the texts' (200 and up).
int32_t hilum_cells_read(const char *text, size_t length, hilum_cells *out);

/// An area: value x unit. 40 ac: (40, HILUM_AC, &area).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_area_from(double value, int32_t unit, hilum_area *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_area_from.
int32_t hilum_area_in(hilum_area area, int32_t unit, double *out);

/// As text of length bytes: "80 ac". Errors: the texts' (200 and up).
int32_t hilum_area_read(const char *text, size_t length, hilum_area *out);

/// A time: value x unit. 24 h: (24, HILUM_H, &time).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_time_from(double value, int32_t unit, hilum_time *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_time_from.
int32_t hilum_time_in(hilum_time time, int32_t unit, double *out);

/// As text of length bytes: "24 h". Errors: the texts' (200 and up).
int32_t hilum_time_read(const char *text, size_t length, hilum_time *out);

/// A difference of temperatures: value x unit. 18 Fahrenheit degrees: (18, HILUM_DELTA_DEGF, &difference).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_temperature_difference_from(double value, int32_t unit, hilum_temperature_difference *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_temperature_difference_from.
int32_t hilum_temperature_difference_in(hilum_temperature_difference difference, int32_t unit, double *out);

/// As text of length bytes. Errors: the texts' (200 and up).
int32_t hilum_temperature_difference_read(const char *text, size_t length, hilum_temperature_difference *out);

/// A share: value x unit. 95 %: (95, HILUM_PERCENT, &share).
///
/// Errors: a number that is not finite, or not within 0 to 1; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_share_from(double value, int32_t unit, hilum_share *out);

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_share_from.
int32_t hilum_share_in(hilum_share share, int32_t unit, double *out);

/// As text of length bytes: "5 %". Errors: the texts' (200 and up); or not within 0 to 1.
int32_t hilum_share_read(const char *text, size_t length, hilum_share *out);

/// A point on the temperature scale. Two points cannot be added; a point minus a point is a difference.
typedef struct {
    /// Degrees Celsius, so that 0 degC, 10 degC and 50 degF are exact.
    double celsius;
} hilum_temperature;

/// From degrees Celsius, looked at. Errors: a number that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
int32_t hilum_temperature_from_celsius(double celsius, hilum_temperature *out);

/// From degrees Fahrenheit: (F - 32) x 5 / 9. Errors: a number that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
int32_t hilum_temperature_from_fahrenheit(double fahrenheit, hilum_temperature *out);

/// In degrees Fahrenheit: C x 9 / 5 + 32. Errors: as for hilum_temperature_from_celsius.
int32_t hilum_temperature_fahrenheit(hilum_temperature at, double *out);

/// How much warmer one point is than another: at - than. Errors: as for hilum_temperature_from_celsius.
int32_t hilum_temperature_minus(hilum_temperature at,
                                hilum_temperature than,
                                hilum_temperature_difference *out);

/// The point so much warmer: at + by. Errors: as for hilum_temperature_from_celsius.
int32_t hilum_temperature_plus(hilum_temperature at, hilum_temperature_difference by, hilum_temperature *out);

/// As text of length bytes: "41 degF". Errors: the texts' (200 and up); HILUM_BELOW_ABSOLUTE_ZERO.
int32_t hilum_temperature_read(const char *text, size_t length, hilum_temperature *out);

/* ==== Seed size and sowing ================================================================================ */

/// How small the seed is: seeds per mass.
typedef struct {
    /// Seeds per kilogram.
    double seeds_per_kg;
} hilum_seed_size;

/// Seeds sown per area.
typedef struct {
    /// Seeds per square metre.
    double seeds_per_m2;
} hilum_sown;

/// What one seed weighs.
typedef struct {
    /// Kilograms per seed.
    double kg_per_seed;
} hilum_mass_per_seed;

/// A sowing rate by mass, or what a season may take of an active.
typedef struct {
    /// Kilograms per square metre; 1 kg/ha is 0.0001.
    double kg_per_m2;
} hilum_mass_per_area;

/// A seed size: value x unit / (per x per_unit). 2800 seeds/lb: (2800, HILUM_SEEDS, 1, HILUM_LB, &size).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_seed_size_from(double value,
                             int32_t unit,
                             double per,
                             int32_t per_unit,
                             hilum_seed_size *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_seed_size_from.
int32_t hilum_seed_size_in(hilum_seed_size size, int32_t unit, double per, int32_t per_unit, double *out);

/// As text of length bytes: "2800 seeds/lb". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_seed_size_read(const char *text,
                             size_t length,
                             hilum_seed_size *out);

/// A sowing rate: value x unit / (per x per_unit). 140000 seeds/ac: (140000, HILUM_SEEDS, 1, HILUM_AC, &sown).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_sown_from(double value,
                        int32_t unit,
                        double per,
                        int32_t per_unit,
                        hilum_sown *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_sown_from.
int32_t hilum_sown_in(hilum_sown sown, int32_t unit, double per, int32_t per_unit, double *out);

/// As text of length bytes: "140000 seeds/ac". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_sown_read(const char *text,
                        size_t length,
                        hilum_sown *out);

/// A mass per seed: value x unit / (per x per_unit). 160 mg: (160, HILUM_MG, 1, HILUM_SEEDS, &mass).
///
/// Errors: a number that is not finite, per not more than 0; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_mass_per_seed_from(double value,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 hilum_mass_per_seed *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_mass_per_seed_from.
int32_t hilum_mass_per_seed_in(hilum_mass_per_seed mass,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               double *out);

/// As text of length bytes. Errors: the texts' (200 and up).
int32_t hilum_mass_per_seed_read(const char *text, size_t length, hilum_mass_per_seed *out);

/// A mass per area: value x unit / (per x per_unit). 60 lb/ac: (60, HILUM_LB, 1, HILUM_AC, &rate).
///
/// Errors: a number that is not finite, per not more than 0; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
int32_t hilum_mass_per_area_from(double value,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 hilum_mass_per_area *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_mass_per_area_from.
int32_t hilum_mass_per_area_in(hilum_mass_per_area rate,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               double *out);

/// As text of length bytes. Errors: the texts' (200 and up).
int32_t hilum_mass_per_area_read(const char *text, size_t length, hilum_mass_per_area *out);

/* ==== Contents ============================================================================================ */

/// Mass of a product per its volume.
typedef struct {
    /// Kilograms per cubic metre; 1 kg/L is 1000.
    double kg_per_m3;
} hilum_density;

/// Active ingredient per volume of product.
typedef struct {
    /// Kilograms per cubic metre; 1 g/L is 1.
    double kg_per_m3;
} hilum_active_content;

/// Living cells per volume of product.
typedef struct {
    /// Colony-forming units per cubic metre; 1 CFU/mL is 1e6.
    double cfu_per_m3;
} hilum_titre_per_volume;

/// Living cells per mass of product.
typedef struct {
    /// Colony-forming units per kilogram; 1 CFU/g is 1000.
    double cfu_per_kg;
} hilum_titre_per_mass;

/// A density: value x unit / (per x per_unit). 1.1 kg/L: (1.1, HILUM_KG, 1, HILUM_L, &density).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_density_from(double value,
                           int32_t unit,
                           double per,
                           int32_t per_unit,
                           hilum_density *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_density_from.
int32_t hilum_density_in(hilum_density density, int32_t unit, double per, int32_t per_unit, double *out);

/// As text of length bytes: "1.04 kg/L". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_density_read(const char *text,
                           size_t length,
                           hilum_density *out);

/// A content: value x unit / (per x per_unit). 600 g/L: (600, HILUM_G, 1, HILUM_L, &content).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_active_content_from(double value,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  hilum_active_content *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_active_content_from.
int32_t hilum_active_content_in(hilum_active_content content,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                double *out);

/// As text of length bytes: "3.3 lb/gal". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_active_content_read(const char *text,
                                  size_t length,
                                  hilum_active_content *out);

/// A titre: value x unit / (per x per_unit). 1e9 CFU/mL: (1e9, HILUM_CFU, 1, HILUM_ML, &titre).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_titre_per_volume_from(double value,
                                    int32_t unit,
                                    double per,
                                    int32_t per_unit,
                                    hilum_titre_per_volume *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_titre_per_volume_from.
int32_t hilum_titre_per_volume_in(hilum_titre_per_volume titre,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  double *out);

/// As text of length bytes: "8e9 CFU/mL". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_titre_per_volume_read(const char *text,
                                    size_t length,
                                    hilum_titre_per_volume *out);

/// A titre: value x unit / (per x per_unit). 1e9 CFU/g: (1e9, HILUM_CFU, 1, HILUM_G, &titre).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_titre_per_mass_from(double value,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  hilum_titre_per_mass *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_titre_per_mass_from.
int32_t hilum_titre_per_mass_in(hilum_titre_per_mass titre,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                double *out);

/// As text of length bytes: "2e9 CFU/g". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_titre_per_mass_read(const char *text,
                                  size_t length,
                                  hilum_titre_per_mass *out);

/* ==== Flows =============================================================================================== */

/// How fast seed runs through the treater.
typedef struct {
    /// Kilograms per second.
    double kg_per_s;
} hilum_seed_flow;

/// How fast a pump delivers.
typedef struct {
    /// Cubic metres per second; 1 mL/s is 1e-6.
    double m3_per_s;
} hilum_flow;

/// A flow of seed: value x unit / (per x per_unit). 500 lb/min: (500, HILUM_LB, 1, HILUM_MIN, &flow).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_seed_flow_from(double value,
                             int32_t unit,
                             double per,
                             int32_t per_unit,
                             hilum_seed_flow *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_seed_flow_from.
int32_t hilum_seed_flow_in(hilum_seed_flow flow, int32_t unit, double per, int32_t per_unit, double *out);

/// As text of length bytes: "500 lb/min". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_seed_flow_read(const char *text,
                             size_t length,
                             hilum_seed_flow *out);

/// A flow of liquid: value x unit / (per x per_unit). 325 mL/min: (325, HILUM_ML, 1, HILUM_MIN, &flow).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_flow_from(double value,
                        int32_t unit,
                        double per,
                        int32_t per_unit,
                        hilum_flow *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_flow_from.
int32_t hilum_flow_in(hilum_flow flow, int32_t unit, double per, int32_t per_unit, double *out);

/// As text of length bytes: "12 fl oz/min". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_flow_read(const char *text,
                        size_t length,
                        hilum_flow *out);

/* ==== How much seed is it? ================================================================================ */

/// A unit is a number of seeds: the unit of a label's dose.
#define HILUM_UNIT_OF_SEEDS 1

/// A unit is a mass of seed: a bag sold by weight.
#define HILUM_UNIT_OF_MASS 2

/// What a seller calls one unit of this seed.
typedef struct {
    /// HILUM_UNIT_OF_SEEDS or HILUM_UNIT_OF_MASS.
    int32_t is;
    /// How many seeds; not looked at for a unit of mass.
    hilum_seeds seeds;
    /// How much seed; not looked at for a unit of seeds.
    hilum_mass mass;
} hilum_seed_unit;

/// The crop's standard bushel: a mass by law or custom (60 lb for soybean), not a test weight.
typedef struct {
    /// Kilograms.
    double kg;
} hilum_bushel;

/// The size of seed of which a thousand weigh this much: 1000 / mass.
/// Errors: a mass that is not finite or not more than 0.
int32_t hilum_seed_size_of_thousand(hilum_mass mass, hilum_seed_size *out);

/// The size of seed of which one weighs this much: 1 / mass per seed.
/// Errors: a mass that is not finite or not more than 0.
int32_t hilum_seed_size_of_seed(hilum_mass_per_seed mass, hilum_seed_size *out);

/// What a thousand seeds weigh: 1000 / size. Errors: a size that is not finite or not more than 0.
int32_t hilum_seed_size_thousand(hilum_seed_size size, hilum_mass *out);

/// What one seed weighs, on average: 1 / size. Errors: a size that is not finite or not more than 0.
int32_t hilum_seed_size_seed_mass(hilum_seed_size size, hilum_mass_per_seed *out);

/// How many seeds there are in a mass: mass x size. Errors: a number that is not finite or not more than 0.
int32_t hilum_seed_size_count_in(hilum_seed_size size, hilum_mass seed, hilum_seeds *out);

/// What a number of seeds weighs: seeds / size. Errors: a number that is not finite or not more than 0.
int32_t hilum_seed_size_mass_of(hilum_seed_size size, hilum_seeds seeds, hilum_mass *out);

/// The sizes that a tolerance leaves possible: size x (1 - tolerance) and size x (1 + tolerance).
/// Errors: a size that is not finite or not more than 0; a tolerance outside 0 to 1, or of 1.
int32_t hilum_seed_size_within(hilum_seed_size size,
                               hilum_share tolerance,
                               hilum_seed_size *low,
                               hilum_seed_size *high);

/// The mass of one unit at a seed size: seeds / size, or the mass.
/// Errors: NULL; a number that is not finite or not more than 0; HILUM_NO_SUCH_CHOICE.
int32_t hilum_seed_unit_mass(const hilum_seed_unit *unit, hilum_seed_size size, hilum_mass *out);

/// How many units a mass of seed is: mass x size / seeds, or mass / mass.
/// Errors: NULL; a number that is not finite or not more than 0; HILUM_NO_SUCH_CHOICE.
int32_t hilum_seed_unit_units_in(const hilum_seed_unit *unit,
                                 hilum_mass seed,
                                 hilum_seed_size size,
                                 double *out);

/// How many bushels a mass of seed is: mass / bushel. Errors: a number that is not finite or not more than 0.
int32_t hilum_bushel_bushels_in(hilum_bushel bushel, hilum_mass seed, double *out);

/// The share of a lot that is pure seed which germinates: purity x germination.
/// Errors: a share outside 0 to 1.
int32_t hilum_pure_live_seed(hilum_share purity, hilum_share germination, hilum_share *out);

/// What to sow for a stand of plants: stand / (germination x emergence of viable seed).
/// Errors: a stand that is not finite or not more than 0; a share outside 0 to 1, or of 0.
int32_t hilum_sown_for_stand(hilum_sown stand,
                             hilum_share germination,
                             hilum_share emergence,
                             hilum_sown *out);

/// Seeds sown per area where seed is sown by mass: rate x size.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_sown_by_mass(hilum_mass_per_area rate, hilum_seed_size size, hilum_sown *out);

/// Mass of seed per area: sown / size. Errors: a number that is not finite or not more than 0.
int32_t hilum_sown_mass_per_area(hilum_sown sown, hilum_seed_size size, hilum_mass_per_area *out);

/// The area that a number of seeds sows: seeds / sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_sown_area(hilum_sown sown,
                        hilum_seeds seeds,
                        hilum_area *out);

/// The seeds that an area takes: area x sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_sown_seeds_for(hilum_sown sown, hilum_area area, hilum_seeds *out);

/* ==== What does the label mean? Liquid product ============================================================ */

/// Statements agree within rounding: up to 2 % apart.
#define HILUM_CLOSE 1

/// More than 2 % apart: the label was written for seed of another size.
#define HILUM_APART 2

/// More than 10 % apart: one of the statements may be wrong.
#define HILUM_FAR_APART 3

/// Statements of a dose that differ by more than this share are worth a note.
#define HILUM_WORTH_A_NOTE 0.02

/// Statements of a dose that differ by more than this share are worth a warning.
#define HILUM_WORTH_A_WARNING 0.1

/// Liquid product per mass of seed.
typedef struct {
    /// Cubic metres per kilogram of seed; 1 mL/kg is 1e-6.
    double m3_per_kg;
} hilum_rate_per_mass;

/// Liquid product per seed.
typedef struct {
    /// Cubic metres per seed; 1 uL is 1e-9.
    double m3_per_seed;
} hilum_rate_per_seed;

/// Liquid product per area sown.
typedef struct {
    /// Cubic metres per square metre; 1 L/ha is 1e-7.
    double m3_per_m2;
} hilum_rate_per_area;

/// A dose per mass of seed: value x unit / (per x per_unit). 325 mL per 100 kg: (325, HILUM_ML, 100, HILUM_KG, &rate).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_rate_per_mass_from(double value,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 hilum_rate_per_mass *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_mass_from.
int32_t hilum_rate_per_mass_in(hilum_rate_per_mass rate,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               double *out);

/// As text of length bytes: "2.5 fl oz/cwt". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_rate_per_mass_read(const char *text,
                                 size_t length,
                                 hilum_rate_per_mass *out);

/// The same dose on one seed: rate / size. Errors: a rate or size that is not finite or not more than 0.
int32_t hilum_rate_per_mass_to_per_seed(hilum_rate_per_mass rate,
                                        hilum_seed_size size,
                                        hilum_rate_per_seed *out);

/// The seed size at which this dose and a dose per seed are the same: rate / dose. A label that states both
/// was written for seed of that size. Errors: a dose that is not finite or not more than 0.
int32_t hilum_rate_per_mass_implied_size(hilum_rate_per_mass rate,
                                         hilum_rate_per_seed same,
                                         hilum_seed_size *out);

/// By how much a statement of a dose differs from the one that governs: stated / governing - 1.
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_rate_per_mass_difference(hilum_rate_per_mass stated,
                                       hilum_rate_per_mass governing,
                                       double *out);

/// Whether a statement of a dose agrees with the one that governs, at the size of the seed at hand:
/// HILUM_CLOSE (up to 2 %), HILUM_APART, or HILUM_FAR_APART (more than 10 %).
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_rate_per_mass_agreement(hilum_rate_per_mass stated,
                                      hilum_rate_per_mass governing,
                                      int32_t *out);

/// From a label that states a volume per bushel: amount / bushel.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_from_bushel(hilum_volume amount, hilum_bushel bushel, hilum_rate_per_mass *out);

/// The same dose per bushel: rate x bushel. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_to_bushel(hilum_rate_per_mass rate, hilum_bushel bushel, hilum_volume *out);

/// What a mass of seed needs: rate x mass. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_needed(hilum_rate_per_mass rate, hilum_mass seed, hilum_volume *out);

/// The seed that a volume treats: amount / rate. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_treats(hilum_rate_per_mass rate, hilum_volume amount, hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_exceeds(hilum_rate_per_mass rate, hilum_rate_per_mass most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_falls_below(hilum_rate_per_mass rate, hilum_rate_per_mass least, bool *out);

/// A dose per seed: value x unit / (per x per_unit). 0.6 uL/seed: (0.6, HILUM_UL, 1, HILUM_SEEDS, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_rate_per_seed_from(double value,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 hilum_rate_per_seed *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_seed_from.
int32_t hilum_rate_per_seed_in(hilum_rate_per_seed dose,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               double *out);

/// As text of length bytes: "0.6 uL/seed". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_rate_per_seed_read(const char *text,
                                 size_t length,
                                 hilum_rate_per_seed *out);

/// The same dose per mass of seed: dose x size. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_to_per_mass(hilum_rate_per_seed dose,
                                        hilum_seed_size size,
                                        hilum_rate_per_mass *out);

/// The same dose per area sown: dose x sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_to_per_area(hilum_rate_per_seed dose, hilum_sown sown, hilum_rate_per_area *out);

/// From a label that states a volume per unit of seeds: amount / unit.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_from_unit(hilum_volume amount, hilum_seeds unit, hilum_rate_per_seed *out);

/// The same dose per unit of seeds: dose x unit. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_to_unit(hilum_rate_per_seed dose, hilum_seeds unit, hilum_volume *out);

/// What a number of seeds needs: dose x seeds. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_needed(hilum_rate_per_seed dose, hilum_seeds seeds, hilum_volume *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_exceeds(hilum_rate_per_seed dose, hilum_rate_per_seed most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_seed_falls_below(hilum_rate_per_seed dose, hilum_rate_per_seed least, bool *out);

/// A dose per area: value x unit / (per x per_unit). 250 mL/ha: (250, HILUM_ML, 1, HILUM_HA, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_rate_per_area_from(double value,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 hilum_rate_per_area *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_area_from.
int32_t hilum_rate_per_area_in(hilum_rate_per_area dose,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               double *out);

/// As text of length bytes: "400 mL/ha". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_rate_per_area_read(const char *text,
                                 size_t length,
                                 hilum_rate_per_area *out);

/// The same dose on one seed: dose / sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_area_to_per_seed(hilum_rate_per_area dose, hilum_sown sown, hilum_rate_per_seed *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_area_exceeds(hilum_rate_per_area dose, hilum_rate_per_area most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_area_falls_below(hilum_rate_per_area dose, hilum_rate_per_area least, bool *out);

/* ==== What does the label mean? Product by mass =========================================================== */

/// Product by mass (peat, powder, a liquid that is weighed) per mass of seed.
typedef struct {
    /// Kilograms per kilogram of seed; 1 g/kg is 0.001.
    double kg_per_kg;
} hilum_dry_per_mass;

/// Product by mass (peat, powder, a liquid that is weighed) per seed.
typedef struct {
    /// Kilograms per seed; 1 mg is 1e-6.
    double kg_per_seed;
} hilum_dry_per_seed;

/// Product by mass (peat, powder, a liquid that is weighed) per area sown.
typedef struct {
    /// Kilograms per square metre; 1 kg/ha is 0.0001.
    double kg_per_m2;
} hilum_dry_per_area;

/// A dose per mass of seed: value x unit / (per x per_unit). 5 g/kg: (5, HILUM_G, 1, HILUM_KG, &rate).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_dry_per_mass_from(double value,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                hilum_dry_per_mass *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_dry_per_mass_from.
int32_t hilum_dry_per_mass_in(hilum_dry_per_mass rate,
                              int32_t unit,
                              double per,
                              int32_t per_unit,
                              double *out);

/// As text of length bytes: "5 g/kg". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_dry_per_mass_read(const char *text,
                                size_t length,
                                hilum_dry_per_mass *out);

/// The same dose on one seed: rate / size. Errors: a rate or size that is not finite or not more than 0.
int32_t hilum_dry_per_mass_to_per_seed(hilum_dry_per_mass rate,
                                       hilum_seed_size size,
                                       hilum_dry_per_seed *out);

/// The seed size at which this dose and a dose per seed are the same: rate / dose. A label that states both
/// was written for seed of that size. Errors: a dose that is not finite or not more than 0.
int32_t hilum_dry_per_mass_implied_size(hilum_dry_per_mass rate,
                                        hilum_dry_per_seed same,
                                        hilum_seed_size *out);

/// By how much a statement of a dose differs from the one that governs: stated / governing - 1.
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_dry_per_mass_difference(hilum_dry_per_mass stated, hilum_dry_per_mass governing, double *out);

/// Whether a statement of a dose agrees with the one that governs, at the size of the seed at hand:
/// HILUM_CLOSE (up to 2 %), HILUM_APART, or HILUM_FAR_APART (more than 10 %).
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_dry_per_mass_agreement(hilum_dry_per_mass stated, hilum_dry_per_mass governing, int32_t *out);

/// From a label that states a mass per bushel: amount / bushel.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_from_bushel(hilum_mass amount, hilum_bushel bushel, hilum_dry_per_mass *out);

/// The same dose per bushel: rate x bushel. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_to_bushel(hilum_dry_per_mass rate, hilum_bushel bushel, hilum_mass *out);

/// What a mass of seed needs: rate x mass. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_needed(hilum_dry_per_mass rate, hilum_mass seed, hilum_mass *out);

/// The seed that a mass treats: amount / rate. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_treats(hilum_dry_per_mass rate, hilum_mass amount, hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_exceeds(hilum_dry_per_mass rate, hilum_dry_per_mass most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_falls_below(hilum_dry_per_mass rate, hilum_dry_per_mass least, bool *out);

/// A dose per seed: value x unit / (per x per_unit). 0.6 mg/seed: (0.6, HILUM_MG, 1, HILUM_SEEDS, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_dry_per_seed_from(double value,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                hilum_dry_per_seed *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_dry_per_seed_from.
int32_t hilum_dry_per_seed_in(hilum_dry_per_seed dose,
                              int32_t unit,
                              double per,
                              int32_t per_unit,
                              double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_dry_per_seed_read(const char *text, size_t length, hilum_dry_per_seed *out);

/// The same dose per mass of seed: dose x size. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_to_per_mass(hilum_dry_per_seed dose,
                                       hilum_seed_size size,
                                       hilum_dry_per_mass *out);

/// The same dose per area sown: dose x sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_to_per_area(hilum_dry_per_seed dose, hilum_sown sown, hilum_dry_per_area *out);

/// From a label that states a mass per unit of seeds: amount / unit.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_from_unit(hilum_mass amount, hilum_seeds unit, hilum_dry_per_seed *out);

/// The same dose per unit of seeds: dose x unit. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_to_unit(hilum_dry_per_seed dose, hilum_seeds unit, hilum_mass *out);

/// What a number of seeds needs: dose x seeds. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_needed(hilum_dry_per_seed dose, hilum_seeds seeds, hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_exceeds(hilum_dry_per_seed dose, hilum_dry_per_seed most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_seed_falls_below(hilum_dry_per_seed dose, hilum_dry_per_seed least, bool *out);

/// A dose per area: value x unit / (per x per_unit). 250 g/ha: (250, HILUM_G, 1, HILUM_HA, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_dry_per_area_from(double value,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                hilum_dry_per_area *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_dry_per_area_from.
int32_t hilum_dry_per_area_in(hilum_dry_per_area dose,
                              int32_t unit,
                              double per,
                              int32_t per_unit,
                              double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_dry_per_area_read(const char *text, size_t length, hilum_dry_per_area *out);

/// The same dose on one seed: dose / sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_area_to_per_seed(hilum_dry_per_area dose, hilum_sown sown, hilum_dry_per_seed *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_area_exceeds(hilum_dry_per_area dose, hilum_dry_per_area most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_area_falls_below(hilum_dry_per_area dose, hilum_dry_per_area least, bool *out);

/* ==== What does the label mean? Active ingredient ========================================================= */

/// Active ingredient per mass of seed.
typedef struct {
    /// Kilograms per kilogram of seed; 1 mg/kg is 1e-6.
    double kg_per_kg;
} hilum_active_per_mass;

/// Active ingredient per seed.
typedef struct {
    /// Kilograms per seed; 1 mg is 1e-6.
    double kg_per_seed;
} hilum_active_per_seed;

/// Active ingredient per area sown.
typedef struct {
    /// Kilograms per square metre; 1 g/ha is 1e-7.
    double kg_per_m2;
} hilum_active_per_area;

/// A dose per mass of seed: value x unit / (per x per_unit). 78 mg/kg: (78, HILUM_MG, 1, HILUM_KG, &rate).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_active_per_mass_from(double value,
                                   int32_t unit,
                                   double per,
                                   int32_t per_unit,
                                   hilum_active_per_mass *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_active_per_mass_from.
int32_t hilum_active_per_mass_in(hilum_active_per_mass rate,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_active_per_mass_read(const char *text, size_t length, hilum_active_per_mass *out);

/// The same dose on one seed: rate / size. Errors: a rate or size that is not finite or not more than 0.
int32_t hilum_active_per_mass_to_per_seed(hilum_active_per_mass rate,
                                          hilum_seed_size size,
                                          hilum_active_per_seed *out);

/// The seed size at which this dose and a dose per seed are the same: rate / dose. A label that states both
/// was written for seed of that size. Errors: a dose that is not finite or not more than 0.
int32_t hilum_active_per_mass_implied_size(hilum_active_per_mass rate,
                                           hilum_active_per_seed same,
                                           hilum_seed_size *out);

/// By how much a statement of a dose differs from the one that governs: stated / governing - 1.
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_active_per_mass_difference(hilum_active_per_mass stated,
                                         hilum_active_per_mass governing,
                                         double *out);

/// Whether a statement of a dose agrees with the one that governs, at the size of the seed at hand:
/// HILUM_CLOSE (up to 2 %), HILUM_APART, or HILUM_FAR_APART (more than 10 %).
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_active_per_mass_agreement(hilum_active_per_mass stated,
                                        hilum_active_per_mass governing,
                                        int32_t *out);

/// From a label that states a mass per bushel: amount / bushel.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_from_bushel(hilum_mass amount, hilum_bushel bushel, hilum_active_per_mass *out);

/// The same dose per bushel: rate x bushel. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_to_bushel(hilum_active_per_mass rate, hilum_bushel bushel, hilum_mass *out);

/// What a mass of seed needs: rate x mass. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_needed(hilum_active_per_mass rate, hilum_mass seed, hilum_mass *out);

/// The seed that a mass treats: amount / rate. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_treats(hilum_active_per_mass rate, hilum_mass amount, hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_exceeds(hilum_active_per_mass rate, hilum_active_per_mass most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_falls_below(hilum_active_per_mass rate, hilum_active_per_mass least, bool *out);

/// A dose per seed: value x unit / (per x per_unit). 0.25 mg/seed: (0.25, HILUM_MG, 1, HILUM_SEEDS, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_active_per_seed_from(double value,
                                   int32_t unit,
                                   double per,
                                   int32_t per_unit,
                                   hilum_active_per_seed *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_active_per_seed_from.
int32_t hilum_active_per_seed_in(hilum_active_per_seed dose,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_active_per_seed_read(const char *text, size_t length, hilum_active_per_seed *out);

/// The same dose per mass of seed: dose x size. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_to_per_mass(hilum_active_per_seed dose,
                                          hilum_seed_size size,
                                          hilum_active_per_mass *out);

/// The same dose per area sown: dose x sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_to_per_area(hilum_active_per_seed dose,
                                          hilum_sown sown,
                                          hilum_active_per_area *out);

/// From a label that states a mass per unit of seeds: amount / unit.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_from_unit(hilum_mass amount, hilum_seeds unit, hilum_active_per_seed *out);

/// The same dose per unit of seeds: dose x unit. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_to_unit(hilum_active_per_seed dose, hilum_seeds unit, hilum_mass *out);

/// What a number of seeds needs: dose x seeds. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_needed(hilum_active_per_seed dose, hilum_seeds seeds, hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_exceeds(hilum_active_per_seed dose, hilum_active_per_seed most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_seed_falls_below(hilum_active_per_seed dose, hilum_active_per_seed least, bool *out);

/// A dose per area: value x unit / (per x per_unit). 100 g/ha: (100, HILUM_G, 1, HILUM_HA, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_active_per_area_from(double value,
                                   int32_t unit,
                                   double per,
                                   int32_t per_unit,
                                   hilum_active_per_area *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_active_per_area_from.
int32_t hilum_active_per_area_in(hilum_active_per_area dose,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 double *out);

/// As text of length bytes: "80 g/ha". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_active_per_area_read(const char *text,
                                   size_t length,
                                   hilum_active_per_area *out);

/// The same dose on one seed: dose / sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_area_to_per_seed(hilum_active_per_area dose,
                                          hilum_sown sown,
                                          hilum_active_per_seed *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_area_exceeds(hilum_active_per_area dose, hilum_active_per_area most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_area_falls_below(hilum_active_per_area dose, hilum_active_per_area least, bool *out);

/// A content is stated per volume of product: g/L, lb/gal.
#define HILUM_PER_VOLUME 1

/// A content is stated by mass of product: a percentage.
#define HILUM_BY_MASS 2

/// How a label states what is in the product.
typedef struct {
    /// HILUM_PER_VOLUME or HILUM_BY_MASS.
    int32_t stated;
    /// Active per volume of product; not looked at when stated by mass.
    hilum_active_content per_volume;
    /// Active per mass of product; not looked at when stated per volume.
    hilum_share by_mass;
} hilum_content;

/// Active per volume of product: as stated, or share x density. density may be NULL when it is not known.
/// Errors: NULL content; HILUM_NEEDED when stated by mass without a density; HILUM_NO_SUCH_CHOICE; a number
/// that is not finite or not more than 0.
int32_t hilum_content_per_volume(const hilum_content *content,
                                 const hilum_density *density,
                                 hilum_active_content *out);

/// Active per mass of product: as stated, or content / density. density may be NULL when it is not known.
/// Errors: as for hilum_content_per_volume; HILUM_NOT_A_SHARE when a litre would hold more active than it
/// weighs.
int32_t hilum_content_by_mass(const hilum_content *content, const hilum_density *density, hilum_share *out);

/// Active ingredient in a dose of liquid: rate x content.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_active(hilum_rate_per_mass rate,
                                   hilum_active_content content,
                                   hilum_active_per_mass *out);

/// A dose of liquid, weighed: rate x density. Errors: a number that is not finite or not more than 0.
int32_t hilum_rate_per_mass_weighed(hilum_rate_per_mass rate, hilum_density density, hilum_dry_per_mass *out);

/// Active ingredient in a dry dose: rate x share by mass.
/// Errors: a rate that is not finite or not more than 0; a content outside 0 to 1, or of 0.
int32_t hilum_dry_per_mass_active(hilum_dry_per_mass rate, hilum_share content, hilum_active_per_mass *out);

/// A dose that is weighed, measured by volume: rate / density.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_dry_per_mass_measured(hilum_dry_per_mass rate, hilum_density density, hilum_rate_per_mass *out);

/// The liquid product that holds a dose of active: active / content.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_active_per_mass_in_liquid(hilum_active_per_mass active,
                                        hilum_active_content content,
                                        hilum_rate_per_mass *out);

/// The dry product that holds a dose of active: active / share by mass.
/// Errors: a dose that is not finite or not more than 0; a content outside 0 to 1, or of 0.
int32_t hilum_active_per_mass_in_dry(hilum_active_per_mass active,
                                     hilum_share content,
                                     hilum_dry_per_mass *out);

/* ==== What does the label mean? Living cells ============================================================== */

/// Living cells per mass of seed.
typedef struct {
    /// Colony-forming units per kilogram of seed.
    double cfu_per_kg;
} hilum_cells_per_mass;

/// Living cells per seed.
typedef struct {
    /// Colony-forming units per seed.
    double cfu_per_seed;
} hilum_cells_per_seed;

/// Living cells per area sown.
typedef struct {
    /// Colony-forming units per square metre.
    double cfu_per_m2;
} hilum_cells_per_area;

/// A dose per mass of seed: value x unit / (per x per_unit). 6e9 CFU/kg: (6e9, HILUM_CFU, 1, HILUM_KG, &rate).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_cells_per_mass_from(double value,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  hilum_cells_per_mass *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_cells_per_mass_from.
int32_t hilum_cells_per_mass_in(hilum_cells_per_mass rate,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_cells_per_mass_read(const char *text, size_t length, hilum_cells_per_mass *out);

/// The same dose on one seed: rate / size. Errors: a rate or size that is not finite or not more than 0.
int32_t hilum_cells_per_mass_to_per_seed(hilum_cells_per_mass rate,
                                         hilum_seed_size size,
                                         hilum_cells_per_seed *out);

/// The seed size at which this dose and a dose per seed are the same: rate / dose. A label that states both
/// was written for seed of that size. Errors: a dose that is not finite or not more than 0.
int32_t hilum_cells_per_mass_implied_size(hilum_cells_per_mass rate,
                                          hilum_cells_per_seed same,
                                          hilum_seed_size *out);

/// By how much a statement of a dose differs from the one that governs: stated / governing - 1.
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_cells_per_mass_difference(hilum_cells_per_mass stated,
                                        hilum_cells_per_mass governing,
                                        double *out);

/// Whether a statement of a dose agrees with the one that governs, at the size of the seed at hand:
/// HILUM_CLOSE (up to 2 %), HILUM_APART, or HILUM_FAR_APART (more than 10 %).
/// Errors: a rate that is not finite or not more than 0.
int32_t hilum_cells_per_mass_agreement(hilum_cells_per_mass stated,
                                       hilum_cells_per_mass governing,
                                       int32_t *out);

/// From a label that states a number of cells per bushel: amount / bushel.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_from_bushel(hilum_cells amount, hilum_bushel bushel, hilum_cells_per_mass *out);

/// The same dose per bushel: rate x bushel. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_to_bushel(hilum_cells_per_mass rate, hilum_bushel bushel, hilum_cells *out);

/// What a mass of seed needs: rate x mass. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_needed(hilum_cells_per_mass rate, hilum_mass seed, hilum_cells *out);

/// The seed that a number of cells treats: amount / rate. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_treats(hilum_cells_per_mass rate,
                                    hilum_cells amount,
                                    hilum_mass *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_exceeds(hilum_cells_per_mass rate, hilum_cells_per_mass most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_mass_falls_below(hilum_cells_per_mass rate, hilum_cells_per_mass least, bool *out);

/// A dose per seed: value x unit / (per x per_unit). 1e5 CFU/seed: (1e5, HILUM_CFU, 1, HILUM_SEEDS, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_cells_per_seed_from(double value,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  hilum_cells_per_seed *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_cells_per_seed_from.
int32_t hilum_cells_per_seed_in(hilum_cells_per_seed dose,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                double *out);

/// As text of length bytes: "2e6 CFU/seed". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_cells_per_seed_read(const char *text,
                                  size_t length,
                                  hilum_cells_per_seed *out);

/// The same dose per mass of seed: dose x size. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_to_per_mass(hilum_cells_per_seed dose,
                                         hilum_seed_size size,
                                         hilum_cells_per_mass *out);

/// The same dose per area sown: dose x sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_to_per_area(hilum_cells_per_seed dose,
                                         hilum_sown sown,
                                         hilum_cells_per_area *out);

/// From a label that states a number of cells per unit of seeds: amount / unit.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_from_unit(hilum_cells amount, hilum_seeds unit, hilum_cells_per_seed *out);

/// The same dose per unit of seeds: dose x unit. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_to_unit(hilum_cells_per_seed dose, hilum_seeds unit, hilum_cells *out);

/// What a number of seeds needs: dose x seeds. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_needed(hilum_cells_per_seed dose, hilum_seeds seeds, hilum_cells *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_exceeds(hilum_cells_per_seed dose, hilum_cells_per_seed most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_seed_falls_below(hilum_cells_per_seed dose, hilum_cells_per_seed least, bool *out);

/// A dose per area: value x unit / (per x per_unit). 4e10 CFU/ha: (4e10, HILUM_CFU, 1, HILUM_HA, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
int32_t hilum_cells_per_area_from(double value,
                                  int32_t unit,
                                  double per,
                                  int32_t per_unit,
                                  hilum_cells_per_area *out);

/// How many of a unit over per x per_unit it is. Errors: as for hilum_cells_per_area_from.
int32_t hilum_cells_per_area_in(hilum_cells_per_area dose,
                                int32_t unit,
                                double per,
                                int32_t per_unit,
                                double *out);

/// As text of length bytes. Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
int32_t hilum_cells_per_area_read(const char *text, size_t length, hilum_cells_per_area *out);

/// The same dose on one seed: dose / sown. Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_area_to_per_seed(hilum_cells_per_area dose,
                                         hilum_sown sown,
                                         hilum_cells_per_seed *out);

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_area_exceeds(hilum_cells_per_area dose, hilum_cells_per_area most, bool *out);

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_cells_per_area_falls_below(hilum_cells_per_area dose, hilum_cells_per_area least, bool *out);

/* ==== Any quantity as text ================================================================================ */

/// An amount, in base units of what it measures.
#define HILUM_AMOUNT 1

/// A point on the temperature scale, in degrees Celsius.
#define HILUM_TEMPERATURE 2

/// What a text says.
typedef struct {
    /// In base units (kg, m3, s, K, seeds, CFU, m2 and their quotients), or degrees Celsius.
    double value;
    /// HILUM_AMOUNT or HILUM_TEMPERATURE.
    int32_t is;
    /// What an amount measures; that of a difference for a temperature.
    hilum_powers powers;
} hilum_measured;

/// Any quantity as text of length bytes: (number x unit) / (count x unit).
///
/// A number as in JSON (digits may be grouped by _), a space, and a unit with at most one /, below which
/// a number may stand: "2.5 fl oz/cwt", "325 mL/100 kg", "95 %", "41 degF". Units as the trade writes them or
/// as UCUM does. unit says what "unit" means here, bushel what "bu" means; NULL where nothing does.
///
/// Errors: the texts' (200 and up); what is wrong with unit or bushel.
int32_t hilum_text_read(const char *text,
                        size_t length,
                        const hilum_seed_unit *unit,
                        const hilum_bushel *bushel,
                        hilum_measured *out);

/// How many of a unit, given as text of length bytes without a number ("fl oz/cwt"), a number of base units
/// is: value x (count x unit below) / unit above.
///
/// Errors: a value that is not finite; the texts' (200 and up); what is wrong with unit or bushel.
int32_t hilum_text_count_in(double value,
                            const char *text,
                            size_t length,
                            const hilum_seed_unit *unit,
                            const hilum_bushel *bushel,
                            double *out);

/// What may have been meant by a text whose unit is unknown: "lb" for "5 pounds".
///
/// Errors: HILUM_NO_SUCH_INDEX when nothing is near, or the text has no unknown unit.
int32_t hilum_text_suggestion(const char *text, size_t length, hilum_word *out);

/* ==== What do I open? ===================================================================================== */

/// Stated and calculated coverage may differ by this share of the latter.
#define HILUM_COVERAGE_TOLERANCE 0.02

/// Short of this share of the need without one of the opened sets, an order is almost covered by the rest.
#define HILUM_ALMOST_COVERED 0.01

/// The most sizes of pack that a choice is made among.
#define HILUM_MOST_SIZES 8

/// There is no limit to the sets on hand.
#define HILUM_NO_LIMIT 4294967295

/// The best choice leaves least over in opened sets.
#define HILUM_LEAST_LEFTOVER 1

/// The best choice costs least.
#define HILUM_LEAST_COST 2

/// The best choice opens fewest sets.
#define HILUM_FEWEST_SETS 3

/// No other choice or plan is better.
#define HILUM_PROVEN 1

/// The search stopped at a bound: valid, but a better one may exist.
#define HILUM_BOUND_REACHED 2

/// The stock covers the need.
#define HILUM_ENOUGH 1

/// It does not.
#define HILUM_SHORT 2

/// The seed that one set covers.
typedef struct {
    /// Kilograms of seed.
    double kg;
} hilum_coverage;

/// One order's seed, and what a set covers of it. A set that covers a number of seeds covers less mass of
/// small seed than of large.
typedef struct {
    /// Seed to treat.
    hilum_mass seed;
    /// What one set covers of this order's seed.
    hilum_coverage set;
} hilum_order_need;

/// What orders need, in sets of one size, before it is rounded up.
typedef struct {
    /// Sets; not a whole number.
    double sets;
} hilum_sets_needed;

/// One size of pack that the product is sold in.
typedef struct {
    /// The seed that one set covers.
    hilum_coverage covers;
    /// What a set costs, in the currency of the job; 0 when there is no price.
    double price;
    /// Sets on hand; HILUM_NO_LIMIT when there is no limit.
    uint32_t stock;
} hilum_pack_size;

/// What to open.
typedef struct {
    /// Sets to open of each size, in the order in which the sizes were given; 0 beyond.
    uint64_t sets[8];
    /// The seed that the opened sets cover.
    hilum_mass covered;
    /// The seed that they cover beyond the need; never negative.
    hilum_mass leftover;
    /// What they cost, in the currency of the prices.
    double cost;
    /// HILUM_PROVEN or HILUM_BOUND_REACHED.
    int32_t proof;
    /// HILUM_ENOUGH or HILUM_SHORT.
    int32_t supply;
} hilum_choice;

/// What the usable content of a set of liquid covers at a rate: content / rate.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_coverage_at(hilum_volume usable, hilum_rate_per_mass rate, hilum_coverage *out);

/// What the usable content of a set of dry product covers at a rate: content / rate.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_coverage_at_dry(hilum_mass usable, hilum_dry_per_mass rate, hilum_coverage *out);

/// By how much a stated coverage differs from the calculated one: stated / calculated - 1.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_coverage_difference(hilum_coverage stated, hilum_coverage calculated, double *out);

/// Whether they differ by more than HILUM_COVERAGE_TOLERANCE.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_coverage_disagrees(hilum_coverage stated, hilum_coverage calculated, bool *out);

/// What n orders need: the sum of seed / what a set covers. Summed first and rounded up once.
/// Errors: NULL; HILUM_NOT_POSITIVE when n is 0; a number that is not finite or not more than 0.
int32_t hilum_sets_needed_sum(const hilum_order_need *orders, size_t n, hilum_sets_needed *out);

/// As whole sets: one ceiling, with a slack of 1e-9 of the number.
/// Errors: a number that is not finite or not more than 0; HILUM_TOO_MANY_SETS beyond 2^53.
int32_t hilum_sets_needed_whole(hilum_sets_needed needed, uint64_t *out);

/// The seed that the same number of sets covers where one covers so much: sets x coverage. Orders of different
/// seed size have one need in sets; this is that need in the seed of one of them, for hilum_pack_choose.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_sets_needed_seed(hilum_sets_needed needed,
                               hilum_coverage set,
                               hilum_mass *out);

/// Which of n sizes of pack to open, opened whole, for a mass of seed: the exact best under an objective
/// (HILUM_LEAST_LEFTOVER, HILUM_LEAST_COST, HILUM_FEWEST_SETS).
///
/// Ties go by least leftover, then least cost, then fewest sets, then more sets of the sizes given earlier. The
/// work is bounded; proof says whether the choice is proven.
///
/// Errors: NULL; a need that is not finite or not more than 0; a coverage or price that cannot be;
/// HILUM_SIZES_OF_PACK when n is 0 or more than HILUM_MOST_SIZES; HILUM_NO_SUCH_CHOICE; HILUM_TOO_MANY_SETS.
int32_t hilum_pack_choose(hilum_mass need,
                          const hilum_pack_size *sizes,
                          size_t n,
                          int32_t objective,
                          hilum_choice *out);

/// Cases to fetch for a number of sets: sets / sets per case, rounded up.
/// Errors: HILUM_NOT_POSITIVE when there are no sets in a case.
int32_t hilum_pack_cases(uint64_t sets, uint32_t per_case, uint64_t *out);

/// Whether the opened sets without one of them would leave at most HILUM_ALMOST_COVERED of the need untreated:
/// need - (covered - set) <= 1 % x need. Errors: a number that is not finite or not more than 0.
int32_t hilum_pack_almost_covered(hilum_mass need,
                                  hilum_mass covered,
                                  hilum_coverage set,
                                  bool *out);

/* ==== What goes in the tank? ============================================================================== */

/// No water is added.
#define HILUM_NO_WATER 0

/// The mix is made up with water to a volume per mass of seed.
#define HILUM_WATER_UP_TO 1

/// So much water is added per mass of seed.
#define HILUM_WATER_PLUS 2

/// What water weighs per volume, in kilograms per cubic metre.
#define HILUM_WATER_KG_PER_M3 998.2

/// What is done about water.
typedef struct {
    /// The volume to make up to, or the water to add; not looked at when none is added.
    hilum_rate_per_mass volume;
    /// HILUM_NO_WATER, HILUM_WATER_UP_TO or HILUM_WATER_PLUS.
    int32_t how;
} hilum_water;

/// What an order takes from a tank, per mass of seed: products and water.
typedef struct {
    /// The products, without water.
    hilum_rate_per_mass products;
    /// Products and water: what the pump delivers.
    hilum_rate_per_mass total;
} hilum_slurry;

/// A part of a mix.
typedef struct {
    /// Its share of the mix, by volume.
    hilum_share share;
    /// What it weighs per volume; water is HILUM_WATER_KG_PER_M3.
    hilum_density density;
} hilum_mix_part;

/// A product in the recipe of a mix and in an order's own slurry.
typedef struct {
    /// Its share in the recipe; 0 when it is not in it.
    hilum_share recipe;
    /// Its share in the order's own slurry; 0 when it is not in it.
    hilum_share own;
} hilum_recipe_share;

/// What pump and lines hold: filled when they are empty, lost when the recipe changes or the mix expires.
typedef struct {
    /// Cubic metres; 0 when the lines are counted as part of the tank.
    double m3;
} hilum_hold_up;

/// The least that must be in a tank for its agitator and pump to work.
typedef struct {
    /// Cubic metres.
    double m3;
} hilum_min_fill;

/// n products at their rates, and water: their sum, made up to a volume, or plus water, or as it is. Volumes
/// are taken to add, which is common practice.
///
/// Errors: NULL; HILUM_NEEDED when n is 0; HILUM_TOO_LITTLE when the volume to make up to is below the
/// products' own; HILUM_NO_SUCH_CHOICE; a rate that is not finite or not more than 0.
int32_t hilum_slurry_of(const hilum_rate_per_mass *products,
                        size_t n,
                        const hilum_water *water,
                        hilum_slurry *out);

/// Water per mass of seed; may be 0: total - products. Errors: NULL; a rate that is not finite or not more than
/// 0; HILUM_TOO_LITTLE when the total is less than the products.
int32_t hilum_slurry_water(const hilum_slurry *slurry,
                           hilum_rate_per_mass *out);

/// The share of a product in the mix, by volume: rate / total.
/// Errors: as for hilum_slurry_water; HILUM_NOT_A_SHARE when the rate is more than the whole mix.
int32_t hilum_slurry_share(const hilum_slurry *slurry, hilum_rate_per_mass product, hilum_share *out);

/// The share of water in the mix, by volume: (total - products) / total. Errors: as for hilum_slurry_water.
int32_t hilum_slurry_water_share(const hilum_slurry *slurry, hilum_share *out);

/// The seed that a volume of mix treats: volume / total.
/// Errors: as for hilum_slurry_water; a volume that is not finite or not more than 0.
int32_t hilum_slurry_treats(const hilum_slurry *slurry, hilum_volume mix, hilum_mass *out);

/// The mix that a mass of seed takes up: mass x total.
/// Errors: as for hilum_slurry_water; a mass that is not finite or not more than 0.
int32_t hilum_slurry_fill(const hilum_slurry *slurry, hilum_mass seed, hilum_volume *out);

/// All liquid that lands on the seed: the sum of n rates of products, waters or slurries of all tanks. Compare it
/// with the treater's limits by hilum_rate_per_mass_exceeds and hilum_rate_per_mass_falls_below.
/// Errors: NULL; HILUM_NEEDED when n is 0; a rate that is not finite or not more than 0.
int32_t hilum_mix_total_liquid(const hilum_rate_per_mass *rates,
                               size_t n,
                               hilum_rate_per_mass *out);

/// What to pour of one part of the mix: share x mix.
/// Errors: a share outside 0 to 1; a volume that is not finite or not more than 0.
int32_t hilum_mix_pour(hilum_share share, hilum_volume mix, hilum_volume *out);

/// What a pour weighs: volume x density.
/// Errors: a volume that is not finite or negative; a density that is not finite or not more than 0.
int32_t hilum_mix_weigh(hilum_volume pour, hilum_density density, hilum_mass *out);

/// What a mix of n parts weighs per volume: the sum of share x density / the sum of shares. Volumes are taken to add.
/// Errors: NULL; HILUM_NEEDED when no part has a share; a share outside 0 to 1, a density not more than 0.
int32_t hilum_mix_density(const hilum_mix_part *parts,
                          size_t n,
                          hilum_density *out);

/// Whether an order may be treated with the mix of another: for every of n products,
/// |share in the recipe / own share - 1| <= tolerance (with a slack of 1e-9). Water is not compared.
/// Errors: NULL; a share outside 0 to 1.
int32_t hilum_mix_keeps_recipe(const hilum_recipe_share *products,
                               size_t n,
                               hilum_share tolerance,
                               bool *out);

/// What to mix so that a mass of seed can be treated from empty lines: mass x total + hold-up.
/// Errors: as for hilum_slurry_fill; a hold-up that is not finite or negative.
int32_t hilum_hold_up_mixed(hilum_hold_up hold_up,
                            const hilum_slurry *slurry,
                            hilum_mass seed,
                            hilum_volume *out);

/// The seed that a mix treats when it starts with empty lines: (mix - hold-up) / total; 0 when the lines take it
/// all. Errors: as for hilum_slurry_treats; a hold-up that is not finite or negative.
int32_t hilum_hold_up_treats(hilum_hold_up hold_up,
                             const hilum_slurry *slurry,
                             hilum_volume mix,
                             hilum_mass *out);

/// Whether a mix stays below it, by more than 1e-9 of it. Errors: a number that is not finite or not more than 0.
int32_t hilum_min_fill_missed_by(hilum_min_fill least,
                                 hilum_volume mix,
                                 bool *out);

/* ==== How long is it good? Batches ======================================================================== */

/// Orders in one plan, at most.
#define HILUM_MOST_ORDERS 10000

/// Tanks in one plan, at most.
#define HILUM_MOST_TANKS 20

/// Shifts in one plan, at most.
#define HILUM_MOST_SHIFTS 1000

/// Batches in one plan, at most.
#define HILUM_MOST_MIXES 100000

/// The treater stops when the tank is empty.
#define HILUM_WHEN_EMPTY 0

/// Refills are made ready beside running. A tank with a pot life or whole sets is never topped up.
#define HILUM_TOP_UP 1

/// An order. Orders are given as they run.
typedef struct {
    /// Seed to treat.
    hilum_mass mass;
    /// Seed flow x utilisation; not looked at, and 0 will do, where there are no shifts.
    hilum_seed_flow speed;
    /// Shift time between the order before and this one; not looked at for the first.
    hilum_time changeover;
} hilum_batch_order;

/// What a tank gives one order.
typedef struct {
    /// Slurry per mass of seed; 0 where the order does not need the tank.
    hilum_rate_per_mass per_mass;
    /// Share of the slurry that is the living product, as the recipe pours it: 0 to 1.
    double living;
    /// While this number stays, the mix goes on; another number is due a new mix.
    uint32_t recipe;
} hilum_batch_need;

/// One size that a living product's sets come in.
typedef struct {
    /// Living product that one set adds to a tank.
    hilum_volume adds;
    /// When plans are equal in all that is wanted, the one with the least sum of the first rank is taken, then of
    /// the second, then the one with fewest sets: a price, or the kilograms of seed that a set covers.
    double ranks[2];
    /// Sets on the shelf; HILUM_NO_LIMIT when there is no limit.
    uint32_t stock;
} hilum_batch_set;

/// A tank.
typedef struct {
    /// The most slurry it takes, hold-up filling included.
    hilum_volume capacity;
    /// Slurry that stays in its lines.
    hilum_volume hold_up;
    /// From the first pour until the mix can be used.
    hilum_time mixing;
    /// How long a mix may be used, from the start of mixing, nights included; 0 when there is no limit.
    hilum_time pot_life;
    /// The sizes of its living product's sets, at most 8; it is filled with whole sets. NULL when it takes any volume.
    const hilum_batch_set *sets;
    /// How many sizes; 0 when it takes any volume.
    size_t n_sets;
    /// HILUM_WHEN_EMPTY or HILUM_TOP_UP.
    int32_t refill;
} hilum_batch_tank;

/// Hours of work, since an instant of your choice that is a whole second.
typedef struct {
    /// Start.
    hilum_time from;
    /// End.
    hilum_time to;
} hilum_batch_shift;

/// What is to be planned.
typedef struct {
    /// The orders, as they run.
    const hilum_batch_order *orders;
    /// How many.
    size_t n_orders;
    /// All tanks.
    const hilum_batch_tank *tanks;
    /// How many.
    size_t n_tanks;
    /// Per order and tank, the tanks of the first order first: needs[order * n_tanks + tank].
    const hilum_batch_need *needs;
    /// How many: n_orders * n_tanks.
    size_t n_needs;
    /// Ordered and apart. NULL: batches without instants; pot life and times are not looked at.
    const hilum_batch_shift *shifts;
    /// How many.
    size_t n_shifts;
} hilum_batch_job;

/// A batch of one tank. mixed = applied + hold_up + discarded.
typedef struct {
    /// All that is poured.
    hilum_volume mixed;
    /// What goes on seed.
    hilum_volume applied;
    /// What fills empty lines.
    hilum_volume hold_up;
    /// What is left and thrown away.
    hilum_volume discarded;
    /// When mixing starts, on a whole second, since the same instant as the shifts; 0 without shifts.
    hilum_time mix_at;
    /// When it can be used; 0 without shifts.
    hilum_time ready_at;
    /// Until when it may be used: mix_at + pot life, rounded down to a whole second; 0 unless has_use_by.
    hilum_time use_by;
    /// When its last seed is treated; 0 without shifts.
    hilum_time done_at;
    /// Whole sets of each size; 0 where the tank takes any volume.
    uint32_t sets[8];
    /// Index of the tank.
    uint32_t tank;
    /// Counts from 1 within the tank.
    uint32_t number;
    /// 1 when the plan has shifts, so that the times are set; else 0.
    int32_t has_times;
    /// 1 when the mix has a time to be used by; else 0.
    int32_t has_use_by;
} hilum_batch_mix;

/// Seed of one order that is treated from one mix.
typedef struct {
    /// Seed.
    hilum_mass mass;
    /// Index of the mix.
    uint32_t mix;
    /// Index of the order.
    uint32_t order;
} hilum_batch_portion;

/// When an order's first seed runs.
typedef struct {
    /// Since the same instant as the shifts: its mixes are ready and the changeover is over; 0 unless known.
    hilum_time at;
    /// 1 when the plan has shifts and comes to the order; else 0.
    int32_t known;
} hilum_batch_first;

/// How far a plan comes.
typedef struct {
    /// Seed treated, from the first order on.
    hilum_mass treated;
    /// When the last seed is treated; 0 unless has_finish.
    hilum_time finish;
    /// 1 when that is all of it; else 0.
    int32_t all_treated;
    /// 1 when the plan has shifts, so that the finish is set; else 0.
    int32_t has_finish;
    /// HILUM_PROVEN when no plan within the rules is better; HILUM_BOUND_REACHED when it is valid, but not known to be
    /// the best.
    int32_t proof;
    /// Tanks whose shelf does not suffice, so that less seed is treated than could be: bit 0 is tank 0.
    uint32_t short_of_stock;
} hilum_batch_summary;

/// The room that you give a plan, and what it came to.
typedef struct {
    /// Working memory.
    hilum_work *work;
    /// How many of it. After HILUM_ROOM_TOO_SMALL: how many are needed.
    size_t n_work;
    /// Where the batches are written.
    hilum_batch_mix *mixes;
    /// Room for so many. Afterwards: how many there are, or (HILUM_ROOM_TOO_SMALL) how many are needed.
    size_t n_mixes;
    /// Where the portions of seed are written, sorted by mix, then by order.
    hilum_batch_portion *portions;
    /// Room for so many. Afterwards as for n_mixes.
    size_t n_portions;
    /// Where it is written when each order's first seed runs, as many as the job has orders; NULL when not wanted.
    hilum_batch_first *firsts;
    /// Batches to reckon with; 0 for a usual number. Give more, up to HILUM_MOST_MIXES, on HILUM_BATCH_TOO_MANY of
    /// HILUM_OF_BATCH_MIXES.
    uint32_t pours;
    /// Plans to compare at most; 0 for a usual number. Give more where a better plan is worth more work.
    uint32_t labels;
} hilum_batch_room;

/// Plans the batches of a job: which mix is made when, from how many sets, for which seed. In this order: all orders
/// treated within the shifts, least living product thrown away, fewest mixes, earliest finish.
///
/// Set the room's lists and their lengths; n_work, n_mixes and n_portions may be 0 at first. On HILUM_ROOM_TOO_SMALL
/// the room says how much is needed: give that and call again, until another status comes (it takes a few
/// calls, since each need is known only when the one before is met).
///
/// Errors: NULL; HILUM_ROOM_TOO_SMALL; HILUM_NO_SUCH_CHOICE; HILUM_BATCH_VALUE, HILUM_BATCH_NEEDS, HILUM_BATCH_TOO_MANY,
/// HILUM_BATCH_TANK_TOO_SMALL. bad may be NULL; the index of the order, need, tank or shift at fault is written to it where
/// a number of one cannot be (hilum_status_subject tells of which), a tank is too small, or its refill is no choice.
int32_t hilum_batch_plan(const hilum_batch_job *job,
                         hilum_batch_room *room,
                         hilum_batch_summary *out,
                         size_t *bad);

/// How much work time lies between two instants: the time of n shifts from one until the other; 0 if to is not
/// later. work: n of them. Errors: NULL; a time that is not finite.
int32_t hilum_batch_work_between(hilum_time from,
                                 hilum_time to,
                                 const hilum_batch_shift *shifts,
                                 hilum_work *work,
                                 size_t n,
                                 hilum_time *out);

/// How much seed can be run in one pot life, at the best moment of n shifts to mix:
/// speed x the most of (work time in the pot life, less mixing). work: n of them.
/// Errors: NULL; a time that is not finite, a pot life or mixing that is negative; a speed that is not finite or not more than 0.
int32_t hilum_batch_most_treatable(hilum_time pot_life,
                                   hilum_time mixing,
                                   const hilum_batch_shift *shifts,
                                   hilum_work *work,
                                   size_t n,
                                   hilum_seed_flow speed,
                                   hilum_mass *out);

/* ==== How fast do I pump? ================================================================================= */

/// The pump can do it.
#define HILUM_WITHIN 1

/// Less than the pump can do, or than any setting that was tested delivers.
#define HILUM_TOO_SLOW 2

/// More than the pump can do, or than any setting that was tested delivers.
#define HILUM_TOO_FAST 3

/// A treater that takes a charge of seed, puts the liquid on, and turns it out.
typedef struct {
    /// Seed of one charge.
    hilum_mass charge;
    /// Time from one charge to the next.
    hilum_time cycle;
} hilum_batch_treater;

/// A setting on the pump's own scale.
typedef struct {
    /// rpm, %, stroke, dial: whatever the pump's scale shows.
    double number;
} hilum_setting;

/// One catch: what the pump delivered at a setting.
typedef struct {
    /// Where the pump was set.
    hilum_setting setting;
    /// What it delivered.
    hilum_flow flow;
} hilum_curve_point;

/// The straight line through catches: flow = offset + slope x setting. Made by hilum_pump_curve_through.
typedef struct {
    uint64_t opaque[6];
} hilum_pump_curve;

/// The flow of liquid that puts a slurry on a flow of seed: slurry x seed flow.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_seed_flow_liquid(hilum_seed_flow seed, hilum_rate_per_mass slurry, hilum_flow *out);

/// The flow that a day can count on: flow x utilisation, the share of the time that seed really runs. For the
/// clock; the pump runs at the full flow.
/// Errors: a flow that is not finite or not more than 0; a share outside 0 to 1, or of 0.
int32_t hilum_seed_flow_effective(hilum_seed_flow seed, hilum_share utilisation, hilum_seed_flow *out);

/// The time that a mass of seed takes: mass / flow. Errors: a number that is not finite or not more than 0.
int32_t hilum_seed_flow_time_for(hilum_seed_flow flow, hilum_mass seed, hilum_time *out);

/// The rate that a flow of liquid puts on a flow of seed: flow / seed flow.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_flow_rate(hilum_flow flow, hilum_seed_flow seed, hilum_rate_per_mass *out);

/// By how much a measured flow differs from the target: measured / target - 1.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_flow_deviation(hilum_flow measured, hilum_flow target, double *out);

/// Whether a measured flow is off the target by more than a tolerance (with a slack of 1e-9).
/// Errors: a flow that is not finite or not more than 0; a share outside 0 to 1.
int32_t hilum_flow_off_target(hilum_flow measured, hilum_flow target, hilum_share tolerance, bool *out);

/// The liquid for one charge: slurry x charge. Errors: NULL; a number that is not finite or not more than 0.
int32_t hilum_batch_treater_per_charge(const hilum_batch_treater *treater,
                                       hilum_rate_per_mass slurry,
                                       hilum_volume *out);

/// The flow of seed: charge / cycle. Errors: NULL; a number that is not finite or not more than 0.
int32_t hilum_batch_treater_seed_flow(const hilum_batch_treater *treater, hilum_seed_flow *out);

/// The flow of seed that is weighed in dumps: mass of a dump x dumps / time.
/// Errors: a number that is not finite or not more than 0; no dump at all.
int32_t hilum_dumps_seed_flow(hilum_mass dump, uint32_t dumps, hilum_time time, hilum_seed_flow *out);

/// The liquid for one dump: slurry x mass of a dump. Errors: a number that is not finite or not more than 0.
int32_t hilum_dumps_liquid(hilum_mass dump, hilum_rate_per_mass slurry, hilum_volume *out);

/// The flow that a catch test measured: volume / time. Errors: a number that is not finite or not more than 0.
int32_t hilum_catch_volume(hilum_volume caught,
                           hilum_time time,
                           hilum_flow *out);

/// The flow that a weighed catch measured: mass / (density x time).
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_catch_mass(hilum_mass caught, hilum_density density, hilum_time time, hilum_flow *out);

/// Whether a pump can deliver a flow: HILUM_WITHIN, HILUM_TOO_SLOW or HILUM_TOO_FAST (by more than 1e-9). least and
/// most may be NULL where nothing is known. Errors: a flow that is not finite or not more than 0.
int32_t hilum_pump_reach(hilum_flow wanted,
                         const hilum_flow *least,
                         const hilum_flow *most,
                         int32_t *out);

/// The setting after a catch test, for a pump whose flow is proportional to its setting:
/// setting x target / caught. Other pumps need a hilum_pump_curve.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_setting_corrected(hilum_setting setting,
                                hilum_flow target,
                                hilum_flow caught,
                                hilum_setting *out);

/// The line of least squares through n catches; one catch gives the line through the origin, for a pump whose
/// flow is proportional to its setting. work: n of them.
///
/// Errors: NULL; HILUM_NEEDED when n is 0; HILUM_NOT_POSITIVE when the only catch was made at 0;
/// HILUM_ONE_SETTING; HILUM_NOT_RISING; a setting that is not finite or negative, a flow not more than 0.
int32_t hilum_pump_curve_through(const hilum_curve_point *catches,
                                 hilum_work *work,
                                 size_t n,
                                 hilum_pump_curve *out);

/// The setting for a wanted flow: (flow - offset) / slope, with HILUM_WITHIN in reach. A line is not trusted beyond
/// the settings that were tested: there reach is HILUM_TOO_SLOW or HILUM_TOO_FAST, and setting is 0.
/// Errors: NULL; HILUM_NOT_MADE; a flow that is not finite or not more than 0.
int32_t hilum_pump_curve_setting(const hilum_pump_curve *curve,
                                 hilum_flow wanted,
                                 int32_t *reach,
                                 hilum_setting *setting);

/* ==== What did I really apply? ============================================================================ */

/// A volume that was read off a tank, a meter or a gauge.
typedef struct {
    /// What was shown.
    hilum_volume shown;
    /// The smallest step of the instrument; 0 when the amount is known exactly.
    hilum_volume resolution;
} hilum_volume_reading;

/// A volume, and how sure the readings make it. Made by the functions that give one.
typedef struct {
    uint64_t opaque[3];
} hilum_used_volume;

/// A mass that was read off a scale.
typedef struct {
    /// What was shown.
    hilum_mass shown;
    /// The smallest step of the scale; 0 when the amount is known exactly.
    hilum_mass resolution;
} hilum_mass_reading;

/// A mass, and how sure the readings make it. Made by the functions that give one.
typedef struct {
    uint64_t opaque[3];
} hilum_used_mass;

/// Liquid drawn from a tank and put to use: start - end + added - lost. Lost is what was drawn but not applied:
/// priming, flushing, catches not returned. work: n_added + n_lost of them.
///
/// Errors: NULL; a number that is not finite or negative; HILUM_NEGATIVE when more was left and lost than there was.
int32_t hilum_used_volume_from(const hilum_volume_reading *start,
                               const hilum_volume_reading *end,
                               const hilum_volume_reading *added,
                               size_t n_added,
                               const hilum_volume_reading *lost,
                               size_t n_lost,
                               hilum_work *work,
                               hilum_used_volume *out);

/// As hilum_used_volume_from, for what is weighed.
int32_t hilum_used_mass_from(const hilum_mass_reading *start,
                             const hilum_mass_reading *end,
                             const hilum_mass_reading *added,
                             size_t n_added,
                             const hilum_mass_reading *lost,
                             size_t n_lost,
                             hilum_work *work,
                             hilum_used_mass *out);

/// One reading as it is: a meter that was set to 0. Errors: NULL; a number that is not finite or negative.
int32_t hilum_used_volume_of_reading(const hilum_volume_reading *reading, hilum_used_volume *out);

/// One reading as it is: a truck's scale. Errors: NULL; a number that is not finite or negative.
int32_t hilum_used_mass_of_reading(const hilum_mass_reading *reading, hilum_used_mass *out);

/// The amount. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_used_volume_amount(const hilum_used_volume *used, hilum_volume *out);

/// Its expanded uncertainty: 2 x the root of the sum of resolution^2 / 12. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_used_volume_uncertainty(const hilum_used_volume *used, hilum_volume *out);

/// The amount. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_used_mass_amount(const hilum_used_mass *used, hilum_mass *out);

/// Its expanded uncertainty: 2 x the root of the sum of resolution^2 / 12. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_used_mass_uncertainty(const hilum_used_mass *used, hilum_mass *out);

/// One product's share of what was used of a mix: share x used. Errors: NULL; HILUM_NOT_MADE; a share outside 0 to 1.
int32_t hilum_used_volume_share(const hilum_used_volume *used,
                                hilum_share share,
                                hilum_used_volume *out);

/// As hilum_used_volume_share, for what is weighed.
int32_t hilum_used_mass_share(const hilum_used_mass *used, hilum_share share, hilum_used_mass *out);

/// The same liquid, weighed: volume x density.
/// Errors: NULL; HILUM_NOT_MADE; a density that is not finite or not more than 0.
int32_t hilum_used_volume_weighed(const hilum_used_volume *used, hilum_density density, hilum_used_mass *out);

/// The same liquid, by volume: mass / density.
/// Errors: NULL; HILUM_NOT_MADE; a density that is not finite or not more than 0.
int32_t hilum_used_mass_measured(const hilum_used_mass *used, hilum_density density, hilum_used_volume *out);

/// Seed before treating, from its weight afterwards: the mass of n liquids comes off.
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NOT_POSITIVE when the liquids weigh as much as the seed or more.
int32_t hilum_used_mass_before_treating(const hilum_used_mass *seed,
                                        const hilum_used_mass *liquids,
                                        size_t n,
                                        hilum_used_mass *out);

/// What is reported is expanded by this factor: about 95 % coverage.
#define HILUM_COVERAGE_FACTOR 2.0

/// Less than the tolerance allows, whatever the readings' resolution hides.
#define HILUM_LOW 1

/// Within the tolerance, whatever the readings' resolution hides.
#define HILUM_ON_TARGET 2

/// More than the tolerance allows, whatever the readings' resolution hides.
#define HILUM_HIGH 3

/// The border of the tolerance lies within what the resolution hides.
#define HILUM_CANNOT_TELL 4

/// A rate of liquid that was achieved, and how sure the readings make it. Made by hilum_achieved_on.
typedef struct {
    uint64_t opaque[3];
} hilum_achieved;

/// A rate of dry product that was achieved. Made by hilum_achieved_dry_on.
typedef struct {
    uint64_t opaque[3];
} hilum_achieved_dry;

/// The rate on seed as it was before treating: used / seed, with u(rate) = sqrt(u(used)^2 + (rate x u(seed))^2) / seed.
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NOT_POSITIVE when there is no seed.
int32_t hilum_achieved_on(const hilum_used_volume *used,
                          const hilum_used_mass *seed,
                          hilum_achieved *out);

/// As hilum_achieved_on, for what is weighed.
int32_t hilum_achieved_dry_on(const hilum_used_mass *used,
                              const hilum_used_mass *seed,
                              hilum_achieved_dry *out);

/// The rate; 0 when nothing was used. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_achieved_rate(const hilum_achieved *achieved, hilum_rate_per_mass *out);

/// Its expanded uncertainty: HILUM_COVERAGE_FACTOR x u(rate). Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_achieved_uncertainty(const hilum_achieved *achieved, hilum_rate_per_mass *out);

/// By how much it differs from a target: achieved / target - 1.
/// Errors: NULL; HILUM_NOT_MADE; a target that is not finite or not more than 0.
int32_t hilum_achieved_deviation(const hilum_achieved *achieved, hilum_rate_per_mass target, double *out);

/// Whether it lies within a tolerance of a target: HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL.
/// Errors: as for hilum_achieved_deviation; a share outside 0 to 1.
int32_t hilum_achieved_verdict(const hilum_achieved *achieved,
                               hilum_rate_per_mass target,
                               hilum_share tolerance,
                               int32_t *out);

/// The rate; 0 when nothing was used. Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_achieved_dry_rate(const hilum_achieved_dry *achieved, hilum_dry_per_mass *out);

/// Its expanded uncertainty: HILUM_COVERAGE_FACTOR x u(rate). Errors: NULL; HILUM_NOT_MADE.
int32_t hilum_achieved_dry_uncertainty(const hilum_achieved_dry *achieved, hilum_dry_per_mass *out);

/// By how much it differs from a target: achieved / target - 1.
/// Errors: NULL; HILUM_NOT_MADE; a target that is not finite or not more than 0.
int32_t hilum_achieved_dry_deviation(const hilum_achieved_dry *achieved,
                                     hilum_dry_per_mass target,
                                     double *out);

/// Whether it lies within a tolerance of a target: HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL.
/// Errors: as for hilum_achieved_dry_deviation; a share outside 0 to 1.
int32_t hilum_achieved_dry_verdict(const hilum_achieved_dry *achieved,
                                   hilum_dry_per_mass target,
                                   hilum_share tolerance,
                                   int32_t *out);

/* ==== Is the rate right while we run? ===================================================================== */

/// The sensor shows all that has run so far.
#define HILUM_TOTAL 1

/// The seed sensor shows the flow at the moment.
#define HILUM_FLOW 2

/// The liquid sensor shows what is left in the tank.
#define HILUM_TANK 3

/// The first reading: there was none before.
#define HILUM_FIRST 1

/// The step since the reading before counts.
#define HILUM_COUNTED 2

/// The step is left out: the clock went back.
#define HILUM_CLOCK_WENT_BACK 3

/// The step is left out: the seed sensor started again or jumped.
#define HILUM_SEED_JUMPED 4

/// The step is left out: the liquid sensor started again or jumped, or the tank was refilled.
#define HILUM_LIQUID_JUMPED 5

/// How the controller knows how much seed has run.
typedef struct {
    /// HILUM_TOTAL (a counter or scale) or HILUM_FLOW (a flow meter or a calibrated wheel).
    int32_t shows;
    /// The smallest step of a total; not looked at for a flow.
    hilum_mass total_resolution;
    /// The smallest step of a flow; not looked at for a total.
    hilum_seed_flow flow_resolution;
    /// More than this cannot run.
    hilum_seed_flow most;
} hilum_seed_sensor;

/// How the controller knows how much liquid has run. A tank that is weighed: mass / density.
typedef struct {
    /// HILUM_TOTAL (a flow meter's) or HILUM_TANK.
    int32_t shows;
    /// Its smallest step.
    hilum_volume resolution;
    /// More than this cannot run.
    hilum_flow most;
} hilum_liquid_sensor;

/// What is wanted, and what the sensors can do.
typedef struct {
    /// The rate of the slurry.
    hilum_rate_per_mass target;
    /// How far off it may be.
    hilum_share tolerance;
    /// How seed is measured.
    hilum_seed_sensor seed;
    /// How liquid is measured.
    hilum_liquid_sensor liquid;
} hilum_monitor_setup;

/// Watches the rate over the last 16 readings and since the start. Started by hilum_monitor_16_start.
typedef struct {
    uint64_t opaque[96];
} hilum_monitor_16;

/// What the seed sensor shows.
typedef struct {
    /// HILUM_TOTAL or HILUM_FLOW, as the sensor.
    int32_t shows;
    /// All seed so far; not looked at for a flow.
    hilum_mass total;
    /// The flow at the moment, may be 0; not looked at for a total.
    hilum_seed_flow flow;
} hilum_seed_reading;

/// What the liquid sensor shows.
typedef struct {
    /// HILUM_TOTAL or HILUM_TANK, as the sensor.
    int32_t shows;
    /// All liquid so far, or what is left in the tank.
    hilum_volume volume;
} hilum_liquid_reading;

/// The rate over a stretch of running.
typedef struct {
    /// Liquid / seed; 0 while no seed has run.
    hilum_rate_per_mass rate;
    /// How far off the rate can be by the resolution of the readings alone; 0 while no seed has run.
    hilum_rate_per_mass explained;
    /// HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL. Low or high only when the readings' resolution
    /// cannot explain it.
    int32_t verdict;
    /// 1 once seed has run, so that the rate is known; else 0.
    int32_t known;
} hilum_run;

/// What the readings so far say.
typedef struct {
    /// Over the last readings that the monitor keeps.
    hilum_run window;
    /// Since the first reading.
    hilum_run since_start;
    /// What became of this step: HILUM_FIRST, HILUM_COUNTED, HILUM_CLOCK_WENT_BACK, HILUM_SEED_JUMPED or
    /// HILUM_LIQUID_JUMPED.
    int32_t step;
} hilum_report;

/// Watches the rate over the last 64 readings and since the start. Started by hilum_monitor_64_start.
typedef struct {
    uint64_t opaque[288];
} hilum_monitor_64;

/// Starts a monitor of 16 readings. 325 mL/100 kg within 5 %, a counter that shows kilograms of seed (7 kg/s at most) and
/// a tank that shows tenths of a litre (40 mL/s at most) are the setup
/// {{3.25e-6}, {0.05}, {HILUM_TOTAL, {1}, {0}, {7}}, {HILUM_TANK, {1e-4}, {4e-5}}}.
/// Errors: NULL; HILUM_NO_SUCH_CHOICE; a resolution that is not finite or negative, or a number that is not more
/// than 0.
int32_t hilum_monitor_16_start(const hilum_monitor_setup *setup,
                               hilum_monitor_16 *monitor);

/// Takes one reading of both sensors and says how things stand. at is the time on any clock. Feed it as often as
/// you like: memory is constant. A step that cannot be seed or liquid running (a total that falls, a tank that
/// fills, a flow above the most possible) is left out, for seed and liquid alike.
///
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NO_SUCH_CHOICE; HILUM_NEEDED for a reading of another kind than its sensor; a number
/// that is not finite or negative. The monitor is then as it was before.
int32_t hilum_monitor_16_feed(hilum_monitor_16 *monitor,
                              hilum_time at,
                              const hilum_seed_reading *seed,
                              const hilum_liquid_reading *liquid,
                              hilum_report *out);

/// As hilum_monitor_16_start, for 64 readings.
int32_t hilum_monitor_64_start(const hilum_monitor_setup *setup, hilum_monitor_64 *monitor);

/// As hilum_monitor_16_feed, for 64 readings.
int32_t hilum_monitor_64_feed(hilum_monitor_64 *monitor,
                              hilum_time at,
                              const hilum_seed_reading *seed,
                              const hilum_liquid_reading *liquid,
                              hilum_report *out);

/* ==== Are they still alive? Cells on the seed ============================================================= */

/// How a maker states the living cells of a product.
typedef struct {
    /// HILUM_PER_VOLUME or HILUM_BY_MASS.
    int32_t stated;
    /// Cells per volume of product; not looked at when stated by mass.
    hilum_titre_per_volume per_volume;
    /// Cells per mass of product; not looked at when stated per volume.
    hilum_titre_per_mass per_mass;
} hilum_titre;

/// Cells per volume: as stated, or titre x density. density may be NULL when it is not known.
/// Errors: NULL titre; HILUM_NEEDED when stated by mass without a density; HILUM_NO_SUCH_CHOICE; a number that is not
/// finite or not more than 0.
int32_t hilum_titre_to_per_volume(const hilum_titre *titre,
                                  const hilum_density *density,
                                  hilum_titre_per_volume *out);

/// Cells per mass: as stated, or titre / density. density may be NULL when it is not known.
/// Errors: as for hilum_titre_to_per_volume, the other way round.
int32_t hilum_titre_to_per_mass(const hilum_titre *titre,
                                const hilum_density *density,
                                hilum_titre_per_mass *out);

/// Titre of the mix, when the living part of a set has this one: titre x part / set.
/// Errors: a number that is not finite or not more than 0; HILUM_NOT_A_SHARE when the part is more than the set.
int32_t hilum_titre_per_volume_in_set(hilum_titre_per_volume titre,
                                      hilum_volume part,
                                      hilum_volume set,
                                      hilum_titre_per_volume *out);

/// Cells on each seed when it is treated: titre x dose x recovery, the share of the cells that arrives alive.
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1.
int32_t hilum_titre_per_volume_cells(hilum_titre_per_volume titre,
                                     hilum_rate_per_seed dose,
                                     hilum_share recovery,
                                     hilum_cells_per_seed *out);

/// The dose that lands so many cells: cells / (titre x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
int32_t hilum_titre_per_volume_dose_for(hilum_titre_per_volume titre,
                                        hilum_cells_per_seed cells,
                                        hilum_share recovery,
                                        hilum_rate_per_seed *out);

/// The titre at which a dose lands so many cells: cells / (dose x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
int32_t hilum_titre_per_volume_needed(hilum_cells_per_seed cells,
                                      hilum_rate_per_seed dose,
                                      hilum_share recovery,
                                      hilum_titre_per_volume *out);

/// Titre of a dry mix, when the living part of a set has this one: titre x part / set.
/// Errors: a number that is not finite or not more than 0; HILUM_NOT_A_SHARE when the part is more than the set.
int32_t hilum_titre_per_mass_in_set(hilum_titre_per_mass titre,
                                    hilum_mass part,
                                    hilum_mass set,
                                    hilum_titre_per_mass *out);

/// Titre of the liquid made when a living powder is stirred into a set: titre x powder / set.
/// Errors: a number that is not finite or not more than 0.
int32_t hilum_titre_per_mass_stirred_into(hilum_titre_per_mass titre,
                                          hilum_mass powder,
                                          hilum_volume set,
                                          hilum_titre_per_volume *out);

/// Cells on each seed when it is treated: titre x dose x recovery, the share of the cells that arrives alive.
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1.
int32_t hilum_titre_per_mass_cells(hilum_titre_per_mass titre,
                                   hilum_dry_per_seed dose,
                                   hilum_share recovery,
                                   hilum_cells_per_seed *out);

/// The dose that lands so many cells: cells / (titre x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
int32_t hilum_titre_per_mass_dose_for(hilum_titre_per_mass titre,
                                      hilum_cells_per_seed cells,
                                      hilum_share recovery,
                                      hilum_dry_per_seed *out);

/// The titre at which a dose lands so many cells: cells / (dose x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
int32_t hilum_titre_per_mass_needed(hilum_cells_per_seed cells,
                                    hilum_dry_per_seed dose,
                                    hilum_share recovery,
                                    hilum_titre_per_mass *out);

/* ==== Are they still alive? Storage and planting ========================================================== */

/// log10 S = -t / D.
#define HILUM_LOG_LINEAR 1

/// log10 S = -(t / scale)^shape.
#define HILUM_WEIBULL 2

/// log10 S = log10(f x 10^(-t / D fast) + (1 - f) x 10^(-t / D slow)).
#define HILUM_TWO_PHASE 3

/// The time in which nine of ten cells die: the D value.
typedef struct {
    /// Seconds; 1 d is 86400.
    double s;
} hilum_decimal_reduction;

/// How the cells of a product die on the seed: a curve over time at a reference temperature, and what
/// warming does to it. There are no default parameters: they are the maker's or the laboratory's.
typedef struct {
    /// HILUM_LOG_LINEAR, HILUM_WEIBULL or HILUM_TWO_PHASE.
    int32_t curve;
    /// 1 when temperature matters: reference and z say how. 0 when it has no effect.
    int32_t has_reference;
    /// D of a log-linear curve, D slow of two phases.
    hilum_decimal_reduction reduction;
    /// D fast of two phases.
    hilum_decimal_reduction fast;
    /// The share of the cells that dies fast, of two phases.
    hilum_share fraction;
    /// The time to the first tenfold drop, of a Weibull curve.
    hilum_time scale;
    /// Of a Weibull curve: below 1 it tails off, above 1 it has a shoulder.
    double shape;
    /// The temperature at which the curve was measured.
    hilum_temperature reference;
    /// The warming that makes cells die ten times as fast.
    hilum_temperature_difference z;
} hilum_survival;

/// A stretch of storage at one temperature. Never a mean: cells die on the warm days.
typedef struct {
    /// How long it lasts. The last period goes on, whatever it says.
    hilum_time lasts;
    /// The temperature; not looked at when it is not known.
    hilum_temperature at;
    /// 1 when the temperature is known; 0 when nobody knows it: cells then die as at the reference.
    int32_t known;
} hilum_period;

/// Time at the reference temperature that ages the cells as much as a time in storage: the sum of
/// dt x 10^((T - T reference) / z), the last of n periods going on. Without periods it is the time itself.
/// work: n of them.
///
/// Errors: NULL; HILUM_NO_SUCH_CHOICE; a number of the curve or a period that cannot be; a time that is not finite or
/// negative.
int32_t hilum_survival_effective_time(const hilum_survival *survival,
                                      const hilum_period *storage,
                                      hilum_work *work,
                                      size_t n,
                                      hilum_time after,
                                      hilum_time *out);

/// log10 of the share alive after a time in storage: 0 at first, then falling, never infinite.
/// Errors: as for hilum_survival_effective_time.
int32_t hilum_survival_log10(const hilum_survival *survival,
                             const hilum_period *storage,
                             hilum_work *work,
                             size_t n,
                             hilum_time after,
                             double *out);

/// Cells on each seed after a time in storage: cells at treating x 10^(log10 S). None left is 0.
/// Errors: as for hilum_survival_effective_time; cells that are not finite or not more than 0.
int32_t hilum_survival_count(const hilum_survival *survival,
                             hilum_cells_per_seed at_treating,
                             const hilum_period *storage,
                             hilum_work *work,
                             size_t n,
                             hilum_time after,
                             hilum_cells_per_seed *out);

/// The count is below the minimum from the start.
#define HILUM_ALREADY_BELOW 1

/// It is enough until a time after treating.
#define HILUM_AT 2

/// It stays enough for 35000 years.
#define HILUM_NEVER 3

/// There are too few cells from the start.
#define HILUM_NOT_AT_ALL 1

/// Plant within a time.
#define HILUM_PLANT_WITHIN 2

/// Nothing stated limits it.
#define HILUM_UNLIMITED 3

/// No reason.
#define HILUM_NO_REASON 0

/// The living product's own life on the seed ends it.
#define HILUM_ON_SEED_LIFE 1

/// The life that another product on the seed leaves it ends it.
#define HILUM_PARTNER 2

/// There are too few cells after that.
#define HILUM_MINIMUM 3

/// No liquid on seed this cold, in degrees Celsius: it freezes on the seed. Common practice.
#define HILUM_FROZEN_CELSIUS 0.0

/// Treated seed keeps best at or below this, in degrees Celsius. Common practice.
#define HILUM_STORE_COOL_CELSIUS 10.0

/// Too warm for treated seed, unless its maker says otherwise, in degrees Celsius. Common practice.
#define HILUM_STORE_WARM_CELSIUS 25.0

/// How long a mix with a living product is usually good, in seconds: 24 h. Common practice.
#define HILUM_USUAL_POT_LIFE_S 86400.0

/// How long cells are typically stated to last on treated seed, in seconds: 120 d. Common practice.
#define HILUM_TYPICAL_ON_SEED_LIFE_S 10368000.0

/// How many cells are typically asked for at planting, in CFU per seed. Common practice.
#define HILUM_TYPICAL_MINIMUM_CFU_PER_SEED 100000.0

/// At or below HILUM_STORE_COOL_CELSIUS.
#define HILUM_COOL 1

/// Warmer than that, though not too warm.
#define HILUM_FAIR 2

/// Above what the maker declares, or above HILUM_STORE_WARM_CELSIUS when nothing is declared.
#define HILUM_TOO_WARM 3

/// When a count falls below a minimum.
typedef struct {
    /// The last whole second after treating at which it is still enough; 0 unless is says HILUM_AT.
    hilum_time at;
    /// HILUM_ALREADY_BELOW, HILUM_AT or HILUM_NEVER.
    int32_t is;
} hilum_crossing;

/// How long after treating a maker lets the seed be planted.
typedef struct {
    /// Seconds; 120 d is 10368000.
    double s;
} hilum_life;

/// How long after treating the seed may be planted.
typedef struct {
    /// Time after treating; 0 unless is says HILUM_PLANT_WITHIN.
    hilum_time within;
    /// HILUM_NOT_AT_ALL, HILUM_PLANT_WITHIN or HILUM_UNLIMITED.
    int32_t is;
    /// What ends it: HILUM_ON_SEED_LIFE, HILUM_PARTNER or HILUM_MINIMUM; HILUM_NO_REASON unless is says
    /// HILUM_PLANT_WITHIN.
    int32_t because;
} hilum_plant_by;

/// The last moment at which there are enough cells on a seed, to the second below. work: n of them.
/// Errors: as for hilum_survival_count.
int32_t hilum_survival_crossing(const hilum_survival *survival,
                                hilum_cells_per_seed at_treating,
                                hilum_cells_per_seed minimum,
                                const hilum_period *storage,
                                hilum_work *work,
                                size_t n,
                                hilum_crossing *out);

/// The earliest of the life on the seed, the lives that n partners leave, and the crossing of the minimum; of
/// equals the first in this order gives the reason. on_seed and minimum may be NULL where nothing is stated.
/// Errors: NULL partners; HILUM_NO_SUCH_CHOICE; a time that is not finite or negative.
int32_t hilum_plant_by_of(const hilum_life *on_seed,
                          const hilum_life *partners,
                          size_t n,
                          const hilum_crossing *minimum,
                          hilum_plant_by *out);

/// Whether seed is too cold to take a liquid: at or below HILUM_FROZEN_CELSIUS. Dry treated seed may freeze.
/// Errors: a temperature that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
int32_t hilum_storage_frozen(hilum_temperature seed, bool *out);

/// How a storage temperature suits treated seed: HILUM_COOL, HILUM_FAIR or HILUM_TOO_WARM. store_below is what the
/// maker says; NULL when nothing is declared. Errors: as for hilum_storage_frozen.
int32_t hilum_storage_warmth(hilum_temperature storage,
                             const hilum_temperature *store_below,
                             int32_t *out);

/// Whether a constituent, as text of length bytes, names a metal that can kill living cells near it: any of its words
/// does ("zinc sulphate"), or it is the metal's symbol. Common practice. Errors: NULL; HILUM_NOT_UTF8.
int32_t hilum_is_metal(const char *text,
                       size_t length,
                       bool *out);

/* ==== Are they still alive? Counts of a laboratory ======================================================== */

/// One count at a known time.
typedef struct {
    /// When it was counted, since any one moment.
    hilum_time at;
    /// In whatever the laboratory counts: CFU per seed, per gram, per plate. A plate without colonies has no
    /// logarithm: leave it out, or enter the limit of detection.
    double count;
} hilum_sample;

/// A log-linear survival curve laid through counts: log10 N = log10 N0 - t / D.
typedef struct {
    /// log10 of the count at time 0, in the unit of the counts.
    double log10_initial;
    /// D.
    hilum_decimal_reduction reduction;
    /// Standard error of log10 N0; 0 unless known.
    double log10_initial_error;
    /// Standard error of D, to first order; 0 unless known.
    hilum_time reduction_error;
    /// Residual standard deviation of the counts, in log10; 0 unless known. Far beyond the scatter of plate
    /// counts it says that one rate does not fit.
    double residual;
    /// 1 when the errors are known: from three counts on.
    int32_t known;
} hilum_fit;

/// log10 N = log10 N0 - t / D by least squares on log10 N of n counts, each weighing the same. work: n of them.
/// Errors: NULL; HILUM_TOO_FEW below two counts; HILUM_ALL_EQUAL when all were taken at one time; HILUM_NOT_FALLING;
/// a count that is not finite or not more than 0, a time that is not finite or negative.
int32_t hilum_fit_log_linear(const hilum_sample *samples,
                             hilum_work *work,
                             size_t n,
                             hilum_fit *out);

/// The count at time 0, in the unit of the counts: 10^(log10 N0).
/// Errors: NULL; a number that is not finite; a D not more than 0.
int32_t hilum_fit_initial(const hilum_fit *fit, double *out);

/* ==== Is it allowed? ====================================================================================== */

/// What a label allows of an active per area and season, and what the season has used of it.
typedef struct {
    /// What the label allows per season.
    hilum_mass_per_area limit;
    /// What earlier treatments or sprays of this season used of it; 0 when none.
    hilum_mass_per_area used;
} hilum_season_limit;

/// An active on the seed, over all products and what was on it before: the sum of n doses.
/// Errors: NULL; HILUM_NEEDED when n is 0; a dose that is not finite or not more than 0.
int32_t hilum_active_total_on_seed(const hilum_active_per_seed *doses, size_t n, hilum_active_per_seed *out);

/// What the season comes to with this seed: active per seed x seeds sown per area + used.
/// Errors: NULL; a number that is not finite, not more than 0 (used: negative).
int32_t hilum_season_limit_total(const hilum_season_limit *season,
                                 hilum_active_per_seed on_seed,
                                 hilum_sown sown,
                                 hilum_active_per_area *out);

/// The share of the limit that this is: total / limit. 1 is all of it; more is not allowed.
/// Errors: as for hilum_season_limit_total.
int32_t hilum_season_limit_share(const hilum_season_limit *season,
                                 hilum_active_per_seed on_seed,
                                 hilum_sown sown,
                                 double *out);

/// Whether this is more than the limit, by more than 1e-9 of it. Errors: as for hilum_season_limit_total.
int32_t hilum_season_limit_exceeded(const hilum_season_limit *season,
                                    hilum_active_per_seed on_seed,
                                    hilum_sown sown,
                                    bool *out);

/// The sowing rate at which the limit is met: (limit - used) / active per seed; 0 when nothing is left.
/// Errors: as for hilum_season_limit_total.
int32_t hilum_season_limit_max_sowing(const hilum_season_limit *season,
                                      hilum_active_per_seed on_seed,
                                      hilum_sown *out);

/* ==== What does the bus say? ISO 11783-11 ================================================================= */

#define HILUM_DDI_VOLUME_PER_AREA_SETPOINT 1 /* volume per area */
#define HILUM_DDI_VOLUME_PER_AREA_ACTUAL 2 /* volume per area */
#define HILUM_DDI_VOLUME_PER_AREA_DEFAULT 3 /* volume per area */
#define HILUM_DDI_VOLUME_PER_AREA_MINIMUM 4 /* volume per area */
#define HILUM_DDI_VOLUME_PER_AREA_MAXIMUM 5 /* volume per area */
#define HILUM_DDI_MASS_PER_AREA_SETPOINT 6 /* mass per area */
#define HILUM_DDI_MASS_PER_AREA_ACTUAL 7 /* mass per area */
#define HILUM_DDI_MASS_PER_AREA_DEFAULT 8 /* mass per area */
#define HILUM_DDI_MASS_PER_AREA_MINIMUM 9 /* mass per area */
#define HILUM_DDI_MASS_PER_AREA_MAXIMUM 10 /* mass per area */
#define HILUM_DDI_SEEDS_PER_AREA_SETPOINT 11 /* seeds per area */
#define HILUM_DDI_SEEDS_PER_AREA_ACTUAL 12 /* seeds per area */
#define HILUM_DDI_SEEDS_PER_AREA_DEFAULT 13 /* seeds per area */
#define HILUM_DDI_SEEDS_PER_AREA_MINIMUM 14 /* seeds per area */
#define HILUM_DDI_SEEDS_PER_AREA_MAXIMUM 15 /* seeds per area */
#define HILUM_DDI_MASS_PER_MASS_SETPOINT 26 /* share, or mass per mass */
#define HILUM_DDI_MASS_PER_MASS_ACTUAL 27 /* share, or mass per mass */
#define HILUM_DDI_MASS_PER_MASS_DEFAULT 28 /* share, or mass per mass */
#define HILUM_DDI_MASS_PER_MASS_MINIMUM 29 /* share, or mass per mass */
#define HILUM_DDI_MASS_PER_MASS_MAXIMUM 30 /* share, or mass per mass */
#define HILUM_DDI_VOLUME_PER_MASS_SETPOINT 31 /* volume per mass of seed */
#define HILUM_DDI_VOLUME_PER_MASS_ACTUAL 32 /* volume per mass of seed */
#define HILUM_DDI_VOLUME_PER_MASS_DEFAULT 33 /* volume per mass of seed */
#define HILUM_DDI_VOLUME_PER_MASS_MINIMUM 34 /* volume per mass of seed */
#define HILUM_DDI_VOLUME_PER_MASS_MAXIMUM 35 /* volume per mass of seed */
#define HILUM_DDI_VOLUME_FLOW_SETPOINT 36 /* volume per time */
#define HILUM_DDI_VOLUME_FLOW_ACTUAL 37 /* volume per time */
#define HILUM_DDI_VOLUME_FLOW_DEFAULT 38 /* volume per time */
#define HILUM_DDI_VOLUME_FLOW_MINIMUM 39 /* volume per time */
#define HILUM_DDI_VOLUME_FLOW_MAXIMUM 40 /* volume per time */
#define HILUM_DDI_MASS_FLOW_SETPOINT 41 /* mass per time */
#define HILUM_DDI_MASS_FLOW_ACTUAL 42 /* mass per time */
#define HILUM_DDI_MASS_FLOW_DEFAULT 43 /* mass per time */
#define HILUM_DDI_MASS_FLOW_MINIMUM 44 /* mass per time */
#define HILUM_DDI_MASS_FLOW_MAXIMUM 45 /* mass per time */
#define HILUM_DDI_VOLUME_HELD_SETPOINT 71 /* volume */
#define HILUM_DDI_VOLUME_HELD_ACTUAL 72 /* volume */
#define HILUM_DDI_VOLUME_HELD_MAXIMUM 73 /* volume */
#define HILUM_DDI_MASS_HELD_SETPOINT 74 /* mass */
#define HILUM_DDI_MASS_HELD_ACTUAL 75 /* mass */
#define HILUM_DDI_MASS_HELD_MAXIMUM 76 /* mass */
#define HILUM_DDI_SEEDS_HELD_SETPOINT 77 /* number of seeds */
#define HILUM_DDI_SEEDS_HELD_ACTUAL 78 /* number of seeds */
#define HILUM_DDI_SEEDS_HELD_MAXIMUM 79 /* number of seeds */
#define HILUM_DDI_TOTAL_VOLUME 80 /* volume */
#define HILUM_DDI_TOTAL_MASS 81 /* mass */
#define HILUM_DDI_TOTAL_SEEDS 82 /* number of seeds */
#define HILUM_DDI_TOTAL_AREA 116 /* area */
#define HILUM_DDI_DENSITY 121 /* mass per volume */
#define HILUM_DDI_THOUSAND_SEED_MASS 122 /* mass per seed */
#define HILUM_DDI_THOUSAND_SEED_VOLUME 123 /* volume per seed */
#define HILUM_DDI_SETPOINT_SHARE 140 /* share, or mass per mass */
#define HILUM_DDI_AMBIENT_TEMPERATURE 192 /* temperature difference */
#define HILUM_DDI_ACTUAL_SHARE 308 /* share, or mass per mass */
#define HILUM_DDI_TEMPERATURE_SETPOINT 578 /* temperature difference */
#define HILUM_DDI_TEMPERATURE_ACTUAL 579 /* temperature difference */
#define HILUM_DDI_TEMPERATURE_DEFAULT 582 /* temperature difference */
#define HILUM_DDI_TEMPERATURE_MINIMUM 580 /* temperature difference */
#define HILUM_DDI_TEMPERATURE_MAXIMUM 581 /* temperature difference */

/// What an entry measures. Errors: HILUM_NO_SUCH_DDI.
int32_t hilum_ddi_powers(int32_t ddi, hilum_powers *out);

/// The integer for a value in base units (degrees Celsius for a temperature): value / resolution, rounded to the
/// nearest, halves up. For programs that learn the number as they run; where you know it, use the function
/// of the quantity, which knows its unit.
///
/// Errors: HILUM_NO_SUCH_DDI; a value that is not finite or negative; HILUM_NOT_FOR_THE_BUS beyond what the entry carries,
/// or for less than half a step without being 0.
int32_t hilum_ddi_encode(int32_t ddi,
                         double value,
                         int32_t *out);

/// The value in base units (degrees Celsius for a temperature) of an integer: integer x resolution.
/// Errors: HILUM_NO_SUCH_DDI; HILUM_NEGATIVE; HILUM_NOT_FOR_THE_BUS beyond what the entry carries.
int32_t hilum_ddi_decode(int32_t ddi, int32_t steps, double *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_to_bus(hilum_mass value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_from_bus(int32_t steps, int32_t ddi, hilum_mass *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_volume_to_bus(hilum_volume value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_volume_from_bus(int32_t steps, int32_t ddi, hilum_volume *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_seeds_to_bus(hilum_seeds value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_seeds_from_bus(int32_t steps, int32_t ddi, hilum_seeds *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_area_to_bus(hilum_area value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_area_from_bus(int32_t steps, int32_t ddi, hilum_area *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_share_to_bus(hilum_share value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_share_from_bus(int32_t steps, int32_t ddi, hilum_share *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_temperature_to_bus(hilum_temperature value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_temperature_from_bus(int32_t steps, int32_t ddi, hilum_temperature *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_density_to_bus(hilum_density value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_density_from_bus(int32_t steps, int32_t ddi, hilum_density *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_seed_flow_to_bus(hilum_seed_flow value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_seed_flow_from_bus(int32_t steps, int32_t ddi, hilum_seed_flow *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_flow_to_bus(hilum_flow value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_flow_from_bus(int32_t steps, int32_t ddi, hilum_flow *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_per_seed_to_bus(hilum_mass_per_seed value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_per_seed_from_bus(int32_t steps, int32_t ddi, hilum_mass_per_seed *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_per_area_to_bus(hilum_mass_per_area value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_mass_per_area_from_bus(int32_t steps, int32_t ddi, hilum_mass_per_area *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_sown_to_bus(hilum_sown value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_sown_from_bus(int32_t steps, int32_t ddi, hilum_sown *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_mass_to_bus(hilum_rate_per_mass value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_mass_from_bus(int32_t steps, int32_t ddi, hilum_rate_per_mass *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_seed_to_bus(hilum_rate_per_seed value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_seed_from_bus(int32_t steps, int32_t ddi, hilum_rate_per_seed *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_area_to_bus(hilum_rate_per_area value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_rate_per_area_from_bus(int32_t steps, int32_t ddi, hilum_rate_per_area *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_dry_per_mass_to_bus(hilum_dry_per_mass value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_dry_per_mass_from_bus(int32_t steps, int32_t ddi, hilum_dry_per_mass *out);

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_active_per_mass_to_bus(hilum_active_per_mass value, int32_t ddi, int32_t *out);

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
int32_t hilum_active_per_mass_from_bus(int32_t steps, int32_t ddi, hilum_active_per_mass *out);

/* ==== Many at once ======================================================================================== */

/// n numbers of a unit, as hilum_mass_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_mass_from_n(const double *values, int32_t unit, hilum_mass *out, size_t n, size_t *bad);

/// How many of a unit each of n is, as hilum_mass_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_mass_in_n(const hilum_mass *masses, int32_t unit, double *out, size_t n, size_t *bad);

/// n numbers of a unit, as hilum_volume_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_volume_from_n(const double *values, int32_t unit, hilum_volume *out, size_t n, size_t *bad);

/// How many of a unit each of n is, as hilum_volume_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_volume_in_n(const hilum_volume *volumes, int32_t unit, double *out, size_t n, size_t *bad);

/// n numbers of a unit, as hilum_area_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_area_from_n(const double *values, int32_t unit, hilum_area *out, size_t n, size_t *bad);

/// How many of a unit each of n is, as hilum_area_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_area_in_n(const hilum_area *areas, int32_t unit, double *out, size_t n, size_t *bad);

/// n numbers of a unit over per x per_unit, as hilum_seed_size_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_seed_size_from_n(const double *values,
                               int32_t unit,
                               double per,
                               int32_t per_unit,
                               hilum_seed_size *out,
                               size_t n,
                               size_t *bad);

/// How many of a unit over per x per_unit each of n is, as hilum_seed_size_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_seed_size_in_n(const hilum_seed_size *sizes,
                             int32_t unit,
                             double per,
                             int32_t per_unit,
                             double *out,
                             size_t n,
                             size_t *bad);

/// n numbers of a unit over per x per_unit, as hilum_sown_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_sown_from_n(const double *values,
                          int32_t unit,
                          double per,
                          int32_t per_unit,
                          hilum_sown *out,
                          size_t n,
                          size_t *bad);

/// How many of a unit over per x per_unit each of n is, as hilum_sown_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_sown_in_n(const hilum_sown *sowings,
                        int32_t unit,
                        double per,
                        int32_t per_unit,
                        double *out,
                        size_t n,
                        size_t *bad);

/// n numbers of a unit over per x per_unit, as hilum_rate_per_mass_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_mass_from_n(const double *values,
                                   int32_t unit,
                                   double per,
                                   int32_t per_unit,
                                   hilum_rate_per_mass *out,
                                   size_t n,
                                   size_t *bad);

/// How many of a unit over per x per_unit each of n is, as hilum_rate_per_mass_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_mass_in_n(const hilum_rate_per_mass *rates,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 double *out,
                                 size_t n,
                                 size_t *bad);

/// n numbers of a unit over per x per_unit, as hilum_rate_per_seed_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_seed_from_n(const double *values,
                                   int32_t unit,
                                   double per,
                                   int32_t per_unit,
                                   hilum_rate_per_seed *out,
                                   size_t n,
                                   size_t *bad);

/// How many of a unit over per x per_unit each of n is, as hilum_rate_per_seed_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_seed_in_n(const hilum_rate_per_seed *doses,
                                 int32_t unit,
                                 double per,
                                 int32_t per_unit,
                                 double *out,
                                 size_t n,
                                 size_t *bad);

/// What each of n masses of seed needs at one rate: rate x mass.
/// Errors: as for hilum_rate_per_mass_needed, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_mass_needed_n(hilum_rate_per_mass rate,
                                     const hilum_mass *seed,
                                     hilum_volume *out,
                                     size_t n,
                                     size_t *bad);

/// What each of n masses of seed needs at one dry rate: rate x mass.
/// Errors: as for hilum_dry_per_mass_needed, with the first bad element in bad; none is written then.
int32_t hilum_dry_per_mass_needed_n(hilum_dry_per_mass rate,
                                    const hilum_mass *seed,
                                    hilum_mass *out,
                                    size_t n,
                                    size_t *bad);

/// One rate on one seed of each of n sizes: rate / size.
/// Errors: as for hilum_rate_per_mass_to_per_seed, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_mass_to_per_seed_n(hilum_rate_per_mass rate,
                                          const hilum_seed_size *sizes,
                                          hilum_rate_per_seed *out,
                                          size_t n,
                                          size_t *bad);

/// One dose per seed as a rate per mass of each of n sizes: dose x size.
/// Errors: as for hilum_rate_per_seed_to_per_mass, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_seed_to_per_mass_n(hilum_rate_per_seed dose,
                                          const hilum_seed_size *sizes,
                                          hilum_rate_per_mass *out,
                                          size_t n,
                                          size_t *bad);

/// What each of n numbers of seeds needs at one dose: dose x seeds.
/// Errors: as for hilum_rate_per_seed_needed, with the first bad element in bad; none is written then.
int32_t hilum_rate_per_seed_needed_n(hilum_rate_per_seed dose,
                                     const hilum_seeds *seeds,
                                     hilum_volume *out,
                                     size_t n,
                                     size_t *bad);

/// How many seeds there are in each of n masses, each of its own size: mass x size.
/// Errors: as for hilum_seed_size_count_in, with the first bad element in bad; none is written then.
int32_t hilum_seed_size_count_in_n(const hilum_seed_size *sizes,
                                   const hilum_mass *seed,
                                   hilum_seeds *out,
                                   size_t n,
                                   size_t *bad);

/// What each of n numbers of seeds weighs, each of its own size: seeds / size.
/// Errors: as for hilum_seed_size_mass_of, with the first bad element in bad; none is written then.
int32_t hilum_seed_size_mass_of_n(const hilum_seed_size *sizes,
                                  const hilum_seeds *seeds,
                                  hilum_mass *out,
                                  size_t n,
                                  size_t *bad);

/// Cells on each seed at each of n doses: titre x dose x recovery.
/// Errors: as for hilum_titre_per_volume_cells, with the first bad element in bad; none is written then.
int32_t hilum_titre_per_volume_cells_n(hilum_titre_per_volume titre,
                                       hilum_share recovery,
                                       const hilum_rate_per_seed *doses,
                                       hilum_cells_per_seed *out,
                                       size_t n,
                                       size_t *bad);

/* ==== Rows of a table ===================================================================================== */

/// A column of numbers of a unit, given as text of length bytes without a number ("fl oz/unit"), in base units of what
/// it measures, or in degrees Celsius. hilum_text_read of "1 fl oz/unit" tells what that is. units says how many seeds
/// "unit" is in each row, bushels what "bu" weighs; NULL where the text has none.
///
/// Errors: the texts' (200 and up). Of a row: as for hilum_text_read; HILUM_OUT_OF_RANGE beyond 1e-30 to 1e30.
int32_t hilum_text_base_rows(const double *numbers,
                             const char *text,
                             size_t length,
                             const hilum_seeds *units,
                             const hilum_bushel *bushels,
                             double *out,
                             int32_t *codes,
                             size_t n);

/// The other way round: a column of base units as numbers of a unit. Not for temperatures.
///
/// Errors: the texts' (200 and up). Of a row: as for hilum_text_count_in.
int32_t hilum_text_count_in_rows(const double *numbers,
                                 const char *text,
                                 size_t length,
                                 const hilum_seeds *units,
                                 const hilum_bushel *bushels,
                                 double *out,
                                 int32_t *codes,
                                 size_t n);

/// How many seeds there are in a mass: mass x size.
/// Of a row: as for hilum_seed_size_count_in.
int32_t hilum_seed_size_count_in_rows(const hilum_seed_size *sizes,
                                      const hilum_mass *seed,
                                      hilum_seeds *out,
                                      int32_t *codes,
                                      size_t n);

/// What a number of seeds weighs: seeds / size.
/// Of a row: as for hilum_seed_size_mass_of.
int32_t hilum_seed_size_mass_of_rows(const hilum_seed_size *sizes,
                                     const hilum_seeds *seeds,
                                     hilum_mass *out,
                                     int32_t *codes,
                                     size_t n);

/// Seeds sown per area where seed is sown by mass: rate x size.
/// Of a row: as for hilum_sown_by_mass.
int32_t hilum_sown_by_mass_rows(const hilum_mass_per_area *rates,
                                const hilum_seed_size *sizes,
                                hilum_sown *out,
                                int32_t *codes,
                                size_t n);

/// The area that a number of seeds sows: seeds / sown.
/// Of a row: as for hilum_sown_area.
int32_t hilum_sown_area_rows(const hilum_sown *sown,
                             const hilum_seeds *seeds,
                             hilum_area *out,
                             int32_t *codes,
                             size_t n);

/// The same dose on one seed: rate / size.
/// Of a row: as for hilum_rate_per_mass_to_per_seed.
int32_t hilum_rate_per_mass_to_per_seed_rows(const hilum_rate_per_mass *rates,
                                             const hilum_seed_size *sizes,
                                             hilum_rate_per_seed *out,
                                             int32_t *codes,
                                             size_t n);

/// The same dose per mass of seed: dose x size.
/// Of a row: as for hilum_rate_per_seed_to_per_mass.
int32_t hilum_rate_per_seed_to_per_mass_rows(const hilum_rate_per_seed *doses,
                                             const hilum_seed_size *sizes,
                                             hilum_rate_per_mass *out,
                                             int32_t *codes,
                                             size_t n);

/// The same dose per area sown: dose x seeds sown per area.
/// Of a row: as for hilum_rate_per_seed_to_per_area.
int32_t hilum_rate_per_seed_to_per_area_rows(const hilum_rate_per_seed *doses,
                                             const hilum_sown *sown,
                                             hilum_rate_per_area *out,
                                             int32_t *codes,
                                             size_t n);

/// The same dose on one seed: dose / seeds sown per area.
/// Of a row: as for hilum_rate_per_area_to_per_seed.
int32_t hilum_rate_per_area_to_per_seed_rows(const hilum_rate_per_area *doses,
                                             const hilum_sown *sown,
                                             hilum_rate_per_seed *out,
                                             int32_t *codes,
                                             size_t n);

/// What a mass of seed needs at a dose: rate x mass.
/// Of a row: as for hilum_rate_per_mass_needed.
int32_t hilum_rate_per_mass_needed_rows(const hilum_rate_per_mass *rates,
                                        const hilum_mass *seed,
                                        hilum_volume *out,
                                        int32_t *codes,
                                        size_t n);

/// What a number of seeds needs at a dose: dose x seeds.
/// Of a row: as for hilum_rate_per_seed_needed.
int32_t hilum_rate_per_seed_needed_rows(const hilum_rate_per_seed *doses,
                                        const hilum_seeds *seeds,
                                        hilum_volume *out,
                                        int32_t *codes,
                                        size_t n);

/// The same dry dose on one seed: rate / size.
/// Of a row: as for hilum_dry_per_mass_to_per_seed.
int32_t hilum_dry_per_mass_to_per_seed_rows(const hilum_dry_per_mass *rates,
                                            const hilum_seed_size *sizes,
                                            hilum_dry_per_seed *out,
                                            int32_t *codes,
                                            size_t n);

/// The same dry dose per mass of seed: dose x size.
/// Of a row: as for hilum_dry_per_seed_to_per_mass.
int32_t hilum_dry_per_seed_to_per_mass_rows(const hilum_dry_per_seed *doses,
                                            const hilum_seed_size *sizes,
                                            hilum_dry_per_mass *out,
                                            int32_t *codes,
                                            size_t n);

/// The same dry dose per area sown: dose x seeds sown per area.
/// Of a row: as for hilum_dry_per_seed_to_per_area.
int32_t hilum_dry_per_seed_to_per_area_rows(const hilum_dry_per_seed *doses,
                                            const hilum_sown *sown,
                                            hilum_dry_per_area *out,
                                            int32_t *codes,
                                            size_t n);

/// The same dry dose on one seed: dose / seeds sown per area.
/// Of a row: as for hilum_dry_per_area_to_per_seed.
int32_t hilum_dry_per_area_to_per_seed_rows(const hilum_dry_per_area *doses,
                                            const hilum_sown *sown,
                                            hilum_dry_per_seed *out,
                                            int32_t *codes,
                                            size_t n);

/// What a mass of seed needs at a dry dose: rate x mass.
/// Of a row: as for hilum_dry_per_mass_needed.
int32_t hilum_dry_per_mass_needed_rows(const hilum_dry_per_mass *rates,
                                       const hilum_mass *seed,
                                       hilum_mass *out,
                                       int32_t *codes,
                                       size_t n);

/// What a number of seeds needs at a dry dose: dose x seeds.
/// Of a row: as for hilum_dry_per_seed_needed.
int32_t hilum_dry_per_seed_needed_rows(const hilum_dry_per_seed *doses,
                                       const hilum_seeds *seeds,
                                       hilum_mass *out,
                                       int32_t *codes,
                                       size_t n);

/// Active ingredient in a dose of liquid: rate x content.
/// Of a row: as for hilum_rate_per_mass_active.
int32_t hilum_rate_per_mass_active_rows(const hilum_rate_per_mass *rates,
                                        const hilum_active_content *contents,
                                        hilum_active_per_mass *out,
                                        int32_t *codes,
                                        size_t n);

/// Active ingredient in a dry dose: rate x share by mass.
/// Of a row: as for hilum_dry_per_mass_active.
int32_t hilum_dry_per_mass_active_rows(const hilum_dry_per_mass *rates,
                                       const hilum_share *shares,
                                       hilum_active_per_mass *out,
                                       int32_t *codes,
                                       size_t n);

/// The same active on one seed: rate / size.
/// Of a row: as for hilum_active_per_mass_to_per_seed.
int32_t hilum_active_per_mass_to_per_seed_rows(const hilum_active_per_mass *rates,
                                               const hilum_seed_size *sizes,
                                               hilum_active_per_seed *out,
                                               int32_t *codes,
                                               size_t n);

/// What the usable content of a set of liquid covers: content / rate.
/// Of a row: as for hilum_coverage_at.
int32_t hilum_coverage_at_rows(const hilum_volume *usable,
                               const hilum_rate_per_mass *rates,
                               hilum_coverage *out,
                               int32_t *codes,
                               size_t n);

/// What the usable content of a set of dry product covers: content / rate.
/// Of a row: as for hilum_coverage_at_dry.
int32_t hilum_coverage_at_dry_rows(const hilum_mass *usable,
                                   const hilum_dry_per_mass *rates,
                                   hilum_coverage *out,
                                   int32_t *codes,
                                   size_t n);

/// What each order needs by itself, in sets: seed / what a set covers. Orders that share sets are summed first, by
/// hilum_sets_needed_sum.
/// Of a row: as for hilum_sets_needed_sum with one order.
int32_t hilum_sets_needed_rows(const hilum_mass *seed,
                               const hilum_coverage *sets,
                               hilum_sets_needed *out,
                               int32_t *codes,
                               size_t n);

/// As whole sets: one ceiling, with a slack of 1e-9 of the number.
/// Of a row: as for hilum_sets_needed_whole.
int32_t hilum_sets_needed_whole_rows(const hilum_sets_needed *needed,
                                     uint64_t *out,
                                     int32_t *codes,
                                     size_t n);

/// What the season comes to with this seed: active per seed x seeds sown per area + used.
/// Of a row: as for hilum_season_limit_total.
int32_t hilum_season_limit_total_rows(const hilum_mass_per_area *limits,
                                      const hilum_mass_per_area *used,
                                      const hilum_active_per_seed *on_seed,
                                      const hilum_sown *sown,
                                      hilum_active_per_area *out,
                                      int32_t *codes,
                                      size_t n);

/// The share of the limit that this is: total / limit. 1 is all of it; more is not allowed.
/// Of a row: as for hilum_season_limit_total.
int32_t hilum_season_limit_share_rows(const hilum_mass_per_area *limits,
                                      const hilum_mass_per_area *used,
                                      const hilum_active_per_seed *on_seed,
                                      const hilum_sown *sown,
                                      double *out,
                                      int32_t *codes,
                                      size_t n);

/// Whether this is more than the limit, by more than 1e-9 of it; false in a row that is refused.
/// Of a row: as for hilum_season_limit_total.
int32_t hilum_season_limit_exceeded_rows(const hilum_mass_per_area *limits,
                                         const hilum_mass_per_area *used,
                                         const hilum_active_per_seed *on_seed,
                                         const hilum_sown *sown,
                                         bool *out,
                                         int32_t *codes,
                                         size_t n);

/// The sowing rate at which the limit is met: (limit - used) / active per seed; 0 when nothing is left.
/// Of a row: as for hilum_season_limit_max_sowing.
int32_t hilum_season_limit_max_sowing_rows(const hilum_mass_per_area *limits,
                                           const hilum_mass_per_area *used,
                                           const hilum_active_per_seed *on_seed,
                                           hilum_sown *out,
                                           int32_t *codes,
                                           size_t n);

/// Which survival curve and which storage history each of n rows has.
typedef struct {
    /// The curves, one for each product.
    const hilum_survival *curves;
    /// How many there are.
    size_t n_curves;
    /// Which of them each row has, counted from 0.
    const int32_t *which;
    /// Where the periods of each row begin, counted from 0, and after the last where they end: n + 1 numbers.
    const int32_t *first;
    /// How long each period lasts. The last of a row goes on, whatever it says.
    const hilum_time *lasts;
    /// The temperature of each period.
    const hilum_temperature *at;
    /// How many periods there are in all.
    size_t n_periods;
} hilum_kept_rows;

/// Cells on each seed when it is treated: titre x dose x recovery.
/// Of a row: as for hilum_titre_per_volume_cells.
int32_t hilum_titre_per_volume_cells_rows(const hilum_titre_per_volume *titres,
                                          const hilum_rate_per_seed *doses,
                                          const hilum_share *recoveries,
                                          hilum_cells_per_seed *out,
                                          int32_t *codes,
                                          size_t n);

/// Cells on each seed when it is treated: titre x dose x recovery.
/// Of a row: as for hilum_titre_per_mass_cells.
int32_t hilum_titre_per_mass_cells_rows(const hilum_titre_per_mass *titres,
                                        const hilum_dry_per_seed *doses,
                                        const hilum_share *recoveries,
                                        hilum_cells_per_seed *out,
                                        int32_t *codes,
                                        size_t n);

/// Cells on each seed after a time in storage: cells at treating x 10^(log10 S). None left is 0.
/// work: as many as the longest history has periods.
///
/// Errors: NULL. Of a row: HILUM_NO_SUCH_INDEX where it has no such curve or periods; HILUM_ROOM_TOO_SMALL for its
/// periods; as for hilum_survival_count.
int32_t hilum_survival_count_rows(const hilum_kept_rows *of,
                                  const hilum_cells_per_seed *at_treating,
                                  const hilum_time *after,
                                  hilum_work *work,
                                  size_t n_work,
                                  hilum_cells_per_seed *out,
                                  int32_t *codes,
                                  size_t n);

/// The last moment at which there are enough cells on a seed, as hilum_crossing has it: at and is. work: as many as the
/// longest history has periods.
///
/// Errors: as for hilum_survival_count_rows.
int32_t hilum_survival_crossing_rows(const hilum_kept_rows *of,
                                     const hilum_cells_per_seed *at_treating,
                                     const hilum_cells_per_seed *minimum,
                                     hilum_work *work,
                                     size_t n_work,
                                     hilum_time *at,
                                     int32_t *is,
                                     int32_t *codes,
                                     size_t n);

/// How long each seed may wait, as hilum_plant_by has it: within, is and because. on_seed and partners may be NULL where
/// nothing is stated, and so may crossing_at together with crossing_is.
///
/// Errors: NULL. Of a row: as for hilum_plant_by_of with one partner.
int32_t hilum_plant_by_of_rows(const hilum_life *on_seed,
                               const hilum_life *partners,
                               const hilum_time *crossing_at,
                               const int32_t *crossing_is,
                               hilum_time *within,
                               int32_t *is,
                               int32_t *because,
                               int32_t *codes,
                               size_t n);

#ifdef HILUM_JOB

/* ==== Whole jobs as documents (define HILUM_JOB if the library has them) ================================== */

/// Plans a job: a JSON document of length bytes in, the plan as a JSON document out, the very bytes that every other
/// language of this library writes. The documents are described in the project's documentation.
///
/// out has room for capacity bytes; how many were written, or (HILUM_ROOM_TOO_SMALL) are needed, goes to out_length. No
/// NUL is written. Ask with a capacity of 0 first, or give a generous one. With HILUM_REFUSED the problems are
/// written instead of the plan: a JSON list of {"pointer": where, "value": what stands there, "message": what is
/// wrong and what would be right}.
///
/// Errors: NULL; HILUM_NOT_UTF8; HILUM_ROOM_TOO_SMALL; HILUM_REFUSED. Memory is allocated while it runs, and given back.
int32_t hilum_plan_json(const char *job,
                        size_t length,
                        char *out,
                        size_t capacity,
                        size_t *out_length);

/// Accounts for a run: a JSON document of length bytes in, the account as a JSON document out. As hilum_plan_json in
/// all else.
int32_t hilum_account_json(const char *run,
                           size_t length,
                           char *out,
                           size_t capacity,
                           size_t *out_length);

#endif /* HILUM_JOB */

#ifdef __cplusplus
} /* extern "C" */
#endif

#endif /* HILUM_H_INCLUDED */
