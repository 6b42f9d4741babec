//! The search through the space of touches: halves of halves, the worst first, in fixed parts so that any number of
//! threads gives the same answer.

use super::in_order;
use super::span::Span;
use crate::walk::climb::climbed;
use crate::walk::evaluate::Found;
use crate::walk::path::Case;
use crate::walk::stop;
use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::num::NonZeroUsize;
use std::sync::atomic::{self, AtomicUsize};
use std::sync::{Mutex, PoisonError};

/// How often the whole space is halved before the search begins: 64 parts.
const HALVINGS: u32 = 6;

/// The corners of each so many-th box are tried too.
const CORNERS: u64 = 8;
/// Boxes of each part, at most, after which points are tried for the first time.
const EARLY: u64 = 100;
/// Boxes that are dear, at most.
const MOST: u64 = 400_000;
/// A part that may look at no more boxes than this is not searched again.
const LEAST_SHARE: u64 = 16;
/// Points that are strewn over all boxes that stay open: at least one in each, and so many at most.
const STREWN: u64 = 131_072;
const DENSE: u64 = 64;
/// From the hardest touches of so many parts that stay open the way leads uphill.
const CLIMBS: usize = 96;

/// A space of touches with so many coordinates.
pub(in super::super) trait Space<const N: usize>: Sync {
    /// The whole of it.
    fn whole(&self) -> [Span; N];
    /// How bad a touch in a box may be, as a share of a limit; nothing where no touch there is beyond a limit.
    fn bad(&self, of: &[Span; N]) -> Option<f64>;
    /// How much a size of each coordinate matters, in meters.
    fn weights(&self) -> [f64; N];
    /// The cases whose first touch may be a point.
    fn try_at(&self, point: [f64; N], note: &mut dyn FnMut(Case, Found));

    /// Cases whose first touch may be in a box: in its middle, now and then in its corners too.
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

/// How long is searched.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Effort {
    /// Boxes of each fixed part, at most.
    pub each: u64,
    /// They take long: what parts that are decided sooner leave of theirs goes to those that stay open, and points are strewn
    /// over boxes that stay open in the end.
    pub are_dear: bool,
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

/// Searches spaces one after another, each in its fixed parts.
#[allow(
    clippy::cast_precision_loss,
    reason = "a body has twelve cylinders at most, each with a few kinds of touches"
)]
pub(in super::super) fn search_all<S: Space<N>, const N: usize>(
    spaces: &[S],
    effort: Effort,
    threads: NonZeroUsize,
) -> Searched {
    let mut all = Searched {
        bad: None,
        boxes: 0,
        open: 0.0,
    };
    let mut open: Vec<Part<'_, S, N>> = spaces.iter().flat_map(Part::of).collect();
    if effort.are_dear {
        let parts = open.len() as u64;
        // What ends badly is often found early.
        for each in [effort.each.min(EARLY), effort.each] {
            open = share_out(open, (each * parts).min(MOST), threads, &mut all);
            if all.bad.is_some() || effort.each == 0 {
                break;
            }
            open = try_harder(open, threads, &mut all);
            if all.bad.is_some() || effort.each <= EARLY {
                break;
            }
        }
    } else {
        open = go_on(open, threads, &mut all, |part| {
            part.search(effort.each);
            part.close();
        });
    }
    if all.bad.is_none() {
        open.iter_mut().for_each(Part::close);
        all.open = open.iter().map(|part| part.open).sum::<f64>() / spaces.len() as f64;
    }
    all
}

/// Searches until so many boxes have been looked at: what parts leave that are decided sooner goes to the others.
fn share_out<'s, S: Space<N>, const N: usize>(
    mut open: Vec<Part<'s, S, N>>,
    most: u64,
    threads: NonZeroUsize,
    all: &mut Searched,
) -> Vec<Part<'s, S, N>> {
    loop {
        let before = all.boxes;
        let left = most.saturating_sub(before);
        let each = left.checked_div(open.len() as u64).unwrap_or_default();
        open = go_on(open, threads, all, |part| part.search(each));
        open.retain(|part| !part.heap.is_empty());
        if all.bad.is_some() || all.boxes == before || each < LEAST_SHARE {
            return open;
        }
    }
}

/// Tries points all over the boxes that stay open, and goes uphill from the hardest touches.
fn try_harder<'s, S: Space<N>, const N: usize>(
    open: Vec<Part<'s, S, N>>,
    threads: NonZeroUsize,
    all: &mut Searched,
) -> Vec<Part<'s, S, N>> {
    let boxes: usize = open.iter().map(|part| part.heap.len()).sum();
    let points = STREWN.checked_div(boxes as u64).unwrap_or_default();
    let strew = |part: &mut Part<'_, S, N>| part.strew(points.clamp(1, DENSE));
    let open = go_on(open, threads, all, strew);
    if all.bad.is_none() {
        all.bad = uphill(&open);
    }
    open
}

/// Does something to each part. One after a part that is refuted is left out: the first that is refuted is what counts.
fn go_on<'s, S: Space<N>, const N: usize>(
    parts: Vec<Part<'s, S, N>>,
    threads: NonZeroUsize,
    all: &mut Searched,
    act: impl Fn(&mut Part<'s, S, N>) + Sync,
) -> Vec<Part<'s, S, N>> {
    let refuted = AtomicUsize::new(usize::MAX);
    let parts: Vec<Mutex<Part<'s, S, N>>> = parts.into_iter().map(Mutex::new).collect();
    let done = in_order(parts.len(), threads, |at| {
        if at > refuted.load(atomic::Ordering::Relaxed) {
            return None;
        }
        let mut part = parts[at].lock().unwrap_or_else(PoisonError::into_inner);
        let before = part.boxes;
        act(&mut part);
        if part.bad.is_some() {
            refuted.fetch_min(at, atomic::Ordering::Relaxed);
        }
        Some((part.boxes - before, part.bad))
    });
    for (boxes, bad) in done.into_iter().map_while(|done| done) {
        all.boxes += boxes;
        if bad.is_some() {
            all.bad = bad;
            break;
        }
    }
    let parts = parts.into_iter();
    parts
        .map(|part| part.into_inner().unwrap_or_else(PoisonError::into_inner))
        .collect()
}

