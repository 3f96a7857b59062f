//! How the legs of a step are laid out over its columns.

use reeve_catalogue::{Knot, Runs, with_article};

use super::{DesignPlace, PieceFault, count_legs};
use crate::piece::{Piece, SetId, Tie};

/// Legs of a step laid out over its columns.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Layout {
    /// Columns side by side.
    pub(super) columns: u64,
    /// Working legs in one knot.
    pub(super) working_each: u32,
    /// Core legs in one column.
    pub(super) core_each: u32,
    /// Knots in all.
    pub(super) knots: u64,
    /// Knots that sit on one core, for each time.
    pub(super) knots_on_core: u64,
    /// Sets that share the take-up.
    pub(super) pool: Vec<SetId>,
    /// Legs of the pool that a pass leaves untied.
    pub(super) idle: u64,
}

/// Lays the legs out, or says what doesn't divide.
pub(super) fn lay_out(piece: &Piece, at: usize, tie: &Tie) -> Result<Layout, PieceFault> {
    let desk = LayoutInput { piece, at, tie, knot: &tie.knot };
    if count_legs(piece, &tie.working) == 0 {
        return Err(desk.fault(
            "working",
            "no legs are named to tie with".to_owned(),
            "name leg sets in `working`, or cord groups in `hang`",
        ));
    }
    match (tie.shared, tie.knot.core.runs) {
        (None, Runs::Down) => desk.down(),
        (None, Runs::Across) => desk.across(),
        (Some(shared), Runs::Down) => desk.shared(shared.core_legs),
        (Some(_), Runs::Across) => {
            let title = format!("the legs of {} don't change places within a step", with_article(&tie.knot.title));
            Err(desk.fault("share", title, "take out share = \"even\"; give each leader its own step"))
        }
    }
}

/// What a layout is worked out from.
struct LayoutInput<'a> {
    piece: &'a Piece,
    at: usize,
    tie: &'a Tie,
    knot: &'a Knot,
}

