/* Asks ring_cover.c one question: cord, give, section and inside, from the command line. Prints the status, then the figures
 * with all their digits or the words. */
#include "reeve_knots.h"

#include <stdio.h>
#include <stdlib.h>

int main(int count, char **words)
{
    if (count != 5) {
        return 2;
    }
    const double inside = strtod(words[4], NULL);
    const reeve_setting setting = {
        .size = sizeof(reeve_setting),
        .working = 1,
        .core = REEVE_ROD,
        .parameter_count = 1,
        .cord_mm = strtod(words[1], NULL),
        .give = strtod(words[2], NULL),
        .core_mm = strtod(words[3], NULL),
        .core_a_mm = strtod(words[3], NULL),
        .parameters = &inside,
    };
    reeve_taken taken = { .size = sizeof(reeve_taken), .parameter = REEVE_NO_PARAMETER };
    const reeve_knot *knot = reeve_knots.knot(0);
    if (reeve_knots.magic != REEVE_MAGIC || reeve_knots.knot(reeve_knots.knot_count) != NULL || knot == NULL) {
        return 3;
    }
    const uint32_t status = reeve_knots.take(0, &setting, &taken);
    if (status == REEVE_DONE) {
        printf("done %.17g %.17g %.17g %.17g\n", taken.working_mm, taken.rise_mm, taken.base_s, taken.draws);
    } else {
        printf("refused %lu %s\n", (unsigned long)taken.parameter, taken.words);
    }
    return 0;
}
