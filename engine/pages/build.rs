//! Takes the files of phrases apart, so that a run reads none but the phrases that it says.

use std::collections::BTreeMap;
use std::error::Error;
use std::fmt::Write;
use std::path::Path;
use std::{env, fs};

#[path = "src/entries.rs"]
mod entries;

const PHRASES: &str = "../../templates/phrases";

#[allow(clippy::disallowed_methods, reason = "the build reads and writes files of its own")]
fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo:rerun-if-changed={PHRASES}");
    println!("cargo:rerun-if-changed=src/entries.rs");
    let mut files =
        fs::read_dir(PHRASES)?.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>, std::io::Error>>()?;
    files.sort();
    let mut code = String::from("static FILES: &[(&str, &[Phrase])] = &[\n");
    for file in files.iter().filter(|file| file.extension().is_some_and(|ending| ending == "ftl")) {
        let tag = file.file_stem().unwrap_or_default().to_string_lossy();
        let text = fs::read_to_string(file)?;
        // Of two entries of one name the later one counts.
        let entries: BTreeMap<_, _> = entries::entries(&text).into_iter().collect();
        writeln!(code, "({tag:?}, {{ static PHRASES: [Phrase; {}] = [", entries.len())?;
        for (id, text) in entries {
            writeln!(code, "Phrase::new({id:?}, {text:?}),")?;
        }
        code.push_str("]; &PHRASES }),\n");
    }
    code.push_str("];\n");
    fs::write(Path::new(&env::var("OUT_DIR")?).join("phrases.rs"), code)?;
    Ok(())
}
