//! Designs: found, read as chosen, with the parts they are put together from.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use reeve_costing::piece::{Part, Piece};
use reeve_costing::single_piece::Effort;
use reeve_costing::takeoff::{TakeOff, take_off};
use reeve_measure::bound;
use reeve_reading::{Diagnostics, Fault, Figure, Parsed, Placed, SourceText, nearest, read_parsed};

use crate::choice::{Choice, Choices, Market};
use crate::files::{Chosen, TypedDesign, TypedPart, design_file, fit};
use crate::resolve;
use crate::shop::{DESIGNS, Shop, is_path};

/// A design, read as chosen and checked.
#[derive(Debug, Clone)]
pub struct FoundDesign {
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
struct ReadDesign {
    found: FoundDesign,
    whole: WholeDesign,
}

/// What a design comes to with the parts of its parts.
#[derive(Debug, Clone, Copy)]
struct WholeDesign {
    /// The piece and all the pieces in it.
    pieces: u64,
    /// How many designs stand in one another.
    depth: u64,
    /// What a cut list and a bench sheet of it say, line by line.
    lines: u64,
}

/// Designs that were read, and the faults of reading them.
#[derive(Debug, Default)]
pub(crate) struct KnownDesigns {
    /// Under stem and choice; `None` where there is a fault.
    designs: BTreeMap<DesignKey, Option<ReadDesign>>,
    /// The texts of those that were read because others name them, by their stems.
    pub(crate) parts: BTreeMap<String, Arc<SourceText>>,
    pub(crate) faults: Vec<Fault>,
    /// Place and title of each of these faults that has a place.
    told: BTreeSet<(String, usize, String)>,
}

/// The text of a design, found.
#[derive(Debug, Clone)]
pub struct DesignText {
    /// Its file's stem.
    pub stem: String,
    /// The text.
    pub source: Arc<SourceText>,
    /// Whether it was named by its path and may stand outside the shop.
    pub is_path: bool,
}

/// What a design is known under: its stem and its choice, figures by their bits, for every digit counts.
type DesignKey = (String, Option<String>, Vec<(String, FigureBits)>);

/// A figure that can be looked up: whether it is a length, and its bits.
type FigureBits = (bool, u64);

/// A design that was read, and waits for its parts.
struct HalfRead {
    stem: String,
    choice: Choice,
    typed: Option<TypedDesign>,
    desk: Diagnostics,
}

/// The designs that are being read, each a part of the one before it.
#[derive(Default)]
struct Above {
    stems: Vec<String>,
    /// The same, to be looked up: there may be many.
    names: BTreeSet<String>,
}

impl Above {
    fn enter(&mut self, stem: &str) {
        self.stems.push(stem.to_owned());
        self.names.insert(stem.to_owned());
    }

    fn leave(&mut self) {
        if let Some(stem) = self.stems.pop() {
            self.names.remove(&stem);
        }
    }

    /// The designs from one of them down to the one that is read now.
    fn from(&self, stem: &str) -> Option<&[String]> {
        if !self.names.contains(stem) {
            return None;
        }
        self.stems.iter().position(|above| above == stem).and_then(|at| self.stems.get(at..))
    }
}

/// What is to be done next while a design and its parts are read, the last first.
enum Next {
    /// Read a design of the shop as chosen, unless it is known.
    Read(String, Choice),
    /// Read the design of a part as the part asks for it: as it usually is, it is known by now.
    Fit(TypedPart),
    /// Read the parts of a design that was read, and then put it together.
    Begin(Box<HalfRead>),
    /// Put a design together: all its parts are known by now.
    Finish(Box<HalfRead>),
}

/// Where a choice was made: on the command line nowhere, else at the places of a file.
pub(crate) struct ChosenAt<'a> {
    pub(crate) size: Option<&'a Placed<String>>,
    pub(crate) measures: &'a Chosen,
}

