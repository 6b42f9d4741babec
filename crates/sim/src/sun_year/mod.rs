//! A battery that lives on panels through a year, hour by hour.
//!
//! [`hourly`] makes the sun of a year out of twelve monthly means: the shape of a clear day, dimmed so that each month has
//! its mean, with a run of dark days at the beginning of each month; [`measured`] takes a year of weather, hour by hour. [`Bank::through`] carries a battery through it, twice,
//! so that the year begins as it ends. [`least`] looks for the smallest pair of panel and battery that is never empty.

mod battery;
mod hours;
mod least;
mod weather;

pub use battery::{Bank, DayLoad, Through};
pub use hours::{Given, Monthly, Panel, PanelHours, Plane, hourly};
pub use least::{Pair, least};
pub use weather::{SunHour, measured};

/// Hours of a common year.
const HOURS: usize = 8_760;
