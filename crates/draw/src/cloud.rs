//! Clouds around what has changed since an earlier issue of a drawing.

use crate::scene::{Content, Shape};
use crate::{Figure, Label, Layer, LineWeight, Point, Scene};
use quantity::{Angle, Length, Quantity};
use std::f64::consts::{FRAC_PI_2, PI};

/// Clear room around what has changed, as a share of the extent of the drawing.
const ROOM: f64 = 0.012;
/// Most clouds on one drawing; where more would be needed, the nearest flow together.
const MOST: usize = 24;

/// A box along the axes: left, lower, right, upper (m).
#[derive(Debug, Clone, Copy, PartialEq)]
struct Around {
    low: [f64; 2],
    high: [f64; 2],
}

impl Around {
    fn of(points: &[Point]) -> Option<Self> {
        let finite = |point: &&Point| point.x.base().is_finite() && point.y.base().is_finite();
        points.iter().filter(finite).fold(None, |found, point| {
            let at = [point.x.base(), point.y.base()];
            let own = Self { low: at, high: at };
            Some(found.map_or(own, |all: Self| all.with(&own)))
        })
    }

    fn with(&self, other: &Self) -> Self {
        let each =
            |of: fn(f64, f64) -> f64, a: [f64; 2], b: [f64; 2]| [of(a[0], b[0]), of(a[1], b[1])];
        Self {
            low: each(f64::min, self.low, other.low),
            high: each(f64::max, self.high, other.high),
        }
    }

    fn grown(&self, by: f64) -> Self {
        Self {
            low: self.low.map(|low| low - by),
            high: self.high.map(|high| high + by),
        }
    }

    fn meets(&self, other: &Self) -> bool {
        (0..2).all(|axis| self.low[axis] <= other.high[axis] && other.low[axis] <= self.high[axis])
    }

    /// The farther it reaches, the larger.
    fn extent(&self) -> f64 {
        (self.high[0] - self.low[0]).max(self.high[1] - self.low[1])
    }
}

impl Scene {
    /// This drawing with a cloud around all that is not as it was on an earlier one, and what the clouds mean.
    ///
    /// What has gone is clouded where it was. Where the earlier issue had no such drawing, that is said and nothing is
    /// clouded. The revision stands beside each cloud.
    #[must_use]
    pub fn clouded(mut self, before: Option<&Scene>, since: &str, revision: &str) -> Self {
        let Some(before) = before else {
            self.remark(format!("This sheet is new since revision {since}."));
            return self;
        };
        let clouds = clouds(&self, before);
        if clouds.is_empty() {
            self.remark(format!(
                "Nothing on this sheet has changed since revision {since}."
            ));
            return self;
        }
        self.remark(format!(
            "Clouded: what has changed since revision {since}; what has gone is clouded where it was."
        ));
        let layer = Layer::new(
            format!("changed since revision {since}"),
            LineWeight::Medium,
        )
        .describe("Clouds around what is not as it was.");
        let layer = self.layer(layer);
        let scallop = size(&self) * ROOM * 1.6;
        for cloud in clouds {
            for arc in scallops(&cloud, scallop) {
                self.add(layer, arc);
            }
            let corner = Point::new(
                Length::from_base(cloud.high[0]),
                Length::from_base(cloud.high[1]),
            );
            self.add(layer, Label::new(corner, format!("rev. {revision}")));
        }
        self
    }
}

/// How far a drawing reaches (m); never zero.
fn size(scene: &Scene) -> f64 {
    let points: Vec<Point> = scene
        .shapes()
        .iter()
        .flat_map(|shape| points(&shape.content))
        .collect();
    let extent = Around::of(&points).map_or(0.0, |all| all.extent());
    if extent > 0.0 { extent } else { 1.0 }
}

/// The boxes around what differs, those that meet as one.
fn clouds(now: &Scene, before: &Scene) -> Vec<Around> {
    let room = size(now) * ROOM;
    let mut boxes: Vec<Around> = differing(now, before)
        .into_iter()
        .chain(differing(before, now))
        .filter_map(|shape| Around::of(&points(&shape.content)))
        .map(|around| around.grown(room))
        .collect();
    let mut reach = 0.0;
    loop {
        boxes = merged(boxes, reach);
        if boxes.len() <= MOST {
            return boxes;
        }
        reach += room;
    }
}

/// Shapes of one scene that the other does not have.
fn differing<'s>(one: &'s Scene, other: &Scene) -> Vec<&'s Shape> {
    let name = |scene: &Scene, shape: &Shape| {
        let layer = scene.layers().get(shape.layer.0);
        layer.map(|layer| layer.name.clone()).unwrap_or_default()
    };
    let mut known: Vec<(String, &Content)> = other
        .shapes()
        .iter()
        .map(|shape| (name(other, shape), &shape.content))
        .collect();
    let mut found = Vec::new();
    for shape in one.shapes() {
        let layer = name(one, shape);
        let same = known
            .iter()
            .position(|(known, content)| alike(content, &shape.content) && *known == layer);
        match same {
            Some(at) => {
                known.swap_remove(at);
            }
            None => found.push(shape),
        }
    }
    found
}

/// The same content; words that only made room for others are the same.
fn alike(one: &Content, other: &Content) -> bool {
    match (one, other) {
        (Content::Text(one), Content::Text(other)) => one.words == other.words,
        (Content::Label(one), Content::Label(other)) => one.words == other.words,
        (Content::Note(one), Content::Note(other)) => one.words == other.words,
        _ => one == other,
    }
}

