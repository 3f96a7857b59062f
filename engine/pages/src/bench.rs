//! The bench sheet and the take-off: what to cut, what to tie, what to buy.

use reeve_catalogue::{ParameterUnit, Settled};
use reeve_costing::cost::CordBought;
use reeve_costing::hand::TakeUpSource;
use reeve_costing::piece::Piece;
use reeve_costing::pricing::{Priced, PricedItem};
use reeve_costing::rates::Rates;
use reeve_costing::store::{Fitting, Many};
use reeve_costing::takeoff::{Chore, ChoreKind, CutLine, Doing, Fold, KnotLine, StepLine, TakeOff, plural};
use reeve_measure::{Length, Time};
use serde::Serialize;

use crate::phrases::say;
use crate::quote::{Letterhead, Row};
use crate::words::Words;

/// The bench sheet of a commission.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BenchPage {
    head: Letterhead,
    reference: String,
    client: String,
    date: String,
    promised: Option<String>,
    works: Vec<BenchWork>,
    shopping: Vec<Buy>,
    articles: Vec<Row>,
    hours: String,
}

/// The take-off of one design.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TakeOffPage {
    head: Letterhead,
    facts: Vec<Row>,
    work: BenchWork,
    shopping: Vec<Buy>,
}

/// One design at the bench.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct BenchWork {
    title: String,
    quantity: u32,
    /// Size, weight and time in sentences.
    facts: String,
    cords: Vec<CutRow>,
    legs: Vec<Row>,
    steps: Vec<StepRow>,
    chores: Vec<Row>,
    knots: Vec<Row>,
    fittings: Vec<Row>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CutRow {
    group: String,
    cord: String,
    each: String,
    all: String,
    length: String,
    fold: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct StepRow {
    number: String,
    title: String,
    detail: String,
    count: String,
    time: String,
    note: Option<String>,
}

/// Something to buy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Buy {
    text: String,
    put_ups: String,
    use_of_it: String,
    price: String,
}

/// Words the bench sheet of a commission.
pub fn bench_page(priced: &Priced, rates: &Rates, words: &Words) -> BenchPage {
    let quote = &priced.quote;
    let work = |one: &PricedItem| work(&one.item.piece, &one.cost.take_off, one.item.quantity, words);
    BenchPage {
        head: Letterhead::new(rates, &quote.title),
        reference: quote.reference.clone(),
        client: quote.client.name.clone(),
        date: words.date(quote.date),
        promised: quote.promised.map(|day| words.date(day)),
        works: priced.items.iter().map(work).collect(),
        shopping: shopping(&priced.needs.cords, &priced.needs.fittings, words),
        articles: priced
            .given_lines()
            .map(|(line, _)| Row::new(line.text.clone(), words.number(line.quantity)))
            .collect(),
        hours: words.hours(priced.outcome.cost.hours),
    }
}

/// What a design is called, and how else it may be had.
#[derive(Debug, Clone, Copy)]
pub struct DesignNames<'a> {
    /// Its file's stem.
    pub design: &'a str,
    /// The names of its sizes, or nothing.
    pub sizes: &'a str,
    /// What may be otherwise, and what it usually is, or nothing.
    pub measures: &'a str,
}

/// Words the take-off of one piece; the design may be had in other sizes, or with other measures.
pub fn takeoff_page(
    names: DesignNames<'_>,
    piece: &Piece,
    take_off: &TakeOff,
    cords: &[CordBought],
    rates: &Rates,
    words: &Words,
) -> TakeOffPage {
    TakeOffPage {
        head: Letterhead::new(rates, &piece.title),
        facts: takeoff_facts(names, piece, take_off, words),
        work: work(piece, take_off, 1, words),
        shopping: shopping(cords, &take_off.fittings, words),
    }
}

