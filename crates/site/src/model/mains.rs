//! The mains branch of the gate: its circuit, what it feeds, how it is switched off, and room to work on it.

use crate::{Id, Position, Text};
use quantity::{Angle, ConductorSize, Current, Length, Measured, Ratio, Resistance, Time, Voltage};

site_words! {
    /// What can drop a circuit beside its own breaker.
    pub enum Interrupter {
        /// Nothing: the way to the source was traced.
        Nothing = "nothing",
        /// A timer or a light sensor.
        Timer = "timer",
        /// A switch that somebody can turn.
        Switch = "switch",
        /// A residual-current device, an outlet or a breaker that others share.
        Shared = "shared protective device",
    }
}

site_words! {
    /// What a circuit is to the place that it feeds.
    pub enum CircuitKind {
        /// One branch circuit: no breakers behind it.
        Branch = "branch circuit",
        /// A feeder to a panel with breakers of its own.
        Feeder = "feeder",
    }
}

site_words! {
    /// What protects a circuit against too much current.
    pub enum BreakerKind {
        /// Molded-case breaker as panels in the United States have it.
        InverseTime = "inverse-time breaker",
        /// Time-delay fuse.
        TimeDelayFuse = "time-delay fuse",
        /// Miniature breaker of curve B.
        B = "B",
        /// Miniature breaker of curve C.
        C = "C",
        /// Miniature breaker of curve D.
        D = "D",
    }
}

site_words! {
    /// Temperature that an insulation or a terminal is rated for.
    pub enum ConductorRating {
        /// 60 °C.
        Sixty = "60 °C",
        /// 75 °C.
        SeventyFive = "75 °C",
        /// 90 °C.
        Ninety = "90 °C",
    }
}

site_words! {
    /// How the supply is connected to earth.
    pub enum Earthing {
        /// The protective conductor comes from the source.
        Tn = "TN",
        /// The site has an electrode of its own, and the soil is the way back.
        Tt = "TT",
    }
}

site_words! {
    /// Kind of a residual-current device.
    pub enum ResidualKind {
        /// Sees smooth alternating residual current only.
        TypeAc = "AC",
        /// Sees pulses of one direction too.
        TypeA = "A",
        /// Sees mixed frequencies of single-phase drives too.
        TypeF = "F",
        /// Sees smooth direct current too.
        TypeB = "B",
        /// Ground-fault protection of equipment.
        Equipment = "for equipment",
        /// Ground-fault circuit interrupter for people.
        People = "for people",
    }
}

site_words! {
    /// Overvoltage category of equipment on the mains (IEC 60664-1).
    pub enum OvervoltageCategory {
        /// Electronics behind a protector of their own.
        I = "I",
        /// Appliances.
        II = "II",
        /// Fixed equipment and panels.
        III = "III",
        /// At the service entrance.
        IV = "IV",
    }
}

record! {
    /// The branch circuit that a mains supply is.
    pub struct Circuit {
        /// What it is to the place that it feeds.
        kind: Option<CircuitKind>,
        /// Panel that it comes from, and its place in it.
        panel: Option<Text>,
        /// Current that panel and service can still give before this circuit is added, by load calculation or recording.
        spare: Option<Measured<Current>>,
        /// Nothing else hangs on it.
        dedicated: Option<bool>,
        /// What can drop it on its way from the source.
        interrupted_by: Vec<Interrupter>,
        /// It was traced, and its breaker bears its name.
        labeled: Option<bool>,
        /// Rating of its breaker or fuse.
        breaker: Option<Measured<Current>>,
        /// What that is.
        breaker_kind: Option<BreakerKind>,
        /// Temperature that the insulation of its conductors is rated for.
        insulation: Option<ConductorRating>,
        /// Temperature that the terminals at both ends are marked for.
        terminals: Option<ConductorRating>,
        /// Conductors in the same conduit that carry current, those of other circuits included.
        bundled: Option<u32>,
        /// Current that its conductors may carry as they are laid, by the electrician's table with its corrections.
        ampacity: Option<Measured<Current>>,
        /// Size of its protective conductor.
        protective: Option<ConductorSize>,
        /// How the supply is connected to earth.
        earthing: Option<Earthing>,
        /// Voltage from line to earth.
        to_earth: Option<Measured<Voltage>>,
        /// Impedance of the earth-fault loop at the panel.
        panel_loop: Option<Measured<Resistance>>,
        /// Impedance of the earth-fault loop at the far end, by a loop tester with cold conductors.
        measured_loop: Option<Measured<Resistance>>,
        /// Its residual-current device.
        residual: Option<Residual>,
    }
}

record! {
    /// A residual-current device.
    pub struct Residual {
        /// Its kind.
        kind: Option<ResidualKind>,
        /// Residual current at which it trips.
        rating: Option<Measured<Current>>,
        /// Time in which it tripped at its rating, by a tester.
        trip_time: Option<Measured<Time>>,
        /// Standing leakage of everything behind it, by a leakage clamp.
        leakage: Option<Measured<Current>>,
    }
}

record! {
    /// What the data sheet of a power supply says of its mains side.
    pub struct Intake {
        /// Lowest voltage at which it still gives its full output.
        least_voltage: Option<Measured<Voltage>>,
        /// Power factor at full load.
        power_factor: Option<Measured<Ratio>>,
        /// Overvoltage category.
        category: Option<OvervoltageCategory>,
        /// Residual-current device that its papers ask for.
        residual_kind: Option<ResidualKind>,
    }
}

record! {
    /// A means to switch a source of power off and lock it.
    pub struct Disconnect {
        /// Name, unique on the site.
        id: Id,
        /// Supply, battery or solar panels that it cuts off.
        of: Vec<Id>,
        /// Where it is.
        at: Option<Position>,
        /// A padlock holds it off.
        lockable: Option<bool>,
        /// It opens every live conductor.
        all_poles: Option<bool>,
        /// It is seen from where hands are in the operator.
        in_sight: Option<bool>,
        /// A label beside it names every other source that stays live.
        labeled: Option<bool>,
        /// Locked off, a start was tried and voltage was proved absent.
        proved: Option<bool>,
    }
}

record! {
    /// Room before an enclosure for whoever works in it.
    pub struct WorkingSpace {
        /// Depth before its door.
        depth: Option<Measured<Length>>,
        /// Width.
        width: Option<Measured<Length>>,
        /// Height above the ground.
        height: Option<Measured<Length>>,
        /// How far its door opens.
        door_opens: Option<Measured<Angle>>,
        /// The ground is level, firm and drained.
        firm: Option<bool>,
        /// The leaf never comes into it, moved by hand over its whole travel.
        clear_of_leaf: Option<bool>,
        /// No vehicle passes through it.
        clear_of_lane: Option<bool>,
    }
}
