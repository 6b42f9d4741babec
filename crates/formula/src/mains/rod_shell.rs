//! How the voltage around a rod falls off with distance.

use super::rod_resistance::shape;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio};

formula! {
    /// Share of a rod's voltage that is still there at a distance from it, and what feet span between the rod and there.
    ///
    /// Most of the resistance of a rod lies in the soil close to it: 85 % within its own length. Who stands beside it in
    /// a fault or a stroke of lightning spans most of its voltage with one pace. That is why rods stand a length apart,
    /// and why an electrode is driven where nobody waits.
    pub struct RodShell = "rod-shell" in Power {
        /// Length of the rod in the soil.
        length ("L"): Length,
        /// Diameter of the rod.
        diameter ("2a"): Length,
        /// Distance from the rod along the surface.
        distance ("x"): Length,
    }
    gives
    /// Voltage around a rod.
    pub struct Shell {
        /// Voltage at the distance over that of the rod.
        left ("Vx/V"): Ratio,
        /// Share of the resistance that lies within the distance: the step from the rod to there.
        within ("1 − Vx/V"): Ratio,
    }
    formula "Vx/V = arsinh(L / x) / (ln(4 · L / a) − 1)"
    valid "One thin rod in soil of one kind; distances at least ten times the rod's thickness."
    source { work: "MIL-HDBK-419A volume 1", clause: "equation 2-20 and table 2-7", evidence: Seen, seen: "navalfacilities.tpub.com/hdbk419a_vol1/hdbk419a_vol10047.htm and hdbk419a_vol10077.htm" }
    by rod_shell
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn rod_shell(rod: &RodShell) -> Result<Shell, OutOfReach> {
    let shape = shape(rod.length, rod.diameter)?;
    positive("distance", rod.distance, "3 ft")?;
    let left = (rod.length.base() / rod.distance.base()).asinh() / shape;
    if left > 1.0 {
        return Err(OutOfReach::new(
            "distance",
            "so close to the rod the formula does not hold; give a distance such as 3 ft",
        ));
    }
    Ok(Shell {
        left: Ratio::from_base(left),
        within: Ratio::from_base(1.0 - left),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn shell(distance: f64) -> Result<Shell, OutOfReach> {
        RodShell {
            length: Length::from_base(2.4),
            diameter: Length::from_base(0.016),
            distance: Length::from_base(distance),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn it_falls_off(distance in 0.1..200.0) {
            let (near, far) = (shell(distance).unwrap(), shell(distance * 1.1).unwrap());
            prop_assert!(far.left < near.left && far.within.base() <= 1.0);
        }
    }

    #[test]
    fn on_the_rod_itself_is_refused() {
        for distance in [0.0, 0.001] {
            assert_eq!(shell(distance).unwrap_err().input, "distance");
        }
    }
}
