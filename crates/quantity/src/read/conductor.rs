//! Conductor sizes: `18 AWG`, `1/0 AWG`, `1.5 mm²`.

use super::error::{ReadError, quoted};
use super::read_kind;
use crate::{Area, Awg, ConductorSize, Kind, Quantity as _};

/// How a conductor size is written.
const WANTED: &str = "a conductor size is wanted, such as `18 AWG`, `1/0 AWG` or `1.5 mm²`";

/// Reads a conductor size.
pub(super) fn size(text: &str) -> Result<ConductorSize, ReadError> {
    let start = text.len() - text.trim_start().len();
    let trimmed = text.trim();
    let place = start..start + trimmed.len();
    if trimmed.is_empty() {
        return Err(ReadError {
            what: format!("nothing is written here; {WANTED}"),
            place,
            write: None,
        });
    }
    if let Some(number) = without_awg(trimmed) {
        return gauge(number).map(ConductorSize::Gauge).ok_or_else(|| {
            let what = format!(
                "{} is not a gauge; American Wire Gauge runs from 4/0 to 40",
                quoted(trimmed)
            );
            ReadError {
                what,
                place,
                write: None,
            }
        });
    }
    match read_kind(Kind::Area, text) {
        Ok(base) if base > 0.0 => Ok(ConductorSize::Metric(Area::from_base(base))),
        Ok(_) => Err(ReadError {
            what: format!("{} is no conductor; {WANTED}", quoted(trimmed)),
            place,
            write: None,
        }),
        Err(error) => Err(without_unit(trimmed, error)),
    }
}

/// The number before or after `AWG`.
fn without_awg(text: &str) -> Option<&str> {
    let is_awg = |piece: Option<&str>| piece.is_some_and(|piece| piece.eq_ignore_ascii_case("AWG"));
    let end = text.len().saturating_sub(3);
    if is_awg(text.get(end..)) {
        return text.get(..end).map(str::trim);
    }
    if is_awg(text.get(..3)) {
        text.get(3..).map(str::trim)
    } else {
        None
    }
}

/// A gauge number: `18`, `1/0`, `0`, or `00` for 2/0.
fn gauge(number: &str) -> Option<Awg> {
    if !number.is_empty() && number.bytes().all(|byte| byte == b'0') {
        return aught(i8::try_from(number.len()).ok()?);
    }
    if let Some(aughts) = number.strip_suffix("/0") {
        return aught(whole(aughts)?);
    }
    whole(number)
        .filter(|number| *number > 0)
        .and_then(Awg::new)
}

/// The size 1/0 to 4/0.
fn aught(aughts: i8) -> Option<Awg> {
    if aughts < 1 {
        None
    } else {
        Awg::new(1 - aughts)
    }
}

/// A whole number of digits only.
fn whole(text: &str) -> Option<i8> {
    text.bytes()
        .all(|byte| byte.is_ascii_digit())
        .then(|| text.parse().ok())
        .flatten()
}

/// The error of reading an area, said of a conductor; a bare gauge number gets its unit.
fn without_unit(trimmed: &str, error: ReadError) -> ReadError {
    match gauge(trimmed.trim_start_matches('#')) {
        Some(gauge) => ReadError {
            what: format!("{} has no unit; {WANTED}", quoted(trimmed)),
            place: error.place,
            write: Some(gauge.to_string()),
        },
        None => ReadError {
            what: format!("{} cannot be read; {WANTED}", quoted(trimmed)),
            ..error
        },
    }
}
