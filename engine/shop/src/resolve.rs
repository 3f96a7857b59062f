//! From what was typed to what it names.

use std::collections::BTreeMap;
use std::ops::Range;
use std::sync::Arc;

use reeve_catalogue::{Catalogue, Knot, KnotKind, TyingError};
use reeve_costing::commission::{Commission, Discount, FixedLine, Item, NamedAmount};
use reeve_costing::piece::{
    CordGroup, FittingId, GroupId, LegSet, NamedFitting, Part, Piece, SetId, Shared, Step, Tie, Work,
};
use reeve_costing::pricing::own_tax;
use reeve_costing::quote::AmountKind;
use reeve_costing::rates::{Rates, TaxScheme};
use reeve_costing::store::{Cord, Fitting};
use reeve_costing::takeoff::{DesignPlace, PieceFault};
use reeve_costing::totals::{Amount, TaxClass};
use reeve_reading::{Diagnostics, Figure, Placed};
use rust_decimal::Decimal;

use crate::files::{Chosen, StepKind, TypedAmount, TypedCommission, TypedDesign, TypedGroup, TypedStep, TypedTax};

/// What the names of a design can name.
pub(crate) struct Names<'a> {
    pub(crate) cords: &'a [Arc<Cord>],
    pub(crate) fittings: &'a [Arc<Fitting>],
    pub(crate) catalogue: &'a Catalogue,
    /// Whether store and knots could all be read: else a name is not misspelt only because it is unknown.
    pub(crate) sound: bool,
}

impl Names<'_> {
    pub(crate) fn cord(&self, name: &Placed<String>, desk: &Diagnostics) -> Option<Arc<Cord>> {
        let found = self.cords.iter().find(|cord| cord.name == name.value).cloned();
        if found.is_none() && self.sound {
            desk.refuse_unknown(name, "cord of the store", self.cords.iter().map(|cord| cord.name.as_str()));
        }
        found
    }

    pub(crate) fn knot(&self, word: &Placed<String>, desk: &Diagnostics) -> Option<Arc<Knot>> {
        let found = self.catalogue.find(word).cloned();
        if found.is_none() && self.sound {
            let names = self.catalogue.iter().map(|knot| knot.name.as_str());
            desk.refuse_unknown_word(word, "knot", self.catalogue.words(), names);
        }
        found
    }

    fn fitting(&self, name: &Placed<String>, desk: &Diagnostics) -> Option<Arc<Fitting>> {
        let found = self.fittings.iter().find(|fitting| fitting.name == name.value).cloned();
        if found.is_none() && self.sound {
            desk.refuse_unknown(name, "fitting", self.fittings.iter().map(|fitting| fitting.name.as_str()));
        }
        found
    }
}

/// Resolves a design. Every fault is laid on the desk; `None` when there is one.
pub(crate) fn piece(typed: &TypedDesign, parts: Vec<Part>, names: &Names<'_>, desk: &Diagnostics) -> Option<Piece> {
    let mut maker = PieceMaker {
        names,
        desk,
        groups: Vec::new(),
        sets: Vec::new(),
        fittings: Vec::new(),
        at: Places::default(),
        sound: true,
        groups_sound: typed.groups_sound,
    };
    typed.groups.iter().for_each(|group| maker.group(group));
    for fitting in &typed.fittings {
        maker.fitting(&fitting.name, &fitting.of, fitting.count);
    }
    // Steps that name a group which could not be resolved would each complain of it again.
    maker.groups_sound &= maker.sound;
    let steps: Vec<Option<Step>> = typed.steps.iter().map(|step| maker.step(step)).collect();
    let steps = steps.into_iter().collect::<Option<Vec<Step>>>()?;
    maker.sound.then(|| Piece {
        title: typed.title.clone(),
        about: typed.about.clone(),
        purpose: typed.purpose,
        made: typed.made,
        finished: typed.finished.clone(),
        groups: maker.groups,
        sets: maker.sets,
        fittings: maker.fittings,
        steps,
        tasks: typed.tasks.clone(),
        parts,
    })
}

/// Where groups, sets and fittings stand, by name: a design may have many.
#[derive(Default)]
struct Places {
    groups: BTreeMap<String, GroupId>,
    sets: BTreeMap<String, SetId>,
    fittings: BTreeMap<String, FittingId>,
}

