//! Lanes, vehicles and people.

use crate::{Id, Position, Text};
use quantity::{Force, Length, Mass, Measured, Time, Velocity};

record! {
    /// A lane that leads to or from a gate.
    pub struct Lane {
        /// Name, unique on the site.
        id: Id,
        /// The gate that it leads through.
        gate: Option<Id>,
        /// Width.
        width: Option<Measured<Length>>,
        /// Room for waiting vehicles outside the gate.
        queue_length: Option<Measured<Length>>,
        /// Way from the road to the gate line.
        path: Vec<Position>,
        /// Vehicles in the busiest hour.
        arrivals_per_hour: Option<u32>,
        /// Time that one driver takes at the reader.
        service_time: Option<Measured<Time>>,
        /// Fire engines come this way.
        fire_lane: Option<bool>,
    }
}

record! {
    /// A vehicle that is expected.
    pub struct Vehicle {
        /// Name, unique on the site.
        id: Id,
        /// What it is: `"pickup with boat trailer"`.
        what: Text,
        /// Length overall, trailer included.
        length: Option<Measured<Length>>,
        /// Width, mirrors included.
        width: Option<Measured<Length>>,
        /// Height.
        height: Option<Measured<Length>>,
        /// Mass, loaded.
        mass: Option<Measured<Mass>>,
        /// Open space between towing vehicle and trailer.
        drawbar_gap: Option<Measured<Length>>,
        /// Speed through the gate.
        speed: Option<Measured<Velocity>>,
        /// Load of its heaviest axle.
        axle_load: Option<Measured<Force>>,
        /// Load of its heaviest wheel, twin tires together.
        wheel_load: Option<Measured<Force>>,
        /// A fire engine or another rescue vehicle.
        fire_apparatus: Option<bool>,
        /// Room that it must have beside its swept path.
        margin: Option<Measured<Length>>,
    }
}

site_words! {
    /// Who is expected near a gate.
    pub enum PersonKind {
        /// Adults who know the gate.
        TrainedAdults = "trained adults",
        /// Adults who do not.
        Adults = "adults",
        /// Children.
        Children = "children",
        /// People with a wheelchair or a walking aid.
        WheeledOrSlow = "people with wheelchairs or walking aids",
        /// Cyclists.
        Cyclists = "cyclists",
    }
}

record! {
    /// People who are expected near a gate.
    pub struct People {
        /// Who they are.
        who: PersonKind,
        /// The gate that they come near.
        gate: Option<Id>,
        /// How they come by: `"walk through beside boat trailers"`.
        how: Option<Text>,
        /// Fastest that they walk or ride.
        speed: Option<Measured<Velocity>>,
    }
}
