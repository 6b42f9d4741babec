//! How the leaf of a gate closes, as a vehicle meets it.

use crate::asking::{Asking, pick, read};
use crate::check::leaf::arc;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::vehicle::{Hinged, Leaf, Toward};
use site::{Gate, GateKind, SwingSide};

/// How a leaf is written.
const LEAF: &str = "[{ id = \"leaf\", length = \"21 ft\", height = \"6 ft\", thickness = \"2 in\", ground_clearance = \"2 in\", closed_end = \"-3 in\" }]";

/// Underside, top and thickness of the closed leaf.
struct Section {
    bottom: Length,
    top: Length,
    thickness: Length,
}

pub(crate) fn leaf<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Leaf, Halt> {
    let one = asking.need(&gate.origin, "leaf", gate.leaf.first(), LEAF)?;
    let section = section(asking, one);
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            let travel = read!(asking, gate.travel);
            let closed = read!(asking, one.closed_end);
            let (section, travel, closed) = (section?, travel?, closed?);
            Ok(Leaf::Slide {
                open: closed + travel,
                closed,
                bottom: section.bottom,
                top: section.top,
                thickness: section.thickness,
            })
        }
        GateKind::VerticalLift => {
            let travel = read!(asking, gate.travel);
            let section = section?;
            Ok(Leaf::Lift {
                open: section.bottom + travel?,
                closed: section.bottom,
                thickness: section.thickness,
            })
        }
        GateKind::BarrierArm | GateKind::VerticalPivot => {
            let length = read!(asking, one.length);
            let closed = read!(asking, one.closed_end);
            let open = read!(asking, gate.travel_angle);
            let (section, length) = (section?, length?);
            Ok(Leaf::Arm {
                pivot: closed? + length,
                toward: Toward::Smaller,
                length,
                bottom: section.bottom,
                open: open?,
                thickness: section.thickness,
            })
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => swing(asking, gate, section),
    }
}

fn section<'s>(asking: &mut Asking<'s>, leaf: &'s site::Leaf) -> Result<Section, Halt> {
    let bottom = read!(asking, leaf.ground_clearance);
    let height = read!(asking, leaf.height);
    let thickness = read!(asking, leaf.thickness);
    let bottom = bottom?;
    Ok(Section {
        bottom,
        top: bottom + height?,
        thickness: thickness?,
    })
}

fn swing<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    section: Result<Section, Halt>,
) -> Result<Leaf, Halt> {
    let opening = read!(asking, gate.clear_opening);
    let travel = read!(asking, gate.travel_angle);
    let side = pick!(asking, gate.swings);
    let lengths: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| read!(asking, leaf.length))
        .collect();
    let lengths: Result<Vec<Length>, Halt> = lengths.into_iter().collect();
    let (section, opening, lengths) = (section?, opening?, lengths?);
    let (travel, side) = (travel?, side?);
    let toward = |sign: f64| {
        if sign > 0.0 {
            Toward::Greater
        } else {
            Toward::Smaller
        }
    };
    let leaves = arc::sweeps(gate, opening, &lengths, (travel, side));
    let hinged = leaves.iter().map(|sweep| Hinged {
        pivot: Length::from_base(sweep.hinge.0),
        toward: toward(sweep.toward),
        length: Length::from_base(sweep.length),
        open: travel,
    });
    Ok(Leaf::Swing {
        leaves: hinged.collect(),
        side: match side {
            SwingSide::IntoProperty => Toward::Greater,
            SwingSide::TowardRoad => Toward::Smaller,
        },
        bottom: section.bottom,
        top: section.top,
        thickness: section.thickness,
    })
}
