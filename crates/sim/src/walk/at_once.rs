//! Cases that need no search for the first touch: one who stands there before the leaf starts, and one who walks into the
//! side of a leaf that is past.

use super::contact::Hit;
use super::evaluate::{CLEAR, First, Found};
use super::lane::Lane;
use super::profile::EVER;
use super::scenario::Class;
use super::watch::Walker;

/// The cylinder that is beside the leaf first.
struct Foremost {
    /// When it comes beside the leaf.
    time: f64,
    /// Where along the gate line.
    x: f64,
}

impl Lane {
    /// What comes of a case that is clear at once.
    pub(super) fn at_once(&self, walker: &Walker) -> Option<Found> {
        if walker.going.stands {
            Some(self.stood(walker))
        } else {
            self.surely_meets_the_side(walker)
                .then(|| Found::harmless(Class::MetTheSide))
        }
    }

    /// What comes of one who stands there: either a device keeps the leaf from starting, or the leaf comes on as planned.
    pub(super) fn stood(&self, walker: &Walker) -> Found {
        if walker.is_seen_standing(&self.fields) {
            return Found::harmless(Class::Untouched);
        }
        self.come_to(walker)
    }

    /// What comes of one who stands there and whom no device sees.
    pub(super) fn come_to(&self, walker: &Walker) -> Found {
        let Some((first, place)) = self.comes_to(walker) else {
            return Found::harmless(Class::Untouched);
        };
        if place <= 0.0 {
            return Found::harmless(Class::MetTheSide);
        }
        self.judged(walker, &first, &self.unhindered, None)
    }

    /// The cylinder that the leaf comes to first, and at which of its places.
    fn comes_to(&self, walker: &Walker) -> Option<(First, f64)> {
        let mut first: Option<(usize, f64, f64)> = None;
        for &at in &walker.person.touchable {
            let (radius, line) = (walker.person.parts[at].radius, walker.lines[at]);
            let y = walker.going.stays + line.lead;
            let aside = (y.abs() - self.half).max(0.0);
            if aside >= radius {
                continue;
            }
            let x = line.x0 + y * walker.case.slant;
            let place = self.profile.travel - x - (radius * radius - aside * aside).sqrt();
            if first.is_none_or(|(_, known, _)| place < known) {
                first = Some((at, place, x));
            }
        }
        let (part, place, x) = first?;
        let hit = Hit {
            time: self.profile.time_at(place)?,
            side: false,
        };
        let y = walker.going.stays + walker.lines[part].lead;
        Some((First { hit, part, x, y }, place))
    }

    /// Whether the leaf is past the body when that comes beside it, whatever the devices say: no device has seen the body
    /// before some time after the start, and a leaf that was told to stop then, and came back, is still past.
    fn surely_meets_the_side(&self, walker: &Walker) -> bool {
        let going = &walker.going;
        let seen = going.arrives + walker.person.seen_from(walker.case.way) * going.per_depth;
        if seen <= CLEAR {
            return false;
        }
        let Some(foremost) = self.foremost(walker) else {
            return false;
        };
        let back = self.control.back.map_or(0.0, |back| back.distance);
        let least = self.profile.place_at(seen.min(foremost.time));
        let least = if seen < foremost.time {
            least - back
        } else {
            least
        };
        self.profile.travel - least <= foremost.x - CLEAR
    }

    /// Whether one surely walks into the side of a leaf that is told to stop at a time: the leaf is past a cylinder when that
    /// comes beside it, and not yet at those that came before.
    pub(super) fn is_beside(&self, walker: &Walker, command: f64) -> bool {
        let (profile, stopping) = (&self.profile, self.control.stopping);
        let (place, speed) = (profile.place_at(command), profile.speed_at(command));
        let stops = speed / stopping;
        let pause = self.control.back.map_or(0.0, |back| back.pause);
        let left_at = |time: f64| {
            let braked = (time - command).min(stops);
            profile.travel
                - if braked <= 0.0 {
                    profile.place_at(time)
                } else {
                    place + braked * (speed - 0.5 * stopping * braked)
                }
        };
        let (going, slant) = (&walker.going, walker.case.slant);
        let beside = |at: usize| {
            let (half, line) = (
                walker.person.parts[at].radius + self.half,
                &walker.lines[at],
            );
            let stays = going.stays + line.lead > CLEAR - half;
            stays.then_some({
                (
                    going.arrives - (half + line.lead) * going.per_depth,
                    line.x0,
                    half,
                )
            })
        };
        let touchable = || walker.person.touchable.iter().filter_map(|&at| beside(at));
        let first = touchable()
            .filter(|(time, x0, half)| left_at(*time) <= x0 - half * slant - CLEAR)
            .fold(EVER, |first, (time, _, _)| first.min(time));
        if first >= EVER || first - command > stops + pause - CLEAR {
            return false;
        }
        let left = left_at(first);
        touchable().all(|(time, x0, half)| {
            time > first + CLEAR
                || time >= first - CLEAR && left <= x0 - half * slant - CLEAR
                || left > x0 + half * slant.abs() + half + CLEAR
        })
    }

