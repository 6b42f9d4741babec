//! How a vehicle is seen all the way past a leaf: by what, from where to where, and where by nothing.

use super::detector::Detector;
use super::intervals::Intervals;
use super::outline::Facing;
use super::world::{SLACK, World};
use crate::plan::not_below_zero;
use crate::walk::Direction;
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Velocity};

/// A stretch of places of the front in which a detector holds the leaf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// Which detector, by its order.
    pub detector: usize,
    /// Where the front is when it begins.
    pub from: Length,
    /// Where the front is when it ends.
    pub to: Length,
}

/// A stretch of places of the front in which nothing holds the leaf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Where the front is at one end.
    pub from: Length,
    /// Where the front is at the other end.
    pub to: Length,
    /// The leaf would come upon the vehicle there; else it only comes near.
    pub inside: bool,
    /// So much of it is bridged by the output that stays on after the vehicle has left a field, at the speed of passing;
    /// nothing where the leaf would come upon a vehicle that stops.
    pub bridged: Length,
}

impl Gap {
    /// Its length.
    pub fn length(&self) -> Length {
        self.to - self.from
    }

    fn open(&self) -> f64 {
        (self.length() - self.bridged).base()
    }
}

/// One way past a leaf.
#[derive(Debug, Clone, PartialEq)]
pub struct Passing {
    /// What the leaf would do.
    pub motion: Direction,
    /// Which way the vehicle looks.
    pub facing: Facing,
    /// Where its middle is across the lane.
    pub middle: Length,
    /// What sees it, in the order of places.
    pub seen: Vec<Seen>,
    /// The worst gap.
    pub gap: Option<Gap>,
    /// The tightest change from one detector to the next; none where one sees it all along.
    pub handover: Option<Handover>,
}

/// The change from one detector to the next on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Handover {
    /// The way on which both see it.
    pub overlap: Length,
    /// That, and the way on which the output of the first stays on after it.
    pub kept: Length,
    /// The way that is driven until the output of the next one is on.
    pub asked: Length,
}

impl World {
    /// How the vehicle is seen from the moment at which it is so near that it reaches the leaf before a report has held it,
    /// until it is clear: along the middle and both edges of the lane, looking either way, for each motion of the leaf.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given.
    pub fn passings(&self, speed: Velocity) -> Result<Vec<Passing>, OutOfReach> {
        self.check()?;
        not_below_zero("speed", speed)?;
        let (left, right) = self.middles();
        let mut all = Vec::new();
        for middle in [self.lane.middle.base(), left, right] {
            for facing in Facing::BOTH {
                for motion in self.leaf.motions() {
                    all.extend(self.passing((middle, middle), facing, *motion, speed));
                }
            }
        }
        Ok(all)
    }

    /// The same wherever the middle of the vehicle is in its lane: nothing is left open.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given.
    pub fn is_seen_through(&self, speed: Velocity) -> Result<bool, OutOfReach> {
        self.check()?;
        let every = |facing| {
            let mut motions = self.leaf.motions().iter();
            motions.all(|motion| {
                let passing = self.passing(self.middles(), facing, *motion, speed);
                let gap = passing.and_then(|passing| passing.gap);
                gap.is_none_or(|gap| !gap.inside && gap.open() <= 0.0)
            })
        };
        Ok(Facing::BOTH.into_iter().all(every))
    }

    fn passing(
        &self,
        middles: (f64, f64),
        facing: Facing,
        motion: Direction,
        speed: Velocity,
    ) -> Option<Passing> {
        let way = self.in_the_way(middles, facing, motion);
        let low = way.iter().map(|(from, _)| from).reduce(f64::min)?;
        let high = way.iter().map(|(_, to)| to).reduce(f64::max)?;
        let mut seen = Vec::new();
        let mut slowest: f64 = 0.0;
        for (at, detector) in self.detectors.iter().enumerate() {
            if detector.holds(motion) {
                slowest = slowest.max(detector.response.base());
                let places = detector.sees(&self.outline, middles, facing);
                seen.extend(places.iter().map(|(from, to)| (at, from, to)));
            }
        }
        let near = speed.base() * (slowest + self.motion.reaction.base());
        let nearing = match facing {
            Facing::In => (low - near, low),
            Facing::Out => (high, high + near),
        };
        let union = Intervals::union(
            seen.iter()
                .map(|(_, from, to)| Intervals::of([(*from, *to)]).eroded(SLACK)),
        );
        let inside = way.without(&union);
        let before = Intervals::of([nearing]).without(&union);
        let gaps = inside.iter().map(|gap| gap_of(gap, true, 0.0));
        let nearing = before.iter().map(|gap| {
            let bridged = bridged(&self.detectors, &seen, gap, facing) * speed.base();
            gap_of(gap, false, bridged.min(gap.1 - gap.0))
        });
        let gap = gaps
            .chain(nearing)
            .filter(|gap| gap.length().base() > 0.0)
            .max_by(|a, b| a.inside.cmp(&b.inside).then(a.open().total_cmp(&b.open())));
        seen.retain(|(_, from, to)| *to >= low && *from <= high);
        seen.sort_by(|a, b| a.1.total_cmp(&b.1));
        Some(Passing {
            motion,
            facing,
            middle: Length::from_base(f64::midpoint(middles.0, middles.1)),
            handover: self.handover(&seen, high, facing, speed),
            seen: seen
                .into_iter()
                .map(|(detector, from, to)| Seen {
                    detector,
                    from: Length::from_base(from),
                    to: Length::from_base(to),
                })
                .collect(),
            gap,
        })
    }

    /// The tightest change among those that lead farthest, from one stretch to the next, up to a place.
    fn handover(
        &self,
        seen: &[(usize, f64, f64)],
        end: f64,
        facing: Facing,
        speed: Velocity,
    ) -> Option<Handover> {
        let mut last = *seen.first()?;
        let mut tightest: Option<Handover> = None;
        while last.2 < end {
            let reached = last.2;
            let on = seen
                .iter()
                .filter(|(_, from, to)| *from <= reached && *to > reached);
            let next = *on.max_by(|a, b| a.2.total_cmp(&b.2))?;
            let (first, then) = match facing {
                Facing::In => (last.0, next.0),
                Facing::Out => (next.0, last.0),
            };
            let overlap = Length::from_base(reached - next.1);
            let found = Handover {
                overlap,
                kept: overlap + speed * self.detectors.get(first)?.drop_out,
                asked: speed * self.detectors.get(then)?.response,
            };
            let spare = |of: &Handover| (of.kept - of.asked).base();
            if tightest.is_none_or(|tightest| spare(&found) < spare(&tightest)) {
                tightest = Some(found);
            }
            last = next;
        }
        tightest
    }
}

fn gap_of((from, to): (f64, f64), inside: bool, bridged: f64) -> Gap {
    Gap {
        from: Length::from_base(from),
        to: Length::from_base(to),
        inside,
        bridged: Length::from_base(bridged),
    }
}

/// How long the output of whatever saw it just before stays on.
fn bridged(
    detectors: &[Detector],
    seen: &[(usize, f64, f64)],
    gap: (f64, f64),
    facing: Facing,
) -> f64 {
    let before = |(_, from, to): &&(usize, f64, f64)| match facing {
        Facing::In => (to - gap.0).abs() < 2.0 * SLACK,
        Facing::Out => (from - gap.1).abs() < 2.0 * SLACK,
    };
    let stays = |(at, _, _): &(usize, f64, f64)| detectors.get(*at).map(|of| of.drop_out.base());
    let all = seen.iter().filter(before).filter_map(stays);
    all.fold(0.0, f64::max)
}
