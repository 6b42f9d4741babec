//! Every device of an arm that rises, and of a leaf that swings, taken away, moved, shortened, late, blind: a kind of walk
//! that was proved falls to a case that the evaluator confirms.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::turning::{arm, on_leaf, single};
use crate::walk_world::{base, beam, edge, round, spot};
use sim::walk::*;
use std::num::NonZeroUsize;

/// Boxes for each part of a proof.
const MOST: u64 = 400;

const BOTH: [Direction; 2] = [Direction::Closing, Direction::Opening];

/// A change to a world.
type Change = (&'static str, fn(&mut AnyWorld));

fn field(y: (f64, f64)) -> Scanner {
    let (left, right) = (-3.0, 6.0);
    Scanner {
        guards: BOTH.to_vec(),
        corners: vec![
            spot(left, y.0),
            spot(right, y.0),
            spot(right, y.1),
            spot(left, y.1),
        ],
        bottom: base(0.15),
        top: base(0.15),
        smallest_object: base(0.05),
        response: base(0.05),
    }
}

/// An arm that closes and opens, over one who stands there or goes straight at one pace, with no device.
fn bare_arm() -> RisingWorld {
    let mut world = arm();
    if let RisingLeaf::Turning(leaf) = &mut world.leaf {
        leaf.heel = base(1.0);
    }
    for pass in &mut world.passes {
        pass.plan.cruise_speed = base(0.5);
        pass.plan.acceleration = base(0.8);
        pass.plan.deceleration = base(0.8);
        pass.plan.creep_speed = base(0.2);
        pass.plan.set_point = base(0.6);
    }
    world.beams.clear();
    world.edges.clear();
    world.bodies = vec![round("adult", 0.2, 1.75, (1.0, 1.0))];
    world.greatest_slant = base(0.0);
    world
}

/// One leaf that swings past the same, with no device.
fn bare_leaf() -> SwingWorld {
    let mut world = single(0.08);
    world.leaves[0].heel = base(1.0);
    world.beams.clear();
    world.edges.clear();
    world.controller.answer = Answer::Stop;
    world.bodies = vec![round("adult", 0.2, 1.75, (1.0, 1.0))];
    world.greatest_slant = base(0.0);
    world
}

fn soft(guards: Direction) -> ContactEdge {
    ContactEdge {
        soft_travel: base(0.3),
        stiffness: base(1_000.0),
        ..edge(guards)
    }
}

/// Limits under which a force counts at once, however long it lasts, and wherever the leaf is.
fn at_once(limits: Limits) -> Limits {
    Limits {
        crushing_gap: base(0.1),
        open_force: base(400.0),
        lasting_force: base(400.0),
        rest_force: base(400.0),
        ..limits
    }
}

fn felt() -> ForceSensing {
    ForceSensing {
        guards: BOTH.to_vec(),
        force: base(40.0),
        response: base(0.05),
    }
}

/// What is done to a field before the gate line, or before an open leaf.
const FIELD: [Change; 5] = [
    ("gone", |world| drop(world.scanners().remove(0))),
    ("raised", |world| {
        (world.scanners()[0].bottom, world.scanners()[0].top) = (base(1.9), base(1.9));
    }),
    ("shortened", |world| {
        for corner in [0, 3] {
            world.scanners()[0].corners[corner].x = base(2.0);
        }
    }),
    ("late", |world| world.scanners()[0].response = base(4.0)),
    ("blind", |world| {
        world.scanners()[0].smallest_object = base(0.25);
    }),
];

/// What is done to both beams of an arm: one would see whoever stands there without the other.
const BEAMS: [Change; 5] = [
    ("gone", |world| world.beams().clear()),
    ("raised", |world| {
        each_beam(world, |beam| beam.height = base(1.9));
    }),
    ("shortened", |world| {
        each_beam(world, |beam| beam.from.x = base(2.0));
    }),
    ("late", |world| {
        each_beam(world, |beam| beam.response = base(4.0));
    }),
    ("blind", |world| {
        each_beam(world, |beam| beam.diameter = base(0.5));
    }),
];

/// What is done to the edges below an arm, or on the faces of a leaf.
const EDGES: [Change; 4] = [
    ("gone", |world| {
        for edge in world.edges() {
            edge.guards = Direction::Opening;
            edge.response = base(9.0);
            edge.soft_travel = base(0.0);
        }
    }),
    ("shortened", |world| match world {
        AnyWorld::Swinging(world) => world.edges.iter_mut().for_each(|edge| edge.to = base(1.5)),
        AnyWorld::Rising(world) => world.edges.iter_mut().for_each(|edge| edge.to = base(1.5)),
        AnyWorld::Sliding(_) => {}
    }),
    ("thin", |world| {
        for edge in world.edges() {
            edge.soft_travel = base(0.002);
        }
    }),
    ("late", |world| {
        for edge in world.edges() {
            edge.response = base(4.0);
        }
    }),
];

/// What is done to the drive that feels.
const DRIVE: [Change; 4] = [
    ("gone", |world| *world.drive() = None),
    ("dull", |world| {
        world.drive().as_mut().unwrap().force = base(4000.0);
    }),
    ("late", |world| {
        world.drive().as_mut().unwrap().response = base(4.0);
    }),
    ("blind", |world| {
        world.drive().as_mut().unwrap().guards.clear();
    }),
];

fn each_beam(world: &mut AnyWorld, change: fn(&mut Beam)) {
    world.beams().iter_mut().for_each(change);
}

/// Makes each change, and finds a walk that ends badly with it and did not before.
fn changed(world: &AnyWorld, changes: &[Change]) {
    let whole = world.lower().unwrap();
    let prove = |walk: &AnyWalk, family: &Family| {
        let threads = NonZeroUsize::new(2).unwrap();
        walk.prove(family, MOST, threads).unwrap().verdict
    };
    let mut held = whole.provable();
    held.retain(|family| prove(&whole, family) == Verdict::Proved);
    assert!(held.len() > 3, "{held:?}");
    for (what, change) in changes {
        let mut world = world.clone();
        change(&mut world);
        let changed = world.lower().unwrap();
        let found: Vec<Verdict> = held.iter().map(|family| prove(&changed, family)).collect();
        let mut cases = 0;
        for verdict in &found {
            if let Verdict::Refuted(scenario, outcome) = verdict {
                assert_eq!(changed.evaluate(scenario).unwrap(), *outcome);
                assert!(outcome.class.is_bad(), "{what}: {outcome:?}");
                // The same person at the whole gate is safe.
                assert!(!whole.evaluate(scenario).unwrap().class.is_bad());
                cases += 1;
            }
        }
        assert!(cases > 0, "{what}: {found:?}");
    }
}

#[test]
fn fields_at_an_arm() {
    let mut world = bare_arm();
    world.scanners = vec![field((-4.0, 0.0)), field((0.0, 4.0))];
    changed(&AnyWorld::Rising(world), &FIELD);
}

#[test]
fn beams_at_an_arm() {
    let mut world = bare_arm();
    let across = |y: f64| Beam {
        guards: BOTH.to_vec(),
        from: spot(-1.0, y),
        to: spot(5.0, y),
        ..beam(y, 0.5)
    };
    world.beams = vec![across(-0.1), across(0.1)];
    changed(&AnyWorld::Rising(world), &BEAMS);
}

#[test]
fn an_edge_below_an_arm() {
    let mut world = bare_arm();
    world.limits = at_once(world.limits);
    world.edges = vec![on_leaf(0, -1.0, 5.0, soft(Direction::Closing))];
    world.bare_stiffness = base(20_000.0);
    changed(&AnyWorld::Rising(world), &EDGES);
}

#[test]
fn a_drive_that_feels_at_an_arm() {
    let mut world = bare_arm();
    world.limits = at_once(world.limits);
    world.bare_stiffness = base(1_000.0);
    world.drive = Some(felt());
    changed(&AnyWorld::Rising(world), &DRIVE);
}

#[test]
fn fields_at_a_leaf_that_swings() {
    let mut world = bare_leaf();
    world.scanners = vec![field((0.5, 6.0)), field((-4.0, 0.5))];
    changed(&AnyWorld::Swinging(world), &FIELD);
}

#[test]
fn edges_on_a_leaf_that_swings() {
    let mut world = bare_leaf();
    world.limits = at_once(world.limits);
    let strip = |direction| on_leaf(0, -1.0, 4.0, soft(direction));
    world.edges = BOTH.map(strip).to_vec();
    world.bare_stiffness = base(20_000.0);
    // The proof leaves these kinds of walk open in the boxes that it may look at.
    changed(&AnyWorld::Swinging(world), &EDGES);
}

#[test]
fn a_drive_that_feels_at_a_leaf_that_swings() {
    let mut world = bare_leaf();
    world.limits = at_once(world.limits);
    world.bare_stiffness = base(1_000.0);
    world.drive = Some(felt());
    changed(&AnyWorld::Swinging(world), &DRIVE);
}
