//! What is taken for granted of drivers where the site does not say.

use crate::asking::{Asking, End};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Time};
use site::LaneTraffic;

/// Gap between waiting vehicles, in meters: 5 ft.
const GAP: f64 = 1.524;
/// Time from the tail of one to the front of the next, in seconds.
const CLOSE: f64 = 1.5;
/// Time that a driver who stands takes to set off, in seconds.
pub(super) const SET_OFF: f64 = 2.0;
/// Time to turn a leaf back, where none was measured, in seconds.
pub(super) const TURN_BACK: f64 = 1.0;

static STORED: Source = Source {
    work: "25 ft of lane for each waiting car of 20 ft",
    clause: "",
    evidence: Evidence::Seen,
    seen: "a textbook's problem of a ramp, and an entry study in a city record: publicdocs.santa-ana.org/WebLink/1/doc/53013/Page226.aspx",
};

/// How close drivers follow.
pub(crate) static HEADWAY: Source = Source {
    work: "drivers who follow close are 1.5 to 2 s behind; one who stands sets off in 2 s",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice in traffic counts",
};

/// Gap between waiting vehicles.
pub(super) fn gap<'s>(asking: &mut Asking<'s>, traffic: Option<&'s LaneTraffic>) -> Length {
    let read = traffic.and_then(|traffic| {
        let key = (&traffic.origin, "gap");
        let gap = traffic.gap.as_ref()?;
        asking.read_at(key, Some(gap), End::High).ok()
    });
    read.unwrap_or_else(|| {
        asking.rest_on(&STORED);
        Length::from_base(GAP)
    })
}

/// Time from the tail of one to the front of the next.
pub(crate) fn headway<'s>(asking: &mut Asking<'s>, traffic: Option<&'s LaneTraffic>) -> Time {
    let read = traffic.and_then(|traffic| {
        let key = (&traffic.origin, "headway");
        let headway = traffic.headway.as_ref()?;
        asking.read_at(key, Some(headway), End::Low).ok()
    });
    read.unwrap_or_else(|| {
        asking.rest_on(&HEADWAY);
        Time::from_base(CLOSE)
    })
}
