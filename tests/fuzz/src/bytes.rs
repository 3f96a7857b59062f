//! Values taken off the front of bytes, for targets whose input is not one text.

use std::borrow::Cow;

/// Bytes that values are taken off; past their end every value is nothing.
pub(crate) struct Bytes<'a>(pub(crate) &'a [u8]);

impl<'a> Bytes<'a> {
    fn take(&mut self, count: usize) -> &'a [u8] {
        let (taken, rest) = self.0.split_at(count.min(self.0.len()));
        self.0 = rest;
        taken
    }

    pub(crate) fn byte(&mut self) -> u8 {
        self.take(1).first().copied().unwrap_or_default()
    }

    pub(crate) fn flag(&mut self) -> bool {
        self.byte() & 1 == 1
    }

    pub(crate) fn small(&mut self) -> usize {
        self.byte().into()
    }

    /// A whole number of two bytes.
    pub(crate) fn number(&mut self) -> usize {
        self.small() * 256 + self.small()
    }

    /// Any `f64`, those that are no numbers included.
    pub(crate) fn float(&mut self) -> f64 {
        let mut bits = [0; 8];
        let taken = self.take(8);
        bits[..taken.len()].copy_from_slice(taken);
        f64::from_le_bytes(bits)
    }

    /// A text of the length that the first byte says.
    pub(crate) fn text(&mut self) -> Cow<'a, str> {
        let length = self.small();
        String::from_utf8_lossy(self.take(length))
    }

    /// All that is left, as text.
    pub(crate) fn rest(&mut self) -> Cow<'a, str> {
        String::from_utf8_lossy(std::mem::take(&mut self.0))
    }
}

/// A text as [`Bytes::text`] reads it back.
pub(crate) fn packed(text: &str) -> Vec<u8> {
    let bytes = text.as_bytes();
    let length = bytes.len().min(255);
    let mut packed = vec![u8::try_from(length).unwrap()];
    packed.extend(&bytes[..length]);
    packed
}
