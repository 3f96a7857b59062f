//! Everything that is printed: each result with the page, the document and the table that it comes to.

use chrono::NaiveDate;
use rayon::prelude::*;
use reeve_book::{BookedCommission, Course, History};
use reeve_catalogue::shape::Shape;
use reeve_catalogue::table::TighteningRow;
use reeve_catalogue::{Knot, Setting, Taken};
use reeve_costing::basis::Basis;
use reeve_costing::hand::{Hand, OddSample};
use reeve_costing::pricing::Priced;
use reeve_costing::quote::Quote;
use reeve_costing::whatif::Change;
use reeve_office::{AllActuals, Period, Queue, TakenOff, Week, Weighed};
use rust_decimal::Decimal;
use serde::Serialize;

use crate::bench::DesignNames;
use crate::chart::{Charted, Sheet, knot_sheet};
use crate::compare::Comparison;
use crate::drawing::{DrawOptions, draw_alone};
use crate::printed::{Format, Printed, TableParts};
use crate::words::Words;
use crate::{Form, bench, book, compare, costing, hand, json, knots, mix, quote, tight, weigh};

/// What a shop reckons by, and its wording.
#[derive(Debug, Clone, Copy)]
pub struct Wording<'a> {
    /// What is reckoned by.
    pub basis: &'a Basis,
    /// The wording.
    pub words: &'a Words,
}

/// A quote, from what the client may know alone.
#[derive(Debug, Clone, Copy)]
pub struct QuoteResult<'a> {
    /// The quote.
    pub quote: &'a Quote,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for QuoteResult<'_> {
    const PAGE: &'static str = "quote";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        quote::quote_page(self.quote, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        self.quote
    }
}

/// What a commission costs and leaves: for the maker's eyes.
#[derive(Debug, Clone, Copy)]
pub struct CostingResult<'a> {
    /// The commission, priced.
    pub priced: &'a Priced,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for CostingResult<'_> {
    const PAGE: &'static str = "costing";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        costing::costing_page(self.priced, self.by.basis, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        json::costing_json(self.priced)
    }
}

/// What is done at the bench for a commission.
#[derive(Debug, Clone, Copy)]
pub struct BenchResult<'a> {
    /// The commission, priced.
    pub priced: &'a Priced,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for BenchResult<'_> {
    const PAGE: &'static str = "bench";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        bench::bench_page(self.priced, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        json::bench_json(self.priced)
    }
}

/// What one piece of a design needs.
#[derive(Debug, Clone, Copy)]
pub struct TakeOffResult<'a> {
    /// The design, with the cord to buy for one.
    pub taken: &'a TakenOff,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for TakeOffResult<'_> {
    const PAGE: &'static str = "takeoff";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        let (TakenOff { found, cords }, by) = (self.taken, self.by);
        let (sizes, measures) = (found.choices.sizes.join(", "), found.choices.measures_words());
        let names = DesignNames { design: &found.name, sizes: &sizes, measures: &measures };
        bench::takeoff_page(names, &found.piece, &found.take_off, cords, &by.basis.rates, by.words)
    }

    fn document(&self) -> impl Serialize {
        let TakenOff { found, cords } = self.taken;
        json::takeoff_json(&found.name, &found.piece.title, &found.take_off, cords)
    }
}

/// Designs beside one another.
#[derive(Debug, Clone, Copy)]
pub struct CompareResult<'a> {
    /// What is shown.
    pub shown: Comparison<'a>,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for CompareResult<'_> {
    const PAGE: &'static str = "compare";
    const FORMATS: &'static [Format] = Format::TABLE;

    fn view(&self, form: Form) -> impl Serialize {
        // Text has no charts.
        let shown = Comparison { drawn: form == Form::Html, ..self.shown };
        compare::compare_page(&shown, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        compare::compare_json(self.shown.rows, &self.by.basis.rates)
    }

    fn table(&self) -> TableParts<'_> {
        Box::new(std::iter::once_with(|| compare::compare_csv(self.shown.rows)))
    }
}

/// A design weighed, and what it comes to at some prices.
#[derive(Debug, Clone, Copy)]
pub struct WeighResult<'a> {
    /// The design on the scales.
    pub weighed: &'a Weighed<'a>,
    /// The prices.
    pub prices: &'a [Decimal],
    /// What is otherwise than in the shop.
    pub changes: &'a [Change],
    /// How it is worded.
    pub words: &'a Words,
}

