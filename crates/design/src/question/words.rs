//! Closed lists of words that only the questions use.

use quantity::Word as _;
use serde::{Serialize, Serializer};

quantity::words! {
    /// The worst that follows when an answer is wrong, the gravest first.
    pub enum Severity {
        /// Somebody is crushed, struck, trapped or shocked.
        Life = "life",
        /// Something burns.
        Fire = "fire",
        /// Something breaks.
        Damage = "damage",
        /// The gate does not do what it should.
        Nuisance = "nuisance",
        /// Money, a day, an argument.
        Cost = "cost",
    }
}

quantity::words! {
    /// A stage of the job.
    pub enum Stage {
        /// Measurements, slopes, soils, weather, power and hazards are taken down.
        Survey = "survey",
        /// Gate, operator, devices and wiring are chosen and sized.
        Design = "design",
        /// Every question has an answer with its working.
        Prove = "prove",
        /// One person can buy, cut, pull, fix and label.
        Build = "build",
        /// What was built is measured against the design.
        Commission = "commission",
        /// The owner gets the record.
        HandOver = "hand-over",
        /// Each later visit compares with the first figures.
        Keep = "keep",
    }
}

impl Serialize for Severity {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.word())
    }
}

impl Serialize for Stage {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.word())
    }
}
