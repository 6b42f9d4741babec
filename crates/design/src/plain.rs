//! Paths, missing facts and numbers of things in plain words, for sentences.

use crate::asking::Lack;

/// A path as one says it: `gate "main" · leaf "panel" · guarded_height` is gate main, leaf panel, guarded height.
pub(crate) fn plain(path: &str) -> String {
    let steps: Vec<String> = path.split(" · ").map(step).collect();
    steps.join(", ")
}

/// A record's name keeps its characters; a key is read as words.
fn step(step: &str) -> String {
    if step.contains('"') {
        step.replace('"', "")
    } else {
        step.replace(['_', '.'], " ")
    }
}

/// A number of things, as one says it: no fuse, one fuse, 3 fuses.
pub(crate) fn counted(count: usize, what: &str) -> String {
    match count {
        0 => format!("no {what}"),
        1 => format!("one {what}"),
        more => format!("{more} {what}s"),
    }
}

/// Missing facts that a sentence names; the finding lists them all.
const SHOWN: usize = 3;

/// The missing facts in a sentence, record by record: `Conduit c-12: friction is not known.`
pub(crate) fn not_known(lacks: &[Lack<'_>]) -> String {
    let shown = lacks.get(..SHOWN).unwrap_or(lacks);
    let records: Vec<String> = shown
        .chunk_by(|a, b| a.origin.path == b.origin.path)
        .map(of_one_record)
        .collect();
    let more = match lacks.len() - shown.len() {
        0 => String::new(),
        1 => "; 1 more fact is missing".to_owned(),
        more => format!("; {more} more facts are missing"),
    };
    capitalized(&format!("{}{more}.", records.join("; ")))
}

fn of_one_record(lacks: &[Lack<'_>]) -> String {
    let whose = lacks
        .first()
        .map(|lack| plain(&lack.origin.path))
        .unwrap_or_default();
    let facts: Vec<String> = lacks.iter().map(Lack::words).collect();
    let is = if facts.len() == 1 { "is" } else { "are" };
    let facts = and(&facts);
    if whose.is_empty() {
        format!("{facts} {is} not known")
    } else {
        format!("{whose}: {facts} {is} not known")
    }
}

/// The words of a list: `friction, slope and depth`.
pub(crate) fn and(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// The text with its first letter as a capital.
pub(crate) fn capitalized(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::{and, capitalized, plain};

    #[test]
    fn paths_become_words() {
        assert_eq!(
            plain("gate \"main\" · leaf \"panel\" · guarded_height"),
            "gate main, leaf panel, guarded height"
        );
        assert_eq!(
            plain("device \"reader_in\" · draws.peak"),
            "device reader_in, draws peak"
        );
    }

    #[test]
    fn lists_and_capitals() {
        let words = ["friction", "slope", "depth"].map(str::to_owned);
        assert_eq!(and(&words), "friction, slope and depth");
        assert_eq!(and(&words[..1]), "friction");
        assert_eq!(capitalized("édition"), "Édition");
        assert_eq!(capitalized(""), "");
    }
}
