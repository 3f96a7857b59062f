//! Libraries of computed knots: admit, dismiss, probe, begin.

use std::io::{self, BufRead, IsTerminal};
use std::path::{Path, PathBuf};

use include_dir::{Dir, include_dir};
use reeve_host::{Guards, Probed};
use reeve_pages::library::{LibraryView, library_page};
use reeve_pages::printed::LayOut;
use reeve_pages::{ENGLISH, Form};
use reeve_reading::{Fault, nearest};
use reeve_shop::{Admissions, Candidate, Folder, PLUGINS, Shop};

use crate::failure::{Failure, ask, say};
use crate::forms::WhichShop;
use crate::layout::PageLayout;
use crate::opening::{folder_failure, hold, open, program};
use crate::output::{hold_folder, print, remove_folder, write_files, write_folder};
use crate::sheets::words_of;

static TEMPLATE: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../plugins/template");
static KIT: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../plugins/kit/src");
const HEADER: &str = include_str!("../../../plugins/kit/reeve_knots.h");

/// Probes a library and takes it into the shop, on the maker's word.
pub(crate) fn admit(file: &Path, yes: bool, guards: Guards, whose: &WhichShop) -> Result<(), Failure> {
    let shop = open(whose)?.value;
    let (candidate, probed) = probed(file, guards)?;
    let admission = shop.admission(&candidate, &probed).map_err(Failure::Input)?;
    let word = word_folder(shop.admissions())?;
    let shown = shown(&candidate, &probed)?;
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
    let _held = (hold(whose)?, hold_folder(word)?);
    let now = open(whose)?.value;
    let admission = now.admission(&candidate, &probed).map_err(Failure::Input)?;
    let words = now.admissions().with(&admission.name, &admission.digest, guards);
    write_files(word, &[(Admissions::FILE, words)])?;
    let at = write_folder(&admission.dir, &admission.name, &admission.files)?;
    let knots: Vec<&str> = probed.knots.iter().map(|(knot, _)| knot.name.as_str()).collect();
    let done = format!("Admitted to {}. Designs can now use: {}\n", at.display(), knots.join(", "));
    print(&if yes { format!("{shown}\n{done}") } else { done })
}

/// The folder of the maker's word, which must be readable before anything is added to it.
fn word_folder(admissions: &Admissions) -> Result<&Path, Failure> {
    if !admissions.faults().is_empty() {
        return Err(Failure::Input(admissions.faults().to_vec()));
    }
    let help = "set HOME, or XDG_DATA_HOME; libraries that you admit are kept there, outside every shop";
    admissions.dir().ok_or_else(|| Failure::input("the system does not tell where your home is", help))
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
    let (candidate, probed) = probed(file, guards)?;
    print(&shown(&candidate, &probed)?)
}

/// A library that was found good; every finding is a fault.
fn probed(file: &Path, guards: Guards) -> Result<(Candidate, Probed), Failure> {
    let refused = |fault: Fault| Failure::Input(vec![fault]);
    let candidate = Candidate::read(file).map_err(refused)?;
    let probed = candidate.probe(&program()?, guards).map_err(refused)?;
    if probed.findings.is_empty() {
        return Ok((candidate, probed));
    }
    let library = &probed.described.name;
    let fault = |finding: &reeve_host::ProbeFinding| {
        let title = match &finding.knot {
            Some(knot) => format!("the knot `{knot}` of the library `{library}`: {}", finding.words),
            None => format!("the library `{library}`: {}", finding.words),
        };
        Fault::without_place(title, "its author must mend it; it was not taken in, and nothing was written")
    };
    Err(Failure::Input(probed.findings.iter().map(fault).collect()))
}

fn shown(candidate: &Candidate, probed: &Probed) -> Result<String, Failure> {
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
    PageLayout::new(Vec::new(), ENGLISH)?.page("library", Form::Text, &view)
}

/// Takes a library out of the shop.
pub(crate) fn dismiss(library: &str, shop: &WhichShop) -> Result<(), Failure> {
    let _held = hold(shop)?;
    let word = open(shop)?.value.admissions().dir().map(Path::to_owned);
    let _word = word.as_deref().map(hold_folder).transpose()?;
    let shop = open(shop)?.value;
    let known = shop.library_names().map_err(|fault| Failure::Input(vec![fault]))?;
    let dir = shop.library_folder().filter(|_| known.iter().any(|name| name == library));
    let dir = dir.ok_or_else(|| {
        let near = nearest(library, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
        let help = if known.is_empty() {
            format!("{PLUGINS}/ is empty")
        } else {
            format!("{PLUGINS}/ holds: {}", known.join(", "))
        };
        Failure::input(format!("no library called `{library}` was admitted"), near.unwrap_or_default() + &help)
    })?;
    take_back(library, &known, &shop)?;
    remove_folder(&dir, library)?;
    print(&format!("Dismissed {library}. `reeve check` tells which designs still name its knots.\n"))
}

/// Takes the maker's word on a library back, unless another one here has the same file.
fn take_back(library: &str, known: &[String], shop: &Shop) -> Result<(), Failure> {
    let Some(digest) = shop.library_digest(library) else { return Ok(()) };
    let others = known.iter().filter(|name| *name != library);
    let mut others = others.filter_map(|name| shop.library_digest(name));
    let admissions = shop.admissions();
    match (admissions.without(&digest), admissions.dir()) {
        (Some(words), Some(word)) if others.all(|other| other != digest) => {
            write_files(word, &[(Admissions::FILE, words)]).map(|_| ())
        }
        _ => Ok(()),
    }
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
