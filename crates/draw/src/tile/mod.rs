//! A pattern at full size, over as many pages as it takes, with what is needed to lay them together and to trust them.

mod clip;
mod furniture;
mod grid;
mod key_map;
mod register;
mod ruler;

use crate::flat::{Bounds, Segment, Spot};
use crate::layout::check::check;
use crate::layout::compose::{Composed, compose_in};
use crate::layout::view::View;
use crate::mark::Mark;
use crate::room::Room;
use crate::{Content, DrawError, Drawing, Paper, Point, Scene};
use furniture::Page;
use grid::{Grid, Tile};
use quantity::Quantity as _;

/// Paper millimeters to a meter of the site: full size.
const FULL: f64 = 1000.0;

/// How a pattern is printed at full size.
#[derive(Debug, Clone, PartialEq)]
pub struct FullSize {
    /// Size of the pages.
    pub paper: Paper,
    /// Lower left and upper right corner of what the pages must show together; what lies beside is shown as far as
    /// the pages reach.
    pub reach: (Point, Point),
    /// The words around the pattern.
    pub words: FullSizeWords,
}

/// The words around a pattern at full size. All are printed on every page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FullSizeWords {
    /// Name of the site.
    pub site: String,
    /// Date and revision.
    pub issue: String,
    /// What to do before the page is used.
    pub instruction: String,
    /// The pattern in words, to be held against what is drawn.
    pub check: String,
    /// What lies upward.
    pub up: String,
    /// What lies to the left.
    pub left: String,
    /// One or two sentences of caution.
    pub caution: String,
}

impl FullSize {
    /// The pages, row by row from the upper left.
    ///
    /// Fails when a coordinate has no value or lies absurdly far out.
    pub fn lay_out(&self, scene: &Scene) -> Result<Vec<Drawing>, DrawError> {
        check(scene)?;
        let grid = Grid::over(self.paper, &self.pattern());
        let registers = register::all(&grid);
        let outlines = outlines(scene);
        let tiles = grid.tiles();
        let page = |(index, tile): (usize, &Tile)| {
            let page = Page {
                grid: &grid,
                tile: *tile,
                number: index + 1,
                of: tiles.len(),
            };
            let composed = composed(scene, &grid, *tile, &registers);
            let mut furniture = furniture::marks(self, scene, &page, &outlines);
            furniture.push(Mark::Group {
                class: "registration",
                title: None,
                marks: register::on_page(&registers, &grid, *tile).0,
            });
            Drawing::at_full_size(scene, grid.size, page.number, composed, furniture)
        };
        Ok(tiles.iter().enumerate().map(page).collect())
    }

    /// What the pages must show (mm).
    fn pattern(&self) -> Bounds {
        let (low, high) = self.reach;
        let mut pattern = Bounds::EMPTY;
        for corner in [low, high] {
            pattern.take(Spot::new(corner.x.base() * FULL, corner.y.base() * FULL));
        }
        pattern
    }
}

/// The drawn lines of a scene at full size, its origin at the corner of the paper.
fn outlines(scene: &Scene) -> Vec<Segment> {
    let view = View {
        per_meter: FULL,
        origin: Spot::new(0.0, 0.0),
    };
    let whole = Bounds::new(Spot::new(-1e9, -1e9), Spot::new(1e9, 1e9));
    let geometry = compose_in(&without_words(scene), view, Room::new(whole)).geometry;
    geometry.iter().flatten().flat_map(Mark::segments).collect()
}

fn without_words(scene: &Scene) -> Scene {
    scene.only(|shape| matches!(shape.content, Content::Figure(_)))
}

/// The part of a scene that a page shows.
fn composed(scene: &Scene, grid: &Grid, tile: Tile, registers: &[register::Register]) -> Composed {
    let (window, step) = (grid.window(), grid.step(tile));
    let view = View {
        per_meter: FULL,
        origin: step,
    };
    let is_here = |point: &Point| {
        let spot = view.spot(*point);
        (window.low.x..=window.high.x).contains(&spot.x)
            && (window.low.y..=window.high.y).contains(&spot.y)
    };
    let here = scene.only(|shape| match &shape.content {
        Content::Figure(_) | Content::Symbol(_) => true,
        Content::Text(text) => is_here(&text.at),
        Content::Label(label) => is_here(&label.at),
        Content::Note(note) => is_here(&note.at),
        Content::Dimension(dimension) => dimension.points.iter().all(is_here),
    });
    let mut room = Room::new(window);
    let (_, patches) = register::on_page(registers, grid, tile);
    room.solids.extend(patches.iter().copied());
    room.texts.extend(patches);
    let mut composed = compose_in(&here, view, room);
    for layer in &mut composed.geometry {
        *layer = clip::clipped(layer, &window);
    }
    composed
}
