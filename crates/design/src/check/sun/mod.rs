//! Low sun: in receivers and scanners, in pictures and displays, in drivers' eyes.

pub(crate) mod beam;
pub(crate) mod picture;

use formula::{Evidence, Source};

static POSITION: Source = Source {
    work: "NREL/TP-560-34302, Solar Position Algorithm for Solar Radiation Applications, with its refraction",
    clause: "",
    evidence: Evidence::Seen,
    seen: "its printed example; a public library that follows it; each five minutes of a common year within a thousandth of a degree of it",
};
