//! How a loop in the ground is laid and set, what its detector's data sheet says, and what each output does when it fails.

use crate::{Id, Text};
use quantity::{
    Capacitance, ConductorSize, Frequency, Inductance, Length, Measured, Ratio, Resistance,
};

record! {
    /// How a loop is laid, what its detector is set to, and what was read at the cabinet.
    pub struct LoopSetup {
        /// Size of the wire in the slot.
        wire: Option<ConductorSize>,
        /// Diameter over the insulation of that wire.
        wire_outside: Option<Measured<Length>>,
        /// Diameter over the insulation of one core of the lead-in; that of the wire when missing, as one piece.
        core_outside: Option<Measured<Length>>,
        /// Length of one full twist of the lead-in: 2 in for six twists a foot.
        twist: Option<Measured<Length>>,
        /// There is reinforcing steel, mesh or a plate under it: from the drawings, or by a cover meter.
        steel_below: Option<bool>,
        /// How far below the wire that steel lies.
        steel_depth: Option<Measured<Length>>,
        /// From the wire to the nearest grate, cover, rail or other fixed metal at its own depth.
        fixed_metal: Option<Measured<Length>>,
        /// Detector unit that it is a channel of: `"detector 1"`.
        detector: Option<Text>,
        /// Least change of inductance at which the output comes on, as set.
        sensitivity: Option<Measured<Ratio>>,
        /// Greatest change that the detector showed while the empty leaf made three full travels.
        leaf_shift: Option<Measured<Ratio>>,
        /// Frequency that the detector shows.
        frequency: Option<Measured<Frequency>>,
        /// Inductance of loop and lead-in, read at the cabinet.
        measured_inductance: Option<Measured<Inductance>>,
        /// Resistance of loop and lead-in, read at the cabinet.
        measured_resistance: Option<Measured<Resistance>>,
        /// Vehicles that it saw when they were driven slowly along its edge and its middle.
        tried: Vec<Id>,
    }
}

record! {
    /// A loop detector by its data sheet.
    pub struct LoopDetector {
        /// Least inductance on which it tunes.
        least_inductance: Option<Measured<Inductance>>,
        /// Greatest inductance on which it tunes.
        greatest_inductance: Option<Measured<Inductance>>,
        /// It drives its channels one after the other, so that its own loops do not disturb each other.
        scans: Option<bool>,
        /// Capacitance with which it tunes, at the setting used.
        capacitance: Option<Measured<Capacitance>>,
    }
}

site_words! {
    /// What an output of a detector tells the gate.
    pub enum OutputState {
        /// As if a vehicle were there.
        Vehicle = "vehicle there",
        /// As if none were.
        NoVehicle = "no vehicle",
    }
}

record! {
    /// What the output of a vehicle detector says when something of it fails, each tried.
    pub struct Failing {
        /// With the loop open or the sender's wire cut.
        open: Option<OutputState>,
        /// With the loop shorted.
        shorted: Option<OutputState>,
        /// With the supply of the detector pulled.
        supply_lost: Option<OutputState>,
        /// Somebody is told: lamp at the gate, message, entry in the log.
        shown: Option<bool>,
        /// What whoever answers for security chose for a detector that opens the gate.
        chosen: Option<OutputState>,
        /// Who chose it, and when.
        chosen_by: Option<Text>,
    }
}
