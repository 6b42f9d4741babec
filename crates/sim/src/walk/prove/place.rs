//! The space of touches by a leaf that turns or rises: when, where in the plan, on which slant, how slow, after how long a
//! stand. Of a leaf that runs back it is not asked when it touches, but at which place of its way: nothing else of it counts.
//!
//! Every place that the touched cylinder may have is looked at; the shape of the leaf says whether it can be touched there
//! at all. A leaf that was told to stop is on its braking, or stands, or runs back.

use super::before::Came;
use super::heard::{Body, Heard};
use super::leaf::Leaf;
use super::pressed::Moves;
use super::search::Space;
use super::sight::{At, Lines, Run, beside, runs, sees_standing};
use super::space::Kind;
use super::span::{Span, up};
use super::sweeps::{Spot, Sweeps, Touched};
use crate::walk::course::Control;
use crate::walk::evaluate::Found;
#[cfg(test)]
use crate::walk::harm::Struck;
use crate::walk::lane::Lane;
use crate::walk::path::{Case, Path};
use crate::walk::scenario::Way;
use crate::walk::sequence::{Family, Habit};
use crate::walk::swing::SLACK;

/// Sizes of a box along: time, or place of a leaf that runs back, x and depth of the touched cylinder, slant, one over the
/// speed, time that it has stood.
pub(in super::super) type Box6 = [Span; 6];

/// One who is touched where it has stood for long came so long before the leaf started, in seconds.
pub(super) const LONG: f64 = 1000.0;

/// What one proof is about: one cylinder of a family, one leaf, one kind of touch.
pub(in super::super) struct Job<'a, S> {
    pub shape: S,
    pub lane: &'a Lane,
    /// How long after the start of the pass the leaf starts.
    pub delay: f64,
    pub slant: f64,
    pub family: &'a Family,
    pub kind: Kind,
    pub part: usize,
    /// The leaf runs back at the touch.
    pub back: bool,
}

/// The kinds of touch of a habit, each with whether the leaf runs back at it.
pub(in super::super) fn kinds(habit: Habit, control: &Control) -> Vec<(Kind, bool)> {
    let of = |&kind: &Kind| {
        // Nobody who stands there from the start tells it to run back.
        let back = control.back.is_some() && kind != Kind::Standing;
        [(kind, false)]
            .into_iter()
            .chain(back.then_some((kind, true)))
    };
    Kind::of(habit).iter().flat_map(of).collect()
}

