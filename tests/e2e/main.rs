//! The program itself, run as a maker runs it, in folders of its own.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod begin;
mod chart;
mod compare;
mod help;
mod languages;
mod limits;
mod naming;
mod out;
mod pages;
mod practice;
#[cfg(unix)]
mod readers;
mod risk;
mod samples;
mod sizes;
mod streams;
mod templates;
mod tying;
mod unseen;
