//! Laying a scene out on a sheet: scale, place on the paper, room for every word, and what stands around it.

mod bar;
pub(crate) mod check;
pub(crate) mod compose;
mod dimension_words;
mod dimensions;
mod figures;
mod frame;
mod hatch;
mod legend;
mod north_arrow;
mod notes;
mod remarks;
mod title;
pub(crate) mod typist;
pub(crate) mod view;

use crate::flat::{Bounds, Spot};
use crate::{DrawError, Drawing, Scale, ScaleBar, ScaleChoice, Scene, Sheet};
pub(crate) use compose::Composed;
use compose::{compose, extent, has_notes};
use frame::Frame;
use quantity::Quantity;
use view::View;

/// How many smaller scales are tried when some words find no room.
const RETRIES: usize = 4;

impl Sheet {
    /// Lays a scene out on this sheet.
    ///
    /// Fails when a coordinate has no value or lies absurdly far out, or when the scale asked for doesn't fit.
    pub fn lay_out(&self, scene: &Scene) -> Result<Drawing, DrawError> {
        check::check(scene)?;
        let frame = Frame::new(self, scene);
        let (composed, scale) = match &self.scale {
            ScaleChoice::LargestThatFits => largest(scene, &frame.area),
            ScaleChoice::Fixed(scale) => fixed(scene, &frame.area, scale)?,
            ScaleChoice::NotToScale(share) => (free(scene, &frame.area, share.base()), None),
        };
        let bar = scale
            .as_ref()
            .map(|scale| ScaleBar::new(scale, scene.units));
        let furniture = frame.furniture(self, scene, scale.as_ref(), bar.as_ref());
        Ok(Drawing::new(scene, self, composed, furniture, (scale, bar)))
    }
}

/// The scene at the largest standard scale that fits and leaves room for every word.
fn largest(scene: &Scene, area: &Bounds) -> (Composed, Option<Scale>) {
    let clear = if has_notes(scene) {
        Spot::new(16.0, 9.0)
    } else {
        Spot::new(3.0, 3.0)
    };
    let scales = Scale::standard(scene.units);
    let fits = |scale: &&Scale| fits(scene, area, scale.per_meter(), clear);
    let first = scales
        .iter()
        .position(|scale| fits(&scale))
        .unwrap_or(scales.len().saturating_sub(1));
    let mut best: Option<(Composed, Option<Scale>)> = None;
    for scale in scales.iter().skip(first).take(RETRIES) {
        let composed = compose(scene, centered(scene, area, scale.per_meter()), *area);
        let fewer =
            |known: &(Composed, Option<Scale>)| composed.homeless.len() < known.0.homeless.len();
        if best.as_ref().is_none_or(fewer) {
            best = Some((composed, Some(scale.clone())));
        }
        if best
            .as_ref()
            .is_some_and(|(known, _)| known.homeless.is_empty())
        {
            break;
        }
    }
    best.unwrap_or_else(|| (compose(scene, centered(scene, area, 1.0), *area), None))
}

/// The scene at a scale that was asked for.
fn fixed(
    scene: &Scene,
    area: &Bounds,
    scale: &Scale,
) -> Result<(Composed, Option<Scale>), DrawError> {
    if !fits(scene, area, scale.per_meter(), Spot::new(0.0, 0.0)) {
        let extent = extent(scene, scale.per_meter());
        let size = |bounds: &Bounds| format!("{:.0} by {:.0} mm", bounds.width(), bounds.height());
        let (needed, room) = (size(&extent), size(area));
        return Err(DrawError::DoesNotFit {
            scale: scale.words().to_owned(),
            needed,
            room,
        });
    }
    let view = centered(scene, area, scale.per_meter());
    Ok((compose(scene, view, *area), Some(scale.clone())))
}

/// The scene without scale: at the share of full size asked for, or as much smaller as it takes.
fn free(scene: &Scene, area: &Bounds, share: f64) -> Composed {
    let mut per_meter = if share.is_finite() && share > 0.0 {
        share * 1000.0
    } else {
        1000.0
    };
    for _ in 0..200 {
        if fits(scene, area, per_meter, Spot::new(0.0, 0.0)) {
            break;
        }
        per_meter *= 0.9;
    }
    compose(scene, centered(scene, area, per_meter), *area)
}

/// Whether a scene fits an area at so many millimeters to the meter, with this much clear paper on each side.
fn fits(scene: &Scene, area: &Bounds, per_meter: f64, clear: Spot) -> bool {
    let extent = extent(scene, per_meter);
    extent.is_empty()
        || (extent.width() + 2.0 * clear.x <= area.width()
            && extent.height() + 2.0 * clear.y <= area.height())
}

/// The view that puts a scene in the middle of an area.
fn centered(scene: &Scene, area: &Bounds, per_meter: f64) -> View {
    let extent = extent(scene, per_meter);
    let origin = if extent.is_empty() {
        area.low
    } else {
        area.center().minus(extent.center())
    };
    View { per_meter, origin }
}
