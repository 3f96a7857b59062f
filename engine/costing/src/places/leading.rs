//! Rows over a leader: it goes across, the legs tie over it in turn, and the order changes.

use super::{LegId, LegOrder, LegRow, PlaceError, Resting, RowName, Selected, Selection, Worked};

/// Rows over a leader.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Leading {
    /// The leader: a place, or a set.
    pub leader: Selected,
    /// The legs it crosses.
    pub legs: Selection,
    /// How often it goes across, there and back; on a round on and on.
    pub rows: u32,
    /// Whether a leader out of the row is in it afterwards.
    pub stays: bool,
    /// What is done from the other edge.
    pub mirror: Mirror,
    /// Whether it ties over each leg, as in the vertical kinds; else each leg ties over it.
    pub leader_ties: bool,
}

impl Default for Leading {
    fn default() -> Self {
        Self {
            leader: Selected::Places(1, 1),
            legs: Selection::All,
            rows: 1,
            stays: false,
            mirror: Mirror::No,
            leader_ties: false,
        }
    }
}

/// What is done from the other edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Mirror {
    /// Nothing.
    #[default]
    No,
    /// The same, after it.
    Also,
    /// The same, and nothing from this one.
    Instead,
}

/// A leader that went across once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Crossing {
    /// The leader.
    pub leader: LegId,
    /// Whether it went to the right.
    pub goes_right: bool,
    /// The legs it crossed, in the order they tie.
    pub over: Vec<LegId>,
    /// Whether the leader ties over each of them.
    pub leader_ties: bool,
}

/// One leader and its legs, as they are read when the step begins.
struct Side {
    leader: LegId,
    over: Vec<LegId>,
}

impl LegOrder {
    /// Lets a leader go across; who crossed whom, in order.
    ///
    /// # Errors
    /// [`PlaceError`] when the leader lies among its legs, or it and its mirror want the same legs.
    pub fn lead(&mut self, row: RowName<'_>, leading: &Leading) -> Result<Vec<Crossing>, PlaceError> {
        let at = self.at(row)?;
        let mut sides = Vec::new();
        if leading.mirror != Mirror::Instead {
            sides.push(self.side(at, &leading.leader, &leading.legs)?);
        }
        if leading.mirror != Mirror::No {
            sides.push(self.mirrored(at, leading)?);
        }
        if let [one, other] = sides.as_slice() {
            let both =
                one.over.iter().chain([&one.leader]).filter(|leg| other.over.contains(leg) || other.leader == **leg);
            let places: Vec<usize> = both.filter_map(|leg| self.place(at, *leg)).collect();
            if !places.is_empty() {
                return Err(PlaceError::MirrorOverlaps { places });
            }
        }
        let mut crossings = Vec::new();
        for side in sides {
            for _ in 0..leading.rows {
                crossings.push(self.go_across(at, &side, leading)?);
            }
            if leading.stays {
                self.stay(at, side.leader);
            }
        }
        Ok(crossings)
    }

    fn side(&self, row: usize, leader: &Selected, legs: &Selection) -> Result<Side, PlaceError> {
        let found = match leader {
            Selected::Places(place, _) => {
                let legs = &self.rows[row].legs;
                let found = place.checked_sub(1).and_then(|at| legs.get(at)).copied();
                found.ok_or(PlaceError::NoPlace { place: *place, legs: legs.len() })?
            }
            Selected::Set(set) => self.leader_of_set(row, set)?,
        };
        let places = self.selected(row, legs)?;
        let over = places.into_iter().map(|place| self.rows[row].legs[place - 1]).filter(|leg| *leg != found);
        Ok(Side { leader: found, over: over.collect() })
    }

    /// A cord out of the row by its set, or the only leg in the row that is of it.
    fn leader_of_set(&self, row: usize, set: &str) -> Result<LegId, PlaceError> {
        if let Some(resting) = self.out_of_set(set) {
            return Ok(resting.leg);
        }
        let of_set: Vec<LegId> = self.rows[row].legs.iter().copied().filter(|leg| self.name(*leg).set == set).collect();
        match of_set.as_slice() {
            [only] => Ok(*only),
            [] => Err(PlaceError::NoSet { set: set.to_owned() }),
            several => Err(PlaceError::SeveralLead { set: set.to_owned(), legs: several.len() }),
        }
    }

