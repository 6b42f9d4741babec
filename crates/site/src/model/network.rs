//! The data network: ports, addresses, segments, what crosses between them, pictures and where they are kept, clocks, and
//! where is decided who may enter.

use crate::{Address, AddressBlock, AddressRange, Date, Id, Text};
use quantity::{ConductorSize, DataRate, DataSize, Length, Measured, Ratio, Time};

site_words! {
    /// How a port gives power over a data cable, or a device takes it.
    pub enum PortPower {
        /// It asks first what is at the other end (IEEE 802.3).
        Asked = "IEEE 802.3",
        /// It is there at all times, whatever is plugged in.
        Passive = "passive",
    }
}

site_words! {
    /// When a switch lets a powered device go dark because its budget is used up.
    pub enum DroppedWhen {
        /// Before others.
        First = "first",
        /// After others.
        Last = "last",
    }
}

site_words! {
    /// What a port does when something else than its own device is plugged in.
    pub enum PortGuard {
        /// It speaks with its own device only.
        Locked = "locked to its device",
        /// Nobody outside can get at its cable or plug.
        OutOfReach = "out of reach",
        /// It lets anything in.
        Open = "open",
    }
}

record! {
    /// A device's place on the data network.
    pub struct Network {
        /// Segment that it belongs to.
        segment: Option<Id>,
        /// Its address, written down and set by hand or bound to it.
        address: Option<Address>,
        /// Switch, injector or extender that it is plugged into; that at the other end of its data cable when missing.
        plugged_into: Option<Id>,
        /// Number of the port there, as marked.
        port: Option<u32>,
        /// When its switch lets it go dark.
        dropped: Option<DroppedWhen>,
        /// What the port that it is plugged into does with a stranger, where its cable ends outdoors.
        guard: Option<PortGuard>,
        /// Rate that its radio link still carries in heavy rain, where it reaches its other end by radio.
        radio_rate: Option<Measured<DataRate>>,
        /// Device that sets its clock.
        time_from: Option<Id>,
        /// How often its clock is set.
        time_every: Option<Measured<Time>>,
    }
}

record! {
    /// The ports of a device for data cables, by its data sheet.
    pub struct Ethernet {
        /// Greatest rate of its ports for copper.
        speed: Option<Measured<DataRate>>,
        /// Ports for fiber, besides those for copper.
        fiber_ports: Option<u32>,
        /// Greatest rate of its ports for fiber.
        fiber_speed: Option<Measured<DataRate>>,
        /// Ports that give power over the cable, of those for copper.
        powered_ports: Option<u32>,
        /// How it gives power over the cable, or takes it.
        port_power: Option<PortPower>,
    }
}

record! {
    /// The pictures that a camera sends.
    pub struct Stream {
        /// Recorder that keeps them.
        to: Option<Id>,
        /// Greatest rate: everything moves, rain, night.
        peak: Option<Measured<DataRate>>,
        /// Rate while nothing moves; zero where only motion is recorded.
        quiet: Option<Measured<DataRate>>,
        /// Rate while something moves.
        busy: Option<Measured<DataRate>>,
        /// Share of the day in which something moves.
        motion: Option<Measured<Ratio>>,
    }
}

record! {
    /// What keeps pictures.
    pub struct Recorder {
        /// Room on its disks for pictures, after what is kept twice.
        storage: Option<Measured<DataSize>>,
        /// Room that other cameras of the owner take of it.
        taken: Option<Measured<DataSize>>,
        /// How long pictures are to be kept.
        wanted: Option<Measured<Time>>,
    }
}

record! {
    /// The clock of a device.
    pub struct Clock {
        /// Most that it gains or loses, as a share of the time: `"0.002 %"` for 20 parts in a million.
        drift: Option<Measured<Ratio>>,
        /// How long it goes on without power: its cell or capacitor.
        reserve: Option<Measured<Time>>,
        /// It changes to summer time and back by itself.
        changes_itself: Option<bool>,
    }
}

site_words! {
    /// Where is decided who may enter.
    pub enum DecisionPlace {
        /// Inside the fence, near the gate.
        AtGate = "at the gate",
        /// In a house on the property.
        InHouse = "in the house",
        /// Elsewhere: a service, a phone network, a maker's server.
        Outside = "outside the fence",
    }
}

