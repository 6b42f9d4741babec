//! Remarks: whole sentences along the lower edge of the drawing, numbered, in as many columns as their number asks for.

use super::frame::caption;
use super::typist::{PLAIN, Typist};
use crate::Scene;
use crate::flat::{Bounds, Spot};
use crate::mark::Mark;

/// Below the upper edge of the cell, for its caption (mm).
const HEAD: f64 = 5.4;
/// Between two remarks, and below the last (mm).
const GAP: f64 = 0.8;
/// Narrowest column (mm).
const COLUMN: f64 = 120.0;

/// The remarks of a scene, set in columns from a height downward.
#[derive(Debug, Clone)]
pub(crate) struct Remarks {
    columns: Vec<Typist>,
    left: f64,
    top: f64,
}

impl Remarks {
    /// Sets the remarks of a scene across a border, downward from zero.
    pub(crate) fn new(scene: &Scene, border: &Bounds) -> Self {
        Self::set(scene, border, 0.0)
    }

    /// The same remarks downward from a height.
    fn set(scene: &Scene, border: &Bounds, top: f64) -> Self {
        let left = border.low.x;
        let mut columns = Vec::new();
        let (count, each) = shared(scene.remarks.len(), border.width() - 4.0);
        let per_column = scene.remarks.len().div_ceil(count).max(1);
        let mut column_left = left + 2.0;
        let mut number = 0_usize;
        for chunk in scene.remarks.chunks(per_column) {
            let mut typist = Typist::new(column_left, top - HEAD, each - 4.0);
            for remark in chunk {
                number += 1;
                typist.set(&format!("{number}. {remark}"), PLAIN);
                typist.skip(GAP);
            }
            columns.push(typist);
            column_left += each;
        }
        Self { columns, left, top }
    }

    /// How high the remarks are (mm); zero where there are none.
    pub(crate) fn height(&self) -> f64 {
        let lowest = self.columns.iter().map(|column| self.top - column.top);
        lowest.fold(0.0, f64::max)
    }

    /// The remarks in the cell under this height.
    pub(crate) fn marks(scene: &Scene, border: &Bounds, top: f64) -> Vec<Mark> {
        let set = Self::set(scene, border, top);
        if set.columns.is_empty() {
            return Vec::new();
        }
        let mut marks = caption("Notes", set.left, top).marks;
        marks.extend(set.columns.into_iter().flat_map(|column| column.marks));
        marks
    }

    /// The cell that the remarks take above a height; without height where there are none.
    pub(crate) fn cell(&self, border: &Bounds, foot: f64) -> Bounds {
        Bounds::new(
            Spot::new(border.low.x, foot),
            Spot::new(border.high.x, foot + self.height()),
        )
    }
}

/// Number and width of the columns that so many remarks share.
fn shared(remarks: usize, wide: f64) -> (usize, f64) {
    let mut count = 1_u32;
    let most = u32::try_from(remarks).unwrap_or(u32::MAX).max(1);
    while count < most && wide / f64::from(count + 1) >= COLUMN {
        count += 1;
    }
    let each = wide / f64::from(count);
    (usize::try_from(count).unwrap_or(1), each)
}
