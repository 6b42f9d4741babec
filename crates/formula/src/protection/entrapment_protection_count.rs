//! Least number of independent means of entrapment protection, by UL 325 in force since August 2018.

use super::gate_kind::{Entrapment, GateKind};
use crate::OutOfReach;

formula! {
    /// Least number of independent means of entrapment protection in one direction of travel, since August 2018.
    ///
    /// A sliding leaf needs two in each direction. Any other gate needs two in each direction in which somebody can be
    /// caught. Two of the same type are not a pair, and an alarm is not a means. Ask once for each direction. The
    /// numbers that the printed table sets for each kind of gate are only recalled: see
    /// `entrapment-protection-recalled`.
    pub struct EntrapmentProtectionCount = "entrapment-protection-count" in Protection {
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Whether somebody can be caught in this direction.
        entrapment ("–"): Entrapment,
    }
    gives
    /// Least number of means in one direction.
    pub struct ProtectionCount {
        /// Independent means of protection needed in this direction.
        means ("n"): u32,
    }
    formula "n = 2 for sliding leaves; for other gates 2 where somebody can be caught, otherwise 0"
    valid "Operators made after 1 August 2018, United States; who looks for places that catch is the installer."
    source { work: "UL 325, in force 1 August 2018", clause: "", evidence: Seen, seen: "an installer's page that quotes DASMA Technical Data Sheet 353, and a trade article of December 2015 (addresses withheld); the standard itself was not at hand" }
    by protection_count
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    clippy::unnecessary_wraps,
    reason = "every calculation takes its inputs by reference and may refuse"
)]
fn protection_count(side: &EntrapmentProtectionCount) -> Result<ProtectionCount, OutOfReach> {
    let slides = matches!(side.gate, GateKind::TrackSlide | GateKind::CantileverSlide);
    let needed = slides || side.entrapment == Entrapment::Possible;
    Ok(ProtectionCount {
        means: if needed { 2 } else { 0 },
    })
}
