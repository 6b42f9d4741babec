//! Steel of a fastener in tension and shear by EN 1992-4.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Force, Pressure, Quantity as _, Ratio};

formula! {
    /// Design resistance of a fastener's steel in tension and in shear without lever arm, by EN 1992-4.
    ///
    /// A rod with threads cut on site counts for 0.85 in tension. On leveling nuts or a thick bed of mortar the fastener
    /// bends, and this shear resistance does not hold. The national annex and the product's assessment prevail.
    pub struct En1992Steel = "en1992-steel" in Standing {
        /// Stressed area of the thread.
        area ("As"): Area,
        /// Ultimate strength of the steel.
        ultimate_strength ("fuk"): Pressure,
        /// Yield strength of the steel.
        yield_strength ("fyk"): Pressure,
        /// Factor for the thread: 1, or 0.85 where it was cut on site.
        thread_factor ("c"): Ratio,
    }
    gives
    /// Resistance of a fastener's steel.
    pub struct FastenerSteel {
        /// Partial factor in tension.
        tension_partial ("γMs,N"): Ratio,
        /// Design resistance in tension.
        tension ("NRd,s"): Force,
        /// Share of the ultimate strength in shear.
        shear_share ("k6"): Ratio,
        /// Partial factor in shear.
        shear_partial ("γMs,V"): Ratio,
        /// Design resistance in shear.
        shear ("VRd,s"): Force,
    }
    formula "γMs,N = 1.2 · fuk / fyk, not below 1.4\nNRd,s = c · As · fuk / γMs,N\nk6 = 0.6 where fuk ≤ 500 MPa, otherwise 0.5\nγMs,V = fuk / fyk, not below 1.25, where fuk ≤ 800 MPa and fyk / fuk ≤ 0.8; otherwise 1.5\nVRd,s = k6 · As · fuk / γMs,V"
    valid "Carbon steel up to 1,000 MPa; one fastener, or a group without play in its holes; shear without lever arm."
    source { work: "EN 1992-4:2018", clause: "table 4.1, 7.2.1.3, 7.2.2.3.1", evidence: Seen, seen: "two calculation reports with their formulas in tension and their results in both directions, M24 of grade 4.6" }
    by steel
}

/// One newton on each square millimeter, in pascals.
pub(super) const MPA: f64 = 1e6;

fn steel(fastener: &En1992Steel) -> Result<FastenerSteel, OutOfReach> {
    positive("area", fastener.area, "157 mm²")?;
    positive("yield_strength", fastener.yield_strength, "240 MPa")?;
    let (ultimate, first_yield) = (
        fastener.ultimate_strength.base() / MPA,
        fastener.yield_strength.base() / MPA,
    );
    if !(first_yield..=1_000.0).contains(&ultimate) {
        return Err(OutOfReach::new(
            "ultimate_strength",
            "give the ultimate strength, no less than the yield strength and up to 1,000 MPa, such as 400 MPa",
        ));
    }
    within(
        "thread_factor",
        fastener.thread_factor,
        0.5,
        1.0,
        "give 1, or 0.85 where the thread was cut on site",
    )?;
    let newtons = fastener.area.base() * fastener.ultimate_strength.base();
    let tension_partial = (1.2 * ultimate / first_yield).max(1.4);
    let shear_share = if ultimate <= 500.0 { 0.6 } else { 0.5 };
    let soft = ultimate <= 800.0 && first_yield <= 0.8 * ultimate * (1.0 + 1e-9);
    let shear_partial = if soft {
        (ultimate / first_yield).max(1.25)
    } else {
        1.5
    };
    Ok(FastenerSteel {
        tension_partial: Ratio::from_base(tension_partial),
        tension: Force::from_base(fastener.thread_factor.base() * newtons / tension_partial),
        shear_share: Ratio::from_base(shear_share),
        shear_partial: Ratio::from_base(shear_partial),
        shear: Force::from_base(shear_share * newtons / shear_partial),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        /// Steels with a yield strength of at least six tenths of the ultimate, as fasteners are made of.
        #[test]
        fn no_resistance_passes_the_yield(ultimate in 360.0..1000.0, share in 0.6..1.0) {
            let fastener = En1992Steel {
                area: Area::from_base(157e-6),
                ultimate_strength: Pressure::from_base(ultimate * MPA),
                yield_strength: Pressure::from_base(share * ultimate * MPA),
                thread_factor: Ratio::from_base(1.0),
            };
            let found = fastener.evaluate().unwrap();
            let at_yield = 157e-6 * share * ultimate * MPA;
            prop_assert!(found.tension.base() <= at_yield / 1.2 * (1.0 + 1e-9));
            prop_assert!(found.shear.base() <= 0.6 * at_yield * (1.0 + 1e-9));
        }
    }
}
