//! Anchors that stand free of the concrete and bend when they are shoved.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque};

quantity::words! {
    /// How the upper end of an anchor that stands free is held.
    pub enum FreeEnd {
        /// The plate turns with the anchors: a post without anything that keeps the plate level.
        Turns = "turns",
        /// Nuts below and above a stiff plate on several anchors keep it from turning.
        Held = "held",
    }
}

formula! {
    /// Greatest shove on an anchor that stands free of the concrete, on leveling nuts without grout.
    ///
    /// The anchor bends between plate and concrete as a beam of its thread's core. It may bend until its steel begins to
    /// yield, and what the pull takes of the steel is lost for bending. The lever begins half a diameter below the
    /// surface, where the concrete spalls. Grout under the plate ends the bending, and is the better choice.
    pub struct AnchorStandOff = "anchor-stand-off" in Standing {
        /// Diameter of the rod over the threads.
        diameter ("da"): Length,
        /// Distance from thread to thread.
        pitch ("p"): Length,
        /// Yield strength of the steel.
        yield_strength ("fya"): Pressure,
        /// Distance from the concrete to the middle of the plate.
        stand_off ("z"): Length,
        /// How the upper end is held.
        end ("–"): FreeEnd,
        /// Pull on the anchor, or press on it where that is more.
        pull ("N"): Force,
        /// Strength reduction factor: 0.9 where the load is factored.
        reduction ("φ"): Ratio,
    }
    gives
    /// What an anchor that stands free takes.
    pub struct StandOffStrength {
        /// Area of the core.
        area ("A"): Area,
        /// Lever of the shove.
        lever ("l"): Length,
        /// Stress that the pull causes.
        pull_stress ("σN"): Pressure,
        /// Moment that the rest of the steel takes.
        moment ("MR"): Torque,
        /// Greatest shove on the anchor; 0 where the pull takes all the steel.
        shove ("VR"): Force,
    }
    formula "d = da − 0.9743 · p, A = π/4 · d², W = π/32 · d³\nl = z + da / 2\nσN = N / A\nMR = W · (φ · fya − σN), not below 0\nVR = MR / l where the end turns, 2 · MR / l where it is held"
    valid "Threaded rods up to 4 in thick that stand free up to 8 diameters; a longer one may buckle."
    source { work: "bending of a beam with a pull in it", clause: "the lever from EN 1992-4:2018 6.2.2.3", evidence: Physics, seen: "statics; the half diameter recalled, it only makes the lever longer" }
    by stand_off
}

fn stand_off(rod: &AnchorStandOff) -> Result<StandOffStrength, OutOfReach> {
    check(rod)?;
    let core = rod.diameter.base() - 0.9743 * rod.pitch.base();
    let area = std::f64::consts::FRAC_PI_4 * core.powi(2);
    let modulus = std::f64::consts::PI / 32.0 * core.powi(3);
    let lever = rod.stand_off.base() + rod.diameter.base() / 2.0;
    let pull_stress = rod.pull.base() / area;
    let left = rod.reduction.base() * rod.yield_strength.base() - pull_stress;
    let moment = modulus * left.max(0.0);
    let ends = match rod.end {
        FreeEnd::Turns => 1.0,
        FreeEnd::Held => 2.0,
    };
    Ok(StandOffStrength {
        area: Area::from_base(area),
        lever: Length::from_base(lever),
        pull_stress: Pressure::from_base(pull_stress),
        moment: Torque::from_base(moment),
        shove: Force::from_base(ends * moment / lever),
    })
}

fn check(rod: &AnchorStandOff) -> Result<(), OutOfReach> {
    positive("diameter", rod.diameter, "3/4 in")?;
    if rod.diameter.base() > 4.0 * super::concrete::INCH {
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
    positive("yield_strength", rod.yield_strength, "36 ksi")?;
    not_negative("stand_off", rod.stand_off, "1 1/2 in")?;
    if rod.stand_off.base() > 8.0 * rod.diameter.base() {
        return Err(OutOfReach::new(
            "stand_off",
            "the anchors stand free by more than eight diameters and may buckle; grout the plate or lower it",
        ));
    }
    not_negative("pull", rod.pull, "1,000 lbf")?;
    within(
        "reduction",
        rod.reduction,
        0.3,
        1.0,
        "give the strength reduction factor, such as 0.9, or 1 for the nominal strength",
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn rod(stand_off: f64, pull: f64, end: FreeEnd) -> AnchorStandOff {
        AnchorStandOff {
            diameter: Length::from_base(0.02),
            pitch: Length::from_base(0.0025),
            yield_strength: Pressure::from_base(240e6),
            stand_off: Length::from_base(stand_off),
            end,
            pull: Force::from_base(pull),
            reduction: Ratio::from_base(0.9),
        }
    }

    proptest! {
        #[test]
        fn longer_or_pulled_harder_it_takes_less(stand_off in 0.0..0.15, pull in 0.0..6e4) {
            let shove = |stand_off, pull, end| rod(stand_off, pull, end).evaluate().unwrap().shove.base();
            let base = shove(stand_off, pull, FreeEnd::Held);
            prop_assert!(shove(stand_off + 0.005, pull, FreeEnd::Held) <= base);
            prop_assert!(shove(stand_off, pull + 100.0, FreeEnd::Held) <= base);
            prop_assert!((2.0 * shove(stand_off, pull, FreeEnd::Turns) - base).abs() < 1e-9);
        }
    }

    #[test]
    fn a_pull_beyond_yield_leaves_nothing() {
        let found = rod(0.05, 1e5, FreeEnd::Turns).evaluate().unwrap();
        assert!(found.shove.base().abs() < 1e-12);
    }

    #[test]
    fn a_long_free_length_is_refused() {
        assert!(rod(0.2, 0.0, FreeEnd::Held).evaluate().is_err());
    }
}
