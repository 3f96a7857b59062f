//! Places: which legs lie where, and which of them tie.
//!
//! A leg has a name for life: its set, and its number in order of hanging. Its place is where it lies now: 1 to n from left to
//! right as the maker faces the work, or closed round, with place 1 next to place n. Steps act on places; places are counted
//! anew when a step ends, so there is never a gap. Some cords are out of the row: laid-in leaders, wraps. They answer to their
//! set alone, and rest beside a leg.
//!
//! Nothing here has a length: who ties how often follows from order alone.

mod error;
mod field;
mod hanging;
mod leading;
mod selection;
#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;

pub use error::PlaceError;
pub use field::{KnotRows, Leave, MovingEdges, RowsAsked, field_rows};
pub use hanging::{Deal, HungCord, NewLegs};
pub use leading::{Crossing, Leading, Mirror};
pub use selection::{Selected, Selection};

/// A leg, by its number among all that were ever hung.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LegId(usize);

/// A leg's name for life.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LegName {
    /// Its set.
    pub set: String,
    /// Its number in the set, from 1, in order of hanging.
    pub number: u32,
}

/// How a row is worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Worked {
    /// It has a left and a right edge.
    #[default]
    Flat,
    /// It is closed: place 1 follows on place n.
    Round,
    /// A round laid flat: front and back legs lie turn about.
    Double,
}

/// Legs that hang side by side.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LegRow {
    /// The word it is called by, if there are several.
    pub name: Option<String>,
    /// The legs, in order of places.
    pub legs: Vec<LegId>,
    /// How it is worked.
    pub worked: Worked,
}

/// A cord out of the row, and the leg it rests to the right of; nothing at the left edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Resting {
    /// The cord.
    pub leg: LegId,
    /// The leg to its left.
    pub right_of: Option<LegId>,
}

/// What a knot's file says of the legs it takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnotPlaces {
    /// Legs in one, if a step does not say; a step must say where the file does not.
    pub takes: Option<usize>,
    /// Which of them tie.
    pub ties: Ties,
    /// How they lie after it.
    pub after: After,
}

/// Which legs of a knot tie: the others are tied round.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ties {
    /// The first and the last.
    Outer,
    /// All but the first and the last.
    Inner,
    /// The first.
    Left,
    /// The last.
    Right,
    /// All.
    All,
    /// A cord of the knot's own, out of the row.
    Own(LegId),
    /// Legs of these sets: they are brought to the outer places first, the left ones left.
    Sets(Vec<String>),
}

/// How legs lie after a knot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum After {
    /// As before.
    Keeps,
    /// The outer two change sides.
    Swaps,
    /// Each lies one place on, the last first.
    Turns,
    /// The leg that comes to lie at each place, by its place before, from 1.
    As(Vec<usize>),
}

/// A knot in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlacedKnot {
    /// The places it takes, from 1, in order; over the seam of a round the last come first.
    pub places: Vec<usize>,
    /// Legs that tie.
    pub ties: Vec<LegId>,
    /// Legs that are tied round.
    pub core: Vec<LegId>,
}

/// Which row a step works in: the only one, or one by its name.
pub type RowName<'a> = Option<&'a str>;

/// The work as it lies: its rows, what is out of them, and every leg that ever was.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LegOrder {
    names: Vec<LegName>,
    rows: Vec<LegRow>,
    out: Vec<Resting>,
}

impl LegOrder {
    /// A leg's name.
    pub fn name(&self, leg: LegId) -> &LegName {
        &self.names[leg.0]
    }

    /// The rows, in the order in which they were begun.
    pub fn rows(&self) -> &[LegRow] {
        &self.rows
    }

    /// The cords out of the row.
    pub fn out(&self) -> &[Resting] {
        &self.out
    }

    /// The row of a name, or the only one.
    ///
    /// # Errors
    /// [`PlaceError::NoRow`] when there is none, or there are several and none is named.
    pub fn row(&self, name: RowName<'_>) -> Result<&LegRow, PlaceError> {
        self.at(name).map(|at| &self.rows[at])
    }

    fn at(&self, name: RowName<'_>) -> Result<usize, PlaceError> {
        let found = match name {
            None if self.rows.len() == 1 => Some(0),
            None => None,
            Some(_) => self.rows.iter().position(|row| row.name.as_deref() == name),
        };
        found.ok_or_else(|| PlaceError::NoRow {
            named: name.map(str::to_owned),
            known: self.rows.iter().filter_map(|row| row.name.clone()).collect(),
        })
    }

