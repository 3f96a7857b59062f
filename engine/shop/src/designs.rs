//! Designs: found, read as chosen, with the parts they are put together from.

use std::collections::BTreeMap;
use std::sync::Arc;

use reeve_costing::alone::Effort;
use reeve_costing::piece::{Part, Piece};
use reeve_costing::takeoff::{TakeOff, take_off};
use reeve_measure::bound;
use reeve_reading::{Desk, Fault, Placed, Source, nearest, read};

use crate::choice::{Choice, Choices, Market};
use crate::files::{Chosen, TypedDesign, TypedPart, design_file, fit};
use crate::resolve;
use crate::shop::{DESIGNS, Shop, is_path};

/// A design, read as chosen and checked.
#[derive(Debug, Clone)]
pub struct Found {
    /// Its file's stem.
    pub name: String,
    /// What was chosen of it.
    pub choice: Choice,
    /// What may be chosen of it.
    pub choices: Choices,
    /// What the market says of what was chosen.
    pub market: Market,
    /// Work done once for the design, before the first is sold.
    pub efforts: Vec<Effort>,
    /// The piece.
    pub piece: Arc<Piece>,
    /// What one needs.
    pub take_off: Arc<TakeOff>,
}

#[derive(Debug, Clone)]
struct Design {
    found: Found,
    /// The piece and all the parts of its parts.
    pieces: u64,
}

/// Designs that were read, and the faults of reading them.
#[derive(Debug, Default)]
pub(crate) struct Known {
    /// Under stem and choice; `None` where there is a fault.
    designs: BTreeMap<(String, String), Option<Design>>,
    pub(crate) faults: Vec<Fault>,
}

/// One thing to load, and the designs that contain it.
struct Wanted<'a> {
    stem: &'a str,
    choice: &'a Choice,
    above: Vec<String>,
}

/// Where a choice was made: on the command line nowhere, else at the places of a file.
pub(crate) struct Asked<'a> {
    pub(crate) size: Option<&'a Placed<String>>,
    pub(crate) measures: &'a Chosen,
}

impl Asked<'_> {
    fn choice(&self) -> Choice {
        Choice {
            size: self.size.map(|size| size.value.clone()),
            measures: self.measures.iter().map(|(name, figure)| (name.value.clone(), figure.value)).collect(),
        }
    }

    /// The choice, if the design can be had so; every reason why not is laid on the desk.
    fn of(&self, choices: &Choices, desk: &Desk) -> Option<Choice> {
        let mut sound = true;
        if let Some(size) = self.size
            && !choices.sizes.contains(&size.value)
        {
            if choices.sizes.is_empty() {
                let title = format!("no size of this design is called `{}`", size.value);
                desk.refuse(size.span.clone(), title, "it comes in one size", "give it a [[size]], or take this out");
            } else {
                desk.refuse_unknown(size, "size of this design", choices.sizes.iter().map(String::as_str));
            }
            sound = false;
        }
        for (name, figure) in self.measures {
            if let Err(misfit) = fit(&choices.measures, &name.value, figure.value) {
                desk.refuse(misfit.place(name, figure), misfit.title, misfit.label, misfit.help);
                sound = false;
            }
        }
        sound.then(|| self.choice())
    }
}

impl Shop {
    /// A design named in a file of the shop, as chosen there.
    pub(crate) fn design_asked(
        &self,
        name: &Placed<String>,
        asked: &Asked<'_>,
        desk: &Desk,
        known: &mut Known,
    ) -> Option<Arc<Piece>> {
        self.part_asked(name, asked, desk, Vec::new(), known).map(|design| design.found.piece)
    }

    fn part_asked(
        &self,
        name: &Placed<String>,
        asked: &Asked<'_>,
        desk: &Desk,
        above: Vec<String>,
        known: &mut Known,
    ) -> Option<Design> {
        let stems = self.design_stems(known);
        if !stems.contains(&name.value) {
            desk.refuse_unknown(name, "design of this shop", stems.iter().map(String::as_str));
            return None;
        }
        let usual = Choice::default();
        let found = self.design_named(Wanted { stem: &name.value, choice: &usual, above: above.clone() }, known);
        let Some(found) = found else {
            self.refuse_faulty(name, desk);
            return None;
        };
        let choice = asked.of(&found.found.choices, desk)?;
        if choice.is_usual() {
            return Some(found);
        }
        let sized = self.design_named(Wanted { stem: &name.value, choice: &choice, above }, known);
        if sized.is_none() {
            self.refuse_faulty(name, desk);
        }
        sized
    }

