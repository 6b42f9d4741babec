//! The torque of a swing leaf along its whole travel.

use super::swing_gate_torque::{SwingGateTorque, SwingTorques};
use crate::{Formula as _, OutOfReach};
use quantity::{Angle, Quantity as _};

/// The torque at one angle of the travel.
#[derive(Debug, Clone, Copy)]
pub struct SwingStep {
    /// Angle of the leaf, 0 closed.
    pub angle: Angle,
    /// Its torque, term by term.
    pub torques: SwingTorques,
}

/// The torque of a leaf at evenly spread angles from closed to open, both ends with it. The angle of the leaf that is
/// given does not matter; at least two angles are taken.
///
/// # Errors
/// Where `swing-gate-torque` refuses its inputs.
pub fn swing_curve(leaf: &SwingGateTorque, points: u32) -> Result<Vec<SwingStep>, OutOfReach> {
    let last = points.max(2) - 1;
    let step = leaf.travel_angle.base() / f64::from(last);
    (0..=last)
        .map(|at| {
            let angle = Angle::from_base((step * f64::from(at)).min(leaf.travel_angle.base()));
            let torques = SwingGateTorque { angle, ..*leaf }.evaluate()?;
            Ok(SwingStep { angle, torques })
        })
        .collect()
}
