//! Operators, devices, enclosures, supplies and panels on the plan.

use super::ground::seen_from_above;
use super::layers::Layers;
use super::symbols;
use super::tags::Tags;
use super::window::Window;
use draw::{Figure, Fill, Placement, Point, Scene, Symbol};
use quantity::{Angle, Length, Quantity as _};
use site::{Device, DeviceKind, Position, Site};

/// Symbols nearer than this hide each other, so that only the first is drawn (m).
const SAME_PLACE: f64 = 0.15;

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
fn looking(device: &Device, other: Option<Point>) -> Angle {
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
        site.device
            .iter()
            .filter(|it| it.at.is_none() && it.enclosure.is_none())
            .map(|it| it.id.to_string()),
    );
    names
}

/// Draws what the sheet shows, with its names.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    site: &Site,
    window: &Window,
) {
    for device in &site.device {
        draw_reach(scene, layers, device, window);
    }
    let mut drawn: Vec<Point> = Vec::new();
    for thing in placed(site)
        .into_iter()
        .filter(|thing| window.shows(thing.at))
    {
        let is_area = has_extent(site, &thing.name);
        if !is_area
            && !drawn
                .iter()
                .any(|other| other.distance(thing.at).base() < SAME_PLACE)
        {
            thing.draw(scene, layers);
            drawn.push(thing.at);
        }
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

/// The beam, strip, loop or field of view of a device.
fn draw_reach(scene: &mut Scene, layers: &Layers, device: &Device, window: &Window) {
    let Some(at) = device
        .at
        .as_ref()
        .map(seen_from_above)
        .filter(|at| window.shows(*at))
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
            scene.add_titled(layers.beams, title, Figure::line(at, other));
        }
        (DeviceKind::ContactEdge, Some(other)) => {
            scene.add_titled(layers.edges, title, edge(at, other));
        }
        (DeviceKind::Camera, _) => draw_view(scene, layers, device, at),
        _ => {}
    }
}

/// A contact edge as a strip; one that stands upright is a spot from above.
fn edge(at: Point, other: Point) -> Figure {
    if other.distance(at).base() > 0.01 {
        Figure::line(at, other)
    } else {
        Figure::circle(at, Length::from_base(0.03), Fill::Open)
    }
}

/// The two sides of a camera's view, 3 m long, where its direction and angle are known.
fn draw_view(scene: &mut Scene, layers: &Layers, device: &Device, at: Point) {
    let (Some(facing), Some(angle)) = (&device.facing, &device.field_angle) else {
        return;
    };
    for side in [-0.5, 0.5] {
        let direction = Angle::from_base(facing.nominal().base() + side * angle.nominal().base());
        let end = at.toward(direction, Length::from_base(3.0));
        scene.add_titled(
            layers.beams,
            format!("side of the view of {}", device.id),
            Figure::line(at, end),
        );
    }
}
