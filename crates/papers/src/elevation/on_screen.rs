//! The elevation of a gate for the screen, in parts: what stays, and each leaf as it stands closed; without words and
//! lengths.

use super::ground::Ground;
use super::layers::Layers;
use super::panel::Panel;
use super::{equipment, gear, leaf, motion, posts, span, standing};
use crate::plan::gate::Turning;
use crate::plan::tags::Tags;
use draw::{Point, Scene};
use quantity::{Angle, Length, Quantity as _};
use site::{Gate, GateKind, Id, Site};

/// The elevation of a gate in parts.
#[derive(Debug, Clone)]
pub(crate) struct Parts {
    /// Ground, foundations, posts, surroundings, running gear, devices.
    pub(crate) around: Scene,
    /// Each leaf, closed.
    pub(crate) leaves: Vec<Part>,
    /// Two opposite corners of what the screen shows at first.
    pub(crate) corners: (Point, Point),
}

/// A leaf, closed.
#[derive(Debug, Clone)]
pub(crate) struct Part {
    pub(crate) id: Id,
    pub(crate) scene: Scene,
    pub(crate) way: Way,
}

/// How a leaf moves as it opens, seen from the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Way {
    /// Nobody has said how far.
    NotKnown,
    /// Along a straight line.
    Straight(Length, Length),
    /// About a point, counter-clockwise.
    Turn(Point, Angle),
    /// About an upright line: it is seen shorter.
    Fold(Point, Angle),
}

/// The elevation of a gate in parts.
pub(crate) fn parts(site: &Site, gate: &Gate) -> Parts {
    let units = site.site.unit_system();
    let mut around = Scene::new("", units);
    let layers = Layers::add_to(&mut around);
    let ground = Ground::of(gate);
    let leaves = standing(&mut around, gate, &ground);
    let span = span(gate, &leaves);
    let mut tags = Tags::default();
    ground.draw(&mut around, &layers, span);
    posts::draw_surroundings(&mut around, &layers, gate, &ground, span);
    posts::draw_foundations(&mut around, &layers, site, gate, &ground);
    gear::draw_track(&mut around, &layers, gate, &leaves);
    posts::draw(&mut around, &layers, &mut tags, gate, &ground);
    let mut parts = Vec::new();
    for (index, (leaf, panel)) in leaves.iter().enumerate() {
        let Some(panel) = panel else { continue };
        gear::draw(&mut around, &layers, gate, leaf, panel);
        let mut scene = Scene::new("", units);
        let own = Layers::add_to(&mut scene);
        leaf::draw(&mut scene, &own, gate, leaf, panel);
        parts.push(Part {
            id: leaf.id.clone(),
            scene,
            way: way(gate, (index, leaf), panel),
        });
    }
    equipment::draw(&mut around, &layers, &mut tags, site, gate, span);
    let top = leaves.iter().filter_map(|(_, panel)| panel.as_ref());
    let top = top.map(|panel| {
        panel
            .outline()
            .map(|corner| corner.y.base())
            .into_iter()
            .fold(0.0, f64::max)
    });
    let raised = match gate.kind {
        GateKind::VerticalLift => gate.travel.as_ref().map_or(0.0, |it| it.nominal().base()),
        GateKind::VerticalPivot | GateKind::BarrierArm => span.1 - span.0,
        _ => 0.0,
    };
    let top = top.fold(2.0_f64, f64::max) + raised + ABOVE;
    let at = |x, y| Point::new(Length::from_base(x), Length::from_base(y));
    Parts {
        around,
        leaves: parts,
        corners: (at(span.0, -BELOW), at(span.1, top)),
    }
}

/// Clear room above what is drawn, and ground that is shown (m).
const ABOVE: f64 = 0.5;
const BELOW: f64 = 0.9;

fn way(gate: &Gate, (index, leaf): (usize, &site::Leaf), panel: &Panel) -> Way {
    let travel = gate.travel.as_ref().map(quantity::Measured::nominal);
    let zero = Length::from_base(0.0);
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => travel.map(|travel| {
            let rise = panel.lower_edge(travel.base()) - panel.lower_edge(0.0);
            Way::Straight(travel, Length::from_base(rise))
        }),
        GateKind::VerticalLift => travel.map(|travel| Way::Straight(zero, travel)),
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let turning = Turning::of(gate, index, leaf);
            turning.and_then(|it| Some(Way::Fold(it.hinge, Angle::from_base(it.turn?))))
        }
        GateKind::VerticalPivot | GateKind::BarrierArm => {
            let angle = gate.travel_angle.as_ref().map(quantity::Measured::nominal);
            angle.map(|angle| Way::Turn(motion::pivot(gate, leaf, panel), angle * -1.0))
        }
    }
    .unwrap_or(Way::NotKnown)
}
