//! How much of a wanted area a camera sees, and what hides the rest.

use super::area::{Point, across, clipped, crossings, narrowed, sides};
use super::{Camera, Ground, Hider};
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Ratio};

/// An area that has to be seen, on a level plane.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// Its corners, one after the other around it.
    pub corners: Vec<Ground>,
    /// Height of the plane.
    pub height: Length,
}

/// How much of a wanted area is seen.
#[derive(Debug, Clone, PartialEq)]
pub struct Seen {
    /// Share of the area that is in the picture and not hidden.
    pub seen: Ratio,
    /// Share that lies outside the picture.
    pub outside: Ratio,
    /// Share that each thing hides of what is in the picture, alone; two may hide the same.
    pub hidden_by: Vec<Ratio>,
}

/// Strips into which the area is cut.
const STRIPS: u32 = 128;

impl Camera {
    /// How much of an area is seen past things that stand before it.
    pub fn sees(&self, wanted: &Wanted, things: &[Hider]) -> Result<Seen, OutOfReach> {
        self.check()?;
        let area: Vec<Point> = wanted
            .corners
            .iter()
            .map(|spot| (spot[0].base(), spot[1].base()))
            .collect();
        let height = wanted.height.base();
        let finite = area
            .iter()
            .all(|point| point.0.is_finite() && point.1.is_finite());
        if area.len() < 3 || !finite || !height.is_finite() {
            return Err(OutOfReach::new(
                "area",
                "an area has three corners or more, each at a place",
            ));
        }
        if self.eye()[2] <= height {
            return Err(OutOfReach::new(
                "at",
                "the camera is not above what it is to see",
            ));
        }
        let edges = self.edges(height);
        let shadows: Vec<_> = things
            .iter()
            .map(|thing| self.shadow_of(thing, height))
            .collect();
        let ys = || area.iter().map(|point| point.1);
        let (low, high) = (
            ys().fold(f64::INFINITY, f64::min),
            ys().fold(f64::NEG_INFINITY, f64::max),
        );
        let mut sum = Sums::new(things.len());
        for strip in 0..STRIPS {
            let y = low + (high - low) * (f64::from(strip) + 0.5) / f64::from(STRIPS);
            let rim = crossings(&area, y);
            for pair in rim.chunks_exact(2) {
                sum.whole += pair[1] - pair[0];
                let (from, to) = narrowed(&edges, (pair[0], pair[1]), y);
                if to > from {
                    sum.add((from, to), y, &shadows);
                }
            }
        }
        sum.shares()
    }

    /// The part of a wanted area that a thing hides, as an area to be drawn; none where it hides nothing of it.
    pub fn hidden_part(&self, wanted: &Wanted, thing: &Hider) -> Option<Vec<Ground>> {
        let height = wanted.height.base();
        let shadow = self.shadow_of(thing, height)?;
        let area = wanted
            .corners
            .iter()
            .map(|spot| (spot[0].base(), spot[1].base()));
        let part = clipped(area.collect(), &sides(&shadow));
        let part = clipped(part, &self.edges(height));
        let ground = |(x, y): Point| [Length::from_base(x), Length::from_base(y)];
        (part.len() > 2).then(|| part.into_iter().map(ground).collect())
    }
}

/// Lengths along all strips.
struct Sums {
    whole: f64,
    framed: f64,
    hidden: f64,
    each: Vec<f64>,
}

impl Sums {
    fn new(things: usize) -> Self {
        Self {
            whole: 0.0,
            framed: 0.0,
            hidden: 0.0,
            each: vec![0.0; things],
        }
    }

    /// Adds a stretch that is in the picture.
    fn add(&mut self, (from, to): (f64, f64), y: f64, shadows: &[Option<Vec<Point>>]) {
        self.framed += to - from;
        let mut cast = Vec::new();
        for (shadow, own) in shadows.iter().zip(&mut self.each) {
            let found = shadow.as_ref().and_then(|shadow| across(shadow, y));
            if let Some((low, high)) = found.map(|(low, high)| (low.max(from), high.min(to)))
                && high > low
            {
                *own += high - low;
                cast.push((low, high));
            }
        }
        cast.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut reached = from;
        for (low, high) in cast {
            self.hidden += (high - low.max(reached)).max(0.0);
            reached = reached.max(high);
        }
    }

