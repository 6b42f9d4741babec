//! Terminals, and which core of which cable lands on which of them.

use crate::{Id, Text};
use quantity::{ConductorSize, Length, Measured, Torque};

site_words! {
    /// How a terminal holds a conductor.
    pub enum Clamp {
        /// A screw that presses on it.
        Screw = "screw",
        /// A spring.
        Spring = "spring",
        /// A stud or a bolt that takes a lug.
        Stud = "stud",
        /// A joint that is soldered or crimped.
        Splice = "splice",
        /// A plug or a jack.
        Plug = "plug",
    }
}

site_words! {
    /// What a terminal takes.
    pub enum TakenEnd {
        /// One solid wire, bare.
        Solid = "solid",
        /// Strands, bare.
        Strands = "strands",
        /// Strands in a ferrule.
        Ferrule = "ferrule",
        /// A lug.
        Lug = "lug",
    }
}

site_words! {
    /// How the cores of a cable are made up at their ends.
    pub enum CoreEnd {
        /// Bare.
        Bare = "bare",
        /// In ferrules.
        Ferrules = "ferrules",
        /// In lugs.
        Lugs = "lugs",
        /// In plugs or jacks.
        Plugs = "plugs",
    }
}

site_words! {
    /// A way to lay out cores that is known by its name.
    pub enum CorePattern {
        /// Eight cores by pattern A, both ends alike.
        A = "T568A",
        /// Eight cores by pattern B, both ends alike.
        B = "T568B",
        /// Two fibers that cross: what one end sends the other receives.
        FiberPair = "fiber pair, crossed",
    }
}

record! {
    /// Terminals of one make: a strip in an enclosure, or those of a device.
    pub struct Terminals {
        /// Mark of the strip, unique on the site.
        id: Id,
        /// Enclosure, device, operator, supply or battery on which they are; several where all are alike.
        on: Vec<Id>,
        /// How many there are, numbered from 1.
        count: Option<u32>,
        /// How they are marked, where not by numbers alone.
        marks: Vec<Text>,
        /// How they hold a conductor.
        clamp: Option<Clamp>,
        /// What they take.
        takes: Vec<TakenEnd>,
        /// Thinnest conductor that they take.
        smallest: Option<ConductorSize>,
        /// Thickest conductor that they take.
        largest: Option<ConductorSize>,
        /// Thickest conductor that they take in a ferrule, where it is thinner than that.
        largest_in_ferrule: Option<ConductorSize>,
        /// Conductors that each is rated for.
        wires: Option<u32>,
        /// Length of insulation to strip.
        strip: Option<Measured<Length>>,
        /// Torque to which the screw is driven, as printed.
        tightening: Option<Measured<Torque>>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// Where the cores of a cable land.
    pub struct Wiring {
        /// The cable.
        cable: Id,
        /// How its cores are made up at their ends.
        ends: Option<CoreEnd>,
        /// The way in which its cores are laid out, where that has a name: nothing else has to be written then.
        pattern: Option<CorePattern>,
        /// Its cores, each with where it lands.
        core: Vec<Core>,
    }
}

record! {
    /// One core of a cable.
    pub struct Core {
        /// Wire number: given once, never to another core.
        wire: Option<u32>,
        /// Color or number by which it is told from the others.
        color: Option<Text>,
        /// What it carries.
        carries: Option<Text>,
        /// Terminal at the first end of the cable: the mark alone, or strip and mark as in `"x1:3"`.
        from: Option<Text>,
        /// Terminal at the second end.
        to: Option<Text>,
        /// It is not used: folded back and capped at both ends.
        spare: Option<bool>,
    }
}
