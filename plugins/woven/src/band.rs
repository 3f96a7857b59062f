//! The plain weave of a Turk's head, rolled out flat: legs that run to and fro between two edges.

use std::f64::consts::PI;

use crate::weave::{Mesh, closest, over_under};

/// The sine of the steepest that legs lie against each other, 60 degrees to the girth: with one pass the bights, two cords
/// wide each, then stand side by side along the edge without a gap.
pub const STEEPEST: f64 = 0.866_025_403_784_438_6;

/// A Turk's head round a rod: what is fixed before one knows how wide it lies. Lengths in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Cords that make up the plait, 2 or more.
    pub leads: f64,
    /// Loops on each edge, 2 or more.
    pub bights: f64,
    /// Cords side by side on each lead, 1 or more.
    pub passes: f64,
    /// Thickness of the cord.
    pub cord: f64,
    /// How far the middles of two cords stand apart where they cross.
    pub rise: f64,
    /// Once round, in the middle between the two layers of cord.
    pub girth: f64,
}

impl Band {
    /// The band of `(leads, bights, passes)` round a rod; `give` is the share of the cord's thickness that crossing cords
    /// sink into each other. The rod gives nothing.
    pub fn new((leads, bights, passes): (f64, f64, f64), cord: f64, give: f64, rod: f64) -> Self {
        let rise = cord * (1.0 - give);
        Self { leads, bights, passes, cord, rise, girth: PI * (rod + cord + rise) }
    }

    /// From the middle of a ribbon to the next when all lie close.
    pub fn tight_spacing(&self) -> f64 {
        self.flat() + closest(self.rise)
    }

    /// The sine of the angle between legs and girth when all lie close; above one they find no room at all.
    pub fn tight_sine(&self) -> f64 {
        self.tight_spacing() * self.bights / self.girth
    }

    /// The most bights that find room, perhaps fewer than one.
    pub fn most_bights(&self) -> f64 {
        (STEEPEST * self.girth / self.tight_spacing()).floor()
    }

    /// How much of the rod is covered when legs lie at an angle to the girth.
    ///
    /// Between sharp corners the band is as wide as a leg climbs; a rounded bight stays inside its corner, and half a ribbon
    /// lies outside the middle line on each edge.
    pub fn covered(&self, angle: f64) -> f64 {
        let rounding = 2.0 * self.bend() * (1.0 / libm::cos(angle) - 1.0);
        self.reach() * libm::tan(angle) - rounding + self.passes * self.cord
    }

    /// The angle between legs and girth at which so much of the rod is covered: [`Self::covered`] turned round.
    ///
    /// With reach `a`, `b` twice the bend and `m` the rest, `a tan x - b sec x = m`, so `a sin x - m cos x = b`.
    pub fn angle_for(&self, length: f64) -> f64 {
        let twice = 2.0 * self.bend();
        let climb = length - self.passes * self.cord - twice;
        let reach = self.reach();
        let whole = (reach * reach + climb * climb).sqrt();
        libm::atan2(climb, reach) + libm::asin(twice / whole)
    }

    /// The cord of the whole knot, without ends to work with, when legs lie at an angle to the girth.
    pub fn cord_at(&self, angle: f64) -> f64 {
        let mesh = Mesh {
            spacing: self.girth / self.bights * libm::sin(angle),
            flat: self.flat(),
            rise: self.rise,
            crossing: 2.0 * angle,
        };
        let leg = (self.leads - 2.0) * mesh.length() + self.round_a_bight(angle);
        2.0 * self.bights * self.passes * leg
    }

    /// From the last crossing before a bight, round it, to the first one after, along the middle of the ribbon.
    fn round_a_bight(&self, angle: f64) -> f64 {
        let corner_to_crossing = self.girth / (2.0 * self.bights) / libm::cos(angle);
        let flat_way = 2.0 * corner_to_crossing - 2.0 * self.bend() * (libm::tan(angle) - angle);
        let between = (flat_way - self.flat()).max(closest(self.rise));
        flat_way + over_under(between, self.rise) - between
    }

    /// How far round the rod one leg runs from edge to edge.
    fn reach(&self) -> f64 {
        self.girth * self.leads / (2.0 * self.bights)
    }

    /// The width of a ribbon less one cord.
    fn flat(&self) -> f64 {
        (self.passes - 1.0) * self.cord
    }

    /// The radius of the middle of the ribbon round a bight: the innermost cord turns about its own edge.
    fn bend(&self) -> f64 {
        self.passes * self.cord / 2.0
    }
}