    fn refuse_faulty(&self, name: &Placed<String>, desk: &Desk) {
        if self.can_tell() {
            let title = format!("the design `{}` has faults of its own", name.value);
            desk.refuse(name.span.clone(), title, "", "mend it first");
        }
    }

    /// A design by its stem or its path, as chosen. That it can't be had so is a fault if it was `named`.
    pub(crate) fn design_of(&self, word: &str, choice: &Choice, named: bool, known: &mut Known) -> Option<Found> {
        let usual = self.design_as(word, &Choice::default(), known)?;
        if choice.is_usual() {
            return Some(usual);
        }
        let faults = without_place(choice, &usual);
        if !faults.is_empty() {
            known.faults.extend(faults.into_iter().filter(|_| named));
            return None;
        }
        self.design_as(word, choice, known)
    }

    /// The same, when it can be had so.
    fn design_as(&self, word: &str, choice: &Choice, known: &mut Known) -> Option<Found> {
        if let Some(design) = known.designs.get(&key(word, choice)) {
            return design.clone().map(|design| design.found);
        }
        let (stem, source) = self.locate(DESIGNS, "design", word, &mut known.faults)?;
        let design = self.load(&Wanted { stem: &stem, choice, above: vec![stem.clone()] }, &source, known);
        if !is_path(word) {
            known.designs.insert(key(&stem, choice), design.clone());
        }
        design.map(|design| design.found)
    }

    /// A design as it stands and in each of its sizes; a size whose measures are the usual ones is told once.
    ///
    /// What can't be read is left out, and its faults are kept.
    pub(crate) fn all_sizes(&self, word: &str, known: &mut Known) -> Vec<Found> {
        let Some(usual) = self.design_as(word, &Choice::default(), known) else { return Vec::new() };
        let of = |size: &String| Choice { size: Some(size.clone()), measures: Vec::new() };
        let sized: Vec<Found> =
            usual.choices.sizes.iter().filter_map(|size| self.design_as(word, &of(size), known)).collect();
        let is_told = sized.iter().any(|found| found.piece.is_made_as(&usual.piece));
        let usual = (!is_told).then_some(usual);
        usual.into_iter().chain(sized).collect()
    }

    /// A design of the shop, read once.
    fn design_named(&self, wanted: Wanted<'_>, known: &mut Known) -> Option<Design> {
        let key = key(wanted.stem, wanted.choice);
        if let Some(design) = known.designs.get(&key) {
            return design.clone();
        }
        let source = match self.folder().read(&format!("{DESIGNS}/{}.toml", wanted.stem)) {
            Ok(source) => source?,
            Err(fault) => {
                known.faults.push(fault);
                return None;
            }
        };
        let mut above = wanted.above;
        above.push(wanted.stem.to_owned());
        let design = self.load(&Wanted { above, ..wanted }, &source, known);
        known.designs.insert(key, design.clone());
        design
    }

    fn load(&self, wanted: &Wanted<'_>, source: &Arc<Source>, known: &mut Known) -> Option<Design> {
        let desk = Desk::new(Arc::clone(source));
        let typed = read(&desk, |t| design_file(t, wanted.choice));
        let design = typed.and_then(|typed| self.resolve(wanted, &typed, &desk, known));
        known.lay(desk.into_faults(), wanted.choice);
        design
    }

    fn resolve(&self, wanted: &Wanted<'_>, typed: &TypedDesign, desk: &Desk, known: &mut Known) -> Option<Design> {
        let parts = self.parts(typed, desk, &wanted.above, known);
        let (sound, (parts, pieces)) = (parts.is_some(), parts.unwrap_or_default());
        let piece = resolve::piece(typed, parts, &self.names(), desk)?;
        let rates = self.rates()?;
        // A step that could not be read would make others look wrong.
        if !sound || !desk.is_sound() {
            return None;
        }
        let take_off = match take_off(&piece, &rates.bench) {
            Ok(take_off) => take_off,
            Err(faults) => {
                resolve::lay_piece_faults(faults, typed, desk);
                return None;
            }
        };
        resolve::lay_remarks(&take_off.remarks, typed, desk);
        let found = Found {
            name: wanted.stem.to_owned(),
            choice: wanted.choice.clone(),
            choices: typed.choices.clone(),
            market: typed.market,
            efforts: typed.efforts.clone(),
            piece: Arc::new(piece),
            take_off: Arc::new(take_off),
        };
        Some(Design { found, pieces: pieces + 1 })
    }

