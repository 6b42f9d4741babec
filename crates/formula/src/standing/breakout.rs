//! Concrete breakout of anchors in tension: what the single anchor and the group share.

use super::concrete::{AnchorKind, POUND, inches, not_negative, strength_in_psi, within};
use super::cone_reach::{counted_embedment, projected_area};
use crate::OutOfReach;
use quantity::{Length, Pressure, Quantity as _, Ratio};

/// Deepest anchor that the method was tested with, in inches.
const DEEPEST: f64 = 25.0;

/// The anchors and their concrete, as both calculations take them.
pub(super) struct Anchors {
    pub(super) anchor: AnchorKind,
    pub(super) embedment: Length,
    pub(super) concrete_strength: Pressure,
    pub(super) coefficient: Ratio,
    pub(super) cracking_factor: Ratio,
    pub(super) lightweight_factor: Ratio,
    pub(super) critical_edge: Length,
    pub(super) reduction: Ratio,
    /// Edge distances: to the left, to the right, to the front, to the back.
    pub(super) edges: [Length; 4],
    /// Anchors along left–right and their spacing.
    pub(super) across: (u32, Length),
    /// Anchors along front–back and their spacing.
    pub(super) along: (u32, Length),
}

/// Breakout of anchors, in inches and pounds.
pub(super) struct Breakout {
    pub(super) effective_embedment: f64,
    pub(super) reference_area: f64,
    pub(super) projected_area: f64,
    pub(super) edge_factor: f64,
    pub(super) splitting_factor: f64,
    pub(super) basic: f64,
    /// Strength before any factor for eccentricity.
    pub(super) nominal: f64,
}

impl Breakout {
    /// Area of a square inch in square meters.
    pub(super) const SQUARE_INCH: f64 = super::concrete::INCH * super::concrete::INCH;

    /// A number of pounds as newtons.
    pub(super) fn newtons(pounds: f64) -> f64 {
        pounds * POUND
    }
}

/// Breakout by ACI 318-19, 17.6.2.
pub(super) fn breakout(anchors: &Anchors) -> Result<Breakout, OutOfReach> {
    check(anchors)?;
    let strength = strength_in_psi(anchors.concrete_strength, anchors.anchor)?;
    let edges = anchors.edges.map(inches);
    let rows = [anchors.across, anchors.along].map(|(count, spacing)| (count, inches(spacing)));
    let depth = counted_embedment(inches(anchors.embedment), &edges, rows);
    let reach = 1.5 * depth;
    let reference_area = 9.0 * depth * depth;
    let projected_area = projected_area(&edges, rows, reach);
    let least = edges.iter().copied().fold(f64::INFINITY, f64::min);
    let edge_factor = (0.7 + 0.3 * least / reach).min(1.0);
    let splitting_factor = splitting_factor(least, inches(anchors.critical_edge), reach);
    let basic = basic(anchors, strength, depth);
    let nominal = projected_area / reference_area
        * edge_factor
        * anchors.cracking_factor.base()
        * splitting_factor
        * basic;
    Ok(Breakout {
        effective_embedment: depth,
        reference_area,
        projected_area,
        edge_factor,
        splitting_factor,
        basic,
        nominal,
    })
}

/// Factor against splitting for post-installed anchors in uncracked concrete; a critical edge of zero leaves it out.
fn splitting_factor(least: f64, critical: f64, reach: f64) -> f64 {
    if least >= critical {
        return 1.0;
    }
    (least.max(reach) / critical).min(1.0)
}

/// Basic strength of one anchor: the larger of the two forms where the code allows the second.
fn basic(anchors: &Anchors, strength: f64, depth: f64) -> f64 {
    let root = anchors.lightweight_factor.base() * strength.sqrt();
    let first = anchors.coefficient.base() * root * depth.powf(1.5);
    if anchors.anchor == AnchorKind::CastIn && (11.0..=DEEPEST).contains(&depth) {
        return first.max(16.0 * root * depth.powf(5.0 / 3.0));
    }
    first
}

fn check(anchors: &Anchors) -> Result<(), OutOfReach> {
    let depth = inches(anchors.embedment);
    if !(depth > 0.0 && depth <= DEEPEST) {
        return Err(OutOfReach::new(
            "embedment",
            "give the effective embedment, above 0 and up to 25 in, such as 4 in; deeper anchors need tests",
        ));
    }
    let names = ["edge_left", "edge_right", "edge_front", "edge_back"];
    for (name, edge) in names.into_iter().zip(anchors.edges) {
        if edge.base() <= 0.0 {
            return Err(OutOfReach::new(
                name,
                "give the distance from the anchor's center to the edge of the concrete; where there is none, a large one such as 20 ft",
            ));
        }
    }
    for (name, (count, spacing)) in [
        ("spacing_across", anchors.across),
        ("spacing_along", anchors.along),
    ] {
        if count > 1 && spacing.base() <= 0.0 {
            return Err(OutOfReach::new(
                name,
                "give the distance between anchors, such as 6 in",
            ));
        }
    }
    not_negative(
        "critical_edge",
        anchors.critical_edge,
        "give 0 where splitting does not count, or the product's distance",
    )?;
    within(
        "coefficient",
        anchors.coefficient,
        7.0,
        24.0,
        "in inch-pound units: 24 for cast-in, 17 for post-installed or the product's value, at most 24",
    )?;
    within(
        "cracking_factor",
        anchors.cracking_factor,
        1.0,
        1.5,
        "give 1 for cracked concrete; 1.25 cast-in or 1.4 post-installed where it is shown to stay uncracked",
    )?;
    within(
        "lightweight_factor",
        anchors.lightweight_factor,
        0.5,
        1.0,
        "give 1 for normal-weight concrete; lightweight has less",
    )?;
    within(
        "reduction",
        anchors.reduction,
        0.3,
        1.0,
        "give the strength reduction factor, such as 0.7, or 1 for the nominal strength",
    )
}
