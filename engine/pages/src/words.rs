//! How figures are worded: money, lengths, times, dates.

use std::fmt;
use std::sync::Arc;

use chrono::{Datelike, NaiveDate};
use fluent_bundle::{FluentArgs, FluentValue};
use reeve_costing::money::{Currency, decimal, to_decimals};
use reeve_costing::rates::Rates;
use reeve_measure::{Length, Mass, Remedied, Time};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use crate::money::MoneyWords;
use crate::phrases::{ENGLISH, Phrases, say};

/// The wording of one shop: its language and currency.
#[derive(Debug)]
pub struct Words {
    money: MoneyWords,
    currency: Currency,
    phrases: Arc<Phrases>,
}

/// A language or currency that has no wording.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordingError(String);

impl fmt::Display for WordingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for WordingError {}

impl Remedied for WordingError {
    fn remedy(&self) -> String {
        "change `language` or `currency` in shop.toml".to_owned()
    }
}

impl Words {
    /// The wording of a shop.
    ///
    /// # Errors
    /// A [`WordingError`] when the language tag or the currency has no wording.
    pub fn new(rates: &Rates) -> Result<Self, WordingError> {
        Self::of(&rates.maker.language, rates.currency)
    }

    /// The wording of a language and a currency.
    ///
    /// # Errors
    /// A [`WordingError`] when the language tag or the currency has no wording.
    pub fn of(language: &str, currency: Currency) -> Result<Self, WordingError> {
        let money = MoneyWords::new(language, currency.code()).map_err(|error| WordingError(error.to_string()))?;
        Ok(Self { money, currency, phrases: Phrases::of_language(language) })
    }

    /// The wording of pages on which no money stands: a shop's, or English where there is no shop or its rates have faults.
    ///
    /// # Errors
    /// A [`WordingError`] when the shop's language tag or currency has no wording.
    pub fn of_shop(rates: Option<&Rates>) -> Result<Self, WordingError> {
        // ISO 4217's code for what involves no currency.
        const NONE: &str = "XXX";
        let none = || Currency::from_code(NONE).ok_or_else(|| WordingError(format!("no currency is called {NONE}")));
        rates.map_or_else(|| Self::of(ENGLISH, none()?), Self::new)
    }

    /// The phrases of the language.
    pub fn phrases(&self) -> &Arc<Phrases> {
        &self.phrases
    }

    /// A phrase with what stands in it; for [`say!`]. One that can't be said shows its fault: a page is no place to stop.
    pub(crate) fn say(&self, id: &str, arguments: &[(&'static str, FluentValue<'_>)]) -> String {
        let arguments: FluentArgs<'_> = arguments.iter().cloned().collect();
        self.phrases.say(id, &arguments).unwrap_or_else(|fault| format!("[{fault}]"))
    }

    /// An amount that is rounded to the minor unit already.
    pub(crate) fn money(&self, amount: Decimal) -> String {
        self.money.write(amount, self.currency.minor_units())
    }

    /// An exact cost, rounded to the minor unit for the eye only.
    pub(crate) fn rounded(&self, amount: Decimal) -> String {
        self.money(self.currency.round_half_away(amount))
    }

    /// A price of one, with all its decimals.
    pub(crate) fn price(&self, amount: Decimal) -> String {
        self.money.write_price(amount, self.currency.minor_units())
    }

    /// How many there are of something.
    pub(crate) fn count(&self, count: u64) -> String {
        self.number(Decimal::from(count))
    }

    /// A plain number.
    pub(crate) fn number(&self, number: Decimal) -> String {
        self.money.write_number(number.normalize())
    }

    /// A physical number with so many decimals.
    pub(crate) fn decimal(&self, number: f64, decimals: u32) -> String {
        self.fixed(Decimal::from_f64(number).unwrap_or_default(), decimals)
    }

    /// A percentage with one decimal, for a column of them.
    pub(crate) fn percent_in_column(&self, percent: Decimal) -> String {
        say!(self, "percent", figure = self.fixed(percent, 1))
    }

    /// A number with so many decimals, for a column of them.
    pub(crate) fn fixed(&self, number: Decimal, decimals: u32) -> String {
        let mut exact = to_decimals(number, decimals);
        exact.rescale(decimals);
        self.money.write_number(exact)
    }

    /// A percentage that was agreed, with all its decimals.
    pub(crate) fn exact_percent(&self, percent: Decimal) -> String {
        say!(self, "percent", figure = self.number(percent))
    }

    /// A percentage, given in per cent.
    pub(crate) fn percent(&self, percent: Decimal) -> String {
        say!(self, "percent", figure = self.number(to_decimals(percent, 2)))
    }

    /// A date: in the words of the language, else year-month-day.
    pub(crate) fn date(&self, date: NaiveDate) -> String {
        if !self.phrases.has_own("date") {
            return date.format("%Y-%m-%d").to_string();
        }
        say!(self, "date", day = date.day(), month = date.month(), year = date.year().to_string())
    }

    /// A length: millimetres up to 2 cm, centimetres below a metre, metres from there.
    pub(crate) fn length(&self, length: Length) -> String {
        if length.as_mm() < 20.0 {
            say!(self, "millimetres", figure = self.trimmed(length.as_mm()))
        } else if length.as_mm() < 1000.0 {
            say!(self, "centimetres", figure = self.trimmed(length.as_cm()))
        } else {
            say!(self, "metres", figure = self.decimal(length.as_m(), 2))
        }
    }

    /// A figure that is counted or chosen, with two decimals at most.
    pub(crate) fn number_of(&self, number: f64) -> String {
        self.number(decimal(number, 2))
    }

    /// A figure with all the decimals that it has.
    pub(crate) fn figure(&self, figure: f64) -> String {
        self.number(Decimal::from_f64(figure).unwrap_or_default())
    }

    /// A length in millimetres, with so many decimals.
    pub(crate) fn millimetres(&self, length: Length, decimals: u32) -> String {
        say!(self, "millimetres", figure = self.decimal(length.as_mm(), decimals))
    }

    /// The thickness of a cord or rod, in millimetres, with all the decimals that it has.
    pub(crate) fn thickness(&self, length: Length) -> String {
        say!(self, "millimetres", figure = self.figure(length.as_mm()))
    }

    /// A number with one decimal at most.
    fn trimmed(&self, number: f64) -> String {
        self.number(decimal(number, 1))
    }

    /// A length counted in metres, with the decimals it was given.
    pub(crate) fn metres(&self, metres: Decimal) -> String {
        say!(self, "metres", figure = self.number(metres))
    }

    /// A mass.
    pub(crate) fn mass(&self, mass: Mass) -> String {
        if mass.as_g() < 1000.0 {
            say!(self, "grams", figure = self.decimal(mass.as_g(), 0))
        } else {
            say!(self, "kilograms", figure = self.decimal(mass.as_g() / 1000.0, 2))
        }
    }

    /// A working time.
    pub(crate) fn time(&self, time: Time) -> String {
        let minutes = time.as_minutes().round();
        if time.as_s() < 60.0 {
            say!(self, "seconds", figure = self.decimal(time.as_s(), 0))
        } else if minutes < 60.0 {
            say!(self, "minutes", figure = self.decimal(minutes, 0))
        } else {
            let hours = (minutes / 60.0).floor();
            let rest = minutes - hours * 60.0;
            say!(self, "hours-minutes", hours = self.decimal(hours, 0), minutes = format!("{rest:02.0}"))
        }
    }

    /// Bench hours.
    pub(crate) fn hours(&self, hours: Decimal) -> String {
        say!(self, "hours", figure = self.number(to_decimals(hours, 2)))
    }
}
