//! Gaps at the joints of a track, at its hottest and its coldest.

use super::thermal_growth::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio, Temperature, ThermalExpansion};

formula! {
    /// Gaps at the joints of a track or a rack: how much of the gap that was set is left on the hottest day, and how far
    /// it opens on the coldest night.
    ///
    /// Both ends of the track are taken as held, so that its joints take up all of the growth between them.
    pub struct RailJointGaps = "rail-joint-gaps" in Leaf {
        /// Length of the track.
        length ("L"): Length,
        /// Joints at which it may grow.
        joints ("n"): u32,
        /// Gap left at each.
        gap ("g"): Length,
        /// Coefficient of expansion.
        expansion ("α"): ThermalExpansion,
        /// Temperature of the metal when the gaps were set.
        set_at ("T0"): Temperature,
        /// Coldest metal.
        coldest ("Tc"): Temperature,
        /// Hottest metal.
        hottest ("Th"): Temperature,
    }
    gives
    /// Gaps at the joints.
    pub struct JointGaps {
        /// Gap that each joint needs for the hottest metal.
        needed ("gn"): Length,
        /// Gap left at the hottest, below zero where the track presses.
        least ("gh"): Length,
        /// Gap at the coldest.
        greatest ("gc"): Length,
    }
    formula "gn = α · (Th − T0) · L / n\ngh = g − gn\ngc = g + α · (T0 − Tc) · L / n"
    valid "Equal pieces that may slide on their fixings, between −60 °C and 150 °C."
    source { work: "linear expansion shared by the joints", clause: "", evidence: Physics, seen: "gaps worked by hand piece by piece" }
    by gaps
}

fn gaps(track: &RailJointGaps) -> Result<JointGaps, OutOfReach> {
    positive("length", track.length, "42 ft")?;
    positive("joints", Ratio::from_base(f64::from(track.joints)), "2")?;
    not_negative("gap", track.gap, "1/8 in")?;
    not_negative("expansion", track.expansion, "12 µm/(m·K)")?;
    within("set_at", track.set_at)?;
    within("coldest", track.coldest)?;
    within("hottest", track.hottest)?;
    if track.hottest < track.coldest {
        return Err(OutOfReach::new(
            "hottest",
            "the hottest metal is colder than the coldest",
        ));
    }
    let each = track.expansion.base() * track.length.base() / f64::from(track.joints);
    let needed = Length::from_base(each * (track.hottest.base() - track.set_at.base()));
    let opening = Length::from_base(each * (track.set_at.base() - track.coldest.base()));
    Ok(JointGaps {
        needed,
        least: track.gap - needed,
        greatest: track.gap + opening,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn track(joints: u32, set_at: f64) -> RailJointGaps {
        RailJointGaps {
            length: Length::from_base(12.0),
            joints,
            gap: Length::from_base(0.004),
            expansion: ThermalExpansion::from_base(12e-6),
            set_at: Temperature::from_base(set_at),
            coldest: Temperature::from_base(258.15),
            hottest: Temperature::from_base(333.15),
        }
    }

    proptest! {
        /// From coldest to hottest each joint moves by its share of the whole growth, whenever it was set.
        #[test]
        fn a_joint_moves_by_its_share(joints in 1u32..20, set_at in 258.15..333.15) {
            let gaps = track(joints, set_at).evaluate().unwrap();
            let moved = (gaps.greatest - gaps.least).base();
            let whole = 12.0 * 12e-6 * 75.0;
            prop_assert!((moved * f64::from(joints) - whole).abs() < 1e-9);
        }
    }

    #[test]
    fn a_track_without_joints_is_refused() {
        assert_eq!(track(0, 290.0).evaluate().unwrap_err().input, "joints");
    }
}
