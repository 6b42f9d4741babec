//! What torque a drive's shaft still has at a turning speed, from the points of its curve.

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use quantity::{AngularVelocity, Quantity as _, Torque};
use site::{Operator, TorquePoint};

/// Torque of the shaft at a turning speed: between two points of its curve, below the slowest point that point's torque.
/// Without a curve, the torque that it may give without end at cruise speed.
pub(super) fn torque_at<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    speed: AngularVelocity,
) -> Result<Torque, Halt> {
    let curve = &operator.torque_curve;
    let by_speed = |a: &&TorquePoint, b: &&TorquePoint| nominal(a).total_cmp(&nominal(b));
    let slower = curve.iter().filter(|point| nominal(point) <= speed.base());
    let faster = curve.iter().filter(|point| nominal(point) > speed.base());
    match (slower.max_by(by_speed), faster.min_by(by_speed)) {
        (Some(below), Some(above)) => Ok(between(asking, below, above, speed)),
        (None, Some(slowest)) => Ok(asking.given(&slowest.origin, "torque", &slowest.torque)),
        (Some(fastest), None) => {
            let top = asking.given(&fastest.origin, "turning_speed", &fastest.turning_speed);
            if speed > top {
                return asking.refuse("the drive's torque curve ends below the turning speed asked for; give a further point from its data sheet");
            }
            Ok(asking.given(&fastest.origin, "torque", &fastest.torque))
        }
        (None, None) if operator.rated_torque.is_some() => {
            asking.read(&operator.origin, "rated_torque", operator.rated_torque.as_ref())
        }
        (None, None) => asking.lack(
            &operator.origin,
            "torque_curve",
            Wants::Written("[{ turning_speed = \"0 rpm\", torque = \"200 lbf·ft\" }, { turning_speed = \"2 rpm\", torque = \"120 lbf·ft\" }]"),
        ),
    }
}

fn nominal(point: &TorquePoint) -> f64 {
    point.turning_speed.nominal().base()
}

fn between<'s>(
    asking: &mut Asking<'s>,
    below: &'s TorquePoint,
    above: &'s TorquePoint,
    speed: AngularVelocity,
) -> Torque {
    let slow = asking.given(&below.origin, "turning_speed", &below.turning_speed);
    let fast = asking.given(&above.origin, "turning_speed", &above.turning_speed);
    let strong = asking.given(&below.origin, "torque", &below.torque);
    let weak = asking.given(&above.origin, "torque", &above.torque);
    let span = fast.base() - slow.base();
    if span <= 0.0 {
        return if strong < weak { strong } else { weak };
    }
    let share = ((speed.base() - slow.base()) / span).clamp(0.0, 1.0);
    strong + (weak - strong) * share
}
