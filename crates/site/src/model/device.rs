//! Everything that senses, identifies, speaks, shows, locks or switches.

use crate::model::{
    AirAtLens, Answering, Clock, Coil, Command, CurrentKind, DataLine, DataPort, Decision, Draws,
    Ethernet, Failing, FieldMount, Guarded, Lens, Link, LockTiming, LoopDetector, LoopSetup,
    Monitoring, MountedFront, Network, OnVehicle, Optics, Picture, Recorder, Recording,
    SafetyPapers, SignalContact, Signals, Speech, Station, Stream, StrongLight, SupervisedLoop,
    Surge,
};
use crate::{Id, Position, Text};
use quantity::{
    Angle, ConductorSize, Current, Force, ForcePerLength, Frequency, Length, Measured, Power,
    Temperature, Time, Voltage,
};

site_words! {
    /// What a device is.
    pub enum DeviceKind {
        /// Photo-eye with sender and receiver at two ends.
        ThroughBeam = "through-beam photo-eye",
        /// Photo-eye with a reflector at the far end.
        Reflective = "reflective photo-eye",
        /// Strip that reports when pressed.
        ContactEdge = "contact edge",
        /// Sensor that watches a flat field.
        AreaScanner = "area scanner",
        /// Buried loop with its detector.
        Loop = "loop",
        /// Reader of cards, codes or phones.
        Reader = "reader",
        /// Intercom station.
        Intercom = "intercom",
        /// Keypad.
        Keypad = "keypad",
        /// Camera.
        Camera = "camera",
        /// Radio receiver, transmitter or link.
        Radio = "radio",
        /// Light that warns or shows the way.
        WarningLight = "warning light",
        /// Powered lock or its release.
        Lock = "lock",
        /// Access controller.
        AccessController = "access controller",
        /// Network switch.
        NetworkSwitch = "network switch",
        /// Power injector on a data cable.
        Injector = "injector",
        /// Device that carries data cables, and power over them, farther than one run.
        Extender = "extender",
        /// Recorder of pictures.
        Recorder = "recorder",
        /// Router: guards the crossings between network segments, and the way to the internet.
        Router = "router",
        /// Control worked by hand: button, key switch, fire key box.
        Control = "control",
        /// Surge protective device.
        SurgeProtector = "surge protector",
    }
}

site_words! {
    /// Kind of entrapment protection by its letter (UL 325).
    pub enum ProtectionType {
        /// Inherent sensing in the operator.
        A = "A",
        /// Non-contact sensor.
        B1 = "B1",
        /// Contact sensor.
        B2 = "B2",
        /// Force limit.
        C = "C",
        /// Held control.
        D = "D",
    }
}

site_words! {
    /// A direction of motion.
    pub enum Direction {
        /// While the gate opens.
        Opening = "opening",
        /// While the gate closes.
        Closing = "closing",
    }
}

site_words! {
    /// Class of power over Ethernet (IEEE 802.3).
    pub enum PoeClass {
        /// Class 1.
        Class1 = "1",
        /// Class 2.
        Class2 = "2",
        /// Class 3.
        Class3 = "3",
        /// Class 4.
        Class4 = "4",
        /// Class 5.
        Class5 = "5",
        /// Class 6.
        Class6 = "6",
        /// Class 7.
        Class7 = "7",
        /// Class 8.
        Class8 = "8",
    }
}

site_words! {
    /// What a lock does when power is lost.
    pub enum PowerLoss {
        /// It opens.
        FailSafe = "fail-safe",
        /// It stays shut.
        FailSecure = "fail-secure",
    }
}