/// A case that ends badly, uphill from the hardest touches of the parts.
fn uphill<S: Space<N>, const N: usize>(parts: &[Part<'_, S, N>]) -> Option<(Case, Found)> {
    let mut touched: Vec<_> = parts.iter().filter(|part| part.hardest.0 > 0.0).collect();
    touched.sort_by(|one, other| other.hardest.0.total_cmp(&one.hardest.0));
    let hardest = touched.into_iter().take(CLIMBS);
    let mut hardest = hardest.take_while(|_| !stop::is_asked());
    hardest.find_map(|part| {
        let ranges = part.whole.map(|span| (span.lo, span.hi));
        climbed(part.hardest, &ranges, &|point| {
            let mut tried = None;
            let mut note = |case, found| tried = Some((case, found));
            part.space.try_at(point, &mut note);
            tried
        })
    })
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

/// The root of x^(N + 1) = x + 1, whose powers step evenly through a cube of N edges (M. Roberts, The unreasonable
/// effectiveness of quasirandom sequences, 2018).
#[allow(
    clippy::cast_precision_loss,
    reason = "a space has six coordinates at most"
)]
fn ratio(edges: usize) -> f64 {
    let power = 1.0 / (edges as f64 + 1.0);
    (0..32).fold(2.0_f64, |ratio, _| (1.0 + ratio).powf(power))
}

/// A fixed part of a space, as far as it was searched.
struct Part<'s, S, const N: usize> {
    space: &'s S,
    whole: [Span; N],
    /// Where nothing was looked at yet.
    root: Option<[Span; N]>,
    /// Boxes that may hold a bad touch.
    heap: BinaryHeap<Open<N>>,
    /// Boxes looked at.
    boxes: u64,
    /// A case that ends badly.
    bad: Option<(Case, Found)>,
    /// Share of the whole space that stays open.
    open: f64,
    /// How hard the hardest touch is that was tried, and its point.
    hardest: (f64, [f64; N]),
}

impl<'s, S: Space<N>, const N: usize> Part<'s, S, N> {
    /// The fixed parts of a space.
    fn of(space: &'s S) -> Vec<Self> {
        let whole = space.whole();
        let one = |root: [Span; N]| Self {
            space,
            whole,
            root: Some(root),
            heap: BinaryHeap::new(),
            boxes: 0,
            bad: None,
            open: 0.0,
            hardest: (0.0, root.map(Span::middle)),
        };
        roots(space, &whole).into_iter().map(one).collect()
    }

    /// Goes on until it is decided or so many boxes more have been looked at.
    fn search(&mut self, more: u64) {
        let until = self.boxes + more;
        if let Some(root) = self.root.take() {
            self.look(root);
        }
        let mut kept = Vec::new();
        while self.bad.is_none() && self.boxes < until && !stop::is_asked() {
            let Some(open) = self.heap.pop() else {
                break;
            };
            match self.space.split(&open.of) {
                Some((one, other)) => {
                    self.look(one);
                    self.look(other);
                }
                None => kept.push(open),
            }
        }
        self.heap.extend(kept);
    }

    /// Looks at a box; one that may hold a bad touch waits.
    fn look(&mut self, of: [Span; N]) {
        self.boxes += 1;
        let Some(severity) = self.space.bad(&of) else {
            return;
        };
        let (space, number, middle) = (self.space, self.boxes, of.map(Span::middle));
        space.try_in(&of, number.is_multiple_of(CORNERS), &mut |case, found| {
            self.note(middle, case, found);
        });
        self.heap.push(Open {
            severity,
            number,
            of,
        });
    }

    /// Tries so many points in each box that stays open.
    #[allow(clippy::cast_precision_loss, reason = "a whole number far below 2^53")]
    fn strew(&mut self, each: u64) {
        let (space, ratio) = (self.space, ratio(N));
        let boxes: Vec<(u64, [Span; N])> = self
            .heap
            .iter()
            .map(|open| (open.number, open.of))
            .collect();
        let going_on = boxes.into_iter().take_while(|_| !stop::is_asked());
        for (number, of) in going_on {
            for number in number * each..(number + 1) * each {
                let mut step = 1.0;
                let point = of.map(|span| {
                    step /= ratio;
                    span.lo + (number as f64 * step).fract() * span.width()
                });
                space.try_at(point, &mut |case, found| self.note(point, case, found));
            }
        }
    }

    fn note(&mut self, point: [f64; N], case: Case, found: Found) {
        if let Some((_, harm)) = &found.touch
            && harm.severity > self.hardest.0
        {
            self.hardest = (harm.severity, point);
        }
        if found.class.is_bad() && self.bad.is_none() {
            self.bad = Some((case, found));
        }
    }

    /// Ends the search: what is left of the part stays open.
    fn close(&mut self) {
        let left = std::mem::take(&mut self.heap).into_sorted_vec();
        let left = self.root.iter().chain(left.iter().map(|open| &open.of));
        self.open += left.map(|of| share(of, &self.whole)).sum::<f64>();
    }
}
