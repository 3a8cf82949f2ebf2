/* The header alone. */
#include <hilum.h>
#include <hilum.h>

int main(void) {
    return HILUM_VERSION_NUMBER == hilum_version_number() ? 0 : 1;
}
