//! The picture of a camera in outline: the leaf, what stands there, the wanted area, a person and a plate.

use super::page::{Frame, HEADING, Page, Spot};
use design::eye::{ShownCamera, ShownThing};
use draw::{Anchor, Fill, Ink, LayerId};
use quantity::{Length, Quantity as _};
use sim::camera::Camera;

/// A place of the site (m).
type Place = [f64; 3];

/// Nothing nearer than that to the lens is drawn, and how far off a line that goes behind it is cut (m).
const NEAR: f64 = 0.05;
/// Height and width of the figure, and height of a plate (m).
const PERSON: (f64, f64) = (1.75, 0.5);
const PLATE: f64 = 0.12;

/// Draws the picture.
pub(super) fn draw(page: &mut Page<'_>, camera: &ShownCamera, frame: Frame) {
    let tall = f64::from(camera.camera.pixels.1) / f64::from(camera.camera.pixels.0.max(1));
    let frame = if frame.width * tall <= frame.height {
        Frame {
            height: frame.width * tall,
            ..frame
        }
    } else {
        Frame {
            width: frame.height / tall,
            ..frame
        }
    };
    let lens = Lens {
        camera: camera.camera,
        frame,
    };
    if let Some(wanted) = &camera.wanted {
        let up = wanted.height.base();
        let area: Vec<Place> = wanted
            .corners
            .iter()
            .map(|[x, y]| [x.base(), y.base(), up])
            .collect();
        let shown = lens.area(&area);
        page.area_in(
            frame,
            (page.layers.wanted, "wanted area"),
            &shown,
            Fill::Solid(Ink::Tint),
        );
        page.rim_in(frame, page.layers.wanted, &shown);
    }
    for place in camera.places.iter().skip(1) {
        for thing in place.things.iter().filter(|thing| thing.is_leaf) {
            for face in faces(thing) {
                page.rim_in(frame, page.layers.moved, &lens.area(&face));
            }
        }
    }
    if let Some(closed) = camera.places.first() {
        stand(page, &lens, &closed.things);
    }
    matters(page, &lens, camera);
    page.frame(frame);
    let angles = camera.camera.half_angles();
    let words = format!(
        "Its picture, leaf closed: {:.0}° across and {:.0}° high, tilted {:.0}° down",
        2.0 * angles.0.base().to_degrees(),
        2.0 * angles.1.base().to_degrees(),
        camera.camera.tilt.base().to_degrees()
    );
    let spot = (frame.left, frame.bottom + frame.height + 2.0);
    page.words(&words, HEADING, spot, Anchor::Start);
}

/// From the site to the picture on the page.
struct Lens {
    camera: Camera,
    frame: Frame,
}

impl Lens {
    fn spot(&self, place: Place) -> Option<(Spot, f64)> {
        let pixel = self.camera.project(place.map(Length::from_base))?;
        let across = pixel.across / f64::from(self.camera.pixels.0);
        let down = pixel.down / f64::from(self.camera.pixels.1);
        Some((
            (
                self.frame.left + across * self.frame.width,
                self.frame.bottom + (1.0 - down) * self.frame.height,
            ),
            pixel.depth.base(),
        ))
    }

    /// How far a place is before the lens, along its axis.
    fn depth(&self, place: Place) -> f64 {
        let (pan, tilt) = (self.camera.pan.base(), self.camera.tilt.base());
        let ahead = [tilt.cos() * pan.cos(), tilt.cos() * pan.sin(), -tilt.sin()];
        [0, 1, 2]
            .iter()
            .map(|at| (place[*at] - self.camera.at[*at].base()) * ahead[*at])
            .sum()
    }

    /// An area of the site as it lies in the picture, what is behind the lens cut off.
    fn area(&self, area: &[Place]) -> Vec<Spot> {
        let before = area.last().into_iter().chain(area);
        let mut kept = Vec::with_capacity(area.len() + 2);
        for (from, to) in before.zip(area) {
            let (was, is) = (self.depth(*from) - NEAR, self.depth(*to) - NEAR);
            if (was < 0.0) != (is < 0.0) {
                let share = was / (was - is);
                let between = [0, 1, 2].map(|at| from[at] + share * (to[at] - from[at]));
                kept.extend(self.spot(between));
            }
            if is >= 0.0 {
                kept.extend(self.spot(*to));
            }
        }
        kept.into_iter().map(|(spot, _)| spot).collect()
    }
}

