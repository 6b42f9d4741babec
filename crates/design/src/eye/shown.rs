//! Cameras with what they see, for drawings.

use super::standing::{PLACES, Standing, fixed, leaf_at};
use super::{camera, compass, finest, picture, wanted, year_of};
use crate::asking::Asking;
use crate::check::gate_of;
use crate::remembered::Remembered;
use quantity::{Angle, Length, Measured};
use sim::camera::{Camera, Hider, Seen, Wanted};
use sim::glare::GlareYear;
use site::{Device, DeviceKind, ImageLevel, Site};

/// A camera with everything that its sheet shows.
#[derive(Debug, Clone)]
pub struct ShownCamera {
    /// Its name on the site.
    pub id: String,
    /// What it is for, in words.
    pub purpose: String,
    /// The camera.
    pub camera: Camera,
    /// The area that it has to see.
    pub wanted: Option<Wanted>,
    /// The place that matters.
    pub target: Option<ShownTarget>,
    /// What stands before it, for each place of the leaf.
    pub places: Vec<LeafPlace>,
    /// The sun in its picture through a year, and hours by which the clock is ahead of universal time.
    pub low_sun: Option<(GlareYear, i32)>,
}

/// The place that matters in a picture.
#[derive(Debug, Clone)]
pub struct ShownTarget {
    /// Where it is.
    pub at: [Length; 3],
    /// Direction in which the face or plate there looks.
    pub facing: Option<Angle>,
    /// Level of detail that is wanted there, and the greatest width of a pixel for it.
    pub level: Option<(ImageLevel, Length)>,
    /// Width of the plates that have to be read, and the pixels across them.
    pub plate: Option<(Length, Option<u32>)>,
}

/// What stands before a camera while the leaf is at one place.
#[derive(Debug, Clone)]
pub struct LeafPlace {
    /// Where the leaf is: `half open`.
    pub name: &'static str,
    /// Everything that stands there.
    pub things: Vec<ShownThing>,
    /// How much of the wanted area is seen.
    pub seen: Option<Seen>,
}

/// Something that stands before a camera.
#[derive(Debug, Clone)]
pub struct ShownThing {
    /// Its name.
    pub name: String,
    /// It is the leaf.
    pub is_leaf: bool,
    /// Its outline and heights.
    pub hider: Hider,
}

/// The cameras of a site, and the names of those that cannot be drawn since facts are missing.
pub fn cameras(site: &Site) -> (Vec<ShownCamera>, Vec<String>) {
    let remembered = Remembered::new();
    let mut asking = Asking::new(site.site.unit_system()).with_remembered(&remembered);
    let (mut drawn, mut missing) = (Vec::new(), Vec::new());
    for device in site
        .device
        .iter()
        .filter(|device| device.kind == DeviceKind::Camera)
    {
        match shown(&mut asking, site, device) {
            Some(camera) => drawn.push(camera),
            None => missing.push(device.id.to_string()),
        }
    }
    (drawn, missing)
}

fn shown<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Option<ShownCamera> {
    let camera = camera(asking, device).ok()?;
    let wanted = wanted(asking, device).ok();
    let places = places(asking, site, device, (&camera, wanted.as_ref()));
    let low_sun = compass(asking, site).ok().and_then(|compass| {
        let look = compass.look(camera.pan, -camera.tilt, picture(&camera));
        let (mut years, zone) = year_of(asking, &compass, &[look]).ok()?;
        Some((years.pop()?, zone))
    });
    Some(ShownCamera {
        id: device.id.to_string(),
        purpose: device
            .purpose
            .as_ref()
            .map_or_else(String::new, ToString::to_string),
        target: target(asking, device),
        camera,
        wanted,
        places,
        low_sun,
    })
}

fn target(asking: &mut Asking<'_>, device: &Device) -> Option<ShownTarget> {
    let picture = device.picture.as_ref()?;
    let at = picture.target.as_ref()?;
    let level = picture
        .level
        .and_then(|level| Some((level, finest(asking, level).ok()?)));
    Some(ShownTarget {
        at: [at.x.nominal(), at.y.nominal(), at.z.nominal()],
        facing: picture.target_facing.as_ref().map(Measured::nominal),
        level,
        plate: picture
            .plate_width
            .as_ref()
            .map(|width| (width.nominal(), picture.plate_pixels)),
    })
}

fn places<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    (camera, wanted): (&Camera, Option<&Wanted>),
) -> Vec<LeafPlace> {
    let Ok(gate) = gate_of(asking, site, device) else {
        return Vec::new();
    };
    let fixed = fixed(site, gate);
    let mut places = Vec::with_capacity(PLACES.len());
    for (name, share) in PLACES {
        let Ok(leaf) = leaf_at(asking, gate, share) else {
            return Vec::new();
        };
        let thing = |is_leaf: bool| {
            move |standing: Standing| ShownThing {
                name: standing.name,
                is_leaf,
                hider: standing.hider,
            }
        };
        let things: Vec<ShownThing> = fixed
            .iter()
            .cloned()
            .map(thing(false))
            .chain(leaf.into_iter().map(thing(true)))
            .collect();
        let hiders: Vec<Hider> = things.iter().map(|thing| thing.hider.clone()).collect();
        places.push(LeafPlace {
            name,
            things,
            seen: wanted.and_then(|wanted| camera.sees(wanted, &hiders).ok()),
        });
    }
    places
}
