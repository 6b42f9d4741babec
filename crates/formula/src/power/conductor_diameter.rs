//! Diameter and cross-section of a bare solid conductor.

use crate::OutOfReach;
use quantity::{Area, Awg, ConductorSize, Length, Quantity as _};

formula! {
    /// Diameter and cross-section of a bare, solid, round conductor of an American Wire Gauge size.
    ///
    /// Every step of the gauge has the same ratio: 39 steps lead from 0.4600 in (4/0) to 0.0050 in (36), and three steps
    /// halve the cross-section within half a percent. A stranded conductor of the same size has the same metal and is
    /// thicker; its diameter stands in the cable's data sheet.
    pub struct ConductorDiameter = "conductor-diameter" in Power {
        /// Size of the conductor, an American Wire Gauge number.
        size ("n"): ConductorSize,
    }
    gives
    /// The bare metal of a solid conductor.
    pub struct BareConductor {
        /// Diameter over the bare metal.
        diameter ("d"): Length,
        /// Cross-section of the metal.
        area ("A"): Area,
    }
    formula "d = 0.005 in · 92^((36 − n) / 39)\nA = π / 4 · d²\nn: the gauge number; 1/0 is 0, 2/0 is −1, 3/0 is −2, 4/0 is −3"
    valid "Gauges from 4/0 to 40, solid and bare."
    source { work: "ASTM B258-02", clause: "definition of the gauge", evidence: Seen, seen: "retelling of the definition: www.liquisearch.com/american_wire_gauge/formula" }
    by conductor_diameter
}

/// Diameter of gauge 36, in meters.
const GAUGE_36: f64 = 0.005 * 0.0254;

/// Diameter over the bare metal of a solid conductor of a gauge.
pub fn solid_diameter(gauge: Awg) -> Length {
    let steps = f64::from(36 - i16::from(gauge.number()));
    Length::from_base(GAUGE_36 * 92f64.powf(steps / 39.0))
}

/// Cross-section of the metal of a conductor: by the gauge, or the nominal one.
pub fn metal_area(size: ConductorSize) -> Area {
    match size {
        ConductorSize::Gauge(gauge) => {
            let diameter = solid_diameter(gauge);
            std::f64::consts::FRAC_PI_4 * diameter * diameter
        }
        ConductorSize::Metric(area) => area,
    }
}

fn conductor_diameter(conductor: &ConductorDiameter) -> Result<BareConductor, OutOfReach> {
    let ConductorSize::Gauge(gauge) = conductor.size else {
        return Err(OutOfReach::new(
            "size",
            "a metric size is nominal and has no exact diameter; give a gauge such as 18 AWG",
        ));
    };
    Ok(BareConductor {
        diameter: solid_diameter(gauge),
        area: metal_area(conductor.size),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn a_larger_number_is_a_thinner_wire() {
        for number in -3..40 {
            let (thick, thin) = (Awg::new(number).unwrap(), Awg::new(number + 1).unwrap());
            assert!(solid_diameter(thick) > solid_diameter(thin));
        }
    }

    #[test]
    fn a_metric_size_is_refused() {
        let size = ConductorSize::Metric(Area::from_base(1.5e-6));
        assert_eq!(
            ConductorDiameter { size }.evaluate().unwrap_err().input,
            "size"
        );
    }
}