    /// The same from the other edge: place p becomes n + 1 - p; of cords out of the row the next one of the set.
    fn mirrored(&self, row: usize, leading: &Leading) -> Result<Side, PlaceError> {
        let count = self.rows[row].legs.len();
        let turned = |places: &[usize]| -> Vec<Selected> {
            places.iter().rev().map(|place| Selected::Places(count + 1 - place, count + 1 - place)).collect()
        };
        let legs = Selection::Of(turned(&self.selected(row, &leading.legs)?));
        match &leading.leader {
            Selected::Places(place, _) if (1..=count).contains(place) => {
                self.side(row, &Selected::Places(count + 1 - place, count + 1 - place), &legs)
            }
            Selected::Places(place, _) => Err(PlaceError::NoPlace { place: *place, legs: count }),
            Selected::Set(set) => {
                let of_set = self.out.iter().filter(|resting| self.name(resting.leg).set == *set);
                let leader = of_set.map(|resting| resting.leg).nth(1);
                let leader = leader.ok_or_else(|| PlaceError::NoMirrorLeader { set: set.clone() })?;
                Ok(Side { leader, ..self.side(row, &leading.leader, &legs)? })
            }
        }
    }

    fn place(&self, row: usize, leg: LegId) -> Option<usize> {
        self.rows[row].legs.iter().position(|other| *other == leg).map(|at| at + 1)
    }

    /// How many legs lie left of a leader: in the row, or where it rests.
    fn left_of(&self, row: usize, leader: LegId) -> usize {
        let resting = self.out.iter().find(|resting| resting.leg == leader);
        match resting {
            None => self.place(row, leader).map_or(0, |place| place - 1),
            Some(resting) => resting.right_of.and_then(|leg| self.place(row, leg)).unwrap_or_default(),
        }
    }

    fn go_across(&mut self, row: usize, side: &Side, leading: &Leading) -> Result<Crossing, PlaceError> {
        let Side { leader, over } = side;
        let in_row = self.place(row, *leader).is_some();
        let is_round = self.rows[row].worked == Worked::Round;
        if in_row && is_round && over.len() + 1 == self.rows[row].legs.len() {
            return Ok(self.round_once(row, side, leading));
        }
        // They may lie otherwise than when the step began: the leader has gone across.
        let mut over: Vec<(usize, LegId)> =
            over.iter().filter_map(|leg| self.place(row, *leg).map(|place| (place, *leg))).collect();
        over.sort_unstable_by_key(|(place, _)| *place);
        let left = self.left_of(row, *leader);
        let (before, behind) =
            over.iter().fold(
                (0, 0),
                |(before, behind), (place, _)| {
                    if *place <= left { (before + 1, behind) } else { (before, behind + 1) }
                },
            );
        let goes_right = match (before, behind) {
            (0, _) => true,
            (_, 0) => false,
            // A cord out of the row comes in at the nearer edge of its legs, bare; the left one if both are as near.
            _ if !in_row => {
                let first = over.first().map_or(0, |(place, _)| *place);
                let last = over.last().map_or(0, |(place, _)| *place);
                (left + 1).saturating_sub(first) <= last.saturating_sub(left)
            }
            _ => return Err(PlaceError::Amid { leader: left + 1, left: before, right: behind }),
        };
        if !goes_right {
            over.reverse();
        }
        let over: Vec<LegId> = over.into_iter().map(|(_, leg)| leg).collect();
        if let Some(last) = over.last() {
            self.move_beyond(row, *leader, *last, goes_right);
        }
        Ok(Crossing { leader: *leader, goes_right, over, leader_ties: leading.leader_ties })
    }

    /// A leader that crosses all others of a round is back at its own place.
    fn round_once(&self, row: usize, side: &Side, leading: &Leading) -> Crossing {
        let legs = &self.rows[row].legs;
        let from = self.place(row, side.leader).unwrap_or(1);
        let over = (0..legs.len() - 1).map(|nth| legs[(from + nth) % legs.len()]).collect();
        Crossing { leader: side.leader, goes_right: true, over, leader_ties: leading.leader_ties }
    }

    /// Puts a leader where the last leg it crossed was, or lets it rest beyond that.
    fn move_beyond(&mut self, row: usize, leader: LegId, last: LegId, goes_right: bool) {
        let LegRow { legs, .. } = &mut self.rows[row];
        let before = |legs: &[LegId], leg: LegId| {
            let at = legs.iter().position(|other| *other == leg)?;
            at.checked_sub(1).map(|at| legs[at])
        };
        if let Some(from) = legs.iter().position(|leg| *leg == leader) {
            legs.remove(from);
            let to = legs.iter().position(|leg| *leg == last).unwrap_or(from);
            legs.insert(if goes_right { to + 1 } else { to }, leader);
            return;
        }
        let right_of = if goes_right { Some(last) } else { before(legs, last) };
        for resting in self.out.iter_mut().filter(|resting| resting.leg == leader) {
            resting.right_of = right_of;
        }
    }

    /// Brings a cord into the row where it rests.
    fn stay(&mut self, row: usize, leader: LegId) {
        if self.place(row, leader).is_none() {
            let at = self.left_of(row, leader);
            self.rows[row].legs.insert(at, leader);
            self.out.retain(|Resting { leg, .. }| *leg != leader);
        }
    }
}
