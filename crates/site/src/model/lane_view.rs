//! What drivers reach, see and do on a lane: reader, turning place, way out onto the road, meeting, the gate at night.

use crate::{Id, Position, Signed, Text};
use quantity::{Length, Measured, Ratio, Velocity};

site_words! {
    /// On which side of a vehicle its driver sits.
    pub enum DriverSide {
        /// On the left.
        Left = "left",
        /// On the right.
        Right = "right",
    }
}

record! {
    /// Where the driver of a vehicle sits.
    pub struct DriverPlace {
        /// Side on which the driver sits.
        side: Option<DriverSide>,
        /// Middle of the open window above the ground, taped on the lowest and the tallest of its kind.
        window: Option<Measured<Length>>,
        /// How it is let in without reaching for anything: `"key switch on the post"`, `"tag on the windshield"`.
        let_in_by: Option<Text>,
    }
}

record! {
    /// What drivers reach for beside a lane.
    pub struct LanePedestal {
        /// Faces that drivers reach for: readers, keypads, intercoms.
        head: Vec<PedestalHead>,
        /// From the flank of a vehicle to the faces, as usual drivers stop there, taped.
        gap: Option<Measured<Length>>,
        /// How far a driver reaches out of the window, taped with the shortest; 20 in when missing.
        reach: Option<Measured<Length>>,
        /// Side of the lane on which it stands, for who comes in.
        side: Option<DriverSide>,
        /// A car stopped there with the foot off the brake stays where it is.
        stays_put: Option<bool>,
    }
}

record! {
    /// A face that drivers reach for.
    pub struct PedestalHead {
        /// The device.
        device: Id,
        /// Height of its middle above the ground on which the wheels stand, taped.
        height: Option<Measured<Length>>,
    }
}

site_words! {
    /// What a driver does who is refused.
    pub enum TurnBackWay {
        /// Turns round on a clear circle before the gate.
        Circle = "turning circle",
        /// Backs into an arm beside the lane and drives out forward.
        Hammerhead = "hammerhead",
        /// Leaves by a lane that branches off before the gate.
        EscapeLane = "escape lane",
        /// Is let in by somebody, turns round inside and is let out.
        LetThrough = "let through and back",
        /// Backs out the way it came.
        BacksOut = "backs out",
    }
}

record! {
    /// Where a driver goes who is refused or came to the wrong gate.
    pub struct TurnBack {
        /// What the driver does.
        way: Option<TurnBackWay>,
        /// Diameter of the clear circle.
        diameter: Option<Measured<Length>>,
        /// Length of the arm, or width of the escape lane.
        arm: Option<Measured<Length>>,
        /// Who lets the driver through at every hour at which somebody may come.
        let_through_by: Option<Text>,
        /// Who backs out does not come onto the road or a footpath.
        clear_of_road: Option<bool>,
        /// Length of the dead end behind the gate along which fire engines drive; 0 where they drive through.
        dead_end: Option<Measured<Length>>,
        /// Turning place for fire engines at its end, as the fire service approved it.
        fire_turning: Option<Text>,
    }
}

record! {
    /// What a driver sees who leaves.
    pub struct ExitSight {
        /// The eye of the lowest driver, stopped where drivers stop before footpath and road.
        eye: Option<Position>,
        /// Speed at which vehicles roll over the footpath.
        exit_speed: Option<Measured<Velocity>>,
        /// People walk or ride across the way out.
        people_cross: Option<bool>,
        /// Fastest of those who cross.
        crossing_speed: Option<Measured<Velocity>>,
        /// The line on which they come, from far on one side to far on the other.
        footpath: Vec<Position>,
        /// The middle of the near lane of the road, from far on one side to far on the other.
        road: Vec<Position>,
        /// Speed on that road.
        road_speed: Option<Measured<Velocity>>,
        /// Walls, hedges, parked cars and signs between the eye and them.
        hides: Vec<HidesView>,
        /// Mirror for what is hidden.
        mirror: Option<RoadMirror>,
    }
}

record! {
    /// Something that hides a view.
    pub struct HidesView {
        /// What it is.
        what: Text,
        /// One end of it at the ground.
        from: Option<Position>,
        /// The other end of it at the ground.
        to: Option<Position>,
        /// Height above the ground, planting in full growth.
        height: Option<Measured<Length>>,
    }
}

record! {
    /// A mirror at the way out.
    pub struct RoadMirror {
        /// Its middle.
        at: Option<Position>,
        /// Radius to which it is curved.
        radius: Option<Measured<Length>>,
        /// The hidden stretch is seen in it from the driver's seat, tried.
        shows_it: Option<bool>,
    }
}

site_words! {
    /// Who goes first where two vehicles meet.
    pub enum MeetingRule {
        /// Who comes in.
        IncomingFirst = "incoming first",
        /// Who leaves.
        LeavingFirst = "leaving first",
        /// Who has a green lamp.
        Lamps = "red and green lamps",
    }
}

record! {
    /// Two vehicles that meet in the opening.
    pub struct Meeting {
        /// Who goes first.
        rule: Option<MeetingRule>,
        /// How drivers know: `"priority signs, both sides"`.
        told_by: Option<Text>,
        /// Length of the place where one waits outside, clear of leaf and road, and lets the other pass.
        room_outside: Option<Measured<Length>>,
        /// Length of the place where one waits inside, clear of the leaf, and lets the other pass.
        room_inside: Option<Measured<Length>>,
        /// Drivers see each other from both places, with the gate open.
        see_each_other: Option<bool>,
    }
}

site_words! {
    /// From where somebody drives up to a gate.
    pub enum ComingFrom {
        /// From the road.
        Road = "road",
        /// From the property.
        Property = "property",
    }
}

record! {
    /// How somebody drives up to a gate at night.
    pub struct NightApproach {
        /// From where.
        from: ComingFrom,
        /// Fastest that anybody drives there.
        speed: Option<Measured<Velocity>>,
        /// Slope of the way toward the gate; above zero uphill.
        grade: Option<Signed<Ratio>>,
        /// Distance from which the gate is in a straight line of sight.
        in_view_from: Option<Measured<Length>>,
        /// Reflectors on the face of the closed leaf or arm, toward this side.
        reflectors: Option<bool>,
        /// A reflector or a lamp on the end of the leaf that stands open or half open.
        edge_marked: Option<bool>,
        /// Distance from which it was seen at night with dipped headlamps.
        seen_from: Option<Measured<Length>>,
    }
}
