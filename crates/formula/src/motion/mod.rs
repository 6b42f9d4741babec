//! Mass, force, speed and travel of a leaf.

mod articulated_arm_geometry;
mod articulated_arm_mounting;
mod chain_force_from_torque;
mod counterweight_balance;
mod duty_temperature;
mod extension_spring_torque;
mod fall_energy;
mod folding_arm;
mod hand_push_speed;
mod hinge_friction_torque;
mod jerk_limited_ramp;
mod jerk_limited_travel;
mod kinetic_energy;
mod linear_actuator_geometry;
mod linear_actuator_mounting;
mod linear_actuator_place;
mod overtravel_energy;
mod pins;
mod push_pull_guide;
mod rack_force_from_torque;
mod rack_travel_per_turn;
mod reflected_mass;
mod reversal_distance;
mod rms;
mod rms_force;
mod rms_torque;
mod rolling_lever_arm;
mod rope_safety_factor;
mod screw_force;
mod slide_gate_force;
mod slope;
mod slow_down_setpoint;
mod stop_impact_force;
mod stopping_distance;
mod stopping_on_a_slope;
mod swing_curve;
mod swing_gate_torque;
mod swing_kinetic_energy;
mod torsion_spring_lift;
mod torsion_spring_torque;
mod trapezoidal_travel;
mod travel_profile;
mod underground_drive_torque;
mod vertical_lift_force;
mod vertical_pivot_torque;

