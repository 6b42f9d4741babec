//! The plan of a motion as a place over time: at most five stretches, each with one acceleration.

use crate::Plan;
use formula::OutOfReach;
use quantity::Quantity as _;

/// A stretch of time with one acceleration.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub until: f64,
    /// Place where it begins.
    pub place: f64,
    /// Speed with which it begins.
    pub speed: f64,
    /// Acceleration.
    pub rate: f64,
}

/// Before the start of time and after its end.
pub(super) const EVER: f64 = 1e9;

impl Stretch {
    /// Standing at a place.
    pub(super) fn rest(from: f64, until: f64, place: f64) -> Self {
        Self {
            from,
            until,
            place,
            speed: 0.0,
            rate: 0.0,
        }
    }

    pub(super) fn place_at(&self, time: f64) -> f64 {
        let gone = time - self.from;
        self.place + gone * (self.speed + 0.5 * self.rate * gone)
    }

    pub(super) fn speed_at(&self, time: f64) -> f64 {
        self.speed + self.rate * (time - self.from)
    }

    /// Time at which it is that far on its way from its place, forward or back.
    pub(super) fn time_after(&self, way: f64) -> f64 {
        let square = (self.speed * self.speed + 2.0 * self.rate * way).max(0.0);
        let sum = self.speed.abs() + square.sqrt();
        if sum > 0.0 {
            self.from + 2.0 * way.abs() / sum
        } else {
            self.from
        }
    }
}

/// Place, speed and time of a leaf that nobody hinders.
#[derive(Debug, Clone)]
pub(super) struct Profile {
    /// The stretches of its motion.
    pub stretches: [Stretch; 5],
    /// When it stands.
    pub end: f64,
    /// Where it stands.
    pub travel: f64,
}

impl Profile {
    /// Refuses a plan whose slow-down ends after its last stop should begin.
    pub(super) fn new(plan: &Plan) -> Result<Self, OutOfReach> {
        plan.check()?;
        let (up, down) = (plan.acceleration.base(), plan.deceleration.base());
        let (creep, travel) = (plan.creep_speed.base(), plan.travel.base());
        let peak = plan.peak();
        let speeding = peak * peak / (2.0 * up);
        let cruise = (travel - plan.set_point.base() - speeding).max(0.0);
        let slowing = (peak * peak - creep * creep).max(0.0) / (2.0 * down);
        let creeping = plan.limit() - speeding - cruise - slowing;
        if creeping < -1e-9 {
            return Err(OutOfReach::new(
                "set_point",
                "the leaf is not down to its creep speed where its last stop begins: begin the slow-down earlier",
            ));
        }
        let last = creep.min(peak);
        let parts = [
            (peak / up, 0.0, up),
            (cruise / peak, peak, 0.0),
            ((peak - last) / down, peak, -down),
            (creeping.max(0.0) / last, last, 0.0),
            (last / down, last, -down),
        ];
        let mut stretches = [Stretch::rest(0.0, 0.0, 0.0); 5];
        let (mut time, mut place) = (0.0, 0.0);
        for (stretch, (lasts, speed, rate)) in stretches.iter_mut().zip(parts) {
            *stretch = Stretch {
                from: time,
                until: time + lasts,
                place,
                speed,
                rate,
            };
            place = stretch.place_at(stretch.until);
            time = stretch.until;
        }
        Ok(Self {
            stretches,
            end: time,
            travel: place,
        })
    }

    fn stretch_at(&self, time: f64) -> &Stretch {
        let [first, second, third, fourth, fifth] = &self.stretches;
        if time <= first.until {
            first
        } else if time <= second.until {
            second
        } else if time <= third.until {
            third
        } else if time <= fourth.until {
            fourth
        } else {
            fifth
        }
    }

    pub(super) fn place_at(&self, time: f64) -> f64 {
        if time <= 0.0 {
            0.0
        } else if time >= self.end {
            self.travel
        } else {
            self.stretch_at(time).place_at(time)
        }
    }

    pub(super) fn speed_at(&self, time: f64) -> f64 {
        if time <= 0.0 || time >= self.end {
            0.0
        } else {
            self.stretch_at(time).speed_at(time).max(0.0)
        }
    }

    /// When it gets to a place; none where it never does.
    pub(super) fn time_at(&self, place: f64) -> Option<f64> {
        if place > self.travel {
            return None;
        }
        let stretch = self
            .stretches
            .iter()
            .rev()
            .find(|stretch| stretch.place <= place && stretch.until > stretch.from)
            .unwrap_or(&self.stretches[0]);
        let time = stretch.time_after((place - stretch.place).max(0.0));
        Some(time.clamp(stretch.from, stretch.until))
    }

    /// Where it would stand if it braked from a time on.
    pub(super) fn stands_at(&self, time: f64, stopping: f64) -> f64 {
        let speed = self.speed_at(time);
        self.place_at(time) + speed * speed / (2.0 * stopping)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;
    use quantity::{Acceleration, Length, Velocity};

    fn plan() -> Plan {
        Plan {
            travel: Length::from_base(4.0),
            cruise_speed: Velocity::from_base(0.33),
            acceleration: Acceleration::from_base(0.5),
            deceleration: Acceleration::from_base(0.3),
            set_point: Length::from_base(0.75),
            creep_speed: Velocity::from_base(0.1),
        }
    }

    #[test]
    fn it_ends_where_it_should_and_takes_the_time_of_its_parts() {
        let profile = Profile::new(&plan()).unwrap();
        assert!((profile.travel - 4.0).abs() < 1e-12);
        // By hand: 0.66 s up, (3.25 − 0.1089) m at 0.33 m/s, 0.23/0.3 s down over 0.164833 m, creep to 16.667 mm, 1/3 s.
        let by_hand = 0.66
            + 3.1411 / 0.33
            + 0.23 / 0.3
            + (0.75 - 0.164_833_333 - 0.016_666_667) / 0.1
            + 1.0 / 3.0;
        assert!((profile.end - by_hand).abs() < 1e-6, "{}", profile.end);
    }

    #[test]
    fn time_at_a_place_is_the_way_back() {
        let profile = Profile::new(&plan()).unwrap();
        for i in 1..400 {
            let place = 0.01 * f64::from(i);
            let time = profile.time_at(place).unwrap();
            assert!((profile.place_at(time) - place).abs() < 1e-12, "{place}");
        }
        assert!(profile.time_at(4.1).is_none());
    }

    #[test]
    fn a_slow_down_that_does_not_fit_is_refused() {
        let late = Plan {
            set_point: Length::from_base(0.1),
            ..plan()
        };
        assert_eq!(Profile::new(&late).unwrap_err().input, "set_point");
    }
}
