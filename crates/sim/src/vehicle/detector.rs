//! What sees a vehicle: beams, loops, fields; and the places at which each surely does.

use super::intervals::Intervals;
use super::outline::{Facing, Outline, Part};
use crate::plan::{above_zero, not_below_zero};
use crate::walk::{Direction, Spot};
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time};

/// Longest side of a loop that surely sees a motorcycle: 6 ft, by the instructions of several detectors.
const NARROW: f64 = 6.0 * 0.3048;

/// Where a detector looks.
#[derive(Debug, Clone, PartialEq)]
pub enum Field {
    /// A light beam from end to end.
    Beam {
        /// One end.
        from: Spot,
        /// The other end.
        to: Spot,
        /// Its height above the ground there.
        height: Length,
        /// What must cover it: the smallest object that it surely sees.
        width: Length,
    },
    /// A loop in the ground.
    Loop {
        /// The corner with the smaller x and y.
        near: Spot,
        /// The corner with the greater x and y.
        far: Spot,
        /// How high above the ground it sees metal.
        height: Length,
        /// Length of metal over it that it surely sees; a shorter loop must be covered wholly.
        least: Length,
    },
    /// A level field without dents.
    Area {
        /// Its corners, around it.
        corners: Vec<Spot>,
        /// Its height above the ground.
        height: Length,
        /// Smallest object that it surely sees.
        smallest: Length,
    },
}

/// What a detector does when it sees a vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Act {
    /// No leaf starts to close; one that is closing goes on.
    HoldsOpen,
    /// No leaf starts to close, and one that is closing stops.
    StopsClosing,
    /// No leaf starts to open, and one that is opening stops.
    StopsOpening,
}

/// What a detector does, and how fast.
#[derive(Debug, Clone, PartialEq)]
pub struct Detector {
    /// Where it looks.
    pub field: Field,
    /// What it does when it sees a vehicle.
    pub acts: Vec<Act>,
    /// From seeing to the change of its output.
    pub response: Time,
    /// How long its output stays on after the vehicle has left.
    pub drop_out: Time,
    /// Its output stays on as long as the vehicle stands there.
    pub stays_on: bool,
}

impl Detector {
    /// As long as it sees a vehicle no leaf starts that motion.
    pub(super) fn holds(&self, motion: Direction) -> bool {
        self.stops(motion)
            || (motion == Direction::Closing
                && self.stays_on
                && self.acts.contains(&Act::HoldsOpen))
    }

    /// A leaf on that motion stops when it sees a vehicle.
    pub(super) fn stops(&self, motion: Direction) -> bool {
        let act = match motion {
            Direction::Closing => Act::StopsClosing,
            Direction::Opening => Act::StopsOpening,
        };
        self.stays_on && self.acts.contains(&act)
    }

    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        not_below_zero("response", self.response)?;
        not_below_zero("drop_out", self.drop_out)?;
        self.field.check()
    }

    /// Places of the front at which it surely sees the vehicle, wherever its middle is between two places.
    pub(super) fn sees(&self, outline: &Outline, middles: (f64, f64), facing: Facing) -> Intervals {
        match &self.field {
            Field::Beam {
                from,
                to,
                height,
                width,
            } => {
                let half = width.base() / 2.0;
                let parts = at_height(outline, height.base() - half, height.base() + half);
                let at = |middle: f64| line_at(*from, *to, middle).map(|y| (y - half, y + half));
                let (Some(one), Some(other)) = (at(middles.0), at(middles.1)) else {
                    return Intervals::default();
                };
                sure(&parts, |part| {
                    [facing.covers(part, one), facing.covers(part, other)]
                })
            }
            Field::Loop {
                near,
                far,
                height,
                least,
            } => {
                let low = |part: &Part| part.metal && part.bottom <= *height;
                let sides = [(far.x - near.x).base(), (far.y - near.y).base()];
                if outline.narrow && sides.iter().any(|side| *side > NARROW + 1e-9) {
                    return Intervals::default();
                }
                let over = |part: &Part| {
                    let overlap = |middle: f64| {
                        let (left, right) = part.across(middle);
                        right.min(far.x.base()) - left.max(near.x.base())
                    };
                    let wanted = part.width.base().min(sides[0]) / 2.0;
                    overlap(middles.0) >= wanted && overlap(middles.1) >= wanted
                };
                let parts = outline.stretches(|part| low(part) && over(part));
                let least = least.base().min(sides[1]);
                covered(&parts, (near.y.base(), far.y.base()), least, facing)
            }
            Field::Area {
                corners,
                height,
                smallest,
            } => {
                let least = smallest.base();
                let parts = at_height(
                    outline,
                    height.base() - least / 2.0,
                    height.base() + least / 2.0,
                );
                let half = outline
                    .parts
                    .iter()
                    .map(|part| part.width.base() / 2.0)
                    .fold(f64::INFINITY, f64::min);
                let at = |middle: f64| depth_over(corners, middle - half, middle + half);
                let (Some(one), Some(other)) = (at(middles.0), at(middles.1)) else {
                    return Intervals::default();
                };
                let reached = |part, band| {
                    let (from, to) = facing.meets(part, band);
                    (from + least, to - least)
                };
                let parts = Intervals::of(parts.iter().filter(|(from, to)| to - from >= least));
                sure(&parts, |part| [reached(part, one), reached(part, other)])
            }
        }
    }
}

