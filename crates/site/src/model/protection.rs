//! How devices protect people, and what the controller does once one of them has acted or has failed.

use crate::model::{Direction, Homing, InputKind};
use crate::{Date, Id, Text};
use quantity::{Angle, Force, Length, Measured, Ratio, Time};

site_words! {
    /// How the operator finds out that a device has failed.
    pub enum Monitoring {
        /// A resistor at the end of the line: a cut and a short are both seen.
        EndResistor = "end resistor",
        /// The sender is switched off before each move and the receiver has to notice.
        SenderTest = "sender test",
        /// The device tests itself all the time and switches two outputs off when it fails.
        SelfCheck = "self-check",
        /// A signal comes by radio again and again; when it stays away the operator notices.
        RadioCheck = "radio check",
        /// A contact that is closed while all is well: a cut is seen, a short and a stuck contact are not.
        ClosedContact = "closed contact only",
        /// Nothing tests it.
        Nothing = "nothing",
    }
}

site_words! {
    /// Category of a part that does a safety function (EN ISO 13849).
    pub enum SafetyCategory {
        /// Category B.
        B = "B",
        /// Category 1.
        One = "1",
        /// Category 2: tested at intervals by the machine.
        Two = "2",
        /// Category 3.
        Three = "3",
        /// Category 4.
        Four = "4",
    }
}

site_words! {
    /// Performance level of a safety function (EN ISO 13849).
    pub enum PerformanceLevel {
        /// Level a.
        A = "a",
        /// Level b.
        B = "b",
        /// Level c.
        C = "c",
        /// Level d.
        D = "d",
        /// Level e.
        E = "e",
    }
}

record! {
    /// What the papers of a device declare about its use as protection of people.
    pub struct SafetyPapers {
        /// Its maker declares it as a safety component, to EN 12978 or the standard of its kind.
        declared: Option<bool>,
        /// Category that it reaches as wired here, monitoring counted.
        category: Option<SafetyCategory>,
        /// Performance level that it reaches as wired here.
        performance_level: Option<PerformanceLevel>,
    }
}

site_words! {
    /// Type of an optical protective device (IEC 61496).
    pub enum OpticalType {
        /// Type 2.
        Two = "2",
        /// Type 4.
        Four = "4",
    }
}

record! {
    /// Light of a photo-eye, by its data sheet.
    pub struct Optics {
        /// Light that arrives over light that is needed, printed for one range.
        gain: Option<Measured<Ratio>>,
        /// The range that this gain is printed for.
        gain_range: Option<Measured<Length>>,
        /// Diameter of its lens.
        lens: Option<Measured<Length>>,
        /// How far out of line sender and receiver may be tilted.
        tilt: Option<Measured<Angle>>,
        /// Its type; missing where none is declared.
        optical_type: Option<OpticalType>,
        /// Its light is coded or timed, so that a receiver takes no other sender for its own.
        coded: Option<bool>,
    }
}

site_words! {
    /// How dirty the air and the lenses get before somebody wipes them.
    pub enum AirAtLens {
        /// Clean.
        Clean = "clean",
        /// A little dust, moisture or film.
        SlightlyDirty = "slightly dirty",
        /// Dust, fog or film that shows.
        ModeratelyDirty = "moderately dirty",
        /// Thick dust, fog, spray or mud.
        VeryDirty = "very dirty",
    }
}

site_words! {
    /// How a device on a moving leaf is joined to the operator.
    pub enum LinkKind {
        /// Coiled cord that stretches with the leaf.
        CoilCord = "coil cord",
        /// Cable in an energy chain.
        EnergyChain = "energy chain",
        /// Loop of flexible cable at the hinge or through the shaft.
        HingeLoop = "hinge loop",
        /// Radio with a cell on the leaf.
        Radio = "radio",
        /// Light along the leaf's line, with a cell on the leaf.
        Optical = "optical",
    }
}

site_words! {
    /// Place of the leaf in its travel.
    pub enum TravelPlace {
        /// Closed.
        Closed = "closed",
        /// Half way.
        Middle = "middle",
        /// Open.
        Open = "open",
    }
}

record! {
    /// The signal path between a device on a moving leaf and the operator.
    pub struct Link {
        /// How they are joined.
        kind: Option<LinkKind>,
        /// Travel that cord or chain follows without strain, or range of radio or light on its data sheet.
        reach: Option<Measured<Length>>,
        /// Nothing crushes, snags or strains it, and no planting or metal stands in its way, at any place of the leaf.
        clear: Option<bool>,
        /// Life of its cell on the data sheet, in the coldest month where that is given.
        cell_life: Option<Measured<Time>>,
        /// Places of the leaf at which the device was tripped and the gate reacted.
        tried: Vec<TravelPlace>,
    }
}

