//! The faults of many files: each told once, as many kept as are shown, the others only counted.

use std::collections::{BTreeMap, HashSet};
use std::hash::{DefaultHasher, Hash, Hasher};

use crate::diagnostics::FAULTS_SHOWN;
use crate::fault::Fault;

/// The most faults that are shown in one run.
const MOST_SHOWN: usize = 100;

/// Faults, gathered one by one. However many there are, the texts of a few alone are held.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FaultTally {
    /// Those that may be shown, in their order.
    kept: Vec<Fault>,
    /// How many there are in each file, and without a place.
    of_files: BTreeMap<Option<String>, FileCount>,
    /// What tells each from others: a part's faults are told by every design that holds it.
    told: HashSet<u64>,
}

/// Faults of one file.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
struct FileCount {
    all: usize,
    errors: usize,
}

impl FaultTally {
    /// Takes a fault, unless the same was taken before.
    pub fn add(&mut self, fault: Fault) {
        if !self.told.insert(digest(&fault)) {
            return;
        }
        let of_file = self.of_files.entry(path_of(&fault).map(str::to_owned)).or_default();
        of_file.all += 1;
        let nth = if fault.is_error() {
            of_file.errors += 1;
            of_file.errors
        } else {
            of_file.all - of_file.errors
        };
        let alike = || self.kept.iter().filter(|kept| kept.severity == fault.severity).count();
        if nth <= FAULTS_SHOWN && alike() < MOST_SHOWN {
            self.kept.push(fault);
        }
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.of_files.is_empty()
    }

    /// How many of them stop the work.
    pub fn errors(&self) -> usize {
        self.of_files.values().map(|count| count.errors).sum()
    }

    /// The first that was taken, if there is one.
    pub fn first(&self) -> Option<&Fault> {
        self.kept.first()
    }

    /// Those that are shown, in their order: so many of each file, so many in all. What only asks to be looked at makes room
    /// for what stops the work.
    pub fn shown(&self) -> Vec<&Fault> {
        let mut of_files: BTreeMap<Option<&str>, usize> = BTreeMap::new();
        let mut chosen: Vec<(usize, &Fault)> = self.kept.iter().enumerate().collect();
        chosen.sort_by_key(|(_, fault)| !fault.is_error());
        chosen.retain(|(_, fault)| {
            let of_file = of_files.entry(path_of(fault)).or_default();
            *of_file += 1;
            *of_file <= FAULTS_SHOWN
        });
        chosen.truncate(MOST_SHOWN);
        chosen.sort_unstable_by_key(|(at, _)| *at);
        chosen.into_iter().map(|(_, fault)| fault).collect()
    }

    /// How many are not shown: of each file that has any shown, and of all others together.
    pub fn left_out(&self) -> Vec<(Option<&str>, usize)> {
        let mut shown: BTreeMap<Option<&str>, usize> = BTreeMap::new();
        for fault in self.shown() {
            *shown.entry(path_of(fault)).or_default() += 1;
        }
        let (mut told, mut others) = (Vec::new(), 0);
        for (path, count) in &self.of_files {
            let path = path.as_deref();
            match shown.get(&path) {
                Some(shown) if path.is_some() => told.push((path, count.all - shown)),
                shown => others += count.all - shown.copied().unwrap_or_default(),
            }
        }
        told.push((None, others));
        told.retain(|(_, more)| *more > 0);
        told
    }
}

impl Extend<Fault> for FaultTally {
    fn extend<T: IntoIterator<Item = Fault>>(&mut self, faults: T) {
        faults.into_iter().for_each(|fault| self.add(fault));
    }
}

impl FromIterator<Fault> for FaultTally {
    fn from_iter<T: IntoIterator<Item = Fault>>(faults: T) -> Self {
        let mut tally = Self::default();
        tally.extend(faults);
        tally
    }
}

impl From<Vec<Fault>> for FaultTally {
    fn from(faults: Vec<Fault>) -> Self {
        faults.into_iter().collect()
    }
}

fn path_of(fault: &Fault) -> Option<&str> {
    fault.place.as_ref().map(|(source, _)| source.path.as_str())
}

fn digest(fault: &Fault) -> u64 {
    let mut digest = DefaultHasher::new();
    let Fault { severity, title, label, help, place } = fault;
    let place = place.as_ref().map(|(source, span)| (&source.path, span.start, span.end));
    (*severity, title, label, help, place).hash(&mut digest);
    digest.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fault::{Severity, SourceText};

    fn faults(path: &str, count: usize) -> Vec<Fault> {
        let source = SourceText::new(path, "a = 1\n");
        let one = |at| Fault { place: Some((source.clone(), 0..1)), ..Fault::without_place(format!("wrong {at}"), "") };
        (0..count).map(one).collect()
    }

    #[test]
    fn so_many_of_each_file_are_shown_and_the_others_counted() {
        let all = [faults("a.toml", 10_000), faults("b.toml", 3), faults("c.toml", 21)].concat();
        let all = FaultTally::from(all);
        assert_eq!((all.shown().len(), all.errors()), (20 + 3 + 20, 10_024));
        assert_eq!(all.left_out(), [(Some("a.toml"), 9980), (Some("c.toml"), 1)]);
        assert!(FaultTally::from(faults("b.toml", 20)).left_out().is_empty());
    }

    #[test]
    fn so_many_in_all_are_shown() {
        let all: FaultTally = (0..300).flat_map(|at| faults(&format!("{at:03}.toml"), 2)).collect();
        assert_eq!((all.shown().len(), all.kept.len()), (MOST_SHOWN, MOST_SHOWN));
        assert_eq!(all.left_out(), [(None, 500)]);
    }

    #[test]
    fn what_stops_the_work_is_shown_before_what_does_not() {
        let look = |at: usize| Fault { severity: Severity::Warning, ..Fault::without_place(format!("look {at}"), "") };
        let mut all: FaultTally = (0..30).map(look).collect();
        assert_eq!(all.errors(), 0);
        all.add(Fault::without_place("wrong", ""));
        assert_eq!(all.shown().len(), FAULTS_SHOWN);
        assert!(all.shown().last().is_some_and(|fault| fault.is_error()));
        assert_eq!(all.left_out(), [(None, 11)]);
    }

    #[test]
    fn each_is_told_once() {
        let mut all = FaultTally::from(faults("a.toml", 3));
        all.extend(faults("a.toml", 4));
        assert_eq!((all.shown().len(), all.errors()), (4, 4));
    }
}
