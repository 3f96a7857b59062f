//! A shop, opened: names resolved, faults gathered.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::NaiveDate;
use reeve_catalogue::{Catalogue, Knot, TIGHTENED, knot_file, shape_name, table_name};
use reeve_costing::commission::Commission;
use reeve_costing::cost::CostFault;
use reeve_costing::hand::{Hand, Sample};
use reeve_costing::piece::{Part, Piece};
use reeve_costing::pricing::{PriceFault, Priced, price_commission};
use reeve_costing::rates::Rates;
use reeve_costing::store::{Cord, Fitting};
use reeve_costing::takeoff::{TakeOff, take_off};
use reeve_host::{Probed, Program};
use reeve_measure::bound;
use reeve_reading::{Desk, Fault, Placed, Source, Table, nearest, read};

use crate::adding::NewSample;
use crate::files::{TypedCommission, TypedDesign, commission_file, cords_file, design_file, fittings_file, shop_file};
use crate::folder::{Folder, SHOP_FILE, read_disk};
use crate::libraries::{Admission, Admitted, Candidate, PLUGINS, clash, read_libraries};
use crate::resolve::{self, Names};
use crate::samples::{Samples, read_samples};

const DESIGNS: &str = "designs";
const COMMISSIONS: &str = "commissions";
const KNOTS: &str = "knots";
const TEMPLATES: &str = "templates";
const CORDS_FILE: &str = "store/cords.toml";
const FITTINGS_FILE: &str = "store/fittings.toml";
/// Kept in the knots folder, but not a knot.
const SAMPLES: &str = "samples";
const SAMPLES_FILE: &str = "knots/samples.toml";

/// A shop, opened.
#[derive(Debug)]
pub struct Shop {
    folder: Folder,
    catalogue: Catalogue,
    rates: Option<Rates>,
    cords: Vec<Arc<Cord>>,
    fittings: Vec<Arc<Fitting>>,
    designs: BTreeMap<String, Option<Design>>,
    /// The stems of all designs, once they have been listed.
    design_stems: Option<Arc<[String]>>,
    samples: Samples,
    program: Program,
    libraries: Vec<Admitted>,
    faults: Vec<Fault>,
    /// Whether store and knots could all be read: else a name may be unknown without being misspelt.
    names_sound: bool,
}

/// A design, read and checked.
#[derive(Debug, Clone)]
pub struct Found {
    /// Its file's stem.
    pub name: String,
    /// The piece.
    pub piece: Arc<Piece>,
    /// What one needs.
    pub take_off: Arc<TakeOff>,
}

/// A commission, resolved and priced.
#[derive(Debug, Clone)]
pub struct Order {
    /// What is asked.
    pub commission: Commission,
    /// What it needs, costs and comes to.
    pub priced: Priced,
}

/// The commission that `--demo` prices.
pub const DEMO_COMMISSION: &str = "reading-room";
/// The design that `--demo` takes off.
pub const DEMO_DESIGN: &str = "curlew-hanger";

/// A sample, added to its file's text.
#[derive(Debug, Clone)]
pub struct Added {
    /// The folder of the file; `None` for the starter shop inside the program, which can't be written.
    pub dir: Option<PathBuf>,
    /// The file's whole text.
    pub text: String,
    /// The lines added.
    pub lines: String,
    /// The sample.
    pub sample: Sample,
    /// Its place among the samples.
    pub at: usize,
    /// The hand that it makes.
    pub hand: Hand,
}

impl Added {
    /// The name of the file in its folder.
    pub const FILE: &'static str = "samples.toml";
}

#[derive(Debug, Clone)]
struct Design {
    found: Found,
    /// The piece and all the parts of its parts.
    pieces: u64,
}

