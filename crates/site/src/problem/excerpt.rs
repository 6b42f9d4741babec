//! The line at fault, cut to a readable width, and where in it the fault is.

use crate::source::Source;
use serde::Serialize;
use std::ops::Range;
use unicode_width::UnicodeWidthChar;

/// Columns that an excerpt may take.
const WIDTH: usize = 96;

/// Columns shown before the fault when the line had to be cut.
const LEAD: usize = 24;

/// A line with the columns at fault.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Excerpt {
    /// The line, or the part of it around the fault, with `…` where it was cut.
    pub text: String,
    /// Columns of a terminal before the fault.
    pub before: usize,
    /// Columns of a terminal that the fault takes, at least one.
    pub wide: usize,
}

impl Excerpt {
    /// The part of the line that shows `span`.
    pub(crate) fn new(source: &Source, line: usize, span: &Range<usize>) -> Self {
        let bytes = source.line_span(line);
        let text = |range: Range<usize>| shown(source.text.get(range).unwrap_or_default());
        let start = span.start.clamp(bytes.start, bytes.end);
        let end = span.end.clamp(start, bytes.end);
        let (left, fault, right) = (
            text(bytes.start..start),
            text(start..end),
            text(end..bytes.end),
        );
        let left = if width(&left) + width(&fault) > WIDTH {
            cut_left(&left)
        } else {
            left
        };
        let fault = cut_right(&fault, WIDTH.saturating_sub(width(&left)));
        let right = cut_right(&right, WIDTH.saturating_sub(width(&left) + width(&fault)));
        Self {
            before: width(&left),
            wide: width(&fault).max(1),
            text: format!("{left}{fault}{right}"),
        }
    }
}

/// Columns that a text takes.
fn width(text: &str) -> usize {
    text.chars()
        .map(|character| character.width().unwrap_or(0))
        .sum()
}

/// The text with tabs and control characters made visible as one column each.
fn shown(text: &str) -> String {
    let one = |character: char| match character {
        '\t' => ' ',
        character if character.is_control() => '·',
        character => character,
    };
    text.chars().map(one).collect()
}

/// The end of a text, behind `…`.
fn cut_left(text: &str) -> String {
    let mut kept: Vec<char> = Vec::new();
    let mut columns = 0;
    for character in text.chars().rev() {
        columns += character.width().unwrap_or(0);
        if columns > LEAD {
            kept.push('…');
            break;
        }
        kept.push(character);
    }
    kept.into_iter().rev().collect()
}

/// The beginning of a text, before `…` when it does not fit.
fn cut_right(text: &str, columns: usize) -> String {
    if width(text) <= columns {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut taken = 1;
    for character in text.chars() {
        taken += character.width().unwrap_or(0);
        if taken > columns {
            break;
        }
        kept.push(character);
    }
    kept.push('…');
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::SourceFile;

    /// The excerpt of a one-line text in which `fault` is at fault.
    fn excerpt(text: &str, fault: &str) -> Excerpt {
        let start = text.find(fault).unwrap_or_default();
        let source = Source::new(SourceFile {
            name: "a".to_owned(),
            text: text.to_owned(),
        });
        Excerpt::new(&source, 1, &(start..start + fault.len()))
    }

    #[test]
    fn columns_are_those_of_a_terminal() {
        let shown = excerpt("name = \"門\" ± x", "x");
        assert_eq!((shown.before, shown.wide), (14, 1));
        let shown = excerpt("a\t\u{7}= 門", "門");
        assert_eq!(
            (shown.text.as_str(), shown.before, shown.wide),
            ("a ·= 門", 5, 2)
        );
    }

    #[test]
    fn a_long_line_is_cut_around_the_fault() {
        let text = format!("{} FAULT {}", "left ".repeat(60), "right ".repeat(60));
        let shown = excerpt(&text, "FAULT");
        assert!(width(&shown.text) <= WIDTH);
        assert!(shown.text.starts_with('…') && shown.text.ends_with('…'));
        let caret: String = shown
            .text
            .chars()
            .skip(shown.before)
            .take(shown.wide)
            .collect();
        assert_eq!(caret, "FAULT");
    }

    #[test]
    fn a_fault_over_several_lines_is_shown_on_its_first() {
        let shown = excerpt("a = [\n 1,\n]", "[\n 1,\n]");
        assert_eq!(
            (shown.text.as_str(), shown.before, shown.wide),
            ("a = [", 4, 1)
        );
    }
}
