//! What the ground may be taken to carry where nobody has tested it.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Pressure, PressurePerDepth, Quantity as _, Ratio, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Class of soil or rock.
    pub enum Soil {
        /// Crystalline bedrock.
        Bedrock = "crystalline bedrock",
        /// Sedimentary and foliated rock.
        Rock = "sedimentary and foliated rock",
        /// Sandy gravel and gravel (GW, GP).
        Gravel = "gravel",
        /// Sand, silty and clayey sand, silty and clayey gravel (SW, SP, SM, SC, GM, GC).
        Sand = "sand",
        /// Clay, sandy and silty clay, clayey silt, silt (CL, ML, MH, CH).
        Clay = "clay and silt",
    }
}

formula! {
    /// Bearing, sideways bearing and sliding of a class of soil, where nobody has tested it.
    ///
    /// Undisturbed ground only. Mud, organic silt, peat, fill, soil under water and soil of less than its class need a
    /// soil investigation; so does a bank, a trench or an old footing beside the hole. Poles that take no harm from
    /// 1/2 in of movement at the ground may count twice the sideways value.
    pub struct PresumptiveSoil = "presumptive-soil" in Standing {
        /// Class of soil or rock.
        soil ("–"): Soil,
    }
    gives
    /// What a class of soil may be taken to carry.
    pub struct SoilValues {
        /// Vertical bearing pressure.
        bearing ("q"): Pressure,
        /// Sideways bearing for each unit of depth below grade.
        lateral ("S"): PressurePerDepth,
        /// Coefficient of friction against sliding; 0 where the soil slides on cohesion.
        friction ("μ"): Ratio,
        /// Cohesion against sliding; 0 where the soil slides on friction.
        cohesion ("c"): Pressure,
    }
    formula "q, S, μ and c from the table"
    valid "Undisturbed soil of the class, with nothing softer below it; local values prevail."
    source { work: "IBC 2012", clause: "table 1806.2", evidence: Seen, seen: "a reprint of the table and a code change proposal with the same values" }
    by values
}

static VALUES: Stored = LazyLock::new(|| Table::read(include_str!("presumptive_soil.toml")));

/// One pound-force on each square foot, in pascals.
const PSF: f64 = super::concrete::POUND / (0.3048 * 0.3048);

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn values(ground: &PresumptiveSoil) -> Result<SoilValues, OutOfReach> {
    let table = Table::of(&VALUES)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(ground.soil.word()))
        .ok_or_else(|| OutOfReach::new("soil", "the table has no row for this soil"))?;
    let number = |place: usize| row.get(place).and_then(Cell::number).unwrap_or(0.0);
    Ok(SoilValues {
        bearing: Pressure::from_base(number(1) * PSF),
        lateral: PressurePerDepth::from_base(number(2) * PSF / 0.3048),
        friction: Ratio::from_base(number(3)),
        cohesion: Pressure::from_base(number(4) * PSF),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn values_fall_from_rock_to_clay_and_each_soil_resists_sliding_one_way() {
        let all: Vec<SoilValues> = Soil::ALL
            .iter()
            .map(|soil| PresumptiveSoil { soil: *soil }.evaluate().unwrap())
            .collect();
        assert!(all.windows(2).all(|pair| pair[0].bearing > pair[1].bearing));
        assert!(all.windows(2).all(|pair| pair[0].lateral > pair[1].lateral));
        assert!(
            all.iter()
                .all(|soil| (soil.friction.base() > 0.0) != (soil.cohesion.base() > 0.0))
        );
    }
}
