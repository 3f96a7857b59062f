//! `shop.toml`: who makes, and every rate of the shop.

use chrono::Weekday;
use reeve_costing::calendar::{Calendar, Passing};
use reeve_costing::learning_curve::{LearningCurve, Model};
use reeve_costing::money::{Currency, decimal, fraction, to_decimals};
use reeve_costing::price::fee_rate;
use reeve_costing::rates::{
    Aim, Bench, Fee, FeeBase, Handling, Maker, Overhead, PriceRule, Rates, TaxRule, TaxScheme, Terms,
};
use reeve_measure::{Time, bound};
use reeve_reading::{Count, Day, Flag, Lengths, List, Money, Number, OneOf, Percent, Placed, Table, Text, nearest};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// Reads `shop.toml`.
pub fn shop_file(t: &mut Table<'_>) -> Option<Rates> {
    let maker = t.need_table("shop", "Who makes and sells.", maker);
    let tax = t.need_table("tax", "How tax stands in your prices. Your own adviser decides what applies.", tax);
    let pay =
        t.need_table("pay", "What a bench hour is paid.", |t| t.need("wage", &Money::AMOUNT, "Pay of a bench hour."));
    let overhead = t.need_table("overhead", "What the shop costs whether or not anything is tied.", overhead);
    let bench = t.need_table("bench", "Pace, allowances and handling times.", bench);
    let price = t.need_table("price", "What every price aims at.", price);
    let fees = t.tables("fee", "A fee of selling.", fee);
    let terms = t.need_table("terms", "What the client is told.", terms);
    let calendar = t.table("calendar", "Your days at the bench, and days off.", calendar);
    let book = t.table("book", "How the order book is kept.", book);
    let (maker, currency) = maker?.value;
    let (tax, (price, aim_place)) = (tax?.value, price?.value);
    let (fees, places): (Vec<Fee>, Vec<KeyPlace>) = fees.into_iter().map(|fee| fee.value).unzip();
    check_fees(t, &fees, &places, &tax)?;
    check_aim(t, &price, &aim_place, &fees, &tax)?;
    let TypedBench { bench, weekly_hours } = bench?.value;
    Some(Rates {
        maker,
        currency,
        tax,
        wage: pay?.value.value,
        overhead: overhead?.value,
        bench,
        weekly_hours,
        calendar: calendar.map(|calendar| calendar.value).unwrap_or_default(),
        number_pattern: book.map(|pattern| pattern.value),
        price,
        fees,
        terms: terms?.value,
    })
}

const DAYS: &[(&str, Weekday)] = &[
    ("monday", Weekday::Mon),
    ("tuesday", Weekday::Tue),
    ("wednesday", Weekday::Wed),
    ("thursday", Weekday::Thu),
    ("friday", Weekday::Fri),
    ("saturday", Weekday::Sat),
    ("sunday", Weekday::Sun),
];

fn calendar(t: &mut Table<'_>) -> Option<Calendar> {
    let days = t.maybe("days", &List(OneOf { words: DAYS }), "Days at the bench; monday to friday if not said.");
    let off = t.tables("off", "Days off.", |t| {
        let from = t.need("from", &Day, "The first day off.");
        let to = t.maybe("to", &Day, "The last one; the same if not said.");
        t.maybe("why", &Text, "A remark.");
        let (from, to) = (from?, to);
        let last = to.as_ref().map_or(from.value, |to| to.value);
        if last < from.value {
            let place = to.map_or(from.span, |to| to.span);
            t.refuse_at(
                place,
                format!("{last} is before {}", from.value),
                "the last day off",
                "the first day goes first",
            );
            return None;
        }
        Some((from.value, last))
    });
    let lead = passing(
        t,
        "lead-days",
        "Days from the quote to the first knot, each part by its name: the deposit to arrive, cord to come. One day if not \
         said.",
    );
    let after = passing(
        t,
        "after-days",
        "Days from the last knot until the client has it, each part by its name: drying, post.",
    );
    let calendar = Calendar {
        days: days_of_week(t, days)?,
        off: off.into_iter().map(|off| off.value).collect(),
        lead: if lead.is_empty() { Calendar::usual_lead() } else { lead },
        after,
    };
    Some(calendar)
}

