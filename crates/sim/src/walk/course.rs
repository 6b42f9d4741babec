//! The way of the leaf in one scenario: on its plan until something is reported, then braking, standing, running back.

use super::control::{Answer, Controller};
use super::profile::{EVER, Profile, Stretch};
use quantity::Quantity as _;

/// The controller in plain numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Control {
    /// From an output to the start of braking.
    pub reaction: f64,
    /// Braking.
    pub stopping: f64,
    /// Pause, speed, distance of the way back.
    pub back: Option<Back>,
    /// Acceleration of the way back.
    pub acceleration: f64,
}

/// The way back in plain numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Back {
    pub pause: f64,
    pub speed: f64,
    pub distance: f64,
}

impl Control {
    pub(super) fn new(controller: &Controller, acceleration: f64) -> Self {
        let back = match controller.answer {
            Answer::Stop => None,
            Answer::Reverse {
                pause,
                speed,
                distance,
            } => Some(Back {
                pause: pause.base(),
                speed: speed.base(),
                distance: distance.base(),
            }),
        };
        Self {
            reaction: controller.reaction.base(),
            stopping: controller.stopping.base(),
            back,
            acceleration,
        }
    }
}

impl Control {
    /// The way back of a leaf that stands at a place from a time on: speeding up, even, slowing down.
    pub(super) fn way_back(&self, from: f64, place: f64) -> Option<[Stretch; 3]> {
        let back = self.back?;
        let distance = back.distance.min(place);
        let (up, down) = (self.acceleration, self.stopping);
        let most = (2.0 * distance * up * down / (up + down)).sqrt();
        let speed = back.speed.min(most);
        if speed <= 0.0 {
            return None;
        }
        let speeding = speed * speed / (2.0 * up);
        let slowing = speed * speed / (2.0 * down);
        let even = (distance - speeding - slowing).max(0.0);
        let parts = [
            (speed / up, 0.0, -up),
            (even / speed, -speed, 0.0),
            (speed / down, -speed, down),
        ];
        let (mut time, mut at) = (from + back.pause, place);
        Some(parts.map(|(lasts, begins, rate)| {
            let stretch = Stretch {
                from: time,
                until: time + lasts,
                place: at,
                speed: begins,
                rate,
            };
            time = stretch.until;
            at = stretch.place_at(time);
            stretch
        }))
    }
}

/// When a leaf that runs back is at a place again or before it.
pub(super) fn back_at(way: &[Stretch; 3], place: f64) -> Option<f64> {
    way.iter()
        .find(|stretch| stretch.place_at(stretch.until) <= place)
        .map(|stretch| stretch.time_after((place - stretch.place).min(0.0)))
}

/// Stretches of a way from the beginning to the end of time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Course {
    stretches: [Stretch; 12],
    count: usize,
}

impl Course {
    /// The way that nobody hinders.
    pub(super) fn unhindered(profile: &Profile) -> Self {
        let mut course = Self::start();
        for stretch in &profile.stretches {
            course.add(*stretch);
        }
        course.add(Stretch::rest(profile.end, EVER, profile.travel));
        course
    }

    /// The way with the command to stop at a time.
    pub(super) fn commanded(profile: &Profile, control: &Control, command: f64) -> Self {
        if command >= profile.end {
            let mut course = Self::unhindered(profile);
            course.cut(command);
            course.go_back(control, command, profile.travel);
            return course;
        }
        let mut course = Self::start();
        let command = command.max(0.0);
        for stretch in &profile.stretches {
            if stretch.from < command {
                course.add(*stretch);
            }
        }
        course.cut(command);
        let (place, speed) = (profile.place_at(command), profile.speed_at(command));
        let stands = command + speed / control.stopping;
        course.add(Stretch {
            from: command,
            until: stands,
            place,
            speed,
            rate: -control.stopping,
        });
        course.go_back(
            control,
            stands,
            profile.stands_at(command, control.stopping),
        );
        course
    }

    fn start() -> Self {
        let rest = Stretch::rest(-EVER, 0.0, 0.0);
        Self {
            stretches: [rest; 12],
            count: 1,
        }
    }

    fn add(&mut self, stretch: Stretch) {
        if stretch.until > stretch.from && self.count < self.stretches.len() {
            self.stretches[self.count] = stretch;
            self.count += 1;
        }
    }

    /// Ends the last stretch at a time.
    fn cut(&mut self, time: f64) {
        self.stretches[self.count - 1].until = time;
    }

    /// Stands from a time on, and runs back where the controller says so.
    fn go_back(&mut self, control: &Control, from: f64, place: f64) {
        let Some(back) = control.back else {
            self.add(Stretch::rest(from, EVER, place));
            return;
        };
        self.add(Stretch::rest(from, from + back.pause, place));
        let Some(ways) = control.way_back(from, place) else {
            self.cut(EVER);
            return;
        };
        for stretch in ways {
            self.add(stretch);
        }
        let last = ways[2];
        self.add(Stretch::rest(last.until, EVER, last.place_at(last.until)));
    }

    pub(super) fn stretches(&self) -> &[Stretch] {
        &self.stretches[..self.count]
    }

    /// Place and speed at a time.
    pub(super) fn at(&self, time: f64) -> (f64, f64) {
        let stretches = self.stretches();
        let last = stretches[stretches.len() - 1];
        let stretch = stretches
            .iter()
            .find(|stretch| time < stretch.until)
            .unwrap_or(&last);
        (stretch.place_at(time), stretch.speed_at(time))
    }
}
