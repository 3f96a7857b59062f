//! What a shop answers: a value, and what is wrong with what it was read from.

use reeve_reading::Fault;

/// An answer of the shop, and the faults found on the way. They are told by whoever asked, and kept nowhere.
#[derive(Debug, Clone)]
pub struct Answer<T> {
    /// The answer.
    pub value: T,
    /// What is wrong, or to be looked at.
    pub faults: Vec<Fault>,
}

impl<T> Answer<T> {
    /// The value, with its faults added to others; one that is among them already is not told again.
    pub fn noted(self, faults: &mut Vec<Fault>) -> T {
        for fault in self.faults {
            if !faults.contains(&fault) {
                faults.push(fault);
            }
        }
        self.value
    }
}
