//! A hazard zone in words: how it stands, what sees or feels somebody there, what is missing.

use design::zone::{Guarded, Live, ShownZone};
use quantity::UnitSystem;

/// How well a zone is protected, over all directions in which it is live.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Standing {
    /// As the codes ask.
    AsAsked,
    /// Something is there, and less than is asked.
    InPart,
    /// Nothing sees or feels somebody there, and something is asked.
    Unprotected,
    /// Facts are missing.
    NotKnown,
}

impl Standing {
    /// How a zone stands.
    pub(crate) fn of(zone: &ShownZone) -> Self {
        let lacks = |live: &&Live| matches!(live.guarded, Guarded::Lacks(_));
        let bare = |live: &Live| live.devices.is_empty() && !live.own_sensing;
        let unknown = |live: &Live| live.guarded == Guarded::NotKnown;
        let mut lacking = zone.live.iter().filter(lacks);
        if zone.live.iter().filter(lacks).any(bare) {
            Self::Unprotected
        } else if lacking.next().is_some() {
            Self::InPart
        } else if zone.live.iter().any(unknown) {
            Self::NotKnown
        } else {
            Self::AsAsked
        }
    }

    /// The word beside the number; none where all is as asked.
    pub(crate) fn word(self) -> Option<&'static str> {
        match self {
            Self::AsAsked => None,
            Self::InPart => Some("protected in part"),
            Self::Unprotected => Some("unprotected"),
            Self::NotKnown => Some("not known"),
        }
    }
}

/// What sees or feels somebody there in one direction: `beam-near, the drive's own sensing`.
pub(crate) fn means(live: &Live) -> String {
    let own = live
        .own_sensing
        .then(|| "the drive's own sensing".to_owned());
    let means: Vec<String> = live.devices.iter().cloned().chain(own).collect();
    if means.is_empty() {
        "nothing".to_owned()
    } else {
        means.join(", ")
    }
}

/// What is missing in one direction; empty where nothing is.
pub(crate) fn missing(live: &Live) -> String {
    match &live.guarded {
        Guarded::AsAsked => String::new(),
        Guarded::Lacks(words) => words.clone(),
        Guarded::NotKnown => "not known: facts are missing".to_owned(),
    }
}

/// What is written at a zone among many: its number, and how it stands where that is not as asked.
pub(super) fn number(number: usize, zone: &ShownZone, _: UnitSystem) -> String {
    match Standing::of(zone).word() {
        Some(word) => format!("{number} {word}"),
        None => number.to_string(),
    }
}

/// What is written at a zone that is drawn large.
pub(super) fn number_and_gap(number: usize, zone: &ShownZone, units: UnitSystem) -> String {
    format!(
        "zone {}\nleast gap {}",
        self::number(number, zone, units),
        quantity::print(zone.least_gap, units)
    )
}

/// What a number on the sheet is: place, gap, and for each direction what sees or feels somebody.
pub(crate) fn remark(number: usize, zone: &ShownZone, units: UnitSystem) -> String {
    let gap = quantity::print(zone.least_gap, units);
    let crushes = if zone.parts.is_empty() {
        String::new()
    } else {
        format!(", which crushes {}", zone.parts)
    };
    let live: Vec<String> = zone.live.iter().map(direction).collect();
    format!(
        "Zone {number}, {}: least gap {gap}{crushes}. {}",
        zone.place,
        live.join(" ")
    )
}

fn direction(live: &Live) -> String {
    let missing = match missing(live) {
        words if words.is_empty() => String::new(),
        words => format!(" ({words})"),
    };
    let (first, rest) = match live.direction {
        site::Direction::Opening => ("Opening", means(live)),
        site::Direction::Closing => ("Closing", means(live)),
    };
    format!("{first}: {rest}{missing}.")
}
