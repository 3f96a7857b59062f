//! The order book, by the program itself: killed, crowded, without room, old, cut short; and what must always hold of it.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod course;
mod crowd;
mod files;
mod issuing;
mod killed;
mod pages;
mod paid;
mod personal;
mod ready;
mod sealed;
mod typed;
mod undone;
mod workshop;
