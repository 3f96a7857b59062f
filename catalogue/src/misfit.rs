//! Why a knot can't be tied so, in words.

use std::fmt;

/// Why a knot can't be tied so. The message says what it needs and what it was given.
#[derive(Debug, Clone, PartialEq)]
pub enum Misfit {
    /// The number of core legs is out of its range.
    CoreLegs {
        /// The knot's title.
        knot: String,
        /// What was given.
        given: u32,
        /// Fewest and most.
        range: (u32, u32),
    },
    /// It can't be tied on a fitting.
    NotOnFitting(String),
    /// It is tied on a fitting and was given none.
    NeedsFitting(String),
    /// The number of working legs is out of its range.
    WorkingLegs {
        /// The knot's title.
        knot: String,
        /// What was given.
        given: u32,
        /// Fewest and most.
        range: (u32, u32),
    },
    /// Its path has not been tightened, or has changed since.
    NotTightened {
        /// The knot's title.
        knot: String,
        /// Its name.
        name: String,
    },
    /// The core is thicker than its table speaks for.
    BeyondTable {
        /// The knot's title.
        knot: String,
        /// As a rod of the same girth, in cord diameters.
        given: f64,
    },
    /// A knot that it is made of is not in the catalogue.
    MissingPart {
        /// The knot's title.
        knot: String,
        /// What it is made of.
        part: String,
    },
    /// A parameter it does not have.
    UnknownParameter {
        /// The knot's title.
        knot: String,
        /// The name given.
        name: String,
        /// The names it has.
        known: Vec<String>,
    },
    /// A parameter out of its range.
    ParameterRange {
        /// The parameter.
        name: String,
        /// What was given.
        given: f64,
        /// Lowest and highest.
        range: (f64, f64),
    },
}

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::CoreLegs { knot, given, range: (0, 0) } => {
                write!(f, "{} is tied without core legs, and was given {given}", with_article(knot))
            }
            Self::CoreLegs { knot, given, range } => {
                write!(
                    f,
                    "{} is tied round {} in each column, and was given {given}",
                    with_article(knot),
                    legs(*range, "core leg")
                )
            }
            Self::NotOnFitting(knot) => write!(f, "{} can't be tied on a fitting", with_article(knot)),
            Self::NeedsFitting(knot) => write!(f, "{} needs a fitting to be tied on", with_article(knot)),
            Self::WorkingLegs { knot, given, range } => {
                write!(
                    f,
                    "{} is tied with {} in each column, and was given {given}",
                    with_article(knot),
                    legs(*range, "working leg")
                )
            }
            Self::NotTightened { knot, name } => write!(
                f,
                "{} is drawn but not tightened yet, so nobody knows what it takes; `reeve knots tighten {name} --keep` finds out",
                with_article(knot)
            ),
            Self::BeyondTable { knot, given } => write!(
                f,
                "{} has not been tightened round a core {given:.1} cords thick; take a thinner core or a thicker cord",
                with_article(knot)
            ),
            Self::MissingPart { knot, part } => {
                write!(f, "{} is made of `{part}`, and no knot of that name can be part of it", with_article(knot))
            }
            Self::UnknownParameter { knot, name, known } if known.is_empty() => {
                write!(f, "{} has no parameters, and was given `{name}`", with_article(knot))
            }
            Self::UnknownParameter { knot, name, known } => {
                write!(f, "{} has no parameter `{name}`; it has {}", with_article(knot), known.join(", "))
            }
            Self::ParameterRange { name, given, range } => {
                write!(f, "`{name}` must be from {} to {}, and was given {given}", range.0, range.1)
            }
        }
    }
}

/// A title with "a" or "an" before it.
pub fn with_article(title: &str) -> String {
    let article = if title.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    format!("{article} {title}")
}

fn legs((least, most): (u32, u32), what: &str) -> String {
    if least == most {
        format!("{least} {what}{}", if least == 1 { "" } else { "s" })
    } else {
        format!("{least} to {most} {what}s")
    }
}
