//! A gate cut across the middle of its first leaf, seen from the latching side: what is on either face of the leaf.

use super::ground::Ground;
use super::layers::Layers;
use super::member::{self, Part};
use super::named;
use super::panel::Panel;
use super::{length, meters, place, posts, section_measures, symbols};
use crate::plan::symbols as plan_symbols;
use crate::plan::tags::{LINE, Tags, broken};
use draw::{Figure, Fill, Hatch, Ink, Label, Placement, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use site::{FixedThing, Foundation, Gate, GateKind, Leaf, Site};

/// Ground before and behind the leaf that is shown at least, and at most (m).
const DEPTH: (f64, f64) = (0.8, 1.6);

/// How deep the hatching of the ground reaches (m).
const EARTH: f64 = 0.06;

/// Thickness that a leaf is drawn with where nobody has said (m).
const USUAL_THICKNESS: f64 = 0.05;

/// The cut: the leaf, the ground under it, and how far the sheet shows.
pub(super) struct Cut<'a> {
    pub(super) gate: &'a Gate,
    pub(super) leaf: &'a Leaf,
    pub(super) thickness: f64,
    /// Levels of the ground, of the lower and of the upper edge at the cut (m).
    pub(super) floor: f64,
    pub(super) low: f64,
    pub(super) top: f64,
    /// How far the ground is shown to either side (m).
    pub(super) reach: f64,
    cross_slope: f64,
}

impl Cut<'_> {
    /// The level of the ground at a distance to the right of the leaf (m).
    pub(super) fn level(&self, right: f64) -> f64 {
        self.floor - self.cross_slope * right
    }
}

/// The section of a gate; `None` where its leaf has no known size.
pub(crate) fn scene(site: &Site, gate: &Gate) -> Option<Scene> {
    let leaf = gate.leaf.first()?;
    let title = format!("Section of gate {}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "The {} gate {} cut across the middle of leaf {}, seen from the latching side: property on the left, road on the right; ground, leaf, running gear, guides, fences and the gaps between them.",
        gate.kind, gate.id, leaf.id
    ));
    let ground = Ground::of(gate);
    let panel = Panel::of(&mut Scene::new("", scene.units), gate, (0, leaf), &ground)?;
    scene.remark(format!(
        "Cut across the middle of {}, seen from the latching side along the gate.",
        named(leaf)
    ));
    let cut = cut(&mut scene, gate, leaf, &ground, &panel);
    let layers = Layers::add_to(&mut scene);
    let mut tags = Tags::default();
    draw_ground(&mut scene, &layers, &cut);
    draw_beyond(&mut scene, &layers, &mut tags, site, &cut);
    draw_leaf(&mut scene, &layers, &cut);
    draw_gear(&mut scene, &layers, &cut);
    section_measures::draw(&mut scene, &layers, &cut);
    tags.place(&mut scene, layers.notes, 0.1, |_| None);
    Some(scene)
}

fn cut<'a>(
    scene: &mut Scene,
    gate: &'a Gate,
    leaf: &'a Leaf,
    ground: &Ground,
    panel: &Panel,
) -> Cut<'a> {
    let x = panel.x(panel.length / 2.0);
    let thickness = meters(leaf.thickness.as_ref()).unwrap_or_else(|| {
        scene.remark("The thickness of the leaf is not given; it is drawn 50 mm thick.");
        USUAL_THICKNESS
    });
    if leaf.ground_clearance.is_none() {
        scene.remark("The clearance under the leaf is not given; it is drawn on the ground.");
    }
    let cross_slope = gate
        .cross_slope
        .as_ref()
        .map(|slope| slope.nominal().base());
    scene.remark(match cross_slope {
        Some(_) => "Ground across the gate by its slope, as it was measured.",
        None => "Ground drawn level across the gate; its slope is not given.",
    });
    let distances = fences(gate).map(|(_, right)| right.abs());
    let own = gate
        .post
        .iter()
        .filter(|post| posts::is_structural(post))
        .filter_map(|post| post.at.as_ref());
    let reach = distances
        .chain(own.map(|at| at.y.nominal().base().abs()))
        .fold(DEPTH.0, f64::max);
    let low = panel.lower_edge(x);
    Cut {
        gate,
        leaf,
        thickness,
        floor: ground.level(x),
        low,
        top: low + panel.height,
        reach: reach.min(DEPTH.1) + 0.2,
        cross_slope: cross_slope.unwrap_or(0.0),
    }
}

