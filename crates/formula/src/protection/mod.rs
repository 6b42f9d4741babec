//! Protection of people: distances of devices, numbers of means, openings and places that catch.

mod approach;
mod entrapment_protection_count;
mod entrapment_protection_recalled;
mod f2200_opening;
mod gate_kind;
mod iso13854_gap;
mod iso13855_2010_minimum_distance;
mod iso13855_2010_parallel_distance;
mod iso13855_2024_parallel_distance;
mod iso13857_reach;
mod osha_1910_217_distance;
mod slide_entrapment_zone;
mod swing_entrapment_zone;

pub use entrapment_protection_count::{EntrapmentProtectionCount, ProtectionCount};
pub use entrapment_protection_recalled::{EntrapmentProtectionRecalled, RecalledCount};
pub use f2200_opening::{F2200Edition, F2200Opening, OpeningRule, OpeningVerdict};
pub use gate_kind::{Entrapment, GateKind, TravelDirection};
pub use iso13854_gap::{BodyPart, CrushingGap, Iso13854Gap};
pub use iso13855_2010_minimum_distance::{Iso138552010Distance, Iso138552010MinimumDistance};
pub use iso13855_2010_parallel_distance::{Iso138552010Parallel, Iso138552010ParallelDistance};
pub use iso13855_2024_parallel_distance::{Iso138552024Parallel, Iso138552024ParallelDistance};
pub use iso13857_reach::{Iso13857Reach, OpeningShape, ReachDistance, reach_from_three_years};
pub use osha_1910_217_distance::{Osha1910217Distance, OshaDistance};
pub use slide_entrapment_zone::{SlideEntrapmentZone, SlideZone, ZoneVerdict};
pub use swing_entrapment_zone::{SwingEntrapmentZone, SwingZone};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<Iso138552010MinimumDistance>(),
    Calculation::of::<Iso138552010ParallelDistance>(),
    Calculation::of::<Iso138552024ParallelDistance>(),
    Calculation::of::<Osha1910217Distance>(),
    Calculation::of::<EntrapmentProtectionCount>(),
    Calculation::of::<EntrapmentProtectionRecalled>(),
    Calculation::of::<SlideEntrapmentZone>(),
    Calculation::of::<SwingEntrapmentZone>(),
    Calculation::of::<F2200Opening>(),
    Calculation::of::<Iso13854Gap>(),
    Calculation::of::<Iso13857Reach>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "protection/entrapment_protection_count.cases.toml",
        include_str!("entrapment_protection_count.cases.toml"),
    ),
    (
        "protection/entrapment_protection_recalled.cases.toml",
        include_str!("entrapment_protection_recalled.cases.toml"),
    ),
    (
        "protection/f2200_opening.cases.toml",
        include_str!("f2200_opening.cases.toml"),
    ),
    (
        "protection/iso13855_2010_minimum_distance.cases.toml",
        include_str!("iso13855_2010_minimum_distance.cases.toml"),
    ),
    (
        "protection/iso13855_2010_parallel_distance.cases.toml",
        include_str!("iso13855_2010_parallel_distance.cases.toml"),
    ),
    (
        "protection/iso13855_2024_parallel_distance.cases.toml",
        include_str!("iso13855_2024_parallel_distance.cases.toml"),
    ),
    (
        "protection/iso13854_gap.cases.toml",
        include_str!("iso13854_gap.cases.toml"),
    ),
    (
        "protection/iso13857_reach.cases.toml",
        include_str!("iso13857_reach.cases.toml"),
    ),
    (
        "protection/osha_1910_217_distance.cases.toml",
        include_str!("osha_1910_217_distance.cases.toml"),
    ),
    (
        "protection/slide_entrapment_zone.cases.toml",
        include_str!("slide_entrapment_zone.cases.toml"),
    ),
    (
        "protection/swing_entrapment_zone.cases.toml",
        include_str!("swing_entrapment_zone.cases.toml"),
    ),
];
