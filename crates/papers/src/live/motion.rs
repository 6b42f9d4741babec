//! How a leaf and what it carries move as the gate opens, as a transform of the drawing and as data for a page.

use crate::elevation::on_screen::Way;
use crate::plan::gate::Turning;
use draw::{Group, Point};
use quantity::{Angle, Length, Quantity as _, Ratio};
use site::{Gate, GateKind, Leaf};

/// How a leaf moves from closed to open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Motion {
    /// It stays, or nobody has said how far it goes.
    Still,
    /// Along a straight line.
    Straight(Length, Length),
    /// About a point, counter-clockwise.
    Turn(Point, Angle),
    /// About a line across the drawing's x, so that it is seen shorter.
    Fold(Point, Angle),
}

impl Motion {
    /// The motion of a leaf seen from above.
    pub(super) fn from_above(gate: &Gate, index: usize, leaf: &Leaf) -> Self {
        let travel = gate.travel.as_ref().map(quantity::Measured::nominal);
        match gate.kind {
            GateKind::TrackSlide | GateKind::CantileverSlide => travel
                .map_or(Self::Still, |travel| {
                    Self::Straight(travel, Length::from_base(0.0))
                }),
            GateKind::SingleSwing | GateKind::DoubleSwing => Turning::of(gate, index, leaf)
                .and_then(|it| Some(Self::Turn(it.hinge, Angle::from_base(it.turn?))))
                .unwrap_or(Self::Still),
            GateKind::VerticalPivot | GateKind::BarrierArm => {
                let length = leaf.length.as_ref().map(quantity::Measured::nominal);
                let angle = gate.travel_angle.as_ref().map(quantity::Measured::nominal);
                let behind = leaf.tail.as_ref().map_or(0.0, |tail| tail.nominal().base());
                length.zip(angle).map_or(Self::Still, |(length, angle)| {
                    let pivot = Length::from_base(length.base() - behind);
                    Self::Fold(Point::new(pivot, Length::from_base(0.0)), angle)
                })
            }
            GateKind::VerticalLift => Self::Still,
        }
    }

    /// The motion of a leaf seen from the road.
    pub(super) fn from_road(way: Way) -> Self {
        match way {
            Way::NotKnown => Self::Still,
            Way::Straight(along, up) => Self::Straight(along, up),
            Way::Turn(about, by) => Self::Turn(about, by),
            Way::Fold(about, by) => Self::Fold(about, by),
        }
    }

    /// Where a point of the leaf is when the gate is so far open.
    pub(super) fn place(self, at: Point, open: Ratio) -> Point {
        let share = open.base();
        match self {
            Self::Still => at,
            Self::Straight(along, up) => at.moved(along * share, up * share),
            Self::Turn(about, by) => at.turned(about, by * share),
            Self::Fold(about, by) => {
                let shorter = (by.base() * share).cos();
                Point::new(about.x + (at.x - about.x) * shorter, at.y)
            }
        }
    }

    /// A group that moves in this way, so far open.
    pub(super) fn group(self, class: &str, open: Ratio) -> Group {
        let share = open.base();
        let group = Group::new(class);
        let number = |number: f64| digits(number);
        match self {
            Self::Still => group,
            Self::Straight(along, up) => {
                let (x, y) = (along.base(), -up.base());
                group
                    .data("motion", "straight")
                    .data("x", number(x))
                    .data("y", number(y))
                    .moved(format!(
                        "translate({} {})",
                        digits(x * share),
                        digits(y * share)
                    ))
            }
            Self::Turn(about, by) => {
                let (x, y, turn) = (about.x.base(), -about.y.base(), -by.base().to_degrees());
                group
                    .data("motion", "turn")
                    .data("x", number(x))
                    .data("y", number(y))
                    .data("by", number(turn))
                    .moved(format!("rotate({:.4} {x:.4} {y:.4})", turn * share))
            }
            Self::Fold(about, by) => {
                let (x, angle) = (about.x.base(), by.base());
                let shorter = (angle * share).cos();
                group
                    .data("motion", "fold")
                    .data("x", number(x))
                    .data("by", number(angle))
                    .moved(format!(
                        "matrix({shorter:.5} 0 0 1 {:.4} 0)",
                        x * (1.0 - shorter)
                    ))
            }
        }
    }
}

/// A number with four digits behind the point, nothing without a sign.
fn digits(number: f64) -> String {
    let text = format!("{number:.4}");
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|digit| matches!(digit, '0' | '.')) => rest.to_owned(),
        _ => text,
    }
}
