//! Leaf, frame, wheels and hinges.

mod bar_section;
mod cantilever_gate_rollers;
mod hss_section;
mod member_mass;
mod metal_properties;
mod pipe_section;
mod round_section;
mod row;
mod section_mass;
mod shape;
mod sheet_mass;
mod tube_section;

pub use bar_section::{BarSection, BarShape};
pub use cantilever_gate_rollers::{CantileverGateRollers, RollerLoads};
pub use hss_section::{HssSection, HssShape, HssSize};
pub use member_mass::{MemberMass, MemberMasses};
pub use metal_properties::{Metal, MetalFigures, MetalProperties};
pub use pipe_section::{PipeSection, PipeShape, PipeSize};
pub use round_section::{RoundSection, RoundShape};
pub use section_mass::{SectionMass, SectionMasses};
pub use sheet_mass::{SheetMass, SheetMasses};
pub use tube_section::{TubeSection, TubeShape};

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
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "leaf/bar_section.cases.toml",
        include_str!("bar_section.cases.toml"),
    ),
    (
        "leaf/cantilever_gate_rollers.cases.toml",
        include_str!("cantilever_gate_rollers.cases.toml"),
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
        "leaf/tube_section.cases.toml",
        include_str!("tube_section.cases.toml"),
    ),
];
