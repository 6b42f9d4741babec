//! The grammar of numbers: `12`, `4.35`, `1e-3`, `1/2`, `3 1/2`, `3-1/2`, `3½`.

use winnow::ascii::{digit1, space0};
use winnow::combinator::{alt, opt, preceded};
use winnow::token::{any, one_of};
use winnow::{ModalResult, Parser};

/// A number without sign, as it was written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// Its value; infinite where it is too large to be held, or where a fraction is of zero.
    pub(super) value: f64,
    /// Whether it was written without fraction and decimals.
    pub(super) whole: bool,
}

/// A number without sign.
pub(super) fn number(input: &mut &str) -> ModalResult<Number> {
    alt((mixed, fraction.map(fractional), decimal)).parse_next(input)
}

/// `3 1/2`, `3-1/2`, `3½`.
fn mixed(input: &mut &str) -> ModalResult<Number> {
    let whole: f64 = digit1.parse_to().parse_next(input)?;
    let part = alt((
        preceded(one_of(['-', '\u{2011}', '–']), fraction),
        preceded(space0, fraction),
    ))
    .parse_next(input)?;
    Ok(fractional(whole + part))
}

/// A number that has a fraction.
fn fractional(value: f64) -> Number {
    Number {
        value,
        whole: false,
    }
}

/// `1/2` or `½`; a fraction of zero is infinite.
fn fraction(input: &mut &str) -> ModalResult<f64> {
    alt((any.verify_map(vulgar), ratio)).parse_next(input)
}

/// `1/2`.
fn ratio(input: &mut &str) -> ModalResult<f64> {
    let above: f64 = digit1.parse_to().parse_next(input)?;
    one_of(['/', '⁄']).parse_next(input)?;
    let below: f64 = digit1.parse_to().parse_next(input)?;
    Ok(if below > 0.0 {
        above / below
    } else {
        f64::INFINITY
    })
}

/// The value of a fraction that is one letter.
pub(super) fn vulgar(letter: char) -> Option<f64> {
    Some(match letter {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        _ => return None,
    })
}

/// `12`, `4.35`, `.5`, `1e-3`.
fn decimal(input: &mut &str) -> ModalResult<Number> {
    let point = ('.', digit1);
    let digits = alt(((digit1, opt(point)).void(), ('.', digit1).void()));
    let exponent = (one_of(['e', 'E']), opt(one_of(['+', '-'])), digit1);
    let text = (digits, opt(exponent)).take().parse_next(input)?;
    let whole = text.bytes().all(|byte| byte.is_ascii_digit());
    // A text of this shape is always a number to the standard library; `nan` would be refused downstream as not finite.
    Ok(Number {
        value: text.parse().unwrap_or(f64::NAN),
        whole,
    })
}