fn takeoff_facts(names: DesignNames<'_>, piece: &Piece, take_off: &TakeOff, words: &Words) -> Vec<Row> {
    let some = |text: String, told: &str| (!told.is_empty()).then(|| Row::new(text, told));
    let time = words.time(take_off.time_of(1));
    let time = match tenth_piece(take_off, words) {
        tenth if tenth.is_empty() => time,
        tenth => say!(words, "takeoff-time-practised", time = time, tenth = tenth),
    };
    let facts = [
        Some(Row::new(say!(words, "takeoff-design"), names.design)),
        some(say!(words, "takeoff-sizes"), names.sizes),
        some(say!(words, "takeoff-measures"), names.measures),
        piece.finished.as_ref().map(|finished| Row::new(say!(words, "takeoff-finished"), finished.as_str())),
        Some(Row::new(say!(words, "takeoff-weight"), words.mass(take_off.weight))),
        Some(Row::new(say!(words, "takeoff-time"), time)),
    ];
    facts.into_iter().flatten().collect()
}

fn work(piece: &Piece, take_off: &TakeOff, quantity: u32, words: &Words) -> BenchWork {
    BenchWork {
        title: piece.title.clone(),
        quantity,
        facts: facts(piece, take_off, quantity, words),
        cords: take_off.cords.iter().map(|line| cut_row(line, quantity, words)).collect(),
        legs: take_off
            .legs
            .iter()
            .map(|line| Row::new(format!("{} {}", words.count(line.count), line.set), words.length(line.length)))
            .collect(),
        steps: take_off.steps.iter().enumerate().map(|(at, step)| step_row(at, step, words)).collect(),
        chores: take_off
            .chores
            .iter()
            .map(|chore| Row {
                text: chore_words(chore, words),
                detail: if chore.once && quantity > 1 { say!(words, "work-once-for-all") } else { String::new() },
                amount: words.time(chore.time),
            })
            .collect(),
        knots: knot_counts(take_off, words)
            .into_iter()
            .map(|(knot, count)| Row::new(knot, words.count(count)))
            .collect(),
        fittings: take_off
            .fittings
            .iter()
            .map(|(fitting, count)| Row::new(fitting.title.clone(), words.count(u64::from(*count))))
            .collect(),
    }
}

fn facts(piece: &Piece, take_off: &TakeOff, quantity: u32, words: &Words) -> String {
    let size = piece.finished.as_ref().map(|size| say!(words, "work-finished", size = size.as_str()));
    let (weight, time) = (words.mass(take_off.weight), words.time(take_off.time_of(1)));
    let takes = if quantity > 1 {
        let all = words.time(take_off.time_of(quantity));
        say!(words, "work-one-and-all", weight = weight, time = time, all = all)
    } else {
        say!(words, "work-one", weight = weight, time = time)
    };
    let tenth = Some(tenth_piece(take_off, words)).filter(|tenth| !tenth.is_empty());
    size.into_iter().chain([takes]).chain(tenth).collect::<Vec<_>>().join(" ")
}

/// What the tenth piece takes, where practice shortens it.
fn tenth_piece(take_off: &TakeOff, words: &Words) -> String {
    if !take_off.is_practised() {
        return String::new();
    }
    say!(words, "work-tenth", time = words.time(take_off.time_of_nth(10)))
}

/// What is done beside the steps; of parts, behind their titles.
fn chore_words(chore: &Chore, words: &Words) -> String {
    let what = match &chore.kind {
        ChoreKind::LayOut => say!(words, "work-lay-out"),
        ChoreKind::SetMarks => say!(words, "work-set-marks"),
        ChoreKind::MeasureAndCut => say!(words, "work-measure-and-cut"),
        ChoreKind::Task(title) => title.clone(),
        ChoreKind::Pack => say!(words, "work-pack"),
    };
    chore.parts.iter().cloned().chain([what]).collect::<Vec<_>>().join(": ")
}

/// Knots of each type, those with other parameters apart, in order of first use.
fn knot_counts(take_off: &TakeOff, words: &Words) -> Vec<(String, u64)> {
    let mut counts: Vec<(String, u64)> = Vec::new();
    for step in &take_off.steps {
        if let Doing::Knots(line) = &step.doing {
            let knot = format!("{}{}", line.knot, set_to(&line.parameters, words));
            match counts.iter_mut().find(|(known, _)| *known == knot) {
                Some((_, all)) => *all += line.count,
                None => counts.push((knot, line.count)),
            }
        }
    }
    counts
}

