//! The inner loop: one leaf, a thousandth of a second at a time.
//!
//! Within a step the acceleration is that of the step's middle, and a step ends early where something happens: a speed is
//! reached, a mark is passed, a time is up. With an even load the way is exact; with one that changes, exact to the
//! square of the step.

mod phase;

use crate::{Contact, Sample, Summary, Travel, Trouble};
use phase::Phase;
use quantity::{Force, Length, Quantity as _, Ratio, Time, Velocity};

/// Length of a step, in seconds.
const STEP: f64 = 0.001;
/// The most parts of one step: more things than this never happen at once.
const PARTS: u32 = 16;
/// A leaf that has not moved for so long stalls, in seconds.
const STALLED: f64 = 1.0;
/// A leaf so much faster than wanted has run away.
const RUN_AWAY: f64 = 1.2;
/// A leaf that reaches less than this share of its speed never reaches it.
const REACHED: f64 = 0.98;
/// The longest travel that is followed, in seconds.
const LONGEST: f64 = 600.0;

/// A leaf on its way.
pub(crate) struct Motion<'a> {
    travel: &'a Travel<'a>,
    mass: f64,
    limit: f64,
    phase: Phase,
    time: f64,
    place: f64,
    speed: f64,
    force: f64,
    stalled: f64,
    peak_speed: f64,
    peak_force: f64,
    heat: f64,
    farthest: f64,
    arrival: f64,
    contact: Option<Touch>,
}

/// What is noted at an obstacle.
struct Touch {
    time: f64,
    peak_force: f64,
    start_back: f64,
}

impl<'a> Motion<'a> {
    pub(crate) fn new(travel: &'a Travel<'a>) -> Self {
        Self {
            travel,
            mass: travel.mass.base() + travel.drive.rotating_mass(),
            limit: travel.plan.limit(),
            phase: Phase::Run,
            time: 0.0,
            place: 0.0,
            speed: 0.0,
            force: 0.0,
            stalled: 0.0,
            peak_speed: 0.0,
            peak_force: 0.0,
            heat: 0.0,
            farthest: 0.0,
            arrival: 0.0,
            contact: None,
        }
    }

    pub(crate) fn stands(&self) -> bool {
        matches!(self.phase, Phase::Stands)
    }

    /// Moves on by one step, or less where the leaf comes to stand.
    pub(crate) fn tick(&mut self) -> Result<(), Trouble> {
        let mut left = STEP;
        for _ in 0..PARTS {
            if left <= 1e-12 || self.stands() {
                break;
            }
            left -= self.part(left);
        }
        if self.stalled > STALLED {
            return Err(Trouble::Stalls {
                at: Length::from_base(self.place),
            });
        }
        if self.speed.abs() > RUN_AWAY * self.fastest() {
            return Err(Trouble::RunsAway {
                at: Length::from_base(self.place),
                speed: Velocity::from_base(self.speed),
            });
        }
        if self.time > LONGEST {
            return Err(Trouble::NeverArrives);
        }
        Ok(())
    }

    fn fastest(&self) -> f64 {
        let back = self
            .travel
            .obstacle
            .map_or(0.0, |obstacle| obstacle.reverse_speed.base());
        self.travel.plan.cruise_speed.base().max(back)
    }

    /// Moves on until something happens, at most for the time given; the time that it took.
    fn part(&mut self, most: f64) -> f64 {
        let wanted = self.wanted();
        let (acceleration, force) = self.acceleration(wanted, most);
        let (time, reached) = self.until(wanted, acceleration, most);
        let before = self.place;
        self.place += self.speed * time + 0.5 * acceleration * time * time;
        self.speed = if reached {
            wanted.speed
        } else {
            self.speed + acceleration * time
        };
        self.time += time;
        self.force = force;
        self.note(before, time, acceleration, wanted);
        self.turn_phase();
        time
    }

    /// Acceleration in the middle of a step, and the force that the drive gives for it.
    fn acceleration(&self, wanted: Wanted, step: f64) -> (f64, f64) {
        let (first, _) = self.push(wanted, self.place, self.speed);
        let half = 0.5 * step;
        let place = self.place + self.speed * half + 0.5 * first * half * half;
        self.push(wanted, place, self.speed + first * half)
    }

    /// Acceleration and force of the drive at a place and a speed.
    fn push(&self, wanted: Wanted, place: f64, speed: f64) -> (f64, f64) {
        let way = if self.speed.abs() > 0.0 {
            self.speed.signum()
        } else {
            wanted.acceleration
        };
        let way = if way > 0.0 {
            1.0
        } else if way < 0.0 {
            -1.0
        } else {
            0.0
        };
        let (opposing, uphill) = self.travel.load.at(place);
        let against = uphill + opposing * way + self.touch(place);
        let rate = wanted.acceleration;
        if way == 0.0 {
            let hold = self.travel.drive.holding();
            return (0.0, uphill.clamp(-hold, hold));
        }
        let most = if self.phase.lets_go() {
            0.0
        } else {
            self.travel.drive.force(speed.abs())
        };
        let least = -self.travel.drive.holding();
        let along = (self.mass * rate + against) * way;
        let force = along.clamp(least.min(most), most) * way;
        let acceleration = (force - against) / self.mass;
        let starts = self.speed.abs() > 0.0 || acceleration * way > 0.0;
        (if starts { acceleration } else { 0.0 }, force)
    }