fn days_of_week(t: &Table<'_>, days: Option<Placed<Vec<Placed<Weekday>>>>) -> Option<Vec<Weekday>> {
    let Some(days) = days else { return Some(Calendar::default().days) };
    if days.value.is_empty() {
        t.refuse_at(days.span, "`days` is empty", "work needs a day", "for example days = [\"tuesday\", \"friday\"]");
        return None;
    }
    let mut known = Vec::new();
    for day in days.value {
        if known.contains(&day.value) {
            let word = DAYS.iter().find(|(_, known)| *known == day.value).map_or("", |(word, _)| word);
            t.refuse_at(day.span, format!("`{word}` stands twice"), "a week has one", "take one of them out");
            return None;
        }
        known.push(day.value);
    }
    Some(known)
}

fn passing(t: &mut Table<'_>, key: &'static str, about: &str) -> Vec<Passing> {
    let parts = t.pairs(key, &Count(bound::PASSING_DAYS), about);
    parts.into_iter().map(|(what, days)| Passing { what: what.value, days: days.value }).collect()
}

fn book(t: &mut Table<'_>) -> Option<String> {
    let number = t.need("number", &Text, "How numbers of quotes are written, with {year} and {running}.")?;
    if number.value.contains("{year}") && number.value.contains("{running}") {
        return Some(number.value);
    }
    let label = "it needs {year} and {running}: numbers begin at 1 in each year";
    t.refuse_at(
        number.span,
        format!("`{}` can't number quotes", number.value),
        label,
        "for example \"{year}-{running}\"",
    );
    None
}

fn maker(t: &mut Table<'_>) -> Option<(Maker, Currency)> {
    let name = t.need("name", &Text, "The shop's name, as on the letterhead.");
    let tagline = t.maybe("tagline", &Text, "A line beneath the name.");
    let address = t.maybe("address", &List(Text), "Lines of the address.");
    let contact = t.maybe("contact", &List(Text), "Lines of how to reach you.");
    let accent = t.maybe("accent", &Text, "Accent colour of the pages, as #rrggbb.");
    let currency = t.need("currency", &Text, "Three letters of ISO 4217, such as EUR.");
    let language = t.maybe("language", &Text, "Language tag for numbers and money, such as en-GB; en if not said.");
    let accent = accent_colour(t, accent);
    let currency = find_currency(t, &currency?);
    let language = language_tag(t, language);
    let maker = Maker {
        name: name?.value,
        tagline: tagline.map(|line| line.value),
        address: lines(address),
        contact: lines(contact),
        accent: accent?,
        language: language?,
    };
    Some((maker, currency?))
}

fn lines(list: Option<Placed<Vec<Placed<String>>>>) -> Vec<String> {
    list.map(|list| list.value.into_iter().map(|line| line.value).collect()).unwrap_or_default()
}

/// A calm slate, for shops that choose none.
const DEFAULT_ACCENT: &str = "#3f5a63";

fn accent_colour(t: &Table<'_>, accent: Option<Placed<String>>) -> Option<String> {
    let Some(accent) = accent else { return Some(DEFAULT_ACCENT.to_owned()) };
    let digits =
        accent.strip_prefix('#').filter(|digits| digits.len() == 6 && digits.chars().all(|c| c.is_ascii_hexdigit()));
    let Some(digits) = digits else {
        t.refuse_at(
            accent.span.clone(),
            format!("`{}` is not a colour", accent.value),
            "# and six digits or letters a to f",
            "for example accent = \"#3f5a63\"",
        );
        return None;
    };
    // Web Content Accessibility Guidelines 2.2, success criterion 1.4.3, from memory: text stands out at least 4.5 to 1.
    let contrast = contrast_on_white(digits);
    if contrast < 4.5 {
        t.refuse_at(
            accent.span.clone(),
            format!("`{}` is too pale to read on white paper", accent.value),
            format!("its contrast is {contrast:.1} to 1, and 4.5 to 1 is needed"),
            "take a darker shade of it",
        );
        return None;
    }
    Some(accent.value)
}

