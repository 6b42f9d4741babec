//! What stands on a foundation: posts and bollards with their section, operators, boxes, devices.

use super::pattern::from_middle;
use crate::plan::gate::nominal;
use draw::Point;
use quantity::Length;
use site::{Foundation, Id, Position, Post, Section, SectionShape, Site};

/// The shape of what stands there, cut at its foot.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Shape {
    /// A rectangle of this size along the gate line and across it.
    Square(Length, Length),
    /// A circle of this diameter.
    Round(Length),
    /// Nobody has said.
    Unknown,
}

/// A thing on a foundation.
#[derive(Debug, Clone)]
pub(crate) struct Thing {
    /// What it is without its name: `hinge post, HSS 6x6x3/8`.
    pub(crate) what: String,
    pub(crate) name: String,
    pub(crate) at: Point,
    pub(crate) shape: Shape,
}

/// Everything that stands on a foundation, by its own word or by that of the anchors.
pub(crate) fn on(site: &Site, foundation: &Foundation) -> Vec<Thing> {
    let carried = |id: &Id| {
        let anchors = &foundation.anchor;
        anchors
            .iter()
            .any(|anchor| anchor.carries.as_ref() == Some(id))
    };
    let stands =
        |on: Option<&Id>, id: &Id| on.map_or_else(|| carried(id), |on| *on == foundation.id);
    let place = |at: Option<&Position>, id: &Id| {
        let plate = foundation
            .anchor
            .iter()
            .find(|anchor| anchor.carries.as_ref() == Some(id));
        from_middle(foundation, at)
            .or_else(|| from_middle(foundation, plate.and_then(|plate| plate.at.as_ref())))
            .unwrap_or(Point::origin())
    };
    let mut things = Vec::new();
    for post in site.gate.iter().flat_map(|gate| &gate.post) {
        if stands(post.foundation.as_ref(), &post.id) {
            things.push(Thing {
                what: with_section(format!("{} post", post.role), post.section.as_ref()),
                name: post.id.to_string(),
                at: place(post.at.as_ref(), &post.id),
                shape: post_shape(post),
            });
        }
    }
    for bollard in &site.bollard {
        if stands(bollard.foundation.as_ref(), &bollard.id) {
            things.push(Thing {
                what: with_section("bollard".to_owned(), bollard.section.as_ref()),
                name: bollard.id.to_string(),
                at: place(bollard.at.as_ref(), &bollard.id),
                shape: nominal(bollard.diameter.as_ref())
                    .map_or_else(|| section_shape(bollard.section.as_ref()), Shape::Round),
            });
        }
    }
    let unknown = |what: &str, id: &Id, at: Option<&Position>| Thing {
        what: what.to_owned(),
        name: id.to_string(),
        at: place(at, id),
        shape: Shape::Unknown,
    };
    for operator in &site.operator {
        if stands(operator.foundation.as_ref(), &operator.id) {
            things.push(unknown("operator", &operator.id, operator.at.as_ref()));
        }
    }
    for enclosure in site.enclosure.iter().filter(|it| carried(&it.id)) {
        things.push(unknown("enclosure", &enclosure.id, enclosure.at.as_ref()));
    }
    for device in site.device.iter().filter(|it| carried(&it.id)) {
        let what = device.kind.to_string();
        things.push(unknown(&what, &device.id, device.at.as_ref()));
    }
    things
}

fn with_section(what: String, section: Option<&Section>) -> String {
    match section {
        Some(section) => format!("{what}, {section}"),
        None => what,
    }
}

fn post_shape(post: &Post) -> Shape {
    match (
        section_shape(post.section.as_ref()),
        nominal(post.width.as_ref()),
    ) {
        (Shape::Unknown, Some(width)) => Shape::Square(width, width),
        (shape, _) => shape,
    }
}

fn section_shape(section: Option<&Section>) -> Shape {
    match section.map(Section::shape) {
        Some(
            SectionShape::Hss { depth, width, .. }
            | SectionShape::Tube { depth, width, .. }
            | SectionShape::Flat { depth, width },
        ) => Shape::Square(depth, width),
        Some(SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter }) => {
            Shape::Round(diameter)
        }
        Some(SectionShape::Pipe { nominal }) => Shape::Round(nominal),
        None => Shape::Unknown,
    }
}
