//! Every device of a gate that is proved, taken away, raised, shortened, late: what was proved falls to a case that the
//! evaluator confirms, or the device is not needed, and then it is on the list.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::{base, beam, round, spot, trial};
use sim::walk::*;
use std::num::NonZeroUsize;

/// Boxes for each part of a proof.
const MOST: u64 = 20_000;

/// A change to one device: its name, what is done to it, how.
type Change = (&'static str, &'static str, fn(&mut World));

/// An adult, one who carries a load ahead, a child, one who lies there; low beam inside and level field outside, a beam
/// on each side at the height of the load, an edge, a drive that feels.
fn gate() -> World {
    let mut world = trial(0.08);
    world.beams = vec![beam(0.12, 0.15), beam(-0.12, 1.2), beam(0.12, 1.2)];
    world.scanners = vec![Scanner {
        guards: vec![Direction::Closing],
        corners: vec![
            spot(-0.1, -0.6),
            spot(4.5, -0.6),
            spot(4.5, -0.12),
            spot(-0.1, -0.12),
        ],
        bottom: base(0.15),
        top: base(0.15),
        smallest_object: base(0.0),
        response: base(0.02),
    }];
    world.drive = Some(ForceSensing {
        guards: vec![Direction::Closing],
        force: base(450.0),
        response: base(0.15),
    });
    let mut carries = round("carries a load", 0.2, 1.75, (0.3, 1.3));
    carries.parts.push(Cylinder {
        ahead: base(0.45),
        aside: base(0.0),
        radius: base(0.15),
        bottom: base(1.0),
        top: base(1.4),
    });
    let mut lies = round("lies there", 0.2, 0.205, (0.3, 1.6));
    lies.speeds = None;
    world
        .bodies
        .extend([carries, round("child", 0.125, 1.1, (0.3, 1.6)), lies]);
    world
}

const CHANGES: [Change; 24] = [
    ("low beam inside", "gone", |world| {
        world.beams.remove(0);
    }),
    ("low beam inside", "raised", |world| {
        world.beams[0].height = base(0.25);
    }),
    ("low beam inside", "shortened", |world| {
        world.beams[0].from = spot(2.0, 0.12);
    }),
    ("low beam inside", "late", |world| {
        world.beams[0].response = base(0.5);
    }),
    ("field outside", "gone", |world| world.scanners.clear()),
    ("field outside", "raised", |world| {
        world.scanners[0].bottom = base(0.25);
        world.scanners[0].top = base(0.25);
    }),
    ("field outside", "shortened", |world| {
        world.scanners[0].corners[0] = spot(2.0, -0.6);
        world.scanners[0].corners[3] = spot(2.0, -0.12);
    }),
    ("field outside", "late", |world| {
        world.scanners[0].response = base(0.5);
    }),
    ("high beam outside", "gone", |world| {
        world.beams.remove(1);
    }),
    ("high beam outside", "raised", |world| {
        world.beams[1].height = base(1.5);
    }),
    ("high beam outside", "shortened", |world| {
        world.beams[1].from = spot(2.0, -0.12);
    }),
    ("high beam outside", "late", |world| {
        world.beams[1].response = base(0.5);
    }),
    ("high beam inside", "gone", |world| {
        world.beams.remove(2);
    }),
    ("high beam inside", "raised", |world| {
        world.beams[2].height = base(1.5);
    }),
    ("high beam inside", "shortened", |world| {
        world.beams[2].from = spot(2.0, 0.12);
    }),
    ("high beam inside", "late", |world| {
        world.beams[2].response = base(0.5);
    }),
    ("edge", "gone", |world| world.edges.clear()),
    ("edge", "raised", |world| world.edges[0].bottom = base(1.2)),
    ("edge", "shortened", |world| {
        world.edges[0].soft_travel = base(0.010);
    }),
    ("edge", "late", |world| world.edges[0].response = base(0.5)),
    ("drive", "gone", |world| world.drive = None),
    ("drive", "raised", |world| {
        world.drive.as_mut().unwrap().force = base(2000.0);
    }),
    ("drive", "shortened", |world| {
        world.drive.as_mut().unwrap().guards.clear();
    }),
    ("drive", "late", |world| {
        world.drive.as_mut().unwrap().response = base(2.0);
    }),
];

/// What the gate is proved without: the field sees one with a load before the late beam must, and where the beams do their
/// part nobody is pressed long enough to be felt.
const NOT_NEEDED: [(&str, &str); 6] = [
    ("high beam outside", "late"),
    ("edge", "late"),
    ("drive", "gone"),
    ("drive", "raised"),
    ("drive", "shortened"),
    ("drive", "late"),
];

fn proofs(walk: &Walk) -> Vec<Proof> {
    walk.prove_all(MOST, NonZeroUsize::new(2).unwrap())
}

#[test]
fn every_change_of_a_device_is_a_case_that_ends_badly_or_is_not_needed() {
    let whole = gate().lower().unwrap();
    let proved = |proof: &Proof| proof.verdict == Verdict::Proved;
    assert!(proofs(&whole).iter().all(proved));
    for (name, what, change) in CHANGES {
        let mut world = gate();
        change(&mut world);
        let changed = world.lower().unwrap();
        let found = proofs(&changed);
        let mut cases = 0;
        for proof in &found {
            if let Verdict::Refuted(scenario, outcome) = proof.verdict {
                assert_eq!(changed.evaluate(&scenario).unwrap(), outcome);
                assert!(outcome.class.is_bad(), "{name} {what}: {outcome:?}");
                // The same person at the whole gate is safe.
                assert!(!whole.evaluate(&scenario).unwrap().class.is_bad());
                cases += 1;
            }
        }
        if NOT_NEEDED.contains(&(name, what)) {
            assert!(found.iter().all(proved), "{name} {what}: {found:?}");
        } else {
            assert!(cases > 0, "{name} {what}: {found:?}");
        }
    }
}
