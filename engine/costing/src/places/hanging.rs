//! Hanging: cords give their legs places.

use super::{LegId, LegName, LegOrder, LegRow, PlaceError, Resting, RowName, Selection, Worked};

/// Cords cut alike that are hung.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HungCord {
    /// The set of each leg of one cord: one, or two of a folded cord.
    pub sets: Vec<String>,
    /// How many cords.
    pub count: usize,
}

/// So many legs of a set side by side, in an order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deal {
    /// How many.
    pub count: usize,
    /// Of which set.
    pub set: String,
}

/// Where new legs come in.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum NewLegs {
    /// At the right of a row that may not be there yet.
    #[default]
    AtRight,
    /// Behind these places, dealt evenly among them; 0 is the left edge.
    After(Vec<usize>),
    /// In place of these, whose legs end here.
    Replacing(Selection),
    /// Out of the row: laid in, or a wrap's own.
    Out,
}

impl Deal {
    /// Reads `12 rust`, or `rust` alone for one.
    ///
    /// # Errors
    /// [`PlaceError::NotADeal`] when it is neither.
    pub fn of_word(word: &str) -> Result<Self, PlaceError> {
        let word = word.trim();
        let (count, set) = match word.split_once(' ') {
            Some((count, set)) => (count.parse().ok().filter(|count| *count > 0), set.trim()),
            None => (Some(1), word),
        };
        let no = || PlaceError::NotADeal { word: word.to_owned() };
        let count = count.filter(|_| set.starts_with(char::is_alphabetic)).ok_or_else(no)?;
        Ok(Self { count, set: set.to_owned() })
    }
}

impl LegOrder {
    /// Hangs cords: gives their legs names, and places in a row. Ended legs are answered where new ones replace them.
    ///
    /// With an order the whole row is dealt anew, old and new legs in the order in which they lie.
    ///
    /// # Errors
    /// [`PlaceError`] when the order is missing or does not come out, or a place is not there.
    pub fn hang(
        &mut self,
        row: RowName<'_>,
        cords: &[HungCord],
        order: &[Deal],
        new: &NewLegs,
    ) -> Result<Vec<LegId>, PlaceError> {
        let legs = self.named(cords);
        if *new == NewLegs::Out {
            self.out.extend(legs.iter().map(|leg| Resting { leg: *leg, right_of: None }));
            return Ok(Vec::new());
        }
        let at = self.row_to_hang_in(row);
        let is_first = self.rows[at].legs.is_empty();
        let sets: Vec<&String> = cords.iter().flat_map(|cord| &cord.sets).collect();
        if is_first && order.is_empty() && sets.iter().any(|set| *set != sets[0]) {
            return Err(PlaceError::OrderNotSaid { sets: distinct(&sets) });
        }
        let ended = match new {
            NewLegs::After(places) => self.come_in(at, &legs, places).map(|()| Vec::new())?,
            NewLegs::Replacing(selection) => self.replace(at, &legs, selection)?,
            NewLegs::AtRight | NewLegs::Out => {
                self.rows[at].legs.extend(&legs);
                Vec::new()
            }
        };
        if !order.is_empty() {
            self.deal(at, order)?;
        }
        Ok(ended)
    }

    /// Names new legs, cord by cord.
    fn named(&mut self, cords: &[HungCord]) -> Vec<LegId> {
        let mut legs = Vec::new();
        for cord in cords {
            for set in (0..cord.count).flat_map(|_| &cord.sets) {
                let before = self.names.iter().filter(|name| name.set == *set).count();
                legs.push(LegId(self.names.len()));
                let number = u32::try_from(before + 1).unwrap_or(u32::MAX);
                self.names.push(LegName { set: set.clone(), number });
            }
        }
        legs
    }

    fn row_to_hang_in(&mut self, row: RowName<'_>) -> usize {
        if let Ok(at) = self.at(row) {
            return at;
        }
        self.rows.push(LegRow { name: row.map(str::to_owned), legs: Vec::new(), worked: Worked::Flat });
        self.rows.len() - 1
    }

    fn come_in(&mut self, row: usize, legs: &[LegId], places: &[usize]) -> Result<(), PlaceError> {
        let count = self.rows[row].legs.len();
        if let Some(place) = places.iter().find(|place| **place > count) {
            return Err(PlaceError::NoPlace { place: *place, legs: count });
        }
        if places.is_empty() || !legs.len().is_multiple_of(places.len()) {
            return Err(PlaceError::NotEven { legs: legs.len(), places: places.len() });
        }
        let each = legs.len() / places.len();
        let mut dealt: Vec<(usize, &[LegId])> = places.iter().copied().zip(legs.chunks(each)).collect();
        // From the right, so that the places to the left still hold.
        dealt.sort_by_key(|(place, _)| std::cmp::Reverse(*place));
        for (place, legs) in dealt {
            self.rows[row].legs.splice(place..place, legs.iter().copied());
        }
        Ok(())
    }

    fn replace(&mut self, row: usize, legs: &[LegId], selection: &Selection) -> Result<Vec<LegId>, PlaceError> {
        let places = self.selected(row, selection)?;
        if places.len() != legs.len() {
            return Err(PlaceError::NotEven { legs: legs.len(), places: places.len() });
        }
        let replaced = places.into_iter().zip(legs);
        Ok(replaced.map(|(place, leg)| std::mem::replace(&mut self.rows[row].legs[place - 1], *leg)).collect())
    }

    /// Deals the legs of a row anew: each set's in the order in which they lie, by the order repeated over the whole row.
    fn deal(&mut self, row: usize, order: &[Deal]) -> Result<(), PlaceError> {
        let period: usize = order.iter().map(|deal| deal.count).sum();
        let legs = self.rows[row].legs.clone();
        if period == 0 || !legs.len().is_multiple_of(period) {
            return Err(PlaceError::OrderLeftOver { legs: legs.len(), named: period });
        }
        let rounds = legs.len() / period;
        let mut left: Vec<LegId> = legs.clone();
        let mut dealt = Vec::new();
        for deal in (0..rounds).flat_map(|_| order) {
            for _ in 0..deal.count {
                let next = left.iter().position(|leg| self.name(*leg).set == deal.set);
                let next = next.ok_or_else(|| self.order_short(&legs, order, &deal.set, rounds))?;
                dealt.push(left.remove(next));
            }
        }
        self.rows[row].legs = dealt;
        Ok(())
    }

    fn order_short(&self, legs: &[LegId], order: &[Deal], set: &str, rounds: usize) -> PlaceError {
        let named = order.iter().filter(|deal| deal.set == set).map(|deal| deal.count * rounds).sum();
        let there = legs.iter().filter(|leg| self.name(**leg).set == set).count();
        PlaceError::OrderShort { set: set.to_owned(), named, there }
    }
}

fn distinct(sets: &[&String]) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for set in sets {
        if !all.contains(set) {
            all.push((*set).clone());
        }
    }
    all
}
