//! Largest loop impedance at which a miniature breaker cuts off at once.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Current, Quantity as _, Ratio, Resistance, Voltage};

quantity::words! {
    /// Curve of a miniature breaker (IEC 60898).
    pub enum BreakerCurve {
        /// Trips at once from five times its rating.
        B = "B",
        /// Trips at once from ten times its rating.
        C = "C",
        /// Trips at once from twenty times its rating.
        D = "D",
    }
}

formula! {
    /// Current at which a miniature breaker surely trips at once, and the loop impedance that still lets it flow.
    ///
    /// At once is a tenth of a second: within every cut-off time. A loop measured cold may be no more than 80 % of the
    /// limit, because warm conductors have a fifth more resistance.
    pub struct BreakerLoopLimit = "breaker-loop-limit" in Power {
        /// Curve of the breaker.
        curve ("–"): BreakerCurve,
        /// Its rating.
        rating ("In"): Current,
        /// Voltage from line to earth.
        voltage ("U0"): Voltage,
        /// Lowest voltage of the source over the nominal one: 95 % in Europe.
        low ("cmin"): Ratio,
    }
    gives
    /// What a breaker asks of its loop.
    pub struct LoopLimit {
        /// Current at which it surely trips at once.
        trip_current ("Ia"): Current,
        /// Largest impedance of the loop, conductors warm.
        largest ("Zs"): Resistance,
        /// Largest impedance measured with cold conductors.
        measured ("0.8 · Zs"): Resistance,
    }
    formula "Ia = 5 · In (B), 10 · In (C), 20 · In (D)\nZs = cmin · U0 / Ia"
    valid "Miniature breakers to IEC 60898 of curve B, C or D, alternating current."
    source { work: "BS 7671 (IEC 60364-4-41)", clause: "411.4.5 and table 41.3; IEC 60898-1 table 7", evidence: Seen, seen: "table of limits: sparkyhub.co.uk/references/max-zs-tables; multiples: ecalpro.com/docs/earth-fault-loop-impedance-bs7671" }
    by breaker_loop_limit
}

fn breaker_loop_limit(breaker: &BreakerLoopLimit) -> Result<LoopLimit, OutOfReach> {
    positive("rating", breaker.rating, "10 A")?;
    positive("voltage", breaker.voltage, "230 V")?;
    if breaker.low.base() <= 0.0 || breaker.low.base() > 1.0 {
        return Err(OutOfReach::new(
            "low",
            "this is a share of the nominal voltage, such as 95 %",
        ));
    }
    let multiple = match breaker.curve {
        BreakerCurve::B => 5.0,
        BreakerCurve::C => 10.0,
        BreakerCurve::D => 20.0,
    };
    let trip_current = breaker.rating * multiple;
    let largest: Resistance = breaker.voltage * breaker.low / trip_current;
    Ok(LoopLimit {
        trip_current,
        largest,
        measured: largest * 0.8,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn limit(curve: BreakerCurve, amperes: f64) -> Result<LoopLimit, OutOfReach> {
        BreakerLoopLimit {
            curve,
            rating: Current::from_base(amperes),
            voltage: Voltage::from_base(230.0),
            low: Ratio::from_base(0.95),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn each_slower_curve_halves_the_limit(amperes in 1.0..125.0) {
            let [b, c, d] = [BreakerCurve::B, BreakerCurve::C, BreakerCurve::D]
                .map(|curve| limit(curve, amperes).unwrap().largest.base());
            prop_assert!((b / c - 2.0).abs() < 1e-9 && (c / d - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_rating_is_refused() {
        assert_eq!(limit(BreakerCurve::B, 0.0).unwrap_err().input, "rating");
    }
}
