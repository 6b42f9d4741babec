//! How exactly a printed value was printed.

use quantity::{Kind, Unit, read_kind, units_of};

/// A value as printed: in the coherent SI unit, and half a unit of its last place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Printed {
    pub(super) base: f64,
    pub(super) half_step: f64,
}

/// Reads a printed value and sees from its digits how far it was rounded.
pub(super) fn printed(kind: Kind, text: &str) -> Result<Printed, String> {
    let base = read_kind(kind, text).map_err(|error| error.what)?;
    let next = next_larger(text).and_then(|next| read_kind(kind, &next).ok());
    match next {
        Some(next) => Ok(Printed {
            base,
            half_step: 0.5 * (next - base).abs(),
        }),
        None => Err(format!(
            "`{text}` does not show how far it was rounded; write it as a decimal with its unit"
        )),
    }
}

/// The text with the last digit of its last number raised by one.
fn next_larger(text: &str) -> Option<String> {
    let place = last_number(text)?;
    let raised = raised(&text[place.clone()])?;
    Some(format!(
        "{}{raised}{}",
        &text[..place.start],
        &text[place.end..]
    ))
}

/// Where the last number stands, its exponent and what follows a stroke left out.
fn last_number(text: &str) -> Option<std::ops::Range<usize>> {
    let mut found = None;
    let mut before = ' ';
    let mut end = 0;
    for (at, letter) in text.char_indices() {
        let begins =
            letter.is_ascii_digit() && (before.is_whitespace() || "-−+'′\"".contains(before));
        if at >= end && begins {
            let rest = &text[at..];
            let length = rest
                .find(|next: char| !next.is_ascii_digit() && next != '.')
                .unwrap_or(rest.len());
            end = at + length;
            found = Some(at..end);
        }
        before = letter;
    }
    found
}

/// A decimal number with its last digit raised by one: `0.99` becomes `1.00`.
fn raised(number: &str) -> Option<String> {
    let decimals = number
        .split_once('.')
        .map_or(0, |(_, decimals)| decimals.len());
    let digits: u64 = number.replace('.', "").parse().ok()?;
    let digits = format!("{:0>width$}", digits.checked_add(1)?, width = decimals + 1);
    let (whole, part) = digits.split_at(digits.len() - decimals);
    Some(if decimals == 0 {
        whole.to_owned()
    } else {
        format!("{whole}.{part}")
    })
}

/// Our value in the unit of the print, with more digits than were printed.
pub(super) fn alike(kind: Kind, base: f64, printed: &str) -> Option<String> {
    let place = last_number(printed)?;
    let number = &printed[place.clone()];
    let symbol = printed[place.end..].trim();
    let unit: &Unit = units_of(kind)
        .iter()
        .find(|unit| unit.symbols.contains(&symbol))?;
    let decimals = number
        .split_once('.')
        .map_or(0, |(_, decimals)| decimals.len());
    let value = format!("{:.*} {symbol}", decimals + 2, unit.from_base(base));
    printed[..place.start]
        .trim_matches(['-', '−', '+', ' '])
        .is_empty()
        .then(|| value.trim_end().to_owned())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn the_last_place_sets_the_rounding() {
        for (kind, text, half) in [
            (Kind::Voltage, "0.777 V", 0.0005),
            (Kind::Voltage, "9.9 V", 0.05),
            (Kind::Voltage, "228 V", 0.5),
            (Kind::Ratio, "16.7 %", 0.0005),
            (Kind::Length, "0.0403 in", 0.00005 * 0.0254),
            (Kind::Temperature, "77 °F", 0.5 / 1.8),
            (Kind::Length, "3 1/2 in", 0.25 * 0.0254),
            (Kind::Length, "14 ft 3.5 in", 0.05 * 0.0254),
            (Kind::Area, "42 ft2", 0.5 * 0.3048 * 0.3048),
            (Kind::Force, "-12 N", 0.5),
            (Kind::Force, "1.25e3 N", 5.0),
        ] {
            let found = printed(kind, text).unwrap().half_step;
            assert!(
                (found - half).abs() < 1e-9 * half.max(1e-3),
                "{text}: {found}"
            );
        }
    }

    #[test]
    fn ours_is_shown_in_the_unit_of_the_print() {
        assert_eq!(
            alike(Kind::Voltage, 0.77712, "0.777 V").unwrap(),
            "0.77712 V"
        );
        assert_eq!(alike(Kind::Ratio, 0.1667, "16.7 %").unwrap(), "16.670 %");
        assert_eq!(alike(Kind::Length, 1.0, "3 ft 3 in"), None);
    }
}
