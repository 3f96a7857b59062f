//! The bench sheet and the take-off: what to cut, what to tie, what to buy.

use reeve_catalogue::{ParameterUnit, Settled};
use reeve_costing::cost::CordBought;
use reeve_costing::hand::{YOUR_HAND, YOUR_SAMPLE};
use reeve_costing::piece::Piece;
use reeve_costing::pricing::{Priced, PricedItem};
use reeve_costing::rates::Rates;
use reeve_costing::store::{Fitting, Many};
use reeve_costing::takeoff::{CutLine, Doing, KnotLine, StepLine, TakeOff, plural};
use reeve_measure::{Length, Time};
use serde::Serialize;

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
    design: String,
    /// The names of its sizes, or nothing.
    sizes: String,
    /// What may be otherwise, and what it usually is, or nothing.
    measures: String,
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
    finished: Option<String>,
    cords: Vec<CutRow>,
    legs: Vec<Row>,
    steps: Vec<StepRow>,
    chores: Vec<Row>,
    knots: Vec<Row>,
    fittings: Vec<Row>,
    weight: String,
    time_each: String,
    /// What practice comes to; empty without.
    practised: String,
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

/// Words the take-off of one piece; the design may be had in other sizes, or with other measures.
pub fn takeoff_page(
    (design, sizes, measures): (&str, &str, &str),
    piece: &Piece,
    take_off: &TakeOff,
    cords: &[CordBought],
    rates: &Rates,
    words: &Words,
) -> TakeOffPage {
    TakeOffPage {
        head: Letterhead::new(rates, &piece.title),
        design: design.to_owned(),
        sizes: sizes.to_owned(),
        measures: measures.to_owned(),
        work: work(piece, take_off, 1, words),
        shopping: shopping(cords, &take_off.fittings, words),
    }
}

fn work(piece: &Piece, take_off: &TakeOff, quantity: u32, words: &Words) -> BenchWork {
    BenchWork {
        title: piece.title.clone(),
        quantity,
        facts: facts(piece, take_off, quantity, words),
        finished: piece.finished.clone(),
        cords: take_off.cords.iter().map(|line| cut_row(line, quantity, words)).collect(),
        legs: take_off
            .legs
            .iter()
            .map(|line| Row::new(format!("{} {}", line.count, line.set), words.length(line.length)))
            .collect(),
        steps: take_off.steps.iter().enumerate().map(|(at, step)| step_row(at, step, words)).collect(),
        chores: take_off
            .chores
            .iter()
            .map(|chore| Row {
                text: chore.title.clone(),
                detail: if chore.once && quantity > 1 { "once for all" } else { "" }.to_owned(),
                amount: words.time(chore.time),
            })
            .collect(),
        knots: knot_counts(take_off, words)
            .into_iter()
            .map(|(knot, count)| Row::new(knot, count.to_string()))
            .collect(),
        fittings: take_off
            .fittings
            .iter()
            .map(|(fitting, count)| Row::new(fitting.title.clone(), count.to_string()))
            .collect(),
        weight: words.mass(take_off.weight),
        time_each: words.time(take_off.time_of(1)),
        practised: tenth_piece(take_off, words),
    }
}

fn facts(piece: &Piece, take_off: &TakeOff, quantity: u32, words: &Words) -> String {
    let size = piece.finished.as_ref().map(|finished| format!("Finished size {finished}. ")).unwrap_or_default();
    let one = format!("One weighs about {} and takes {}", words.mass(take_off.weight), words.time(take_off.time_of(1)));
    let all =
        if quantity > 1 { format!("; all take {}", words.time(take_off.time_of(quantity))) } else { String::new() };
    format!("{size}{one}{all}. {}", tenth_piece(take_off, words)).trim_end().to_owned()
}

/// What the tenth piece takes, where practice shortens it.
fn tenth_piece(take_off: &TakeOff, words: &Words) -> String {
    if !take_off.is_practised() {
        return String::new();
    }
    format!("The tenth of a row takes {}.", words.time(take_off.time_of_nth(10)))
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
        None => "single".to_owned(),
        Some(fold) if fold.from.is_none() => format!("in the middle, at {}", words.length(fold.at)),
        Some(fold) => format!("{} from the {} end", words.length(fold.at), fold.from.as_deref().unwrap_or_default()),
    };
    CutRow {
        group: line.group.clone(),
        cord: line.cord.full_title(),
        each: line.count.to_string(),
        all: (line.count * u64::from(quantity)).to_string(),
        length: words.length(Length::mm(reeve_measure::count(line.cut_mm))),
        fold,
    }
}

fn step_row(at: usize, step: &StepLine, words: &Words) -> StepRow {
    let time = step.time.of(1);
    let (detail, count) = match &step.doing {
        Doing::Knots(knots) => (knot_words(knots, words), knots.count.to_string()),
        Doing::Bare(length, legs) | Doing::Tail(length, legs) => {
            (format!("{} on {}", words.length(*length), plural("leg", *legs)), String::new())
        }
        Doing::Beads(bead, count) => (bead.title.clone(), count.to_string()),
        Doing::LayIn => (String::new(), String::new()),
    };
    StepRow {
        number: (at + 1).to_string(),
        title: step.title.clone(),
        detail,
        count,
        time: if time > Time::ZERO { words.time(time) } else { String::new() },
        note: step.note.clone(),
    }
}

fn knot_words(knots: &KnotLine, words: &Words) -> String {
    let what = plural(&knots.knot, knots.count);
    let laid = if knots.times > 1 && knots.columns > 1 {
        format!(", {} in each of {} columns", knots.times, knots.columns)
    } else {
        String::new()
    };
    // The catalogue's own figures need no word of where they come from.
    let by =
        if [YOUR_SAMPLE, YOUR_HAND].contains(&knots.source) { format!(", by {}", knots.source) } else { String::new() };
    let set = set_to(&knots.parameters, words);
    format!("{what}{laid}{set}; one takes {} of leg{by}", words.length(knots.take_up))
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
        (ParameterUnit::Degrees, _) => format!("{number}°"),
        (ParameterUnit::Diameters, Some(length)) => {
            format!("{} ({number}\u{a0}{})", words.length(length), if number == "1" { "diameter" } else { "diameters" })
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
        bought.put_ups.iter().map(|(put_up, count)| format!("{count} × {}", put_up.title)).collect();
    Buy {
        text: bought.cord.full_title(),
        put_ups: put_ups.join(" + "),
        use_of_it: format!("{} cut, {} left", words.length(bought.cut), words.length(bought.bought - bought.cut)),
        price: words.rounded(bought.price),
    }
}

fn buy_fitting((fitting, count): &Many<Fitting>, words: &Words) -> Buy {
    Buy {
        text: fitting.title.clone(),
        put_ups: count.to_string(),
        use_of_it: String::new(),
        price: words.rounded(fitting.price * rust_decimal::Decimal::from(*count)),
    }
}
