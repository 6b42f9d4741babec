//! People who stand beside the path of the leaf with an arm in the gap: a hand on the post, in the track, around the edge.
//!
//! The arm is a row of cylinders that begins with the hand. Head, trunk and legs stay outside the path, as far off as the
//! arm is long: where a device on the gate line may not see them.

#![allow(
    clippy::inline_always,
    reason = "only what is inlined is worked in wide registers"
)]

use super::batch::{Batch, greater, smaller};
use super::body::Body;
use super::lane::Lane;
use super::path::Case;
use super::people::{Row, body};
use super::person::Person;
use super::sequence::SIDE;

/// So much of the rest of a body may be in the path by rounding, in meters.
const ROUNDED: f64 = 1e-9;

/// Adult, small adult, children, one who crouches, each with an arm in the gap.
pub fn leaning() -> Vec<Body> {
    vec![
        leaner(
            "adult leaning in",
            &Arm {
                half: 48.0,
                low: 1200.0,
            },
            &[
                [-737.0, -134.5, 149.0, 900.0, 1546.0],
                [-737.0, 134.5, 149.0, 900.0, 1546.0],
                [-737.0, 0.0, 146.5, 0.0, 900.0],
                [-737.0, 0.0, 105.5, 1546.0, 1870.0],
            ],
            "ANSUR II 2012, men, 95th percentile: thumb-tip reach 886 mm less half the chest, hand 96 mm wide; height of \
             the hand: memory",
        ),
        leaner(
            "small adult leaning in",
            &Arm {
                half: 36.0,
                low: 800.0,
            },
            &[
                [-571.0, -100.5, 102.5, 700.0, 1242.0],
                [-571.0, 100.5, 102.5, 700.0, 1242.0],
                [-571.0, 0.0, 113.0, 0.0, 700.0],
                [-571.0, 0.0, 89.0, 1242.0, 1525.0],
            ],
            "ANSUR II 2012, women, 5th percentile: thumb-tip reach 674 mm less half the chest, hand 72 mm wide; height of \
             the hand: memory",
        ),
        leaner(
            "child of about 7 leaning in",
            &Arm {
                half: 28.0,
                low: 650.0,
            },
            &[
                [-440.0, -75.0, 75.0, 560.0, 970.0],
                [-440.0, 75.0, 75.0, 560.0, 970.0],
                [-440.0, 0.0, 95.0, 0.0, 560.0],
                [-440.0, 0.0, 90.0, 970.0, 1220.0],
            ],
            "memory: reach 440 mm from the middle of the body, hand 56 mm wide",
        ),
        leaner(
            "child of about 3 leaning in",
            &Arm {
                half: 24.0,
                low: 450.0,
            },
            &[
                [-320.0, -60.0, 62.5, 380.0, 690.0],
                [-320.0, 60.0, 62.5, 380.0, 690.0],
                [-320.0, 0.0, 75.0, 0.0, 380.0],
                [-320.0, 0.0, 85.0, 690.0, 893.0],
            ],
            "memory: reach 320 mm from the middle of the body, hand 48 mm wide",
        ),
        leaner(
            "someone crouching",
            &Arm {
                half: 40.0,
                low: 0.0,
            },
            &[[-600.0, 0.0, 250.0, 0.0, 900.0]],
            "memory: crouching 900 mm high and 500 mm wide, the hand 600 mm before the middle of the body and 80 mm wide",
        ),
    ]
}

/// An arm held level: half its thickness, height of its lower side, in millimeters.
struct Arm {
    half: f64,
    low: f64,
}

/// How far apart the cylinders of an arm are, in parts of their radius: less than two, so that they overlap.
const APART: f64 = 1.75;
/// The most cylinders of an arm.
const MOST: usize = 8;

/// One whose hand is the middle of the body and whose arm goes back to the rest of it.
fn leaner(name: &str, arm: &Arm, rest: &[Row], source: &str) -> Body {
    let back = rest.iter().map(|row| row[0] + row[2]);
    let back = back.fold(f64::NEG_INFINITY, f64::max);
    let place = |at: usize| -APART * arm.half * f64::from(u32::try_from(at).unwrap_or(u32::MAX));
    let mut rows: Vec<Row> = (0..MOST)
        .map(place)
        .take_while(|ahead| *ahead > back)
        .map(|ahead| [ahead, 0.0, arm.half, arm.low, arm.low + 2.0 * arm.half])
        .collect();
    let count = rows.len();
    rows.extend(rest);
    Body {
        arm: count,
        ..body(name, &rows, None, source)
    }
}

impl Lane {
    /// Depths of the middle of one who leans in: from where the hand comes into the path to where the rest does.
    fn lean(&self, person: &Person, way: usize, slant: f64) -> (f64, f64) {
        let stretch = (1.0 + slant * slant).sqrt();
        let right = self.right(way);
        // How deep the middle is when a cylinder comes beside the leaf.
        let comes = |at: usize| {
            let part = &person.parts[at];
            let lead = (part.ahead - right * part.aside * slant) / stretch;
            -(part.radius + self.half) - lead
        };
        let first = (0..person.arm).map(comes).fold(f64::INFINITY, f64::min);
        let rest = (person.arm..person.parts.len()).map(comes);
        let last = rest.fold(f64::INFINITY, f64::min);
        (first, last.max(first))
    }

    /// A depth of one who leans in, by its share of all of them.
    pub(super) fn leant(&self, person: &Person, way: usize, slant: f64, share: f64) -> f64 {
        let (first, last) = self.lean(person, way, slant);
        first + share * (last - first)
    }

    /// Takes the depths of those who lean in for shares of all of them, as [`Self::leant`] does for one.
    #[inline(always)]
    pub(super) fn lean_all(&self, person: &Person, way: usize, batch: &mut Batch) {
        let right = self.right(way);
        let (mut first, mut last) = ([f64::INFINITY; SIDE], [f64::INFINITY; SIDE]);
        for (number, part) in person.parts.iter().enumerate() {
            let (aside, half) = (right * part.aside, part.radius + self.half);
            let least = if number < person.arm {
                &mut first
            } else {
                &mut last
            };
            let lanes = batch.slant.iter().zip(&batch.stretch);
            for (least, (slant, stretch)) in least.iter_mut().zip(lanes) {
                let lead = (part.ahead - aside * slant) / stretch;
                *least = smaller(*least, -half - lead);
            }
        }
        for at in 0..SIDE {
            let last = greater(last[at], first[at]);
            batch.depth[at] = first[at] + batch.deep[at] * (last - first[at]);
        }
    }

    /// Whether a body of a case leans in as far as it may, or is none that leans in.
    pub(super) fn leans_in(&self, case: &Case) -> bool {
        let person = &self.people[case.body];
        let deepest = |depth: f64| depth <= self.lean(person, case.way, case.slant).1 + ROUNDED;
        person.arm == 0 || matches!(case.path, super::path::Path::Stand(depth) if deepest(depth))
    }
}
