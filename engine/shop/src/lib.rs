//! A shop's folder: its rates, store, designs, commissions, own knots and templates.
//!
//! This crate is the only reader of the maker's files. Each kind of file has a reader in [`files`];
//! [`Shop`] resolves the names between them and gathers every fault.

mod adding;
mod admissions;
mod answer;
pub mod arguments;
mod choice;
mod designs;
pub mod files;
mod folder;
mod libraries;
mod orders;
mod own_folders;
mod resolve;
mod samples;
mod schemas;
mod shop;

pub use adding::{Learnt, NewSample};
pub use admissions::Admissions;
pub use answer::Answer;
pub use choice::{Choice, Choices, Market, Wish};
pub use designs::{DesignText, FoundDesign};
pub use folder::{Folder, FolderError, Listed};
pub use libraries::{Admission, Admitted, Candidate, PLUGINS};
pub use orders::{Order, SizesRead};
pub use own_folders::{own_folder_around, real_path};
pub use schemas::schemas;
pub use shop::{Added, DEMO_COMMISSION, DEMO_DESIGN, Relearnt, Shop, read_knot};
