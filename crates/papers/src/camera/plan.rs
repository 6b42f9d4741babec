//! A camera's ground from above, with the leaf at one place.

use super::page::{Frame, HEADING, Page, Spot, WORDS, at};
use design::eye::{LeafPlace, ShownCamera, ShownThing};
use draw::{Anchor, Figure, Fill, Hatch, Ink, Label};
use quantity::{Length, Quantity as _, UnitSystem};
use sim::camera::Ground;

/// Clear ground around what is shown, as a share of it, and at least (m).
const AROUND: f64 = 0.12;
const LEAST: f64 = 0.8;
/// A camera so many times farther off than the wanted area is large is shown by an arrow only.
const FAR: f64 = 3.5;
/// Shares of the wanted area below that are not worth a name.
const NOTHING: f64 = 0.003;

/// The part of the site that every plan of a camera shows: low and high corner (m), and the camera is in it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Window {
    low: Spot,
    high: Spot,
}

fn flat(spot: &Ground) -> Spot {
    (spot[0].base(), spot[1].base())
}

fn eye(camera: &ShownCamera) -> Spot {
    (camera.camera.at[0].base(), camera.camera.at[1].base())
}

/// The wanted area with the leaf and the place that matters, and the camera where it is near.
pub(super) fn shared_window(camera: &ShownCamera) -> Window {
    let mut spots: Vec<Spot> = camera
        .wanted
        .iter()
        .flat_map(|wanted| wanted.corners.iter().map(flat))
        .collect();
    spots.extend(
        camera
            .target
            .iter()
            .map(|target| (target.at[0].base(), target.at[1].base())),
    );
    if spots.is_empty() {
        spots.push(eye(camera));
    }
    let window = bounds(&spots);
    let size = (window.high.0 - window.low.0)
        .max(window.high.1 - window.low.1)
        .max(LEAST);
    let middle = (
        f64::midpoint(window.low.0, window.high.0),
        f64::midpoint(window.low.1, window.high.1),
    );
    let off = (eye(camera).0 - middle.0).hypot(eye(camera).1 - middle.1);
    if off < FAR * size {
        spots.push(eye(camera));
    }
    let window = bounds(&spots);
    let around =
        (AROUND * (window.high.0 - window.low.0).max(window.high.1 - window.low.1)).max(LEAST);
    Window {
        low: (window.low.0 - around, window.low.1 - around),
        high: (window.high.0 + around, window.high.1 + around),
    }
}

fn bounds(spots: &[Spot]) -> Window {
    let fold = |pick: fn(&Spot) -> f64, least: fn(f64, f64) -> f64, from: f64| {
        spots.iter().map(pick).fold(from, least)
    };
    Window {
        low: (
            fold(|spot| spot.0, f64::min, f64::INFINITY),
            fold(|spot| spot.1, f64::min, f64::INFINITY),
        ),
        high: (
            fold(|spot| spot.0, f64::max, f64::NEG_INFINITY),
            fold(|spot| spot.1, f64::max, f64::NEG_INFINITY),
        ),
    }
}

/// From the site to the page.
struct Map {
    frame: Frame,
    /// Millimeters of paper for a meter.
    scale: f64,
    middle: Spot,
}

impl Map {
    fn of(frame: Frame, window: Window) -> Self {
        let wide = (window.high.0 - window.low.0).max(1e-3);
        let high = (window.high.1 - window.low.1).max(1e-3);
        Self {
            frame,
            scale: (frame.width / wide).min(frame.height / high),
            middle: (
                f64::midpoint(window.low.0, window.high.0),
                f64::midpoint(window.low.1, window.high.1),
            ),
        }
    }

    fn spot(&self, (x, y): Spot) -> Spot {
        (
            self.frame.left + self.frame.width / 2.0 + (x - self.middle.0) * self.scale,
            self.frame.bottom + self.frame.height / 2.0 + (y - self.middle.1) * self.scale,
        )
    }

    fn spots(&self, ground: &[Ground]) -> Vec<Spot> {
        ground.iter().map(|spot| self.spot(flat(spot))).collect()
    }
}

/// Draws one plan.
pub(super) fn draw(
    page: &mut Page<'_>,
    camera: &ShownCamera,
    place: &LeafPlace,
    (frame, window): (Frame, Window),
) {
    let map = Map::of(frame, window);
    page.frame(frame);
    heading(page, place, frame);
    if let Some(wanted) = &camera.wanted {
        let area = map.spots(&wanted.corners);
        page.area_in(
            frame,
            (page.layers.wanted, "wanted area"),
            &area,
            Fill::Solid(Ink::Tint),
        );
        for thing in &place.things {
            if let Some(part) = camera.camera.hidden_part(wanted, &thing.hider) {
                let title = format!("hidden by {}", thing.name);
                let layer = (page.layers.hidden, title.as_str());
                page.area_in(frame, layer, &map.spots(&part), Fill::Hatched(Hatch::cut()));
            }
        }
        page.rim_in(frame, page.layers.wanted, &area);
    }
    let height = camera
        .wanted
        .as_ref()
        .map_or(Length::from_base(0.0), |wanted| wanted.height);
    let field = camera.camera.field(height, Length::from_base(400.0));
    page.rim_in(frame, page.layers.field, &map.spots(&field));
    let mut named: Vec<&str> = Vec::new();
    for (index, thing) in place.things.iter().enumerate() {
        stand(page, &map, thing);
        let hides = place
            .seen
            .as_ref()
            .and_then(|seen| seen.hidden_by.get(index));
        let hides = hides.is_some_and(|share| share.base() > NOTHING);
        if hides && !named.contains(&thing.name.as_str()) {
            named.push(&thing.name);
            name(page, &map, thing);
        }
    }
    target(page, &map, camera);
    own(page, &map, camera);
    scale_bar(page, &map);
}