    /// The cylinder that is beside the leaf first; none where another one is at nearly the same time, or where it stays
    /// before that.
    fn foremost(&self, walker: &Walker) -> Option<Foremost> {
        let (mut best, mut ahead, mut next) = (0, f64::NEG_INFINITY, f64::NEG_INFINITY);
        for &at in &walker.person.touchable {
            let begins = walker.person.parts[at].radius + self.half + walker.lines[at].lead;
            if begins > ahead {
                (best, ahead, next) = (at, begins, ahead);
            } else {
                next = next.max(begins);
            }
        }
        let (going, line) = (&walker.going, walker.lines[best]);
        let half = walker.person.parts[best].radius + self.half;
        let clear =
            (ahead - next) * going.per_depth > CLEAR && going.stays + line.lead > CLEAR - half;
        clear.then_some(Foremost {
            time: going.arrives - ahead * going.per_depth,
            x: line.x0 - half * walker.case.slant,
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::course::Course;
    use super::super::demo::{full, trial};
    use super::super::sequence::Draw;
    use super::*;

    /// What comes of a case, found the long way: the first touch of the leaf that nothing stops, then what has seen the body
    /// by then, then the first touch of the leaf that is told to stop.
    fn the_long_way(lane: &Lane, walker: &Walker) -> Found {
        let untouched = Found::harmless(Class::Untouched);
        let all = u32::MAX;
        let Some(first) = lane.first_touch(walker, all, lane.unhindered.stretches(), -EVER) else {
            return untouched;
        };
        let reports = walker.reports(&lane.fields, first.hit.time);
        if reports.shut {
            return untouched;
        }
        let command = |by: f64| reports.first(by).map(|said| said + lane.control.reaction);
        match command(EVER) {
            Some(told) if told < first.hit.time => {
                let course = Course::commanded(&lane.profile, &lane.control, told);
                match lane.first_touch(walker, all, course.stretches(), told) {
                    None => untouched,
                    Some(first) => lane.judged(walker, &first, &course, command(first.hit.time)),
                }
            }
            _ => lane.judged(walker, &first, &lane.unhindered, command(first.hit.time)),
        }
    }

    #[test]
    fn the_short_ways_find_what_the_long_way_finds() {
        for world in [trial(0.08), full()] {
            let walk = world.lower().unwrap();
            let families = walk.families();
            let (mut clear, mut touched, mut all) = (0, 0, 0);
            for seed in (0..40_000_000).step_by(37) {
                let draw = Draw::new(seed, families.len());
                let family = &families[draw.family];
                let lane = &walk.lanes[family.pass];
                let case = lane.drawn(family, &draw, walk.slant);
                let walker = lane.walker(&case);
                let (found, long) = (lane.run(&case), the_long_way(lane, &walker));
                assert_eq!(found.class, long.class, "{case:?}");
                all += 1;
                clear += i32::from(lane.at_once(&walker).is_some());
                if let (Some((struck, harm)), Some((at, done))) = (found.touch, long.touch) {
                    touched += 1;
                    assert_eq!(struck.part, at.part, "{case:?}");
                    assert!((struck.time - at.time).abs() < 1e-6, "{case:?}");
                    assert!((harm.severity - done.severity).abs() < 1e-6, "{case:?}");
                }
            }
            assert!(
                3 * clear > all && 40 * touched > all,
                "{clear} {touched} {all}"
            );
        }
    }
}
