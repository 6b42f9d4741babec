//! The word that was probably meant.

/// The candidate most like `wrong`, if one is like enough to be worth proposing.
pub(crate) fn nearest<'a>(wrong: &str, candidates: &[&'a str]) -> Option<&'a str> {
    let wrong = plain(wrong);
    candidates
        .iter()
        .map(|candidate| (likeness(&wrong, &plain(candidate)), *candidate))
        .filter(|(likeness, _)| *likeness > 0.55)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}

/// Words in a row: `a`, `b` or `c`.
pub(crate) fn listed(words: &[&str]) -> String {
    let quoted: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    match quoted.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => "nothing".to_owned(),
    }
}

/// How alike two words are, from 0 to 1: by letters, or because one begins or ends the other.
fn likeness(wrong: &str, candidate: &str) -> f64 {
    let by_letters = strsim::normalized_damerau_levenshtein(wrong, candidate);
    let shorter = wrong.len().min(candidate.len());
    let contained = shorter >= 3
        && (candidate.starts_with(wrong)
            || candidate.ends_with(wrong)
            || wrong.starts_with(candidate)
            || wrong.ends_with(candidate));
    if contained {
        by_letters.max(0.6)
    } else {
        by_letters
    }
}

/// Letters and digits alone, in lower case, so that `Ground-Clearance` is `ground_clearance`.
fn plain(word: &str) -> String {
    word.chars()
        .filter(|character| character.is_alphanumeric())
        .flat_map(char::to_lowercase)
        .collect()
}
