//! Which legs a step names: places, sets, or both.

use super::{LegOrder, PlaceError};

/// Legs that a step names.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Selection {
    /// All in the row.
    #[default]
    All,
    /// These, each once, in order of places.
    Of(Vec<Selected>),
}

/// A part of a selection.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Selected {
    /// From a place to a place, both in it, from 1.
    Places(usize, usize),
    /// A set.
    Set(String),
}

impl Selection {
    /// Reads places as they are typed: `1-4, 9-12`. What begins with a letter is a set.
    ///
    /// # Errors
    /// [`PlaceError::NotPlaces`] when a part is neither a place, nor two places upwards, nor a set's name.
    pub fn of_word(word: &str) -> Result<Self, PlaceError> {
        word.split(',').map(|part| Selected::of_word(part.trim())).collect::<Result<_, _>>().map(Self::Of)
    }
}

impl Selected {
    fn of_word(part: &str) -> Result<Self, PlaceError> {
        if part.starts_with(char::is_alphabetic) {
            return Ok(Self::Set(part.to_owned()));
        }
        let (from, to) = part.split_once('-').unwrap_or((part, part));
        let place = |word: &str| word.trim().parse::<usize>().ok().filter(|place| *place > 0);
        let places = place(from).zip(place(to)).filter(|(from, to)| from <= to);
        places.map(|(from, to)| Self::Places(from, to)).ok_or_else(|| PlaceError::NotPlaces { part: part.to_owned() })
    }
}

impl LegOrder {
    /// The places of a selection in a row, in order, each once.
    ///
    /// # Errors
    /// [`PlaceError`] when a place is too high, or no leg in the row is of a set.
    pub(super) fn selected(&self, row: usize, selection: &Selection) -> Result<Vec<usize>, PlaceError> {
        let legs = &self.rows[row].legs;
        let Selection::Of(parts) = selection else { return Ok((1..=legs.len()).collect()) };
        let mut places = Vec::new();
        for part in parts {
            match part {
                Selected::Places(_, to) if *to > legs.len() => {
                    return Err(PlaceError::NoPlace { place: *to, legs: legs.len() });
                }
                Selected::Places(from, to) => places.extend(*from..=*to),
                Selected::Set(set) => {
                    let of_set = (1..=legs.len()).filter(|place| self.name(legs[place - 1]).set == *set);
                    let before = places.len();
                    places.extend(of_set);
                    if places.len() == before {
                        return Err(self.no_set(set));
                    }
                }
            }
        }
        places.sort_unstable();
        places.dedup();
        Ok(places)
    }

    fn no_set(&self, set: &str) -> PlaceError {
        match self.out_of_set(set) {
            Some(_) => PlaceError::OutOfRow { set: set.to_owned() },
            None => PlaceError::NoSet { set: set.to_owned() },
        }
    }
}
