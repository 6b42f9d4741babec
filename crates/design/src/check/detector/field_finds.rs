//! What a field finds that is no vehicle: plants, rails, the street, the moving leaf.

use crate::field::{Spot, overlap, strip};
use crate::vehicle::lanes;
use quantity::{Length, Quantity as _};
use sim::vehicle::{Leaf, Toward};
use site::{Device, Gate, Position, Site};

/// A place of the site, seen from above.
pub(super) fn spot(at: &Position) -> Spot {
    (at.x.nominal().base(), at.y.nominal().base())
}

/// What lies in the field without a mask, and what a mask hides.
pub(super) fn disturbed(device: &Device, field: &[Spot], wanted: &[Spot]) -> Vec<String> {
    let all = device
        .field_mount
        .iter()
        .flat_map(|mount| &mount.disturbance);
    let each = all.filter_map(|it| {
        let ground = strip(spot(&it.from), spot(&it.to));
        let masked = it.masked == Some(true);
        if masked && overlap(wanted, &ground) {
            Some(format!(
                "the mask over the {} leaves a hole in what should be watched",
                it.what
            ))
        } else if !masked && overlap(field, &ground) {
            Some(format!("the {} stands in it", it.what))
        } else {
            None
        }
    });
    each.collect()
}

/// The field reaches beyond where the lane comes off the road.
pub(super) fn reaches_street(site: &Site, gate: &Gate, field: &[Spot]) -> bool {
    let starts = lanes(site, gate).filter_map(|lane| lane.path.first());
    let road = starts
        .map(|at| at.y.nominal().base())
        .fold(f64::INFINITY, f64::min);
    road < 0.0 && field.iter().any(|spot| spot.1 < road)
}

/// The leaf moves through the field, at the height of its plane where it is one.
pub(super) fn sees_leaf(moving: &Leaf, field: &[Spot], plane: Option<f64>) -> bool {
    /// Wider than any gate (m).
    const WIDE: f64 = 100.0;
    let at = |bottom: Length, top: f64| {
        plane.is_none_or(|height| bottom.base() <= height && height <= top)
    };
    let line = |thickness: Length| {
        let half = thickness.base() / 2.0;
        overlap(field, &strip((-WIDE, -half), (WIDE, half)))
    };
    match moving {
        Leaf::Slide {
            bottom,
            top,
            thickness,
            ..
        } => at(*bottom, top.base()) && line(*thickness),
        Leaf::Lift {
            closed: bottom,
            thickness,
            ..
        }
        | Leaf::Arm {
            bottom, thickness, ..
        } => at(*bottom, f64::INFINITY) && line(*thickness),
        Leaf::Swing {
            leaves,
            side,
            bottom,
            top,
            ..
        } => {
            let into = if *side == Toward::Greater { 1.0 } else { -1.0 };
            at(*bottom, top.base())
                && leaves.iter().any(|hinged| {
                    let toward = if hinged.toward == Toward::Greater {
                        1.0
                    } else {
                        -1.0
                    };
                    overlap(
                        field,
                        &sector(
                            hinged.pivot.base(),
                            hinged.length.base(),
                            (toward, into),
                            hinged.open.base(),
                        ),
                    )
                })
        }
    }
}

/// The ground that a leaf sweeps about its hinge, its arc in twelve steps.
fn sector(pivot: f64, length: f64, (toward, into): (f64, f64), open: f64) -> Vec<Spot> {
    let arc = (0..=12).map(|step| {
        let angle = open * f64::from(step) / 12.0;
        (
            pivot + toward * length * angle.cos(),
            into * length * angle.sin(),
        )
    });
    std::iter::once((pivot, 0.0)).chain(arc).collect()
}
