//! Ways for people on foot: walk gates, where people go, where they stop, and the way out.

use crate::model::{PersonKind, PowerLoss};
use crate::{Date, Id, Position, Text};
use quantity::{Force, Length, Measured, Ratio, Time};

site_words! {
    /// What a way on foot is closed by.
    pub enum WalkWay {
        /// A leaf on hinges.
        Hinged = "hinged gate",
        /// A leaf that slides.
        Sliding = "sliding gate",
        /// Nothing: always open.
        Open = "open way",
    }
}

site_words! {
    /// Where a walk gate sits.
    pub enum WalkGatePlace {
        /// In the fence or wall, apart from the vehicle gate.
        Apart = "apart",
        /// In the leaf of the vehicle gate.
        InLeaf = "in the vehicle leaf",
    }
}

site_words! {
    /// When people can go through.
    pub enum WalkHours {
        /// At any hour.
        Always = "always",
        /// Whenever the vehicle gate is in use.
        WithVehicleGate = "with the vehicle gate",
        /// Less often than that.
        PartOfTheTime = "part of the time",
    }
}

site_words! {
    /// What keeps a walk gate shut.
    pub enum WalkLock {
        /// Nothing.
        Unlocked = "none",
        /// A latch that anybody lifts.
        Latch = "latch",
        /// A lock worked by a key.
        KeyLock = "mechanical lock",
        /// An electric strike or bolt.
        Strike = "electric strike",
        /// A magnet.
        Magnet = "magnetic lock",
    }
}

site_words! {
    /// What somebody within works to get out.
    pub enum ExitHardware {
        /// A push: nothing is locked.
        Push = "push",
        /// A lever or a handle that draws the latch.
        Lever = "lever",
        /// A bar across the leaf that draws the latch.
        PanicBar = "panic bar",
        /// A knob turned by fingers.
        ThumbTurn = "thumb turn",
        /// A button that lets an electric lock go.
        Button = "exit button",
        /// A sensor that lets an electric lock go.
        Sensor = "motion sensor",
        /// A key.
        Key = "key",
        /// A code, a card or a phone.
        Code = "code or card",
    }
}

record! {
    /// A gate or a way for people on foot.
    pub struct WalkGate {
        /// Name, unique on the site.
        id: Id,
        /// The vehicle gate that it keeps people off.
        gate: Option<Id>,
        /// What it is closed by.
        kind: Option<WalkWay>,
        /// Middle of its clear opening, at the ground.
        at: Option<Position>,
        /// Clear width with its leaf at 90°.
        clear_width: Option<Measured<Length>>,
        /// Where it sits.
        place: Option<WalkGatePlace>,
        /// When people can go through.
        usable: Option<WalkHours>,
        /// What keeps it shut.
        lock: Option<WalkLock>,
        /// What its electric lock does when power is lost.
        on_power_loss: Option<PowerLoss>,
        /// What somebody within works to get out.
        exit_by: Option<ExitHardware>,
        /// Height of its handle or latch above the ground.
        hardware_height: Option<Measured<Length>>,
        /// Force to work the handle or latch, by a pull scale.
        latch_force: Option<Measured<Force>>,
        /// Force that keeps its leaf moving, by a pull scale at the handle.
        opening_force: Option<Measured<Force>>,
        /// A closer or a spring closes it.
        closer: Option<bool>,
        /// Time in which it closes, from 90° open until it stands 12° from the latch.
        closing_time: Option<Measured<Time>>,
        /// Whole height of its threshold.
        threshold: Option<Measured<Length>>,
        /// Height of the upright part of its threshold; what is above it is beveled.
        threshold_step: Option<Measured<Length>>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// A line that people on foot, cyclists or delivery riders really take past a gate.
    pub struct FootRoute {
        /// Name, unique on the site.
        id: Id,
        /// The vehicle gate that it passes.
        gate: Option<Id>,
        /// Who takes it.
        who: Option<PersonKind>,
        /// Where from and where to, in words.
        what: Option<Text>,
        /// The line along its middle, as tracks in the grass and a morning's watching show it.
        path: Vec<Position>,
        /// Least clear width along it.
        width: Option<Measured<Length>>,
        /// Steepest slope along it, by a digital level.
        slope: Option<Measured<Ratio>>,
        /// Steepest slope across it, by a digital level.
        cross_slope: Option<Measured<Ratio>>,
        /// Widest groove, slot or grating across it; zero where there is none.
        groove: Option<Measured<Length>>,
        /// Highest lip across it: rail, frame or kerb; zero where there is none.
        lip: Option<Measured<Length>>,
    }
}

site_words! {
    /// What people on foot stop for.
    pub enum FootStopKind {
        /// Bell or intercom.
        Bell = "bell",
        /// Letter box.
        LetterBox = "letter box",
        /// Box for parcels.
        ParcelBox = "parcel box",
        /// Keypad or reader of a walk gate.
        Reader = "keypad or reader",
        /// Bins.
        Bins = "bins",
    }
}

site_words! {
    /// How somebody in a wheelchair comes up to something.
    pub enum ReachFrom {
        /// Alongside.
        Side = "side",
        /// Head-on.
        Front = "front",
    }
}

record! {
    /// Something that people on foot stop for near a gate.
    pub struct FootStop {
        /// Name, unique on the site.
        id: Id,
        /// The vehicle gate beside which it is.
        gate: Option<Id>,
        /// What it is.
        what: FootStopKind,
        /// The device that it is, where it is one.
        device: Option<Id>,
        /// Where its button, slot or handle is; missing where the device says it.
        at: Option<Position>,
        /// Where people stand who use it: middle between the feet.
        stand_at: Option<Position>,
        /// How somebody in a wheelchair comes up to it.
        approach: Option<ReachFrom>,
        /// Depth of what has to be reached over; zero where there is nothing.
        obstruction_depth: Option<Measured<Length>>,
        /// Width of the clear level ground before it.
        ground_width: Option<Measured<Length>>,
        /// Length of the clear level ground before it.
        ground_length: Option<Measured<Length>>,
        /// Force that it takes, by a gauge.
        force: Option<Measured<Force>>,
    }
}

record! {
    /// What the law or the authority asks of the way out on foot.
    pub struct Egress {
        /// A way out on foot without key or special knowledge is asked here.
        asked: Option<bool>,
        /// Who said so.
        said_by: Option<Text>,
        /// Day of their letter.
        written: Option<Date>,
        /// Most people who are inside.
        people: Option<u32>,
    }
}