fn heading(page: &mut Page<'_>, place: &LeafPlace, frame: Frame) {
    let seen = place.seen.as_ref().map_or_else(
        || "what it sees is not known".to_owned(),
        |seen| {
            format!(
                "{:.0} % of the wanted area is seen",
                seen.seen.base() * 100.0
            )
        },
    );
    let words = format!("Leaf {}: {seen}", place.name);
    let spot = (frame.left, frame.bottom + frame.height + 2.0);
    page.words(&words, HEADING, spot, Anchor::Start);
}

fn stand(page: &mut Page<'_>, map: &Map, thing: &ShownThing) {
    let (layer, fill) = if thing.is_leaf {
        (page.layers.leaf, Fill::Solid(Ink::Black))
    } else {
        (page.layers.standing, Fill::Solid(Ink::Gray))
    };
    let area = map.spots(&thing.hider.corners);
    page.area_in(map.frame, (layer, thing.name.as_str()), &area, fill);
}

/// The name of something that hides a part, where its middle is in the plan.
fn name(page: &mut Page<'_>, map: &Map, thing: &ShownThing) {
    let area = map.frame.cut_area(&map.spots(&thing.hider.corners));
    let Ok(count) = u32::try_from(area.len()) else {
        return;
    };
    if count > 2 {
        let mean = |pick: fn(&Spot) -> f64| area.iter().map(pick).sum::<f64>() / f64::from(count);
        let middle = (mean(|spot| spot.0), mean(|spot| spot.1));
        page.scene.add(
            page.layers.words,
            Label::new(at(middle), thing.name.clone()),
        );
    }
}

/// A cross where it matters.
fn target(page: &mut Page<'_>, map: &Map, camera: &ShownCamera) {
    let Some(target) = &camera.target else { return };
    let (x, y) = map.spot((target.at[0].base(), target.at[1].base()));
    if map.frame.holds((x, y)) {
        let layer = page.layers.target;
        page.line(layer, (x - 1.8, y), (x + 1.8, y));
        page.line(layer, (x, y - 1.8), (x, y + 1.8));
        let label = Label::new(at((x, y)), "place that matters");
        page.scene.add(page.layers.words, label);
    }
}

/// The camera itself, or where it is when it is far off.
fn own(page: &mut Page<'_>, map: &Map, camera: &ShownCamera) {
    let spot = map.spot(eye(camera));
    let layer = page.layers.camera;
    if map.frame.holds(spot) {
        let pan = camera.camera.pan.base();
        let corner = |turn: f64, out: f64| {
            at((
                spot.0 + out * (pan + turn).cos(),
                spot.1 + out * (pan + turn).sin(),
            ))
        };
        let body = [corner(2.6, 2.2), corner(0.0, 2.6), corner(-2.6, 2.2)];
        let figure = Figure::area(body, Fill::Solid(Ink::Black));
        page.scene
            .add_titled(layer, format!("camera {}", camera.id), figure);
        let label = Label::new(at(spot), camera.id.clone());
        page.scene.add(page.layers.words, label);
        return;
    }
    let middle = (
        map.frame.left + map.frame.width / 2.0,
        map.frame.bottom + map.frame.height / 2.0,
    );
    if let Some((_, rim)) = map.frame.cut_line(middle, spot) {
        let (dx, dy) = (rim.0 - middle.0, rim.1 - middle.1);
        let length = dx.hypot(dy).max(1e-6);
        let from = (rim.0 - dx / length * 7.0, rim.1 - dy / length * 7.0);
        page.line(layer, from, rim);
        for side in [0.4, -0.4] {
            let turned = dy.atan2(dx) + std::f64::consts::PI + side;
            let barb = (rim.0 + 2.5 * turned.cos(), rim.1 + 2.5 * turned.sin());
            page.line(layer, rim, barb);
        }
        let off = (eye(camera).0 - map.middle.0).hypot(eye(camera).1 - map.middle.1);
        let words = format!("{}, {} off", camera.id, page.length(off));
        page.scene
            .add(page.layers.words, Label::new(at(from), words));
    }
}

/// A bar of a round length under the plan.
fn scale_bar(page: &mut Page<'_>, map: &Map) {
    let unit = match page.units {
        UnitSystem::UsCustomary => 0.3048,
        UnitSystem::Si => 1.0,
    };
    let longest = map.frame.width / 4.0 / map.scale / unit;
    let round = [100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5];
    let length = round
        .into_iter()
        .find(|length| *length <= longest)
        .unwrap_or(0.5);
    let words = match page.units {
        UnitSystem::UsCustomary => format!("{length} ft"),
        UnitSystem::Si => format!("{length} m"),
    };
    let right = map.frame.left + map.frame.width;
    let left = right - length * unit * map.scale;
    let y = map.frame.bottom - 2.0;
    let layer = page.layers.words;
    page.line(layer, (left, y), (right, y));
    for x in [left, right] {
        page.line(layer, (x, y - 0.8), (x, y + 0.8));
    }
    page.words(&words, WORDS, (left - 1.5, y - WORDS / 2.0), Anchor::End);
}
