//! One value with its unit, or several that add up, such as `14 ft 3 1/2 in`.

use super::cursor::Cursor;
use super::error::{ReadError, quoted};
use super::number::{Number, number, vulgar};
use super::unit::unit;
use crate::{Kind, Unit};
use std::ops::Range;

/// Whether the zero of the scale counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Reach {
    /// A value on the scale of its kind.
    Scale,
    /// A distance between two values of the kind, as in a tolerance.
    Distance,
}

/// A value that was read.
#[derive(Debug, Clone, Copy)]
pub(super) struct Amount {
    /// In the coherent SI unit of its kind.
    pub(super) base: f64,
    /// The last unit it was written in.
    pub(super) unit: &'static Unit,
}

/// A number with its unit, and where they stand.
struct Part {
    number: Number,
    unit: &'static Unit,
    place: Range<usize>,
}

/// Signs that make a number negative.
pub(super) const MINUS: &[char] = &['-', '−', '–', '\u{2011}'];

/// Reads one value of a kind.
pub(super) fn amount(cursor: &mut Cursor, kind: Kind, reach: Reach) -> Result<Amount, ReadError> {
    cursor.skip_spaces();
    let start = cursor.at();
    let negative = cursor.eat(MINUS);
    if !negative {
        cursor.eat(&['+']);
    }
    cursor.skip_spaces();
    if kind == Kind::Ratio
        && let Some(base) = one_in(cursor)?
    {
        return Ok(Amount {
            base: if negative { -base } else { base },
            unit: plain(),
        });
    }
    let mut parts = vec![part(cursor, kind, reach)?];
    while is_compound(kind) && another_part(cursor, parts.len()) {
        let next = part(cursor, kind, reach)?;
        check_order(cursor, &parts, &next)?;
        parts.push(next);
    }
    let (size, unit) = total(&parts);
    let size = if negative { -size } else { size };
    let base = if reach == Reach::Scale {
        unit.to_base(size)
    } else {
        unit.scaled(size)
    };
    check_range(cursor, kind, base, start..cursor.at()).map(|base| Amount { base, unit })
}

/// The unit of a plain number.
fn plain() -> &'static Unit {
    const PLAIN: Unit = Unit {
        symbols: &[""],
        scale: 1.0,
        offset: 0.0,
    };
    &PLAIN
}

/// `1 in 40` or `1:40`; nothing is taken where it is not one.
fn one_in(cursor: &mut Cursor) -> Result<Option<f64>, ReadError> {
    let mut ahead = *cursor;
    let Some(rise) = ahead.run(number) else {
        return Ok(None);
    };
    ahead.skip_spaces();
    let after = ahead.rest();
    if after.starts_with(':') {
        ahead.take(1);
    } else if after.starts_with("in ") {
        ahead.take(2);
    } else {
        return Ok(None);
    }
    ahead.skip_spaces();
    let start = cursor.at();
    let Some(run) = ahead.run(number) else {
        return Ok(None);
    };
    *cursor = ahead;
    let slope = rise.value / run.value;
    if slope.is_finite() && run.value > 0.0 && run.value.is_finite() {
        return Ok(Some(slope));
    }
    let place = start..cursor.at();
    let what = format!(
        "{} is not a slope; write it like `1 in 40`",
        quoted(cursor.piece(place.clone()))
    );
    Err(cursor.error(place, what))
}

/// A number with its unit.
fn part(cursor: &mut Cursor, kind: Kind, reach: Reach) -> Result<Part, ReadError> {
    let start = cursor.at();
    let number = bare_number(cursor, kind)?;
    let number_place = start..cursor.at();
    cursor.skip_spaces();
    let unit = unit(cursor, kind, reach, number_place)?;
    Ok(Part {
        number,
        unit,
        place: start..cursor.at(),
    })
}

/// A number without unit and without sign.
pub(super) fn bare_number(cursor: &mut Cursor, kind: Kind) -> Result<Number, ReadError> {
    cursor.skip_spaces();
    refuse_comma(cursor)?;
    let start = cursor.at();
    let Some(number) = cursor.run(number) else {
        let rest = cursor.rest().trim_end();
        let wanted = format!(
            "{} is wanted, such as `{}`",
            kind.with_article(),
            kind.example()
        );
        let what = if rest.is_empty() {
            format!("nothing is written here; {wanted}")
        } else {
            format!("{} does not begin with a number; {wanted}", quoted(rest))
        };
        return Err(cursor.error(start..start + rest.len(), what));
    };
    if number.value.is_finite() {
        return Ok(number);
    }
    let place = start..cursor.at();
    let written = cursor.piece(place.clone());
    let what = if written.contains(['/', '⁄']) {
        format!("{} divides by zero", quoted(written))
    } else {
        format!(
            "{} is larger than any number that can be worked with",
            quoted(written)
        )
    };
    Err(cursor.error(place, what))
}

