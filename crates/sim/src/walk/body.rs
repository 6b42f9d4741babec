//! A person, or a person with what they ride, as upright cylinders.

use formula::OutOfReach;
use quantity::{Length, Quantity as _, Velocity};

/// The most cylinders of one body.
pub(super) const MOST_PARTS: usize = 12;

/// One upright cylinder of a body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cylinder {
    /// How far its axis is ahead of the middle of the body, in the direction in which the body goes.
    pub ahead: Length,
    /// How far its axis is to the right of the middle of the body.
    pub aside: Length,
    /// Radius.
    pub radius: Length,
    /// Height of its lower end above the ground.
    pub bottom: Length,
    /// Height of its upper end above the ground.
    pub top: Length,
}

/// Speeds at which a body goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Speeds {
    /// The slowest.
    pub from: Velocity,
    /// The fastest.
    pub to: Velocity,
}

/// A body.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    /// What it is, in words: `child of about 7`.
    pub name: String,
    /// Its cylinders.
    pub parts: Vec<Cylinder>,
    /// How many of them, the first ones, are an arm that it holds into the gap, while the rest stays beside the leaf's path;
    /// zero for one that does not lean in.
    pub arm: usize,
    /// Speeds at which it goes; none for one that lies or sits where it is.
    pub speeds: Option<Speeds>,
    /// Where the sizes were seen; `memory` where they were not.
    pub source: String,
}

impl Body {
    /// The cylinders that are between two heights, by their places in the list.
    pub(super) fn within(&self, bottom: Length, top: Length) -> Vec<usize> {
        let parts = self.parts.iter().enumerate();
        parts
            .filter(|(_, part)| part.top > bottom && part.bottom < top)
            .map(|(at, _)| at)
            .collect()
    }

    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        if self.parts.is_empty() || self.parts.len() > MOST_PARTS {
            return Err(OutOfReach::new("parts", "a body has 1 to 12 cylinders"));
        }
        if self.arm > 0 && (self.arm >= self.parts.len() || self.speeds.is_some()) {
            return Err(OutOfReach::new(
                "arm",
                "one who leans in stays where they are, and is more than an arm",
            ));
        }
        for part in &self.parts {
            let placed = part.ahead.base().is_finite() && part.aside.base().is_finite();
            let sized = part.radius.base() > 0.0 && part.radius.base() < 5.0;
            let tall = part.bottom.base() >= 0.0 && part.top > part.bottom;
            if !(placed && sized && tall && part.top.base().is_finite()) {
                return Err(OutOfReach::new(
                    "parts",
                    "a cylinder has a radius above zero and its top above its bottom",
                ));
            }
        }
        match self.speeds {
            Some(speeds)
                if !(speeds.from.base() >= 0.01
                    && speeds.to >= speeds.from
                    && speeds.to.base() <= 15.0) =>
            {
                Err(OutOfReach::new(
                    "speeds",
                    "a body goes at 0.01 m/s to 15 m/s, the slowest first",
                ))
            }
            _ => Ok(()),
        }
    }
}