    /// Force of the obstacle at a place.
    fn touch(&self, place: f64) -> f64 {
        self.travel.obstacle.map_or(0.0, |obstacle| {
            let pressed = (place - obstacle.at.base()).max(0.0);
            if self.contact.is_some() {
                pressed * obstacle.stiffness.base()
            } else {
                0.0
            }
        })
    }

    /// Time until something happens, and whether that is the speed that is wanted.
    fn until(&self, wanted: Wanted, acceleration: f64, most: f64) -> (f64, bool) {
        let mut time = most;
        let mut reached = false;
        let rest = wanted.speed - self.speed;
        if rest.abs() > 0.0 && rest * acceleration > 0.0 && rest / acceleration <= time {
            time = rest / acceleration;
            reached = true;
        } else if rest.abs() <= 0.0 && acceleration.abs() <= 0.0 {
            reached = true;
        }
        for mark in self.marks() {
            if let Some(passed) = self.time_to(mark, acceleration).filter(|at| *at < time) {
                time = passed;
                reached = false;
            }
        }
        if let Some(up) = self.phase.ends_at().map(|end| (end - self.time).max(0.0))
            && up < time
        {
            time = up;
            reached = false;
        }
        (time, reached)
    }

    /// Time to a mark ahead, if the leaf gets there.
    fn time_to(&self, mark: Option<f64>, acceleration: f64) -> Option<f64> {
        let rest = mark? - self.place;
        if rest.abs() <= 1e-12 {
            return None;
        }
        let way = rest.signum();
        let (speed, rate) = (self.speed * way, acceleration * way);
        let square = speed * speed + 2.0 * rate * rest.abs();
        let sum = speed + square.sqrt();
        (square >= 0.0 && sum > 0.0).then(|| 2.0 * rest.abs() / sum)
    }

    /// Notes peaks and heat of a part of a step.
    fn note(&mut self, before: f64, time: f64, acceleration: f64, wanted: Wanted) {
        let rate = wanted.acceleration;
        if self.speed.abs() <= 0.0 && acceleration.abs() <= 0.0 && rate.abs() > 0.0 {
            self.stalled += time;
        } else {
            self.stalled = 0.0;
        }
        self.peak_speed = self.peak_speed.max(self.speed);
        self.peak_force = self.peak_force.max(self.force.abs());
        self.heat += self.force * self.force * time;
        self.farthest = self.farthest.max(self.place);
        let end = self.travel.plan.travel.base();
        if before < end && self.place >= end - 1e-9 && self.arrival <= 0.0 {
            let square = self.speed.powi(2) + 2.0 * acceleration * (end - self.place);
            self.arrival = square.max(0.0).sqrt();
        }
        let pushed = self.touch(self.place);
        if let Some(touch) = &mut self.contact {
            touch.peak_force = touch.peak_force.max(pushed);
        }
    }

    pub(crate) fn sample(&self) -> Sample {
        let strongest = self.travel.drive.strongest();
        let share = if strongest > 0.0 {
            self.force.abs() / strongest
        } else {
            0.0
        };
        Sample {
            time: Time::from_base(self.time),
            position: Length::from_base(self.place),
            speed: Velocity::from_base(self.speed),
            force: Force::from_base(self.force),
            share: Ratio::from_base(share),
        }
    }

    pub(crate) fn summary(&self) -> Result<Summary, Trouble> {
        let wanted = self.travel.plan.peak();
        if self.contact.is_none() && self.peak_speed < REACHED * wanted {
            return Err(Trouble::NeverReachesItsSpeed {
                reached: Velocity::from_base(self.peak_speed),
                wanted: Velocity::from_base(wanted),
            });
        }
        let end = self.travel.plan.travel.base();
        // Rounding of a few thousand steps is no overshoot.
        let over = Some(self.farthest - end).filter(|over| *over > 1e-6);
        Ok(Summary {
            total_time: Time::from_base(self.time),
            peak_speed: Velocity::from_base(self.peak_speed),
            peak_force: Force::from_base(self.peak_force),
            rms_force: Force::from_base((self.heat / self.time.max(STEP)).sqrt()),
            position: Length::from_base(self.place),
            overshoot: Length::from_base(over.unwrap_or(0.0)),
            arrival_speed: Velocity::from_base(over.map_or(0.0, |_| self.arrival)),
            contact: self.touched(),
        })
    }

    fn touched(&self) -> Option<Contact> {
        let (touch, obstacle) = (self.contact.as_ref()?, self.travel.obstacle?);
        Some(Contact {
            peak_force: Force::from_base(touch.peak_force),
            overtravel: Length::from_base(self.farthest - obstacle.at.base()),
            start_back_time: Time::from_base(touch.start_back - touch.time),
        })
    }
}

/// Speed that is wanted, and the acceleration toward it.
#[derive(Debug, Clone, Copy)]
struct Wanted {
    speed: f64,
    acceleration: f64,
}
