//! The box seen from its door, the door taken off: panel, rails, and what is mounted.

use super::content::{Content, Place, Rail};
use super::{Drawn, at, content::meters, rectangle};
use draw::{Dimension, DimensionLine, Figure, Fill, Hatch, Ink, Label, Text, TextHeight};
use quantity::{Length, Quantity as _};

/// Height of a mounting rail: IEC 60715, top-hat rail of 35 mm (m).
const RAIL: f64 = 0.035;

/// From a view to its first row of dimensions, and from row to row (m on paper).
pub(super) const FIRST: f64 = 0.007;
const NEXT: f64 = 0.008;

/// Height of the numbers of things on paper.
pub(super) fn small() -> TextHeight {
    TextHeight::Paper(Length::from_base(0.002))
}

/// Cleft between two outlines that still counts as touching (m).
const TOUCH: f64 = 1e-6;

impl Drawn<'_> {
    /// Draws the front view with the lower left corner of the box at the origin.
    pub(super) fn front(&mut self) {
        let outline = rectangle((0.0, 0.0), self.size, Fill::Open);
        let title = format!("enclosure {}", self.enclosure.id);
        self.scene.add_titled(self.layers.boxes, title, outline);
        self.sizes();
        if let Some(corner) = self.panel_corner() {
            self.panel(corner);
        }
        let under = Text::new(
            at(self.size.0 / 2.0, -0.17 * self.size.1),
            "seen from the door, door taken off",
        );
        self.scene.add(self.layers.words, under);
    }

    /// Lower left corner of the panel (m), where its place is written.
    pub(super) fn panel_corner(&self) -> Option<(f64, f64)> {
        let panel = self.enclosure.panel.as_ref()?;
        Some((
            meters(panel.from_left.as_ref())?,
            meters(panel.from_bottom.as_ref())?,
        ))
    }

    fn sizes(&mut self) {
        let (wide, high) = self.size;
        let beyond = |point, away: f64| DimensionLine::Beyond(point, Length::from_base(away));
        let width =
            Dimension::horizontal([at(0.0, 0.0), at(wide, 0.0)], beyond(at(0.0, 0.0), -FIRST));
        let height = Dimension::vertical(
            [at(0.0, 0.0), at(0.0, high)],
            beyond(at(0.0, 0.0), -(FIRST + NEXT)),
        );
        self.scene
            .add_titled(self.layers.dimensions, "outside width", width);
        self.scene
            .add_titled(self.layers.dimensions, "outside height", height);
    }

    fn panel(&mut self, corner: (f64, f64)) {
        let Some(panel) = &self.enclosure.panel else {
            return;
        };
        if let (Some(wide), Some(high)) =
            (meters(panel.width.as_ref()), meters(panel.height.as_ref()))
        {
            let outline = rectangle(corner, (wide, high), Fill::Open);
            self.scene
                .add_titled(self.layers.panel, "mounting panel", outline);
        }
        for rail in self.contents.rails.clone().into_iter().flatten() {
            self.rail(corner, rail);
        }
        self.heights(corner);
        for (number, thing) in self.contents.things.clone().iter().enumerate() {
            self.thing(corner, number + 1, thing);
        }
    }

    /// The middle of a rail, and what of it is free.
    fn rail(&mut self, (left, bottom): (f64, f64), rail: Rail) {
        let (from, up) = (left + rail.from, bottom + rail.up);
        let line = Figure::line(at(from, up), at(from + rail.length, up));
        self.scene
            .add_titled(self.layers.rails, "mounting rail", line);
        let taken = rail.taken.min(rail.length);
        let free = rail.length - taken;
        if free <= TOUCH {
            return;
        }
        let (layer, hatch, title) = if rail.whole {
            (self.layers.spare, Hatch::cut(), "spare rail")
        } else {
            (self.layers.not_known, Hatch::unknown(), "not known")
        };
        let area = rectangle(
            (from + taken, up - RAIL / 2.0),
            (free, RAIL),
            Fill::Hatched(hatch),
        );
        self.scene.add_titled(layer, title, area);
        if rail.whole {
            let said = draw::dimension_text(Length::from_base(free), self.scene.units);
            let middle = at(from + taken + free / 2.0, up);
            let label = Label {
                height: small(),
                ..Label::new(middle, format!("spare {said}"))
            };
            self.scene.add(self.layers.words, label);
        }
    }

    /// Heights of the middles of the rails over the lower edge of the panel.
    fn heights(&mut self, (_, bottom): (f64, f64)) {
        let mut ups: Vec<f64> = self
            .contents
            .rails
            .iter()
            .flatten()
            .map(|it| it.up)
            .collect();
        if ups.is_empty() {
            return;
        }
        ups.push(0.0);
        ups.sort_by(f64::total_cmp);
        let points: Vec<_> = ups.iter().map(|up| at(0.0, bottom + up)).collect();
        let line = DimensionLine::Beyond(at(0.0, 0.0), Length::from_base(-FIRST));
        let chain = Dimension::vertical(points, line);
        self.scene.add_titled(
            self.layers.dimensions,
            "rails over the lower edge of the panel",
            chain,
        );
    }

    fn thing(&mut self, (left, bottom): (f64, f64), number: usize, thing: &Content) {
        let (Place::At(x, y), Some(wide), Some(high)) = (thing.place, thing.wide(), thing.height)
        else {
            return;
        };
        let corner = (left + x, bottom + y);
        let layer = if self.fits(corner, (wide, high)) {
            self.layers.things
        } else {
            self.layers.over
        };
        let outline = rectangle(corner, (wide, high), Fill::Solid(Ink::Paper));
        self.scene.add_titled(layer, thing.title(), outline);
        let one = wide / f64::from(thing.count.max(1));
        for line in 1..thing.count {
            let across = corner.0 + one * f64::from(line);
            let split = Figure::line(at(across, corner.1), at(across, corner.1 + high));
            self.scene.add(layer, split);
        }
        let middle = at(corner.0 + wide / 2.0, corner.1 + high / 2.0);
        let number = Label {
            height: small(),
            ..Label::new(middle, number.to_string())
        };
        self.scene.add(self.layers.words, number);
    }

    /// It lies inside the box.
    fn fits(&self, (x, y): (f64, f64), (wide, high): (f64, f64)) -> bool {
        x >= -TOUCH
            && y >= -TOUCH
            && x + wide <= self.size.0 + TOUCH
            && y + high <= self.size.1 + TOUCH
    }
}
