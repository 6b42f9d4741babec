//! How much of its strength concrete has at an age, by its temperature.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio, Temperature, Time};

quantity::words! {
    /// How fast a cement hardens.
    pub enum CementSpeed {
        /// Rapid: class R.
        Rapid = "rapid",
        /// Normal: class N.
        Normal = "normal",
        /// Slow: class S.
        Slow = "slow",
    }
}

formula! {
    /// Share of its mean strength at 28 days that concrete has at an age, when it is kept at a steady temperature.
    ///
    /// Warmth counts as age: an hour at 10 °C does about as much as 37 minutes at 20 °C. For concrete that is kept moist and
    /// never freezes; slag and fly ash make a cement slower than the class on its bag.
    pub struct ConcreteStrengthShare = "concrete-strength-share" in Ways {
        /// Time since it was poured.
        age ("t"): Time,
        /// Mean temperature of the concrete since then.
        temperature ("T"): Temperature,
        /// How fast its cement hardens.
        cement ("s"): CementSpeed,
    }
    gives
    /// What concrete has of its strength.
    pub struct StrengthShare {
        /// Age at 20 °C that comes to the same.
        even_age ("t_T"): Time,
        /// Share of the mean strength at 28 days.
        share ("β"): Ratio,
    }
    formula "t_T = t · e^(13.65 − 4000 / (273 + T)), T in °C\nβ = e^(s · (1 − √(28 days / t_T)))\ns = 0.20 rapid, 0.25 normal, 0.38 slow"
    valid "Concrete from 0 °C to 80 °C that is kept moist."
    source { work: "EN 1992-1-1:2004", clause: "3.1.2(6), expression (3.2), and annex B, expression (B.10)", evidence: Seen, seen: "a note of a concrete society on cement classes, pages of a Eurocode guide on maturity from 0 °C to 80 °C, and the manual of a general finite element program on the CEB-FIP model code, which has 4000 K and 293 K" }
    by concrete_strength_share
}

/// Age of standard strength, in seconds.
pub(super) const STANDARD_AGE: f64 = 28.0 * 86_400.0;

/// Coefficient of the cement.
pub(super) fn speed(cement: CementSpeed) -> f64 {
    match cement {
        CementSpeed::Rapid => 0.20,
        CementSpeed::Normal => 0.25,
        CementSpeed::Slow => 0.38,
    }
}

/// Hours at 20 °C that one hour at this temperature does the work of.
pub(super) fn quickness(temperature: Temperature) -> Result<f64, OutOfReach> {
    let degrees = temperature.base() - 273.15;
    if !(-1e-9..=80.0 + 1e-9).contains(&degrees) {
        return Err(OutOfReach::new(
            "temperature",
            "concrete below freezing does not harden and takes lasting harm; give a temperature from 0 °C to 80 °C (32 °F to 176 °F)",
        ));
    }
    Ok((13.65 - 4000.0 / (273.0 + degrees)).exp())
}

fn concrete_strength_share(given: &ConcreteStrengthShare) -> Result<StrengthShare, OutOfReach> {
    positive("age", given.age, "7 days")?;
    let even_age = given.age * quickness(given.temperature)?;
    let waited = (STANDARD_AGE / even_age.base()).sqrt();
    Ok(StrengthShare {
        even_age,
        share: Ratio::from_base((speed(given.cement) * (1.0 - waited)).exp()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::celsius;

    fn at(days: f64, degrees: f64, cement: CementSpeed) -> f64 {
        let given = ConcreteStrengthShare {
            age: Time::from_base(days * 86_400.0),
            temperature: celsius(degrees),
            cement,
        };
        given.evaluate().unwrap().share.base()
    }

    proptest! {
        #[test]
        fn older_and_warmer_is_stronger(days in 0.2..60.0_f64, degrees in 0.0..79.0_f64) {
            let share = at(days, degrees, CementSpeed::Normal);
            prop_assert!(share > 0.0 && share < 0.25_f64.exp());
            prop_assert!(at(days * 1.1, degrees, CementSpeed::Normal) > share);
            prop_assert!(at(days, degrees + 1.0, CementSpeed::Normal) > share);
        }
    }

    #[test]
    fn frost_and_no_age_are_refused() {
        let given = ConcreteStrengthShare {
            age: Time::from_base(86_400.0),
            temperature: celsius(-1.0),
            cement: CementSpeed::Normal,
        };
        assert_eq!(given.evaluate().unwrap_err().input, "temperature");
        let none = ConcreteStrengthShare {
            age: Time::from_base(0.0),
            temperature: celsius(10.0),
            ..given
        };
        assert_eq!(none.evaluate().unwrap_err().input, "age");
    }
}
