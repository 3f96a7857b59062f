//! Rights that the process gives up, root's own among them.

use rustix::process::{Signal, getppid, set_parent_process_death_signal};
use rustix::thread::{
    CapabilitySet, CapabilitySets, capability_is_in_bounding_set, clear_ambient_capability_set,
    remove_capability_from_bounding_set, set_capabilities, set_keep_capabilities, set_no_new_privs,
};

use super::super::guard::Guarded;

/// Gives up every capability, and the way to new ones.
pub(super) fn give_up(held: &mut Guarded) {
    held.must(set_no_new_privs(true).is_ok(), "no new privileges");
    // Whoever may not drop them can't be given them either: no new privileges.
    for capability in CapabilitySet::all().iter().filter(|one| capability_is_in_bounding_set(*one).unwrap_or(false)) {
        let _ = remove_capability_from_bounding_set(capability);
    }
    let none = CapabilitySet::empty();
    let none = CapabilitySets { effective: none, permitted: none, inheritable: none };
    let given_up = set_keep_capabilities(false).is_ok() && set_capabilities(None, none).is_ok();
    // The oldest kernels have no ambient set; with nothing permitted there is nothing in it.
    let _ = clear_ambient_capability_set();
    held.must(given_up, "no rights of root's");
}

/// Whether the process ends with the one that started it: told by the kernel, so that even one that is killed takes its
/// libraries with it. A library can't undo it: the call for that is on no list.
pub(super) fn ends_with(program: u32) -> bool {
    let told = set_parent_process_death_signal(Some(Signal::KILL)).is_ok();
    // It may have ended before that.
    let there = getppid().is_some_and(|parent| u32::try_from(parent.as_raw_nonzero().get()) == Ok(program));
    told && there
}
