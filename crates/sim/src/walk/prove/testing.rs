//! Trees of boxes that tests ask, and proofs that are broken on purpose.

use super::heard::Heard;
use super::place::Job;
use super::search::Space;
use super::span::Span;
use super::sweeps::Sweeps;
use super::tests::MUTATED;
use crate::walk::demo::{base, full, spot};
use crate::walk::harm::{Harm, Struck};
use crate::walk::lane::Walk;
use crate::walk::path::Case;
use crate::walk::{Direction, Scanner};
use formula::OutOfReach;
use std::sync::atomic::Ordering;

/// The boxes of a search down to a depth: a safe one, or one with halves.
pub(in super::super) enum Tree<const N: usize> {
    Safe,
    Open,
    Halves(usize, f64, Box<(Self, Self)>),
}

impl<const N: usize> Tree<N> {
    pub(in super::super) fn grow(space: &impl Space<N>, of: &[Span; N], depth: u32) -> Self {
        if space.bad(of).is_none() {
            return Self::Safe;
        }
        let Some((one, other)) = space.split(of).filter(|_| depth > 0) else {
            return Self::Open;
        };
        let at = (0..N).find(|&at| one[at] != other[at]).unwrap_or(0);
        let halves = (
            Self::grow(space, &one, depth - 1),
            Self::grow(space, &other, depth - 1),
        );
        Self::Halves(at, one[at].hi, Box::new(halves))
    }

    pub(in super::super) fn is_safe(&self, point: [f64; N]) -> bool {
        match self {
            Self::Safe => true,
            Self::Open => false,
            Self::Halves(at, middle, halves) => {
                let low = point[*at] < *middle;
                let half = if low { &halves.0 } else { &halves.1 };
                half.is_safe(point)
            }
        }
    }
}

/// Holds a bad touch against the least boxes about it: one of them is at least as bad.
pub(in super::super) fn assert_bounded<S: Sweeps>(
    jobs: &[Job<'_, S>],
    case: &Case,
    (struck, harm): &(Struck, Harm),
) {
    let of_part = jobs.iter().filter(|job| job.part == struck.part);
    let points = of_part.filter_map(|job| Some((job, job.point(case, struck)?)));
    // Which leaf touches is not told, and who has just halted is looked at as one who stands there too.
    let bounds = points.filter_map(|(job, point)| job.bad(&about(job, point)));
    let bound = bounds.reduce(f64::max);
    assert!(
        bound.is_some_and(|bound| bound >= harm.severity * (1.0 - 1e-9)),
        "{bound:?} of {harm:?} in {case:?}"
    );
}

/// The least box about a point of a space.
fn about<const N: usize>(space: &impl Space<N>, point: [f64; N]) -> [Span; N] {
    let mut of = space.whole();
    for (span, at) in of.iter_mut().zip(point) {
        let wide = if span.width() > 0.0 { 1e-9 } else { 0.0 };
        *span = Span::new(at - wide, at + wide);
    }
    of
}

/// A gate with a field whose sides lie aslant.
pub(super) fn aslant() -> Result<Walk, OutOfReach> {
    let mut world = full();
    let corners = [(0.0, -1.0), (4.0, -1.0), (3.0, 1.2), (0.5, 0.8)];
    world.scanners[0].corners = corners.map(|(x, y)| spot(x, y)).to_vec();
    world.lower()
}

/// Breaks the proofs of this process: 1 forgets touches that no device reports, 2 those that one does, 3 rounds the
/// leaf's least place up.
pub(in super::super) fn mutate(kind: u8) {
    MUTATED.store(kind, Ordering::Relaxed);
}

type Worlds = [Option<(Heard, Span)>; 2];

/// The worlds that a broken proof still looks at.
pub(super) fn left([nothing, something]: Worlds) -> Worlds {
    match MUTATED.load(Ordering::Relaxed) {
        1 => [None, something],
        2 => [nothing, None],
        _ => [nothing, something],
    }
}

/// A field that sees everybody near the gate, too late for any of them.
pub(in super::super) fn late_field() -> Scanner {
    let corners = [(-5.0, -5.0), (8.0, -5.0), (8.0, 8.0), (-5.0, 8.0)];
    Scanner {
        guards: vec![Direction::Opening, Direction::Closing],
        corners: corners.map(|(x, y)| spot(x, y)).to_vec(),
        bottom: base(0.1),
        top: base(0.1),
        smallest_object: base(0.0),
        response: base(6.0),
    }
}
