//! Where on the plan the leaf touches people, and how badly: squares of one size about the gate.

use draw::{
    Dimension, DimensionLine, Figure, Fill, Hatch, Ink, Label, Layer, LayerId, LinePattern,
    LineWeight, Point, Scene,
};
use quantity::{Angle, Length, Quantity as _, UnitSystem};
use sim::walk::{Direction, World};

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
    pub(crate) world: &'a World,
    /// Side of a square.
    pub(crate) side: Length,
    /// The squares in which somebody is touched.
    pub(crate) squares: Vec<Square>,
    /// How many scenarios stand behind it, in words.
    pub(crate) words: String,
}

struct Layers {
    within: LayerId,
    bad: LayerId,
    leaf: LayerId,
    open: LayerId,
    faces: LayerId,
    beams: LayerId,
    dimensions: LayerId,
    notes: LayerId,
}

impl Layers {
    fn add_to(scene: &mut Scene) -> Self {
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
                "What the leaf moves toward.",
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
    let pass = map
        .world
        .passes
        .iter()
        .find(|pass| pass.direction == map.direction)?;
    let mut scene = Scene::new(map.title.as_str(), units).describe(format!(
        "{} Squares in which somebody is touched are hatched: gray where no limit is passed, crosswise in the color of what fails where one is.",
        map.words
    ));
    let layers = Layers::add_to(&mut scene);
    for square in &map.squares {
        draw_square(&mut scene, &layers, map.side, square);
    }
    let half = map.world.leaf.thickness / 2.0;
    let sign = if pass.direction == Direction::Closing {
        1.0
    } else {
        -1.0
    };
    let shown = pass.plan.travel * (0.25 * sign);
    let ends = [
        (layers.open, "leaf before it starts", pass.edge),
        (
            layers.leaf,
            "leaf at the end",
            pass.edge - pass.plan.travel * sign,
        ),
    ];
    for (layer, words, edge) in ends {
        let outline = Figure::path([
            Point::new(edge + shown, half),
            Point::new(edge, half),
            Point::new(edge, -half),
            Point::new(edge + shown, -half),
        ]);
        scene.add_titled(layer, words, outline);
        scene.add(layers.notes, Label::new(Point::new(edge, half), words));
    }
    if let Some(face) = pass.opposing {
        let reach = Length::from_base(0.2);
        let line = Figure::line(Point::new(face, -reach), Point::new(face, reach));
        scene.add_titled(layers.faces, "what the leaf moves toward", line);
    }
    let zero = Length::from_base(0.0);
    let low = Point::new(pass.edge, -half);
    let travelled = Dimension::horizontal(
        [low, Point::new(pass.edge - pass.plan.travel * sign, -half)],
        DimensionLine::Away(Length::from_base(-0.012)),
    );
    scene.add_titled(layers.dimensions, "way of the leaf's edge", travelled);
    for beam in &map.world.beams {
        if beam.guards.contains(&map.direction) {
            let foot = Point::new(beam.to.x, zero);
            let offset = Dimension::vertical(
                [foot, Point::new(beam.to.x, beam.to.y)],
                DimensionLine::Away(Length::from_base(0.010)),
            );
            scene.add_titled(
                layers.dimensions,
                "distance of a beam from the gate line",
                offset,
            );
            let line = Figure::line(
                Point::new(beam.from.x, beam.from.y),
                Point::new(beam.to.x, beam.to.y),
            );
            scene.add_titled(layers.beams, "beam", line);
        }
    }
    for field in &map.world.scanners {
        if field.guards.contains(&map.direction) {
            let corners: Vec<Point> = field
                .corners
                .iter()
                .map(|corner| Point::new(corner.x, corner.y))
                .collect();
            scene.add_titled(layers.beams, "field", Figure::area(corners, Fill::Open));
        }
    }
    scene.remark(map.words.as_str());
    scene.remark("A square is hatched where at least one of them is touched in it: gray, no limit is passed; crosswise, one is. An empty square is not proved: the proofs are in the list of families.");
    Some(scene)
}

fn draw_square(scene: &mut Scene, layers: &Layers, side: Length, square: &Square) {
    let half = side / 2.0;
    let (low, high) = (square.at.moved(-half, -half), square.at.moved(half, half));
    let hatch = Hatch {
        angle: Angle::from_base(std::f64::consts::FRAC_PI_4),
        spacing: Length::from_base(0.0012),
        crossed: square.bad,
    };
    let (layer, words) = if square.bad {
        (layers.bad, "touched beyond limits, or trapped")
    } else {
        (layers.within, "touched within limits")
    };
    let figure = Figure::rectangle(low, high, Fill::Hatched(hatch));
    scene.add_titled(layer, words, figure);
}
