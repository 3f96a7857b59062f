//! Amounts of money worded the way a language writes them.
//!
//! The wording (where the symbol stands, what separates the thousands, how a negative
//! amount looks) comes from the Unicode locale data compiled into the program. The digits
//! come from the caller alone: nothing in this module rounds.

use std::fmt;

use fixed_decimal::Decimal as Digits;
use icu_decimal::DecimalFormatter;
use icu_decimal::options::DecimalFormatterOptions;
use icu_decimal::provider::{
    Baked as NumberData, DecimalDigitsV1, DecimalSymbolStrsBuilder, DecimalSymbols, DecimalSymbolsV1,
};
use icu_experimental::dimension::currency::CurrencyType;
use icu_experimental::dimension::currency::formatter::{CurrencyFormatter, CurrencyFormatterPreferences};
use icu_experimental::dimension::currency::options::CurrencyFormatterOptions;
use icu_experimental::dimension::provider::currency::essentials::CurrencyEssentialsV1;
use icu_experimental::dimension::provider::currency::fractions::{CurrencyFractionsV1, FractionInfo};
use icu_experimental::dimension::provider::currency::no_currency::CurrencyPatternsNoCurrencyV1;
use icu_experimental::dimension::provider::currency::symbols::{CurrencyDecimalSymbolsV1, CurrencySymbolsV1};
use icu_experimental::provider::Baked as CurrencyData;
use icu_locale_core::Locale;
use icu_provider::prelude::{DataError, DataLocale, DataPayload, DataProvider, DataRequest, DataResponse};
use rust_decimal::Decimal;

/// Words amounts of one currency in one language.
///
/// Building one costs some tens of microseconds; wording an amount costs about one.
#[derive(Debug)]
pub(crate) struct MoneyWords {
    /// One formatter for each count of decimals, because a formatter prints a fixed count.
    by_decimals: Vec<CurrencyFormatter<DecimalFormatter>>,
    numbers: NumberWords,
}

/// Words plain numbers in one language.
#[derive(Debug)]
pub(crate) struct NumberWords(DecimalFormatter);

impl NumberWords {
    /// Looks up how `language` writes numbers.
    pub(crate) fn new(language: &str) -> Result<Self, MoneyError> {
        let locale = Locale::try_from_str(language).map_err(|_| MoneyError::Language(language.to_owned()))?;
        DecimalFormatter::try_new((&locale).into(), DecimalFormatterOptions::default())
            .map(Self)
            .map_err(|fault| MoneyError::data(language, fault))
    }

    /// Writes a number with the language's separators and the decimals it was given.
    pub(crate) fn write(&self, number: Decimal) -> String {
        self.0.format(&digits(number, number.scale())).to_string()
    }
}

impl MoneyWords {
    /// Looks up how `language` (a tag such as `de` or `fr-CH`) words amounts of `currency`
    /// (a three-letter ISO 4217 code).
    ///
    /// A well-formed tag of a language that the locale data do not list is worded neutrally,
    /// with the symbol in front, because the data treat a language that is worded that way
    /// and one that is unknown alike.
    pub(crate) fn new(language: &str, currency: &str) -> Result<Self, MoneyError> {
        let locale = Locale::try_from_str(language).map_err(|_| MoneyError::Language(language.to_owned()))?;
        let code = CurrencyType::try_from_str(currency).map_err(|_| MoneyError::Currency(currency.to_owned()))?;
        let numbers = NumberWords::new(language)?;
        let by_decimals = formatters(&locale, code).map_err(|fault| MoneyError::data(language, fault))?;
        Ok(Self { by_decimals, numbers })
    }

    /// Words an amount with exactly `minor_units` decimals.
    ///
    /// The caller has rounded already. Should an amount carry more decimals than that, all
    /// of them are shown: a page that looks odd is better than one that hides a remainder.
    pub(crate) fn write(&self, amount: Decimal, minor_units: u32) -> String {
        self.spell(amount, minor_units)
    }

    /// Words a price for one unit of something, with every decimal it has and never fewer
    /// than `minor_units`.
    ///
    /// Prices by the metre or the gram run finer than coins do. Zeros beyond `minor_units`
    /// say nothing and are left off.
    pub(crate) fn write_price(&self, price: Decimal, minor_units: u32) -> String {
        self.spell(price, minor_units)
    }

