//! Peak force of a contact edge by the way that the leaf still runs after it was felt.

use super::soft_edge::SoftEdge;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, ForcePerLength, Length, Quantity as _, Time, Velocity};

formula! {
    /// Peak force on a body behind a contact edge, by the way that the leaf still runs after the edge has switched.
    ///
    /// The edge is first squeezed by its actuation travel; then it switches, the controller reacts, and the leaf brakes.
    /// All that way the edge gives in: soft up to its soft travel, hard beyond it. Where soft travel is left when the
    /// leaf stands, the edge is deep enough. It is a prediction: forces are proved by measuring on the gate.
    pub struct EdgePeakForce = "edge-peak-force" in Protection {
        /// Speed of the leaf's edge at contact.
        speed ("v"): Velocity,
        /// Time from switching of the edge until the leaf begins to brake.
        response ("t"): Time,
        /// Deceleration of the leaf.
        deceleration ("b"): Acceleration,
        /// Travel from first touch until the edge switches.
        actuation_travel ("s0"): Length,
        /// Stiffness of the edge while it is soft.
        soft_stiffness ("k1"): ForcePerLength,
        /// Travel from first touch until the edge is squeezed flat.
        soft_travel ("x1"): Length,
        /// Stiffness once the edge is squeezed flat: of edge, leaf and body together.
        hard_stiffness ("k2"): ForcePerLength,
    }
    gives
    /// Peak force behind a contact edge.
    pub struct EdgeForce {
        /// Way that the leaf runs after the edge has switched.
        stopping_travel ("s"): Length,
        /// How far the edge is squeezed when the leaf stands.
        compression ("x"): Length,
        /// Soft travel left then; below zero where the edge is squeezed flat.
        soft_left ("x1 − x"): Length,
        /// Peak force.
        force ("F"): Force,
    }
    formula "s = v · t + v² / (2 · b)\nx = s0 + s\nF = k1 · min(x, x1) + k2 · max(0, x − x1)"
    valid "A body that does not move away, a leaf that is not slowed by the force itself: an upper value."
    source { work: "motion with constant acceleration; springs in a row", clause: "", evidence: Physics, seen: "area under the speed-time line and under the force-travel line" }
    by edge_force
}

fn edge_force(leaf: &EdgePeakForce) -> Result<EdgeForce, OutOfReach> {
    not_negative("speed", leaf.speed, "1 ft/s")?;
    not_negative("response", leaf.response, "100 ms")?;
    positive("deceleration", leaf.deceleration, "5 ft/s²")?;
    not_negative("actuation_travel", leaf.actuation_travel, "10 mm")?;
    let edge = SoftEdge::of(leaf.soft_stiffness, leaf.soft_travel, leaf.hard_stiffness)?;
    let braking: Time = leaf.speed / leaf.deceleration;
    let stopping_travel: Length = leaf.speed * leaf.response + leaf.speed * braking / 2.0;
    let compression = leaf.actuation_travel + stopping_travel;
    Ok(EdgeForce {
        stopping_travel,
        compression,
        soft_left: leaf.soft_travel - compression,
        force: Force::from_base(edge.force(compression.base())),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(speed: f64, response: f64, travel: f64, hard: f64) -> EdgePeakForce {
        EdgePeakForce {
            speed: Velocity::from_base(speed),
            response: Time::from_base(response),
            deceleration: Acceleration::from_base(1.5),
            actuation_travel: Length::from_base(0.01),
            soft_stiffness: ForcePerLength::from_base(8e3),
            soft_travel: Length::from_base(travel),
            hard_stiffness: ForcePerLength::from_base(hard),
        }
    }

    proptest! {
        #[test]
        fn faster_later_or_shallower_is_never_gentler(
            speed in 0.0..1.0, response in 0.0..0.5, travel in 0.0..0.1, more in 0.0..0.1
        ) {
            let base = leaf(speed, response, travel, 7.5e4).evaluate().unwrap().force;
            for worse in [
                leaf(speed + more, response, travel, 7.5e4),
                leaf(speed, response + more, travel, 7.5e4),
                leaf(speed, response, travel * (1.0 - more), 7.5e4),
            ] {
                prop_assert!(worse.evaluate().unwrap().force.base() >= base.base() - 1e-9);
            }
        }
    }

    #[test]
    fn an_edge_that_softens_is_refused() {
        let softens = leaf(0.3, 0.1, 0.06, 1e3);
        assert_eq!(softens.evaluate().unwrap_err().input, "hard_stiffness");
    }
}
