//! Practice: each piece of many alike takes a little less time than the one before.
//!
//! Two models bear names, and a shop says which is meant. With a rate of 85 %, every doubling of the pieces made leaves 85 %:
//! - the **unit** model (J. R. Crawford, 1944): of the time that the piece itself takes;
//! - the **cumulative average** model (T. P. Wright, Journal of the Aeronautical Sciences 3, 1936): of the time that all
//!   pieces so far took on average.
//!
//! Both go on for ever, and a hand does not: from some piece on the time stays as it is.

use reeve_measure::{Time, count as as_count};

/// How practice shortens the work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LearningCurve {
    /// What each doubling of the pieces made multiplies by the rate.
    pub model: Model,
    /// What each doubling leaves, as a factor, above 0 to 1: 0.8 takes a fifth off; 1 is no practice at all.
    pub rate: f64,
    /// The piece from which on the time stays as it is, 1 or more.
    pub steady: u32,
}

/// What it is that falls with each doubling.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Model {
    /// The time of the piece.
    Unit,
    /// The average time of all pieces so far.
    CumulativeAverage,
}

impl Model {
    /// Both with their word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("unit", Self::Unit), ("cumulative-average", Self::CumulativeAverage)];

    /// The word it is written as.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, model)| *model == self).map_or("", |(word, _)| word)
    }
}

impl LearningCurve {
    /// Every piece takes as long as the first.
    pub const NONE: Self = Self { model: Model::Unit, rate: 1.0, steady: 1 };

    /// Whether pieces get quicker at all.
    pub fn counts(&self) -> bool {
        self.rate < 1.0 && self.steady > 1
    }

    /// What so many pieces take that follow so many made before, in times of the very first.
    pub fn run(&self, before: u64, pieces: u64) -> f64 {
        if self.counts() { self.total(before + pieces) - self.total(before) } else { as_count(pieces) }
    }

    /// What the first so many pieces take.
    fn total(&self, pieces: u64) -> f64 {
        let falling = pieces.min(u64::from(self.steady));
        let steady = as_count(pieces - falling);
        let sum = match self.model {
            Model::Unit => (1..=falling).map(|nth| self.piece(nth)).sum(),
            Model::CumulativeAverage => self.up_to(falling),
        };
        sum + if pieces > falling { steady * self.piece(falling) } else { 0.0 }
    }

    /// What one piece takes while times still fall.
    fn piece(&self, nth: u64) -> f64 {
        match self.model {
            Model::Unit => libm::pow(as_count(nth), self.exponent()),
            Model::CumulativeAverage => self.up_to(nth) - self.up_to(nth - 1),
        }
    }

    /// The average of the first so many, times as many.
    fn up_to(&self, pieces: u64) -> f64 {
        if pieces == 0 { 0.0 } else { libm::pow(as_count(pieces), 1.0 + self.exponent()) }
    }

    /// The power that a doubling raises: the logarithm of the rate to the base of 2.
    fn exponent(&self) -> f64 {
        libm::log2(self.rate)
    }
}

/// Time of work that is done alike in each piece, perhaps several times in one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Practised {
    /// What it takes the first time.
    pub first: Time,
    /// How often it is done in one piece.
    pub alike: u64,
    /// How often it was done before the first piece.
    pub before: u64,
    /// How practice shortens it.
    pub practice: LearningCurve,
}

impl Practised {
    /// Time of so many pieces.
    pub fn of(&self, pieces: u64) -> Time {
        self.first * self.practice.run(self.before, self.alike * pieces)
    }

    /// Time of one piece, by its place in a row; 1 is the first.
    pub fn nth(&self, piece: u64) -> Time {
        self.first * self.practice.run(self.before + self.alike * (piece.max(1) - 1), self.alike)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn practice_counts_where_it_shortens_more_than_the_first_piece() {
        let curve = |rate: f64, steady: u32| LearningCurve { model: Model::Unit, rate, steady };
        let counts = [curve(0.9, 2), curve(0.9, 1), curve(1.0, 2), LearningCurve::NONE].map(|curve| curve.counts());
        assert_eq!(counts, [true, false, false, false]);
        assert_eq!(
            Model::WORDS.iter().map(|(_, model)| model.word()).collect::<Vec<_>>(),
            ["unit", "cumulative-average"]
        );
    }

    /// No steady piece in reach.
    fn endless(model: Model, rate: f64) -> LearningCurve {
        LearningCurve { model, rate, steady: 10_000 }
    }

    fn close(found: f64, published: f64) {
        assert!((found - published).abs() < 0.0006, "{found} and not {published}");
    }

    #[test]
    fn totals_are_the_published_ones() {
        // Documentation of the R package learningCurve 1.1.2. Unit model: first unit 100 h, 85 %, 125 units.
        close(100.0 * endless(Model::Unit, 0.85).run(0, 125), 5201.085);
        // Cumulative average model: first unit 75 h, 85 %, units 201 to 250.
        close(75.0 * endless(Model::CumulativeAverage, 0.85).run(200, 50), 806.772);
        // Unit model at 80 %, computed from its definition; textbooks print the same table to three places (from memory).
        for (units, total) in [(2, 1.8), (5, 3.738), (10, 6.315), (20, 10.485)] {
            close(endless(Model::Unit, 0.8).run(0, units), total);
        }
    }

    #[test]
    fn a_doubling_leaves_the_rate() {
        let unit = endless(Model::Unit, 0.85);
        close(unit.run(7, 1) / unit.run(3, 1), 0.85);
        let average = endless(Model::CumulativeAverage, 0.85);
        close(average.run(0, 8) / 8.0 / (average.run(0, 4) / 4.0), 0.85);
    }

    #[test]
    fn from_the_steady_piece_on_nothing_falls() {
        for model in [Model::Unit, Model::CumulativeAverage] {
            let practice = LearningCurve { model, rate: 0.8, steady: 10 };
            close(practice.run(9, 1), practice.run(500, 1));
            close(practice.run(0, 1_000_000_000) / 1e9, practice.run(10, 1));
        }
        close(LearningCurve::NONE.run(3, 7), 7.0);
    }

    #[test]
    fn parts_of_a_piece_practise_as_pieces_do() {
        let leaf = Practised { first: Time::s(60.0), alike: 9, before: 0, practice: endless(Model::Unit, 0.9) };
        let alone = Practised { alike: 1, ..leaf };
        close(leaf.of(2).as_s(), alone.of(18).as_s());
        close(leaf.nth(2).as_s(), alone.of(18).as_s() - alone.of(9).as_s());
    }

    proptest! {
        #[test]
        fn more_pieces_take_longer_and_each_no_longer_than_the_one_before(
            rate in 0.5..1.0_f64, steady in 1_u32..60, unit: bool, before in 0_u64..80, pieces in 1_u64..80
        ) {
            let model = if unit { Model::Unit } else { Model::CumulativeAverage };
            let practice = LearningCurve { model, rate, steady };
            let one = |nth: u64| practice.run(nth, 1);
            prop_assert!(one(before) > 0.0 && one(before + 1) <= one(before) + 1e-9);
            let sum: f64 = (before..before + pieces).map(one).sum();
            prop_assert!((practice.run(before, pieces) - sum).abs() < 1e-6 * sum.max(1.0));
        }
    }
}
