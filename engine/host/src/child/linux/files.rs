//! Landlock: which files may be read at all, and nothing that could be written, reached or signalled.
//!
//! It does not govern modes, times or attributes of files; the lists of calls do. It stands behind them, should one leak.

use std::error::Error;

use landlock::{
    ABI, Access, AccessFs, AccessNet, Ruleset, RulesetAttr, RulesetCreatedAttr, RulesetStatus, Scope,
    path_beneath_rules,
};

/// Where a system keeps what a library is linked with.
pub(super) const LIBRARIES: &[&str] =
    &["/usr", "/lib", "/lib64", "/lib32", "/etc/ld.so.cache", "/nix/store", "/gnu/store", "/opt", "/dev/null"];

/// No file but those beneath some places, and those only to read; no network. Whether it holds.
pub(super) fn only(places: &[&str]) -> bool {
    let held = || -> Result<RulesetStatus, Box<dyn Error>> {
        let abi = ABI::V5;
        let rules = Ruleset::default()
            .handle_access(AccessFs::from_all(abi))?
            .handle_access(AccessNet::from_all(abi))?
            .create()?
            .add_rules(path_beneath_rules(places, AccessFs::from_read(abi)))?;
        Ok(rules.restrict_self()?.ruleset)
    };
    held().is_ok_and(|status| status != RulesetStatus::NotEnforced)
}

/// No signal to another process, and no socket without a file. Whether it holds: kernels before 6.12 don't offer it.
pub(super) fn no_signals() -> bool {
    let held = || -> Result<RulesetStatus, Box<dyn Error>> {
        Ok(Ruleset::default().scope(Scope::from_all(ABI::V6))?.create()?.restrict_self()?.ruleset)
    };
    held().is_ok_and(|status| status != RulesetStatus::NotEnforced)
}
