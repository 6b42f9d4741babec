//! How an enclosure is kept warm, dry and tight, what is where in it, and its door.

use crate::model::EntryHoles;
use crate::{Id, Position, Text};
use quantity::{Angle, Length, Mass, Measured, Ratio, Temperature};

record! {
    /// How an enclosure is kept warm enough, and from getting too warm.
    pub struct ClimateControl {
        /// Temperature inside below which its heater comes on, as set.
        heater_on: Option<Measured<Temperature>>,
        /// Temperature inside at which its heater goes off again, as set.
        heater_off: Option<Measured<Temperature>>,
        /// Supply or battery that feeds the heater.
        heater_supply: Option<Id>,
        /// Temperature at which the over-temperature cut-out opens, as marked on it.
        cut_out: Option<Measured<Temperature>>,
        /// The cut-out is a part of its own, apart from the thermostat, and opens the feed of the heater itself.
        cut_out_in_feed: Option<bool>,
        /// Air temperature inside down to which the equipment works, where no part says more.
        coldest_inside: Option<Measured<Temperature>>,
    }
}

site_words! {
    /// Where water gets out of an enclosure.
    pub enum Drain {
        /// Nowhere.
        None = "none",
        /// By an open hole.
        Open = "open hole",
        /// By a fitting with a screen against insects.
        Screened = "screened fitting",
    }
}

record! {
    /// How an enclosure is kept dry and closed to animals.
    pub struct Tightness {
        /// Conduits are sealed where they come in, so that no warm wet air rises through them.
        conduits_sealed: Option<bool>,
        /// It breathes through a fitting rated as the box.
        breather: Option<bool>,
        /// Where water gets out at its lowest place.
        drain: Option<Drain>,
        /// Every unused hole has a plug rated as the box.
        holes_plugged: Option<bool>,
    }
}

record! {
    /// How full an enclosure is, and what carries it.
    pub struct EnclosureLayout {
        /// Length of mounting rail in it, all rails together.
        rail_length: Option<Measured<Length>>,
        /// Length of that rail which is taken, gaps for heat included, taped.
        rail_used: Option<Measured<Length>>,
        /// Share of the rail to be kept free; a quarter when missing.
        spare_wanted: Option<Measured<Ratio>>,
        /// Clear way from the terminals to the wall through which the thickest cable comes in.
        bend_space: Option<Measured<Length>>,
        /// Least gap above and below what gives off heat, taped.
        heat_gap: Option<Measured<Length>>,
        /// Gap that the data sheets ask for there.
        heat_gap_wanted: Option<Measured<Length>>,
        /// Mass of the box with all that is in it.
        mass: Option<Measured<Mass>>,
        /// Mass that its fixings and what they hold in are good for.
        rated_mass: Option<Measured<Mass>>,
        /// The battery stands at the bottom.
        battery_at_bottom: Option<bool>,
    }
}

site_words! {
    /// A side of an enclosure.
    pub enum EntrySide {
        /// From below.
        Bottom = "bottom",
        /// Through the left or the right side.
        Side = "side",
        /// Through the back.
        Back = "back",
        /// From above.
        Top = "top",
    }
}

record! {
    /// Holes of one sort in an enclosure, with what closes them.
    pub struct EnclosureEntry {
        /// What closes them: `"hubs with sealing compound"`.
        what: Text,
        /// Rating against weather on its package.
        rating: Option<Text>,
        /// Side of the box.
        side: Option<EntrySide>,
        /// Conduits that come in through them.
        conduits: Vec<Id>,
        /// Cables that come in through them without a conduit.
        cables: Vec<Id>,
        /// Thinnest cable on which a gland closes, by its data sheet.
        smallest: Option<Measured<Length>>,
        /// Thickest cable on which a gland closes, by its data sheet.
        largest: Option<Measured<Length>>,
        /// Cables hang in a loop below them, so that water drips off before it gets in.
        drip_loop: Option<bool>,
        /// Where they are drilled, and how large.
        holes: Option<EntryHoles>,
    }
}

site_words! {
    /// What opens a door.
    pub enum DoorKey {
        /// A key of its own.
        Own = "key of its own",
        /// The key that every such box has.
        Common = "common key",
        /// A tool or nothing.
        None = "no key",
    }
}

site_words! {
    /// How it shows that a door was opened.
    pub enum DoorShows {
        /// Somebody gets a message.
        Reported = "reported",
        /// It is written into a list.
        Logged = "logged",
        /// It does not show.
        Nowhere = "not shown",
    }
}

record! {
    /// The door of an enclosure.
    pub struct EnclosureDoor {
        /// What opens it.
        key: Option<DoorKey>,
        /// Who has that key: `["yard master", "service"]`.
        held_by: Vec<Text>,
        /// How it shows that it was opened.
        shows: Option<DoorShows>,
        /// Where its hinge is.
        hinge_at: Option<Position>,
        /// Angle to which it opens.
        opens: Option<Measured<Angle>>,
        /// A stay or a latch holds it open in wind.
        stay: Option<bool>,
        /// Fully open it meets neither a post nor a vehicle in the lane, tried.
        clear_around: Option<bool>,
    }
}

site_words! {
    /// How mains and low voltage are kept apart in an enclosure.
    pub enum MainsInside {
        /// There are no mains in it.
        NoMains = "no mains",
        /// By a barrier or a compartment.
        Barrier = "barrier",
        /// By distance, with the wires tied.
        Distance = "distance",
        /// They lie together.
        Together = "together",
    }
}

record! {
    /// What is kept apart from what in an enclosure.
    pub struct InsideApart {
        /// How mains and low voltage are kept apart.
        mains: Option<MainsInside>,
        /// Least distance between them, where distance does it.
        mains_gap: Option<Measured<Length>>,
        /// With the door open a finger touches no live part of the mains: probed.
        live_covered: Option<bool>,
        /// The battery is strapped or stands in a frame.
        battery_strapped: Option<bool>,
        /// Gas of a lead battery gets out of the box, high up.
        battery_vented: Option<bool>,
        /// Least distance from the heater to battery, cable or plastic, taped.
        heater_gap: Option<Measured<Length>>,
        /// Distance that the heater's data sheet asks for.
        heater_gap_wanted: Option<Measured<Length>>,
        /// Nothing is kept in it that does not belong to it.
        nothing_stored: Option<bool>,
    }
}
