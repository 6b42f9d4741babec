//! Undersides and roofs over ground that rises and falls: whether a belly hangs up on a crest, a nose digs into a dip, a
//! roof comes nearer to what hangs over it.
//!
//! Each unit stands on its axles as a straight beam; a trailer's front stands where its coupling is. The ground is
//! straight between the levels that were surveyed, its breaks sharp, as they are at their worst.

use super::rig::Rig;
use formula::OutOfReach;
use quantity::{Length, Quantity as _};

/// Steps of the drive (m).
const STEP: f64 = 0.05;

/// The ground along the middle of a way: how far along it, and how high.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    points: Vec<(f64, f64)>,
}

/// Undersides of one unit above level ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Under {
    /// Between what pulls or steers it and its axle.
    pub between: Length,
    /// Ahead of its front axle; none where nothing hangs over.
    pub ahead: Option<Length>,
    /// Behind its axle.
    pub behind: Option<Length>,
}

/// Which part of a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lowest {
    /// Its front, before the front axle.
    Ahead,
    /// Its belly, between the axles.
    Between,
    /// Its tail, behind the axle.
    Behind,
}

/// What a drive over the ground leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverGround {
    /// The least room under it; below zero where it would touch.
    pub room: Length,
    /// Which unit.
    pub unit: usize,
    /// Which part of it.
    pub part: Lowest,
    /// Where along the way.
    pub at: Length,
    /// How far the middle of the front axle has come then.
    pub way: Length,
    /// By how much a roof rises over its height on level ground, at most, within the stretch that is looked at.
    pub lifted: Length,
}

impl Ground {
    /// Ground from levels along a way, in their order.
    ///
    /// # Errors
    ///
    /// Where there are fewer than two levels or they do not follow each other.
    pub fn new(levels: &[(Length, Length)]) -> Result<Self, OutOfReach> {
        let points: Vec<(f64, f64)> = levels
            .iter()
            .map(|(along, up)| (along.base(), up.base()))
            .collect();
        let finite = points
            .iter()
            .all(|(along, up)| along.is_finite() && up.is_finite());
        let ordered = points.windows(2).all(|pair| pair[1].0 > pair[0].0);
        if points.len() > 1 && finite && ordered {
            return Ok(Self { points });
        }
        Err(OutOfReach::new(
            "levels",
            "the ground has two levels or more, one after the other along the way",
        ))
    }

    /// The levels that it is made of.
    pub fn levels(&self) -> Vec<(Length, Length)> {
        let points = self.points.iter();
        points
            .map(|(along, up)| (Length::from_base(*along), Length::from_base(*up)))
            .collect()
    }

    /// How high it is at a place, its first and last slope going on beyond its ends.
    pub fn height(&self, at: Length) -> Length {
        Length::from_base(self.up(at.base()))
    }

    fn up(&self, at: f64) -> f64 {
        let last = self.points.len() - 2;
        let index = self.points.iter().skip(1).position(|point| at <= point.0);
        let index = index.unwrap_or(last).min(last);
        let (from, to) = (self.points[index], self.points[index + 1]);
        from.1 + (to.1 - from.1) * (at - from.0) / (to.0 - from.0)
    }

    /// Breaks within a stretch, and its ends.
    fn breaks(&self, from: f64, to: f64) -> impl Iterator<Item = f64> {
        let inside = self.points.iter().map(|point| point.0);
        inside
            .filter(move |at| from < *at && *at < to)
            .chain([from, to])
    }
}

