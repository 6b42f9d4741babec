//! Measured values with their tolerance.

use super::digits::Digits;
use super::{UnitSystem, print_kind, write_kind};
use crate::{Kind, Known, Measured, Quantity, Tolerance, Word as _};

/// Whether digits may be left off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Style {
    /// Rounded as the trade rounds.
    Rounded,
    /// With all digits.
    Exact,
}

/// A measured value with its tolerance and how it is known: `640 lb ± 5 %, assumed`.
pub fn print_measured<Q: Quantity>(measured: &Measured<Q>, system: UnitSystem) -> String {
    with_tolerance(measured, system, Style::Rounded)
}

/// A measured value in a style.
pub(super) fn with_tolerance<Q: Quantity>(
    measured: &Measured<Q>,
    system: UnitSystem,
    style: Style,
) -> String {
    let base = measured.nominal().base();
    let tolerance = on_scale(Q::KIND, base, measured.tolerance());
    let mut text = nominal(Q::KIND, base, tolerance, system, style);
    let in_percent = text.ends_with('%');
    match tolerance {
        Tolerance::Exact => {}
        Tolerance::Absolute { below, above } if in_percent => {
            text.push_str(&sides(below, above, |side| {
                format!("{} %", percent(side, style))
            }));
        }
        Tolerance::Absolute { below, above } => {
            text.push_str(&sides(below, above, |side| {
                distance(Q::KIND, side, system, style)
            }));
        }
        Tolerance::Relative { below, above } => {
            text.push_str(&sides(below, above, |side| {
                format!("{} %", percent(side, style))
            }));
        }
    }
    if measured.known() != Known::Stated {
        text.push_str(", ");
        text.push_str(measured.known().word());
    }
    text
}

/// The nominal value. A share after a percentage would be read as percentage points, and percentage points after a
/// plain number as a share: such a ratio is written plain, or in percent, to suit its tolerance.
fn nominal(
    kind: Kind,
    base: f64,
    tolerance: Tolerance,
    system: UnitSystem,
    style: Style,
) -> String {
    match (kind, tolerance, style) {
        (Kind::Ratio, Tolerance::Relative { .. }, _)
        | (Kind::Ratio, Tolerance::Absolute { .. }, Style::Exact) => plain(base, style),
        _ => of_kind(kind, base, system, style),
    }
}

/// The tolerance as it can be written: a share of a temperature becomes a difference.
fn on_scale(kind: Kind, base: f64, tolerance: Tolerance) -> Tolerance {
    match tolerance {
        Tolerance::Relative { below, above } if kind == Kind::Temperature => Tolerance::Absolute {
            below: base.abs() * below,
            above: base.abs() * above,
        },
        other => other,
    }
}

/// `± 2 in`, or `+5/-0 mm` where the sides differ.
fn sides(below: f64, above: f64, text: impl Fn(f64) -> String) -> String {
    if below.to_bits() == above.to_bits() {
        return format!(" ± {}", text(above));
    }
    let (below_text, above_text) = (text(below), text(above));
    match (single(&below_text), single(&above_text)) {
        (Some((number, unit)), Some((other, other_unit))) if unit == other_unit => {
            format!(" +{other}/-{number} {unit}")
        }
        (Some((number, unit)), _) if above == 0.0 => format!(" +0/-{number} {unit}"),
        (_, Some((number, unit))) if below == 0.0 => format!(" +{number}/-0 {unit}"),
        _ => format!(" +{above_text}/-{below_text}"),
    }
}

/// A decimal number and its unit, from a text that has no more than these.
fn single(text: &str) -> Option<(&str, &str)> {
    text.split_once(' ')
        .filter(|(number, unit)| !number.contains('/') && !unit.contains(' '))
}

/// A distance between two values of a kind.
fn distance(kind: Kind, base: f64, system: UnitSystem, style: Style) -> String {
    match kind {
        Kind::Ratio => plain(base, style),
        Kind::Temperature => of_kind(Kind::TemperatureDifference, base, system, style),
        Kind::PowerLevel => of_kind(Kind::Gain, base, system, style),
        _ => of_kind(kind, base, system, style),
    }
}

/// A value in a style.
fn of_kind(kind: Kind, base: f64, system: UnitSystem, style: Style) -> String {
    match style {
        Style::Rounded => print_kind(kind, base, system),
        Style::Exact => write_kind(kind, base, system),
    }
}

/// A number without unit.
fn plain(number: f64, style: Style) -> String {
    match style {
        Style::Rounded => Digits::significant(3).text(number),
        Style::Exact => all_digits(number),
    }
}

/// A share in percent, without its sign.
fn percent(share: f64, style: Style) -> String {
    let percent = share * 100.0;
    match style {
        Style::Rounded => Digits::significant(3).text(percent),
        Style::Exact => {
            let near = [percent, percent.next_up(), percent.next_down()];
            let short = crate::number::shortest(percent);
            let same = |text: &str| {
                text.parse::<f64>()
                    .is_ok_and(|read| (read / 100.0).to_bits() == share.to_bits())
            };
            if same(&short) {
                return short;
            }
            near.into_iter()
                .map(all_digits)
                .find(|text| same(text))
                .unwrap_or_else(|| all_digits(percent))
        }
    }
}

/// All digits of a number.
fn all_digits(number: f64) -> String {
    let size = number.abs();
    if size > 0.0 && !(1e-6..1e15).contains(&size) {
        format!("{number:e}")
    } else {
        format!("{number}")
    }
}
