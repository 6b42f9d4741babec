//! A measured force trace held against the limits of EN 12453.

use super::limit::is_at_most;
use super::{En12453PeakForce, GateKind};
use crate::check::not_negative;
use crate::{Formula as _, OutOfReach};
use quantity::{Force, Length, Time};

quantity::words! {
    /// How a force trace stands to its limits; the first one that is not kept.
    pub enum TraceVerdict {
        /// Every limit is kept.
        Within = "within the limits",
        /// The peak is too high.
        Peak = "peak too high",
        /// The force falls too late after the peak.
        Slow = "back to 150 N too late",
        /// The force falls too late at the end.
        Held = "back to 25 N too late",
    }
}

formula! {
    /// Whether the force that a meter recorded at one point keeps the limits of EN 12453.
    ///
    /// Times count from the moment of contact. Where a point was measured three times, ask with the means.
    pub struct En12453ForceTrace = "en12453-force-trace" in Protection {
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Gap left to the fixed part opposite at the moment of contact.
        gap ("e"): Length,
        /// Highest force recorded.
        peak ("F"): Force,
        /// Time from contact after which the force stays at 150 N or below.
        time_to_150 ("t150"): Time,
        /// Time from contact after which the force stays at 25 N or below.
        time_to_25 ("t25"): Time,
    }
    gives
    /// How a force trace stands to its limits.
    pub struct ForceTraceVerdict {
        /// Greatest peak force allowed there.
        limit ("Fd"): Force,
        /// Force to spare at the peak; below zero where it is too high.
        spare ("Fd − F"): Force,
        /// The verdict, or the first limit that is not kept.
        verdict ("–"): TraceVerdict,
    }
    formula "F ≤ Fd from en12453-peak-force\nt150 ≤ 0.75 s\nt25 ≤ 5 s"
    valid "Traces of a meter that meets the standard; see en12453-force-meter."
    source { work: "EN 12453:2017+A1:2021", clause: "force limits", evidence: Seen, seen: "DHF, Powered Gate Myth Buster 2, and Door Industry Journal, Summer 2024, page 85; the standard itself was not at hand" }
    by force_trace
}

fn force_trace(trace: &En12453ForceTrace) -> Result<ForceTraceVerdict, OutOfReach> {
    not_negative("peak", trace.peak, "350 N")?;
    not_negative("time_to_150", trace.time_to_150, "0.6 s")?;
    not_negative("time_to_25", trace.time_to_25, "2 s")?;
    if trace.time_to_25 < trace.time_to_150 {
        return Err(OutOfReach::new(
            "time_to_25",
            "the force passes 150 N before it passes 25 N; read the two times again",
        ));
    }
    let (gate, gap) = (trace.gate, trace.gap);
    let limits = En12453PeakForce { gate, gap }.evaluate()?;
    let verdict = if !is_at_most(trace.peak, limits.peak) {
        TraceVerdict::Peak
    } else if !is_at_most(trace.time_to_150, limits.settled_time) {
        TraceVerdict::Slow
    } else if !is_at_most(trace.time_to_25, limits.end_time) {
        TraceVerdict::Held
    } else {
        TraceVerdict::Within
    };
    Ok(ForceTraceVerdict {
        limit: limits.peak,
        spare: limits.peak - trace.peak,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn trace(peak: f64, time_to_150: f64, time_to_25: f64) -> En12453ForceTrace {
        En12453ForceTrace {
            gate: GateKind::CantileverSlide,
            gap: Length::from_base(0.3),
            peak: Force::from_base(peak),
            time_to_150: Time::from_base(time_to_150),
            time_to_25: Time::from_base(time_to_25),
        }
    }

    proptest! {
        #[test]
        fn what_is_within_stays_within_when_it_is_gentler(
            peak in 0.0..800.0, first in 0.0..1.5, later in 0.0..6.0, share in 0.0..1.0
        ) {
            let harder = trace(peak, first, first + later).evaluate().unwrap();
            let gentler = trace(peak * share, first * share, (first + later) * share).evaluate().unwrap();
            if harder.verdict == TraceVerdict::Within {
                prop_assert_eq!(gentler.verdict, TraceVerdict::Within);
            }
            prop_assert!(gentler.spare >= harder.spare);
        }
    }

    #[test]
    fn times_in_the_wrong_order_are_refused() {
        assert_eq!(
            trace(300.0, 1.0, 0.5).evaluate().unwrap_err().input,
            "time_to_25"
        );
    }
}
