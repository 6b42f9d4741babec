//! How hard a wheel presses where it meets its rail.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};
use std::f64::consts::PI;

formula! {
    /// Contact of a cylindrical wheel with a flat rail: half the width of the contact, and its greatest pressure.
    ///
    /// It goes with the root of the load: four times the load presses twice as hard. A wheel that runs on one edge of its
    /// tread, or on a round rail, presses far harder.
    pub struct WheelContactPressure = "wheel-contact-pressure" in Leaf {
        /// Load on the wheel.
        load ("F"): Force,
        /// Diameter of the wheel where it rolls.
        diameter ("d"): Length,
        /// Width over which its tread bears.
        tread_width ("l"): Length,
        /// Modulus of elasticity of the wheel.
        wheel_elasticity ("E1"): Pressure,
        /// Poisson's ratio of the wheel.
        wheel_poisson ("ν1"): Ratio,
        /// Modulus of elasticity of the rail.
        rail_elasticity ("E2"): Pressure,
        /// Poisson's ratio of the rail.
        rail_poisson ("ν2"): Ratio,
    }
    gives
    /// Contact of a wheel.
    pub struct WheelContact {
        /// Half the width of the contact, along the rail.
        half_width ("b"): Length,
        /// Greatest pressure, in the middle of the contact.
        pressure ("p"): Pressure,
    }
    formula "b = √(2 · F / (π · l) · ((1 − ν1²) / E1 + (1 − ν2²) / E2) · d)\np = 2 · F / (π · b · l)"
    valid "Smooth elastic cylinders on flat rails, contact narrow against the wheel; not for rubber or soft plastic treads."
    source { work: "Hertz line contact; Shigley's Mechanical Engineering Design, 10th ed., equations 3-73 and 3-74", clause: "", evidence: Seen, seen: "worked solution of problem 3-142: https://holooly.com/solutions/a-wheel-of-diameter-d-and-width-w-carrying-a-load-f-rolls-on-a-flat-rail-assume-that-fig-3-39-which-is-based-on-a-poissons-ratio-of-0-3-is-applicable-to-estimate-the-depth-at-whic" }
    by contact
}

fn contact(wheel: &WheelContactPressure) -> Result<WheelContact, OutOfReach> {
    positive("load", wheel.load, "600 lbf")?;
    positive("diameter", wheel.diameter, "6 in")?;
    positive("tread_width", wheel.tread_width, "3/4 in")?;
    positive("wheel_elasticity", wheel.wheel_elasticity, "29000 ksi")?;
    positive("rail_elasticity", wheel.rail_elasticity, "29000 ksi")?;
    poisson("wheel_poisson", wheel.wheel_poisson)?;
    poisson("rail_poisson", wheel.rail_poisson)?;
    let give =
        |elasticity: Pressure, poisson: Ratio| (1.0 - poisson.base().powi(2)) / elasticity.base();
    let compliance = give(wheel.wheel_elasticity, wheel.wheel_poisson)
        + give(wheel.rail_elasticity, wheel.rail_poisson);
    let line = 2.0 * wheel.load.base() / (PI * wheel.tread_width.base());
    let half_width = (line * compliance * wheel.diameter.base()).sqrt();
    if half_width > wheel.diameter.base() / 10.0 {
        return Err(OutOfReach::new(
            "load",
            "the wheel would sink into its rail; it is too soft for this calculation",
        ));
    }
    Ok(WheelContact {
        half_width: Length::from_base(half_width),
        pressure: Pressure::from_base(line / half_width),
    })
}

fn poisson(input: &'static str, ratio: Ratio) -> Result<(), OutOfReach> {
    if (0.0..=0.5).contains(&ratio.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "Poisson's ratio of a solid is between 0 and 0.5; steel has 0.3",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn wheel(load: f64) -> WheelContactPressure {
        WheelContactPressure {
            load: Force::from_base(load),
            diameter: Length::from_base(0.12),
            tread_width: Length::from_base(0.02),
            wheel_elasticity: Pressure::from_base(200e9),
            wheel_poisson: Ratio::from_base(0.3),
            rail_elasticity: Pressure::from_base(200e9),
            rail_poisson: Ratio::from_base(0.3),
        }
    }

    proptest! {
        #[test]
        fn four_times_the_load_presses_twice_as_hard(load in 10.0..20000.0) {
            let (one, four) = (wheel(load).evaluate().unwrap(), wheel(4.0 * load).evaluate().unwrap());
            prop_assert!((four.pressure.base() / one.pressure.base() - 2.0).abs() < 1e-9);
        }

        /// The pressure over the contact, half an ellipse, carries the load.
        #[test]
        fn the_contact_carries_the_load(load in 10.0..20000.0) {
            let contact = wheel(load).evaluate().unwrap();
            let carried = PI / 2.0 * contact.pressure.base() * contact.half_width.base() * 0.02;
            prop_assert!((carried / load - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_wheel_of_jelly_is_refused() {
        let soft = WheelContactPressure {
            wheel_elasticity: Pressure::from_base(1e5),
            ..wheel(2000.0)
        };
        assert_eq!(soft.evaluate().unwrap_err().input, "load");
        let odd = WheelContactPressure {
            rail_poisson: Ratio::from_base(0.7),
            ..wheel(2000.0)
        };
        assert_eq!(odd.evaluate().unwrap_err().input, "rail_poisson");
    }
}
