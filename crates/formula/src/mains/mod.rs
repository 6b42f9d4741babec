//! The mains branch: ampacity, breakers, earth faults, electrodes and surges.

mod breaker_loop_limit;
mod cut_off_time;
mod fault_current_at_end;
mod fault_loop;
mod iec_60949_fault_current;
mod impulse_withstand;
mod nec_ampacity;
mod nec_burial_cover;
mod nec_equipment_ground;
mod nec_motor_branch;
mod nec_motor_current;
mod nec_small_conductor;
mod nec_standard_rating;
mod rod_resistance;
mod rod_shell;
mod rods_in_a_bed;
mod rods_in_parallel;
mod surge_lead;
mod transformer_fault_current;
mod two_rods;

pub use breaker_loop_limit::{BreakerCurve, BreakerLoopLimit, LoopLimit};
pub use cut_off_time::{CutOff, CutOffTime, EarthingSystem};
pub use fault_current_at_end::{FaultAtEnd, FaultCurrentAtEnd};
pub use fault_loop::{FaultLoop, FaultLoopImpedance};
pub use iec_60949_fault_current::{Iec60949Current, Iec60949FaultCurrent};
pub use impulse_withstand::{ImpulseStrength, ImpulseWithstand, OvervoltageCategory};
pub use nec_ampacity::{NecAmpacities, NecAmpacity, RatedTemperature};
pub use nec_burial_cover::{BurialCover, BuriedPlace, BuriedWiring, NecBurialCover};
pub use nec_equipment_ground::{EquipmentGround, NecEquipmentGround};
pub use nec_motor_branch::{MotorBranch, MotorProtection, NecMotorBranch};
pub use nec_motor_current::{MotorCurrent, MotorSize, NecMotorCurrent};
pub use nec_small_conductor::{NecSmallConductor, SmallConductorLimit};
pub use nec_standard_rating::{NecStandardRating, StandardRatings};
pub use rod_resistance::{RodOhms, RodResistance};
pub use rod_shell::{RodShell, Shell};
pub use rods_in_a_bed::{Bed, RodsInABed};
pub use rods_in_parallel::{RodsInParallel, RodsTogether};
pub use surge_lead::{SurgeLead, SurgeVoltage};
pub use transformer_fault_current::{TransformerFault, TransformerFaultCurrent};
pub use two_rods::{TwoRods, TwoRodsOhms};

use crate::Calculation;

/// The calculations of the mains branch; they belong to power.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<NecAmpacity>(),
    Calculation::of::<NecSmallConductor>(),
    Calculation::of::<NecStandardRating>(),
    Calculation::of::<NecMotorCurrent>(),
    Calculation::of::<NecMotorBranch>(),
    Calculation::of::<NecEquipmentGround>(),
    Calculation::of::<FaultLoop>(),
    Calculation::of::<BreakerLoopLimit>(),
    Calculation::of::<CutOffTime>(),
    Calculation::of::<TransformerFaultCurrent>(),
    Calculation::of::<FaultCurrentAtEnd>(),
    Calculation::of::<Iec60949FaultCurrent>(),
    Calculation::of::<NecBurialCover>(),
    Calculation::of::<RodResistance>(),
    Calculation::of::<RodsInParallel>(),
    Calculation::of::<TwoRods>(),
    Calculation::of::<RodsInABed>(),
    Calculation::of::<RodShell>(),
    Calculation::of::<SurgeLead>(),
    Calculation::of::<ImpulseWithstand>(),
];

/// The case files of the mains branch: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "mains/nec_ampacity.cases.toml",
        include_str!("nec_ampacity.cases.toml"),
    ),
    (
        "mains/nec_small_conductor.cases.toml",
        include_str!("nec_small_conductor.cases.toml"),
    ),
    (
        "mains/nec_standard_rating.cases.toml",
        include_str!("nec_standard_rating.cases.toml"),
    ),
    (
        "mains/nec_motor_current.cases.toml",
        include_str!("nec_motor_current.cases.toml"),
    ),
    (
        "mains/nec_motor_branch.cases.toml",
        include_str!("nec_motor_branch.cases.toml"),
    ),
    (
        "mains/nec_equipment_ground.cases.toml",
        include_str!("nec_equipment_ground.cases.toml"),
    ),
    (
        "mains/fault_loop.cases.toml",
        include_str!("fault_loop.cases.toml"),
    ),
    (
        "mains/breaker_loop_limit.cases.toml",
        include_str!("breaker_loop_limit.cases.toml"),
    ),
    (
        "mains/cut_off_time.cases.toml",
        include_str!("cut_off_time.cases.toml"),
    ),
    (
        "mains/transformer_fault_current.cases.toml",
        include_str!("transformer_fault_current.cases.toml"),
    ),
    (
        "mains/fault_current_at_end.cases.toml",
        include_str!("fault_current_at_end.cases.toml"),
    ),
    (
        "mains/rod_resistance.cases.toml",
        include_str!("rod_resistance.cases.toml"),
    ),
    (
        "mains/rods_in_parallel.cases.toml",
        include_str!("rods_in_parallel.cases.toml"),
    ),
    (
        "mains/two_rods.cases.toml",
        include_str!("two_rods.cases.toml"),
    ),
    (
        "mains/rod_shell.cases.toml",
        include_str!("rod_shell.cases.toml"),
    ),
    (
        "mains/surge_lead.cases.toml",
        include_str!("surge_lead.cases.toml"),
    ),
    (
        "mains/impulse_withstand.cases.toml",
        include_str!("impulse_withstand.cases.toml"),
    ),
    (
        "mains/iec_60949_fault_current.cases.toml",
        include_str!("iec_60949_fault_current.cases.toml"),
    ),
    (
        "mains/nec_burial_cover.cases.toml",
        include_str!("nec_burial_cover.cases.toml"),
    ),
    (
        "mains/rods_in_a_bed.cases.toml",
        include_str!("rods_in_a_bed.cases.toml"),
    ),
];
