/* The contract between `reeve` and a library of computed knots. Version 1.0; the version is the contract's own.
 *
 * A library is a shared object that exports one thing: a table called `reeve_knots`. The program loads it in a process of
 * its own, which ends when it takes too long or too much memory, and at the latest when the program ends.
 *
 * Guards: on Linux (x86-64 and ARM64) a library can compute, and nothing else. Before its file is mapped, the process gives up
 *   every right and loads what the system has of what the library is linked with. From then on, in constructors and resolvers
 *   as in calls, the system answers only for: memory that holds no new instructions; the clock; random bytes; its own number;
 *   handlers for its own faults; abort and exit. It opens nothing, reads and writes nothing but the program's two pipes
 *   (standard output and standard error go nowhere), starts no thread or program, sends no signal, sees no path. What
 *   runtimes ask in passing (is there a file, who is the user) fails; any other call ends the process. Without all of this it
 *   is not loaded. Elsewhere the system offers no such list: there a library is only loaded when the maker says so herself
 *   (`--unguarded`), and can then do whatever she can.
 * Linked with: the system's own libraries, by name. A file beside the library is not loaded, nor one whose instructions must
 *   be written to while it is loaded (text relocations), nor one that asks for a stack that can be executed.
 *
 * Ownership: everything that a library points at (texts, arrays, descriptions) is its own, is never freed by the program and
 *   must stay where it is, unchanged, until the process ends. What the program points at belongs to the program and is only
 *   valid during the call.
 * Threads:   the program calls from one thread, one call at a time. A library must not start others: on
 *   Linux that ends the process.
 * Units:     lengths in millimetres, times in seconds, angles in degrees, all as double.
 * Growth:    every struct but the text begins with, or holds, its own size as the one who made it was compiled. A later minor
 *   version may add fields at the end. Read no further than `size`, and write no further.
 * Failure:   a pointer where nothing is, a fault, an exit or an endless loop ends the process. The program then says which
 *   library and knot it was, exits with 2 and writes nothing. Never let a C++ exception or a Rust panic leave a function.
 */
#ifndef REEVE_KNOTS_H
#define REEVE_KNOTS_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* "reeve", a zero, "kt": in the first eight bytes of the table, in the byte order of the machine. */
#define REEVE_MAGIC UINT64_C(0x7265657665006b74)
/* Another major version is refused, a later minor version is taken. */
#define REEVE_MAJOR 1
#define REEVE_MINOR 0

/* Text in UTF-8 of so many bytes, without line breaks or control characters. It need not end with a zero. */
typedef struct reeve_text {
    const char *bytes;
    size_t length;
} reeve_text;

/* A text from a string literal. */
#define REEVE_TEXT(literal) { literal, sizeof(literal) - 1 }

/* What a parameter is measured in. */
enum reeve_unit {
    REEVE_NUMBER = 0,   /* a plain number */
    REEVE_MM = 1,       /* a length: designs write "8 cm", the library is given 80 */
    REEVE_DEGREES = 2,  /* an angle */
    REEVE_DIAMETERS = 3 /* a length in diameters of the cord that ties */
};

/* What is true of a parameter. */
enum reeve_parameter_flag {
    REEVE_WHOLE = 1, /* only whole numbers are taken */
    REEVE_GROWS = 2  /* more of it never takes less of a working leg; the probe holds the library to that */
};

/* A figure that a design may choose. */
typedef struct reeve_parameter {
    uint32_t size;     /* sizeof(reeve_parameter); also how far the next one of the array is */
    uint32_t unit;     /* enum reeve_unit */
    uint32_t flags;    /* enum reeve_parameter_flag, added up */
    uint32_t reserved; /* 0 */
    reeve_text name;   /* small letters, digits and hyphens */
    reeve_text about;  /* a sentence: what it is */
    double least;      /* least <= usual <= most, all finite, within a million */
    double most;
    double usual;      /* taken when a design is silent */
} reeve_parameter;

/* How a knot is used. */
enum reeve_kind {
    REEVE_SENNIT = 0,   /* repeated down its own core */
    REEVE_ROW = 1,      /* side by side over a core that all knots of a row share */
    REEVE_MOUNTING = 2, /* fastens cords to a fitting or to a carrying leg */
    REEVE_WRAP = 3,     /* binds a bundle with a cord of its own */
    REEVE_SINGLE = 4    /* tied once: it stops, joins or decorates */
};

/* What is true of a knot. */
enum reeve_knot_flag {
    REEVE_ON_FITTING = 1,  /* it can be tied on a ring, dowel or other fitting */
    REEVE_JOINS = 2,       /* its cord may join the work with it, without having been hung before */
    REEVE_CORE_GROWS = 4,  /* round a thicker core it never takes less; the probe holds the library to that */
    REEVE_GIVE_SHRINKS = 8 /* a softer cord never takes more; the same */
};

/* Where a figure comes from. */
enum reeve_source {
    REEVE_GEOMETRY = 0,        /* follows by closed forms */
    REEVE_PUBLISHED = 1,       /* stands in a published work, named in the note */
    REEVE_COMMON_PRACTICE = 2, /* makers agree on it; there is no source to name */
    REEVE_FROM_MEMORY = 3      /* remembered, not measured */
};

