//! The way of the sun through a year, as directions.

use super::look::DISC;
use crate::sun::SunPlace;
use formula::OutOfReach;
use quantity::{Angle, Quantity as _, Time};

/// Steps of the sun's way (s).
pub(super) const STEP: f64 = 300.0;
/// Steps in a day.
pub(super) const STEPS_IN_DAY: usize = 288;
/// Days in the year.
pub(super) const DAYS: usize = 365;
/// Steps between two exact positions.
const BETWEEN: usize = 48;
/// Exact positions in a day.
const NODES_IN_DAY: usize = STEPS_IN_DAY / BETWEEN;

/// The sun's way through a year of the local zone: exact positions, seen from a frame that turns with the mean sun.
#[derive(Debug, Clone)]
pub struct SunPath {
    /// Toward the meridian on the equator, east, and toward the pole, turned back to midnight.
    nodes: Vec<[f64; 3]>,
    /// Cosine and sine of the turn since midnight.
    turns: Vec<(f64, f64)>,
    /// Cosine and sine of the latitude.
    latitude: (f64, f64),
    /// Hours by which the clock of the zone is ahead of universal time.
    zone: i32,
    /// The steps at which any of it may be seen, with where the air shows it then.
    daylight: Vec<(usize, Direction)>,
}

/// The sun at one step: toward east, north and up, without refraction.
pub(super) type Direction = [f64; 3];

impl SunPath {
    /// The way of the sun at a place.
    pub fn of(place: &SunPlace) -> Result<Self, OutOfReach> {
        let zone = place.zone();
        let latitude = place.latitude().base();
        let (cos, sin) = (latitude.cos(), latitude.sin());
        let mut nodes = Vec::with_capacity(DAYS * NODES_IN_DAY + 1);
        for node in 0..=DAYS * NODES_IN_DAY {
            let local = number(node * BETWEEN) * STEP;
            let since = Time::from_base(local - f64::from(zone) * 3600.0);
            let Some(sun) = place.sun(since) else {
                return Err(OutOfReach::new("time", "the sun's place is not known then"));
            };
            let (up, toward) = (sun.elevation.base(), sun.azimuth.base());
            let east = up.cos() * toward.sin();
            let north = up.cos() * toward.cos();
            let meridian = up.sin() * cos - north * sin;
            let pole = up.sin() * sin + north * cos;
            let turn = std::f64::consts::TAU * number(node % NODES_IN_DAY) / number(NODES_IN_DAY);
            nodes.push([
                meridian * turn.cos() - east * turn.sin(),
                meridian * turn.sin() + east * turn.cos(),
                pole,
            ]);
        }
        let turn = |step: usize| {
            let turn = std::f64::consts::TAU * number(step) / number(STEPS_IN_DAY);
            (turn.cos(), turn.sin())
        };
        let mut path = Self {
            nodes,
            turns: (0..STEPS_IN_DAY).map(turn).collect(),
            latitude: (cos, sin),
            zone,
            daylight: Vec::new(),
        };
        path.daylight = (0..DAYS * STEPS_IN_DAY)
            .filter_map(|step| Some((step, lifted(path.at(step)?)?)))
            .collect();
        Ok(path)
    }

    /// The steps of the local year at which any of the sun may be seen, with where the air shows it then.
    pub(super) fn daylight(&self) -> &[(usize, Direction)] {
        &self.daylight
    }

    /// Hours by which the clock of the zone is ahead of universal time.
    pub fn zone(&self) -> i32 {
        self.zone
    }

    /// Where the sun is at a step of the local year, without refraction.
    pub(super) fn at(&self, step: usize) -> Option<Direction> {
        let (node, part) = (step / BETWEEN, number(step % BETWEEN) / number(BETWEEN));
        let (from, to) = (self.nodes.get(node)?, self.nodes.get(node + 1)?);
        let mean = |at: usize| from[at] + part * (to[at] - from[at]);
        let (x, y, pole) = (mean(0), mean(1), mean(2));
        let (turn_cos, turn_sin) = self.turns.get(step % STEPS_IN_DAY)?;
        let meridian = x * turn_cos + y * turn_sin;
        let east = y * turn_cos - x * turn_sin;
        let (cos, sin) = self.latitude;
        Some([
            east,
            pole * cos - meridian * sin,
            meridian * cos + pole * sin,
        ])
    }
}

/// Lowest sine of the sun's height at which any of it may be seen.
const LOWEST: f64 = -0.02;

/// The sun as the air shows it; none by night.
pub(super) fn lifted(sun: Direction) -> Option<Direction> {
    if sun[2] < LOWEST {
        return None;
    }
    let true_height = elevation(sun).base();
    let height = true_height + refraction(true_height);
    let level = height.cos() / true_height.cos().max(1e-9);
    (height > -DISC).then(|| [sun[0] * level, sun[1] * level, height.sin()])
}

/// By how much the air lifts the sun: the algorithm's own formula, at 1010 mbar and 10 °C.
fn refraction(elevation: f64) -> f64 {
    let degrees = elevation.to_degrees();
    if degrees < -0.833_37 {
        return 0.0;
    }
    let inner = (degrees + 10.3 / (degrees + 5.11)).to_radians();
    (1.02 / (60.0 * inner.tan())).to_radians()
}

/// The angle of a direction above level.
pub(super) fn elevation(direction: Direction) -> Angle {
    Angle::from_base(direction[2].clamp(-1.0, 1.0).asin())
}

/// A count as a number.
pub(super) fn number(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn between_the_exact_positions_it_stays_within_a_thousandth_of_a_degree() {
        for (latitude, longitude) in [(0.82, 0.157), (-0.6, 2.5), (1.2, -2.0)] {
            let place =
                SunPlace::new(Angle::from_base(latitude), Angle::from_base(longitude)).unwrap();
            let path = SunPath::of(&place).unwrap();
            for step in (0..DAYS * STEPS_IN_DAY).step_by(937) {
                let found = path.at(step).unwrap();
                let since = number(step) * STEP - f64::from(path.zone()) * 3600.0;
                let sun = place.sun(Time::from_base(since)).unwrap();
                let (up, toward) = (sun.elevation.base(), sun.azimuth.base());
                let exact = [up.cos() * toward.sin(), up.cos() * toward.cos(), up.sin()];
                let off = (0..3)
                    .map(|at| (found[at] - exact[at]).powi(2))
                    .sum::<f64>();
                assert!(
                    off.sqrt().to_degrees() < 0.001,
                    "{step} {}",
                    off.sqrt().to_degrees()
                );
            }
        }
    }

    #[test]
    fn the_air_lifts_the_setting_sun_by_its_own_width() {
        // Half a degree at the horizon, a minute of arc at 45°.
        assert!((refraction(0.0).to_degrees() - 0.48).abs() < 0.02);
        assert!((refraction(0.785).to_degrees() * 60.0 - 1.0).abs() < 0.05);
        assert!(refraction(-0.1).abs() < 1e-12);
    }
}
