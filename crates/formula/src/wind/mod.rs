//! Wind on the leaf: velocity pressure by place and height, and what a wall, a see-through frame or a leaf takes of it.

mod asce7_16_velocity_pressure;
mod asce7_22_velocity_pressure;
mod asce7_open_sign_force;
mod asce7_topographic_factor;
mod asce7_wall_case_c;
mod asce7_wall_force;
mod beaufort_force;
mod en1991_free_standing_wall;
mod en1991_lattice_force;
mod en1991_orography_factor;
mod en1991_peak_velocity_pressure;
mod en1991_rectangular_member;
mod en1991_round_member;
mod exposure;
mod ice_on_members;
mod iced_solidity;
mod wall;
mod wind_on_turning_leaf;
mod wind_pressure_of_speed;

pub use asce7_16_velocity_pressure::{Asce716Pressure, Asce716VelocityPressure};
pub use asce7_22_velocity_pressure::{Asce722Pressure, Asce722VelocityPressure};
pub use asce7_open_sign_force::{Asce7OpenSign, Asce7OpenSignForce, MemberShape};
pub use asce7_topographic_factor::{
    Asce7TopographicFactor, Asce7Topography, CrestSide, TopographicFeature,
};
pub use asce7_wall_case_c::{Asce7WallCaseC, Asce7WallObliqueForce};
pub use asce7_wall_force::{Asce7Wall, Asce7WallForce};
pub use beaufort_force::{Beaufort, BeaufortForce, BeaufortName};
pub use en1991_free_standing_wall::{En1991FreeStandingWall, En1991WallPressure};
pub use en1991_lattice_force::{En1991Lattice, En1991LatticeForce};
pub use en1991_orography_factor::{En1991Orography, En1991OrographyFactor, OrographicFeature};
pub use en1991_peak_velocity_pressure::{En1991PeakPressure, En1991PeakVelocityPressure, Terrain};
pub use en1991_rectangular_member::{En1991Rectangular, En1991RectangularMember};
pub use en1991_round_member::{En1991Round, En1991RoundMember};
pub use exposure::Exposure;
pub use ice_on_members::{IceOnBars, IceOnMembers};
pub use iced_solidity::{IcedLeaf, IcedSolidity, OpeningPattern};
pub use wind_on_turning_leaf::{WindMoment, WindOnTurningLeaf};
pub use wind_pressure_of_speed::{WindPressure, WindPressureOfSpeed};

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
    Calculation::of::<Asce7TopographicFactor>(),
    Calculation::of::<BeaufortForce>(),
    Calculation::of::<En1991LatticeForce>(),
    Calculation::of::<En1991OrographyFactor>(),
    Calculation::of::<En1991RectangularMember>(),
    Calculation::of::<En1991RoundMember>(),
    Calculation::of::<IceOnMembers>(),
    Calculation::of::<IcedSolidity>(),
    Calculation::of::<WindOnTurningLeaf>(),
    Calculation::of::<WindPressureOfSpeed>(),
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
    (
        "wind/asce7_topographic_factor.cases.toml",
        include_str!("asce7_topographic_factor.cases.toml"),
    ),
    (
        "wind/beaufort_force.cases.toml",
        include_str!("beaufort_force.cases.toml"),
    ),
    (
        "wind/en1991_lattice_force.cases.toml",
        include_str!("en1991_lattice_force.cases.toml"),
    ),
    (
        "wind/en1991_orography_factor.cases.toml",
        include_str!("en1991_orography_factor.cases.toml"),
    ),
    (
        "wind/en1991_rectangular_member.cases.toml",
        include_str!("en1991_rectangular_member.cases.toml"),
    ),
    (
        "wind/en1991_round_member.cases.toml",
        include_str!("en1991_round_member.cases.toml"),
    ),
    (
        "wind/ice_on_members.cases.toml",
        include_str!("ice_on_members.cases.toml"),
    ),
    (
        "wind/iced_solidity.cases.toml",
        include_str!("iced_solidity.cases.toml"),
    ),
    (
        "wind/wind_on_turning_leaf.cases.toml",
        include_str!("wind_on_turning_leaf.cases.toml"),
    ),
    (
        "wind/wind_pressure_of_speed.cases.toml",
        include_str!("wind_pressure_of_speed.cases.toml"),
    ),
];