record! {
    /// A device.
    pub struct Device {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        kind: DeviceKind,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// What it does here, in words for the schedule.
        purpose: Option<Text>,
        /// The gate it belongs to.
        gate: Option<Id>,
        /// The leaf that carries it, where it moves with one.
        carried_by: Option<Id>,
        /// Where it is.
        at: Option<Position>,
        /// Its other end: receiver, reflector, end of the strip, far corner of the loop.
        to: Option<Position>,
        /// Direction in which it looks, counter-clockwise from +x.
        facing: Option<Measured<Angle>>,
        /// Enclosure in which it is mounted.
        enclosure: Option<Id>,
        /// Kind of entrapment protection that it counts as; missing when it does not protect people.
        protection: Option<ProtectionType>,
        /// Directions of motion in which it acts.
        guards: Vec<Direction>,
        /// Zone that it watches, in words: `"leading edge"`.
        zone: Option<Text>,
        /// The operator tests it at least once a cycle.
        monitored: Option<bool>,
        /// How the operator finds out that it has failed.
        monitoring: Option<Monitoring>,
        /// What its papers declare about its use as protection of people.
        safety: Option<SafetyPapers>,
        /// The leaf stands before it touches the test body, tried wherever it is watched: no contact can happen there.
        prevents_contact: Option<bool>,
        /// Light of a photo-eye, by its data sheet.
        optics: Option<Optics>,
        /// Distance of the nearest shiny face from the axis of its beam: wet paving, glass, stainless steel, a car's door.
        shiny_distance: Option<Measured<Length>>,
        /// How dirty the air and its lenses get.
        air: Option<AirAtLens>,
        /// Signal path to the operator, where it moves with a leaf.
        link: Option<Link>,
        /// Fuse of its circuit: devices with the same one go dead together.
        fuse: Option<Id>,
        /// Input of the controller that it is wired to, as marked: devices on one input share its relay.
        input: Option<Text>,
        /// From detection to the change of its output.
        response_time: Option<Measured<Time>>,
        /// From its trip to the standstill of the leaf, at the running speed: ten readings, each as it was read.
        stopped_after: Vec<Measured<Time>>,
        /// Smallest object that it surely sees.
        detection_capability: Option<Measured<Length>>,
        /// Range on the data sheet.
        range: Option<Measured<Length>>,
        /// Angle of its field or beam.
        field_angle: Option<Measured<Angle>>,
        /// Corners of the field that an area scanner watches, one after the other around it, as chalked on the ground; its
        /// height is that of the scanner.
        field: Vec<Position>,
        /// How far a contact edge is pressed before it reports.
        actuation_travel: Option<Measured<Length>>,
        /// Travel left in a contact edge after it has reported.
        soft_travel: Option<Measured<Length>>,
        /// Force for each unit of length that a contact edge is pressed while it is soft, by its data sheet's curve: the force
        /// where it is soft no more, over the travel up to there.
        stiffness: Option<Measured<ForcePerLength>>,
        /// Force for each further unit of length once a contact edge is pressed flat, by the same curve.
        hard_stiffness: Option<Measured<ForcePerLength>>,
        /// Supply, battery or injector that feeds it.
        supply: Option<Id>,
        /// Voltage on the nameplate.
        voltage: Option<Measured<Voltage>>,
        /// Least voltage at which it works.
        least_voltage: Option<Measured<Voltage>>,
        /// Greatest voltage that it stands.
        greatest_voltage: Option<Measured<Voltage>>,
        /// Current in use.
        current: Option<Measured<Current>>,
        /// Greatest short current.
        peak_current: Option<Measured<Current>>,
        /// Current at night: infrared, lamps and heater on.
        night_current: Option<Measured<Current>>,
        /// Greatest current in the moment in which it is switched on.
        inrush: Option<Measured<Current>>,
        /// Kind of current that it takes.
        takes: Option<CurrentKind>,
        /// How its current follows its voltage.
        draws: Option<Draws>,
        /// Thickest conductor that its terminals take.
        largest_conductor: Option<ConductorSize>,
        /// Its coil, where it is switched by one.
        coil: Option<Coil>,
        /// Its signal contact.
        contact: Option<SignalContact>,
        /// Its data port on a line of two wires.
        data_port: Option<DataPort>,
        /// Power that it takes over the data cable in its worst hour (heater, infrared).
        power: Option<Measured<Power>>,
        /// Class of power over Ethernet that it asks for, or gives.
        poe_class: Option<PoeClass>,
        /// Least voltage at the ports of a switch or injector.
        port_voltage: Option<Measured<Voltage>>,
        /// Ports of a switch.
        ports: Option<u32>,
        /// Power that a switch or injector can give on all ports together.
        power_budget: Option<Measured<Power>>,
        /// Heat that it gives off inside an enclosure.
        heat: Option<Measured<Power>>,
        /// Highest air temperature on its data sheet.
        hottest: Option<Measured<Temperature>>,
        /// Lowest air temperature on its data sheet.
        coldest: Option<Measured<Temperature>>,
        /// What it does when it sees a vehicle; a photo-eye, scanner or edge without it acts in the directions that it guards.
        on_vehicle: Vec<OnVehicle>,
        /// How long its output stays on after the vehicle has left, as set on its detector.
        drop_out: Option<Measured<Time>>,
        /// Its output stays on for as long as the vehicle stands there, however long that is.
        stays_on: Option<bool>,
        /// Turns of a loop.
        turns: Option<u32>,
        /// What a lock does when power is lost.
        on_power_loss: Option<PowerLoss>,
        /// Force that a lock holds.
        holding_force: Option<Measured<Force>>,
        /// Side load on its bolt or keeper at which a lock still lets go.
        greatest_side_load: Option<Measured<Force>>,
        /// Radio frequency.
        frequency: Option<Measured<Frequency>>,
        /// What it makes the gate do, each with its own contact.
        does: Vec<Command>,
        /// Height of the eyes of whoever works it, above the finished surface at the gate line.
        eye_height: Option<Measured<Length>>,
        /// How it is wired, where it is a surge protector.
        surge: Option<Surge>,
        /// A leaf that is told to start, or would close by itself, while it is blocked does not start: tried.
        keeps_from_starting: Option<bool>,
        /// How it speaks to its controller, where it is a reader or a keypad.
        data_line: Option<DataLine>,
        /// The loop of its contact with end resistors.
        supervised_loop: Option<SupervisedLoop>,
        /// What somebody holds who unscrews it.
        station: Option<Station>,
        /// How it is kept from those who shall not work it.
        guarded: Option<Guarded>,
        /// When it lets go and holds, where it is a lock.
        lock: Option<LockTiming>,
        /// What it tells people.
        signals: Option<Signals>,
        /// What is heard over it, where it is an intercom.
        speech: Option<Speech>,
        /// Who answers its calls.
        answering: Option<Answering>,
        /// How a loop is laid and set, and what was read at the cabinet.
        loop_setup: Option<LoopSetup>,
        /// The detector of a loop, by its data sheet.
        loop_detector: Option<LoopDetector>,
        /// What its output says when something of it fails, where it sees vehicles.
        failing: Option<Failing>,
        /// How a scanner, radar or ultrasonic detector hangs and what its field is set to.
        field_mount: Option<FieldMount>,
        /// Its place on the data network.
        network: Option<Network>,
        /// Its ports for data cables.
        ethernet: Option<Ethernet>,
        /// Pictures that it sends, where it is a camera.
        stream: Option<Stream>,
        /// What it keeps, where it is a recorder.
        recorder: Option<Recorder>,
        /// Its clock.
        clock: Option<Clock>,
        /// Where is decided whether it opens the gate.
        decision: Option<Decision>,
        /// Lens and sensor, where it is a camera.
        lens: Option<Lens>,
        /// What its picture is for, where it is a camera.
        picture: Option<Picture>,
        /// What is recorded of it, where it is a camera.
        recording: Option<Recording>,
        /// What strong light does to it.
        strong_light: Option<StrongLight>,
        /// Remarks.
        note: Option<Text>,
        /// Its front as it is mounted in an enclosure.
        front: Option<MountedFront>,
    }
}
