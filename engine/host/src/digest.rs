//! SHA-256 of a library's file.

use std::fmt::Write;

use sha2::{Digest, Sha256};

/// SHA-256 of bytes, as 64 hexadecimal digits.
pub fn digest_of(bytes: &[u8]) -> String {
    let mut measure = Measure::default();
    measure.add(bytes);
    measure.digest()
}

/// SHA-256 of what comes in pieces.
#[derive(Default)]
pub(crate) struct Measure(Sha256);

impl Measure {
    pub(crate) fn add(&mut self, piece: &[u8]) {
        self.0.update(piece);
    }

    pub(crate) fn digest(self) -> String {
        self.0.finalize().iter().fold(String::new(), |mut digits, byte| {
            // Writing into a text can't fail.
            let _ = write!(digits, "{byte:02x}");
            digits
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// FIPS 180-4's examples, as published in NIST's "Examples with Intermediate Values": one block, and two blocks.
    #[test]
    fn digests_are_the_published_ones() {
        assert_eq!(digest_of(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        let two = b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";
        assert_eq!(digest_of(two), "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
        let mut pieces = Measure::default();
        two.chunks(5).for_each(|piece| pieces.add(piece));
        assert_eq!(pieces.digest(), digest_of(two));
    }
}
