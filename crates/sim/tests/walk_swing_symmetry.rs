//! Swinging leaves in mirrors: a gate seen from behind or with its sides changed does the same.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::turning::double;
use crate::walk_world::{alike, base};
use quantity::Length;
use sim::walk::*;

/// The gate as it looks from behind, or in a mirror across it.
fn mirrored(world: &SwingWorld, across: bool) -> SwingWorld {
    let turn = |spot: Spot| {
        if across {
            Spot {
                x: base::<Length>(4.0) - spot.x,
                ..spot
            }
        } else {
            Spot { y: -spot.y, ..spot }
        }
    };
    let mut world = world.clone();
    for leaf in &mut world.leaves {
        leaf.pivot = turn(leaf.pivot);
        if across {
            leaf.toward = match leaf.toward {
                Toward::Smaller => Toward::Greater,
                Toward::Greater => Toward::Smaller,
            };
        } else {
            leaf.opens = Opens::Outward;
        }
    }
    for face in &mut world.faces {
        (face.from, face.to) = (turn(face.from), turn(face.to));
    }
    for beam in &mut world.beams {
        (beam.from, beam.to) = (turn(beam.from), turn(beam.to));
    }
    for field in &mut world.scanners {
        field
            .corners
            .iter_mut()
            .for_each(|corner| *corner = turn(*corner));
    }
    for body in &mut world.bodies {
        body.parts
            .iter_mut()
            .for_each(|part| part.aside = -part.aside);
    }
    world
}

fn all_alike(one: &SwingWalk, other: &SwingWalk, turn: impl Fn(Scenario) -> Scenario) {
    let (mut odd, mut touched) = (Vec::new(), 0);
    for seed in 0..60_000 {
        let scenario = one.scenario(seed * 7919);
        let first = one.evaluate(&scenario).unwrap();
        let second = other.evaluate(&turn(scenario)).unwrap();
        touched += u32::from(first.touch.is_some());
        if !alike(&first, &second) {
            odd.push((scenario, first, second));
        }
    }
    assert!(touched > 5000, "{touched}");
    assert!(odd.len() <= 4, "{odd:#?}");
}

#[test]
fn the_view_from_behind_is_the_same() {
    let world = double();
    let (one, other) = (
        world.lower().unwrap(),
        mirrored(&world, false).lower().unwrap(),
    );
    all_alike(&one, &other, |scenario| Scenario {
        way: if scenario.way == Way::In {
            Way::Out
        } else {
            Way::In
        },
        ..scenario
    });
}

#[test]
fn the_view_in_a_mirror_is_the_same() {
    let world = double();
    let (one, other) = (
        world.lower().unwrap(),
        mirrored(&world, true).lower().unwrap(),
    );
    all_alike(&one, &other, |scenario| Scenario {
        crosses_at: base::<Length>(4.0) - scenario.crosses_at,
        slant: -scenario.slant,
        ..scenario
    });
}
