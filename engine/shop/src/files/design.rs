//! `designs/*.toml`: a piece, described step by step, as typed.

use std::ops::Range;

use reeve_costing::caution::{PURPOSES, Purpose};
use reeve_costing::piece::{TailEnd, Task};
use reeve_costing::risk::ThreePoint;
use reeve_costing::single_piece::Effort;
use reeve_measure::{Length, Time, bound};
use reeve_reading::{
    Count, Figure, Filled, FilledText, Flag, Lengths, List, LowLikelyHigh, Money, Name, Number, NumberOrLength, OneOf,
    OneOrThree, Placed, Reckoned, Table, Text,
};
use rust_decimal::Decimal;

use super::sizes::{Sized, sized};
use crate::choice::{Choice, Choices, Market};

/// A design as typed: names are still only names.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedDesign {
    /// As written on pages.
    pub title: String,
    /// A sentence for the client.
    pub about: Option<String>,
    /// What it is for.
    pub purpose: Purpose,
    /// How many were made before.
    pub made: u32,
    /// Finished size, in words.
    pub finished: Option<String>,
    /// Cord groups.
    pub groups: Vec<TypedGroup>,
    /// Whether every cord group could be read; else its sets can't be told from misspelt ones.
    pub groups_sound: bool,
    /// Fittings under names of the design's own.
    pub fittings: Vec<TypedFitting>,
    /// Steps.
    pub steps: Vec<TypedStep>,
    /// Tasks.
    pub tasks: Vec<Task>,
    /// Pieces within the piece.
    pub parts: Vec<TypedPart>,
    /// What may be chosen of it.
    pub choices: Choices,
    /// What the market says of what was chosen.
    pub market: Market,
    /// Work done once for the design, before the first is sold.
    pub efforts: Vec<Effort>,
}

/// Cords cut alike, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedGroup {
    /// The heading's place.
    pub span: Range<usize>,
    /// The word steps use.
    pub name: Placed<String>,
    /// A cord of the store.
    pub of: Placed<String>,
    /// How many.
    pub count: u32,
    /// Whether each is folded.
    pub folded: bool,
    /// Names of the sets its legs belong to: none, one, or two.
    pub legs: Vec<Placed<String>>,
}

/// A fitting under a name of the design's own, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedFitting {
    /// The word steps use.
    pub name: Placed<String>,
    /// A fitting of the store.
    pub of: Placed<String>,
    /// How many.
    pub count: u32,
}

/// A piece within the piece, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedPart {
    /// Another design.
    pub design: Placed<String>,
    /// How many.
    pub count: u32,
    /// One of its sizes.
    pub size: Option<Placed<String>>,
    /// Measures in place of its own.
    pub measures: Chosen,
}

/// Parameters of a knot, or measures of a design, as typed: each name, and what it is given.
pub type Chosen = Vec<(Placed<String>, Placed<Figure>)>;

/// A step as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedStep {
    /// The heading's place.
    pub span: Range<usize>,
    /// The places of its keys, for faults that show later.
    pub places: Vec<(&'static str, Range<usize>)>,
    /// As written on the bench sheet, if said.
    pub title: Option<String>,
    /// A remark.
    pub note: Option<String>,
    /// Cord groups that join here.
    pub hang: Vec<Placed<String>>,
    /// Sets that run alongside.
    pub alongside: Vec<Placed<String>>,
    /// How long all of it takes in one piece, where the maker says so.
    pub time: Option<ThreePoint>,
    /// What is done.
    pub kind: StepKind,
}

/// What a step does, as typed.
#[derive(Debug, Clone, PartialEq)]
pub enum StepKind {
    /// Ties a knot.
    Tie {
        /// The knot.
        knot: Placed<String>,
        /// Repeats.
        times: u32,
        /// Columns.
        columns: Option<u32>,
        /// Sets that tie.
        working: Vec<Placed<String>>,
        /// Sets that are tied round.
        core: Vec<Placed<String>>,
        /// A fitting that is tied round.
        on: Option<Placed<String>>,
        /// Whether working and core legs change places.
        shared: bool,
        /// Core legs in each column, where they change places.
        core_legs: Option<u32>,
        /// Parameters of the knot.
        parameters: Chosen,
    },
    /// Leaves legs bare.
    Bare(Length, Vec<Placed<String>>),
    /// Leaves ends hanging.
    Tail(Length, Vec<Placed<String>>, TailEnd),
    /// Threads beads.
    Thread {
        /// The bead.
        bead: Placed<String>,
        /// Beads on each leg or bundle.
        times: u32,
        /// Legs through each.
        legs_each: u32,
        /// Sets.
        legs: Vec<Placed<String>>,
    },
    /// Only lets cords join.
    LayIn,
}