pub use articulated_arm_geometry::{ArticulatedArm, ArticulatedArmGeometry};
pub use articulated_arm_mounting::{ArticulatedArmMounting, ArticulatedMounting};
pub use chain_force_from_torque::{ChainForce, ChainForceFromTorque};
pub use counterweight_balance::{BalancingMass, CounterweightBalance};
pub use duty_temperature::{DutyTemperature, MotorTemperature};
pub use extension_spring_torque::{ExtensionSpringTorque, ExtensionSpringTorques};
pub use fall_energy::{EnergyOfFall, FallEnergy};
pub use folding_arm::ElbowSide;
pub use hand_push_speed::{HandPushSpeed, Pushed};
pub use hinge_friction_torque::{HingeFriction, HingeFrictionTorque};
pub use jerk_limited_ramp::{JerkLimitedRamp, RampWithJerk};
pub use jerk_limited_travel::{JerkLimitedTravel, TravelWithJerk};
pub use kinetic_energy::{EnergyOfMotion, KineticEnergy};
pub use linear_actuator_geometry::{LinearActuator, LinearActuatorGeometry};
pub use linear_actuator_mounting::{LinearActuatorMounting, LinearMounting};
pub use linear_actuator_place::{LinearPins, LinearPlace};
pub use overtravel_energy::{EnergyAtStop, OvertravelEnergy};
pub use pins::{arm_reach, dead_point};
pub use push_pull_guide::{HandForces, PushPullGuide, Pusher};
pub use rack_force_from_torque::{RackForce, RackForceFromTorque};
pub use rack_travel_per_turn::{RackTravel, RackTravelPerTurn};
pub use reflected_mass::{MassReflected, ReflectedMass};
pub use reversal_distance::{Reversal, ReversalDistance};
pub use rms_force::{ForceThatHeats, RmsForce};
pub use rms_torque::{RmsTorque, TorqueThatHeats};
pub use rolling_lever_arm::{LeverArm, RollingLeverArm, RollingPair};
pub use rope_safety_factor::{RopeSafetyFactor, RopesInHand};
pub use screw_force::{ScrewAtRest, ScrewForce, ScrewPush};
pub use slide_gate_force::{SlideGateForce, SlideGateForces};
pub use slow_down_setpoint::{SetPoint, SlowDownSetpoint};
pub use stop_impact_force::{ImpactOnStop, StopImpactForce};
pub use stopping_distance::{Stop, StoppingDistance};
pub use stopping_on_a_slope::{StopOnASlope, StoppingOnASlope};
pub use swing_curve::{SwingStep, swing_curve};
pub use swing_gate_torque::{SwingGateTorque, SwingTorques, SwingWay};
pub use swing_kinetic_energy::{SwingEnergy, SwingKineticEnergy};
pub use torsion_spring_lift::{SpringLift, TorsionSpringLift};
pub use torsion_spring_torque::{TorsionSpringTorque, TorsionSpringTorques};
pub use trapezoidal_travel::{TrapezoidalTravel, Travel};
pub use travel_profile::{ProfileOfTravel, SpeedReached, TravelEnding, TravelProfile};
pub use underground_drive_torque::{UndergroundDrive, UndergroundDriveTorque};
pub use vertical_lift_force::{VerticalLiftForce, VerticalLiftForces};
pub use vertical_pivot_torque::{VerticalPivotTorque, VerticalPivotTorques};

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
    Calculation::of::<TravelProfile>(),
    Calculation::of::<JerkLimitedRamp>(),
    Calculation::of::<JerkLimitedTravel>(),
    Calculation::of::<SlowDownSetpoint>(),
    Calculation::of::<StoppingOnASlope>(),
    Calculation::of::<ReversalDistance>(),
    Calculation::of::<OvertravelEnergy>(),
    Calculation::of::<StopImpactForce>(),
    Calculation::of::<RmsTorque>(),
    Calculation::of::<RmsForce>(),
    Calculation::of::<DutyTemperature>(),
    Calculation::of::<RackForceFromTorque>(),
    Calculation::of::<RackTravelPerTurn>(),
    Calculation::of::<ChainForceFromTorque>(),
    Calculation::of::<ScrewForce>(),
    Calculation::of::<ReflectedMass>(),
    Calculation::of::<VerticalPivotTorque>(),
    Calculation::of::<VerticalLiftForce>(),
    Calculation::of::<TorsionSpringTorque>(),
    Calculation::of::<TorsionSpringLift>(),
    Calculation::of::<ExtensionSpringTorque>(),
    Calculation::of::<CounterweightBalance>(),
    Calculation::of::<FallEnergy>(),
    Calculation::of::<HandPushSpeed>(),
    Calculation::of::<RopeSafetyFactor>(),
    Calculation::of::<LinearActuatorGeometry>(),
    Calculation::of::<LinearActuatorMounting>(),
    Calculation::of::<ArticulatedArmGeometry>(),
    Calculation::of::<ArticulatedArmMounting>(),
    Calculation::of::<UndergroundDriveTorque>(),
    Calculation::of::<PushPullGuide>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "motion/articulated_arm_geometry.cases.toml",
        include_str!("articulated_arm_geometry.cases.toml"),
    ),
    (
        "motion/articulated_arm_mounting.cases.toml",
        include_str!("articulated_arm_mounting.cases.toml"),
    ),
    (
        "motion/chain_force_from_torque.cases.toml",
        include_str!("chain_force_from_torque.cases.toml"),
    ),
    (
        "motion/counterweight_balance.cases.toml",
        include_str!("counterweight_balance.cases.toml"),
    ),
    (
        "motion/duty_temperature.cases.toml",
        include_str!("duty_temperature.cases.toml"),
    ),
    (
        "motion/extension_spring_torque.cases.toml",
        include_str!("extension_spring_torque.cases.toml"),
    ),
    (
        "motion/fall_energy.cases.toml",
        include_str!("fall_energy.cases.toml"),
    ),
    (
        "motion/hand_push_speed.cases.toml",
        include_str!("hand_push_speed.cases.toml"),
    ),
    (
        "motion/hinge_friction_torque.cases.toml",
        include_str!("hinge_friction_torque.cases.toml"),
    ),
    (
        "motion/jerk_limited_ramp.cases.toml",
        include_str!("jerk_limited_ramp.cases.toml"),
    ),
    (
        "motion/jerk_limited_travel.cases.toml",
        include_str!("jerk_limited_travel.cases.toml"),
    ),
    (
        "motion/kinetic_energy.cases.toml",
        include_str!("kinetic_energy.cases.toml"),
    ),
    (
        "motion/linear_actuator_geometry.cases.toml",
        include_str!("linear_actuator_geometry.cases.toml"),
    ),
    (
        "motion/linear_actuator_mounting.cases.toml",
        include_str!("linear_actuator_mounting.cases.toml"),
    ),
    (
        "motion/overtravel_energy.cases.toml",
        include_str!("overtravel_energy.cases.toml"),
    ),
    (
        "motion/push_pull_guide.cases.toml",
        include_str!("push_pull_guide.cases.toml"),
    ),
    (
        "motion/rack_force_from_torque.cases.toml",
        include_str!("rack_force_from_torque.cases.toml"),
    ),
    (
        "motion/rack_travel_per_turn.cases.toml",
        include_str!("rack_travel_per_turn.cases.toml"),
    ),
    (
        "motion/reflected_mass.cases.toml",
        include_str!("reflected_mass.cases.toml"),
    ),
    (
        "motion/reversal_distance.cases.toml",
        include_str!("reversal_distance.cases.toml"),
    ),
    (
        "motion/rms_force.cases.toml",
        include_str!("rms_force.cases.toml"),
    ),
    (
        "motion/rms_torque.cases.toml",
        include_str!("rms_torque.cases.toml"),
    ),
    (
        "motion/rolling_lever_arm.cases.toml",
        include_str!("rolling_lever_arm.cases.toml"),
    ),
    (
        "motion/rope_safety_factor.cases.toml",
        include_str!("rope_safety_factor.cases.toml"),
    ),
    (
        "motion/screw_force.cases.toml",
        include_str!("screw_force.cases.toml"),
    ),
    (
        "motion/slide_gate_force.cases.toml",
        include_str!("slide_gate_force.cases.toml"),
    ),
    (
        "motion/slow_down_setpoint.cases.toml",
        include_str!("slow_down_setpoint.cases.toml"),
    ),
    (
        "motion/stop_impact_force.cases.toml",
        include_str!("stop_impact_force.cases.toml"),
    ),
    (
        "motion/stopping_distance.cases.toml",
        include_str!("stopping_distance.cases.toml"),
    ),
    (
        "motion/stopping_on_a_slope.cases.toml",
        include_str!("stopping_on_a_slope.cases.toml"),
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
        "motion/torsion_spring_lift.cases.toml",
        include_str!("torsion_spring_lift.cases.toml"),
    ),
    (
        "motion/torsion_spring_torque.cases.toml",
        include_str!("torsion_spring_torque.cases.toml"),
    ),
    (
        "motion/trapezoidal_travel.cases.toml",
        include_str!("trapezoidal_travel.cases.toml"),
    ),
    (
        "motion/travel_profile.cases.toml",
        include_str!("travel_profile.cases.toml"),
    ),
    (
        "motion/underground_drive_torque.cases.toml",
        include_str!("underground_drive_torque.cases.toml"),
    ),
    (
        "motion/vertical_lift_force.cases.toml",
        include_str!("vertical_lift_force.cases.toml"),
    ),
    (
        "motion/vertical_pivot_torque.cases.toml",
        include_str!("vertical_pivot_torque.cases.toml"),
    ),
];
