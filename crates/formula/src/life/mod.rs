//! Wear, growth and rust.

mod aging_ten_degree_rule;
mod arrhenius_factor;
mod astm_a123_zinc_thickness;
mod bearing_kind;
mod bearing_life;
mod bearing_reliability;
mod chain_strength;
mod iso1461_zinc_thickness;
mod wheel_bearing_cycles;
mod zinc_life;

pub use aging_ten_degree_rule::{AgedLife, AgingTenDegreeRule};
pub use arrhenius_factor::{AgingRate, ArrheniusFactor};
pub use astm_a123_zinc_thickness::{AstmA123Zinc, AstmA123ZincThickness, SteelCategory};
pub use bearing_kind::BearingKind;
pub use bearing_life::{BearingLife, BearingLives};
pub use bearing_reliability::{BearingChance, BearingReliability};
pub use chain_strength::{Chain, ChainNumber, ChainStrength};
pub use iso1461_zinc_thickness::{Iso1461Zinc, Iso1461ZincThickness};
pub use wheel_bearing_cycles::{WheelBearingCycles, WheelCycles};
pub use zinc_life::{CorrosivityClass, ZincLife, ZincYears};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<BearingLife>(),
    Calculation::of::<BearingReliability>(),
    Calculation::of::<WheelBearingCycles>(),
    Calculation::of::<ChainStrength>(),
    Calculation::of::<ZincLife>(),
    Calculation::of::<Iso1461ZincThickness>(),
    Calculation::of::<AstmA123ZincThickness>(),
    Calculation::of::<AgingTenDegreeRule>(),
    Calculation::of::<ArrheniusFactor>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "life/bearing_life.cases.toml",
        include_str!("bearing_life.cases.toml"),
    ),
    (
        "life/bearing_reliability.cases.toml",
        include_str!("bearing_reliability.cases.toml"),
    ),
    (
        "life/wheel_bearing_cycles.cases.toml",
        include_str!("wheel_bearing_cycles.cases.toml"),
    ),
    (
        "life/chain_strength.cases.toml",
        include_str!("chain_strength.cases.toml"),
    ),
    (
        "life/zinc_life.cases.toml",
        include_str!("zinc_life.cases.toml"),
    ),
    (
        "life/iso1461_zinc_thickness.cases.toml",
        include_str!("iso1461_zinc_thickness.cases.toml"),
    ),
    (
        "life/astm_a123_zinc_thickness.cases.toml",
        include_str!("astm_a123_zinc_thickness.cases.toml"),
    ),
    (
        "life/aging_ten_degree_rule.cases.toml",
        include_str!("aging_ten_degree_rule.cases.toml"),
    ),
    (
        "life/arrhenius_factor.cases.toml",
        include_str!("arrhenius_factor.cases.toml"),
    ),
];
