//! How many digits are printed.

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
