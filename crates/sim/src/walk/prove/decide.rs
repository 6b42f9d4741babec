//! What can happen in a box of touches: nothing beyond the limits, or perhaps something.

use super::heard::{Body, Heard, Told};
use super::judge::{Bounded, worst};
use super::leaf::Leaf;
use super::sight::{At, Lines, Run, beside, runs};
use super::space::{Box5, Job, Kind};
use super::span::{Span, up};
use crate::walk::evaluate::IN_POST;

/// The worlds that a touch may be in.
type Worlds = [Option<Told>; 2];

/// What may be bad of a line: where, how bad as a share of a limit, in which worlds.
struct Left {
    line: Span,
    severity: f64,
    worlds: Worlds,
}

/// How bad a touch in the box may be, as a share of a limit; nothing where no touch there is beyond a limit.
pub(super) fn bad(job: &Job, of: &Box5) -> Option<f64> {
    let worlds = [Some(Told::Nothing), Some(Told::Something)];
    #[cfg(test)]
    let worlds = super::tests::mutated(worlds);
    let scene = Scene::new(job, of);
    if scene.overlaps_another() || scene.is_in_the_path() {
        return None;
    }
    scene.on_line(scene.whole_line()?, worlds, HALVINGS)
}

/// How often the line of a cylinder is halved within one box.
const HALVINGS: u32 = 5;
/// A line known as well as this is not halved, in meters.
const NARROW: f64 = 0.02;
/// A line of which more than this is left is not looked at again as it is.
const SHRUNK: f64 = 0.75;

/// A box with what all its worlds share.
struct Scene<'a> {
    job: &'a Job<'a>,
    of: Box5,
    at: At,
    lines: Lines,
    /// Half chord of the cylinder at the depth, and how much deeper than the flat end of the leaf it is.
    chord: Span,
    beyond: Span,
    /// Time for each unit of depth.
    per_depth: Span,
    leaf: Leaf<'a>,
}

impl<'a> Scene<'a> {
    fn new(job: &'a Job<'a>, of: &Box5) -> Self {
        let [_, depth, slant, slowness, _] = *of;
        let lane = job.lane;
        let part = &lane.people[job.body].parts[job.part];
        let stretch = (slant.square() + 1.0).root();
        let beyond = (depth.abs() - lane.half).at_least(0.0);
        let at = At {
            depth,
            slant,
            stretch,
        };
        Self {
            job,
            of: *of,
            at,
            lines: beside(lane, job.way, &lane.people[job.body].parts, part, &at),
            chord: (Span::of(part.radius).square() - beyond.square()).root(),
            beyond,
            per_depth: slowness * stretch,
            leaf: Leaf {
                profile: &lane.profile,
                stopping: lane.control.stopping,
            },
        }
    }

    /// Where the line of the cylinder may cross the gate line.
    fn whole_line(&self) -> Option<Span> {
        let [time, depth, slant, ..] = self.of;
        let (job, lane) = (self.job, self.job.lane);
        let part = &lane.people[job.body].parts[job.part];
        let aside = Span::of(lane.right(job.way)) * part.aside * self.at.stretch;
        let (low, high) = lane.places();
        // Nothing runs ahead of the leaf that is on its plan.
        let farthest = Span::of(lane.profile.travel) - self.leaf.place(time);
        let nearest = (farthest - self.chord - depth * slant).lo;
        (Span::new(low, high) + aside).both(Span::new(nearest, f64::INFINITY))
    }

    /// How bad a touch may be with the line of the cylinder in a span: halved where that is too wide to tell.
    fn on_line(&self, line: Span, worlds: Worlds, halvings: u32) -> Option<f64> {
        let mut left = self.touched(line, worlds)?;
        // What is left of a line is known better than the whole was.
        let mut width = line.width();
        while left.line.width() < SHRUNK * width {
            width = left.line.width();
            left = self.touched(left.line, left.worlds)?;
        }
        if halvings == 0 || left.line.width() < NARROW {
            return Some(left.severity);
        }
        let (one, other) = left.line.halves();
        self.on_line(one, left.worlds, halvings - 1)
            .or_else(|| self.on_line(other, left.worlds, halvings - 1))
    }

    /// What is left of a line on which a touch may be bad.
    fn touched(&self, line: Span, worlds: Worlds) -> Option<Left> {
        let job = self.job;
        let seen = runs(
            job.lane,
            job.way,
            job.body,
            &self.lines,
            &self.at,
            (line, None),
        );
        let mut left: Option<Left> = None;
        for (at, told) in worlds.into_iter().enumerate() {
            let Some((line, severity)) = told.and_then(|told| self.in_world(line, &seen, told))
            else {
                continue;
            };
            let known = left.get_or_insert(Left {
                line,
                severity,
                worlds: [None; 2],
            });
            known.line = known.line.hull(line);
            known.severity = known.severity.max(severity);
            known.worlds[at] = told;
        }
        left
    }

