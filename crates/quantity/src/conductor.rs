//! Conductor sizes: American Wire Gauge numbers and metric cross-sections.

use crate::{Area, Quantity as _};

/// An American Wire Gauge size from 4/0 to 40. A value of this type is always a real size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Awg(i8);

impl Awg {
    /// The size of a gauge number; 1/0 is 0, 2/0 is −1, 3/0 is −2, 4/0 is −3. Outside −3 to 40 there is none.
    pub const fn new(number: i8) -> Option<Self> {
        if number >= -3 && number <= 40 {
            Some(Self(number))
        } else {
            None
        }
    }

    /// The gauge number; 1/0 is 0, 4/0 is −3.
    pub const fn number(self) -> i8 {
        self.0
    }
}

impl std::fmt::Display for Awg {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.0 <= 0 {
            write!(f, "{}/0 AWG", 1 - self.0)
        } else {
            write!(f, "{} AWG", self.0)
        }
    }
}

/// The size of a conductor as it is bought.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ConductorSize {
    /// An American Wire Gauge number.
    Gauge(Awg),
    /// A nominal cross-section, as in IEC 60228.
    Metric(Area),
}

impl std::fmt::Display for ConductorSize {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Gauge(gauge) => gauge.fmt(f),
            Self::Metric(area) => write!(f, "{} mm²", crate::number::shortest(area.base() * 1e6)),
        }
    }
}
