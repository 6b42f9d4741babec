//! The search through the space of touches: halves of halves, the worst first, in fixed parts so that any number of
//! threads gives the same answer.

use super::in_order;
use super::span::Span;
use crate::walk::evaluate::Found;
use crate::walk::path::Case;
use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::num::NonZeroUsize;
use std::sync::atomic::{self, AtomicUsize};

/// How often the whole space is halved before the search begins: 64 parts.
const HALVINGS: u32 = 6;

/// The corners of each so many-th box are tried too.
const CORNERS: u64 = 8;

/// A space of touches with so many coordinates.
pub(in super::super) trait Space<const N: usize>: Sync {
    /// The whole of it.
    fn whole(&self) -> [Span; N];
    /// How bad a touch in a box may be, as a share of a limit; nothing where no touch there is beyond a limit.
    fn bad(&self, of: &[Span; N]) -> Option<f64>;
    /// How much a size of each coordinate matters, in meters.
    fn weights(&self) -> [f64; N];
    /// The cases whose first touch may be in a box: in its middle, and in its corners too.
    fn try_in(&self, of: &[Span; N], corners: bool, note: &mut dyn FnMut(Case, Found));

    /// Halves of a box along the coordinate that matters most.
    fn split(&self, of: &[Span; N]) -> Option<([Span; N], [Span; N])> {
        let weights = self.weights();
        let size = |at: &usize| of[*at].width() * weights[*at];
        let at = (0..N).max_by(|a, b| size(a).total_cmp(&size(b)))?;
        if size(&at) < 1e-9 {
            return None;
        }
        let (low, high) = of[at].halves();
        let (mut one, mut other) = (*of, *of);
        one[at] = low;
        other[at] = high;
        Some((one, other))
    }
}

/// Share of the whole space that a box is.
fn share<const N: usize>(of: &[Span; N], whole: &[Span; N]) -> f64 {
    of.iter()
        .zip(whole)
        .filter(|(_, whole)| whole.width() > 0.0)
        .map(|(of, whole)| of.width() / whole.width())
        .product()
}

/// What comes of a search.
#[derive(Debug, Clone)]
pub(in super::super) struct Searched {
    /// A case that ends badly.
    pub bad: Option<(Case, Found)>,
    /// Boxes looked at.
    pub boxes: u64,
    /// Share of the whole space that is left open.
    pub open: f64,
}

/// A box that may hold a bad touch.
struct Open<const N: usize> {
    severity: f64,
    number: u64,
    of: [Span; N],
}

impl<const N: usize> PartialEq for Open<N> {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl<const N: usize> Eq for Open<N> {}

impl<const N: usize> PartialOrd for Open<N> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl<const N: usize> Ord for Open<N> {
    fn cmp(&self, other: &Self) -> Ordering {
        self.severity
            .total_cmp(&other.severity)
            .then(other.number.cmp(&self.number))
    }
}

/// One part of a space.
struct Task<'a, S, const N: usize> {
    space: &'a S,
    whole: [Span; N],
    root: [Span; N],
}

/// Searches spaces one after another, each in its fixed parts, looking at so many boxes of a part at most.
#[allow(
    clippy::cast_precision_loss,
    reason = "a body has twelve cylinders at most, each with a few kinds of touches"
)]
pub(in super::super) fn search_all<S: Space<N>, const N: usize>(
    spaces: &[S],
    most: u64,
    threads: NonZeroUsize,
) -> Searched {
    let mut tasks = Vec::new();
    for space in spaces {
        let whole = space.whole();
        tasks.extend(
            roots(space, &whole)
                .into_iter()
                .map(|root| Task { space, whole, root }),
        );
    }
    // A part after one that is refuted need not be searched: the first that is refuted is what counts.
    let refuted = AtomicUsize::new(usize::MAX);
    let results = in_order(tasks.len(), threads, |at| {
        if at > refuted.load(atomic::Ordering::Relaxed) {
            return None;
        }
        let done = search(&tasks[at], most);
        if done.bad.is_some() {
            refuted.fetch_min(at, atomic::Ordering::Relaxed);
        }
        Some(done)
    });
    let mut all = Searched {
        bad: None,
        boxes: 0,
        open: 0.0,
    };
    for done in results.into_iter().map_while(|done| done) {
        all.boxes += done.boxes;
        all.open += done.open / spaces.len() as f64;
        if done.bad.is_some() {
            all.bad = done.bad;
            return all;
        }
    }
    all
}

/// The fixed parts of a space.
fn roots<S: Space<N>, const N: usize>(space: &S, whole: &[Span; N]) -> Vec<[Span; N]> {
    let mut roots = vec![*whole];
    for _ in 0..HALVINGS {
        roots = roots
            .into_iter()
            .flat_map(|of| {
                space
                    .split(&of)
                    .map_or(vec![of], |(one, other)| vec![one, other])
            })
            .collect();
    }
    roots
}

/// Searches one part until it is decided or so many boxes have been looked at.
fn search<S: Space<N>, const N: usize>(task: &Task<S, N>, most: u64) -> Searched {
    let mut heap = BinaryHeap::new();
    let mut done = Searched {
        bad: None,
        boxes: 0,
        open: 0.0,
    };
    look(task.space, task.root, &mut done, &mut heap);
    while let Some(open) = heap.pop() {
        if done.bad.is_some() {
            return done;
        }
        let halves = task.space.split(&open.of).filter(|_| done.boxes < most);
        let Some((one, other)) = halves else {
            done.open += share(&open.of, &task.whole);
            continue;
        };
        look(task.space, one, &mut done, &mut heap);
        look(task.space, other, &mut done, &mut heap);
    }
    done
}

fn look<S: Space<N>, const N: usize>(
    space: &S,
    of: [Span; N],
    done: &mut Searched,
    heap: &mut BinaryHeap<Open<N>>,
) {
    done.boxes += 1;
    let Some(severity) = space.bad(&of) else {
        return;
    };
    let number = done.boxes;
    let mut note = |case, found: Found| {
        if found.class.is_bad() && done.bad.is_none() {
            done.bad = Some((case, found));
        }
    };
    space.try_in(&of, number.is_multiple_of(CORNERS), &mut note);
    heap.push(Open {
        severity,
        number,
        of,
    });
}
