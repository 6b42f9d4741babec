//! What force an operator still has at a speed, from the points of its curve.

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use quantity::{Force, Quantity as _, Velocity};
use site::{CurvePoint, Operator};

/// Force of the operator at a speed: between two points of its curve, below the slowest point that point's force.
/// Without a curve, the force that it may give without end at cruise speed.
pub(crate) fn force_at<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    speed: Velocity,
) -> Result<Force, Halt> {
    let (below, above) = around(&operator.curve, speed);
    match (below, above) {
        (Some(below), Some(above)) => Ok(between(asking, below, above, speed)),
        (None, Some(slowest)) => Ok(asking.given(&slowest.origin, "force", &slowest.force)),
        (Some(fastest), None) => {
            let (top, force) = point(asking, fastest);
            if speed > top {
                asking.refuse("the operator's curve ends below the speed asked for; give a further point from its data sheet")
            } else {
                Ok(force)
            }
        }
        (None, None) => match &operator.rated_force {
            Some(_) => asking.read(&operator.origin, "rated_force", operator.rated_force.as_ref()),
            None => asking.lack(
                &operator.origin,
                "curve",
                Wants::Written("[{ speed = \"0.5 ft/s\", force = \"200 lbf\" }, { speed = \"1 ft/s\", force = \"150 lbf\" }]"),
            ),
        },
    }
}

/// The points next to a speed, below (or at) it and above it.
fn around(curve: &[CurvePoint], speed: Velocity) -> (Option<&CurvePoint>, Option<&CurvePoint>) {
    let by_speed = |a: &&CurvePoint, b: &&CurvePoint| nominal(a).total_cmp(&nominal(b));
    let below = curve
        .iter()
        .filter(|point| nominal(point) <= speed.base())
        .max_by(by_speed);
    let above = curve
        .iter()
        .filter(|point| nominal(point) > speed.base())
        .min_by(by_speed);
    (below, above)
}

fn nominal(point: &CurvePoint) -> f64 {
    point.speed.nominal().base()
}

fn point<'s>(asking: &mut Asking<'s>, point: &'s CurvePoint) -> (Velocity, Force) {
    (
        asking.given(&point.origin, "speed", &point.speed),
        asking.given(&point.origin, "force", &point.force),
    )
}

fn between<'s>(
    asking: &mut Asking<'s>,
    below: &'s CurvePoint,
    above: &'s CurvePoint,
    speed: Velocity,
) -> Force {
    let (slow, strong) = point(asking, below);
    let (fast, weak) = point(asking, above);
    let span = fast.base() - slow.base();
    if span <= 0.0 {
        return if strong < weak { strong } else { weak };
    }
    let share = ((speed.base() - slow.base()) / span).clamp(0.0, 1.0);
    strong + (weak - strong) * share
}
