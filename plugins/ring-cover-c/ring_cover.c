/* A library of computed knots in plain C: one knot, a ring covered with half hitches. Copy it to begin a library of your own.
 *
 *     cc -std=c11 -ffp-contract=off -O2 -Wall -Wextra -Wpedantic -Werror -I ../kit -fPIC -shared -o libring_cover.so ring_cover.c
 *
 * `-ffp-contract=off` keeps a multiplication and an addition apart, so that figures are the same to the last bit on every
 * machine. For the same reason there is nothing here but sums, products and quotients: what `sin` or `atan` return differs
 * from one C library to the next.
 */
#include "reeve_knots.h"

#include <stdio.h>

static const double PI = 3.14159265358979323846;

/* Seconds for one hitch with drawing it down, and for each metre drawn through. From memory. */
#define HITCH_S 5.0
#define PULL_S_PER_M 1.2

/* The program cuts no cord longer than this. It also keeps every figure within the ranges that the contract sets: a figure
 * outside of them would be the library's fault, a refusal is not. */
#define LONGEST_MM 500000.0

/* ---- What the knot is. All of this is constant and stays where it is, as the contract asks. ---- */

static const reeve_text also[] = {
    REEVE_TEXT("cover of half hitches"),
    REEVE_TEXT("buttonholed ring"),
};

/* Places in `parameters`: `setting->parameters` and `taken->parameter` count in the same order. */
enum { INSIDE };

static const reeve_parameter parameters[] = {
    [INSIDE] = {
        .size = sizeof(reeve_parameter),
        .unit = REEVE_MM,
        /* A larger ring never takes less: the probe tries it. */
        .flags = REEVE_GROWS,
        .name = REEVE_TEXT("inside"),
        .about = REEVE_TEXT("Inside width of the bare ring."),
        .least = 10.0,
        .most = 600.0,
        .usual = 50.0,
    },
};

static const reeve_knot ring_cover = {
    .size = sizeof(reeve_knot),
    .kind = REEVE_WRAP,
    /* It is tied on the ring itself, and its cord comes along for it. */
    .flags = REEVE_ON_FITTING | REEVE_JOINS | REEVE_CORE_GROWS | REEVE_GIVE_SHRINKS,
    .take_up_source = REEVE_GEOMETRY,
    .time_source = REEVE_FROM_MEMORY,
    .working_least = 1,
    .working_most = 1,
    /* No core legs: only a fitting can be covered. */
    .core_least = 0,
    .core_most = 0,
    .also_count = sizeof(also) / sizeof(also[0]),
    .parameter_count = sizeof(parameters) / sizeof(parameters[0]),
    .name = REEVE_TEXT("ring-cover"),
    .title = REEVE_TEXT("ring cover"),
    .summary = REEVE_TEXT("A ring is covered all the way round with half hitches that touch each other on its inner side; "
                          "where each comes out over its own turn they make a ridge on the outer side."),
    .take_up_note = REEVE_TEXT("As many hitches as cords lie side by side on the inner side. Each goes once round the section, "
                               "steps over by one cord, and half round its own turn, as in the catalogue's half hitch."),
    .time_note = REEVE_TEXT("Five seconds a hitch, and 1.2 seconds for each metre drawn through. Remembered, not timed."),
    .also = also,
    .parameters = parameters,
    .pull_s_per_m = PULL_S_PER_M,
};

static const reeve_knot *knot(uint32_t place)
{
    return place == 0 ? &ring_cover : NULL;
}

/* ---- What one of it takes. Lengths in millimetres. ---- */

/* How many whole hitches there are on the inner side: the middles of the cords run half a cord inside the bare ring.
 *
 * Whole numbers are where scaling a piece goes wrong easily: divide lengths by lengths first, then cut off. Twice the ring in
 * twice the cord must have as many hitches. The quotient is at most 19 thousand, so it fits.
 */
static double hitches(double way, double cord)
{
    return (double)(uint32_t)(way / cord);
}

/* Length of one hitch.
 *
 * Once round the section with the cord's middle half a cord outside it, which the program's `core_mm` makes as simple for
 * a flat section as for a round one. One cord across to the next hitch. And half a turn about its own turn, whose middle
 * is one cord away, less what cords sink into each other; the ring itself gives nothing.
 */
static double hitch(double section, double cord, double give)
{
    return PI * (section + cord) + cord + PI * cord * (1.0 - give);
}

/* Says why it can't be tied: the value, the limit and what would do. */
static uint32_t refuse_hole(reeve_taken *taken, double inside, double cord, double least)
{
    taken->parameter = INSIDE;
    snprintf(taken->words, sizeof(taken->words),
             "a ring of %.1f mm inside leaves no hole when it is covered with a cord of %.1f mm. Take a ring of %.1f mm inside "
             "or more, or a thinner cord",
             inside, cord, least);
    return REEVE_REFUSED;
}

static uint32_t refuse_length(reeve_taken *taken, double working)
{
    taken->parameter = INSIDE;
    snprintf(taken->words, sizeof(taken->words),
             "it takes %.0f m of cord, and one piece is at most %.0f m. Take a smaller ring or a thicker cord",
             working / 1000.0, LONGEST_MM / 1000.0);
    return REEVE_REFUSED;
}

static uint32_t take(uint32_t place, const reeve_setting *setting, reeve_taken *taken)
{
    if (place != 0) {
        return REEVE_FAILED;
    }
    const double inside = setting->parameters[INSIDE];
    const double cord = setting->cord_mm;
    /* The cord lies on both sides of the hole, and one more should still go through it. */
    const double least = 3.0 * cord;
    if (inside < least) {
        return refuse_hole(taken, inside, cord, least);
    }
    const double way = PI * (inside - cord);
    const double count = hitches(way, cord);
    const double working = count * hitch(setting->core_mm, cord, setting->give);
    if (working > LONGEST_MM) {
        return refuse_length(taken, working);
    }
    taken->working_mm = working;
    /* On a fitting the rise is the room that the knot needs side by side; on a ring there is as much as its inner side is
     * long. A cover leaves none to other knots, so it is the whole way of its own cords, a little less than that. */
    taken->rise_mm = way;
    /* Each hitch draws through what is left of the cord. What still hangs below the knot the program times by `draws`; the
     * cord that goes into the knot itself is drawn through half of the times on the whole, and belongs here. */
    taken->draws = count;
    taken->base_s = count * (HITCH_S + PULL_S_PER_M * working / 2.0 / 1000.0);
    /* There are no core legs, and the program has filled `core_mm` with zero already. */
    return REEVE_DONE;
}

/* ---- The table: the one thing that the library exports. ---- */

const reeve_library reeve_knots = {
    .magic = REEVE_MAGIC,
    .major = REEVE_MAJOR,
    .minor = REEVE_MINOR,
    .size = sizeof(reeve_library),
    .knot_count = 1,
    .name = REEVE_TEXT("ring-cover"),
    .version = REEVE_TEXT("1.0.0"),
    .knot = knot,
    .take = take,
};
