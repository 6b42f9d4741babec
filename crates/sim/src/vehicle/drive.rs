//! One drive through the gate, worked exactly: every place is linear in time, so that every event is a quotient.

use super::detector::Detector;
use super::intervals::Intervals;
use super::leaf::Leaf;
use super::outline::{Facing, PartName};
use super::world::World;
use crate::walk::Direction;
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time, Velocity};

/// A drive: it comes at a speed, stops, stands, and goes on or backs at the same speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drive {
    /// Which way the vehicle looks; it comes that way.
    pub facing: Facing,
    /// Where its middle is across the lane.
    pub middle: Length,
    /// Its speed.
    pub speed: Velocity,
    /// Where its front is when it stops.
    pub stop: Length,
    /// When it stops.
    pub stops_at: Time,
    /// How long it stands.
    pub stands: Time,
    /// It backs out afterwards; otherwise it goes on.
    pub backs: bool,
    /// When the gate would close: its timer has run out, or somebody tells it to.
    pub wanted_at: Time,
}

/// How a drive ends for the vehicle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ending {
    /// The leaf does not come upon it.
    Untouched,
    /// The leaf comes upon it.
    Touched {
        /// What it meets.
        part: PartName,
        /// When.
        at: Time,
        /// Where the front of the vehicle is then.
        front: Length,
        /// Speed of the leaf.
        speed: Velocity,
    },
    /// The vehicle drives into a leaf that is across its way.
    DrivenInto {
        /// What meets the leaf.
        part: PartName,
        /// When.
        at: Time,
    },
}

/// A stretch of the drive at one speed.
struct Leg {
    from: f64,
    until: f64,
    place: f64,
    speed: f64,
}

/// Long before and long after everything.
const EVER: f64 = 1e7;

impl Drive {
    fn legs(&self) -> [Leg; 3] {
        let forward = if self.facing == Facing::In { 1.0 } else { -1.0 };
        let (speed, stop) = (forward * self.speed.base(), self.stop.base());
        let (arrives, leaves) = (self.stops_at.base(), (self.stops_at + self.stands).base());
        let onward = if self.backs { -speed } else { speed };
        [
            Leg {
                from: -EVER,
                until: arrives,
                place: stop - speed * (arrives + EVER),
                speed,
            },
            Leg {
                from: arrives,
                until: leaves,
                place: stop,
                speed: 0.0,
            },
            Leg {
                from: leaves,
                until: EVER,
                place: stop,
                speed: onward,
            },
        ]
    }

    fn front_at(&self, time: f64) -> f64 {
        let (arrives, leaves) = (self.stops_at.base(), (self.stops_at + self.stands).base());
        let forward = if self.facing == Facing::In { 1.0 } else { -1.0 };
        let speed = forward * self.speed.base();
        if time <= arrives {
            self.stop.base() - speed * (arrives - time)
        } else if time <= leaves {
            self.stop.base()
        } else {
            let onward = if self.backs { -speed } else { speed };
            self.stop.base() + onward * (time - leaves)
        }
    }

    /// When its front is in a set of places.
    fn times_in(&self, places: &Intervals) -> Intervals {
        let legs = self.legs();
        Intervals::of(places.iter().flat_map(|(low, high)| {
            let of = |leg: &Leg| {
                if leg.speed.abs() <= 0.0 {
                    let inside = low <= leg.place && leg.place <= high;
                    return inside.then_some((leg.from, leg.until));
                }
                // The first leg is counted back from the stop, where numbers are small.
                let (when, place) = if leg.from > -EVER {
                    (leg.from, leg.place)
                } else {
                    (leg.until, self.stop.base())
                };
                let at = |wanted: f64| when + (wanted - place) / leg.speed;
                let (one, other) = (at(low), at(high));
                Some((one.min(other).max(leg.from), one.max(other).min(leg.until)))
            };
            legs.iter().filter_map(of).collect::<Vec<_>>()
        }))
    }
}

/// A stretch of the vehicle, the band of y in which the leaf meets it, and how far the leaf has gone by then.
#[derive(Clone, Copy)]
struct Met {
    part: PartName,
    stretch: (f64, f64),
    band: (f64, f64),
    way: f64,
}

/// What the leaf does after it starts.
struct Course {
    start: f64,
    /// When it begins to brake.
    brakes: f64,
}

impl World {
    /// Works one drive past a leaf that slides, lifts or comes down as an arm.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given, and for leaves that swing: what those meet depends on where the vehicle is at
    /// every moment.
    pub fn drive(&self, drive: &Drive) -> Result<Ending, OutOfReach> {
        self.check()?;
        if matches!(self.leaf, Leaf::Swing { .. }) {
            return Err(OutOfReach::new(
                "leaf",
                "drives past a leaf that swings are proved, not worked one by one",
            ));
        }
        crate::plan::above_zero("speed", drive.speed)?;
        crate::plan::not_below_zero("stands", drive.stands)?;
        Ok(self.ending(drive))
    }

