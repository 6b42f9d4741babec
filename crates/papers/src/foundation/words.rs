//! What is said beside the figure of a foundation: the anchors, and the remarks under it.

use super::figure::Block;
use draw::Scene;
use quantity::{Measured, Quantity, print_measured};
use site::Anchor;

/// Anchors as they are named on the figure: `4 × 1/2 in`.
pub(super) fn short(scene: &Scene, anchor: &Anchor) -> String {
    let size = anchor.diameter.as_ref();
    let size = size.map_or_else(
        || "anchors".to_owned(),
        |size| quantity::print(size.nominal(), scene.units),
    );
    match anchor.count {
        Some(count) => format!("{count} × {size}"),
        None => size,
    }
}

/// Anchors in one sentence.
fn anchors(scene: &Scene, anchor: &Anchor) -> String {
    let kind = anchor
        .kind
        .map_or_else(|| "anchor".to_owned(), |kind| kind.to_string());
    let facts = [
        Some(format!("{} {kind}", short(scene, anchor))),
        said(scene, "effective embedment", anchor.embedment.as_ref()),
        said(scene, "hole", anchor.hole_diameter.as_ref()),
        said(scene, "hole deep", anchor.hole_depth.as_ref()),
        said(scene, "torque", anchor.torque.as_ref()),
        anchor
            .under_plate
            .map(|under| format!("under the plate: {under}")),
    ];
    let facts: Vec<String> = facts.into_iter().flatten().collect();
    format!("Anchors for {}: {}.", anchor.holds, facts.join("; "))
}

/// What was assumed, what is missing, and what concrete, bars and ground are.
pub(super) fn remarks(scene: &mut Scene, block: &Block<'_>) {
    scene.remark("A licensed engineer decides on foundations, posts and anchors where the law or the authority wants one.");
    let foundation = block.foundation;
    let concrete = [
        said(scene, "strength", foundation.strength.as_ref()),
        foundation.concrete.map(|state| format!("taken as {state}")),
        said(scene, "cover of the bars", foundation.cover.as_ref()),
        foundation.bars.as_ref().map(|bars| format!("bars: {bars}")),
    ];
    let concrete: Vec<String> = concrete.into_iter().flatten().collect();
    if !concrete.is_empty() {
        scene.remark(format!("Concrete: {}.", concrete.join("; ")));
    }
    if foundation.bars.is_none() {
        scene.remark("Bars are not given.");
    }
    match foundation.drained {
        Some(true) => scene.remark("The top is drained: water runs off it."),
        Some(false) => scene.remark("Water stands on the top; nothing drains it."),
        None => scene.remark("Slope of the top and its drain are not given."),
    }
    if foundation.existing == Some(true) {
        scene.remark("It was there before this job.");
    }
    if foundation.held_at_grade == Some(true) {
        scene.remark("A slab or pavement that stays holds it at the ground.");
    }
    if foundation.depth.is_none() {
        scene.remark(
            "Its depth is not given; it is drawn as deep as it looks here and without a dimension.",
        );
    }
    if block.frost.is_none() {
        scene.remark("The depth of frost is not given.");
    }
    for pattern in &block.patterns {
        scene.remark(anchors(scene, pattern.anchor));
        if pattern.places.is_empty() {
            scene.remark(format!(
                "The anchors for {} are not drawn: how many stand in how many rows, or how far apart, is not given.",
                pattern.anchor.holds
            ));
        } else if pattern.anchor.bolt_circle.is_some() {
            scene.remark("How the anchors on a circle are turned is not given; two are drawn toward the road. Hold the plate against it.");
        }
        if pattern.plate.is_none() {
            scene.remark(format!(
                "The plate for {} is not drawn: its length and width are not given.",
                pattern.anchor.holds
            ));
        }
    }
    if let Some(note) = &foundation.note {
        scene.remark(note.to_string());
    }
}

fn said<Q: Quantity>(scene: &Scene, what: &str, value: Option<&Measured<Q>>) -> Option<String> {
    value.map(|value| format!("{what} {}", print_measured(value, scene.units)))
}
