//! What proofs about leaves that turn or rise have in common: the first scenarios of the sequence, which may refute a
//! family at once, and the halving of boxes.

use super::prove::{Proof, Verdict, in_order};
use super::sequence::Family;
use formula::OutOfReach;
use quantity::{Quantity as _, Ratio};
use std::collections::VecDeque;
use std::num::NonZeroUsize;

/// Scenarios of the sequence that are tried before a proof begins.
const TRIED: u64 = 4096;

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

/// What a search of boxes comes to.
pub(super) struct Searched {
    /// A middle that ends badly.
    pub bad: Option<Verdict>,
    /// Boxes looked at.
    pub boxes: u64,
    /// Share of the whole that is open.
    pub open: f64,
}

/// A box of three coordinates, each from one number to another.
pub(super) type Box3 = [(f64, f64); 3];

/// Halves boxes, the largest first, until each is surely safe, or the middle of one ends badly, or so many were looked at.
pub(super) fn halve(
    whole: &Box3,
    most: u64,
    bad: &dyn Fn(&Box3) -> bool,
    tried: &dyn Fn([f64; 3]) -> Option<Verdict>,
) -> Searched {
    let mut done = Searched {
        bad: None,
        boxes: 0,
        open: 0.0,
    };
    let mut waiting = VecDeque::from([(*whole, 1.0)]);
    while let Some((of, share)) = waiting.pop_front() {
        if done.boxes >= most {
            done.open += share;
            continue;
        }
        done.boxes += 1;
        if !bad(&of) {
            continue;
        }
        done.bad = tried(of.map(|(low, high)| 0.5 * (low + high)));
        if done.bad.is_some() {
            return done;
        }
        // An angle moves a body by less than its own size.
        let size = |at: usize| (of[at].1 - of[at].0) * if at == 2 { 0.2 } else { 1.0 };
        let widest = (1..3).fold(
            0,
            |known, at| if size(at) > size(known) { at } else { known },
        );
        if size(widest) < 1e-6 {
            done.open += share;
            continue;
        }
        let (low, high) = of[widest];
        let middle = 0.5 * (low + high);
        for half in [(low, middle), (middle, high)] {
            let mut part = of;
            part[widest] = half;
            waiting.push_back((part, 0.5 * share));
        }
    }
    done
}

/// Joins the searches of the parts of a family.
pub(super) fn joined(family: &Family, parts: Vec<Searched>) -> Proof {
    let count = f64::from(u32::try_from(parts.len()).unwrap_or(u32::MAX)).max(1.0);
    let (mut boxes, mut open) = (0, 0.0);
    for part in parts {
        boxes += part.boxes;
        open += part.open;
        if let Some(verdict) = part.bad {
            return Proof {
                family: *family,
                verdict,
                boxes,
            };
        }
    }
    let verdict = if open > 0.0 {
        Verdict::Undecided(Ratio::from_base(open / count))
    } else {
        Verdict::Proved
    };
    Proof {
        family: *family,
        verdict,
        boxes,
    }
}

/// A family that is refuted by one of the first numbers, or open as a whole.
pub(super) fn open(family: &Family, tried: &dyn Fn(u64) -> Option<Verdict>) -> Proof {
    Proof {
        family: *family,
        verdict: (0..TRIED)
            .find_map(tried)
            .unwrap_or(Verdict::Undecided(Ratio::from_base(1.0))),
        boxes: 0,
    }
}
