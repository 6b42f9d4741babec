//! What a rectangular concrete section with bars near its pulled face holds in bending.

use super::concrete::PSI;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Length, Pressure, Quantity as _, Ratio, Torque};

formula! {
    /// Moment that a rectangular concrete section with bars near its pulled face holds, factored by ACI 318.
    ///
    /// The factor is 0.90 where the bars stretch well before the concrete crushes, and falls to 0.65 where they do not.
    /// Bars near the pressed face are not counted. The bars have to be covered, anchored and spread as the code says; a
    /// section needs a least area of them, which is not asked here.
    pub struct ConcreteSectionBending = "concrete-section-bending" in Standing {
        /// Width of the section.
        width ("b"): Length,
        /// Distance from the pressed face to the middle of the bars.
        effective_depth ("d"): Length,
        /// Area of the bars.
        bars ("As"): Area,
        /// Yield strength of the bars.
        bar_strength ("fy"): Pressure,
        /// Compressive strength of the concrete.
        concrete_strength ("f'c"): Pressure,
    }
    gives
    /// Bending strength of a concrete section.
    pub struct ConcreteBending {
        /// Depth of the block of pressed concrete.
        block ("a"): Length,
        /// Strain of the bars when the concrete crushes.
        strain ("εt"): Ratio,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
        /// Nominal moment.
        nominal ("Mn"): Torque,
        /// Moment that it may be counted on for.
        design ("φMn"): Torque,
    }
    formula "a = As · fy / (0.85 · f'c · b)\nβ1 = 0.85 − 0.05 · (f'c − 4,000 psi) / 1,000 psi, from 0.65 to 0.85\nεt = 0.003 · (d − a / β1) / (a / β1)\nφ = 0.65 + 0.25 · (εt − εy) / 0.003, from 0.65 to 0.90, with εy = fy / 29,000 ksi\nMn = As · fy · (d − a / 2)"
    valid "Rectangular sections, one layer of bars that yield, f'c from 2,500 psi and normal weight, fy up to 80 ksi."
    source { work: "ACI 318-19", clause: "22.2.2.4, 22.3 and table 21.2.2", evidence: Seen, seen: "two worked examples: documentation of a structural program after the notes of a cement association, and a beam worked step by step in a public repository" }
    by bent
}

/// Elasticity of the bars, 29,000 ksi, in pascals.
const STEEL: f64 = 29.0e6 * PSI;
/// Strain at which concrete crushes.
const CRUSHED: f64 = 0.003;

fn bent(section: &ConcreteSectionBending) -> Result<ConcreteBending, OutOfReach> {
    positive("width", section.width, "14 in")?;
    positive("effective_depth", section.effective_depth, "14 in")?;
    positive("bars", section.bars, "0.88 in²")?;
    bounded(
        "bar_strength",
        section.bar_strength,
        (30e3, 80e3),
        "give the yield strength of the bars, such as 60 ksi, from 30 to 80 ksi",
    )?;
    bounded(
        "concrete_strength",
        section.concrete_strength,
        (2.49e3, 15e3),
        "give the compressive strength of the concrete, such as 4,000 psi, from 2,500 to 15,000 psi",
    )?;
    let (width, depth) = (section.width.base(), section.effective_depth.base());
    let (pull, strength) = (
        section.bars.base() * section.bar_strength.base(),
        section.concrete_strength.base(),
    );
    let block = pull / (0.85 * strength * width);
    let neutral = block / block_share(strength);
    let strain = CRUSHED * (depth - neutral) / neutral;
    let yields = section.bar_strength.base() / STEEL;
    if strain < yields {
        return Err(OutOfReach::new(
            "bars",
            "so many bars do not yield before the concrete crushes; make the section deeper or take fewer bars",
        ));
    }
    let reduction = (0.65 + 0.25 * (strain - yields) / CRUSHED).clamp(0.65, 0.9);
    let nominal = pull * (depth - block / 2.0);
    Ok(ConcreteBending {
        block: Length::from_base(block),
        strain: Ratio::from_base(strain),
        reduction: Ratio::from_base(reduction),
        nominal: Torque::from_base(nominal),
        design: Torque::from_base(nominal * reduction),
    })
}

/// Depth of the block over the depth to the neutral line.
fn block_share(strength: f64) -> f64 {
    (0.85 - 0.05 * (strength / PSI - 4000.0) / 1000.0).clamp(0.65, 0.85)
}

fn bounded(
    input: &'static str,
    value: Pressure,
    (least, most): (f64, f64),
    why: &'static str,
) -> Result<(), OutOfReach> {
    if (least * PSI..=most * PSI * (1.0 + 1e-9)).contains(&value.base()) {
        Ok(())
    } else {
        Err(OutOfReach::new(input, why))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn section(bars: f64, depth: f64, strength: f64) -> ConcreteSectionBending {
        ConcreteSectionBending {
            width: Length::from_base(0.35),
            effective_depth: Length::from_base(depth),
            bars: Area::from_base(bars),
            bar_strength: Pressure::from_base(420e6),
            concrete_strength: Pressure::from_base(strength),
        }
    }

    proptest! {
        #[test]
        fn more_steel_depth_or_strength_holds_more(
            bars in 1e-4..6e-4, depth in 0.3..0.9, strength in 18e6..50e6
        ) {
            let base = section(bars, depth, strength).evaluate().unwrap();
            prop_assert!(section(bars * 1.1, depth, strength).evaluate().unwrap().nominal > base.nominal);
            prop_assert!(section(bars, depth * 1.1, strength).evaluate().unwrap().design > base.design);
            prop_assert!(section(bars, depth, strength * 1.1).evaluate().unwrap().design > base.design);
        }

        /// Bars pull as hard as the block presses.
        #[test]
        fn pull_and_press_are_equal(bars in 1e-4..2e-3, depth in 0.4..0.9) {
            let found = section(bars, depth, 28e6).evaluate().unwrap();
            let press = 0.85 * 28e6 * 0.35 * found.block.base();
            prop_assert!((press - bars * 420e6).abs() < 1e-6 * press);
        }
    }

    #[test]
    fn too_many_bars_are_refused() {
        assert_eq!(
            section(2e-2, 0.3, 20e6).evaluate().unwrap_err().input,
            "bars"
        );
    }
}
