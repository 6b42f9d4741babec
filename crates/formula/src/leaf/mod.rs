//! Leaf, frame, wheels and hinges.

mod bar_section;
mod braced_frame_sag;
mod cantilever_beam;
mod cantilever_gate_rollers;
mod hinge_reactions;
mod hss_section;
mod member_mass;
mod metal_properties;
mod pipe_section;
mod rail_joint_gaps;
mod round_section;
mod row;
mod section_mass;
mod shape;
mod sheet_mass;
mod simple_beam;
mod thermal_bow;
mod thermal_growth;
mod tube_section;
mod wheel_contact_pressure;

pub use bar_section::{BarSection, BarShape};
pub use braced_frame_sag::{BracedFrameSag, FrameSag};
pub use cantilever_beam::{CantileverBeam, CantileverBending};
pub use cantilever_gate_rollers::{CantileverGateRollers, RollerLoads};
pub use hinge_reactions::{HingeLoads, HingeReactions};
pub use hss_section::{HssSection, HssShape, HssSize};
pub use member_mass::{MemberMass, MemberMasses};
pub use metal_properties::{Metal, MetalFigures, MetalProperties};
pub use pipe_section::{PipeSection, PipeShape, PipeSize};
pub use rail_joint_gaps::{JointGaps, RailJointGaps};
pub use round_section::{RoundSection, RoundShape};
pub use section_mass::{SectionMass, SectionMasses};
pub use sheet_mass::{SheetMass, SheetMasses};
pub use simple_beam::{SimpleBeam, SimpleBending};
pub use thermal_bow::{Bow, ThermalBow};
pub use thermal_growth::{Growth, ThermalGrowth};
pub use tube_section::{TubeSection, TubeShape};
pub use wheel_contact_pressure::{WheelContact, WheelContactPressure};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<MetalProperties>(),
    Calculation::of::<SectionMass>(),
    Calculation::of::<MemberMass>(),
    Calculation::of::<SheetMass>(),
    Calculation::of::<HssSection>(),
    Calculation::of::<PipeSection>(),
    Calculation::of::<TubeSection>(),
    Calculation::of::<RoundSection>(),
    Calculation::of::<BarSection>(),
    Calculation::of::<CantileverGateRollers>(),
    Calculation::of::<CantileverBeam>(),
    Calculation::of::<SimpleBeam>(),
    Calculation::of::<BracedFrameSag>(),
    Calculation::of::<HingeReactions>(),
    Calculation::of::<ThermalGrowth>(),
    Calculation::of::<ThermalBow>(),
    Calculation::of::<RailJointGaps>(),
    Calculation::of::<WheelContactPressure>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "leaf/bar_section.cases.toml",
        include_str!("bar_section.cases.toml"),
    ),
    (
        "leaf/braced_frame_sag.cases.toml",
        include_str!("braced_frame_sag.cases.toml"),
    ),
    (
        "leaf/cantilever_beam.cases.toml",
        include_str!("cantilever_beam.cases.toml"),
    ),
    (
        "leaf/cantilever_gate_rollers.cases.toml",
        include_str!("cantilever_gate_rollers.cases.toml"),
    ),
    (
        "leaf/hinge_reactions.cases.toml",
        include_str!("hinge_reactions.cases.toml"),
    ),
    (
        "leaf/hss_section.cases.toml",
        include_str!("hss_section.cases.toml"),
    ),
    (
        "leaf/member_mass.cases.toml",
        include_str!("member_mass.cases.toml"),
    ),
    (
        "leaf/metal_properties.cases.toml",
        include_str!("metal_properties.cases.toml"),
    ),
    (
        "leaf/pipe_section.cases.toml",
        include_str!("pipe_section.cases.toml"),
    ),
    (
        "leaf/rail_joint_gaps.cases.toml",
        include_str!("rail_joint_gaps.cases.toml"),
    ),
    (
        "leaf/round_section.cases.toml",
        include_str!("round_section.cases.toml"),
    ),
    (
        "leaf/section_mass.cases.toml",
        include_str!("section_mass.cases.toml"),
    ),
    (
        "leaf/sheet_mass.cases.toml",
        include_str!("sheet_mass.cases.toml"),
    ),
    (
        "leaf/simple_beam.cases.toml",
        include_str!("simple_beam.cases.toml"),
    ),
    (
        "leaf/thermal_bow.cases.toml",
        include_str!("thermal_bow.cases.toml"),
    ),
    (
        "leaf/thermal_growth.cases.toml",
        include_str!("thermal_growth.cases.toml"),
    ),
    (
        "leaf/tube_section.cases.toml",
        include_str!("tube_section.cases.toml"),
    ),
    (
        "leaf/wheel_contact_pressure.cases.toml",
        include_str!("wheel_contact_pressure.cases.toml"),
    ),
];