impl Shop {
    /// Opens a shop: reads its rates, store and knots. Faults are kept for [`Shop::take_faults`].
    ///
    /// `program` is what is started when a knot must be worked out by one of the shop's libraries.
    pub fn open(folder: Folder, program: Program) -> Self {
        let (catalogue, faults) = Catalogue::embedded();
        let mut shop = Self {
            folder,
            catalogue,
            rates: None,
            cords: Vec::new(),
            fittings: Vec::new(),
            designs: BTreeMap::new(),
            design_stems: None,
            samples: Samples::default(),
            program,
            libraries: Vec::new(),
            faults,
            names_sound: true,
        };
        shop.rates = shop.read_needed(SHOP_FILE, shop_file);
        let before = shop.faults.len();
        shop.cords = shop.read_needed(CORDS_FILE, cords_file).unwrap_or_default();
        shop.fittings = shop.read_optional(FITTINGS_FILE, fittings_file).unwrap_or_default();
        shop.read_knots();
        shop.names_sound = shop.faults.len() == before;
        shop.read_samples();
        shop
    }

    /// The knots at hand: the program's and the shop's own.
    pub fn catalogue(&self) -> &Catalogue {
        &self.catalogue
    }

    /// The shop's rates; `None` when `shop.toml` has faults.
    pub fn rates(&self) -> Option<&Rates> {
        self.rates.as_ref()
    }

    /// Where a sample stands: its file and line.
    pub fn place_of_sample(&self, at: usize) -> &str {
        self.samples.places.get(at).map_or(SAMPLES_FILE, String::as_str)
    }

    /// What adding a sample would make of the shop; nothing is written.
    ///
    /// # Errors
    /// Every fault of the file as it would be, places in it included.
    pub fn with_sample(&self, new: &NewSample) -> Result<Added, Vec<Fault>> {
        let source = self.folder.read(SAMPLES_FILE).map_err(|fault| vec![fault])?;
        let (path, text) = match &source {
            Some(source) => (source.path.as_str(), source.text.as_str()),
            None => (SAMPLES_FILE, ""),
        };
        let text = new.added_to(text).map_err(|error| {
            vec![Fault::without_place(format!("{path} is not TOML: {}", error.message()), "mend it first")]
        })?;
        // The place of a fault can't be looked up in a file that was not written.
        let shown = Source::new(format!("{path} (not written)"), text.clone());
        let (samples, faults) = read_samples(&shown, &self.names());
        let (Some(sample), Some(rates), false) = (samples.all.last(), &self.rates, faults.iter().any(Fault::is_error))
        else {
            return Err(faults);
        };
        let hand = Hand::of(&samples.all, rates.bench.pace);
        Ok(Added {
            dir: self.folder.dir(KNOTS),
            text,
            lines: new.lines(),
            sample: sample.clone(),
            at: samples.all.len() - 1,
            hand,
        })
    }

    /// The libraries that were admitted, in order of name.
    pub fn libraries(&self) -> &[Admitted] {
        &self.libraries
    }

    /// The folder of libraries; `None` inside the program.
    pub fn library_folder(&self) -> Option<PathBuf> {
        self.folder.dir(PLUGINS)
    }

    /// The name of each library that stands there, even of one that can't be read.
    ///
    /// # Errors
    /// A fault when the folder can't be read.
    pub fn library_names(&self) -> Result<Vec<String>, Fault> {
        self.folder.folders(PLUGINS)
    }

    /// What admitting a library that was probed writes; nothing is written yet.
    ///
    /// # Errors
    /// A fault for each of its knots that is called like one of another library, of the program or of the shop.
    pub fn admission(&self, candidate: &Candidate, probed: &Probed) -> Result<Admission, Vec<Fault>> {
        let dir = self.library_folder().ok_or_else(|| {
            let help = "start a shop with `reeve begin DIR`, and name it with --shop";
            vec![Fault::without_place("the starter shop is inside the program and can't take libraries in", help)]
        })?;
        let name = &probed.described.name;
        let clash = |(knot, _): &(Arc<Knot>, String)| clash(&self.catalogue, knot, name);
        let faults: Vec<Fault> = probed.knots.iter().filter_map(clash).collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        let replaces = self.libraries.iter().find(|known| known.name == *name).map(|known| known.version.clone());
        Ok(candidate.admission(dir, probed, replaces))
    }

    /// The faults gathered so far.
    pub fn take_faults(&mut self) -> Vec<Fault> {
        std::mem::take(&mut self.faults)
    }

