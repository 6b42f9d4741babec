//! Vehicles on the grade of the drive from the side, each where its underside comes nearest to the ground.

use super::direction;
use super::layers::Layers;
use design::swept::{ShownLane, ShownSweep};
use draw::{Anchor, Dimension, DimensionLine, Figure, Fill, Ink, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use sim::swept::{Body, OverGround, Under, Unit};
use site::Site;

/// Ground that is shown before and behind the vehicle, and between the strips (m).
const BEFORE: f64 = 3.0;
const BETWEEN: f64 = 3.6;
/// Strips that stand side by side.
const COLUMNS: usize = 2;
/// Radius of a wheel as it is drawn (m).
const WHEEL: f64 = 0.45;

/// A vehicle's strip: where its left end and its ground's lowest level lie on the drawing.
struct Strip<'l> {
    sweep: &'l ShownSweep,
    lowest: OverGround,
    from: f64,
    to: f64,
    left: f64,
    up: f64,
}

/// The scene of the vehicles of a lane; none where no underside is known.
pub(super) fn scene(site: &Site, lane: &ShownLane) -> Option<Scene> {
    let shown = worst(lane);
    if shown.is_empty() {
        return None;
    }
    let title = format!("Vehicles on the grade of {}", lane.called);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "Each vehicle from the side on the grade of the drive, where its underside comes nearest to the ground, with the room that is left there.",
    );
    let layers = Layers::add_to(&mut scene);
    let long = shown.iter().map(|(_, ends, _)| ends.1 - ends.0);
    let longest = long.fold(0.0, f64::max) + 2.0 * BEFORE;
    let high = shown
        .iter()
        .map(|(sweep, ..)| sweep.height.map_or(4.0, Length::base));
    let highest = high.fold(0.0, f64::max);
    for (index, (sweep, ends, lowest)) in shown.into_iter().enumerate() {
        let count = |number: usize| f64::from(u32::try_from(number).unwrap_or(0));
        let strip = Strip {
            sweep,
            lowest,
            from: ends.0 - BEFORE,
            to: ends.1 + BEFORE,
            left: count(index % COLUMNS) * (longest + BETWEEN),
            up: -count(index / COLUMNS) * (highest + 2.2 * BETWEEN),
        };
        strip.draw(&mut scene, &layers, highest);
    }
    scene.remark("The ground is straight between the levels that were surveyed, its breaks as sharp as they can be; springs dip and tires sink a little more. Undersides as measured, loaded.");
    Some(scene)
}

type Shown<'l> = (&'l ShownSweep, (f64, f64), OverGround);

/// Of each vehicle the way on which its underside is lowest, with the ends of the vehicle there.
fn worst(lane: &ShownLane) -> Vec<Shown<'_>> {
    let mut found: Vec<Shown<'_>> = Vec::new();
    for sweep in &lane.sweeps {
        let Some(lowest) = sweep.lowest.filter(|lowest| lowest.room.base().is_finite()) else {
            continue;
        };
        let shown = (sweep, ends(sweep), lowest);
        match found.iter_mut().find(|known| known.0.id == sweep.id) {
            Some(known) if known.2.room > lowest.room => *known = shown,
            Some(_) => {}
            None => found.push(shown),
        }
    }
    found
}

/// From where to where along the way the vehicle reaches (m).
fn ends(sweep: &ShownSweep) -> (f64, f64) {
    let each = sweep.rig.units.iter().zip(&sweep.supports);
    each.fold(
        (f64::INFINITY, f64::NEG_INFINITY),
        |(low, high), (unit, [front, rear])| {
            let (ahead, behind) = unit
                .body
                .map_or((0.0, 0.0), |body| (body.ahead.base(), body.behind.base()));
            (
                low.min(rear.0.base() - behind),
                high.max(front.0.base() + ahead),
            )
        },
    )
}

