//! When the underside of a leaf that is lifted comes down on a cylinder: closed form.

use super::super::profile::Stretch;
use super::super::prove::span::Span;
use super::super::swing::{Hit, SLACK};

/// A leaf that is lifted, with its place from its start.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lifted {
    pub from: f64,
    pub to: f64,
    /// Height of its underside at its start, and how it changes with its place: down or up.
    pub start: f64,
    pub way: f64,
    pub tall: f64,
}

/// A cylinder below it, for a time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Below {
    pub from: f64,
    pub until: f64,
    pub bottom: f64,
    pub top: f64,
    /// Middle of it along the gate line, at the beginning of the time, and its speed.
    pub x: f64,
    pub speed: f64,
}

impl Lifted {
    /// Height of the underside.
    pub(super) fn height(&self, place: f64) -> f64 {
        self.start + self.way * place
    }

    /// Whether at a place it surely is in a cylinder: where its middle is along the gate line, its radius, its ends.
    pub(super) fn is_in(
        &self,
        place: Span,
        (x, radius): (Span, f64),
        (bottom, top): (f64, f64),
    ) -> bool {
        let underside = place * self.way + self.start;
        x.lo > self.from - radius + SLACK
            && x.hi < self.to + radius - SLACK
            && underside.hi < top - SLACK
            && underside.lo + self.tall > bottom + SLACK
    }

    /// First touch from a time on, if there is one.
    pub(super) fn first(&self, stretches: &[Stretch], of: &Below, after: f64) -> Option<Hit> {
        let from = of.from.max(after);
        if from >= of.until {
            return None;
        }
        let touch = |time: f64, lever: f64| Hit {
            time,
            along: of.x + of.speed * (time - of.from) - self.from,
            across: 0.0,
            ahead: 0.0,
            out: 1.0,
            lever,
        };
        let mut time = from;
        for stretch in stretches {
            if stretch.until <= time {
                continue;
            }
            let underside = self.height(stretch.place_at(time));
            // It walks into the side of the leaf.
            if underside < of.top && underside + self.tall > of.bottom {
                return Some(touch(time, 0.0));
            }
            let until = stretch.until.min(of.until);
            let goal = (of.top - self.start) / self.way;
            let ahead = underside >= of.top
                && self.way * (stretch.place_at(until) - stretch.place_at(time)) < 0.0
                && self.height(stretch.place_at(until)) <= of.top;
            if ahead {
                let at = stretch.time_after(goal - stretch.place);
                return Some(touch(at.clamp(time, until), -self.way));
            }
            time = until;
            if time >= of.until {
                return None;
            }
        }
        None
    }
}