impl TypedStep {
    /// The place of a key, or of the step when the key is not written.
    pub fn place(&self, key: &str) -> Range<usize> {
        let found = self.places.iter().find(|(name, _)| *name == key);
        found.map_or_else(|| self.span.clone(), |(_, place)| place.clone())
    }

    /// The place of a parameter's value, by its place among them.
    pub fn place_of_parameter(&self, nth: usize) -> Range<usize> {
        let value = match &self.kind {
            StepKind::Tie { parameters, .. } => parameters.get(nth).map(|(_, value)| value.span.clone()),
            _ => None,
        };
        value.unwrap_or_else(|| self.place("parameters"))
    }
}

/// Reads a design, as chosen.
pub fn design_file(t: &mut Table<'_>, choice: &Choice) -> Option<TypedDesign> {
    let sized = sized(t, choice);
    let head = t.need_table("piece", "What it is.", head);
    let sound_before = t.fault_count();
    let groups = t.tables("cord", "Cords cut alike.", group);
    let groups_sound = t.fault_count() == sound_before;
    let fittings = t.tables("fitting", "A fitting under a name of the design's own, or several of one.", fitting);
    let steps = t.tables("step", "One stage of the making.", step);
    let tasks = t.tables("task", "Work that is not tying: dyeing, wiring, stiffening.", task);
    let parts = t.tables("part", "Another design that this one is put together from.", part);
    let efforts = t.tables("effort", "Work done once for the design: drafting, samples, photographs.", effort);
    let head = head?.value;
    if groups.is_empty() && parts.is_empty() && !t.has("cord") && !t.has("part") {
        t.refuse("the design has neither cords nor parts", "nothing would be made", "add a [[cord]] or a [[part]]");
        return None;
    }
    Some(TypedDesign {
        title: if choice.is_usual() { head.title.clone() } else { format!("{}, {choice}", head.title) },
        finished: finished(t, &head, &sized),
        about: head.about,
        purpose: head.purpose,
        made: head.made,
        groups: groups.into_iter().map(|group| group.value).collect(),
        groups_sound,
        fittings: fittings.into_iter().map(|fitting| fitting.value).collect(),
        steps: steps.into_iter().map(|step| step.value).collect(),
        tasks: tasks.into_iter().map(|task| task.value).collect(),
        parts: parts.into_iter().map(|part| part.value).collect(),
        choices: sized.choices,
        market: sized.market,
        efforts: efforts.into_iter().map(|effort| effort.value).collect(),
    })
}

fn effort(t: &mut Table<'_>) -> Option<Effort> {
    let title = t.need("name", &Text, "What it was.");
    let minutes = t.maybe("minutes", &Number(bound::TASK_MINUTES), "How long it took you.");
    let cost = t.maybe("cost", &Money::AMOUNT, "What it cost.");
    Some(Effort {
        title: title?.value,
        time: minutes.map_or(Time::ZERO, |minutes| Time::minutes(minutes.value)),
        cost: cost.map_or(Decimal::ZERO, |cost| cost.value),
    })
}

struct TypedHead {
    title: String,
    about: Option<String>,
    purpose: Purpose,
    made: u32,
    finished: Option<Placed<Filled>>,
}

fn head(t: &mut Table<'_>) -> Option<TypedHead> {
    let title = t.need("name", &Text, "As written on pages.");
    let about = t.maybe("about", &FilledText, "A sentence for the client; sums in braces are worked out.");
    let purpose = t.need("purpose", &OneOf { words: PURPOSES }, "What it is for; chooses the cautions of the quote.");
    let made = t.maybe(
        "made",
        &Count(bound::MADE_BEFORE),
        "How many you made before; 0 if not said. Minutes that you state yourself stand as they are.",
    );
    let finished = t.maybe("finished", &FilledText, "Finished size, in words; sums in braces are worked out.");
    Some(TypedHead {
        title: title?.value,
        about: about.map(|about| about.value.text),
        purpose: purpose?.value,
        made: made.map_or(0, |made| made.value),
        finished,
    })
}

