//! Which of a design: as it stands, in a size that it names, or with measures of a client's own.

use std::fmt;

use reeve_reading::Figure;
use rust_decimal::Decimal;

/// A design in a size, or with measures in place of its own.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Choice {
    /// One of the design's sizes.
    pub size: Option<String>,
    /// Measures, each with what it is in place of the size's.
    pub measures: Vec<(String, Figure)>,
}

impl Choice {
    /// Whether it is the design as it stands.
    pub fn is_usual(&self) -> bool {
        self.size.is_none() && self.measures.is_empty()
    }

    /// What stands in tables: the size by its own name, measures in words; nothing for a design as it stands.
    pub fn word(&self) -> Option<String> {
        let measures = self.measures.iter().map(|(name, figure)| format!("{name} {figure}"));
        let words: Vec<String> = self.size.iter().cloned().chain(measures).collect();
        (!words.is_empty()).then(|| words.join(", "))
    }
}

/// What is asked of a commission on top of what its file says.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Wish {
    /// Stands in place of what its items say, in every item whose design has such a size or measure.
    pub choice: Choice,
    /// How sure the hours of its prices are, in per cent.
    pub confidence: Option<Decimal>,
}

/// In words that follow the design's name: `long`, `long, drop 120 cm`; nothing for a design as it stands.
impl fmt::Display for Choice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let measures = self.measures.iter().map(|(name, figure)| format!("{} {figure}", name.replace('_', " ")));
        let words: Vec<String> = self.size.iter().map(|size| size.replace('-', " ")).chain(measures).collect();
        f.write_str(&words.join(", "))
    }
}

/// What may be chosen of a design.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Choices {
    /// Its measures, each with what it usually is.
    pub measures: Vec<(String, Figure)>,
    /// The names of its sizes, in order.
    pub sizes: Vec<String>,
}

impl Choices {
    /// What may be otherwise, and what it usually is: `drop 95 cm, knots 12`.
    pub fn measures_words(&self) -> String {
        let words: Vec<String> = self.measures.iter().map(|(name, figure)| format!("{name} {figure}")).collect();
        words.join(", ")
    }
}

/// What the market says of a design: the maker's own figures.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Market {
    /// What buyers pay for one, as prices are shown.
    pub price: Option<Decimal>,
    /// The most that find a buyer in a week.
    pub weekly: Option<u32>,
}