    /// Writes a plain number with the language's separators and the decimals it was given.
    pub(crate) fn write_number(&self, number: Decimal) -> String {
        self.numbers.write(number)
    }

    fn spell(&self, amount: Decimal, minor_units: u32) -> String {
        let amount = amount.normalize();
        let decimals = amount.scale().max(minor_units).min(Decimal::MAX_SCALE);
        // The list has an entry for every scale a decimal can have.
        let formatter = &self.by_decimals[decimals as usize];
        formatter.format_fixed_decimal(&digits(amount, decimals)).to_string()
    }
}

/// Replaces the spaces and minus signs of careful typesetting with the ones on a keyboard.
///
/// Plain text pages are searched, pasted into tables and counted in columns, where a
/// no-break space or a typographic minus only surprises.
pub(crate) fn plain(text: &str) -> String {
    text.chars().map(plain_char).collect()
}

const fn plain_char(found: char) -> char {
    match found {
        '\u{a0}' | '\u{202f}' => ' ',
        '\u{2212}' => '-',
        other => other,
    }
}

/// Why amounts cannot be worded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum MoneyError {
    /// The language is not a well-formed tag.
    Language(String),
    /// The currency is not a three-letter code.
    Currency(String),
    /// The locale data for the language could not be read.
    Data {
        /// The language asked for.
        language: String,
        /// What the data reader said.
        reason: String,
    },
}

impl MoneyError {
    fn data(language: &str, fault: DataError) -> Self {
        Self::Data { language: language.to_owned(), reason: fault.to_string() }
    }
}

impl fmt::Display for MoneyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Language(tag) => write!(f, "`{tag}` is not a language tag such as `en-GB`"),
            Self::Currency(code) => {
                write!(f, "`{code}` is not a three-letter currency code such as `EUR`")
            }
            Self::Data { language, reason } => {
                write!(f, "the wording for language `{language}` cannot be read: {reason}")
            }
        }
    }
}

impl std::error::Error for MoneyError {}

/// Builds a formatter for every count of decimals that a decimal number can have.
fn formatters(locale: &Locale, code: CurrencyType) -> Result<Vec<CurrencyFormatter<DecimalFormatter>>, DataError> {
    let preferences = CurrencyFormatterPreferences::from(locale);
    (0..=Decimal::MAX_SCALE)
        .map(|decimals| {
            let data = ExactData { decimals: u8::try_from(decimals).unwrap_or(u8::MAX) };
            CurrencyFormatter::try_new_symbol_unstable(&data, preferences, code, CurrencyFormatterOptions::default())
        })
        .collect()
}

/// Turns a decimal into the digit string that the formatters print.
fn digits(number: Decimal, decimals: u32) -> Digits {
    let mut digits = Digits::from(number.mantissa());
    digits.absolute.multiply_pow10(-position(number.scale()));
    digits.absolute.pad_end(-position(decimals));
    digits
}

fn position(decimals: u32) -> i16 {
    // A scale never exceeds 28, so the conversion cannot fail.
    i16::try_from(decimals).unwrap_or(i16::MAX)
}

/// The compiled locale data, changed in the two places where it would alter an amount.
///
/// First, the currency formatter rounds to the decimals its data gives for the currency.
/// Here the data gives the decimals of the amount in hand, so there is nothing to round.
/// Second, the formatter does not yet know that two countries separate the digits of money
/// differently from those of other numbers.
struct ExactData {
    decimals: u8,
}

impl DataProvider<CurrencyFractionsV1> for ExactData {
    fn load(&self, request: DataRequest) -> Result<DataResponse<CurrencyFractionsV1>, DataError> {
        let mut answer: DataResponse<CurrencyFractionsV1> = CurrencyData.load(request)?;
        let exact = FractionInfo { digits: self.decimals, ..FractionInfo::default() };
        answer.payload.with_mut(move |table| {
            // With no currency listed, every currency gets the default.
            table.fractions.clear();
            table.default = exact;
        });
        Ok(answer)
    }
}

impl DataProvider<DecimalSymbolsV1> for ExactData {
    fn load(&self, request: DataRequest) -> Result<DataResponse<DecimalSymbolsV1>, DataError> {
        let mut answer: DataResponse<DecimalSymbolsV1> = NumberData.load(request)?;
        if let Some(separators) = money_separators(request.id.locale) {
            answer.payload = DataPayload::from_owned(separators.put_into(answer.payload.get()));
        }
        Ok(answer)
    }
}

