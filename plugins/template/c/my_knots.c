/* A library of knots of my own, in plain C:
 *
 *     cc -std=c11 -O2 -shared -fPIC -I.. my_knots.c -lm -o my_knots.so
 *     reeve knots probe my_knots.so
 */
#include <math.h>
#include <stdio.h>

#include "reeve_knots.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

/* Turns laid side by side round a bundle of legs, as far as a length that the design says. */

static const reeve_text also[] = { REEVE_TEXT("round binding") };

static const reeve_parameter parameters[] = {
    {
        .size = sizeof(reeve_parameter),
        .unit = REEVE_MM,
        .flags = REEVE_GROWS,
        .name = REEVE_TEXT("length"),
        .about = REEVE_TEXT("How much of the bundle is covered."),
        .least = 5,
        .most = 500,
        .usual = 30,
    },
};

static const reeve_knot seizing = {
    .size = sizeof(reeve_knot),
    .kind = REEVE_WRAP,
    .flags = REEVE_JOINS | REEVE_CORE_GROWS | REEVE_GIVE_SHRINKS,
    .take_up_source = REEVE_GEOMETRY,
    .time_source = REEVE_FROM_MEMORY,
    .working_least = 1,
    .working_most = 1,
    .core_least = 2,
    .core_most = 24,
    .name = REEVE_TEXT("round-seizing"),
    .title = REEVE_TEXT("round seizing"),
    .summary = REEVE_TEXT("Turns laid side by side round a bundle, its end drawn under them."),
    .take_up_note = REEVE_TEXT("As many turns as lie side by side on the length, and the end under them."),
    .time_note = REEVE_TEXT("Four seconds a turn. Not timed yet."),
    .also = also,
    .also_count = COUNT(also),
    .parameters = parameters,
    .parameter_count = COUNT(parameters),
    .pull_s_per_m = 1,
};

static const reeve_knot *knot(uint32_t place)
{
    return place == 0 ? &seizing : NULL;
}

static uint32_t take(uint32_t place, const reeve_setting *setting, reeve_taken *taken)
{
    const double pi = 3.14159265358979323846;
    double cord = setting->cord_mm;
    double length = setting->parameters[0];
    double turns = round(length / cord);

    if (place != 0)
        return REEVE_FAILED;
    if (turns < 2) {
        taken->parameter = 0;
        snprintf(taken->words, sizeof taken->words, "%g mm have no room for two turns of this cord; %g mm have", length,
                 2 * cord);
        return REEVE_REFUSED;
    }
    /* A cord that gives lies closer to what it is wound round. */
    taken->rise_mm = turns * cord;
    taken->core_mm = taken->rise_mm;
    taken->working_mm = turns * hypot(pi * (setting->core_mm + cord * (1 - setting->give)), cord) + taken->rise_mm;
    taken->base_s = 4 * turns;
    taken->draws = turns;
    return REEVE_DONE;
}

const reeve_library reeve_knots = {
    .magic = REEVE_MAGIC,
    .major = REEVE_MAJOR,
    .minor = REEVE_MINOR,
    .size = sizeof(reeve_library),
    .knot_count = 1,
    .name = REEVE_TEXT("my-c-knots"),
    .version = REEVE_TEXT("0.1.0"),
    .knot = knot,
    .take = take,
};