    fn shares(self) -> Result<Seen, OutOfReach> {
        let whole = self.whole;
        if whole <= 0.0 {
            return Err(OutOfReach::new("area", "the corners enclose no area"));
        }
        let share = |length: f64| Ratio::from_base((length / whole).clamp(0.0, 1.0));
        Ok(Seen {
            seen: share(self.framed - self.hidden),
            outside: share(whole - self.framed),
            hidden_by: self.each.into_iter().map(share).collect(),
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::Angle;

    fn camera() -> Camera {
        Camera {
            at: [0.0, 0.0, 4.0].map(Length::from_base),
            pan: Angle::from_base(0.0),
            tilt: Angle::from_base(0.5),
            roll: Angle::from_base(0.0),
            focal_length: Length::from_base(0.0028),
            sensor_width: Length::from_base(0.005),
            pixels: (2560, 1440),
        }
    }

    fn wanted(corners: &[(f64, f64)]) -> Wanted {
        Wanted {
            corners: corners
                .iter()
                .map(|(x, y)| [*x, *y].map(Length::from_base))
                .collect(),
            height: Length::from_base(0.0),
        }
    }

    fn wall(top: f64) -> Hider {
        let corners = [(6.0, -1.0), (6.1, -1.0), (6.1, 1.0), (6.0, 1.0)];
        Hider {
            corners: corners
                .map(|(x, y): (f64, f64)| [x, y].map(Length::from_base))
                .to_vec(),
            bottom: Length::from_base(0.0),
            top: Length::from_base(top),
        }
    }

    #[test]
    fn an_open_field_is_seen_whole_and_one_behind_the_camera_not_at_all() {
        let before = wanted(&[(5.0, -2.0), (9.0, -2.0), (9.0, 2.0), (5.0, 2.0)]);
        let seen = camera().sees(&before, &[]).unwrap();
        assert!((seen.seen.base() - 1.0).abs() < 1e-9, "{seen:?}");
        let behind = wanted(&[(-5.0, -2.0), (-9.0, -2.0), (-9.0, 2.0)]);
        let seen = camera().sees(&behind, &[]).unwrap();
        assert!((seen.outside.base() - 1.0).abs() < 1e-9, "{seen:?}");
    }

    #[test]
    fn a_wall_hides_its_shadow_and_two_of_it_no_more() {
        // At 2 m of 4 m its shadow reaches twice as far: from 6.0 m to 12.2 m, 2 m wide at the near end, 4 m at the far one.
        let strip = wanted(&[(7.0, -0.5), (8.0, -0.5), (8.0, 0.5), (7.0, 0.5)]);
        let seen = camera().sees(&strip, &[wall(2.0), wall(2.0)]).unwrap();
        assert!(seen.seen.base() < 1e-9, "{seen:?}");
        let half = wanted(&[(11.2, -0.5), (13.2, -0.5), (13.2, 0.5), (11.2, 0.5)]);
        let seen = camera().sees(&half, &[wall(2.0), wall(2.0)]).unwrap();
        assert!((seen.seen.base() - 0.5).abs() < 0.01, "{seen:?}");
        assert!((seen.hidden_by[0].base() - 0.5).abs() < 0.01, "{seen:?}");
        assert!(camera().hidden_part(&half, &wall(2.0)).unwrap().len() > 3);
    }

    #[test]
    fn no_area_and_a_camera_below_it_are_refused() {
        let line = wanted(&[(5.0, 0.0), (6.0, 0.0), (7.0, 0.0)]);
        assert_eq!(camera().sees(&line, &[]).unwrap_err().input, "area");
        let above = Wanted {
            height: Length::from_base(5.0),
            ..wanted(&[(5.0, -2.0), (9.0, -2.0), (9.0, 2.0)])
        };
        assert_eq!(camera().sees(&above, &[]).unwrap_err().input, "at");
    }
}
