//! All that a site digs, drills and drives.

use crate::asking::{Asking, Wants, pick};
use crate::check::plane::Piece;
use crate::outcome::Halt;
use crate::routes::{course, pieces};
use quantity::{Length, Measured, Quantity as _};
use site::{Electrode, Foundation, Locate, MadeBy, Site, Way};

/// How ways are written.
const WAY: &str = "[[way]]\nid = \"way-1\"\nfrom = \"wp-box\"\nto = \"wp-h1\"\nby = \"trench\"\nsurface = \"lawn\"\nconduits = [\"c-01\"]";

/// Something that is dug, with the pieces of its middle line and how far it reaches beside it.
pub(super) struct Cut<'s> {
    pub(super) name: &'s str,
    pub(super) pieces: Vec<Piece>,
    pub(super) half: f64,
    pub(super) by_hand: bool,
    pub(super) rod: bool,
}

/// All that is dug, drilled or driven.
pub(super) fn cuts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    locate: &'s Locate,
) -> Result<Vec<Cut<'s>>, Halt> {
    if site.way.is_empty() && !site.conduit.is_empty() {
        return asking.lack(&site.origin, "way", Wants::Table(WAY));
    }
    let mut all: Result<Vec<Cut<'s>>, Halt> = Ok(Vec::new());
    let mut add = |cut: Result<Option<Cut<'s>>, Halt>| match (&mut all, cut) {
        (Ok(all), Ok(cut)) => all.extend(cut),
        (all, Err(halt)) => *all = Err(halt),
        (Err(_), _) => {}
    };
    for way in site.way.iter().filter(|way| !way.conduits.is_empty()) {
        add(of_way(asking, site, way));
    }
    for foundation in &site.foundation {
        add(of_foundation(asking, foundation, locate));
    }
    for electrode in &site.electrode {
        add(of_electrode(asking, electrode));
    }
    all
}

fn of_way<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    way: &'s Way,
) -> Result<Option<Cut<'s>>, Halt> {
    let by = pick!(asking, way.by);
    let corners = course(asking, site, way);
    let (by, corners) = (by?, corners?);
    if matches!(by, MadeBy::Existing | MadeBy::Surface) {
        return Ok(None);
    }
    Ok(Some(Cut {
        name: way.id.as_str(),
        pieces: pieces(&corners),
        half: 0.0,
        by_hand: way.by_hand == Some(true),
        rod: false,
    }))
}

/// A foundation without a place of its own is dug where its posts stand, which the site tells elsewhere.
fn of_foundation<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    locate: &Locate,
) -> Result<Option<Cut<'s>>, Halt> {
    let (Some(at), false) = (&foundation.at, foundation.existing == Some(true)) else {
        return Ok(None);
    };
    let [x, y, _] = asking.position_as_written((&foundation.origin, "at"), Some(at))?;
    let mut size = |key, value: Option<&'s Measured<Length>>| {
        let read = asking.read_if_there(&foundation.origin, key, value);
        read.map_or(0.0, Length::base)
    };
    let round = size("diameter", foundation.diameter.as_ref());
    let along = size("length", foundation.length.as_ref()).max(round);
    let across = size("width", foundation.width.as_ref()).max(round);
    let (long, wide) = (along.max(across), along.min(across));
    let reach = (long - wide) / 2.0;
    let (x, y) = (x.base(), y.base());
    let piece = if along >= across {
        [(x - reach, y), (x + reach, y)]
    } else {
        [(x, y - reach), (x, y + reach)]
    };
    Ok(Some(Cut {
        name: foundation.id.as_str(),
        pieces: vec![piece],
        half: wide / 2.0,
        by_hand: locate.by_hand.contains(&foundation.id),
        rod: false,
    }))
}

fn of_electrode<'s>(
    asking: &mut Asking<'s>,
    electrode: &'s Electrode,
) -> Result<Option<Cut<'s>>, Halt> {
    if electrode.rods.is_none() {
        return Ok(None);
    }
    let [x, y, _] = asking.position_as_written((&electrode.origin, "at"), electrode.at.as_ref())?;
    let at = (x.base(), y.base());
    Ok(Some(Cut {
        name: electrode.id.as_str(),
        pieces: vec![[at, at]],
        half: 0.0,
        by_hand: false,
        rod: true,
    }))
}
