//! One case of the walk test in its moments, each a strip of the plan: where leaf and body are, and what happens then.

use super::part::Part;
use draw::{
    Anchor, Dimension, DimensionLine, Figure, Fill, Ink, Layer, LayerId, LinePattern, LineWeight,
    Point, Scene, Text,
};
use quantity::{Length, Quantity as _, Time, UnitSystem};

/// Moments beside each other.
const COLUMNS: usize = 3;
/// Moments beside each other where they are seen from the road: all of them.
pub(super) const IN_A_ROW: usize = 4;

/// Room between two moments (m).
const BETWEEN: f64 = 0.6;

/// What is shown beside the touch, along the gate line and across it: 4 ft and 3 ft, or 1.2 m and 0.9 m.
fn around(units: UnitSystem) -> (f64, f64) {
    match units {
        UnitSystem::UsCustomary => (1.2192, 0.9144),
        UnitSystem::Si => (1.2, 0.9),
    }
}

/// Up to how high a strip shows what is seen from the road, and how far below the ground (m).
const HIGH: f64 = 2.2;
const BELOW: f64 = 0.1;

/// The most letters of a line over a strip.
const LETTERS: usize = 32;

/// Room for the words over each moment, as a share of its height.
const WORDS: f64 = 0.28;

/// What the moments of a case have in common, and each of them.
#[derive(Debug, Clone)]
pub(crate) struct Case {
    /// Title of the figure: `Worst case 1: child of about 3`.
    pub(crate) title: String,
    /// What happens, in a sentence or two.
    pub(crate) words: String,
    /// It is seen from the road; else from above.
    pub(crate) from_the_road: bool,
    /// Beams and sides of fields, from end to end.
    pub(crate) beams: Vec<(Point, Point)>,
    /// Fixed things that the leaf moves toward, from end to end.
    pub(crate) faces: Vec<(Point, Point)>,
    /// Where the touch is.
    pub(crate) touch: Option<Point>,
    /// The moments in their order.
    pub(crate) moments: Vec<Moment>,
}

/// Where all are at one time.
#[derive(Debug, Clone)]
pub(crate) struct Moment {
    /// Time since the leaf started.
    pub(crate) time: Time,
    /// What happens: `the leaf touches`.
    pub(crate) words: String,
    /// Corners of the outline of each leaf.
    pub(crate) leaves: Vec<Vec<Point>>,
    /// The parts of the body.
    pub(crate) body: Vec<Part>,
    /// It is the moment of the touch.
    pub(crate) touched: bool,
}

/// The part of the plan that every moment shows (m).
#[derive(Debug, Clone, Copy)]
pub(super) struct Window {
    pub(super) left: f64,
    pub(super) low: f64,
    pub(super) right: f64,
    pub(super) high: f64,
}

impl Window {
    /// Around the touch, or around where the body ends up.
    fn of(case: &Case, units: UnitSystem) -> Option<Self> {
        let last = case.moments.last()?.body.first()?.middle();
        let touch = case.touch.map(|touch| (touch.x.base(), touch.y.base()));
        let (x, y) = touch.unwrap_or(last);
        if !(x.is_finite() && y.is_finite()) {
            return None;
        }
        let (aside, across) = around(units);
        let (low, high) = if case.from_the_road {
            (-BELOW, HIGH)
        } else {
            // The gate line is seen too, where it is not far.
            let line = if y.abs() < 2.0 * across { 0.0 } else { y };
            (y.min(line) - across, y.max(line) + across)
        };
        Some(Self {
            left: x - aside,
            right: x + aside,
            low,
            high,
        })
    }

    /// Whether a body is seen in it.
    fn sees(&self, moment: &Moment) -> bool {
        moment.body.iter().any(|part| {
            let (x, y) = part.middle();
            (self.left..self.right).contains(&x) && (self.low..self.high).contains(&y)
        })
    }

