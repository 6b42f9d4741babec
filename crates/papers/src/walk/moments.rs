//! One case of the walk test in its moments: where leaf and body are, and what happens then. Each is a strip of the plan;
//! of a leaf that rises the elevation over it.

use super::part::Part;
use super::window::{Window, at};
use draw::{
    Anchor, Dimension, DimensionLine, Figure, Fill, Ink, Layer, LayerId, LinePattern, LineWeight,
    Point, Scene, Text,
};
use quantity::{Length, Quantity as _, Time, UnitSystem};

/// Moments beside each other.
const COLUMNS: usize = 3;
/// Moments beside each other where they are seen from the road as well: all of them.
pub(super) const IN_A_ROW: usize = 4;

/// Room between two moments (m).
const BETWEEN: f64 = 0.6;

/// The most letters of a line over a strip.
const LETTERS: usize = 32;

/// Room for the words over each moment, as a share of its height.
const WORDS: f64 = 0.28;
/// Room for the words over the plan below an elevation, and how high over it they stand (m).
const NOTE: f64 = 0.7;
const OVER: f64 = 0.3;

/// Half the size of the cross at a touch that is seen from the road (m).
const CROSS: f64 = 0.13;

/// What the moments of a case have in common, and each of them.
#[derive(Debug, Clone)]
pub(crate) struct Case {
    /// Title of the figure: `Worst case 1: child of about 3`.
    pub(crate) title: String,
    /// What happens, in a sentence or two.
    pub(crate) words: String,
    /// From where each moment is seen: from above; of a leaf that rises from the road first.
    pub(crate) views: Vec<View>,
    /// The moments in their order.
    pub(crate) moments: Vec<Moment>,
}

/// From where a case is seen, and what stands there.
#[derive(Debug, Clone)]
pub(crate) struct View {
    /// It is seen from the road; else from above.
    pub(crate) from_the_road: bool,
    /// What is shown.
    pub(crate) window: Window,
    /// Beams and sides of fields, from end to end.
    pub(crate) beams: Vec<(Point, Point)>,
    /// Fixed things that the leaf moves toward, from end to end.
    pub(crate) faces: Vec<(Point, Point)>,
    /// Sides of the opening, from end to end.
    pub(crate) sides: Vec<(Point, Point)>,
    /// Opposite corners of the housing of an arm's drive.
    pub(crate) housing: Option<(Point, Point)>,
    /// Where the touch is.
    pub(crate) touch: Option<Point>,
}

/// Where all are at one time.
#[derive(Debug, Clone)]
pub(crate) struct Moment {
    /// Time since the leaf started.
    pub(crate) time: Time,
    /// What happens: `the leaf touches`.
    pub(crate) words: String,
    /// How a leaf that rises stands: `12° up, its end at 1.7 m`.
    pub(crate) note: String,
    /// What is seen in each view.
    pub(crate) seen: Vec<Seen>,
    /// It is the moment of the touch.
    pub(crate) touched: bool,
}

/// What is seen in a view at one time.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    /// Corners of the outline of each leaf.
    pub(crate) leaves: Vec<Vec<Point>>,
    /// The parts of the body.
    pub(crate) body: Vec<Part>,
}

struct Layers {
    ground: LayerId,
    frame: LayerId,
    faces: LayerId,
    sides: LayerId,
    leaf: LayerId,
    beams: LayerId,
    body: LayerId,
    beside: LayerId,
    touch: LayerId,
    dimensions: LayerId,
    words: LayerId,
}

