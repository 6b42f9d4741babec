//! The key map: the pattern in small, the pages over it, and the one that this is.

use super::grid::{Grid, Tile};
use crate::flat::{Bounds, Segment, Spot};
use crate::layout::typist::{CAPTION, PLAIN, Style, letters};
use crate::mark::{Mark, Pen};
use crate::{Anchor, Ink};

/// Outlines of the pages.
const PAGE: Pen = Pen::black(0.18);
/// The pattern in small.
const PATTERN: Pen = Pen {
    ink: Ink::Gray,
    ..Pen::black(0.1)
};

/// The key map in a cell of the page; nothing where one page shows everything.
pub(super) fn marks(grid: &Grid, tile: Tile, pattern: &[Segment], cell: &Bounds) -> Vec<Mark> {
    let tiles = grid.tiles();
    if tiles.len() < 2 {
        return Vec::new();
    }
    let mut whole = Bounds::EMPTY;
    for tile in &tiles {
        let shown = grid.shown(*tile);
        whole.take(shown.low);
        whole.take(shown.high);
    }
    let small = Small::new(&whole, cell);
    let mut marks = Vec::new();
    let here = small.outline(&grid.shown(tile), Some(Ink::Tint));
    marks.push(here);
    for (from, to) in pattern {
        if holds(&whole, *from) && holds(&whole, *to) {
            marks.push(Mark::line(small.spot(*from), small.spot(*to), PATTERN));
        }
    }
    for (index, tile) in tiles.iter().enumerate() {
        let shown = grid.shown(*tile);
        marks.push(small.outline(&shown, None));
        let style = Style {
            height: 1.8,
            ..PLAIN
        };
        let at = small.spot(shown.center());
        let base = Spot::new(at.x, at.y - 0.9);
        marks.push(letters(
            base,
            (index + 1).to_string(),
            style,
            Anchor::Middle,
        ));
    }
    let head = Spot::new(cell.low.x, cell.high.y - 1.6);
    marks.push(letters(head, "Sheets".to_owned(), CAPTION, Anchor::Start));
    marks
}

fn holds(bounds: &Bounds, spot: Spot) -> bool {
    (bounds.low.x..=bounds.high.x).contains(&spot.x)
        && (bounds.low.y..=bounds.high.y).contains(&spot.y)
}

/// From the pattern to the cell.
struct Small {
    times: f64,
    from: Spot,
    to: Spot,
}

impl Small {
    fn new(whole: &Bounds, cell: &Bounds) -> Self {
        let room = (cell.width(), cell.height() - 3.0);
        let times = (room.0 / whole.width()).min(room.1 / whole.height());
        Self {
            times,
            from: whole.center(),
            to: Spot::new(cell.center().x, cell.low.y + room.1 / 2.0),
        }
    }

    fn spot(&self, spot: Spot) -> Spot {
        self.to.plus(spot.minus(self.from), self.times)
    }

    fn outline(&self, bounds: &Bounds, fill: Option<Ink>) -> Mark {
        let (low, high) = (self.spot(bounds.low), self.spot(bounds.high));
        Mark::Path {
            spots: vec![
                low,
                Spot::new(high.x, low.y),
                high,
                Spot::new(low.x, high.y),
            ],
            closed: true,
            pen: fill.is_none().then_some(PAGE),
            fill,
        }
    }
}
