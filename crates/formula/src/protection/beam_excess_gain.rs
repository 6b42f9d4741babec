//! Light that a beam has to spare at its range.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::check::{not_negative, positive};
use crate::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// How dirty the air and the lenses get.
    pub enum Air {
        /// Clean.
        Clean = "clean",
        /// A little dust, moisture or film.
        SlightlyDirty = "slightly dirty",
        /// Dust, fog or film that shows.
        ModeratelyDirty = "moderately dirty",
        /// Thick dust, fog, spray or mud.
        VeryDirty = "very dirty",
    }
}

formula! {
    /// Excess gain of a through-beam at its range: how many times the light arrives that the receiver needs to switch.
    ///
    /// From the gain that the data sheet prints at one range, by the square of the distance, and for the share of the
    /// lens that is still clear. A gain of 2 just works with half the lens covered. Near the emitter a real curve runs
    /// lower than the square of the distance tells, so take a printed gain from a range near the one in question. The
    /// least gain for clean air is 1.5; dirtier air needs more, by figures that are recalled only.
    pub struct BeamExcessGain = "beam-excess-gain" in Protection {
        /// Gain printed for a range.
        printed_gain ("E0"): Ratio,
        /// The range that it is printed for.
        printed_range ("R0"): Length,
        /// Range in question: distance from emitter to receiver.
        range ("R"): Length,
        /// Share of the lens that is clear.
        lens_open ("f"): Ratio,
    }
    gives
    /// Excess gain at a range.
    pub struct ExcessGain {
        /// Gain there.
        gain ("E"): Ratio,
        /// Least share of the lens that must be clear for the beam to switch at all; above 1 where it does not switch.
        least_open ("fmin"): Ratio,
        /// Least gain in clean air.
        least_gain ("Emin"): Ratio,
        /// Whether that is reached.
        verdict ("–"): LimitVerdict,
    }
    formula "E = E0 · (R0 / R)² · f\nfmin = f / E\nEmin = 1.5"
    valid "Opposed pairs well beyond the near field, aligned; lenses covered evenly."
    source { work: "inverse square law; guideline for excess gain", clause: "", evidence: Seen, seen: "an instrumentation magazine's article of July 2018 and a trade association's glossary of sensing terms" }
    by excess_gain
}

/// Gain that dirty air asks for, recalled.
pub static BEAM_GAIN_IN_DIRTY_AIR_RECALLED: Source = Source {
    work: "sensor handbooks, excess gain by environment",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen; 1.5 for clean air agrees with an instrumentation magazine's article",
};

/// Least gain in clean air.
const CLEAN: f64 = 1.5;

fn excess_gain(beam: &BeamExcessGain) -> Result<ExcessGain, OutOfReach> {
    positive("printed_gain", beam.printed_gain, "20")?;
    positive("printed_range", beam.printed_range, "30 ft")?;
    positive("range", beam.range, "16 ft")?;
    let open = beam.lens_open.base();
    if !(open > 0.0 && open <= 1.0) {
        return Err(OutOfReach::new(
            "lens_open",
            "give the share of the lens that is clear, above 0 and up to 100 %",
        ));
    }
    let nearer = beam.printed_range.base() / beam.range.base();
    let whole = beam.printed_gain.base() * nearer.powi(2);
    if !(whole.is_finite() && whole > 0.0) {
        return Err(OutOfReach::new(
            "range",
            "this range is out of all proportion to the printed one",
        ));
    }
    let gain = Ratio::from_base(whole * open);
    let least_gain = Ratio::from_base(CLEAN);
    Ok(ExcessGain {
        gain,
        least_open: Ratio::from_base(1.0 / whole),
        least_gain,
        verdict: verdict(is_at_least(gain, least_gain)),
    })
}

/// Least gain for an environment: 1.5 clean, 5 slightly dirty, 10 moderately dirty, 50 very dirty. All but the first are
/// recalled: they may warn, and never pass a gate.
///
/// Source: [`BEAM_GAIN_IN_DIRTY_AIR_RECALLED`].
pub fn beam_gain_in_air_recalled(air: Air) -> Ratio {
    Ratio::from_base(match air {
        Air::Clean => CLEAN,
        Air::SlightlyDirty => 5.0,
        Air::ModeratelyDirty => 10.0,
        Air::VeryDirty => 50.0,
    })
}

/// Range at which a beam still has a wanted gain, from the gain printed for another range; not below zero.
///
/// Source: as [`BeamExcessGain`].
pub fn beam_range_for_gain(
    printed_gain: Ratio,
    printed_range: Length,
    wanted: Ratio,
) -> Result<Length, OutOfReach> {
    not_negative("printed_gain", printed_gain, "20")?;
    not_negative("printed_range", printed_range, "30 ft")?;
    positive("wanted", wanted, "1.5")?;
    Ok(printed_range * (printed_gain.base() / wanted.base()).sqrt())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn beam(range: f64, open: f64) -> BeamExcessGain {
        BeamExcessGain {
            printed_gain: Ratio::from_base(10.0),
            printed_range: Length::from_base(10.0),
            range: Length::from_base(range),
            lens_open: Ratio::from_base(open),
        }
    }

    proptest! {
        #[test]
        fn farther_or_dirtier_never_gains(range in 0.5..50.0, more in 0.0..10.0, open in 0.05..1.0, share in 0.1..1.0) {
            let gain = beam(range, open).evaluate().unwrap().gain.base();
            prop_assert!(beam(range + more, open).evaluate().unwrap().gain.base() <= gain);
            prop_assert!(beam(range, open * share).evaluate().unwrap().gain.base() <= gain);
        }

        #[test]
        fn the_range_for_a_gain_has_that_gain(wanted in 0.5..100.0) {
            let (gain, at) = (Ratio::from_base(10.0), Length::from_base(10.0));
            let range = beam_range_for_gain(gain, at, Ratio::from_base(wanted)).unwrap();
            let found = beam(range.base(), 1.0).evaluate().unwrap().gain.base();
            prop_assert!((found - wanted).abs() < 1e-9 * wanted);
        }
    }

    #[test]
    fn dirtier_air_needs_more() {
        let gains: Vec<f64> = Air::ALL
            .iter()
            .map(|air| beam_gain_in_air_recalled(*air).base())
            .collect();
        assert!(gains.is_sorted());
    }

    #[test]
    fn a_covered_lens_is_refused() {
        assert_eq!(beam(5.0, 0.0).evaluate().unwrap_err().input, "lens_open");
    }
}