impl Layers {
    fn add_to(scene: &mut Scene, road: bool) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        let ground = if road {
            "ground, gate line"
        } else {
            "gate line"
        };
        Self {
            ground: layer(
                Layer::new(ground, Fine)
                    .ink(Ink::Gray)
                    .pattern(LinePattern::DashDot),
                "The gate line; seen from the road, the ground.",
            ),
            faces: layer(
                Layer::new("fixed things", Heavy).ink(Ink::Gray),
                "What the leaf moves toward, and the housing of an arm's drive.",
            ),
            sides: layer(
                Layer::new("sides of the opening", Fine).pattern(LinePattern::DashDotDot),
                "Where the way through the gate ends at either side.",
            ),
            leaf: layer(Layer::new("leaf", Heavy), "The leaf at that moment."),
            beams: layer(
                Layer::new("beams and fields", Fine).pattern(LinePattern::Dotted),
                "Beams, and sides of fields.",
            ),
            beside: layer(
                Layer::new("body beside the leaf's way", Fine).ink(Ink::Gray),
                "Parts of the body before or behind the leaf, where it passes them by.",
            ),
            body: layer(
                Layer::new("body", Medium),
                "Parts of the body that the leaf may touch.",
            ),
            touch: layer(
                Layer::new("touch", Medium).ink(Ink::Fails),
                "Where the leaf touches.",
            ),
            frame: layer(
                Layer::new("strips", Fine).ink(Ink::Gray),
                "Edges of the strips.",
            ),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            words: layer(Layer::new("notes", Fine), "Words."),
        }
    }
}

/// The figure of a case; nothing where no body is shown.
pub(crate) fn scene(case: &Case, units: UnitSystem) -> Option<Scene> {
    let first = case.views.first()?;
    let road = first.from_the_road;
    let mut scene = Scene::new(case.title.as_str(), units).describe(format!(
        "{} Seen from {} in a row of moments.",
        case.words,
        if road {
            "the road and from above"
        } else {
            "above"
        }
    ));
    let layers = Layers::add_to(&mut scene, road);
    let (wide, tall) = (first.window.width(), first.window.height());
    let below: f64 = case.views.iter().skip(1).map(room).sum();
    let step = (wide + BETWEEN, tall * (1.0 + WORDS) + below + BETWEEN);
    let columns = if road { IN_A_ROW } else { COLUMNS };
    let is_seen = |moment: &&Moment| {
        let mut seen = case.views.iter().zip(&moment.seen);
        road || seen.any(|(view, seen)| view.window.sees(seen))
    };
    let moments = case.moments.iter().filter(is_seen);
    for (index, moment) in moments.enumerate() {
        #[allow(clippy::cast_precision_loss, reason = "there are few moments")]
        let (column, row) = ((index % columns) as f64, (index / columns) as f64);
        let (x, mut y) = (column * step.0, -row * step.1);
        head(&mut scene, &layers, moment, (x, y + tall), tall);
        for (at, (view, seen)) in case.views.iter().zip(&moment.seen).enumerate() {
            if at > 0 {
                y -= room(view);
                let over = (x, y + view.window.height() + OVER);
                say(&mut scene, &layers, over, moment.note.clone());
            }
            let place = (x - view.window.left, y - view.window.low);
            strip(&mut scene, &layers, (view, seen, moment.touched), place);
        }
    }
    let foot = |x: f64| at(x, -below - tall * 0.04);
    let away = DimensionLine::Away(Length::from_base(-0.008));
    let wide = Dimension::horizontal([foot(0.0), foot(wide)], away);
    scene.add_titled(layers.dimensions, "width of a strip", wide);
    scene.remark(case.words.as_str());
    scene.remark(if road {
        "Above seen from the road, below from above with the property upward. Parts of the body that the leaf passes by, before or behind it, are gray. Beams and fields are dotted, the touch is marked with a cross. A simulation is no force test and no test on site."
    } else {
        "Seen from above, the property upward; beams and fields are dotted, the touch is marked with a cross. A simulation is no force test and no test on site."
    });
    Some(scene)
}

/// Room for a view below another, with the words over it.
fn room(view: &View) -> f64 {
    view.window.height() + NOTE
}

