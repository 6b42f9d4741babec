//! A folding arm of two bars between a drive and a swing leaf.

use super::pins::Pins;
use quantity::{Length, Quantity as _, words};

words! {
    /// To which side of the line from drive to leaf bracket the elbow stands, leaf closed.
    pub enum ElbowSide {
        /// Away from the hinge line, as folding arms usually are.
        AwayFromHinge = "away from the hinge",
        /// Toward the hinge line.
        TowardHinge = "toward the hinge",
    }
}

/// The two bars with the pins at their ends.
#[derive(Debug, Clone, Copy)]
pub(super) struct FoldingArm {
    pub(super) pins: Pins,
    /// From the drive's axis to the elbow.
    pub(super) crank: f64,
    /// From the elbow to the leaf.
    pub(super) link: f64,
    /// One where the elbow stands to the left of the line from the drive to the leaf bracket.
    side: f64,
}

/// The arm at one angle of the leaf.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fold {
    pub(super) elbow: (f64, f64),
    /// Cosine of the angle between the bars at the elbow.
    pub(super) cosine: f64,
    /// Distance of the link's line from the hinge line, with its sign.
    pub(super) leaf_arm: f64,
    /// Distance of the link's line from the drive's axis, with its sign.
    pub(super) drive_arm: f64,
}

impl FoldingArm {
    pub(super) fn new(pins: Pins, crank: Length, link: Length, elbow: ElbowSide) -> Self {
        // The area is above zero where the hinge line lies to the right of the line from rear to front pin.
        let (_, area) = pins.length_and_area(0.0);
        let away = if area > 0.0 { 1.0 } else { -1.0 };
        let side = match elbow {
            ElbowSide::AwayFromHinge => away,
            ElbowSide::TowardHinge => -away,
        };
        Self {
            pins,
            crank: crank.base(),
            link: link.base(),
            side,
        }
    }

    /// The arm at an angle of the leaf; nothing where the bars do not reach or cannot fold that far.
    pub(super) fn at(&self, angle: f64) -> Option<Fold> {
        let axis = self.pins.rear;
        let bracket = self.pins.front_at(angle);
        let across = (bracket.0 - axis.0, bracket.1 - axis.1);
        let square = across.0 * across.0 + across.1 * across.1;
        let (crank, link) = (self.crank, self.link);
        let forward = (square + crank * crank - link * link) / (2.0 * square);
        let height = crank * crank / square - forward * forward;
        if height.is_nan() || height <= 0.0 {
            return None;
        }
        let aside = self.side * height.sqrt();
        let elbow = (
            axis.0 + forward * across.0 - aside * across.1,
            axis.1 + forward * across.1 + aside * across.0,
        );
        let along = ((bracket.0 - elbow.0) / link, (bracket.1 - elbow.1) / link);
        let arm = |about: (f64, f64)| (elbow.0 - about.0) * along.1 - (elbow.1 - about.1) * along.0;
        Some(Fold {
            elbow,
            cosine: (crank * crank + link * link - square) / (2.0 * crank * link),
            leaf_arm: arm((0.0, 0.0)),
            drive_arm: arm(axis),
        })
    }

    /// Direction of the crank, from the line of the closed leaf.
    pub(super) fn crank_angle(&self, fold: &Fold) -> f64 {
        (fold.elbow.1 - self.pins.rear.1).atan2(fold.elbow.0 - self.pins.rear.0)
    }
}

impl Fold {
    /// Turning of the crank for each turning of the leaf: the leaf's torque over the drive's.
    pub(super) fn ratio(&self) -> f64 {
        self.leaf_arm / self.drive_arm
    }
}
