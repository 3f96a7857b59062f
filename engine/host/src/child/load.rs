//! The one place where native code that is not the program's own is loaded and called.

#![allow(unsafe_code, reason = "a library is pointers and calls; a wrong one ends this process and no other")]

use std::path::Path;
use std::{ptr, slice};

use reeve_kit::abi::{self, size_of_u32};

use crate::described::{Described, DescribedKnot, DescribedParameter, MOST_KNOTS, MOST_TEXT};
use crate::error::LibraryError;
use crate::wire::WireQuestion;

/// A library, loaded, whose table begins as it should.
pub(super) struct Loaded {
    table: abi::Library,
    /// Never unloaded: descriptions point into it.
    _library: libloading::Library,
}

/// Loads a library from a path and looks at its table; `shown` is what messages call it.
pub(super) fn load(path: &Path, shown: &Path) -> Result<Loaded, LibraryError> {
    // SAFETY: code of the library runs here. That is what this process is for.
    let library = unsafe { libloading::Library::new(path) }
        .map_err(|error| LibraryError::NotALibrary(words(&error, path, shown)))?;
    // SAFETY: only the address is taken; what stands there is looked at bit by bit below.
    let table = unsafe { library.get::<*const abi::Library>(abi::SYMBOL) }.map(|table| *table);
    let table = checked(table.map_err(|_| LibraryError::NoTable)?)?;
    Ok(Loaded { table, _library: library })
}

/// Loads one of the system's own libraries, by its name, for as long as the process lasts.
#[cfg(unix)]
pub(super) fn load_system(name: &str) -> Result<(), LibraryError> {
    // SAFETY: a name without a path is looked for among the system's libraries alone, whose code is as good as the system's.
    match unsafe { libloading::Library::new(name) } {
        Ok(library) => std::mem::forget(library),
        Err(error) => {
            let said = std::error::Error::source(&error).map_or_else(|| error.to_string(), ToString::to_string);
            return Err(LibraryError::NotALibrary(said));
        }
    }
    Ok(())
}

/// What the system says, with the file's own name in place of that of the copy.
fn words(error: &libloading::Error, path: &Path, shown: &Path) -> String {
    let shown = shown.display().to_string();
    let said = std::error::Error::source(error).map_or_else(|| error.to_string(), ToString::to_string);
    let said = said.replace(&path.display().to_string(), &shown);
    said.strip_prefix(&format!("{shown}: ")).map_or(said.clone(), str::to_owned)
}

/// The table, if it is one of the contract that the program keeps.
fn checked(table: *const abi::Library) -> Result<abi::Library, LibraryError> {
    if table.is_null() {
        return Err(LibraryError::NoTable);
    }
    // SAFETY: the symbol names something of the library; each field is read before what follows it is believed to be there.
    let (magic, major, size) = unsafe {
        (
            ptr::read_unaligned(&raw const (*table).magic),
            ptr::read_unaligned(&raw const (*table).major),
            ptr::read_unaligned(&raw const (*table).size),
        )
    };
    if magic != abi::MAGIC {
        return Err(LibraryError::NotOurs);
    }
    if major != abi::MAJOR {
        return Err(LibraryError::OtherContract { major, ours: abi::MAJOR });
    }
    long_enough::<abi::Library>("a table", size)?;
    // SAFETY: it says itself that it is as long as that.
    Ok(unsafe { ptr::read_unaligned(table) })
}

fn long_enough<T>(what: &str, size: u32) -> Result<(), LibraryError> {
    let least = size_of_u32::<T>();
    if size >= least { Ok(()) } else { Err(LibraryError::Short { what: what.to_owned(), size, least }) }
}

/// What a knot may have of each.
const MOST_ALSO: u32 = 16;
const MOST_CAUTIONS: u32 = 8;
const MOST_PARAMETERS: u32 = 16;

impl Loaded {
    /// The library as it describes itself.
    pub(super) fn describe(&self) -> Result<Described, LibraryError> {
        let table = &self.table;
        if table.take.is_none() || table.knot.is_none() {
            return Err(LibraryError::Description("its table points at no functions".to_owned()));
        }
        within("a number of knots", table.knot_count, 1, u32::try_from(MOST_KNOTS).unwrap_or(u32::MAX))?;
        Ok(Described {
            name: text(&table.name, "its name")?,
            version: text(&table.version, "its version")?,
            contract: (table.major, table.minor),
            knots: (0..table.knot_count).map(|place| self.knot(place)).collect::<Result<_, _>>()?,
        })
    }

    fn knot(&self, place: u32) -> Result<DescribedKnot, LibraryError> {
        let missing = || LibraryError::Description(format!("nothing stands in the place of its knot {place}"));
        let ask = self.table.knot.ok_or_else(missing)?;
        // SAFETY: the contract's call, with a place that the library counts itself.
        let knot = unsafe { ask(place) };
        if knot.is_null() {
            return Err(missing());
        }
        // SAFETY: the size stands first; the rest is read once it says that it is there.
        let size = unsafe { ptr::read_unaligned(&raw const (*knot).size) };
        long_enough::<abi::Knot>("a description of a knot", size)?;
        // SAFETY: as it says itself.
        described(&unsafe { ptr::read_unaligned(knot) }, place)
    }

