//! A vehicle as a row of boxes.

use super::intervals::Intervals;
use crate::plan::{above_zero, not_below_zero};
use formula::OutOfReach;
use quantity::{Length, Quantity as _};

/// What a box of a vehicle is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PartName {
    /// The vehicle itself, or the one that tows.
    Body,
    /// The drawbar, with the open space above it.
    Drawbar,
    /// The trailer.
    Trailer,
    /// What hangs out behind.
    Tail,
}

/// One box of a vehicle; places are behind its front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// What it is.
    pub name: PartName,
    /// Where it begins, behind the front.
    pub from: Length,
    /// Where it ends, behind the front.
    pub to: Length,
    /// Its width, half to each side of the vehicle's middle.
    pub width: Length,
    /// Its underside above the ground.
    pub bottom: Length,
    /// Its top above the ground.
    pub top: Length,
    /// A loop can see it: broad metal.
    pub metal: bool,
}

/// A vehicle: boxes from its front to its rear.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// The boxes, in any order.
    pub parts: Vec<Part>,
    /// A motorcycle or bicycle, that a wide loop misses.
    pub narrow: bool,
}

/// Which way the front of a vehicle looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Facing {
    /// Into the property.
    In,
    /// Toward the road.
    Out,
}

impl Facing {
    /// Both.
    pub const BOTH: [Self; 2] = [Self::In, Self::Out];

    /// Places of the front at which a stretch of the vehicle, from and to behind its front, reaches into a band of y.
    pub(super) fn meets(self, (from, to): (f64, f64), (low, high): (f64, f64)) -> (f64, f64) {
        match self {
            Self::In => (low + from, high + to),
            Self::Out => (low - to, high - from),
        }
    }

    /// Places of the front at which a stretch of the vehicle covers a whole band of y; the wrong way round where none does.
    pub(super) fn covers(self, (from, to): (f64, f64), (low, high): (f64, f64)) -> (f64, f64) {
        match self {
            Self::In => (high + from, low + to),
            Self::Out => (high - to, low - from),
        }
    }

    /// Where a stretch of the vehicle lies in y, the front being at a place.
    pub(super) fn lies(self, (from, to): (f64, f64), place: f64) -> (f64, f64) {
        match self {
            Self::In => (place - to, place - from),
            Self::Out => (place + from, place + to),
        }
    }
}

impl Part {
    pub(super) fn stretch(&self) -> (f64, f64) {
        (self.from.base(), self.to.base())
    }

    /// Where it lies across the lane, the vehicle's middle being at a place.
    pub(super) fn across(&self, middle: f64) -> (f64, f64) {
        let half = self.width.base() / 2.0;
        (middle - half, middle + half)
    }
}

impl Outline {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        if self.parts.is_empty() || self.parts.len() > 16 {
            return Err(OutOfReach::new("parts", "a vehicle is 1 to 16 boxes"));
        }
        for part in &self.parts {
            not_below_zero("from", part.from)?;
            not_below_zero("bottom", part.bottom)?;
            above_zero("width", part.width)?;
            above_zero("to", part.to)?;
            above_zero("top", part.top)?;
            if part.to <= part.from || part.top <= part.bottom {
                return Err(OutOfReach::new(
                    "to",
                    "a box ends behind where it begins, and its top is above its underside",
                ));
            }
        }
        Ok(())
    }

    /// The stretches of the parts that are wanted, where they touch made one.
    pub(super) fn stretches(&self, wanted: impl Fn(&Part) -> bool) -> Intervals {
        let parts = self.parts.iter().filter(|part| wanted(part));
        Intervals::of(parts.map(Part::stretch))
    }

    /// Length from the front to the rear.
    pub fn length(&self) -> Length {
        let ends = self.parts.iter().map(|part| part.to.base());
        Length::from_base(ends.fold(0.0, f64::max))
    }
}
