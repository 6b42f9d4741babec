//! Protection of people: distances of devices, numbers of means, openings and places that catch.

mod approach;
mod edge_impact_force;
mod edge_peak_force;
mod en12453_closing_test_points;
mod en12453_force_meter;
mod en12453_force_trace;
mod en12453_minimum_level;
mod en12453_opening_test_point;
mod en12453_peak_force;
mod en12453_test_body;
mod entrapment_protection_count;
mod entrapment_protection_recalled;
mod f2200_opening;
mod force_measurement_mean;
mod gate_kind;
mod hold_to_run_overtravel;
mod iso13854_gap;
mod iso13855_2010_minimum_distance;
mod iso13855_2010_parallel_distance;
mod iso13855_2024_parallel_distance;
mod iso13857_reach;
mod limit;
mod osha_1910_217_distance;
mod slide_entrapment_zone;
mod soft_edge;
mod swing_entrapment_zone;

pub use edge_impact_force::{EdgeImpact, EdgeImpactForce};
pub use edge_peak_force::{EdgeForce, EdgePeakForce};
pub use en12453_closing_test_points::{ClosingTestPoints, En12453ClosingTestPoints};
pub use en12453_force_meter::{En12453ForceMeter, ForceMeter, MeterVerdict};
pub use en12453_force_trace::{En12453ForceTrace, ForceTraceVerdict, TraceVerdict};
pub use en12453_minimum_level::{
    EN12453_MINIMUM_LEVEL_RECALLED, En12453MinimumLevel, GateControl, MinimumLevel,
    ProtectionLevel, UseType, en12453_minimum_level_recalled,
};
pub use en12453_opening_test_point::{En12453OpeningTestPoint, OpeningTestPoint};
pub use en12453_peak_force::{
    EN12453_PEAK_FORCE_RECALLED, En12453PeakForce, PeakForceLimit, en12453_peak_force_recalled,
};
pub use en12453_test_body::{BoxPosture, En12453TestBody, Sight, TestBodySight};
pub use entrapment_protection_count::{EntrapmentProtectionCount, ProtectionCount};
pub use entrapment_protection_recalled::{EntrapmentProtectionRecalled, RecalledCount};
pub use f2200_opening::{F2200Edition, F2200Opening, OpeningRule, OpeningVerdict};
pub use force_measurement_mean::{ForceMeasurementMean, MeanForce, MeanVerdict};
pub use gate_kind::{Entrapment, GateKind, TravelDirection};
pub use hold_to_run_overtravel::{
    HOLD_TO_RUN_OVERTRAVEL_RECALLED, HoldToRunOvertravel, Overtravel,
    hold_to_run_overtravel_recalled,
};
pub use iso13854_gap::{BodyPart, CrushingGap, Iso13854Gap};
pub use iso13855_2010_minimum_distance::{Iso138552010Distance, Iso138552010MinimumDistance};
pub use iso13855_2010_parallel_distance::{Iso138552010Parallel, Iso138552010ParallelDistance};
pub use iso13855_2024_parallel_distance::{Iso138552024Parallel, Iso138552024ParallelDistance};
pub use iso13857_reach::{Iso13857Reach, OpeningShape, ReachDistance, reach_from_three_years};
pub use limit::LimitVerdict;
pub use osha_1910_217_distance::{Osha1910217Distance, OshaDistance};
pub use slide_entrapment_zone::{SlideEntrapmentZone, SlideZone, ZoneVerdict};
pub use swing_entrapment_zone::{SwingEntrapmentZone, SwingZone};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<EdgeImpactForce>(),
    Calculation::of::<EdgePeakForce>(),
    Calculation::of::<En12453ClosingTestPoints>(),
    Calculation::of::<En12453ForceMeter>(),
    Calculation::of::<En12453ForceTrace>(),
    Calculation::of::<En12453MinimumLevel>(),
    Calculation::of::<En12453OpeningTestPoint>(),
    Calculation::of::<En12453PeakForce>(),
    Calculation::of::<En12453TestBody>(),
    Calculation::of::<EntrapmentProtectionCount>(),
    Calculation::of::<EntrapmentProtectionRecalled>(),
    Calculation::of::<F2200Opening>(),
    Calculation::of::<ForceMeasurementMean>(),
    Calculation::of::<HoldToRunOvertravel>(),
    Calculation::of::<Iso13854Gap>(),
    Calculation::of::<Iso138552010MinimumDistance>(),
    Calculation::of::<Iso138552010ParallelDistance>(),
    Calculation::of::<Iso138552024ParallelDistance>(),
    Calculation::of::<Iso13857Reach>(),
    Calculation::of::<Osha1910217Distance>(),
    Calculation::of::<SlideEntrapmentZone>(),
    Calculation::of::<SwingEntrapmentZone>(),
];

/// Name and text of the case file beside a calculation.
macro_rules! cases {
    ($($name:literal,)*) => {
        &[$((
            concat!("protection/", $name, ".cases.toml"),
            include_str!(concat!($name, ".cases.toml")),
        ),)*]
    };
}

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = cases![
    "edge_impact_force",
    "edge_peak_force",
    "en12453_closing_test_points",
    "en12453_force_meter",
    "en12453_force_trace",
    "en12453_minimum_level",
    "en12453_opening_test_point",
    "en12453_peak_force",
    "en12453_test_body",
    "entrapment_protection_count",
    "entrapment_protection_recalled",
    "f2200_opening",
    "force_measurement_mean",
    "hold_to_run_overtravel",
    "iso13854_gap",
    "iso13855_2010_minimum_distance",
    "iso13855_2010_parallel_distance",
    "iso13855_2024_parallel_distance",
    "iso13857_reach",
    "osha_1910_217_distance",
    "slide_entrapment_zone",
    "swing_entrapment_zone",
];
