//! A face of the box with the holes to be drilled in it.

use super::content::meters;
use super::front::{FIRST, small};
use super::{Drawn, at, rectangle};
use draw::{Dimension, DimensionLine, Figure, Fill, Label, Text};
use quantity::{Length, Quantity as _, UnitSystem, print};
use site::{EnclosureEntry, EntrySide};

/// A hole: what comes in, its middle on the face, its diameter (m).
struct Hole {
    name: String,
    middle: (f64, f64),
    drill: f64,
}

impl Drawn<'_> {
    /// Draws a face with its lower left corner this far to the right, and tells where the next may begin.
    pub(super) fn face(&mut self, side: EntrySide, right: f64) -> f64 {
        let Some(depth) = meters(self.enclosure.depth.as_ref()) else {
            return right;
        };
        let (wide, high, words) = match side {
            EntrySide::Bottom => (
                self.size.0,
                depth,
                "bottom, seen from above\nthrough the box; door below",
            ),
            EntrySide::Top => (self.size.0, depth, "top, seen from above;\ndoor below"),
            EntrySide::Side => (depth, self.size.1, "side, seen from outside"),
            EntrySide::Back => (self.size.0, self.size.1, "back, seen from the door"),
        };
        let (before, after) = match side {
            EntrySide::Bottom => self.door_beyond(wide),
            _ => (0.0, 0.0),
        };
        let right = right + before;
        let corner = (right, self.size.1 - high);
        let outline = rectangle(corner, (wide, high), Fill::Open);
        self.scene
            .add_titled(self.layers.boxes, format!("{side} face"), outline);
        let holes = self.holes(side, (corner, high));
        self.hole_chain((corner, wide, high), &holes);
        for hole in &holes {
            self.hole(hole);
        }
        let mut below = corner.1 - 0.1 * self.size.1;
        if side == EntrySide::Bottom {
            self.door(corner, wide);
            self.depth((corner, wide), depth);
            below = corner.1 - 0.3 * wide;
        }
        let middle = at(right + wide / 2.0, below);
        self.scene.add(self.layers.words, Text::new(middle, words));
        right + wide + after + self.gap()
    }

    fn holes(&self, side: EntrySide, (corner, high): ((f64, f64), f64)) -> Vec<Hole> {
        let here = |entry: &&EnclosureEntry| entry.side == Some(side);
        let entries = self.enclosure.entry.iter().filter(here);
        entries
            .flat_map(|entry| holes(entry, (corner, high)))
            .collect()
    }

    fn hole(&mut self, hole: &Hole) {
        let center = at(hole.middle.0, hole.middle.1);
        let drill = Length::from_base(hole.drill);
        // Glands are drilled to half a millimeter.
        let said = match self.scene.units {
            UnitSystem::UsCustomary => draw::dimension_text(drill, self.scene.units),
            UnitSystem::Si => print(drill, self.scene.units),
        };
        let circle = Figure::circle(center, drill / 2.0, Fill::Open);
        let title = format!("hole of {said} for {}", hole.name);
        self.scene.add_titled(self.layers.holes, title, circle);
        let label = Label {
            height: small(),
            ..Label::new(center, format!("{}\n⌀ {said}", hole.name))
        };
        self.scene.add(self.layers.words, label);
    }

    /// The middles of the holes from the left, over the face.
    fn hole_chain(&mut self, (corner, wide, high): ((f64, f64), f64, f64), holes: &[Hole]) {
        let mut across: Vec<f64> = holes.iter().map(|hole| hole.middle.0).collect();
        if across.is_empty() {
            return;
        }
        across.extend([corner.0, corner.0 + wide]);
        across.sort_by(f64::total_cmp);
        across.dedup_by(|one, other| (*one - *other).abs() < 0.002);
        let top = corner.1 + high;
        let points: Vec<_> = across.into_iter().map(|x| at(x, top)).collect();
        let line = DimensionLine::Beyond(at(corner.0, top), Length::from_base(FIRST));
        self.scene.add_titled(
            self.layers.dimensions,
            "middles of the holes",
            Dimension::horizontal(points, line),
        );
    }

    fn depth(&mut self, (corner, wide): ((f64, f64), f64), depth: f64) {
        let far = corner.0 + wide;
        let points = [at(far, corner.1), at(far, corner.1 + depth)];
        let line = DimensionLine::Beyond(at(far, corner.1), Length::from_base(FIRST));
        self.scene.add_titled(
            self.layers.dimensions,
            "outside depth",
            Dimension::vertical(points, line),
        );
    }
}

/// The holes of an entry whose places and drill sizes are written.
fn holes(entry: &EnclosureEntry, (corner, high): ((f64, f64), f64)) -> Vec<Hole> {
    let Some(written) = &entry.holes else {
        return Vec::new();
    };
    let Some(back) = meters(written.from_back.as_ref()) else {
        return Vec::new();
    };
    let names: Vec<String> = entry
        .conduits
        .iter()
        .chain(&entry.cables)
        .map(ToString::to_string)
        .collect();
    let up = if entry.side == Some(EntrySide::Back) {
        corner.1 + back
    } else {
        corner.1 + high - back
    };
    let hole = |(at, left): (usize, &quantity::Measured<Length>)| {
        let drill = written.drill.get(at).or_else(|| match &written.drill[..] {
            [all] => Some(all),
            _ => None,
        })?;
        Some(Hole {
            name: names.get(at).unwrap_or(&entry.what.to_string()).clone(),
            middle: (corner.0 + left.nominal().base(), up),
            drill: drill.nominal().base(),
        })
    };
    written
        .from_left
        .iter()
        .enumerate()
        .filter_map(hole)
        .collect()
}
