//! The nearest word to a misspelt one.

/// Finds the candidate that a misspelt word most likely meant; `None` when nothing comes close.
///
/// ```
/// use reeve_reading::nearest;
/// assert_eq!(nearest("coutn", ["count", "cord"]), Some("count"));
/// assert_eq!(nearest("zebra", ["count", "cord"]), None);
/// ```
pub fn nearest<'c>(word: &str, candidates: impl IntoIterator<Item = &'c str>) -> Option<&'c str> {
    // Below this likeness a suggestion misleads more often than it helps.
    const LIKE_ENOUGH: f64 = 0.6;
    let word = word.to_lowercase();
    candidates
        .into_iter()
        .map(|candidate| (strsim::normalized_damerau_levenshtein(&word, &candidate.to_lowercase()), candidate))
        .filter(|(likeness, _)| *likeness >= LIKE_ENOUGH)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}