impl Strip<'_> {
    fn at(&self, along: f64, up: f64) -> Point {
        Point::new(
            Length::from_base(self.left + along - self.from),
            Length::from_base(self.up + up - self.level()),
        )
    }

    /// The level from which the strip counts.
    fn level(&self) -> f64 {
        self.ground(f64::midpoint(self.from, self.to))
    }

    /// How high the ground is, its first and last slope going on beyond its ends.
    fn ground(&self, at: f64) -> f64 {
        let levels = &self.sweep.ground;
        let pair = levels.windows(2).find(|pair| at <= pair[1].0.base());
        let Some(pair) = pair.or_else(|| levels.windows(2).last()) else {
            return 0.0;
        };
        let (from, to) = (pair[0], pair[1]);
        let share = (at - from.0.base()) / (to.0 - from.0).base();
        from.1.base() + (to.1 - from.1).base() * share
    }

    fn draw(&self, scene: &mut Scene, layers: &Layers, highest: f64) {
        self.draw_ground(scene, layers);
        let each = self.sweep.rig.units.iter().zip(&self.sweep.supports);
        for ((unit, ends), under) in each.zip(&self.sweep.under) {
            let ends = ends.map(|(along, up)| (along.base(), up.base()));
            self.draw_unit(scene, layers, unit, (ends, *under));
        }
        self.draw_lowest(scene, layers);
        self.draw_words(scene, layers, highest);
    }

    fn draw_ground(&self, scene: &mut Scene, layers: &Layers) {
        let inside = self.sweep.ground.iter().map(|level| level.0.base());
        let mut places = vec![self.from];
        places.extend(inside.filter(|at| self.from < *at && *at < self.to));
        places.push(self.to);
        let line: Vec<Point> = places
            .iter()
            .map(|at| self.at(*at, self.ground(*at)))
            .collect();
        scene.add_titled(layers.ground, "finished surface", Figure::path(line));
        if (self.from..self.to).contains(&0.0) {
            let gate = Figure::line(
                self.at(0.0, self.ground(0.0)),
                self.at(0.0, self.ground(0.0) - 0.5),
            );
            scene.add_titled(layers.least, "gate line", gate);
        }
    }

    fn draw_unit(
        &self,
        scene: &mut Scene,
        layers: &Layers,
        unit: &Unit,
        ([front, rear], under): ([(f64, f64); 2], Under),
    ) {
        let slope = (front.1 - rear.1) / (front.0 - rear.0);
        let beam = |at: f64| rear.1 + slope * (at - rear.0);
        if let Some(body) = unit.body {
            let corners = self.body(body, (front.0, rear.0), under, beam);
            let title = format!("{} on the grade", self.sweep.id);
            let figure = Figure::area(corners, Fill::Solid(Ink::Tint));
            scene.add_titled(layers.bodies, title, figure);
        }
        let first = self.sweep.rig.units.first() == Some(unit);
        let steered = [front].into_iter().filter(|_| first || unit.body.is_none());
        for wheel in steered.chain([rear]) {
            let middle = self.at(wheel.0, wheel.1 + WHEEL);
            let circle = Figure::circle(middle, Length::from_base(WHEEL), Fill::Solid(Ink::Paper));
            scene.add_titled(layers.bodies, format!("wheel of {}", self.sweep.id), circle);
        }
    }

    /// The body from the side, around it from its nose along its underside.
    fn body(
        &self,
        body: Body,
        (front, rear): (f64, f64),
        under: Under,
        beam: impl Fn(f64) -> f64,
    ) -> Vec<Point> {
        let (nose, tail) = (front + body.ahead.base(), rear - body.behind.base());
        let between = under.between.base();
        let low = |at: f64, up: f64| self.at(at, beam(at) + up);
        let mut corners = Vec::with_capacity(8);
        if nose > front {
            let ahead = under.ahead.map_or(between, Length::base);
            corners.extend([low(nose, ahead), low(front, ahead)]);
        }
        corners.extend([low(front.min(nose), between), low(rear, between)]);
        let behind = under.behind.map_or(between, Length::base);
        corners.extend([low(rear, behind), low(tail, behind)]);
        let height = self.sweep.height.map_or(between + 2.0, Length::base);
        corners.extend([low(tail, height), low(nose, height)]);
        corners
    }

    fn draw_lowest(&self, scene: &mut Scene, layers: &Layers) {
        let at = self.lowest.at.base();
        let ground = self.ground(at);
        let points = [
            self.at(at, ground),
            self.at(at, ground + self.lowest.room.base()),
        ];
        let line = DimensionLine::Away(Length::from_base(0.006));
        let title = format!("least room under {}", self.sweep.id);
        if self.lowest.room.base().abs() > 1e-3 {
            scene.add_titled(
                layers.least,
                title.as_str(),
                Figure::line(points[0], points[1]),
            );
            scene.add_titled(layers.dimensions, title, Dimension::vertical(points, line));
        }
    }

    fn draw_words(&self, scene: &mut Scene, layers: &Layers, highest: f64) {
        let units = scene.units;
        let room = draw::dimension_text(self.lowest.room.abs(), units);
        let from_gate = draw::dimension_text(self.lowest.at.abs(), units);
        let before = (self.lowest.at.base() < 0.0) == (direction(self.sweep) == "in");
        let side = if before { "before" } else { "behind" };
        let left = if self.lowest.room.base() < 0.0 {
            "too little"
        } else {
            "left"
        };
        let words = format!(
            "{room} {left}, {from_gate} {side} the gate line, driving {}",
            direction(self.sweep)
        );
        let height = TextHeight::Paper(Length::from_base(0.003));
        for (up, words, height) in [
            (2.4, self.sweep.what.clone(), height),
            (1.7, words, TextHeight::ordinary()),
        ] {
            let at = Point::new(
                Length::from_base(self.left),
                Length::from_base(self.up + highest + up),
            );
            scene.add(
                layers.notes,
                Text::new(at, words).height(height).anchor(Anchor::Start),
            );
        }
    }
}
