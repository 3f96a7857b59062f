//! One reader a kind of file: what was typed, with every place.

mod admitted;
mod commission;
mod design;
mod library;
mod rates;
mod samples;
mod sizes;
mod store;

pub use admitted::{AdmittedFile, admitted_file, admitted_text};
pub use commission::{TypedAmount, TypedCommission, TypedItem, TypedLine, TypedTax, commission_file};
pub use design::{Chosen, StepKind, TypedDesign, TypedFitting, TypedGroup, TypedPart, TypedStep, design_file};
pub use library::{LIBRARY_FILE, TypedLibrary, library_file, library_text};
pub use rates::shop_file;
pub use samples::{TypedSample, TypedSamples, TypedWork, samples_file};
pub(crate) use sizes::fit;
pub use store::{cords_file, fittings_file};
