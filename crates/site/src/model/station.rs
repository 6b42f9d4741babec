//! What keeps strangers from opening a gate by its wires, its controls and its lock.

use quantity::{Force, Length, Measured, Resistance, Time};

site_words! {
    /// Where the resistors of a supervised loop sit.
    pub enum ResistorPlace {
        /// At the contact.
        Device = "at the device",
        /// In the cabinet, where they watch nothing of the cable.
        Cabinet = "in the cabinet",
    }
}

record! {
    /// The loop of a contact with end resistors, and the limits by which its input tells its states apart.
    pub struct SupervisedLoop {
        /// Resistor in line with the contact.
        series: Option<Measured<Resistance>>,
        /// Resistor across the contact.
        parallel: Option<Measured<Resistance>>,
        /// Greatest resistance of the closed contact with its joints.
        contact_resistance: Option<Measured<Resistance>>,
        /// Least resistance between the two wires on a wet day, unplugged at both ends.
        insulation: Option<Measured<Resistance>>,
        /// Where the resistors sit.
        resistors: Option<ResistorPlace>,
        /// The input takes less than this for a short.
        short_below: Option<Measured<Resistance>>,
        /// The input takes less than this, and more than a short, for the closed contact.
        closed_below: Option<Measured<Resistance>>,
        /// The input takes less than this for the open contact, and more for a cut.
        open_below: Option<Measured<Resistance>>,
    }
}

site_words! {
    /// Where the contact sits that opens the gate.
    pub enum OpeningContact {
        /// In the station: whoever unscrews it holds the two wires.
        InStation = "in the station",
        /// On the protected side.
        Protected = "on the protected side",
    }
}

site_words! {
    /// What happens when a station is taken off its wall or post.
    pub enum Tamper {
        /// Nobody notices.
        Nothing = "nothing",
        /// It is reported.
        Reported = "reported",
        /// It is reported, and the station commands nothing until somebody has looked.
        Blocks = "reported and blocks",
    }
}

record! {
    /// What somebody holds who unscrews a station outside.
    pub struct Station {
        /// Where the contact sits that opens the gate.
        opening_contact: Option<OpeningContact>,
        /// Its network socket serves this one device only: tried with another.
        port_locked: Option<bool>,
        /// What happens when it is taken off.
        tamper: Option<Tamper>,
    }
}

site_words! {
    /// What somebody needs to work a control.
    pub enum WorkedBy {
        /// Nothing: whoever gets to it.
        Anybody = "anybody",
        /// A key.
        Key = "key",
        /// A code.
        Code = "code",
        /// A card, tag, plate or phone that is known.
        Credential = "credential",
        /// Nothing, but it only asks somebody who decides.
        Caller = "caller who is answered",
    }
}

record! {
    /// How a control is kept from those who shall not work it.
    pub struct Guarded {
        /// What somebody needs to work it.
        worked_by: Option<WorkedBy>,
        /// Shortest way of an arm or a stick to it from where anybody may stand outside: over, under or through.
        from_outside: Option<Measured<Length>>,
    }
}

record! {
    /// When a powered lock lets go and holds.
    pub struct LockTiming {
        /// From the command until its bolt is drawn, where it is drawn by current; one that is let go by switching off
        /// gives that under its coil.
        release_time: Option<Measured<Time>>,
        /// From the same command to the start of the drive, as set.
        drive_delay: Option<Measured<Time>>,
        /// It locks only once the contact of the closed leaf is made.
        locks_on_contact: Option<bool>,
        /// From that contact until the leaf rests, by slow video.
        rests_after: Option<Measured<Time>>,
        /// From that contact until it locks, as set.
        locks_after: Option<Measured<Time>>,
        /// Pull at which it let go as mounted, where that was tried.
        held: Option<Measured<Force>>,
    }
}

record! {
    /// What a shut gate shall hold against.
    pub struct HoldsAgainst {
        /// Push or pull of a person on the leaf where it moves it most easily.
        push: Option<Measured<Force>>,
        /// It shall hold without power as well.
        without_power: Option<bool>,
        /// Length of the stick with which somebody may reach for a control.
        stick: Option<Measured<Length>>,
    }
}