site_words! {
    /// What still moves the gate while a protective device is missing or faulty.
    pub enum FaultMove {
        /// Nothing: it stands until somebody mends it.
        Stands = "stands still",
        /// Only a control that is held, in sight of the gate.
        HeldInSight = "held control in sight",
        /// Any control that is held, from wherever it hangs.
        AnyHeld = "any held control",
        /// It still opens by itself or on one touch, and does not close.
        OpensOnly = "opens",
        /// Everything as usual.
        AsUsual = "runs as usual",
    }
}

site_words! {
    /// What the gate does at a second event in the same travel.
    pub enum SecondEvent {
        /// It stops and stays.
        Stops = "stops",
        /// It stops, and starts back once more.
        Reverses = "reverses again",
        /// It goes on.
        GoesOn = "goes on",
    }
}

site_words! {
    /// What the gate does when power comes back.
    pub enum PowerReturn {
        /// It stands until it is told.
        Stands = "stands still",
        /// It opens.
        Opens = "opens",
        /// It closes by itself.
        Closes = "closes",
        /// It goes on where it was interrupted.
        GoesOn = "goes on",
    }
}

record! {
    /// What the controller does, as set and tried on site.
    pub struct Behavior {
        /// What still moves the gate while a protective device is missing or faulty.
        on_fault: Option<FaultMove>,
        /// Hand-held remotes and phones still move it then.
        remotes_on_fault: Option<bool>,
        /// Second event found by the operator's own sensing in the same travel.
        second_event: Option<SecondEvent>,
        /// Second event reported by a photo-eye, a scanner or an edge in the same travel.
        second_report: Option<SecondEvent>,
        /// Events in a row after which its alarm sounds; zero where it has none.
        alarm_after: Option<u32>,
        /// How long the alarm sounds when nobody stops it.
        alarm_time: Option<Measured<Time>>,
        /// Controls that set it going again after the second event.
        reset_by: Vec<Id>,
        /// Auto-close, a timer or a remote starts it again after the second event.
        restarts_itself: Option<bool>,
        /// What it does when power comes back.
        power_return: Option<PowerReturn>,
        /// How the leaf finds its ends again then.
        homing: Option<Homing>,
        /// It does so with every device that protects people in action.
        homes_protected: Option<bool>,
        /// A hold time that ran, or begins anew, closes the gate after power has come back.
        closes_after_return: Option<bool>,
        /// Which input wins over which: the highest first.
        order: Vec<InputKind>,
        /// Who agreed that the opening for the fire service overrides a stop, and when.
        fire_over_stop: Option<Text>,
        /// It still closes by itself while a device that holds it off is faulty or not plugged in, loops among them.
        closes_on_fault: Option<bool>,
        /// From the start of light or sounder to the start of the movement; zero where nothing warns.
        warns_before: Option<Measured<Time>>,
        /// It notices a command that never ends, and shows it.
        stuck_noticed: Option<bool>,
    }
}

site_words! {
    /// How the movement of a gate is commanded; the least watched way counts.
    pub enum GateControl {
        /// It moves only while a control is held, in view of the whole gate.
        HoldToRun = "hold-to-run",
        /// One touch starts it, with the gate in view.
        ImpulseInView = "impulse, gate in view",
        /// One touch starts it, without the gate in view.
        ImpulseOutOfView = "impulse, gate not in view",
        /// It starts by itself: timer, detector, schedule.
        Automatic = "automatic",
    }
}

record! {
    /// Contact force measured at one point with a force meter: three readings.
    pub struct ForceTest {
        /// Leaf that was measured, where the gate has more than one.
        leaf: Option<Id>,
        /// Direction in which it moved.
        direction: Option<Direction>,
        /// Gap left to the fixed part opposite at the moment of contact.
        gap: Option<Measured<Length>>,
        /// Height of the point above the ground.
        height: Option<Measured<Length>>,
        /// Highest force of each reading.
        peak: Vec<Measured<Force>>,
        /// Highest of the three forces 0.75 s after contact.
        settled: Option<Measured<Force>>,
        /// Highest of the three forces 5 s after contact.
        end: Option<Measured<Force>>,
        /// Tolerance of the meter, from its certificate.
        meter_tolerance: Option<Measured<Ratio>>,
        /// Day of the measurement.
        on: Option<Date>,
        /// Meter and its certificate, in words.
        meter: Option<Text>,
        /// Distance of the point along the leaf from its hinge line or shaft; without it the point is at the free end.
        along: Option<Measured<Length>>,
    }
}
