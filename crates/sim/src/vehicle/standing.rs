//! Stopping places at which the leaf comes upon a vehicle and nothing holds it.

use super::detector::Detector;
use super::intervals::Intervals;
use super::outline::{Facing, PartName};
use super::world::{SLACK, World};
use crate::walk::Direction;
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time, Velocity};

/// A stretch of stopping places that nothing watches, and what the leaf meets in the middle of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unwatched {
    /// What the leaf does.
    pub motion: Direction,
    /// Which way the vehicle looks.
    pub facing: Facing,
    /// Where its middle is across the lane.
    pub middle: Length,
    /// Where its front is, at one end of the stretch.
    pub from: Length,
    /// Where its front is, at the other end.
    pub to: Length,
    /// What the leaf meets first.
    pub part: PartName,
    /// How far the leading or free end of the leaf has gone by then.
    pub way: Length,
    /// Time from the start of the leaf until then, at the earliest.
    pub after: Time,
    /// Speed of that end.
    pub speed: Velocity,
}

impl Unwatched {
    /// How long the stretch is.
    pub fn length(&self) -> Length {
        self.to - self.from
    }

    /// The front of the vehicle in the middle of the stretch.
    pub fn front(&self) -> Length {
        (self.from + self.to) / 2.0
    }
}

impl World {
    /// The longest stretch of stopping places at which the leaf would come upon the vehicle and no detector holds it; none
    /// where every stopping place is watched.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given.
    pub fn unwatched(&self) -> Result<Option<Unwatched>, OutOfReach> {
        self.check()?;
        let (left, right) = self.middles();
        let mut worst: Option<Unwatched> = None;
        for middle in [self.lane.middle.base(), left, right] {
            for facing in Facing::BOTH {
                for motion in self.leaf.motions() {
                    let stretch = self.unseen((middle, middle), facing, *motion).longest();
                    let found =
                        stretch.and_then(|stretch| self.met(stretch, middle, facing, *motion));
                    let longer = |found: &Unwatched| {
                        worst.is_none_or(|worst| found.length() > worst.length())
                    };
                    if let Some(found) = found.filter(longer) {
                        worst = Some(found);
                    }
                }
            }
        }
        Ok(worst)
    }

    /// Every stopping place is watched wherever the vehicle is across the lane.
    ///
    /// What a detector sees at both outermost places across it sees at all between them: its fields have no dents.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given.
    pub fn is_watched(&self) -> Result<bool, OutOfReach> {
        self.check()?;
        let every = |facing| {
            let mut motions = self.leaf.motions().iter();
            motions.all(|motion| self.unseen(self.middles(), facing, *motion).is_empty())
        };
        Ok(Facing::BOTH.into_iter().all(every))
    }

    /// The detectors that see the vehicle with its front at a place and keep the leaf from that motion, by their order.
    pub fn holding(
        &self,
        motion: Direction,
        facing: Facing,
        middle: Length,
        front: Length,
    ) -> Vec<usize> {
        let at = middle.base();
        let holds = |(_, detector): &(usize, &Detector)| {
            let places = detector.sees(&self.outline, (at, at), facing);
            detector.holds(motion) && places.contains(front.base())
        };
        let each = self.detectors.iter().enumerate();
        each.filter(holds).map(|(at, _)| at).collect()
    }

    /// Places of the front at which the leaf would come upon the vehicle and nothing that stays on keeps it from starting.
    pub(super) fn unseen(
        &self,
        middles: (f64, f64),
        facing: Facing,
        motion: Direction,
    ) -> Intervals {
        let holding = self
            .detectors
            .iter()
            .filter(|detector| detector.holds(motion));
        let seen =
            holding.map(|detector| detector.sees(&self.outline, middles, facing).eroded(SLACK));
        self.in_the_way(middles, facing, motion)
            .without(&Intervals::union(seen))
    }

    /// Places of the front at which the leaf would come upon the vehicle.
    pub(super) fn in_the_way(
        &self,
        middles: (f64, f64),
        facing: Facing,
        motion: Direction,
    ) -> Intervals {
        let places = self.leaf.in_the_way(&self.outline, middles, facing);
        let places = places
            .into_iter()
            .map(|(from, to)| (from - SLACK, to + SLACK));
        match motion {
            Direction::Closing => Intervals::of(places),
            Direction::Opening => {
                let (least, most) = self.leaf.beside_closed(&self.outline, facing);
                Intervals::of(places.map(|(from, to)| (from.max(least), to.min(most))))
            }
        }
    }

    fn met(
        &self,
        (from, to): (f64, f64),
        middle: f64,
        facing: Facing,
        motion: Direction,
    ) -> Option<Unwatched> {
        let front = f64::midpoint(from, to);
        let parts = self.outline.parts.iter().filter_map(|part| {
            let band = self.leaf.band(part, (middle, middle))?;
            let lies = facing.lies(part.stretch(), front);
            (lies.0 <= band.1 + SLACK && lies.1 >= band.0 - SLACK)
                .then(|| (part.name, self.leaf.way(part, middle, lies, motion)))
        });
        let first = parts.min_by(|a, b| a.1.total_cmp(&b.1));
        // Between two parts nothing is met; the leaf still comes down across the vehicle.
        let (part, way) = first.unwrap_or((PartName::Drawbar, 0.0));
        way.is_finite().then(|| Unwatched {
            motion,
            facing,
            middle: Length::from_base(middle),
            from: Length::from_base(from),
            to: Length::from_base(to),
            part,
            way: Length::from_base(way),
            after: Time::from_base(self.motion.time_after(way)),
            speed: Velocity::from_base(self.motion.speed_after(way)),
        })
    }
}
