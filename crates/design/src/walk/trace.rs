//! One walk as a row of pictures: where the leaf's edge and the body are, each hundredth of a second.

use super::GateWalk;
use super::told::{Event, Told};
use quantity::{Quantity as _, Time};
use serde::Serialize;
use sim::walk::{Direction, Frame, Way};

/// One walk for drawing. Lengths are in meters, times in seconds since the leaf started; x runs along the closed leaf from
/// its latching side, y into the property, z up.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trace {
    /// The number of the walk.
    pub seed: u64,
    /// The gate.
    pub gate: String,
    /// Which way the leaf moves: closing, opening.
    pub leaf_moves: String,
    /// Half the thickness of the leaf, which lies about y = 0.
    pub leaf_half_thickness: f64,
    /// Heights of the leaf's underside and top.
    pub leaf_heights: [f64; 2],
    /// The body.
    pub body: String,
    /// Its upright cylinders: ahead of its middle, to its right, radius, bottom, top.
    pub cylinders: Vec<[f64; 5]>,
    /// The direction in which it faces, as x and y of length one.
    pub faces: [f64; 2],
    /// The walk in words.
    pub told: Told,
    /// What happens when.
    pub events: Vec<Event>,
    /// The pictures, one each 0.01 s.
    pub frames: Vec<TraceFrame>,
}

/// One picture.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct TraceFrame {
    /// Time.
    pub time: f64,
    /// x of the leaf's edge that goes ahead.
    pub edge: f64,
    /// x and y of the body's middle.
    pub body: [f64; 2],
}

impl GateWalk<'_> {
    /// One walk by its number, for drawing; nothing where it cannot be worked, nor for a leaf that
    /// does not slide.
    pub fn trace(&self, seed: u64) -> Option<Trace> {
        let scenario = self.walk.scenario(seed);
        let (world, walk) = self.sliding()?;
        let body = world.bodies.get(scenario.body)?;
        let account = walk.account(&scenario, Time::from_base(0.01)).ok()?;
        let told = self.told(seed);
        let leaf_moves = match world.passes.get(scenario.pass)?.direction {
            Direction::Closing => "closing",
            Direction::Opening => "opening",
        };
        let slant = scenario.slant.base();
        let length = (1.0 + slant * slant).sqrt();
        let way = if scenario.way == Way::In { 1.0 } else { -1.0 };
        Some(Trace {
            seed,
            gate: self.name().to_owned(),
            leaf_moves: leaf_moves.to_owned(),
            leaf_half_thickness: 0.5 * world.leaf.thickness.base(),
            leaf_heights: [world.leaf.bottom.base(), world.leaf.top.base()],
            body: body.name.clone(),
            cylinders: body
                .parts
                .iter()
                .map(|part| {
                    let sizes = [part.ahead, part.aside, part.radius, part.bottom, part.top];
                    sizes.map(quantity::Quantity::base)
                })
                .collect(),
            faces: [slant / length, way / length],
            events: told.events.clone(),
            told,
            frames: account.frames.iter().map(frame).collect(),
        })
    }
}

fn frame(frame: &Frame) -> TraceFrame {
    TraceFrame {
        time: frame.time.base(),
        edge: frame.edge.base(),
        body: [frame.body.x.base(), frame.body.y.base()],
    }
}