fn cut_row(line: &CutLine, quantity: u32, words: &Words) -> CutRow {
    let fold = match &line.fold {
        None => say!(words, "work-fold-single"),
        Some(Fold { at, from: None }) => say!(words, "work-fold-middle", length = words.length(*at)),
        Some(Fold { at, from: Some(set) }) => {
            say!(words, "work-fold-from", length = words.length(*at), set = set.as_str())
        }
    };
    CutRow {
        group: line.group.clone(),
        cord: line.cord.full_title(),
        each: words.count(line.count),
        all: words.count(line.count * u64::from(quantity)),
        length: words.length(Length::mm(reeve_measure::count(line.cut_mm))),
        fold,
    }
}

fn step_row(at: usize, step: &StepLine, words: &Words) -> StepRow {
    let time = step.time.of(1);
    let (detail, count) = match &step.doing {
        Doing::Knots(knots) => (knot_words(knots, words), words.count(knots.count)),
        Doing::Bare(length, legs) | Doing::Tail(length, legs) => {
            (say!(words, "work-on-legs", length = words.length(*length), count = *legs), String::new())
        }
        Doing::Beads(bead, count) => (bead.title.clone(), words.count(*count)),
        Doing::LayIn => (String::new(), String::new()),
    };
    StepRow {
        number: words.count(at as u64 + 1),
        title: step.title.clone(),
        detail,
        count,
        time: if time > Time::ZERO { words.time(time) } else { String::new() },
        note: step.note.clone(),
    }
}

fn knot_words(knots: &KnotLine, words: &Words) -> String {
    let mut what = plural(&knots.knot, knots.count);
    if knots.times > 1 && knots.columns > 1 {
        what = say!(words, "work-in-columns", knots = what, each = knots.times, columns = knots.columns);
    }
    what.push_str(&set_to(&knots.parameters, words));
    let take_up = words.length(knots.take_up);
    // The catalogue's own figures need no word of where they come from.
    match knots.source {
        TakeUpSource::Catalogue(_) => say!(words, "work-knots-take", knots = what, length = take_up),
        TakeUpSource::YourSample => say!(words, "work-knots-take-by-sample", knots = what, length = take_up),
        TakeUpSource::YourHand => say!(words, "work-knots-take-by-hand", knots = what, length = take_up),
    }
}

/// What a knot's parameters are, behind its name: nothing for a knot without.
fn set_to(parameters: &[Settled], words: &Words) -> String {
    let one = |settled: &Settled| {
        let of = settled.part.as_ref().map(|part| format!("{part} ")).unwrap_or_default();
        format!("{of}{}\u{a0}{}", settled.name, figure(settled, words))
    };
    let all: Vec<String> = parameters.iter().map(one).collect();
    if all.is_empty() { String::new() } else { format!(": {}", all.join(", ")) }
}

/// A parameter's figure with its unit.
fn figure(settled: &Settled, words: &Words) -> String {
    let number = words.number_of(settled.value);
    match (settled.unit, settled.length) {
        (ParameterUnit::Degrees, _) => say!(words, "degrees", figure = number),
        (ParameterUnit::Diameters, Some(length)) => {
            let length = words.length(length);
            if number == "1" {
                say!(words, "work-one-diameter", length = length)
            } else {
                say!(words, "work-diameters", length = length, figure = number)
            }
        }
        (_, Some(length)) => words.length(length),
        (_, None) => number,
    }
}

fn shopping(cords: &[CordBought], fittings: &[Many<Fitting>], words: &Words) -> Vec<Buy> {
    let cords = cords.iter().map(|bought| buy_cord(bought, words));
    cords.chain(fittings.iter().map(|many| buy_fitting(many, words))).collect()
}

fn buy_cord(bought: &CordBought, words: &Words) -> Buy {
    let put_ups: Vec<String> =
        bought.put_ups.iter().map(|(put_up, count)| format!("{} × {}", words.count(*count), put_up.title)).collect();
    Buy {
        text: bought.cord.full_title(),
        put_ups: put_ups.join(" + "),
        use_of_it: say!(
            words,
            "work-cut-and-left",
            cut = words.length(bought.cut),
            left = words.length(bought.bought - bought.cut)
        ),
        price: words.rounded(bought.price),
    }
}

fn buy_fitting((fitting, count): &Many<Fitting>, words: &Words) -> Buy {
    Buy {
        text: fitting.title.clone(),
        put_ups: words.count(u64::from(*count)),
        use_of_it: String::new(),
        price: words.rounded(fitting.price * rust_decimal::Decimal::from(*count)),
    }
}
