//! The materials the shop buys.

use std::sync::Arc;

use reeve_catalogue::{Core, USUAL_GIVE};
use reeve_measure::{Length, LinearDensity, Mass};
use rust_decimal::Decimal;

/// A cord of the store.
#[derive(Debug, Clone, PartialEq)]
pub struct Cord {
    /// The word designs use.
    pub name: String,
    /// As written on pages.
    pub title: String,
    /// Its colour, in the maker's words.
    pub colour: Option<String>,
    /// Thickness.
    pub diameter: Length,
    /// Mass of a metre.
    pub density: LinearDensity,
    /// Whether the density was estimated and not weighed.
    pub density_estimated: bool,
    /// How much it gives, as the store says; `None` where nobody has said. See [`reeve_catalogue::Setting::give`].
    pub give: Option<f64>,
    /// The forms it is sold in.
    pub put_ups: Vec<PutUp>,
    /// What a piece is charged.
    pub charge: Charge,
}

impl Cord {
    /// Its give before any sample: the store's word, else that of a usual cord.
    pub fn stated_give(&self) -> f64 {
        self.give.unwrap_or(USUAL_GIVE)
    }

    /// The title and the colour, as written on pages.
    pub fn full_title(&self) -> String {
        match &self.colour {
            Some(colour) => format!("{}, {colour}", self.title),
            None => self.title.clone(),
        }
    }
}

/// A form a cord is sold in.
#[derive(Debug, Clone, PartialEq)]
pub struct PutUp {
    /// As the supplier calls it: reel, cone, hank.
    pub title: String,
    /// Length of cord on it, in whole millimetres.
    pub length_mm: u64,
    /// What it costs.
    pub price: Decimal,
}

/// What a commission is charged for a cord.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Charge {
    /// The length used; what is left goes back to the store.
    Used,
    /// All put-ups bought: nobody else will want what is left.
    Whole,
}

impl Charge {
    /// Every way with its word.
    pub const WORDS: &'static [(&'static str, Self)] = &[("used", Self::Used), ("whole", Self::Whole)];
}

/// A ring, dowel, bead or other thing that is not cord.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitting {
    /// The word designs use.
    pub name: String,
    /// As written on pages.
    pub title: String,
    /// What is tied round it, if anything can be.
    pub section: Option<Section>,
    /// How much of it knots can cover: a ring's inner edge, a dowel's length.
    pub room: Option<Length>,
    /// For a bead: its hole and how much leg it covers.
    pub bead: Option<Bead>,
    /// Its mass.
    pub weight: Mass,
    /// What one costs.
    pub price: Decimal,
}

/// The section of a fitting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Section {
    /// A round rod of this diameter.
    Round(Length),
    /// A flat bar of these sides.
    Flat(Length, Length),
}

impl Section {
    /// As the core of a knot.
    pub fn as_core(self) -> Core {
        match self {
            Self::Round(diameter) => Core::Rod(diameter),
            Self::Flat(a, b) => Core::Bar(a, b),
        }
    }
}

/// The hole of a bead and the leg it covers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bead {
    /// Diameter of the hole.
    pub bore: Length,
    /// Length along the hole.
    pub length: Length,
}

/// Fibre densities in g/cm3 at 65 % relative humidity.
///
/// Morton and Hearle, Physical Properties of Textile Fibres, Table 5.1.
pub const FIBRES: &[(&str, f64)] = &[
    ("cotton", 1.52),
    ("viscose", 1.49),
    ("wool", 1.31),
    ("silk", 1.34),
    ("nylon", 1.14),
    ("polyester", 1.39),
    ("acrylic", 1.19),
    ("polyethylene", 0.95),
    ("polypropylene", 0.91),
];

/// The part of a cord's round section that fibre fills. A rough estimate.
///
/// Worked out from published rope weights on the nominal diameter it is 0.65 to 0.66 for nylon (weights: Engineering
/// Toolbox, "Nylon Rope - Strength") and 0.60 to 0.64 for polypropylene; soft craft cord is no denser.
const FIBRE_SHARE: f64 = 0.62;

/// A rough estimate of a cord's linear density from its thickness and fibre, for want of a weighed one.
///
/// The density of the fibre is in g/cm3.
pub fn estimated_density(diameter: Length, fibre: f64) -> LinearDensity {
    let section_mm2 = std::f64::consts::PI / 4.0 * diameter.as_mm() * diameter.as_mm();
    // 1 mm2 x 1 m is 1 cm3.
    LinearDensity::g_per_m(section_mm2 * fibre * FIBRE_SHARE)
}

/// Everything of one kind that a piece needs.
pub type Many<T> = (Arc<T>, u32);
