//! The tolerance after a value, and the word on how it is known.

use super::amount::{Amount, MINUS, Reach, amount, bare_number};
use super::cursor::Cursor;
use super::error::{ReadError, nearest, quoted};
use crate::{Kind, Known, Tolerance, Word as _};
use std::ops::Range;

/// One side of a tolerance.
enum Side {
    /// In the coherent SI unit.
    Distance(f64),
    /// A share of the nominal value.
    Share(f64),
}

/// Reads the tolerance after a value, if there is one.
pub(super) fn tolerance(
    cursor: &mut Cursor,
    kind: Kind,
    nominal: &Amount,
) -> Result<Tolerance, ReadError> {
    cursor.skip_spaces();
    let start = cursor.at();
    let sides = Sides {
        kind,
        share_is_distance: kind == Kind::Ratio && nominal.unit.symbol() == "%",
    };
    if symmetric_sign(cursor) {
        let side = sides.side(cursor)?;
        return pair(cursor, &side, &side, start..cursor.at());
    }
    let minus_first = MINUS.iter().any(|minus| cursor.rest().starts_with(*minus));
    if !minus_first && !cursor.rest().starts_with('+') {
        return Ok(Tolerance::Exact);
    }
    let (first, second) = sides.both(cursor, minus_first)?;
    let (above, below) = if minus_first {
        (second, first)
    } else {
        (first, second)
    };
    pair(cursor, &below, &above, start..cursor.at())
}

/// `±`, `+/-` or `+-`.
fn symmetric_sign(cursor: &mut Cursor) -> bool {
    let rest = cursor.rest();
    let sign = ["±", "+/-", "+/−", "+/–", "+-"]
        .into_iter()
        .find(|sign| rest.starts_with(sign));
    sign.is_some_and(|sign| {
        cursor.take(sign.len());
        true
    })
}

/// How the sides of one tolerance are read.
struct Sides {
    kind: Kind,
    /// After a value in percent, percent are a distance and not a share.
    share_is_distance: bool,
}

impl Sides {
    /// The kind of a distance between two values.
    fn distance_kind(&self) -> Kind {
        match self.kind {
            Kind::Temperature => Kind::TemperatureDifference,
            Kind::PowerLevel => Kind::Gain,
            other => other,
        }
    }

    /// A number with its unit.
    fn side(&self, cursor: &mut Cursor) -> Result<Side, ReadError> {
        cursor.skip_spaces();
        let start = cursor.at();
        if cursor.eat(MINUS) {
            let what = "a tolerance is a distance and cannot be negative".to_owned();
            return Err(cursor.error(start..cursor.at(), what));
        }
        if !self.share_is_distance
            && let Some(share) = self.share(cursor)?
        {
            return Ok(Side::Share(share));
        }
        Ok(Side::Distance(
            amount(cursor, self.distance_kind(), Reach::Distance)?.base,
        ))
    }

    /// A number in percent; nothing is taken where it is not one.
    fn share(&self, cursor: &mut Cursor) -> Result<Option<f64>, ReadError> {
        let mut ahead = *cursor;
        let Ok(number) = bare_number(&mut ahead, self.kind) else {
            return Ok(None);
        };
        let start = ahead.at();
        ahead.skip_spaces();
        if !["%", "percent"]
            .iter()
            .any(|word| ahead.rest().starts_with(word))
        {
            return Ok(None);
        }
        if self.kind == Kind::Temperature {
            let what =
                "a share of a temperature has no meaning; write a difference, such as `± 5 Δ°F`"
                    .to_owned();
            return Err(cursor.error(cursor.at()..start, what));
        }
        let length = if ahead.rest().starts_with('%') {
            1
        } else {
            "percent".len()
        };
        ahead.take(length);
        *cursor = ahead;
        Ok(Some(number.value / 100.0))
    }

    /// `+5/-0 mm` or `+5 mm/-0 mm`, the sides as they come.
    fn both(&self, cursor: &mut Cursor, minus_first: bool) -> Result<(Side, Side), ReadError> {
        let start = cursor.at();
        cursor.eat(&['+']);
        cursor.eat(MINUS);
        let mut unit_later = *cursor;
        let first_number = bare_number(&mut unit_later, self.kind)?;
        let first_end = unit_later.at();
        let other_signs: &[char] = if minus_first { &['+'] } else { MINUS };
        if self.separator(&mut unit_later, other_signs) {
            *cursor = unit_later;
            let mut again = *cursor;
            let second = self.side(cursor)?;
            let first = match second {
                Side::Share(_) => Side::Share(first_number.value / 100.0),
                Side::Distance(_) => {
                    let unit = amount(&mut again, self.distance_kind(), Reach::Distance)?.unit;
                    Side::Distance(unit.scaled(first_number.value))
                }
            };
            return Ok((first, second));
        }
        let first = self.side(cursor)?;
        if self.separator(cursor, other_signs) {
            return Ok((first, self.side(cursor)?));
        }
        let end = cursor.at().max(first_end);
        let what = format!(
            "{} is one side of a tolerance only; write both, as in `+5/-0 mm`, or `± 5 mm`",
            quoted(cursor.piece(start..end))
        );
        Err(cursor.error(start..end, what))
    }

    /// `/-` or a bare sign, with or without spaces; nothing is taken where there is none.
    #[allow(
        clippy::unused_self,
        reason = "belongs to the reading of the two sides"
    )]
    fn separator(&self, cursor: &mut Cursor, signs: &[char]) -> bool {
        let mut ahead = *cursor;
        ahead.skip_spaces();
        ahead.eat(&['/', ',']);
        ahead.skip_spaces();
        let found = ahead.eat(signs);
        if found {
            *cursor = ahead;
        }
        found
    }
}

/// The tolerance of two sides, which must both be distances or both be shares.
fn pair(
    cursor: &Cursor,
    below: &Side,
    above: &Side,
    place: Range<usize>,
) -> Result<Tolerance, ReadError> {
    match (below, above) {
        (Side::Distance(below), Side::Distance(above)) => Ok(Tolerance::Absolute {
            below: *below,
            above: *above,
        }),
        (Side::Share(below), Side::Share(above)) => Ok(Tolerance::Relative {
            below: *below,
            above: *above,
        }),
        _ => {
            let what = "one side is in percent and the other is not; write both in the same unit"
                .to_owned();
            Err(cursor.error(place, what))
        }
    }
}

/// Reads the word on how a value is known, after a comma, if there is one.
pub(super) fn known(cursor: &mut Cursor) -> Result<Known, ReadError> {
    cursor.skip_spaces();
    if !cursor.eat(&[',']) {
        return Ok(Known::Stated);
    }
    cursor.skip_spaces();
    let word = cursor.rest().trim_end();
    let place = cursor.take(word.len());
    if let Some(known) = Known::from_word(word) {
        return Ok(known);
    }
    let allowed: Vec<String> = Known::WORDS
        .iter()
        .map(|word| format!("`{word}`"))
        .collect();
    let what = format!(
        "{} does not say how the value is known; write one of {}",
        quoted(word),
        allowed.join(", ")
    );
    Err(match nearest(word, Known::WORDS.iter().copied()) {
        Some(instead) => cursor.error_writing(place, what, instead),
        None => cursor.error(place, what),
    })
}
