//! Spans of numbers with outward rounding: whatever the true result is, it lies within.
//!
//! Each of + − × ÷ √ is rounded to the nearest by IEEE 754, so one step outward on each side holds the true value. Sines
//! and cosines are in `circle`.

use std::ops::{Add, Mul, Neg, Sub};

/// All numbers from one to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct Span {
    pub lo: f64,
    pub hi: f64,
}

/// At least one step below a number, at most two.
pub(in super::super) fn down(number: f64) -> f64 {
    number - step(number)
}

/// At least one step above a number, at most two.
pub(in super::super) fn up(number: f64) -> f64 {
    number + step(number)
}

/// No less than the distance to the next number: 2⁻⁵² of it, or the smallest number that has all its digits. Numbers
/// without end keep theirs.
fn step(number: f64) -> f64 {
    number.abs().min(f64::MAX) * f64::EPSILON + f64::MIN_POSITIVE
}

impl Span {
    pub(in super::super) const ALL: Self = Self {
        lo: f64::NEG_INFINITY,
        hi: f64::INFINITY,
    };

    pub(in super::super) fn new(lo: f64, hi: f64) -> Self {
        Self { lo, hi }
    }

    pub(in super::super) fn of(number: f64) -> Self {
        Self::new(number, number)
    }

    pub(in super::super) fn middle(self) -> f64 {
        0.5 * (self.lo + self.hi)
    }

    pub(in super::super) fn width(self) -> f64 {
        self.hi - self.lo
    }

    /// What both have; nothing where they are apart.
    pub(in super::super) fn both(self, other: Self) -> Option<Self> {
        let both = Self::new(self.lo.max(other.lo), self.hi.min(other.hi));
        (both.lo <= both.hi).then_some(both)
    }

    pub(in super::super) fn hull(self, other: Self) -> Self {
        Self::new(self.lo.min(other.lo), self.hi.max(other.hi))
    }

    pub(in super::super) fn at_least(self, least: f64) -> Self {
        Self::new(self.lo.max(least), self.hi.max(least))
    }

    pub(in super::super) fn at_most(self, most: f64) -> Self {
        Self::new(self.lo.min(most), self.hi.min(most))
    }

    pub(in super::super) fn max(self, other: Self) -> Self {
        Self::new(self.lo.max(other.lo), self.hi.max(other.hi))
    }

    pub(in super::super) fn min(self, other: Self) -> Self {
        Self::new(self.lo.min(other.lo), self.hi.min(other.hi))
    }

    pub(in super::super) fn abs(self) -> Self {
        if self.lo >= 0.0 {
            self
        } else if self.hi <= 0.0 {
            -self
        } else {
            Self::new(0.0, self.hi.max(-self.lo))
        }
    }

    pub(in super::super) fn square(self) -> Self {
        let size = self.abs();
        Self::new(down(size.lo * size.lo).max(0.0), up(size.hi * size.hi))
    }

    /// Root of what is not below zero.
    pub(in super::super) fn root(self) -> Self {
        Self::new(
            down(self.lo.max(0.0).sqrt()).max(0.0),
            up(self.hi.max(0.0).sqrt()),
        )
    }

    pub(in super::super) fn has_zero(self) -> bool {
        self.lo <= 0.0 && self.hi >= 0.0
    }

    /// Divided by a span; everything where that has zero in it.
    pub(in super::super) fn over(self, other: Self) -> Self {
        if other.has_zero() {
            return Self::ALL;
        }
        let (above, below) = if other.lo > 0.0 {
            (self, other)
        } else {
            (-self, -other)
        };
        let least = if above.lo < 0.0 { below.lo } else { below.hi };
        let most = if above.hi < 0.0 { below.hi } else { below.lo };
        Self::outward(above.lo / least, above.hi / most)
    }

    /// Rounded outward; everything where a bound is no number.
    fn outward(lo: f64, hi: f64) -> Self {
        if lo <= hi {
            Self::new(down(lo), up(hi))
        } else {
            Self::ALL
        }
    }

    pub(in super::super) fn halves(self) -> (Self, Self) {
        let middle = self.middle();
        (Self::new(self.lo, middle), Self::new(middle, self.hi))
    }
}

impl Add for Span {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(down(self.lo + other.lo), up(self.hi + other.hi))
    }
}

impl Sub for Span {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(down(self.lo - other.hi), up(self.hi - other.lo))
    }
}

impl Neg for Span {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.hi, -self.lo)
    }
}

impl Mul for Span {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        let (a, b) = (self.lo * other.lo, self.lo * other.hi);
        let (c, d) = (self.hi * other.lo, self.hi * other.hi);
        // A bound that is no number would be left out unseen: the sum has it.
        if (a + b + c + d).is_nan() {
            return Self::ALL;
        }
        Self::outward(a.min(b).min(c.min(d)), a.max(b).max(c.max(d)))
    }
}

impl Mul<f64> for Span {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        let (lo, hi) = (self.lo * factor, self.hi * factor);
        if factor < 0.0 {
            Self::outward(hi, lo)
        } else {
            Self::outward(lo, hi)
        }
    }
}

impl Add<f64> for Span {
    type Output = Self;
    fn add(self, other: f64) -> Self {
        Self::new(down(self.lo + other), up(self.hi + other))
    }
}

impl Sub<f64> for Span {
    type Output = Self;
    fn sub(self, other: f64) -> Self {
        Self::new(down(self.lo - other), up(self.hi - other))
    }
}
