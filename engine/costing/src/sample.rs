//! Small things to reckon with in unit tests: a cord, a ring, a piece, a shop's rates.

use std::sync::{Arc, OnceLock};

use reeve_catalogue::{Catalogue, Knot};
use reeve_measure::{Length, LinearDensity, Mass, Time};
use reeve_reading::SourceText;
use rust_decimal::Decimal;

use crate::basis::Basis;
use crate::hand::Hand;
use crate::learning_curve::LearningCurve;
use crate::money::Currency;
use crate::piece::{CordGroup, LegSet, NamedFitting, Piece, SetId, Step, TailEnd, Tie, Work};
use crate::rates::{Aim, Bench, Handling, Maker, Overhead, PriceRule, Rates, TaxRule, TaxScheme, Terms};
use crate::store::{Charge, Cord, Fitting, PutUp, Section};

/// A cord of 4 mm and 8 g/m, in reels of 100 m at 20.00.
pub(crate) fn cord() -> Arc<Cord> {
    Arc::new(Cord {
        name: "cotton".to_owned(),
        title: "cotton".to_owned(),
        colour: None,
        diameter: Length::mm(4.0),
        density: LinearDensity::g_per_m(8.0),
        density_estimated: false,
        give: None,
        put_ups: vec![PutUp { title: "reel".to_owned(), length_mm: 100_000, price: Decimal::from(20) }],
        charge: Charge::Used,
    })
}

/// A ring 5 mm thick, 50 mm inside.
pub(crate) fn ring() -> NamedFitting {
    let ring = Fitting {
        name: "ring".to_owned(),
        title: "ring".to_owned(),
        section: Some(Section::Round(Length::mm(5.0))),
        room: Some(Length::mm(50.0 * std::f64::consts::PI)),
        bead: None,
        weight: Mass::g(10.0),
        price: Decimal::from(2),
    };
    NamedFitting { name: "ring".to_owned(), many: (Arc::new(ring), 1) }
}

/// A knot of the catalogue; `square` is one of moves, so that what it takes can be summed by hand.
pub(crate) fn knot(name: &str) -> Arc<Knot> {
    // Properties ask for it thousands of times.
    static KNOTS: OnceLock<Catalogue> = OnceLock::new();
    let knots = KNOTS.get_or_init(|| {
        let mut catalogue = Catalogue::embedded();
        catalogue.add(&SourceText::new("knots/square.toml", SQUARE));
        catalogue
    });
    knots.find(name).cloned().expect("the catalogue knows the knot")
}

/// A square knot in which a leg goes once round the core and once round the other leg.
const SQUARE: &str = r#"
[knot]
name = "square"
title = "square knot"
kind = "sennit"
summary = "Two half knots round a still core."

[core]
legs = [0, 24]

[[role]]
role = "working"
legs = [2, 2]
draws = 2
moves = [{ round = "core", turns = 1 }, { round = "leg", turns = 1 }]
source = "geometry"
note = "A turn round the core and one round the other leg."

[rise]
diameters = 3.4641
source = "geometry"
note = "The square root of 3 diameters for each half."

[time]
base = 9
pull = 1.5
source = "from memory"
note = "Only for these tests."
"#;

/// A step that ties.
pub(crate) fn tie(name: &str, working: &[SetId], core: &[SetId]) -> Tie {
    Tie {
        knot: knot(name),
        times: 1,
        columns: None,
        working: working.to_vec(),
        core: core.to_vec(),
        on: None,
        shared: None,
        parameters: Vec::new(),
    }
}

pub(crate) fn step(work: Work) -> Step {
    Step { title: "step".to_owned(), hang: Vec::new(), alongside: Vec::new(), work, note: None, time: None }
}

/// A step that hangs the group on the ring.
pub(crate) fn hang(group: usize, sets: &[SetId]) -> Step {
    let tie = Tie { on: Some(0), ..tie("larks-head", sets, &[]) };
    Step { hang: vec![group], ..step(Work::Tie(tie)) }
}

pub(crate) fn tail(cm: f64, legs: &[SetId]) -> Step {
    step(Work::Tail { length: Length::cm(cm), legs: legs.to_vec(), end: TailEnd::Plain })
}

/// So many folded cords, each with a leg in the set `worker` (0) and one in `filler` (1), on a ring.
pub(crate) fn piece(cords: u32, steps: Vec<Step>) -> Piece {
    let set = |name: &str| LegSet { name: name.to_owned(), group: 0, count: cords };
    Piece {
        title: "piece".to_owned(),
        groups: vec![CordGroup { name: "arms".to_owned(), cord: cord(), count: cords, folded: true, legs: (0, 1) }],
        sets: vec![set("worker"), set("filler")],
        fittings: vec![ring()],
        steps,
        ..Piece::default()
    }
}

/// No allowance, no rounding but to whole millimetres, no handling.
pub(crate) fn bench() -> Bench {
    Bench {
        pace: 1.0,
        pace_spread: None,
        allowances: Vec::new(),
        practice: LearningCurve::NONE,
        handling: Handling { pack: Time::minutes(6.0), ..Handling::default() },
        cutting_allowance: Decimal::ZERO,
        cutting_step: Length::mm(1.0),
    }
}

/// Wage 20.00, overhead 10.00 an hour, a quarter of the price left over, tax 20 % added.
pub(crate) fn rates(scheme: TaxScheme) -> Rates {
    Rates {
        maker: Maker {
            name: "maker".to_owned(),
            tagline: None,
            address: Vec::new(),
            contact: Vec::new(),
            accent: "#000000".to_owned(),
            language: "en".to_owned(),
        },
        currency: Currency::from_code("EUR").expect("the euro is a currency"),
        tax: TaxRule { scheme, rate: Decimal::from(20), number: None, note: None },
        wage: Decimal::from(20),
        overhead: Overhead::PerHour(Decimal::from(10)),
        weekly_hours: None,
        calendar: crate::calendar::Calendar::default(),
        number_pattern: None,
        bench: bench(),
        price: PriceRule {
            aim: Aim::Margin(Decimal::from(25)),
            minimum: Decimal::ZERO,
            step: Decimal::ZERO,
            confidence: None,
            rush: Decimal::from(50),
            breaks: vec![(3, Decimal::from(10))],
            itemised: true,
        },
        fees: Vec::new(),
        terms: Terms { valid_days: 30, deposit: Decimal::from(40), sentences: Vec::new(), care: Vec::new() },
    }
}

/// The same with a hand that no sample has shown.
pub(crate) fn basis(rates: Rates) -> Basis {
    Basis { rates, hand: Hand::default() }
}

/// The same at the plain bench.
pub(crate) fn plain() -> Basis {
    basis(rates(TaxScheme::Net))
}
