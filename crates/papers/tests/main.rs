//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod beside;
mod buses;
mod camera;
mod detectors;
mod elevation;
mod enclosure;
mod foot;
mod foundation;
mod hazard;
mod hostile;
mod invented;
mod lanes;
mod live;
mod network;
mod pack;
mod plan;
mod radio_way;
mod sheet;
mod single_line;
mod standing;
mod templates;
mod vehicles;
mod workbook;
mod zones;