impl LayoutInput<'_> {
    fn fault(&self, key: &'static str, title: String, help: &str) -> PieceFault {
        PieceFault::at(DesignPlace::Step(self.at, key), title, "", help)
    }

    fn working(&self) -> u64 {
        count_legs(self.piece, &self.tie.working)
    }

    fn core(&self) -> u64 {
        count_legs(self.piece, &self.tie.core)
    }

    /// Fewest working legs of one knot; at least one.
    fn fewest(&self) -> u64 {
        u64::from(self.knot.working.legs.0.max(1))
    }

    /// Whether every knot has the same number of working legs.
    fn fixed(&self) -> bool {
        self.knot.working.legs.0 == self.knot.working.legs.1
    }

    /// Where the legs could be laid out in more than one way, the design has to say.
    fn columns_said(&self, ambiguous: bool, one: &str) -> Result<(), PieceFault> {
        if self.tie.columns.is_some() || !ambiguous {
            return Ok(());
        }
        let title = format!("{} over these legs can be laid out in more than one way", with_article(&self.knot.title));
        Err(self.fault("knot", title, &format!("say `columns`: 1 for {one}, or how many side by side")))
    }

    fn columns_or(&self, otherwise: u64) -> u64 {
        self.tie.columns.map_or(otherwise, u64::from).max(1)
    }

    fn divided(&self, key: &'static str, legs: u64, columns: u64, what: &str) -> Result<u64, PieceFault> {
        if legs.is_multiple_of(columns) {
            return Ok(legs / columns);
        }
        let sets = if key == "core" { &self.tie.core } else { &self.tie.working };
        let names: Vec<&str> = sets.iter().map(|set| self.piece.sets[*set].name.as_str()).collect();
        let title = format!("{legs} {what} ({}) don't divide over {columns} columns", names.join(", "));
        Err(self.fault(
            key,
            title,
            "change `columns` or the number of cords; legs that change places want share = \"even\"",
        ))
    }

    /// Each column has a core of its own.
    fn down(&self) -> Result<Layout, PieceFault> {
        let working = self.working();
        if self.knot.together {
            self.columns_said(working > 1, &format!("one bundle of {working} legs"))?;
        }
        if self.knot.working.joins {
            self.columns_said(working > 1, &format!("one wrap of {working} legs"))?;
        }
        let guess = if self.fixed() { (working / self.fewest()).max(1) } else { 1 };
        let columns = self.columns_or(guess);
        let working_each = self.divided("working", working, columns, "working legs")?;
        if self.fixed() && working_each != self.fewest() {
            return Err(self.wrong_working(working, columns));
        }
        let core_each = self.divided("core", self.core(), columns, "core legs")?;
        Ok(Layout {
            columns,
            working_each: small(working_each),
            core_each: small(core_each),
            knots: columns * u64::from(self.tie.times),
            knots_on_core: 1,
            pool: Vec::new(),
            idle: 0,
        })
    }

    fn wrong_working(&self, working: u64, columns: u64) -> PieceFault {
        let each = self.fewest();
        let title = format!(
            "{columns} {} of {each} working legs need {} legs, and the sets given have {working}",
            if columns == 1 { "column" } else { "columns" },
            columns * each
        );
        self.fault("working", title, "change `columns` or the sets; legs that change places want share = \"even\"")
    }

    /// The knots of a row share one core.
    fn across(&self) -> Result<Layout, PieceFault> {
        let fittings = self.tie.on.map_or(1, |on| u64::from(self.piece.fittings[on].many.1));
        self.columns_said(self.core() > 1, &format!("one leader of {} legs", self.core()))?;
        let columns = self.columns_or(fittings);
        let working = self.divided("working", self.working(), columns, "working legs")?;
        let core_each = self.divided("core", self.core(), columns, "core legs")?;
        if !working.is_multiple_of(self.fewest()) {
            let title = format!(
                "{working} legs can't all be tied in {}: each takes {}",
                with_article(&self.knot.title),
                self.fewest()
            );
            return Err(self.fault("working", title, "change the number of cords"));
        }
        let in_row = working / self.fewest();
        Ok(Layout {
            columns,
            working_each: small(self.fewest()),
            core_each: small(core_each),
            knots: columns * in_row * u64::from(self.tie.times),
            knots_on_core: in_row,
            pool: Vec::new(),
            idle: 0,
        })
    }

    /// Working and core legs are one pool.
    fn shared(&self, core_legs: Option<u32>) -> Result<Layout, PieceFault> {
        let mut pool = self.tie.working.clone();
        pool.extend(&self.tie.core);
        pool.sort_unstable();
        pool.dedup();
        let legs = count_legs(self.piece, &pool);
        let Some(columns) = self.tie.columns.map(u64::from) else {
            return Err(self.fault(
                "share",
                "legs that change places need `columns`".to_owned(),
                "say how many columns are tied side by side",
            ));
        };
        let working_each = self.fewest();
        let core_each = match core_legs {
            Some(core) => u64::from(core),
            None => (legs / columns.max(1)).saturating_sub(working_each),
        };
        let tied = columns * (working_each + core_each);
        if tied > legs || (core_legs.is_none() && tied != legs) {
            let title = format!(
                "{columns} columns of {working_each} working and {core_each} core legs need {tied} legs, and the sets given have {legs}"
            );
            return Err(self.fault("columns", title, "change `columns`; where some legs rest, say `core-legs`"));
        }
        Ok(Layout {
            columns,
            working_each: small(working_each),
            core_each: small(core_each),
            knots: columns * u64::from(self.tie.times),
            knots_on_core: 1,
            pool,
            idle: legs - tied,
        })
    }
}

/// Leg counts are sums of bounded counts; a sum past u32 is no piece and fails the knot's own range.
fn small(legs: u64) -> u32 {
    u32::try_from(legs).unwrap_or(u32::MAX)
}
