//! What can happen in a box of touches: nothing beyond the limits, or perhaps something.

use super::judge::{Bounded, worst};
use super::leaf::Leaf;
use super::sight::{At, Run, beside, runs};
use super::space::{Box5, Job};
use super::span::Span;
use crate::walk::evaluate::IN_POST;
use crate::walk::sequence::Habit;

/// What the devices may have done in a world of a box.
#[derive(Debug, Clone, Copy)]
pub(super) enum Told {
    /// None of them tells the leaf to stop before the touch is over.
    Nothing,
    /// At least one does.
    Something,
}

/// What the leaf's controller heard before a touch.
enum Heard {
    Nothing,
    /// How long ago the first report came.
    Ago(Span),
}

/// How bad a touch in the box may be, as a share of a limit; nothing where no touch there is beyond a limit.
pub(super) fn bad(job: &Job, of: &Box5) -> Option<f64> {
    let worlds = [Told::Nothing, Told::Something];
    #[cfg(test)]
    let worlds = super::tests::mutated(worlds);
    worlds
        .iter()
        .filter_map(|told| in_world(job, of, *told))
        .reduce(f64::max)
}

/// How often the line of a cylinder is halved within one box.
const HALVINGS: u32 = 5;
/// A line known as well as this is not halved, in meters.
const NARROW: f64 = 0.02;

/// A box with what all its worlds share.
struct Scene<'a> {
    job: &'a Job<'a>,
    of: Box5,
    at: At,
    /// Half chord of the cylinder at the depth, and how much deeper than the flat end of the leaf it is.
    chord: Span,
    beyond: Span,
    /// Time for each unit of depth.
    per_depth: Span,
    told: Told,
    leaf: Leaf<'a>,
}

fn in_world(job: &Job, of: &Box5, told: Told) -> Option<f64> {
    let [time, depth, slant, slowness, _] = *of;
    let lane = job.lane;
    let part = &lane.people[job.body].parts[job.part];
    let stretch = (slant.square() + 1.0).root();
    let beyond = (depth.abs() - lane.half).at_least(0.0);
    let scene = Scene {
        job,
        of: *of,
        at: At {
            depth,
            slant,
            stretch,
        },
        chord: (Span::of(part.radius).square() - beyond.square()).root(),
        beyond,
        per_depth: slowness * stretch,
        told,
        leaf: Leaf {
            profile: &lane.profile,
            stopping: lane.control.stopping,
        },
    };
    if overlaps_another(job, &scene.at, scene.chord) {
        return None;
    }
    let aside = Span::of(lane.right(job.way)) * part.aside * stretch;
    let (low, high) = lane.places();
    // Nothing runs ahead of the leaf that is on its plan.
    let farthest = Span::of(lane.profile.travel) - scene.leaf.place(time);
    let line = (Span::new(low, high) + aside).both(Span::new(
        (farthest - scene.chord - depth * slant).lo,
        f64::INFINITY,
    ))?;
    scene.on_line(line, HALVINGS)
}

impl Scene<'_> {
    /// How bad a touch may be with the line of the cylinder in a span: halved where that is too wide to tell.
    fn on_line(&self, line: Span, halvings: u32) -> Option<f64> {
        let (left, severity) = self.touched(line)?;
        if halvings == 0 || left.width() < NARROW {
            return Some(severity);
        }
        let (one, other) = left.halves();
        self.on_line(one, halvings - 1)
            .or_else(|| self.on_line(other, halvings - 1))
    }

    /// What is left of a line on which a touch may be bad, and how bad.
    fn touched(&self, line: Span) -> Option<(Span, f64)> {
        let [mut time, depth, slant, _, stood] = self.of;
        let (job, lane) = (self.job, self.job.lane);
        let seen = runs(lane, job.way, job.body, job.part, &self.at, line);
        let heard = match job.habit {
            Habit::Stand => standing(&seen, self.told)?,
            _ => going(&seen, self.told, &mut time, self.per_depth, stood)?,
        };
        let (ago, place, speed) = match heard {
            Heard::Nothing => (None, self.leaf.place(time), self.leaf.speed(time)),
            Heard::Ago(ago) => {
                let ago = ago - lane.control.reaction;
                let speed = self.leaf.commanded_speed(time, ago);
                let most = self.leaf.speed(time).hi;
                (
                    Some(ago),
                    self.leaf.commanded(time, ago),
                    speed.at_most(most),
                )
            }
        };
        // A touch of a leaf that stands or goes back is none of its own.
        if speed.hi <= 0.0 {
            return None;
        }
        // Nobody can be in the post.
        let radius = lane.people[job.body].parts[job.part].radius;
        let clear = Span::new((Span::of(radius) - lane.room).lo - IN_POST, f64::INFINITY);
        let x = (Span::of(lane.profile.travel) - place - self.chord).both(clear)?;
        let line = line.both(x - depth * slant)?;
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
        let crosses = matches!(self.job.habit, Habit::Cross | Habit::Follow);
        if !crosses || self.chord.lo <= 0.0 {
            return false;
        }
        let steep = self.beyond.over(self.chord);
        let slope = if depth.lo >= 0.0 {
            -steep
        } else if depth.hi <= 0.0 {
            steep
        } else {
            steep.hull(-steep)
        };
        let closing = touch.speed + (self.at.slant + slope).over(self.per_depth);
        closing.hi < 0.0
    }
}

