//! Words of the survey.

#![allow(
    unreachable_pub,
    reason = "the declaration is one for all crates and makes public types"
)]

quantity::words! {
    /// What fills a leaf.
    pub enum Infill {
        /// Upright bars or mesh.
        Open = "open bars",
        /// Boards or slats with gaps between them.
        Half = "slats with gaps",
        /// Boards or sheet.
        Closed = "closed",
    }
}

quantity::words! {
    /// Where the power comes from.
    pub enum Power {
        /// A mains circuit at the gate.
        Mains = "mains",
        /// Solar panels and a battery.
        Sun = "sun",
    }
}
