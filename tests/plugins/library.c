/* A small library of two knots, and every way in which it can misbehave: one is chosen when it is compiled, by -D. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <math.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>
#ifdef __linux__
#include <linux/futex.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#endif

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
    static int word;
    for (;;)
        syscall(SYS_futex, &word, FUTEX_WAIT, 0, NULL, NULL, 0);
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
    /* The pipe that answers go through. */
    if (write(101, "\3\0\0\0abc", 7) < 0)
        abort();
#elif defined(CRASHES_LATE)
    static int calls;
    if (++calls == 1000)
        crash();
#elif defined(UNLINKS)
    unlink("/tmp/reeve-never-there");
#elif defined(FORGETS)
    /* It would outlive the program. */
    prctl(PR_SET_PDEATHSIG, 0);
    for (;;)
        sleep(1000);
#elif defined(MISBEHAVES)
    MISBEHAVES;
#endif
}

#ifdef REACHES
/* What a library asks in passing and does not get: each that it does get adds a bit. */
static double reached(void)
{
    int bits = 0;
    struct stat about;
    char room[256];
    if (open(REACHES "/secret", O_RDONLY) >= 0)
        bits |= 1;
    if (stat(REACHES "/secret", &about) == 0)
        bits |= 2;
    if (access(REACHES "/secret", F_OK) == 0)
        bits |= 4;
    if (readlink("/proc/self/exe", room, sizeof room) > 0)
        bits |= 8;
    if (open("/usr", O_RDONLY) >= 0)
        bits |= 16;
    if (mmap(NULL, 4096, PROT_READ | PROT_WRITE | PROT_EXEC, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0) != MAP_FAILED)
        bits |= 32;
    if (mprotect((void *)((uintptr_t)room & ~(uintptr_t)4095), 4096, PROT_READ | PROT_WRITE | PROT_EXEC) == 0)
        bits |= 64;
    if (getenv("PATH") || getenv("HOME"))
        bits |= 128;
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
    for (clock_t end = clock() + (turns == 7) * 60 * CLOCKS_PER_SEC / 1000; clock() < end;)
        ;
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
