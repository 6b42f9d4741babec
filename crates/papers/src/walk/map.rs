//! Where on the plan the leaf touches people, and how badly: squares of one size about the gate.

use super::shapes::{beams, faces, fields, leaves};
use super::window::{Window, at};
use draw::{
    Dimension, DimensionLine, Figure, Fill, Hatch, Ink, Label, Layer, LayerId, LinePattern,
    LineWeight, Point, Scene,
};
use quantity::{Angle, Length, Quantity as _, UnitSystem};
use sim::walk::{AnyWorld, Direction};

/// One square of the map.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Square {
    /// Its middle.
    pub(crate) at: Point,
    /// Some scenario ends there with a limit passed, or with somebody trapped.
    pub(crate) bad: bool,
}

/// A map of one direction.
#[derive(Debug, Clone)]
pub(crate) struct Map<'a> {
    /// Its title: `Where the closing leaf touches`.
    pub(crate) title: String,
    /// The direction.
    pub(crate) direction: Direction,
    /// The world that was asked.
    pub(crate) world: &'a AnyWorld,
    /// Side of a square.
    pub(crate) side: Length,
    /// The squares in which somebody is touched.
    pub(crate) squares: Vec<Square>,
    /// How many scenarios stand behind it, in words.
    pub(crate) words: String,
}

pub(super) struct Layers {
    within: LayerId,
    bad: LayerId,
    pub(super) leaf: LayerId,
    pub(super) open: LayerId,
    pub(super) faces: LayerId,
    pub(super) beams: LayerId,
    dimensions: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            within: layer(
                Layer::new("touched within limits", Fine).ink(Ink::Gray),
                "Somebody is touched here, and no limit is passed.",
            ),
            bad: layer(
                Layer::new("touched beyond limits, or trapped", Fine).ink(Ink::Fails),
                "Somebody is touched harder or longer here than may be, or trapped.",
            ),
            open: layer(
                Layer::new("leaf before it starts", Medium).pattern(LinePattern::Dotted),
                "The leaf before it starts.",
            ),
            leaf: layer(
                Layer::new("leaf at the end", Heavy),
                "The leaf at the end of its travel.",
            ),
            faces: layer(
                Layer::new("fixed things", Heavy).ink(Ink::Gray),
                "What stands around the leaf, or what it moves toward.",
            ),
            beams: layer(
                Layer::new("beams and fields", Medium).pattern(LinePattern::DashDot),
                "Beams, and sides of fields.",
            ),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }
}

/// The figure of a map; nothing where the leaf does not go that way.
pub(crate) fn scene(map: &Map<'_>, units: UnitSystem) -> Option<Scene> {
    let [start, end] = leaves(map.world, map.direction)?;
    let mut scene = Scene::new(map.title.as_str(), units).describe(format!(
        "{} Squares in which somebody is touched are hatched: gray where no limit is passed, crosswise in the color of what fails where one is.",
        map.words
    ));
    let layers = Layers::add_to(&mut scene);
    draw_squares(&mut scene, &layers, map);
    for (layer, words, outlines) in [
        (layers.open, "leaf before it starts", &start),
        (layers.leaf, "leaf at the end", &end),
    ] {
        for outline in outlines {
            let figure = Figure::area(outline.clone(), Fill::Open);
            scene.add_titled(layer, words, figure);
        }
        if let Some(corner) = outlines.first().and_then(|outline| outline.get(1)) {
            scene.add(layers.notes, Label::new(*corner, words));
        }
    }
    let window = around([&start, &end]);
    let faces = faces(map.world, map.direction).into_iter();
    for (from, to) in faces.filter_map(|(from, to)| window.line(from, to)) {
        scene.add_titled(layers.faces, "what stands there", Figure::line(from, to));
    }
    measure(&mut scene, &layers, map, [&start, &end]);
    for (from, to) in beams(map.world, map.direction) {
        scene.add_titled(layers.beams, "beam", Figure::line(from, to));
    }
    for corners in fields(map.world, map.direction) {
        scene.add_titled(layers.beams, "field", Figure::area(corners, Fill::Open));
    }
    scene.remark(map.words.as_str());
    scene.remark("A square is hatched where somebody is touched in at least one of them: gray, no limit is passed; crosswise, one is. An empty square is not proved: the proofs are in the chapter on the walk test.");
    Some(scene)
}

/// What is drawn of the things that stand around: as far as this from the leaves (m).
const NEAR: f64 = 1.5;

/// The part of the plan in which they are drawn.
fn around(outlines: [&Vec<Vec<Point>>; 2]) -> Window {
    let corners = outlines.into_iter().flatten().flatten();
    let mut window = Window {
        left: f64::INFINITY,
        low: f64::INFINITY,
        right: f64::NEG_INFINITY,
        high: f64::NEG_INFINITY,
    };
    for corner in corners {
        let (x, y) = (corner.x.base(), corner.y.base());
        window.left = window.left.min(x - NEAR);
        window.right = window.right.max(x + NEAR);
        window.low = window.low.min(y - NEAR);
        window.high = window.high.max(y + NEAR);
    }
    window
}

