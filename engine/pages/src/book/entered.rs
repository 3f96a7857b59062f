//! What was entered in the book, in words for the terminal.

use reeve_book::{Logged, State};
use rust_decimal::Decimal;

use super::{logged_words, state_words};
use crate::phrases::say;
use crate::words::Words;

/// What was entered, or was not.
#[derive(Debug, Clone, PartialEq)]
pub enum Entered<'a> {
    /// A commission, by its reference, as an enquiry.
    Enquiry(&'a str),
    /// Where a commission stands: what it was, and what it is.
    Marked(&'a str, State, State),
    /// A payment, or a refund below zero.
    Paid {
        /// The commission.
        name: &'a str,
        /// How much, rounded to the minor unit.
        amount: Decimal,
        /// What is then owed, rounded to the minor unit; below zero where it goes back.
        due: Decimal,
    },
    /// What was logged for a commission.
    Logged(&'a str),
    /// An entry of a commission by its number, struck out.
    Undone(&'a str, u32, &'a Logged),
    /// The timer runs for a commission.
    TimerRuns(&'a str),
    /// Minutes of the timer, for a commission.
    Timed(&'a str, Decimal),
    /// Nothing: the timer ran for less than half a minute.
    TooShort(&'a str),
    /// Nothing: the timer was dropped.
    TimerDropped,
    /// Nothing: no timer ran.
    NoTimer,
}

/// What was entered, in a sentence.
pub fn entered_words(entered: &Entered<'_>, words: &Words) -> String {
    match *entered {
        Entered::Enquiry(reference) => say!(words, "entered-enquiry", name = reference),
        Entered::Marked(name, was, is) => {
            say!(words, "entered-mark", name = name, was = state_words(was, words), is = state_words(is, words))
        }
        Entered::Paid { name, amount, due } if due < Decimal::ZERO => {
            say!(words, "entered-overpaid", name = name, amount = words.money(amount), back = words.money(-due))
        }
        Entered::Paid { name, amount, due } => {
            say!(words, "entered-payment", name = name, amount = words.money(amount), due = words.money(due))
        }
        Entered::Logged(name) => say!(words, "entered", name = name),
        Entered::Undone(name, number, what) => {
            say!(words, "entered-undone", name = name, number = number, what = logged_words(what, words))
        }
        Entered::TimerRuns(name) => say!(words, "entered-timer-runs", name = name),
        Entered::Timed(name, minutes) => {
            say!(words, "entered-minutes", name = name, minutes = words.number(minutes))
        }
        Entered::TooShort(name) => say!(words, "entered-too-short", name = name),
        Entered::TimerDropped => say!(words, "entered-timer-dropped"),
        Entered::NoTimer => say!(words, "entered-no-timer"),
    }
}
