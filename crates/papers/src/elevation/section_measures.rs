//! The lengths and heights that matter in the section.

use super::layers::Layers;
use super::section::{Cut, fences};
use super::{length, meters, place, posts};
use draw::{Dimension, DimensionLine, Point, Scene};
use quantity::Quantity as _;

/// From the ground to the first column of heights, and from column to column (mm).
const FIRST_COLUMN: f64 = 7.0;
const NEXT_COLUMN: f64 = 9.0;

/// From what is drawn to the row of gaps over it (mm).
const ABOVE: f64 = 14.0;

/// Lengths shorter than this are not measured (m).
const LEAST: f64 = 0.004;

/// Draws the dimensions.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    draw_leaf(scene, layers, cut);
    draw_gaps(scene, layers, cut);
    draw_heights(scene, layers, cut);
}

/// Clearance and height of the leaf on the left, its thickness under its upper edge.
fn draw_leaf(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let half = cut.thickness / 2.0;
    let mut levels = vec![cut.floor, cut.low, cut.top];
    levels.dedup_by(|one, other| (*one - *other).abs() < LEAST);
    let chain: Vec<Point> = levels.iter().map(|up| place(-half, *up)).collect();
    let left = |away: f64| DimensionLine::Beyond(place(-cut.reach, 0.0), length(-away / 1000.0));
    scene.add_titled(
        layers.dimensions,
        "clearance and height of the leaf",
        Dimension::vertical(chain, left(FIRST_COLUMN)),
    );
    if levels.len() > 2 {
        let ends = [place(-half, cut.floor), place(-half, cut.top)];
        let line = left(FIRST_COLUMN + NEXT_COLUMN);
        scene.add_titled(
            layers.dimensions,
            "upper edge of the leaf",
            Dimension::vertical(ends, line),
        );
    }
}

/// The thickness of the leaf and the gaps to the fences beside it, over everything that stands there.
fn draw_gaps(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let half = cut.thickness / 2.0;
    let mut stations: Vec<f64> = vec![-half, half];
    stations.extend(fences(cut.gate).map(|(_, right)| right));
    stations.sort_by(f64::total_cmp);
    stations.dedup_by(|one, other| (*one - *other).abs() < LEAST);
    let points: Vec<Point> = stations
        .iter()
        .map(|right| place(*right, cut.top))
        .collect();
    let highest = highest(cut);
    let line = DimensionLine::Beyond(place(0.0, highest), length(ABOVE / 1000.0));
    scene.add_titled(
        layers.dimensions,
        "leaf and gaps",
        Dimension::horizontal(points, line),
    );
}

/// The highest level that is drawn.
fn highest(cut: &Cut<'_>) -> f64 {
    let fences = fences(cut.gate).filter_map(|(thing, _)| meters(thing.height.as_ref()));
    let own = cut
        .gate
        .post
        .iter()
        .filter(|post| posts::is_structural(post));
    let posts = own.filter_map(|post| meters(post.height.as_ref()));
    fences
        .chain(posts)
        .map(|up| cut.floor + up)
        .fold(cut.top, f64::max)
}

/// Guides, posts and fences above the ground, each in a column on the right.
fn draw_heights(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let mut heights: Vec<(String, f64, f64)> = Vec::new();
    let guide = cut
        .gate
        .guide
        .as_ref()
        .and_then(|guide| meters(guide.height.as_ref()));
    heights.extend(guide.map(|up| ("guides".to_owned(), cut.thickness / 2.0, up)));
    for post in cut
        .gate
        .post
        .iter()
        .filter(|post| posts::is_structural(post))
    {
        if let (Some(at), Some(up)) = (&post.at, meters(post.height.as_ref())) {
            heights.push(("posts".to_owned(), -at.y.nominal().base(), up));
        }
    }
    for (thing, right) in fences(cut.gate) {
        let side = if right < 0.0 {
            "fence, property side"
        } else {
            "fence, road side"
        };
        heights.extend(meters(thing.height.as_ref()).map(|up| (side.to_owned(), right, up)));
    }
    heights.sort_by(|one, other| one.2.total_cmp(&other.2));
    heights.dedup_by(|one, other| one.0 == other.0 && (one.2 - other.2).abs() < LEAST);
    let mut away = FIRST_COLUMN;
    for (what, right, up) in heights {
        let words = format!("{what} {}", draw::dimension_text(length(up), scene.units));
        let line = DimensionLine::Beyond(place(cut.reach, 0.0), length(away / 1000.0));
        let floor = cut.level(right);
        let ends = [place(right, floor), place(right, floor + up)];
        scene.add_titled(
            layers.dimensions,
            what,
            Dimension::vertical(ends, line).words([words]),
        );
        away += NEXT_COLUMN;
    }
}
