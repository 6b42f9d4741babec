//! A leaf as it stands in the elevation: where its ends and edges are, and what had to be assumed for that.

use super::ground::{Ground, track_slope};
use super::{meters, named, place};
use crate::plan::gate::Turning;
use draw::{Point, Scene};
use quantity::Quantity as _;
use site::{Gate, GateKind, Leaf};

/// A closed leaf. Along it is measured from the latching end, up from its lower edge (m).
#[derive(Debug, Clone, Copy)]
pub(super) struct Panel {
    /// Where the latching end stands along the gate.
    latch: f64,
    /// Direction from the latching end to the far end: 1 or -1.
    way: f64,
    pub(super) length: f64,
    pub(super) height: f64,
    /// Level of the lower edge at the origin.
    bottom: f64,
    /// Rise over run of its edges.
    slope: f64,
}

impl Panel {
    /// The panel of a leaf; `None` where its size is not known. What is assumed is remarked on the scene.
    pub(super) fn of(
        scene: &mut Scene,
        gate: &Gate,
        (index, leaf): (usize, &Leaf),
        ground: &Ground,
    ) -> Option<Self> {
        let length = known_length(scene, gate, leaf)?;
        let height = known_height(scene, leaf)?;
        let (latch, way) = stand(scene, gate, (index, leaf), length);
        let slope = track_slope(gate).unwrap_or(0.0);
        let clearance = meters(leaf.ground_clearance.as_ref()).unwrap_or_else(|| {
            scene.remark(format!(
                "The clearance under {} is not given; it is drawn on the ground.",
                named(leaf)
            ));
            0.0
        });
        let span = (
            latch.min(latch + way * length),
            latch.max(latch + way * length),
        );
        let bottom = ground.highest_over(span, slope) + clearance;
        Some(Self {
            latch,
            way,
            length,
            height,
            bottom,
            slope,
        })
    }

    /// The point so far from the latching end and so far above the lower edge.
    pub(super) fn at(&self, along: f64, up: f64) -> Point {
        let x = self.x(along);
        place(x, self.bottom + self.slope * x + up)
    }

    /// Distance along the gate of a point of the leaf.
    pub(super) fn x(&self, along: f64) -> f64 {
        self.latch + self.way * along
    }

    /// Lowest and highest x (m).
    pub(super) fn span(&self) -> (f64, f64) {
        let ends = (self.latch, self.x(self.length));
        (ends.0.min(ends.1), ends.0.max(ends.1))
    }

    /// Level of the lower edge at a distance along the gate.
    pub(super) fn lower_edge(&self, x: f64) -> f64 {
        self.bottom + self.slope * x
    }

    /// A rectangle of the leaf between two lengths and two heights.
    pub(super) fn rectangle(&self, along: (f64, f64), up: (f64, f64)) -> [Point; 4] {
        [
            self.at(along.0, up.0),
            self.at(along.1, up.0),
            self.at(along.1, up.1),
            self.at(along.0, up.1),
        ]
    }

    /// Its outline.
    pub(super) fn outline(&self) -> [Point; 4] {
        self.rectangle((0.0, self.length), (0.0, self.height))
    }

    /// The same leaf moved along the gate, up its slope.
    pub(super) fn moved(mut self, along: f64) -> Self {
        self.latch += along;
        self
    }

    /// The same leaf raised.
    pub(super) fn raised(mut self, by: f64) -> Self {
        self.bottom += by;
        self
    }
}

fn known_length(scene: &mut Scene, gate: &Gate, leaf: &Leaf) -> Option<f64> {
    if let Some(length) = meters(leaf.length.as_ref()) {
        return Some(length);
    }
    let share = if gate.kind == GateKind::DoubleSwing {
        0.5
    } else {
        1.0
    };
    let opening = meters(gate.clear_opening.as_ref()).map(|opening| opening * share);
    scene.remark(match opening {
        Some(_) => format!(
            "The length of {} is not given; it is drawn as long as its part of the clear opening.",
            named(leaf)
        ),
        None => format!(
            "Not drawn: {}: neither its length nor the clear opening is given.",
            leaf.id
        ),
    });
    opening
}

fn known_height(scene: &mut Scene, leaf: &Leaf) -> Option<f64> {
    let height = meters(leaf.height.as_ref());
    if height.is_none() {
        scene.remark(format!(
            "{} is not drawn: its height is not given.",
            named(leaf)
        ));
    }
    height
}

/// Where the latching end stands, and in which direction the leaf goes from there.
fn stand(scene: &mut Scene, gate: &Gate, (index, leaf): (usize, &Leaf), length: f64) -> (f64, f64) {
    if matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        let at_origin = gate.kind == GateKind::DoubleSwing && index == 0;
        let opening = meters(gate.clear_opening.as_ref());
        let hinge = Turning::of(gate, index, leaf).map(|turning| turning.hinge.x.base());
        let hinge = hinge
            .or(if at_origin { Some(0.0) } else { opening })
            .unwrap_or(length);
        return if at_origin {
            (hinge + length, -1.0)
        } else {
            (hinge - length, 1.0)
        };
    }
    let end = leaf.closed_end.as_ref().map(|end| end.nominal().base());
    if end.is_none() {
        scene.remark(format!("Where the latching end of {} stands is not given; it is drawn at the edge of the clear opening.", named(leaf)));
    }
    (end.unwrap_or(0.0), 1.0)
}
