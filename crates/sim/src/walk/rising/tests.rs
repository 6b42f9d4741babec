//! The proof holds against the evaluator: no box that is called safe holds a bad touch, and a broken proof is noticed.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::lane::RisingWalk;
use crate::walk::RisingWorld;
use crate::walk::course::Course;
use crate::walk::demo::base;
use crate::walk::demo::turning::{arm, lift, watched_arm};
use crate::walk::prove::search::Space;
use crate::walk::prove::span::Span;
use crate::walk::prove::testing::{Tree, assert_bounded, late_field, mutate};
use crate::walk::sequence::{Draw, Family};

/// Works scenarios of a family; how many ended badly, and how many of those are in boxes called safe.
fn checked(walk: &RisingWalk, family: &Family, count: u64, depth: u32) -> (u64, u64) {
    let lane = &walk.lanes[family.pass];
    let plain = lane.plain();
    let jobs = walk.jobs(family, &plain);
    let trees: Vec<_> = jobs
        .iter()
        .map(|job| (job, Tree::grow(job, &job.whole(), depth)))
        .collect();
    let (mut ended, mut wrong) = (0, 0);
    for number in 0..count {
        let case = lane.drawn(family, &Draw::new(number, 1), walk.slant);
        let found = lane.run(&case);
        let Some((struck, _)) = found.touch.filter(|_| found.class.is_bad()) else {
            continue;
        };
        ended += 1;
        let mut known = trees.iter().filter_map(|(job, tree)| {
            let point = job.point(&case, &struck)?;
            (job.part == struck.part).then(|| tree.is_safe(point))
        });
        wrong += u64::from(known.all(|safe| safe));
    }
    (ended, wrong)
}

/// An adult, one who crawls, a cyclist.
fn few(mut world: RisingWorld) -> RisingWorld {
    let bodies = [0, 4, 7].map(|at| world.bodies[at].clone());
    world.bodies = bodies.to_vec();
    world
}

fn all(world: &RisingWorld, count: u64, depth: u32) -> (u64, u64) {
    let walk = world.lower().unwrap();
    let (mut bad, mut wrong) = (0, 0);
    for family in walk.provable() {
        let found = checked(&walk, &family, count, depth);
        (bad, wrong) = (bad + found.0, wrong + found.1);
    }
    (bad, wrong)
}

#[test]
fn no_walk_ends_badly_in_a_box_that_is_called_safe() {
    let mut bad = 0;
    for world in [arm(), lift()] {
        let mut world = few(world);
        for count in [60_000, 30_000] {
            let (ended, wrong) = all(&world, count, 9);
            assert_eq!(wrong, 0, "of {ended}");
            bad += ended;
            world.beams.remove(0);
            world.edges.clear();
        }
    }
    assert!(bad > 5_000, "{bad}");
}

/// A gate whose fields see everybody, too late.
fn late() -> RisingWorld {
    let mut world = few(arm());
    world.beams.clear();
    world.edges.clear();
    world.scanners = vec![late_field()];
    world
}

#[test]
fn a_proof_that_forgets_a_world_or_rounds_the_wrong_way_is_noticed() {
    for kind in [1, 2, 3] {
        mutate(kind);
        let mut world = late();
        if kind != 2 {
            world.scanners.clear();
        }
        let (ended, wrong) = all(&world, 10_000, 12);
        assert!(wrong > 0, "{kind}: of {ended}");
    }
    mutate(0);
}

/// Leaves that are told to stop at any time, and looked at any time after it.
#[test]
fn a_leaf_is_on_its_way_back_when_the_proof_says_it_may_be() {
    for world in [arm(), watched_arm()] {
        let walk = world.lower().unwrap();
        for family in walk.provable() {
            let plain = walk.lanes[family.pass].plain();
            let jobs = walk.jobs(&family, &plain);
            let Some(job) = jobs.iter().find(|job| job.back) else {
                continue;
            };
            let mut seen = 0;
            for seed in 0..1_000 {
                let [told, ago, wide, ..] = Draw::new(seed, 1).point();
                let told = (plain.profile.end + 2.0) * told - 1.0;
                let ago = job.moves_on() * ago;
                let course = Course::commanded(&plain.profile, &plain.control, told);
                let (place, speed) = course.at(told + ago);
                if speed < 0.0 {
                    let about = Span::new(place - 0.1 * wide, place + 1e-12);
                    assert!(job.may_be_back(about, told, ago), "{told} {ago} {place}");
                    seen += 1;
                }
            }
            assert!(seen > 100, "{seen}");
        }
    }
}

/// With limits that nothing keeps, a box about a touch is at least as bad as the touch.
#[test]
fn no_touch_is_harder_than_a_box_about_it() {
    let mut touches = 0;
    for mut world in [few(arm()), few(watched_arm())] {
        world.limits.open_force = base(0.01);
        world.limits.crushing_force = base(0.01);
        let walk = world.lower().unwrap();
        for family in walk.provable() {
            let lane = &walk.lanes[family.pass];
            let plain = lane.plain();
            let jobs = walk.jobs(&family, &plain);
            for number in 0..20_000 {
                let case = lane.drawn(&family, &Draw::new(number, 1), walk.slant);
                let found = lane.run(&case);
                let Some(touch) = found.touch.filter(|_| found.class.is_bad()) else {
                    continue;
                };
                assert_bounded(&jobs, &case, &touch);
                touches += 1;
            }
        }
    }
    assert!(touches > 10_000, "{touches}");
}
