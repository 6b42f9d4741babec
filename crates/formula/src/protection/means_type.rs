//! The types of means of entrapment protection that UL 325 speaks of.

quantity::words! {
    /// Type of a means of entrapment protection.
    pub enum MeansType {
        /// Obstruction sensing inherent in the operator.
        A = "A",
        /// Sensor without contact: a beam or its equal.
        B1 = "B1",
        /// Contact sensor: an edge or its equal.
        B2 = "B2",
        /// Inherent force limit: an adjustable clutch or a pressure relief.
        C = "C",
        /// Control that must be held for the gate to move.
        D = "D",
        /// Inherent audible alarm; no longer a means of protection since January 2016.
        E = "E",
    }
}
