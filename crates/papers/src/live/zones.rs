//! Hazard zones on the screen.

use crate::hazard::words::{self, Standing};
use design::zone::{ShownZone, shown};
use draw::{Anchor, Figure, Fill, Group, Hatch, Point, Screen};
use quantity::{Length, UnitSystem};
use site::{Gate, Site};

/// A hazard zone, by its number on the drawing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Zone {
    /// Its number.
    pub number: usize,
    /// How it stands: `protected as asked`, `unprotected`.
    pub standing: &'static str,
    /// What it is and what sees or feels somebody there, in sentences.
    pub words: String,
}

/// Draws the zones of a gate; `seen` makes a point of the drawing from a corner.
pub(super) fn draw(
    screen: &mut Screen,
    (site, gate): (&Site, &Gate),
    seen: impl Fn([Length; 3]) -> Point,
) -> Vec<Zone> {
    let zones = shown(site, gate);
    let units = site.site.unit_system();
    let listed = zones
        .iter()
        .enumerate()
        .map(|(index, zone)| draw_zone(screen, (index + 1, zone), units, &seen));
    listed.collect()
}

fn draw_zone(
    screen: &mut Screen,
    (number, zone): (usize, &ShownZone),
    units: UnitSystem,
    seen: &impl Fn([Length; 3]) -> Point,
) -> Zone {
    let standing = Standing::of(zone);
    let (class, said) = match standing {
        Standing::AsAsked => ("as-asked", "protected as asked"),
        Standing::InPart => ("in-part", "protected in part"),
        Standing::Unprotected => ("unprotected", "unprotected"),
        Standing::NotKnown => ("not-known", "not known"),
    };
    let words = words::remark(number, zone, units);
    let live: Vec<&str> = zone
        .live
        .iter()
        .map(|live| match live.direction {
            site::Direction::Opening => "opening",
            site::Direction::Closing => "closing",
        })
        .collect();
    let (low, high) = (seen(zone.extent.low()), seen(zone.extent.high()));
    let hatch = if standing == Standing::NotKnown {
        Hatch::unknown()
    } else {
        Hatch::wide()
    };
    screen.open(
        &Group::new(format!("zone zone-{class}"))
            .title(words.as_str())
            .data("zone", number.to_string())
            .data("live", live.join(" ")),
    );
    screen.figure(&Figure::rectangle(low, high, Fill::Hatched(hatch)));
    screen.words(
        low.middle(high),
        (0.0, 5.0),
        Anchor::Middle,
        &number.to_string(),
    );
    screen.close();
    Zone {
        number,
        standing: said,
        words,
    }
}