    /// The cord out of the row that is called by its set, the one hung first.
    fn out_of_set(&self, set: &str) -> Option<Resting> {
        self.out.iter().copied().find(|resting| self.name(resting.leg).set == set)
    }

    /// Ties rows of one knot; what each takes, row by row.
    ///
    /// # Errors
    /// [`PlaceError`] when the legs don't come out, or the selection can't be.
    pub fn tie(
        &mut self,
        row: RowName<'_>,
        selection: &Selection,
        field: &KnotRows,
        knot: &KnotPlaces,
    ) -> Result<Vec<Vec<PlacedKnot>>, PlaceError> {
        let at = self.at(row)?;
        let selected = self.selected(at, selection)?;
        let is_round = self.rows[at].worked == Worked::Round && selected.len() == self.rows[at].legs.len();
        let each = field.each.or(knot.takes).ok_or(PlaceError::EachNotSaid { legs: selected.len() })?;
        let starts = field_rows(selected.len(), each, is_round, field)?;
        let mut tied = Vec::new();
        for row_starts in starts {
            let knots = row_starts.into_iter().map(|start| {
                let places: Vec<usize> = (start..start + each).map(|nth| selected[nth % selected.len()]).collect();
                self.tie_one(at, places, knot, field.times)
            });
            tied.push(knots.collect::<Result<_, _>>()?);
        }
        Ok(tied)
    }

    /// Ties one knot at places, so many times, one under the other.
    fn tie_one(
        &mut self,
        row: usize,
        places: Vec<usize>,
        knot: &KnotPlaces,
        times: u32,
    ) -> Result<PlacedKnot, PlaceError> {
        let mut legs: Vec<LegId> = places.iter().map(|place| self.rows[row].legs[place - 1]).collect();
        if let Ties::Sets(sets) = &knot.ties {
            legs = self.brought_outside(legs, sets);
        }
        let (ties, core) = self.parted(&legs, &knot.ties);
        for _ in 0..times {
            legs = knot.after.applied(&legs)?;
        }
        for (place, leg) in places.iter().zip(legs) {
            self.rows[row].legs[place - 1] = leg;
        }
        Ok(PlacedKnot { places, ties, core })
    }

    fn parted(&self, legs: &[LegId], ties: &Ties) -> (Vec<LegId>, Vec<LegId>) {
        let last = legs.len().saturating_sub(1);
        if let Ties::Own(cord) = ties {
            return (vec![*cord], legs.to_vec());
        }
        let is_tying = |(at, leg): (usize, LegId)| match ties {
            Ties::Outer => at == 0 || at == last,
            Ties::Inner => at != 0 && at != last,
            Ties::Left => at == 0,
            Ties::Right => at == last,
            Ties::All => true,
            Ties::Sets(sets) => sets.contains(&self.name(leg).set),
            Ties::Own(_) => false,
        };
        let (ties, core): (Vec<_>, Vec<_>) = legs.iter().copied().enumerate().partition(|pair| is_tying(*pair));
        let legs = |all: Vec<(usize, LegId)>| all.into_iter().map(|(_, leg)| leg).collect();
        (legs(ties), legs(core))
    }

    /// The legs of some sets brought to the outer places, the left half of them left; the others keep their order between.
    fn brought_outside(&self, legs: Vec<LegId>, sets: &[String]) -> Vec<LegId> {
        let (tying, others): (Vec<_>, Vec<_>) = legs.into_iter().partition(|leg| sets.contains(&self.name(*leg).set));
        let (left, right) = tying.split_at(tying.len().div_ceil(2));
        [left, &others, right].concat()
    }

    /// Lets neighbouring stretches change places, the first passing over the second.
    ///
    /// # Errors
    /// [`PlaceError`] when they don't lie beside one another.
    pub fn cross(&mut self, row: RowName<'_>, over: &Selection, under: &Selection) -> Result<(), PlaceError> {
        let at = self.at(row)?;
        let (over, under) = (self.selected(at, over)?, self.selected(at, under)?);
        let mut places = [over.clone(), under.clone()].concat();
        places.sort_unstable();
        let is_whole = places.windows(2).all(|pair| pair[0] + 1 == pair[1]);
        let is_parted = over.last() < under.first() || under.last() < over.first();
        if !is_whole || !is_parted {
            return Err(PlaceError::NotNeighbours { over, under });
        }
        let (first, second) = if over < under { (over, under) } else { (under, over) };
        let legs = |places: &[usize]| -> Vec<LegId> { places.iter().map(|at_| self.rows[at].legs[at_ - 1]).collect() };
        let legs = [legs(&second), legs(&first)].concat();
        for (place, leg) in places.into_iter().zip(legs) {
            self.rows[at].legs[place - 1] = leg;
        }
        Ok(())
    }

