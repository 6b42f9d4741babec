//! Lays findings, schedules and drawings out as documents: the pack as PDF, its schedules as a workbook.
//!
//! Everything arrives printed: the [`view`] module says what a document shows, as plain text with its units; the
//! [`pack`] and the [`workbook`] only lay it out. Neither reads a file, a clock or the network, and the same view
//! gives the same bytes.

pub mod compose;
mod curves;
mod elevation;
pub mod engine;
mod foot;
mod foundation;
mod hazard;
mod mounting;
pub mod pack;
mod plan;
mod power;
pub mod sheets;
mod vehicle;
pub mod view;
mod walk;
pub mod workbook;
