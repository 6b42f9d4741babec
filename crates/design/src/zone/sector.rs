//! How near a swing leaf comes to a straight thing, in closed form over its whole sweep.
//!
//! The ground that the leaf sweeps is a sector of a circle, so the least distance is taken either at one end of the travel
//! or by the tip in passing; no steps are walked.

use crate::check::leaf::arc::Sweep;
use crate::check::plane::{Piece, Point, between, nearest};

/// At which part of the sweep a gap is least.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum When {
    /// With the leaf closed.
    Closed,
    /// With the leaf open.
    Open,
    /// As the tip passes.
    Passing,
    /// The leaf would run into it.
    Through,
}

/// The least gap between a leaf and a thing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Nearest {
    /// The gap, from the line of the leaf.
    pub(crate) gap: f64,
    /// The place of the thing that is nearest.
    pub(crate) at: Point,
    /// How far along the leaf from its hinge.
    pub(crate) along: f64,
    /// When it is least.
    pub(crate) when: When,
}

/// The least gap over the whole sweep.
pub(crate) fn over_sweep(sweep: &Sweep, thing: &Piece) -> Nearest {
    let ends = [
        at_angle(sweep, thing, 0.0, When::Closed),
        at_angle(sweep, thing, sweep.travel, When::Open),
    ];
    let all = ends.into_iter().chain(inside(sweep, thing));
    all.min_by(|one, other| one.gap.total_cmp(&other.gap))
        .unwrap_or(Nearest {
            gap: f64::INFINITY,
            at: thing[0],
            along: 0.0,
            when: When::Closed,
        })
}

/// The gap with the leaf turned by an angle.
pub(crate) fn at_angle(sweep: &Sweep, thing: &Piece, angle: f64, when: When) -> Nearest {
    let leaf = sweep.at(angle);
    let gap = between(&leaf, thing);
    let candidates = [
        thing[0],
        thing[1],
        nearest(leaf[0], thing),
        nearest(leaf[1], thing),
    ];
    let off = |point: &Point| {
        let foot = nearest(*point, &leaf);
        (point.0 - foot.0).hypot(point.1 - foot.1)
    };
    let at = candidates
        .into_iter()
        .min_by(|one, other| off(one).total_cmp(&off(other)))
        .unwrap_or(thing[0]);
    let foot = nearest(at, &leaf);
    Nearest {
        gap,
        at,
        along: (foot.0 - sweep.hinge.0).hypot(foot.1 - sweep.hinge.1),
        when,
    }
}

/// Where the thing is nearest to the hinge within the sweep: the tip passes it, or the leaf runs through it.
fn inside(sweep: &Sweep, thing: &Piece) -> Option<Nearest> {
    let candidates = [nearest(sweep.hinge, thing), thing[0], thing[1]];
    let within = candidates.into_iter().filter(|point| {
        let angle = sweep.bearing(*point);
        angle > 0.0 && angle < sweep.travel
    });
    let radius = |point: &Point| (point.0 - sweep.hinge.0).hypot(point.1 - sweep.hinge.1);
    let at = within.min_by(|one, other| radius(one).total_cmp(&radius(other)))?;
    let beyond = radius(&at) - sweep.length;
    Some(Nearest {
        gap: beyond.max(0.0),
        at,
        along: radius(&at).min(sweep.length),
        when: if beyond > 0.0 {
            When::Passing
        } else {
            When::Through
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leaf(travel: f64) -> Sweep {
        Sweep::new((0.0, 0.0), 2.0, (1.0, 1.0), travel)
    }

    #[test]
    fn a_wall_behind_the_open_leaf_is_nearest_when_it_is_open() {
        // Leaf along +y at 90 degrees; the wall stands 0.6 m behind it.
        let found = over_sweep(
            &leaf(std::f64::consts::FRAC_PI_2),
            &[(-0.6, 0.4), (-0.6, 3.0)],
        );
        assert!((found.gap - 0.6).abs() < 1e-9, "{found:?}");
        assert_eq!(found.when, When::Open);
    }

    #[test]
    fn a_post_beyond_the_arc_is_nearest_as_the_tip_passes() {
        let found = over_sweep(
            &leaf(std::f64::consts::FRAC_PI_2),
            &[(2.0, 2.0), (2.5, 2.5)],
        );
        assert!((found.gap - (8f64.sqrt() - 2.0)).abs() < 1e-9, "{found:?}");
        assert_eq!(found.when, When::Passing);
    }

    /// Numbers between two ends, the same in every run.
    fn spread(seed: u64, low: f64, high: f64) -> f64 {
        let mixed = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15);
        let mixed = (mixed ^ (mixed >> 29)).wrapping_mul(0xBF58_476D_1CE4_E5B9) >> 32;
        low + (high - low) * f64::from(u32::try_from(mixed).unwrap_or(0)) / f64::from(u32::MAX)
    }

    /// Against ten thousand steps: never above them, and below by no more than a step can hide.
    #[test]
    fn agrees_with_fine_steps() {
        for case in 0..300 {
            let place = |part: u64| spread(case * 8 + part, -4.0, 4.0);
            let (sweep, thing) = (
                leaf(spread(case * 8 + 5, 0.2, 2.6)),
                [(place(1), place(2)), (place(3), place(4))],
            );
            let exact = over_sweep(&sweep, &thing).gap;
            let steps = 10_000;
            let walked = (0..=steps)
                .map(|step| sweep.travel * f64::from(step) / f64::from(steps))
                .map(|angle| between(&sweep.at(angle), &thing))
                .fold(f64::INFINITY, f64::min);
            let step = 2.0 * sweep.travel / f64::from(steps);
            assert!(exact <= walked + 1e-9, "{case}: {exact} {walked}");
            assert!(walked <= exact + step, "{case}: {exact} {walked}");
        }
    }
}
