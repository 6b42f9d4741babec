//! How far a loop lies from the moving leaf.

use crate::asking::Asking;
use crate::check::gate_of;
use crate::loops::Laid;
use crate::outcome::Halt;
use crate::vehicle::leaf;
use quantity::{Length, Quantity as _};
use sim::vehicle::{Leaf, Toward};
use site::{Device, Site};

/// The way from the wire to the nearest place that the moving leaf reaches.
pub(super) fn from_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    laid: Option<&Laid>,
) -> Result<Length, Halt> {
    let gate = gate_of(asking, site, device)?;
    let moving = leaf(asking, gate)?;
    let of = laid.ok_or(Halt)?;
    let into = (of.into.0.base(), of.into.1.base());
    let across = into.0.max(-into.1).max(0.0);
    let beside = |thickness: Length| (across - thickness.base() / 2.0).max(0.0);
    let below = |bottom: Length| (bottom + of.depth).base();
    let way = match &moving {
        Leaf::Slide {
            thickness, bottom, ..
        }
        | Leaf::Arm {
            thickness, bottom, ..
        }
        | Leaf::Lift {
            thickness,
            closed: bottom,
            ..
        } => beside(*thickness).hypot(below(*bottom)),
        Leaf::Swing {
            leaves,
            side,
            bottom,
            thickness,
            ..
        } => {
            let toward = |ends: (f64, f64)| match side {
                Toward::Greater => ends,
                Toward::Smaller => (-ends.1, -ends.0),
            };
            // What lies to the side to which they open is reached by their tips; the rest by the closed leaves.
            let (near, far) = toward(into);
            let behind = if near < 0.0 {
                (-far).max(0.0)
            } else {
                f64::INFINITY
            };
            let tips = leaves.iter().map(|hinged| {
                let pivot = hinged.pivot.base();
                let x = (of.along.0.base() - pivot)
                    .max(pivot - of.along.1.base())
                    .max(0.0);
                let y = near.max(0.0);
                if far < 0.0 {
                    f64::INFINITY
                } else {
                    (x.hypot(y) - hinged.length.base()).max(0.0)
                }
            });
            let plan = tips.fold(behind, f64::min) - thickness.base() / 2.0;
            plan.max(0.0).hypot(below(*bottom))
        }
    };
    Ok(Length::from_base(way))
}
