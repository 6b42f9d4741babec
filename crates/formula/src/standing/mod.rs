//! Posts, pads, anchors, bollards and lifting: what holds the gate to the ground, and who carries it there.

mod anchor_breakout_tension;
mod anchor_group_breakout_tension;
mod anchor_steel_tension;
mod bag_yield;
mod breakout;
mod concrete;
mod footing_bottom;
mod hole_concrete;
mod pad;
mod pad_bearing;
mod pad_overturning;
mod pad_sliding;
mod pad_smallest;
mod post_bending;
mod post_deflection;
mod post_embedment_free;
mod post_embedment_held;
mod post_embedment_trial;
mod post_ground;
mod presumptive_soil;
mod whole;

pub use anchor_breakout_tension::{AnchorBreakout, AnchorBreakoutTension};
pub use anchor_group_breakout_tension::{AnchorGroupBreakout, AnchorGroupBreakoutTension};
pub use anchor_steel_tension::{AnchorSteel, AnchorSteelTension};
pub use bag_yield::{Bag, BagYield, YieldOfBag};
pub use concrete::{AnchorKind, Cracking, breakout_coefficient, cracking_factor};
pub use footing_bottom::{FootingBottom, FootingDepth};
pub use hole_concrete::{ConcreteOrder, HoleConcrete};
pub use pad_bearing::{PadBearing, PadPressure};
pub use pad_overturning::{PadOverturning, PadTipping};
pub use pad_sliding::{PadSlide, PadSliding};
pub use pad_smallest::{PadSmallest, SmallestPad};
pub use post_bending::{PostBending, PostStresses};
pub use post_deflection::{PostDeflection, PostMovement};
pub use post_embedment_free::{FreeEmbedment, PostEmbedmentFree};
pub use post_embedment_held::{HeldEmbedment, PostEmbedmentHeld};
pub use post_embedment_trial::{PostEmbedmentTrial, TrialEmbedment};
pub use presumptive_soil::{PresumptiveSoil, Soil, SoilValues};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<AnchorBreakoutTension>(),
    Calculation::of::<AnchorGroupBreakoutTension>(),
    Calculation::of::<AnchorSteelTension>(),
    Calculation::of::<BagYield>(),
    Calculation::of::<FootingBottom>(),
    Calculation::of::<HoleConcrete>(),
    Calculation::of::<PadBearing>(),
    Calculation::of::<PadOverturning>(),
    Calculation::of::<PadSliding>(),
    Calculation::of::<PadSmallest>(),
    Calculation::of::<PostBending>(),
    Calculation::of::<PostDeflection>(),
    Calculation::of::<PostEmbedmentFree>(),
    Calculation::of::<PostEmbedmentHeld>(),
    Calculation::of::<PostEmbedmentTrial>(),
    Calculation::of::<PresumptiveSoil>(),
];

/// Name and text of the case file beside a calculation.
macro_rules! cases {
    ($($name:literal,)*) => {
        &[$((
            concat!("standing/", $name, ".cases.toml"),
            include_str!(concat!($name, ".cases.toml")),
        ),)*]
    };
}

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = cases![
    "anchor_breakout_tension",
    "anchor_group_breakout_tension",
    "anchor_steel_tension",
    "bag_yield",
    "footing_bottom",
    "hole_concrete",
    "pad_bearing",
    "pad_overturning",
    "pad_sliding",
    "pad_smallest",
    "post_bending",
    "post_deflection",
    "post_embedment_free",
    "post_embedment_held",
    "post_embedment_trial",
    "presumptive_soil",
];
