//! Safety distance of presence sensing, by ANSI B11.19.

use super::approach::{in_millimeters, millimeters};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _, Time};

formula! {
    /// Safety distance of a light curtain in the US form, by ANSI B11.19.
    ///
    /// The same idea as ISO 13855 with a depth penetration factor of its own. Without a monitor of the brake the stop
    /// time of machine and control is taken a fifth longer, since brakes wear: give that as its own time.
    pub struct AnsiB1119Distance = "ansi-b11-19-distance" in Protection {
        /// Time that the leaf needs to stop.
        stop_time ("Ts"): Time,
        /// Response time of the control.
        control_time ("Tc"): Time,
        /// Response time of the sensor.
        sensor_time ("Tr"): Time,
        /// Time allowed for wear of the brake; 20 % of stop and control time where nothing monitors it.
        brake_time ("Tbm"): Time,
        /// Detection capability: the thinnest rod that is seen everywhere in the field.
        capability ("d"): Length,
    }
    gives
    /// Safety distance in the US form.
    pub struct AnsiDistance {
        /// Depth penetration factor: how far a hand gets before it is seen.
        penetration ("Dpf"): Length,
        /// Safety distance.
        distance ("Ds"): Length,
    }
    formula "Dpf = 3.4 · (d − 6.875 mm), not below 0\nDs = 63 in/s · (Ts + Tc + Tr + Tbm) + Dpf"
    valid "Light curtains approached head-on, detection capability below 64 mm; machinery in workplaces."
    source { work: "ANSI B11.19-2003", clause: "", evidence: Seen, seen: "an automation catalog's explanation with a worked example (address withheld); the standard itself was not at hand" }
    by distance
}

/// Detection capability from which the factor no longer holds, in mm.
const COARSE: f64 = 64.0;

fn distance(curtain: &AnsiB1119Distance) -> Result<AnsiDistance, OutOfReach> {
    not_negative("stop_time", curtain.stop_time, "250 ms")?;
    not_negative("control_time", curtain.control_time, "50 ms")?;
    not_negative("sensor_time", curtain.sensor_time, "20 ms")?;
    not_negative("brake_time", curtain.brake_time, "60 ms")?;
    let capability = in_millimeters(curtain.capability);
    if !(capability > 0.0 && capability < COARSE) {
        return Err(OutOfReach::new(
            "capability",
            "give a detection capability above 0 and below 64 mm, such as 30 mm",
        ));
    }
    let time = curtain.stop_time + curtain.control_time + curtain.sensor_time + curtain.brake_time;
    let penetration = millimeters((3.4 * (capability - 6.875)).max(0.0));
    Ok(AnsiDistance {
        penetration,
        distance: Length::from_base(63.0 * 0.0254 * time.base()) + penetration,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::Osha1910217Distance;
    use proptest::prelude::*;

    fn curtain(time: f64, capability: f64) -> AnsiB1119Distance {
        AnsiB1119Distance {
            stop_time: Time::from_base(time),
            control_time: Time::from_base(0.0),
            sensor_time: Time::from_base(0.0),
            brake_time: Time::from_base(0.0),
            capability: millimeters(capability),
        }
    }

    proptest! {
        #[test]
        fn never_nearer_than_the_rule_for_presses(time in 0.0..2.0, capability in 1.0..63.0) {
            let press = Osha1910217Distance { stopping_time: Time::from_base(time) };
            let distance = curtain(time, capability).evaluate().unwrap().distance;
            prop_assert!(distance.base() >= press.evaluate().unwrap().distance.base() - 1e-12);
        }
    }

    #[test]
    fn a_coarse_field_is_refused() {
        assert_eq!(
            curtain(0.3, 70.0).evaluate().unwrap_err().input,
            "capability"
        );
    }
}