impl Rig {
    /// The least room under a rig that drives over ground, and how far its roof is lifted while any of it is within a
    /// stretch of the way.
    ///
    /// # Errors
    ///
    /// Where the rig cannot be as given or the undersides are not one for each unit.
    pub fn over(
        &self,
        ground: &Ground,
        undersides: &[Under],
        (from, to): (Length, Length),
    ) -> Result<OverGround, OutOfReach> {
        self.check()?;
        if undersides.len() != self.units.len() {
            return Err(OutOfReach::new("undersides", "one for each unit"));
        }
        let mut found = OverGround {
            room: Length::from_base(f64::INFINITY),
            unit: 0,
            part: Lowest::Between,
            at: Length::default(),
            way: Length::default(),
            lifted: Length::default(),
        };
        let long: f64 = self
            .units
            .iter()
            .map(|unit| unit.wheelbase.base() + unit.hitch.base().max(0.0))
            .sum();
        let (first, last) = (ground.points[0].0, ground.points[ground.points.len() - 1].0);
        let mut way = first;
        while way <= last + long {
            self.stand(
                ground,
                undersides,
                way,
                (from.base(), to.base()),
                &mut found,
            );
            way += STEP;
        }
        Ok(found)
    }

    /// What each unit stands on with the middle of the front axle at a place: along the way and up, its front support
    /// and then its axle.
    pub fn supports(&self, ground: &Ground, way: Length) -> Vec<[(Length, Length); 2]> {
        let length = |(along, up): (f64, f64)| (Length::from_base(along), Length::from_base(up));
        let beams = self.beams(ground, way.base()).into_iter();
        beams
            .map(|beam| [length(beam.front), length(beam.rear)])
            .collect()
    }

    fn beams(&self, ground: &Ground, way: f64) -> Vec<Beam> {
        let mut pulled = (way, ground.up(way));
        let mut beams = Vec::with_capacity(self.units.len());
        for unit in &self.units {
            let axle = pulled.0 - unit.wheelbase.base();
            let beam = Beam {
                front: pulled,
                rear: (axle, ground.up(axle)),
            };
            let hitch = axle - unit.hitch.base();
            pulled = (hitch, beam.up(hitch));
            beams.push(beam);
        }
        beams
    }

    /// One moment: every unit on its axles.
    fn stand(
        &self,
        ground: &Ground,
        undersides: &[Under],
        way: f64,
        looked_at: (f64, f64),
        found: &mut OverGround,
    ) {
        let beams = self.beams(ground, way);
        let each = self.units.iter().zip(undersides).zip(&beams);
        for (index, ((unit, under), beam)) in each.enumerate() {
            let (pulled, axle) = (beam.front, beam.rear.0);
            let (nose, tail) = unit.body.map_or((pulled.0, axle), |body| {
                (pulled.0 + body.ahead.base(), axle - body.behind.base())
            });
            let mut look = |part: Lowest, from: f64, to: f64, under: Length| {
                for at in ground.breaks(from, to) {
                    let room = beam.up(at) + under.base() - ground.up(at);
                    if room < found.room.base() {
                        found.room = Length::from_base(room);
                        (found.unit, found.part) = (index, part);
                        found.at = Length::from_base(at);
                        found.way = Length::from_base(way);
                    }
                }
            };
            look(
                Lowest::Between,
                axle,
                pulled.0.min(nose.max(axle)),
                under.between,
            );
            if let Some(ahead) = under.ahead.filter(|_| nose > pulled.0) {
                look(Lowest::Ahead, pulled.0, nose, ahead);
            }
            if let Some(behind) = under.behind.filter(|_| tail < axle) {
                look(Lowest::Behind, tail, axle, behind);
            }
            let (low, high) = (tail.max(looked_at.0), nose.min(looked_at.1));
            if unit.body.is_some() && low < high {
                for at in ground.breaks(low, high) {
                    let lifted = beam.up(at) - ground.up(at);
                    if lifted > found.lifted.base() {
                        found.lifted = Length::from_base(lifted);
                    }
                }
            }
        }
    }
}

/// A unit as a straight beam over its two supports.
struct Beam {
    front: (f64, f64),
    rear: (f64, f64),
}

impl Beam {
    fn up(&self, at: f64) -> f64 {
        let share = (at - self.rear.0) / (self.front.0 - self.rear.0);
        self.rear.1 + (self.front.1 - self.rear.1) * share
    }
}
