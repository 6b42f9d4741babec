//! Hazard zones that are too small to read among the rest, each place enlarged on a sheet of its own.

use super::seen::Seen;
use super::words::number_and_gap;
use super::{Named, drawn};
use design::zone::ShownZone;
use draw::{Anchor, Figure, Fill, Layer, LayerId, LineWeight, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use site::{Gate, Site};

/// Zones are enlarged whose longer side is no longer than this (m).
const SMALL: f64 = 0.8;
/// Zones whose middles are no farther apart than this share a detail (m).
const TOGETHER: f64 = 0.9;
/// Clear ground around the zones of a detail (m).
const AROUND: f64 = 0.25;
/// Between details, and below them for their words, as a share of the width of one.
const BETWEEN: f64 = 0.12;
/// So many details stand in a row.
const ROW: usize = 3;
/// Names share a label under this distance (m).
const NEAR: f64 = 0.12;
/// Letters in a line of the words under a detail.
const LINE: usize = 34;

/// A place that is enlarged: the zones there with their numbers, and the ground that they take.
struct Detail<'z> {
    zones: Vec<(usize, &'z ShownZone)>,
    low: [f64; 2],
    high: [f64; 2],
}

impl<'z> Detail<'z> {
    fn of((number, zone): (usize, &'z ShownZone)) -> Self {
        let ([x, y, _], [to_x, to_y, _]) = (zone.extent.low(), zone.extent.high());
        Self {
            zones: vec![(number, zone)],
            low: [x.base(), y.base()],
            high: [to_x.base(), to_y.base()],
        }
    }

    fn middle(&self) -> [f64; 2] {
        [0, 1].map(|axis: usize| f64::midpoint(self.low[axis], self.high[axis]))
    }

    fn is_near(&self, other: &Self) -> bool {
        let (one, two) = (self.middle(), other.middle());
        (one[0] - two[0]).hypot(one[1] - two[1]) <= TOGETHER
    }

    fn take(&mut self, other: Self) {
        for axis in [0, 1] {
            self.low[axis] = self.low[axis].min(other.low[axis]);
            self.high[axis] = self.high[axis].max(other.high[axis]);
        }
        self.zones.extend(other.zones);
    }

    /// The longer side of the ground that it takes.
    fn side(&self) -> f64 {
        let side = |axis: usize| self.high[axis] - self.low[axis];
        side(0).max(side(1))
    }

    /// What it is called: `A: zones 1 and 2, at post-catch`.
    fn words(&self, letter: char) -> String {
        let numbers: Vec<String> = self.zones.iter().map(|one| one.0.to_string()).collect();
        let mut against: Vec<&str> = Vec::new();
        for (_, zone) in &self.zones {
            if !against.contains(&zone.against.as_str()) {
                against.push(&zone.against);
            }
        }
        let zones = if numbers.len() == 1 { "zone" } else { "zones" };
        let words = format!(
            "Detail {letter}: {zones} {}, at {}",
            numbers.join(" and "),
            against.join(" and ")
        );
        crate::plan::tags::broken(&words, LINE)
    }
}

/// The places of small zones, nearest to the latching side first.
fn details(zones: &[ShownZone]) -> Vec<Detail<'_>> {
    let numbered = zones
        .iter()
        .enumerate()
        .map(|(index, zone)| (index + 1, zone));
    let mut details: Vec<Detail<'_>> = Vec::new();
    for detail in numbered.map(Detail::of).filter(|one| one.side() <= SMALL) {
        match details.iter_mut().find(|known| known.is_near(&detail)) {
            Some(known) => known.take(detail),
            None => details.push(detail),
        }
    }
    details.sort_by(|one, other| one.middle()[0].total_cmp(&other.middle()[0]));
    details
}

/// The sheet of the details from above; none where no zone is small.
pub(super) fn scene((site, gate): (&Site, &Gate), zones: &[ShownZone]) -> Option<Scene> {
    let details = details(zones);
    let side = details.iter().map(Detail::side).reduce(f64::max)? + 2.0 * AROUND;
    let named = Named {
        drawn: |zone| Detail::of((0, zone)).side() <= SMALL,
        zone: number_and_gap,
        near: NEAR,
    };
    let whole = drawn((site, gate), zones, Seen::FromAbove, named);
    let title = format!("Hazard zones of gate {}, details from above", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "Places where somebody can be caught that are too small to read on the whole gate, enlarged, each with its least gap.",
    );
    for layer in whole.layers() {
        scene.layer(layer.clone());
    }
    let frame = scene.layer(Layer::new("edges of the details", LineWeight::Fine));
    let notes = scene.layer(Layer::new("notes", LineWeight::Fine));
    for ((index, detail), letter) in details.iter().enumerate().zip('A'..='Z') {
        let (column, row) = (index % ROW, index / ROW);
        let step = |count: usize, share: f64| {
            f64::from(u32::try_from(count).unwrap_or(0)) * side * (1.0 + share)
        };
        let corner = at(step(column, BETWEEN), -step(row, 3.0 * BETWEEN));
        let middle = detail.middle();
        let half = side / 2.0;
        let from = at(middle[0] - half, middle[1] - half);
        let to = at(middle[0] + half, middle[1] + half);
        scene.take_part(&whole, (from, to), corner);
        draw_frame(
            &mut scene,
            (frame, notes),
            (corner, side),
            &detail.words(letter),
        );
    }
    scene.remark(
        "Each detail is a part of the plan of hazard zones with the same numbers, road side below, larger zones left out; the zones are drawn where somebody would be, and what protects there is told on that plan and in the schedule of hazard zones.",
    );
    scene.remark("The open position is dotted. Gaps are the least through the travel, at the values as written.");
    Some(scene)
}

fn draw_frame(
    scene: &mut Scene,
    (frame, notes): (LayerId, LayerId),
    (corner, side): (Point, f64),
    words: &str,
) {
    let across = Length::from_base(side);
    let outline = Figure::rectangle(corner, corner.moved(across, across), Fill::Open);
    scene.add_titled(frame, "edge of the detail", outline);
    let below = corner.moved(across / 2.0, Length::from_base(-0.06 * side));
    let height = TextHeight::Paper(Length::from_base(0.003));
    scene.add(
        notes,
        Text::new(below, words)
            .height(height)
            .anchor(Anchor::Middle),
    );
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}
