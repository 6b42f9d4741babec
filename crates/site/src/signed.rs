//! A measured value that may be negative: slopes and elevations.

use quantity::{Measured, Quantity};

/// A measured value that may be negative; every other one is refused below zero where that is impossible.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Signed<Q: Quantity>(Measured<Q>);

impl<Q: Quantity> Signed<Q> {
    /// Lets a measured value be negative.
    pub fn new(measured: Measured<Q>) -> Self {
        Self(measured)
    }

    /// The value with its tolerance.
    pub fn measured(&self) -> &Measured<Q> {
        &self.0
    }
}

impl<Q: Quantity> std::ops::Deref for Signed<Q> {
    type Target = Measured<Q>;
    fn deref(&self) -> &Measured<Q> {
        &self.0
    }
}
