//! Phrases of the pages: what is asked for is there, what is there is asked for, and no template says anything by itself.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser::parse;
use reeve_pages::{BUILT_IN, Phrases};
use reeve_tests::{files_below, root};

/// Phrases by name, each with what is put into it.
type Needs = BTreeMap<String, BTreeSet<String>>;

/// What a file's phrases need; every slip of the pen in it ends the test.
fn needs(text: &str) -> Needs {
    let resource = parse(text).map_err(|(_, faults)| faults).unwrap();
    let messages = resource.body.into_iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some((message.id.name.to_owned(), variables(&message.value.unwrap()))),
        _ => None,
    });
    let mut needs = Needs::new();
    for (id, variables) in messages {
        assert!(needs.insert(id.clone(), variables).is_none(), "the phrase `{id}` stands twice");
    }
    needs
}

fn variables(pattern: &Pattern<&str>) -> BTreeSet<String> {
    let inside = pattern.elements.iter().flat_map(|element| match element {
        PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
            let within = variants.iter().flat_map(|variant| variables(&variant.value));
            within.chain(variable(selector)).collect::<Vec<_>>()
        }
        PatternElement::Placeable { expression: Expression::Inline(inline) } => variable(inline).into_iter().collect(),
        PatternElement::TextElement { .. } => Vec::new(),
    });
    inside.collect()
}

fn variable(expression: &InlineExpression<&str>) -> Option<String> {
    match expression {
        InlineExpression::VariableReference { id } => Some(id.name.to_owned()),
        _ => None,
    }
}

/// The parts between a bracket that is open and the one that closes it, parted by the commas of the same depth.
fn parts(text: &str) -> Vec<String> {
    let (mut parts, mut depth, mut quoted) = (vec![String::new()], 0, false);
    for c in text.chars() {
        match c {
            '"' => quoted = !quoted,
            _ if quoted => {}
            ')' | ']' | '}' if depth == 0 => break,
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth -= 1,
            ',' if depth == 0 => {
                parts.push(String::new());
                continue;
            }
            _ => {}
        }
        parts.last_mut().unwrap().push(c);
    }
    parts.iter().map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect()
}

fn names(parts: &[String]) -> BTreeSet<String> {
    parts.iter().filter_map(|part| Some(part.split_once('=')?.0.trim().to_owned())).collect()
}

/// What a template says: the name of each phrase with the names of what is put in.
fn said_in_template(text: &str) -> Vec<(String, BTreeSet<String>)> {
    let said = text.match_indices("\" | say").map(|(at, asking)| {
        let id = text[..at].rsplit('"').next().unwrap();
        let put_in = text[at + asking.len()..].strip_prefix('(').map(parts).unwrap_or_default();
        (id.to_owned(), names(&put_in))
    });
    said.collect()
}

/// The same of a file of the program.
fn said_in_program(text: &str) -> Vec<(String, BTreeSet<String>)> {
    let said = text.match_indices("say!(").filter_map(|(at, asking)| {
        let parts = parts(&text[at + asking.len()..]);
        let id = parts.get(1)?.strip_prefix('"')?.strip_suffix('"')?;
        Some((id.to_owned(), names(&parts[2..])))
    });
    said.collect()
}

/// The program's files that say phrases, without their comments and tests.
fn program() -> Vec<String> {
    let files = ["engine/pages/src", "engine/cli/src"].iter().flat_map(|folder| files_below(&root().join(folder)));
    let texts = files.map(|path| {
        let text = fs::read_to_string(path).unwrap();
        // Tests come last in a file.
        let program = text.split("#[cfg(test)]").next().unwrap();
        program.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
    });
    texts.collect()
}

fn languages() -> Vec<String> {
    files_below(&phrases()).into_iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

fn english() -> String {
    fs::read_to_string(phrases().join("en.ftl")).unwrap()
}

fn phrases() -> PathBuf {
    root().join("templates/phrases")
}

#[test]
fn every_phrase_that_is_asked_for_is_there_and_gets_what_it_needs_and_none_is_idle() {
    let known = needs(&english());
    let program = program();
    let templates = BUILT_IN.iter().flat_map(|(_, text)| said_in_template(text));
    let said: Vec<_> = templates.chain(program.iter().flat_map(|text| said_in_program(text))).collect();
    for (id, put_in) in &said {
        assert_eq!(known.get(id), Some(put_in), "{id}");
    }
    let idle: Vec<_> = known.keys().filter(|id| said.iter().all(|(said, _)| said != *id)).collect();
    assert!(idle.is_empty(), "no page says {idle:?}");
    assert_eq!(Phrases::known().collect::<BTreeSet<_>>(), known.keys().map(String::as_str).collect());
}

#[test]
fn a_language_puts_the_same_into_a_phrase_as_english() {
    let known = needs(&english());
    for other in languages() {
        for (id, variables) in needs(&other) {
            assert!(known.get(&id).is_some_and(|known| variables.is_subset(known)), "{id}");
        }
    }
}

/// A text without what stands between two signs.
fn without(text: &str, opened: &str, closed: &str) -> String {
    let mut parts = text.split(opened);
    let first = parts.next().unwrap().to_owned();
    parts.fold(first, |kept, part| kept + part.split_once(closed).map_or("", |(_, rest)| rest))
}

#[test]
fn templates_say_nothing_by_themselves() {
    for (name, text) in BUILT_IN.iter().filter(|(name, _)| !name.contains(".css")) {
        let tagless = |text: &str| without(&without(text, "{{", "}}"), "{%", "%}");
        let bare = tagless(text);
        for label in ["aria-label=\"", "data-label=\"", "content: \""] {
            let said = bare.split(label).skip(1).filter_map(|rest| rest.split('"').next());
            assert!(said.clone().all(|said| said.trim().is_empty()), "{name}: {:?}", said.collect::<Vec<_>>());
        }
        // Rules of style are no words; in text, an x is the sign between a number and a thing.
        let unstyled = without(text, "{% block more_style %}", "{% endblock more_style %}");
        let ruled = without(&without(&tagless(&unstyled), "<style>", "</style>"), "<", ">");
        let words = ruled.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty() && *word != "x");
        assert_eq!(words.collect::<Vec<_>>(), Vec::<&str>::new(), "{name}");
    }
}