    /// Whether a fault gathered so far stops the work.
    pub fn is_stopped(&self) -> bool {
        self.faults.iter().any(Fault::is_error)
    }

    /// The stems of all designs.
    pub fn designs(&mut self) -> Arc<[String]> {
        if let Some(known) = &self.design_stems {
            return Arc::clone(known);
        }
        let listed: Arc<[String]> = self.stems(DESIGNS).into();
        self.design_stems = Some(Arc::clone(&listed));
        listed
    }

    /// The stems of all commissions.
    pub fn commissions(&mut self) -> Vec<String> {
        self.stems(COMMISSIONS)
    }

    /// The shop's own templates: name, path shown, text.
    pub fn templates(&mut self) -> Vec<(String, String, String)> {
        let names = self.folder.names(TEMPLATES, "");
        let names = self.kept(names).unwrap_or_default();
        let read = names.into_iter().filter_map(|name| {
            let source = self.folder.read(&format!("{TEMPLATES}/{name}"));
            let source = self.kept(source)??;
            Some((name, source.path.clone(), source.text.clone()))
        });
        read.collect()
    }

    /// Reads a design by its stem or its path. Faults are kept; `None` when there is one.
    pub fn design(&mut self, word: &str) -> Option<Found> {
        let (stem, source) = self.locate(DESIGNS, "design", word)?;
        if is_path(word) {
            return self.load(&stem, &source, &mut vec![stem.clone()]).map(|design| design.found);
        }
        self.design_named(&stem, &mut Vec::new()).map(|design| design.found)
    }

    /// Reads a commission by its stem or its path, and prices it as of a day.
    ///
    /// Faults are kept; `None` when there is one.
    pub fn order(&mut self, word: &str, today: NaiveDate) -> Option<Order> {
        let (stem, source) = self.locate(COMMISSIONS, "commission", word)?;
        let desk = Desk::new(source);
        let order = self.order_of(&stem, &desk, today);
        self.faults.extend(desk.into_faults());
        order
    }

    /// Reads every file of the shop, loads every library, and gathers every fault.
    pub fn check(&mut self, today: NaiveDate) {
        self.faults.extend(self.libraries.iter().filter_map(Admitted::check));
        for stem in self.designs().iter() {
            self.design_named(stem, &mut Vec::new());
        }
        for stem in self.commissions() {
            self.order(&stem, today);
        }
    }

    fn order_of(&mut self, stem: &str, desk: &Desk, today: NaiveDate) -> Option<Order> {
        let typed = read(desk, commission_file)?;
        let pieces = self.pieces_of(&typed, desk);
        let rates = self.rates.clone()?;
        let commission = resolve::commission(stem, &typed, pieces?, &rates, desk);
        // A price worked out from half a commission would be worse than none.
        if !desk.is_sound() {
            return None;
        }
        match price_commission(&commission, &rates, today) {
            Ok(priced) => Some(Order { commission, priced }),
            Err(fault) => {
                lay_price_fault(fault, &commission, &typed, desk);
                None
            }
        }
    }

    /// The pieces that a commission asks for, with the cords it puts in place of the designs' own.
    fn pieces_of(&mut self, typed: &TypedCommission, desk: &Desk) -> Option<Vec<Arc<Piece>>> {
        let mut pieces = Vec::new();
        for item in &typed.items {
            let piece = self.piece_for_item(&item.design, desk);
            let swaps: Vec<Option<(&Placed<String>, Arc<Cord>)>> =
                item.cords.iter().map(|(from, to)| self.names().cord(to, desk).map(|cord| (from, cord))).collect();
            let swaps = swaps.into_iter().collect::<Option<Vec<_>>>();
            pieces.push(piece.zip(swaps).and_then(|(piece, swaps)| swap_cords(&piece, &swaps, desk)));
        }
        pieces.into_iter().collect()
    }

    fn piece_for_item(&mut self, design: &Placed<String>, desk: &Desk) -> Option<Arc<Piece>> {
        let known = self.designs();
        if !known.contains(&design.value) {
            desk.refuse_unknown(design, "design of this shop", known.iter().map(String::as_str));
            return None;
        }
        let found = self.design_named(&design.value, &mut Vec::new());
        if found.is_none() && self.can_tell() {
            desk.refuse(
                design.span.clone(),
                format!("the design `{}` has faults of its own", design.value),
                "",
                "mend it first",
            );
        }
        found.map(|design| design.found.piece)
    }

