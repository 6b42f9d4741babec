//! What can make a gate move, and what its controller does when several things speak at once.

use crate::model::RemoteRadio;
use crate::{Id, Text};
use quantity::{Length, Measured};

site_words! {
    /// What a control makes the gate do.
    pub enum CommandKind {
        /// Opens it.
        Open = "open",
        /// Stops it.
        Stop = "stop",
        /// Closes it.
        Close = "close",
        /// Lets it run again after protection has acted twice in a row.
        Reset = "reset",
        /// Opens it for the fire service and keeps it open.
        FireOpen = "fire open",
        /// Moves nothing: a link, a clock, a phone that only speaks.
        Nothing = "nothing",
    }
}

site_words! {
    /// How a control speaks over its wires.
    pub enum ContactKind {
        /// Contact that closes when it is worked.
        NormallyOpen = "normally open",
        /// Contact that opens when it is worked.
        NormallyClosed = "normally closed",
        /// Message over a data line or by radio: a cut or shorted line says nothing.
        Message = "message",
    }
}

record! {
    /// One thing that a control makes the gate do.
    pub struct Command {
        /// What it makes the gate do.
        what: CommandKind,
        /// The gate moves only while it is held.
        held: Option<bool>,
        /// How it speaks over its wires.
        contact: Option<ContactKind>,
        /// The controller notices a cut and a short in its wires: end resistor, or a line that is asked at all times.
        supervised: Option<bool>,
        /// What was agreed with the authority for a cut wire, with whom and when.
        agreed: Option<Text>,
    }
}

site_words! {
    /// What speaks to the controller, as its order of rank names it.
    pub enum InputKind {
        /// A stop button.
        Stop = "stop",
        /// The opening for the fire service.
        FireOpen = "fire open",
        /// Any device that protects people.
        Protection = "protection",
        /// A control that is held.
        Held = "held control",
        /// Any command to open.
        Open = "open",
        /// Any command to close, auto-close among them.
        Close = "close",
    }
}

site_words! {
    /// How a leaf finds its ends again after power was away.
    pub enum Homing {
        /// It has kept its place, or reads it at once.
        None = "not needed",
        /// Slowly, once somebody commands it.
        OnCommand = "slowly on a command",
        /// Slowly, by itself.
        ByItself = "slowly by itself",
        /// At its usual speed.
        AtSpeed = "at usual speed",
    }
}

site_words! {
    /// By what a gate is commanded where nobody has a hand on a fixed control.
    pub enum RemoteKind {
        /// Transmitter in a hand or a pocket.
        Fob = "fob",
        /// Phone, by call or program.
        Phone = "phone",
        /// Clock or calendar.
        Schedule = "schedule",
        /// Desk, guard room or alarm center.
        Desk = "desk",
        /// Detector that opens for a vehicle.
        Detector = "detector",
        /// Tag or plate that is read from a distance.
        Tag = "tag",
    }
}

site_words! {
    /// Whether whoever commands a gate sees it.
    pub enum GateView {
        /// It works only where the whole gate is in view.
        Whole = "whole gate in view",
        /// By a camera.
        Camera = "by camera",
        /// Nobody need see it.
        None = "not in view",
    }
}

record! {
    /// A way to start a movement without a hand on a fixed control.
    pub struct Remote {
        /// Name, unique on the site.
        id: Id,
        /// By what.
        by: RemoteKind,
        /// The gate that it moves.
        gate: Option<Id>,
        /// Device through which it comes in.
        through: Option<Id>,
        /// What it makes the gate do.
        does: Vec<CommandKind>,
        /// Who holds it or sets it: `"two drivers of the yard"`.
        holder: Option<Text>,
        /// Whether whoever commands sees the gate.
        view: Option<GateView>,
        /// Farthest from which it still worked, tried on site.
        works_from: Option<Measured<Length>>,
        /// Its radio, where it is a fob.
        radio: Option<RemoteRadio>,
    }
}

site_words! {
    /// How two gates stand after an event.
    pub enum PairState {
        /// Both open.
        BothOpen = "both open",
        /// One opens, the other stays shut.
        OneOpens = "one opens",
        /// Both stay as they are, and can be moved by hand.
        AsTheyAre = "as they are, free by hand",
        /// Both stay shut and locked.
        BothShut = "both shut",
    }
}

record! {
    /// Another gate, or a walk gate, that may not be open at the same time.
    pub struct Interlock {
        /// The other gate.
        with: Id,
        /// One opens only once the other is shut, whatever the order of commands: tried on site.
        never_both_open: Option<bool>,
        /// Room for a vehicle between the two, clear of both leaves through their travel.
        space: Option<Measured<Length>>,
        /// How a person gets out from between, without key or code.
        way_out: Option<Text>,
        /// How the two stand after the opening for the fire service.
        on_fire: Option<PairState>,
        /// How the two stand without power.
        on_power_loss: Option<PairState>,
    }
}
