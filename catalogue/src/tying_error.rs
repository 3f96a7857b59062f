//! Why a knot can't be tied so, in words.

use std::fmt;

use reeve_measure::{Length, Remedied};

use crate::unit::ParameterUnit;

/// Why a knot can't be tied so. The message says what it needs and what it was given.
#[derive(Debug, Clone, PartialEq)]
pub enum TyingError {
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
        /// What all three are measured in.
        unit: ParameterUnit,
    },
    /// A parameter that is counted was given a fraction.
    ParameterNotWhole {
        /// The parameter.
        name: String,
        /// What was given.
        given: f64,
    },
    /// A parameter that is a length was given a bare number.
    ParameterUnit {
        /// The parameter.
        name: String,
        /// What was given.
        given: f64,
    },
    /// A parameter that is no length was given one.
    ParameterNoLength {
        /// The parameter.
        name: String,
        /// What was given.
        given: Length,
        /// What it is measured in.
        unit: ParameterUnit,
    },
    /// The library that works the knot out says that it can't be tied so.
    Refused {
        /// The knot's title.
        knot: String,
        /// The parameter to change, if it is one.
        parameter: Option<String>,
        /// Why, in the library's words.
        words: String,
    },
    /// The library that works the knot out can't tell.
    Library {
        /// The knot's title.
        knot: String,
        /// The library's name.
        library: String,
        /// What happened, to follow the library's name.
        words: String,
        /// What the maker can do.
        remedy: String,
    },
}

impl TyingError {
    /// What to do about a value of a parameter; nothing for what is not about one.
    pub fn parameter_help(&self) -> Option<String> {
        match self {
            Self::UnknownParameter { .. } => Some("take it out, or write one that the knot has".to_owned()),
            Self::ParameterRange { .. } => Some("take a number within that range".to_owned()),
            Self::ParameterNotWhole { .. } => Some("take the next whole number".to_owned()),
            Self::ParameterUnit { given, .. } => Some(format!("write \"{given} mm\", or the unit you mean")),
            Self::ParameterNoLength { .. } => Some("write a number without a unit".to_owned()),
            Self::Refused { parameter: Some(name), .. } => Some(format!("change `{name}`")),
            _ => None,
        }
    }
}

impl Remedied for TyingError {
    fn remedy(&self) -> String {
        if let Some(help) = self.parameter_help() {
            return help;
        }
        match self {
            Self::CoreLegs { range: (0, 0), .. } | Self::NeedsFitting(_) => "tie it on a fitting".to_owned(),
            Self::CoreLegs { range, .. } => format!("tie it round {}", legs(*range, "core leg")),
            Self::NotOnFitting(_) => "tie it round core legs".to_owned(),
            Self::WorkingLegs { range, .. } => format!("tie it with {}", legs(*range, "working leg")),
            Self::NotTightened { name, .. } => format!("`reeve knots tighten {name} --keep`; it takes some seconds"),
            Self::BeyondTable { .. } => "take a thinner core or a thicker cord".to_owned(),
            Self::MissingPart { .. } => "mend the knot's file".to_owned(),
            Self::Refused { .. } => "tie it with other legs, or on another core".to_owned(),
            Self::Library { remedy, .. } => remedy.clone(),
            // Told by `parameter_help`.
            Self::UnknownParameter { .. }
            | Self::ParameterRange { .. }
            | Self::ParameterNotWhole { .. }
            | Self::ParameterUnit { .. }
            | Self::ParameterNoLength { .. } => String::new(),
        }
    }
}

impl fmt::Display for TyingError {
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
            Self::NotTightened { knot, .. } => {
                write!(f, "{} is drawn but not tightened yet, so nobody knows what it takes", with_article(knot))
            }
            Self::BeyondTable { knot, given } => {
                write!(f, "{} has not been tightened round a core {given:.1} cords thick", with_article(knot))
            }
            Self::MissingPart { knot, part } => {
                write!(f, "{} is made of `{part}`, and no knot of that name can be part of it", with_article(knot))
            }
            Self::UnknownParameter { knot, name, known } if known.is_empty() => {
                write!(f, "{} has no parameters, and was given `{name}`", with_article(knot))
            }
            Self::UnknownParameter { knot, name, known } => {
                write!(f, "{} has no parameter `{name}`; it has {}", with_article(knot), known.join(", "))
            }
            Self::ParameterRange { name, given, range: (least, most), unit } => {
                let unit = unit.behind();
                write!(f, "`{name}` must be from {least} to {most}{unit}, and was given {given}{unit}")
            }
            Self::ParameterNotWhole { name, given } => {
                write!(f, "`{name}` must be a whole number, and was given {given}")
            }
            Self::ParameterUnit { name, given } => {
                write!(f, "`{name}` is a length, and was given {given} without a unit")
            }
            Self::ParameterNoLength { name, given, unit } => {
                let what = match unit {
                    ParameterUnit::Degrees => "an angle in degrees",
                    ParameterUnit::Diameters => "a number of cord diameters",
                    ParameterUnit::Number | ParameterUnit::Length => "a plain number",
                };
                write!(f, "`{name}` is {what}, and was given a length of {} mm", given.as_mm())
            }
            Self::Refused { knot, words, .. } => write!(f, "{} can't be tied so: {words}", with_article(knot)),
            Self::Library { knot, library, words, .. } => {
                write!(f, "nobody can say what {} takes: its library `{library}` {words}", with_article(knot))
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

impl std::error::Error for TyingError {}
