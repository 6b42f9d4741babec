//! What low-voltage circuits are made of beside supplies and cables: fuses, joints, and how loads draw.

use crate::model::MadeJoint;
use crate::{Id, Position, Text};
use quantity::{Current, Measured, Ratio, Resistance, Temperature, Time, Voltage};

site_words! {
    /// Kind of current.
    pub enum CurrentKind {
        /// Direct current.
        Direct = "direct",
        /// Alternating current.
        Alternating = "alternating",
    }
}

site_words! {
    /// How the current of a load follows its voltage.
    pub enum Draws {
        /// The same power at any voltage: less voltage, more current.
        Power = "constant power",
        /// The same current at any voltage.
        Current = "constant current",
        /// A resistance: less voltage, less current.
        Resistance = "resistance",
    }
}

site_words! {
    /// What protects a circuit against too much current.
    pub enum FuseKind {
        /// A fuse that is replaced.
        Fuse = "fuse",
        /// A circuit breaker.
        Breaker = "circuit breaker",
        /// A fuse that heals when it cools.
        Resettable = "resettable fuse",
        /// An electronic output that limits and switches off.
        Electronic = "electronic channel",
    }
}

record! {
    /// A fuse, or what does its work.
    pub struct Fuse {
        /// Mark on the drawing and in the enclosure, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// What it is.
        kind: Option<FuseKind>,
        /// Enclosure in which it is mounted.
        enclosure: Option<Id>,
        /// The fuse before it, nearer to the source.
        behind: Option<Id>,
        /// Current that it carries for good.
        rated_current: Option<Measured<Current>>,
        /// Greatest voltage that it breaks, of the kind of current that flows here.
        rated_voltage: Option<Measured<Voltage>>,
        /// Greatest current that it breaks.
        breaking_current: Option<Measured<Current>>,
        /// A current at which it surely opens, from its curve.
        opens_at: Option<Measured<Current>>,
        /// The longest that it takes at that current.
        opens_within: Option<Measured<Time>>,
        /// Resistance when it is warm.
        resistance: Option<Measured<Resistance>>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// A place where conductors of several cables are joined: splice, terminal box, handhole.
    pub struct Joint {
        /// Name, unique on the site.
        id: Id,
        /// What it is, in words.
        what: Option<Text>,
        /// Where it is.
        at: Option<Position>,
        /// Enclosure in which it is mounted.
        enclosure: Option<Id>,
        /// Remarks.
        note: Option<Text>,
        /// How it is made.
        made: Option<MadeJoint>,
    }
}

record! {
    /// What a supply still gives at a temperature of the air around it.
    pub struct Derated {
        /// Temperature of the air.
        at: Option<Measured<Temperature>>,
        /// Share of its rated current.
        share: Option<Measured<Ratio>>,
    }
}

site_words! {
    /// What takes up the voltage of a coil that is switched off.
    pub enum Quench {
        /// A diode: kind to the contact, slow to let go. Direct current only.
        Diode = "diode",
        /// A diode with a Zener diode: let go sooner.
        DiodeZener = "diode and Zener diode",
        /// A varistor.
        Varistor = "varistor",
        /// A suppressor diode for both directions.
        Suppressor = "suppressor diode",
        /// A resistor with a capacitor.
        ResistorCapacitor = "resistor and capacitor",
        /// Nothing.
        Nothing = "none",
    }
}

site_words! {
    /// Where a quench part sits.
    pub enum QuenchPlace {
        /// At the coil.
        Coil = "coil",
        /// At the contact that switches it.
        Contact = "contact",
        /// Inside the device.
        Inside = "inside",
    }
}

record! {
    /// A coil that is switched: what takes up its voltage, and the contact that switches it.
    pub struct Coil {
        /// What takes up its voltage as it is switched off.
        quench: Option<Quench>,
        /// Where that sits.
        quench_at: Option<QuenchPlace>,
        /// Current of an inductive load that the contact is rated for, at this voltage and kind of current.
        contact_rating: Option<Measured<Current>>,
        /// From switching off to letting go, with the quench part in place.
        let_go: Option<Measured<Time>>,
        /// The longest that letting go may take.
        allowed_let_go: Option<Measured<Time>>,
    }
}

record! {
    /// A contact that carries a signal.
    pub struct SignalContact {
        /// Least current that it surely switches, by its data sheet.
        least_current: Option<Measured<Current>>,
        /// Current of the input that it works.
        input_current: Option<Measured<Current>>,
    }
}

record! {
    /// A port for data on a line of two wires.
    pub struct DataPort {
        /// Its electronics are isolated from its supply.
        isolated: Option<bool>,
        /// Greatest voltage between its own reference and that of the sender at which it still reads.
        offset_range: Option<Measured<Voltage>>,
        /// Its reference is joined to that of the other end by a conductor beside the pair, at one place.
        reference_joined: Option<bool>,
        /// Its load on the pair in unit loads of 12 kΩ: `"0.125"`.
        unit_load: Option<Measured<Ratio>>,
        /// Shortest rise time of its sender.
        rise_time: Option<Measured<Time>>,
        /// It takes a pair that nobody drives for idle, without bias.
        fail_safe: Option<bool>,
        /// From the end of a question to the start of its answer, at the longest.
        reply_time: Option<Measured<Time>>,
    }
}
