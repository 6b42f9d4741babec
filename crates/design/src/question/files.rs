//! The files of questions, in the order of the job.

/// Topic, its title, and the text of its file.
pub(super) const FILES: &[(&str, &str, &str)] = &[
    (
        "survey",
        "The survey",
        include_str!("../../questions/survey.toml"),
    ),
    (
        "leaf",
        "The leaf",
        include_str!("../../questions/leaf.toml"),
    ),
    ("wind", "Wind", include_str!("../../questions/wind.toml")),
    (
        "force",
        "Force and torque",
        include_str!("../../questions/force.toml"),
    ),
    (
        "motion",
        "Motion",
        include_str!("../../questions/motion.toml"),
    ),
    (
        "stop",
        "Stops and falling",
        include_str!("../../questions/stop.toml"),
    ),
    (
        "structure",
        "Posts, pads and track beds",
        include_str!("../../questions/structure.toml"),
    ),
    (
        "anchor",
        "Anchors",
        include_str!("../../questions/anchor.toml"),
    ),
    (
        "bollard",
        "Bollards",
        include_str!("../../questions/bollard.toml"),
    ),
    (
        "lifting",
        "Lifting",
        include_str!("../../questions/lifting.toml"),
    ),
    (
        "hazard",
        "Hazard zones",
        include_str!("../../questions/hazard.toml"),
    ),
    (
        "protect",
        "Protection of people",
        include_str!("../../questions/protect.toml"),
    ),
    (
        "walk",
        "The simulated walk test",
        include_str!("../../questions/walk.toml"),
    ),
    (
        "control",
        "Controls",
        include_str!("../../questions/control.toml"),
    ),
    ("sign", "Signs", include_str!("../../questions/sign.toml")),
    (
        "foot",
        "People on foot",
        include_str!("../../questions/foot.toml"),
    ),
    (
        "egress",
        "The way out",
        include_str!("../../questions/egress.toml"),
    ),
    (
        "fire",
        "Fire access",
        include_str!("../../questions/fire.toml"),
    ),
    (
        "vehicle",
        "Vehicles at the gate",
        include_str!("../../questions/vehicle.toml"),
    ),
    ("lane", "Lanes", include_str!("../../questions/lane.toml")),
    (
        "power",
        "Power at low voltage",
        include_str!("../../questions/power.toml"),
    ),
    ("mains", "Mains", include_str!("../../questions/mains.toml")),
    (
        "standby",
        "Standby",
        include_str!("../../questions/standby.toml"),
    ),
    (
        "solar",
        "Sun on panels",
        include_str!("../../questions/solar.toml"),
    ),
    (
        "earth",
        "Earth and bonding",
        include_str!("../../questions/earth.toml"),
    ),
    (
        "surge",
        "Surges",
        include_str!("../../questions/surge.toml"),
    ),
    (
        "enclosure",
        "Enclosures",
        include_str!("../../questions/enclosure.toml"),
    ),
    (
        "network",
        "The network",
        include_str!("../../questions/network.toml"),
    ),
    (
        "bus",
        "Data buses and readers",
        include_str!("../../questions/bus.toml"),
    ),
    (
        "release",
        "Locks and their release",
        include_str!("../../questions/release.toml"),
    ),
    (
        "intercom",
        "Intercom",
        include_str!("../../questions/intercom.toml"),
    ),
    ("radio", "Radio", include_str!("../../questions/radio.toml")),
    (
        "camera",
        "Cameras",
        include_str!("../../questions/camera.toml"),
    ),
    ("sun", "Low sun", include_str!("../../questions/sun.toml")),
    (
        "route",
        "Routes",
        include_str!("../../questions/route.toml"),
    ),
    ("pull", "Pulls", include_str!("../../questions/pull.toml")),
    (
        "join",
        "Joints and wet places",
        include_str!("../../questions/join.toml"),
    ),
    ("make", "Making", include_str!("../../questions/make.toml")),
    (
        "work",
        "Doing the work",
        include_str!("../../questions/work.toml"),
    ),
    (
        "test",
        "Commissioning tests",
        include_str!("../../questions/test.toml"),
    ),
    (
        "cable",
        "Cable records",
        include_str!("../../questions/cable.toml"),
    ),
    (
        "handover",
        "Handing over",
        include_str!("../../questions/handover.toml"),
    ),
    ("keep", "Keeping", include_str!("../../questions/keep.toml")),
    (
        "fault",
        "Faults",
        include_str!("../../questions/fault.toml"),
    ),
    (
        "record",
        "Records and security",
        include_str!("../../questions/record.toml"),
    ),
];
