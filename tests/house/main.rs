//! What the house promises of its own text: where the language's checks are off, and what the pages say.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod phrases;
mod unsafe_code;
