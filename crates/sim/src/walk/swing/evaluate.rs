//! One scenario past leaves that swing, exactly: what sees the body, when the leaves stop, whether and where one touches it.

use super::super::course::Course;
use super::super::evaluate::Found;
use super::super::path::Case;
use super::super::profile::EVER;
use super::super::report::Reports;
use super::super::scenario::Class;
use super::super::watch::Walker;
use super::contact::{Hit, Piece};
use super::lane::SwingLane;
use super::wing::Wing;

/// The first touch of a course of the leaves.
#[derive(Clone, Copy)]
pub(super) struct First {
    /// Time in the pass; the hit has that of its leaf.
    pub time: f64,
    pub wing: usize,
    pub part: usize,
    pub hit: Hit,
}

pub(super) fn harmless(class: Class) -> Found {
    Found { class, touch: None }
}

impl SwingLane {
    /// What comes of a case.
    pub(super) fn run(&self, case: &Case) -> Found {
        let walker = self.walker(case);
        let near = self.near(&walker);
        let unhindered = |wing: usize| &self.wings[wing].unhindered;
        let first = self.first_touch(&walker, near, unhindered, -EVER);
        self.met(&walker, near, first)
    }

    pub(super) fn walker<'a>(&'a self, case: &'a Case) -> Walker<'a> {
        Walker::new(case, &self.people[case.body], 1.0)
    }

    /// What comes of one who is touched first as it is given where nothing stops the leaves.
    pub(super) fn met(
        &self,
        walker: &Walker,
        near: [Option<f64>; 2],
        first: Option<First>,
    ) -> Found {
        if near.iter().all(Option::is_none) {
            return harmless(Class::Untouched);
        }
        let unhindered = |wing: usize| &self.wings[wing].unhindered;
        let last = near
            .iter()
            .flatten()
            .fold(-EVER, |last, left| last.max(*left));
        let by = first.map_or(last, |first| first.time);
        let reports = walker.reports(&self.fields, by);
        if reports.shut {
            return harmless(Class::Untouched);
        }
        match reports.first(EVER).map(|said| said + self.reaction) {
            Some(command) if command < by => {
                let courses = self.commanded(command);
                let course = |wing: usize| &courses[wing];
                match self.first_touch(walker, near, course, command) {
                    None => harmless(Class::Untouched),
                    Some(first) => self.judged(walker, &first, &courses[first.wing], &reports),
                }
            }
            _ => first.map_or(harmless(Class::Untouched), |first| {
                self.judged(walker, &first, unhindered(first.wing), &reports)
            }),
        }
    }

    /// The ways of both leaves with a command to stop.
    pub(super) fn commanded(&self, command: f64) -> [Course; 2] {
        let of =
            |wing: &Wing| Course::commanded(&wing.profile, &wing.control, command - wing.delay);
        let first = of(&self.wings[0]);
        [first, self.wings.get(1).map_or(first, of)]
    }

    /// Until when the body is within reach of each leaf; nothing for one that it never gets near to.
    pub(super) fn near(&self, walker: &Walker) -> [Option<f64>; 2] {
        let mut near = [None; 2];
        let whole = walker.person.reach;
        for (near, wing) in near.iter_mut().zip(&self.wings) {
            let reach = wing.swung.reach + whole;
            for piece in pieces(walker, wing, None).into_iter().flatten() {
                if let Some(within) = piece.within(reach) {
                    *near = Some(near.unwrap_or(-EVER).max(within.until));
                }
            }
        }
        near
    }

    /// First touch in courses of the leaves, from a time on.
    fn first_touch<'a>(
        &self,
        walker: &Walker,
        near: [Option<f64>; 2],
        course: impl Fn(usize) -> &'a Course,
        after: f64,
    ) -> Option<First> {
        let mut first: Option<First> = None;
        for (at, wing) in self.wings.iter().enumerate() {
            if near[at].is_none_or(|last| last <= after) {
                continue;
            }
            let course = course(at);
            let Some(after) = Self::nears(walker, wing, course, after - wing.delay) else {
                continue;
            };
            for &part in &wing.touchable[walker.case.body] {
                for mut piece in pieces(walker, wing, Some(part)).into_iter().flatten() {
                    let known = first.map_or(EVER, |known| known.time - wing.delay);
                    piece.until = piece.until.min(known);
                    if piece.from.max(after) >= piece.until {
                        continue;
                    }
                    let hit = wing.swung.first(course.stretches(), &piece, after);
                    if let Some(hit) = hit {
                        first = Some(First {
                            time: hit.time + wing.delay,
                            wing: at,
                            part,
                            hit,
                        });
                        break;
                    }
                }
            }
        }
        first
    }

    /// A time of the leaf from which on it may touch the body, by a circle around all of it; nothing where it surely does
    /// not. One that goes alone is looked at by itself.
    fn nears(walker: &Walker, wing: &Wing, course: &Course, after: f64) -> Option<f64> {
        if wing.touchable[walker.case.body].len() <= 1 {
            return Some(after);
        }
        let mut whole = pieces(walker, wing, None).into_iter().flatten();
        whole.find_map(|piece| {
            let piece = Piece {
                radius: walker.person.reach,
                ..piece
            };
            wing.swung.nears(course.stretches(), &piece, after)
        })
    }

    fn judged(&self, walker: &Walker, first: &First, course: &Course, reports: &Reports) -> Found {
        let (place, speed) = course.at(first.hit.time);
        if first.hit.time <= 0.0 || first.hit.lever * speed <= 0.0 {
            return harmless(Class::MetTheSide);
        }
        let command = reports.first(first.time).map(|said| said + self.reaction);
        if speed > 0.0 {
            self.forward(walker, first, (place, speed), command)
        } else {
            self.backward(walker, first, course, place)
        }
    }
}

/// The pieces of the path of a cylinder, or of the middle of the body, as a leaf sees them in its time: going, standing.
pub(super) fn pieces(walker: &Walker, wing: &Wing, part: Option<usize>) -> [Option<Piece>; 2] {
    let (case, going) = (walker.case, &walker.going);
    let (x0, lead, radius) = part.map_or((case.x0, 0.0, 0.0), |part| {
        let line = walker.lines[part];
        (line.x0, line.lead, walker.person.parts[part].radius)
    });
    let side = walker.side();
    let spot = |depth: f64| wing.frame.sees((x0 + depth * case.slant, side * depth));
    let stops = if going.stands {
        -1.0
    } else {
        (going.arrives + going.stays * going.per_depth).min(EVER) - wing.delay
    };
    let moving = (!going.stands).then(|| Piece {
        from: -EVER,
        until: stops,
        when: going.arrives - wing.delay,
        at: spot(lead),
        speed: wing
            .frame
            .turns((going.pace * case.slant, side * going.pace)),
        radius,
    });
    let standing = (going.stays < EVER).then(|| Piece {
        from: stops,
        until: EVER,
        when: stops,
        at: spot(going.stays + lead),
        speed: (0.0, 0.0),
        radius,
    });
    [moving, standing]
}
