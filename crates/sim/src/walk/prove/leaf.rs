//! Bounds of the leaf's place and speed over spans of time, on its plan and after the command to stop.

use super::span::{Span, up};
use crate::walk::profile::Profile;

/// How far rounding may have moved a place, a speed or a time of the profile: its few terms of at most a hundred meters
/// or seconds carry less than a hundredth of this.
const ROUNDED: f64 = 1e-11;

fn loose(span: Span) -> Span {
    let loose = Span::new(span.lo - ROUNDED, span.hi + ROUNDED);
    #[cfg(test)]
    let loose = super::tests::rounded(loose);
    loose
}

/// Bounds of a leaf on its plan.
#[derive(Clone, Copy)]
pub(in super::super) struct Leaf<'a> {
    pub profile: &'a Profile,
    pub stopping: f64,
}

impl Leaf<'_> {
    /// Place: it never falls with time, so its ends are enough.
    pub(in super::super) fn place(&self, time: Span) -> Span {
        loose(Span::new(
            self.profile.place_at(time.lo),
            self.profile.place_at(time.hi),
        ))
    }

    /// Speed: straight between the ends of the stretches.
    pub(in super::super) fn speed(&self, time: Span) -> Span {
        let (a, b) = (
            self.profile.speed_at(time.lo),
            self.profile.speed_at(time.hi),
        );
        let mut span = Span::new(a.min(b), a.max(b));
        for stretch in &self.profile.stretches {
            for knee in [stretch.from, stretch.until] {
                if knee >= time.lo - ROUNDED && knee <= time.hi + ROUNDED {
                    span = span.hull(Span::of(self.profile.speed_at(knee)));
                }
            }
        }
        Span::new((span.lo - ROUNDED).max(0.0), span.hi + ROUNDED)
    }

    /// When it gets to a place; at the end where it may not.
    pub(in super::super) fn time_at(&self, place: Span) -> Span {
        let time = |place: f64| {
            self.profile
                .time_at(place.max(0.0))
                .unwrap_or(self.profile.end)
        };
        // Near the start and the end a place moves with the square of time: the place itself is loosened.
        let low = time(place.lo - ROUNDED) - ROUNDED;
        let high = time(place.hi + ROUNDED) + ROUNDED;
        Span::new(low.max(0.0), high.max(low))
    }

    /// The longest that it brakes.
    pub(in super::super) fn brakes_at_most(&self) -> f64 {
        let fastest = self.profile.stretches.iter().map(|stretch| stretch.speed);
        up(up(fastest.fold(0.0, f64::max) + ROUNDED) / self.stopping)
    }

    /// Place of a leaf that was told to stop some time ago, as long as it moves.
    pub(in super::super) fn commanded(&self, time: Span, ago: Span) -> Span {
        let at = |time: f64, ago: f64| {
            if ago <= 0.0 {
                return self.place(Span::of(time));
            }
            let told = Span::new((time - ago).next_down(), (time - ago).next_up());
            let (place, speed) = (self.place(told), self.speed(told));
            let moved = Span::of(ago).min(speed.over(Span::of(self.stopping)));
            // v·τ − b·τ²/2 grows with both as long as the leaf moves.
            let way = |speed: f64, moved: f64| {
                let (speed, moved) = (Span::of(speed), Span::of(moved));
                moved * (speed - moved * (0.5 * self.stopping))
            };
            let moved = moved.at_least(0.0);
            place + Span::new(way(speed.lo, moved.lo).lo, way(speed.hi, moved.hi).hi)
        };
        Span::new(at(time.lo, ago.hi).lo, at(time.hi, ago.lo).hi)
    }

    /// Speed of a leaf that was told to stop some time ago.
    pub(in super::super) fn commanded_speed(&self, time: Span, ago: Span) -> Span {
        let told = time - ago.at_least(0.0);
        self.speed(told) - ago.at_least(0.0) * self.stopping
    }

    /// How far it goes on from a time, told to stop after a delay; the farthest.
    pub(in super::super) fn run_on(&self, time: Span, delay: f64) -> f64 {
        let delay = delay.max(0.0);
        let later = time + delay;
        let speed = self.speed(later);
        let plain = self.speed(Span::new(time.lo, later.hi)) * delay;
        let middle = Span::of(time.middle());
        let at_middle = self.place(middle + delay) - self.place(middle);
        let slope = speed - self.speed(time);
        let bent = at_middle + slope * (time - middle);
        let way = plain.hi.min(bent.hi);
        up(way + braking(speed, self.stopping).hi)
    }
}

/// Way of braking from a speed.
pub(in super::super) fn braking(speed: Span, stopping: f64) -> Span {
    speed.at_least(0.0).square().over(Span::of(2.0 * stopping))
}