/// Boxes that meet, or nearly, as one.
fn merged(boxes: Vec<Around>, reach: f64) -> Vec<Around> {
    let mut merged: Vec<Around> = Vec::new();
    for mut own in boxes {
        while let Some(at) = merged
            .iter()
            .position(|other| other.grown(reach).meets(&own))
        {
            own = own.with(&merged.swap_remove(at));
        }
        merged.push(own);
    }
    merged
}

/// Points that a shape touches.
fn points(content: &Content) -> Vec<Point> {
    match content {
        Content::Figure(figure) => of_figure(figure),
        Content::Text(text) => vec![text.at],
        Content::Label(label) => vec![label.at],
        Content::Note(note) => vec![note.at],
        Content::Dimension(dimension) => dimension.points.clone(),
        Content::Symbol(placement) => vec![placement.at],
    }
}

fn of_figure(figure: &Figure) -> Vec<Point> {
    match figure {
        Figure::Line { from, to } => vec![*from, *to],
        Figure::Path { points } | Figure::Area { points, .. } => points.clone(),
        Figure::Circle { center, radius, .. } => {
            vec![
                center.moved(-*radius, -*radius),
                center.moved(*radius, *radius),
            ]
        }
        Figure::Arc {
            center,
            radius,
            start,
            sweep,
        } => Point::along_arc(*center, *radius, *start, *sweep),
    }
}

/// Half circles along the four sides of a box, bulging outward.
fn scallops(around: &Around, wanted: f64) -> Vec<Figure> {
    let [left, low] = around.low;
    let [right, high] = around.high;
    let sides = [
        ([left, low], [right, low], 0.0),
        ([right, low], [right, high], FRAC_PI_2),
        ([right, high], [left, high], PI),
        ([left, high], [left, low], 3.0 * FRAC_PI_2),
    ];
    sides
        .into_iter()
        .flat_map(|(from, to, direction)| side(from, to, direction, wanted))
        .collect()
}

fn side(from: [f64; 2], to: [f64; 2], direction: f64, wanted: f64) -> Vec<Figure> {
    let length = (to[0] - from[0]).hypot(to[1] - from[1]);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between one and sixty"
    )]
    let count = (length / wanted).ceil().clamp(1.0, 60.0) as u32;
    let step = length / f64::from(count);
    let at = |along: f64, axis: usize| from[axis] + (to[axis] - from[axis]) * along;
    (0..count)
        .map(|place| {
            let along = (f64::from(place) + 0.5) / f64::from(count);
            Figure::arc(
                Point::new(
                    Length::from_base(at(along, 0)),
                    Length::from_base(at(along, 1)),
                ),
                Length::from_base(step / 2.0),
                Angle::from_base(direction + PI),
                Angle::from_base(PI),
            )
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::UnitSystem;

    fn scene(ends: &[f64]) -> Scene {
        let mut scene = Scene::new("Plan", UnitSystem::Si);
        let layer = scene.layer(Layer::new("walls", LineWeight::Heavy));
        let point = |x: f64, y: f64| Point::new(Length::from_base(x), Length::from_base(y));
        for end in ends {
            scene.add(layer, Figure::line(point(*end, 0.0), point(*end, 1.0)));
        }
        scene
    }

    fn arcs(scene: &Scene) -> usize {
        let is_arc = |shape: &&Shape| matches!(shape.content, Content::Figure(Figure::Arc { .. }));
        scene.shapes().iter().filter(is_arc).count()
    }

    #[test]
    fn the_same_drawing_has_no_cloud() {
        let same = scene(&[0.0, 10.0]).clouded(Some(&scene(&[10.0, 0.0])), "A", "B");
        assert_eq!(arcs(&same), 0);
        assert!(same.remarks[0].contains("Nothing"), "{:?}", same.remarks);
    }

    #[test]
    fn what_came_and_what_went_is_clouded() {
        let came = scene(&[0.0, 5.0, 10.0]).clouded(Some(&scene(&[0.0, 10.0])), "A", "B");
        let went = scene(&[0.0, 10.0]).clouded(Some(&scene(&[0.0, 5.0, 10.0])), "A", "B");
        assert!(arcs(&came) > 4);
        assert_eq!(arcs(&came), arcs(&went));
        assert!(
            came.layers()
                .iter()
                .any(|layer| layer.name.contains("revision A"))
        );
    }

    #[test]
    fn a_new_drawing_says_so() {
        let new = scene(&[0.0]).clouded(None, "A", "B");
        assert_eq!(arcs(&new), 0);
        assert!(new.remarks[0].contains("new since revision A"));
    }

    #[test]
    fn many_changes_flow_together() {
        let many: Vec<f64> = (0..400).map(f64::from).collect();
        let found = clouds(&scene(&many), &scene(&[]));
        assert!(found.len() <= MOST, "{}", found.len());
    }

    #[test]
    fn a_cloud_goes_all_around_what_changed() {
        let around = Around {
            low: [0.0, 0.0],
            high: [4.0, 2.0],
        };
        let ends: Vec<Point> = scallops(&around, 0.5).iter().flat_map(of_figure).collect();
        let whole = Around::of(&ends).map(|whole| whole.grown(1e-6));
        assert!(whole.is_some_and(|whole| whole.low[0] <= 0.0 && whole.high[1] >= 2.0));
    }
}
