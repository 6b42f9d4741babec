//! The space of touches that a proof covers: when, how deep, on which slant, how slow, after how long a stand.
//!
//! Where the path crosses the gate line is no coordinate: the touch itself says it, so that every point of the space is a
//! touch by construction. Times of arrival have no bounds at all.

use super::decide::bad;
use super::leaf::Leaf;
use super::search::Space;
use super::span::{Span, up};
use crate::walk::evaluate::Found;
use crate::walk::lane::{Lane, Walk};
use crate::walk::path::{Case, Path};
use crate::walk::scenario::Way;
use crate::walk::sequence::{Family, Habit};

/// Sizes of a box along: time, depth of the touched cylinder, slant, one over the speed, time that it has stood.
pub(super) type Box5 = [Span; 5];

/// What the body does when it is touched.
///
/// One who comes and stays is touched on the way, which is a touch of one who crosses, for nothing before the touch differs
/// and a device that is blocked for longer only stops the leaf earlier; or soon after it halts, while the leaf still moves
/// after a report; or long after it, when no device has anything to say of it, as one who stood there all along.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in super::super) enum Kind {
    /// It goes.
    Moving,
    /// It has halted as long ago as a report may still keep the leaf busy.
    Halted,
    /// It stands, and whatever saw it come is over.
    Standing,
}

impl Kind {
    /// What the touches of a habit are.
    pub(in super::super) fn of(habit: Habit) -> &'static [Self] {
        match habit {
            Habit::Cross | Habit::Follow => &[Self::Moving],
            Habit::Stand | Habit::Lean => &[Self::Standing],
            Habit::Stop => &[Self::Moving, Self::Standing, Self::Halted],
        }
    }
}

/// One who is touched where it has stood for long came so long before the leaf started, in seconds.
const LONG: f64 = 1000.0;

/// What one proof is about: one cylinder of a family in one kind of touch.
pub(super) struct Job<'a> {
    pub lane: &'a Lane,
    pub body: usize,
    pub way: usize,
    pub habit: Habit,
    pub kind: Kind,
    pub part: usize,
    slant: f64,
    /// How much a size of each coordinate matters, in meters.
    weights: [f64; 5],
}

impl<'a> Job<'a> {
    pub(super) fn new(walk: &'a Walk, family: &Family, part: usize, kind: Kind) -> Self {
        let lane = &walk.lanes[family.pass];
        let fastest = lane
            .profile
            .stretches
            .iter()
            .map(|stretch| stretch.speed)
            .fold(0.0, f64::max);
        Self {
            lane,
            body: family.body,
            way: usize::from(family.way == Way::Out),
            habit: family.habit,
            kind,
            part,
            slant: walk.slant,
            // Measured on gates with many devices: time and speed are cheap to leave wide, for places go with them.
            weights: [0.25 * fastest, 1.0, 0.4, 0.12 * fastest, 0.25 * fastest],
        }
    }

    /// How long after a halt the leaf may still move, or not yet have heard of it, at most.
    pub(super) fn busy(&self) -> f64 {
        let lane = self.lane;
        let leaf = Leaf {
            profile: &lane.profile,
            stopping: lane.control.stopping,
        };
        let slowest = lane.fields.iter().map(|field| field.response);
        up(up(slowest.fold(0.0, f64::max) + lane.control.reaction) + leaf.brakes_at_most())
    }

    /// The cases whose first touch may be close to a corner of depth, slant and speed: the worst of a smooth bound lies
    /// in corners.
    pub(super) fn try_corners(&self, of: &Box5, try_case: &mut dyn FnMut(Case, Found)) {
        for corner in 0..8_u8 {
            let mut point = of.map(Span::middle);
            for (bit, at) in (1..=3).enumerate() {
                let (half, low) = (0.499 * of[at].width(), corner & (1 << bit) == 0);
                point[at] += if low { -half } else { half };
            }
            self.try_point(point, try_case);
        }
    }

    /// The case whose first touch may be a point: with the leaf on its plan, and as the devices stop it.
    pub(super) fn try_point(&self, point: [f64; 5], try_case: &mut dyn FnMut(Case, Found)) {
        let [time, depth, slant, slowness, stood] = point;
        let lane = self.lane;
        let part = &lane.people[self.body].parts[self.part];
        let aside = lane.right(self.way) * part.aside;
        let stretch = (1.0 + slant * slant).sqrt();
        let middle = depth - (part.ahead - aside * slant) / stretch;
        let chord = part.radius.powi(2) - (depth.abs() - lane.half).max(0.0).powi(2);
        let mut place = lane.profile.place_at(time);
        for _ in 0..3 {
            let end = lane.profile.travel - place;
            // A hair toward the leaf, so that rounding does not turn the touch into a miss.
            let x = end - chord.max(0.0).sqrt() + 1e-9;
            let x0 = x - depth * slant - aside * stretch;
            let case = self.case([time, middle, slant, slowness, stood], x0);
            let (low, high) = lane.places();
            if case.x0 >= low && case.x0 <= high && lane.leans_in(&case) {
                try_case(case, lane.run(&case));
            }
            let next = lane.place_in(&case, time);
            if (next - place).abs() < 1e-9 {
                return;
            }
            place = next;
        }
    }

    /// A case of the family whose body's middle is so deep at a time.
    fn case(&self, [time, middle, slant, slowness, stood]: [f64; 5], x0: f64) -> Case {
        let person = &self.lane.people[self.body];
        let through = (1.0 + slant * slant).sqrt();
        let moved = Case {
            body: self.body,
            way: self.way,
            path: Path::Cross,
            x0,
            slant,
            speed: 1.0 / slowness,
            arrives: time - stood - middle * slowness * through,
        };
        match (self.habit, self.kind) {
            (Habit::Stop, Kind::Moving) => Case {
                path: Path::Stop(person.reach + self.lane.half),
                ..moved
            },
            (Habit::Stop, Kind::Halted) => Case {
                path: Path::Stop(middle),
                ..moved
            },
            (Habit::Stop, Kind::Standing) => Case {
                path: Path::Stop(middle),
                speed: person.speeds.map_or(1.0, |(_, fastest)| fastest),
                arrives: -LONG,
                ..moved
            },
            (Habit::Stand | Habit::Lean, _) => Case {
                path: Path::Stand(middle),
                ..moved
            },
            (Habit::Cross | Habit::Follow, _) => moved,
        }
    }
}

impl Space<5> for Job<'_> {
    fn whole(&self) -> Box5 {
        let person = &self.lane.people[self.body];
        let half = person.parts[self.part].radius + self.lane.half;
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let end = self.lane.profile.end;
        let slowness = if self.kind == Kind::Standing {
            Span::of(1.0)
        } else {
            Span::of(1.0).over(Span::new(slowest, fastest))
        };
        let stood = if self.kind == Kind::Halted {
            Span::new(0.0, self.busy())
        } else {
            Span::of(0.0)
        };
        [
            Span::new(0.0, end),
            Span::new(-half, half),
            Span::new(-self.slant, self.slant),
            slowness,
            stood,
        ]
    }

    fn bad(&self, of: &Box5) -> Option<f64> {
        bad(self, of)
    }

    fn weights(&self) -> [f64; 5] {
        self.weights
    }

    fn try_at(&self, point: [f64; 5], note: &mut dyn FnMut(Case, Found)) {
        self.try_point(point, note);
    }

    fn try_in(&self, of: &Box5, corners: bool, note: &mut dyn FnMut(Case, Found)) {
        self.try_at(of.map(Span::middle), note);
        if corners {
            self.try_corners(of, note);
        }
    }
}
