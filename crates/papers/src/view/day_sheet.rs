//! The day sheet: what is lifted and how, and what holds a leaf at each step while it is hung.

use serde::Serialize;

/// One lift.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LiftRow {
    /// What is lifted.
    pub what: String,
    /// Its mass, printed.
    pub mass: String,
    /// Weight recommended for one person there; empty where it could not be worked out.
    pub limit: String,
    /// Lifting index: mass over that weight; empty where it could not be worked out.
    pub index: String,
    /// Alone, or with what.
    pub how: String,
}

/// One step of hanging a leaf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HangingRow {
    /// What is done.
    pub what: String,
    /// What holds the leaf meanwhile, each with its rating.
    pub holds: Vec<String>,
}

/// The hanging or taking down of one leaf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HangingView {
    /// Which leaf, and what it weighs.
    pub title: String,
    /// In which wind the work stops.
    pub wind: String,
    /// The steps in order.
    pub steps: Vec<HangingRow>,
    /// What the findings say of it, one sentence each.
    pub found: Vec<String>,
}

/// The day sheet of a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DaySheetView {
    /// Every lift.
    pub lifts: Vec<LiftRow>,
    /// Every hanging.
    pub hangings: Vec<HangingView>,
}
