//! Which values of a kind are tried.

use quantity::Kind;

/// The values tried for a kind, rising, in the coherent SI unit.
#[derive(Debug, Clone, Copy)]
enum Range {
    /// Evenly from the first to the second, in so many steps.
    Even(f64, f64, i32),
    /// Zero, and from one power of ten to another.
    Positive(i32, i32),
    /// The same on both sides of zero.
    Signed(i32, i32),
}

/// Values tried in each power of ten.
const PER_DECADE: i32 = 24;

/// The range that is typical of a kind.
#[allow(
    clippy::match_same_arms,
    reason = "kinds that are alike in meaning stand together"
)]
fn range(kind: Kind) -> Range {
    match kind {
        Kind::Angle => Range::Even(-std::f64::consts::TAU, std::f64::consts::TAU, 1440),
        Kind::Temperature => Range::Even(173.15, 573.15, 800),
        Kind::Ratio => Range::Signed(-6, 6),
        Kind::TemperatureDifference => Range::Signed(-3, 3),
        Kind::Length | Kind::Force => Range::Positive(-6, 6),
        Kind::Area | Kind::Volume => Range::Positive(-12, 6),
        Kind::Time => Range::Positive(-6, 9),
        Kind::Frequency => Range::Positive(-3, 12),
        Kind::SecondMomentOfArea => Range::Positive(-15, 3),
        Kind::ThermalExpansion => Range::Positive(-8, -2),
        Kind::Velocity | Kind::Acceleration | Kind::AngularVelocity | Kind::Jerk => {
            Range::Positive(-6, 3)
        }
        Kind::Mass
        | Kind::MassPerLength
        | Kind::MassPerArea
        | Kind::MassDensity
        | Kind::MomentOfInertia => Range::Positive(-6, 6),
        Kind::ForcePerLength | Kind::Torque | Kind::Energy | Kind::Power => Range::Positive(-6, 9),
        Kind::Pressure => Range::Positive(-3, 12),
        Kind::PressurePerDepth => Range::Positive(-3, 9),
        Kind::HeatFlux | Kind::HeatTransfer => Range::Positive(-3, 5),
        Kind::Current => Range::Positive(-9, 5),
        Kind::Voltage => Range::Positive(-6, 6),
        Kind::Resistance => Range::Positive(-6, 9),
        Kind::ResistancePerLength => Range::Positive(-9, 4),
        Kind::Resistivity => Range::Positive(-3, 6),
        Kind::Charge => Range::Positive(-3, 9),
        Kind::Inductance | Kind::Capacitance => Range::Positive(-12, 2),
        Kind::DataSize => Range::Positive(0, 16),
        Kind::DataRate => Range::Positive(0, 12),
        Kind::Gain | Kind::PowerLevel => Range::Even(-200.0, 400.0, 1200),
        Kind::FieldStrength => Range::Positive(-9, 3),
    }
}

/// The values tried for a kind, rising.
pub(super) fn samples(kind: Kind) -> Vec<f64> {
    match range(kind) {
        Range::Even(low, high, steps) => (0..=steps)
            .map(|step| low + (high - low) * f64::from(step) / f64::from(steps))
            .collect(),
        Range::Positive(low, high) => std::iter::once(0.0).chain(powers(low, high)).collect(),
        Range::Signed(low, high) => {
            let mut negative: Vec<f64> = powers(low, high).map(|value| -value).collect();
            negative.reverse();
            negative.push(0.0);
            negative.extend(powers(low, high));
            negative
        }
    }
}

/// Values from one power of ten to another, evenly in their logarithm.
fn powers(low: i32, high: i32) -> impl Iterator<Item = f64> {
    (low * PER_DECADE..=high * PER_DECADE)
        .map(|step| 10f64.powf(f64::from(step) / f64::from(PER_DECADE)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_tried_rises() {
        for kind in Kind::ALL {
            assert!(samples(*kind).windows(2).all(|pair| pair[0] < pair[1]));
        }
    }
}
