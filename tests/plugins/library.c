/* A small library of two knots, and every way in which it can misbehave: one is chosen when it is compiled, by -D. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <math.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <unistd.h>

#include "reeve_knots.h"

#ifndef LIBRARY
#define LIBRARY "small"
#endif
#ifndef KNOT
#define KNOT "band"
#endif
#ifndef VERSION
#define VERSION "1.0"
#endif
#ifndef MAJOR
#define MAJOR REEVE_MAJOR
#endif
#ifndef MINOR
#define MINOR REEVE_MINOR
#endif
#ifndef MAGIC
#define MAGIC REEVE_MAGIC
#endif
#ifndef SIZE
#define SIZE sizeof(reeve_library)
#endif
#ifndef TITLE
#define TITLE KNOT
#endif
#ifndef USUAL
#define USUAL 8
#endif
#ifndef MOST
#define MOST 40
#endif

static const reeve_parameter parameters[] = {
    {
        .size = sizeof(reeve_parameter),
        .unit = REEVE_NUMBER,
        .flags = REEVE_WHOLE | REEVE_GROWS,
        .name = REEVE_TEXT("turns"),
        .about = REEVE_TEXT("Turns of the band."),
        .least = 1,
        .most = MOST,
        .usual = USUAL,
    },
    {
        .size = sizeof(reeve_parameter),
        .unit = REEVE_MM,
        .name = REEVE_TEXT("apart"),
        .about = REEVE_TEXT("How far the turns lie apart."),
        .least = 0,
        .most = 50,
        .usual = 0,
    },
};

static const reeve_text cautions[] = { REEVE_TEXT("A band can slip: it holds nothing that must not fall.") };

static const reeve_knot band = {
    .size = sizeof(reeve_knot),
    .kind = REEVE_WRAP,
    .flags = REEVE_JOINS | REEVE_ON_FITTING | REEVE_CORE_GROWS | REEVE_GIVE_SHRINKS,
    .take_up_source = REEVE_GEOMETRY,
    .time_source = REEVE_FROM_MEMORY,
    .working_least = 1,
    .working_most = 1,
    .core_least = 1,
    .core_most = 24,
    .name = REEVE_TEXT(KNOT),
    .title = REEVE_TEXT(TITLE),
    .summary = REEVE_TEXT("Turns round a bundle."),
    .take_up_note = REEVE_TEXT("Each turn is pi times core and cord."),
    .time_note = REEVE_TEXT("Only for these tests."),
    .parameters = parameters,
    .parameter_count = 2,
    .cautions = cautions,
    .caution_count = 1,
    .pull_s_per_m = 1,
};

static const reeve_knot *knot(uint32_t place)
{
#ifdef DESCRIBES_NOTHING
    (void)place;
    return NULL;
#elif defined(DESCRIBES_BADLY)
    (void)place;
    return (const reeve_knot *)8;
#elif defined(FICKLE_DESCRIPTION)
    static reeve_knot other;
    other = band;
    other.working_most = 1 + (uint32_t)getpid() % 20;
    return place == 0 ? &other : NULL;
#else
    return place == 0 ? &band : NULL;
#endif
}

#ifdef OVERFLOWS
static int deep(volatile int *above)
{
    volatile int here[1000];
    here[0] = above[0] + 1;
    return deep(here) + here[0];
}
#endif

#if defined(SEGFAULTS) || defined(CRASHES_LATE)
/* A pointer that the compiler can't see through. */
static void crash(void)
{
    volatile int *volatile nowhere = NULL;
    *nowhere = 1;
}
#endif

/* What goes wrong in a call; nothing in a good library. */
static void misbehave(reeve_taken *taken)
{
    (void)taken;
#ifdef ABORTS
    abort();
#elif defined(SEGFAULTS)
    crash();
#elif defined(HANGS)
    for (;;)
        ;
#elif defined(SLEEPS)
    for (;;)
        sleep(1000);
#elif defined(EATS)
    for (;;)
        memset(malloc(1 << 24), 1, 1 << 24);
#elif defined(OVERFLOWS)
    int start[1] = { 0 };
    taken->base_s = deep(start);
#elif defined(EXITS)
    exit(0);
#elif defined(PRINTS)
    printf("this is not an answer\n");
    fflush(stdout);
    if (write(1, "nor is this\n", 12) < 0)
        abort();
#elif defined(CLOSES)
    for (int fd = 0; fd < 1024; fd++)
        close(fd);
#elif defined(SCRIBBLES)
    for (int fd = 3; fd < 1024; fd++)
        if (write(fd, "\3\0\0\0abc", 7) < 0)
            continue;
#elif defined(CRASHES_LATE)
    static int calls;
    if (++calls == 1000)
        crash();
#endif
}

