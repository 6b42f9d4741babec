//! What a drive can give at each speed, seen at the leaf.

use formula::OutOfReach;
use quantity::{
    AngularVelocity, Force, Length, Mass, MomentOfInertia, Quantity as _, Ratio, Torque, Velocity,
};

/// A drive, seen at the leaf: force against speed, straight between the points.
#[derive(Debug, Clone)]
pub struct Drive {
    points: Vec<(f64, f64)>,
    rotating_mass: f64,
    holding: f64,
}

/// A motor with its gear, before it is seen at the leaf.
#[derive(Debug, Clone, Copy)]
pub struct Motor<'a> {
    /// Torque against turning speed of the motor's own shaft.
    pub curve: &'a [(AngularVelocity, Torque)],
    /// Moment of inertia of the rotor with what turns as fast as it.
    pub rotor_inertia: MomentOfInertia,
    /// Turns of the rotor for each turn of the output shaft.
    pub reduction: Ratio,
    /// Share of the torque that gets through the gear.
    pub efficiency: Ratio,
    /// Pitch radius of the pinion, or the lever arm by which the drive moves the leaf.
    pub radius: Length,
}

impl Drive {
    /// A drive given by its force at the leaf; `holding` is the force by which it holds a leaf back that runs ahead.
    pub fn at_leaf(
        curve: &[(Velocity, Force)],
        rotating_mass: Mass,
        holding: Force,
    ) -> Result<Self, OutOfReach> {
        let points = curve.iter().map(|(v, f)| (v.base(), f.base())).collect();
        Self::of(points, rotating_mass.base(), holding.base())
    }

    /// A drive given by its motor and gear.
    pub fn geared(motor: &Motor<'_>, holding: Force) -> Result<Self, OutOfReach> {
        let ratio = motor.reduction.base() / motor.radius.base();
        if !(ratio.is_finite() && ratio > 0.0) {
            return Err(OutOfReach::new(
                "reduction",
                "reduction and radius are above zero",
            ));
        }
        let force = ratio * motor.efficiency.base();
        let points = motor
            .curve
            .iter()
            .map(|(w, t)| (w.base() / ratio, t.base() * force));
        let rotating = motor.rotor_inertia.base() * ratio.powi(2);
        Self::of(points.collect(), rotating, holding.base())
    }

    fn of(
        mut points: Vec<(f64, f64)>,
        rotating_mass: f64,
        holding: f64,
    ) -> Result<Self, OutOfReach> {
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let sound = points
            .iter()
            .all(|(v, f)| v.is_finite() && f.is_finite() && *v >= 0.0 && *f >= 0.0);
        if points.is_empty() || !sound {
            return Err(OutOfReach::new(
                "curve",
                "give at least one point, with speed and force not below zero",
            ));
        }
        if !(rotating_mass >= 0.0 && rotating_mass.is_finite()) {
            return Err(OutOfReach::new(
                "rotating_mass",
                "turning parts have a mass not below zero",
            ));
        }
        if !(holding >= 0.0 && holding.is_finite()) {
            return Err(OutOfReach::new(
                "holding",
                "the force that holds the leaf back is not below zero",
            ));
        }
        Ok(Self {
            points,
            rotating_mass,
            holding,
        })
    }

    /// Greatest force at a speed: that of the slowest point below it, the last slope drawn on to zero beyond the last.
    pub(crate) fn force(&self, speed: f64) -> f64 {
        let above = self.points.iter().position(|point| point.0 > speed);
        let (from, to) = match above {
            Some(0) => return self.points[0].1,
            Some(at) => (self.points[at - 1], self.points[at]),
            None => match self.points.as_slice() {
                [.., from, to] if to.0 > from.0 => (*from, *to),
                [.., only] => return only.1,
                [] => return 0.0,
            },
        };
        let share = (speed - from.0) / (to.0 - from.0);
        (from.1 + (to.1 - from.1) * share).max(0.0)
    }

    /// The strongest point of the curve.
    pub(crate) fn strongest(&self) -> f64 {
        self.points
            .iter()
            .fold(0.0, |most, point| point.1.max(most))
    }

    pub(crate) fn rotating_mass(&self) -> f64 {
        self.rotating_mass
    }

    pub(crate) fn holding(&self) -> f64 {
        self.holding
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn straight_between_the_points_and_on_to_zero() {
        let points = [(0.0, 800.0), (0.2, 600.0), (0.4, 100.0)]
            .map(|(v, f)| (Velocity::from_base(v), Force::from_base(f)));
        let drive =
            Drive::at_leaf(&points, Mass::from_base(40.0), Force::from_base(500.0)).unwrap();
        for (speed, force) in [
            (0.0, 800.0),
            (0.1, 700.0),
            (0.3, 350.0),
            (0.4, 100.0),
            (0.44, 0.0),
            (9.0, 0.0),
        ] {
            assert!((drive.force(speed) - force).abs() < 1e-9, "{speed}");
        }
    }

    #[test]
    fn a_gear_trades_speed_for_force_and_counts_twice_for_the_rotor() {
        let motor = Motor {
            curve: &[
                (AngularVelocity::from_base(0.0), Torque::from_base(1.0)),
                (AngularVelocity::from_base(300.0), Torque::from_base(0.0)),
            ],
            rotor_inertia: MomentOfInertia::from_base(4e-4),
            reduction: Ratio::from_base(30.0),
            efficiency: Ratio::from_base(0.5),
            radius: Length::from_base(0.04),
        };
        let drive = Drive::geared(&motor, Force::from_base(0.0)).unwrap();
        // By hand: 1 N·m · 30 · 0.5 / 0.04 m, half of it at half of 300 · 0.04 / 30 m/s; 4e-4 · 30² / 0.04².
        assert!((drive.force(0.0) - 375.0).abs() < 1e-9);
        assert!((drive.force(0.2) - 187.5).abs() < 1e-9);
        assert!((drive.rotating_mass() - 225.0).abs() < 1e-9);
    }

    #[test]
    fn a_drive_without_a_curve_is_refused() {
        let none = Drive::at_leaf(&[], Mass::from_base(0.0), Force::from_base(0.0));
        assert_eq!(none.unwrap_err().input, "curve");
    }
}