/// The words over a strip.
fn head(scene: &mut Scene, layers: &Layers, moment: &Moment, (left, high): (f64, f64), tall: f64) {
    let words = lines(&format!("{:.2} s: {}", moment.time.base(), moment.words));
    let up = 0.09 * tall * f64::from(u8::from(words.contains('\n')));
    say(scene, layers, (left, high + 0.06 * tall + up), words);
}

fn say(scene: &mut Scene, layers: &Layers, (x, y): (f64, f64), words: String) {
    scene.add(
        layers.words,
        Text::new(at(x, y), words).anchor(Anchor::Start),
    );
}

fn strip(
    scene: &mut Scene,
    layers: &Layers,
    (view, seen, touched): (&View, &Seen, bool),
    place: (f64, f64),
) {
    let window = &view.window;
    let moved = |point: Point| at(point.x.base() + place.0, point.y.base() + place.1);
    let line = |scene: &mut Scene, layer: LayerId, title: &str, (from, to): (Point, Point)| {
        if let Some((from, to)) = window.line(from, to) {
            scene.add_titled(layer, title, Figure::line(moved(from), moved(to)));
        }
    };
    let ground = if view.from_the_road {
        "ground"
    } else {
        "gate line"
    };
    let level = (at(window.left, 0.0), at(window.right, 0.0));
    line(scene, layers.ground, ground, level);
    for side in &view.sides {
        line(scene, layers.sides, "side of the opening", *side);
    }
    for face in &view.faces {
        line(scene, layers.faces, "what the leaf moves toward", *face);
    }
    if let Some((low, high)) = view.housing {
        let housing = Figure::rectangle(moved(low), moved(high), Fill::Open);
        scene.add_titled(layers.faces, "housing of the drive", housing);
    }
    for leaf in &seen.leaves {
        let leaf: Vec<Point> = window.outline(leaf).into_iter().map(moved).collect();
        if leaf.len() > 2 {
            let area = Figure::area(leaf, Fill::Solid(Ink::Tint));
            scene.add_titled(layers.leaf, "leaf", area);
        }
    }
    for part in &seen.body {
        let [left, right, low, high] = part.extent();
        let within =
            left > window.left && right < window.right && low > window.low && high < window.high;
        if within {
            let (figure, layer) = match part {
                Part::Circle(middle, radius) => (
                    Figure::circle(moved(*middle), *radius, Fill::Open),
                    layers.body,
                ),
                Part::Box(low, high, in_the_way) => (
                    Figure::rectangle(moved(*low), moved(*high), Fill::Open),
                    if *in_the_way {
                        layers.body
                    } else {
                        layers.beside
                    },
                ),
            };
            scene.add_titled(layer, "part of the body", figure);
        }
    }
    for beam in &view.beams {
        line(scene, layers.beams, "beam", *beam);
    }
    if let (true, Some(touch)) = (touched, view.touch) {
        let arm = if view.from_the_road {
            CROSS
        } else {
            0.06 * window.height()
        };
        let arm = Length::from_base(arm);
        let touch = moved(touch);
        for (right, up) in [(arm, arm), (arm, -arm)] {
            let stroke = Figure::line(touch.moved(-right, -up), touch.moved(right, up));
            scene.add_titled(layers.touch, "touch", stroke);
        }
    }
    let (low, high) = (
        moved(at(window.left, window.low)),
        moved(at(window.right, window.high)),
    );
    let frame = Figure::rectangle(low, high, Fill::Open);
    scene.add_titled(layers.frame, "strip", frame);
}

/// The words in one line or two.
fn lines(words: &str) -> String {
    if words.chars().count() <= LETTERS {
        return words.to_owned();
    }
    let cut = words
        .char_indices()
        .filter(|(at, letter)| *letter == ' ' && *at <= LETTERS)
        .map(|(at, _)| at)
        .next_back();
    match cut {
        Some(at) => format!("{}\n{}", &words[..at], &words[at + 1..]),
        None => words.to_owned(),
    }
}
