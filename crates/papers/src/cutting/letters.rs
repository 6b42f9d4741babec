//! A letter for each piece of a bar, the same on the drawing and in the lists. Runs of cable have names already.

use design::cutting::CutSheet;
use quantity::{Length, Quantity as _};

/// A piece with its letter.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Lettered {
    /// `A` to `Z`, then `A2` to `Z2`.
    pub(super) letter: String,
    /// What it is for.
    pub(super) what: String,
    pub(super) length: Length,
    /// How many are cut.
    pub(super) count: u32,
}

/// The pieces of a sheet of bars, the longest first.
pub(super) fn lettered(sheet: &CutSheet) -> Vec<Lettered> {
    let mut pieces: Vec<Lettered> = Vec::new();
    for bar in &sheet.bars {
        for (what, length) in &bar.pieces {
            let same = |piece: &&mut Lettered| piece.what == *what && piece.length == *length;
            match pieces.iter_mut().find(same) {
                Some(piece) => piece.count += bar.times,
                None => pieces.push(Lettered {
                    letter: String::new(),
                    what: what.clone(),
                    length: *length,
                    count: bar.times,
                }),
            }
        }
    }
    let longer = |one: &Lettered, other: &Lettered| {
        let by_length = other.length.base().total_cmp(&one.length.base());
        by_length.then_with(|| one.what.cmp(&other.what))
    };
    pieces.sort_by(longer);
    for (at, piece) in pieces.iter_mut().enumerate() {
        piece.letter = letter(at);
    }
    pieces
}

/// The letter of a piece of a bar.
pub(super) fn letter_of(pieces: &[Lettered], what: &str, length: Length) -> Option<String> {
    let found = pieces
        .iter()
        .find(|piece| piece.what == what && piece.length == length);
    found.map(|piece| piece.letter.clone())
}

fn letter(at: usize) -> String {
    let first = char::from(b'A' + u8::try_from(at % 26).unwrap_or_default());
    match at / 26 {
        0 => first.to_string(),
        round => format!("{first}{}", round + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn letters_go_on_past_the_alphabet() {
        let shown = [0, 25, 26, 53].map(letter);
        assert_eq!(shown, ["A", "Z", "A2", "B3"]);
    }
}
