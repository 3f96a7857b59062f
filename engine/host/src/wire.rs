//! What goes through the pipes between the program and the process of a library.
//!
//! A message is its length in four bytes, the lowest first, and so many bytes of postcard. Both ends are the same program,
//! so the form needs no version; but what comes from the process is checked like any input, for a library may write there.

use std::io::{self, Read, Write};

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::described::Described;
use crate::error::LibraryError;

/// No message is longer: 64 described knots are far shorter.
const MOST_BYTES: usize = 4_000_000;

/// The most questions in one message: fewer bytes than a pipe holds, so that writing them never waits.
pub(crate) const BATCH: usize = 128;

/// Tells the process that the file is the one that was meant.
#[derive(Debug, Serialize, Deserialize)]
pub(crate) struct Load {
    /// Whether it is loaded even where nothing holds it back.
    pub(crate) waived: bool,
}

/// What the process says first, before it loads anything: what holds it back, in words.
pub(crate) type Held = Result<Vec<String>, LibraryError>;

/// What it says next. From here on a library may have written it.
#[derive(Debug, Serialize, Deserialize)]
pub(crate) enum Hello {
    /// The library is loaded, and describes itself so.
    Ready(Described),
    /// It can't be.
    Error(LibraryError),
}

/// Questions, all of one message.
pub(crate) type Questions = Vec<WireQuestion>;

/// One question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct WireQuestion {
    /// The knot's place in its library.
    pub(crate) place: u32,
    pub(crate) cord_mm: f64,
    pub(crate) give: f64,
    pub(crate) working: u32,
    /// As the contract counts them.
    pub(crate) core: u32,
    pub(crate) core_legs: u32,
    pub(crate) core_mm: f64,
    pub(crate) core_a_mm: f64,
    pub(crate) core_b_mm: f64,
    pub(crate) values: Vec<f64>,
}

/// Answers, one for each question.
#[derive(Debug, Serialize, Deserialize)]
pub(crate) struct Answers {
    pub(crate) answers: Vec<Told>,
    /// The slowest answer, in nanoseconds: of the two times that each was asked the faster.
    pub(crate) slowest_ns: u64,
}

/// One answer as it came. Nobody has judged it yet: that is the program's to do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Told {
    /// The same both times.
    Same {
        /// As the contract counts them.
        status: u32,
        /// The parameter to blame, as the contract counts them.
        parameter: u32,
        figures: TakenFigures,
        words: String,
    },
    /// Two answers, and in what they differ.
    Differing(String),
}

/// What one knot takes, as the library says.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub(crate) struct TakenFigures {
    pub(crate) working_mm: f64,
    pub(crate) core_mm: f64,
    pub(crate) rise_mm: f64,
    pub(crate) base_s: f64,
    pub(crate) draws: f64,
}

impl TakenFigures {
    /// Each figure, and what it is.
    pub(crate) fn named(&self) -> [(&'static str, f64); 5] {
        [
            ("a length of working leg", self.working_mm),
            ("a length of core leg", self.core_mm),
            ("a rise", self.rise_mm),
            ("a time", self.base_s),
            ("a number of draws", self.draws),
        ]
    }
}

/// Writes one message.
pub(crate) fn send(to: &mut impl Write, message: &impl Serialize) -> io::Result<()> {
    let bytes = postcard::to_stdvec(message).map_err(io::Error::other)?;
    let length = u32::try_from(bytes.len()).map_err(io::Error::other)?;
    let mut whole = length.to_le_bytes().to_vec();
    whole.extend(bytes);
    to.write_all(&whole)?;
    to.flush()
}

/// Reads the bytes of one message; nothing at the end of the pipe.
pub(crate) fn receive(from: &mut impl Read) -> io::Result<Option<Vec<u8>>> {
    let mut length = [0; 4];
    match from.read_exact(&mut length) {
        Err(error) if error.kind() == io::ErrorKind::UnexpectedEof => return Ok(None),
        other => other?,
    }
    let length = u32::from_le_bytes(length) as usize;
    if length > MOST_BYTES {
        return Err(io::Error::other("a message of this length is none"));
    }
    let mut bytes = vec![0; length];
    from.read_exact(&mut bytes)?;
    Ok(Some(bytes))
}

/// Reads what the bytes of a message say.
pub(crate) fn open<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    postcard::from_bytes(bytes).ok()
}

#[cfg(test)]
#[allow(clippy::expect_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        /// A library may write anything into the pipe: it is read as a message or not at all.
        #[test]
        fn any_bytes_are_a_message_or_none(bytes in any::<Vec<u8>>()) {
            let mut rest = bytes.as_slice();
            while let Ok(Some(message)) = receive(&mut rest) {
                let _: Option<Hello> = open(&message);
                let _: Option<Answers> = open(&message);
            }
            let _: Option<Hello> = open(&bytes);
            let _: Option<Answers> = open(&bytes);
        }

        #[test]
        fn what_is_sent_is_received(values in any::<Vec<f64>>(), place in any::<u32>()) {
            let asked = WireQuestion {
                place,
                cord_mm: 4.0,
                give: 0.1,
                working: 1,
                core: 0,
                core_legs: 2,
                core_mm: 8.0,
                core_a_mm: 4.0,
                core_b_mm: 0.0,
                values,
            };
            let mut pipe = Vec::new();
            send(&mut pipe, &vec![asked.clone()]).expect("a vector takes everything");
            let bytes = receive(&mut pipe.as_slice()).expect("it is whole").expect("it is there");
            let back: Questions = open(&bytes).expect("it is a message");
            let bits = |asked: &WireQuestion| asked.values.iter().map(|value| value.to_bits()).collect::<Vec<_>>();
            prop_assert_eq!(bits(&back[0]), bits(&asked));
        }
    }

    /// A batch of the longest questions there can be is written at once: a pipe holds it, with no one reading.
    #[test]
    fn a_batch_fits_into_a_pipe() {
        // POSIX promises 4096 bytes; Linux gives 65 536 (pipe(7)), and elsewhere it is as much or grows to it.
        const PIPE: usize = 65_536;
        let asked = WireQuestion {
            place: u32::MAX,
            cord_mm: f64::MAX,
            give: f64::MAX,
            working: u32::MAX,
            core: u32::MAX,
            core_legs: u32::MAX,
            core_mm: f64::MAX,
            core_a_mm: f64::MAX,
            core_b_mm: f64::MAX,
            values: vec![f64::MAX; 16],
        };
        let mut pipe = Vec::new();
        send(&mut pipe, &vec![asked; BATCH]).expect("a vector takes everything");
        assert!(pipe.len() < PIPE, "{}", pipe.len());
    }
}
