//! The templates inside the program.

use std::sync::Arc;

use crate::marks::tags;
use crate::phrases::Phrases;
use crate::render::{OwnTemplate, TemplateError, Templates};

macro_rules! built_in {
    ($($name:literal),+ $(,)?) => {
        &[$(($name, include_str!(concat!("../../../templates/", $name)))),+]
    };
}

/// Every built-in template: its name and its text.
pub const BUILT_IN: &[(&str, &str)] = built_in![
    "page.html",
    "private.html",
    "private.txt",
    "style.css",
    "work.html",
    "quote.html",
    "costing.html",
    "bench.html",
    "takeoff.html",
    "work.txt",
    "quote.txt",
    "costing.txt",
    "bench.txt",
    "takeoff.txt",
    "book.html",
    "book.txt",
    "compare.html",
    "compare.txt",
    "mix.html",
    "mix.txt",
    "weigh.html",
    "weigh.txt",
    "knots.txt",
    "knot.txt",
    "tight.txt",
    "drawing.css",
    "chart.css",
    "graph.css",
    "legend.html",
    "sheet.html",
    "chart.html",
    "knot.html",
    "hand.txt",
    "sample.txt",
    "library.txt",
];

/// Checks the built-in templates together with a shop's own.
///
/// # Errors
/// A [`TemplateError`] with the file, line and reason.
pub fn load(own: &[OwnTemplate], phrases: &Arc<Phrases>) -> Result<Templates, TemplateError> {
    Templates::new(BUILT_IN, own, phrases)
}

/// The built-in templates that one page is made with; to read them all takes longer than to work out a quote.
///
/// # Errors
/// A [`TemplateError`] with the file, line and reason.
pub fn load_page(page: &str, phrases: &Arc<Phrases>) -> Result<Templates, TemplateError> {
    let made_with = made_with(page, &[]);
    let needed = BUILT_IN.iter().copied().filter(|(name, _)| made_with.iter().any(|needed| needed == name));
    Templates::new(&needed.collect::<Vec<_>>(), &[], phrases)
}

/// Which of a shop's own templates a page is made with, by name: itself, and what it extends and includes, each in its turn.
pub fn used_by(page: &str, own: &[OwnTemplate]) -> Vec<String> {
    let mut used = made_with(page, own);
    used.retain(|name| own.iter().any(|file| file.name == *name));
    used
}

/// What a page is made with: itself, and what it extends and includes, each in its turn.
fn made_with(page: &str, own: &[OwnTemplate]) -> Vec<String> {
    let mut seen = vec![page.to_owned()];
    let mut at = 0;
    while let Some(name) = seen.get(at) {
        let of_shop = own.iter().find(|file| file.name == *name);
        let built_in = || BUILT_IN.iter().find(|(built_in, _)| built_in == name).map(|(_, text)| *text);
        let text = of_shop.map(|file| file.text.as_str()).or_else(built_in).unwrap_or_default();
        let mut found: Vec<String> = named_in(text);
        if of_shop.is_some() {
            found.extend(own.iter().filter(|file| lends(file, text)).map(|file| file.name.clone()));
        }
        found.retain(|name| !seen.contains(name));
        seen.extend(found);
        at += 1;
    }
    seen
}

/// The templates that a text extends and includes.
fn named_in(text: &str) -> Vec<String> {
    let naming = tags(text).into_iter().filter(|tag| ["extends", "include"].contains(&tag.word()));
    naming.flat_map(|tag| tag.quoted()).map(str::to_owned).collect()
}

/// Whether a text uses a component that a file describes.
fn lends(file: &OwnTemplate, text: &str) -> bool {
    let described = tags(&file.text).into_iter().filter(|tag| tag.word() == "component");
    let names = described.filter_map(|tag| {
        let (_, rest) = tag.inside.split_once("component")?;
        rest.trim_start().split(|c: char| !c.is_alphanumeric() && c != '_' && c != '.').next()
    });
    let calls: Vec<&str> = tags(text).into_iter().map(|tag| tag.inside).filter(|inside| inside.contains('<')).collect();
    names.filter(|name| !name.is_empty()).any(|name| calls.iter().any(|call| call.contains(name)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ENGLISH;

    /// The one page of a commission or a shop that the client gets.
    const CLIENTS: &str = "quote";

    #[test]
    fn each_page_can_be_made_with_what_it_names_alone() {
        let phrases = Phrases::of_language(ENGLISH);
        let (all, alone) = (load(&[], &phrases), |name: &str| load_page(name, &phrases));
        assert!(all.is_ok() && BUILT_IN.iter().all(|(name, _)| alone(name).is_ok()));
        let quote = made_with("quote.html", &[]);
        assert_eq!(quote, ["quote.html", "page.html", "style.css"]);
    }

    #[test]
    fn every_page_but_the_clients_says_whose_eyes_it_is_for() {
        let extends = |text: &str| text.contains("{% extends \"page.html\" %}");
        let pages: Vec<&str> = BUILT_IN
            .iter()
            .filter(|(_, text)| extends(text))
            .filter_map(|(name, _)| name.strip_suffix(".html"))
            .collect();
        assert!(pages.len() > 5 && pages.contains(&CLIENTS), "{pages:?}");
        for (name, text) in BUILT_IN {
            let Some((page, form)) = name.split_once('.').filter(|(page, _)| pages.contains(page)) else { continue };
            let said = text.contains(&format!("{{% include \"private.{form}\" %}}"));
            assert_eq!(said, page != CLIENTS, "{name}");
        }
    }
}
