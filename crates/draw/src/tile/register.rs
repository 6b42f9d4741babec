//! Registration marks: lettered crosses in the strips that neighboring pages share.

use super::grid::{Grid, OVERLAP, Tile};
use crate::Anchor;
use crate::flat::{Bounds, Spot};
use crate::layout::typist::{PLAIN, Style, letters};
use crate::mark::{Mark, Pen};
use crate::patch::Patch;

/// Half the length of a cross (mm).
const ARM: f64 = 4.0;
/// Where along a seam its two marks stand, as shares of the window.
const SHARES: [f64; 2] = [0.12, 0.88];

/// A mark at a spot of the pattern (mm), with its letter.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Register {
    at: Spot,
    letter: String,
}

/// Every mark of a grid.
pub(super) fn all(grid: &Grid) -> Vec<Register> {
    let mut spots: Vec<Spot> = Vec::new();
    for tile in grid.tiles() {
        let shown = grid.shown(tile);
        if tile.column + 1 < grid.columns {
            let x = shown.high.x - OVERLAP / 2.0;
            spots.extend(SHARES.map(|share| Spot::new(x, shown.low.y + share * shown.height())));
        }
        if tile.row + 1 < grid.rows {
            let y = shown.low.y + OVERLAP / 2.0;
            spots.extend(SHARES.map(|share| Spot::new(shown.low.x + share * shown.width(), y)));
        }
    }
    let named = |(index, at): (usize, Spot)| Register {
        at,
        letter: letter(index),
    };
    spots.into_iter().enumerate().map(named).collect()
}

/// A to Z, then A1 and so on.
fn letter(index: usize) -> String {
    let of_alphabet = u8::try_from(index % 26).unwrap_or(0);
    let first = char::from(b'A' + of_alphabet);
    match index / 26 {
        0 => first.to_string(),
        round => format!("{first}{round}"),
    }
}

/// The marks that a page shows, and the room that each takes.
pub(super) fn on_page(all: &[Register], grid: &Grid, tile: Tile) -> (Vec<Mark>, Vec<Patch>) {
    let (window, step) = (grid.window(), grid.step(tile));
    let mut marks = Vec::new();
    let mut patches = Vec::new();
    for register in all {
        let at = register.at.plus(step, 1.0);
        if is_within(&window, at) {
            marks.extend(register.marks(at));
            patches.push(Patch {
                center: Spot::new(at.x + 1.0, at.y + 0.5),
                half_width: ARM + 1.5,
                half_height: ARM + 1.0,
                angle: 0.0,
            });
        }
    }
    (marks, patches)
}

fn is_within(window: &Bounds, at: Spot) -> bool {
    (window.low.x + ARM..=window.high.x - ARM).contains(&at.x)
        && (window.low.y + ARM..=window.high.y - ARM).contains(&at.y)
}

impl Register {
    fn marks(&self, at: Spot) -> Vec<Mark> {
        let pen = Pen::black(0.18);
        let style = Style {
            height: 2.1,
            ..PLAIN
        };
        vec![
            Mark::line(
                Spot::new(at.x - ARM, at.y),
                Spot::new(at.x + ARM, at.y),
                pen,
            ),
            Mark::line(
                Spot::new(at.x, at.y - ARM),
                Spot::new(at.x, at.y + ARM),
                pen,
            ),
            Mark::Circle {
                center: at,
                radius: ARM / 2.0,
                pen: Some(pen),
                fill: None,
            },
            letters(
                Spot::new(at.x + 2.2, at.y + 1.8),
                self.letter.clone(),
                style,
                Anchor::Start,
            ),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Paper;

    #[test]
    fn neighbors_show_the_same_letters_at_the_same_spots() {
        let pattern = Bounds::new(Spot::new(0.0, 0.0), Spot::new(500.0, 300.0));
        let grid = Grid::over(Paper::A4, &pattern);
        let all = all(&grid);
        assert!(!all.is_empty());
        for register in &all {
            let pages = grid
                .tiles()
                .into_iter()
                .filter(|tile| is_within(&grid.window(), register.at.plus(grid.step(*tile), 1.0)));
            assert!(pages.count() >= 2, "{register:?}");
        }
    }

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!(letter(0), "A");
        assert_eq!(letter(27), "B1");
    }
}
