//! Layouts of cores that are known by a name.

use site::CorePattern;

/// A core of a pattern.
pub(super) struct Laid {
    /// Its color.
    pub(super) color: &'static str,
    /// What it carries.
    pub(super) carries: &'static str,
    /// Contact at the first end.
    pub(super) from: &'static str,
    /// Contact at the second end.
    pub(super) to: &'static str,
}

const fn core(color: &'static str, carries: &'static str, pin: &'static str) -> Laid {
    Laid {
        color,
        carries,
        from: pin,
        to: pin,
    }
}

/// The patterns of ANSI/TIA-568: they differ in which of two pairs is the second and which the third.
const A: [Laid; 8] = [
    core("white-green", "pair 3", "1"),
    core("green", "pair 3", "2"),
    core("white-orange", "pair 2", "3"),
    core("blue", "pair 1", "4"),
    core("white-blue", "pair 1", "5"),
    core("orange", "pair 2", "6"),
    core("white-brown", "pair 4", "7"),
    core("brown", "pair 4", "8"),
];
const B: [Laid; 8] = [
    core("white-orange", "pair 2", "1"),
    core("orange", "pair 2", "2"),
    core("white-green", "pair 3", "3"),
    core("blue", "pair 1", "4"),
    core("white-blue", "pair 1", "5"),
    core("green", "pair 3", "6"),
    core("white-brown", "pair 4", "7"),
    core("brown", "pair 4", "8"),
];

/// What one end sends the other receives.
const FIBERS: [Laid; 2] = [
    Laid {
        color: "first fiber",
        carries: "light from the first end",
        from: "sends",
        to: "receives",
    },
    Laid {
        color: "second fiber",
        carries: "light from the second end",
        from: "receives",
        to: "sends",
    },
];

/// The cores of a pattern, in the order of their contacts.
pub(super) fn cores(pattern: CorePattern) -> &'static [Laid] {
    match pattern {
        CorePattern::A => &A,
        CorePattern::B => &B,
        CorePattern::FiberPair => &FIBERS,
    }
}
