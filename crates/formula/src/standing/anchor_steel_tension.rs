//! Strength of an anchor's steel in tension.

use super::concrete::{INCH, PSI, within};
use crate::OutOfReach;
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength of the steel of one threaded anchor in tension, by ACI 318-19.
    ///
    /// The area is that of the thread. The tensile strength that counts is limited by the yield strength, so that the
    /// anchor does not run away in use.
    pub struct AnchorSteelTension = "anchor-steel-tension" in Standing {
        /// Nominal diameter of the rod.
        diameter ("da"): Length,
        /// Pitch of the thread: for ten threads to an inch, 0.1 in.
        pitch ("p"): Length,
        /// Tensile strength of the steel.
        tensile_strength ("futa"): Pressure,
        /// Yield strength of the steel.
        yield_strength ("fya"): Pressure,
        /// Strength reduction factor: 0.75 for ductile steel, 0.65 for brittle.
        reduction ("φ"): Ratio,
    }
    gives
    /// Strength of one anchor's steel.
    pub struct AnchorSteel {
        /// Effective area of the thread.
        area ("Ase,N"): Area,
        /// Tensile strength that counts.
        counted_strength ("futa′"): Pressure,
        /// Nominal strength.
        nominal ("Nsa"): Force,
        /// Design strength.
        design ("φNsa"): Force,
    }
    formula "Ase,N = π/4 · (da − 0.9743 · p)²\nfuta′ = min(futa, 1.9 · fya, 125,000 psi)\nNsa = Ase,N · futa′"
    valid "Threaded rods and bolts with unified or metric threads."
    source { work: "ACI 318-19", clause: "17.6.1 (equation 17.6.1.2, R17.6.1.2); 17.5.3 for φ", evidence: Seen, seen: "AISC Design Guide 1 values in a public test file; a Spanish summary of ACI 318 chapter 17 in a public source text (area and limits)" }
    by steel
}

/// Share of the pitch that the thread takes off the diameter.
const THREAD: f64 = 0.9743;

fn steel(rod: &AnchorSteelTension) -> Result<AnchorSteel, OutOfReach> {
    check(rod)?;
    let core = rod.diameter - THREAD * rod.pitch;
    let area = Area::from_base(std::f64::consts::FRAC_PI_4 * core.base().powi(2));
    let counted_strength = Pressure::from_base(
        rod.tensile_strength
            .base()
            .min(1.9 * rod.yield_strength.base())
            .min(125_000.0 * PSI),
    );
    let nominal: Force = area * counted_strength;
    Ok(AnchorSteel {
        area,
        counted_strength,
        nominal,
        design: nominal * rod.reduction,
    })
}

fn check(rod: &AnchorSteelTension) -> Result<(), OutOfReach> {
    if !(rod.diameter.base() > 0.0 && rod.diameter.base() <= 4.0 * INCH) {
        return Err(OutOfReach::new(
            "diameter",
            "give the rod's diameter, up to 4 in, such as 3/4 in",
        ));
    }
    if !(rod.pitch.base() > 0.0 && rod.pitch.base() < 0.4 * rod.diameter.base()) {
        return Err(OutOfReach::new(
            "pitch",
            "give the distance from thread to thread, such as 0.1 in for ten threads to an inch",
        ));
    }
    let strengths = [
        ("tensile_strength", rod.tensile_strength, "58 ksi"),
        ("yield_strength", rod.yield_strength, "36 ksi"),
    ];
    for (name, strength, example) in strengths {
        if strength.base() <= 0.0 {
            return Err(OutOfReach::new(
                name,
                format!("give the steel's strength, such as {example}"),
            ));
        }
    }
    within(
        "reduction",
        rod.reduction,
        0.3,
        1.0,
        "give the strength reduction factor, such as 0.75, or 1 for the nominal strength",
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn rod(diameter: f64, tensile: f64) -> AnchorSteelTension {
        AnchorSteelTension {
            diameter: Length::from_base(diameter),
            pitch: Length::from_base(0.002),
            tensile_strength: Pressure::from_base(tensile),
            yield_strength: Pressure::from_base(250e6),
            reduction: Ratio::from_base(0.75),
        }
    }

    proptest! {
        #[test]
        fn thicker_holds_more(diameter in 0.006..0.09) {
            let (thin, thick) = (rod(diameter, 400e6), rod(diameter + 0.001, 400e6));
            prop_assert!(thin.evaluate().unwrap().nominal < thick.evaluate().unwrap().nominal);
        }

        #[test]
        fn stronger_steel_counts_up_to_the_limit(tensile in 100e6..2000e6) {
            let steel = rod(0.02, tensile).evaluate().unwrap();
            prop_assert!(steel.counted_strength.base() <= 1.9 * 250e6 + 1.0);
        }
    }
}
