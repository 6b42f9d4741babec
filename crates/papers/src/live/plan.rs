//! A gate on the screen from above.

use super::items::{Seen, Thing, things, without_place};
use super::motion::Motion;
use super::{Layer, Live, names, reach, unit, zones};
use crate::plan::on_screen;
use crate::ways;
use design::vehicle;
use draw::{Figure, Fill, Group, Ink, Placement, Point, Scene, Screen};
use quantity::{Length, Quantity as _, Ratio};
use site::{Device, DeviceKind, Gate, Site};

/// A gate from above, so far open: 0 is closed, 1 open.
pub fn plan(site: &Site, gate: &Gate, open: Ratio) -> Live {
    let corners = on_screen::corners(site, gate);
    let things = things(site, gate, Seen::FromAbove);
    let leaves = gate.leaf.iter().enumerate();
    let motions: Vec<Motion> = leaves
        .map(|(index, leaf)| Motion::from_above(gate, index, leaf))
        .collect();
    let unit = unit(corners);
    let mut drawing = Drawing {
        screen: Screen::new(unit),
        layers: Vec::new(),
        site,
        gate,
        things: &things,
        motions: &motions,
        open,
    };
    drawing.ground();
    drawing.vehicles();
    let zones = drawing.zones();
    drawing.routes();
    drawing.cameras();
    drawing.fields();
    drawing.leaves();
    drawing.standing();
    drawing.devices();
    drawing.names(corners, unit);
    let title = format!("Plan of gate {}", gate.id);
    let description = format!(
        "The {} gate {} from above, road side below, property above.",
        gate.kind, gate.id
    );
    Live {
        svg: drawing
            .screen
            .finish(corners, "live plan", &title, &description),
        title,
        low: corners.0,
        high: corners.1,
        layers: drawing.layers,
        zones,
        without_place: without_place(site),
        items: things.into_iter().map(|thing| thing.item).collect(),
    }
}

/// A plan as it grows.
struct Drawing<'s> {
    screen: Screen,
    layers: Vec<Layer>,
    site: &'s Site,
    gate: &'s Gate,
    things: &'s [Thing],
    motions: &'s [Motion],
    open: Ratio,
}

