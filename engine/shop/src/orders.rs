//! What a shop is asked: a design as chosen, a commission priced, every file checked.

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::NaiveDate;
use rayon::prelude::*;
use reeve_costing::commission::Commission;
use reeve_costing::cost::CostError;
use reeve_costing::piece::Piece;
use reeve_costing::pricing::{PriceError, Priced, price_commission};
use reeve_costing::store::Cord;
use reeve_measure::{Remedied, bound};
use reeve_reading::{Diagnostics, Fault, FaultTally, Parsed, Placed, SourceText, read};

use crate::answer::Answer;
use crate::choice::{Choice, Wish};
use crate::designs::{ChosenAt, DesignText, FoundDesign, KnownDesigns};
use crate::files::{TypedCommission, commission_file};
use crate::libraries::Admitted;
use crate::resolve;
use crate::shop::{COMMISSIONS, Shop};

/// A commission, resolved and priced.
#[derive(Debug, Clone)]
pub struct Order {
    /// What is asked.
    pub commission: Commission,
    /// What it needs, costs and comes to.
    pub priced: Priced,
}

/// A design in its sizes, and what was read besides its own text.
#[derive(Debug)]
pub struct SizesRead {
    /// The design, once for each size.
    pub found: Vec<FoundDesign>,
    /// The texts of all designs that it is put together from, by their stems.
    pub parts: BTreeMap<String, Arc<SourceText>>,
}

impl Shop {
    /// Reads a design by its stem or its path, as chosen; `None` when it has faults.
    pub fn design(&self, word: &str, choice: &Choice) -> Answer<Option<FoundDesign>> {
        let mut known = KnownDesigns::default();
        let value = self.design_of(word, choice, true, &mut known);
        Answer { value, faults: known.faults }
    }

    /// A design as chosen, or as it stands and in all its sizes.
    ///
    /// What has faults is left out. A design that can't be had as chosen is a fault if it was `named`, else it is not meant.
    pub fn sizes(&self, word: &str, choice: &Choice, named: bool) -> Answer<Vec<FoundDesign>> {
        let Answer { value: text, mut faults } = self.design_text_of(word);
        let value = text.map(|text| self.sizes_in(&text, choice, named).noted(&mut faults).found).unwrap_or_default();
        Answer { value, faults }
    }

    /// The text of a design, by its stem or its path.
    pub fn design_text_of(&self, word: &str) -> Answer<Option<DesignText>> {
        let mut known = KnownDesigns::default();
        let value = self.design_text(word, &mut known);
        Answer { value, faults: known.faults }
    }

    /// The same as [`Shop::sizes`], of a design whose text is at hand.
    pub fn sizes_in(&self, text: &DesignText, choice: &Choice, named: bool) -> Answer<SizesRead> {
        let mut known = KnownDesigns::default();
        let found = self.sizes_among(text, choice, named, &mut known);
        Answer { value: SizesRead { found, parts: known.parts }, faults: known.faults }
    }

    fn sizes_among(
        &self,
        text: &DesignText,
        choice: &Choice,
        named: bool,
        known: &mut KnownDesigns,
    ) -> Vec<FoundDesign> {
        if choice.is_usual() {
            return self.all_sizes(text, known);
        }
        self.design_in(text, &Parsed::of(&text.source), choice, named, known).into_iter().collect()
    }

    /// Reads a commission by its stem or its path, and prices it as of a day; `None` when it, or anything that it rests on, has
    /// faults.
    pub fn order(&self, word: &str, wish: &Wish, today: NaiveDate) -> Answer<Option<Order>> {
        let mut known = KnownDesigns::default();
        let value = self.order_among(word, wish, today, &mut known);
        Answer { value, faults: known.faults }
    }

    /// Reads every file of the shop, loads every library, and adds every fault to those that are told.
    ///
    /// Of the designs only those are held that others are made of: however many there are, the others are let go.
    pub fn check(&self, today: NaiveDate, told: &mut FaultTally) {
        const AT_ONCE: usize = 64;
        told.extend(self.libraries().iter().filter_map(Admitted::check));
        let Answer { value: stems, faults } = self.designs();
        told.extend(faults);
        let mut readers: Vec<KnownDesigns> = Vec::new();
        readers.resize_with(rayon::current_num_threads(), KnownDesigns::default);
        for some in stems.chunks(AT_ONCE * readers.len()) {
            let each = |(stems, known): (&[String], &mut KnownDesigns)| self.faults_of(stems, known);
            let all: Vec<Vec<Fault>> = some.par_chunks(AT_ONCE).zip(readers.par_iter_mut()).map(each).collect();
            told.extend(all.into_iter().flatten());
        }
        let Answer { value: stems, faults } = self.commissions();
        told.extend(faults);
        for stem in stems {
            told.extend(self.order(&stem, &Wish::default(), today).faults);
        }
    }

    /// What is wrong with some designs in all their sizes.
    fn faults_of(&self, stems: &[String], known: &mut KnownDesigns) -> Vec<Fault> {
        for stem in stems {
            if let Some(text) = self.design_text(stem, known) {
                self.all_sizes(&text, known);
            }
            known.let_go(stem);
        }
        std::mem::take(&mut known.faults)
    }

    /// A commission, priced, among what is known already: its faults are told there.
    fn order_among(&self, word: &str, wish: &Wish, today: NaiveDate, known: &mut KnownDesigns) -> Option<Order> {
        let (stem, source) = self.locate(COMMISSIONS, "commission", word, &mut known.faults)?;
        let desk = Diagnostics::new(source);
        let order = self.order_of(&stem, wish, (&desk, known), today);
        known.faults.extend(desk.into_faults());
        order
    }