/// Contrast ratio against white, by the relative luminance of the same guidelines.
fn contrast_on_white(digits: &str) -> f64 {
    let channel = |at: usize| {
        let value = digits.get(at..at + 2).and_then(|pair| u8::from_str_radix(pair, 16).ok()).unwrap_or_default();
        let part = f64::from(value) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { libm::pow((part + 0.055) / 1.055, 2.4) }
    };
    let luminance = 0.2126 * channel(0) + 0.7152 * channel(2) + 0.0722 * channel(4);
    1.05 / (luminance + 0.05)
}

/// Codes of ISO 4217 that are no money, and what they stand for.
const NO_MONEY: &[(&str, &str)] =
    &[("XTS", "it is kept for testing programs"), ("XXX", "it stands where there is no currency at all")];

fn find_currency(t: &Table<'_>, code: &Placed<String>) -> Option<Currency> {
    if let Some((_, why)) = NO_MONEY.iter().find(|(known, _)| *known == code.value) {
        let title = format!("nobody can pay in `{}`", code.value);
        t.refuse_at(code.span.clone(), title, *why, "write what your clients pay in, such as EUR, GBP or USD");
        return None;
    }
    let found = Currency::from_code(code);
    if found.is_none() {
        let codes: Vec<&str> =
            Currency::codes().filter(|code| !NO_MONEY.iter().any(|(known, _)| known == code)).collect();
        let label = nearest(code, codes.iter().copied()).map(|near| format!("did you mean `{near}`?"));
        t.refuse_at(
            code.span.clone(),
            format!("`{}` is not a currency", code.value),
            label.unwrap_or_default(),
            "three capital letters of ISO 4217, such as EUR, GBP or USD",
        );
    }
    found
}

fn language_tag(t: &Table<'_>, language: Option<Placed<String>>) -> Option<String> {
    let Some(language) = language else { return Some("en".to_owned()) };
    let parts: Vec<&str> = language.split('-').collect();
    let plain =
        parts.iter().all(|part| (2..=8).contains(&part.len()) && part.chars().all(|c| c.is_ascii_alphanumeric()));
    let starts = parts
        .first()
        .is_some_and(|first| (2..=3).contains(&first.len()) && first.chars().all(|c| c.is_ascii_lowercase()));
    if plain && starts {
        return Some(language.value);
    }
    t.refuse_at(
        language.span.clone(),
        format!("`{}` is not a language tag", language.value),
        "a language, perhaps with a region (BCP 47)",
        "for example language = \"en-GB\"",
    );
    None
}

fn tax(t: &mut Table<'_>) -> Option<TaxRule> {
    let scheme = t.need(
        "prices",
        &OneOf { words: TaxScheme::WORDS },
        "`not-registered`: you charge no tax; `net`: tax is added below; `inclusive`: prices hold it.",
    );
    let rate = t.maybe("rate", &Percent(bound::TAX_RATE), "The rate of your own pieces.");
    let number = t.maybe("number", &Text, "Your registration number, shown to the client.");
    let note = t.maybe("note", &Text, "A sentence on tax, shown to the client.");
    let scheme = scheme?;
    let rate = match (scheme.value, rate) {
        (TaxScheme::NotRegistered, Some(rate)) => {
            t.refuse_at(
                rate.span,
                "a rate is given, but no tax is charged",
                "prices = \"not-registered\"",
                "take out `rate`, or change `prices`",
            );
            return None;
        }
        (TaxScheme::NotRegistered, None) => Decimal::ZERO,
        (_, Some(rate)) => rate.value,
        (_, None) => {
            t.refuse_together(
                scheme.span,
                "`rate` is missing",
                "prices with tax need a rate",
                "for example rate = \"20 %\"",
            );
            return None;
        }
    };
    Some(TaxRule { scheme: scheme.value, rate, number: number.map(|n| n.value), note: note.map(|n| n.value) })
}

