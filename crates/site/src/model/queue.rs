//! Who comes to a gate in its busy hours, how each is let in, and how those who leave come upon it.

use crate::Id;
use quantity::{Acceleration, Length, Measured, Ratio, Time};

site_words! {
    /// By what a driver is let in.
    pub enum LetInBy {
        /// Tag on the vehicle, read as it comes.
        Tag = "tag",
        /// Number plate, read by a camera.
        Plate = "plate",
        /// Card or fob held to a reader.
        Card = "card",
        /// Code keyed in or shown.
        Code = "code",
        /// Transmitter in the hand.
        Remote = "remote",
        /// Phone, by call or program.
        Phone = "phone",
        /// Intercom: a visitor who waits for an answer.
        Intercom = "intercom",
    }
}

site_words! {
    /// Whether a second vehicle may pass in an opening made for another.
    pub enum Tailgating {
        /// It may; the leaf stays open while vehicles come.
        MayFollow = "may follow",
        /// It may not: one vehicle each opening.
        OneEach = "one vehicle each opening",
    }
}

record! {
    /// Drivers of one kind in the busy hours.
    pub struct LaneDriver {
        /// By what they are let in.
        by: LetInBy,
        /// Their share of all who come.
        share: Option<Measured<Ratio>>,
        /// Mean time from the stop at the reader to the command to open, by a watch.
        service_time: Option<Measured<Time>>,
        /// How far that time usually lies off its mean; as long as the time itself when missing.
        spread: Option<Measured<Time>>,
        /// What they drive; the longest vehicle of the site when missing, fire engines left out.
        vehicle: Option<Id>,
    }
}

record! {
    /// Who comes in the busy hours.
    pub struct LaneTraffic {
        /// Vehicles that come in each of the busy hours, one after the other, on the busiest day.
        hourly: Vec<u32>,
        /// Hour of the day in which that begins.
        first_hour: Option<u32>,
        /// Mean number that comes in one group, one behind the other; one when missing.
        group: Option<Measured<Ratio>>,
        /// Gap between waiting vehicles; 5 ft when missing.
        gap: Option<Measured<Length>>,
        /// Time from the tail of one to the front of the next, counted where drivers follow close.
        headway: Option<Measured<Time>>,
        /// Whether a second vehicle may pass in an opening made for another.
        tailgating: Option<Tailgating>,
        /// Share of drivers who follow through an open gate without stopping at the reader, counted.
        followers: Option<Measured<Ratio>>,
        /// Kinds of drivers.
        driver: Vec<LaneDriver>,
    }
}

record! {
    /// How those who leave come upon the gate.
    pub struct LaneLeaving {
        /// Distance from the gate line from which a driver who leaves sees the whole leaf.
        seen_from: Option<Measured<Length>>,
        /// Deceleration that brakes reach on this surface, tried wet; 11.2 ft/s² when missing, a wet road.
        braking: Option<Measured<Acceleration>>,
    }
}