struct PieceMaker<'a> {
    names: &'a Names<'a>,
    desk: &'a Diagnostics,
    groups: Vec<CordGroup>,
    sets: Vec<LegSet>,
    fittings: Vec<NamedFitting>,
    at: Places,
    sound: bool,
    /// Whether all groups are known: else a set's name is not misspelt only because it is unknown.
    groups_sound: bool,
}

impl PieceMaker<'_> {
    fn group(&mut self, typed: &TypedGroup) {
        if self.at.groups.contains_key(&typed.name.value) {
            self.refuse(
                typed.name.span.clone(),
                format!("a second cord group is called `{}`", typed.name.value),
                "rename one of them",
            );
            return;
        }
        let Some(cord) = self.names.cord(&typed.of, self.desk) else {
            self.sound = false;
            return;
        };
        let group = self.groups.len();
        let names: Vec<&Placed<String>> =
            if typed.legs.is_empty() { vec![&typed.name] } else { typed.legs.iter().collect() };
        let two_sets = names.len() == 2;
        let legs_each = if typed.folded && !two_sets { 2 } else { 1 };
        let sets: Vec<SetId> = names.into_iter().map(|name| self.set(name, group, typed.count * legs_each)).collect();
        let (Some(first), Some(second)) = (sets.first(), sets.last()) else { return };
        let legs = (*first, *second);
        self.at.groups.insert(typed.name.value.clone(), group);
        self.groups.push(CordGroup {
            name: typed.name.value.clone(),
            cord,
            count: typed.count,
            folded: typed.folded,
            legs,
        });
    }

    fn set(&mut self, name: &Placed<String>, group: GroupId, count: u32) -> SetId {
        if self.at.sets.contains_key(&name.value) {
            self.refuse(
                name.span.clone(),
                format!("a second leg set is called `{}`", name.value),
                "each set has its own name",
            );
        }
        let set = self.sets.len();
        self.at.sets.entry(name.value.clone()).or_insert(set);
        self.sets.push(LegSet { name: name.value.clone(), group, count });
        set
    }

    fn refuse(&mut self, span: Range<usize>, title: String, help: &str) {
        self.desk.refuse(span, title, "", help);
        self.sound = false;
    }

    fn fitting(&mut self, name: &Placed<String>, of: &Placed<String>, count: u32) -> Option<usize> {
        let Some(fitting) = self.names.fitting(of, self.desk) else {
            self.sound = false;
            return None;
        };
        let place = self.fittings.len();
        self.at.fittings.entry(name.value.clone()).or_insert(place);
        self.fittings.push(NamedFitting { name: name.value.clone(), many: (fitting, count) });
        Some(place)
    }

    /// A fitting by the name the design gave it, else one of the store.
    fn fitting_named(&mut self, name: &Placed<String>) -> Option<usize> {
        let known = self.at.fittings.get(&name.value).copied();
        known.or_else(|| self.fitting(name, name, 1))
    }

    fn step(&mut self, typed: &TypedStep) -> Option<Step> {
        let hang: Option<Vec<GroupId>> = typed.hang.iter().map(|name| self.group_named(name)).collect();
        let alongside = self.sets_named(&typed.alongside);
        let (work, title) = self.work(typed, hang.as_deref().unwrap_or_default())?;
        Some(Step {
            title: typed.title.clone().unwrap_or(title),
            hang: hang?,
            alongside: alongside?,
            work,
            note: typed.note.clone(),
            time: typed.time,
        })
    }

    fn work(&mut self, typed: &TypedStep, hang: &[GroupId]) -> Option<(Work, String)> {
        match &typed.kind {
            StepKind::Tie { .. } => self.tie(typed, hang),
            StepKind::Bare(length, legs) => {
                Some((Work::Bare { length: *length, legs: self.sets_named(legs)? }, "Leave bare".to_owned()))
            }
            StepKind::Tail(length, legs, end) => Some((
                Work::Tail { length: *length, legs: self.sets_named(legs)?, end: *end },
                "Trim the ends".to_owned(),
            )),
            StepKind::Thread { bead, times, legs_each, legs } => {
                let (found, legs) = (self.fitting_named(bead), self.sets_named(legs));
                let bead = found?;
                let title = format!("Thread {}", self.fittings[bead].many.0.title);
                Some((Work::Thread { bead, times: *times, legs_each: *legs_each, legs: legs? }, title))
            }
            StepKind::LayIn => Some((Work::LayIn, "Lay in".to_owned())),
        }
    }

    fn tie(&mut self, typed: &TypedStep, hang: &[GroupId]) -> Option<(Work, String)> {
        let StepKind::Tie { knot, times, columns, working, core, on, shared, core_legs, parameters } = &typed.kind
        else {
            return None;
        };
        let found = self.names.knot(knot, self.desk);
        self.sound &= found.is_some();
        let fitting = on.as_ref().map(|on| self.fitting_named(on));
        let (working, core) = (self.sets_named(working), self.sets_named(core));
        let mut working = working?;
        if working.is_empty() {
            working = hang.iter().flat_map(|group| sets_of(&self.groups[*group])).collect();
        }
        let knot = found?;
        let parameters = chosen(&knot, parameters, self.desk);
        self.sound &= parameters.is_some();
        let title = step_title(&knot.title, knot.kind);
        let tie = Tie {
            knot,
            times: *times,
            columns: *columns,
            working,
            core: core?,
            on: fitting.map_or(Some(None), |found| found.map(Some))?,
            shared: shared.then_some(Shared { core_legs: *core_legs }),
            parameters: parameters?,
        };
        self.check_core_once(typed, &tie)?;
        Some((Work::Tie(tie), title))
    }

    /// A leg can't tie and be tied round in the same knot unless legs change places.
    fn check_core_once(&mut self, typed: &TypedStep, tie: &Tie) -> Option<()> {
        let twice = tie.core.iter().find(|set| tie.working.contains(set)).filter(|_| tie.shared.is_none());
        if let Some(set) = twice {
            let name = self.sets[*set].name.clone();
            self.refuse(
                typed.place("core"),
                format!("`{name}` ties and is tied round in the same step"),
                "if the legs change places, write share = \"even\"",
            );
            return None;
        }
        if tie.on.is_some() && !tie.core.is_empty() {
            self.refuse(
                typed.place("core"),
                "a step ties round a fitting or round legs, not both".to_owned(),
                "take out `on` or `core`",
            );
            return None;
        }
        Some(())
    }

    fn group_named(&mut self, name: &Placed<String>) -> Option<GroupId> {
        let found = self.at.groups.get(&name.value).copied();
        if found.is_none() && self.groups_sound {
            self.desk.refuse_unknown(name, "cord group", self.groups.iter().map(|group| group.name.as_str()));
        }
        self.sound &= found.is_some();
        found
    }

    /// Sets by name; a group's name stands for all its sets.
    fn sets_named(&mut self, names: &[Placed<String>]) -> Option<Vec<SetId>> {
        let found: Vec<Option<Vec<SetId>>> = names.iter().map(|name| self.set_named(name)).collect();
        let mut sets: Vec<SetId> = found.into_iter().collect::<Option<Vec<_>>>()?.into_iter().flatten().collect();
        let all = sets.len();
        sets.sort_unstable();
        sets.dedup();
        if sets.len() < all {
            let place = names.first().map_or(0..0, |name| name.span.clone());
            self.refuse(place, "a leg set is named twice in one list".to_owned(), "name each set once");
            return None;
        }
        Some(sets)
    }

    fn set_named(&mut self, name: &Placed<String>) -> Option<Vec<SetId>> {
        if let Some(set) = self.at.sets.get(&name.value) {
            return Some(vec![*set]);
        }
        if let Some(group) = self.at.groups.get(&name.value) {
            return Some(sets_of(&self.groups[*group]));
        }
        if self.groups_sound {
            let known = self.sets.iter().map(|set| set.name.as_str());
            self.desk.refuse_unknown(name, "leg set of this design", known);
        }
        self.sound = false;
        None
    }
}

