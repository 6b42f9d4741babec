//! What lies and stands there apart from the gate's own parts: lanes, foundations, and what could not be placed.

use super::layers::Layers;
use draw::{Figure, Fill, Hatch, Label, Point, Scene};
use quantity::{Length, Quantity as _};
use site::{Foundation, Position, Site};

/// A position seen from above.
pub(super) fn seen_from_above(position: &Position) -> Point {
    Point::new(position.x.nominal(), position.y.nominal())
}

/// Draws lanes and foundations.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site) {
    for lane in site.lane.iter().filter(|lane| lane.path.len() > 1) {
        let path: Vec<Point> = lane.path.iter().map(seen_from_above).collect();
        scene.add_titled(
            layers.lanes,
            format!("lane {}", lane.id),
            Figure::path(path),
        );
    }
    for foundation in &site.foundation {
        draw_foundation(scene, layers, foundation);
    }
}

fn draw_foundation(scene: &mut Scene, layers: &Layers, foundation: &Foundation) {
    let Some(at) = foundation.at.as_ref().map(seen_from_above) else {
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

/// Lists on the drawing what the site file gives no position.
pub(super) fn list_unplaced(scene: &mut Scene, layers: &Layers, unplaced: &[String]) {
    if unplaced.is_empty() {
        return;
    }
    let mut lines = vec!["Not drawn, since no position is given:".to_owned()];
    lines.extend(unplaced.chunks(4).map(|few| few.join(", ")));
    let below = Point::new(Length::from_base(0.0), Length::from_base(-3.0));
    scene.add(layers.notes, Label::new(below, lines.join("\n")));
}
