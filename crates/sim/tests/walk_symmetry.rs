//! The same gate seen from behind, or built elsewhere, gives the same walks.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::{alike, full};
use quantity::{Length, Quantity as _};
use sim::walk::*;

/// The world as it looks from behind: y turned around.
fn mirrored(world: &World) -> World {
    let turn = |spot: Spot| Spot { y: -spot.y, ..spot };
    let mut mirrored = world.clone();
    for beam in &mut mirrored.beams {
        (beam.from, beam.to) = (turn(beam.from), turn(beam.to));
    }
    for field in &mut mirrored.scanners {
        field
            .corners
            .iter_mut()
            .for_each(|corner| *corner = turn(*corner));
    }
    for body in &mut mirrored.bodies {
        body.parts
            .iter_mut()
            .for_each(|part| part.aside = -part.aside);
    }
    mirrored
}

/// The world moved along x.
fn moved(world: &World, by: Length) -> World {
    let along = |spot: Spot| Spot {
        x: spot.x + by,
        ..spot
    };
    let mut moved = world.clone();
    for pass in &mut moved.passes {
        pass.edge += by;
        pass.opposing = pass.opposing.map(|face| face + by);
    }
    for beam in &mut moved.beams {
        (beam.from, beam.to) = (along(beam.from), along(beam.to));
    }
    for field in &mut moved.scanners {
        field
            .corners
            .iter_mut()
            .for_each(|corner| *corner = along(*corner));
    }
    moved
}

/// Scenarios of which all but a few at the very limit come out alike.
fn all_alike(one: &Walk, other: &Walk, seeds: u64, turn: impl Fn(Scenario) -> Scenario) {
    let mut odd = Vec::new();
    for seed in 0..seeds {
        let scenario = one.scenario(seed * 7919);
        let outcome = one.evaluate(&scenario).unwrap();
        let turned = other.evaluate(&turn(scenario)).unwrap();
        if !alike(&outcome, &turned) {
            odd.push((scenario, outcome, turned));
        }
    }
    assert!(odd.len() as u64 <= seeds / 20_000, "{odd:#?}");
}

#[test]
fn the_view_from_behind_is_the_same() {
    let world = full();
    let (one, other) = (world.lower().unwrap(), mirrored(&world).lower().unwrap());
    all_alike(&one, &other, 60_000, |scenario| Scenario {
        way: if scenario.way == Way::In {
            Way::Out
        } else {
            Way::In
        },
        ..scenario
    });
}

#[test]
fn a_gate_elsewhere_is_the_same() {
    let world = full();
    let by = Length::from_base(17.25);
    let (one, other) = (world.lower().unwrap(), moved(&world, by).lower().unwrap());
    all_alike(&one, &other, 60_000, |scenario| Scenario {
        crosses_at: scenario.crosses_at + by,
        ..scenario
    });
}
