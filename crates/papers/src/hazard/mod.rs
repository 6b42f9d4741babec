//! The hazard zones of a gate on paper: from above and from the road, each with its number, which way the leaf moves
//! there, and what sees or feels somebody.

mod arrow;
mod details;
mod devices;
mod layers;
mod seen;
pub(crate) mod words;

use crate::plan::tags::Tags;
use crate::sheets::{Planned, north, sheet_name};
use crate::{elevation, plan};
use design::zone::{ShownZone, all_known, shown};
use draw::{Figure, Fill, Hatch, Label, North, Point, ScaleChoice, Scene};
use layers::Layers;
use quantity::{Angle, Length, Quantity as _, UnitSystem};
use seen::Seen;
use site::{Gate, Site};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};
use words::Standing;

/// Distance under which names share a label (m).
const NEAR: f64 = 0.4;

/// The drawings of a gate's hazard zones; none where nothing is known to catch somebody.
pub(crate) fn planned(site: &Site, gate: &Gate) -> Vec<Planned> {
    let zones = shown(site, gate);
    if zones.is_empty() {
        return Vec::new();
    }
    let sheets = [
        ("hazard-plan", Seen::FromAbove, north(site)),
        ("hazard-elevation", Seen::FromRoad, North::NotSeenFromAbove),
    ];
    let planned = sheets.map(|(name, seen, north)| Planned {
        name: sheet_name(site, gate, name),
        scene: scene((site, gate), &zones, seen),
        north,
        scale: ScaleChoice::LargestThatFits,
        half: false,
    });
    let details = details::scene((site, gate), &zones).map(|scene| Planned {
        name: sheet_name(site, gate, "hazard-details"),
        scene,
        north: north(site),
        scale: ScaleChoice::LargestThatFits,
        half: false,
    });
    planned.into_iter().chain(details).collect()
}

/// Which zones are drawn, what is written at each, and under which distance (m) names share a label.
#[derive(Clone, Copy)]
struct Named {
    drawn: fn(&ShownZone) -> bool,
    zone: fn(usize, &ShownZone, UnitSystem) -> String,
    near: f64,
}

fn scene((site, gate): (&Site, &Gate), zones: &[ShownZone], seen: Seen) -> Scene {
    let named = Named {
        drawn: |_| true,
        zone: words::number,
        near: NEAR,
    };
    let mut scene = drawn((site, gate), zones, seen, named);
    remark(&mut scene, zones, seen);
    caution(&mut scene, (site, gate));
    scene
}

/// The zones of a gate among what they lie, without the words under the drawing.
fn drawn((site, gate): (&Site, &Gate), zones: &[ShownZone], seen: Seen, named: Named) -> Scene {
    let from = match seen {
        Seen::FromAbove => "from above",
        Seen::FromRoad => "from the road",
    };
    let title = format!("Hazard zones of gate {}, {from}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "Where the moving gate {} can catch somebody, seen {from}: each place is hatched and numbered; those without the protection that is asked say so in words.",
        gate.id
    ));
    let mut tags = Tags::default();
    let notes = match seen {
        Seen::FromAbove => {
            let points = points(site, gate, zones);
            plan::around_zones(&mut scene, &mut tags, (site, gate), &points)
        }
        Seen::FromRoad => elevation::around_zones(&mut scene, &mut tags, gate),
    };
    let layers = Layers::add_to(&mut scene);
    devices::draw(&mut scene, &layers, &mut tags, (site, gate), seen);
    let numbered = zones.iter().enumerate();
    for (index, zone) in numbered.filter(|(_, zone)| (named.drawn)(zone)) {
        let words = (named.zone)(index + 1, zone, scene.units);
        draw_zone(&mut scene, &layers, gate, (index + 1, zone, words), seen);
    }
    tags.place(&mut scene, notes, named.near, |_| None);
    scene
}

/// Every point that the plan has to show.
fn points(site: &Site, gate: &Gate, zones: &[ShownZone]) -> Vec<Point> {
    let corners = zones
        .iter()
        .flat_map(|zone| [zone.extent.low(), zone.extent.high()]);
    let corners = corners.map(|corner| Seen::FromAbove.point(corner));
    corners
        .chain(devices::points(site, gate, Seen::FromAbove))
        .collect()
}

/// Draws a zone with its words.
fn draw_zone(
    scene: &mut Scene,
    layers: &Layers,
    gate: &Gate,
    (number, zone, words): (usize, &ShownZone, String),
    seen: Seen,
) {
    let standing = Standing::of(zone);
    let (low, high) = (
        seen.point(zone.extent.low()),
        seen.point(zone.extent.high()),
    );
    let figure = Figure::rectangle(low, high, Fill::Hatched(hatch(number, standing)));
    scene.add_titled(
        layers.of(standing),
        format!("zone {number}, {}", zone.place),
        figure,
    );
    let middle = low.middle(high);
    scene.add(layers.numbers, Label::new(middle, words));
    arrow::draw(scene, layers, (gate, zone), (seen, middle));
}

/// Neighbors are hatched square to each other; what is not as asked is hatched crosswise.
fn hatch(number: usize, standing: Standing) -> Hatch {
    let turned = if number.is_multiple_of(2) {
        FRAC_PI_2
    } else {
        0.0
    };
    Hatch {
        angle: Angle::from_base(FRAC_PI_4 + turned),
        spacing: Length::from_base(0.0014),
        crossed: standing != Standing::AsAsked,
    }
}

fn remark(scene: &mut Scene, zones: &[ShownZone], seen: Seen) {
    if seen == Seen::FromRoad {
        scene.remark(
            "The numbers are those of the zones from above, where it stands what each is and what protects there. Devices stand at their heights, however far before or behind the gate.",
        );
        return;
    }
    let units = scene.units;
    for (index, zone) in zones.iter().enumerate() {
        scene.remark(words::remark(index + 1, zone, units));
    }
}

fn caution(scene: &mut Scene, (site, gate): (&Site, &Gate)) {
    if scene.shapes().iter().any(arrow::is_one) {
        scene.remark(
            "An arrow shows which way the leaf moves in a direction in which the zone is live: filled while closing, open while opening.",
        );
    }
    if !all_known(site, gate) {
        scene.remark(
            "Some kinds of place are left out, since facts are missing; the findings on hazard zones tell which.",
        );
    }
    scene.remark(
        "A blank place is not a safe one: only what the site file holds is worked out. The gate is looked over on site before it moves.",
    );
}
