//! Everything that is kept holds: what a search begins with, and what once broke something.

use reeve_fuzz::TARGETS;

#[test]
fn every_kept_input_holds() {
    let mut broken = Vec::new();
    for target in TARGETS {
        let kept = target.kept();
        assert!(!kept.is_empty(), "{} begins with nothing", target.name);
        for (name, input) in kept {
            if std::panic::catch_unwind(|| (target.holds)(&input)).is_err() {
                broken.push(format!("{} {name}", target.name));
            }
        }
    }
    assert!(broken.is_empty(), "what does not hold is told above: {broken:?}");
}
