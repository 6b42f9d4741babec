//! How much sunshine a face gets.

use super::{Sky, SunAt};
use formula::OutOfReach;
use quantity::{Angle, HeatFlux, Quantity as _};
use std::f64::consts::TAU;

/// A plane face: a panel, a wall of a box.
#[derive(Debug, Clone)]
pub struct Face {
    /// From level; 90° is a wall.
    pub tilt: Angle,
    /// The direction that it looks in, clockwise from true north.
    pub azimuth: Angle,
    /// What stands before it.
    pub skyline: Skyline,
}

/// Share of the sunshine that the ground throws back: grass and gravel.
const GROUND: f64 = 0.2;

impl Face {
    /// A face with nothing before it.
    pub fn open(tilt: Angle, azimuth: Angle) -> Self {
        Self {
            tilt,
            azimuth,
            skyline: Skyline::default(),
        }
    }

    /// Sunshine on it: from the sun where it is above the skyline, from the sky as from an even dome, and from the ground
    /// (Liu and Jordan 1963).
    pub fn sunshine(&self, sun: SunAt, sky: &Sky) -> HeatFlux {
        let (up, tilt) = (sun.elevation.base(), self.tilt.base());
        let turned = (sun.azimuth.base() - self.azimuth.base()).cos();
        let toward = up.sin() * tilt.cos() + up.cos() * tilt.sin() * turned;
        let seen = up > 0.0 && toward > 0.0 && !self.skyline.hides(sun);
        let beam = if seen { sky.beam.base() * toward } else { 0.0 };
        let dome = sky.diffuse.base() * f64::midpoint(1.0, tilt.cos());
        let ground = sky.global.base() * GROUND * f64::midpoint(1.0, -tilt.cos());
        HeatFlux::from_base(beam + dome + ground)
    }
}

/// The skyline as seen from a place: its corners, and straight lines between them.
#[derive(Debug, Clone, Default)]
pub struct Skyline {
    /// Direction in radians from 0 to a whole turn, rising, and height.
    corners: Vec<(f64, f64)>,
}

impl Skyline {
    /// A skyline by its corners: direction clockwise from true north, and height above level. Before the first corner and
    /// behind the last one it goes on around to the other.
    pub fn new(corners: impl IntoIterator<Item = (Angle, Angle)>) -> Result<Self, OutOfReach> {
        let mut found: Vec<(f64, f64)> = corners
            .into_iter()
            .map(|(toward, up)| (toward.base().rem_euclid(TAU), up.base()))
            .collect();
        if found
            .iter()
            .any(|(toward, up)| !toward.is_finite() || !(0.0..=1.58).contains(up))
        {
            return Err(OutOfReach::new("skyline", "give heights from 0° to 90°"));
        }
        found.sort_by(|one, other| one.0.total_cmp(&other.0));
        Ok(Self { corners: found })
    }

    /// The sun stands behind it.
    pub fn hides(&self, sun: SunAt) -> bool {
        sun.elevation.base() < self.height(sun.azimuth.base().rem_euclid(TAU))
    }

    fn height(&self, toward: f64) -> f64 {
        let (Some(first), Some(last)) = (self.corners.first(), self.corners.last()) else {
            return 0.0;
        };
        let next = self
            .corners
            .partition_point(|(corner, _)| *corner <= toward);
        let before = match next.checked_sub(1).and_then(|at| self.corners.get(at)) {
            Some(corner) => *corner,
            None => (last.0 - TAU, last.1),
        };
        let after = match self.corners.get(next) {
            Some(corner) => *corner,
            None => (first.0 + TAU, first.1),
        };
        let span = after.0 - before.0;
        if span <= 0.0 {
            return before.1.max(after.1);
        }
        before.1 + (after.1 - before.1) * (toward - before.0) / span
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    fn degrees(value: f64) -> Angle {
        Angle::from_base(value.to_radians())
    }

    fn sun(azimuth: f64, elevation: f64) -> SunAt {
        SunAt {
            azimuth: degrees(azimuth),
            elevation: degrees(elevation),
        }
    }

    /// Duffie and Beckman, example 1.6.1: 43° north, 13 February, 10:30 by the sun, tilt 45°, 15° west of south: 35°. The
    /// sun there is at 36.9° with azimuth 153.1°, from declination −14° and hour angle −22.5°.
    #[test]
    fn incidence_as_the_handbook_has_it() {
        let face = Face::open(degrees(45.0), degrees(195.0));
        let (latitude, declination, hour) = (
            43.0_f64.to_radians(),
            (-14.0_f64).to_radians(),
            (-22.5_f64).to_radians(),
        );
        let up =
            latitude.sin() * declination.sin() + latitude.cos() * declination.cos() * hour.cos();
        let elevation = up.asin();
        let azimuth = (-(declination.cos() * hour.sin())).atan2(
            latitude.cos() * declination.sin() - latitude.sin() * declination.cos() * hour.cos(),
        );
        let at = SunAt {
            azimuth: Angle::from_base(azimuth),
            elevation: Angle::from_base(elevation),
        };
        let beam = Sky {
            global: HeatFlux::from_base(0.0),
            diffuse: HeatFlux::from_base(0.0),
            beam: HeatFlux::from_base(1.0),
        };
        let incidence = face.sunshine(at, &beam).base().acos().to_degrees();
        assert!((incidence - 35.0).abs() < 0.5, "{incidence}");
    }

    #[test]
    fn a_skyline_goes_around() {
        let line = Skyline::new([
            (degrees(90.0), degrees(10.0)),
            (degrees(270.0), degrees(30.0)),
        ])
        .unwrap();
        assert!(line.hides(sun(90.0, 9.9)) && !line.hides(sun(90.0, 10.1)));
        assert!(line.hides(sun(180.0, 19.9)) && !line.hides(sun(180.0, 20.1)));
        assert!(line.hides(sun(0.0, 19.9)) && !line.hides(sun(0.0, 20.1)));
        assert!(!Skyline::default().hides(sun(180.0, 0.1)));
        assert_eq!(
            Skyline::new([(degrees(0.0), degrees(95.0))])
                .unwrap_err()
                .input,
            "skyline"
        );
    }
}