impl Drawing<'_> {
    fn layer(&mut self, class: &str, name: &str, shown: bool) {
        let layer = Layer::new(class, name, shown);
        self.screen.open(&layer.group());
        self.layers.push(layer);
    }

    fn ground(&mut self) {
        self.layer("ground", "Ground and drive", true);
        let scene = on_screen::ground(self.site);
        let foundation = |title: &str| {
            let of = |thing: &&Thing| {
                is_of(&thing.title, title) && thing.item.path.starts_with("foundation.")
            };
            self.things.iter().find(of)
        };
        self.screen.scene(&scene, |shape| {
            shape
                .title
                .as_deref()
                .is_none_or(|title| foundation(title).is_none())
        });
        self.grouped(&scene, "foundation.");
        self.screen.close();
    }

    fn vehicles(&mut self) {
        let (vehicles, _) = vehicle::shown(self.site, self.gate);
        for vehicle in vehicles {
            let name = format!("Vehicle: {}", vehicle.what);
            self.layer(&format!("vehicle-{}", vehicle.id), &name, false);
            self.screen.open(
                &Group::new("vehicle w-medium p-unbroken i-black").title(vehicle.what.as_str()),
            );
            let front = vehicle.front.base();
            for part in &vehicle.outline.parts {
                let (from, to) = (front - part.to.base(), front - part.from.base());
                let (middle, half) = (vehicle.middle.base(), part.width.base() / 2.0);
                let fill = Fill::Solid(Ink::Tint);
                let figure =
                    Figure::rectangle(at(middle - half, from), at(middle + half, to), fill);
                self.screen.figure(&figure);
            }
            self.screen.close();
            self.screen.close();
        }
    }

    fn zones(&mut self) -> Vec<super::Zone> {
        self.layer("zones", "Hazard zones", true);
        let from_above = |[x, y, _]: [Length; 3]| Point::new(x, y);
        let zones = zones::draw(&mut self.screen, (self.site, self.gate), from_above);
        self.screen.close();
        zones
    }

    fn routes(&mut self) {
        self.layer("routes", "Ways in the ground", false);
        let scene = ways::on_screen(self.site);
        let is_way = |title: &str| self.site.way.iter().any(|way| way.id == *title);
        self.screen
            .scene(&scene, |shape| !shape.title.as_deref().is_some_and(is_way));
        for way in &self.site.way {
            let path = format!("way.{}", way.id);
            self.screen.open(&Group::new("reach").data("item", path));
            self.screen.scene(&scene, |shape| {
                shape.title.as_deref() == Some(way.id.as_str())
            });
            self.screen.close();
        }
        self.screen.close();
    }

    fn cameras(&mut self) {
        self.layer("cameras", "What cameras see", false);
        self.reaches(|kind| kind == DeviceKind::Camera);
    }

    fn fields(&mut self) {
        self.layer("fields", "Beams, edges, loops, fields", true);
        self.reaches(|kind| kind != DeviceKind::Camera);
    }

    /// The reach of the devices of some kinds; ends the layer.
    fn reaches(&mut self, wanted: impl Fn(DeviceKind) -> bool) {
        let scene = on_screen::reach(self.site);
        let of = |thing: &Thing| {
            self.site
                .device
                .iter()
                .find(|it| thing.item.path == path(it))
        };
        let belongs = |thing: &Thing, title: &str| {
            of(thing).is_some_and(|device| wanted(device.kind) && is_reach_of(device, title))
        };
        reach::draw(
            &mut self.screen,
            &scene,
            self.things,
            self.motions,
            (self.open, belongs),
        );
        self.screen.close();
    }

    fn leaves(&mut self) {
        self.layer("leaf", "Gate", true);
        let scene = on_screen::leaves(self.site, self.gate);
        let closed = |title: &str| title.ends_with(", closed");
        self.screen.open(&Group::new("other-positions"));
        self.screen
            .scene(&scene, |shape| !shape.title.as_deref().is_some_and(closed));
        self.screen.close();
        for (leaf, motion) in self.gate.leaf.iter().zip(self.motions) {
            let title = format!("leaf {}, closed", leaf.id);
            let path = format!("gate.{}.leaf.{}", self.gate.id, leaf.id);
            self.screen.open(&motion.group("moving", self.open));
            self.screen
                .open(&Group::new("item leaf").data("item", path));
            self.screen
                .scene(&scene, |shape| shape.title.as_deref() == Some(&title));
            self.screen.close();
            self.screen.close();
        }
        self.screen.close();
    }

    fn standing(&mut self) {
        self.layer("standing", "Posts, bollards, covers", true);
        let scene = on_screen::standing(self.site, self.gate);
        let of_a_thing = |title: &str| self.things.iter().any(|thing| thing.title == title);
        self.screen.scene(&scene, |shape| {
            !shape.title.as_deref().is_some_and(of_a_thing)
        });
        for prefix in ["gate.", "bollard.", "cover."] {
            self.grouped(&scene, prefix);
        }
        self.screen.close();
    }

    /// The shapes of a scene that are one thing's, in a group each.
    fn grouped(&mut self, scene: &Scene, prefix: &str) {
        let mine = |thing: &&Thing| thing.item.path.starts_with(prefix);
        for thing in self.things.iter().filter(mine) {
            self.screen
                .open(&Group::new("item").data("item", thing.item.path.as_str()));
            self.screen.scene(scene, |shape| {
                shape
                    .title
                    .as_deref()
                    .is_some_and(|title| is_of(&thing.title, title))
            });
            self.screen.close();
        }
    }

    fn devices(&mut self) {
        self.layer("devices", "Devices, drives, enclosures", true);
        let symbols = on_screen::symbols(self.site);
        for thing in self.things.iter().filter(|thing| thing.item.key == "at") {
            let own = symbols.iter().find(|(title, _)| *title == thing.title);
            let Some((title, placement)) = own else {
                continue;
            };
            let sized = self.site.device.iter().any(|it| {
                let to_size = matches!(it.kind, DeviceKind::Loop | DeviceKind::ContactEdge);
                it.to.is_some() && to_size && path(it) == thing.item.path
            });
            let carrier = thing
                .item
                .carried_by
                .and_then(|leaf| self.motions.get(leaf));
            if let Some(motion) = carrier {
                self.screen.open(&motion.group("carried", self.open));
            }
            self.screen.open(
                &Group::new("item device w-medium p-unbroken i-black")
                    .title(title.as_str())
                    .data("item", thing.item.path.as_str()),
            );
            let placed = Placement {
                at: thing.item.at,
                ..placement.clone()
            };
            let aside = names::aside(thing.item.beside);
            self.screen.target(placed.at, 14.0, aside);
            if !sized {
                self.screen.symbol(&placed, aside);
            }
            self.screen.close();
            if carrier.is_some() {
                self.screen.close();
            }
        }
        self.screen.close();
    }

    fn names(&mut self, corners: (Point, Point), unit: Length) {
        self.layer("names", "Names", true);
        names::draw(
            &mut self.screen,
            self.things,
            self.motions,
            corners,
            (unit, self.open),
        );
        self.screen.close();
    }
}

/// The title of a shape is that of a thing, perhaps with a remark after a comma.
fn is_of(thing: &str, title: &str) -> bool {
    title
        .strip_prefix(thing)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with(','))
}

fn path(device: &Device) -> String {
    format!("device.{}", device.id)
}

/// A shape is what a device reaches: its beam, its other end, its field, the sides of its view.
fn is_reach_of(device: &Device, title: &str) -> bool {
    let of_field = ["field of ", "side of the view of "]
        .iter()
        .any(|what| title.strip_prefix(what) == Some(device.id.as_str()));
    of_field || is_of(&format!("{} {}", device.kind, device.id), title)
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}
