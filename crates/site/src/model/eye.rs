//! What a camera is made of and is for, what is recorded, and what strong light does to whatever looks.

use crate::model::Beyond;
use crate::{Date, Id, Position, Text};
use quantity::{Angle, Length, Measured, Ratio, Time, Velocity};

record! {
    /// Lens and sensor of a camera, as its data sheet has them and as it is hung.
    pub struct Lens {
        /// Width of the sensor.
        sensor_width: Option<Measured<Length>>,
        /// Pixels across the picture that is recorded.
        pixels_across: Option<u32>,
        /// Pixels from its upper to its lower edge.
        pixels_down: Option<u32>,
        /// Focal length, as bought or as set.
        focal_length: Option<Measured<Length>>,
        /// How far its axis points below level.
        tilt: Option<Measured<Angle>>,
        /// How far the camera is turned about its axis, clockwise as seen from behind it; upright when missing.
        roll: Option<Measured<Angle>>,
        /// Longest exposure, as set for the night.
        shutter: Option<Measured<Time>>,
        /// Range of its own infrared on the data sheet.
        infrared_reach: Option<Measured<Length>>,
        /// Angle of its own infrared on the data sheet.
        infrared_angle: Option<Measured<Angle>>,
        /// A dome or a window stands before lens and infrared alike.
        behind_glass: Option<bool>,
    }
}

site_words! {
    /// How much detail a picture has to show (IEC 62676-4, the editions of 2015 and of 2025).
    pub enum ImageLevel {
        /// Movement in an area (2015).
        Monitor = "monitor",
        /// That somebody is there (2015).
        Detect = "detect",
        /// How somebody is dressed and moves (2015).
        Observe = "observe",
        /// Whether it is somebody already known (2015).
        Recognize = "recognize",
        /// A stranger beyond doubt (2015).
        Identify = "identify",
        /// The scene as a whole (2025).
        Overview = "overview",
        /// The outline of people (2025).
        Outline = "outline",
        /// People told from each other roughly (2025).
        Discern = "discern",
        /// Features perceived (2025).
        Perceive = "perceive",
        /// Features described (2025).
        Characterize = "characterize",
        /// Somebody confirmed (2025).
        Validate = "validate",
        /// Closest scrutiny (2025).
        Scrutinize = "scrutinize",
    }
}

record! {
    /// What the picture of a camera is for.
    pub struct Picture {
        /// Corners of the area that has to be in it, one after the other around it, each at the height at which it counts.
        area: Vec<Position>,
        /// Share of that area that may be hidden while the leaf is somewhere; none when missing.
        may_hide: Option<Measured<Ratio>>,
        /// The place that matters: the face at the window, the plate at the bar.
        target: Option<Position>,
        /// Direction in which that face or plate looks, counter-clockwise from +x.
        target_facing: Option<Measured<Angle>>,
        /// Fastest that it passes there; zero where it stands.
        target_speed: Option<Measured<Velocity>>,
        /// Detail that it has to show there.
        level: Option<ImageLevel>,
        /// Width of the plates that have to be read there.
        plate_width: Option<Measured<Length>>,
        /// Pixels across a plate that the software which reads it asks for.
        plate_pixels: Option<u32>,
        /// Day on which it was looked at by night: headlamps on, leaf moving, lens wet.
        night_seen: Option<Date>,
    }
}

record! {
    /// What is recorded of what a camera sees and hears.
    pub struct Recording {
        /// Sound is recorded.
        sound: Option<bool>,
        /// How long pictures are kept.
        kept: Option<Measured<Time>>,
        /// Boundaries beyond which the picture is masked.
        masked: Vec<Id>,
        /// Signs that tell people of it before they are in the picture.
        notice: Vec<Id>,
        /// Who may look at it.
        viewers: Option<Text>,
    }
}

site_words! {
    /// What a device does while strong light blinds it.
    pub enum Blinded {
        /// It reports, as if somebody stood there: the gate stands or stops.
        Reports = "reports",
        /// It says that all is clear.
        SaysClear = "says clear",
        /// Its picture or display is washed out.
        WashedOut = "washed out",
    }
}

record! {
    /// What strong light does to a device that looks, or that is looked at.
    pub struct StrongLight {
        /// How far off its axis, or off the plane of its field, light still gets into its receiver.
        acceptance: Option<Measured<Angle>>,
        /// What it does while strong light blinds it.
        blinded: Option<Blinded>,
        /// Day on which that was tried, with the sun or a strong lamp on its axis.
        tried: Option<Date>,
        /// It has a display that drivers read.
        display: Option<bool>,
        /// Angle above its axis from which a hood keeps the sun off.
        hood: Option<Measured<Angle>>,
        /// Hours in a year for which the owner accepts the sun in it.
        accepted: Option<Measured<Time>>,
    }
}

record! {
    /// What the law of the place lets a camera record, and who said so.
    pub struct RecordingLaw {
        /// Who was asked, or where it was read.
        asked: Option<Text>,
        /// Day on which that was.
        on: Option<Date>,
        /// Longest that pictures may be kept; missing where the law sets no limit.
        kept: Option<Measured<Time>>,
        /// Sound may be recorded.
        sound: Option<bool>,
        /// What beyond the boundary may be in the picture without a mask.
        may_show: Vec<Beyond>,
        /// A sign has to tell people of it.
        notice: Option<bool>,
    }
}