    /// Ends legs: they leave the row, and places are counted anew. A set that is out of the row ends as well.
    ///
    /// # Errors
    /// [`PlaceError`] when there are no such legs.
    pub fn end(&mut self, row: RowName<'_>, selection: &Selection) -> Result<Vec<LegId>, PlaceError> {
        if let Selection::Of(parts) = selection
            && let [Selected::Set(set)] = parts.as_slice()
            && self.out_of_set(set).is_some()
        {
            let names = &self.names;
            let (ended, kept): (Vec<_>, Vec<_>) =
                self.out.iter().copied().partition(|resting| names[resting.leg.0].set == *set);
            self.out = kept;
            return Ok(ended.into_iter().map(|resting| resting.leg).collect());
        }
        let at = self.at(row)?;
        let ended: Vec<LegId> =
            self.selected(at, selection)?.into_iter().map(|place| self.rows[at].legs[place - 1]).collect();
        for leg in &ended {
            self.leave(at, *leg);
        }
        Ok(ended)
    }

    /// Takes a leg out of a row; what rested to its right now rests to the right of the leg before it.
    fn leave(&mut self, row: usize, leg: LegId) {
        let legs = &mut self.rows[row].legs;
        let Some(place) = legs.iter().position(|other| *other == leg) else { return };
        let before = place.checked_sub(1).map(|before| legs[before]);
        legs.remove(place);
        for resting in self.out.iter_mut().filter(|resting| resting.right_of == Some(leg)) {
            resting.right_of = before;
        }
    }

    /// Closes rows into one, in this order, worked in a way from here on.
    ///
    /// # Errors
    /// [`PlaceError::NoRow`] when one is not there.
    pub fn close(&mut self, names: &[&str], worked: Worked) -> Result<(), PlaceError> {
        let mut legs = Vec::new();
        for name in names {
            let at = self.at(Some(name))?;
            legs.extend(self.rows.remove(at).legs);
        }
        self.rows.push(LegRow { name: None, legs, worked: Worked::Round });
        self.work(None, worked)
    }

    /// Works a row in another way from here on.
    ///
    /// # Errors
    /// [`PlaceError::OddDouble`] when a round of an odd number of legs is to be laid double.
    pub fn work(&mut self, row: RowName<'_>, worked: Worked) -> Result<(), PlaceError> {
        let at = self.at(row)?;
        let row = &mut self.rows[at];
        if worked == Worked::Double && row.worked == Worked::Round {
            let count = row.legs.len();
            if count % 2 == 1 {
                return Err(PlaceError::OddDouble { legs: count });
            }
            // The fold lies between n and 1: front, back, front, back.
            row.legs = (0..count / 2).flat_map(|nth| [row.legs[nth], row.legs[count - 1 - nth]]).collect();
        }
        row.worked = worked;
        Ok(())
    }

    /// Counts the places of a round from another one on.
    ///
    /// # Errors
    /// [`PlaceError`] when the row is not round, or has no such place.
    pub fn begin_at(&mut self, row: RowName<'_>, first: usize) -> Result<(), PlaceError> {
        let at = self.at(row)?;
        let row = &mut self.rows[at];
        if row.worked != Worked::Round {
            return Err(PlaceError::NotRound { asked: "first" });
        }
        let count = row.legs.len();
        if !(1..=count).contains(&first) {
            return Err(PlaceError::NoPlace { place: first, legs: count });
        }
        row.legs.rotate_left(first - 1);
        Ok(())
    }
}

impl After {
    fn applied(&self, legs: &[LegId]) -> Result<Vec<LegId>, PlaceError> {
        let mut after = legs.to_vec();
        let last = legs.len().saturating_sub(1);
        match self {
            Self::Keeps => {}
            Self::Swaps => after.swap(0, last),
            Self::Turns => after.rotate_right(1),
            Self::As(places) => {
                let mut all = places.clone();
                all.sort_unstable();
                if all != (1..=legs.len()).collect::<Vec<_>>() {
                    return Err(PlaceError::OrderOfKnot { named: places.len(), legs: legs.len() });
                }
                after = places.iter().map(|place| legs[place - 1]).collect();
            }
        }
        Ok(after)
    }
}