    /// The parts of a design and how many pieces they come to, parts of parts included.
    fn parts(&self, typed: &TypedDesign, desk: &Desk, above: &[String], known: &mut Known) -> Option<(Vec<Part>, u64)> {
        let mut parts = Vec::new();
        let mut pieces = 0_u64;
        let mut sound = true;
        for part in &typed.parts {
            let Some(design) = self.part(part, desk, above, known) else {
                sound = false;
                continue;
            };
            pieces = pieces.saturating_add(design.pieces.saturating_mul(u64::from(part.count)));
            let name = part
                .size
                .as_ref()
                .map_or_else(|| part.design.value.clone(), |size| format!("{}-{}", part.design.value, size.value));
            parts.push(Part { name, count: part.count, piece: design.found.piece });
        }
        let most = bound::PARTS_IN_ALL;
        if reeve_measure::count(pieces) > most.most {
            let place = typed.parts.first().map_or(0..0, |part| part.design.span.clone());
            let title = format!("the parts come to {pieces} pieces in all");
            desk.refuse(place, title, most.to_string(), "make it of fewer parts");
            return None;
        }
        sound.then_some((parts, pieces))
    }

    fn part(&self, part: &TypedPart, desk: &Desk, above: &[String], known: &mut Known) -> Option<Design> {
        let name = &part.design;
        if let Some(at) = above.iter().position(|stem| *stem == name.value) {
            refuse_ring(above.get(at..).unwrap_or_default(), name, desk);
            return None;
        }
        let asked = Asked { size: part.size.as_ref(), measures: &part.measures };
        self.part_asked(name, &asked, desk, above.to_vec(), known)
    }
}

/// What a design is known under. A path is never known: its file may stand in another folder under a known name.
fn key(stem: &str, choice: &Choice) -> (String, String) {
    // Every digit counts here, and words round.
    (stem.to_owned(), format!("{choice:?}"))
}

fn refuse_ring(from: &[String], name: &Placed<String>, desk: &Desk) {
    let ring: Vec<&str> = from.iter().map(String::as_str).chain([name.value.as_str()]).collect();
    let title = format!("the design contains itself: {}", ring.join(" > "));
    desk.refuse(name.span.clone(), title, "a part can't hold what it is part of", "take this part out");
}

impl Known {
    /// Keeps the faults of a reading. What a design's usual reading has said is not said again for a size.
    fn lay(&mut self, faults: Vec<Fault>, choice: &Choice) {
        if choice.is_usual() {
            self.faults.extend(faults);
            return;
        }
        for fault in faults {
            if !self.faults.contains(&fault) {
                self.faults.push(Fault { title: format!("{} ({choice})", fault.title), ..fault });
            }
        }
    }
}

/// Why a design can't be had as chosen on the command line.
fn without_place(choice: &Choice, usual: &Found) -> Vec<Fault> {
    let mut faults = Vec::new();
    if let Some(size) = choice.size.as_ref().filter(|size| !usual.choices.sizes.contains(size)) {
        let sizes = &usual.choices.sizes;
        let near = nearest(size, sizes.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
        let help = match sizes.len() {
            0 => "it comes in one size".to_owned(),
            _ => format!("{}its sizes: {}", near.unwrap_or_default(), sizes.join(", ")),
        };
        faults.push(Fault::without_place(format!("no size of `{}` is called `{size}`", usual.name), help));
    }
    for (name, figure) in &choice.measures {
        if let Err(misfit) = fit(&usual.choices.measures, name, *figure) {
            let between = if misfit.label.is_empty() || misfit.label.ends_with('?') { " " } else { "; " };
            let help = format!("{}{between}{}", misfit.label, misfit.help);
            let help = help.trim().to_owned();
            faults.push(Fault::without_place(format!("{}: {}", usual.name, misfit.title), help));
        }
    }
    faults
}
