//! What a piece is for, and the cautions that go with it.
//!
//! One row a purpose. Cautions name the rules that may apply and state no limit as met; they defer to the
//! rules of the place and to licensed persons.

/// What a piece is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// Holds a plant pot.
    PlantHanger,
    /// Hangs flat on a wall.
    WallPanel,
    /// Hangs free and turns.
    Mobile,
    /// Shades a lamp.
    Lampshade,
    /// Hangs in a doorway or window.
    Curtain,
    /// Holds fruit, towels or other light things.
    Carrier,
    /// None of these.
    Decoration,
}

/// Every purpose with its word.
pub const PURPOSES: &[(&str, Purpose)] = &[
    ("plant-hanger", Purpose::PlantHanger),
    ("wall-panel", Purpose::WallPanel),
    ("mobile", Purpose::Mobile),
    ("lampshade", Purpose::Lampshade),
    ("curtain", Purpose::Curtain),
    ("carrier", Purpose::Carrier),
    ("decoration", Purpose::Decoration),
];

/// Sources disagree on what a knot leaves of a cord's strength; Jacobson, Outdoor Knots,
/// p. 28, quotes about half. So a warning, never a load rating.
const HANGING: &str = "Knots weaken a cord, often to about half of its strength, and sources disagree on how much: no load \
    is rated here. The hook, its fixing and the ceiling or wall are the owner's to have checked; ask a licensed person \
    where a fixing carries weight, and follow your local rules.";

const CORDS: &str = "Cords within reach of small children can strangle. Keep loops and free cords short and out of reach. \
    Rules for toys and blind cords differ by country and edition (EN 71-1, ASTM F963, EN 13120, 16 CFR 1260): follow those \
    of your place.";

/// U.S. Consumer Product Safety Commission, document 5024.
const COT: &str = "Not a toy. Anything strung across or above a cot comes down when the baby begins to push up on hands \
    and knees or at 5 months, whichever comes first (U.S. Consumer Product Safety Commission, document 5024).";

const LAMP: &str = "Cord can scorch and burn. Keep it clear of the bulb, use a cool, low-power lamp, and have wiring done \
    and checked by a licensed electrician under your local rules.";

const DOORWAY: &str = "Cords in a doorway or window can catch and entangle. Keep the ends short where small children or \
    animals pass.";

impl Purpose {
    /// The cautions a quote shows for a piece of this purpose.
    pub fn cautions(self) -> &'static [&'static str] {
        match self {
            Self::PlantHanger | Self::Carrier => &[HANGING, CORDS],
            Self::WallPanel | Self::Decoration => &[CORDS],
            Self::Mobile => &[COT, CORDS, HANGING],
            Self::Lampshade => &[LAMP, HANGING, CORDS],
            Self::Curtain => &[DOORWAY, CORDS],
        }
    }
}

/// On work made to a client's own measure. Directive 2011/83/EU, article 16(c).
pub const MADE_TO_ORDER: &str = "Made to your specification. In the European Union the 14-day right of withdrawal does \
    not apply to goods made to a consumer's specifications (Directive 2011/83/EU, article 16(c)); elsewhere, and in \
    doubt, the law of your place decides.";
