//! Marks: what is finally printed, in paper millimeters, from which every file format is written.

use crate::flat::{Bounds, Segment, Spot};
use crate::patch::Patch;
use crate::{Anchor, Ink, LinePattern};

/// One thing printed on the paper.
#[derive(Debug, Clone)]
pub(crate) enum Mark {
    /// Straight lines from spot to spot.
    Path {
        spots: Vec<Spot>,
        closed: bool,
        pen: Option<Pen>,
        fill: Option<Ink>,
    },
    /// A circle.
    Circle {
        center: Spot,
        radius: f64,
        pen: Option<Pen>,
        fill: Option<Ink>,
    },
    /// A part of a circle, counter-clockwise from `start` by `sweep` (rad).
    Arc {
        center: Spot,
        radius: f64,
        start: f64,
        sweep: f64,
        pen: Pen,
    },
    /// One line of words.
    Letters(Letter),
    /// Paper left clear under words.
    Ground(Patch),
    /// Marks that belong together, with what they are in plain words.
    Group {
        class: &'static str,
        title: Option<String>,
        marks: Vec<Mark>,
    },
    /// One stretch of a dimension, as it is drawn and as it was measured.
    Measured(Measured),
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pen {
    /// Width (mm).
    pub(crate) width: f64,
    /// How it is broken.
    pub(crate) pattern: LinePattern,
    /// Its ink.
    pub(crate) ink: Ink,
}

impl Pen {
    /// An unbroken black line of this width (mm).
    pub(crate) const fn black(width: f64) -> Self {
        Self {
            width,
            pattern: LinePattern::Unbroken,
            ink: Ink::Black,
        }
    }
}

/// Whether letters are plain or strong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Slant {
    /// Ordinary weight.
    Plain,
    /// Semi-bold.
    Strong,
}

/// One line of words on its base line.
#[derive(Debug, Clone)]
pub(crate) struct Letter {
    /// Where its anchor stands on the base line.
    pub(crate) at: Spot,
    /// The words.
    pub(crate) words: String,
    /// Height of capitals (mm).
    pub(crate) height: f64,
    /// Which part stands at the spot.
    pub(crate) anchor: Anchor,
    /// Direction of reading (rad).
    pub(crate) angle: f64,
    /// Its ink.
    pub(crate) ink: Ink,
    /// How strong it is.
    pub(crate) slant: Slant,
}

/// One stretch of a dimension.
#[derive(Debug, Clone)]
pub(crate) struct Measured {
    /// The measured points.
    pub(crate) from: Spot,
    /// The measured points.
    pub(crate) to: Spot,
    /// Where the dimension line meets the second extension line.
    pub(crate) line: Spot,
    /// Direction of measuring (rad).
    pub(crate) angle: f64,
    /// Whether it measures straight from point to point.
    pub(crate) aligned: bool,
    /// Center of its words.
    pub(crate) middle: Spot,
    /// The words shown.
    pub(crate) words: String,
    /// How it is drawn.
    pub(crate) marks: Vec<Mark>,
}

impl Mark {
    /// A straight line.
    pub(crate) fn line(from: Spot, to: Spot, pen: Pen) -> Mark {
        Mark::Path {
            spots: vec![from, to],
            closed: false,
            pen: Some(pen),
            fill: None,
        }
    }

    /// A filled shape without outline.
    pub(crate) fn solid(spots: Vec<Spot>, ink: Ink) -> Mark {
        Mark::Path {
            spots,
            closed: true,
            pen: None,
            fill: Some(ink),
        }
    }

    /// Grows bounds to hold this mark.
    pub(crate) fn bound(&self, bounds: &mut Bounds) {
        match self {
            Mark::Path { spots, .. } => spots.iter().for_each(|spot| bounds.take(*spot)),
            Mark::Circle { center, radius, .. } => {
                bounds.take(center.plus(Spot::new(1.0, 1.0), *radius));
                bounds.take(center.plus(Spot::new(1.0, 1.0), -*radius));
            }
            Mark::Arc { .. } => self.segments().iter().for_each(|line| {
                bounds.take(line.0);
                bounds.take(line.1);
            }),
            Mark::Ground(patch) => patch
                .corners()
                .iter()
                .for_each(|corner| bounds.take(*corner)),
            Mark::Letters(letter) => bounds.take(letter.at),
            Mark::Group { marks, .. } | Mark::Measured(Measured { marks, .. }) => {
                for mark in marks {
                    mark.bound(bounds);
                }
            }
        }
    }

    /// The drawn lines, curves as short straight ones, for keeping words off them.
    pub(crate) fn segments(&self) -> Vec<Segment> {
        match self {
            Mark::Path {
                spots,
                closed,
                pen: Some(_),
                ..
            } => {
                let mut lines: Vec<Segment> = spots.windows(2).filter_map(pair).collect();
                if let (true, Some(first), Some(last)) = (*closed, spots.first(), spots.last()) {
                    lines.push((*last, *first));
                }
                lines
            }
            Mark::Circle {
                center,
                radius,
                pen: Some(_),
                ..
            } => curve(*center, *radius, 0.05, std::f64::consts::TAU),
            Mark::Arc {
                center,
                radius,
                start,
                sweep,
                ..
            } => curve(*center, *radius, *start, *sweep),
            Mark::Group { marks, .. } | Mark::Measured(Measured { marks, .. }) => {
                marks.iter().flat_map(Mark::segments).collect()
            }
            _ => Vec::new(),
        }
    }
}

/// A window of two spots as a line.
fn pair(spots: &[Spot]) -> Option<Segment> {
    Some((*spots.first()?, *spots.get(1)?))
}

/// A part of a circle as straight lines.
fn curve(center: Spot, radius: f64, start: f64, sweep: f64) -> Vec<Segment> {
    let spot = |step: u32| center.plus(Spot::unit(start + sweep * f64::from(step) / 48.0), radius);
    (0..48).map(|step| (spot(step), spot(step + 1))).collect()
}
