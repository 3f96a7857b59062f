//! Rows kept from one look at the designs to the next, so that what has not changed need not be worked out again.
//!
//! A row is taken only where nothing that it rests on is other than it was: the design's text and its parts' by their digests,
//! everything else by one key. What is kept is nobody's record: without it the same rows are worked out anew.

use std::collections::BTreeMap;
use std::path::PathBuf;

use reeve_shop::{DesignText, Shop, SizesRead};
use reeve_writing::WritingError;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::row::DesignRow;

/// What the file begins with: whose it is, and its form.
const HEAD: &[u8] = b"reeve rows 1\n";
/// More than a hundred thousand designs come to.
const MOST_BYTES: u64 = 200_000_000;

/// SHA-256 of a text.
type TextDigest = [u8; 32];

/// Where rows are kept, and what they rest on besides their designs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowShelf {
    /// The file.
    pub at: PathBuf,
    /// What tells the program from others that may reckon otherwise.
    pub program: String,
}

/// Rows that were kept.
#[derive(Debug, Default)]
pub(crate) struct KeptRows {
    /// What all of them rest on.
    key: String,
    designs: BTreeMap<String, KeptDesign>,
}

/// The rows of a design that has no faults, and what they rest on.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(crate) struct KeptDesign {
    text: TextDigest,
    parts: Vec<(String, TextDigest)>,
    pub(crate) rows: Vec<DesignRow>,
}

/// The file's content.
#[derive(Serialize, Deserialize)]
struct ShelfFile {
    key: String,
    designs: Vec<(String, KeptDesign)>,
}

impl RowShelf {
    /// What all rows of a shop rest on.
    fn key(&self, shop: &Shop) -> String {
        format!("{}, {}", self.program, shop.opening_digest())
    }

    /// The rows that were kept; none where there are none, or they rest on something else, or the file is not whole.
    pub(crate) fn open(&self, shop: &Shop) -> KeptRows {
        let found = reeve_door::read(&self.at, MOST_BYTES).ok();
        let file = found.as_deref().and_then(whole).and_then(|bytes| postcard::from_bytes::<ShelfFile>(bytes).ok());
        let key = self.key(shop);
        let file = file.filter(|file| file.key == key);
        KeptRows { key, designs: file.map(|file| file.designs.into_iter().collect()).unwrap_or_default() }
    }

    /// Keeps rows in place of those before.
    ///
    /// # Errors
    /// When the file can't be written: nothing but time is lost.
    pub(crate) fn put(&self, kept: KeptRows) -> Result<(), WritingError> {
        let file = ShelfFile { key: kept.key, designs: kept.designs.into_iter().collect() };
        let (Ok(body), Some((dir, name))) = (postcard::to_stdvec(&file), self.at.parent().zip(self.at.file_name()))
        else {
            return Ok(());
        };
        let digest = Sha256::digest(&body);
        let bytes = [HEAD, &digest[..], &body].concat();
        reeve_writing::replace(dir, &[(&name.to_string_lossy(), &bytes)]).map(|_| ())
    }
}

/// What follows the digest of a file, if it is that which was digested.
fn whole(bytes: &[u8]) -> Option<&[u8]> {
    let (digest, body) = bytes.strip_prefix(HEAD)?.split_at_checked(size_of::<TextDigest>())?;
    (Sha256::digest(body)[..] == *digest).then_some(body)
}

fn digest_of(text: &str) -> TextDigest {
    Sha256::digest(text).into()
}

impl KeptRows {
    /// The rows of a design, where they rest on the same texts as now.
    pub(crate) fn of(&self, text: &DesignText, shop: &Shop) -> Option<&[DesignRow]> {
        let kept = self.designs.get(&text.stem)?;
        let is_same = |(stem, digest): &(String, TextDigest)| {
            let part = shop.design_text_of(stem).value;
            part.is_some_and(|part| digest_of(&part.source.text) == *digest)
        };
        (kept.text == digest_of(&text.source.text) && kept.parts.iter().all(is_same)).then_some(&kept.rows)
    }

    /// Lets go of the rows of all designs but these, which stand in order.
    pub(crate) fn keep_only(&mut self, stems: &[String]) {
        self.designs.retain(|stem, _| stems.binary_search(stem).is_ok());
    }

    /// Adds the rows of designs, in place of those that they had.
    pub(crate) fn add(&mut self, designs: impl IntoIterator<Item = (String, KeptDesign)>) {
        self.designs.extend(designs);
    }
}

impl KeptDesign {
    pub(crate) fn new(text: &DesignText, read: &SizesRead, rows: &[DesignRow]) -> Self {
        let parts = read.parts.iter().filter(|(stem, _)| **stem != text.stem);
        Self {
            text: digest_of(&text.source.text),
            parts: parts.map(|(stem, source)| (stem.clone(), digest_of(&source.text))).collect(),
            rows: rows.to_vec(),
        }
    }
}
