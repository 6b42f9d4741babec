//! A camera: where it is, which way it looks, and what its lens makes of a point.

use super::Ground;
use super::area::{Half, clipped};
use crate::plan::above_zero;
use formula::OutOfReach;
use quantity::{Angle, Length, Quantity as _};

/// A pinhole camera with square pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Where its lens is.
    pub at: [Length; 3],
    /// Direction in which it looks, counter-clockwise from +x.
    pub pan: Angle,
    /// How far its axis points below level.
    pub tilt: Angle,
    /// How far it is turned about its axis, clockwise as seen from behind it.
    pub roll: Angle,
    /// Focal length.
    pub focal_length: Length,
    /// Width of its sensor.
    pub sensor_width: Length,
    /// Pixels across and down.
    pub pixels: (u32, u32),
}

/// Where a point of the site is in the picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pixel {
    /// From the left edge, in pixels.
    pub across: f64,
    /// From the upper edge, in pixels.
    pub down: f64,
    /// Distance of the point along the axis of the lens.
    pub depth: Length,
}

/// Along the axis, to the right and down in the picture.
pub(super) struct Axes {
    pub(super) ahead: [f64; 3],
    pub(super) right: [f64; 3],
    pub(super) down: [f64; 3],
}

/// Nearer than that to the plane of the lens nothing is projected, in meters.
const NEAR: f64 = 1e-6;

pub(super) fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
}

