//! Mean of three force readings at one point.

use super::limit::is_at_most;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Quantity as _, Ratio};

quantity::words! {
    /// How the mean of three readings stands to its limit.
    pub enum MeanVerdict {
        /// The mean keeps the limit even where the meter reads too low.
        Kept = "kept",
        /// The mean keeps the limit, but not where the meter reads too low.
        WithinTolerance = "kept, but within the meter's tolerance",
        /// The mean does not keep the limit.
        Broken = "not kept",
    }
}

formula! {
    /// Mean of three force readings at one point, which is what EN 12453 judges, with the meter's tolerance.
    ///
    /// The standard compares the mean with the limit. A mean that lies so near the limit that the meter's own
    /// tolerance could carry it over is no safe margin: lower the force and measure again. Readings that differ much
    /// tell of a sensor that does not react the same way each time.
    pub struct ForceMeasurementMean = "force-measurement-mean" in Protection {
        /// First reading.
        first ("F1"): Force,
        /// Second reading.
        second ("F2"): Force,
        /// Third reading.
        third ("F3"): Force,
        /// Tolerance of the meter, as a share of the reading.
        tolerance ("p"): Ratio,
        /// Greatest force allowed at the point.
        limit ("Fd"): Force,
    }
    gives
    /// Mean of three readings and how it stands to the limit.
    pub struct MeanForce {
        /// Mean of the readings.
        mean ("Fm"): Force,
        /// Difference between the highest and the lowest reading.
        spread ("ΔF"): Force,
        /// Highest true force that the mean could stand for.
        upper ("Fu"): Force,
        /// Force to spare at the mean; below zero where it is too high.
        spare ("Fd − Fm"): Force,
        /// How the mean stands to the limit.
        verdict ("–"): MeanVerdict,
    }
    formula "Fm = (F1 + F2 + F3) / 3\nFu = (1 + p) · Fm\nkept: Fm ≤ Fd"
    valid "Three readings of the same thing at the same point, gap and height; tolerance up to 20 %."
    source { work: "EN 12445:2000 and DIN EN 12453, measuring points", clause: "", evidence: Seen, seen: "a force meter's manual that reprints the clause, and installers' pages (addresses withheld); the standard itself was not at hand" }
    by mean_force
}

fn mean_force(readings: &ForceMeasurementMean) -> Result<MeanForce, OutOfReach> {
    not_negative("first", readings.first, "310 N")?;
    not_negative("second", readings.second, "310 N")?;
    not_negative("third", readings.third, "310 N")?;
    positive("limit", readings.limit, "400 N")?;
    let tolerance = readings.tolerance.base();
    if !(0.0..=0.2).contains(&tolerance) {
        return Err(OutOfReach::new(
            "tolerance",
            "give the meter's tolerance from its certificate, from 0 to 20 %, such as 5 %",
        ));
    }
    let all = [readings.first, readings.second, readings.third].map(Force::base);
    let mean = Force::from_base(all.iter().sum::<f64>() / 3.0);
    let highest = all.iter().copied().fold(0.0, f64::max);
    let lowest = all.iter().copied().fold(highest, f64::min);
    let upper = Force::from_base(mean.base() * (1.0 + tolerance));
    let verdict = if !is_at_most(mean, readings.limit) {
        MeanVerdict::Broken
    } else if is_at_most(upper, readings.limit) {
        MeanVerdict::Kept
    } else {
        MeanVerdict::WithinTolerance
    };
    Ok(MeanForce {
        mean,
        spread: Force::from_base(highest - lowest),
        upper,
        spare: readings.limit - mean,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn readings(first: f64, second: f64, third: f64, tolerance: f64) -> ForceMeasurementMean {
        ForceMeasurementMean {
            first: Force::from_base(first),
            second: Force::from_base(second),
            third: Force::from_base(third),
            tolerance: Ratio::from_base(tolerance),
            limit: Force::from_base(400.0),
        }
    }

    proptest! {
        #[test]
        fn the_order_of_the_readings_does_not_matter(
            first in 0.0..800.0, second in 0.0..800.0, third in 0.0..800.0, tolerance in 0.0..0.2
        ) {
            let one = readings(first, second, third, tolerance).evaluate().unwrap();
            let other = readings(third, first, second, tolerance).evaluate().unwrap();
            prop_assert!((one.mean - other.mean).base().abs() < 1e-9);
            prop_assert_eq!(one.spread, other.spread);
            prop_assert!(one.upper >= one.mean && one.spread.base() >= 0.0);
        }
    }

    #[test]
    fn a_coarse_meter_is_refused() {
        let meter = readings(300.0, 300.0, 300.0, 0.3);
        assert_eq!(meter.evaluate().unwrap_err().input, "tolerance");
    }
}
