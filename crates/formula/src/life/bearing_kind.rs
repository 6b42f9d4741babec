//! Balls or rollers: how fast a bearing's life falls with its load.

quantity::words! {
    /// What rolls inside a bearing.
    pub enum BearingKind {
        /// Balls.
        Ball = "ball",
        /// Rollers or needles.
        Roller = "roller",
    }
}

impl BearingKind {
    /// Exponent of load over rating in ISO 281.
    pub(super) fn exponent(self) -> f64 {
        match self {
            Self::Ball => 3.0,
            Self::Roller => 10.0 / 3.0,
        }
    }
}

/// Revolutions at which a bearing's dynamic rating is stated.
pub(super) const RATED_REVOLUTIONS: f64 = 1e6;
