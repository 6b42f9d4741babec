//! Where something looks, and whether the sun stands in it.

use super::path::Direction;
use formula::OutOfReach;
use quantity::{Angle, Quantity as _};

/// How much around its axis something takes in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Opening {
    /// All that is within an angle of the axis: a receiver, a driver's eyes, a display.
    Cone {
        /// That angle.
        half: Angle,
    },
    /// A flat field: a scanner.
    Fan {
        /// How far it reaches to either side of the axis.
        across: Angle,
        /// How far off its plane light still gets in.
        off: Angle,
    },
    /// The picture of a camera.
    Picture {
        /// From the axis to the left and right edges.
        across: Angle,
        /// From the axis to the upper and lower edges.
        down: Angle,
        /// How far it is turned about its axis, clockwise as seen from behind.
        roll: Angle,
    },
}

/// Where something looks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// Direction of its axis, clockwise from true north.
    pub azimuth: Angle,
    /// How far its axis points above level; below zero where it points down.
    pub elevation: Angle,
    /// What it takes in around its axis.
    pub opening: Opening,
    /// From that angle above its axis a hood keeps the sun off.
    pub hood: Option<Angle>,
}

/// Half of the sun's disc.
pub(super) const DISC: f64 = 0.266_67 * std::f64::consts::PI / 180.0;

/// A look with its axes worked out.
pub(super) struct Sight {
    ahead: Direction,
    right: Direction,
    up: Direction,
    opening: Opening,
    hood: f64,
    /// Least cosine between the axis and anything that the opening takes in.
    widest: f64,
}

fn dot(one: &Direction, other: &Direction) -> f64 {
    one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
}

impl Look {
    pub(super) fn sight(&self) -> Result<Sight, OutOfReach> {
        let (toward, tilt) = (self.azimuth.base(), self.elevation.base());
        let angles = match self.opening {
            Opening::Cone { half } => [half, half],
            Opening::Fan { across, off } => [across, off],
            Opening::Picture { across, down, .. } => [across, down],
        };
        let sound = |angle: &Angle| (0.0..=std::f64::consts::PI).contains(&angle.base());
        if !angles.iter().all(sound) || !toward.is_finite() || !tilt.is_finite() {
            return Err(OutOfReach::new(
                "opening",
                "it looks in a direction and takes in from 0° to 180° to a side",
            ));
        }
        let widest = match self.opening {
            Opening::Cone { half } => (half.base() + DISC).min(std::f64::consts::PI).cos(),
            Opening::Fan { .. } => -1.0,
            Opening::Picture { across, down, .. } => {
                let slope = across.base().tan().hypot(down.base().tan());
                let wide = angles.iter().any(|angle| angle.base() >= 1.5);
                if wide {
                    -1.0
                } else {
                    (slope.atan() + 2.0 * DISC).cos()
                }
            }
        };
        Ok(Sight {
            ahead: [
                tilt.cos() * toward.sin(),
                tilt.cos() * toward.cos(),
                tilt.sin(),
            ],
            right: [toward.cos(), -toward.sin(), 0.0],
            up: [
                -tilt.sin() * toward.sin(),
                -tilt.sin() * toward.cos(),
                tilt.cos(),
            ],
            opening: self.opening,
            hood: self.hood.map_or(f64::INFINITY, quantity::Quantity::base),
            widest,
        })
    }
}

impl Sight {
    /// How far the sun is from the middle of what it takes in; none where the sun is not in it.
    pub(super) fn off(&self, sun: &Direction) -> Option<f64> {
        let ahead = dot(sun, &self.ahead);
        if ahead < self.widest {
            return None;
        }
        let (right, up) = (dot(sun, &self.right), dot(sun, &self.up));
        if self.hood.is_finite() && up.atan2(ahead) - DISC > self.hood {
            return None;
        }
        match self.opening {
            Opening::Cone { .. } => Some(ahead.clamp(-1.0, 1.0).acos()),
            Opening::Fan { across, off } => {
                let above = up.clamp(-1.0, 1.0).asin().abs();
                let aside = right.atan2(ahead).abs();
                (above <= off.base() + DISC && aside <= across.base() + DISC).then_some(above)
            }
            Opening::Picture { across, down, roll } => {
                let (cos, sin) = (roll.base().cos(), roll.base().sin());
                let (x, y) = (right * cos - up * sin, right * sin + up * cos);
                let within = |side: f64, edge: Angle| side.atan2(ahead).abs() <= edge.base() + DISC;
                (ahead > 0.0 && within(x, across) && within(y, down))
                    .then(|| ahead.clamp(-1.0, 1.0).acos())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    fn degrees(value: f64) -> Angle {
        Angle::from_base(value.to_radians())
    }

    fn sun(azimuth: f64, elevation: f64) -> Direction {
        let (toward, up) = (azimuth.to_radians(), elevation.to_radians());
        [up.cos() * toward.sin(), up.cos() * toward.cos(), up.sin()]
    }

    fn look(opening: Opening) -> Look {
        Look {
            azimuth: degrees(120.0),
            elevation: degrees(0.0),
            opening,
            hood: None,
        }
    }

    #[test]
    fn a_cone_takes_in_the_disc_at_its_rim() {
        let cone = look(Opening::Cone { half: degrees(5.0) }).sight().unwrap();
        assert!(cone.off(&sun(125.2, 0.0)).is_some());
        assert!(cone.off(&sun(125.4, 0.0)).is_none());
        assert!(cone.off(&sun(300.0, 0.0)).is_none());
    }

    #[test]
    fn a_fan_is_wide_and_flat() {
        let fan = look(Opening::Fan {
            across: degrees(95.0),
            off: degrees(5.0),
        });
        let fan = fan.sight().unwrap();
        assert!(fan.off(&sun(30.0, 4.0)).is_some() && fan.off(&sun(210.0, 4.0)).is_some());
        assert!(fan.off(&sun(120.0, 6.0)).is_none() && fan.off(&sun(300.0, 2.0)).is_none());
    }

    #[test]
    fn a_picture_has_corners_and_a_hood_shades_from_above() {
        let picture = look(Opening::Picture {
            across: degrees(40.0),
            down: degrees(25.0),
            roll: degrees(0.0),
        });
        let sight = picture.sight().unwrap();
        assert!(sight.off(&sun(158.0, 15.0)).is_some() && sight.off(&sun(162.0, 5.0)).is_none());
        assert!(sight.off(&sun(120.0, 24.0)).is_some() && sight.off(&sun(120.0, 26.0)).is_none());
        let hooded = Look {
            hood: Some(degrees(10.0)),
            ..picture
        };
        assert!(hooded.sight().unwrap().off(&sun(120.0, 24.0)).is_none());
        let upright = Look {
            opening: Opening::Picture {
                across: degrees(40.0),
                down: degrees(25.0),
                roll: degrees(90.0),
            },
            ..picture
        };
        assert!(upright.sight().unwrap().off(&sun(120.0, 38.0)).is_some());
    }

    #[test]
    fn no_angle_is_refused() {
        let none = look(Opening::Cone {
            half: degrees(f64::NAN),
        });
        assert!(none.sight().is_err());
    }
}