impl Field {
    fn check(&self) -> Result<(), OutOfReach> {
        match self {
            Self::Beam {
                from,
                to,
                height,
                width,
            } => {
                not_below_zero("height", *height)?;
                not_below_zero("width", *width)?;
                if from.is_finite() && to.is_finite() && from.x != to.x {
                    Ok(())
                } else {
                    Err(OutOfReach::new(
                        "to",
                        "a beam for vehicles goes across the lane",
                    ))
                }
            }
            Self::Loop {
                near,
                far,
                height,
                least,
            } => {
                not_below_zero("height", *height)?;
                not_below_zero("least", *least)?;
                above_zero("length of the loop", far.x - near.x)?;
                above_zero("width of the loop", far.y - near.y)
            }
            Self::Area {
                corners,
                height,
                smallest,
            } => {
                not_below_zero("height", *height)?;
                not_below_zero("smallest", *smallest)?;
                if corners.len() >= 3
                    && corners.iter().all(|corner| corner.is_finite())
                    && is_convex(corners)
                {
                    Ok(())
                } else {
                    Err(OutOfReach::new(
                        "corners",
                        "a field has 3 corners or more and no dent; one with dents is several fields",
                    ))
                }
            }
        }
    }
}

/// The stretches of a vehicle that fill a band of heights.
fn at_height(outline: &Outline, low: f64, high: f64) -> Intervals {
    outline.stretches(|part| part.bottom.base() <= low && part.top.base() >= high)
}

/// For each stretch the places in both of its two intervals, made one set.
fn sure(parts: &Intervals, of: impl Fn((f64, f64)) -> [(f64, f64); 2]) -> Intervals {
    Intervals::of(parts.iter().map(|part| {
        let [one, other] = of(part);
        (one.0.max(other.0), one.1.min(other.1))
    }))
}

/// Where a line from end to end crosses a place along the gate.
fn line_at(from: Spot, to: Spot, x: f64) -> Option<f64> {
    let share = (x - from.x.base()) / (to.x - from.x).base();
    (0.0..=1.0)
        .contains(&share)
        .then(|| from.y.base() + share * (to.y - from.y).base())
}

/// Least and greatest y of a field without dents over a stretch along the gate.
fn depth_over(corners: &[Spot], left: f64, right: f64) -> Option<(f64, f64)> {
    let mut depth: Option<(f64, f64)> = None;
    let mut take = |y: f64| {
        let (low, high) = depth.unwrap_or((y, y));
        depth = Some((low.min(y), high.max(y)));
    };
    for (at, from) in corners.iter().enumerate() {
        let to = corners[(at + 1) % corners.len()];
        if (left..=right).contains(&from.x.base()) {
            take(from.y.base());
        }
        for side in [left, right] {
            line_at(*from, to, side).into_iter().for_each(&mut take);
        }
    }
    depth
}

fn is_convex(corners: &[Spot]) -> bool {
    let at = |i: usize| corners[i % corners.len()];
    let turns = (0..corners.len()).map(|i| {
        let (a, b, c) = (at(i), at(i + 1), at(i + 2));
        (b.x - a.x).base() * (c.y - b.y).base() - (b.y - a.y).base() * (c.x - b.x).base()
    });
    let (left, right) = turns.fold((false, false), |(left, right), turn| {
        (left || turn > 0.0, right || turn < 0.0)
    });
    left != right
}

/// Places of the front at which the stretches lie over so much of a band.
///
/// What lies over it is linear between the places at which an end of a stretch passes an end of the band.
fn covered(parts: &Intervals, band: (f64, f64), least: f64, facing: Facing) -> Intervals {
    let over = |place: f64| -> f64 {
        let each = parts.iter().map(|part| {
            let (low, high) = facing.lies(part, place);
            (high.min(band.1) - low.max(band.0)).max(0.0)
        });
        each.sum()
    };
    let mut turns: Vec<f64> = Vec::with_capacity(parts.iter().count() * 4);
    for part in parts.iter() {
        let (meets, covers) = (facing.meets(part, band), facing.covers(part, band));
        turns.extend([meets.0, meets.1, covers.0, covers.1]);
    }
    turns.sort_by(f64::total_cmp);
    let needed = least - 1e-9;
    let seen = turns.windows(2).filter_map(|pair| {
        let (from, to) = (pair[0], pair[1]);
        let (first, last) = (over(from), over(to));
        let crossing = || from + (to - from) * (needed - first) / (last - first);
        match (first >= needed, last >= needed) {
            (true, true) => Some((from, to)),
            (true, false) => Some((from, crossing())),
            (false, true) => Some((crossing(), to)),
            (false, false) => None,
        }
    });
    Intervals::of(seen)
}
