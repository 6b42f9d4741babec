//! A gate on the screen from the road.

use super::items::{Seen, Thing, things, without_place};
use super::motion::Motion;
use super::{Layer, Live, names, unit, zones};
use crate::elevation::on_screen::parts;
use draw::{Group, Point, Scene, Screen, Shape};
use quantity::{Length, Ratio};
use site::{Gate, Site};

/// A gate from the road, so far open: 0 is closed, 1 open.
pub fn elevation(site: &Site, gate: &Gate, open: Ratio) -> Live {
    let parts = parts(site, gate);
    let unit = unit(parts.corners);
    let leaf_of = |id: &site::Id| parts.leaves.iter().find(|part| part.id == *id);
    let motions: Vec<Motion> = gate
        .leaf
        .iter()
        .map(|leaf| leaf_of(&leaf.id).map_or(Motion::Still, |part| Motion::from_road(part.way)))
        .collect();
    let drawn = |thing: &Thing| {
        let of_it = |shape: &Shape| is_titled(shape, &thing.title);
        parts.around.shapes().iter().any(of_it)
    };
    let things: Vec<Thing> = things(site, gate, Seen::FromRoad)
        .into_iter()
        .filter(drawn)
        .collect();
    let mut screen = Screen::new(unit);
    let mut layers = Vec::new();
    let mut layer = |screen: &mut Screen, class: &str, name: &str, shown: bool| {
        let layer = Layer::new(class, name, shown);
        screen.open(&layer.group());
        layers.push(layer);
    };
    layer(&mut screen, "ground", "Ground, posts, running gear", true);
    let of_a_thing = |shape: &Shape| things.iter().any(|thing| is_titled(shape, &thing.title));
    screen.scene(&parts.around, |shape| !of_a_thing(shape));
    screen.close();
    layer(&mut screen, "zones", "Hazard zones", true);
    let from_road = |[x, _, z]: [Length; 3]| Point::new(x, z);
    let zones = zones::draw(&mut screen, (site, gate), from_road);
    screen.close();
    layer(&mut screen, "leaf", "Gate", true);
    for part in &parts.leaves {
        let way = Motion::from_road(part.way);
        let path = format!("gate.{}.leaf.{}", gate.id, part.id);
        screen.open(&way.group("moving", open));
        screen.open(&Group::new("item leaf").data("item", path));
        screen.scene(&part.scene, |_| true);
        screen.close();
        screen.close();
    }
    screen.close();
    layer(&mut screen, "devices", "Devices and drives", true);
    draw_things(&mut screen, &parts.around, &things, &motions, open);
    screen.close();
    layer(&mut screen, "names", "Names", true);
    names::draw(&mut screen, &things, &motions, parts.corners, (unit, open));
    screen.close();
    let title = format!("Elevation of gate {}", gate.id);
    let description = format!("The {} gate {} from the road side.", gate.kind, gate.id);
    Live {
        svg: screen.finish(parts.corners, "live elevation", &title, &description),
        title,
        low: parts.corners.0,
        high: parts.corners.1,
        layers,
        zones,
        without_place: without_place(site),
        items: things.into_iter().map(|thing| thing.item).collect(),
    }
}

fn is_titled(shape: &Shape, title: &str) -> bool {
    let named = shape.title.as_deref();
    named.is_some_and(|named| {
        named
            .strip_prefix(title)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(','))
    })
}

fn draw_things(
    screen: &mut Screen,
    around: &Scene,
    things: &[Thing],
    motions: &[Motion],
    open: Ratio,
) {
    for thing in things.iter().filter(|thing| thing.item.key == "at") {
        let carrier = thing.item.carried_by.and_then(|leaf| motions.get(leaf));
        if let Some(motion) = carrier {
            screen.open(&motion.group("carried", open));
        }
        screen.open(
            &Group::new("item device")
                .title(thing.title.as_str())
                .data("item", thing.item.path.as_str()),
        );
        screen.scene(around, |shape| is_titled(shape, &thing.title));
        screen.target(thing.item.at, 14.0, 0.0);
        screen.close();
        if carrier.is_some() {
            screen.close();
        }
    }
}