/// Hands a request on to the compiled data, quietly: a currency without a sign of its own is worded by its code, which is
/// nothing to report.
macro_rules! unchanged {
    ($($marker:ty => $data:expr),+ $(,)?) => {$(
        impl DataProvider<$marker> for ExactData {
            fn load(&self, mut request: DataRequest) -> Result<DataResponse<$marker>, DataError> {
                request.metadata.silent = true;
                $data.load(request)
            }
        }
    )+};
}

unchanged! {
    CurrencyEssentialsV1 => CurrencyData,
    CurrencySymbolsV1 => CurrencyData,
    CurrencyPatternsNoCurrencyV1 => CurrencyData,
    CurrencyDecimalSymbolsV1 => CurrencyData,
    DecimalDigitsV1 => NumberData,
}

/// Separators that a country uses in money only.
#[derive(Debug, Clone, Copy)]
struct MoneySeparators {
    decimal: Option<&'static str>,
    group: Option<&'static str>,
}

/// Finds the separators that the locale data lists as `currencyDecimal` and
/// `currencyGroup`. No other locale has either.
fn money_separators(locale: &DataLocale) -> Option<MoneySeparators> {
    let country = locale.region?;
    match (locale.language.as_str(), country.as_str()) {
        ("fr", "CH") => Some(MoneySeparators { decimal: Some("."), group: None }),
        ("de", "AT") => Some(MoneySeparators { decimal: None, group: Some(".") }),
        _ => None,
    }
}

