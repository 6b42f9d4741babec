//! Sine and cosine of spans, with bounds that are shown, not taken from a library.
//!
//! An angle y within a quarter turn of zero is put into the series
//!
//! ```text
//! sin y = y·(1 − y²/(2·3)·(1 − y²/(4·5)·(… )))        cos y = 1 − y²/(1·2)·(1 − y²/(3·4)·(… ))
//! ```
//!
//! whose terms alternate and fall, so that what is left out is less than the first term that is. Every step is done with
//! spans. Larger angles are brought there by quarter turns: π/2 lies between two neighboring numbers.

use super::span::Span;
use std::f64::consts::FRAC_PI_2;

/// Terms of the series. With |y| < 0.8 the first that is left out is below 0.8²⁰/20! < 10⁻²⁰.
const TERMS: i32 = 9;
/// More than what is left out.
const LEFT_OUT: f64 = 1e-20;
/// Greater angles are not needed; theirs could be anything.
const GREATEST: f64 = 100.0;

/// π/2: the nearest number to it is below it (its error is 6.1·10⁻¹⁷), its neighbor above.
fn quarter() -> Span {
    Span::new(FRAC_PI_2, FRAC_PI_2.next_up())
}

impl Span {
    /// Sine and cosine of every angle in the span, in radians.
    pub(in super::super) fn sin_cos(self) -> (Self, Self) {
        let all = Self::new(-1.0, 1.0);
        let known = self.lo.abs() <= GREATEST && self.hi.abs() <= GREATEST;
        if !known || self.width() >= 4.0 * FRAC_PI_2 {
            return (all, all);
        }
        let ((sin_lo, cos_lo), (sin_hi, cos_hi)) = (point(self.lo), point(self.hi));
        let (mut sin, mut cos) = (sin_lo.hull(sin_hi), cos_lo.hull(cos_hi));
        // Whole quarter turns that may lie within: there one of the two is at its end.
        let first = (self.lo / FRAC_PI_2 - 1e-9).ceil();
        let last = (self.hi / FRAC_PI_2 + 1e-9).floor();
        let mut turn = first;
        while turn <= last {
            match turn.rem_euclid(4.0) {
                0.0 => cos = cos.hull(Self::of(1.0)),
                1.0 => sin = sin.hull(Self::of(1.0)),
                2.0 => cos = cos.hull(Self::of(-1.0)),
                _ => sin = sin.hull(Self::of(-1.0)),
            }
            turn += 1.0;
        }
        (within(sin), within(cos))
    }
}

fn within(of: Span) -> Span {
    Span::new(of.lo.max(-1.0), of.hi.min(1.0))
}

/// Sine and cosine of one angle.
fn point(angle: f64) -> (Span, Span) {
    let turn = (angle / FRAC_PI_2).round();
    let rest = Span::of(angle) - quarter() * turn;
    let (sin, cos) = (series(rest, 2.0) * rest, series(rest, 1.0));
    match turn.rem_euclid(4.0) {
        0.0 => (sin, cos),
        1.0 => (cos, -sin),
        2.0 => (-sin, -cos),
        _ => (-cos, sin),
    }
}

/// 1 − y²/(n·(n+1))·(1 − y²/((n+2)·(n+3))·(…)) with what is left out.
fn series(of: Span, first: f64) -> Span {
    let square = of.square();
    let mut sum = Span::of(1.0);
    for term in (0..TERMS).rev() {
        let at = first + 2.0 * f64::from(term);
        sum = Span::of(1.0) - (square * sum).over(Span::of(at * (at + 1.0)));
    }
    sum + Span::new(-LEFT_OUT, LEFT_OUT)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A number with twice the digits: the sum of two.
    type Twice = (f64, f64);

    fn sum((a, b): Twice, (c, d): Twice) -> Twice {
        let whole = a + c;
        let part = whole - a;
        let left = (a - (whole - part)) + (c - part) + b + d;
        (whole + left, left - ((whole + left) - whole))
    }

    fn product((a, b): Twice, (c, d): Twice) -> Twice {
        let whole = a * c;
        let left = a.mul_add(c, -whole) + a * d + b * c;
        (whole + left, left - ((whole + left) - whole))
    }

    fn share((a, b): Twice, whole: f64) -> Twice {
        let first = a / whole;
        let rest = (-first).mul_add(whole, a) + b;
        sum((first, 0.0), (rest / whole, 0.0))
    }

    /// Sine and cosine by sixty terms of their series with twice the digits: right to 10⁻²⁷ for angles up to 10.
    fn reference(angle: f64) -> (Twice, Twice) {
        let (mut sin, mut cos) = ((0.0, 0.0), (1.0, 0.0));
        let mut term = (1.0, 0.0);
        for at in 1..=60 {
            term = share(product(term, (angle, 0.0)), f64::from(at));
            let signed = if at % 4 < 2 { term } else { (-term.0, -term.1) };
            if at % 2 == 1 {
                sin = sum(sin, signed);
            } else {
                cos = sum(cos, signed);
            }
        }
        (sin, cos)
    }

    fn holds(span: Span, (whole, left): Twice) -> bool {
        (whole - span.lo) + left >= 0.0 && (span.hi - whole) - left >= 0.0
    }

    #[test]
    fn a_span_holds_the_sines_and_cosines_of_all_its_angles() {
        let mut state: u64 = 1;
        let mut next = || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            #[allow(
                clippy::cast_precision_loss,
                reason = "53 bits are what a number holds"
            )]
            let unit = (state >> 11) as f64 / 9_007_199_254_740_992.0;
            unit
        };
        for _ in 0..200_000 {
            let lo = 14.0 * next() - 7.0;
            let of = Span::new(lo, lo + 3.0 * next().powi(4));
            let (sin, cos) = of.sin_cos();
            for _ in 0..4 {
                let angle = (of.lo + next() * of.width()).clamp(of.lo, of.hi);
                let (s, c) = reference(angle);
                assert!(
                    holds(sin, s) && holds(cos, c),
                    "{of:?} {angle} {sin:?} {cos:?}"
                );
            }
            let (sin, cos) = Span::of(lo).sin_cos();
            assert!(sin.width() < 1e-14 && cos.width() < 1e-14, "{lo}");
        }
    }
}
