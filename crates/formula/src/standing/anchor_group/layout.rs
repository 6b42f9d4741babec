//! Rectangles of anchors that break the concrete together.

use super::set::{AnchorSet, Pattern};
use quantity::{Force, Length};

/// Anchors in one direction: how many, how far apart, and the distances from the outermost to the edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Anchors.
    pub count: u32,
    /// Their spacing.
    pub spacing: Length,
    /// Distances to the edges at both ends.
    pub edges: [Length; 2],
}

impl Line {
    /// The nearer edge comes first: loads may act either way, and the pull is worst on that side.
    pub(super) fn near_first(self) -> Self {
        let [a, b] = self.edges;
        let edges = if a <= b { [a, b] } else { [b, a] };
        Self { edges, ..self }
    }

    /// Its outermost anchors near the first edge.
    pub(super) fn outermost(self, count: u32) -> Self {
        let left_out = self.spacing * f64::from(self.count.saturating_sub(count));
        let [near, far] = self.edges;
        Self {
            count,
            edges: [near, far + left_out],
            ..self
        }
    }

    /// They stand too far apart to act together.
    pub(super) fn is_apart(&self, farthest: Length) -> bool {
        self.count > 1 && self.spacing > farthest
    }
}

/// A rectangle of anchors that are pulled together.
#[derive(Debug, Clone, Copy)]
pub struct Rectangle {
    /// Along the gate line and across it.
    pub lines: [Line; 2],
    /// Eccentricity of the pull in both directions.
    pub eccentricity: [Length; 2],
    /// Their pull in all.
    pub pull: Force,
}

impl Rectangle {
    /// The part of it that acts together where anchors farther apart than a distance act alone.
    pub(super) fn together_within(self, farthest: Length, greatest: Force) -> Self {
        let mut part = self;
        for way in 0..2 {
            if part.lines[way].is_apart(farthest) {
                part.lines[way] = part.lines[way].outermost(1);
                part.eccentricity[way] = Length::default();
                let most = greatest * f64::from(part.lines[1 - way].count);
                part.pull = if most < part.pull { most } else { part.pull };
            }
        }
        part
    }

    /// Anchors in it.
    pub(super) fn count(&self) -> u32 {
        self.lines[0].count * self.lines[1].count
    }
}

/// The whole set as lines along and across the gate line, edges in the order of the site.
///
/// A circle counts as four anchors on it, three as a square within: their edges are those of the outermost points.
pub(super) fn lines(set: &AnchorSet) -> [Line; 2] {
    let [latch, far, outside, inside] = set.concrete.edges;
    let (along, across) = match set.pattern {
        Pattern::Rows {
            in_row,
            spacing,
            rows,
            row_spacing,
        } => ((in_row, spacing), (rows, row_spacing)),
        Pattern::Circle { count, diameter } => {
            let side = if count > 3 {
                diameter * std::f64::consts::FRAC_1_SQRT_2
            } else {
                diameter / 2.0
            };
            ((2, side), (2, side))
        }
    };
    let line = |(count, spacing): (u32, Length), edges| Line {
        count,
        spacing,
        edges,
    };
    [line(along, [latch, far]), line(across, [outside, inside])]
}

/// The whole set, pulled at an eccentricity from its middle.
pub(super) fn whole(set: &AnchorSet, pull: Force, eccentricity: [Length; 2]) -> Rectangle {
    Rectangle {
        lines: lines(set).map(Line::near_first),
        eccentricity,
        pull,
    }
}

/// The outermost lines of the set in one direction.
pub(super) fn outermost(
    set: &AnchorSet,
    way: usize,
    count: u32,
    pull: Force,
    eccentricity: [Length; 2],
) -> Rectangle {
    let mut rectangle = whole(set, pull, eccentricity);
    if let Some(line) = rectangle.lines.get_mut(way) {
        *line = line.outermost(count);
    }
    rectangle
}

/// Anchors that a rectangle of [`lines`] stands for, of those there are.
pub(super) fn share_of(set: &AnchorSet, count: u32) -> f64 {
    let counted = match set.pattern {
        Pattern::Rows { in_row, rows, .. } => in_row * rows,
        Pattern::Circle { count, .. } => count.min(4),
    };
    f64::from(count.min(counted)) / f64::from(counted.max(1))
}