    /// What is left of a line on which a touch may be bad in one world, and how bad.
    fn in_world(&self, line: Span, seen: &[Run], told: Told) -> Option<(Span, f64)> {
        let [time, .., stood] = self.of;
        let lane = self.job.lane;
        let body = Body {
            kind: self.job.kind,
            per_depth: self.per_depth,
            stood,
        };
        let (heard, time) = body.heard(seen, time, told)?;
        let Heard::Ago(ago) = heard else {
            let (place, speed) = (self.leaf.place(time), self.leaf.speed(time));
            return self.with_leaf(line, time, None, place, speed);
        };
        // Told longer ago than it brakes at most, it stands.
        let brakes = Span::new(f64::NEG_INFINITY, self.leaf.brakes_at_most());
        let ago = (ago - lane.control.reaction).both(brakes)?;
        // A leaf that is told only after the touch is on its plan there; one that was told before it brakes.
        let later = ago.both(Span::new(f64::NEG_INFINITY, 0.0)).and_then(|ago| {
            let (place, speed) = (self.leaf.place(time), self.leaf.speed(time));
            self.with_leaf(line, time, Some(ago), place, speed)
        });
        let before = ago.both(Span::new(0.0, f64::INFINITY)).and_then(|ago| {
            let most = self.leaf.speed(time).hi;
            let speed = self.leaf.commanded_speed(time, ago).at_most(most);
            let place = self.leaf.commanded(time, ago);
            self.with_leaf(line, time, Some(ago), place, speed)
        });
        match (later, before) {
            (Some(one), Some(other)) => Some((one.0.hull(other.0), one.1.max(other.1))),
            (one, other) => one.or(other),
        }
    }

    /// What is left of a line on which a touch may be bad, with what is known of the leaf, and how bad.
    fn with_leaf(
        &self,
        line: Span,
        time: Span,
        ago: Option<Span>,
        place: Span,
        speed: Span,
    ) -> Option<(Span, f64)> {
        let (job, lane) = (self.job, self.job.lane);
        // A touch of a leaf that stands or goes back is none of its own.
        if speed.hi <= 0.0 {
            return None;
        }
        // Nobody can be in the post.
        let radius = lane.people[job.body].parts[job.part].radius;
        let clear = Span::new((Span::of(radius) - lane.room).lo - IN_POST, f64::INFINITY);
        let x = (Span::of(lane.profile.travel) - place - self.chord).both(clear)?;
        let line = line.both(x - self.at.depth * self.at.slant)?;
        let touch = Bounded {
            time,
            place,
            speed: speed.at_least(0.0),
            ago,
            x,
        };
        if self.parts_ways(&touch) {
            return None;
        }
        let worst = worst(lane, job.body, job.part, &touch);
        (!worst.kept).then_some((line, worst.severity))
    }

    /// Whether the cylinder surely draws away from the leaf, so that it was in it before.
    fn parts_ways(&self, touch: &Bounded) -> bool {
        let depth = self.at.depth;
        if self.job.kind != Kind::Moving || self.chord.hi <= 0.0 {
            return false;
        }
        // Where the chord may be nothing the rim is as steep as can be; only its least steepness counts there.
        let mut steep = self.beyond.over(Span::of(self.chord.hi));
        steep.hi = if self.chord.lo > 0.0 {
            self.beyond.over(self.chord).hi
        } else {
            f64::INFINITY
        };
        let slope = if depth.lo >= 0.0 {
            -steep
        } else if depth.hi <= 0.0 {
            steep
        } else {
            steep.hull(-steep)
        };
        let closing = touch.speed.hi + (self.at.slant + slope).over(self.per_depth).hi;
        up(closing) < 0.0
    }

    /// Whether the rest of one who leans in surely is in the leaf's path, so that they do not lean in.
    fn is_in_the_path(&self) -> bool {
        let (job, person) = (self.job, &self.job.lane.people[self.job.body]);
        let rest = person.parts.iter().zip(&self.lines).skip(person.arm);
        person.arm > 0
            && rest.into_iter().any(|(part, line)| {
                let clear = Span::of(part.radius) + job.lane.half;
                (self.at.depth + line.lead + clear).lo > 0.0
            })
    }

    /// Whether another cylinder surely is in the leaf already, so that this touch is not the first.
    fn overlaps_another(&self) -> bool {
        let (job, at) = (self.job, &self.at);
        let person = &job.lane.people[job.body];
        person.touchable.iter().any(|&other| {
            if other == job.part {
                return false;
            }
            let line = &self.lines[other];
            let ahead = (self.chord - line.off - line.lead * at.slant).at_least(0.0);
            let aside = ((at.depth + line.lead).abs() - job.lane.half).at_least(0.0);
            let apart = (ahead.square() + aside.square()).root();
            apart.hi < person.parts[other].radius
        })
    }
}
