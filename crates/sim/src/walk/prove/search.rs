//! The search through the space of touches: halves of halves, the worst first, in fixed parts so that any number of
//! threads gives the same answer.

use super::decide::bad;
use super::space::{Box5, Job};
use super::span::Span;
use crate::walk::evaluate::Found;
use crate::walk::path::Case;
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// How often the whole space is halved before the search begins: 64 parts.
const HALVINGS: u32 = 6;

/// The corners of each so many-th box are tried too.
const CORNERS: u64 = 8;

/// What comes of one part of the search.
#[derive(Debug, Clone)]
pub(super) struct Searched {
    /// A case that ends badly.
    pub bad: Option<(Case, Found)>,
    /// Boxes looked at.
    pub boxes: u64,
    /// Share of the whole space that is left open.
    pub open: f64,
}

/// A box that may hold a bad touch.
struct Open {
    severity: f64,
    number: u64,
    of: Box5,
}

impl PartialEq for Open {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Open {}

impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Open {
    fn cmp(&self, other: &Self) -> Ordering {
        self.severity
            .total_cmp(&other.severity)
            .then(other.number.cmp(&self.number))
    }
}

/// The fixed parts of a space.
pub(super) fn roots(job: &Job, whole: &Box5) -> Vec<Box5> {
    let mut roots = vec![*whole];
    for _ in 0..HALVINGS {
        roots = roots
            .into_iter()
            .flat_map(|of| {
                job.split(&of)
                    .map_or(vec![of], |(one, other)| vec![one, other])
            })
            .collect();
    }
    roots
}

/// Searches one part until it is decided or so many boxes have been looked at.
pub(super) fn search(job: &Job, whole: &Box5, root: &Box5, most: u64) -> Searched {
    let mut heap = BinaryHeap::new();
    let mut done = Searched {
        bad: None,
        boxes: 0,
        open: 0.0,
    };
    look(job, *root, &mut done, &mut heap);
    while let Some(open) = heap.pop() {
        if done.bad.is_some() {
            return done;
        }
        let halves = job.split(&open.of).filter(|_| done.boxes < most);
        let Some((one, other)) = halves else {
            done.open += Job::share(&open.of, whole);
            continue;
        };
        look(job, one, &mut done, &mut heap);
        look(job, other, &mut done, &mut heap);
    }
    done
}

fn look(job: &Job, of: Box5, done: &mut Searched, heap: &mut BinaryHeap<Open>) {
    done.boxes += 1;
    let Some(severity) = bad(job, &of) else {
        return;
    };
    let number = done.boxes;
    let mut note = |case, found: Found| {
        if found.class.is_bad() && done.bad.is_none() {
            done.bad = Some((case, found));
        }
    };
    job.try_point(of.map(Span::middle), &mut note);
    if number.is_multiple_of(CORNERS) {
        job.try_corners(&of, &mut note);
    }
    heap.push(Open {
        severity,
        number,
        of,
    });
}
