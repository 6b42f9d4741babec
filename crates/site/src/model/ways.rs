//! Ways in the ground: where one may dig, what it costs, what lies there already, where water and snow stand, and how
//! conduits, pits and stub-ups are finished.

use crate::{Date, Id, Position, Price, Signed, Text};
use quantity::{Length, Measured};

site_words! {
    /// How a way is made.
    pub enum MadeBy {
        /// An open trench.
        Trench = "trench",
        /// A hole bored or pushed from side to side.
        Bore = "bore",
        /// A slot sawn into the surface.
        SawCut = "saw cut",
        /// A conduit that is there already.
        Existing = "existing conduit",
        /// On a wall or a frame, above the ground.
        Surface = "on the surface",
    }
}

site_words! {
    /// What lies on top of a way.
    pub enum Surfacing {
        /// Bare soil or planted beds.
        Soil = "soil",
        /// Lawn.
        Lawn = "lawn",
        /// Gravel, shell or crushed stone.
        Gravel = "gravel",
        /// Pavers that are lifted and laid again.
        Pavers = "pavers",
        /// Asphalt.
        Asphalt = "asphalt",
        /// Concrete.
        Concrete = "concrete",
        /// None: a wall, a frame.
        Bare = "none",
    }
}

record! {
    /// A point at which ways meet, or at which something is reached.
    pub struct WayPoint {
        /// Name, unique on the site.
        id: Id,
        /// Where it is.
        at: Option<Position>,
        /// Things that are wired from here: devices, operators, enclosures, supplies, batteries, panels.
        serves: Vec<Id>,
    }
}

record! {
    /// A way that may be taken from one point to another.
    pub struct Way {
        /// Name, unique on the site.
        id: Id,
        /// The point at which it begins.
        from: Id,
        /// The point at which it ends.
        to: Id,
        /// Corners between the two, in order.
        via: Vec<Position>,
        /// How it is made.
        by: Option<MadeBy>,
        /// What lies on top of it.
        surface: Option<Surfacing>,
        /// Conduits that lie in it; a way without any is allowed and not taken.
        conduits: Vec<Id>,
        /// It is dug by hand wherever something is buried nearby.
        by_hand: Option<bool>,
    }
}

record! {
    /// What a length of way costs, everything put back as it was.
    pub struct Digging {
        /// How the way is made.
        by: MadeBy,
        /// What lies on top of it.
        surface: Option<Surfacing>,
        /// Price of the length below.
        price: Option<Price>,
        /// Length that the price is for.
        price_length: Option<Measured<Length>>,
    }
}

record! {
    /// Ground that no way may cross: roots, a septic field, a footing.
    pub struct KeepOff {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        what: Option<Text>,
        /// Corners of its outline, in order.
        outline: Vec<Position>,
        /// How it may be crossed all the same.
        lets: Vec<MadeBy>,
    }
}

record! {
    /// What was asked, marked and searched before the first cut.
    pub struct Locate {
        /// Day on which the locate was asked for, with its number.
        asked: Option<Date>,
        /// Number of the request.
        ticket: Option<Text>,
        /// Day on which the marks were seen on the ground and photographed.
        marks_seen: Option<Date>,
        /// The owner's own lines behind the meter were traced too.
        private_traced: Option<bool>,
        /// Slabs that are cut or drilled were searched for heating and stressed cables; yes where there is none.
        slabs_searched: Option<bool>,
        /// Distance from a mark within which the ground is opened by hand only, by the ticket or the owner of the line.
        by_hand_within: Option<Measured<Length>>,
        /// Foundations that are dug by hand because something is buried nearby.
        by_hand: Vec<Id>,
    }
}

record! {
    /// A line that is buried already.
    pub struct Buried {
        /// Name, unique on the site.
        id: Id,
        /// What it is, and whose.
        what: Option<Text>,
        /// Corners of its line as marked, in order.
        line: Vec<Position>,
        /// Distance within which the ground is opened by hand only, where this line asks for more than the rest.
        by_hand_within: Option<Measured<Length>>,
    }
}

site_words! {
    /// What stands at a mark.
    pub enum Standing {
        /// Water that stands.
        Water = "standing water",
        /// Water that runs.
        Running = "running water",
        /// Snow where it falls.
        Snow = "snow",
        /// Snow that a plow has heaped.
        Heap = "plow heap",
    }
}

record! {
    /// How high water or snow has stood.
    pub struct WaterLine {
        /// Name, unique on the site.
        id: Id,
        /// What stands there.
        what: Option<Standing>,
        /// Outline of where it stands; the whole site when missing.
        outline: Vec<Position>,
        /// Its level, of snow that of its top, above the finished surface at the gate line.
        level: Option<Signed<Length>>,
        /// Who says so, or the mark that shows it.
        seen: Option<Text>,
        /// Things below it that are built for it and drain.
        built_for: Vec<Id>,
    }
}

record! {
    /// How a conduit is laid and closed.
    pub struct Laid {
        /// A warning tape lies above it.
        warning_tape: Option<bool>,
        /// A slip or expansion fitting where it rises, or a rise that is free to move.
        slip_fitting: Option<bool>,
        /// What seals its first end; nothing needed in a pit.
        seal_from: Option<Text>,
        /// What seals its second end.
        seal_to: Option<Text>,
        /// Where its low point drains, where neither end is a pit.
        drain: Option<Text>,
        /// Distance to the nearest conduit with mains in the same way.
        from_mains: Option<Measured<Length>>,
    }
}

record! {
    /// A pit or handhole under a cover: conduits name it as an end.
    pub struct Pit {
        /// The name by which conduits call it.
        name: Text,
        /// Inner length.
        length: Option<Measured<Length>>,
        /// Inner width.
        width: Option<Measured<Length>>,
        /// Inner depth.
        depth: Option<Measured<Length>>,
        /// Where its water goes.
        drain: Option<Text>,
    }
}

record! {
    /// The opening in the base of what stands on a foundation, through which its conduits come up.
    pub struct BaseOpening {
        /// One corner of it, at the top of the foundation.
        from: Option<Position>,
        /// The corner across.
        to: Option<Position>,
    }
}

record! {
    /// How a conduit ends above a foundation.
    pub struct StubEnd {
        /// Its height above the top of the foundation.
        height: Option<Measured<Length>>,
        /// It has a bushing.
        bushing: Option<bool>,
        /// It was capped until its cables were drawn.
        capped: Option<bool>,
    }
}
