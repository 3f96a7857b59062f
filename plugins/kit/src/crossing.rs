//! From the contract's C to the author's Rust and back. Panics end here.

#![allow(unsafe_code, reason = "the contract is pointers; each is read once, where it comes in")]

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::ptr;
use std::slice;
use std::sync::OnceLock;

use crate::abi;
use crate::knot::{About, Core, Knot, Parameter, Refusal, Setting, Taken};

/// One knot of a library.
#[derive(Debug)]
pub struct Entry {
    about: About,
    take: fn(&Setting<'_>) -> Result<Taken, Refusal>,
}

impl Entry {
    /// The entry of a type.
    pub const fn of<K: Knot>() -> Self {
        Self { about: K::ABOUT, take: K::take }
    }
}

/// The descriptions of a library's knots as C structs, made when they are first asked for and never freed.
#[derive(Debug)]
pub struct Declared(OnceLock<Vec<abi::Knot>>);

// SAFETY: once made they are only read, and what they point at is never freed.
unsafe impl Sync for Declared {}

impl Declared {
    /// None made yet.
    #[allow(clippy::new_without_default, reason = "a static is made of it, by the macro alone")]
    pub const fn new() -> Self {
        Self(OnceLock::new())
    }
}

/// The description of a knot; null beyond the last.
pub fn declared(declared: &'static Declared, knots: &'static [Entry], place: u32) -> *const abi::Knot {
    let made = declared.0.get_or_init(|| knots.iter().map(|entry| in_c(&entry.about)).collect());
    made.get(place as usize).map_or(ptr::null(), ptr::from_ref)
}

fn in_c(about: &About) -> abi::Knot {
    let (also, also_count) = kept(about.also.iter().copied().map(abi::Text::of).collect());
    let (cautions, caution_count) = kept(about.cautions.iter().copied().map(abi::Text::of).collect());
    let (parameters, parameter_count) = kept(about.parameters.iter().map(parameter).collect());
    abi::Knot {
        size: abi::size_of_u32::<abi::Knot>(),
        kind: about.kind as u32,
        flags: flag(about.on_fitting, abi::ON_FITTING)
            | flag(about.joins, abi::JOINS)
            | flag(about.core_grows, abi::CORE_GROWS)
            | flag(about.give_shrinks, abi::GIVE_SHRINKS),
        take_up_source: about.take_up.source as u32,
        time_source: about.time.source as u32,
        working_least: about.working.0,
        working_most: about.working.1,
        core_least: about.core.0,
        core_most: about.core.1,
        also_count,
        caution_count,
        parameter_count,
        name: abi::Text::of(about.name),
        title: abi::Text::of(about.title),
        summary: abi::Text::of(about.summary),
        take_up_note: abi::Text::of(about.take_up.words),
        time_note: abi::Text::of(about.time.words),
        also,
        cautions,
        parameters,
        pull_s_per_m: about.pull_s_per_m,
    }
}

fn parameter(parameter: &Parameter) -> abi::Parameter {
    abi::Parameter {
        size: abi::size_of_u32::<abi::Parameter>(),
        unit: parameter.unit as u32,
        flags: flag(parameter.whole, abi::WHOLE) | flag(parameter.grows, abi::GROWS),
        reserved: 0,
        name: abi::Text::of(parameter.name),
        about: abi::Text::of(parameter.about),
        least: parameter.least,
        most: parameter.most,
        usual: parameter.usual,
    }
}

/// An array for C, kept until the process ends, and how many it holds.
fn kept<T>(all: Vec<T>) -> (*const T, u32) {
    let count = u32::try_from(all.len()).unwrap_or(u32::MAX);
    (if all.is_empty() { ptr::null() } else { Vec::leak(all).as_ptr() }, count)
}

/// Answers a question, whatever the knot does.
///
/// # Safety
/// `setting` and `taken` must point at what the contract says they do.
pub unsafe fn answer(knots: &'static [Entry], place: u32, setting: *const abi::Setting, taken: *mut abi::Taken) -> u32 {
    // SAFETY: as the caller vouches.
    let (setting, taken) = unsafe { (&*setting, &mut *taken) };
    let Some(entry) = knots.get(place as usize) else {
        return say(taken, abi::FAILED, "there is no such knot in this library");
    };
    match catch_unwind(AssertUnwindSafe(|| (entry.take)(&asked(entry, setting)))) {
        Ok(Ok(figures)) => {
            taken.working_mm = figures.working_mm;
            taken.core_mm = figures.core_mm;
            taken.rise_mm = figures.rise_mm;
            taken.base_s = figures.base_s;
            taken.draws = figures.draws;
            abi::DONE
        }
        Ok(Err(refusal)) => {
            let at = refusal.parameter.and_then(|name| entry.about.parameters.iter().position(|p| p.name == name));
            taken.parameter = at.and_then(|at| u32::try_from(at).ok()).unwrap_or(abi::NO_PARAMETER);
            say(taken, abi::REFUSED, &refusal.words)
        }
        Err(panic) => say(taken, abi::FAILED, &format!("it panicked: {}", panic_words(panic.as_ref()))),
    }
}

fn asked<'a>(entry: &Entry, setting: &'a abi::Setting) -> Setting<'a> {
    let count = setting.parameter_count as usize;
    let values = if count == 0 || setting.parameters.is_null() {
        &[]
    } else {
        // SAFETY: the contract says that so many values stand there during the call.
        unsafe { slice::from_raw_parts(setting.parameters, count) }
    };
    Setting {
        cord_mm: setting.cord_mm,
        give: setting.give,
        working: setting.working,
        core: Core::read(setting),
        core_mm: setting.core_mm,
        parameters: entry.about.parameters,
        values,
    }
}

/// Writes words into an answer, as many as there is room for, and ends them by a zero.
fn say(taken: &mut abi::Taken, status: u32, words: &str) -> u32 {
    let mut end = words.len().min(abi::WORDS - 1);
    while !words.is_char_boundary(end) {
        end -= 1;
    }
    taken.words = [0; abi::WORDS];
    taken.words[..end].copy_from_slice(&words.as_bytes()[..end]);
    status
}

fn panic_words(panic: &(dyn Any + Send)) -> &str {
    let text = panic.downcast_ref::<&str>().copied();
    text.or_else(|| panic.downcast_ref::<String>().map(String::as_str)).unwrap_or("without words")
}

fn flag(set: bool, flag: u32) -> u32 {
    if set { flag } else { 0 }
}