    /// Asks what one knot takes.
    pub(super) fn take(&self, asked: &WireQuestion) -> (u32, abi::Taken) {
        let setting = abi::Setting {
            size: size_of_u32::<abi::Setting>(),
            working: asked.working,
            core: asked.core,
            core_legs: asked.core_legs,
            parameter_count: u32::try_from(asked.values.len()).unwrap_or(0),
            reserved: 0,
            cord_mm: asked.cord_mm,
            give: asked.give,
            core_mm: asked.core_mm,
            core_a_mm: asked.core_a_mm,
            core_b_mm: asked.core_b_mm,
            parameters: asked.values.as_ptr(),
        };
        let mut taken = abi::Taken::EMPTY;
        let Some(take) = self.table.take else { return (abi::FAILED, taken) };
        // SAFETY: the contract's call; both structs are this frame's own, and say their size.
        let status = unsafe { take(asked.place, &raw const setting, &raw mut taken) };
        (status, taken)
    }
}

fn described(knot: &abi::Knot, place: u32) -> Result<DescribedKnot, LibraryError> {
    let name = text(&knot.name, &format!("the name of its knot {place}"))?;
    let of = |what: &str| format!("{what} of `{name}`");
    within(&of("a number of other names"), knot.also_count, 0, MOST_ALSO)?;
    within(&of("a number of cautions"), knot.caution_count, 0, MOST_CAUTIONS)?;
    within(&of("a number of parameters"), knot.parameter_count, 0, MOST_PARAMETERS)?;
    Ok(DescribedKnot {
        title: text(&knot.title, &of("the title"))?,
        also: texts(knot.also, knot.also_count, &of("another name"))?,
        kind: knot.kind,
        summary: text(&knot.summary, &of("the summary"))?,
        on_fitting: knot.flags & abi::ON_FITTING != 0,
        joins: knot.flags & abi::JOINS != 0,
        core_grows: knot.flags & abi::CORE_GROWS != 0,
        give_shrinks: knot.flags & abi::GIVE_SHRINKS != 0,
        working: (knot.working_least, knot.working_most),
        core: (knot.core_least, knot.core_most),
        take_up_source: knot.take_up_source,
        take_up_note: text(&knot.take_up_note, &of("the note on take-up"))?,
        time_source: knot.time_source,
        time_note: text(&knot.time_note, &of("the note on time"))?,
        pull_s_per_m: knot.pull_s_per_m,
        cautions: texts(knot.cautions, knot.caution_count, &of("a caution"))?,
        parameters: parameters(knot, &name)?,
        name,
    })
}

fn parameters(knot: &abi::Knot, of: &str) -> Result<Vec<DescribedParameter>, LibraryError> {
    if knot.parameter_count == 0 {
        return Ok(Vec::new());
    }
    if knot.parameters.is_null() {
        return Err(LibraryError::Description(format!("the parameters of `{of}` stand nowhere")));
    }
    // SAFETY: the first of them says how long each is.
    let size = unsafe { ptr::read_unaligned(&raw const (*knot.parameters).size) };
    long_enough::<abi::Parameter>("a description of a parameter", size)?;
    let one = |at: u32| {
        // SAFETY: so many stand one behind the other, each as long as the first says.
        let parameter = unsafe {
            let first: *const u8 = knot.parameters.cast();
            ptr::read_unaligned::<abi::Parameter>(first.add(at as usize * size as usize).cast())
        };
        let name = text(&parameter.name, &format!("the name of parameter {at} of `{of}`"))?;
        Ok(DescribedParameter {
            about: text(&parameter.about, &format!("what is said of `{name}` of `{of}`"))?,
            unit: parameter.unit,
            whole: parameter.flags & abi::WHOLE != 0,
            grows: parameter.flags & abi::GROWS != 0,
            least: parameter.least,
            most: parameter.most,
            usual: parameter.usual,
            name,
        })
    };
    (0..knot.parameter_count).map(one).collect()
}

fn texts(first: *const abi::Text, count: u32, what: &str) -> Result<Vec<String>, LibraryError> {
    if count > 0 && first.is_null() {
        return Err(LibraryError::Description(format!("{what} stands nowhere")));
    }
    // SAFETY: the library says that so many stand there.
    let one = |at: u32| text(&unsafe { ptr::read_unaligned(first.add(at as usize)) }, what);
    (0..count).map(one).collect()
}

fn text(text: &abi::Text, what: &str) -> Result<String, LibraryError> {
    let wrong = |why: String| LibraryError::Description(format!("{what} {why}"));
    if text.bytes.is_null() || text.length == 0 {
        return Err(wrong("is empty".to_owned()));
    }
    if text.length > MOST_TEXT {
        return Err(wrong(format!("has {} bytes, and {MOST_TEXT} are allowed", text.length)));
    }
    // SAFETY: the library says that so many bytes stand there.
    let bytes = unsafe { slice::from_raw_parts(text.bytes.cast::<u8>(), text.length) };
    let words = std::str::from_utf8(bytes).map_err(|_| wrong("is not text in UTF-8".to_owned()))?;
    Ok(words.to_owned())
}

fn within(what: &str, count: u32, least: u32, most: u32) -> Result<(), LibraryError> {
    if (least..=most).contains(&count) {
        return Ok(());
    }
    Err(LibraryError::Description(format!("{what} of {count}, which must be from {least} to {most}")))
}
