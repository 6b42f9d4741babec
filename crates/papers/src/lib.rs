//! Lays findings, schedules and drawings out as documents: the pack as PDF, its schedules as a workbook.
//!
//! Everything arrives printed: the [`view`] module says what a document shows, as plain text with its units; the
//! [`pack`] and the [`workbook`] only lay it out. Neither reads a file, a clock or the network, and the same view
//! gives the same bytes.

mod camera;
pub mod compose;
mod curves;
mod cutting;
mod detector;
pub mod documents;
mod elevation;
pub mod engine;
mod foot;
mod foundation;
mod hazard;
mod heat;
pub mod job;
pub mod labels;
pub mod live;
mod mounting;
mod net;
pub mod offer;
pub mod pack;
pub mod pictures;
mod plan;
mod power;
mod pulling;
mod queue;
mod radio;
pub mod sheets;
mod shelter;
mod swept;
mod terminals;
mod vehicle;
pub mod view;
mod walk;
mod ways;
pub mod workbook;