    fn order_of(
        &self,
        stem: &str,
        wish: &Wish,
        (desk, known): (&Diagnostics, &mut KnownDesigns),
        today: NaiveDate,
    ) -> Option<Order> {
        let mut typed = read(desk, commission_file)?;
        self.choose(&wish.choice, &mut typed, known);
        typed.confidence = wish.confidence.or(typed.confidence);
        let pieces = self.pieces_of(&typed, desk, known);
        let basis = self.basis()?;
        let commission = resolve::commission(stem, &typed, pieces?, &basis.rates, desk);
        // A price worked out from half a commission would be worse than none.
        if !desk.is_sound() || !self.is_sound() || known.faults.iter().any(Fault::is_error) {
            return None;
        }
        match price_commission(&commission, basis, today) {
            Ok(priced) => Some(Order { commission, priced }),
            Err(error) => {
                lay_price_error(&error, &commission, &typed, desk);
                None
            }
        }
    }

    /// Puts what is chosen on the command line in place of what the items say.
    fn choose(&self, choice: &Choice, typed: &mut TypedCommission, known: &mut KnownDesigns) {
        if choice.is_usual() {
            return;
        }
        let mut left = choice.clone();
        let stems = self.design_stems(known);
        for item in typed.items.iter_mut().filter(|item| stems.contains(&item.design.value)) {
            let Some(usual) = self.design_of(&item.design.value, &Choice::default(), true, known) else { continue };
            let span = item.design.span.clone();
            if let Some(size) = choice.size.as_ref().filter(|size| usual.choices.sizes.contains(size)) {
                item.size = Some(Placed { value: size.clone(), span: span.clone() });
                left.size = None;
            }
            for (name, figure) in &choice.measures {
                if usual.choices.measures.iter().any(|(known, _)| known == name) {
                    item.measures.retain(|(other, _)| other.value != *name);
                    let name = Placed { value: name.clone(), span: span.clone() };
                    left.measures.retain(|(other, _)| *other != name.value);
                    item.measures.push((name, Placed { value: *figure, span: span.clone() }));
                }
            }
        }
        let size = left.size.map(|size| format!("no design of this commission has a size `{size}`"));
        let measures =
            left.measures.iter().map(|(name, _)| format!("no design of this commission has a measure `{name}`"));
        let help = "`reeve takeoff DESIGN` says what can be chosen of it";
        known.faults.extend(size.into_iter().chain(measures).map(|title| Fault::without_place(title, help)));
    }

    /// The pieces that a commission asks for, with the cords it puts in place of the designs' own.
    fn pieces_of(
        &self,
        typed: &TypedCommission,
        desk: &Diagnostics,
        known: &mut KnownDesigns,
    ) -> Option<Vec<Arc<Piece>>> {
        let mut pieces = Vec::new();
        for item in &typed.items {
            let asked = ChosenAt { size: item.size.as_ref(), measures: &item.measures };
            let piece = self.design_asked(&item.design, &asked, desk, known);
            let swaps: Vec<Option<(&Placed<String>, Arc<Cord>)>> =
                item.cords.iter().map(|(from, to)| self.names().cord(to, desk).map(|cord| (from, cord))).collect();
            let swaps = swaps.into_iter().collect::<Option<Vec<_>>>();
            pieces.push(piece.zip(swaps).and_then(|(piece, swaps)| swap_cords(&piece, &swaps, desk)));
        }
        pieces.into_iter().collect()
    }
}

/// The piece with other cords in place of some of its own.
fn swap_cords(piece: &Arc<Piece>, swaps: &[(&Placed<String>, Arc<Cord>)], desk: &Diagnostics) -> Option<Arc<Piece>> {
    let mut used = Vec::new();
    cord_names(piece, &mut used);
    let mut sound = true;
    for (from, _) in swaps {
        if !used.contains(&from.value) {
            desk.refuse_unknown(from, "cord of this design", used.iter().map(String::as_str));
            sound = false;
        }
    }
    if swaps.is_empty() {
        return Some(Arc::clone(piece));
    }
    let swapped = |cord: &Arc<Cord>| {
        let swap = swaps.iter().find(|(from, _)| from.value == cord.name);
        Arc::clone(swap.map_or(cord, |(_, to)| to))
    };
    sound.then(|| Arc::new(piece.with_cords(&swapped)))
}

fn cord_names(piece: &Piece, names: &mut Vec<String>) {
    names.extend(piece.groups.iter().map(|group| group.cord.name.clone()));
    piece.parts.iter().for_each(|part| cord_names(&part.piece, names));
    names.sort_unstable();
    names.dedup();
}

fn lay_price_error(error: &PriceError, commission: &Commission, typed: &TypedCommission, desk: &Diagnostics) {
    let whole = typed.items.first().map_or(0..0, |item| item.span.clone());
    match error {
        PriceError::Cost(CostError::Piece(at, faults)) => {
            let place = typed
                .items
                .get(*at)
                .map(|item| item.cords.first().map_or_else(|| item.design.span.clone(), |(_, to)| to.span.clone()));
            let title = commission.items.get(*at).map_or("", |item| item.piece.title.as_str());
            for fault in faults {
                desk.refuse(
                    place.clone().unwrap_or_default(),
                    format!("{title}: {}", fault.title),
                    fault.label.clone(),
                    fault.help.clone(),
                );
            }
        }
        PriceError::Cost(CostError::TooMuch(_)) => {
            desk.refuse(whole, error.to_string(), bound::JOB_COST.to_string(), error.remedy());
        }
        PriceError::OutOfReach(_) => {
            desk.refuse(whole, error.to_string(), "together they must stay below 100 %", error.remedy());
        }
        PriceError::Cost(CostError::Purchase(..)) | PriceError::Date => {
            desk.refuse(whole, error.to_string(), "", error.remedy());
        }
    }
}
