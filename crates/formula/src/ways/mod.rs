//! Conduits and pulls.

mod cable_area;
mod concrete_strength_share;
mod concrete_wait;
mod conductor_pull_limit;
mod conductors_together;
mod conduit_bend;
mod conduit_bore;
mod conduit_fill;
mod conduit_jam;
mod least_cover;
mod letters_by_angle;
mod plug_through_bend;
mod pull_bend;
mod pull_straight;
mod pulling_lubricant;
mod room_beside_cables;
mod side_load;
mod weight_correction;

pub use cable_area::{CableArea, CablesArea};
pub use concrete_strength_share::{CementSpeed, ConcreteStrengthShare, StrengthShare};
pub use concrete_wait::{ConcreteWait, ConcreteWaits};
pub use conductor_pull_limit::{ConductorPullLimit, PullLimit};
pub use conductors_together::{ConductorsTogether, Together};
pub use conduit_bend::{BendMade, BendNeeded, ConduitBend};
pub use conduit_bore::{Bore, ConduitBore, ConduitKind, TradeSize};
pub use conduit_fill::{ConduitFill, ConduitRun, Fill};
pub use conduit_jam::{ConduitJam, Jam, JamDanger};
pub use least_cover::{CoverNeeded, CoverPlace, LeastCover};
pub use letters_by_angle::{LetterHeight, LettersByAngle};
pub use plug_through_bend::{LongestPlug, PlugThroughBend};
pub use pull_bend::{BendPull, PullBend};
pub use pull_straight::{PullStraight, StraightPull};
pub use pulling_lubricant::{LubricantNeed, PullingLubricant};
pub use room_beside_cables::{RoomBeside, RoomBesideCables};
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
    Calculation::of::<PullingLubricant>(),
    Calculation::of::<ConcreteStrengthShare>(),
    Calculation::of::<ConcreteWait>(),
    Calculation::of::<ConductorsTogether>(),
    Calculation::of::<LettersByAngle>(),
    Calculation::of::<RoomBesideCables>(),
    Calculation::of::<PlugThroughBend>(),
    Calculation::of::<ConduitBend>(),
    Calculation::of::<LeastCover>(),
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
    (
        "ways/pulling_lubricant.cases.toml",
        include_str!("pulling_lubricant.cases.toml"),
    ),
    (
        "ways/concrete_strength_share.cases.toml",
        include_str!("concrete_strength_share.cases.toml"),
    ),
    (
        "ways/concrete_wait.cases.toml",
        include_str!("concrete_wait.cases.toml"),
    ),
    (
        "ways/conductors_together.cases.toml",
        include_str!("conductors_together.cases.toml"),
    ),
    (
        "ways/letters_by_angle.cases.toml",
        include_str!("letters_by_angle.cases.toml"),
    ),
    (
        "ways/room_beside_cables.cases.toml",
        include_str!("room_beside_cables.cases.toml"),
    ),
    (
        "ways/plug_through_bend.cases.toml",
        include_str!("plug_through_bend.cases.toml"),
    ),
    (
        "ways/conduit_bend.cases.toml",
        include_str!("conduit_bend.cases.toml"),
    ),
    (
        "ways/least_cover.cases.toml",
        include_str!("least_cover.cases.toml"),
    ),
];
