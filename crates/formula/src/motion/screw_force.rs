//! Push of a screw.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, Length, Quantity as _, Ratio, Torque};

quantity::words! {
    /// What a screw does when it is pushed from outside.
    pub enum ScrewAtRest {
        /// It stays.
        Holds = "holds without power",
        /// It is turned back.
        RunsBack = "is pushed back",
    }
}

formula! {
    /// Push of a screw and its nut from the torque of the screw, with thread and collar friction.
    ///
    /// A screw whose thread friction is at least its lead angle holds without power. Shaking, grease and wear make a
    /// screw that barely holds run back; a leaf that must not move needs a brake or a lock.
    pub struct ScrewForce = "screw-force" in Motion {
        /// Torque of the screw.
        torque ("T"): Torque,
        /// Mean diameter of the thread.
        mean_diameter ("dm"): Length,
        /// Travel for each turn.
        lead ("l"): Length,
        /// Half of the angle between the flanks: 0 for a square thread, 14.5° or 15° for a trapezoid.
        flank_angle ("α"): Angle,
        /// Friction of the thread.
        friction ("f"): Ratio,
        /// Mean diameter of the collar that takes the push; 0 for a rolling bearing.
        collar_diameter ("dc"): Length,
        /// Friction of the collar.
        collar_friction ("fc"): Ratio,
    }
    gives
    /// Push of a screw.
    pub struct ScrewPush {
        /// Push of the nut.
        force ("F"): Force,
        /// Work of the nut over work of the screw.
        efficiency ("e"): Ratio,
        /// What it does when it is pushed from outside, by its thread alone.
        at_rest ("–"): ScrewAtRest,
    }
    formula "T = F · dm / 2 · (l + π · f′ · dm) / (π · dm − f′ · l) + F · fc · dc / 2,  f′ = f / cos α\ne = F · l / (2π · T)\nholds where π · f′ · dm ≥ l"
    valid "A sliding screw that pushes against its load; ball screws have no such friction and never hold."
    source { work: "power screws in texts on machine design", clause: "torque to raise the load", evidence: Physics, seen: "a wedge wound about a cylinder; formula printed at https://vcalc.com/equation/?uuid=794a4738-01b1-11e4-b7aa-bc764e2038f2" }
    by screw_force
}

fn screw_force(screw: &ScrewForce) -> Result<ScrewPush, OutOfReach> {
    check(screw)?;
    let (diameter, lead) = (screw.mean_diameter.base(), screw.lead.base());
    let friction = screw.friction.base() / screw.flank_angle.base().cos();
    let around = std::f64::consts::PI * diameter;
    if friction * lead >= around {
        return Err(OutOfReach::new(
            "friction",
            "with this friction and lead the screw jams: no torque moves it",
        ));
    }
    let thread = 0.5 * diameter * (lead + around * friction) / (around - friction * lead);
    let collar = 0.5 * screw.collar_friction.base() * screw.collar_diameter.base();
    let arm = thread + collar;
    Ok(ScrewPush {
        force: Force::from_base(screw.torque.base() / arm),
        efficiency: Ratio::from_base(lead / (std::f64::consts::TAU * arm)),
        at_rest: if around * friction >= lead {
            ScrewAtRest::Holds
        } else {
            ScrewAtRest::RunsBack
        },
    })
}

fn check(screw: &ScrewForce) -> Result<(), OutOfReach> {
    not_negative("torque", screw.torque, "4 lbf·ft")?;
    positive("mean_diameter", screw.mean_diameter, "18 mm")?;
    positive("lead", screw.lead, "4 mm")?;
    if !(0.0..0.8).contains(&screw.flank_angle.base()) {
        return Err(OutOfReach::new(
            "flank_angle",
            "give half of the angle between the flanks, from 0 to 45°",
        ));
    }
    not_negative("friction", screw.friction, "0.12")?;
    not_negative("collar_diameter", screw.collar_diameter, "30 mm")?;
    not_negative("collar_friction", screw.collar_friction, "0.1")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn screw(friction: f64, lead: f64) -> ScrewForce {
        ScrewForce {
            torque: Torque::from_base(10.0),
            mean_diameter: Length::from_base(0.018),
            lead: Length::from_base(lead),
            flank_angle: Angle::from_base(0.26),
            friction: Ratio::from_base(friction),
            collar_diameter: Length::from_base(0.0),
            collar_friction: Ratio::from_base(0.0),
        }
    }

    proptest! {
        #[test]
        fn friction_costs_push(friction in 0.01..0.3, lead in 0.001..0.01) {
            let gives = screw(friction, lead).evaluate().unwrap();
            prop_assert!(gives.efficiency.base() < 1.0);
            prop_assert!(gives.force > screw(friction + 0.01, lead).evaluate().unwrap().force);
        }

        /// A screw that holds gives back less than half of the work that is put in.
        #[test]
        fn what_holds_wastes_more_than_half(friction in 0.01..0.3, lead in 0.001..0.02) {
            let gives = screw(friction, lead).evaluate().unwrap();
            if gives.at_rest == ScrewAtRest::Holds {
                prop_assert!(gives.efficiency.base() < 0.5);
            }
        }
    }

    #[test]
    fn a_screw_that_jams_is_refused() {
        assert_eq!(screw(1.2, 0.08).evaluate().unwrap_err().input, "friction");
    }
}
