//! Ice all round a bar.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Length, Mass, MassDensity, MassPerLength, Quantity as _};
use std::f64::consts::PI;

formula! {
    /// Mass of the ice on a bar, and how wide the wind then finds it.
    ///
    /// Freezing rain coats a bar all round, as thick as the map of the code says. For a bar that is not round, the code
    /// takes the circle around its section. Glaze weighs at least 56 lb/ft³ in ASCE 7; rime and wet snow are lighter and
    /// thicker.
    pub struct IceOnMembers = "ice-on-members" in Wind {
        /// Thickness of the ice.
        thickness ("td"): Length,
        /// Diameter of the circle around the bar's section.
        around ("Dc"): Length,
        /// Width of the bare bar as the wind meets it.
        width ("d"): Length,
        /// Length of all such bars together.
        length ("L"): Length,
        /// Density of the ice: 56 lb/ft³ for glaze.
        density ("ρ"): MassDensity,
    }
    gives
    /// Ice on bars.
    pub struct IceOnBars {
        /// Cross-section of the ice.
        area ("Ai"): Area,
        /// Mass of the ice on each unit of length.
        mass_per_length ("w"): MassPerLength,
        /// Mass of the ice on all of it.
        mass ("m"): Mass,
        /// Width of the iced bar as the wind meets it.
        iced_width ("d + 2·td"): Length,
    }
    formula "Ai = π · td · (Dc + td)\nw = ρ · Ai\nm = w · L"
    valid "Ice of one thickness all round; icicles and bridges between bars are not counted."
    source { work: "ASCE 7-16", clause: "10.4.1 (weight of ice)", evidence: Seen, seen: "density and definitions in published guides to chapter 10 (https://structed.org/how-to-calculate-ice-loads-per-asce-7-16, a worksheet for steel shapes on scribd, document 343979031); the area is plain geometry" }
    by ice_on_bars
}

fn ice_on_bars(bar: &IceOnMembers) -> Result<IceOnBars, OutOfReach> {
    not_negative("thickness", bar.thickness, "1/4 in")?;
    if bar.thickness.base() > 0.3 {
        return Err(OutOfReach::new(
            "thickness",
            "this is more than a foot of ice; give the thickness on the map, such as 1/2 in",
        ));
    }
    positive("around", bar.around, "2.8 in")?;
    positive("width", bar.width, "2 in")?;
    if bar.width.base() > bar.around.base() * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            "width",
            "no bar is wider than the circle around its section",
        ));
    }
    not_negative("length", bar.length, "60 ft")?;
    positive("density", bar.density, "56 pcf")?;
    let area = PI * bar.thickness.base() * (bar.around + bar.thickness).base();
    let mass_per_length = bar.density.base() * area;
    Ok(IceOnBars {
        area: Area::from_base(area),
        mass_per_length: MassPerLength::from_base(mass_per_length),
        mass: Mass::from_base(mass_per_length * bar.length.base()),
        iced_width: bar.width + bar.thickness * 2.0,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bar(thickness: f64, around: f64) -> Result<IceOnBars, OutOfReach> {
        IceOnMembers {
            thickness: Length::from_base(thickness),
            around: Length::from_base(around),
            width: Length::from_base(around / 2.0),
            length: Length::from_base(10.0),
            density: MassDensity::from_base(897.0),
        }
        .evaluate()
    }

    proptest! {
        /// The ring is the outer circle less the inner one.
        #[test]
        fn the_ring_is_the_difference_of_two_circles(thickness in 0.0..0.3, around in 0.001..1.0) {
            let circle = |diameter: f64| PI / 4.0 * diameter * diameter;
            let ring = circle(around + 2.0 * thickness) - circle(around);
            prop_assert!((bar(thickness, around).unwrap().area.base() - ring).abs() < 1e-9);
        }

        #[test]
        fn more_ice_weighs_more(thickness in 0.0..0.29, around in 0.001..1.0) {
            prop_assert!(bar(thickness, around).unwrap().mass < bar(thickness + 0.01, around).unwrap().mass);
        }
    }

    #[test]
    fn ice_below_zero_and_beyond_a_foot_is_refused() {
        assert_eq!(bar(-0.01, 0.1).unwrap_err().input, "thickness");
        assert_eq!(bar(0.31, 0.1).unwrap_err().input, "thickness");
        assert_eq!(bar(0.01, 0.0).unwrap_err().input, "around");
    }
}
