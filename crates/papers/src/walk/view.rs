//! From where a case is shown: a leaf that slides or swings from above, about the touch; one that rises from the road as
//! well, whole.

use super::moments::View;
use super::shapes::{beams, faces, fields, housing, seen_from_the_road};
use super::window::{Window, at, point};
use quantity::{Length, Quantity as _, Time, UnitSystem};
use sim::walk::{AnyWorld, Direction, Frame, Pose, RisingLeaf, Spot, Toward};

/// What is shown of a leaf that rises beside its ends, over its highest place, and below the ground (m).
const BESIDE: f64 = 0.35;
const OVER: f64 = 0.2;
const BELOW: f64 = 0.1;
/// Up to how high is shown at least, and how much before and behind the gate line (m).
const HIGH: f64 = 2.2;
const BEFORE: f64 = 1.2;
/// How long before the touch all of the leaf is shown (s).
const EARLY: f64 = 1.0;

/// What a case is about.
pub(super) struct Stage<'a> {
    pub(super) world: &'a AnyWorld,
    pub(super) direction: Direction,
    /// Width of the opening.
    pub(super) opening: Option<Length>,
    /// When it touches.
    pub(super) touched: Option<Time>,
    /// Where the middle of the touched part is.
    pub(super) touch: Option<Spot>,
    /// Where a leaf that rises and the body meet, seen from the road.
    pub(super) meets: Option<Spot>,
    /// Where the body ends up.
    pub(super) last: Spot,
    pub(super) frames: &'a [&'a Frame],
    pub(super) units: UnitSystem,
}

/// The views of a case.
pub(super) fn views(stage: &Stage<'_>) -> Option<Vec<View>> {
    let about = stage.touch.unwrap_or(stage.last);
    let (x, y) = (about.x.base(), about.y.base());
    if !(x.is_finite() && y.is_finite()) {
        return None;
    }
    let AnyWorld::Rising(rising) = stage.world else {
        return Some(vec![above(stage, around((x, y), stage.units))]);
    };
    let (left, right) = along(&rising.leaf);
    let (left, right) = (left.min(x) - BESIDE, right.max(x) + BESIDE);
    let window = |low, high| Window {
        left,
        low,
        right,
        high,
    };
    let road = View {
        from_the_road: true,
        window: window(
            -BELOW,
            highest(stage.frames, stage.touched).max(HIGH) + OVER,
        ),
        beams: seen_from_the_road(stage.world, stage.direction),
        faces: Vec::new(),
        sides: Vec::new(),
        housing: housing(stage.world).map(|[road, _]| road),
        touch: stage.meets.map(point),
    };
    Some(vec![road, above(stage, window(-BEFORE, BEFORE))])
}

/// The view from above.
fn above(stage: &Stage<'_>, window: Window) -> View {
    let (world, direction) = (stage.world, stage.direction);
    let fields = fields(world, direction);
    let sides_of = fields.iter().flat_map(|field| {
        let next = field.iter().cycle().skip(1);
        field.iter().copied().zip(next.copied())
    });
    let rises = matches!(world, AnyWorld::Rising(_));
    let opening = stage.opening.filter(|_| rises);
    let side = |x: f64| (at(x, window.low), at(x, window.high));
    View {
        from_the_road: false,
        window,
        beams: beams(world, direction)
            .into_iter()
            .chain(sides_of)
            .collect(),
        faces: faces(world, direction),
        sides: opening
            .into_iter()
            .flat_map(|wide| [side(0.0), side(wide.base())])
            .collect(),
        housing: housing(world).map(|[_, above]| above),
        touch: stage.touch.map(point),
    }
}

/// Around a place: 4 ft and 3 ft, or 1.2 m and 0.9 m; the gate line is seen too, where it is not far.
fn around((x, y): (f64, f64), units: UnitSystem) -> Window {
    let (aside, across) = match units {
        UnitSystem::UsCustomary => (1.2192, 0.9144),
        UnitSystem::Si => (1.2, 0.9),
    };
    let line = if y.abs() < 2.0 * across { 0.0 } else { y };
    Window {
        left: x - aside,
        low: y.min(line) - across,
        right: x + aside,
        high: y.max(line) + across,
    }
}

/// From where to where a closed leaf that rises goes along the gate line.
fn along(leaf: &RisingLeaf) -> (f64, f64) {
    match leaf {
        RisingLeaf::Lifting(leaf) => (leaf.from.base(), leaf.to.base()),
        RisingLeaf::Turning(leaf) => {
            let (pivot, heel, length) = (leaf.pivot.base(), leaf.heel.base(), leaf.length.base());
            match leaf.toward {
                Toward::Greater => (pivot + heel, pivot + length),
                Toward::Smaller => (pivot - length, pivot - heel),
            }
        }
    }
}

/// How high a leaf comes in what is shown, from a little before it touches on: before that it may be cut off.
fn highest(frames: &[&Frame], touch: Option<Time>) -> f64 {
    let from = touch.map_or(f64::NEG_INFINITY, |touch| touch.base() - EARLY);
    let shown = frames.iter().filter(|frame| frame.time.base() >= from);
    let heights = shown.flat_map(|frame| match &frame.leaf {
        Pose::Front(corners) => corners.iter().map(|corner| corner.y.base()).collect(),
        _ => Vec::new(),
    });
    heights.fold(0.0, f64::max)
}
