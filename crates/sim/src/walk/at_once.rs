//! Cases that need no search for the first touch: one who stands in the sight of a device, and one who walks into the side
//! of a leaf that is surely past.

use super::evaluate::Found;
use super::lane::Lane;
use super::path::{Case, Going, Line, line};
use super::person::Person;
use super::scenario::Class;

/// What is nearer than this is left to the search, in meters and seconds: far more than rounding does.
const CLEAR: f64 = 1e-9;

/// A case on its way, and what follows from its slant.
pub(super) struct Slanted<'a> {
    pub case: &'a Case,
    pub person: &'a Person,
    pub going: Going,
    /// √(1 + slant²).
    pub stretch: f64,
}

/// The cylinder that is beside the leaf first.
struct Foremost {
    /// How far ahead of the body's middle its place beside the leaf begins.
    ahead: f64,
    /// The same of the next cylinder.
    next: f64,
    half: f64,
    line: Line,
}

impl Lane {
    /// What comes of a case that is clear at once.
    pub(super) fn at_once(&self, of: &Slanted) -> Option<Found> {
        if of.going.stands {
            self.is_kept_shut(of)
                .then(|| Found::harmless(Class::Untouched))
        } else {
            self.surely_meets_the_side(of)
                .then(|| Found::harmless(Class::MetTheSide))
        }
    }

    /// Whether a device sees the body where it stands.
    fn is_kept_shut(&self, of: &Slanted) -> bool {
        let (case, stays) = (of.case, of.going.stays);
        self.fields
            .iter()
            .zip(&of.person.seen)
            .any(|(field, seen)| {
                seen.iter().any(|&(at, radius)| {
                    let line = self.line_of(of, at);
                    let depth = stays + line.lead;
                    depth >= field.begins[case.way] - radius
                        && field
                            .passed(case.way, line.x0, case.slant, radius)
                            .is_some_and(|(first, last)| {
                                first - line.lead <= stays && last - line.lead >= stays
                            })
                })
            })
    }

    /// Whether the leaf is past the body when that comes beside it, whatever the devices say: no device has seen the body
    /// before some time after the start, and a leaf that was told to stop then, and came back, is still past.
    fn surely_meets_the_side(&self, of: &Slanted) -> bool {
        let (case, going) = (of.case, &of.going);
        let seen = going.arrives + of.person.seen_from[case.way] * going.per_depth;
        if seen <= CLEAR {
            return false;
        }
        let back = self.control.back.map_or(0.0, |back| back.distance);
        let Some(foremost) = self.foremost(of) else {
            return false;
        };
        let beside = going.arrives - foremost.ahead * going.per_depth;
        let least = self.profile.place_at(seen.min(beside));
        let least = if seen < beside { least - back } else { least };
        let x = foremost.line.x0 - foremost.half * case.slant;
        self.profile.travel - least <= x - CLEAR
            && (foremost.ahead - foremost.next) * going.per_depth > CLEAR
            && going.stays + foremost.line.lead > CLEAR - foremost.half
    }

    fn foremost(&self, of: &Slanted) -> Option<Foremost> {
        let mut first: Option<Foremost> = None;
        for &at in &of.person.touchable {
            let line = self.line_of(of, at);
            let half = of.person.parts[at].radius + self.half;
            let ahead = half + line.lead;
            let next = match &mut first {
                Some(known) if ahead <= known.ahead => {
                    known.next = known.next.max(ahead);
                    continue;
                }
                Some(known) => known.ahead,
                None => f64::NEG_INFINITY,
            };
            first = Some(Foremost {
                ahead,
                next,
                half,
                line,
            });
        }
        first
    }

    fn line_of(&self, of: &Slanted, at: usize) -> Line {
        let case = of.case;
        line(
            &of.person.parts[at],
            self.right(case.way),
            case.x0,
            case.slant,
            of.stretch,
            1.0 / of.stretch,
        )
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::demo::{full, trial};
    use super::super::path::going;
    use super::super::sequence::Draw;
    use super::*;

    #[test]
    fn what_is_clear_at_once_is_what_the_search_finds() {
        for world in [trial(0.08), full()] {
            let walk = world.lower().unwrap();
            let families = walk.families();
            let (mut clear, mut all) = (0, 0);
            for seed in (0..40_000_000).step_by(37) {
                let draw = Draw::new(seed, families.len());
                let family = &families[draw.family];
                let lane = &walk.lanes[family.pass];
                let case = lane.drawn(family, &draw, walk.slant);
                let stretch = (1.0 + case.slant * case.slant).sqrt();
                let of = Slanted {
                    case: &case,
                    person: &lane.people[case.body],
                    going: going(&case, stretch),
                    stretch,
                };
                all += 1;
                if let Some(found) = lane.at_once(&of) {
                    clear += 1;
                    // Where the edge is at last only says who is too far from it: zero leaves nobody out.
                    let searched = lane.searched(&case, 0.0);
                    assert_eq!(searched.class, found.class, "{case:?}");
                }
            }
            assert!(3 * clear > all, "{clear} of {all}");
        }
    }
}
