//! What the controller heard before a touch, when only bounds of it are known.

use super::sight::Run;
use super::space::Kind;
use super::span::Span;

/// What the devices may have done in a world of a box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Told {
    /// None of them tells the leaf to stop before the touch is over.
    Nothing,
    /// At least one does.
    Something,
}

/// How the controller may know of the body.
#[derive(Debug, Clone, Copy)]
pub(super) enum Heard {
    /// No device reports before the touch, or soon after it.
    Nothing,
    /// The first report came so long ago; below zero it comes after the touch.
    Ago(Span),
}

/// A body at its touch: what it does, time for each unit of depth, how long it has stood.
#[derive(Debug, Clone, Copy)]
pub(super) struct Body {
    pub kind: Kind,
    pub per_depth: Span,
    pub stood: Span,
}

/// What one time in which a device sees the body says of a touch.
struct Says {
    age: Span,
    gone: Span,
    /// It may report at all.
    may: bool,
    /// It surely entered before the touch, for long enough.
    entered: bool,
}

impl Body {
    /// The worlds that a touch at such times may be in, each with the times that are left of it.
    pub(super) fn worlds(&self, seen: &[Run], time: Span) -> [Option<(Heard, Span)>; 2] {
        [Told::Nothing, Told::Something].map(|told| self.heard(seen, time, told))
    }

    /// What the controller heard in one world, with the times that are left of the touch; nothing where the world cannot be.
    pub(super) fn heard(&self, seen: &[Run], time: Span, told: Told) -> Option<(Heard, Span)> {
        match (self.kind, told) {
            // A device that sees one who stands keeps the leaf from starting, and nothing changes on the way.
            (Kind::Standing, Told::Something) => None,
            (Kind::Standing, Told::Nothing) => {
                (!seen.iter().any(Run::sees)).then_some((Heard::Nothing, time))
            }
            (Kind::Halted, Told::Nothing) if !seen.iter().any(Run::may_see) => None,
            (_, Told::Nothing) => self.untold(seen, time),
            (_, Told::Something) => self.told(seen, time),
        }
    }

    /// No device reports: whatever surely saw it long enough was over before the leaf started.
    fn untold(&self, seen: &[Run], mut time: Span) -> Option<(Heard, Span)> {
        for run in seen {
            let says = self.says(run);
            if says.entered {
                time = over_before(run, &says, time)?;
            }
        }
        Some((Heard::Nothing, time))
    }

    /// At least one device reports. One that sees the body since before the touch, and was not left before the start,
    /// reports or keeps the leaf from starting.
    fn told(&self, seen: &[Run], mut time: Span) -> Option<(Heard, Span)> {
        let mut first: Option<Span> = None;
        let mut surely = f64::NEG_INFINITY;
        for run in seen {
            let says = self.says(run);
            let left_before = run.since_out.hi > 0.0 && time.lo <= says.gone.hi;
            let may = says.may && time.hi > says.age.lo;
            if may {
                let age = says.age.at_most(time.hi);
                first = Some(first.map_or(age, |known| known.hull(age)));
            }
            if !says.entered {
                continue;
            }
            if may && !left_before {
                surely = surely.max(says.age.lo);
                time.lo = time.lo.max(says.age.lo.min(time.hi));
            } else if !may {
                time = over_before(run, &says, time)?;
            }
        }
        let ago = first?;
        Some((
            Heard::Ago(Span::new(ago.lo.max(surely), ago.hi.max(surely))),
            time,
        ))
    }

    fn says(&self, run: &Run) -> Says {
        let stays = self.stays(run);
        Says {
            age: self.stood + run.since_in * self.per_depth - run.response,
            gone: self.stood + run.since_out * self.per_depth,
            may: stays.hi >= run.response && run.since_in.hi >= 0.0,
            entered: run.sure && run.since_in.lo >= 0.0 && stays.lo >= run.response,
        }
    }

    /// How long a device sees the body; without end where the body stands in its sight.
    fn stays(&self, run: &Run) -> Span {
        let mut stays = (run.since_in - run.since_out).at_least(run.least) * self.per_depth;
        if self.stood.hi > 0.0 && run.since_out.lo < 0.0 {
            stays.hi = f64::INFINITY;
            if run.since_out.hi < 0.0 {
                stays.lo = f64::INFINITY;
            }
        }
        stays
    }
}

/// Times of a touch that leave a device to have seen the last of the body before the leaf started.
fn over_before(run: &Run, says: &Says, time: Span) -> Option<Span> {
    let before = Span::new(f64::NEG_INFINITY, says.gone.hi);
    (run.since_out.hi > 0.0)
        .then(|| time.both(before))
        .flatten()
}