    pub(super) fn ending(&self, drive: &Drive) -> Ending {
        let course = self.course(drive);
        let middle = drive.middle.base();
        let mut first: Option<(f64, Ending)> = None;
        let mut take = |at: f64, ending: Ending| {
            if first.is_none_or(|(known, _)| at < known) {
                first = Some((at, ending));
            }
        };
        let mut hull: Option<Met> = None;
        for part in &self.outline.parts {
            let Some(band) = self.leaf.band(part, (middle, middle)) else {
                continue;
            };
            let way = self.leaf.way(part, middle, (0.0, 0.0), Direction::Closing);
            let met = Met {
                part: part.name,
                stretch: part.stretch(),
                band,
                way,
            };
            self.meet(drive, &course, &met, &mut take);
            hull = Some(hull.map_or(met, |known| Met {
                stretch: (
                    known.stretch.0.min(met.stretch.0),
                    known.stretch.1.max(met.stretch.1),
                ),
                way: known.way.max(way),
                ..met
            }));
        }
        if let Some(whole) = hull {
            // Down between two parts: the vehicle has the leaf across it.
            let between = Met {
                part: PartName::Drawbar,
                ..whole
            };
            self.meet(drive, &course, &between, &mut take);
        }
        first.map_or(Ending::Untouched, |(_, ending)| ending)
    }

    /// Takes what happens when a stretch of the vehicle is in the band that the leaf enters after a way.
    fn meet(&self, drive: &Drive, course: &Course, met: &Met, take: &mut impl FnMut(f64, Ending)) {
        let Some((comes, speed)) = self.comes_at(course, met.way) else {
            return;
        };
        let present = drive.times_in(&Intervals::of([drive.facing.meets(met.stretch, met.band)]));
        for (from, to) in present.iter() {
            if from <= comes && comes <= to {
                let ending = Ending::Touched {
                    part: met.part,
                    at: Time::from_base(comes),
                    front: Length::from_base(drive.front_at(comes)),
                    speed: Velocity::from_base(speed),
                };
                take(comes, ending);
            } else if from > comes && from < course.brakes {
                take(
                    from,
                    Ending::DrivenInto {
                        part: met.part,
                        at: Time::from_base(from),
                    },
                );
            }
        }
    }

    /// When the leaf has gone a way, and its speed then; none where it stands before.
    fn comes_at(&self, course: &Course, way: f64) -> Option<(f64, f64)> {
        let free = course.start + self.motion.time_after(way);
        if free <= course.brakes {
            return Some((free, self.motion.speed_after(way)));
        }
        let braking = self.motion.stopping.base();
        let gone = self
            .motion
            .way_after((course.brakes - course.start).max(0.0));
        let speed = self.motion.speed_after(gone);
        let left = speed * speed - 2.0 * braking * (way - gone);
        (left > 0.0).then(|| (course.brakes + (speed - left.sqrt()) / braking, left.sqrt()))
    }

    fn course(&self, drive: &Drive) -> Course {
        let wanted = drive.wanted_at.base();
        let holding = self
            .detectors
            .iter()
            .filter(|detector| detector.holds(Direction::Closing));
        let held = Intervals::union(holding.map(|detector| self.on(detector, drive)));
        let start = held
            .iter()
            .find(|(from, to)| *from <= wanted && wanted < *to)
            .map_or(wanted, |(_, to)| to);
        let stopping = self
            .detectors
            .iter()
            .filter(|detector| detector.stops(Direction::Closing));
        let told = stopping
            .flat_map(|detector| {
                self.on(detector, drive)
                    .iter()
                    .map(|(from, _)| from)
                    .collect::<Vec<_>>()
            })
            .filter(|from| *from >= start)
            .fold(f64::INFINITY, f64::min);
        Course {
            start,
            brakes: told + self.motion.reaction.base(),
        }
    }

    /// When the output of a detector is on.
    fn on(&self, detector: &Detector, drive: &Drive) -> Intervals {
        let middle = drive.middle.base();
        let places = detector.sees(&self.outline, (middle, middle), drive.facing);
        let (response, drop_out) = (detector.response.base(), detector.drop_out.base());
        let seen = drive.times_in(&places);
        Intervals::of(
            seen.iter()
                .filter(|(from, to)| to - from >= response)
                .map(|(from, to)| (from + response, to + drop_out)),
        )
    }
}