/// Fences and walls that run beside the leaf, with how far to the right of the leaf's plane they stand (m).
pub(super) fn fences(gate: &Gate) -> impl Iterator<Item = (&FixedThing, f64)> {
    gate.nearby.iter().filter_map(|thing| {
        let (from, to) = (thing.from.as_ref()?, thing.to.as_ref()?);
        let ends = [from, to].map(|end| end.y.nominal().base());
        let along = (from.x.nominal() - to.x.nominal()).base().abs();
        let beside = (ends[0] - ends[1]).abs() < 0.05 && along > 0.5 && ends[0].abs() > 0.02;
        (beside && ends[0].abs() <= DEPTH.1).then_some((thing, -ends[0]))
    })
}

fn draw_ground(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let ends = [-cut.reach, cut.reach].map(|right| place(right, cut.level(right)));
    let down = |point: draw::Point| point.moved(length(0.0), length(-EARTH));
    let earth = [ends[0], ends[1], down(ends[1]), down(ends[0])];
    scene.add(
        layers.earth,
        Figure::area(earth, Fill::Hatched(Hatch::cut())),
    );
    scene.add_titled(
        layers.ground,
        "finished surface",
        Figure::line(ends[0], ends[1]),
    );
    for (words, right) in [("property", -0.75 * cut.reach), ("road", 0.75 * cut.reach)] {
        let height = TextHeight::Paper(Length::from_base(0.004));
        let at = place(right, cut.floor + 0.45 * (cut.top - cut.floor));
        scene.add(layers.notes, Text::new(at, words).height(height));
    }
}

/// What stands beyond the cut: fences, posts, foundations, operators.
fn draw_beyond(scene: &mut Scene, layers: &Layers, tags: &mut Tags, site: &Site, cut: &Cut<'_>) {
    for (thing, right) in fences(cut.gate) {
        if let Some(height) = meters(thing.height.as_ref()) {
            let foot = place(right, cut.level(right));
            let top = foot.moved(length(0.0), length(height));
            scene.add_titled(
                layers.beyond,
                thing.what.to_string(),
                Figure::line(foot, top),
            );
            scene.add(
                layers.notes,
                Label::new(top, broken(thing.what.as_ref(), LINE)),
            );
        }
    }
    for foundation in posts::foundations(site, cut.gate) {
        draw_foundation(scene, layers, foundation, cut);
    }
    for post in cut
        .gate
        .post
        .iter()
        .filter(|post| posts::is_structural(post))
    {
        let (Some(at), Some(height)) = (&post.at, meters(post.height.as_ref())) else {
            continue;
        };
        let (right, half) = (-at.y.nominal().base(), posts::width(post) / 2.0);
        let foot = cut.level(right);
        let figure = Figure::rectangle(
            place(right - half, foot),
            place(right + half, foot + height),
            Fill::Open,
        );
        scene.add_titled(
            layers.beyond,
            format!("{} post {}", post.role, post.id),
            figure,
        );
        tags.add(place(right, foot + height), post.id.to_string());
    }
    for operator in site.operators_of_leaf(cut.gate, cut.leaf) {
        if let Some(at) = &operator.at {
            let at = place(-at.y.nominal().base(), at.z.nominal().base());
            let symbol = Placement::new(plan_symbols::operator(), at);
            scene.add_titled(layers.devices, format!("operator {}", operator.id), symbol);
            tags.add(at, operator.id.to_string());
        }
    }
}

