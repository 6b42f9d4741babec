//! What lies there apart from the gate's own parts: foundations, the two sides, and lists in words.

use super::layers::Layers;
use super::tags::broken;
use super::window::Window;
use draw::{Anchor, Figure, Fill, Hatch, Label, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use site::{Foundation, Position, Site};

/// A position seen from above.
pub(crate) fn seen_from_above(position: &Position) -> Point {
    Point::new(position.x.nominal(), position.y.nominal())
}

/// Draws foundations as far as the sheet shows them.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site, window: &Window) {
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
    let (layer, when) = if foundation.existing == Some(true) {
        (layers.old_foundations, ", there before")
    } else {
        (layers.foundations, "")
    };
    let title = format!("foundation {}{when}", foundation.id);
    scene.add_titled(layer, title, figure);
}

/// A rectangle of this length (along x) and width around its center.
pub(super) fn around(center: Point, length: Length, width: Length, fill: Fill) -> Figure {
    Figure::rectangle(
        center.moved(-length / 2.0, -width / 2.0),
        center.moved(length / 2.0, width / 2.0),
        fill,
    )
}

/// Says in two corners of the sheet on which side the road lies.
pub(super) fn sides(scene: &mut Scene, layers: &Layers, window: &Window) {
    let height = TextHeight::Paper(Length::from_base(0.004));
    let left = Length::from_base(window.left);
    for (words, y) in [("road", window.below), ("property", window.above)] {
        let at = Point::new(left, Length::from_base(0.96 * y));
        let text = Text::new(at, words).height(height).anchor(Anchor::Start);
        scene.add(layers.notes, text);
    }
}

/// Says at the ends of the lanes on which side the road lies.
pub(super) fn far_sides(scene: &mut Scene, layers: &Layers, site: &Site) {
    let ends = || {
        let path = site.lane.iter().flat_map(|lane| &lane.path);
        path.map(seen_from_above)
    };
    let by_depth = |one: &Point, other: &Point| one.y.base().total_cmp(&other.y.base());
    let ends = [
        ("road", ends().min_by(by_depth)),
        ("property", ends().max_by(by_depth)),
    ];
    for (words, at) in ends {
        if let Some(at) = at {
            let mut label = Label::new(at, words);
            label.height = TextHeight::Paper(Length::from_base(0.004));
            scene.add(layers.notes, label);
        }
    }
}

/// A list in words that begins at a point: a head, and lines that are broken after so many letters.
pub(super) fn list(
    scene: &mut Scene,
    layers: &Layers,
    (at, letters): (Point, usize),
    head: &str,
    lines: &[String],
) {
    if lines.is_empty() {
        return;
    }
    let mut words = vec![broken(head, letters)];
    words.extend(lines.iter().map(|line| broken(line, letters)));
    let text = Text::new(at, words.join("\n")).anchor(Anchor::Start);
    scene.add(layers.notes, text);
}
