//! The warmth in each enclosure through a cold night, the hottest day and a typical year, as values to be drawn and listed.
//!
//! Everything at its nominal value. The cold night is as cold as a usual year gets at three in the morning, in wind; the
//! hottest day is clear and still. Where a fact is missing, what rests on it is missing, and the fact is named.

mod days;
mod facts;
mod limits;
mod year;

pub use limits::Limit;
pub use year::YearInside;

pub(crate) use days::IN_WIND;
pub(crate) use facts::STORES;

use crate::figure::Print;
use facts::Facts;
use quantity::{Energy, Power, Quantity as _, Temperature, Time};
use sim::enclosure::DayInside;
use site::{Enclosure, Site};

/// The warmth in an enclosure.
#[derive(Debug, Clone)]
pub struct Warmth {
    /// The enclosure.
    pub id: String,
    /// Facts that the site lacks, in words.
    pub missing: Vec<String>,
    /// Heat that everything in it gives off, but for the heater.
    pub inside: Option<Power>,
    /// Power of its heater; none where it has none.
    pub heater: Option<Power>,
    /// Below and above these its thermostat switches the heater on and off.
    pub thermostat: Option<(Temperature, Temperature)>,
    /// Where a cut-out in the feed of the heater opens.
    pub cut_out: Option<Temperature>,
    /// What each thing in it stands.
    pub limits: Vec<Limit>,
    /// The sun strikes faces that are written; otherwise all that it can reach looks at it all day.
    pub by_face: bool,
    /// A cold night with the heater as it works.
    pub night: Option<Followed>,
    /// The hottest day, the heater off.
    pub day: Option<Followed>,
    /// The hottest day with the thermostat stuck closed, the cut-out working.
    pub stuck: Option<Followed>,
    /// The same without a cut-out.
    pub unchecked: Option<Followed>,
    /// The dampest morning.
    pub damp: Option<Damp>,
    /// The typical year of the weather file.
    pub year: Option<YearInside>,
}

/// A day as it was followed.
#[derive(Debug, Clone)]
pub struct Followed {
    /// Air outside at each full hour by the sun, midnight first.
    pub outside: [Temperature; 24],
    /// The inside.
    pub inside: DayInside,
}

/// The dampest morning of a usual year, before sunrise.
#[derive(Debug, Clone, Copy)]
pub struct Damp {
    /// Dew point of the air.
    pub dew_point: Temperature,
    /// Air in the box.
    pub inside: Temperature,
    /// Inner face of its walls.
    pub wall: Temperature,
}

/// What the hottest day and the year of an enclosure add to a working; the steady values stand as its safe bound.
pub(crate) fn note(print: Print, warmth: &Warmth) -> Option<String> {
    let day = warmth.day.as_ref().map(|day| {
        format!(
            "Followed through that day with its mass, the inside is hottest with {}; steady heat is the safe bound, since no mass makes it hotter.",
            print.q(day.inside.hottest.1)
        )
    });
    let year = warmth.year.map(|year| {
        let hot = year.too_hot.map_or_else(String::new, |time| {
            format!(", in all {} above what gives up first", in_hours(time))
        });
        format!(
            "Through the typical year of the weather file the inside is hottest with {}{hot}.",
            print.q(year.hottest)
        )
    });
    let notes: Vec<String> = day.into_iter().chain(year).collect();
    (!notes.is_empty()).then(|| notes.join(" "))
}

/// A part of a year in whole hours.
pub(crate) fn in_hours(time: Time) -> String {
    format!("{:.0} h", time.base() / 3600.0)
}

/// An energy in whole kilowatt hours.
pub(crate) fn in_kilowatt_hours(energy: Energy) -> String {
    format!("{:.0} kWh", energy.base() / 3.6e6)
}

/// The warmth in each enclosure of a site.
pub fn warmth(site: &Site) -> Vec<Warmth> {
    site.enclosure.iter().map(|one| of(site, one)).collect()
}

pub(crate) fn of(site: &Site, enclosure: &Enclosure) -> Warmth {
    let mut facts = Facts::new(site, enclosure);
    let (night, day) = (facts.night(), facts.day());
    let (stuck, unchecked) = (facts.stuck(true), facts.stuck(false));
    let damp = facts.damp();
    let limits = limits::of(site, enclosure);
    let year = facts.year(&limits);
    Warmth {
        id: enclosure.id.to_string(),
        inside: facts.heat,
        heater: facts.heater(),
        thermostat: facts.thermostat(),
        cut_out: facts.cut_out(),
        by_face: facts.by_face(),
        limits,
        night,
        day,
        stuck: stuck.filter(|_| facts.cut_out().is_some()),
        unchecked,
        damp,
        year,
        missing: facts.missing,
    }
}

#[cfg(test)]
mod tests;
