//! Text made fit for the page: what no face can show is marked, words too long for a line may break, and a number
//! stays on one line with its unit.
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
            text: with_breaks(&with_units_kept(&shown.text)),
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

/// Words that stay on the line of the number before them.
const UNITS: [&str; 44] = [
    "%", "A", "Ah", "AWG", "Hz", "J", "K", "N", "V", "VA", "W", "Wh", "dB", "dBm", "ft", "ft/s",
    "ft²", "h", "hp", "in", "in²", "kN", "kW", "kg", "kip", "km/h", "lb", "lbf", "lbf/ft²", "m",
    "m/s", "mA", "mm", "mm²", "mV", "mph", "ms", "m²", "psi", "s", "°C", "°F", "Ω", "Ω/kft",
];

/// A space at which no line breaks.
const KEPT_SPACE: char = '\u{A0}';

/// Replaces the space between a number and its unit, and after `±`, by one at which no line breaks.
fn with_units_kept(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    for (index, word) in text.split(' ').enumerate() {
        if index > 0 {
            kept.push(if belongs(&kept, word) {
                KEPT_SPACE
            } else {
                ' '
            });
        }
        kept.push_str(word);
    }
    kept
}

/// Whether this word stays with what stands before it.
fn belongs(before: &str, word: &str) -> bool {
    let unit = word.trim_end_matches(['.', ',', ';', ':', ')', '?']);
    let after_number = before.ends_with(|character: char| character.is_ascii_digit());
    let is_number = word.starts_with(|character: char| character.is_ascii_digit());
    word == "±" || (after_number && UNITS.contains(&unit)) || (before.ends_with('±') && is_number)
}

fn with_breaks(text: &str) -> String {
    let mut broken = String::with_capacity(text.len());
    let mut run = 0;
    for character in text.chars() {
        run = if character.is_whitespace() || character == '-' {
            0
        } else {
            run + 1
        };
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
        let text =
            "At the reader, in the coldest hour: √2 ≤ ½ · φ, a → b. Give 5 inches, not 3 men.";
        assert_eq!(
            Legible::prose(text),
            Legible {
                text: text.to_owned(),
                replaced: 0
            }
        );
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        assert_eq!(
            Legible::prose("It has 10.9 V ± 0.2 V; it needs 7 cables.").text,
            "It has 10.9\u{A0}V\u{A0}±\u{A0}0.2\u{A0}V; it needs 7 cables."
        );
        assert_eq!(Legible::prose("6 lbf").text, "6\u{A0}lbf");
        assert_eq!(
            Legible::prose("0.02 ± 0.006").text,
            "0.02\u{A0}±\u{A0}0.006"
        );
    }

    #[test]
    fn what_no_face_shows_is_marked_and_counted() {
        let legible = Legible::prose("Gate 🔒 門\u{0}");
        assert_eq!(
            legible.text,
            format!("Gate {PLACEHOLDER} {PLACEHOLDER}{PLACEHOLDER}")
        );
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
