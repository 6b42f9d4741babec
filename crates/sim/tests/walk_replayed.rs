//! A walk under a leaf that rises is seen again as it was counted, and its touch is where the pictures show it.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::base;
use crate::walk_world::turning::{arm, lift, watched_arm};
use quantity::Quantity as _;
use sim::walk::*;
use std::num::NonZeroUsize;

/// Walks that are counted and seen again.
const COUNT: u32 = 60_000;

/// Arms and a leaf that is lifted, with their devices and without.
fn worlds() -> Vec<RisingWorld> {
    let mut all = vec![arm(), lift(), watched_arm()];
    for mut world in [arm(), lift(), watched_arm()] {
        world.beams.clear();
        world.scanners.clear();
        all.push(world);
    }
    all
}

#[test]
fn each_number_ends_as_it_was_counted() {
    for world in worlds() {
        let walk = world.lower().unwrap();
        let counted = walk.sweep(COUNT.into(), NonZeroUsize::new(2).unwrap(), &|_| ());
        let mut again = [0_u32; 5];
        for seed in 0..u64::from(COUNT) {
            let outcome = walk.evaluate(&walk.scenario(seed)).unwrap();
            again[outcome.class as usize] += 1;
        }
        for (class, share) in Class::ALL.iter().zip(&counted.shares) {
            let share = share.share.base() * f64::from(COUNT);
            let again = f64::from(again[*class as usize]);
            assert!((share - again).abs() < 0.5, "{class:?}: {share} {again}");
        }
        for worst in counted.families.iter().filter_map(|one| one.worst) {
            let outcome = walk.evaluate(&walk.scenario(worst.seed)).unwrap();
            assert_eq!(outcome.class, worst.class, "number {}", worst.seed);
        }
    }
}

/// Corners of the touched cylinder, seen from the road: left, right, bottom, top.
fn touched_box(world: &RisingWorld, scenario: &Scenario, touch: &Touch) -> [f64; 4] {
    let part = &world.bodies[scenario.body].parts[touch.part];
    let (x, radius) = (touch.at.x.base(), part.radius.base());
    [x - radius, x + radius, part.bottom.base(), part.top.base()]
}

/// Least distance over the sides of an outline from a place: below zero within it.
fn outside(outline: &[Spot; 4], (x, z): (f64, f64)) -> f64 {
    let corner = |at: usize| (outline[at % 4].x.base(), outline[at % 4].y.base());
    let turn = |at: usize| {
        let ((ax, az), (bx, bz)) = (corner(at), corner(at + 1));
        let (dx, dz) = (bx - ax, bz - az);
        ((x - ax) * dz - (z - az) * dx) / dx.hypot(dz)
    };
    let signs = [0, 1, 2, 3].map(turn);
    let middle = [0, 1, 2, 3].map(corner);
    let (mx, mz) = middle
        .iter()
        .fold((0.0, 0.0), |(x, z), at| (x + 0.25 * at.0, z + 0.25 * at.1));
    let inward = {
        let ((ax, az), (bx, bz)) = (corner(0), corner(1));
        ((mx - ax) * (bz - az) - (mz - az) * (bx - ax)).signum()
    };
    signs
        .iter()
        .map(|sign| -inward * sign)
        .fold(f64::NEG_INFINITY, f64::max)
}

/// The body is in the leaf's way: its cylinder reaches the thickness of the leaf.
fn reaches(world: &RisingWorld, scenario: &Scenario, touch: &Touch) -> bool {
    let thickness = match world.leaf {
        RisingLeaf::Turning(leaf) => leaf.thickness,
        RisingLeaf::Lifting(leaf) => leaf.thickness,
    };
    let radius = world.bodies[scenario.body].parts[touch.part].radius;
    touch.at.y.base().abs() <= (radius + thickness / 2.0).base() + 1e-9
}

#[test]
fn the_picture_of_the_touch_touches_where_the_walk_says() {
    let mut all = 0;
    for world in worlds() {
        let walk = world.lower().unwrap();
        let mut touched = 0;
        for seed in 0..u64::from(COUNT) {
            let scenario = walk.scenario(seed);
            let outcome = walk.evaluate(&scenario).unwrap();
            let Some(touch) = outcome.touch else { continue };
            if touched == 300 {
                break;
            }
            touched += 1;
            let account = walk.account(&scenario, base(0.1)).unwrap();
            assert_eq!(account.outcome, outcome);
            let frame = account.at_touch.unwrap();
            assert_eq!(frame.time, touch.time);
            let leaf = match &frame.leaf {
                Pose::Front(leaf) => Some(leaf),
                _ => None,
            };
            let leaf = leaf.unwrap();
            let meets = account.meets.unwrap();
            let (x, z) = (meets.x.base(), meets.y.base());
            let [left, right, bottom, top] = touched_box(&world, &scenario, &touch);
            let at = format!("number {seed}: {x} {z} {leaf:?} {left} {right} {bottom} {top}");
            // On the rim of the leaf, and on the rim of the body or in it.
            assert!(outside(leaf, (x, z)).abs() < 1e-6, "{at}");
            assert!(x > left - 1e-6 && x < right + 1e-6, "{at}");
            assert!(z > bottom - 1e-6 && z < top + 1e-6, "{at}");
            let rim = [x - left, right - x, z - bottom, top - z];
            assert!(
                rim.iter().copied().fold(f64::INFINITY, f64::min) < 1e-6,
                "{at}"
            );
            assert!(reaches(&world, &scenario, &touch), "{at}");
        }
        assert!(touched > 0);
        all += touched;
    }
    assert!(all > 1000, "{all}");
}