impl MoneySeparators {
    fn put_into(self, usual: &DecimalSymbols<'_>) -> DecimalSymbols<'static> {
        let mut strings = DecimalSymbolStrsBuilder::from(&*usual.strings);
        if let Some(decimal) = self.decimal {
            strings.decimal_separator = decimal.into();
        }
        if let Some(group) = self.group {
            strings.grouping_separator = group.into();
        }
        DecimalSymbols { strings: strings.build(), grouping_sizes: usual.grouping_sizes }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use super::*;

    fn amount(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    /// Words the amounts and shows the invisible spaces as `~` (no-break) and `_` (narrow).
    fn worded(language: &str, currency: &str, minor_units: u32, amounts: [&str; 3]) -> [String; 3] {
        let words = MoneyWords::new(language, currency).unwrap();
        amounts.map(|text| visible(&words.write(amount(text), minor_units)))
    }

    fn visible(text: &str) -> String {
        text.replace('\u{a0}', "~").replace('\u{202f}', "_")
    }

    #[test]
    fn amounts_follow_the_language() {
        let cents = ["1234567.89", "-1234.50", "0"];
        assert_eq!(worded("en", "EUR", 2, cents), ["€1,234,567.89", "-€1,234.50", "€0.00"]);
        assert_eq!(worded("en-GB", "GBP", 2, cents), ["£1,234,567.89", "-£1,234.50", "£0.00"]);
        assert_eq!(worded("de", "EUR", 2, cents), ["1.234.567,89~€", "-1.234,50~€", "0,00~€"]);
        let swiss = ["1'234'567.89~CHF", "-1'234.50~CHF", "0.00~CHF"];
        assert_eq!(worded("fr-CH", "CHF", 2, cents), swiss);
    }

    #[test]
    fn currencies_with_other_minor_units() {
        let yen = worded("ja", "JPY", 0, ["1234567", "-1234", "0"]);
        assert_eq!(yen, ["￥1,234,567", "-￥1,234", "￥0"]);
        let dinar = worded("en", "KWD", 3, ["1234567.891", "-1234.5", "0"]);
        assert_eq!(dinar, ["KWD~1,234,567.891", "-KWD~1,234.500", "KWD~0.000"]);
    }

    #[test]
    fn signs_stand_where_the_language_puts_them() {
        let amounts = ["12.50", "-12.50", "-1234"];
        assert_eq!(worded("de-CH", "CHF", 2, amounts), ["CHF~12.50", "CHF-12.50", "CHF-1'234.00"]);
        assert_eq!(worded("nl", "EUR", 2, amounts), ["€~12,50", "€~-12,50", "€~-1.234,00"]);
        let minus = ["12,50~kr", "\u{2212}12,50~kr", "\u{2212}1~234,00~kr"];
        assert_eq!(worded("sv", "SEK", 2, amounts), minus);
    }

    #[test]
    fn money_separators_differ_from_those_of_numbers() {
        let austrian = MoneyWords::new("de-AT", "EUR").unwrap();
        assert_eq!(visible(&austrian.write(amount("1234567.5"), 2)), "€~1.234.567,50");
        assert_eq!(visible(&austrian.write_number(amount("1234567.5"))), "1~234~567,5");
        let swiss = MoneyWords::new("fr-CH", "CHF").unwrap();
        assert_eq!(swiss.write_number(amount("1234.5")), "1'234,5");
    }

    #[test]
    fn prices_keep_every_decimal() {
        let words = MoneyWords::new("en", "EUR").unwrap();
        let prices = ["0.00125", "0.12500", "3", "1234.56789", "-0.005", "0.125"];
        let expected = ["€0.00125", "€0.125", "€3.00", "€1,234.56789", "-€0.005", "€0.125"];
        assert_eq!(prices.map(|text| words.write_price(amount(text), 2)), expected);
    }

    #[test]
    fn nothing_is_rounded() {
        // The data on their own would round francs to cents and yen and forints to units.
        let francs = MoneyWords::new("de-CH", "CHF").unwrap();
        assert_eq!(visible(&francs.write(amount("12.345678"), 2)), "CHF~12.345678");
        let yen = MoneyWords::new("ja", "JPY").unwrap();
        assert_eq!(yen.write_price(amount("1.005"), 0), "￥1.005");
        let forints = MoneyWords::new("hu", "HUF").unwrap();
        assert_eq!(visible(&forints.write(amount("12345.5"), 2)), "12~345,50~Ft");
    }

    #[test]
    fn the_longest_decimals_are_printed_whole() {
        let words = MoneyWords::new("en", "EUR").unwrap();
        let fine = "0.0000000000000000000000000001";
        assert_eq!(words.write(amount(fine), 2), format!("€{fine}"));
        let great = "€79,228,162,514,264,337,593,543,950,335.00";
        assert_eq!(words.write(Decimal::MAX, 2), great);
        assert_eq!(words.write(amount("1"), 40), format!("€1.{}", "0".repeat(28)));
    }

    #[test]
    fn a_negative_zero_has_no_sign() {
        let words = MoneyWords::new("en", "EUR").unwrap();
        assert_eq!(words.write(amount("-0.00"), 2), "€0.00");
        assert_eq!(words.write_number(amount("-0.00")), "0.00");
    }

    #[test]
    fn numbers_keep_their_decimals() {
        let words = MoneyWords::new("de", "EUR").unwrap();
        let numbers = ["1234567.50", "-1234", "0.0", "12"];
        let expected = ["1.234.567,50", "-1.234", "0,0", "12"];
        assert_eq!(numbers.map(|text| words.write_number(amount(text))), expected);
    }

    #[test]
    fn an_unknown_language_gets_neutral_wording() {
        let words = MoneyWords::new("xx", "EUR").unwrap();
        assert_eq!(visible(&words.write(amount("1234.5"), 2)), "€~1,234.50");
    }

    #[test]
    fn mistaken_names_are_refused() {
        let refusal = |language, currency| MoneyWords::new(language, currency).unwrap_err();
        assert_eq!(refusal("english", "EUR"), MoneyError::Language("english".into()));
        assert_eq!(refusal("en_GB", "EUR"), MoneyError::Language("en_GB".into()));
        assert_eq!(refusal("", "EUR"), MoneyError::Language(String::new()));
        assert_eq!(refusal("en", "EURO"), MoneyError::Currency("EURO".into()));
        assert_eq!(refusal("en", "€"), MoneyError::Currency("€".into()));
    }

    #[test]
    fn a_code_without_a_symbol_is_shown_as_it_is() {
        let words = MoneyWords::new("en", "zzq").unwrap();
        assert_eq!(visible(&words.write(amount("5"), 2)), "ZZQ~5.00");
    }

    #[test]
    fn plain_text_has_keyboard_spaces_and_signs() {
        assert_eq!(plain("\u{2212}1\u{202f}234,50\u{a0}kr"), "-1 234,50 kr");
        assert_eq!(plain("½ × 3 – naïve"), "½ × 3 – naïve");
    }
}
