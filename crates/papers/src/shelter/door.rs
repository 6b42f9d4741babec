//! The door as it opens, seen from above.

use super::{Drawn, at};
use crate::plan::gate::nominal;
use draw::Figure;
use quantity::{Angle, Quantity as _};
use std::f64::consts::PI;

impl Drawn<'_> {
    /// Draws the way of the door from the lower edge of the bottom face.
    pub(super) fn door(&mut self, (left, front): (f64, f64), wide: f64) {
        let (Some(hinged_left), Some(opens)) = (self.hinged_left(), self.opens()) else {
            return;
        };
        let hinge = if hinged_left { left } else { left + wide };
        let (shut, turn) = if hinged_left {
            (0.0, -opens)
        } else {
            (PI, opens)
        };
        let end = shut + turn;
        let tip = at(hinge + wide * end.cos(), front + wide * end.sin());
        let leaf = Figure::line(at(hinge, front), tip);
        self.scene.add_titled(self.layers.door, "door, open", leaf);
        let way = Figure::arc(
            at(hinge, front),
            quantity::Length::from_base(wide),
            Angle::from_base(shut),
            Angle::from_base(turn),
        );
        self.scene
            .add_titled(self.layers.door, "way of the door", way);
    }

    /// How far the open door stands out to the left and to the right of its box (m).
    pub(super) fn door_beyond(&self, wide: f64) -> (f64, f64) {
        let (Some(hinged_left), Some(opens)) = (self.hinged_left(), self.opens()) else {
            return (0.0, 0.0);
        };
        let farthest = (-opens.min(PI).cos() * wide).max(0.0);
        if hinged_left {
            (farthest, 0.0)
        } else {
            (0.0, farthest)
        }
    }

    fn opens(&self) -> Option<f64> {
        let door = self.enclosure.door.as_ref()?;
        nominal(door.opens.as_ref()).map(quantity::Quantity::base)
    }

    /// The hinge is to the left of whoever stands before the door; unknown without hinge, place or direction.
    pub(super) fn hinged_left(&self) -> Option<bool> {
        let hinge = self.enclosure.door.as_ref()?.hinge_at.as_ref()?;
        let middle = self.enclosure.at.as_ref()?;
        let facing = self.enclosure.in_sun.as_ref()?.facing.as_ref()?;
        let left = facing.nominal().base() - PI / 2.0;
        let toward = (hinge.x.nominal().base() - middle.x.nominal().base()) * left.cos()
            + (hinge.y.nominal().base() - middle.y.nominal().base()) * left.sin();
        (toward.abs() > 0.01).then_some(toward > 0.0)
    }
}