    fn width(&self) -> f64 {
        self.right - self.left
    }

    fn height(&self) -> f64 {
        self.high - self.low
    }

    /// The part of a line that lies within.
    pub(super) fn line(&self, from: Point, to: Point) -> Option<(Point, Point)> {
        let (x, y) = (from.x.base(), from.y.base());
        let (dx, dy) = (to.x.base() - x, to.y.base() - y);
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for (start, step, low, high) in
            [(x, dx, self.left, self.right), (y, dy, self.low, self.high)]
        {
            if step.abs() < 1e-12 {
                if start < low || start > high {
                    return None;
                }
                continue;
            }
            let (one, other) = ((low - start) / step, (high - start) / step);
            first = first.max(one.min(other));
            last = last.min(one.max(other));
        }
        (first < last).then(|| {
            (
                at(x + first * dx, y + first * dy),
                at(x + last * dx, y + last * dy),
            )
        })
    }

    /// The part of an outline that lies within.
    fn outline(&self, corners: &[Point]) -> Vec<Point> {
        let mut corners: Vec<(f64, f64)> = corners
            .iter()
            .map(|corner| (corner.x.base(), corner.y.base()))
            .collect();
        corners = kept(&corners, |(x, _)| x - self.left);
        corners = kept(&corners, |(x, _)| self.right - x);
        corners = kept(&corners, |(_, y)| y - self.low);
        corners = kept(&corners, |(_, y)| self.high - y);
        corners.into_iter().map(|(x, y)| at(x, y)).collect()
    }
}

/// The part of an outline on the side of a line where a measure is not below zero.
fn kept(corners: &[(f64, f64)], measure: impl Fn((f64, f64)) -> f64) -> Vec<(f64, f64)> {
    let mut found = Vec::new();
    for (index, corner) in corners.iter().enumerate() {
        let next = corners[(index + 1) % corners.len()];
        let (here, there) = (measure(*corner), measure(next));
        if here >= 0.0 {
            found.push(*corner);
        }
        if (here < 0.0) != (there < 0.0) {
            let share = here / (here - there);
            found.push((
                corner.0 + share * (next.0 - corner.0),
                corner.1 + share * (next.1 - corner.1),
            ));
        }
    }
    found
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}

struct Layers {
    ground: LayerId,
    frame: LayerId,
    faces: LayerId,
    leaf: LayerId,
    beams: LayerId,
    body: LayerId,
    touch: LayerId,
    dimensions: LayerId,
    words: LayerId,
}