    /// A design of the shop, read once. `above` are the designs that contain it.
    fn design_named(&mut self, stem: &str, above: &mut Vec<String>) -> Option<Design> {
        if let Some(known) = self.designs.get(stem) {
            return known.clone();
        }
        let source = self.folder.read(&format!("{DESIGNS}/{stem}.toml"));
        let source = self.kept(source)??;
        above.push(stem.to_owned());
        let design = self.load(stem, &source, above);
        above.pop();
        self.designs.insert(stem.to_owned(), design.clone());
        design
    }

    fn load(&mut self, stem: &str, source: &Arc<Source>, above: &mut Vec<String>) -> Option<Design> {
        let desk = Desk::new(Arc::clone(source));
        let typed = read(&desk, design_file);
        let design = typed.and_then(|typed| self.resolve(stem, &typed, &desk, above));
        self.faults.extend(desk.into_faults());
        design
    }

    fn resolve(&mut self, stem: &str, typed: &TypedDesign, desk: &Desk, above: &mut Vec<String>) -> Option<Design> {
        let parts = self.parts(typed, desk, above);
        let (sound, (parts, pieces)) = (parts.is_some(), parts.unwrap_or_default());
        let piece = resolve::piece(typed, parts, &self.names(), desk)?;
        let rates = self.rates.as_ref()?;
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
        Some(Design {
            found: Found { name: stem.to_owned(), piece: Arc::new(piece), take_off: Arc::new(take_off) },
            pieces: pieces + 1,
        })
    }

    /// The parts of a design and how many pieces they come to, parts of parts included.
    fn parts(&mut self, typed: &TypedDesign, desk: &Desk, above: &mut Vec<String>) -> Option<(Vec<Part>, u64)> {
        let mut parts = Vec::new();
        let mut pieces = 0_u64;
        let mut sound = true;
        for part in &typed.parts {
            let Some(design) = self.part(&part.design, desk, above) else {
                sound = false;
                continue;
            };
            pieces = pieces.saturating_add(design.pieces.saturating_mul(u64::from(part.count)));
            parts.push(Part { name: part.design.value.clone(), count: part.count, piece: design.found.piece });
        }
        let most = bound::PARTS_IN_ALL;
        if reeve_measure::count(pieces) > most.most {
            let place = typed.parts.first().map_or(0..0, |part| part.design.span.clone());
            desk.refuse(
                place,
                format!("the parts come to {pieces} pieces in all"),
                most.to_string(),
                "make it of fewer parts",
            );
            return None;
        }
        sound.then_some((parts, pieces))
    }

    fn part(&mut self, name: &Placed<String>, desk: &Desk, above: &mut Vec<String>) -> Option<Design> {
        if let Some(at) = above.iter().position(|stem| *stem == name.value) {
            let ring: Vec<&str> =
                above.get(at..).unwrap_or_default().iter().map(String::as_str).chain([name.value.as_str()]).collect();
            desk.refuse(
                name.span.clone(),
                format!("the design contains itself: {}", ring.join(" > ")),
                "a part can't hold what it is part of",
                "take this part out",
            );
            return None;
        }
        let known = self.designs();
        if !known.contains(&name.value) {
            desk.refuse_unknown(name, "design of this shop", known.iter().map(String::as_str));
            return None;
        }
        let design = self.design_named(&name.value, above);
        if design.is_none() && self.can_tell() {
            desk.refuse(
                name.span.clone(),
                format!("the design `{}` has faults of its own", name.value),
                "",
                "mend it first",
            );
        }
        design
    }

    /// Whether a design that could not be taken off must have faults of its own.
    fn can_tell(&self) -> bool {
        self.names_sound && self.rates.is_some()
    }

