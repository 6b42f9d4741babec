//! Which core of which cable lands on which terminal.
//!
//! A cable whose cores are laid out by a pattern that has a name needs no core written down; of every other cable each core
//! is written with its two terminals, or as spare. A terminal is its mark alone, where the thing at that end of the cable
//! has terminals of its own, or strip and mark with a colon between.

mod clamp;
mod fed;
mod marks;
mod pattern;

pub use clamp::{ClampAt, clamps};
pub use fed::{Fed, fed};
pub use marks::marks;

use site::{Cable, Core, Id, Site, Terminals, Text, Wiring};

/// The end of a core.
#[derive(Debug, Clone, Copy)]
pub struct Landing<'s> {
    /// What it is in or on: an enclosure, a device, an operator.
    pub on: &'s Id,
    /// The terminals, where they are described.
    pub strip: Option<&'s Terminals>,
    /// Mark of the terminal; missing where nobody has written it.
    pub mark: Option<&'s str>,
    /// That thing is an enclosure, in which a strip goes by its own name.
    pub boxed: bool,
}

/// A core with both its ends.
#[derive(Debug, Clone, Copy)]
pub struct Landed<'s> {
    /// Its cable.
    pub cable: &'s Cable,
    /// Where the cable's cores are written down.
    pub wiring: &'s Wiring,
    /// The core as written; missing where a pattern lays it out.
    pub core: Option<&'s Core>,
    /// Its place in the cable, from 1.
    pub number: usize,
    /// Color or number by which it is told.
    pub color: Option<&'s str>,
    /// What it carries.
    pub carries: Option<&'s str>,
    /// Wire number.
    pub wire: Option<u32>,
    /// It is not used.
    pub spare: bool,
    /// Its ends, at the first and at the second end of the cable.
    pub ends: [Landing<'s>; 2],
}

/// Every core that is written down or laid out by a pattern, cable by cable.
pub fn landed(site: &Site) -> Vec<Landed<'_>> {
    site.cable
        .iter()
        .flat_map(|cable| cores(site, cable))
        .collect()
}

/// Where the cores of a cable are written down.
pub fn wiring_of<'s>(site: &'s Site, cable: &Cable) -> Option<&'s Wiring> {
    site.wiring.iter().find(|wiring| wiring.cable == cable.id)
}

fn cores<'s>(site: &'s Site, cable: &'s Cable) -> Vec<Landed<'s>> {
    let Some(wiring) = wiring_of(site, cable) else {
        return Vec::new();
    };
    if let Some(pattern) = wiring.pattern {
        let laid = pattern::cores(pattern).iter().enumerate();
        return laid
            .map(|(place, core)| Landed {
                cable,
                wiring,
                core: None,
                number: place + 1,
                color: Some(core.color),
                carries: Some(core.carries),
                wire: None,
                spare: false,
                ends: [
                    at(site, &cable.from, Some(core.from)),
                    at(site, &cable.to, Some(core.to)),
                ],
            })
            .collect();
    }
    let written = wiring.core.iter().enumerate();
    written
        .map(|(place, core)| Landed {
            cable,
            wiring,
            core: Some(core),
            number: place + 1,
            color: core.color.as_ref().map(Text::as_str),
            carries: core.carries.as_ref().map(Text::as_str),
            wire: core.wire,
            spare: core.spare == Some(true),
            ends: [
                at(site, &cable.from, core.from.as_ref().map(Text::as_str)),
                at(site, &cable.to, core.to.as_ref().map(Text::as_str)),
            ],
        })
        .collect()
}

/// The terminal that a text names at the end of a cable that is fixed to this thing.
fn at<'s>(site: &'s Site, end: &'s Id, text: Option<&'s str>) -> Landing<'s> {
    let own = |thing: &Id, mark: Option<&str>| {
        let mut strips = site
            .terminals
            .iter()
            .filter(|strip| strip.on.contains(thing));
        let first = strips.next()?;
        let has = |strip: &&Terminals| {
            mark.is_some_and(|mark| marks(strip).iter().any(|one| one == mark))
        };
        Some(if has(&first) {
            first
        } else {
            strips.find(has).unwrap_or(first)
        })
    };
    let boxed = |thing: &Id| {
        site.enclosure
            .iter()
            .any(|enclosure| enclosure.id == *thing)
    };
    let Some((head, mark)) = text.and_then(|text| text.split_once(':')) else {
        return Landing {
            on: end,
            strip: own(end, text),
            mark: text,
            boxed: boxed(end),
        };
    };
    let head = head.trim();
    let mark = Some(mark.trim());
    if let Some(strip) = site.terminals.iter().find(|strip| strip.id == *head) {
        let on = match strip.on.as_slice() {
            [only] => only,
            several => several.iter().find(|thing| *thing == end).unwrap_or(end),
        };
        return Landing {
            on,
            strip: Some(strip),
            mark,
            boxed: boxed(on),
        };
    }
    let named = site.terminals.iter().flat_map(|strip| &strip.on);
    let on = named
        .into_iter()
        .find(|thing| **thing == *head)
        .unwrap_or(end);
    let is_named = *on == *head;
    Landing {
        on,
        strip: if is_named { own(on, mark) } else { None },
        mark: if is_named { mark } else { text },
        boxed: boxed(on),
    }
}

impl Landing<'_> {
    /// The terminal as it is printed: `x1:3`, or what the terminals are on and the mark.
    pub fn printed(&self) -> Option<String> {
        let mark = self.mark?;
        Some(match self.strip {
            Some(strip) if self.boxed => format!("{}:{mark}", strip.id),
            _ => format!("{}:{mark}", self.on),
        })
    }
}

#[cfg(test)]
mod tests;
