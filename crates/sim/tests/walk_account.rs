//! A first look agrees with the long one; the account of a scenario agrees with its outcome.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use crate::walk_world::turning::{arm, double, lift, single};
use crate::walk_world::{full, trial};
use quantity::{Quantity as _, Time};
use sim::walk::{AnyWalk, AnyWorld, Pose, Sight, Spot};
use std::num::NonZeroUsize;

#[test]
fn a_first_look_takes_the_same_scenarios_as_the_sweep() {
    let walk = trial(0.08).lower().unwrap();
    let families = walk.families().len() as u64;
    let swept = walk.sweep(families * 1024, NonZeroUsize::MIN, &|_| {});
    assert_eq!(walk.glance(1024), swept);
    assert!(
        walk.glance(16)
            .families
            .iter()
            .all(|family| family.scenarios == 16)
    );
}

#[test]
fn the_leaf_and_the_body_meet_where_the_outcome_says() {
    let walk = full().lower().unwrap();
    let mut touched = 0;
    for found in walk.glance(64).families {
        let Some(worst) = found.worst else { continue };
        let scenario = walk.scenario(worst.seed);
        let account = walk.account(&scenario, Time::from_base(0.01)).unwrap();
        let touch = account.outcome.touch.unwrap();
        assert_eq!(account.outcome, walk.evaluate(&scenario).unwrap());
        assert!(!account.sights.contains(&Sight::KeepsShut));
        let frame = account
            .frames
            .iter()
            .min_by(|a, b| {
                let off = |frame: &sim::walk::Frame| (frame.time - touch.time).base().abs();
                off(a).total_cmp(&off(b))
            })
            .unwrap();
        // The touched cylinder is no farther from the edge than its radius and a step of both.
        let Pose::Edge(edge) = frame.leaf else {
            panic!("a sliding leaf has an edge")
        };
        let apart = (edge - touch.at.x).base().abs();
        assert!(apart < 0.35, "{scenario:?} {frame:?} {touch:?}");
        touched += 1;
    }
    assert!(touched > 20, "{touched}");
}

/// How far a place is from an outline, in meters; zero within it.
fn off(outline: &[Spot; 4], (x, y): (f64, f64)) -> f64 {
    let corner = |at: usize| {
        let spot = outline[at % 4];
        (spot.x.base(), spot.y.base())
    };
    let mut within = (true, true);
    let mut nearest = f64::INFINITY;
    for at in 0..4 {
        let ((x0, y0), (x1, y1)) = (corner(at), corner(at + 1));
        let (dx, dy) = (x1 - x0, y1 - y0);
        let along = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy);
        let share = along.clamp(0.0, 1.0);
        nearest = nearest.min((x - x0 - share * dx).hypot(y - y0 - share * dy));
        let side = dx * (y - y0) - dy * (x - x0);
        within = (within.0 && side >= 0.0, within.1 && side <= 0.0);
    }
    if within.0 || within.1 { 0.0 } else { nearest }
}

/// The worst touches of leaves that turn or rise are where the pictures have leaf and body, as near as a step goes.
fn pictures_meet(walk: &AnyWalk) -> usize {
    let mut touched = 0;
    for found in walk.glance(64).families {
        let Some(worst) = found.worst else { continue };
        let scenario = walk.scenario(worst.seed);
        let account = walk.account(&scenario, Time::from_base(0.01)).unwrap();
        let touch = account.outcome.touch.unwrap();
        let near = |frame: &&sim::walk::Frame| (frame.time - touch.time).base().abs();
        let frame = account
            .frames
            .iter()
            .min_by(|a, b| near(a).total_cmp(&near(b)))
            .unwrap();
        assert!(near(&frame) < 0.011, "{scenario:?} {touch:?}");
        let apart = match &frame.leaf {
            Pose::Above(leaves) => leaves
                .iter()
                .map(|leaf| off(leaf, (touch.at.x.base(), touch.at.y.base())))
                .fold(f64::INFINITY, f64::min),
            Pose::Front(leaf) => {
                let heights = (0..200).map(|step| f64::from(step) * 0.01);
                heights
                    .map(|z| off(leaf, (touch.at.x.base(), z)))
                    .fold(f64::INFINITY, f64::min)
            }
            Pose::Edge(_) => panic!("it does not slide"),
        };
        // The place of a touch is the middle of the touched cylinder: its radius away, and what is gone in a step.
        assert!(apart < 0.4, "{apart} {scenario:?} {touch:?}");
        touched += 1;
    }
    touched
}

#[test]
fn leaves_that_turn_or_rise_are_pictured_where_they_touch() {
    let worlds = [
        AnyWorld::Swinging(single(0.08)),
        AnyWorld::Swinging(double()),
        AnyWorld::Rising(arm()),
        AnyWorld::Rising(lift()),
    ];
    let touched: usize = worlds
        .iter()
        .map(|world| pictures_meet(&world.lower().unwrap()))
        .sum();
    assert!(touched > 40, "{touched}");
}
