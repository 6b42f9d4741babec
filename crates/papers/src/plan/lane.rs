//! Lanes on the plan: their path, the edges of the drive, and its width in words.

use super::ground::seen_from_above;
use super::layers::Layers;
use super::window::Window;
use draw::{Figure, Label, Point, Scene};
use quantity::{Angle, Length, Quantity as _};
use site::{Lane, Site};
use std::f64::consts::PI;

/// Draws the lanes as far as the sheet shows them, with their names.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site, window: &Window) {
    draw_lines(scene, layers, site, window);
    for lane in &site.lane {
        let Some(width) = lane.width.as_ref().map(quantity::Measured::nominal) else {
            continue;
        };
        if let Some((from, to)) = edge(lane, window, width / -2.0).first() {
            let width = draw::dimension_text(width, scene.units);
            let words = format!("{},\n{width} wide", lane.id);
            let at = from.middle(from.middle(*to));
            scene.add(layers.notes, Label::new(at, words));
        }
    }
}

/// Draws the middles and edges of the lanes.
pub(super) fn draw_lines(scene: &mut Scene, layers: &Layers, site: &Site, window: &Window) {
    for lane in &site.lane {
        for (from, to) in edge(lane, window, Length::from_base(0.0)) {
            let title = format!("middle of {}", lane.called());
            scene.add_titled(layers.lanes, title, Figure::line(from, to));
        }
        let Some(width) = lane.width.as_ref().map(quantity::Measured::nominal) else {
            continue;
        };
        for (side, half) in [("left", width / 2.0), ("right", width / -2.0)] {
            for (from, to) in edge(lane, window, half) {
                let title = format!("{side} edge of {}", lane.called());
                scene.add_titled(layers.drive, title, Figure::line(from, to));
            }
        }
    }
}

/// The pieces that the sheet shows of a line beside the middle of a lane, so much to its left.
fn edge(lane: &Lane, window: &Window, aside: Length) -> Vec<(Point, Point)> {
    let path: Vec<Point> = lane.path.iter().map(seen_from_above).collect();
    shown(&moved_aside(&path, aside), window)
}

/// The straight pieces of a path that the sheet shows.
fn shown(path: &[Point], window: &Window) -> Vec<(Point, Point)> {
    let ends = path.iter().zip(path.iter().skip(1));
    ends.filter_map(|(from, to)| window.cut(*from, *to))
        .collect()
}

/// A path moved to its left by so much, each corner square to the mean of the directions that meet there.
fn moved_aside(path: &[Point], by: Length) -> Vec<Point> {
    let directions: Vec<f64> = path
        .iter()
        .zip(path.iter().skip(1))
        .map(|(from, to)| from.direction_to(*to).base())
        .collect();
    let corner = |(index, point): (usize, &Point)| {
        let before = index.checked_sub(1).and_then(|index| directions.get(index));
        let after = directions.get(index);
        let (before, after) = match (before.or(after), after.or(before)) {
            (Some(before), Some(after)) => (*before, *after),
            _ => return *point,
        };
        let (x, y) = (before.cos() + after.cos(), before.sin() + after.sin());
        let square = Angle::from_base(y.atan2(x) + PI / 2.0);
        point.toward(square, by)
    };
    path.iter().enumerate().map(corner).collect()
}
