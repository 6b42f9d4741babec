//! What a turn into the gate depends on: axles and couplings of vehicles, how they come from the road, the lane's edges.

use crate::{Position, Signed};
use quantity::{Angle, Length, Measured};

site_words! {
    /// Which wheels steer.
    pub enum Steering {
        /// The front wheels, as on any road vehicle.
        Front = "front wheels",
        /// The rear wheels, as on a fork truck.
        Rear = "rear wheels",
        /// The frame bends in its middle, as on most loaders.
        Middle = "bends in the middle",
    }
}

site_words! {
    /// A vehicle that roads are designed for, by its name in the tables.
    pub enum DesignName {
        /// Passenger car.
        P = "P",
        /// Single-unit truck of two axles.
        Su30 = "SU-30",
        /// Single-unit truck of three axles.
        Su40 = "SU-40",
        /// Intercity bus.
        Bus40 = "BUS-40",
        /// City bus.
        CityBus = "CITY-BUS",
        /// Short tractor with semi-trailer.
        Wb40 = "WB-40",
        /// Interstate tractor with semi-trailer.
        Wb62 = "WB-62",
        /// The same with a trailer of 53 ft.
        Wb67 = "WB-67",
    }
}

record! {
    /// Axles, couplings and undersides of a vehicle.
    pub struct Axles {
        /// Design vehicle whose measures count where its own are not taken.
        like: Option<DesignName>,
        /// Which wheels steer; the front ones where nothing is written, machines apart.
        steers: Option<Steering>,
        /// Width over its tires, at the widest axle.
        over_tires: Option<Measured<Length>>,
        /// From the rear axle of what tows back to the coupling; below zero where it is before that axle, as a fifth wheel
        /// mostly is.
        hitch: Option<Signed<Length>>,
        /// From the coupling to the axle of the turntable, where the trailer has one.
        drawbar: Option<Measured<Length>>,
        /// From the coupling, or from the turntable, to the axle of the trailer or the middle of its axles.
        trailer_axle: Option<Measured<Length>>,
        /// Widest angle between trailer and what tows it before they touch.
        widest_angle: Option<Measured<Angle>>,
        /// Lowest underside between the axles above level ground, loaded.
        underside: Option<Measured<Length>>,
        /// Lowest underside before the front axle, loaded.
        front_underside: Option<Measured<Length>>,
        /// Lowest underside behind the rear axle, loaded: tail lift, hitch, spare wheel.
        rear_underside: Option<Measured<Length>>,
        /// Lowest underside of the trailer, its landing gear up, loaded.
        trailer_underside: Option<Measured<Length>>,
    }
}

site_words! {
    /// Which way vehicles drive.
    pub enum WayDirection {
        /// From the road into the property.
        In = "in",
        /// From the property to the road.
        Out = "out",
    }
}

record! {
    /// How vehicles come from the road to a lane, or leave it for the road.
    pub struct LaneWay {
        /// Which way they drive.
        direction: Option<WayDirection>,
        /// Middle of the road's lane that they drive on, in the order of driving, up to the line of the lane's own path,
        /// or from there on.
        path: Vec<Position>,
        /// Ground to the left of that line that they may use, up to the curb or the line that they must not cross.
        room_left: Option<Measured<Length>>,
        /// Ground to the right of that line that they may use.
        room_right: Option<Measured<Length>>,
    }
}

record! {
    /// Edges of the ground that wheels may use, flares at the road included.
    pub struct LaneEdges {
        /// Corners of the left edge, from the road into the property.
        left: Vec<Position>,
        /// Corners of the right edge, from the road into the property.
        right: Vec<Position>,
    }
}