impl ChosenAt<'_> {
    fn choice(&self) -> Choice {
        Choice {
            size: self.size.map(|size| size.value.clone()),
            measures: self.measures.iter().map(|(name, figure)| (name.value.clone(), figure.value)).collect(),
        }
    }

    /// The choice, if the design can be had so; every reason why not is laid on the desk.
    fn of(&self, choices: &Choices, desk: &Diagnostics) -> Option<Choice> {
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
    /// The stems of all designs, with what is wrong with their folder told among what is known.
    pub(crate) fn design_stems(&self, known: &mut KnownDesigns) -> Arc<[String]> {
        self.designs().noted(&mut known.faults)
    }

    /// A design named in a file of the shop, as chosen there.
    pub(crate) fn design_asked(
        &self,
        name: &Placed<String>,
        asked: &ChosenAt<'_>,
        desk: &Diagnostics,
        known: &mut KnownDesigns,
    ) -> Option<Arc<Piece>> {
        let stems = self.design_stems(known);
        if !is_among(&stems, name) {
            desk.refuse_unknown(name, "design of this shop", stems.iter().map(String::as_str));
            return None;
        }
        self.read_all(vec![Next::Read(name.value.clone(), Choice::default())], known);
        let usual = self.sound(name, &Choice::default(), desk, known)?.found.choices.clone();
        let choice = asked.of(&usual, desk)?;
        self.read_all(vec![Next::Read(name.value.clone(), choice.clone())], known);
        self.sound(name, &choice, desk, known).map(|design| Arc::clone(&design.found.piece))
    }

    /// A design that was read before; that it has faults is told at its name.
    fn sound<'k>(
        &self,
        name: &Placed<String>,
        choice: &Choice,
        desk: &Diagnostics,
        known: &'k KnownDesigns,
    ) -> Option<&'k ReadDesign> {
        let found = known.designs.get(&key(name, choice)).and_then(Option::as_ref);
        if found.is_none() {
            self.refuse_faulty(name, desk);
        }
        found
    }

    fn refuse_faulty(&self, name: &Placed<String>, desk: &Diagnostics) {
        if self.can_tell() {
            let title = format!("the design `{}` has faults of its own", name.value);
            desk.refuse(name.span.clone(), title, "", "mend it first");
        }
    }

    /// A design by its stem or its path, as chosen. That it can't be had so is a fault if it was `named`.
    pub(crate) fn design_of(
        &self,
        word: &str,
        choice: &Choice,
        named: bool,
        known: &mut KnownDesigns,
    ) -> Option<FoundDesign> {
        let text = self.design_text(word, known)?;
        self.design_in(&text, &Parsed::of(&text.source), choice, named, known)
    }

    /// The text of a design, by its stem or its path.
    pub(crate) fn design_text(&self, word: &str, known: &mut KnownDesigns) -> Option<DesignText> {
        let (stem, source) = self.locate(DESIGNS, "design", word, &mut known.faults)?;
        Some(DesignText { stem, source, is_path: is_path(word) })
    }

    /// A design by its text, as chosen.
    pub(crate) fn design_in(
        &self,
        text: &DesignText,
        parsed: &Parsed<'_>,
        choice: &Choice,
        named: bool,
        known: &mut KnownDesigns,
    ) -> Option<FoundDesign> {
        let usual = self.design_as(text, parsed, &Choice::default(), known)?;
        if choice.is_usual() {
            return Some(usual);
        }
        let faults = without_place(choice, &usual);
        if !faults.is_empty() {
            known.faults.extend(faults.into_iter().filter(|_| named));
            return None;
        }
        self.design_as(text, parsed, choice, known)
    }

    /// The same, when it can be had so.
    fn design_as(
        &self,
        text: &DesignText,
        parsed: &Parsed<'_>,
        choice: &Choice,
        known: &mut KnownDesigns,
    ) -> Option<FoundDesign> {
        let begun = || vec![Next::Begin(begin(&text.stem, choice, &text.source, parsed))];
        let key = key(&text.stem, choice);
        if !text.is_path {
            if !known.designs.contains_key(&key) {
                self.read_all(begun(), known);
            }
            return known.designs.get(&key)?.clone().map(|design| design.found);
        }
        // Its file may stand in another folder under a known name, which it must not be taken for.
        let before = known.designs.remove(&key);
        self.read_all(begun(), known);
        let design = known.designs.remove(&key).flatten();
        known.designs.extend(before.map(|before| (key, before)));
        design.map(|design| design.found)
    }

    /// A design as it stands and in each of its sizes; a size whose measures are the usual ones is told once.
    ///
    /// What can't be read is left out, and its faults are kept.
    pub(crate) fn all_sizes(&self, text: &DesignText, known: &mut KnownDesigns) -> Vec<FoundDesign> {
        let parsed = Parsed::of(&text.source);
        let Some(usual) = self.design_as(text, &parsed, &Choice::default(), known) else { return Vec::new() };
        let of = |size: &String| Choice { size: Some(size.clone()), measures: Vec::new() };
        let sizes = usual.choices.sizes.iter();
        let sized: Vec<FoundDesign> =
            sizes.filter_map(|size| self.design_as(text, &parsed, &of(size), known)).collect();
        let is_told = sized.iter().any(|found| found.piece.is_made_as(&usual.piece));
        let usual = (!is_told).then_some(usual);
        usual.into_iter().chain(sized).collect()
    }

    /// Reads designs and all their parts, each once, those that others are made of first.
    ///
    /// What is still to be done is kept in a list, not in calls within calls: a chain of parts may be of any length.
    fn read_all(&self, mut next: Vec<Next>, known: &mut KnownDesigns) {
        let mut above = Above::default();
        while let Some(step) = next.pop() {
            match step {
                Next::Read(stem, choice) => {
                    if !known.designs.contains_key(&key(&stem, &choice))
                        && let Some(begun) = self.begin_named(&stem, &choice, known)
                    {
                        next.push(Next::Begin(begun));
                    }
                }
                Next::Fit(part) => next.extend(fitting(&part, known)),
                Next::Begin(begun) => {
                    above.enter(&begun.stem);
                    let parts = begun.typed.iter().flat_map(|typed| typed.parts.iter());
                    let wanted: Vec<TypedPart> =
                        parts.filter(|part| self.may_be_read(part, &above, known)).cloned().collect();
                    next.push(Next::Finish(begun));
                    for part in wanted.into_iter().rev() {
                        let usual = Next::Read(part.design.value.clone(), Choice::default());
                        next.extend([Next::Fit(part), usual]);
                    }
                }
                Next::Finish(begun) => {
                    self.finish(*begun, &above, known);
                    above.leave();
                }
            }
        }
    }

    /// Whether a part names a design of the shop that it does not stand in itself.
    fn may_be_read(&self, part: &TypedPart, above: &Above, known: &mut KnownDesigns) -> bool {
        is_among(&self.design_stems(known), &part.design) && !above.names.contains(&part.design.value)
    }

    fn begin_named(&self, stem: &str, choice: &Choice, known: &mut KnownDesigns) -> Option<Box<HalfRead>> {
        match self.folder().read(&format!("{DESIGNS}/{stem}.toml")) {
            Ok(source) => source.map(|source| {
                let begun = begin(stem, choice, &source, &Parsed::of(&source));
                known.parts.insert(stem.to_owned(), source);
                begun
            }),
            Err(fault) => {
                known.faults.push(fault);
                known.designs.insert(key(stem, choice), None);
                None
            }
        }
    }

    /// Puts a design together from what was read, and keeps it or its faults.
    fn finish(&self, begun: HalfRead, above: &Above, known: &mut KnownDesigns) {
        let HalfRead { stem, choice, typed, desk } = begun;
        let design = typed.and_then(|typed| self.resolve(&stem, &choice, &typed, above, &desk, known));
        known.lay(desk.into_faults(), &choice);
        known.designs.insert(key(&stem, &choice), design);
    }

    fn resolve(
        &self,
        stem: &str,
        choice: &Choice,
        typed: &TypedDesign,
        above: &Above,
        desk: &Diagnostics,
        known: &mut KnownDesigns,
    ) -> Option<ReadDesign> {
        let parts = self.parts(typed, desk, above, known);
        let whole = parts.as_deref().and_then(|parts| whole(typed, parts, desk));
        let sound = parts.is_some() && whole.is_some();
        let parts: Vec<Part> = parts.unwrap_or_default().into_iter().map(|(part, _)| part).collect();
        let piece = resolve::piece(typed, if sound { parts } else { Vec::new() }, &self.names(), desk)?;
        let basis = self.basis()?;
        // A step that could not be read would make others look wrong.
        if !sound || !desk.is_sound() {
            return None;
        }
        let take_off = match take_off(&piece, basis) {
            Ok(take_off) => take_off,
            Err(faults) => {
                resolve::lay_piece_faults(faults, typed, desk);
                return None;
            }
        };
        resolve::lay_remarks(&take_off.remarks, typed, desk);
        let found = FoundDesign {
            name: stem.to_owned(),
            choice: choice.clone(),
            choices: typed.choices.clone(),
            market: typed.market,
            efforts: typed.efforts.clone(),
            piece: Arc::new(piece),
            take_off: Arc::new(take_off),
        };
        whole.map(|whole| ReadDesign { found, whole })
    }

    /// The parts of a design, all of which are known, with what each comes to.
    fn parts(
        &self,
        typed: &TypedDesign,
        desk: &Diagnostics,
        above: &Above,
        known: &mut KnownDesigns,
    ) -> Option<Vec<(Part, WholeDesign)>> {
        let parts: Vec<_> = typed.parts.iter().map(|part| self.part(part, desk, above, known)).collect();
        parts.into_iter().collect()
    }

    fn part(
        &self,
        part: &TypedPart,
        desk: &Diagnostics,
        above: &Above,
        known: &mut KnownDesigns,
    ) -> Option<(Part, WholeDesign)> {
        let name = &part.design;
        if let Some(ring) = above.from(name) {
            refuse_ring(ring, name, desk);
            return None;
        }
        let stems = self.design_stems(known);
        if !is_among(&stems, name) {
            desk.refuse_unknown(name, "design of this shop", stems.iter().map(String::as_str));
            return None;
        }
        let asked = asked(part);
        let usual = self.sound(name, &Choice::default(), desk, known)?;
        let choice = asked.of(&usual.found.choices, desk)?;
        let design = self.sound(name, &choice, desk, known)?;
        let called =
            part.size.as_ref().map_or_else(|| name.value.clone(), |size| format!("{}-{}", name.value, size.value));
        let piece = Arc::clone(&design.found.piece);
        Some((Part { name: called, count: part.count, piece }, design.whole))
    }
}