record! {
    /// Where is decided whether a device opens the gate.
    pub struct Decision {
        /// Where.
        place: Option<DecisionPlace>,
        /// Device that decides, where it is another one.
        by: Option<Id>,
        /// Whoever may enter is listed there, and the list outlasts a power cut: tried.
        list_kept: Option<bool>,
        /// What outside of the fence it needs: `"phone network; contract ends 2028-03-31"`.
        needs: Option<Text>,
        /// Whom was told what is lost without that, and when.
        owner_told: Option<Text>,
    }
}

site_words! {
    /// What a data cable carries its signals on.
    pub enum Medium {
        /// Copper pairs.
        Copper = "copper",
        /// Glass or plastic fiber.
        Fiber = "fiber",
    }
}

site_words! {
    /// What is there for the next line on the same way.
    pub enum Spare {
        /// A second cable lies there.
        SecondCable = "second cable",
        /// Fibers or pairs that nothing uses.
        SparePair = "spare pair",
        /// Room for another cable in the same conduit, with a pull string in it.
        Room = "room and pull string",
        /// Nothing: digging.
        Nothing = "nothing",
    }
}

record! {
    /// A data cable as a channel from port to port.
    pub struct Channel {
        /// What it carries its signals on; copper when missing.
        medium: Option<Medium>,
        /// Its pairs are screened.
        screened: Option<bool>,
    }
}

record! {
    /// The patch cords of a data cable.
    pub struct Cords {
        /// Length at both ends together; zero where the cable ends in plugs.
        length: Option<Measured<Length>>,
        /// Their conductor size.
        size: Option<ConductorSize>,
    }
}

site_words! {
    /// How a segment is kept apart from others.
    pub enum KeptApart {
        /// Switches and cables of its own, up to what guards the crossing.
        OwnSwitches = "own switches",
        /// Tags on shared switches.
        Tagged = "tagged on shared switches",
        /// It is not: one network.
        Not = "not at all",
    }
}

record! {
    /// A part of the network whose devices reach each other freely.
    pub struct NetworkSegment {
        /// Name, unique on the site.
        id: Id,
        /// What it is: `"gate and its cameras"`.
        what: Option<Text>,
        /// The owner's own: house, office, shop.
        of_owner: Option<bool>,
        /// Its addresses.
        addresses: Option<AddressBlock>,
        /// Addresses that are handed out automatically.
        automatic: Option<AddressRange>,
        /// How it is kept apart from the others.
        kept_apart: Option<KeptApart>,
        /// The guard between segments lets nothing through but the crossings written here.
        all_else_blocked: Option<bool>,
    }
}

site_words! {
    /// How much a crossing lets through.
    pub enum CrossingReach {
        /// Named addresses and services only.
        Named = "named addresses and services",
        /// Everything.
        Everything = "everything",
    }
}

record! {
    /// What may cross from one segment to another, begun on the first side.
    pub struct Crossing {
        /// Name, unique on the site.
        id: Id,
        /// Segment on which it begins.
        from: Option<Id>,
        /// Segment that it reaches.
        to: Option<Id>,
        /// What crosses: `"pictures to the recorder"`.
        what: Option<Text>,
        /// How much it lets through.
        reach: Option<CrossingReach>,
    }
}

record! {
    /// How the site keeps the time.
    pub struct TimeKeeping {
        /// Device inside the fence that gives the time to all others.
        source: Option<Id>,
        /// Time zone, as the devices name it.
        zone: Option<Text>,
        /// Farthest that two clocks may be apart: what evidence and schedules stand.
        allowed: Option<Measured<Time>>,
        /// Farthest that they may be from the true time after that longest time alone.
        allowed_alone: Option<Measured<Time>>,
        /// Longest that the site may be without the time from outside.
        longest_alone: Option<Measured<Time>>,
        /// Longest power cut that the clocks are to outlast.
        longest_cut: Option<Measured<Time>>,
        /// Day on which the time was last read on each device against a reference.
        read: Option<Date>,
    }
}
