//! How many digits are printed.

use std::sync::LazyLock;

/// How many digits of a number are printed: so many significant ones, between a least and a most number of decimals.
#[derive(Debug, Clone, Copy)]
pub(super) struct Digits {
    significant: i32,
    least: i32,
    most: i32,
}

/// Below this a number is printed with an exponent.
const SMALL: f64 = 1e-6;
/// From here on a number is printed with an exponent.
const LARGE: f64 = 1e15;

impl Digits {
    /// So many significant digits; whole numbers are never rounded to tens.
    pub(super) const fn significant(significant: i32) -> Self {
        Self {
            significant,
            least: 0,
            most: 12,
        }
    }

    /// At least so many decimals.
    pub(super) const fn at_least(self, least: i32) -> Self {
        Self { least, ..self }
    }

    /// At most so many decimals.
    pub(super) const fn at_most(self, most: i32) -> Self {
        Self { most, ..self }
    }

    /// The number in these digits, trailing zeros left off.
    pub(super) fn text(self, number: f64) -> String {
        if self.has_exponent(number) {
            return trimmed_exponent(&format!("{number:.*e}", places(self.significant - 1)));
        }
        let text = trimmed(&format!("{number:.*}", places(self.decimals(number))));
        if text == "-0" { "0".to_owned() } else { text }
    }

    /// Whether the number as printed is a size or more.
    pub(super) fn reaches(self, number: f64, size: f64) -> bool {
        let (about, off) = (number.abs(), self.rounding(number));
        if size <= 0.0 || about - off > size {
            return true;
        }
        if about + off < size {
            return false;
        }
        let shown: f64 = self.text(number).parse().unwrap_or(0.0);
        shown.abs() >= size
    }

    /// Half of the last place printed.
    pub(super) fn rounding(self, number: f64) -> f64 {
        let last = if self.has_exponent(number) {
            exponent(number) - self.significant + 1
        } else {
            -self.decimals(number)
        };
        0.5 * 10f64.powi(last)
    }

    /// Whether the number is too small or too large to be printed without exponent.
    fn has_exponent(self, number: f64) -> bool {
        let size = number.abs();
        size >= LARGE || (size < SMALL && size > 0.0 && self.most >= 12)
    }

    /// How many decimals are printed.
    fn decimals(self, number: f64) -> i32 {
        (self.significant - 1 - exponent(number)).clamp(self.least, self.most)
    }
}

/// The power of ten of the first digit; 0 for zero.
fn exponent(number: f64) -> i32 {
    let size = number.abs();
    if size == 0.0 {
        return 0;
    }
    let above = POWERS.partition_point(|power| *power <= size);
    if above == 0 || above == POWERS.len() || size.is_nan() {
        return exponent_as_printed(number);
    }
    i32::try_from(above).map_or(0, |above| above - 1 - FARTHEST)
}

/// Powers of ten are kept from one over ten to this up to ten to this.
const FARTHEST: i32 = 40;
/// The powers of ten as they are read, so that each is the least number that is printed with its exponent.
static POWERS: LazyLock<Vec<f64>> = LazyLock::new(|| {
    let powers = -FARTHEST..=FARTHEST;
    powers
        .filter_map(|power| format!("1e{power}").parse().ok())
        .collect()
});

fn exponent_as_printed(number: f64) -> i32 {
    let text = format!("{number:e}");
    text.rsplit('e')
        .next()
        .and_then(|power| power.parse().ok())
        .unwrap_or(0)
}

/// A number of decimals for the formatter.
fn places(decimals: i32) -> usize {
    usize::try_from(decimals).unwrap_or(0)
}

/// Without trailing zeros after the point.
fn trimmed(text: &str) -> String {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text.to_owned()
    }
}

/// Without trailing zeros before the exponent.
fn trimmed_exponent(text: &str) -> String {
    match text.split_once('e') {
        Some((number, power)) => format!("{}e{power}", trimmed(number)),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{Digits, exponent, exponent_as_printed};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_exponent_is_that_of_the_printed_number(digits in -10.0..10.0, power in -60..60, exact in any::<bool>()) {
            let digits: f64 = if exact { 1.0 } else { digits };
            let number = format!("{digits}e{power}").parse().unwrap_or(0.0);
            for near in [number, f64::next_up(number), f64::next_down(number)] {
                prop_assert_eq!(exponent(near), exponent_as_printed(near));
            }
        }

        #[test]
        fn what_is_reached_is_what_is_printed(number in -2000.0..2000.0, size in prop::sample::select(vec![0.0, 0.01, 1.0, 2.0, 10.0, 1e3])) {
            for digits in [Digits::significant(2), Digits::significant(3).at_least(1), Digits::significant(12).at_most(1)] {
                let shown: f64 = digits.text(number).parse().unwrap_or(0.0);
                prop_assert_eq!(digits.reaches(number, size), shown.abs() >= size, "{} {}", number, size);
            }
        }
    }

    #[test]
    fn zero_and_what_is_no_number_have_the_exponent_zero() {
        for number in [0.0, -0.0, f64::NAN, f64::INFINITY] {
            assert_eq!(exponent(number), exponent_as_printed(number));
        }
    }
}