/// A comma inside a number may mean thousands or decimals: it is never guessed.
fn refuse_comma(cursor: &Cursor) -> Result<(), ReadError> {
    let rest = cursor.rest();
    let length = rest
        .char_indices()
        .find(|(at, letter)| {
            let in_number = letter.is_ascii_digit() || *letter == '.';
            let joins =
                *letter == ',' && rest[at + 1..].starts_with(|next: char| next.is_ascii_digit());
            !in_number && !joins
        })
        .map_or(rest.len(), |(at, _)| at);
    let written = &rest[..length];
    if !written.starts_with(|first: char| first.is_ascii_digit()) || !written.contains(',') {
        return Ok(());
    }
    let place = cursor.at()..cursor.at() + length;
    let without = written.replace(',', "");
    let groups: Vec<&str> = written
        .split('.')
        .next()
        .unwrap_or_default()
        .split(',')
        .collect();
    let thousands = groups.len() > 1
        && groups.iter().skip(1).all(|group| group.len() == 3)
        && groups[0].len() <= 3;
    let what = "a comma in a number can mean thousands or decimals";
    if thousands && groups.len() == 2 && !written.contains('.') {
        let pointed = written.replace(',', ".");
        let what = format!(
            "{what}; write `{without}` or `{pointed}` in place of {}",
            quoted(written)
        );
        return Err(cursor.error_writing(place, what, &without));
    }
    let better = if thousands || written.contains('.') || groups.len() > 2 {
        without
    } else {
        written.replace(',', ".")
    };
    Err(cursor.error_writing(
        place,
        format!("{what}; write `{better}` in place of {}", quoted(written)),
        &better,
    ))
}

/// Kinds that are written in several units at once: feet and inches, pounds and ounces, hours and minutes.
fn is_compound(kind: Kind) -> bool {
    matches!(kind, Kind::Length | Kind::Mass | Kind::Time)
}

/// Whether another number follows; then the space or hyphen before it is taken.
fn another_part(cursor: &mut Cursor, parts_so_far: usize) -> bool {
    let mut ahead = *cursor;
    ahead.skip_spaces();
    let spaced = ahead.at() > cursor.at();
    if parts_so_far == 1 && ahead.eat(&['-', '–', '\u{2011}']) {
        let hyphen_end = ahead.at();
        ahead.skip_spaces();
        // `14'-3"` and `14' - 3"` join; ` -3` begins the lower side of a tolerance.
        if spaced != (ahead.at() > hyphen_end) {
            return false;
        }
    }
    let begins = ahead
        .rest()
        .starts_with(|next: char| next.is_ascii_digit() || next == '.' || vulgar(next).is_some());
    if begins {
        *cursor = ahead;
    }
    begins
}

/// Units must fall, only the last number may have a fraction, and a smaller part must not fill the larger unit.
fn check_order(cursor: &Cursor, parts: &[Part], next: &Part) -> Result<(), ReadError> {
    let Some(last) = parts.last() else {
        return Ok(());
    };
    let written = quoted(cursor.piece(next.place.clone()));
    let before = quoted(cursor.piece(last.place.clone()));
    if next.unit.scale >= last.unit.scale {
        let what = format!("{written} cannot follow {before}: the larger unit comes first");
        return Err(cursor.error(next.place.clone(), what));
    }
    if !last.number.whole {
        let what = format!("{before} has a fraction already, so {written} cannot follow it");
        return Err(cursor.error(next.place.clone(), what));
    }
    let full = last.unit.scale / next.unit.scale;
    if next.number.value >= full - 1e-9 {
        let what = format!(
            "{written} is 1 {} or more; add it to {before}",
            last.unit.symbol()
        );
        return Err(cursor.error(next.place.clone(), what));
    }
    Ok(())
}

/// All parts in the unit of the last one.
fn total(parts: &[Part]) -> (f64, &'static Unit) {
    let unit = parts.last().map_or_else(plain, |part| part.unit);
    let in_last = |part: &Part| {
        let factor = part.unit.scale / unit.scale;
        let nearly_whole = (factor - factor.round()).abs() < 1e-9;
        part.number.value
            * if nearly_whole && factor >= 1.0 {
                factor.round()
            } else {
                factor
            }
    };
    let size = match parts {
        [only] => only.number.value,
        several => several.iter().map(in_last).sum(),
    };
    (size, unit)
}

/// A value must be finite, and a temperature not below absolute zero.
fn check_range(
    cursor: &Cursor,
    kind: Kind,
    base: f64,
    place: Range<usize>,
) -> Result<f64, ReadError> {
    /// How far rounding may carry absolute zero itself below zero, in kelvin.
    const ROUNDING: f64 = 1e-9;
    let written = || quoted(cursor.piece(place.clone()));
    if !base.is_finite() {
        let what = format!(
            "{} is larger than any number that can be worked with",
            written()
        );
        return Err(cursor.error(place, what));
    }
    if kind != Kind::Temperature || base >= 0.0 {
        return Ok(base);
    }
    if base > -ROUNDING {
        return Ok(0.0);
    }
    let what = format!("{} is colder than absolute zero, −273.15 °C", written());
    Err(cursor.error(place, what))
}
