//! Puts things on the page of a camera, in millimeters of paper.

use super::layers::Layers;
use draw::{Anchor, Figure, Fill, LayerId, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _, UnitSystem};

/// A spot, on the page in millimeters or on the site in meters.
pub(super) type Spot = (f64, f64);

/// Height of ordinary words (mm).
pub(super) const WORDS: f64 = 2.2;
/// Height of a heading (mm).
pub(super) const HEADING: f64 = 2.8;

/// What draws.
pub(super) struct Page<'a> {
    pub(super) scene: &'a mut Scene,
    pub(super) layers: Layers,
    pub(super) units: UnitSystem,
}

/// An upright rectangle of the page (mm).
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    pub(super) left: f64,
    pub(super) bottom: f64,
    pub(super) width: f64,
    pub(super) height: f64,
}

/// A point of the page.
pub(super) fn at((x, y): Spot) -> Point {
    Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0))
}

impl Frame {
    fn edges(self) -> [f64; 4] {
        [
            self.left,
            self.bottom,
            self.left + self.width,
            self.bottom + self.height,
        ]
    }

    /// What of an area lies in it.
    pub(super) fn cut_area(self, area: &[Spot]) -> Vec<Spot> {
        let [left, bottom, right, top] = self.edges();
        let sides: [&dyn Fn(Spot) -> f64; 4] = [
            &|spot| spot.0 - left,
            &|spot| right - spot.0,
            &|spot| spot.1 - bottom,
            &|spot| top - spot.1,
        ];
        sides
            .iter()
            .fold(area.to_vec(), |area, side| cut(&area, *side))
    }

    /// What of a straight line lies in it.
    pub(super) fn cut_line(self, from: Spot, to: Spot) -> Option<(Spot, Spot)> {
        let [left, bottom, right, top] = self.edges();
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        let sides = [
            (from.0 - left, to.0 - left),
            (right - from.0, right - to.0),
            (from.1 - bottom, to.1 - bottom),
            (top - from.1, top - to.1),
        ];
        for (was, is) in sides {
            if was < 0.0 && is < 0.0 {
                return None;
            }
            if was < 0.0 {
                enters = enters.max(was / (was - is));
            } else if is < 0.0 {
                leaves = leaves.min(was / (was - is));
            }
        }
        let along = |share: f64| {
            (
                from.0 + share * (to.0 - from.0),
                from.1 + share * (to.1 - from.1),
            )
        };
        (leaves > enters).then(|| (along(enters), along(leaves)))
    }

    pub(super) fn holds(self, (x, y): Spot) -> bool {
        let [left, bottom, right, top] = self.edges();
        (left..=right).contains(&x) && (bottom..=top).contains(&y)
    }
}

fn cut(area: &[Spot], side: &dyn Fn(Spot) -> f64) -> Vec<Spot> {
    let before = area.last().into_iter().chain(area);
    let mut kept = Vec::with_capacity(area.len() + 2);
    for (from, to) in before.zip(area) {
        let (was, is) = (side(*from), side(*to));
        if (was < 0.0) != (is < 0.0) {
            let share = was / (was - is);
            kept.push((
                from.0 + share * (to.0 - from.0),
                from.1 + share * (to.1 - from.1),
            ));
        }
        if is >= 0.0 {
            kept.push(*to);
        }
    }
    kept
}

impl Page<'_> {
    pub(super) fn line(&mut self, layer: LayerId, from: Spot, to: Spot) {
        self.scene.add(layer, Figure::line(at(from), at(to)));
    }

    /// A line as far as it lies in a frame.
    pub(super) fn line_in(&mut self, frame: Frame, layer: LayerId, (from, to): (Spot, Spot)) {
        if let Some((from, to)) = frame.cut_line(from, to) {
            self.line(layer, from, to);
        }
    }

    /// The rim of an area as far as it lies in a frame, the frame's own edges left out.
    pub(super) fn rim_in(&mut self, frame: Frame, layer: LayerId, area: &[Spot]) {
        let next = area.iter().cycle().skip(1);
        for (from, to) in area.iter().zip(next) {
            self.line_in(frame, layer, (*from, *to));
        }
    }

    /// An area as far as it lies in a frame.
    pub(super) fn area_in(
        &mut self,
        frame: Frame,
        (layer, title): (LayerId, &str),
        area: &[Spot],
        fill: Fill,
    ) {
        let points: Vec<Point> = frame.cut_area(area).into_iter().map(at).collect();
        if points.len() > 2 {
            self.scene
                .add_titled(layer, title, Figure::area(points, fill));
        }
    }

    pub(super) fn frame(&mut self, frame: Frame) {
        let [left, bottom, right, top] = frame.edges();
        let figure = Figure::rectangle(at((left, bottom)), at((right, top)), Fill::Open);
        self.scene.add(self.layers.frames, figure);
    }

    pub(super) fn words(&mut self, words: &str, height: f64, spot: Spot, anchor: Anchor) {
        let height = TextHeight::Paper(Length::from_base(height / 1000.0));
        let text = Text::new(at(spot), words).anchor(anchor).height(height);
        self.scene.add(self.layers.words, text);
    }

    /// A length in whole or half feet, or in meters.
    pub(super) fn length(&self, meters: f64) -> String {
        match self.units {
            UnitSystem::UsCustomary => format!("{:.0} ft", meters / 0.3048),
            UnitSystem::Si => format!("{meters:.1} m"),
        }
    }

    /// Pixels for each foot or meter.
    pub(super) fn density(&self, pixel: f64) -> String {
        match self.units {
            UnitSystem::UsCustomary => format!("{:.0} px/ft", 0.3048 / pixel),
            UnitSystem::Si => format!("{:.0} px/m", 1.0 / pixel),
        }
    }
}
