/* Reads a case of the check values: "id\tfunction\tname=input...\t>name=bits" or "\t!refusal". */
#include <hilum.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST = 12, LONGEST = 160 };

typedef struct {
    char name[24], text[LONGEST];
} field;

static struct {
    char id[LONGEST], function[40];
    field inputs[MOST], results[MOST];
    int n_inputs, n_results;
    char refusal[40];
} now;

/* The first thing wrong with an input. */
static int32_t bad;

/* What the function gave. */
static field given[4];
static int n_given;

static void split(field *into, const char *from) {
    const char *equals = strchr(from, '=');
    snprintf(into->name, sizeof into->name, "%.*s", (int)(equals - from), from);
    snprintf(into->text, sizeof into->text, "%s", equals + 1);
}

static void read_case(const char *line) {
    char part[2 * LONGEST];
    int n = 0;
    memset(&now, 0, sizeof now);
    bad = 0;
    n_given = 0;
    while (*line && *line != '\n') {
        size_t length = strcspn(line, "\t\n");
        snprintf(part, sizeof part, "%.*s", (int)length, line);
        line += length;
        if (*line == '\t') line++;
        if (n == 0) snprintf(now.id, sizeof now.id, "%.*s", LONGEST - 1, part);
        else if (n == 1) snprintf(now.function, sizeof now.function, "%.39s", part);
        else if (part[0] == '>') split(&now.results[now.n_results++], part + 1);
        else if (part[0] == '!') snprintf(now.refusal, sizeof now.refusal, "%.39s", part + 1);
        else split(&now.inputs[now.n_inputs++], part);
        n++;
    }
}

static const char *input(const char *name) {
    int i;
    for (i = 0; i < now.n_inputs; i++)
        if (strcmp(now.inputs[i].name, name) == 0) return now.inputs[i].text;
    return NULL;
}

static bool has(const char *name) { return input(name) != NULL; }

/* An input that is a plain number. */
static double number(const char *name) { return strtod(input(name), NULL); }

static void note(int32_t status) {
    if (bad == 0) bad = status;
}

/* What "unit" and "bushel" say of the others. */
static const hilum_seed_unit *unit_meant(void) {
    static hilum_seed_unit unit;
    hilum_measured measured;
    const char *text = input("unit");
    if (!text || hilum_text_read(text, strlen(text), NULL, NULL, &measured)) return NULL;
    memset(&unit, 0, sizeof unit);
    unit.is = measured.powers.mass == 1 ? HILUM_UNIT_OF_MASS : HILUM_UNIT_OF_SEEDS;
    unit.seeds.seeds = unit.mass.kg = measured.value;
    return measured.value > 0 ? &unit : NULL;
}

static const hilum_bushel *bushel_meant(void) {
    static hilum_bushel bushel;
    hilum_measured measured;
    const char *text = input("bushel");
    if (!text || hilum_text_read(text, strlen(text), NULL, NULL, &measured)) return NULL;
    bushel.kg = measured.value;
    return measured.value > 0 ? &bushel : NULL;
}

static hilum_measured measured(const char *name) {
    hilum_measured result;
    const char *text = input(name);
    memset(&result, 0, sizeof result);
    note(hilum_text_read(text, strlen(text), unit_meant(), bushel_meant(), &result));
    return result;
}

static bool same(hilum_powers a, hilum_powers b) {
    return a.length == b.length && a.mass == b.mass && a.time == b.time && a.temperature == b.temperature &&
           a.seeds == b.seeds && a.cells == b.cells;
}

static double amount(const char *name, hilum_powers powers) {
    hilum_measured result = measured(name);
    if (bad == 0 && (result.is != HILUM_AMOUNT || !same(result.powers, powers))) note(HILUM_WRONG_DIMENSION);
    return result.value;
}

static hilum_temperature temperature(const char *name) {
    hilum_measured result = measured(name);
    hilum_temperature at = {result.value};
    if (bad == 0 && result.is != HILUM_TEMPERATURE) note(HILUM_NOT_A_TEMPERATURE);
    return at;
}

static bool is_liquid(const char *name) { return measured(name).powers.length == 3; }

/* A reader for each type. */
#define READER(type, l, m, t, k, s, c)                       \
    static hilum_##type type(const char *name) {             \
        const hilum_powers powers = {l, m, t, k, s, c};      \
        hilum_##type result = {amount(name, powers)};        \
        return result;                                       \
    }
READER(mass, 0, 1, 0, 0, 0, 0)
READER(volume, 3, 0, 0, 0, 0, 0)
READER(time, 0, 0, 1, 0, 0, 0)
READER(temperature_difference, 0, 0, 0, 1, 0, 0)
READER(seeds, 0, 0, 0, 0, 1, 0)
READER(share, 0, 0, 0, 0, 0, 0)
READER(seed_size, 0, -1, 0, 0, 1, 0)
READER(sown, -2, 0, 0, 0, 1, 0)
READER(mass_per_area, -2, 1, 0, 0, 0, 0)
READER(mass_per_seed, 0, 1, 0, 0, -1, 0)
READER(area, 2, 0, 0, 0, 0, 0)
READER(hold_up, 3, 0, 0, 0, 0, 0)
READER(bushel, 0, 1, 0, 0, 0, 0)
READER(coverage, 0, 1, 0, 0, 0, 0)
READER(density, -3, 1, 0, 0, 0, 0)
READER(active_content, -3, 1, 0, 0, 0, 0)
READER(titre_per_volume, -3, 0, 0, 0, 0, 1)
READER(titre_per_mass, 0, -1, 0, 0, 0, 1)
READER(seed_flow, 0, 1, -1, 0, 0, 0)
READER(flow, 3, 0, -1, 0, 0, 0)
READER(decimal_reduction, 0, 0, 1, 0, 0, 0)
READER(rate_per_mass, 3, -1, 0, 0, 0, 0)
READER(rate_per_seed, 3, 0, 0, 0, -1, 0)
READER(rate_per_area, 1, 0, 0, 0, 0, 0)
READER(dry_per_area, -2, 1, 0, 0, 0, 0)
READER(dry_per_mass, 0, 0, 0, 0, 0, 0)
READER(dry_per_seed, 0, 1, 0, 0, -1, 0)
READER(active_per_mass, 0, 0, 0, 0, 0, 0)
READER(active_per_seed, 0, 1, 0, 0, -1, 0)
READER(cells_per_seed, 0, 0, 0, 0, -1, 1)

/* Goes on if nothing is wrong yet. */
#define TRY(call)                   \
    do {                            \
        int32_t status_;            \
        if (bad) return bad;        \
        status_ = (call);           \
        if (status_) return status_; \
    } while (0)

/* One result. */
static int32_t give(const char *name, double value) {
    field *into = &given[n_given++];
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    snprintf(into->name, sizeof into->name, "%s", name);
    snprintf(into->text, sizeof into->text, "%08lx%08lx", (unsigned long)(bits >> 32),
             (unsigned long)(bits & 0xFFFFFFFF));
    return HILUM_OK;
}

static const char *given_as(const char *name) {
    int i;
    for (i = 0; i < n_given; i++)
        if (strcmp(given[i].name, name) == 0) return given[i].text;
    return "nothing";
}