impl Printed for WeighResult<'_> {
    const PAGE: &'static str = "weigh";
    const FORMATS: &'static [Format] = Format::TABLE;

    fn view(&self, _: Form) -> impl Serialize {
        weigh::weigh_page(self.weighed, self.prices, self.changes, self.words)
    }

    fn document(&self) -> impl Serialize {
        weigh::weigh_json(self.weighed, self.prices)
    }

    /// The prices alone, each on a line, worked out on all cores.
    fn table(&self) -> TableParts<'_> {
        const AT_ONCE: usize = 1_000;
        const IN_A_PART: usize = 16 * AT_ONCE;
        let rows = |prices: &[Decimal]| weigh::weigh_rows(self.weighed, prices);
        let part = move |prices: &[Decimal]| prices.par_chunks(AT_ONCE).map(rows).collect::<String>();
        let parts = self.prices.chunks(IN_A_PART).map(part);
        Box::new(std::iter::once(weigh::WEIGH_COLUMNS.to_owned()).chain(parts).map(Ok))
    }
}

/// A week shared out among designs.
#[derive(Debug, Clone, Copy)]
pub struct MixResult<'a> {
    /// The week.
    pub week: &'a Week,
    /// What is otherwise than in the shop.
    pub changes: &'a [Change],
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for MixResult<'_> {
    const PAGE: &'static str = "mix";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        mix::mix_page(self.week, self.changes, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        mix::mix_json(self.week, &self.by.basis.rates)
    }
}

/// Commissions of the book, one beneath another.
#[derive(Debug, Clone, Copy)]
pub struct ListResult<'a> {
    /// The commissions.
    pub commissions: &'a [BookedCommission],
    /// The day they are as of.
    pub day: NaiveDate,
    /// How they are worded.
    pub by: Wording<'a>,
}

impl Printed for ListResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::TABLE;

    fn view(&self, _: Form) -> impl Serialize {
        book::list_page(self.commissions, self.day, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::list_json(self.commissions, self.day)
    }

    fn table(&self) -> TableParts<'_> {
        Box::new(std::iter::once_with(|| book::list_csv(self.commissions)))
    }
}

/// A commission with all that the book knows of it.
#[derive(Debug, Clone, Copy)]
pub struct HistoryResult<'a> {
    /// The commission.
    pub history: &'a History,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for HistoryResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        book::history_page(self.history, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::history_json(self.history)
    }
}

/// Accepted work in its order.
#[derive(Debug, Clone, Copy)]
pub struct QueueResult<'a> {
    /// The work.
    pub queue: &'a Queue,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for QueueResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        book::queue_page(self.queue, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::queue_json(self.queue, &self.by.basis.rates)
    }
}

/// What a commission took beside what was quoted.
#[derive(Debug, Clone, Copy)]
pub struct ActualsResult<'a> {
    /// How it went.
    pub course: &'a Course,
    /// How it is worded.
    pub by: Wording<'a>,
}

impl Printed for ActualsResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        book::actuals_page(self.course, &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::actuals_json(self.course)
    }
}

/// What finished work took, all together.
#[derive(Debug, Clone, Copy)]
pub struct AllActualsResult<'a> {
    /// The sums; `None` where no finished work has anything logged.
    pub all: Option<&'a AllActuals>,
    /// The year, if it is of one alone.
    pub year: Option<i32>,
    /// How they are worded.
    pub by: Wording<'a>,
}

impl Printed for AllActualsResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::PAGE;

    fn view(&self, _: Form) -> impl Serialize {
        book::all_actuals_page(self.all, &of_year(self.year), &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::all_actuals_json(self.all)
    }
}

/// A month's and a year's sums.
#[derive(Debug, Clone, Copy)]
pub struct SummaryResult<'a> {
    /// The sums, those of all months last.
    pub periods: &'a [Period],
    /// The year, if they are of one alone.
    pub year: Option<i32>,
    /// How they are worded.
    pub by: Wording<'a>,
}

impl Printed for SummaryResult<'_> {
    const PAGE: &'static str = "book";
    const FORMATS: &'static [Format] = Format::TABLE;

    fn view(&self, _: Form) -> impl Serialize {
        book::summary_page(self.periods, &of_year(self.year), &self.by.basis.rates, self.by.words)
    }

    fn document(&self) -> impl Serialize {
        book::summary_json(self.periods, &self.by.basis.rates)
    }

    fn table(&self) -> TableParts<'_> {
        Box::new(std::iter::once_with(|| book::summary_csv(self.periods)))
    }
}

