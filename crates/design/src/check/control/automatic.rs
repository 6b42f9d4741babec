//! Whether a gate is protected as one that moves with nobody watching.
//!
//! In the United States the count of independent means counts, in each direction; in Europe the level for automatic
//! control at the closing edge.

use crate::asking::Asking;
use crate::check::protect::means::{acts, is_sensor};
use crate::check::protect::{count, level_eu};
use crate::outcome::Answer;
use formula::protection::GateControl;
use site::{CodeBasis, Device, Direction, Gate, ProtectionType, Site};

/// Whether a gate is protected as one that moves with nobody watching.
pub(crate) fn protected<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    match site.site.code_basis {
        CodeBasis::Us => count::count(asking, site, gate),
        CodeBasis::Eu => level_eu::level_for(asking, site, gate, Ok(GateControl::Automatic)),
    }
}

/// A device sees people without touching them while the gate closes.
pub(crate) fn watches(device: &Device) -> bool {
    let untouched = device.protection == Some(ProtectionType::B1);
    untouched && is_sensor(device) && acts(device, Direction::Closing)
}
