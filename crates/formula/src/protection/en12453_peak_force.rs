//! Greatest contact force of a leaf, and how fast it has to fall again, by EN 12453.

use super::GateKind;
use super::limit::is_at_most;
use crate::check::not_negative;
use crate::{Evidence, OutOfReach, Source};
use quantity::{Force, Length, Quantity as _, Time};

formula! {
    /// Greatest force with which a force-limited leaf may meet a person, and how fast it has to fall, by EN 12453.
    ///
    /// The gap is what is left between the moving edge and the fixed part opposite at the moment of contact. Up to 500
    /// mm somebody can be crushed. Beyond it the text read allows more for hinged leaves that only bump into a person
    /// in free space; other leaves are held to the lower force here. Forces are as low as the gate can run with, and
    /// are proved by measuring after installation: a computed force is no measurement.
    pub struct En12453PeakForce = "en12453-peak-force" in Protection {
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Gap left to the fixed part opposite at the moment of contact.
        gap ("e"): Length,
    }
    gives
    /// Greatest forces and the times by which they have fallen.
    pub struct PeakForceLimit {
        /// Greatest peak force.
        peak ("Fd"): Force,
        /// Greatest force once the peak is over.
        settled ("Fs"): Force,
        /// Time from contact by which the force has fallen to that.
        settled_time ("Td"): Time,
        /// Greatest force at the end.
        end ("Fe"): Force,
        /// Time from contact by which the force has fallen to that.
        end_time ("Tt"): Time,
    }
    formula "Fd = 400 N; 1400 N for a hinged leaf where e > 500 mm\nFs = 150 N by Td = 0.75 s\nFe = 25 N by Tt = 5 s"
    valid "Force-limited leaves and barrier arms; movements without force limitation need other protection."
    source { work: "EN 12453:2017+A1:2021", clause: "force limits", evidence: Seen, seen: "DHF, Powered Gate Myth Buster 2, and Door Industry Journal, Summer 2024, page 85; the standard itself was not at hand" }
    by peak_force
}

/// The table of peak forces by movement and gap, recalled from the edition of 2000: forces beyond a gap of 500 mm for
/// sliding and vertical leaves rest on it alone.
pub static EN12453_PEAK_FORCE_RECALLED: Source = Source {
    work: "EN 12453:2000",
    clause: "annex A (recalled)",
    evidence: Evidence::Memory,
    seen: "not seen; the split at 500 mm and 400 N for barrier arms agree with trade texts",
};

/// Widest gap in which somebody counts as crushed: 500 mm.
const CRUSHING: f64 = 0.5;
/// Greatest peak force where somebody can be crushed, in N.
const CRUSH: f64 = 400.0;
/// Greatest peak force of a bump in free space, in N.
const BUMP: f64 = 1400.0;

fn peak_force(contact: &En12453PeakForce) -> Result<PeakForceLimit, OutOfReach> {
    let hinged = matches!(contact.gate, GateKind::SingleSwing | GateKind::DoubleSwing);
    limits(contact, hinged)
}

/// Greatest forces by the recalled table, in which every leaf that moves sideways may bump harder beyond 500 mm. It
/// may warn, and never passes a gate.
///
/// Source: [`EN12453_PEAK_FORCE_RECALLED`].
pub fn en12453_peak_force_recalled(
    contact: &En12453PeakForce,
) -> Result<PeakForceLimit, OutOfReach> {
    let upward = [
        GateKind::VerticalPivot,
        GateKind::VerticalLift,
        GateKind::BarrierArm,
    ];
    limits(contact, !upward.contains(&contact.gate))
}

fn limits(contact: &En12453PeakForce, may_bump: bool) -> Result<PeakForceLimit, OutOfReach> {
    not_negative("gap", contact.gap, "300 mm")?;
    let crushing = is_at_most(contact.gap, Length::from_base(CRUSHING));
    let peak = if may_bump && !crushing { BUMP } else { CRUSH };
    Ok(PeakForceLimit {
        peak: Force::from_base(peak),
        settled: Force::from_base(150.0),
        settled_time: Time::from_base(0.75),
        end: Force::from_base(25.0),
        end_time: Time::from_base(5.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_table_from_memory_never_asks_more_and_a_wider_gap_never_asks_more(
            place in 0..GateKind::ALL.len(), gap in 0.0..2.0, more in 0.0..1.0
        ) {
            let contact = |gap| En12453PeakForce { gate: GateKind::ALL[place], gap: Length::from_base(gap) };
            let seen = contact(gap).evaluate().unwrap();
            prop_assert!(seen.peak <= en12453_peak_force_recalled(&contact(gap)).unwrap().peak);
            prop_assert!(seen.peak <= contact(gap + more).evaluate().unwrap().peak);
            prop_assert!(seen.end < seen.settled && seen.settled < seen.peak);
        }
    }

    #[test]
    fn a_gap_of_500_mm_still_crushes() {
        let contact = En12453PeakForce {
            gate: GateKind::SingleSwing,
            gap: Length::from_base(0.5),
        };
        assert!(contact.evaluate().unwrap().peak.base() < 401.0);
    }

    #[test]
    fn a_gap_below_zero_is_refused() {
        let contact = En12453PeakForce {
            gate: GateKind::TrackSlide,
            gap: Length::from_base(-0.1),
        };
        assert_eq!(contact.evaluate().unwrap_err().input, "gap");
    }
}
