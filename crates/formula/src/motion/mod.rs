//! Mass, force, speed and travel of a leaf.

mod hinge_friction_torque;
mod kinetic_energy;
mod rolling_lever_arm;
mod slide_gate_force;
mod slope;
mod stopping_distance;
mod swing_gate_torque;
mod swing_kinetic_energy;
mod trapezoidal_travel;

pub use hinge_friction_torque::{HingeFriction, HingeFrictionTorque};
pub use kinetic_energy::{EnergyOfMotion, KineticEnergy};
pub use rolling_lever_arm::{LeverArm, RollingLeverArm, RollingPair};
pub use slide_gate_force::{SlideGateForce, SlideGateForces};
pub use stopping_distance::{Stop, StoppingDistance};
pub use swing_gate_torque::{SwingGateTorque, SwingTorques, SwingWay};
pub use swing_kinetic_energy::{SwingEnergy, SwingKineticEnergy};
pub use trapezoidal_travel::{TrapezoidalTravel, Travel};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<RollingLeverArm>(),
    Calculation::of::<SlideGateForce>(),
    Calculation::of::<TrapezoidalTravel>(),
    Calculation::of::<StoppingDistance>(),
    Calculation::of::<KineticEnergy>(),
    Calculation::of::<SwingKineticEnergy>(),
    Calculation::of::<HingeFrictionTorque>(),
    Calculation::of::<SwingGateTorque>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "motion/hinge_friction_torque.cases.toml",
        include_str!("hinge_friction_torque.cases.toml"),
    ),
    (
        "motion/kinetic_energy.cases.toml",
        include_str!("kinetic_energy.cases.toml"),
    ),
    (
        "motion/rolling_lever_arm.cases.toml",
        include_str!("rolling_lever_arm.cases.toml"),
    ),
    (
        "motion/slide_gate_force.cases.toml",
        include_str!("slide_gate_force.cases.toml"),
    ),
    (
        "motion/stopping_distance.cases.toml",
        include_str!("stopping_distance.cases.toml"),
    ),
    (
        "motion/swing_gate_torque.cases.toml",
        include_str!("swing_gate_torque.cases.toml"),
    ),
    (
        "motion/swing_kinetic_energy.cases.toml",
        include_str!("swing_kinetic_energy.cases.toml"),
    ),
    (
        "motion/trapezoidal_travel.cases.toml",
        include_str!("trapezoidal_travel.cases.toml"),
    ),
];
