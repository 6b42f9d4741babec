//! Where contact sensors belong on a gate, by UL 325.

use super::GateKind;
use super::customary::inches;
use super::limit::is_at_most;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Length;

quantity::words! {
    /// Place on a gate where a contact sensor may be.
    pub enum SensorPlace {
        /// The edge that comes first on closing.
        LeadingEdge = "leading edge",
        /// The edge that comes first on opening.
        TrailingEdge = "trailing edge",
        /// The posts, inside and outside.
        Posts = "posts",
        /// The bottom edge.
        BottomEdge = "bottom edge",
        /// The place where moving and fixed parts meet.
        PinchPoint = "pinch point",
    }
}

quantity::words! {
    /// Whether a contact sensor belongs in a place, where contact sensors are the means chosen.
    pub enum SensorDemand {
        /// It does.
        Needed = "needed",
        /// The text read does not name the place for this gate.
        NotNamed = "not named",
    }
}

formula! {
    /// Whether the installation text of UL 325 names a place on the gate for a contact sensor.
    ///
    /// The places hold where contact sensors are among the means of protection. On a swinging leaf one or more go on
    /// the bottom edge wherever it stands more than 6 in above the ground at any point of its arc; a gap of more than
    /// 4 in is an entrapment zone already (`swing-bottom-entrapment-zone`) and needs some means.
    pub struct ContactSensorPlace = "contact-sensor-place" in Protection {
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Place on the gate.
        place ("–"): SensorPlace,
        /// Greatest gap under the bottom edge at any point of the travel; counted for swinging leaves.
        bottom_gap ("e"): Length,
    }
    gives
    /// Whether a contact sensor belongs there.
    pub struct SensorAtPlace {
        /// What the text says.
        demand ("–"): SensorDemand,
    }
    formula "sliding: leading edge, trailing edge, posts\nswinging: leading edge and posts; bottom edge where e > 6 in\nlifting: bottom edge\nvertical pivot: pinch point"
    valid "Gates with contact sensors as a means of protection, United States; the installer looks for further places."
    source { work: "UL 325, installation instructions on contact sensors", clause: "51.8.4 (i), as cited", evidence: Seen, seen: "gate-operator manuals from 2008 to 2018 that reprint the instructions (addresses withheld); the standard itself was not at hand" }
    by sensor_place
}

fn sensor_place(sensor: &ContactSensorPlace) -> Result<SensorAtPlace, OutOfReach> {
    not_negative("bottom_gap", sensor.bottom_gap, "4 in")?;
    let high = !is_at_most(sensor.bottom_gap, inches(6.0));
    let named: &[SensorPlace] = match sensor.gate {
        GateKind::TrackSlide | GateKind::CantileverSlide => &[
            SensorPlace::LeadingEdge,
            SensorPlace::TrailingEdge,
            SensorPlace::Posts,
        ],
        GateKind::SingleSwing | GateKind::DoubleSwing if high => &[
            SensorPlace::LeadingEdge,
            SensorPlace::Posts,
            SensorPlace::BottomEdge,
        ],
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            &[SensorPlace::LeadingEdge, SensorPlace::Posts]
        }
        GateKind::VerticalLift => &[SensorPlace::BottomEdge],
        GateKind::VerticalPivot => &[SensorPlace::PinchPoint],
        GateKind::BarrierArm => {
            return Err(OutOfReach::new(
                "gate",
                "the text read names no place for contact sensors on a barrier arm; see the operator's manual",
            ));
        }
    };
    Ok(SensorAtPlace {
        demand: if named.contains(&sensor.place) {
            SensorDemand::Needed
        } else {
            SensorDemand::NotNamed
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::{SwingEntrapmentZone, ZoneVerdict};
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn at(gate: GateKind, place: SensorPlace, gap: f64) -> Result<SensorDemand, OutOfReach> {
        let bottom_gap = Length::from_base(gap);
        let sensor = ContactSensorPlace {
            gate,
            place,
            bottom_gap,
        };
        sensor.evaluate().map(|at| at.demand)
    }

    proptest! {
        /// Where the text asks an edge below 16 in, the gap is an entrapment zone as well.
        #[test]
        fn an_edge_below_is_asked_in_zones_only(gap in 0.0..0.4) {
            let bottom_gap = Length::from_base(gap);
            if at(GateKind::DoubleSwing, SensorPlace::BottomEdge, gap).unwrap() == SensorDemand::Needed {
                let zone = SwingEntrapmentZone { bottom_gap }.evaluate().unwrap();
                prop_assert_eq!(zone.verdict, ZoneVerdict::Zone);
            }
        }
    }

    #[test]
    fn a_barrier_arm_is_refused() {
        let arm = at(GateKind::BarrierArm, SensorPlace::BottomEdge, 0.1);
        assert_eq!(arm.unwrap_err().input, "gate");
    }
}