/// Reads the text of a design as chosen; its parts are only names still.
fn begin(stem: &str, choice: &Choice, source: &Arc<SourceText>, parsed: &Parsed<'_>) -> Box<HalfRead> {
    let desk = Diagnostics::new(Arc::clone(source));
    let typed = read_parsed(&desk, parsed, |t| design_file(t, choice));
    Box::new(HalfRead { stem: stem.to_owned(), choice: choice.clone(), typed, desk })
}

/// What a part asks of its design. That it can't be had so is told when the design it belongs to is put together.
fn fitting(part: &TypedPart, known: &KnownDesigns) -> Option<Next> {
    let usual = known.designs.get(&key(&part.design, &Choice::default()))?.as_ref()?;
    let aside = Diagnostics::new(SourceText::new("", ""));
    let choice = asked(part).of(&usual.found.choices, &aside)?;
    (!choice.is_usual()).then(|| Next::Read(part.design.value.clone(), choice))
}

fn asked(part: &TypedPart) -> ChosenAt<'_> {
    ChosenAt { size: part.size.as_ref(), measures: &part.measures }
}

/// What a design and its parts come to, counted before anything is worked out; refused where no piece can be so large.
fn whole(typed: &TypedDesign, parts: &[(Part, WholeDesign)], desk: &Diagnostics) -> Option<WholeDesign> {
    let own = 1 + typed.groups.len() + typed.fittings.len() + typed.steps.len() + typed.tasks.len();
    let mut whole = WholeDesign { pieces: 1, depth: 0, lines: own as u64 };
    for ((part, of), typed) in parts.iter().zip(&typed.parts) {
        whole.pieces = whole.pieces.saturating_add(of.pieces.saturating_mul(u64::from(part.count)));
        whole.lines = whole.lines.saturating_add(of.lines);
        whole.depth = whole.depth.max(of.depth + 1);
        let place = || typed.design.span.clone();
        for (count, bound, title, help) in [
            (whole.depth, bound::PARTS_DEEP, "parts stand {} deep within parts", "put more together in one design"),
            (whole.pieces - 1, bound::PARTS_IN_ALL, "the parts come to {} pieces in all", "make it of fewer parts"),
            (
                whole.lines,
                bound::LINES_IN_ALL,
                "with its parts the design has {} cords, steps and tasks",
                "make it of fewer parts",
            ),
        ] {
            if reeve_measure::count(count) > bound.most {
                desk.refuse(place(), title.replace("{}", &count.to_string()), bound.to_string(), help);
                return None;
            }
        }
    }
    Some(whole)
}