/// Whether another cylinder surely is in the leaf already, so that this touch is not the first.
fn overlaps_another(job: &Job, at: &At, chord: Span) -> bool {
    let person = &job.lane.people[job.body];
    person.touchable.iter().any(|&other| {
        if other == job.part {
            return false;
        }
        let (off, lead) = beside(job.lane, job.way, job.body, (job.part, other), at);
        let ahead = (chord - off - lead * at.slant).at_least(0.0);
        let aside = ((at.depth + lead).abs() - job.lane.half).at_least(0.0);
        let apart = (ahead.square() + aside.square()).root();
        apart.hi < person.parts[other].radius
    })
}

/// One who stands: a device that sees it keeps the leaf from starting, and nothing changes on the way.
fn standing(seen: &[Run], told: Told) -> Option<Heard> {
    let kept = |run: &Run| run.sure && run.since_in.lo >= 0.0 && run.since_out.hi <= 0.0;
    match told {
        Told::Something => None,
        Told::Nothing => (!seen.iter().any(kept)).then_some(Heard::Nothing),
    }
}

/// One who goes, or went and stands: how long ago the first device reported, or that none did; nothing where the world
/// cannot be. Shortens the time of the touch to what the world allows.
fn going(seen: &[Run], told: Told, time: &mut Span, per_depth: Span, stood: Span) -> Option<Heard> {
    let mut first: Option<Span> = None;
    let mut surely = f64::NEG_INFINITY;
    for run in seen {
        let age = stood + run.since_in * per_depth - run.response;
        let gone = stood + run.since_out * per_depth;
        let stays = stays(run, per_depth, stood);
        let lasts = stays.hi >= run.response;
        let may_report = lasts && run.since_in.hi >= 0.0 && time.hi > age.lo;
        let left_before = run.since_out.hi > 0.0 && time.lo <= gone.hi;
        let entered = run.sure && run.since_in.lo >= 0.0 && stays.lo >= run.response;
        match told {
            Told::Nothing if entered => {
                // It saw the body long enough, so it was over before the leaf started.
                if !left_before {
                    return None;
                }
                time.hi = time.hi.min(gone.hi);
            }
            Told::Nothing => {}
            Told::Something if may_report => {
                let age = age.at_most(time.hi);
                // One that sees the body since before the touch and was not left before the start either reports or
                // keeps the leaf from starting.
                if entered && !left_before {
                    surely = surely.max(age.lo);
                    time.lo = time.lo.max(age.lo.min(time.hi));
                }
                first = Some(first.map_or(age, |known| known.hull(age)));
            }
            Told::Something => {
                // Without a report it either left before the leaf started or keeps it from starting.
                if entered {
                    if !left_before {
                        return None;
                    }
                    time.hi = time.hi.min(gone.hi);
                }
            }
        }
    }
    match told {
        Told::Nothing => Some(Heard::Nothing),
        Told::Something => {
            let ago = first?;
            Some(Heard::Ago(Span::new(ago.lo.max(surely), ago.hi)))
        }
    }
}

/// How long a device sees the body; without end where the body stands in its sight.
fn stays(run: &Run, per_depth: Span, stood: Span) -> Span {
    let mut stays = (run.since_in - run.since_out) * per_depth;
    if stood.hi > 0.0 && run.since_out.lo < 0.0 {
        stays.hi = f64::INFINITY;
        if run.since_out.hi < 0.0 {
            stays.lo = f64::INFINITY;
        }
    }
    stays
}
