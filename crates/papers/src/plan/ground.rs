//! What lies and stands there apart from the gate's own parts: lanes, foundations, the two sides, and lists in words.

use super::layers::Layers;
use super::tags::broken;
use super::window::Window;
use draw::{Figure, Fill, Hatch, Label, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use site::{Foundation, Gate, Position, Site};

/// Letters in a line of a list.
const LINE: usize = 64;

/// A position seen from above.
pub(super) fn seen_from_above(position: &Position) -> Point {
    Point::new(position.x.nominal(), position.y.nominal())
}

/// Draws lanes and foundations as far as the sheet shows them.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site, window: &Window) {
    for lane in &site.lane {
        let path: Vec<Point> = lane.path.iter().map(seen_from_above).collect();
        for ends in path.windows(2) {
            if let [from, to] = ends
                && let Some((from, to)) = window.cut(*from, *to)
            {
                scene.add_titled(
                    layers.lanes,
                    format!("lane {}", lane.id),
                    Figure::line(from, to),
                );
            }
        }
    }
    for foundation in &site.foundation {
        draw_foundation(scene, layers, foundation, window);
    }
}

fn draw_foundation(scene: &mut Scene, layers: &Layers, foundation: &Foundation, window: &Window) {
    let Some(at) = foundation
        .at
        .as_ref()
        .map(seen_from_above)
        .filter(|at| window.shows(*at))
    else {
        return;
    };
    let fill = Fill::Hatched(Hatch::cut());
    let figure = match (&foundation.length, &foundation.width, &foundation.diameter) {
        (Some(length), Some(width), _) => around(at, length.nominal(), width.nominal(), fill),
        (_, _, Some(diameter)) => Figure::circle(at, diameter.nominal() / 2.0, fill),
        _ => return,
    };
    scene.add_titled(
        layers.foundations,
        format!("foundation {}", foundation.id),
        figure,
    );
}

/// A rectangle of this length (along x) and width around its center.
pub(super) fn around(center: Point, length: Length, width: Length, fill: Fill) -> Figure {
    Figure::rectangle(
        center.moved(-length / 2.0, -width / 2.0),
        center.moved(length / 2.0, width / 2.0),
        fill,
    )
}

/// Says on which side the road lies.
pub(super) fn sides(scene: &mut Scene, layers: &Layers, gate: &Gate, window: &Window) {
    let middle = gate
        .clear_opening
        .as_ref()
        .map_or(0.0, |opening| 0.75 * opening.nominal().base());
    let height = TextHeight::Paper(Length::from_base(0.004));
    for (words, y) in [
        ("road", 0.92 * window.below),
        ("property", 0.92 * window.above),
    ] {
        let at = Point::new(Length::from_base(middle), Length::from_base(y));
        scene.add(layers.notes, Text::new(at, words).height(height));
    }
}

/// A list in words in the lower corner of the sheet.
pub(super) fn list(
    scene: &mut Scene,
    layers: &Layers,
    window: &Window,
    head: &str,
    names: &[String],
) {
    if names.is_empty() {
        return;
    }
    let words = format!("{head}\n{}", broken(&names.join(", "), LINE));
    let corner = |edge: f64| Length::from_base(if edge.is_finite() { 0.7 * edge } else { 0.0 });
    scene.add(
        layers.notes,
        Label::new(
            Point::new(corner(window.right), corner(window.below)),
            words,
        ),
    );
}