impl Camera {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        above_zero("focal_length", self.focal_length)?;
        above_zero("sensor_width", self.sensor_width)?;
        if self.pixels.0 == 0 || self.pixels.1 == 0 {
            return Err(OutOfReach::new("pixels", "a picture has pixels both ways"));
        }
        let turned = [self.pan, self.tilt, self.roll];
        let placed = self.at.iter().all(|along| along.base().is_finite());
        if !placed || turned.iter().any(|angle| !angle.base().is_finite()) {
            return Err(OutOfReach::new(
                "at",
                "a camera is at a place and looks in a direction",
            ));
        }
        Ok(())
    }

    /// Focal length in pixels.
    fn scale(&self) -> f64 {
        self.focal_length.base() / self.sensor_width.base() * f64::from(self.pixels.0)
    }

    pub(super) fn axes(&self) -> Axes {
        let (pan, tilt, roll) = (self.pan.base(), self.tilt.base(), self.roll.base());
        let right = [pan.sin(), -pan.cos(), 0.0];
        let down = [
            -tilt.sin() * pan.cos(),
            -tilt.sin() * pan.sin(),
            -tilt.cos(),
        ];
        let mixed = |a: f64, b: f64| [0, 1, 2].map(|at| a * right[at] + b * down[at]);
        Axes {
            ahead: [tilt.cos() * pan.cos(), tilt.cos() * pan.sin(), -tilt.sin()],
            right: mixed(roll.cos(), roll.sin()),
            down: mixed(-roll.sin(), roll.cos()),
        }
    }

    pub(super) fn eye(&self) -> [f64; 3] {
        self.at.map(quantity::Quantity::base)
    }

    /// Where a point is in the picture, inside its edges or not; none behind the lens.
    pub fn project(&self, point: [Length; 3]) -> Option<Pixel> {
        self.check().ok()?;
        let (axes, eye) = (self.axes(), self.eye());
        let from = [0, 1, 2].map(|at| point[at].base() - eye[at]);
        let depth = dot(from, axes.ahead);
        (depth > NEAR).then(|| Pixel {
            across: self.scale() * dot(from, axes.right) / depth + f64::from(self.pixels.0) / 2.0,
            down: self.scale() * dot(from, axes.down) / depth + f64::from(self.pixels.1) / 2.0,
            depth: Length::from_base(depth),
        })
    }

    /// The point lies inside the edges of the picture.
    pub fn frames(&self, point: [Length; 3]) -> bool {
        let within = |at: f64, pixels: u32| (0.0..=f64::from(pixels)).contains(&at);
        self.project(point).is_some_and(|pixel| {
            within(pixel.across, self.pixels.0) && within(pixel.down, self.pixels.1)
        })
    }

    /// The longest lens with which all the points stay inside the picture, the camera pointed as it is; none where one of
    /// them lies behind it.
    pub fn longest_lens(&self, points: impl IntoIterator<Item = [Length; 3]>) -> Option<Length> {
        let (axes, eye) = (self.axes(), self.eye());
        let tall = f64::from(self.pixels.1) / f64::from(self.pixels.0);
        let mut widest = 0.0_f64;
        for point in points {
            let from = [0, 1, 2].map(|at| point[at].base() - eye[at]);
            let depth = dot(from, axes.ahead);
            if depth <= NEAR {
                return None;
            }
            let aside = dot(from, axes.right)
                .abs()
                .max(dot(from, axes.down).abs() / tall);
            widest = widest.max(aside / depth);
        }
        (widest > 0.0).then(|| self.sensor_width / (2.0 * widest))
    }

    /// Half the angle that the picture takes in, across and down.
    pub fn half_angles(&self) -> (Angle, Angle) {
        let of = |pixels: u32| Angle::from_base((f64::from(pixels) / 2.0 / self.scale()).atan());
        (of(self.pixels.0), of(self.pixels.1))
    }

    /// The four edges of the picture as they cut a level plane, and the plane of the lens.
    pub(super) fn edges(&self, height: f64) -> [Half; 5] {
        let (axes, eye) = (self.axes(), self.eye());
        let across = f64::from(self.pixels.0) / 2.0 / self.scale();
        let down = f64::from(self.pixels.1) / 2.0 / self.scale();
        let edge = |side: [f64; 3], share: f64| {
            let normal = [0, 1, 2].map(|at| share * axes.ahead[at] + side[at]);
            Half::of(normal, eye, height)
        };
        let back = |side: [f64; 3]| side.map(|along| -along);
        [
            edge(axes.right, across),
            edge(back(axes.right), across),
            edge(axes.down, down),
            edge(back(axes.down), down),
            Half::of(axes.ahead, eye, height),
        ]
    }

    /// What the picture holds of a level plane, out to a distance from the lens; empty where it holds none of it.
    pub fn field(&self, height: Length, out_to: Length) -> Vec<Ground> {
        if self.check().is_err() {
            return Vec::new();
        }
        let ([x, y, _], far) = (self.eye(), out_to.base());
        let around = (0..64_u32).map(|step| {
            let turn = f64::from(step) * std::f64::consts::TAU / 64.0;
            (x + far * turn.cos(), y + far * turn.sin())
        });
        let found = clipped(around.collect(), &self.edges(height.base()));
        let ground = |(x, y): (f64, f64)| [Length::from_base(x), Length::from_base(y)];
        found.into_iter().map(ground).collect()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    fn camera(pan: f64, tilt: f64, roll: f64) -> Camera {
        Camera {
            at: [0.0, 0.0, 3.0].map(Length::from_base),
            pan: Angle::from_base(pan),
            tilt: Angle::from_base(tilt),
            roll: Angle::from_base(roll),
            focal_length: Length::from_base(0.004),
            sensor_width: Length::from_base(0.0048),
            pixels: (1920, 1080),
        }
    }

    fn at(x: f64, y: f64, z: f64) -> [Length; 3] {
        [x, y, z].map(Length::from_base)
    }

    #[test]
    fn what_is_to_the_right_and_below_is_right_and_below_in_the_picture() {
        // Looking into the property: +x is to the right.
        let level = camera(std::f64::consts::FRAC_PI_2, 0.0, 0.0);
        let pixel = level.project(at(1.0, 5.0, 2.0)).unwrap();
        // 4 mm over 4.8 mm of 1,920 pixels are 1,600 pixels a unit of slope.
        assert!((pixel.across - (960.0 + 320.0)).abs() < 1e-9, "{pixel:?}");
        assert!((pixel.down - (540.0 + 320.0)).abs() < 1e-9, "{pixel:?}");
        assert!(level.project(at(1.0, -5.0, 2.0)).is_none());
        let rolled = camera(
            std::f64::consts::FRAC_PI_2,
            0.0,
            std::f64::consts::FRAC_PI_2,
        );
        let pixel = rolled.project(at(1.0, 5.0, 3.0)).unwrap();
        assert!(
            (pixel.across - 960.0).abs() < 1e-9 && pixel.down < 540.0,
            "{pixel:?}"
        );
    }

    /// Near and far edge as worked for `camera-ground`: 3 m up, tilted 30°, 34° from edge to edge.
    #[test]
    fn the_field_begins_and_ends_where_the_formula_says() {
        let half: f64 = 17.0_f64.to_radians();
        let tall = Camera {
            focal_length: Length::from_base(0.0048 * 1080.0 / 1920.0 / 2.0 / half.tan()),
            ..camera(0.0, 30.0_f64.to_radians(), 0.0)
        };
        let field = tall.field(Length::from_base(0.0), Length::from_base(100.0));
        let along = |pick: fn(f64, f64) -> f64, start: f64| {
            field.iter().map(|spot| spot[0].base()).fold(start, pick)
        };
        assert!((along(f64::min, f64::INFINITY) - 2.798).abs() < 0.001);
        assert!((along(f64::max, 0.0) - 12.994).abs() < 0.001);
    }

    proptest! {
        #[test]
        fn what_the_field_holds_is_framed(pan in -3.0..3.0, tilt in 0.2..1.2, roll in -0.3..0.3, share in 0.05..0.95) {
            let camera = camera(pan, tilt, roll);
            let field = camera.field(Length::from_base(0.0), Length::from_base(50.0));
            let count = f64::from(u32::try_from(field.len()).unwrap());
            let middle = [0, 1].map(|at| field.iter().map(|spot| spot[at].base()).sum::<f64>() / count);
            for spot in &field {
                let between = |at: usize| middle[at] + share * (spot[at].base() - middle[at]);
                prop_assert!(camera.frames(self::at(between(0), between(1), 0.0)));
            }
        }
    }

    #[test]
    fn no_lens_sees_nothing() {
        let broken = Camera {
            focal_length: Length::from_base(0.0),
            ..camera(0.0, 0.5, 0.0)
        };
        assert!(broken.project(at(5.0, 0.0, 0.0)).is_none());
        assert!(
            broken
                .field(Length::from_base(0.0), Length::from_base(9.0))
                .is_empty()
        );
    }
}
