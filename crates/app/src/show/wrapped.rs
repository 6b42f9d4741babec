//! Text broken into lines of the terminal's width.

use std::io::IsTerminal as _;
use unicode_width::UnicodeWidthStr as _;

/// Width for text that does not go to a terminal.
const PLAIN_WIDTH: usize = 100;
/// Wider lines are hard to read.
const WIDEST: usize = 110;

/// Columns to write in.
pub(crate) fn width() -> usize {
    if !std::io::stdout().is_terminal() {
        return PLAIN_WIDTH;
    }
    let columns = std::env::var("COLUMNS")
        .ok()
        .and_then(|columns| columns.parse().ok());
    columns.unwrap_or(PLAIN_WIDTH).clamp(50, WIDEST)
}

/// The words in lines no wider than `width`, each line after an indent of so many spaces.
pub(crate) fn wrapped(text: &str, indent: usize, width: usize) -> String {
    let room = width.saturating_sub(indent).max(20);
    let mut lines = Vec::new();
    for paragraph in text.lines() {
        let mut line = String::new();
        for word in paragraph.split_whitespace() {
            if !line.is_empty() && line.width() + 1 + word.width() > room {
                lines.push(std::mem::take(&mut line));
            }
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
        lines.push(line);
    }
    let indent = " ".repeat(indent);
    lines
        .iter()
        .map(|line| format!("{indent}{line}"))
        .collect::<Vec<_>>()
        .join("\n")
}