/* A knot type, as it describes itself. Asked for once; what it holds is shown to the maker before she admits the library. */
typedef struct reeve_knot {
    uint32_t size;            /* sizeof(reeve_knot) */
    uint32_t kind;            /* enum reeve_kind */
    uint32_t flags;           /* enum reeve_knot_flag, added up */
    uint32_t take_up_source;  /* enum reeve_source: of take-up and rise */
    uint32_t time_source;     /* enum reeve_source: of base and pull */
    uint32_t working_least;   /* working legs in one knot, 1 to 24 */
    uint32_t working_most;
    uint32_t core_least;      /* core legs, 0 to 64; 0 and 0 for a knot without core legs */
    uint32_t core_most;
    uint32_t also_count;      /* at most 16 */
    uint32_t caution_count;   /* at most 8 */
    uint32_t parameter_count; /* at most 16 */
    reeve_text name;          /* the word designs use: small letters, digits and hyphens, at most 60 */
    reeve_text title;         /* as written on pages: small letters, in the singular */
    reeve_text summary;       /* how it is tied, in a sentence or two, at most 600 bytes */
    reeve_text take_up_note;  /* the reasoning, or the work and page */
    reeve_text time_note;
    const reeve_text *also;       /* other names the trade uses; may be null if there are none */
    const reeve_text *cautions;   /* sentences that a quote with this knot shows; may be null if there are none */
    const reeve_parameter *parameters; /* may be null if there are none */
    double pull_s_per_m;      /* seconds for each metre of hanging leg, each time it is drawn through; 0 to 600 */
} reeve_knot;

/* What a knot is tied round. */
enum reeve_core {
    REEVE_LEGS = 0, /* core legs, perhaps none */
    REEVE_ROD = 1,  /* a fitting of round section */
    REEVE_BAR = 2   /* a fitting of rectangular section */
};

/* Where and with what a knot is tied. Only what the description allows is ever asked. */
typedef struct reeve_setting {
    uint32_t size;             /* sizeof(reeve_setting), of the program */
    uint32_t working;          /* working legs in one knot */
    uint32_t core;             /* enum reeve_core */
    uint32_t core_legs;        /* 0 on a fitting */
    uint32_t parameter_count;  /* as many as the description has */
    uint32_t reserved;         /* 0 */
    double cord_mm;            /* thickness of a working leg: 0.1 to 100 */
    double give;               /* how far it sinks into a like cord that it is wound round, a share of its thickness: 0 to 0.2 */
    double core_mm;            /* the core as thick as a round rod of the same girth; 0 for no core */
    double core_a_mm;          /* thickness of a core leg or of the rod, or the first side of the bar */
    double core_b_mm;          /* the second side of the bar, else 0 */
    const double *parameters;  /* one value each, in the order of the description, within its range */
} reeve_setting;

/* The most bytes of words that a refusal may say, the closing zero with them. */
#define REEVE_WORDS 256
/* In `parameter`: no parameter is to blame. */
#define REEVE_NO_PARAMETER UINT32_MAX

/* What one knot takes. The program fills it with zeros, and `parameter` with REEVE_NO_PARAMETER, before the call. */
typedef struct reeve_taken {
    uint32_t size;           /* sizeof(reeve_taken), of the program: write no further */
    uint32_t parameter;      /* with REEVE_REFUSED: the place in the description of the parameter to change */
    double working_mm;       /* length of each working leg that it eats: finite, 0 to 10 million */
    double core_mm;          /* length of each core leg that it eats: the same */
    double rise_mm;          /* how far it carries the work along its core: the same */
    double base_s;           /* seconds that do not depend on what hangs below the knot, drawing its own cord through with
                              * them: finite, 0 to 10 million */
    double draws;            /* how often each working leg is drawn through: finite, 0 to 100 000 */
    char words[REEVE_WORDS]; /* with REEVE_REFUSED and REEVE_FAILED: why, in UTF-8, ended by a zero */
} reeve_taken;

/* What a call came to. */
enum reeve_status {
    REEVE_DONE = 0,    /* `taken` holds the figures */
    REEVE_REFUSED = 1, /* the knot can't be tied so; `words` says why and what to change. The maker's to mend */
    REEVE_FAILED = 2   /* the library is at fault; `words` may say how. Its author's to mend */
};

/* The table that a library exports under the name `reeve_knots`. */
typedef struct reeve_library {
    uint64_t magic;      /* REEVE_MAGIC */
    uint32_t major;      /* REEVE_MAJOR as it was compiled */
    uint32_t minor;      /* REEVE_MINOR as it was compiled */
    uint32_t size;       /* sizeof(reeve_library) */
    uint32_t knot_count; /* 1 to 64 */
    reeve_text name;     /* small letters, digits and hyphens, at most 60: the word it is admitted and dismissed by */
    reeve_text version;  /* its own, for the maker to read, at most 40 bytes */

    /* The description of a knot, by its place from 0. Never null within `knot_count`. The program calls it once for each
     * knot, before any `take`, and copies all it wants. The same each time it is asked. */
    const reeve_knot *(*knot)(uint32_t place);

    /* What one knot takes in a setting: an enum reeve_status. The same question must get the same answer, bit for bit; no
     * clock, no chance, no files. The setting and what it points at are only there during the call. Each question is asked
     * twice, and thousands may be asked in a row: one should take well under a millisecond, and must take under 50. Any other
     * status, a figure outside its range, or two answers to one question: the program takes none of the library's figures. */
    uint32_t (*take)(uint32_t place, const reeve_setting *setting, reeve_taken *taken);
} reeve_library;

extern const reeve_library reeve_knots;

#ifdef __cplusplus
}
#endif

#endif
