//! Where a leaf comes, and how far it has gone when it meets a box that stands in its way.

use super::arc::Arc;
use super::outline::{Facing, Outline, Part, PartName};
use crate::plan::{above_zero, not_below_zero};
use crate::walk::Direction;
use formula::OutOfReach;
use quantity::{Angle, Length, Quantity as _};

/// To which side something lies or turns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Toward {
    /// Toward greater values.
    Greater,
    /// Toward smaller values.
    Smaller,
}

/// How the leaf closes.
#[derive(Debug, Clone, PartialEq)]
pub enum Leaf {
    /// It slides along the gate line.
    Slide {
        /// Where its leading end stands when the gate is open.
        open: Length,
        /// Where its leading end stands when the gate is closed.
        closed: Length,
        /// Its underside.
        bottom: Length,
        /// Its top.
        top: Length,
        /// Its thickness, half to each side of the gate line.
        thickness: Length,
    },
    /// It comes straight down over the opening.
    Lift {
        /// Its underside when the gate is open.
        open: Length,
        /// Its underside when the gate is closed.
        closed: Length,
        /// Its thickness.
        thickness: Length,
    },
    /// It comes down about a level pivot at one end: an arm, or a leaf.
    Arm {
        /// Where the pivot is along the gate line.
        pivot: Length,
        /// To which side of its pivot it lies when closed.
        toward: Toward,
        /// From the pivot to its free end.
        length: Length,
        /// Its underside when closed.
        bottom: Length,
        /// How far it is turned up when open.
        open: Angle,
        /// Its thickness.
        thickness: Length,
    },
    /// It turns about an upright line, or two such leaves do.
    Swing {
        /// The leaves.
        leaves: Vec<Hinged>,
        /// To which side they open: greater is into the property.
        side: Toward,
        /// Their underside.
        bottom: Length,
        /// Their top.
        top: Length,
        /// Their thickness.
        thickness: Length,
    },
}

/// One leaf that turns about an upright line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hinged {
    /// Where the line is along the gate line.
    pub pivot: Length,
    /// To which side of it the leaf lies when closed.
    pub toward: Toward,
    /// From the line to the free end.
    pub length: Length,
    /// How far it is turned when open.
    pub open: Angle,
}