fn draw_foundation(scene: &mut Scene, layers: &Layers, foundation: &Foundation, cut: &Cut<'_>) {
    let wide = meters(foundation.width.as_ref()).or(meters(foundation.diameter.as_ref()));
    let (Some(at), Some(wide), Some(depth)) =
        (&foundation.at, wide, meters(foundation.depth.as_ref()))
    else {
        return;
    };
    let right = -at.y.nominal().base();
    if right.abs() > cut.reach {
        return;
    }
    let (left, right) = (right - wide / 2.0, right + wide / 2.0);
    let foot = cut.level(f64::midpoint(left, right)) - depth;
    let outline = [
        place(left, cut.level(left)),
        place(left, foot),
        place(right, foot),
        place(right, cut.level(right)),
    ];
    scene.add_titled(
        layers.foundations,
        format!("foundation {}", foundation.id),
        Figure::path(outline),
    );
    scene.add(
        layers.notes,
        Label::new(place(right, foot), foundation.id.to_string()),
    );
}

/// The leaf cut through: rails, and the infill between them.
fn draw_leaf(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let height = cut.top - cut.low;
    let hatched = Fill::Hatched(Hatch::cut());
    let bottom = member::rail(cut.leaf, Part::BottomRail, height);
    let top = member::rail(cut.leaf, Part::TopRail, height);
    let mut between = (cut.low, cut.top);
    if let Some(rail) = &bottom {
        between.0 += rail.depth;
    }
    if let Some(rail) = &top {
        between.1 -= rail.depth;
    }
    for (rail, (from, to)) in [
        (&bottom, (cut.low, between.0)),
        (&top, (between.1, cut.top)),
    ] {
        if let Some(rail) = rail {
            let half = member::width(rail.member).unwrap_or(cut.thickness) / 2.0;
            let figure = Figure::rectangle(place(-half, from), place(half, to), hatched);
            scene.add_titled(layers.leaf, rail.member.what.to_string(), figure);
        }
    }
    if bottom.is_none() && top.is_none() {
        let half = cut.thickness / 2.0;
        let figure = Figure::rectangle(place(-half, cut.low), place(half, cut.top), hatched);
        scene.add_titled(layers.leaf, format!("leaf {}", cut.leaf.id), figure);
        return;
    }
    let infill = Figure::line(place(0.0, between.0), place(0.0, between.1));
    let words = cut
        .leaf
        .infill
        .as_ref()
        .map_or_else(|| "infill".to_owned(), ToString::to_string);
    scene.add_titled(layers.members, words.as_str(), infill);
    scene.remark(format!(
        "The line between the rails stands for the infill: {words}."
    ));
}

/// Wheel, track and guides.
fn draw_gear(scene: &mut Scene, layers: &Layers, cut: &Cut<'_>) {
    let wheels = cut.gate.wheels.as_ref();
    if cut.gate.kind == GateKind::TrackSlide {
        let diameter = wheels.and_then(|wheels| meters(wheels.diameter.as_ref()));
        if let Some(diameter) = diameter {
            let tread = wheels.and_then(|wheels| meters(wheels.tread_width.as_ref()));
            let half = tread.unwrap_or(cut.thickness * 0.4) / 2.0;
            if tread.is_none() {
                scene.remark("The width of the wheels is not given; they are drawn less wide than the leaf is thick.");
            }
            let figure = Figure::rectangle(
                place(-half, cut.floor),
                place(half, cut.floor + diameter),
                Fill::Solid(Ink::Paper),
            );
            scene.add_titled(layers.running, "wheel", figure);
        }
        let track = Placement::new(symbols::track(), place(0.0, cut.floor));
        scene.add_titled(layers.running, "ground track", track);
    }
    let guide = cut
        .gate
        .guide
        .as_ref()
        .and_then(|guide| meters(guide.height.as_ref()));
    if let Some(height) = guide {
        let half = cut.thickness / 2.0 + 0.02;
        for right in [-half, half] {
            let roller = Placement::new(symbols::guide(), place(right, cut.floor + height));
            scene.add_titled(layers.running, "guide", roller);
        }
    }
}