#ifdef REACHES
/* What a library must not reach: each that it does reach adds a bit. */
static double reached(void)
{
    int bits = 0;
    int fd = open(REACHES "/written", O_WRONLY | O_CREAT, 0600);
    if (fd >= 0 && write(fd, "x", 1) == 1)
        bits |= 1;
    if (open(REACHES "/secret", O_RDONLY) >= 0)
        bits |= 2;
    if (unlink(REACHES "/secret") == 0)
        bits |= 4;
    if (mkdir(REACHES "/made", 0700) == 0)
        bits |= 8;
    if (socket(AF_INET, SOCK_DGRAM, 0) >= 0)
        bits |= 16;
    pid_t child = fork();
    if (child == 0)
        for (;;)
            sleep(1000);
    if (child > 0)
        bits |= 32;
    if (system("exit 7") == 7 * 256)
        bits |= 64;
    if (kill(getppid(), 0) == 0)
        bits |= 128;
    if (getenv("PATH") || getenv("HOME"))
        bits |= 256;
    return bits;
}
#endif

static uint32_t take(uint32_t place, const reeve_setting *setting, reeve_taken *taken)
{
    double turns = setting->parameters[0];
    double apart = setting->parameters[1];
    double pitch = setting->cord_mm + apart;

    if (place != 0)
        return REEVE_FAILED;
    misbehave(taken);
    if (apart > 5 * setting->cord_mm) {
        taken->parameter = 1;
        snprintf(taken->words, sizeof taken->words, "turns %g mm apart show the core; at most %g mm cover it", apart,
                 5 * setting->cord_mm);
        return REEVE_REFUSED;
    }
    taken->rise_mm = turns * pitch;
    taken->core_mm = taken->rise_mm;
    taken->working_mm =
        turns * hypot(3.14159265358979323846 * (setting->core_mm + setting->cord_mm * (1 - setting->give)), pitch);
    taken->base_s = 4 * turns;
    taken->draws = turns;
#ifdef ANSWERS
    taken->working_mm = ANSWERS;
#elif defined(FAILS)
    strcpy(taken->words, "the moon is in the wrong place");
    return REEVE_FAILED;
#elif defined(STATUS)
    return STATUS;
#elif defined(WAVERS)
    static int calls;
    taken->working_mm += ++calls;
#elif defined(SWAYS)
    taken->working_mm += (double)(getpid() % 1000);
#elif defined(SHRINKS)
    taken->working_mm = 1000 * setting->cord_mm / turns;
#elif defined(FIXED_LENGTH)
    taken->working_mm += 200;
#elif defined(CORE_SHRINKS)
    taken->working_mm = setting->cord_mm * setting->cord_mm / setting->core_mm * turns;
#elif defined(GIVE_GROWS)
    taken->working_mm *= 1 + setting->give;
#elif defined(REFUSES)
    taken->parameter = 77;
    strcpy(taken->words, "it is never right");
    return REEVE_REFUSED;
#elif defined(DAWDLES)
    if (turns == 7)
        usleep(60000);
#elif defined(REACHES)
    static double bits = -1;
    if (bits < 0)
        bits = reached();
    taken->base_s = 1000 + bits;
#endif
    return REEVE_DONE;
}

#ifdef LOADS_BADLY
__attribute__((constructor)) static void begin(void)
{
    abort();
}
#endif

#ifndef WITHOUT_TABLE
const reeve_library reeve_knots = {
    .magic = MAGIC,
    .major = MAJOR,
    .minor = MINOR,
    .size = SIZE,
    .knot_count = 1,
    .name = REEVE_TEXT(LIBRARY),
    .version = REEVE_TEXT(VERSION),
    .knot = knot,
#ifndef WITHOUT_TAKE
    .take = take,
#endif
};
#endif

/* Silences what is not used in some of the ways. */
void unused(void);
void unused(void)
{
    (void)knot;
    (void)take;
    (void)band;
}