    fn names(&self) -> Names<'_> {
        Names { cords: &self.cords, fittings: &self.fittings, catalogue: &self.catalogue, sound: self.names_sound }
    }

    fn read_knots(&mut self) {
        let (libraries, faults) = read_libraries(&self.folder, &mut self.catalogue, &self.program);
        self.libraries = libraries;
        self.faults.extend(faults);
        for stem in self.stems(KNOTS).into_iter().filter(|stem| stem != SAMPLES) {
            let source = self.folder.read(&format!("{KNOTS}/{stem}.toml"));
            if let Some(Some(source)) = self.kept(source) {
                self.faults.extend(self.catalogue.add(&source));
            }
        }
        self.read_tightened();
        self.faults.extend(self.catalogue.join_parts());
        // A knot of the shop's own may be worked out by a library as well.
        for library in &self.libraries {
            self.catalogue.join_library(&library.name, &library.by());
        }
    }

    /// Reads what tightening left beside the shop's own knots: tables now, shapes when they are drawn.
    fn read_tightened(&mut self) {
        let folder = format!("{KNOTS}/{TIGHTENED}");
        let own: Vec<String> = self
            .catalogue
            .iter()
            .filter(|knot| knot.path.is_some() && knot.table.is_none())
            .map(|k| k.name.clone())
            .collect();
        for name in own {
            let table = self.folder.read(&format!("{folder}/{}", table_name(&name)));
            if let Some(Some(table)) = self.kept(table) {
                self.faults.extend(self.catalogue.add_table(&table));
            }
            let shape = self.folder.read(&format!("{folder}/{}", shape_name(&name)));
            if let Some(Some(shape)) = self.kept(shape) {
                self.catalogue.add_shape(&name, shape);
            }
        }
    }

    fn read_samples(&mut self) {
        let source = self.folder.read(SAMPLES_FILE);
        let Some(Some(source)) = self.kept(source) else { return };
        let (samples, faults) = read_samples(&source, &self.names());
        self.faults.extend(faults);
        if let Some(rates) = &mut self.rates {
            rates.bench.hand = Hand::of(&samples.all, rates.bench.pace);
        }
        self.samples = samples;
    }

    fn read_needed<T>(&mut self, path: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
        let source = self.folder.read(path);
        let source = self.kept(source)?;
        if source.is_none() {
            self.faults.push(Fault::without_place(
                format!("{path} is missing"),
                "`reeve begin` writes a starter shop to copy it from",
            ));
        }
        self.read_source(source?, reader)
    }

    fn read_optional<T>(&mut self, path: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
        let source = self.folder.read(path);
        let source = self.kept(source)??;
        self.read_source(source, reader)
    }

    fn read_source<T>(&mut self, source: Arc<Source>, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
        let desk = Desk::new(source);
        let value = read(&desk, reader);
        self.faults.extend(desk.into_faults());
        value
    }

    /// Keeps the fault, if it is one.
    fn kept<T>(&mut self, result: Result<T, Fault>) -> Option<T> {
        result.map_err(|fault| self.faults.push(fault)).ok()
    }

    fn stems(&mut self, sub: &str) -> Vec<String> {
        let stems = self.folder.stems(sub);
        self.kept(stems).unwrap_or_default()
    }

    /// The stem and text of a file named by its stem or its path.
    fn locate(&mut self, sub: &str, what: &str, word: &str) -> Option<(String, Arc<Source>)> {
        let found =
            if is_path(word) { read_disk(Path::new(word)) } else { self.folder.read(&format!("{sub}/{word}.toml")) };
        let stem =
            Path::new(word).file_stem().map_or_else(|| word.to_owned(), |stem| stem.to_string_lossy().into_owned());
        if let Some(source) = self.kept(found)? {
            return Some((stem, source));
        }
        let known = self.stems(sub);
        let near = nearest(&stem, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
        let help =
            if known.is_empty() { format!("{sub}/ is empty") } else { format!("{sub}/ holds: {}", known.join(", ")) };
        let title =
            if is_path(word) { format!("there is no file {word}") } else { format!("no {what} is called `{word}`") };
        self.faults.push(Fault::without_place(title, near.unwrap_or_default() + &help));
        None
    }
}

