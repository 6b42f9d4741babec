//! What the controller is doing, and when it turns to the next thing.

use super::{Motion, Touch, Wanted};
use quantity::Quantity as _;

/// What the controller is doing.
#[derive(Debug, Clone, Copy)]
pub(super) enum Phase {
    /// Speeding up or running.
    Run,
    /// Slowing down to creep, or creeping.
    Creep,
    /// The last stop.
    Stop,
    /// It has touched something and does not know it yet.
    Blind { speed: f64, until: f64 },
    /// It brakes before the obstacle.
    Brake,
    /// It stands before it starts back.
    Pause { until: f64 },
    /// It runs back to a place.
    Back { to: f64 },
    /// It stands.
    Stands,
}

impl Phase {
    /// The drive no longer pushes the leaf on.
    pub(super) fn lets_go(self) -> bool {
        matches!(self, Self::Brake)
    }

    /// Time at which it is over by itself.
    pub(super) fn ends_at(self) -> Option<f64> {
        match self {
            Self::Blind { until, .. } | Self::Pause { until } => Some(until),
            _ => None,
        }
    }
}

impl Motion<'_> {
    /// Speed that the controller wants now.
    pub(super) fn wanted(&self) -> Wanted {
        let plan = &self.travel.plan;
        let (up, down) = (plan.acceleration.base(), plan.deceleration.base());
        let (speed, faster, slower) = match self.phase {
            Phase::Run => (plan.cruise_speed.base(), up, down),
            Phase::Creep => (plan.creep_speed.base(), up, down),
            Phase::Blind { speed, .. } => (speed, up, down),
            Phase::Brake => (0.0, up, self.stopping()),
            Phase::Back { .. } => (-self.reverse_speed(), up, up),
            Phase::Stop => (0.0, down, down),
            Phase::Pause { .. } | Phase::Stands => (0.0, up, up),
        };
        let rest = speed - self.speed;
        let acceleration = if rest > 0.0 {
            faster
        } else if rest < 0.0 {
            -slower
        } else {
            0.0
        };
        Wanted {
            speed,
            acceleration,
        }
    }

    fn stopping(&self) -> f64 {
        self.travel
            .obstacle
            .map_or(1.0, |obstacle| obstacle.stopping_deceleration.base())
    }

    fn reverse_speed(&self) -> f64 {
        self.travel
            .obstacle
            .map_or(0.0, |obstacle| obstacle.reverse_speed.base())
    }

    /// Places at which a step ends: set point or limit, obstacle, end of the way back.
    pub(super) fn marks(&self) -> [Option<f64>; 2] {
        let plan = &self.travel.plan;
        let mark = match self.phase {
            Phase::Run => Some((plan.travel - plan.set_point).base()),
            Phase::Creep => Some(self.limit),
            Phase::Back { to } => Some(to),
            _ => None,
        };
        let ahead = self.contact.is_none() && !self.stands();
        let obstacle = self.travel.obstacle.filter(|_| ahead);
        [mark, obstacle.map(|obstacle| obstacle.at.base())]
    }

    /// Turns to the next phase where this one is over.
    pub(super) fn turn_phase(&mut self) {
        if let Some(obstacle) = self.travel.obstacle
            && self.contact.is_none()
            && self.place >= obstacle.at.base() - 1e-9
        {
            self.contact = Some(Touch {
                time: self.time,
                peak_force: 0.0,
                start_back: self.time,
            });
            self.phase = Phase::Blind {
                speed: self.speed,
                until: self.time + obstacle.reaction_time.base(),
            };
            return;
        }
        self.phase = self.next_phase();
        if let (Phase::Pause { until }, Some(touch)) = (self.phase, &mut self.contact) {
            touch.start_back = until;
        }
    }

    fn next_phase(&self) -> Phase {
        let plan = &self.travel.plan;
        let rests = self.speed.abs() <= 0.0;
        let set_point = (plan.travel - plan.set_point).base();
        match self.phase {
            Phase::Run if self.place >= set_point - 1e-9 => Phase::Creep,
            Phase::Creep if self.place >= self.limit - 1e-9 => Phase::Stop,
            Phase::Stop if rests => Phase::Stands,
            Phase::Blind { until, .. } if self.time >= until - 1e-12 => Phase::Brake,
            Phase::Brake if rests => Phase::Pause {
                until: self.time + self.travel.obstacle.map_or(0.0, |o| o.pause.base()),
            },
            Phase::Pause { until } if self.time >= until - 1e-12 => {
                let back = self
                    .travel
                    .obstacle
                    .map_or(0.0, |o| o.reverse_distance.base());
                Phase::Back {
                    to: self.place - back,
                }
            }
            Phase::Back { to } if self.place <= to + 1e-9 => Phase::Stop,
            same => same,
        }
    }
}
