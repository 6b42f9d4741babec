//! What was worked of a gate once, with what it rests on: papers print it as long as nothing of that has changed.

use super::{FamilyTold, GateWalk, MarginTold, SweepTold, Told};
use serde::{Deserialize, Serialize};

/// What sampling and proof came to at one gate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct WalkRecord {
    /// Name of the gate.
    pub gate: String,
    /// A digest of [`GateWalk::rests_on`], and of the program that worked it.
    pub rests_on: String,
    /// The walks that were sampled.
    pub sweep: SweepTold,
    /// What was proved.
    pub families: Vec<FamilyTold>,
    /// How far each value may go.
    pub margins: Vec<MarginTold>,
}

/// What papers can say of the walks past a gate.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum Kept {
    /// Nobody has kept a result.
    #[default]
    Never,
    /// A result was kept, and something that it rests on has changed since.
    OutOfDate,
    /// A result was kept, and everything that it rests on is as it was.
    Valid(Box<WalkRecord>),
}

/// What was kept of one gate.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptWalk {
    /// Name of the gate.
    pub gate: String,
    /// What was kept.
    pub kept: Kept,
}

impl WalkRecord {
    /// The touches that were found: the worst of the sampled walks, and those that a proof came upon.
    pub fn touches(&self) -> impl Iterator<Item = &Told> {
        let refuted = self.families.iter();
        let refuted = refuted.filter_map(|family| family.refuted_by.as_ref());
        self.sweep.worst.iter().chain(refuted)
    }
}

impl GateWalk<'_> {
    /// Everything that sampling, proof and margins of this gate rest on, to the last digit: leaf, motion, devices, controller,
    /// limits, bodies, and the units and names in which they are told.
    pub fn rests_on(&self) -> String {
        let about = &self.site.site;
        format!(
            "{:?} {:?} {} {:?} {:?} {:?}",
            about.unit_system(),
            about.code_basis,
            self.name(),
            self.lowered.sensing,
            self.lowered.world,
            self.written(),
        )
    }
}
