//! What is in an enclosure, with its size, and where the site says it is.

use crate::plan::gate::nominal;
use quantity::{Length, Measured};
use site::{Enclosure, Id, LooseThing, MountedFront, MountingRail, Site};

/// Something in an enclosure.
#[derive(Debug, Clone)]
pub(crate) struct Content {
    /// Its name, or what it is.
    pub(crate) name: String,
    /// How many of it lie side by side.
    pub(crate) count: u32,
    /// Width of one (m).
    pub(crate) width: Option<f64>,
    /// Height of one (m).
    pub(crate) height: Option<f64>,
    /// Where it is.
    pub(crate) place: Place,
}

/// Where something is in an enclosure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Place {
    /// Its lower left corner on the panel (m).
    At(f64, f64),
    /// On a rail, counted from zero, behind something whose width is not written.
    Behind(usize),
    /// On a rail; its lower edge is not known, since its height or that of the rail is not written: where it begins (m).
    Along(usize, f64),
    /// Nowhere written.
    Unwritten,
}

impl Content {
    /// Its width as it lies there (m).
    pub(crate) fn wide(&self) -> Option<f64> {
        self.width.map(|width| width * f64::from(self.count))
    }

    /// Name, and how many there are.
    pub(crate) fn title(&self) -> String {
        if self.count > 1 {
            format!("{} × {}", self.count, self.name)
        } else {
            self.name.clone()
        }
    }
}

/// A rail with how much of it is taken.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rail {
    /// Where it begins on the panel (m).
    pub(crate) from: f64,
    /// Height of its middle on the panel (m).
    pub(crate) up: f64,
    /// Its length (m).
    pub(crate) length: f64,
    /// Length that is taken, as far as widths are written (m).
    pub(crate) taken: f64,
    /// Everything on it has a width.
    pub(crate) whole: bool,
}

/// What is in an enclosure, and its rails.
#[derive(Debug, Clone, Default)]
pub(crate) struct Contents {
    pub(crate) things: Vec<Content>,
    /// A rail of which place or length is not written is missing here.
    pub(crate) rails: Vec<Option<Rail>>,
}

/// Everything in an enclosure, those on rails first, in their order.
pub(crate) fn contents(site: &Site, enclosure: &Enclosure) -> Contents {
    let mut left = fronts(site, enclosure);
    let mut found = Contents::default();
    let Some(panel) = &enclosure.panel else {
        found.things = left;
        return found;
    };
    for (number, rail) in panel.rails.iter().enumerate() {
        let held: Vec<Content> = rail
            .holds
            .iter()
            .map(|name| take(&mut left, name.as_str()))
            .collect();
        found.rails.push(lay(rail, number, held, &mut found.things));
    }
    for loose in &panel.loose {
        found
            .things
            .push(stand(loose, take(&mut left, loose.what.as_str())));
    }
    found.things.append(&mut left);
    found
}

/// Lays things on a rail from left to right.
fn lay(
    rail: &MountingRail,
    number: usize,
    held: Vec<Content>,
    things: &mut Vec<Content>,
) -> Option<Rail> {
    let (from, up) = (
        meters(rail.from_left.as_ref()),
        meters(rail.from_bottom.as_ref()),
    );
    let between = meters(rail.between.as_ref()).unwrap_or(0.0);
    let mut taken = 0.0;
    let mut whole = true;
    for (at, mut thing) in held.into_iter().enumerate() {
        if at > 0 {
            taken += between;
        }
        thing.place = match (from, up, thing.height) {
            (Some(_), _, _) if !whole => Place::Behind(number),
            (Some(from), Some(up), Some(height)) => Place::At(from + taken, up - height / 2.0),
            (Some(from), _, _) => Place::Along(number, from + taken),
            _ => Place::Unwritten,
        };
        match thing.wide() {
            Some(wide) => taken += wide,
            None => whole = false,
        }
        things.push(thing);
    }
    Some(Rail {
        from: from?,
        up: up?,
        length: meters(rail.length.as_ref())?,
        taken,
        whole,
    })
}

fn stand(loose: &LooseThing, mut thing: Content) -> Content {
    thing.width = thing.width.or(meters(loose.width.as_ref()));
    thing.height = thing.height.or(meters(loose.height.as_ref()));
    if let (Some(from), Some(up)) = (
        meters(loose.from_left.as_ref()),
        meters(loose.from_bottom.as_ref()),
    ) {
        thing.place = Place::At(from, up);
    }
    thing
}

/// Takes a thing out of those that are left; one that is not there stands for itself.
fn take(left: &mut Vec<Content>, name: &str) -> Content {
    match left.iter().position(|thing| thing.name == name) {
        Some(at) => left.remove(at),
        None => Content {
            name: name.to_owned(),
            count: 1,
            width: None,
            height: None,
            place: Place::Unwritten,
        },
    }
}

fn fronts(site: &Site, enclosure: &Enclosure) -> Vec<Content> {
    let here = |id: Option<&Id>| id == Some(&enclosure.id);
    let content = |name: &Id, front: Option<&MountedFront>| Content {
        name: name.to_string(),
        count: 1,
        width: front.and_then(|front| meters(front.width.as_ref())),
        height: front.and_then(|front| meters(front.height.as_ref())),
        place: Place::Unwritten,
    };
    let supplies = site.supply.iter().filter(|it| here(it.enclosure.as_ref()));
    let batteries = site.battery.iter().filter(|it| here(it.enclosure.as_ref()));
    let devices = site.device.iter().filter(|it| here(it.enclosure.as_ref()));
    let mounted = enclosure.mounted.iter().map(|mounted| Content {
        name: mounted.what.to_string(),
        count: mounted.count.unwrap_or(1),
        width: meters(mounted.width.as_ref()),
        height: meters(mounted.height.as_ref()),
        place: Place::Unwritten,
    });
    supplies
        .map(|it| content(&it.id, it.front.as_ref()))
        .chain(batteries.map(|it| content(&it.id, it.front.as_ref())))
        .chain(devices.map(|it| content(&it.id, it.front.as_ref())))
        .chain(mounted)
        .collect()
}

/// A nominal length (m).
pub(crate) fn meters(value: Option<&Measured<Length>>) -> Option<f64> {
    nominal(value).map(quantity::Quantity::base)
}
