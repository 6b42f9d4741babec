//! Lanes, vehicles and people.

use crate::model::{
    Axles, DriverPlace, ExitSight, LaneEdges, LaneLeaving, LanePedestal, LaneTraffic, LaneWay,
    Meeting, TurnBack,
};
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
        /// What drivers reach for beside it.
        pedestal: Option<LanePedestal>,
        /// Where a driver goes who is refused.
        turn_back: Option<TurnBack>,
        /// What a driver sees who leaves.
        exit_sight: Option<ExitSight>,
        /// Two vehicles that meet in the opening.
        meeting: Option<Meeting>,
        /// How vehicles come from the road, and how they leave for it.
        way: Vec<LaneWay>,
        /// Its edges, where they are not simply half its width beside its path.
        edges: Option<LaneEdges>,
        /// Who comes in its busy hours, and how each is let in.
        traffic: Option<LaneTraffic>,
        /// How those who leave come upon the gate.
        leaving: Option<LaneLeaving>,
    }
}

impl Lane {
    /// The lane as a sentence names it: `lane north`; its own name alone where that begins with the word.
    pub fn called(&self) -> String {
        let id = self.id.as_str();
        if id.starts_with("lane") {
            id.to_owned()
        } else {
            format!("lane {id}")
        }
    }
}

site_words! {
    /// What kind of vehicle it is.
    pub enum VehicleKind {
        /// Car, pickup or van.
        Car = "car",
        /// Truck, bus or fire engine in one piece.
        Truck = "truck",
        /// Tractor with a semi-trailer on its fifth wheel.
        TractorTrailer = "tractor-trailer",
        /// Car, truck or farm tractor with a trailer on a drawbar.
        WithTrailer = "vehicle with trailer",
        /// Loader, fork truck or another machine.
        Machine = "machine",
        /// Motorcycle.
        Motorcycle = "motorcycle",
        /// Bicycle.
        Bicycle = "bicycle",
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
        /// What kind it is.
        kind: Option<VehicleKind>,
        /// From its front to the rear of the vehicle that tows, where the open space over the drawbar begins.
        towing_length: Option<Measured<Length>>,
        /// Top of the drawbar above the ground.
        drawbar_height: Option<Measured<Length>>,
        /// Underside of its body, frame or side guards above the ground at the highest place between the wheels.
        chassis_height: Option<Measured<Length>>,
        /// Length that hangs out behind, above its own underside: stern of a boat, bucket, long load.
        tail_overhang: Option<Measured<Length>>,
        /// Underside of what hangs out behind, above the ground.
        tail_height: Option<Measured<Length>>,
        /// From its front axle to its rear axle, or to the middle of a rear pair.
        wheelbase: Option<Measured<Length>>,
        /// From its front axle to its foremost point.
        front_overhang: Option<Measured<Length>>,
        /// Radius of the circle of its outer front wheel at full lock, by its data sheet or by chalk on a yard.
        turning_radius: Option<Measured<Length>>,
        /// Where its driver sits.
        driver: Option<DriverPlace>,
        /// Axles, couplings and undersides.
        axles: Option<Axles>,
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
        /// They work the gate themselves: by key, code, card, fob or button.
        operates: Option<bool>,
    }
}
