//! Posts, pads and anchors: what holds the gate to the ground.

mod anchor_breakout_tension;
mod anchor_group_breakout_tension;
mod anchor_steel_tension;
mod breakout;
mod concrete;

pub use anchor_breakout_tension::{AnchorBreakout, AnchorBreakoutTension};
pub use anchor_group_breakout_tension::{AnchorGroupBreakout, AnchorGroupBreakoutTension};
pub use anchor_steel_tension::{AnchorSteel, AnchorSteelTension};
pub use concrete::{AnchorKind, Cracking, breakout_coefficient, cracking_factor};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<AnchorBreakoutTension>(),
    Calculation::of::<AnchorGroupBreakoutTension>(),
    Calculation::of::<AnchorSteelTension>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "standing/anchor_breakout_tension.cases.toml",
        include_str!("anchor_breakout_tension.cases.toml"),
    ),
    (
        "standing/anchor_group_breakout_tension.cases.toml",
        include_str!("anchor_group_breakout_tension.cases.toml"),
    ),
    (
        "standing/anchor_steel_tension.cases.toml",
        include_str!("anchor_steel_tension.cases.toml"),
    ),
];