fn of_year(year: Option<i32>) -> String {
    year.map(|year| year.to_string()).unwrap_or_default()
}

/// What the samples of a shop say.
#[derive(Debug, Clone, Copy)]
pub struct HandResult<'a> {
    /// The hand.
    pub hand: &'a Hand,
    /// Samples that are not counted, each with its place.
    pub odd: &'a [(&'a str, &'a OddSample)],
    /// How it is worded.
    pub words: &'a Words,
}

impl Printed for HandResult<'_> {
    const PAGE: &'static str = "hand";
    const FORMATS: &'static [Format] = Format::LINES;

    fn view(&self, _: Form) -> impl Serialize {
        hand::hand_page(self.hand, self.odd, self.words)
    }

    fn document(&self) -> impl Serialize {
        hand::hand_json(self.hand, self.odd)
    }
}

/// Knots at hand, by name.
#[derive(Debug, Clone, Copy)]
pub struct KnotsResult<'a> {
    /// The knots.
    pub knots: &'a [&'a Knot],
    /// How they are worded.
    pub words: &'a Words,
}

impl Printed for KnotsResult<'_> {
    const PAGE: &'static str = "knots";
    const FORMATS: &'static [Format] = Format::LINES;

    fn view(&self, _: Form) -> impl Serialize {
        knots::KnotsPage { knots: knots::knots_page(self.knots, self.words) }
    }

    fn document(&self) -> impl Serialize {
        knots::knots_json(self.knots)
    }
}

/// One knot, tied somewhere.
#[derive(Debug)]
pub struct KnotResult<'a> {
    /// The knot, where it is tied, and its shape if it can be drawn.
    pub charted: &'a Charted<'a>,
    /// What it takes there.
    pub taken: &'a Taken,
    /// The look of its page.
    pub sheet: Sheet,
    /// How it is worded.
    pub words: &'a Words,
}

impl Printed for KnotResult<'_> {
    const PAGE: &'static str = "knot";
    const FORMATS: &'static [Format] = Format::DRAWN;

    fn view(&self, form: Form) -> impl Serialize {
        let Charted { knot, setting, .. } = self.charted;
        match form {
            Form::Html => {
                KnotView::Sheet(Box::new(knot_sheet(self.sheet.clone(), self.charted, self.taken, self.words)))
            }
            Form::Text => KnotView::Page(Box::new(knots::knot_page(knot, setting, self.taken, self.words))),
        }
    }

    fn document(&self) -> impl Serialize {
        knots::knot_json(self.charted.knot, &self.charted.setting, self.taken)
    }
}

/// The drawing of a knot, alone.
#[derive(Debug)]
pub struct DrawingResult<'a> {
    /// The knot.
    pub knot: &'a Knot,
    /// Its shape.
    pub shape: Shape,
    /// The style of the drawing.
    pub style: String,
}

impl Printed for DrawingResult<'_> {
    const PAGE: &'static str = "drawing.css";
    const FORMATS: &'static [Format] = &[Format::Svg];

    fn view(&self, _: Form) -> impl Serialize {}

    fn document(&self) -> impl Serialize {}

    fn drawing(&self) -> String {
        draw_alone(&self.shape, &DrawOptions::of(self.knot), &self.style)
    }
}

/// A knot's page: with its drawing, or without.
#[derive(Serialize)]
#[serde(untagged)]
enum KnotView {
    Sheet(Box<crate::chart::KnotSheet>),
    Page(Box<knots::KnotPage>),
}

/// What tightening a knot found.
#[derive(Debug, Clone, Copy)]
pub struct TightResult<'a> {
    /// The knot.
    pub knot: &'a Knot,
    /// Where it is tied.
    pub setting: &'a Setting<'a>,
    /// What it takes there.
    pub row: &'a TighteningRow,
    /// How it is worded.
    pub words: &'a Words,
}

impl Printed for TightResult<'_> {
    const PAGE: &'static str = "tight";
    const FORMATS: &'static [Format] = Format::LINES;

    fn view(&self, _: Form) -> impl Serialize {
        tight::tight_page(self.knot, self.setting, self.row, self.words)
    }

    fn document(&self) -> impl Serialize {
        tight::tight_json(self.knot, self.setting, self.row)
    }
}