/// The values that a knot's parameters are given. Every one that it can't have is refused, at its place.
pub(crate) fn chosen(knot: &Knot, typed: &Chosen, desk: &Diagnostics) -> Option<Vec<(String, f64)>> {
    let one = |(name, figure): &(Placed<String>, Placed<Figure>)| match knot.chosen(&name.value, figure.value) {
        Ok(value) => Some((name.value.clone(), value)),
        Err(misfit) => {
            let place = if matches!(misfit, TyingError::UnknownParameter { .. }) { &name.span } else { &figure.span };
            desk.refuse(place.clone(), misfit.to_string(), "", misfit.parameter_help().unwrap_or_default());
            None
        }
    };
    let all: Vec<Option<(String, f64)>> = typed.iter().map(one).collect();
    all.into_iter().collect()
}

fn sets_of(group: &CordGroup) -> Vec<SetId> {
    if group.legs.0 == group.legs.1 { vec![group.legs.0] } else { vec![group.legs.0, group.legs.1] }
}

fn step_title(knot: &str, kind: KnotKind) -> String {
    let mut chars = knot.chars();
    let capital = chars.next().map(|first| first.to_uppercase().chain(chars).collect::<String>()).unwrap_or_default();
    match kind {
        KnotKind::Mounting => format!("Hang with a {knot}"),
        KnotKind::Sennit | KnotKind::Row | KnotKind::Wrap | KnotKind::Single => capital,
    }
}