/// The finished size in words: the size's own, or the piece's if it is still true.
fn finished(t: &Table<'_>, head: &TypedHead, sized: &Sized) -> Option<String> {
    if sized.finished.is_some() {
        return sized.finished.clone();
    }
    let finished = head.finished.as_ref()?;
    if sized.is_changed && !finished.value.follows {
        t.warn_at(
            finished.span.clone(),
            "the finished size is left out: it says the same whatever the measures are",
            "no sum in it",
            "write what changes as a sum in braces, for example \"about {drop} long\", or give the size its own",
        );
        return None;
    }
    Some(finished.value.text.clone())
}

fn part(t: &mut Table<'_>) -> Option<TypedPart> {
    let design = t.need("design", &Name, "The other design's file, without .toml.");
    let count = t.need("count", &Reckoned(Count(bound::PARTS)), "How many.");
    let size = t.maybe("size", &Name, "One of its sizes.");
    let measures = t.pairs("measures", &Reckoned(NumberOrLength), "Measures in place of its own.");
    Some(TypedPart { design: design?, count: count?.value, size, measures })
}

fn group(t: &mut Table<'_>) -> Option<TypedGroup> {
    let name = t.need("group", &Name, "The word steps use.");
    let of = t.need("of", &Name, "A cord of store/cords.toml.");
    let count = t.need("count", &Reckoned(Count(bound::CORDS)), "How many cords.");
    let folded = t.maybe("folded", &Flag, "Whether each is folded into two legs.");
    let legs = t.maybe(
        "legs",
        &List(Name),
        "The set its legs belong to, if not called as the group; two sets for a folded cord whose legs differ.",
    );
    let folded = folded.is_some_and(|folded| folded.value);
    let most = if folded { 2 } else { 1 };
    if let Some(legs) = &legs
        && (legs.value.is_empty() || legs.value.len() > most)
    {
        let (title, label) = if folded {
            (
                format!("a folded cord has two legs, and {} sets are named", legs.value.len()),
                "one set for both legs, or two",
            )
        } else {
            (format!("a cord that is not folded has one leg, and {} sets are named", legs.value.len()), "one set")
        };
        t.refuse_together(
            legs.span.clone(),
            title,
            label,
            if folded { "" } else { "write folded = true, or name one set" },
        );
        return None;
    }
    Some(TypedGroup {
        span: t.span(),
        name: name?,
        of: of?,
        count: count?.value,
        folded,
        legs: legs.map(|l| l.value).unwrap_or_default(),
    })
}

fn fitting(t: &mut Table<'_>) -> Option<TypedFitting> {
    let name = t.need("name", &Name, "The word steps use.");
    let of = t.need("of", &Name, "A fitting of store/fittings.toml.");
    let count = t.maybe("count", &Reckoned(Count(bound::PARTS)), "How many; 1 if not said.");
    Some(TypedFitting { name: name?, of: of?, count: count.map_or(1, |count| count.value) })
}

fn three_point(minutes: LowLikelyHigh) -> ThreePoint {
    let LowLikelyHigh { low, likely, high } = minutes;
    ThreePoint { low: Time::minutes(low), likely: Time::minutes(likely), high: Time::minutes(high) }
}

fn task(t: &mut Table<'_>) -> Option<Task> {
    let title = t.need("name", &Text, "As written on the bench sheet.");
    let minutes = t.need(
        "minutes",
        &OneOrThree(bound::TASK_MINUTES),
        "How long it takes you: a number, or { low = 8, likely = 12, high = 20 }.",
    );
    let once = t.maybe("once", &Flag, "Whether it is done once for all pieces of the design.");
    let cost = t.maybe("cost", &Money::AMOUNT, "What it uses up: dye, glue, wire.");
    Some(Task {
        title: title?.value,
        time: three_point(minutes?.value),
        once: once.is_some_and(|once| once.value),
        cost: cost.map_or(Decimal::ZERO, |cost| cost.value),
    })
}

