//! The unit after a number, and what to say when it is the wrong one.

use super::amount::Reach;
use super::cursor::Cursor;
use super::error::{ReadError, nearest, quoted};
use super::number::vulgar;
use crate::unit::{plain_spelling, unit_written};
use crate::{Kind, Unit, units_of};
use std::ops::Range;

/// Reads the unit of a number that stands at `number`.
pub(super) fn unit(
    cursor: &mut Cursor,
    kind: Kind,
    reach: Reach,
    number: Range<usize>,
) -> Result<&'static Unit, ReadError> {
    let place = cursor.take(unit_length(cursor.rest()));
    let written = cursor.piece(place.clone());
    let on_scale = |kind| unit_written(kind, written);
    if let Some(unit) = on_scale(kind) {
        return Ok(unit);
    }
    // In a tolerance `5 °F` can only be a difference, and `1 dBm` only a gain.
    if reach == Reach::Distance
        && kind == Kind::TemperatureDifference
        && let Some(unit) = on_scale(Kind::Temperature)
    {
        return Ok(unit);
    }
    if reach == Reach::Distance
        && kind == Kind::Gain
        && let Some(unit) = on_scale(Kind::PowerLevel)
    {
        return Ok(unit);
    }
    Err(wrong_unit(cursor, kind, &number, place))
}

/// How many bytes of the text are the name of a unit.
fn unit_length(rest: &str) -> usize {
    for mark in ["''", "′′", "'", "′", "’", "\"", "″", "”"] {
        if rest.starts_with(mark) {
            return mark.len();
        }
    }
    let end = rest
        .char_indices()
        .find(|(at, letter)| ends_unit(&rest[..*at], *letter, &rest[at + letter.len_utf8()..]));
    rest[..end.map_or(rest.len(), |(at, _)| at)]
        .trim_end()
        .len()
}

/// Whether a letter between these two pieces of text ends the name of a unit.
fn ends_unit(before: &str, letter: char, after: &str) -> bool {
    let after_space = before.is_empty() || before.ends_with(char::is_whitespace);
    let next = after.trim_start().chars().next();
    match letter {
        '±' | '+' | ',' | ';' => true,
        '-' | '−' | '–' => {
            after_space || next.is_none_or(|next| next.is_ascii_digit() || next == '.')
        }
        '/' => next.is_some_and(|next| matches!(next, '-' | '−' | '–' | '+')),
        '.' => after_space && after.starts_with(|next: char| next.is_ascii_digit()),
        _ => (after_space && letter.is_ascii_digit()) || vulgar(letter).is_some(),
    }
}

/// What to say about a unit that the kind does not have.
fn wrong_unit(
    cursor: &Cursor,
    kind: Kind,
    number: &Range<usize>,
    place: Range<usize>,
) -> ReadError {
    let written = cursor.piece(place.clone());
    let figure = cursor.piece(number.clone()).trim();
    let whole = quoted(cursor.piece(number.start..place.end));
    let wanted = |example: &str| format!("{} is wanted, such as `{example}`", kind.with_article());
    if written.is_empty() {
        let what = format!("{whole} has no unit; {}", wanted(kind.example()));
        return cursor.error(number.clone(), what);
    }
    if let Some(instead) = bare_degree(kind, written) {
        let what = format!(
            "{} is not a scale; {}",
            quoted(written),
            wanted(&format!("{figure} {instead}"))
        );
        return cursor.error_writing(place, what, instead);
    }
    let Some((other, is)) = what_it_is(kind, written) else {
        return unknown_unit(cursor, kind, place);
    };
    match other.and_then(|other| counterpart(other, written, kind)) {
        Some(instead) => {
            let what = format!(
                "{whole} is {is}; {}",
                wanted(&format!("{figure} {instead}"))
            );
            cursor.error_writing(place, what, instead)
        }
        None => cursor.error(
            place,
            format!("{whole} is {is}; {}", wanted(kind.example())),
        ),
    }
}

/// `C` and `F` are not temperatures, but it is plain what was meant.
fn bare_degree(kind: Kind, written: &str) -> Option<&'static str> {
    match (kind, written) {
        (Kind::Temperature, "C" | "c") => Some("°C"),
        (Kind::Temperature, "F" | "f") => Some("°F"),
        (Kind::TemperatureDifference, "C" | "c") => Some("Δ°C"),
        (Kind::TemperatureDifference, "F" | "f") => Some("Δ°F"),
        _ => None,
    }
}

/// The kind, in words, that a unit does belong to.
fn what_it_is(wanted: Kind, written: &str) -> Option<(Option<Kind>, &'static str)> {
    if written.eq_ignore_ascii_case("AWG") {
        return Some((None, "a conductor size"));
    }
    let others = Kind::ALL.iter().copied().filter(|kind| *kind != wanted);
    let other = others
        .into_iter()
        .find(|kind| unit_written(*kind, written).is_some())?;
    Some((Some(other), other.with_article()))
}

/// The unit of the wanted kind that is often confused with this one.
fn counterpart(other: Kind, written: &str, wanted: Kind) -> Option<&'static str> {
    /// Units that are said alike on site.
    const CONFUSED: &[(Kind, &str, Kind, &str)] = &[
        (Kind::Mass, "lb", Kind::Force, "lbf"),
        (Kind::Mass, "kg", Kind::Force, "kgf"),
        (Kind::Mass, "oz", Kind::Force, "ozf"),
        (Kind::MassPerLength, "lb/ft", Kind::ForcePerLength, "lbf/ft"),
        (Kind::MassPerLength, "lb/in", Kind::ForcePerLength, "lbf/in"),
        (Kind::Torque, "lbf·ft", Kind::Energy, "ft·lbf"),
        (Kind::Torque, "N·m", Kind::Energy, "J"),
        (Kind::Temperature, "°C", Kind::TemperatureDifference, "Δ°C"),
        (Kind::Temperature, "°F", Kind::TemperatureDifference, "Δ°F"),
    ];
    let symbol = unit_written(other, written)?.symbol();
    CONFUSED
        .iter()
        .find_map(|(one, one_symbol, two, two_symbol)| {
            if (*one, *one_symbol, *two) == (other, symbol, wanted) {
                Some(*two_symbol)
            } else if (*two, *two_symbol, *one) == (other, symbol, wanted) {
                Some(*one_symbol)
            } else {
                None
            }
        })
}

/// A unit that no kind has.
fn unknown_unit(cursor: &Cursor, kind: Kind, place: Range<usize>) -> ReadError {
    let written = cursor.piece(place.clone());
    let spellings = units_of(kind)
        .iter()
        .flat_map(|unit| unit.symbols.iter().copied());
    let is = format!("{} is not a unit of {}", quoted(written), kind.words());
    if let Some(instead) = nearest(&plain_spelling(written), spellings) {
        return cursor.error_writing(place, format!("{is}; did you mean `{instead}`?"), instead);
    }
    let known: Vec<String> = units_of(kind)
        .iter()
        .map(crate::Unit::symbol)
        .filter(|symbol| !symbol.is_empty())
        .map(|symbol| format!("`{symbol}`"))
        .collect();
    cursor.error(
        place,
        format!(
            "{is}; write {}, as in `{}`",
            known.join(", "),
            kind.example()
        ),
    )
}
