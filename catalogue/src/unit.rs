//! What a parameter of a knot is measured in.

/// What a parameter is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ParameterUnit {
    /// A plain number.
    Number,
    /// A length; its value is in millimetres.
    Length,
    /// An angle, in degrees.
    Degrees,
    /// A length, in diameters of the cord that ties.
    Diameters,
}

impl ParameterUnit {
    /// Every unit with its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("number", Self::Number), ("mm", Self::Length), ("degrees", Self::Degrees), ("diameters", Self::Diameters)];

    /// The word it is written as.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, unit)| *unit == self).map_or("", |(word, _)| word)
    }

    /// What is written behind a value.
    pub fn behind(self) -> &'static str {
        match self {
            Self::Number => "",
            Self::Length => " mm",
            Self::Degrees => " degrees",
            Self::Diameters => " diameters",
        }
    }
}
