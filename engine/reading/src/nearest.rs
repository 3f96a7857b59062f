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
    const LIKE_ENOUGH: f64 = 0.55;
    let word = word.to_lowercase();
    let like = |candidate: &'c str| {
        let lower = candidate.to_lowercase();
        let likeness = strsim::normalized_damerau_levenshtein(&word, &lower);
        // Few slips fall on the first letter: among equals it decides.
        let same_start = word.chars().next() == lower.chars().next();
        (likeness, same_start, candidate)
    };
    candidates
        .into_iter()
        .map(like)
        .filter(|(likeness, ..)| *likeness >= LIKE_ENOUGH)
        .max_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)))
        .map(|(.., candidate)| candidate)
}
