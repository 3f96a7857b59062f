//! Libraries of computed knots: admit, dismiss, probe, begin.

use std::io::{self, BufRead, IsTerminal};
use std::path::{Path, PathBuf};

use include_dir::{Dir, include_dir};
use reeve_host::Guards;
use reeve_office::{GoodLibrary, word_folder};
use reeve_pages::Form;
use reeve_pages::library::{LibraryView, library_page};
use reeve_pages::printed::LayOut;
use reeve_shop::Folder;

use crate::failure::{Failure, ask, say};
use crate::forms::WhichShop;
use crate::layout::PageLayout;
use crate::opening::{folder_failure, hold, open, program};
use crate::output::{hold_folder, print};
use crate::sheets::words_of;

static TEMPLATE: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../plugins/template");
static KIT: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../plugins/kit/src");
const HEADER: &str = include_str!("../../../plugins/kit/reeve_knots.h");

/// Probes a library and takes it into the shop, on the maker's word.
pub(crate) fn admit(file: &Path, yes: bool, guards: Guards, whose: &WhichShop) -> Result<(), Failure> {
    let shop = open(whose)?.value;
    let library = GoodLibrary::probe(file, &program()?, guards)?;
    let admission = library.admission(&shop)?;
    let shown = shown(&library)?;
    if !yes {
        if !io::stdin().is_terminal() {
            let help =
                "nothing was written; look at it with `reeve knots probe`, and say --yes to take it in without asking";
            return Err(Failure::input("nobody is there to agree to it", help));
        }
        print(&shown)?;
        let question = match &admission.replaces {
            Some(version) => format!("Take it into the shop, in place of {} {version}?", admission.name),
            None => "Take it into the shop?".to_owned(),
        };
        if !agreed(&question)? {
            say("nothing was written");
            return Ok(());
        }
    }
    // Meanwhile another library with a knot of the same name may have been admitted, here or into another shop.
    let _held = (hold(whose)?, hold_folder(word_folder(shop.admissions())?)?);
    let at = library.admit(&open(whose)?.value, guards)?;
    let knots: Vec<&str> = library.probed.knots.iter().map(|(knot, _)| knot.name.as_str()).collect();
    let done = format!("Admitted to {}. Designs can now use: {}\n", at.display(), knots.join(", "));
    print(&if yes { format!("{shown}\n{done}") } else { done })
}

/// The maker's own word, at a terminal.
fn agreed(question: &str) -> Result<bool, Failure> {
    ask(&format!("{question} [y/N] "));
    let mut answer = String::new();
    io::stdin().lock().read_line(&mut answer).map_err(|error| Failure::System(error.to_string()))?;
    Ok(matches!(answer.trim().to_lowercase().as_str(), "y" | "yes"))
}

/// Probes a library for its author.
pub(crate) fn probe(file: &Path, guards: Guards) -> Result<(), Failure> {
    print(&shown(&GoodLibrary::probe(file, &program()?, guards)?)?)
}

fn shown(GoodLibrary { candidate, probed }: &GoodLibrary) -> Result<String, Failure> {
    let knots: Vec<_> = probed.knots.iter().map(|(knot, _)| knot.as_ref()).collect();
    let words = words_of(None)?;
    let view = library_page(
        &LibraryView {
            name: &probed.described.name,
            version: &probed.described.version,
            digest: &candidate.digest,
            knots: &knots,
            guards: &probed.guards,
            asked: probed.asked,
            refused: probed.refused,
            slowest: probed.slowest,
        },
        &words,
    );
    PageLayout::new(Vec::new(), words.phrases()).page("library", Form::Text, &view)
}

/// Takes a library out of the shop.
pub(crate) fn dismiss(library: &str, shop: &WhichShop) -> Result<(), Failure> {
    let _held = hold(shop)?;
    let word = open(shop)?.value.admissions().dir().map(Path::to_owned);
    let _word = word.as_deref().map(hold_folder).transpose()?;
    reeve_office::dismiss(&open(shop)?.value, library)?;
    print(&format!("Dismissed {library}. `reeve check` tells which designs still name its knots.\n"))
}

/// Writes the beginning of a library into a new or empty folder.
pub(crate) fn begin(dir: &Path) -> Result<(), Failure> {
    let mut files = below(&TEMPLATE, Path::new(""));
    files.extend(below(&KIT, Path::new("kit/src")));
    files.push(("reeve_knots.h".into(), HEADER.into()));
    files.sort_unstable();
    Folder::make(dir, &files).map_err(|fault| folder_failure(&fault))?;
    let shown = dir.display();
    print(&format!(
        "The beginning of a library of knots stands in {shown}: README.md there says how to go on.\n\n  \
         cd {shown} && cargo build --release\n  \
         reeve knots probe {shown}/target/release/libmy_knots.so\n",
    ))
}

fn below(dir: &Dir<'_>, at: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let own = dir.files().map(|file| (at.join(file.path()), file.contents().to_vec()));
    own.chain(dir.dirs().flat_map(|sub| below(sub, at))).collect()
}
