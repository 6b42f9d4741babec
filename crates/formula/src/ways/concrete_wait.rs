//! How long concrete waits before it may be loaded.

use super::concrete_strength_share::{CementSpeed, STANDARD_AGE, quickness, speed};
use crate::OutOfReach;
use quantity::{Quantity as _, Ratio, Temperature, Time};

formula! {
    /// Time from the pour until concrete has a wanted share of its mean strength at 28 days.
    ///
    /// The formula of its strength at an age, solved for the age.
    pub struct ConcreteWait = "concrete-wait" in Ways {
        /// Share of the mean strength at 28 days that is wanted.
        wanted ("β"): Ratio,
        /// Mean temperature of the concrete meanwhile.
        temperature ("T"): Temperature,
        /// How fast its cement hardens.
        cement ("s"): CementSpeed,
    }
    gives
    /// How long it waits.
    pub struct ConcreteWaits {
        /// Age at 20 °C that it takes.
        even_age ("t_T"): Time,
        /// Time that it takes at this temperature.
        wait ("t"): Time,
    }
    formula "t_T = 28 days / (1 − ln β / s)²\nt = t_T / e^(13.65 − 4000 / (273 + T)), T in °C\ns = 0.20 rapid, 0.25 normal, 0.38 slow"
    valid "Concrete from 0 °C to 80 °C that is kept moist; shares up to the whole strength at 28 days."
    source { work: "EN 1992-1-1:2004", clause: "3.1.2(6), expression (3.2), and annex B, expression (B.10)", evidence: Seen, seen: "a note of a concrete society on cement classes, pages of a Eurocode guide on maturity from 0 °C to 80 °C, and the manual of a general finite element program on the CEB-FIP model code, which has 4000 K and 293 K" }
    by concrete_wait
}

fn concrete_wait(given: &ConcreteWait) -> Result<ConcreteWaits, OutOfReach> {
    let wanted = given.wanted.base();
    if !(0.01..=1.0).contains(&wanted) {
        return Err(OutOfReach::new(
            "wanted",
            "give a share from 1 % to 100 % of the strength at 28 days",
        ));
    }
    let root = 1.0 - wanted.ln() / speed(given.cement);
    let even_age = STANDARD_AGE / (root * root);
    Ok(ConcreteWaits {
        even_age: Time::from_base(even_age),
        wait: Time::from_base(even_age / quickness(given.temperature)?),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::ConcreteStrengthShare;
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::celsius;

    proptest! {
        #[test]
        fn after_the_wait_it_has_what_was_wanted(wanted in 0.05..1.0_f64, degrees in 0.0..80.0_f64) {
            for cement in [CementSpeed::Rapid, CementSpeed::Normal, CementSpeed::Slow] {
                let temperature = celsius(degrees);
                let given = ConcreteWait { wanted: Ratio::from_base(wanted), temperature, cement };
                let waits = given.evaluate().unwrap();
                let has = ConcreteStrengthShare { age: waits.wait, temperature, cement };
                let share = has.evaluate().unwrap().share.base();
                prop_assert!((share - wanted).abs() < 1e-9, "{} {}", share, wanted);
            }
        }
    }

    #[test]
    fn more_than_the_whole_is_refused() {
        let given = ConcreteWait {
            wanted: Ratio::from_base(1.2),
            temperature: celsius(10.0),
            cement: CementSpeed::Normal,
        };
        assert_eq!(given.evaluate().unwrap_err().input, "wanted");
        let frozen = ConcreteWait {
            wanted: Ratio::from_base(0.5),
            temperature: celsius(-5.0),
            ..given
        };
        assert_eq!(frozen.evaluate().unwrap_err().input, "temperature");
    }
}
