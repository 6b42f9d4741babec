//! What a surge protector stands on, and what it lets through.

use crate::Id;
use quantity::{Current, Frequency, Length, Measured, Voltage};

record! {
    /// How a surge protector is wired.
    pub struct Surge {
        /// Cables that it protects.
        cables: Vec<Id>,
        /// Voltage that it lets through: its voltage protection level.
        let_through: Option<Measured<Voltage>>,
        /// Surge at which that holds.
        surge: Option<Measured<Current>>,
        /// Length of its leads together, from the line and to the earth bar.
        leads: Option<Measured<Length>>,
        /// Its earth is the bar to which the equipment is bonded.
        same_earth: Option<bool>,
        /// Impulse that the equipment behind it stands, on its data sheet.
        withstand: Option<Measured<Voltage>>,
        /// Highest frequency of data that it passes.
        passes: Option<Measured<Frequency>>,
        /// Protector before it on the same line.
        after: Option<Id>,
        /// Its papers let it stand where it stands behind that one.
        coordinated: Option<bool>,
        /// It parts the two ends galvanically.
        isolates: Option<bool>,
    }
}
