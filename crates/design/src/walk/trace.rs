//! One walk as a row of pictures: where the leaf's edge and the body are, each hundredth of a second.

use super::GateWalk;
use super::told::{Event, Told};
use quantity::{Quantity as _, Time};
use serde::Serialize;
use sim::walk::{AnyWorld, Frame, Pose, RisingLeaf, Spot, Way};

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
    /// Half the thickness of the leaf.
    pub leaf_half_thickness: f64,
    /// Heights of its underside and top when it is closed.
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
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TraceFrame {
    /// Time.
    pub time: f64,
    /// x of the edge of a leaf that slides that goes ahead; its middle is at y = 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge: Option<f64>,
    /// The corners of each leaf that swings, as x and y.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub from_above: Vec<[[f64; 2]; 4]>,
    /// The corners of a leaf that rises, as x and z; its middle is at y = 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_the_road: Option<[[f64; 2]; 4]>,
    /// x and y of the body's middle.
    pub body: [f64; 2],
}

impl GateWalk<'_> {
    /// One walk by its number, for drawing; nothing where it cannot be worked.
    pub fn trace(&self, seed: u64) -> Option<Trace> {
        let scenario = self.walk.scenario(seed);
        let body = self.lowered.world.bodies().get(scenario.body)?;
        let step = Time::from_base(0.01);
        let account = self.walk.account(&scenario, step).ok()?;
        let told = self.told(seed);
        let (half, heights) = section(&self.lowered.world)?;
        let slant = scenario.slant.base();
        let length = (1.0 + slant * slant).sqrt();
        let way = if scenario.way == Way::In { 1.0 } else { -1.0 };
        Some(Trace {
            seed,
            gate: self.name().to_owned(),
            leaf_moves: self.moving(&scenario).to_owned(),
            leaf_half_thickness: half,
            leaf_heights: heights,
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

/// Half the thickness of a leaf, and the heights of its underside and top when it is closed.
fn section(world: &AnyWorld) -> Option<(f64, [f64; 2])> {
    let (thickness, low, high) = match world {
        AnyWorld::Sliding(world) => (world.leaf.thickness, world.leaf.bottom, world.leaf.top),
        AnyWorld::Swinging(world) => {
            let leaf = world.leaves.first()?;
            (leaf.thickness, leaf.bottom, leaf.top)
        }
        AnyWorld::Rising(world) => match world.leaf {
            RisingLeaf::Turning(leaf) => (
                leaf.thickness,
                leaf.height - leaf.below,
                leaf.height + leaf.above,
            ),
            RisingLeaf::Lifting(leaf) => (leaf.thickness, leaf.closed, leaf.closed + leaf.tall),
        },
    };
    Some((0.5 * thickness.base(), [low.base(), high.base()]))
}

fn frame(frame: &Frame) -> TraceFrame {
    let corners = |leaf: &[Spot; 4]| leaf.map(|spot| [spot.x.base(), spot.y.base()]);
    let (edge, from_above, from_the_road) = match &frame.leaf {
        Pose::Edge(edge) => (Some(edge.base()), Vec::new(), None),
        Pose::Above(leaves) => (None, leaves.iter().map(corners).collect(), None),
        Pose::Front(leaf) => (None, Vec::new(), Some(corners(leaf))),
    };
    TraceFrame {
        time: frame.time.base(),
        edge,
        from_above,
        from_the_road,
        body: [frame.body.x.base(), frame.body.y.base()],
    }
}