/// Whether a name is among names in order.
fn is_among(stems: &[String], name: &str) -> bool {
    stems.binary_search_by(|stem| stem.as_str().cmp(name)).is_ok()
}

/// What a design is known under.
fn key(stem: &str, choice: &Choice) -> DesignKey {
    let bits = |figure: &Figure| match figure {
        Figure::Number(number) => (false, number.to_bits()),
        Figure::Length(length) => (true, length.as_mm().to_bits()),
    };
    let measures = choice.measures.iter().map(|(name, figure)| (name.clone(), bits(figure)));
    (stem.to_owned(), choice.size.clone(), measures.collect())
}

fn refuse_ring(from: &[String], name: &Placed<String>, desk: &Diagnostics) {
    let ring: Vec<&str> = from.iter().map(String::as_str).chain([name.value.as_str()]).collect();
    let title = format!("the design contains itself: {}", ring.join(" > "));
    desk.refuse(name.span.clone(), title, "a part can't hold what it is part of", "take this part out");
}

impl KnownDesigns {
    /// Lets go of a design, unless others are made of it: then it would be read again for each of them.
    pub(crate) fn let_go(&mut self, stem: &str) {
        if self.parts.contains_key(stem) {
            return;
        }
        let from = (stem.to_owned(), None, Vec::new());
        let keys: Vec<DesignKey> =
            self.designs.range(from..).map(|(key, _)| key).take_while(|key| key.0 == stem).cloned().collect();
        for key in keys {
            self.designs.remove(&key);
        }
    }

    /// Keeps the faults of a reading. What a design's usual reading has said is not said again for a size.
    fn lay(&mut self, faults: Vec<Fault>, choice: &Choice) {
        for mut fault in faults {
            let place = fault.place.as_ref();
            let about = place.map(|(source, span)| (source.path.clone(), span.start, fault.title.clone()));
            let is_new = about.is_none_or(|about| self.told.insert(about));
            if choice.is_usual() {
                self.faults.push(fault);
            } else if is_new {
                fault.title = format!("{} ({choice})", fault.title);
                self.faults.push(fault);
            }
        }
    }
}

/// Why a design can't be had as chosen on the command line.
fn without_place(choice: &Choice, usual: &FoundDesign) -> Vec<Fault> {
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
