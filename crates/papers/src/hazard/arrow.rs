//! Which way the leaf moves at a zone, as an arrow for each direction in which the zone is live.

use super::layers::Layers;
use super::seen::Seen;
use crate::plan::gate::Turning;
use design::zone::{ShownZone, ZoneKind};
use draw::{Content, Figure, Fill, Ink, Placement, Point, Scene, Shape, Symbol};
use quantity::{Angle, Length, Quantity as _};
use site::{Direction, Gate, GateKind};
use std::f64::consts::PI;

/// Names of the arrows in the legend.
const OPENING: &str = "leaf, opening";
const CLOSING: &str = "leaf, closing";

/// Draws the arrows of a zone from its middle; none where the leaf moves toward whoever looks.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    (gate, zone): (&Gate, &ShownZone),
    (seen, middle): (Seen, Point),
) {
    let Some(opening) = opening(gate, zone).and_then(|way| seen.direction(way)) else {
        return;
    };
    for live in &zone.live {
        let (turned, symbol) = match live.direction {
            Direction::Opening => (opening, arrow(OPENING, Fill::Solid(Ink::Paper))),
            Direction::Closing => (
                Angle::from_base(opening.base() + PI),
                arrow(CLOSING, Fill::Solid(Ink::Black)),
            ),
        };
        scene.add_titled(
            layers.arrows,
            format!("way of {} while {}", zone.leaf, live.direction),
            Placement::new(symbol, middle).rotation(turned),
        );
    }
}

/// A shape is the arrow of a way.
pub(super) fn is_one(shape: &Shape) -> bool {
    matches!(&shape.content, Content::Symbol(placed) if [OPENING, CLOSING].contains(&placed.symbol.name.as_str()))
}

/// Which way the leaf moves at the middle of a zone while it opens; none where a drive moves there.
fn opening(gate: &Gate, zone: &ShownZone) -> Option<[f64; 3]> {
    if zone.kind == ZoneKind::DriveArm {
        return None;
    }
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => Some([1.0, 0.0, 0.0]),
        GateKind::VerticalLift | GateKind::VerticalPivot | GateKind::BarrierArm => {
            Some([0.0, 0.0, 1.0])
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let mut leaves = gate.leaf.iter().enumerate();
            let (index, leaf) = leaves.find(|(_, leaf)| leaf.id == *zone.leaf)?;
            let turning = Turning::of(gate, index, leaf)?;
            let middle = middle(zone);
            let (x, y) = (
                middle[0] - turning.hinge.x.base(),
                middle[1] - turning.hinge.y.base(),
            );
            let sign = turning.turn?.signum();
            Some([-y * sign, x * sign, 0.0])
        }
    }
}

fn middle(zone: &ShownZone) -> [f64; 3] {
    let (low, high) = (zone.extent.low(), zone.extent.high());
    [0, 1, 2].map(|axis: usize| f64::midpoint(low[axis].base(), high[axis].base()))
}

/// An arrow that begins beside its origin and points along +x.
fn arrow(name: &str, head: Fill) -> Symbol {
    let mm =
        |x: f64, y: f64| Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0));
    Symbol::new(
        name,
        [
            Figure::line(mm(0.6, 0.0), mm(3.6, 0.0)),
            Figure::area([mm(3.6, 0.8), mm(5.6, 0.0), mm(3.6, -0.8)], head),
        ],
    )
}
