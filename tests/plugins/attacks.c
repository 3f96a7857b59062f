/* The small library, which at one moment makes one call of the system: the test writes both into the compiled file.
 *
 * Calls are made without the C library, so that they can be made from a resolver too, before anything is resolved. */
#include <stdint.h>

enum { CONSTRUCTOR, RESOLVER, FIRST_CALL, THOUSANDTH_CALL };
/* What stands for an address or a number that only this process knows. */
enum { VICTIM_PATH = 0x7e000001, PARENT, ITSELF, ROOM, TEXT, QUEUED };

static volatile struct {
    char mark[16];
    int64_t moment, old_table, number, arguments[6];
} chosen = { "THE ATTACK IS:", 0, 0, 0, { 0 } };

static char room[1 << 16];
/* What goes with a queued signal: its number, an error, and a code below 0, which any process may send. */
static int queued[32] = { 0, 0, -1 };
static int reached;

static int64_t raw(int64_t number, int64_t a, int64_t b, int64_t c, int64_t d, int64_t e, int64_t f)
{
    int64_t result;
    register int64_t r10 __asm__("r10") = d;
    register int64_t r8 __asm__("r8") = e;
    register int64_t r9 __asm__("r9") = f;
    __asm__ volatile("syscall"
                     : "=a"(result)
                     : "a"(number), "D"(a), "S"(b), "d"(c), "r"(r10), "r"(r8), "r"(r9)
                     : "rcx", "r11", "memory");
    return result;
}

/* By the table of the 32-bit processor. */
static int64_t raw_old(int64_t number)
{
    int64_t result;
    __asm__ volatile("int $0x80" : "=a"(result) : "a"(number), "b"(0), "c"(0), "d"(0) : "memory", "r8", "r9", "r10", "r11");
    return (int32_t)result;
}

static int64_t meant(int64_t argument)
{
    switch (argument) {
    case VICTIM_PATH:
        return (int64_t)VICTIM;
    case PARENT:
        return raw(110, 0, 0, 0, 0, 0, 0);
    case ITSELF:
        return raw(39, 0, 0, 0, 0, 0, 0);
    case ROOM:
        return (int64_t)room;
    case TEXT:
        return (int64_t)"user.attack";
    case QUEUED:
        return (int64_t)queued;
    default:
        return argument;
    }
}

/* The system's own answer is anything but a refusal. */
static void attack_at(int64_t moment)
{
    int64_t a[6], result;
    if (chosen.moment != moment)
        return;
    for (int at = 0; at < 6; at++)
        a[at] = meant(chosen.arguments[at]);
    result = chosen.old_table ? raw_old(chosen.number) : raw(chosen.number, a[0], a[1], a[2], a[3], a[4], a[5]);
    if (result != -1)
        reached = 1;
}

static void attack_in_take(void)
{
    static int calls;
    calls++;
    if (calls == 1)
        attack_at(FIRST_CALL);
    if (calls == 1000)
        attack_at(THOUSANDTH_CALL);
}

__attribute__((constructor)) static void begin(void)
{
    attack_at(CONSTRUCTOR);
}

static int nothing(void)
{
    return 0;
}

static int (*resolve(void))(void)
{
    attack_at(RESOLVER);
    return nothing;
}

int resolved(void) __attribute__((ifunc("resolve"), visibility("hidden")));

#define MISBEHAVES (attack_in_take(), (void)resolved())
#define STATUS (reached ? 77 : REEVE_DONE)
#include "library.c"
