//! The way of each radio bridge from the side, as values that a drawing shows: the straight line, the room that its wave
//! takes up, the ground, and what stands beside it.

use crate::asking::Asking;
use crate::check::radio::ends::{ends, frequency, place};
use crate::check::radio::in_path::{Line, things};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{RadioLink, RadioLinkKind, Site};

/// A place on the way: distance from the antenna at the gate, height above the finished surface at the gate line.
pub type OnTheWay = (Length, Length);

/// The way of a radio bridge from the side.
#[derive(Debug, Clone, PartialEq)]
pub struct RadioProfile {
    /// The link, by its name on the site.
    pub link: String,
    /// The straight line from antenna to antenna.
    pub line: Vec<OnTheWay>,
    /// Upper edge of the first Fresnel zone.
    pub zone_top: Vec<OnTheWay>,
    /// Lower edge of the first Fresnel zone.
    pub zone_bottom: Vec<OnTheWay>,
    /// Lower edge of the room that is kept free, 60 % of that zone.
    pub kept_free: Vec<OnTheWay>,
    /// Tops of the ground and of what stands on it.
    pub ground: Vec<OnTheWay>,
    /// Tops of what comes nearest otherwise, with what it is: leaves in each position, posts, walls, parked vehicles.
    pub standing: Vec<(OnTheWay, String)>,
}

/// Places at which the zone is shown.
const PLACES: u32 = 48;
/// How many things are named.
const NAMED: usize = 3;
/// What stands farther beside the line than this is not shown, in meters.
const NEAR: f64 = 3.0;

/// The ways of the radio bridges of a site; one whose facts are missing is left out.
pub fn radio_profiles(site: &Site) -> Vec<RadioProfile> {
    let bridges = site.radio_link.iter();
    bridges
        .filter(|link| link.kind == RadioLinkKind::Bridge)
        .filter_map(|link| profile(&mut Asking::new(site.site.unit_system()), site, link).ok())
        .collect()
}

fn profile<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    link: &'s RadioLink,
) -> Result<RadioProfile, Halt> {
    let [near, far] = ends(asking, link)?;
    let line = Line {
        from: place(asking, near)?,
        to: place(asking, far)?,
        frequency: frequency(asking, site, link)?,
    };
    let length = line.level();
    let place = |along: f64, up: f64| (Length::from_base(along), Length::from_base(up));
    let mut profile = RadioProfile {
        link: link.id.to_string(),
        line: vec![place(0.0, line.from[2]), place(length, line.to[2])],
        zone_top: Vec::new(),
        zone_bottom: Vec::new(),
        kept_free: Vec::new(),
        ground: Vec::new(),
        standing: Vec::new(),
    };
    for step in 0..=PLACES {
        // Closer together toward the antennas, where the zone opens fast.
        let turn = std::f64::consts::PI * f64::from(step) / f64::from(PLACES);
        let along = length * (1.0 - turn.cos()) / 2.0;
        let (height, free) = line.at(along);
        let radius = free / crate::check::radio::in_path::FREE;
        profile.zone_top.push(place(along, height + radius));
        profile.zone_bottom.push(place(along, height - radius));
        profile.kept_free.push(place(along, height - free));
    }
    let mut standing: Vec<_> = things(asking, site, link)?
        .iter()
        .filter_map(|thing| Some((thing.is_ground(), line.tightest(thing)?)))
        .collect();
    standing.sort_by(|one, other| one.1.along.total_cmp(&other.1.along));
    for (_, ground) in standing.iter().filter(|(is_ground, _)| *is_ground) {
        profile.ground.push(place(ground.along, ground.top));
    }
    standing.retain(|(is_ground, thing)| !is_ground && thing.beside < NEAR);
    standing.sort_by(|one, other| one.1.room.total_cmp(&other.1.room));
    profile.standing = standing
        .into_iter()
        .take(NAMED)
        .map(|(_, thing)| {
            let name = thing.name.trim_end_matches(',').to_owned();
            (place(thing.along, thing.top), name)
        })
        .collect();
    Ok(profile)
}
