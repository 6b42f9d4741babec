//! Plain decimal numbers as text.

/// The shortest decimal text, without exponent, that is right to twelve significant digits.
pub(crate) fn shortest(number: f64) -> String {
    let rounded: f64 = format!("{number:.11e}").parse().unwrap_or(number);
    format!("{rounded}")
}
