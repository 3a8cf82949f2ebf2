/* Whole jobs: `job JOB.json PLAN.json` must write the plan's very bytes. */
#define HILUM_JOB
#include "check.h"
#include <stdlib.h>

static char *read_file(const char *path, size_t *length) {
    FILE *file = fopen(path, "rb");
    char *text;
    if (!file) exit(3);
    fseek(file, 0, SEEK_END);
    *length = (size_t)ftell(file);
    rewind(file);
    text = (char *)malloc(*length + 1);
    if (!text || fread(text, 1, *length, file) != *length) exit(3);
    fclose(file);
    return text;
}

int main(int n, char **arguments) {
    size_t job_length, plan_length, needed = 77, written;
    char *job, *plan, *out;
    const char untouched[4] = "abc";
    char small[4] = "abc";
    if (n != 3) return 2;
    job = read_file(arguments[1], &job_length);
    plan = read_file(arguments[2], &plan_length);
    /* Errors of the call leave everything as it was. */
    GIVES(HILUM_NULL, hilum_plan_json(NULL, 5, small, sizeof small, &needed));
    GIVES(HILUM_NULL, hilum_plan_json(job, job_length, small, sizeof small, NULL));
    GIVES(HILUM_NULL, hilum_plan_json(job, job_length, NULL, 10, &needed));
    GIVES(HILUM_NOT_UTF8, hilum_plan_json("\xff", 1, small, sizeof small, &needed));
    CHECK(needed == 77 && memcmp(small, untouched, sizeof small) == 0);
    /* Two calls: how long, then the plan. */
    GIVES(HILUM_ROOM_TOO_SMALL, hilum_plan_json(job, job_length, small, sizeof small, &needed));
    CHECK(needed == plan_length && memcmp(small, untouched, sizeof small) == 0);
    out = (char *)malloc(needed);
    if (!out) return 3;
    OK(hilum_plan_json(job, job_length, out, needed, &written));
    CHECK(written == plan_length && memcmp(out, plan, plan_length) == 0);
    /* What is no job is refused, and told why. */
    GIVES(HILUM_REFUSED, hilum_plan_json("{}", 2, out, needed, &written));
    CHECK(written > 10 && written <= needed && memcmp(out, "[{\"pointer\":", 12) == 0);
    GIVES(HILUM_REFUSED, hilum_account_json("{}", 2, out, needed, &written));
    CHECK(written > 10 && memcmp(out, "[{\"pointer\":", 12) == 0);
    free(out);
    free(plan);
    free(job);
    printf("%d failed\n", failed);
    return failed != 0;
}
