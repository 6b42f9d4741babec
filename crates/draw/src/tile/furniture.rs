//! What stands around the window of a page: words, ruler, directions, key map.

use super::FullSize;
use super::grid::{FOOT, Grid, MARGIN, Tile};
use super::{key_map, ruler};
use crate::flat::{Bounds, Segment, Spot};
use crate::layout::typist::{CAPTION, PLAIN, Style, TITLE, Typist, letters};
use crate::mark::{Mark, Pen};
use crate::{Anchor, Ink, Scene};

/// Where directions and key map begin, from the left margin (mm).
const DIRECTIONS: f64 = 124.0;
/// Width of the key map (mm).
const KEY_MAP: f64 = 36.0;
/// Room for sheet number, site and date (mm).
const WORDS: f64 = 62.0;
/// Ink of the window's edge.
const EDGE: Pen = Pen {
    ink: Ink::Gray,
    ..Pen::black(0.18)
};

/// A page of so many.
pub(super) struct Page<'a> {
    pub(super) grid: &'a Grid,
    pub(super) tile: Tile,
    /// Counted from one.
    pub(super) number: usize,
    pub(super) of: usize,
}

/// Everything around the window.
pub(super) fn marks(
    full: &FullSize,
    scene: &Scene,
    page: &Page<'_>,
    pattern: &[Segment],
) -> Vec<Mark> {
    let window = page.grid.window();
    let group = |class, marks| Mark::Group {
        class,
        title: None,
        marks,
    };
    let map = Bounds::new(
        Spot::new(window.high.x - KEY_MAP, MARGIN + 1.0),
        Spot::new(window.high.x, MARGIN + FOOT - 4.0),
    );
    vec![
        group("border", vec![outline(&window)]),
        group("head", head(full, scene, page, &window)),
        group("ruler", ruler_marks(full, &window)),
        group("directions", directions(full, &window)),
        group(
            "key-map",
            key_map::marks(page.grid, page.tile, pattern, &map),
        ),
    ]
}

fn outline(window: &Bounds) -> Mark {
    let (low, high) = (window.low, window.high);
    Mark::Path {
        spots: vec![
            low,
            Spot::new(high.x, low.y),
            high,
            Spot::new(low.x, high.y),
        ],
        closed: true,
        pen: Some(EDGE),
        fill: None,
    }
}

/// Title, site and sheet number; what to do before drilling; the holes in words.
fn head(full: &FullSize, scene: &Scene, page: &Page<'_>, window: &Bounds) -> Vec<Mark> {
    let top = page.grid.size.1 - MARGIN;
    let wide = window.width() - WORDS;
    let mut left = Typist::new(window.low.x, top, wide);
    left.set(&fitted(&scene.title, TITLE.height * 1.05, wide), TITLE);
    left.set(
        &full.words.instruction,
        Style {
            height: 2.9,
            ..TITLE
        },
    );
    left.skip(0.5);
    let mut below = Typist::new(window.low.x, left.top.min(top - 12.4), window.width());
    below.set(&full.words.check, PLAIN);
    left.marks.extend(below.marks);
    let right = window.high.x;
    let mut lines = vec![format!("Sheet {} of {}", page.number, page.of)];
    lines.extend([full.words.site.clone(), full.words.issue.clone()]);
    let mut marks = left.marks;
    let mut base = top - 3.2;
    for (index, line) in lines.into_iter().enumerate() {
        let style = if index == 0 {
            Style {
                height: 2.9,
                ..TITLE
            }
        } else {
            PLAIN
        };
        let line = fitted(&line, style.height, WORDS - 3.0);
        marks.push(letters(Spot::new(right, base), line, style, Anchor::End));
        base -= 4.0;
    }
    marks
}

/// The words cut to a width (mm).
fn fitted(words: &str, height: f64, widest: f64) -> String {
    if crate::lettering::width(words, height) <= widest {
        return words.to_owned();
    }
    let mut kept = String::new();
    for character in words.chars() {
        if crate::lettering::width(&format!("{kept}{character}…"), height) > widest {
            break;
        }
        kept.push(character);
    }
    kept.trim_end().to_owned() + "…"
}

fn ruler_marks(full: &FullSize, window: &Bounds) -> Vec<Mark> {
    let at = Spot::new(window.low.x + 4.0, MARGIN + FOOT - 16.0);
    let mut marks = ruler::marks(at);
    let above = Spot::new(window.low.x, MARGIN + FOOT - 7.0);
    let style = Style {
        ink: Ink::Black,
        ..CAPTION
    };
    let words = "Check ruler: 100 mm above, 4 in below";
    marks.push(letters(above, words.to_owned(), style, Anchor::Start));
    let mut caution = Typist::new(window.low.x, MARGIN + 6.6, 118.0);
    caution.set(&full.words.caution, style);
    marks.extend(caution.marks);
    marks
}

/// Two arrows with what they point to: up and to the left.
fn directions(full: &FullSize, window: &Bounds) -> Vec<Mark> {
    let left = window.low.x + DIRECTIONS;
    let style = Style {
        height: 2.0,
        ..PLAIN
    };
    let mut marks = Vec::new();
    let up = Spot::new(left + 2.0, MARGIN + FOOT - 4.5);
    marks.extend(arrow(up, Spot::new(0.0, 1.0)));
    let across = Spot::new(left, MARGIN + 5.0);
    marks.extend(arrow(across, Spot::new(-1.0, 0.0)));
    let mut upper = Typist::new(left + 6.0, up.y - 1.0, 22.0);
    upper.set(&full.words.up, style);
    let mut lower = Typist::new(left, across.y + 9.2, 30.0);
    lower.set(&full.words.left, style);
    marks.extend(upper.marks);
    marks.extend(lower.marks);
    marks
}

/// An arrow of 10 mm with its tip at a spot.
fn arrow(tip: Spot, way: Spot) -> Vec<Mark> {
    let tail = tip.plus(way, -10.0);
    let back = tip.plus(way, -3.2);
    vec![
        Mark::line(tail, back, Pen::black(0.5)),
        Mark::solid(
            vec![tip, back.plus(way.left(), 1.1), back.plus(way.left(), -1.1)],
            Ink::Black,
        ),
    ]
}
