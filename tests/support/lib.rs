//! What the tests share: the program itself, shops in folders of their own, and texts kept to compare with.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]
#![allow(clippy::missing_panics_doc, reason = "everything here may stop the test that calls it")]

mod kept;
mod program;
mod shop;

pub use kept::{check_kept, compare_kept, compare_texts, kept_names, regenerates, snapshots};
pub use program::{BUILT, Ran, commands, reeve, root, run, run_reading, shipped};
pub use shop::{DEMO_DAY, TestShop, Tree, files_below, host, tree_of};
