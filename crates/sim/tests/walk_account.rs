//! A first look agrees with the long one; the account of a scenario agrees with its outcome.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod walk_world;

use quantity::{Quantity as _, Time};
use sim::walk::Sight;
use std::num::NonZeroUsize;
use walk_world::{full, trial};

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
        let apart = (frame.edge - touch.at.x).base().abs();
        assert!(apart < 0.35, "{scenario:?} {frame:?} {touch:?}");
        touched += 1;
    }
    assert!(touched > 20, "{touched}");
}
