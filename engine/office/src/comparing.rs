//! Designs beside one another: which are asked for, their rows, and what each input moves.

use std::path::Path;

use rayon::prelude::*;
use reeve_costing::basis::Basis;
use reeve_costing::pricing::PriceError;
use reeve_costing::whatif::{Change, Changed, Effect, effects, with_changes};
use reeve_measure::Remedied;
use reeve_reading::{Fault, FaultTally, nearest};
use reeve_shop::arguments::GivenPrice;
use reeve_shop::{Answer, Choice, FoundDesign, Shop};
use rust_decimal::Decimal;

use crate::error::OfficeError;
use crate::kept::{KeptDesign, KeptRows, RowShelf};
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
    shelf: Option<RowShelf>,
}

/// Rows, and what hinders others.
#[derive(Debug)]
pub struct Rows {
    /// Each design in each size, in the order of the designs.
    pub rows: Vec<DesignRow>,
    /// What is wrong with some, each told once.
    pub faults: FaultTally,
    /// How many designs have no row, or not all, for their faults.
    pub left_out: usize,
}

impl Comparing {
    /// Begins a comparison in a shop, at its rates. Rows of designs as they stand are kept on the shelf, if there is one.
    pub fn new(shop: Shop, basis: Basis, question: CompareQuestion, shelf: Option<RowShelf>) -> Self {
        // Where a file of knots or of the store could not be read a design may lack its row without a word of its own.
        let shelf = shelf.filter(|_| question.is_plain() && shop.can_tell());
        Self { shop, basis, question, shelf }
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
        const AT_ONCE: usize = 256;
        let mut kept = self.shelf.as_ref().map(|shelf| shelf.open(&self.shop)).unwrap_or_default();
        let each = |word: &String| {
            let found = self.rows_of(word, &kept);
            done();
            found
        };
        let (mut rows, mut faults, mut left_out, mut new) = (Vec::new(), FaultTally::default(), 0, Vec::new());
        for some in self.question.designs.chunks(AT_ONCE) {
            let found: Vec<DesignRows> = some.par_iter().map(each).collect();
            for DesignRows { rows: found, faults: told, to_keep } in found {
                let is_silent = found.is_empty() && self.question.choice.is_usual();
                left_out += usize::from(is_silent || told.iter().any(Fault::is_error));
                rows.extend(found);
                faults.extend(told);
                new.extend(to_keep);
            }
        }
        if let Some(shelf) = self.shelf.as_ref().filter(|_| !new.is_empty()) {
            if !self.question.named {
                kept.keep_only(&self.question.designs);
            }
            kept.add(new);
            // Without the file the next look only takes longer.
            let _ = shelf.put(kept);
        }
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
    fn rows_of(&self, word: &str, kept: &KeptRows) -> DesignRows {
        let Answer { value: text, mut faults } = self.shop.design_text_of(word);
        let Some(text) = text else { return DesignRows { faults, ..DesignRows::default() } };
        if let Some(rows) = kept.of(&text, &self.shop) {
            return DesignRows { rows: rows.to_vec(), faults, to_keep: None };
        }
        let read = self.shop.sizes_in(&text, &self.question.choice, self.question.named).noted(&mut faults);
        let mut rows = Vec::new();
        for found in &read.found {
            match self.row(found) {
                Ok(row) => rows.push(row),
                Err(fault) => faults.push(fault),
            }
        }
        // What is told of a design is told again at each look, with its place: so it is read again.
        let is_kept = self.shelf.is_some() && faults.is_empty() && !text.is_path;
        let to_keep = is_kept.then(|| (text.stem.clone(), KeptDesign::new(&text, &read, &rows)));
        DesignRows { rows, faults, to_keep }
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

impl CompareQuestion {
    /// Whether designs are asked for as they stand, at the shop's own figures.
    fn is_plain(&self) -> bool {
        self.choice.is_usual() && self.prices.is_empty() && self.changes.is_empty()
    }
}

/// The rows of one design, what hinders others, and what is to be kept of it.
#[derive(Default)]
struct DesignRows {
    rows: Vec<DesignRow>,
    faults: Vec<Fault>,
    to_keep: Option<(String, KeptDesign)>,
}

/// Why a design has no price.
pub(crate) fn unpriced(title: &str, error: &PriceError) -> Fault {
    Fault::without_place(format!("{title} can't be priced: {error}"), error.remedy())
}
