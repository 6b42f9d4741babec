//! The layout of each enclosure, to scale: its panel with what is on it, the faces through which cables come in, its door.

pub(crate) mod content;
mod door;
mod face;
mod front;
mod layers;
mod list;
mod words;

use crate::sheets::Planned;
use content::{Contents, contents, meters};
use draw::{Figure, Fill, North, Point, ScaleChoice, Scene};
use layers::Layers;
use quantity::{Length, Quantity as _};
use site::{Enclosure, EntrySide, Site};

/// The layout of each enclosure whose width and height are written.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let alone = site.enclosure.len() == 1;
    let planned = site.enclosure.iter().filter_map(|enclosure| {
        Some(Planned {
            name: if alone {
                "enclosure".to_owned()
            } else {
                format!("enclosure-{}", enclosure.id)
            },
            scene: scene(site, enclosure)?,
            north: North::NotSeenFromAbove,
            scale: ScaleChoice::LargestThatFits,
            half: false,
        })
    });
    planned.collect()
}

/// An enclosure as it is drawn.
struct Drawn<'a> {
    scene: &'a mut Scene,
    layers: Layers,
    enclosure: &'a Enclosure,
    /// Outside width and height (m).
    size: (f64, f64),
    contents: Contents,
}

impl Drawn<'_> {
    /// Width of the empty room kept between two views (m).
    fn gap(&self) -> f64 {
        0.15 * self.size.0.max(self.size.1)
    }
}

fn scene(site: &Site, enclosure: &Enclosure) -> Option<Scene> {
    let size = (
        meters(enclosure.width.as_ref())?,
        meters(enclosure.height.as_ref())?,
    );
    let mut scene = Scene::new(
        format!("Layout of enclosure {}", enclosure.id),
        site.site.unit_system(),
    );
    let layers = Layers::add_to(&mut scene);
    let mut drawn = Drawn {
        scene: &mut scene,
        layers,
        enclosure,
        size,
        contents: contents(site, enclosure),
    };
    drawn.front();
    let mut right = size.0 + drawn.gap();
    for side in faces(enclosure) {
        right = drawn.face(side, right);
    }
    drawn.list(right);
    let remarks = drawn.remarks();
    let described = drawn.described();
    for remark in remarks {
        scene.remark(remark);
    }
    Some(scene.describe(described))
}

/// The faces through which something comes in; the bottom shows the door too.
fn faces(enclosure: &Enclosure) -> Vec<EntrySide> {
    let all = [
        EntrySide::Bottom,
        EntrySide::Side,
        EntrySide::Back,
        EntrySide::Top,
    ];
    let used = |side: &EntrySide| {
        *side == EntrySide::Bottom
            || enclosure
                .entry
                .iter()
                .any(|entry| entry.side == Some(*side))
    };
    all.into_iter().filter(used).collect()
}

/// A point of the scene (m).
fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}

/// A rectangle from its lower left corner (m).
fn rectangle((x, y): (f64, f64), (wide, high): (f64, f64), fill: Fill) -> Figure {
    Figure::rectangle(at(x, y), at(x + wide, y + high), fill)
}
