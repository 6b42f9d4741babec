//! Conduits and pulls.

mod cable_area;
mod conductor_pull_limit;
mod conduit_bore;
mod conduit_fill;
mod conduit_jam;
mod pull_bend;
mod pull_straight;
mod side_load;
mod weight_correction;

pub use cable_area::{CableArea, CablesArea};
pub use conductor_pull_limit::{ConductorPullLimit, PullLimit};
pub use conduit_bore::{Bore, ConduitBore, ConduitKind, TradeSize};
pub use conduit_fill::{ConduitFill, ConduitRun, Fill};
pub use conduit_jam::{ConduitJam, Jam, JamDanger};
pub use pull_bend::{BendPull, PullBend};
pub use pull_straight::{PullStraight, StraightPull};
pub use side_load::{SideLoad, SideWallLoad};
pub use weight_correction::{Arrangement, Correction, WeightCorrection};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<ConduitBore>(),
    Calculation::of::<CableArea>(),
    Calculation::of::<ConduitFill>(),
    Calculation::of::<ConduitJam>(),
    Calculation::of::<WeightCorrection>(),
    Calculation::of::<PullStraight>(),
    Calculation::of::<PullBend>(),
    Calculation::of::<SideLoad>(),
    Calculation::of::<ConductorPullLimit>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "ways/conduit_bore.cases.toml",
        include_str!("conduit_bore.cases.toml"),
    ),
    (
        "ways/cable_area.cases.toml",
        include_str!("cable_area.cases.toml"),
    ),
    (
        "ways/conduit_fill.cases.toml",
        include_str!("conduit_fill.cases.toml"),
    ),
    (
        "ways/conduit_jam.cases.toml",
        include_str!("conduit_jam.cases.toml"),
    ),
    (
        "ways/weight_correction.cases.toml",
        include_str!("weight_correction.cases.toml"),
    ),
    (
        "ways/pull_straight.cases.toml",
        include_str!("pull_straight.cases.toml"),
    ),
    (
        "ways/pull_bend.cases.toml",
        include_str!("pull_bend.cases.toml"),
    ),
    (
        "ways/side_load.cases.toml",
        include_str!("side_load.cases.toml"),
    ),
    (
        "ways/conductor_pull_limit.cases.toml",
        include_str!("conductor_pull_limit.cases.toml"),
    ),
];
