//! What a proof asks of a leaf that turns or rises: whether it may touch a cylinder that is known within bounds.

use super::span::Span;
use crate::walk::evaluate::Found;
use crate::walk::harm::Spring;
use crate::walk::path::Case;
use crate::walk::swing::Press;

/// A cylinder of the body, where it may be in the plan.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Spot {
    pub x: Span,
    pub y: Span,
}

/// What is touched, as far as it is known.
#[derive(Clone, Copy)]
pub(in super::super) struct Touched<'a> {
    pub body: usize,
    pub part: usize,
    /// Every cylinder of the body.
    pub spots: &'a [Spot],
    /// How fast it goes along x and along y.
    pub goes: (Span, Span),
    /// Place and speed of the leaf.
    pub place: Span,
    pub speed: Span,
    /// The leaf goes on its way, not back.
    pub onward: bool,
    /// When the leaves are told to stop, in the time of the pass: at the earliest, at the latest.
    pub told: (f64, f64),
}

/// What a touch may meet.
pub(in super::super) struct May<'a> {
    /// The springs that it may meet, each over its own way, and what surely feels it, as the free end goes.
    pub springs: Vec<Spring>,
    pub after: Vec<(f64, f64)>,
    /// Least and greatest share of the way of the end.
    pub share: (f64, f64),
    /// Least gap and least room.
    pub gap: f64,
    pub room: f64,
    /// How far the leaf gets beyond the touch, wherever it goes.
    pub sinks: f64,
    /// How hard the leaf can press, and least and greatest distance from where it turns.
    pub press: &'a Press,
    pub far: (f64, f64),
}

/// A leaf as a shape that moves.
pub(in super::super) trait Sweeps: Sync {
    /// What a touch may meet, one way or another; nothing where none can be, or none that is the leaf's own.
    fn may(&self, of: &Touched) -> Vec<May<'_>>;
    /// Whether a leaf at a place surely is in a body whose cylinders are there.
    fn is_in(&self, body: usize, spots: &[Spot], place: Span) -> bool;
    /// Least and greatest x, least and greatest y at which a cylinder may be touched.
    fn reach(&self, body: usize, part: usize) -> (Span, Span);
    /// Where the middle of a body that is sampled crosses the gate line.
    fn crosses(&self) -> Span;
    /// What comes of a case.
    fn run(&self, case: &Case) -> Found;
}
