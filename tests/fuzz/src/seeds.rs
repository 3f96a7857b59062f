//! What a search begins with, written into a folder, and the words that it may put in.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::Path;

use serde_json::Value;

use crate::Target;

/// Writes the first inputs of a target into `corpus/`, and its words into `words`.
///
/// # Errors
/// When the folder can't be written.
pub fn lay(target: &Target, folder: &Path) -> io::Result<()> {
    let corpus = folder.join("corpus");
    fs::create_dir_all(&corpus)?;
    for (name, input) in target.kept() {
        fs::write(corpus.join(name), input)?;
    }
    fs::write(folder.join("words"), words())
}

/// Every key and word of the files' schemas, and what a careless or a wicked hand might put anywhere.
fn words() -> String {
    let mut words: BTreeSet<String> = WORDS.iter().map(|word| (*word).to_owned()).collect();
    for (_, schema) in reeve_shop::schemas() {
        words_of(&schema, &mut words);
    }
    words.extend(reeve_pages::compare::column_words().map(str::to_owned));
    let lines: Vec<String> = words.iter().map(|word| format!("\"{}\"\n", escaped(word))).collect();
    lines.concat()
}

/// Keys, and the words that a value may be.
fn words_of(schema: &Value, words: &mut BTreeSet<String>) {
    if let Some(keys) = schema["properties"].as_object() {
        words.extend(keys.keys().map(|key| format!("{key} = ")));
        words.extend(keys.iter().filter(|(_, of)| of["type"] == "array").map(|(key, _)| format!("[[{key}]]\n")));
        words.extend(keys.iter().filter(|(_, of)| of["type"] == "object").map(|(key, _)| format!("[{key}]\n")));
    }
    if let Some(choices) = schema["enum"].as_array() {
        words.extend(choices.iter().filter_map(Value::as_str).map(|word| format!("\"{word}\"")));
    }
    match schema {
        Value::Object(fields) => fields.values().for_each(|field| words_of(field, words)),
        Value::Array(items) => items.iter().for_each(|item| words_of(item, words)),
        _ => {}
    }
}

/// As the searcher reads words: bytes that are no plain characters in hexadecimal.
fn escaped(word: &str) -> String {
    let one = |byte: u8| match byte {
        b'"' | b'\\' => format!("\\{}", char::from(byte)),
        b' '..=b'~' => char::from(byte).to_string(),
        _ => format!("\\x{byte:02X}"),
    };
    word.bytes().map(one).collect()
}

const WORDS: &[&str] = &[
    "nan",
    "inf",
    "-1",
    "1e999",
    "99999999999999999999",
    "79228162514264337593543950335",
    "0.0000000000000000000000000001",
    "\"\"",
    "\"1e9 cm\"",
    "\"-0 %\"",
    "\"100 %\"",
    "[[",
    "]]",
    "'''",
    "\"\"\"",
    "\\u0000",
    "\\u001b",
    "\u{1b}[2J",
    "\u{1b}]0;",
    "\u{202e}",
    "\u{9b}",
    "\u{feff}",
    "\r\n",
    "2027-02-30",
    "9999-12-31",
    "10000-01-01",
    "times = 20000\n",
    "count = 5000\n",
    "quantity = 10000\n",
    "{{ ",
    " }}",
    "{% for i in range(end=99999999) %}",
    "{% endfor %}",
    "floor(",
    "ceil(",
    "round(",
    "min(",
    "max(",
    "(",
    ")",
    " cm",
    " mm",
    " in",
    "+10%",
    "wage=",
    "overhead=",
    "fees=",
    "pace=",
    "cord:",
    "\"in\":\"client\"",
    "\"in\":\"commission\"",
    "\"in\":\"entry\"",
    "\"in\":\"page\"",
    "\"in\":\"happening\"",
    "\"in\":\"payment\"",
    "\"in\":\"work\"",
    "\"in\":\"cord_used\"",
    "\"in\":\"bought\"",
    "\"in\":\"timer\"",
];
