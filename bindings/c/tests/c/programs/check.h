/* What the test programs share. */
#include <hilum.h>
#include <stdio.h>
#include <string.h>

static int failed;

#define CHECK(what) ((what) ? (void)0 : (void)(failed++, printf("%s:%d: %s\n", __FILE__, __LINE__, #what)))

static void expect(int32_t status, int32_t wanted, int line) {
    if (status != wanted) {
        failed++;
        printf("line %d: %d (%s %s), expected %d\n", line, (int)status, hilum_status_subject(status),
               hilum_status_message(status), (int)wanted);
    }
}
#define OK(call) expect((call), HILUM_OK, __LINE__)
#define GIVES(wanted, call) expect((call), (wanted), __LINE__)
