//! Posts, foundations, stops and what stands beside a gate, seen from the road.

use super::ground::Ground;
use super::layers::Layers;
use super::{length, meters, place};
use crate::plan::symbols;
use crate::plan::tags::{LINE, Tags, broken};
use draw::{Figure, Fill, Ink, Label, Placement, Scene};
use quantity::Quantity as _;
use site::{Foundation, Gate, Post, PostRole, Site};

/// What stands farther behind the gate line than this lies beyond the leaf (m).
const BEHIND: f64 = 0.02;

/// Foundations and fences farther from the gate line than this are not drawn (m).
const NEAR_LINE: f64 = 1.0;

/// Width that a post is drawn with where nobody has said (m).
const USUAL_WIDTH: f64 = 0.1;

/// The post carries the gate, not devices alone.
pub(super) fn is_structural(post: &Post) -> bool {
    post.role != PostRole::Device
}

/// Width of a post, as it is given or as it is drawn.
pub(super) fn width(post: &Post) -> f64 {
    meters(post.width.as_ref()).unwrap_or(USUAL_WIDTH)
}

/// Draws the posts that carry the gate, and the positive stops.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    gate: &Gate,
    ground: &Ground,
) {
    for post in gate.post.iter().filter(|post| is_structural(post)) {
        draw_post(scene, layers, tags, post, ground);
    }
    for stop in &gate.stop {
        let Some(at) = &stop.at else { continue };
        let (x, z) = (at.x.nominal().base(), at.z.nominal().base());
        let title = format!("positive stop, {} position", stop.end);
        scene.add_titled(
            layers.posts,
            title,
            Placement::new(symbols::stop(), place(x, z)),
        );
    }
}

fn draw_post(scene: &mut Scene, layers: &Layers, tags: &mut Tags, post: &Post, ground: &Ground) {
    let Some(at) = &post.at else {
        scene.remark(format!(
            "Post {} is not drawn: its position is not given.",
            post.id
        ));
        return;
    };
    let Some(height) = meters(post.height.as_ref()) else {
        scene.remark(format!(
            "Post {} is not drawn: its height is not given.",
            post.id
        ));
        return;
    };
    if post.width.is_none() {
        scene.remark(format!(
            "Post {} is drawn 100 mm wide; its width is not given.",
            post.id
        ));
    }
    let (x, half) = (at.x.nominal().base(), width(post) / 2.0);
    let foot = ground.level(x);
    let corners = (place(x - half, foot), place(x + half, foot + height));
    let behind = at.y.nominal().base() > BEHIND;
    let (layer, fill) = if behind {
        (layers.beyond, Fill::Open)
    } else {
        (layers.posts, Fill::Solid(Ink::Tint))
    };
    scene.add_titled(
        layer,
        format!("{} post {}", post.role, post.id),
        Figure::rectangle(corners.0, corners.1, fill),
    );
    tags.add(place(x, foot + height), post.id.to_string());
}

/// Draws the foundations under the gate's posts and its operators, by their depth.
pub(super) fn draw_foundations(
    scene: &mut Scene,
    layers: &Layers,
    site: &Site,
    gate: &Gate,
    ground: &Ground,
) {
    for foundation in foundations(site, gate) {
        let Some((left, right, foot)) = foundation_box(foundation, ground) else {
            continue;
        };
        let x = f64::midpoint(left, right);
        scene.add_titled(
            layers.foundations,
            format!("foundation {}", foundation.id),
            Figure::path([
                place(left, ground.level(left)),
                place(left, foot),
                place(right, foot),
                place(right, ground.level(right)),
            ]),
        );
        scene.add(
            layers.notes,
            Label::new(place(x, foot), foundation.id.to_string()),
        );
    }
}

/// Foundations that posts or operators of this gate name, and those along its line.
pub(super) fn foundations<'a>(
    site: &'a Site,
    gate: &'a Gate,
) -> impl Iterator<Item = &'a Foundation> {
    site.foundation.iter().filter(move |foundation| {
        let of_post = gate
            .post
            .iter()
            .any(|post| post.foundation.as_ref() == Some(&foundation.id));
        let mut operators = site.operators_of(gate);
        let of_operator =
            operators.any(|operator| operator.foundation.as_ref() == Some(&foundation.id));
        of_post || of_operator
    })
}

/// Left, right and lower edge of a foundation.
pub(super) fn foundation_box(foundation: &Foundation, ground: &Ground) -> Option<(f64, f64, f64)> {
    let at = foundation.at.as_ref()?;
    if at.y.nominal().base().abs() > NEAR_LINE {
        return None;
    }
    let wide = meters(foundation.length.as_ref()).or(meters(foundation.diameter.as_ref()))?;
    let depth = meters(foundation.depth.as_ref())?;
    let x = at.x.nominal().base();
    Some((x - wide / 2.0, x + wide / 2.0, ground.level(x) - depth))
}

/// Draws fences and walls along the gate line by their height, as far as the sheet shows them.
pub(super) fn draw_surroundings(
    scene: &mut Scene,
    layers: &Layers,
    gate: &Gate,
    ground: &Ground,
    (left, right): (f64, f64),
) {
    for thing in &gate.nearby {
        let (Some(from), Some(to), Some(height)) =
            (&thing.from, &thing.to, meters(thing.height.as_ref()))
        else {
            continue;
        };
        let ends = [from, to].map(|end| end.x.nominal().base());
        let near = [from, to]
            .iter()
            .any(|end| end.y.nominal().base().abs() < NEAR_LINE);
        let (low, high) = (
            ends[0].min(ends[1]).max(left),
            ends[0].max(ends[1]).min(right),
        );
        if low > high || !near {
            continue;
        }
        let (from, to) = (
            place(low, ground.level(low)),
            place(high, ground.level(high)),
        );
        let up = length(height);
        let zero = length(0.0);
        let corners = [from, to, to.moved(zero, up), from.moved(zero, up)];
        scene.add_titled(
            layers.surroundings,
            thing.what.to_string(),
            Figure::area(corners, Fill::Open),
        );
        let top = corners[2].middle(corners[3]);
        scene.add(
            layers.notes,
            Label::new(top, broken(thing.what.as_ref(), LINE)),
        );
    }
}
