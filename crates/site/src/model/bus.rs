//! Lines on which readers speak to their controller.

use crate::{Id, Text};
use quantity::{Length, Measured, Ratio, Resistance, Time, Voltage};

site_words! {
    /// How a reader or keypad speaks to its controller.
    pub enum Speaks {
        /// On a bus of two wires, by SIA OSDP (IEC 60839-11-5).
        Osdp = "OSDP",
        /// By pulses on two data lines of its own.
        TwoDataLines = "two data lines",
        /// Over the network.
        Network = "network",
    }
}

site_words! {
    /// The key that encrypts what a reader says on a bus.
    pub enum SecureChannel {
        /// A key of this site.
        SiteKey = "site key",
        /// The key that every reader leaves the works with.
        DefaultKey = "default key",
        /// None: in the clear.
        Off = "off",
    }
}

site_words! {
    /// What a reader or keypad does while its controller is silent.
    pub enum Offline {
        /// It refuses everybody.
        Refuses = "refuses",
        /// It decides by a list of its own.
        OwnList = "decides by its own list",
        /// It lets everybody in.
        Opens = "opens",
    }
}

site_words! {
    /// Where the screen of a cable is earthed.
    pub enum ScreenEarth {
        /// At one end.
        OneEnd = "at one end",
        /// At both ends.
        BothEnds = "at both ends",
        /// Nowhere.
        Nowhere = "nowhere",
    }
}

record! {
    /// How a reader or keypad speaks to its controller.
    pub struct DataLine {
        /// In which way.
        speaks: Option<Speaks>,
        /// Its address on the bus.
        address: Option<u32>,
        /// The key that encrypts what it says.
        secure_channel: Option<SecureChannel>,
        /// Its controller refuses it without its secure channel: tried.
        insists: Option<bool>,
        /// It still takes a new key from whoever asks.
        install_mode: Option<bool>,
        /// What it does while its controller is silent.
        offline: Option<Offline>,
        /// Where the screen of its data cable is earthed.
        screen: Option<ScreenEarth>,
        /// Both data lines are pulled up at the controller.
        pulled_up: Option<bool>,
    }
}

record! {
    /// A bus of two wires (TIA-485) on which readers speak to a controller.
    pub struct Bus {
        /// Name, unique on the site.
        id: Id,
        /// Its cables, in order along the line.
        cable: Vec<Id>,
        /// Bits in a second, as set in the controller: `9600`.
        bit_rate: Option<u32>,
        /// Impedance of its pair, by the cable's data sheet.
        impedance: Option<Measured<Resistance>>,
        /// Speed of a signal in its pair as a share of that of light, by the cable's data sheet.
        velocity: Option<Measured<Ratio>>,
        /// Voltage across the two bias resistors and what lies between them.
        bias_voltage: Option<Measured<Voltage>>,
        /// From one question of the controller to the same device to its next, as set in the controller.
        poll_period: Option<Measured<Time>>,
        /// From a card's number in the controller to its relay, by its data sheet or its log.
        decision_time: Option<Measured<Time>>,
        /// What hangs on it, in order along the line.
        node: Vec<BusNode>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// A place of a bus at which a device hangs.
    pub struct BusNode {
        /// The device.
        device: Id,
        /// Length of the line from its first end to here.
        along: Option<Measured<Length>>,
        /// Length of the pair that branches off the line to the device; zero where the line goes through its terminals.
        stub: Option<Measured<Length>>,
        /// Resistor across the pair here; no such line where there is none.
        termination: Option<Measured<Resistance>>,
        /// Each of the two bias resistors here; no such line where there are none.
        bias: Option<Measured<Resistance>>,
    }
}
