//! Touches by a leaf that runs back. The way back is the same whenever it is gone, so that such a touch is at a place of the
//! leaf, not at a time.

use super::heard::{Body, Heard};
use super::leaf::braking;
use super::place::{Job, LONG, worlds};
use super::sight::Run;
use super::span::Span;
use super::sweeps::{Sweeps, Touched};
use crate::walk::course::{Back, Control, Course};
use crate::walk::path::Case;
use crate::walk::profile::EVER;
use crate::walk::watch::Walker;

/// Commands that are looked at for one that brings the leaf to a place, and halvings between two of them.
const COMMANDS: u32 = 8;
const HALVINGS: u32 = 24;
/// Pieces of a stretch of the plan in each of which the command to stop is looked at by itself.
const PIECES: u32 = 8;

/// A leaf at a place on its way back: when it was told to stop, in its own time, and how long that was before.
struct WayBack {
    told: Span,
    ago: Span,
}

impl<S: Sweeps> Job<'_, S> {
    /// A touch by the leaf on its way back, whenever that is.
    pub(super) fn on_its_way_back(&self, body: &Body, seen: &[Run], of: &Touched) -> Option<f64> {
        let back = self.lane.control.back?;
        let ways = self.ways_back(back, of.place);
        let may = |way: &WayBack| {
            self.heard_back(body, seen, way)
                .and_then(|way| self.heard_back(body, seen, &way))
        };
        ways.iter().find_map(may)?;
        self.backward(back, of)
    }

    /// What is left of a way back where the devices told the leaf of the body; nothing where they surely did so at another time.
    fn heard_back(&self, body: &Body, seen: &[Run], way: &WayBack) -> Option<WayBack> {
        let [_, heard] = worlds(body, seen, way.told + way.ago + self.delay);
        let (Heard::Ago(ago), _) = heard? else {
            return None;
        };
        let ago = (ago - self.lane.control.reaction).both(way.ago)?;
        Some(WayBack { ago, ..*way })
    }

    /// When the leaf may have been told to stop that is at a place on its way back, and how long before.
    fn ways_back(&self, back: Back, place: Span) -> Vec<WayBack> {
        let (profile, control) = (&self.lane.profile, &self.lane.control);
        let pieces = profile.stretches.iter().flat_map(|stretch| {
            let long = stretch.until - stretch.from;
            let at = move |piece: u32| stretch.from + long * f64::from(piece) / f64::from(PIECES);
            (0..PIECES).map(move |piece| Span::new(at(piece), at(piece + 1)))
        });
        let at_its_end = Span::new(profile.end, EVER);
        pieces
            .chain([at_its_end])
            .filter_map(|told| {
                let speed = self.leaf().speed(told);
                let stands = self.leaf().place(told) + braking(speed, control.stopping);
                let goes = (stands - place).at_least(0.0);
                let all = Span::of(back.distance).min(stands);
                if stands.hi < place.lo || goes.lo > all.hi {
                    return None;
                }
                let brakes = speed.over(Span::of(control.stopping)).at_least(0.0);
                let ago = brakes + takes(control, back, goes, all) + back.pause;
                Some(WayBack { told, ago })
            })
            .collect()
    }

    /// When the leaf may be at a place on its way back as it touches, told by the devices that saw the body come so; `case_at`
    /// is the case whose first touch may be at a time.
    pub(super) fn touched_back(&self, place: f64, case_at: &dyn Fn(f64) -> Case) -> Option<f64> {
        // Long after the start of the leaf, so that no report is from before it.
        let told = self.told_to(&case_at(LONG), LONG)?;
        let ago = LONG - told;
        let ahead = |command: f64| {
            let course = Course::commanded(&self.lane.profile, &self.lane.control, command);
            let (at, speed) = course.at(command + ago);
            (speed < 0.0).then_some(at - place)
        };
        let at = |step: u32| self.lane.profile.end * f64::from(step) / f64::from(COMMANDS);
        let passes = |(low, high): &(f64, f64)| {
            let ends = ahead(*low).zip(ahead(*high));
            ends.is_some_and(|(one, other)| one <= 0.0 && other >= 0.0)
        };
        let mut between = (0..COMMANDS).map(|step| (at(step), at(step + 1)));
        // Told at its end it is where it is by then, at that place or not.
        let end = (self.lane.profile.end, self.lane.profile.end);
        let (mut low, mut high) = between.find(passes).unwrap_or(end);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if ahead(middle).is_some_and(|ahead| ahead < 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(high + ago + self.delay)
    }

    /// When devices that stay where they are tell the leaf to stop, of what they have seen by a time.
    fn told_to(&self, case: &Case, by: f64) -> Option<f64> {
        let walker = Walker::new(case, &self.lane.people[case.body], self.lane.right(0));
        let said = walker.reports(&self.lane.fields, by).first(by)?;
        Some(said + self.lane.control.reaction).filter(|told| *told < by)
    }

    /// Whether a leaf that is at a place on its way back may have been told to stop at a time, so long before.
    #[cfg(test)]
    pub(in super::super) fn may_be_back(&self, place: Span, told: f64, ago: f64) -> bool {
        let ways = self
            .lane
            .control
            .back
            .map(|back| self.ways_back(back, place));
        let holds = |span: &Span, time: f64| span.lo - 1e-9 <= time && time <= span.hi + 1e-9;
        let is = |way: &WayBack| holds(&way.told, told) && holds(&way.ago, ago);
        ways.is_some_and(|ways| ways.iter().any(is))
    }

    /// The place of the leaf that runs back at a touch; nothing where it does not.
    #[cfg(test)]
    pub(super) fn back_at(&self, case: &Case, time: f64) -> Option<f64> {
        let told = self.told_to(case, time)?;
        let (profile, control) = (&self.lane.profile, &self.lane.control);
        let course = Course::commanded(profile, control, told - self.delay);
        let (place, speed) = course.at(time - self.delay);
        (speed < 0.0).then_some(place)
    }
}

/// Time for so much of a way back that is so long in all.
fn takes(control: &Control, back: Back, goes: Span, all: Span) -> Span {
    let (up_rate, down_rate) = (control.acceleration, control.stopping);
    let speeds_up = |way: f64, speed: f64| {
        let speeding = speed * speed / (2.0 * up_rate);
        if way <= speeding {
            (2.0 * way / up_rate).sqrt()
        } else {
            speed / up_rate + (way - speeding) / speed
        }
    };
    let fastest = |all: f64| {
        let most = (2.0 * all.max(0.0) * up_rate * down_rate / (up_rate + down_rate)).sqrt();
        back.speed.min(most)
    };
    let least = speeds_up(goes.lo, back.speed);
    let (slower, faster) = (fastest(all.lo), fastest(all.hi));
    let slowing = slower * slower / (2.0 * down_rate);
    let most = if goes.hi < all.lo - slowing {
        speeds_up(goes.hi, slower)
    } else {
        let rest = all.hi - faster * faster / (2.0 * up_rate);
        faster / up_rate + rest / faster + 0.5 * faster / down_rate
    };
    // A dozen roundings of values near one.
    Span::new(least * (1.0 - 1e-12), most * (1.0 + 1e-12))
}
