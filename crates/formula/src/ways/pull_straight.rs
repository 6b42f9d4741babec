//! Tension after a straight piece of conduit.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Length, MassPerLength, Quantity as _, Ratio};

/// Standard acceleration of free fall (m/s²), by definition (SI brochure).
const GRAVITY: f64 = 9.80665;

formula! {
    /// Tension after pulling a cable through a straight piece of conduit.
    ///
    /// Where the piece falls more steeply than friction holds, the cable runs by itself and the tension is zero, not below.
    pub struct PullStraight = "pull-straight" in Ways {
        /// Tension at the beginning of the piece.
        tension ("T₁"): Force,
        /// Length of the piece.
        length ("l"): Length,
        /// Mass of all cables for each unit of length.
        mass_per_length ("m′"): MassPerLength,
        /// Friction between cable and conduit.
        friction ("µ"): Ratio,
        /// Weight correction factor.
        weight_correction ("w"): Ratio,
        /// Rise in the direction of the pull for each unit of length, below zero when it falls.
        rise ("sin θ"): Ratio,
    }
    gives
    /// Tension after a straight piece.
    pub struct StraightPull {
        /// What friction adds.
        friction_part ("Tf"): Force,
        /// What the slope adds; below zero when the piece falls.
        slope_part ("Ts"): Force,
        /// Tension at the end of the piece.
        tension_after ("T₂"): Force,
    }
    formula "Tf = w · µ · m′ · g · l · cos θ\nTs = m′ · g · l · sin θ\nT₂ = T₁ + Tf + Ts, not below zero"
    valid "A straight piece between level and upright; cables that lie in the conduit and do not jam."
    source { work: "IEEE 1185, ICEA", clause: "pulling tension, straight section", evidence: Seen, seen: "a trunk-cable conduit construction manual, pages 68-71 (address withheld: a maker's name is in it)" }
    by pull_straight
}

fn pull_straight(piece: &PullStraight) -> Result<StraightPull, OutOfReach> {
    not_negative("tension", piece.tension, "5 lbf")?;
    not_negative("length", piece.length, "40 ft")?;
    not_negative("mass_per_length", piece.mass_per_length, "0.03 lb/ft")?;
    not_negative("friction", piece.friction, "0.35")?;
    positive("weight_correction", piece.weight_correction, "1")?;
    let sine = piece.rise.base();
    if sine.abs() > 1.0 {
        return Err(OutOfReach::new(
            "rise",
            "a piece cannot rise by more than its own length; write rise over length, such as 10 %",
        ));
    }
    let cosine = Ratio::from_base((1.0 - sine * sine).sqrt());
    let weight: Force = piece.mass_per_length * piece.length * Acceleration::from_base(GRAVITY);
    let friction_part: Force = weight * piece.weight_correction * piece.friction * cosine;
    let slope_part: Force = weight * piece.rise;
    let sum = piece.tension + friction_part + slope_part;
    Ok(StraightPull {
        friction_part,
        slope_part,
        tension_after: Force::from_base(sum.base().max(0.0)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn piece(tension: f64, length: f64, friction: f64, rise: f64) -> PullStraight {
        PullStraight {
            tension: Force::from_base(tension),
            length: Length::from_base(length),
            mass_per_length: MassPerLength::from_base(0.3),
            friction: Ratio::from_base(friction),
            weight_correction: Ratio::from_base(1.2),
            rise: Ratio::from_base(rise),
        }
    }

    proptest! {
        #[test]
        fn two_halves_pull_like_the_whole_when_level_or_climbing(
            tension in 0.0..500.0, length in 0.0..200.0, friction in 0.0..0.9, rise in 0.0..1.0
        ) {
            let whole = piece(tension, length, friction, rise).evaluate().unwrap().tension_after;
            let half = piece(tension, length / 2.0, friction, rise).evaluate().unwrap().tension_after;
            let halves = piece(half.base(), length / 2.0, friction, rise).evaluate().unwrap().tension_after;
            prop_assert!((whole.base() - halves.base()).abs() < 1e-9 * (1.0 + whole.base()));
        }

        #[test]
        fn longer_rougher_or_steeper_never_pulls_less(
            tension in 0.0..500.0, length in 0.0..200.0, friction in 0.0..0.9, rise in -0.5..0.5
        ) {
            let base = piece(tension, length, friction, rise).evaluate().unwrap().tension_after;
            let rougher = piece(tension, length, friction + 0.05, rise).evaluate().unwrap().tension_after;
            let tighter = piece(tension + 1.0, length, friction, rise).evaluate().unwrap().tension_after;
            prop_assert!(base <= rougher && base <= tighter && base.base() >= 0.0);
        }
    }
}
