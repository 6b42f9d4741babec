//! Size of the equipment grounding conductor, grown with the conductors of its circuit.

use crate::OutOfReach;
use crate::check::positive;
use crate::power::metal_area;
use crate::table::{Cell, Stored, Table};
use quantity::{Area, Awg, ConductorSize, Current, Quantity as _, Ratio};

formula! {
    /// Least size of a copper equipment grounding conductor.
    ///
    /// The table goes by the breaker. Where the circuit conductors are larger than they need to be, against the drop on a
    /// long run for example, the ground grows in the same proportion: on a circuit of 15, 20 or 30 A it becomes as large
    /// as they are. It need never be larger than they are. The cross-sections are those that the code prints; the strict
    /// comparison may turn on two circular mils.
    pub struct NecEquipmentGround = "nec-equipment-ground" in Power {
        /// Rating of the breaker or fuse.
        breaker ("In"): Current,
        /// Least size of the circuit conductors, before anything but ampacity counts.
        needed ("Amin"): ConductorSize,
        /// Size of the circuit conductors as they are laid.
        laid ("A"): ConductorSize,
    }
    gives
    /// Size of the equipment ground.
    pub struct EquipmentGround {
        /// Size by the table.
        by_table ("–"): ConductorSize,
        /// How far the circuit conductors have grown.
        growth ("A/Amin"): Ratio,
        /// Cross-section that the ground must have.
        area ("Ag"): Area,
        /// Next gauge that has it, and no larger than the circuit conductors.
        size ("–"): ConductorSize,
    }
    formula "Ag = Atable · A / Amin, not below Atable\nsize: the next gauge with at least Ag, but not above A\nAtable: table 250.122"
    valid "Copper, breakers up to 600 A, sizes up to 4/0 AWG."
    source { work: "NFPA 70 (NEC)", clause: "250.122(A), (B) and its table", evidence: Seen, seen: "code-change newsletter, letter 2080 (host withheld: a personal name is in it); www.mepanet.com/287/proportionately-increase-equipment-grounding-conductor" }
    by nec_equipment_ground
}

static SIZES: Stored = Stored::new(|| Table::read(include_str!("nec_250_122.toml")));
static AREAS: Stored = Stored::new(|| Table::read(include_str!("nec_table_8_area.toml")));

/// A circular mil in square meters.
const CIRCULAR_MIL: f64 = std::f64::consts::FRAC_PI_4 * 0.0254 * 0.0254 * 1e-6;

fn nec_equipment_ground(circuit: &NecEquipmentGround) -> Result<EquipmentGround, OutOfReach> {
    positive("breaker", circuit.breaker, "20 A")?;
    let (needed, laid) = (mils(circuit.needed)?, mils(circuit.laid)?);
    if needed <= 0.0 || laid <= 0.0 {
        return Err(OutOfReach::new(
            "needed",
            "a conductor has some metal; give a size such as 12 AWG",
        ));
    }
    let table = by_table(circuit.breaker)?;
    let growth = laid / needed;
    let area = mils(table)? * growth.max(1.0);
    Ok(EquipmentGround {
        by_table: table,
        growth: Ratio::from_base(growth),
        area: Area::from_base(area * CIRCULAR_MIL),
        size: if area >= laid {
            circuit.laid
        } else {
            next_gauge(area)?
        },
    })
}

/// Cross-section in circular mils, as printed where it is printed.
fn mils(size: ConductorSize) -> Result<f64, OutOfReach> {
    let printed = match size {
        ConductorSize::Gauge(gauge) => areas()?
            .into_iter()
            .find(|(known, _)| *known == gauge)
            .map(|(_, mils)| mils),
        ConductorSize::Metric(_) => None,
    };
    Ok(printed.unwrap_or_else(|| metal_area(size).base() / CIRCULAR_MIL))
}