fn is_path(word: &str) -> bool {
    word.contains(['/', '\\']) || Path::new(word).extension().is_some_and(|ending| ending == "toml")
}

/// The piece with other cords in place of some of its own.
fn swap_cords(piece: &Arc<Piece>, swaps: &[(&Placed<String>, Arc<Cord>)], desk: &Desk) -> Option<Arc<Piece>> {
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
    sound.then(|| Arc::new(swapped(piece, swaps)))
}

fn cord_names(piece: &Piece, names: &mut Vec<String>) {
    names.extend(piece.groups.iter().map(|group| group.cord.name.clone()));
    piece.parts.iter().for_each(|part| cord_names(&part.piece, names));
    names.sort_unstable();
    names.dedup();
}

fn swapped(piece: &Piece, swaps: &[(&Placed<String>, Arc<Cord>)]) -> Piece {
    let mut piece = piece.clone();
    for group in &mut piece.groups {
        if let Some((_, cord)) = swaps.iter().find(|(from, _)| from.value == group.cord.name) {
            group.cord = Arc::clone(cord);
        }
    }
    for part in &mut piece.parts {
        part.piece = Arc::new(swapped(&part.piece, swaps));
    }
    piece
}

fn lay_price_fault(fault: PriceFault, commission: &Commission, typed: &TypedCommission, desk: &Desk) {
    let whole = typed.items.first().map_or(0..0, |item| item.span.clone());
    match fault {
        PriceFault::Cost(CostFault::Piece(at, faults)) => {
            let place = typed
                .items
                .get(at)
                .map(|item| item.cords.first().map_or_else(|| item.design.span.clone(), |(_, to)| to.span.clone()));
            let title = commission.items.get(at).map_or("", |item| item.piece.title.as_str());
            for fault in faults {
                desk.refuse(
                    place.clone().unwrap_or_default(),
                    format!("{title}: {}", fault.title),
                    fault.label,
                    fault.help,
                );
            }
        }
        PriceFault::Cost(fault @ CostFault::Purchase(..)) => {
            desk.refuse(whole, fault.to_string(), "", "check its put-ups in store/cords.toml");
        }
        PriceFault::Cost(fault @ CostFault::TooMuch(_)) => desk.refuse(
            whole,
            fault.to_string(),
            bound::JOB_COST.to_string(),
            "look for a slip in quantities, minutes, prices or the wage",
        ),
        PriceFault::OutOfReach(reach) => desk.refuse(
            whole,
            format!(
                "a margin of {} % and fees of {} % leave nothing of any price",
                reach.margin.normalize(),
                reach.fees.round_dp(2).normalize()
            ),
            "together they must stay below 100 %",
            "aim at a smaller margin in shop.toml, or give a price",
        ),
        PriceFault::Date => desk.refuse(
            whole,
            "the quote's last day lies past the calendar",
            "",
            "choose an earlier --on or fewer valid-days",
        ),
    }
}

/// Reads one knot file, wherever it stands, with all its faults, and the table that tightening left beside it.
///
/// It may be made of knots of the program.
pub fn read_knot(path: &Path) -> (Option<Arc<Knot>>, Vec<Fault>) {
    let source = match read_disk(path) {
        Ok(Some(source)) => source,
        Ok(None) => {
            return (
                None,
                vec![Fault::without_place(
                    format!("there is no file {}", path.display()),
                    "name a knot file, such as knots/my-knot.toml",
                )],
            );
        }
        Err(fault) => return (None, vec![fault]),
    };
    let desk = Desk::new(Arc::clone(&source));
    let name = read(&desk, knot_file).map(|knot| knot.name);
    let (mut catalogue, _) = Catalogue::embedded();
    let mut faults = catalogue.add(&source);
    let Some(name) = name else { return (None, faults) };
    let beside = path.parent().unwrap_or(Path::new("")).join(TIGHTENED).join(table_name(&name));
    match read_disk(&beside) {
        Ok(table) => faults.extend(table.iter().flat_map(|table| catalogue.add_table(table))),
        Err(fault) => faults.push(fault),
    }
    faults.extend(catalogue.join_parts());
    (catalogue.find(&name).cloned(), faults)
}
