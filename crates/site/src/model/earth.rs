//! Electrodes, bonds, and the lines and fences near the gate that bring voltage.

use crate::{Date, Id, Position, Text};
use quantity::{ConductorSize, Length, Measured, Resistance, Resistivity, Voltage};

site_words! {
    /// What an earth electrode is.
    pub enum ElectrodeKind {
        /// Driven rods.
        Rods = "rods",
        /// A ring of bare conductor in the ground.
        Ring = "ring",
        /// Steel or copper in the concrete of a foundation.
        Concrete = "in concrete",
    }
}

site_words! {
    /// State of the soil on the day of a measurement.
    pub enum SoilState {
        /// Dry season.
        Dry = "dry",
        /// As in most of the year.
        Usual = "usual",
        /// After rain, or in spring.
        Wet = "wet",
    }
}

record! {
    /// An earth electrode.
    pub struct Electrode {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        kind: Option<ElectrodeKind>,
        /// Enclosure whose earth bar it is joined to.
        enclosure: Option<Id>,
        /// Where it is.
        at: Option<Position>,
        /// How many rods.
        rods: Option<u32>,
        /// Length of each rod in the soil.
        length: Option<Measured<Length>>,
        /// Diameter of a rod.
        diameter: Option<Measured<Length>>,
        /// Distance from rod to rod.
        spacing: Option<Measured<Length>>,
        /// Resistivity of the soil in the dry season.
        resistivity: Option<Measured<Resistivity>>,
        /// Its resistance by fall of potential, taken off from everything else.
        resistance: Option<Measured<Resistance>>,
        /// Day of that measurement.
        tested: Option<Date>,
        /// State of the soil on that day.
        soil: Option<SoilState>,
        /// Resistance that is asked for here, where anybody asks for one.
        wanted: Option<Measured<Resistance>>,
    }
}

record! {
    /// A bond between metal parts and the protective terminal, or why there is none.
    pub struct Bond {
        /// Name, unique on the site.
        id: Id,
        /// Operators, leaves, posts, enclosures and fences that it ties to the protective terminal.
        joins: Vec<Id>,
        /// Resistance from the farthest of them to the protective terminal.
        resistance: Option<Measured<Resistance>>,
        /// It bends with the leaf, across hinge or roller.
        flexible: Option<bool>,
        /// Size of its conductor.
        size: Option<ConductorSize>,
        /// Why these parts are not bonded, by whoever answers for the circuit.
        instead: Option<Text>,
    }
}

record! {
    /// What was found when somebody looked around the gate for lines and fences that bring voltage.
    pub struct LinesNear {
        /// Day on which somebody looked.
        looked: Option<Date>,
        /// How far around the gate.
        within: Option<Measured<Length>>,
        /// Overhead lines.
        overhead: Vec<Overhead>,
        /// Electric fences.
        live_fence: Vec<LiveFence>,
        /// Length of fence, track or conduit that runs along a power line or a railway.
        parallel: Option<Measured<Length>>,
        /// Voltage between that metal and earth, by a meter of high resistance.
        induced: Option<Measured<Voltage>>,
    }
}

record! {
    /// An overhead line.
    pub struct Overhead {
        /// What it is, and whose.
        what: Text,
        /// Its voltage, by its owner.
        voltage: Option<Measured<Voltage>>,
        /// Least distance to it of leaf, lifting gear, poles and people, whatever they do here.
        clearance: Option<Measured<Length>>,
    }
}

record! {
    /// An electric fence.
    pub struct LiveFence {
        /// What it is, and whose.
        what: Text,
        /// A live wire is fixed to the leaf or its posts.
        on_gate: Option<bool>,
        /// Least distance from a live wire to the leaf, over its whole travel.
        wire_distance: Option<Measured<Length>>,
        /// Distance from the earth of its energizer to any other earth.
        earth_distance: Option<Measured<Length>>,
    }
}