impl<S: Sweeps> Job<'_, S> {
    fn way(&self) -> usize {
        usize::from(self.family.way == Way::Out)
    }

    pub(super) fn side(&self) -> f64 {
        if self.way() == 0 { 1.0 } else { -1.0 }
    }

    pub(super) fn leaf(&self) -> Leaf<'_> {
        Leaf {
            profile: &self.lane.profile,
            stopping: self.lane.control.stopping,
        }
    }

    /// How long after one halted the leaf may still do at most what it does of a report.
    pub(super) fn busy(&self) -> f64 {
        let slowest = self.lane.fields.iter().map(|field| field.response);
        let heard = slowest.fold(0.0, f64::max) + self.lane.control.reaction;
        let moves = if self.back {
            self.moves_on()
        } else {
            self.leaf().brakes_at_most()
        };
        up(heard + moves) * 1.000_001
    }

    /// How long after it was told to stop it may still move at most: braking, and on its way back.
    pub(in super::super) fn moves_on(&self) -> f64 {
        let control = &self.lane.control;
        let back = control.back.map_or(0.0, |back| {
            let (up, down) = (control.acceleration, control.stopping);
            back.pause + back.distance / back.speed + back.speed * (1.0 / up + 1.0 / down)
                // A short way back is all speeding up and braking.
                + (2.0 * back.distance * (up + down) / (up * down)).sqrt()
        });
        up(self.leaf().brakes_at_most() + back) * 1.000_001
    }

    /// The worst of the touches in a box, where one may be beyond a limit.
    fn worst(&self, of: &Box6) -> Option<f64> {
        let [time, x, depth, slant, slowness, stood] = *of;
        let stretch = (slant.square() + 1.0).root();
        let at = At {
            depth,
            slant,
            stretch,
        };
        let person = &self.lane.people[self.family.body];
        let part = &person.parts[self.part];
        let lines = beside(self.lane, self.way(), &person.parts, part, &at);
        let x0 = x - depth * slant;
        let aside = Span::of(self.lane.right(self.way())) * part.aside;
        (x0 - aside * stretch).both(self.shape.crosses())?;
        let body = Body {
            kind: self.kind,
            per_depth: slowness * stretch,
            stood,
        };
        let spots = self.spots(&lines, x, depth, slant);
        let anywhere = Touched {
            body: self.family.body,
            part: self.part,
            spots: &spots,
            goes: self.goes(slant, body.per_depth),
            speed: self.speeds(),
            place: if self.back {
                time
            } else {
                // Nothing runs ahead of the leaf that is on its plan.
                Span::new(0.0, self.leaf().place(time - self.delay).hi)
            },
            onward: !self.back,
            told: (f64::NEG_INFINITY, f64::INFINITY),
        };
        if self.shape.may(&anywhere).is_empty() {
            return None;
        }
        let who = (self.way(), self.family.body);
        // It keeps the leaf from starting.
        if self.kind == Kind::Standing && sees_standing(self.lane, who, &lines, (x, &at)) {
            return None;
        }
        let seen = runs(
            self.lane,
            self.way(),
            self.family.body,
            &lines,
            &at,
            (x0, Some(x)),
        );
        if self.back {
            return self.on_its_way_back(&body, &seen, &anywhere);
        }
        let came = Came { body, slant };
        let worlds = worlds(&body, &seen, time).into_iter().flatten();
        worlds
            .filter_map(|(heard, time)| self.in_world(heard, time - self.delay, &came, &anywhere))
            .reduce(f64::max)
    }

    fn spots(&self, lines: &Lines, x: Span, depth: Span, slant: Span) -> Vec<Spot> {
        let parts = &self.lane.people[self.family.body].parts;
        lines[..parts.len()]
            .iter()
            .map(|line| Spot {
                x: x + line.off + line.lead * slant,
                y: (depth + line.lead) * self.side(),
            })
            .collect()
    }

    /// How fast the body goes along x and along y.
    fn goes(&self, slant: Span, per_depth: Span) -> (Span, Span) {
        if self.kind != Kind::Moving {
            return (Span::of(0.0), Span::of(0.0));
        }
        let pace = Span::of(1.0).over(per_depth);
        (pace * slant, pace * self.side())
    }

    /// Every speed that the leaf may have at the touch.
    fn speeds(&self) -> Span {
        let stretches = self.lane.profile.stretches.iter();
        match self.lane.control.back.filter(|_| self.back) {
            Some(back) => Span::new(-back.speed * (1.0 + SLACK), 0.0),
            None => Span::new(
                0.0,
                stretches.map(|one| one.speed).fold(0.0, f64::max) * (1.0 + SLACK),
            ),
        }
    }

    fn in_world(&self, heard: Heard, time: Span, came: &Came, of: &Touched) -> Option<f64> {
        let leaf = self.leaf();
        let Heard::Ago(ago) = heard else {
            let moves = Moves {
                place: leaf.place(time),
                speed: leaf.speed(time),
                time,
                ago: None,
            };
            return self.onward(&moves, came, of);
        };
        let ago = ago - self.lane.control.reaction;
        // A report after the touch and one before it are looked at apart: before it nothing that is felt counts.
        let parts = [
            Span::new(f64::NEG_INFINITY, 0.0),
            Span::new(0.0, leaf.brakes_at_most()),
        ];
        let onward = parts.into_iter().filter_map(|part| {
            let ago = ago.both(part)?;
            let moves = Moves {
                place: leaf.commanded(time, ago),
                speed: leaf.commanded_speed(time, ago).at_most(leaf.speed(time).hi),
                time,
                ago: Some(ago),
            };
            self.onward(&moves, came, of)
        });
        onward.reduce(f64::max)
    }

    /// The point of a touch; none where it is of another kind.
    #[cfg(test)]
    pub(in super::super) fn point(&self, case: &Case, struck: &Struck) -> Option<[f64; 6]> {
        let (time, x, depth) = (struck.time, struck.x, struck.y);
        let back = self.back_at(case, time);
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let pace = case.speed / stretch;
        let part = &self.lane.people[self.family.body].parts[self.part];
        let aside = self.lane.right(self.way()) * part.aside;
        let middle = depth - (part.ahead - aside * case.slant) / stretch;
        let stood = match case.path {
            Path::Stop(stays) if (middle - stays).abs() < 1e-9 => {
                time - case.arrives - stays / pace
            }
            _ => 0.0,
        };
        let goes = !matches!(case.path, Path::Stand(_)) && stood <= 0.0;
        let (is_one, slowness, stood) = match self.kind {
            Kind::Moving => (goes, 1.0 / case.speed, 0.0),
            Kind::Halted => (!goes && stood <= self.busy(), 1.0 / case.speed, stood),
            Kind::Standing => (!goes, 1.0, 0.0),
        };
        (is_one && back.is_some() == self.back).then_some([
            back.unwrap_or(time),
            x,
            depth,
            case.slant,
            slowness,
            stood,
        ])
    }

    /// The case whose first touch may be a point.
    fn case(&self, [time, x, depth, slant, slowness, stood]: [f64; 6]) -> Case {
        let person = &self.lane.people[self.family.body];
        let part = &person.parts[self.part];
        let stretch = (1.0 + slant * slant).sqrt();
        let aside = self.lane.right(self.way()) * part.aside;
        let middle = depth - (part.ahead - aside * slant) / stretch;
        let far = 2.0 * self.shape.reach(self.family.body, self.part).1.hi.abs() + person.reach;
        let fastest = person.speeds.map_or(1.0, |(_, fastest)| fastest);
        let (path, speed, arrives) = match (self.family.habit, self.kind) {
            (Habit::Stand, _) => (Path::Stand(middle), 1.0, 0.0),
            (Habit::Stop, Kind::Standing) => (Path::Stop(middle), fastest, -LONG),
            (habit, kind) => {
                let path = match (habit, kind) {
                    (Habit::Stop, Kind::Halted) => Path::Stop(middle),
                    (Habit::Stop, _) => Path::Stop(far),
                    _ => Path::Cross,
                };
                let arrives = time - stood - middle * slowness * stretch;
                (path, 1.0 / slowness, arrives)
            }
        };
        Case {
            body: self.family.body,
            way: self.way(),
            path,
            x0: x - depth * slant - aside * stretch,
            slant,
            speed,
            arrives,
        }
    }
}

