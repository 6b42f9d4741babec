//! The two pins of a drive on a swing leaf: one that stands still, one that goes with the leaf.

use crate::OutOfReach;
use quantity::{Angle, Length, Quantity as _};
use std::f64::consts::PI;

/// Where the pins are, with the hinge line at the origin, x toward the free end of the closed leaf and y toward the
/// side to which it opens.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pins {
    /// The pin that stands still.
    pub(super) rear: (f64, f64),
    /// The pin on the leaf, with the leaf closed.
    front: (f64, f64),
}

impl Pins {
    pub(super) fn new(
        rear_behind: Length,
        rear_across: Length,
        front_along: Length,
        front_across: Length,
    ) -> Self {
        Self {
            rear: (-rear_behind.base(), rear_across.base()),
            front: (front_along.base(), front_across.base()),
        }
    }

    /// The pin on the leaf at an angle.
    pub(super) fn front_at(&self, angle: f64) -> (f64, f64) {
        let (sine, cosine) = angle.sin_cos();
        let (x, y) = self.front;
        (x * cosine - y * sine, x * sine + y * cosine)
    }

    /// Distance between the pins and twice the area of the triangle of hinge line, rear pin and front pin; the area is
    /// above zero where the pins come nearer while the leaf opens.
    pub(super) fn length_and_area(&self, angle: f64) -> (f64, f64) {
        let (x, y) = self.front_at(angle);
        let length = (x - self.rear.0).hypot(y - self.rear.1);
        (length, self.rear.1 * x - self.rear.0 * y)
    }

    /// Distance of the line through the pins from the hinge line; above zero where they come nearer while opening.
    pub(super) fn lever_arm(&self, angle: f64) -> f64 {
        let (length, area) = self.length_and_area(angle);
        area / length
    }

    /// Distances of the rear and the front pin from the hinge line.
    pub(super) fn radii(&self) -> (f64, f64) {
        (
            self.rear.0.hypot(self.rear.1),
            self.front.0.hypot(self.front.1),
        )
    }

    /// Angle at the hinge line from the front pin of the closed leaf to the rear pin, between −180° and 180°.
    pub(super) fn included(&self) -> f64 {
        let (_, area) = self.length_and_area(0.0);
        let product = self.rear.0 * self.front.0 + self.rear.1 * self.front.1;
        area.atan2(product)
    }

    /// Angle of the leaf at which both pins and the hinge line come into one line, coming from the closed position.
    pub(super) fn dead_point(&self) -> f64 {
        let included = self.included();
        if included > 0.0 {
            included
        } else {
            included + PI
        }
    }
}

/// Angle of the leaf at which a drive between these pins stands in one line with the hinge line and can no longer turn
/// it, coming from the closed position.
pub fn dead_point(
    rear_behind: Length,
    rear_across: Length,
    front_along: Length,
    front_across: Length,
) -> Angle {
    let pins = Pins::new(rear_behind, rear_across, front_along, front_across);
    Angle::from_base(pins.dead_point())
}

/// Least and greatest distance between a drive's axis and its bracket on the leaf over a travel: what a folding arm has
/// to reach.
pub fn arm_reach(
    (rear_behind, rear_across): (Length, Length),
    (front_along, front_across): (Length, Length),
    travel: Angle,
) -> (Length, Length) {
    let pins = Pins::new(rear_behind, rear_across, front_along, front_across);
    let ends = [
        pins.length_and_area(0.0).0,
        pins.length_and_area(travel.base()).0,
    ];
    let (rear, front) = pins.radii();
    let included = pins.included();
    let passes = |place: f64| (0.0..=travel.base()).contains(&(included - place));
    let least = if passes(0.0) {
        (rear - front).abs()
    } else {
        ends[0].min(ends[1])
    };
    let most = if passes(-PI) {
        rear + front
    } else {
        ends[0].max(ends[1])
    };
    (Length::from_base(least), Length::from_base(most))
}

/// Pins nearer to the hinge line than this are on it, in meters.
const ON_THE_LINE: f64 = 1e-4;

/// Refuses pins on the hinge line, and an angle that is none of a swing leaf.
pub(super) fn check(pins: &Pins, input: &'static str, angle: Angle) -> Result<(), OutOfReach> {
    let (rear, front) = pins.radii();
    if rear < ON_THE_LINE || !rear.is_finite() {
        return Err(OutOfReach::new(
            "rear_across",
            "the rear pin stands away from the hinge line; give its distance behind and across",
        ));
    }
    if front < ON_THE_LINE || !front.is_finite() {
        return Err(OutOfReach::new(
            "front_along",
            "the front pin stands away from the hinge line; give its distance along the leaf",
        ));
    }
    if (0.0..=PI).contains(&angle.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "the angle lies between 0, closed, and 180°",
    ))
}