/// What a step may be, and the keys that go with it.
const KINDS: &[(&str, &[&str])] = &[
    ("knot", &["times", "columns", "working", "core", "on", "share", "core-legs", "parameters", "hang", "alongside"]),
    ("bare", &["legs", "hang"]),
    ("tail", &["legs", "combed", "flush"]),
    ("thread", &["times", "legs-each", "legs"]),
];

const ALL_KEYS: &[&str] = &[
    "knot",
    "times",
    "columns",
    "working",
    "core",
    "on",
    "share",
    "core-legs",
    "parameters",
    "alongside",
    "hang",
    "bare",
    "tail",
    "combed",
    "flush",
    "thread",
    "legs-each",
    "legs",
];

/// Every value of a step, read whatever the step turns out to be.
struct TypedStepWords {
    knot: Option<Placed<String>>,
    times: Option<Placed<u32>>,
    columns: Option<Placed<u32>>,
    working: Option<Placed<Vec<Placed<String>>>>,
    core: Option<Placed<Vec<Placed<String>>>>,
    on: Option<Placed<String>>,
    shared: bool,
    core_legs: Option<Placed<u32>>,
    parameters: Chosen,
    bare: Option<Placed<Length>>,
    tail: Option<Placed<Length>>,
    end: Option<TailEnd>,
    thread: Option<Placed<String>>,
    legs_each: Option<Placed<u32>>,
    legs: Option<Placed<Vec<Placed<String>>>>,
}

fn step(t: &mut Table<'_>) -> Option<TypedStep> {
    let title = t.maybe("name", &Text, "As written on the bench sheet.");
    let note = t.maybe("note", &Text, "A remark for the bench.");
    let hang = t.maybe("hang", &List(Name), "Cord groups that join the work here.");
    let minutes = t.maybe(
        "minutes",
        &OneOrThree(bound::TASK_MINUTES),
        "How long all of it takes you in one piece, in place of what the knots come to: a number, or low, likely and high.",
    );
    let alongside = t.maybe("alongside", &List(Name), "Sets that run past the knots without being tied.");
    let words = words(t);
    let places = ALL_KEYS.iter().filter_map(|key| t.place(key).map(|place| (*key, place))).collect();
    let kind = kind(t, words, hang.is_some())?;
    let list = |list: Option<Placed<Vec<Placed<String>>>>| list.map(|list| list.value).unwrap_or_default();
    Some(TypedStep {
        span: t.span(),
        places,
        title: title.map(|title| title.value),
        note: note.map(|note| note.value),
        hang: list(hang),
        alongside: list(alongside),
        time: minutes.map(|minutes| three_point(minutes.value)),
        kind,
    })
}

fn words(t: &mut Table<'_>) -> TypedStepWords {
    const SHARE: &[(&str, bool)] = &[("even", true)];
    TypedStepWords {
        knot: t.maybe("knot", &Text, "A knot: its name or another name the trade uses."),
        times: t.maybe(
            "times",
            &Reckoned(Count(bound::TIMES)),
            "How often: in each column, on each leg of a row, beads on each leg; 1 if not said.",
        ),
        columns: t.maybe(
            "columns",
            &Reckoned(Count(bound::COLUMNS)),
            "Columns side by side; worked out from the legs if not said.",
        ),
        working: t.maybe("working", &List(Name), "Sets that tie; the hung ones if not said."),
        core: t.maybe("core", &List(Name), "Sets that are tied round."),
        on: t.maybe("on", &Name, "A fitting that is tied round."),
        shared: t
            .maybe(
                "share",
                &OneOf { words: SHARE },
                "`even`: working and core legs change places, and share what all of them take.",
            )
            .is_some(),
        core_legs: t.maybe(
            "core-legs",
            &Reckoned(Count(bound::ROLE_LEGS)),
            "With `share`: core legs in each column, where some legs rest.",
        ),
        parameters: t.pairs(
            "parameters",
            &Reckoned(NumberOrLength),
            "Figures of the knot: numbers, and lengths such as \"8 cm\".",
        ),
        bare: t.maybe("bare", &Reckoned(Lengths(bound::STEP_LENGTH)), "Leaves so much of the legs bare."),
        tail: t.maybe(
            "tail",
            &Reckoned(Lengths(bound::STEP_LENGTH)),
            "Leaves so much of the legs hanging, after trimming.",
        ),
        end: tail_end(t),
        thread: t.maybe("thread", &Name, "A bead of store/fittings.toml that is threaded."),
        legs_each: t.maybe("legs-each", &Reckoned(Count(bound::ROLE_LEGS)), "Legs through each bead; 1 if not said."),
        legs: t.maybe("legs", &List(Name), "Sets that are left bare, left hanging or threaded."),
    }
}

