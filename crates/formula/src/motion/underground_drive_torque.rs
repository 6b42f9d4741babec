//! A buried drive whose axis does not stand under the hinge line.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio, Torque};

formula! {
    /// Torque of a buried drive whose axis stands beside the hinge line, at the worst angle.
    ///
    /// In line, the shaft gives what the leaf asks for. Beside it, the shoe or pin that takes the leaf slides along it
    /// while it turns, and the arms of its push about the two lines differ by up to the offset: once in a full turn the
    /// drive has to give more by offset over the distance at which it takes the leaf, and half a turn on less by as
    /// much. A drive that is bolted to the leaf without play binds instead, and no torque is enough.
    pub struct UndergroundDriveTorque = "underground-drive-torque" in Motion {
        /// Torque about the hinge line that the leaf asks for.
        torque ("T"): Torque,
        /// Distance between the drive's axis and the hinge line.
        axis_offset ("e"): Length,
        /// Distance from the hinge line at which the drive takes the leaf.
        taken_at ("r"): Length,
    }
    gives
    /// Torque of a buried drive.
    pub struct UndergroundDrive {
        /// Torque of the drive at the worst angle over that of the leaf.
        factor ("k"): Ratio,
        /// Torque of the drive at the worst angle.
        drive_torque ("Td"): Torque,
    }
    formula "k = 1 + e / r\nTd = k · T"
    valid "Offsets smaller than the distance at which the drive takes the leaf, a shoe or pin that slides freely; its friction is left out."
    source { work: "moments of one push about two parallel lines", clause: "", evidence: Physics, seen: "the push square to the leaf at r has the arm r about the hinge line and r + e at most about the drive's axis" }
    by underground_drive_torque
}

fn underground_drive_torque(
    drive: &UndergroundDriveTorque,
) -> Result<UndergroundDrive, OutOfReach> {
    not_negative("axis_offset", drive.axis_offset, "1/8 in")?;
    positive("taken_at", drive.taken_at, "8 in")?;
    if drive.axis_offset >= drive.taken_at {
        return Err(OutOfReach::new(
            "axis_offset",
            "the axis stands nearer to the hinge line than the place where the drive takes the leaf",
        ));
    }
    let factor = 1.0 + drive.axis_offset.base() / drive.taken_at.base();
    Ok(UndergroundDrive {
        factor: Ratio::from_base(factor),
        drive_torque: drive.torque * factor,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn drive(offset: f64, taken_at: f64) -> UndergroundDriveTorque {
        UndergroundDriveTorque {
            torque: Torque::from_base(200.0),
            axis_offset: Length::from_base(offset),
            taken_at: Length::from_base(taken_at),
        }
    }

    proptest! {
        #[test]
        fn in_line_nothing_is_lost_and_aside_more_the_farther(offset in 0.0..0.05, more in 0.001..0.04) {
            let line = drive(0.0, 0.2).evaluate().unwrap();
            prop_assert!((line.drive_torque.base() - 200.0).abs() < 1e-9);
            let near = drive(offset, 0.2).evaluate().unwrap();
            let far = drive(offset + more, 0.2).evaluate().unwrap();
            prop_assert!(far.drive_torque > near.drive_torque);
        }
    }

    #[test]
    fn an_axis_out_at_the_shoe_is_refused() {
        assert_eq!(drive(0.2, 0.2).evaluate().unwrap_err().input, "axis_offset");
    }
}
