//! Operators, devices, enclosures, supplies and panels on the plan.

use super::ground::seen_from_above;
use super::layers::Layers;
use super::symbols;
use super::tags::Tags;
use super::window::Window;
use draw::{Figure, Fill, Ink, Placement, Point, Scene, Symbol};
use quantity::{Angle, Length, Quantity as _};
use site::{Device, DeviceKind, Position, Site};
use std::f64::consts::FRAC_PI_2;

/// Symbols nearer than this hide each other, so that only the first is drawn (m).
const SAME_PLACE: f64 = 0.15;

/// So many things at one place share a symbol.
const CROWD: usize = 3;

/// Half the width that an upright contact edge is drawn with (m).
const HALF_EDGE: f64 = 0.035;

/// A thing with a place of its own and a symbol.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    pub(super) name: String,
    pub(super) at: Point,
    pub(super) is_enclosure: bool,
    title: String,
    symbol: Placement,
}

impl Placed {
    fn new(name: &str, what: &str, symbol: Symbol, at: Option<&Position>) -> Option<Self> {
        let at = at.map(seen_from_above)?;
        let symbol = Placement::new(symbol, at);
        Some(Self {
            name: name.to_owned(),
            at,
            is_enclosure: what == "enclosure",
            title: format!("{what} {name}"),
            symbol,
        })
    }

    /// What it is and its name, and its symbol where it stands.
    pub(super) fn into_symbol(self) -> (String, Placement) {
        (self.title, self.symbol)
    }

    /// Draws the symbol.
    pub(super) fn draw(&self, scene: &mut Scene, layers: &Layers) {
        let layer = if self.is_enclosure {
            layers.enclosures
        } else {
            layers.devices
        };
        scene.add_titled(layer, self.title.as_str(), self.symbol.clone());
    }
}

/// Everything that has a place of its own; what is mounted in an enclosure is there with its enclosure.
pub(super) fn placed(site: &Site) -> Vec<Placed> {
    let mut things: Vec<Placed> = Vec::new();
    things.extend(site.enclosure.iter().filter_map(|it| {
        Placed::new(
            it.id.as_str(),
            "enclosure",
            symbols::enclosure(),
            it.at.as_ref(),
        )
    }));
    things.extend(site.operator.iter().filter_map(|it| {
        Placed::new(
            it.id.as_str(),
            "operator",
            symbols::operator(),
            it.at.as_ref(),
        )
    }));
    let loose = site.supply.iter().filter(|it| it.enclosure.is_none());
    things.extend(
        loose.filter_map(|it| {
            Placed::new(it.id.as_str(), "supply", symbols::supply(), it.at.as_ref())
        }),
    );
    things.extend(site.solar_panel.iter().filter_map(|it| {
        Placed::new(
            it.id.as_str(),
            "solar panel",
            symbols::solar_panel(),
            it.at.as_ref(),
        )
    }));
    things.extend(
        site.device
            .iter()
            .filter(|it| it.enclosure.is_none())
            .filter_map(device),
    );
    things
}

fn device(device: &Device) -> Option<Placed> {
    let mut placed = Placed::new(
        device.id.as_str(),
        &device.kind.to_string(),
        symbols::device(device.kind),
        device.at.as_ref(),
    )?;
    let other = device.to.as_ref().map(seen_from_above);
    if let (DeviceKind::Loop | DeviceKind::ContactEdge, Some(other)) = (device.kind, other) {
        placed.at = placed.at.middle(other);
    }
    placed.symbol = placed.symbol.rotation(looking(device, other));
    Some(placed)
}

/// Which way a device looks: as the site says, or else toward its other end.
pub(crate) fn looking(device: &Device, other: Option<Point>) -> Angle {
    let at = device.at.as_ref().map(seen_from_above);
    match (&device.facing, at, other) {
        (Some(facing), _, _) => facing.nominal(),
        (None, Some(at), Some(other)) if other.distance(at).base() > 0.0 => at.direction_to(other),
        _ => Angle::from_base(0.0),
    }
}

/// Names of what has neither a place nor an enclosure.
pub(super) fn unplaced(site: &Site) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    names.extend(
        site.enclosure
            .iter()
            .filter(|it| it.at.is_none())
            .map(|it| it.id.to_string()),
    );
    names.extend(
        site.operator
            .iter()
            .filter(|it| it.at.is_none())
            .map(|it| it.id.to_string()),
    );
    names.extend(
        site.solar_panel
            .iter()
            .filter(|it| it.at.is_none())
            .map(|it| it.id.to_string()),
    );
    names.extend(
        site.bollard
            .iter()
            .filter(|it| it.at.is_none())
            .map(|it| it.id.to_string()),
    );
    names.extend(
        site.device
            .iter()
            .filter(|it| it.at.is_none() && it.enclosure.is_none())
            .map(|it| it.id.to_string()),
    );
    names
}

/// Every point that a placed thing reaches to: itself, and the other end of a beam, a loop or an edge.
pub(super) fn points(site: &Site) -> Vec<Point> {
    let ends = site
        .device
        .iter()
        .filter(|device| device.enclosure.is_none())
        .flat_map(|device| [device.at.as_ref(), device.to.as_ref()])
        .flatten()
        .map(seen_from_above);
    placed(site)
        .into_iter()
        .map(|thing| thing.at)
        .chain(ends)
        .collect()
}

/// How much of the reach of devices a sheet shows.
#[derive(Debug, Clone, Copy)]
pub(super) struct View<'a> {
    /// What the sheet shows.
    pub(super) window: &'a Window,
    /// How far the view of a camera is drawn (m).
    pub(super) far: f64,
}

