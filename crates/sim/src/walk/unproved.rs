//! What proofs about leaves that turn or rise have in common: the first scenarios of the sequence, and those uphill from them,
//! which may refute a family at once.

use super::climb::climbed;
use super::evaluate::Found;
use super::path::Case;
use super::prove::search::{Effort, Searched};
use super::prove::{Proof, Verdict, in_order};
use super::sequence::{Draw, Family, Habit, WIDE};
use super::stop;
use super::swing::{outcome, scenario};
use formula::OutOfReach;
use std::num::NonZeroUsize;

/// Scenarios of the sequence that are tried before a proof begins.
const TRIED: u64 = 32_768;
/// The coordinate of a point that says how deep in one stops.
const DEPTH: usize = 4;
/// Stretches along the leaf; from the hardest of each the way leads uphill.
const PLACES: usize = 32;

/// The most boxes of each fixed part of a space, one part with another: what is not decided by then is near a limit, and stays
/// open.
const BOXES: u64 = 800;

/// How long is searched where so many boxes of each part may be looked at.
pub(super) fn effort(most: u64) -> Effort {
    Effort {
        each: most.min(BOXES),
        are_dear: true,
    }
}

/// Refuses a family that is none of those that are proved.
pub(super) fn check_family(provable: &[Family], family: &Family) -> Result<(), OutOfReach> {
    if provable.contains(family) {
        Ok(())
    } else {
        Err(OutOfReach::new(
            "family",
            "this is one of the families that are proved",
        ))
    }
}

/// Works each family, on so many threads.
pub(super) fn each_proved(
    families: &[Family],
    threads: NonZeroUsize,
    proof: &(dyn Fn(&Family) -> Proof + Sync),
) -> Vec<Proof> {
    in_order(families.len(), threads, |at| proof(&families[at]))
}

/// Proves or refutes a family: by walks that are tried, else by a search.
pub(super) fn proof(
    family: &Family,
    run: &dyn Fn([f64; WIDE]) -> (Case, Found),
    search: impl FnOnce() -> Searched,
) -> Proof {
    let told = |case: &Case, found: &Found| {
        Verdict::Refuted(scenario(family.pass, case), outcome(case.way, found))
    };
    // One who stops beyond the leaf is touched as one who crosses is, which those who stop all over show seldom.
    let beyond = |mut point: [f64; WIDE]| {
        point[DEPTH] = 1.0;
        run(point)
    };
    let stops = family.habit == Habit::Stop;
    let tried = tried(run).or_else(|| stops.then(|| tried(&beyond)).flatten());
    let (verdict, boxes) = if let Some((case, found)) = tried {
        (told(&case, &found), 0)
    } else {
        let done = search();
        (done.verdict(told), done.boxes)
    };
    Proof {
        family: *family,
        verdict,
        boxes,
    }
}

/// A walk that ends badly, given its point of the unit cube: among the first of the sequence, or uphill from those of them that
/// are pressed hardest. Bad walks may be one in a hundred thousand.
fn tried(run: &dyn Fn([f64; WIDE]) -> (Case, Found)) -> Option<(Case, Found)> {
    let mut hardest = [(0.0, [0.0; WIDE]); PLACES];
    for number in (0..TRIED).take_while(|_| !stop::is_asked()) {
        let point = Draw::new(number, 1).point();
        let (case, found) = run(point);
        if found.class.is_bad() {
            return Some((case, found));
        }
        let Some((_, harm)) = found.touch else {
            continue;
        };
        if let Some(known) = hardest.get_mut(place_of(&point))
            && harm.severity > known.0
        {
            *known = (harm.severity, point);
        }
    }
    let touched = hardest.into_iter().filter(|(severity, _)| *severity > 0.0);
    let mut touched = touched.take_while(|_| !stop::is_asked());
    touched.find_map(|from| climbed(from, &[(0.0, 1.0); WIDE], &|point| Some(run(point))))
}

/// Which stretch along the leaf a walk falls in.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a coordinate is from 0 to 1, and there are few stretches"
)]
fn place_of(point: &[f64; WIDE]) -> usize {
    (point[1] * PLACES as f64) as usize
}