/// Opposite corners of what a map shows: the leaves, what stands near them, and every square.
pub(crate) fn corners(map: &Map<'_>) -> Option<(Point, Point)> {
    let [start, end] = leaves(map.world, map.direction)?;
    let mut window = around([&start, &end]);
    for square in &map.squares {
        let (x, y) = (square.at.x.base(), square.at.y.base());
        window.left = window.left.min(x - NEAR / 2.0);
        window.right = window.right.max(x + NEAR / 2.0);
        window.low = window.low.min(y - NEAR / 2.0);
        window.high = window.high.max(y + NEAR / 2.0);
    }
    let found = window.left.is_finite() && window.high.is_finite();
    found.then(|| (at(window.left, window.low), at(window.right, window.high)))
}

/// Measures the way of a leaf that slides, and how far beams are from the gate line.
fn measure(scene: &mut Scene, layers: &Layers, map: &Map<'_>, [start, end]: [&Vec<Vec<Point>>; 2]) {
    let zero = Length::from_base(0.0);
    let edge = |outlines: &Vec<Vec<Point>>| outlines.first().and_then(|one| one.first().copied());
    if let (AnyWorld::Sliding(_), Some(from), Some(to)) = (map.world, edge(start), edge(end)) {
        let away = DimensionLine::Away(Length::from_base(-0.012));
        let way = Dimension::horizontal([from, to], away);
        scene.add_titled(layers.dimensions, "way of the leaf's edge", way);
    }
    for (_, to) in beams(map.world, map.direction) {
        let away = DimensionLine::Away(Length::from_base(0.010));
        let offset = Dimension::vertical([Point::new(to.x, zero), to], away);
        let words = "distance of a beam from the gate line";
        scene.add_titled(layers.dimensions, words, offset);
    }
}

/// The squares of a map.
pub(super) fn draw_squares(scene: &mut Scene, layers: &Layers, map: &Map<'_>) {
    for run in runs(&map.squares, map.side) {
        draw_run(scene, layers, map.side, &run);
    }
}

/// Squares in a row that are touched alike.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Run {
    from: Point,
    to: Point,
    bad: bool,
}

/// The squares joined along the gate line, so that no line is drawn where nothing changes.
fn runs(squares: &[Square], side: Length) -> Vec<Run> {
    let mut sorted = squares.to_vec();
    sorted.sort_by(|a, b| {
        let order = a.at.y.base().total_cmp(&b.at.y.base());
        order.then(a.at.x.base().total_cmp(&b.at.x.base()))
    });
    let mut runs: Vec<Run> = Vec::new();
    for square in sorted {
        let next = |run: &&mut Run| {
            let apart = (square.at.x - run.to.x - side).base().abs();
            let same_row = (square.at.y - run.to.y).base().abs() < 1e-6;
            same_row && apart < 1e-6 && run.bad == square.bad
        };
        match runs.last_mut().filter(next) {
            Some(run) => run.to = square.at,
            None => runs.push(Run {
                from: square.at,
                to: square.at,
                bad: square.bad,
            }),
        }
    }
    runs
}

fn draw_run(scene: &mut Scene, layers: &Layers, side: Length, run: &Run) {
    let half = side / 2.0;
    let (low, high) = (run.from.moved(-half, -half), run.to.moved(half, half));
    let hatch = Hatch {
        angle: Angle::from_base(std::f64::consts::FRAC_PI_4),
        spacing: Length::from_base(0.0012),
        crossed: run.bad,
    };
    let (layer, words) = if run.bad {
        (layers.bad, "touched beyond limits, or trapped")
    } else {
        (layers.within, "touched within limits")
    };
    let figure = Figure::rectangle(low, high, Fill::Hatched(hatch));
    scene.add_titled(layer, words, figure);
}

#[cfg(test)]
mod tests {
    use super::{Run, Square, runs};
    use draw::Point;
    use quantity::{Length, Quantity as _};

    #[test]
    fn squares_side_by_side_that_are_touched_alike_are_one() {
        let at = |x: f64, y: f64| Point::new(Length::from_base(x), Length::from_base(y));
        let square = |x, y, bad| Square { at: at(x, y), bad };
        let squares = [
            square(0.25, 0.05, false),
            square(0.05, 0.05, false),
            square(0.15, 0.05, false),
            square(0.35, 0.05, true),
            square(0.05, 0.15, false),
        ];
        let run = |from, to, bad| Run { from, to, bad };
        assert_eq!(
            runs(&squares, Length::from_base(0.1)),
            [
                run(at(0.05, 0.05), at(0.25, 0.05), false),
                run(at(0.35, 0.05), at(0.35, 0.05), true),
                run(at(0.05, 0.15), at(0.05, 0.15), false),
            ]
        );
    }
}