/// Printed gauges with their circular mils, the thinnest first.
fn areas() -> Result<Vec<(Awg, f64)>, OutOfReach> {
    let table = Table::of(&AREAS)?;
    let gauges = table.column("awg").filter_map(gauge);
    Ok(gauges.zip(table.numbers("circular_mils")).collect())
}

/// The gauge of a cell.
fn gauge(cell: &Cell) -> Option<Awg> {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "gauges of the table are small whole numbers"
    )]
    Awg::new(cell.number()? as i8)
}

fn by_table(breaker: Current) -> Result<ConductorSize, OutOfReach> {
    let table = Table::of(&SIZES)?;
    table
        .numbers("up_to")
        .into_iter()
        .zip(table.column("awg").filter_map(gauge))
        .find(|(up_to, _)| breaker.base() <= up_to + 1e-6)
        .map(|(_, gauge)| ConductorSize::Gauge(gauge))
        .ok_or_else(|| OutOfReach::new("breaker", "the table is known here up to 600 A"))
}

/// The thinnest gauge with at least so many circular mils.
fn next_gauge(mils: f64) -> Result<ConductorSize, OutOfReach> {
    let printed = areas()?.into_iter().find(|(_, area)| *area >= mils);
    let larger = || {
        [0, -1, -2, -3]
            .into_iter()
            .filter_map(Awg::new)
            .map(|gauge| {
                let area = metal_area(ConductorSize::Gauge(gauge)).base();
                (gauge, area / CIRCULAR_MIL)
            })
            .find(|(_, area)| *area >= mils)
    };
    printed
        .or_else(larger)
        .map(|(gauge, _)| ConductorSize::Gauge(gauge))
        .ok_or_else(|| OutOfReach::new("laid", "the ground would be larger than 4/0 AWG"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn gauge_of(number: i8) -> ConductorSize {
        ConductorSize::Gauge(Awg::new(number).unwrap())
    }

    fn ground(breaker: f64, needed: i8, laid: i8) -> EquipmentGround {
        NecEquipmentGround {
            breaker: Current::from_base(breaker),
            needed: gauge_of(needed),
            laid: gauge_of(laid),
        }
        .evaluate()
        .unwrap()
    }

    #[test]
    fn the_printed_areas_are_those_of_the_gauge() {
        for (gauge, mils) in areas().unwrap() {
            let area = metal_area(ConductorSize::Gauge(gauge)).base() / CIRCULAR_MIL;
            assert!((area / mils - 1.0).abs() < 1e-3, "{gauge}: {area}");
        }
    }

    #[test]
    fn one_to_one_on_small_circuits() {
        for (breaker, needed) in [(15.0, 14), (20.0, 12), (30.0, 10)] {
            assert_eq!(ground(breaker, needed, 6).size, gauge_of(6));
        }
    }

    #[test]
    fn a_circuit_that_has_not_grown_goes_by_the_table() {
        assert_eq!(ground(50.0, 8, 8).size, gauge_of(10));
        assert_eq!(
            ground(20.0, 10, 12).size,
            gauge_of(12),
            "never below the table"
        );
    }

    proptest! {
        #[test]
        fn a_larger_run_never_has_a_thinner_ground(breaker in 15.0..60.0, laid in 1i8..10) {
            let thick = metal_area(ground(breaker, 12, laid).size).base();
            let thin = metal_area(ground(breaker, 12, laid + 1).size).base();
            prop_assert!(thick >= thin - 1e-12);
        }
    }

    #[test]
    fn nothing_and_too_much_are_refused() {
        let asked = |breaker, laid| NecEquipmentGround {
            breaker: Current::from_base(breaker),
            needed: gauge_of(12),
            laid,
        };
        let thin = ConductorSize::Metric(Area::from_base(0.0));
        assert_eq!(
            asked(0.0, gauge_of(12)).evaluate().unwrap_err().input,
            "breaker"
        );
        assert_eq!(
            asked(900.0, gauge_of(12)).evaluate().unwrap_err().input,
            "breaker"
        );
        assert_eq!(asked(20.0, thin).evaluate().unwrap_err().input, "needed");
    }
}
