//! How a leaf moves, in the elevation: its open position, the side of its hinges, its pivot and what balances it.

use super::layers::Layers;
use super::named;
use super::panel::Panel;
use super::{length, meters, symbols};
use draw::{Figure, Fill, Label, Placement, Point, Scene, Text};
use quantity::{Angle, Quantity as _};
use site::{Balance, BalanceKind, Gate, GateKind, Leaf};
use std::f64::consts::{FRAC_PI_2, PI};

/// Draws how a leaf moves.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide | GateKind::VerticalLift => {
            draw_moved(scene, layers, gate, leaf, panel);
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            draw_swing(scene, layers, gate, leaf, panel);
        }
        GateKind::VerticalPivot | GateKind::BarrierArm => {
            draw_rising(scene, layers, gate, leaf, panel);
        }
    }
}

/// The open position of a leaf that slides or lifts.
fn draw_moved(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    let Some(travel) = meters(gate.travel.as_ref()) else {
        scene.remark("The travel is not given; the open position is not drawn.");
        return;
    };
    let open = if gate.kind == GateKind::VerticalLift {
        panel.raised(travel)
    } else {
        panel.moved(travel)
    };
    draw_open(scene, layers, leaf, &open);
}

fn draw_open(scene: &mut Scene, layers: &Layers, leaf: &Leaf, open: &Panel) {
    let title = format!("leaf {}, open", leaf.id);
    scene.add_titled(
        layers.open_position,
        title,
        Figure::area(open.outline(), Fill::Open),
    );
    let middle = open.at(open.length * 0.6, open.height / 2.0);
    scene.add(layers.notes, Text::new(middle, "leaf, open"));
}

/// Lines from the latching corners to the middle of the hinge side.
fn draw_swing(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    let apex = panel.at(panel.length, panel.height / 2.0);
    let way = [panel.at(0.0, panel.height), apex, panel.at(0.0, 0.0)];
    scene.add_titled(
        layers.swing,
        format!("leaf {} swings", leaf.id),
        Figure::path(way),
    );
    let angle = gate
        .travel_angle
        .as_ref()
        .map(|angle| angle.nominal().base().to_degrees());
    let words = match (angle, gate.swings) {
        (Some(angle), Some(side)) => format!("{}: opens {angle:.0}°\n{side}", leaf.id),
        (Some(angle), None) => format!("{}: opens {angle:.0}°", leaf.id),
        _ => leaf.id.to_string(),
    };
    let middle = panel.at(panel.length * 0.45, panel.height / 2.0);
    scene.add(layers.notes, Text::new(middle, words));
}

/// Where a rising leaf or arm turns: at its far end, or before the part behind the pivot.
pub(super) fn pivot(gate: &Gate, leaf: &Leaf, panel: &Panel) -> Point {
    let behind = meters(leaf.tail.as_ref()).unwrap_or(0.0);
    let up = pivot_up(gate).unwrap_or(panel.height / 2.0);
    panel.at(panel.length - behind, up)
}

/// Height of the pivot above the lower edge, where it is given.
fn pivot_up(gate: &Gate) -> Option<f64> {
    gate.pivot_up.as_ref().map(|up| up.nominal().base())
}

fn draw_rising(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    let pivot = pivot(gate, leaf, panel);
    if pivot_up(gate).is_none() {
        scene.remark(format!(
            "The place of the pivot of {} is not given: it is drawn halfway up.",
            named(leaf)
        ));
    }
    if gate.kind == GateKind::BarrierArm {
        scene.remark("The pedestal is not drawn: its size is not given.");
    }
    let angle = gate.travel_angle.as_ref().map_or_else(
        || {
            scene.remark("The angle of travel is not given; the open position is drawn at 90°.");
            FRAC_PI_2
        },
        |angle| angle.nominal().base(),
    );
    let turn = Angle::from_base(-angle);
    let open = panel.outline().map(|corner| corner.turned(pivot, turn));
    let title = format!("leaf {}, open", leaf.id);
    scene.add_titled(layers.open_position, title, Figure::area(open, Fill::Open));
    let radius = panel.at(0.0, panel.height / 2.0).distance(pivot);
    let way = Figure::arc(
        pivot,
        radius,
        Angle::from_base(PI - angle),
        Angle::from_base(angle),
    );
    scene.add_titled(
        layers.open_position,
        format!("way of the tip of leaf {}", leaf.id),
        way,
    );
    let aside = pivot.toward(Angle::from_base(PI - angle / 2.0), radius * 0.6);
    let words = format!("opens {:.0}°", angle.to_degrees());
    scene.add(layers.notes, Text::new(aside, words));
    scene.add_titled(
        layers.running,
        "pivot",
        Placement::new(symbols::pivot(), pivot),
    );
    if let Some(balance) = &gate.balance {
        draw_balance(scene, layers, balance, pivot);
    }
}

/// A counterweight beyond the pivot, or a spring from its hook there down to its fixed end.
fn draw_balance(scene: &mut Scene, layers: &Layers, balance: &Balance, pivot: Point) {
    match balance.kind {
        BalanceKind::Counterweight => match meters(balance.radius.as_ref()) {
            Some(radius) => {
                let offset = balance
                    .offset_angle
                    .as_ref()
                    .map_or(0.0, |angle| angle.nominal().base());
                let at = pivot.toward(Angle::from_base(offset), length(radius));
                scene.add(layers.running, Figure::line(pivot, at));
                scene.add_titled(
                    layers.running,
                    "counterweight",
                    Placement::new(symbols::counterweight(), at),
                );
                let mass = balance
                    .mass
                    .as_ref()
                    .map(|mass| quantity::print(mass.nominal(), scene.units));
                let words = mass.map_or_else(
                    || "counterweight".to_owned(),
                    |mass| format!("counterweight\n{mass}"),
                );
                scene.add(layers.notes, Label::new(at, words));
            }
            None => scene.remark(
                "The counterweight is not drawn: its distance from the pivot is not given.",
            ),
        },
        BalanceKind::ExtensionSpring => {
            let places =
                meters(balance.hook_radius.as_ref()).zip(meters(balance.anchor_depth.as_ref()));
            match places {
                Some((hook, depth)) => {
                    let (hook, foot) = (
                        pivot.moved(length(hook), length(0.0)),
                        pivot.moved(length(0.0), length(-depth)),
                    );
                    scene.add_titled(layers.running, "extension spring", Figure::line(hook, foot));
                    scene.add(layers.notes, Label::new(hook.middle(foot), "spring"));
                }
                None => scene.remark(
                    "The spring is not drawn: where it is hooked and anchored is not given.",
                ),
            }
        }
        BalanceKind::TorsionSpring => {
            scene.add(
                layers.notes,
                Label::new(pivot, "torsion spring on the shaft"),
            );
        }
    }
}