/// Lays the faults of a take-off at their places in the design.
pub(crate) fn lay_piece_faults(faults: Vec<PieceFault>, typed: &TypedDesign, desk: &Diagnostics) {
    for fault in faults {
        desk.refuse(place_of(fault.spot, typed), fault.title, fault.label, fault.help);
    }
}

/// Lays what the maker should look at in the same way, as warnings.
pub(crate) fn lay_remarks(remarks: &[PieceFault], typed: &TypedDesign, desk: &Diagnostics) {
    // Remarks of parts are laid in the parts' own designs.
    for remark in remarks {
        desk.warn(place_of(remark.spot, typed), &remark.title, &remark.label, &remark.help);
    }
}

fn place_of(spot: DesignPlace, typed: &TypedDesign) -> Range<usize> {
    let place = match spot {
        DesignPlace::Step(at, key) => typed.steps.get(at).map(|step| step.place(key)),
        DesignPlace::Parameter(at, nth) => typed.steps.get(at).map(|step| step.place_of_parameter(nth)),
        DesignPlace::Cord(at, "of") => typed.groups.get(at).map(|group| group.of.span.clone()),
        DesignPlace::Cord(at, _) => typed.groups.get(at).map(|group| group.name.span.clone()),
    };
    place.unwrap_or_default()
}

/// Resolves a commission whose items have been resolved, in order.
pub(crate) fn commission(
    reference: &str,
    typed: &TypedCommission,
    pieces: Vec<Arc<Piece>>,
    rates: &Rates,
    desk: &Diagnostics,
) -> Commission {
    let tax = |tax: Option<&Placed<TypedTax>>| tax_class(tax, rates, desk);
    let named = |amount: &TypedAmount| NamedAmount {
        kind: AmountKind::Named,
        text: Some(amount.text.clone()),
        percent: None,
        amount: Amount { amount: rates.currency.round_half_away(amount.amount), tax: tax(amount.tax.as_ref()) },
    };
    Commission {
        reference: reference.to_owned(),
        title: typed.title.clone(),
        client: typed.client.clone(),
        asked: typed.asked,
        needed_by: typed.needed_by,
        promised: typed.promised,
        items: typed
            .items
            .iter()
            .zip(pieces)
            .map(|(item, piece)| Item {
                design: item.design.value.clone(),
                piece,
                quantity: item.quantity,
                text: item.text.clone(),
                price: item.price,
                tax: tax(item.tax.as_ref()),
            })
            .collect(),
        lines: typed
            .lines
            .iter()
            .map(|line| FixedLine {
                text: line.text.clone(),
                quantity: line.quantity,
                unit_price: line.unit_price,
                tax: tax(line.tax.as_ref()),
                cost: line.cost,
                time: line.time,
            })
            .collect(),
        rush: typed.rush,
        confidence: typed.confidence,
        discount: typed.discount.clone().map(|(text, size)| Discount { text, size }),
        allowances: typed.allowances.iter().map(named).collect(),
        charges: typed.charges.iter().map(named).collect(),
        deposit: typed.deposit,
        paid: typed.paid,
        note: typed.note.clone(),
    }
}

fn tax_class(tax: Option<&Placed<TypedTax>>, rates: &Rates, desk: &Diagnostics) -> TaxClass {
    let Some(tax) = tax else { return own_tax(rates) };
    match (rates.tax.scheme, tax.value) {
        (TaxScheme::NotRegistered, TypedTax::Rate(rate)) if rate > Decimal::ZERO => {
            desk.refuse(
                tax.span.clone(),
                format!("a tax of {} % is asked, but the shop charges no tax", rate.normalize()),
                "[tax] prices = \"not-registered\" in shop.toml",
                "take out the rate, or register the shop for tax",
            );
            TaxClass::Untaxed
        }
        (TaxScheme::NotRegistered, _) => TaxClass::Untaxed,
        (_, TypedTax::Rate(rate)) => TaxClass::Rate(rate),
        (_, TypedTax::Exempt) => TaxClass::Exempt,
    }
}
