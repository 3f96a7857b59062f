//! Designs beside one another: which are asked for, their rows, and what each input moves.

use std::path::Path;

use rayon::prelude::*;
use reeve_costing::basis::Basis;
use reeve_costing::pricing::PriceError;
use reeve_costing::whatif::{Change, Changed, Effect, effects, with_changes};
use reeve_measure::Remedied;
use reeve_reading::{Fault, nearest};
use reeve_shop::arguments::GivenPrice;
use reeve_shop::{Answer, Choice, FoundDesign, Shop};
use rust_decimal::Decimal;

use crate::error::OfficeError;
use crate::row::{DesignRow, Offered};

/// How far each input is changed to tell what it moves, in per cent.
pub const TENTH: Decimal = Decimal::TEN;

/// Which designs are compared, and as what.
#[derive(Debug, Clone, Default)]
pub struct CompareQuestion {
    /// The designs, by their stems or as paths.
    pub designs: Vec<String>,
    /// Whether they were named one by one: one that can't be had as chosen is then a fault, else it is not meant.
    pub named: bool,
    /// In which size, or with which measures.
    pub choice: Choice,
    /// What buyers pay for some of them, in place of what their files say.
    pub prices: Vec<GivenPrice>,
    /// Inputs otherwise than in the shop.
    pub changes: Vec<Change>,
}

/// Designs of a shop that are being compared.
#[derive(Debug)]
pub struct Comparing {
    shop: Shop,
    basis: Basis,
    question: CompareQuestion,
}

/// Rows, and what hinders others.
#[derive(Debug)]
pub struct Rows {
    /// Each design in each size, in the order of the designs.
    pub rows: Vec<DesignRow>,
    /// What is wrong with some, each told once.
    pub faults: Vec<Fault>,
    /// How many designs have no row, or not all, for their faults.
    pub left_out: usize,
}

impl Comparing {
    /// Begins a comparison in a shop, at its rates.
    pub fn new(shop: Shop, basis: Basis, question: CompareQuestion) -> Self {
        Self { shop, basis, question }
    }

    /// How many designs are asked for.
    pub fn designs(&self) -> usize {
        self.question.designs.len()
    }

    /// The rows, on all cores; `done` is called after each design.
    ///
    /// # Errors
    /// When there is no row at all, or a price is given for what is not compared.
    pub fn rows(&self, done: impl Fn() + Sync) -> Result<Rows, OfficeError> {
        let each = |word: &String| {
            let found = self.rows_of(word);
            done();
            found
        };
        let all: Vec<(Vec<DesignRow>, Vec<Fault>)> = self.question.designs.par_iter().map(each).collect();
        let left_out = all.iter().filter(|(_, faults)| faults.iter().any(Fault::is_error)).count();
        let (rows, faults): (Vec<_>, Vec<_>) = all.into_iter().unzip();
        let (rows, faults) = (rows.concat(), once_each(faults.concat()));
        if rows.is_empty() && !faults.is_empty() {
            return Err(OfficeError::Input(faults));
        }
        if rows.is_empty() && !self.question.choice.is_usual() {
            let title = format!("no design of the shop can be had so: {}", self.question.choice);
            return Err(OfficeError::input(title, "`reeve takeoff DESIGN` says what can be chosen of it"));
        }
        self.check_given(&rows)?;
        Ok(Rows { rows, faults, left_out })
    }

    /// What each input moves, of some of the rows.
    ///
    /// # Errors
    /// When a design can't be priced with an input changed.
    pub fn effects(&self, rows: &[DesignRow]) -> Result<Vec<Vec<Effect>>, OfficeError> {
        Ok(rows.iter().map(|row| self.effects_of(row)).collect::<Result<_, Fault>>()?)
    }

    /// The rows of a design: as it stands and in all its sizes, or as chosen.
    fn rows_of(&self, word: &str) -> (Vec<DesignRow>, Vec<Fault>) {
        let Answer { value: found, mut faults } = self.shop.sizes(word, &self.question.choice, self.question.named);
        let mut rows = Vec::new();
        for found in &found {
            match self.row(found) {
                Ok(row) => rows.push(row),
                Err(fault) => faults.push(fault),
            }
        }
        (rows, faults)
    }

    fn row(&self, found: &FoundDesign) -> Result<DesignRow, Fault> {
        let (alone, basis) = with_changes(&found.piece, &found.take_off, &self.basis, &self.question.changes)
            .map_err(|fault| unpriced(&found.piece.title, &fault))?;
        let is_its = |given: &&GivenPrice| given.design == found.name && given.size == found.choice.size;
        let given = self.question.prices.iter().find(is_its).map(|given| given.price);
        let size = found.choice.word();
        let offered = Offered {
            design: &found.name,
            size: size.as_deref(),
            title: &found.piece.title,
            market: given.or(found.market.price),
            weekly: found.market.weekly,
        };
        Ok(DesignRow::of(&offered, &alone, &basis.rates))
    }

    fn effects_of(&self, row: &DesignRow) -> Result<Vec<Effect>, Fault> {
        let found = self.shop.sizes(self.word_of(row), &self.question.choice, self.question.named).value;
        let Some(found) = found.into_iter().find(|found| found.piece.title == row.title) else { return Ok(Vec::new()) };
        let no = |fault| unpriced(&row.title, &fault);
        let Changed { piece, made, basis } =
            Changed::of(&found.piece, &found.take_off, &self.basis, &self.question.changes).map_err(no)?;
        effects(&piece, &made, &basis, row.asked(), TENTH).map_err(no)
    }

    /// The word that a row's design was named by: its stem, or a path.
    fn word_of<'a>(&'a self, row: &'a DesignRow) -> &'a str {
        let is_its = |word: &&String| Path::new(word).file_stem().is_some_and(|stem| *stem == *row.design);
        self.question.designs.iter().find(is_its).map_or(&row.design, |word| word)
    }

    /// A price given for what is not compared is a slip.
    fn check_given(&self, rows: &[DesignRow]) -> Result<(), OfficeError> {
        for given in &self.question.prices {
            let words = self.question.designs.iter().map(String::as_str);
            let known = || rows.iter().map(|row| row.design.as_str()).chain(words.clone());
            if !known().any(|name| name == given.design) {
                let near = nearest(&given.design, known()).map(|near| format!("did you mean `{near}`?"));
                let title = format!("`{}` is not among the designs compared", given.design);
                return Err(OfficeError::input(title, near.unwrap_or_default()));
            }
            let sizes: Vec<&DesignRow> = rows.iter().filter(|row| row.design == given.design).collect();
            if !sizes.is_empty() && !sizes.iter().any(|row| row.size == given.size) {
                let known: Vec<String> = sizes.iter().filter_map(|row| row.size.clone()).collect();
                let title = format!("`{}` is not compared in that size", given.design);
                return Err(OfficeError::input(title, format!("sizes compared: {}", known.join(", "))));
            }
        }
        Ok(())
    }
}

/// Why a design has no price.
pub(crate) fn unpriced(title: &str, error: &PriceError) -> Fault {
    Fault::without_place(format!("{title} can't be priced: {error}"), error.remedy())
}

/// A part's faults are told by every design that holds it.
fn once_each(faults: Vec<Fault>) -> Vec<Fault> {
    let mut told: Vec<Fault> = Vec::new();
    for fault in faults {
        if !told.contains(&fault) {
            told.push(fault);
        }
    }
    told
}
