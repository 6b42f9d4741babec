//! The few colors of the terminal, by meaning. No verdict is told by color alone.

use owo_colors::{OwoColorize as _, Style};

/// This fails: survey-flag orange, and nothing else is.
pub(crate) fn fails() -> Style {
    Style::new().truecolor(214, 84, 0).bold()
}

/// You can name this in a command: chalk-line blue.
pub(crate) fn touchable() -> Style {
    Style::new().truecolor(44, 104, 166)
}

/// Said once, in a low voice.
pub(crate) fn quiet() -> Style {
    Style::new().dimmed()
}

/// A heading.
pub(crate) fn strong() -> Style {
    Style::new().bold()
}

/// The text in that style.
pub(crate) fn paint(text: impl std::fmt::Display, style: Style) -> String {
    text.style(style).to_string()
}
