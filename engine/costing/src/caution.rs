//! What a piece is for, and the cautions that go with it.
//!
//! One row a purpose. The pages word a caution: they name the rules that may apply and state no limit as met, and defer to
//! the rules of the place and to licensed persons.

use serde::{Deserialize, Serialize};

/// What a piece is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
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
    #[default]
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

/// What to take care of.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Caution {
    /// Weight that hangs. Sources disagree on what a knot leaves of a cord's strength; Jacobson, Outdoor Knots, p. 28,
    /// quotes about half. So a warning, never a load rating.
    HangingWeight,
    /// Cords within reach of small children.
    CordsInReach,
    /// Something strung above a cot. U.S. Consumer Product Safety Commission, document 5024.
    AboveCot,
    /// Cord about a lamp.
    NearLamp,
    /// Cords in a doorway or window.
    InDoorway,
    /// What a knot says of itself.
    OfKnot {
        /// In the words of the knot's author.
        text: String,
    },
}

impl Purpose {
    /// The cautions a quote shows for a piece of this purpose.
    pub fn cautions(self) -> &'static [Caution] {
        use Caution::{AboveCot, CordsInReach, HangingWeight, InDoorway, NearLamp};
        match self {
            Self::PlantHanger | Self::Carrier => &[HangingWeight, CordsInReach],
            Self::WallPanel | Self::Decoration => &[CordsInReach],
            Self::Mobile => &[AboveCot, CordsInReach, HangingWeight],
            Self::Lampshade => &[NearLamp, HangingWeight, CordsInReach],
            Self::Curtain => &[InDoorway, CordsInReach],
        }
    }
}
