//! What an upright thing hides from a camera.

use super::area::{Point, clipped, hull, sides};
use super::{Camera, Ground};
use quantity::{Length, Quantity as _};

/// An upright thing that one does not see through: a convex outline from above, from an underside to a top.
#[derive(Debug, Clone, PartialEq)]
pub struct Hider {
    /// Corners of its outline from above, in any order.
    pub corners: Vec<Ground>,
    /// Its underside.
    pub bottom: Length,
    /// Its top.
    pub top: Length,
}

/// So many times the distance of a thing its shadow reaches at most: a thing that is taller than the camera hides without end.
const ENDLESS: f64 = 1e4;

impl Hider {
    /// Its outline, counter-clockwise.
    fn outline(&self) -> Vec<Point> {
        hull(
            self.corners
                .iter()
                .map(|spot| (spot[0].base(), spot[1].base()))
                .collect(),
        )
    }

    /// Its outline lies over a place.
    fn is_over(&self, (x, y): Point) -> bool {
        let outline = self.outline();
        outline.len() > 2 && !clipped(vec![(x, y)], &sides(&outline)).is_empty()
    }

    /// How tall it is drawn in the picture makes sense only where its ends are places.
    pub(super) fn is_sound(&self) -> bool {
        let placed = |spot: &Ground| spot.iter().all(|along| along.base().is_finite());
        self.corners.len() > 2
            && self.corners.iter().all(placed)
            && self.bottom.base().is_finite()
            && self.top > self.bottom
    }
}

impl Camera {
    /// What a thing hides of a level plane below the lens: a convex area, which may reach very far; none where it hides
    /// nothing. What the camera itself hangs over or sticks in hides nothing.
    pub fn shadow(&self, hider: &Hider, height: Length) -> Option<Vec<Ground>> {
        let found = self.shadow_of(hider, height.base())?;
        let ground = |(x, y): Point| [Length::from_base(x), Length::from_base(y)];
        Some(found.into_iter().map(ground).collect())
    }

    pub(super) fn shadow_of(&self, hider: &Hider, height: f64) -> Option<Vec<Point>> {
        let [x, y, z] = self.eye();
        let drop = z - height;
        if !hider.is_sound() || drop <= 0.0 || hider.is_over((x, y)) {
            return None;
        }
        // The share of its way at which a line of sight is at the top of the thing, and at its underside.
        let enters = ((z - hider.top.base()) / drop).max(1.0 / ENDLESS);
        let leaves = ((z - hider.bottom.base()) / drop).min(1.0);
        if leaves <= enters {
            return None;
        }
        let outline = hider.outline();
        let at = |share: f64| {
            outline
                .iter()
                .map(move |(px, py)| (x + (px - x) / share, y + (py - y) / share))
        };
        Some(hull(at(enters).chain(at(leaves)).collect()))
    }

    /// A thing stands in the line of sight to a point.
    pub fn is_hidden(&self, point: [Length; 3], hider: &Hider) -> bool {
        let [x, y, z] = self.eye();
        let to = point.map(quantity::Quantity::base);
        if !hider.is_sound() || hider.is_over((x, y)) {
            return false;
        }
        let outline = hider.outline();
        let within = clipped_line([(x, y), (to[0], to[1])], &outline);
        within.is_some_and(|(from, until)| {
            let up = |share: f64| z + share * (to[2] - z);
            let (one, other) = (up(from), up(until));
            one.max(other) > hider.bottom.base() && one.min(other) < hider.top.base()
        })
    }
}

/// The shares of a straight piece that lie in a convex outline, its very end left out.
fn clipped_line([from, to]: [Point; 2], outline: &[Point]) -> Option<(f64, f64)> {
    let next = outline.iter().cycle().skip(1);
    let mut found = (0.0_f64, 1.0_f64 - 1e-9);
    for (a, b) in outline.iter().zip(next) {
        let inside = |point: Point| (b.0 - a.0) * (point.1 - a.1) - (b.1 - a.1) * (point.0 - a.0);
        let (was, is) = (inside(from), inside(to));
        if was < 0.0 && is < 0.0 {
            return None;
        }
        if was < 0.0 {
            found.0 = found.0.max(was / (was - is));
        } else if is < 0.0 {
            found.1 = found.1.min(was / (was - is));
        }
    }
    (found.1 > found.0).then_some(found)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;
    use quantity::Angle;

    pub(crate) fn camera(height: f64) -> Camera {
        Camera {
            at: [0.0, 0.0, height].map(Length::from_base),
            pan: Angle::from_base(0.0),
            tilt: Angle::from_base(0.4),
            roll: Angle::from_base(0.0),
            focal_length: Length::from_base(0.003),
            sensor_width: Length::from_base(0.005),
            pixels: (2560, 1440),
        }
    }

    fn block(x: f64, y: f64, half: f64, bottom: f64, top: f64) -> Hider {
        let corner = |dx: f64, dy: f64| [x + dx * half, y + dy * half].map(Length::from_base);
        Hider {
            corners: vec![
                corner(-1.0, -1.0),
                corner(1.0, -1.0),
                corner(1.0, 1.0),
                corner(-1.0, 1.0),
            ],
            bottom: Length::from_base(bottom),
            top: Length::from_base(top),
        }
    }

    #[test]
    fn a_wall_half_as_high_as_the_lens_throws_its_own_distance_behind_it() {
        let wall = block(5.0, 0.0, 0.5, 0.0, 2.0);
        let shadow = camera(4.0).shadow(&wall, Length::from_base(0.0)).unwrap();
        let far = shadow.iter().map(|spot| spot[0].base()).fold(0.0, f64::max);
        // Similar triangles: its far face at 5.5 m, twice that.
        assert!((far - 11.0).abs() < 1e-9, "{far}");
    }

    #[test]
    fn what_hangs_above_the_lens_or_under_the_camera_hides_nothing() {
        let ground = Length::from_base(0.0);
        assert!(
            camera(4.0)
                .shadow(&block(5.0, 0.0, 0.5, 4.5, 6.0), ground)
                .is_none()
        );
        assert!(
            camera(4.0)
                .shadow(&block(0.0, 0.0, 0.5, 0.0, 6.0), ground)
                .is_none()
        );
        assert!(
            camera(-1.0)
                .shadow(&block(5.0, 0.0, 0.5, 0.0, 6.0), ground)
                .is_none()
        );
    }

    proptest! {
        /// The area and the single line of sight are worked in two ways.
        #[test]
        fn the_shadow_is_where_lines_of_sight_are_cut(
            x in 2.0..9.0, y in -3.0..3.0, top in 0.2..6.0, bottom in 0.0..2.0,
            px in 0.5..20.0, py in -8.0..8.0, high in 2.5..5.0,
        ) {
            prop_assume!(top > bottom + 0.01);
            let (camera, thing) = (camera(high), block(x, y, 0.4, bottom, top));
            let hidden = camera.is_hidden([px, py, 0.0].map(Length::from_base), &thing);
            let shadow = camera.shadow_of(&thing, 0.0);
            let near_rim = |by: f64| shadow.as_ref().is_some_and(|shadow| {
                let middle = (px * (1.0 + by), py * (1.0 + by));
                !clipped(vec![middle], &sides(shadow)).is_empty()
            });
            // A point at the very rim may fall to either side.
            prop_assume!(near_rim(-1e-6) == near_rim(1e-6));
            prop_assert_eq!(hidden, near_rim(0.0));
        }
    }
}
