//! Knots that are woven round something: Turk's heads and round plaits.
//!
//! Both are a plain weave laid round a rod: one set of cords winds to the right, one to the left, each over and under the
//! other in turn. [`weave`] has the section of such a weave, [`band`] lays it into a Turk's head.

pub mod band;
mod round_plait;
mod turks_head;
pub mod weave;

pub use round_plait::RoundPlait;
pub use turks_head::TurksHead;

reeve_kit::library!("woven": TurksHead, RoundPlait);