impl Layers {
    fn add_to(scene: &mut Scene, ground: &str) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            ground: layer(
                Layer::new(ground, Fine)
                    .ink(Ink::Gray)
                    .pattern(LinePattern::DashDot),
                "The gate line; seen from the road, the ground.",
            ),
            faces: layer(
                Layer::new("fixed things", Heavy).ink(Ink::Gray),
                "What the leaf moves toward.",
            ),
            leaf: layer(Layer::new("leaf", Heavy), "The leaf at that moment."),
            beams: layer(
                Layer::new("beams and fields", Fine).pattern(LinePattern::Dotted),
                "Beams, and sides of fields.",
            ),
            body: layer(
                Layer::new("body", Medium),
                "The parts of the body from above.",
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
    let window = Window::of(case, units)?;
    let mut scene = Scene::new(case.title.as_str(), units).describe(format!(
        "{} Seen from {} in a row of moments.",
        case.words,
        if case.from_the_road {
            "the road"
        } else {
            "above"
        }
    ));
    let ground = if case.from_the_road {
        "ground"
    } else {
        "gate line"
    };
    let layers = Layers::add_to(&mut scene, ground);
    let step = (
        window.width() + BETWEEN,
        window.height() * (1.0 + WORDS) + BETWEEN,
    );
    let columns = if case.from_the_road {
        IN_A_ROW
    } else {
        COLUMNS
    };
    let seen = case.moments.iter().filter(|moment| window.sees(moment));
    for (index, moment) in seen.enumerate() {
        #[allow(clippy::cast_precision_loss, reason = "there are few moments")]
        let (column, row) = ((index % columns) as f64, (index / columns) as f64);
        let place = (column * step.0 - window.left, -row * step.1 - window.low);
        strip(&mut scene, &layers, (case, moment), &window, place);
    }
    let foot = |x: f64| at(x, -window.height() * 0.04);
    let wide = Dimension::horizontal(
        [foot(0.0), foot(window.width())],
        DimensionLine::Away(Length::from_base(-0.008)),
    );
    scene.add_titled(layers.dimensions, "width of a strip", wide);
    scene.remark(case.words.as_str());
    scene.remark(if case.from_the_road {
        "Seen from the road: who is behind the leaf or before it is not in its way. Beams and fields are dotted at their height, the touch is marked with a cross. A simulation is no force test and no test on site."
    } else {
        "Seen from above, the property upward; beams and fields are dotted, the touch is marked with a cross. A simulation is no force test and no test on site."
    });
    Some(scene)
}

fn strip(
    scene: &mut Scene,
    layers: &Layers,
    (case, moment): (&Case, &Moment),
    window: &Window,
    place: (f64, f64),
) {
    let moved = |point: Point| at(point.x.base() + place.0, point.y.base() + place.1);
    let line = |scene: &mut Scene, layer: LayerId, title: &str, (from, to): (Point, Point)| {
        if let Some((from, to)) = window.line(from, to) {
            scene.add_titled(layer, title, Figure::line(moved(from), moved(to)));
        }
    };
    line(
        scene,
        layers.ground,
        if case.from_the_road {
            "ground"
        } else {
            "gate line"
        },
        (at(window.left, 0.0), at(window.right, 0.0)),
    );
    for face in &case.faces {
        line(scene, layers.faces, "what the leaf moves toward", *face);
    }
    for leaf in &moment.leaves {
        let leaf: Vec<Point> = window.outline(leaf).into_iter().map(moved).collect();
        if leaf.len() > 2 {
            let area = Figure::area(leaf, Fill::Solid(Ink::Tint));
            scene.add_titled(layers.leaf, "leaf", area);
        }
    }
    for part in &moment.body {
        let [left, right, low, high] = part.extent();
        let within =
            left > window.left && right < window.right && low > window.low && high < window.high;
        if within {
            let figure = match part {
                Part::Circle(middle, radius) => Figure::circle(moved(*middle), *radius, Fill::Open),
                Part::Box(low, high) => Figure::rectangle(moved(*low), moved(*high), Fill::Open),
            };
            scene.add_titled(layers.body, "part of the body", figure);
        }
    }
    for beam in &case.beams {
        line(scene, layers.beams, "beam", *beam);
    }
    if let (true, Some(touch)) = (moment.touched, case.touch) {
        let (touch, arm) = (moved(touch), Length::from_base(0.06 * window.height()));
        for (right, up) in [(arm, arm), (arm, -arm)] {
            let stroke = Figure::line(touch.moved(-right, -up), touch.moved(right, up));
            scene.add_titled(layers.touch, "touch", stroke);
        }
    }
    let (low, high) = (
        moved(at(window.left, window.low)),
        moved(at(window.right, window.high)),
    );
    scene.add_titled(
        layers.frame,
        "strip",
        Figure::rectangle(low, high, Fill::Open),
    );
    let head = Point::new(low.x, high.y + Length::from_base(0.06 * window.height()));
    let words = lines(&format!("{:.2} s: {}", moment.time.base(), moment.words));
    let up = Length::from_base(0.09 * window.height()) * f64::from(u8::from(words.contains('\n')));
    scene.add(
        layers.words,
        Text::new(head.moved(Length::from_base(0.0), up), words).anchor(Anchor::Start),
    );
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
