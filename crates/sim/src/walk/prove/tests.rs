//! The proof holds against the evaluator: no box that is called safe holds a bad touch, and a broken proof is noticed.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(
    unreachable_pub,
    reason = "the worlds are shared with the tests outside"
)]

use super::heard::Told;
use super::search::Space;
use super::space::{Job, Kind};
use super::span::Span;
use super::testing::Tree;
use crate::walk::demo::{full, joined, trial};
use crate::walk::path::{Case, Path};
use crate::walk::scenario::Way;
use crate::walk::sequence::{Draw, Family, Habit};
use crate::walk::{Walk, World};
use std::sync::atomic::{AtomicU8, Ordering};

/// Which way the proof is broken: not at all, one world dropped, the other, the leaf's least place rounded up.
pub(super) static MUTATED: AtomicU8 = AtomicU8::new(0);

/// The worlds that a broken proof still looks at.
pub(super) fn mutated([nothing, something]: [Option<Told>; 2]) -> [Option<Told>; 2] {
    match MUTATED.load(Ordering::Relaxed) {
        1 => [None, something],
        2 => [nothing, None],
        _ => [nothing, something],
    }
}

/// How far a broken proof rounds the leaf's least place the wrong way, in meters.
const WRONG: f64 = 0.05;

/// The places of the leaf as a broken proof rounds them.
pub(super) fn rounded(places: Span) -> Span {
    match MUTATED.load(Ordering::Relaxed) {
        3 => Span::new((places.lo + WRONG).min(places.hi), places.hi),
        _ => places,
    }
}

/// A gate with one beam on the far side, that sees too late, and no edge: touches of every class.
fn world() -> World {
    let mut world = trial(0.08);
    world.edges.clear();
    world.beams.remove(0);
    world
}

/// Works scenarios of a family; how many ended badly, and how many of those are in boxes called safe.
fn checked(walk: &Walk, family: &Family, count: u64, depth: u32) -> (u64, u64) {
    let lane = &walk.lanes[family.pass];
    let mut trees = Vec::new();
    for &kind in Kind::of(family.habit) {
        for &part in &lane.people[family.body].touchable {
            let job = Job::new(walk, family, part, kind);
            let tree = Tree::grow(&job, &job.whole(), depth);
            trees.push((job, tree));
        }
    }
    let (mut ended, mut wrong) = (0, 0);
    for number in 0..count {
        let case = lane.drawn(family, &Draw::new(number, 1), walk.slant);
        let found = lane.run(&case);
        let Some((struck, _)) = found.touch.filter(|_| found.class.is_bad()) else {
            continue;
        };
        ended += 1;
        // A touch soon after a halt that no device knows of is one of those long after it too: one proof has to have it.
        let mut known = trees.iter().filter_map(|(job, tree)| {
            let point = point(job, &case, struck.time, struck.y)?;
            (job.part == struck.part).then(|| tree.is_safe(point))
        });
        wrong += u64::from(known.all(|safe| safe));
    }
    (ended, wrong)
}

/// The point of a touch; none where it is of another kind.
fn point(job: &Job, case: &Case, time: f64, depth: f64) -> Option<[f64; 5]> {
    let stretch = (1.0 + case.slant * case.slant).sqrt();
    let pace = case.speed / stretch;
    let part = &job.lane.people[job.body].parts[job.part];
    let aside = job.lane.right(job.way) * part.aside;
    let middle = depth - (part.ahead - aside * case.slant) / stretch;
    let stood = match case.path {
        Path::Stop(stays) if (middle - stays).abs() < 1e-9 => time - case.arrives - stays / pace,
        _ => 0.0,
    };
    let goes = !matches!(case.path, Path::Stand(_)) && stood <= 0.0;
    let (is_one, slowness, stood) = match job.kind {
        Kind::Moving => (goes, 1.0 / case.speed, 0.0),
        Kind::Halted => (!goes && stood <= job.busy(), 1.0 / case.speed, stood),
        Kind::Standing => (!goes, 1.0, 0.0),
    };
    is_one.then_some([time, depth, case.slant, slowness, stood])
}

fn family(habit: Habit) -> Family {
    Family {
        pass: 0,
        body: 0,
        way: Way::In,
        habit,
    }
}

#[test]
fn ten_million_scenarios_and_none_ends_badly_where_it_is_called_safe() {
    let mut bad = 0;
    for parts in [
        &[[0.0, 0.0, 0.2]][..],
        &[
            [0.3, 0.0, 0.1],
            [0.1, 0.1, 0.12],
            [-0.1, -0.1, 0.12],
            [-0.3, 0.0, 0.1],
        ][..],
    ] {
        let mut world = world();
        world.bodies = vec![joined(parts)];
        let walk = world.lower().unwrap();
        for (habit, count) in [
            (Habit::Cross, 3_000_000),
            (Habit::Stop, 2_000_000),
            (Habit::Stand, 500_000),
        ] {
            let (ended, wrong) = checked(&walk, &family(habit), count, 15);
            assert_eq!(wrong, 0, "of {ended} {habit:?} {parts:?}");
            bad += ended;
        }
    }
    assert!(bad > 50_000, "{bad}");
}

#[test]
fn every_family_of_the_full_gate_ends_badly_only_where_it_may() {
    let walk = full().lower().unwrap();
    let mut bad = 0;
    for family in walk.provable() {
        let (ended, wrong) = checked(&walk, &family, 20_000, 7);
        assert_eq!(wrong, 0, "of {ended} {family:?}");
        bad += ended;
    }
    assert!(bad > 10_000, "{bad}");
}

#[test]
fn a_proof_that_forgets_a_world_is_noticed() {
    let walk = world().lower().unwrap();
    for kind in [1, 2] {
        MUTATED.store(kind, Ordering::Relaxed);
        let (ended, wrong) = checked(&walk, &family(Habit::Cross), 300_000, 12);
        assert!(wrong > 0, "{kind}: of {ended}");
    }
    MUTATED.store(0, Ordering::Relaxed);
}

#[test]
fn a_proof_that_rounds_the_wrong_way_is_noticed() {
    let walk = world().lower().unwrap();
    MUTATED.store(3, Ordering::Relaxed);
    let (ended, wrong) = checked(&walk, &family(Habit::Cross), 300_000, 15);
    assert!(wrong > 0, "of {ended}");
    MUTATED.store(0, Ordering::Relaxed);
}
