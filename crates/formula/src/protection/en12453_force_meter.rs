//! Whether a force meter is the one that EN 12453 asks for.

use super::limit::{is_at_least, is_at_most};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, ForcePerLength, Frequency, Length, Quantity as _, Ratio, Time};

quantity::words! {
    /// What is wrong with a force meter; the first thing.
    pub enum MeterVerdict {
        /// Nothing.
        Fits = "fits",
        /// The pads are of another size.
        Pad = "pads of another size",
        /// The spring is softer or stiffer.
        Spring = "spring too soft or too stiff",
        /// It does not read low or high enough.
        Range = "range too short",
        /// It samples too slowly and may miss the peak.
        Sampling = "samples too slowly",
        /// It is not exact enough.
        Tolerance = "not exact enough",
        /// Its calibration has run out.
        Calibration = "calibration run out",
    }
}

formula! {
    /// Whether a force meter meets the clause on the instrument: pads, spring, range, sampling, calibration.
    ///
    /// A meter with another spring shows another force for the same gate, because it takes up the leaf's energy over
    /// another distance.
    pub struct En12453ForceMeter = "en12453-force-meter" in Protection {
        /// Diameter of the pads.
        pad_diameter ("d"): Length,
        /// Spring rate.
        spring_rate ("k"): ForcePerLength,
        /// Lowest force that it reads.
        range_low ("Fmin"): Force,
        /// Highest force that it reads.
        range_high ("Fmax"): Force,
        /// Readings in each second.
        sample_rate ("f"): Frequency,
        /// Tolerance, as a share of the reading.
        tolerance ("p"): Ratio,
        /// Time since the last calibration.
        calibration_age ("t"): Time,
    }
    gives
    /// Whether a force meter fits.
    pub struct ForceMeter {
        /// Time left until the next calibration; below zero where it has run out.
        calibration_left ("1 a − t"): Time,
        /// The verdict, or the first thing that is wrong.
        verdict ("–"): MeterVerdict,
    }
    formula "d = 80 mm\nk = 500 N/mm ± 50 N/mm\nFmin ≤ 25 N,  Fmax ≥ 2000 N\nf ≥ 200 Hz\np ≤ 5 %,  t ≤ 1 year"
    valid "Meters for measuring contact forces of powered gates; pads within 1 mm of the diameter, which is our reading of it."
    source { work: "EN 12453 / EN 12445", clause: "5.1.1, as cited", evidence: Seen, seen: "a test-equipment page that quotes the clause (address withheld); the standard itself was not at hand" }
    by force_meter
}

/// One year in seconds.
const YEAR: f64 = 365.25 * 86_400.0;

fn force_meter(meter: &En12453ForceMeter) -> Result<ForceMeter, OutOfReach> {
    positive("pad_diameter", meter.pad_diameter, "80 mm")?;
    positive("spring_rate", meter.spring_rate, "500 N/mm")?;
    not_negative("range_low", meter.range_low, "25 N")?;
    positive("range_high", meter.range_high, "2000 N")?;
    positive("sample_rate", meter.sample_rate, "200 Hz")?;
    not_negative("tolerance", meter.tolerance, "5 %")?;
    not_negative("calibration_age", meter.calibration_age, "90 days")?;
    Ok(ForceMeter {
        calibration_left: Time::from_base(YEAR) - meter.calibration_age,
        verdict: first_fault(meter).unwrap_or(MeterVerdict::Fits),
    })
}

fn first_fault(meter: &En12453ForceMeter) -> Option<MeterVerdict> {
    let off = |value: f64, wanted: f64| (value - wanted).abs();
    let reads = is_at_most(meter.range_low, Force::from_base(25.0))
        && is_at_least(meter.range_high, Force::from_base(2000.0));
    [
        (
            off(meter.pad_diameter.base(), 0.08) <= 0.001 + 1e-9,
            MeterVerdict::Pad,
        ),
        (
            off(meter.spring_rate.base(), 5e5) <= 5e4 + 1e-3,
            MeterVerdict::Spring,
        ),
        (reads, MeterVerdict::Range),
        (
            is_at_least(meter.sample_rate, Frequency::from_base(200.0)),
            MeterVerdict::Sampling,
        ),
        (
            is_at_most(meter.tolerance, Ratio::from_base(0.05)),
            MeterVerdict::Tolerance,
        ),
        (
            is_at_most(meter.calibration_age, Time::from_base(YEAR)),
            MeterVerdict::Calibration,
        ),
    ]
    .into_iter()
    .find_map(|(right, fault)| (!right).then_some(fault))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn meter(rate: f64, age: f64) -> En12453ForceMeter {
        En12453ForceMeter {
            pad_diameter: Length::from_base(0.08),
            spring_rate: ForcePerLength::from_base(rate),
            range_low: Force::from_base(25.0),
            range_high: Force::from_base(2000.0),
            sample_rate: Frequency::from_base(200.0),
            tolerance: Ratio::from_base(0.05),
            calibration_age: Time::from_base(age),
        }
    }

    proptest! {
        #[test]
        fn only_springs_near_the_rate_fit(rate in 1e5..1e6) {
            let fits = meter(rate, 1e6).evaluate().unwrap().verdict == MeterVerdict::Fits;
            prop_assert_eq!(fits, (rate - 5e5).abs() <= 5e4);
        }
    }

    #[test]
    fn a_meter_without_a_spring_is_refused() {
        assert_eq!(meter(0.0, 0.0).evaluate().unwrap_err().input, "spring_rate");
    }
}
