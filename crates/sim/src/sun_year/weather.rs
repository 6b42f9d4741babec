//! What a panel gives in each hour of a year of weather.

use super::hours::power;
use super::{HOURS, Panel, PanelHours};
use crate::sun::{Sky, SunAt};
use formula::OutOfReach;
use quantity::{Quantity as _, Temperature};

/// An hour of weather as a panel meets it.
#[derive(Debug, Clone, Copy)]
pub struct SunHour {
    /// Where the sun is in the middle of the hour; below level by night.
    pub sun: SunAt,
    /// Mean sunshine of the hour.
    pub sky: Sky,
    /// Air of the hour.
    pub air: Temperature,
}

/// What a panel gives in each hour of a year of weather.
pub fn measured(hours: &[SunHour], panel: &Panel) -> Result<PanelHours, OutOfReach> {
    if hours.len() != HOURS {
        return Err(OutOfReach::new(
            "hours",
            "give the 8,760 hours of a common year",
        ));
    }
    let given = |hour: &SunHour| {
        let shine = panel.face.sunshine(hour.sun, &hour.sky).base();
        power(panel, shine, hour.air.base())
    };
    Ok(PanelHours(hours.iter().map(given).collect()))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::{Angle, HeatFlux, Power, celsius};

    fn hour(level: f64, beam: f64, diffuse: f64, elevation: f64) -> SunHour {
        SunHour {
            sun: SunAt {
                azimuth: Angle::from_base(std::f64::consts::PI),
                elevation: Angle::from_base(elevation.to_radians()),
            },
            sky: Sky {
                global: HeatFlux::from_base(level),
                diffuse: HeatFlux::from_base(diffuse),
                beam: HeatFlux::from_base(beam),
            },
            air: celsius(25.0),
        }
    }

    #[test]
    fn a_level_panel_has_the_sunshine_on_the_level() {
        let panel = Panel::open(
            Power::from_base(1000.0),
            Angle::from_base(0.0),
            Angle::from_base(0.0),
        );
        // 800 W/m² of beam at 30° are 400 on the level; with 100 of the sky 500, and 500 W of 1 kW at 1000 W/m².
        let mut hours = vec![hour(500.0, 800.0, 100.0, 30.0); HOURS];
        hours[1] = hour(0.0, 0.0, 0.0, -20.0);
        let found = measured(&hours, &panel).unwrap();
        assert!((found.at(0).base() - 500.0).abs() < 1e-9);
        assert!(found.at(1).base().abs() < 1e-12);
        assert_eq!(measured(&hours[..10], &panel).unwrap_err().input, "hours");
    }

    #[test]
    fn a_wall_that_looks_at_a_low_sun_has_more() {
        let wall = Panel::open(
            Power::from_base(1000.0),
            Angle::from_base(std::f64::consts::FRAC_PI_2),
            Angle::from_base(std::f64::consts::PI),
        );
        let found = measured(&vec![hour(500.0, 800.0, 100.0, 30.0); HOURS], &wall).unwrap();
        // 800 · cos 30° + 100 / 2 + 0.2 · 500 / 2.
        let wanted = 800.0 * 30.0_f64.to_radians().cos() + 50.0 + 50.0;
        assert!((found.at(0).base() - wanted).abs() < 1e-9);
    }
}
