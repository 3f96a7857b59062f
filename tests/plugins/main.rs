//! Libraries of computed knots: the contract, admitting, the shipped ones, and every way in which one can misbehave.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod admitting;
#[cfg(all(target_os = "linux", target_arch = "x86_64"))]
mod attacks;
mod contract;
mod misbehaving;
mod shipped;
mod template;
mod workshop;
