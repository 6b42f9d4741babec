//! Text made fit for the page: what no face can show is marked, and words too long for a line may break.
//!
//! An archival document must not hold a character without a shape. Such a character is replaced by [`PLACEHOLDER`],
//! which the reader sees; the site file inside the document still holds the original.

use super::fonts::FACES;
use serde_json::Value;

/// What is printed in place of a character that no face can show.
pub const PLACEHOLDER: char = '□';

/// The place at which a long word may break: it has no width and no shape.
const BREAK: char = '\u{200B}';

/// Longest run of letters that is left whole, in characters.
const LONGEST_RUN: usize = 18;

/// Text fit for the page, and whether something in it had to be marked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Legible {
    /// The text to be printed.
    pub text: String,
    /// How many characters were replaced by [`PLACEHOLDER`].
    pub replaced: usize,
}

impl Legible {
    /// Makes prose fit for the page.
    pub fn prose(text: &str) -> Self {
        let shown = Self::shown(text);
        Self {
            text: with_breaks(&shown.text),
            replaced: shown.replaced,
        }
    }

    /// Marks what no face can show and changes nothing else, as is right for the text of a drawing file.
    pub fn shown(text: &str) -> Self {
        let mut replaced = 0;
        let text = text
            .chars()
            .filter(|character| !is_format_control(*character))
            .map(|character| {
                if character == '\n' || character == '\t' || character == '\r' {
                    return character;
                }
                if is_printable(character) {
                    return character;
                }
                replaced += 1;
                PLACEHOLDER
            })
            .collect();
        Self { text, replaced }
    }
}

/// Makes every text in a tree of data fit for the page, and tells how many characters were replaced.
pub(super) fn make_legible(value: &mut Value) -> usize {
    match value {
        Value::String(text) => {
            let legible = Legible::prose(text);
            *text = legible.text;
            legible.replaced
        }
        Value::Array(items) => items.iter_mut().map(make_legible).sum(),
        Value::Object(fields) => fields.values_mut().map(make_legible).sum(),
        Value::Null | Value::Bool(_) | Value::Number(_) => 0,
    }
}

fn is_printable(character: char) -> bool {
    !character.is_control() && !is_private(character) && FACES.can_show(character)
}

/// Invisible marks that steer direction, joining or emphasis and have no shape of their own.
fn is_format_control(character: char) -> bool {
    matches!(character,
        '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{206F}'
        | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}' | '\u{00AD}' | '\u{FFF9}'..='\u{FFFB}')
}

/// Characters whose meaning nobody but their maker knows.
fn is_private(character: char) -> bool {
    matches!(character, '\u{E000}'..='\u{F8FF}' | '\u{F0000}'..='\u{FFFFD}' | '\u{100000}'..='\u{10FFFD}')
}

fn with_breaks(text: &str) -> String {
    let mut broken = String::with_capacity(text.len());
    let mut run = 0;
    for character in text.chars() {
        run = if character.is_whitespace() || character == '-' { 0 } else { run + 1 };
        if run > LONGEST_RUN && character.is_alphanumeric() {
            broken.push(BREAK);
            run = 1;
        }
        broken.push(character);
    }
    broken
}

#[cfg(test)]
mod tests {
    use super::{Legible, PLACEHOLDER};

    #[test]
    fn ordinary_text_is_left_as_it_is() {
        let text = "At the reader, 10.9 V ± 0.2 V; it needs 10.2 V. √2 ≤ ½ Ω";
        assert_eq!(Legible::prose(text), Legible { text: text.to_owned(), replaced: 0 });
    }

    #[test]
    fn what_no_face_shows_is_marked_and_counted() {
        let legible = Legible::prose("Gate 🔒 門\u{0}");
        assert_eq!(legible.text, format!("Gate {PLACEHOLDER} {PLACEHOLDER}{PLACEHOLDER}"));
        assert_eq!(legible.replaced, 3);
    }

    #[test]
    fn a_long_word_may_break() {
        let legible = Legible::prose(&"x".repeat(40));
        assert_eq!(legible.text.matches('\u{200B}').count(), 2);
    }

    #[test]
    fn a_long_hyphenated_name_is_left_whole() {
        let text = "single-anchor-concrete-breakout-strength";
        assert_eq!(Legible::prose(text).text, text);
    }
}
