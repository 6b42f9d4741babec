//! Cross-section of like conductors under one clamp.

use crate::OutOfReach;
use crate::power::metal_area;
use quantity::{Area, ConductorSize, Quantity as _};

formula! {
    /// Cross-section of the metal of like conductors that lie under one clamp.
    ///
    /// A clamp is rated for a range of cross-sections and, unless its papers say otherwise, for one conductor. Where it
    /// may take several, all together have to stay inside the range. A ferrule takes room besides: its maker or that of
    /// the terminal says which sizes still go in.
    pub struct ConductorsTogether = "conductors-together" in Ways {
        /// Size of each conductor.
        size ("S"): ConductorSize,
        /// How many lie under the clamp.
        count ("n"): u32,
    }
    gives
    /// Cross-section of conductors.
    pub struct Together {
        /// Cross-section of one.
        one ("A₁"): Area,
        /// Cross-section of all.
        all ("A"): Area,
    }
    formula "gauge: A₁ = π/4 · (0.005 in · 92^((36 − S) / 39))²\nmetric: A₁ = S\nA = n · A₁"
    valid "Bare metal of solid or stranded conductors; insulation and ferrules are not in it."
    source { work: "ASTM B258-02", clause: "definition of the gauge", evidence: Seen, seen: "retelling of the definition: www.liquisearch.com/american_wire_gauge/formula" }
    by conductors_together
}

fn conductors_together(conductors: &ConductorsTogether) -> Result<Together, OutOfReach> {
    let one = metal_area(conductors.size);
    if one.base() <= 0.0 {
        return Err(OutOfReach::new("size", "a conductor has a cross-section"));
    }
    Ok(Together {
        one,
        all: one * f64::from(conductors.count),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Awg;

    fn all(size: ConductorSize, count: u32) -> f64 {
        let conductors = ConductorsTogether { size, count };
        conductors.evaluate().unwrap().all.base()
    }

    proptest! {
        #[test]
        fn twice_as_many_have_twice_the_metal(number in -3i8..=40, count in 0u32..50) {
            let size = ConductorSize::Gauge(Awg::new(number).unwrap());
            let (once, twice) = (all(size, count), all(size, 2 * count));
            prop_assert!((twice - 2.0 * once).abs() <= 1e-12 * twice.max(1e-12));
        }

        #[test]
        fn a_smaller_number_is_thicker(number in -3i8..40) {
            let size = |number| ConductorSize::Gauge(Awg::new(number).unwrap());
            prop_assert!(all(size(number), 1) > all(size(number + 1), 1));
        }
    }

    #[test]
    fn nothing_is_no_conductor() {
        let nothing = ConductorsTogether {
            size: ConductorSize::Metric(Area::from_base(0.0)),
            count: 1,
        };
        assert_eq!(nothing.evaluate().unwrap_err().input, "size");
    }
}
