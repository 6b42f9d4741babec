//! Wind on the leaf: velocity pressure by place and height, and what a wall, a see-through frame or a leaf takes of it.

mod asce7_16_velocity_pressure;
mod asce7_22_velocity_pressure;
mod asce7_open_sign_force;
mod asce7_wall_case_c;
mod asce7_wall_force;
mod en1991_free_standing_wall;
mod en1991_peak_velocity_pressure;
mod exposure;
mod wall;

pub use asce7_16_velocity_pressure::{Asce716Pressure, Asce716VelocityPressure};
pub use asce7_22_velocity_pressure::{Asce722Pressure, Asce722VelocityPressure};
pub use asce7_open_sign_force::{Asce7OpenSign, Asce7OpenSignForce, MemberShape};
pub use asce7_wall_case_c::{Asce7WallCaseC, Asce7WallObliqueForce};
pub use asce7_wall_force::{Asce7Wall, Asce7WallForce};
pub use en1991_free_standing_wall::{En1991FreeStandingWall, En1991WallPressure};
pub use en1991_peak_velocity_pressure::{En1991PeakPressure, En1991PeakVelocityPressure, Terrain};
pub use exposure::Exposure;

use crate::Calculation;

/// One pound-force on each square foot, in pascals.
const POUND_PER_SQUARE_FOOT: f64 = 47.880_258_980_335_84;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<Asce716VelocityPressure>(),
    Calculation::of::<Asce722VelocityPressure>(),
    Calculation::of::<Asce7WallForce>(),
    Calculation::of::<Asce7WallCaseC>(),
    Calculation::of::<Asce7OpenSignForce>(),
    Calculation::of::<En1991PeakVelocityPressure>(),
    Calculation::of::<En1991FreeStandingWall>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "wind/asce7_16_velocity_pressure.cases.toml",
        include_str!("asce7_16_velocity_pressure.cases.toml"),
    ),
    (
        "wind/asce7_22_velocity_pressure.cases.toml",
        include_str!("asce7_22_velocity_pressure.cases.toml"),
    ),
    (
        "wind/asce7_open_sign_force.cases.toml",
        include_str!("asce7_open_sign_force.cases.toml"),
    ),
    (
        "wind/asce7_wall_case_c.cases.toml",
        include_str!("asce7_wall_case_c.cases.toml"),
    ),
    (
        "wind/asce7_wall_force.cases.toml",
        include_str!("asce7_wall_force.cases.toml"),
    ),
    (
        "wind/en1991_free_standing_wall.cases.toml",
        include_str!("en1991_free_standing_wall.cases.toml"),
    ),
    (
        "wind/en1991_peak_velocity_pressure.cases.toml",
        include_str!("en1991_peak_velocity_pressure.cases.toml"),
    ),
];
