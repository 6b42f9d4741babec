//! Density, stiffness and growth of the metals that leaves are made of.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{MassDensity, Pressure, Quantity as _, ThermalExpansion, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// A metal that leaves are made of.
    pub enum Metal {
        /// Carbon steel.
        Steel = "steel",
        /// Stainless steel.
        StainlessSteel = "stainless steel",
        /// Aluminum alloy of the 6000 series.
        Aluminum = "aluminum",
    }
}

formula! {
    /// Density, modulus of elasticity and coefficient of expansion of a metal.
    ///
    /// Where print differs a little, the figure on the careful side is taken: the heavier, the softer, the one that
    /// grows more. Timber and plastic differ too much to be tabled: weigh them.
    pub struct MetalProperties = "metal-properties" in Leaf {
        /// The metal.
        metal ("–"): Metal,
    }
    gives
    /// A metal's density, stiffness and growth.
    pub struct MetalFigures {
        /// Density.
        density ("ρ"): MassDensity,
        /// Modulus of elasticity.
        elasticity ("E"): Pressure,
        /// Coefficient of expansion.
        expansion ("α"): ThermalExpansion,
    }
    formula "from the table"
    valid "Wrought metal between −40 °C and 100 °C."
    source { work: "EN 1993-1-1, 3.2.6; EN 10088-1; data sheets of the Aluminum Association", clause: "design values of material coefficients; physical properties", evidence: Seen, seen: "retellings of EN 1993-1-1 and EN 10088-1, a handbook page and data sheets of alloys 6061 and 6063; see the table" }
    by figures
}

static METALS: Stored = LazyLock::new(|| Table::read(include_str!("metal_properties.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn figures(asked: &MetalProperties) -> Result<MetalFigures, OutOfReach> {
    let table = Table::of(&METALS)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(asked.metal.word()));
    let number = |place: usize| row.and_then(|row| row.get(place)).and_then(Cell::number);
    match (number(1), number(2), number(3)) {
        (Some(density), Some(gigapascals), Some(millionths)) => Ok(MetalFigures {
            density: MassDensity::from_base(density),
            elasticity: Pressure::from_base(gigapascals * 1e9),
            expansion: ThermalExpansion::from_base(millionths * 1e-6),
        }),
        _ => Err(OutOfReach::new("metal", "the table has no such metal")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_metal_stands_in_the_table_and_the_light_one_is_soft_and_grows() {
        let all: Vec<MetalFigures> = Metal::ALL
            .iter()
            .map(|metal| MetalProperties { metal: *metal }.evaluate().unwrap())
            .collect();
        let (steel, aluminum) = (all[0], all[2]);
        assert!(aluminum.density < steel.density && aluminum.elasticity < steel.elasticity);
        assert!(all.iter().all(|metal| metal.expansion.base() > 1e-5));
        assert!(aluminum.expansion > steel.expansion);
    }
}