fn overhead(t: &mut Table<'_>) -> Option<Overhead> {
    let yearly = t.maybe("yearly", &Money::AMOUNT, "Overhead of a year: rent, light, insurance, tools, website.");
    let hours = t.maybe("bench-hours", &Count(bound::YEARLY_HOURS), "Bench hours of a year, over which it is spread.");
    let labour = t.maybe("of-labour", &Percent(bound::MARKUP), "In place of the two: so many per cent of labour.");
    let prime = t.maybe(
        "of-prime-cost",
        &Percent(bound::MARKUP),
        "In place of the two: so many per cent of material, labour and other direct costs.",
    );
    match (yearly, hours, labour, prime) {
        (Some(yearly), Some(hours), None, None) => Some(Overhead::yearly(yearly.value, Decimal::from(hours.value))),
        (None, None, Some(percent), None) => Some(Overhead::OfLabour(percent.value)),
        (None, None, None, Some(percent)) => Some(Overhead::OfPrimeCost(percent.value)),
        _ => refuse_shape(
            t,
            &["yearly", "bench-hours", "of-labour", "of-prime-cost"],
            "overhead is laid on in one of three ways",
            "`yearly` with `bench-hours`, or `of-labour`, or `of-prime-cost`",
        ),
    }
}

/// Refuses a table whose keys don't go together, unless one of them has a fault of its own already.
fn refuse_shape<T>(t: &Table<'_>, keys: &[&str], title: &str, label: &str) -> Option<T> {
    let written: Vec<&str> = keys.iter().copied().filter(|key| t.has(key)).collect();
    let help = if written.is_empty() {
        "none of them is written".to_owned()
    } else {
        format!("written here: {}", written.join(", "))
    };
    t.refuse(title, label, help);
    None
}

/// What stands under [bench], and the hours of a week.
struct TypedBench {
    bench: Bench,
    weekly_hours: Option<Decimal>,
}

fn bench(t: &mut Table<'_>) -> Option<TypedBench> {
    let weekly = t.maybe("weekly-hours", &Number(bound::WEEKLY_HOURS), "Bench hours of a week.");
    let pace_spread = t.maybe(
        "pace-spread",
        &Percent(bound::PACE_SPREAD),
        "How far your pace strays from job to job; if not said, as far as your samples leave it open.",
    );
    let pace = t.maybe(
        "pace",
        &Number(bound::PACE),
        "Your time against the catalogue's: 1.2 takes a fifth longer; 1 if not said. For knots, timed samples in \
         knots/samples.toml stand in its place.",
    );
    let allowances = t.pairs(
        "allowances",
        &Percent(bound::SHARE),
        "Relaxation allowances, each a name and a percentage of the time.",
    );
    let handling = t.table("seconds", "Handling times, in seconds.", |t| Some(handling(t)));
    let practice = t.table("practice", "How practice shortens the making of several of the same piece.", practice);
    let cutting = t.need_table("cutting", "How cords are cut.", |t| {
        let allowance = t.need("allowance", &Percent(bound::MARKUP), "Added to every cut length.");
        let step =
            t.need("step", &Lengths(bound::CUTTING_STEP), "Cut lengths are rounded up to a whole number of these.");
        Some((allowance?.value, step?.value))
    });
    let (cutting_allowance, cutting_step) = cutting?.value;
    let bench = Bench {
        pace: pace.map_or(1.0, |pace| pace.value),
        pace_spread: pace_spread.and_then(|percent| fraction(percent.value).to_f64()),
        allowances: allowances.into_iter().map(|(name, percent)| (name.value, percent.value)).collect(),
        practice: practice.map_or(LearningCurve::NONE, |practice| practice.value),
        handling: handling.map(|handling| handling.value).unwrap_or_default(),
        cutting_allowance,
        cutting_step,
    };
    let weekly_hours = weekly.map(|hours| decimal(hours.value, 2));
    Some(TypedBench { bench, weekly_hours })
}

