//! What proofs about leaves that turn or rise have in common: the first scenarios of the sequence, which may refute a
//! family at once.

use super::prove::{Proof, Verdict, in_order};
use super::sequence::Family;
use formula::OutOfReach;
use quantity::{Quantity as _, Ratio};
use std::num::NonZeroUsize;

/// Scenarios of the sequence that are tried before a proof begins.
const TRIED: u64 = 4096;

/// The most boxes of each fixed part of a space: what is not decided by then is near a limit, and stays open.
pub(super) const BOXES: u64 = 100;

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
