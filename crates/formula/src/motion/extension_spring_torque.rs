//! Torque of extension springs between an arm that turns up and a fixed point below its pivot.

use super::torsion_spring_torque::springs;
use super::vertical_pivot_torque::turns_up;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, ForcePerLength, Length, Quantity as _, Torque};

formula! {
    /// Torque with which extension springs lift an arm at an angle.
    ///
    /// Each spring hangs between a hook on the arm, on the far side of the pivot, and a fixed end straight below the
    /// pivot. As the arm rises the hook comes down, the spring grows shorter, pulls less, and its lever arm goes to
    /// zero with the arm upright. A spring that has gone slack lifts nothing.
    pub struct ExtensionSpringTorque = "extension-spring-torque" in Motion {
        /// Stiffness of one spring.
        stiffness ("k"): ForcePerLength,
        /// Pull of one spring with the arm closed.
        pull_closed ("F0"): Force,
        /// Distance from the pivot to the hook on the arm, on the far side of the pivot.
        hook_radius ("a"): Length,
        /// Distance from the pivot straight down to the fixed end.
        anchor_depth ("D"): Length,
        /// How many springs.
        count ("z"): u32,
        /// Angle of the arm above its level, closed position.
        angle ("θ"): Angle,
    }
    gives
    /// Torque of extension springs.
    pub struct ExtensionSpringTorques {
        /// Distance between hook and fixed end.
        spring_length ("s"): Length,
        /// Pull of one spring.
        pull ("F"): Force,
        /// Distance between the pull and the pivot, below zero past the upright position.
        lever_arm ("h"): Length,
        /// Torque with which all of them lift, below zero past the upright position.
        torque ("Ms"): Torque,
    }
    formula "s = √(a² + D² − 2 · a · D · sin θ),  s0 = √(a² + D²)\nF = F0 − k · (s0 − s), not below zero\nh = a · D · cos θ / s\nMs = z · F · h"
    valid "Straight springs that meet nothing on the way, the hook on the arm's line through the pivot, the fixed end straight below the pivot and farther from it than the hook."
    source { work: "linear spring and plane geometry", clause: "", evidence: Physics, seen: "triangle of pivot, hook and fixed end; compared with the slope of the spring's energy" }
    by extension_spring_torque
}

fn extension_spring_torque(
    spring: &ExtensionSpringTorque,
) -> Result<ExtensionSpringTorques, OutOfReach> {
    check(spring)?;
    let (hook, depth) = (spring.hook_radius.base(), spring.anchor_depth.base());
    let (sine, cosine) = spring.angle.base().sin_cos();
    let closed = hook.hypot(depth);
    // The same as under the root of the formula, and never below zero in the last digits.
    let now = ((depth - hook).powi(2) + 2.0 * hook * depth * (1.0 - sine)).sqrt();
    let eased = spring.stiffness.base() * (closed - now);
    let pull = (spring.pull_closed.base() - eased).max(0.0);
    let lever_arm = hook * depth * cosine / now;
    Ok(ExtensionSpringTorques {
        spring_length: Length::from_base(now),
        pull: Force::from_base(pull),
        lever_arm: Length::from_base(lever_arm),
        torque: Torque::from_base(f64::from(spring.count) * pull * lever_arm),
    })
}

fn check(spring: &ExtensionSpringTorque) -> Result<(), OutOfReach> {
    positive("stiffness", spring.stiffness, "90 lbf/in")?;
    not_negative("pull_closed", spring.pull_closed, "300 lbf")?;
    positive("hook_radius", spring.hook_radius, "6 in")?;
    if spring.anchor_depth <= spring.hook_radius {
        return Err(OutOfReach::new(
            "anchor_depth",
            "the fixed end lies farther from the pivot than the hook does",
        ));
    }
    springs(spring.count)?;
    turns_up("angle", spring.angle)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn spring(angle: f64) -> ExtensionSpringTorque {
        ExtensionSpringTorque {
            stiffness: ForcePerLength::from_base(8000.0),
            pull_closed: Force::from_base(2600.0),
            hook_radius: Length::from_base(0.16),
            anchor_depth: Length::from_base(0.7),
            count: 1,
            angle: Angle::from_base(angle),
        }
    }

    /// Energy in the spring while it is not slack.
    fn energy(angle: f64) -> f64 {
        let pull = spring(angle).evaluate().unwrap().pull.base();
        pull * pull / (2.0 * 8000.0)
    }

    proptest! {
        #[test]
        fn the_torque_is_what_the_spring_gives_up_in_energy(angle in -0.7..2.2) {
            let step = 1e-5;
            let slope = (energy(angle - step) - energy(angle + step)) / (2.0 * step);
            let torque = spring(angle).evaluate().unwrap().torque.base();
            prop_assert!((slope - torque).abs() < 1e-3, "{slope} {torque}");
        }

        #[test]
        fn the_lever_arm_is_never_longer_than_the_hook_radius(angle in -0.7..2.2) {
            prop_assert!(spring(angle).evaluate().unwrap().lever_arm.base() <= 0.16 + 1e-12);
        }
    }

    #[test]
    fn a_fixed_end_within_the_hooks_circle_is_refused() {
        let near = ExtensionSpringTorque {
            anchor_depth: Length::from_base(0.1),
            ..spring(0.3)
        };
        assert_eq!(near.evaluate().unwrap_err().input, "anchor_depth");
    }
}