impl Leaf {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        let thick = |thickness: Length| above_zero("thickness", thickness);
        match self {
            Self::Slide {
                open,
                closed,
                bottom,
                top,
                thickness,
            } => {
                thick(*thickness)?;
                not_below_zero("bottom", *bottom)?;
                above_zero("travel", *open - *closed)?;
                above_zero("height", *top - *bottom)
            }
            Self::Lift {
                open,
                closed,
                thickness,
            } => {
                thick(*thickness)?;
                not_below_zero("closed", *closed)?;
                above_zero("travel", *open - *closed)
            }
            Self::Arm {
                pivot,
                length,
                bottom,
                open,
                thickness,
                ..
            } => {
                thick(*thickness)?;
                not_below_zero("bottom", *bottom)?;
                turning(*pivot, *length, *open)
            }
            Self::Swing {
                leaves,
                bottom,
                top,
                thickness,
                ..
            } => {
                thick(*thickness)?;
                not_below_zero("bottom", *bottom)?;
                above_zero("height", *top - *bottom)?;
                let mut each = leaves.iter();
                each.try_for_each(|leaf| turning(leaf.pivot, leaf.length, leaf.open))
            }
        }
    }

    /// The motions in which it can meet a vehicle that stands.
    pub(super) fn motions(&self) -> &'static [Direction] {
        match self {
            Self::Swing { .. } => &[Direction::Closing, Direction::Opening],
            _ => &[Direction::Closing],
        }
    }

    /// The band of y in which it meets a part whose middle is anywhere between two places; none where it never does.
    pub(super) fn band(&self, part: &Part, (from, to): (f64, f64)) -> Option<(f64, f64)> {
        let across = (part.across(from).0, part.across(to).1);
        let (low, high) = (part.bottom.base(), part.top.base());
        let line = |thickness: &Length| (-thickness.base() / 2.0, thickness.base() / 2.0);
        match self {
            Self::Slide {
                open,
                closed,
                bottom,
                top,
                thickness,
            } => {
                let met = high > bottom.base() && low < top.base();
                let met = met && across.1 > closed.base() && across.0 < open.base();
                met.then(|| line(thickness))
            }
            Self::Lift {
                closed, thickness, ..
            } => (high > closed.base()).then(|| line(thickness)),
            Self::Arm {
                pivot,
                toward,
                length,
                bottom,
                thickness,
                ..
            } => {
                let (near, far) = seen_from(*pivot, *toward, across);
                let met = high > bottom.base() && far > 0.0 && near < length.base();
                met.then(|| line(thickness))
            }
            Self::Swing {
                leaves,
                side,
                bottom,
                top,
                thickness,
            } => {
                if high <= bottom.base() || low >= top.base() {
                    return None;
                }
                let half = thickness.base() / 2.0;
                let reach = leaves.iter().filter_map(|leaf| {
                    leaf.arc(half)
                        .reach(seen_from(leaf.pivot, leaf.toward, across))
                });
                let reach = reach.fold(f64::NEG_INFINITY, f64::max) + half;
                let band = match side {
                    Toward::Greater => (-half, reach),
                    Toward::Smaller => (-reach, half),
                };
                reach.is_finite().then_some(band)
            }
        }
    }

    /// Way of the leaf, at its leading or free end, until it meets a part that stands in its way.
    pub(super) fn way(&self, part: &Part, middle: f64, lies: (f64, f64), motion: Direction) -> f64 {
        let across = part.across(middle);
        match self {
            Self::Slide { open, .. } => (open.base() - across.1).max(0.0),
            Self::Lift { open, .. } => (open.base() - part.top.base()).max(0.0),
            Self::Arm {
                pivot,
                toward,
                length,
                bottom,
                open,
                ..
            } => {
                let arc = Arc {
                    length: length.base(),
                    open: open.base(),
                };
                arc.closing_way(
                    seen_from(*pivot, *toward, across),
                    (part.top - *bottom).base(),
                )
            }
            Self::Swing {
                leaves,
                side,
                thickness,
                ..
            } => {
                let (near, far) = if *side == Toward::Greater {
                    lies
                } else {
                    (-lies.1, -lies.0)
                };
                let ways = leaves.iter().filter_map(|leaf| {
                    let arc = leaf.arc(thickness.base() / 2.0);
                    let seen = seen_from(leaf.pivot, leaf.toward, across);
                    arc.reach(seen).filter(|reach| *reach >= near)?;
                    Some(match motion {
                        Direction::Closing => arc.closing_way(seen, far),
                        Direction::Opening => arc.opening_way(seen, near),
                    })
                });
                ways.fold(f64::INFINITY, f64::min)
            }
        }
    }

    /// Places of the front at which it meets the vehicle, whose middle is anywhere between two places: from the first part
    /// that it meets to the last, for what comes down between two parts has the vehicle across it.
    pub(super) fn in_the_way(
        &self,
        outline: &Outline,
        middles: (f64, f64),
        facing: Facing,
    ) -> Vec<(f64, f64)> {
        let met: Vec<_> = outline
            .parts
            .iter()
            .filter_map(|part| Some((part, self.band(part, middles)?)))
            .collect();
        let ends = met
            .iter()
            .fold((f64::INFINITY, 0.0_f64), |ends, (part, _)| {
                let (from, to) = part.stretch();
                (ends.0.min(from), ends.1.max(to))
            });
        let mut places: Vec<_> = met
            .iter()
            .map(|(part, band)| facing.meets(part.stretch(), *band))
            .collect();
        if !matches!(self, Self::Swing { .. }) {
            places.extend(met.first().map(|(_, band)| facing.meets(ends, *band)));
        }
        places
    }

    /// Places of the front at which a vehicle stands wholly on the side to which the closed leaves will open.
    pub(super) fn beside_closed(&self, outline: &Outline, facing: Facing) -> (f64, f64) {
        let half = self.thickness().base() / 2.0;
        let inside = !matches!(
            self,
            Self::Swing {
                side: Toward::Smaller,
                ..
            }
        );
        let behind = outline.length().base();
        match (inside, facing) {
            (true, Facing::In) => (half + behind, f64::INFINITY),
            (true, Facing::Out) => (half, f64::INFINITY),
            (false, Facing::In) => (f64::NEG_INFINITY, -half),
            (false, Facing::Out) => (f64::NEG_INFINITY, -half - behind),
        }
    }

    fn thickness(&self) -> Length {
        match self {
            Self::Slide { thickness, .. }
            | Self::Lift { thickness, .. }
            | Self::Arm { thickness, .. }
            | Self::Swing { thickness, .. } => *thickness,
        }
    }
}

impl Hinged {
    /// The leaf with what its thickness adds to its reach.
    fn arc(&self, half: f64) -> Arc {
        let length = self.length.base();
        Arc {
            length: length.hypot(half),
            open: self.open.base(),
        }
    }
}

impl PartName {
    /// What a person calls it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Body => "body",
            Self::Drawbar => "drawbar",
            Self::Trailer => "trailer",
            Self::Tail => "overhanging tail",
        }
    }
}

/// A stretch along the gate line as it lies from a pivot.
fn seen_from(pivot: Length, toward: Toward, (low, high): (f64, f64)) -> (f64, f64) {
    match toward {
        Toward::Greater => (low - pivot.base(), high - pivot.base()),
        Toward::Smaller => (pivot.base() - high, pivot.base() - low),
    }
}

fn turning(pivot: Length, length: Length, open: Angle) -> Result<(), OutOfReach> {
    above_zero("length", length)?;
    above_zero("open", open)?;
    if pivot.base().is_finite() && open.base() <= std::f64::consts::PI {
        Ok(())
    } else {
        Err(OutOfReach::new(
            "open",
            "a leaf turns by half a turn at most, about a pivot at a place",
        ))
    }
}
