//! What vehicles sweep in a turn: one unit, a trailer on a fifth wheel or a drawbar, steered forward along a line.
//!
//! The middle of the front axle follows straights and arcs. Each axle behind it rolls without slipping toward what pulls
//! it, so that it cuts the corner (a tractrix). The headings are integrated in steps of a centimeter by a method of the
//! fourth order; where there is a closed form, it is met to better than a micrometer.
//!
//! [`Rig::sweep`] gives the room that is left beside each thing that stands there and inside the lane's edges;
//! [`Rig::best`] looks for the line that leaves the most, wide turns included, so that "cannot be taken" is honest;
//! [`Rig::outline`] draws what is swept; [`Rig::over`] holds undersides and roof against the ground's rise and fall.

mod again;
mod best;
mod body;
mod grade;
mod outline;
mod path;
mod rig;
mod roll;
mod room;
mod shape;
mod track;
mod trial;

#[cfg(test)]
mod tests;

pub use again::Searched;
pub use best::{Course, Found};
pub use grade::{Ground, Lowest, OverGround, Under};
pub use outline::{Envelope, Standing};
pub use path::Path;
pub use rig::{Body, Rig, Unit};
pub use room::{Edge, Nearest, Obstacle, Place, Room, Target};

/// A point or a direction in plan.
type Flat = (f64, f64);

/// Most units of a rig: a truck, a turntable and two trailers.
const MOST: usize = 4;

fn dot(one: Flat, other: Flat) -> f64 {
    one.0 * other.0 + one.1 * other.1
}

fn cross(one: Flat, other: Flat) -> f64 {
    one.0 * other.1 - one.1 * other.0
}

/// A point moved by so much in a direction.
fn along(from: Flat, direction: Flat, by: f64) -> Flat {
    (from.0 + direction.0 * by, from.1 + direction.1 * by)
}

/// A quarter turn to the left.
fn left(direction: Flat) -> Flat {
    (-direction.1, direction.0)
}

fn apart(one: Flat, other: Flat) -> f64 {
    let off = (one.0 - other.0, one.1 - other.1);
    dot(off, off).sqrt()
}