/// From this piece on, if nobody says: a hand does not learn for ever. Common practice, no source.
const STEADY_PIECE: u32 = 100;

fn practice(t: &mut Table<'_>) -> Option<LearningCurve> {
    let model = t.need(
        "model",
        &OneOf { words: Model::WORDS },
        "`unit`: each doubling shortens the piece itself (Crawford); `cumulative-average`: the average so far (Wright).",
    );
    let rate = t.need("rate", &Percent(bound::PRACTICE_RATE), "The share of the time that each doubling leaves.");
    let steady = t.maybe(
        "steady",
        &Count(bound::STEADY_PIECE),
        "The piece from which on the time stays as it is; 100 if not said.",
    );
    Some(LearningCurve {
        model: model?.value,
        rate: fraction(rate?.value).to_f64().unwrap_or(1.0),
        steady: steady.map_or(STEADY_PIECE, |steady| steady.value),
    })
}

fn handling(t: &mut Table<'_>) -> Handling {
    let mut time = |key, about| {
        t.maybe(key, &Number(bound::HANDLING_SECONDS), about).map_or(Time::ZERO, |seconds| Time::s(seconds.value))
    };
    Handling {
        set_up: time("set-up", "Laying out for one design, however many pieces."),
        marks: time("marks", "Setting the marks for cords that are cut alike; once a group, however many pieces."),
        cut: time("cut", "Measuring and cutting one cord."),
        bead: time("bead", "Threading one bead."),
        trim: time("trim", "Trimming one leg's tail."),
        comb: time("comb", "Combing out one leg's tail."),
        pack: time("pack", "Packing one piece."),
    }
}

type KeyPlace = std::ops::Range<usize>;

fn price(t: &mut Table<'_>) -> Option<(PriceRule, KeyPlace)> {
    let margin = t.maybe("margin", &Percent(bound::MARGIN), "Aim: so many per cent of the price are left over.");
    let markup = t.maybe("markup", &Percent(bound::MARKUP), "Aim, in its place: so many per cent on top of cost.");
    let per_hour = t.maybe("per-hour", &Money::AMOUNT, "Aim, in its place: so much is earned by a bench hour.");
    let minimum = t.maybe("minimum", &Money::AMOUNT, "No piece is sold below this.");
    let step = t.maybe("step", &Money::AMOUNT, "Prices are rounded up to a whole number of these.");
    let confidence = t.maybe(
        "confidence",
        &Percent(bound::CONFIDENCE),
        "Prices are for hours that suffice so surely; for the hours expected if not said.",
    );
    let rush = t.maybe("rush", &Percent(bound::MARKUP), "Surcharge for work out of turn.");
    let breaks = t.tables("break", "From so many pieces of one design on, so many per cent off.", |t| {
        let from = t.need("from", &Count(bound::PIECES), "The number of pieces.");
        let off = t.need("off", &Percent(bound::MARGIN), "Per cent off the price.");
        Some((from?.value, off?.value))
    });
    let itemised =
        t.maybe("itemised", &Flag, "Whether the client sees what a piece's price is made up of; true if not said.");
    let (aim, place) = match (margin, markup, per_hour) {
        (Some(margin), None, None) => (Aim::Margin(margin.value), margin.span),
        (None, Some(markup), None) => (Aim::Markup(markup.value), markup.span),
        (None, None, Some(earned)) => (Aim::PerHour(earned.value), earned.span),
        _ => {
            return refuse_shape(
                t,
                &["margin", "markup", "per-hour"],
                "a price has one aim",
                "`margin`, `markup` or `per-hour`",
            );
        }
    };
    let mut breaks: Vec<_> = breaks.into_iter().map(|step| step.value).collect();
    breaks.sort_unstable_by_key(|(from, _)| *from);
    let rule = PriceRule {
        aim,
        minimum: minimum.map_or(Decimal::ZERO, |money| money.value),
        step: step.map_or(Decimal::ZERO, |money| money.value),
        confidence: confidence.map(|percent| percent.value),
        rush: rush.map_or(Decimal::ZERO, |percent| percent.value),
        breaks,
        itemised: itemised.is_none_or(|flag| flag.value),
    };
    Some((rule, place))
}

