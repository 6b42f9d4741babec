//! Which part of a pattern each page shows, and where on the page.

use crate::Paper;
use crate::flat::{Bounds, Spot};

/// Clear paper around a page, which many printers cannot reach (mm).
pub(super) const MARGIN: f64 = 9.0;
/// Height of the words above the window (mm).
pub(super) const HEAD: f64 = 22.0;
/// Height of ruler, directions and key map under the window (mm).
pub(super) const FOOT: f64 = 31.0;
/// By how much neighboring pages show the same (mm).
pub(super) const OVERLAP: f64 = 14.0;
/// The most pages across and down; a pattern that needs more is cut at the middle ones.
const MOST: u32 = 12;

/// Pages in columns and rows over a pattern.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Grid {
    /// Width and height of the paper as it lies (mm).
    pub(super) size: (f64, f64),
    pub(super) columns: u32,
    pub(super) rows: u32,
    /// Lower left corner of the lower left window in the pattern (mm).
    low: Spot,
}

/// One page of the grid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tile {
    /// Counted from the left.
    pub(super) column: u32,
    /// Counted from the top.
    pub(super) row: u32,
}

impl Grid {
    /// The grid of fewest pages over a pattern (mm); upright paper where both ways take as many.
    pub(super) fn over(paper: Paper, pattern: &Bounds) -> Self {
        let (short, long) = paper.edges();
        let upright = Self::on((short, long), pattern);
        let lying = Self::on((long, short), pattern);
        if lying.columns * lying.rows < upright.columns * upright.rows {
            lying
        } else {
            upright
        }
    }

    fn on(size: (f64, f64), pattern: &Bounds) -> Self {
        let (wide, high) = window_size(size);
        let (columns, rows) = (count(pattern.width(), wide), count(pattern.height(), high));
        let span = |count: u32, each: f64| f64::from(count) * (each - OVERLAP) + OVERLAP;
        let whole = (span(columns, wide), span(rows, high));
        let half = Spot::new(whole.0 / 2.0, whole.1 / 2.0);
        let aside = Spot::new(
            aside(columns, whole.0 - pattern.width()),
            aside(rows, whole.1 - pattern.height()),
        );
        Self {
            size,
            columns,
            rows,
            low: pattern.center().minus(half).plus(aside, 1.0),
        }
    }

    /// Every page, row by row from the upper left.
    pub(super) fn tiles(&self) -> Vec<Tile> {
        let rows = 0..self.rows;
        rows.flat_map(|row| (0..self.columns).map(move |column| Tile { column, row }))
            .collect()
    }

    /// The window on every page (mm).
    pub(super) fn window(&self) -> Bounds {
        let (wide, high) = window_size(self.size);
        let low = Spot::new(MARGIN, MARGIN + FOOT);
        Bounds::new(low, Spot::new(low.x + wide, low.y + high))
    }

    /// The part of the pattern that a page shows (mm).
    pub(super) fn shown(&self, tile: Tile) -> Bounds {
        let (wide, high) = window_size(self.size);
        let up = self.rows.saturating_sub(1 + tile.row);
        let low = self.low.plus(
            Spot::new(
                f64::from(tile.column) * (wide - OVERLAP),
                f64::from(up) * (high - OVERLAP),
            ),
            1.0,
        );
        Bounds::new(low, Spot::new(low.x + wide, low.y + high))
    }

    /// The step from the pattern to the page that shows this part of it (mm).
    pub(super) fn step(&self, tile: Tile) -> Spot {
        self.window().low.minus(self.shown(tile).low)
    }
}

/// Width and height of the window on paper of this size (mm).
fn window_size((wide, high): (f64, f64)) -> (f64, f64) {
    (wide - 2.0 * MARGIN, high - 2.0 * MARGIN - HEAD - FOOT)
}

/// How far the pages are moved aside, as far as there is room, so that no seam runs through the middle (mm).
fn aside(count: u32, spare: f64) -> f64 {
    if count.is_multiple_of(2) {
        (0.45 * spare).clamp(0.0, 30.0)
    } else {
        0.0
    }
}

/// How many windows cover so many millimeters.
fn count(long: f64, each: f64) -> u32 {
    let mut count = 1;
    while count < MOST && f64::from(count) * (each - OVERLAP) + OVERLAP < long {
        count += 1;
    }
    count
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(wide: f64, high: f64) -> Grid {
        Grid::over(
            Paper::A4,
            &Bounds::new(Spot::new(0.0, 0.0), Spot::new(wide, high)),
        )
    }

    #[test]
    fn a_small_pattern_takes_one_upright_page() {
        let grid = grid(150.0, 180.0);
        assert_eq!((grid.columns, grid.rows), (1, 1));
        assert!(grid.size.0 < grid.size.1);
    }

    #[test]
    fn a_wide_one_lies() {
        let grid = grid(260.0, 120.0);
        assert_eq!((grid.columns, grid.rows), (1, 1));
        assert!(grid.size.0 > grid.size.1);
    }

    #[test]
    fn the_pages_cover_the_pattern_and_overlap() {
        let grid = grid(700.0, 640.0);
        let tiles = grid.tiles();
        let mut whole = Bounds::EMPTY;
        for tile in &tiles {
            let shown = grid.shown(*tile);
            whole.take(shown.low);
            whole.take(shown.high);
        }
        assert!(whole.low.x <= 0.0 && whole.low.y <= 0.0);
        assert!(whole.high.x >= 700.0 && whole.high.y >= 640.0);
        let (first, second) = (grid.shown(tiles[0]), grid.shown(tiles[1]));
        assert!((first.high.x - second.low.x - OVERLAP).abs() < 1e-9);
    }
}