/// Draws the things that a sheet shows, with their reach and their names.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    site: &Site,
    view: &View<'_>,
    shown: impl Fn(&Placed) -> bool,
) {
    let things: Vec<Placed> = placed(site)
        .into_iter()
        .filter(|thing| shown(thing))
        .collect();
    for device in &site.device {
        if things.iter().any(|thing| device.id == *thing.name) {
            draw_reach(scene, layers, device, view);
        }
    }
    let marked: Vec<&Placed> = things
        .iter()
        .filter(|thing| !has_extent(site, &thing.name))
        .collect();
    let beside = |one: &Placed, other: &Placed| one.at.distance(other.at).base() < SAME_PLACE;
    for (index, thing) in marked.iter().enumerate() {
        let hidden = marked.iter().take(index).any(|other| beside(thing, other));
        let company = marked.iter().filter(|other| beside(thing, other)).count();
        if !hidden && (company < CROWD || thing.is_enclosure) {
            thing.draw(scene, layers);
        } else if !hidden {
            let symbol = Placement::new(symbols::several(), thing.at);
            scene.add_titled(layers.devices, "several devices at one place", symbol);
        }
    }
    for thing in things {
        tags.add(thing.at, thing.name);
    }
}

/// A loop or an edge that is drawn at its true size needs no symbol.
fn has_extent(site: &Site, name: &str) -> bool {
    let drawn_to_size =
        |kind: DeviceKind| matches!(kind, DeviceKind::Loop | DeviceKind::ContactEdge);
    site.device
        .iter()
        .any(|device| device.id == *name && drawn_to_size(device.kind) && device.to.is_some())
}

/// Draws what each device reaches that is not mounted in an enclosure.
pub(super) fn draw_reaches(scene: &mut Scene, layers: &Layers, site: &Site, view: &View<'_>) {
    for device in site.device.iter().filter(|it| it.enclosure.is_none()) {
        draw_reach(scene, layers, device, view);
    }
}

/// The beam, strip, loop or field of view of a device.
fn draw_reach(scene: &mut Scene, layers: &Layers, device: &Device, view: &View<'_>) {
    let Some(at) = device
        .at
        .as_ref()
        .map(seen_from_above)
        .filter(|at| view.window.shows(*at))
    else {
        return;
    };
    let title = format!("{} {}", device.kind, device.id);
    let other = device.to.as_ref().map(seen_from_above);
    match (device.kind, other) {
        (DeviceKind::Loop, Some(other)) => scene.add_titled(
            layers.loops,
            title,
            Figure::rectangle(at, other, Fill::Open),
        ),
        (DeviceKind::ThroughBeam, Some(other)) => {
            let back = Placement::new(symbols::device(device.kind), other)
                .rotation(other.direction_to(at));
            scene.add_titled(layers.beams, title.as_str(), Figure::line(at, other));
            scene.add_titled(layers.devices, format!("{title}, other end"), back);
        }
        (DeviceKind::Reflective, Some(other)) => {
            let back = Placement::new(symbols::reflector(), other).rotation(other.direction_to(at));
            scene.add_titled(layers.beams, title.as_str(), Figure::line(at, other));
            scene.add_titled(layers.devices, format!("{title}, reflector"), back);
        }
        (DeviceKind::ContactEdge, Some(other)) => {
            scene.add_titled(layers.edges, title, edge(device, at, other));
        }
        (DeviceKind::AreaScanner, _) if device.field.len() > 2 => {
            let corners: Vec<Point> = device.field.iter().map(seen_from_above).collect();
            let field = Figure::area(corners, Fill::Open);
            scene.add_titled(layers.beams, format!("field of {}", device.id), field);
        }
        (DeviceKind::Camera, _) => draw_view(scene, layers, device, at, view.far),
        _ => {}
    }
}

/// A contact edge as a bar; one that stands upright shows its width, square to where it faces.
pub(crate) fn edge(device: &Device, at: Point, other: Point) -> Figure {
    if other.distance(at).base() > 0.01 {
        return bar(at, other);
    }
    let facing = device
        .facing
        .as_ref()
        .map_or(0.0, |facing| facing.nominal().base());
    let along = Angle::from_base(facing + FRAC_PI_2);
    let half = Length::from_base(HALF_EDGE);
    bar(at.toward(along, half), at.toward(along, -half))
}

/// A contact edge from end to end, as thick as most are.
pub(crate) fn bar(at: Point, other: Point) -> Figure {
    let across = Angle::from_base(at.direction_to(other).base() + FRAC_PI_2);
    let half = Length::from_base(HALF_EDGE / 2.0);
    let corners = [
        at.toward(across, half),
        other.toward(across, half),
        other.toward(across, -half),
        at.toward(across, -half),
    ];
    Figure::area(corners, Fill::Solid(Ink::Black))
}

/// The two sides of a camera's view, up to so far (m), where its direction and angle are known.
fn draw_view(scene: &mut Scene, layers: &Layers, device: &Device, at: Point, far: f64) {
    let (Some(facing), Some(angle)) = (&device.facing, &device.field_angle) else {
        return;
    };
    for side in [-0.5, 0.5] {
        let direction = Angle::from_base(facing.nominal().base() + side * angle.nominal().base());
        let end = at.toward(direction, Length::from_base(far));
        scene.add_titled(
            layers.beams,
            format!("side of the view of {}", device.id),
            Figure::line(at, end),
        );
    }
}
