//! Why a text could not be read, and how user text is quoted in a message.

use std::ops::Range;

/// Why a text is not the quantity that was wanted: where in it, what was expected there, and what to write.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{what}")]
pub struct ReadError {
    /// What is wrong, as a sentence.
    pub what: String,
    /// The bytes of the text that are at fault.
    pub place: Range<usize>,
    /// What to write instead, ready to paste.
    pub write: Option<String>,
}

/// The longest piece of the reader's text that a message repeats, in characters.
const QUOTED: usize = 40;

/// A piece of the text between backquotes, shortened and with its control characters made visible.
pub(super) fn quoted(text: &str) -> String {
    let text = text.trim();
    let mut shown: String = text.chars().take(QUOTED).flat_map(visible).collect();
    if text.chars().nth(QUOTED).is_some() {
        shown.push('…');
    }
    format!("`{shown}`")
}

/// The letter itself, or its escape where printing it would disturb the message.
fn visible(letter: char) -> impl Iterator<Item = char> {
    let escape = letter.is_control().then(|| letter.escape_default());
    let plain = (!letter.is_control()).then_some(letter);
    escape.into_iter().flatten().chain(plain)
}

/// The candidate nearest to a word in spelling, if it is near enough to be meant.
pub(super) fn nearest<'w>(
    word: &str,
    candidates: impl IntoIterator<Item = &'w str>,
) -> Option<&'w str> {
    let lower = word.to_lowercase();
    let allowed = (lower.chars().count() / 3).max(usize::from(lower.chars().count() > 2));
    candidates
        .into_iter()
        .map(|candidate| {
            (
                strsim::damerau_levenshtein(&lower, &candidate.to_lowercase()),
                candidate,
            )
        })
        .filter(|(distance, candidate)| *distance <= allowed && !candidate.is_empty())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