/// What the devices may have told before a touch at such times.
pub(super) fn worlds(body: &Body, seen: &[Run], time: Span) -> [Option<(Heard, Span)>; 2] {
    let worlds = body.worlds(seen, time);
    #[cfg(test)]
    let worlds = super::testing::left(worlds);
    worlds
}

impl<S: Sweeps> Space<6> for Job<'_, S> {
    fn whole(&self) -> Box6 {
        let person = &self.lane.people[self.family.body];
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let (x, y) = self.shape.reach(self.family.body, self.part);
        let end = self.lane.profile.end + self.delay;
        let still = self.kind == Kind::Standing;
        let slowness = Span::of(1.0).over(Span::new(slowest, fastest));
        [
            if self.back {
                Span::new(-SLACK, self.lane.profile.travel + SLACK)
            } else if still {
                Span::new(0.0, end)
            } else {
                // Later it stands, whenever it was told to.
                Span::new(0.0, up(end + self.leaf().brakes_at_most()) * 1.000_001)
            },
            x,
            y * self.side(),
            Span::new(-self.slant, self.slant),
            if still { Span::of(1.0) } else { slowness },
            if self.kind == Kind::Halted {
                Span::new(0.0, self.busy())
            } else {
                Span::of(0.0)
            },
        ]
    }

    fn bad(&self, of: &Box6) -> Option<f64> {
        self.worst(of)
    }

    fn weights(&self) -> [f64; 6] {
        let stretches = self.lane.profile.stretches.iter();
        let fastest = stretches.map(|one| one.speed).fold(0.0, f64::max);
        let first = if self.back { 1.0 } else { fastest };
        if self.kind == Kind::Standing {
            return [first, 1.0, 1.0, 0.4, 0.0, 0.0];
        }
        // Where a device first saw the body it is meters away, and the more of its slant counts.
        [0.5 * first, 1.0, 1.0, 1.2, 0.24 * fastest, 0.25 * fastest]
    }

    fn try_in(&self, of: &Box6, corners: bool, note: &mut dyn FnMut(Case, Found)) {
        // To try a point takes longer than to look at a box.
        if corners {
            self.try_at(of.map(Span::middle), note);
        }
    }

    fn try_at(&self, mut point: [f64; 6], note: &mut dyn FnMut(Case, Found)) {
        if self.back {
            let case_at = |time: f64| {
                let mut point = point;
                point[0] = time;
                self.case(point)
            };
            let Some(time) = self.touched_back(point[0], &case_at) else {
                return;
            };
            point[0] = time;
        }
        let case = self.case(point);
        if self.shape.crosses().both(Span::of(case.x0)).is_some() {
            note(case, self.shape.run(&case));
        }
    }
}
