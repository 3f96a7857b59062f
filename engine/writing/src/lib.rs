//! The only writer of files.
//!
//! Everything is made in a [`Workplace`] beside its place first, down to the disk, and then moved there in one step: who
//! looks finds what was there before or what is new, and whatever fails leaves the maker's folder as it was. Who reads a
//! file, adds to it and writes it again holds the folder meanwhile: [`hold`].
//!
//! This crate knows no shop and no pages: bytes and places alone.

#![allow(clippy::disallowed_methods, reason = "this is the writer that all others must use")]

mod files;
mod folders;
mod lock;
mod places;
mod refused;
mod sets;
mod workplace;

pub use files::{new_file, new_stream, replace, rewrite};
pub use folders::{exchange, new_folder, remove};
pub use lock::{Hold, hold};
pub use places::put_new;
pub use refused::WritingError;
pub use sets::Staged;
pub use workplace::Workplace;