/// Fees alone must leave something of the price; else the largest of them is told.
fn check_fees(t: &Table<'_>, fees: &[Fee], places: &[KeyPlace], tax: &TaxRule) -> Option<()> {
    let all = fee_rate(fees, tax.rate);
    if all < Decimal::ONE {
        return Some(());
    }
    let (largest, place) = fees.iter().zip(places).max_by_key(|(fee, _)| fee.rate)?;
    let share = |rate: Decimal| to_decimals(rate, 2).normalize();
    let title = match fees.iter().filter(|fee| fee.rate > Decimal::ZERO).count() {
        1 if largest.on == FeeBase::Gross && largest.rate < Decimal::ONE_HUNDRED => {
            let (rate, of_net) = (share(largest.rate), share(all * Decimal::ONE_HUNDRED));
            format!(
                "a fee of {rate} % on the gross amount is {of_net} % of the price before tax, and leaves nothing of it"
            )
        }
        1 => format!("a fee of {} % leaves nothing of any price", share(largest.rate)),
        _ => format!("fees of {} % together leave nothing of any price", share(all * Decimal::ONE_HUNDRED)),
    };
    t.refuse_at(place.clone(), title, "all fees together must stay below 100 %", "look for a slip in `rate`");
    None
}

/// Margin and fees must leave something of the price.
fn check_aim(t: &Table<'_>, price: &PriceRule, place: &KeyPlace, fees: &[Fee], tax: &TaxRule) -> Option<()> {
    let margin = if let Aim::Margin(margin) = price.aim { margin } else { Decimal::ZERO };
    let fees = fee_rate(fees, tax.rate);
    if fraction(margin) + fees < Decimal::ONE {
        return Some(());
    }
    let fees = to_decimals(fees * Decimal::ONE_HUNDRED, 2).normalize();
    t.refuse_at(
        place.clone(),
        format!("a margin of {margin} % and fees of {fees} % leave nothing of any price"),
        "together they must stay below 100 %",
        "aim at a smaller margin, or at `markup` or `per-hour`",
    );
    None
}

/// A fee, and the place of its rate.
fn fee(t: &mut Table<'_>) -> Option<(Fee, KeyPlace)> {
    let name = t.need("name", &Text, "What it is for.");
    let rate = t.maybe("rate", &Percent(bound::SHARE), "Per cent of what the client pays.");
    let fixed = t.maybe("fixed", &Money::AMOUNT, "So much for each order.");
    let on = t.maybe(
        "on",
        &OneOf { words: FeeBase::WORDS },
        "Whether the rate is taken on the `gross` amount (the default) or on the `net`.",
    );
    let place = rate.as_ref().map_or_else(|| t.span(), |rate| rate.span.clone());
    let fee = Fee {
        name: name?.value,
        rate: rate.map_or(Decimal::ZERO, |rate| rate.value),
        fixed: fixed.map_or(Decimal::ZERO, |fixed| fixed.value),
        on: on.map_or(FeeBase::Gross, |on| on.value),
    };
    Some((fee, place))
}

fn terms(t: &mut Table<'_>) -> Option<Terms> {
    let days = t.need("valid-days", &Count(bound::VALID_DAYS), "Days a quote stays open.");
    let deposit = t.maybe("deposit", &Percent(bound::SHARE), "Deposit on acceptance, of the whole.");
    let sentences = t.maybe("sentences", &List(Text), "Sentences of the terms.");
    let care = t.maybe("care", &List(Text), "How to look after the pieces.");
    Some(Terms {
        valid_days: days?.value,
        deposit: deposit.map_or(Decimal::ZERO, |deposit| deposit.value),
        sentences: lines(sentences),
        care: lines(care),
    })
}