/// The upright faces and the top of something.
fn faces(thing: &ShownThing) -> Vec<Vec<Place>> {
    let (bottom, top) = (thing.hider.bottom.base().max(0.0), thing.hider.top.base());
    let corners: Vec<Spot> = thing
        .hider
        .corners
        .iter()
        .map(|[x, y]| (x.base(), y.base()))
        .collect();
    let next = corners.iter().cycle().skip(1);
    let mut all: Vec<Vec<Place>> = corners
        .iter()
        .zip(next)
        .map(|(a, b)| {
            vec![
                [a.0, a.1, bottom],
                [b.0, b.1, bottom],
                [b.0, b.1, top],
                [a.0, a.1, top],
            ]
        })
        .collect();
    all.push(corners.iter().map(|(x, y)| [*x, *y, top]).collect());
    all
}

/// The camera hangs over it: its mast, or the box at its foot.
fn carries(thing: &ShownThing, [x, y, _]: Place) -> bool {
    let within = |at: usize, place: f64| {
        let sides = || thing.hider.corners.iter().map(|spot| spot[at].base());
        let low = sides().fold(f64::INFINITY, f64::min);
        let high = sides().fold(f64::NEG_INFINITY, f64::max);
        (low..=high).contains(&place)
    };
    within(0, x) && within(1, y)
}

/// What stands there, the farthest first, so that what is near covers it.
fn stand(page: &mut Page<'_>, lens: &Lens, things: &[ShownThing]) {
    let eye = lens.camera.at.map(quantity::Quantity::base);
    let off = |place: &Place| {
        let way = [0, 1, 2].map(|at| place[at] - eye[at]);
        way.iter().map(|along| along * along).sum::<f64>().sqrt()
    };
    let mut all: Vec<(f64, &ShownThing, Vec<Place>)> = Vec::new();
    for thing in things.iter().filter(|thing| !carries(thing, eye)) {
        for face in faces(thing) {
            let count = f64::from(u32::try_from(face.len()).unwrap_or(1));
            let far = face.iter().map(off).sum::<f64>() / count;
            all.push((far, thing, face));
        }
    }
    all.sort_by(|one, other| other.0.total_cmp(&one.0));
    for (_, thing, face) in all {
        let (layer, fill) = if thing.is_leaf {
            (page.layers.leaf, Fill::Solid(Ink::Paper))
        } else {
            (page.layers.standing, Fill::Solid(Ink::Paper))
        };
        page.area_in(
            lens.frame,
            (layer, thing.name.as_str()),
            &lens.area(&face),
            fill,
        );
    }
}

/// A person and a plate at the place that matters.
fn matters(page: &mut Page<'_>, lens: &Lens, camera: &ShownCamera) {
    let Some(target) = &camera.target else { return };
    let [x, y, z] = target.at.map(quantity::Quantity::base);
    let ground = camera
        .wanted
        .as_ref()
        .map_or(0.0, |wanted| wanted.height.base());
    let facing = target.facing.map_or(0.0, quantity::Quantity::base);
    let side = (-facing.sin(), facing.cos());
    let upright = |wide: f64, bottom: f64, top: f64| -> Vec<Place> {
        let half = wide / 2.0;
        let (left, right) = (
            (x - side.0 * half, y - side.1 * half),
            (x + side.0 * half, y + side.1 * half),
        );
        vec![
            [left.0, left.1, bottom],
            [right.0, right.1, bottom],
            [right.0, right.1, top],
            [left.0, left.1, top],
        ]
    };
    let layer = page.layers.target;
    let person = upright(PERSON.1, ground, ground + PERSON.0);
    outline(page, lens, layer, &person);
    let head = upright(PERSON.1 / 2.5, ground + PERSON.0 - 0.24, ground + PERSON.0);
    outline(page, lens, layer, &head);
    if let Some((width, _)) = target.plate {
        let plate = upright(width.base(), z - PLATE / 2.0, z + PLATE / 2.0);
        outline(page, lens, layer, &plate);
    }
}

fn outline(page: &mut Page<'_>, lens: &Lens, layer: LayerId, area: &[Place]) {
    page.rim_in(lens.frame, layer, &lens.area(area));
}