fn tail_end(t: &mut Table<'_>) -> Option<TailEnd> {
    let combed = t.maybe("combed", &Flag, "Whether the tail is combed out.");
    let flush = t.maybe("flush", &Flag, "Whether the tail is only there to pull by, and is cut off flush.");
    let combed = combed.is_some_and(|combed| combed.value);
    match flush {
        Some(flush) if flush.value && combed => {
            t.refuse_at(
                flush.span,
                "a tail that is cut off flush can't be combed",
                "one or the other",
                "take out `combed` or `flush`",
            );
            None
        }
        Some(flush) if flush.value => Some(TailEnd::Flush),
        _ => Some(if combed { TailEnd::Combed } else { TailEnd::Plain }),
    }
}

fn kind(t: &Table<'_>, words: TypedStepWords, hangs: bool) -> Option<StepKind> {
    let written: Vec<&(&str, &[&str])> = KINDS.iter().filter(|(key, _)| t.has(key)).collect();
    let (key, allowed) = match written.as_slice() {
        [] if hangs => ("hang", &["hang"][..]),
        [one] => (one.0, one.1),
        _ => {
            t.refuse("a step is one thing", "`knot`, `bare`, `tail`, `thread`, or only `hang`", keys_written(t));
            return None;
        }
    };
    let strays = ALL_KEYS.iter().filter(|other| **other != key && !allowed.contains(*other) && t.has(other));
    let mut clean = true;
    for stray in strays {
        t.refuse_at(
            t.place(stray).unwrap_or_default(),
            format!("`{stray}` means nothing in a step of `{key}`"),
            "",
            format!("keys that go with it: {}", allowed.join(", ")),
        );
        clean = false;
    }
    if !clean {
        return None;
    }
    kind_of(t, key, words)
}

fn keys_written(t: &Table<'_>) -> String {
    let written: Vec<&str> = ALL_KEYS.iter().copied().filter(|key| t.has(key)).collect();
    if written.is_empty() {
        "none of them is written".to_owned()
    } else {
        format!("written here: {}", written.join(", "))
    }
}

fn kind_of(t: &Table<'_>, key: &str, words: TypedStepWords) -> Option<StepKind> {
    let list = |list: Option<Placed<Vec<Placed<String>>>>| list.map(|list| list.value).unwrap_or_default();
    let times = words.times.map_or(1, |times| times.value);
    match key {
        "knot" => Some(StepKind::Tie {
            knot: words.knot?,
            times,
            columns: words.columns.map(|columns| columns.value),
            working: list(words.working),
            core: list(words.core),
            on: words.on,
            shared: words.shared,
            core_legs: words.core_legs.map(|legs| legs.value),
            parameters: words.parameters,
        }),
        "bare" => Some(StepKind::Bare(words.bare?.value, named_legs(t, words.legs)?)),
        "tail" => Some(StepKind::Tail(words.tail?.value, named_legs(t, words.legs)?, words.end?)),
        "thread" => Some(StepKind::Thread {
            bead: words.thread?,
            times,
            legs_each: words.legs_each.map_or(1, |legs| legs.value).max(1),
            legs: named_legs(t, words.legs)?,
        }),
        _ => Some(StepKind::LayIn),
    }
}

fn named_legs(t: &Table<'_>, legs: Option<Placed<Vec<Placed<String>>>>) -> Option<Vec<Placed<String>>> {
    match legs {
        Some(legs) if !legs.value.is_empty() => Some(legs.value),
        Some(legs) => {
            t.refuse_at(legs.span, "`legs` is empty", "this step needs legs", "name one set or more");
            None
        }
        None => {
            if !t.has("legs") {
                t.refuse("`legs` is missing", "this step needs legs", "for example legs = [\"arms\"]");
            }
            None
        }
    }
}
