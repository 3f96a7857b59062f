//! Bindings that are asked for by their length: a coil and a gathering wrap of as many turns as that takes.

mod bundle;
mod coil;
mod gathering_wrap;
mod turns;

pub use coil::CoilByLength;
pub use gathering_wrap::GatheringWrapByLength;

reeve_kit::library!("bound": GatheringWrapByLength, CoilByLength);
