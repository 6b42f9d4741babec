//! A value with its tolerance and with how well it is known. Whoever looks at it is seen to do so.

use crate::Quantity;
use crate::looked::look;

crate::words! {
    /// How a value of the site came to be known.
    pub enum Known {
        /// Written down without saying how.
        Stated = "stated",
        /// Measured on site.
        Measured = "measured",
        /// Read from a data sheet or a drawing.
        DataSheet = "data sheet",
        /// Assumed until somebody measures it.
        Assumed = "assumed",
    }
}

/// How far the true value may lie from the nominal one, as it was written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// None was stated: the value is taken as exact.
    Exact,
    /// So much below and above, in the coherent SI unit of the kind (a temperature's tolerance is in kelvin).
    Absolute {
        /// Distance to the lowest value, not negative.
        below: f64,
        /// Distance to the highest value, not negative.
        above: f64,
    },
    /// So large a share of the nominal value below and above.
    Relative {
        /// Share below, not negative.
        below: f64,
        /// Share above, not negative.
        above: f64,
    },
}

/// A quantity of the site: its nominal value, its tolerance, and how it is known.
#[derive(Clone, Copy)]
pub struct Measured<Q> {
    nominal: Q,
    tolerance: Tolerance,
    known: Known,
}

impl<Q: Quantity> Measured<Q> {
    /// A value without tolerance.
    pub fn exact(nominal: Q) -> Self {
        Self {
            nominal,
            tolerance: Tolerance::Exact,
            known: Known::Stated,
        }
    }

    /// A value with a tolerance and how it is known.
    pub fn new(nominal: Q, tolerance: Tolerance, known: Known) -> Self {
        Self {
            nominal,
            tolerance,
            known,
        }
    }

    /// The value itself.
    pub fn nominal(&self) -> Q {
        look(self.nominal);
        self.nominal
    }

    /// The tolerance as it was written.
    pub fn tolerance(&self) -> Tolerance {
        look(self.nominal);
        self.tolerance
    }

    /// How the value is known.
    pub fn known(&self) -> Known {
        look(self.nominal);
        self.known
    }

    /// The lowest value that the tolerance allows.
    pub fn low(&self) -> Q {
        let nominal = self.nominal().base();
        Q::from_base(match self.tolerance {
            Tolerance::Exact => nominal,
            Tolerance::Absolute { below, .. } => nominal - below,
            Tolerance::Relative { below, .. } => nominal - nominal.abs() * below,
        })
    }

    /// The highest value that the tolerance allows.
    pub fn high(&self) -> Q {
        let nominal = self.nominal().base();
        Q::from_base(match self.tolerance {
            Tolerance::Exact => nominal,
            Tolerance::Absolute { above, .. } => nominal + above,
            Tolerance::Relative { above, .. } => nominal + nominal.abs() * above,
        })
    }

    /// The value itself, which nobody is counted to have looked at.
    pub(crate) fn unlooked(&self) -> Q {
        self.nominal
    }

    /// The other says the same to the last digit; nobody is counted to have looked at them.
    pub(crate) fn is_exactly(&self, other: &Self) -> bool {
        let digits = |it: &Self| {
            let (word, below, above) = match it.tolerance {
                Tolerance::Exact => (0, 0.0, 0.0),
                Tolerance::Absolute { below, above } => (1, below, above),
                Tolerance::Relative { below, above } => (2, below, above),
            };
            let numbers = [it.nominal.base(), below, above].map(f64::to_bits);
            (word, numbers, it.known)
        };
        digits(self) == digits(other)
    }
}

impl<Q: Quantity> PartialEq for Measured<Q> {
    fn eq(&self, other: &Self) -> bool {
        let told = |it: &Self| (it.nominal(), it.tolerance, it.known);
        told(self) == told(other)
    }
}

impl<Q: Quantity> std::fmt::Debug for Measured<Q> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Measured")
            .field("nominal", &self.nominal())
            .field("tolerance", &self.tolerance)
            .field("known", &self.known)
            .finish()
    }
}
